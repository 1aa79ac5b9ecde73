//! Solids joined, and taken from each other.
//!
//! The one file that knows the library which does it. A failure there is an empty solid with a
//! status, and the next call takes the empty solid for a true one; so the status is asked after
//! every call, and nothing leaves this file unasked.

use manifold_rust::manifold::Manifold;
use manifold_rust::types::{Error, MeshGLP, OpType};
use thiserror::Error as Narrow;

use crate::mesh::Mesh;
use crate::vector::Vector;

/// A closed solid that can be joined with others.
#[derive(Clone)]
pub struct Body(Manifold);

/// Why solids could not be joined.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Narrow)]
pub enum BooleanError {
    /// A skin that is not closed or not finite.
    #[error("its skin does not close")]
    NotClosed,
    /// The result has more facets than can be counted.
    #[error("together they have more facets than can be held")]
    TooLarge,
    /// Nothing that a founder could have caused.
    #[error("they could not be joined; move one of them by a tenth of a millimetre")]
    Failed,
}

impl Body {
    /// A body from a closed mesh wound outward.
    ///
    /// # Errors
    ///
    /// A skin that does not close.
    pub fn of(mesh: &Mesh) -> Result<Body, BooleanError> {
        let facets: MeshGLP<f64, u32> = MeshGLP {
            num_prop: 3,
            vert_properties: mesh.points.iter().flatten().copied().collect(),
            tri_verts: mesh.triangles.iter().flatten().copied().collect(),
            ..MeshGLP::default()
        };
        asked(Manifold::from_mesh_glp(&facets))
    }

    /// Both together.
    ///
    /// # Errors
    ///
    /// What the library says of the result.
    pub fn with(&self, other: &Body) -> Result<Body, BooleanError> {
        asked(self.0.boolean(&other.0, OpType::Add))
    }

    /// This one less the other.
    ///
    /// # Errors
    ///
    /// What the library says of the result.
    pub fn without(&self, other: &Body) -> Result<Body, BooleanError> {
        asked(self.0.boolean(&other.0, OpType::Subtract))
    }

    /// Whether nothing is left.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// What it holds, mm³.
    pub fn volume_mm3(&self) -> f64 {
        self.0.volume()
    }

    /// Its skin, wound outward.
    pub fn mesh(&self) -> Mesh {
        let facets: MeshGLP<f64, u32> = self.0.get_mesh_glp(-1);
        let points = facets.vert_properties.chunks_exact(3).map(point);
        let mut mesh = Mesh {
            points: points.collect(),
            triangles: facets.tri_verts.chunks_exact(3).map(corners).collect(),
        };
        // Points that the library keeps apart for their properties are one point of the skin.
        let pairs = facets.merge_from_vert.iter().zip(&facets.merge_to_vert);
        let mut stands_for: Vec<u32> = (0..mesh.points.len() as u32).collect();
        pairs.for_each(|(from, to)| stands_for[*from as usize] = *to);
        for corner in mesh.triangles.iter_mut().flatten() {
            *corner = stands_for[*corner as usize];
        }
        mesh.drop_unused_points();
        mesh
    }
}

fn asked(result: Manifold) -> Result<Body, BooleanError> {
    match result.status() {
        Error::NoError => Ok(Body(result)),
        Error::NotManifold | Error::NotClosed | Error::NonFiniteVertex => {
            Err(BooleanError::NotClosed)
        }
        Error::ResultTooLarge => Err(BooleanError::TooLarge),
        _ => Err(BooleanError::Failed),
    }
}

fn point(xyz: &[f64]) -> Vector {
    [xyz[0], xyz[1], xyz[2]]
}

fn corners(abc: &[u32]) -> [u32; 3] {
    [abc[0], abc[1], abc[2]]
}
