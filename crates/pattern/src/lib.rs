//! From triangles to a measured solid that can be moulded.
pub mod archive;
pub mod cells;
pub mod contraction;
pub mod crossings;
pub mod depth;
pub mod doubles;
pub mod faults;
pub mod holes;
pub mod look;
pub mod mesh;
pub mod nesting;
pub mod obj;
pub mod placement;
pub mod ply;
pub mod polygon;
pub mod rays;
pub mod read;
pub mod regions;
pub mod repair;
pub mod sections;
pub mod shells;
pub mod silhouette;
pub mod slice;
pub mod slits;
pub mod solid;
pub mod stl;
pub mod threemf;
pub mod threemf_model;
pub mod tree;
pub mod unit;
pub mod vector;
pub mod weld;
pub mod xml;

use measure::source::Law;

/// Every law of this room.
pub const LAWS: &[&Law] = &[
    &contraction::PATTERN_LENGTH,
    &contraction::PATTERN_LENGTH_BY_VOLUME,
    &sections::MODULUS,
];
