//! From triangles to a measured solid that can be moulded.
//!
//! A mesh file goes in as bytes; out come a closed mesh in millimetres, its measures, everything
//! that was wrong with it, everything that was done about it, and a verdict. Nothing here opens a
//! file.
//!
//! ```
//! use pattern::look::{Verdict, look};
//! use pattern::mesh::Mesh;
//! use pattern::stl::write_stl;
//!
//! // A cube of 40 mm, two facets a side.
//! let points = (0..8).map(|i| [i & 1, i >> 1 & 1, i >> 2 & 1].map(|bit| f64::from(bit) * 40.0));
//! let sides =
//!     [[0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5]];
//! let cube = Mesh {
//!     points: points.collect(),
//!     triangles: sides.iter().flat_map(|&[a, b, c, d]| [[a, b, c], [a, c, d]]).collect(),
//! };
//!
//! let looked = look("cube.stl", &write_stl(&cube), None)?;
//! assert_eq!(looked.verdict, Verdict::Accepted);
//! assert!((looked.solid.volume_mm3 - 64_000.0).abs() < 1e-6);
//! assert!((looked.solid.area_mm2 - 9_600.0).abs() < 1e-6);
//!
//! // The same cube without one of its faces is closed with a flat lid, and that is said aloud.
//! let open = Mesh { triangles: cube.triangles[2..].to_vec(), points: cube.points.clone() };
//! let looked = look("cube.stl", &write_stl(&open), None)?;
//! assert_eq!(looked.verdict, Verdict::Healed);
//! assert_eq!(looked.faults[0].code(), "missing_face");
//!
//! // Without two faces that meet, no lid can be told from another.
//! let open = Mesh { triangles: cube.triangles[2..10].to_vec(), ..cube };
//! let looked = look("cube.stl", &write_stl(&open), None)?;
//! assert_eq!(looked.verdict, Verdict::Refused);
//! assert_eq!(looked.faults[0].code(), "open_boundary");
//! # Ok::<(), pattern::read::ReadError>(())
//! ```
//!
//! The way through the files: [`read`] chooses among [`stl`], [`obj`], [`ply`] and [`threemf`] and
//! gives a [`mesh::Soup`]; [`mod@unit`] settles the unit; [`repair`] joins, winds and closes;
//! [`crossings`] and [`rays`] weigh what passes through itself, [`joining`] makes it one solid;
//! [`solid`] measures; [`look`] does it all and judges.

pub mod archive;
pub mod boolean;
pub mod cast_metal;
pub mod cells;
pub mod contraction;
pub mod cores;
pub mod crossings;
pub mod depth;
pub mod displacement;
pub mod distance;
pub mod doubles;
pub mod draft;
pub mod draw;
pub mod faults;
pub mod gltf;
pub mod holes;
pub mod joining;
pub mod look;
pub mod machining_stock;
pub mod made;
pub mod material;
pub mod mended;
pub mod mesh;
pub mod nesting;
pub mod obj;
pub mod offset;
pub mod original;
pub mod placement;
pub mod ply;
pub mod ply_write;
pub mod polygon;
pub mod rays;
pub mod read;
pub mod regions;
pub mod repair;
pub mod rough;
pub mod sections;
pub mod shape;
pub mod shells;
pub mod shrink_rule;
pub mod silhouette;
pub mod slice;
pub mod slits;
pub mod solid;
pub mod stl;
pub mod sweep;
pub mod threemf;
pub mod threemf_model;
pub mod threemf_write;
pub mod tight_lid;
pub mod tolerance;
pub mod touching;
pub mod tree;
pub mod unit;
pub mod vector;
pub mod weld;
pub mod wide;
pub mod xml;

use measure::source::Law;

/// Every law of this room.
pub const LAWS: &[&Law] = &[
    &contraction::PATTERN_LENGTH,
    &contraction::PATTERN_LENGTH_BY_VOLUME,
    &contraction::CASTING_LENGTH,
    &contraction::RAPPED_LENGTH,
    &contraction::BY_SIZE,
    &contraction::FROM_CASTINGS,
    &original::MASTER_LENGTH,
    &original::BUILT_UP_LENGTH,
    &original::SHIM,
    &shrink_rule::PER_FOOT,
    &shrink_rule::ONE_IN,
    &tolerance::LINEAR,
    &tolerance::GRADES,
    &tolerance::WALL_GRADE,
    &machining_stock::REQUIRED,
    &machining_stock::RAW_SIZE,
    &draft::JOBBING,
    &draft::BY_SKIN,
    &draft::BY_HEIGHT,
    &draft::WANTED,
    &draft::ANGLE,
    &displacement::VOLUME_IN_WATER,
    &material::VOLUME_BY_WEIGHT,
    &rough::VOLUME_OF_SIZES,
    &sections::MODULUS,
];
