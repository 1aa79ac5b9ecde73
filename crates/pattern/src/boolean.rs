//! Solids joined, taken from each other, cut by a plane, wrapped, and rebuilt where they cross.
//!
//! The one file that knows the library which does it. A failure there is an empty solid with a
//! status, and the next call takes the empty solid for a true one; so the status is asked after
//! every call, and nothing leaves this file unasked.

use manifold_rust::linalg::Vec3;
use manifold_rust::manifold::Manifold;
use manifold_rust::types::{Box as Bounds, Error, MeshGLP, OpType, WindingRule};
use thiserror::Error as Narrow;

use crate::crossings;
use crate::mesh::Mesh;
use crate::solid::measure;
use crate::tree::Tree;
use crate::vector::{Vector, norm, scale};

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
    /// A cut by a plane without direction.
    #[error("a plane needs a direction; give it a normal that is finite and not zero")]
    NoDirection,
    /// Nothing that a founder could have caused.
    #[error("they could not be joined; move one of them by a tenth of a millimetre")]
    Failed,
}

impl Body {
    /// A body from a closed mesh wound outward, with the volume of the mesh.
    ///
    /// # Errors
    ///
    /// A skin that does not close.
    pub fn of(mesh: &Mesh) -> Result<Body, BooleanError> {
        let body = asked(Manifold::from_mesh_glp(&facets_of(mesh)))?;
        let own_mm3 = measure(mesh, &vec![0; mesh.triangles.len()], 1).volume_mm3;
        let lost = |body: &Body| (body.volume_mm3() - own_mm3).abs();
        if lost(&body) <= LOST * own_mm3.abs() {
            return Ok(body);
        }
        let stirred = asked(Manifold::from_mesh_glp(&facets_of(&stirred(mesh))))?;
        match lost(&stirred) < lost(&body) {
            true => Ok(stirred),
            false => Ok(body),
        }
    }

    /// The body of all places that a closed mesh goes round at least once: shells that overlap
    /// are joined, skin within metal goes, and so does what is turned inside out. Exact: points
    /// are added where facets cross, none is moved by more than rounding.
    ///
    /// # Errors
    ///
    /// A skin that does not close, or more than the library can sort out.
    pub fn rebuilt(mesh: &Mesh) -> Result<Body, BooleanError> {
        let soup = asked(Manifold::from_mesh_glp_robust(&facets_of(mesh)))?;
        asked(soup.0.rebuild_solid(WindingRule::Positive))
    }

    /// The body of all places within `bounds` where `field` is positive. The field is asked at
    /// the places of a lattice with sides of `step` and taken as straight between two of them;
    /// facets are joined where that moves the skin by less than `within`. What is narrower than a
    /// step may be lost.
    ///
    /// # Errors
    ///
    /// What the library says of the result.
    pub fn of_field(
        field: impl Fn(Vector) -> f64 + Sync,
        bounds: [Vector; 2],
        step: f64,
        within: f64,
    ) -> Result<Body, BooleanError> {
        let [low, high] = bounds.map(|[x, y, z]| Vec3::new(x, y, z));
        let bounds = Bounds {
            min: low,
            max: high,
        };
        let field = |at: Vec3| field([at.x, at.y, at.z]);
        let found = Manifold::level_set(field, bounds, step);
        asked(asked(found)?.0.simplify(within))
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

    /// What both have in common.
    ///
    /// # Errors
    ///
    /// What the library says of the result.
    pub fn common_with(&self, other: &Body) -> Result<Body, BooleanError> {
        asked(self.0.boolean(&other.0, OpType::Intersect))
    }

    /// Cut by the plane of all places whose part along the unit `normal` is `at_mm`: what lies
    /// on the side to which the normal points, and the rest. Either may be empty.
    ///
    /// # Errors
    ///
    /// A normal without direction, or what the library says of the result.
    pub fn cut_by_plane(&self, normal: Vector, at_mm: f64) -> Result<[Body; 2], BooleanError> {
        let length = norm(normal);
        if !(length.is_finite() && length > 0.0 && at_mm.is_finite()) {
            return Err(BooleanError::NoDirection);
        }
        let [x, y, z] = scale(normal, 1.0 / length);
        let (ahead, behind) = self.0.split_by_plane(Vec3::new(x, y, z), at_mm);
        Ok([asked(ahead)?, asked(behind)?])
    }

    /// The smallest body without hollows around it, as a string drawn tight around it would lie.
    ///
    /// # Errors
    ///
    /// What the library says of the result.
    pub fn hull(&self) -> Result<Body, BooleanError> {
        asked(self.0.convex_hull())
    }

    /// Its pieces that do not touch each other, each a body of its own.
    ///
    /// # Errors
    ///
    /// What the library says of a piece.
    pub fn parts(&self) -> Result<Vec<Body>, BooleanError> {
        self.0.decompose().into_iter().map(asked).collect()
    }

    /// Bodies that do not touch each other as one.
    ///
    /// # Errors
    ///
    /// What the library says of the result.
    pub fn of_parts(parts: &[Body]) -> Result<Body, BooleanError> {
        let parts: Vec<Manifold> = parts.iter().map(|part| part.0.clone()).collect();
        asked(Manifold::compose(&parts))
    }

    /// The smallest body without hollows around some places.
    ///
    /// # Errors
    ///
    /// What the library says of the result.
    pub fn around(places: &[Vector]) -> Result<Body, BooleanError> {
        let places: Vec<Vec3> = places.iter().map(|&[x, y, z]| Vec3::new(x, y, z)).collect();
        asked(Manifold::hull(&places))
    }

    /// The same body with the sides of its facets cut until none is longer than `longest_mm`.
    ///
    /// # Errors
    ///
    /// What the library says of the result.
    pub fn with_sides_up_to(&self, longest_mm: f64) -> Result<Body, BooleanError> {
        asked(self.0.refine_to_length(longest_mm))
    }

    /// The same without what joining and cutting leave behind: corners moved by up to `within_mm`
    /// where that saves facets, and shells gone, of metal or of nothing, that are films or crumbs.
    ///
    /// # Errors
    ///
    /// What the library says of the result.
    pub fn tidied(&self, within_mm: f64) -> Result<Body, BooleanError> {
        self.without_crumbs()?.plainer(within_mm)?.without_crumbs()
    }

    fn without_crumbs(&self) -> Result<Body, BooleanError> {
        let mut shells = self.0.decompose();
        let all = shells.len();
        let whole_mm3 = self.volume_mm3();
        shells.retain(|shell| {
            let held_mm3 = shell.volume().abs();
            let thickness_mm = 2.0 * held_mm3 / shell.surface_area();
            let is_crumb = held_mm3 < CRUMB * whole_mm3 && thickness_mm < LAYER_MM;
            thickness_mm > FILM_MM && !is_crumb
        });
        match shells.len() == all {
            true => Ok(self.clone()),
            false => asked(Manifold::compose(&shells)),
        }
    }

    /// The same with fewer facets, and as sound: a corner that moves may push its facets through
    /// others, or turn a fold over so that it counts as metal, and is then moved by less.
    fn plainer(&self, within_mm: f64) -> Result<Body, BooleanError> {
        for share in LESS {
            let most_mm = share * within_mm;
            let plain = asked(self.0.simplify(most_mm))?;
            let changed_mm3 = (plain.volume_mm3() - self.volume_mm3()).abs();
            let skin = plain.mesh();
            if changed_mm3 <= most_mm * self.0.surface_area()
                && crossings::find(&skin, &Tree::over(&skin)).facets.is_empty()
            {
                return Ok(plain);
            }
        }
        Ok(self.clone())
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

/// Thickness below which metal, or a gap in it, is nothing but a film, mm: thinner than any
/// printer's layer, thicker than a face misses another that it is laid along.
pub const FILM_MM: f64 = 0.01;

/// Shares of the wanted tolerance that are tried in turn.
const LESS: [f64; 3] = [1.0, 0.1, 0.01];

/// A shell that holds less than this share of a body and is thinner than [`LAYER_MM`] is a crumb.
/// With a tenth of it the corners that skirts leave between each other stay; with ten times as much
/// a raised letter that the joint cuts off would go.
const CRUMB: f64 = 1e-4;

/// What a printer lays at once, mm (common practice, no source).
const LAYER_MM: f64 = 0.2;

/// How far a corner may be moved for the sake of fewer facets, mm: a hundredth of what a printer
/// lays. With a tenth of it needles are left where skirts cross, with ten times as much round walls
/// lose a ten-thousandth of the part.
pub const NEEDLE_MM: f64 = 1e-3;

/// What reading a skin may lose, as a share of the volume, before it is read with its corners
/// stirred: rounding loses less, and a film of a tenth of a thousandth of a millimetre over a part
/// is more.
const LOST: f64 = 1e-7;

/// How far corners are stirred, as a share of the part: a sixtieth of what files of single
/// precision round them by. A tenth of it leaves facets in one plane to the library.
const STIRRED: f64 = 1e-9;

/// The same skin with its corners moved by next to nothing, the same for the same mesh.
///
/// Joined solids leave skin folded back on itself in one plane, where faces of both lay in it. The
/// library takes facets in one plane to look the same way, those of a fold as well, turns the sides
/// of the ones that look back as if they were needles, and so moves the skin beside them. Corners
/// that lie in no plane keep it from that.
fn stirred(mesh: &Mesh) -> Mesh {
    let most_mm = STIRRED * mesh.diagonal();
    let mut state = 1_u32;
    let mut chance = || {
        // A plain congruence (constants of Numerical Recipes, from memory).
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from(state >> 8) / f64::from(1 << 24) - 0.5
    };
    let mut moved = mesh.clone();
    for coordinate in moved.points.iter_mut().flatten() {
        *coordinate += most_mm * chance();
    }
    moved
}

fn facets_of(mesh: &Mesh) -> MeshGLP<f64, u32> {
    MeshGLP {
        num_prop: 3,
        vert_properties: mesh.points.iter().flatten().copied().collect(),
        tri_verts: mesh.triangles.iter().flatten().copied().collect(),
        ..MeshGLP::default()
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
