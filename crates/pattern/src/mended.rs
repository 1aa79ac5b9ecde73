//! What became of a mesh in mending: the mesh, and the list of what was done and found.

use crate::faults::Fault;
use crate::mesh::Mesh;
use crate::nesting::Nested;
use crate::tree::Tree;

/// Something that was done to a mesh, and to how much of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Repair {
    /// Points closer together than a hundred thousandth of the part were joined.
    PointsJoined {
        /// Number of points that went.
        count: usize,
    },
    /// Facets with two corners in one point were dropped.
    CollapsedDropped {
        /// Number of facets.
        count: usize,
    },
    /// Facets that were there more than once were dropped.
    DoublesDropped {
        /// Number of facets.
        count: usize,
    },
    /// Facets without area were given half of a neighbour.
    NeedlesMended {
        /// Number of facets.
        count: usize,
    },
    /// Sides that met the ends of others in their middle were split there.
    SlitsZipped {
        /// Number of sides.
        count: usize,
    },
    /// Small openings were closed with a lid.
    HolesClosed {
        /// Number of openings.
        count: usize,
    },
    /// Openings the size of a face were closed with a flat lid.
    FacesClosed {
        /// Number of openings, small ones that were closed with them included.
        count: usize,
    },
    /// Facets wound against the rest of their shell were turned.
    FacetsTurned {
        /// Number of facets.
        count: usize,
    },
    /// Shells wound inside out were turned.
    ShellsTurned {
        /// Number of shells.
        count: usize,
    },
    /// Pairs of sheets with nothing between them were dropped.
    FlakesDropped {
        /// Number of such shells.
        count: usize,
    },
    /// Bodies that overlapped, or skin that crossed itself, were made one solid.
    CrossingsJoined {
        /// Volume as it was counted before, shared room twice; cubic millimetres or file units.
        before: f64,
        /// Volume of the joined solid.
        after: f64,
    },
}

/// A mesh after repair.
#[derive(Default)]
pub struct Mended {
    /// The mesh; closed and outward wound if `is_closed`.
    pub mesh: Mesh,
    /// Whether every side meets another and no shell turns into its own back.
    pub is_closed: bool,
    /// Whether so many sides are open that the facets make no surface worth searching further.
    pub is_heap: bool,
    /// Shell of each facet.
    pub shell_of: Vec<u32>,
    /// The shells, settled as metal or void; empty for an open mesh.
    pub nested: Vec<Nested>,
    /// The boxes around the facets, if they had to be built and still fit.
    pub tree: Option<Tree>,
    /// What was done.
    pub repairs: Vec<Repair>,
    /// What was found.
    pub faults: Vec<Fault>,
}
