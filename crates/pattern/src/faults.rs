//! What is wrong with a mesh: typed facts, each with a place and how it stands.

use serde::{Deserialize, Serialize};

use crate::vector::Vector;

/// A fault and what became of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fault {
    /// What was found.
    pub kind: FaultKind,
    /// What became of it.
    pub standing: Standing,
}

/// What became of a fault, from harmless to hopeless.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Standing {
    /// Worth knowing; the part is measured and moulded as it is.
    Noted,
    /// Mended; the mesh handed on no longer has it.
    Repaired,
    /// The founder must choose before the part can be taken.
    Asks,
    /// The part cannot be taken: what it should be cannot be told from the file.
    Blocks,
}

/// A fault of a mesh. Lengths and places are in millimetres, or in file units while the unit of
/// the file is unknown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FaultKind {
    /// Edges with only one facet.
    OpenBoundary {
        /// Number of such edges as the file has them.
        edges: usize,
        /// Openings left after close points were joined.
        loops: usize,
        /// Middle of the largest opening, or a point on the first open edge.
        place: Vector,
    },
    /// Openings the size of a face.
    MissingFace {
        /// Area of the lids, square millimetres or file units.
        area: f64,
        /// Volume by the lids that give least, cubic millimetres or file units.
        least: f64,
        /// Volume by the lids that give most.
        most: f64,
        /// Middle of the largest opening.
        place: Vector,
    },
    /// Neighbouring facets wound against each other.
    Winding {
        /// Edges across which they disagree.
        edges: usize,
        /// A point on the first of them.
        place: Vector,
    },
    /// Whole shells wound inside out.
    Inverted {
        /// Number of shells.
        shells: usize,
        /// A point on the first of them.
        place: Vector,
    },
    /// Edges with more than two facets.
    NonManifold {
        /// Number of such edges as the file has them.
        edges: usize,
        /// A point on the first of them.
        place: Vector,
    },
    /// Facets that pass through one another, or bodies that share room.
    SelfIntersection {
        /// Number of facets that do.
        facets: usize,
        /// Share of the volume that is counted twice or turned inside out.
        miscounted: f64,
        /// A point on the first crossing.
        place: Vector,
    },
    /// The same facet more than once.
    DuplicateFacets {
        /// Facets dropped.
        facets: usize,
        /// A corner of the first.
        place: Vector,
    },
    /// Facets without area.
    DegenerateFacets {
        /// Number of such facets.
        facets: usize,
        /// A corner of the first.
        place: Vector,
    },
    /// More than one body.
    MultiBody {
        /// Number of bodies.
        count: usize,
        /// Bodies that lie within the metal of another.
        within: usize,
        /// A point on the last of them.
        place: Vector,
    },
    /// Voids within metal that no core can reach.
    EnclosedVoid {
        /// Number of voids.
        count: usize,
        /// Their volume together, cubic millimetres or file units.
        volume: f64,
        /// A point on the first of them.
        place: Vector,
    },
    /// The file gives no unit and its size fits no casting in millimetres, or the unit it gives
    /// makes it no size of a casting.
    UnitSuspect {
        /// Extents of the part.
        extents: Vector,
    },
    /// Nothing that could be poured: no volume, or thinner than any casting.
    NoVolume {
        /// Volume, cubic millimetres or file units.
        volume: f64,
        /// Mean thickness: twice the volume over the surface.
        thickness: f64,
    },
}

impl Fault {
    /// Short fixed name of the fault, for lists and for telling faults apart.
    pub fn code(&self) -> &'static str {
        match self.kind {
            FaultKind::OpenBoundary { .. } => "open_boundary",
            FaultKind::MissingFace { .. } => "missing_face",
            FaultKind::Winding { .. } => "winding",
            FaultKind::Inverted { .. } => "inverted",
            FaultKind::NonManifold { .. } => "non_manifold",
            FaultKind::SelfIntersection { .. } => "self_intersection",
            FaultKind::DuplicateFacets { .. } => "duplicate_facets",
            FaultKind::DegenerateFacets { .. } => "degenerate_facets",
            FaultKind::MultiBody { .. } => "multi_body",
            FaultKind::EnclosedVoid { .. } => "enclosed_void",
            FaultKind::UnitSuspect { .. } => "unit_suspect",
            FaultKind::NoVolume { .. } => "no_volume",
        }
    }

    /// Where it is; a fault of the part as a whole has no place.
    pub fn place(&self) -> Option<Vector> {
        match self.kind {
            FaultKind::OpenBoundary { place, .. }
            | FaultKind::MissingFace { place, .. }
            | FaultKind::Winding { place, .. }
            | FaultKind::Inverted { place, .. }
            | FaultKind::NonManifold { place, .. }
            | FaultKind::SelfIntersection { place, .. }
            | FaultKind::DuplicateFacets { place, .. }
            | FaultKind::DegenerateFacets { place, .. }
            | FaultKind::MultiBody { place, .. }
            | FaultKind::EnclosedVoid { place, .. } => Some(place),
            FaultKind::UnitSuspect { .. } | FaultKind::NoVolume { .. } => None,
        }
    }

    /// Whether the mesh handed on no longer has it.
    pub fn is_repaired(&self) -> bool {
        self.standing == Standing::Repaired
    }
}
