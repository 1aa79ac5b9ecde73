//! The pattern parted along the joint into drag and cope half, with pins that bring the halves
//! together.
//!
//! The holes go into the faces of the joint, the pins are loose rods: each half then lies flat on
//! the bed of a printer or the bench. The rod sits tight in the cope half and with a clearance in
//! the drag half, which is rammed first and on which the cope half is then put.

use thiserror::Error;

use super::joint::Joint;
use super::pins::{PIN_DEPTHS, Room, clear_mm, diameters, farthest_apart, places};
use super::plain::{along, rod, skin};
use crate::boolean::{Body, BooleanError, NEEDLE_MM};
use crate::mesh::Mesh;
use crate::shape::ShapeError;
use crate::tree::Tree;
use crate::vector::{Vector, add, scale};

/// Which pins are wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PinWish {
    /// Diameter of the rod at hand, mm; left out, by the size of the pattern.
    pub diameter_mm: Option<f64>,
    /// How much wider than the rod the hole in the drag half is, mm.
    pub clearance_mm: f64,
}

/// What a printer wants between a rod and its hole so that it slides: 0.2 mm on the diameter
/// (common practice, no source).
pub const USUAL_CLEARANCE_MM: f64 = 0.2;

/// A pattern in two halves.
#[derive(Clone, Debug)]
pub struct Halves {
    /// What lies below the joint.
    pub drag: Mesh,
    /// What lies above it.
    pub cope: Mesh,
    /// The pins, where they were wanted.
    pub pins: Option<Pins>,
}

/// Two pins.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pins {
    /// Their middles on the joint.
    pub places_mm: [Vector; 2],
    /// Of the rod.
    pub diameter_mm: f64,
    /// Of the holes in the drag half.
    pub hole_mm: f64,
    /// How deep the tight holes go.
    pub depth_mm: f64,
    /// How deep the wide ones go: as deep, or less where there is less under them.
    pub wide_mm: f64,
}

/// Why a pattern was not parted.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum HalvesError {
    /// The joint does not cross the pattern.
    #[error(
        "the joint does not part the pattern, which reaches from {low_mm:.1} to {high_mm:.1} mm: \
         make it in one piece, or put the joint between"
    )]
    OneSide {
        /// Lowest place of the pattern.
        low_mm: f64,
        /// Highest place.
        high_mm: f64,
    },
    /// A pin or a clearance that is none.
    #[error(
        "a pin of {diameter_mm} mm with {clearance_mm} mm of clearance is none: take 2 to 30 \
             mm, and a clearance from 0 to 1 mm"
    )]
    Pin {
        /// The rod.
        diameter_mm: f64,
        /// The clearance.
        clearance_mm: f64,
    },
    /// No two places with wall enough.
    #[error(
        "two pins of {diameter_mm} mm find no room on the joint with {wall_mm:.1} mm around them: \
         take a thinner rod, or make the pattern in one piece"
    )]
    NoRoom {
        /// The thinnest rod tried.
        diameter_mm: f64,
        /// Wall wanted around it.
        wall_mm: f64,
    },
    /// A hole could not be made.
    #[error("pin hole: {0}")]
    Shape(#[from] ShapeError),
    /// The solids could not be cut.
    #[error("the pattern cannot be parted: {0}")]
    Join(#[from] BooleanError),
}

/// The pattern parted along the joint.
///
/// # Errors
///
/// A joint beside the pattern, or pins without room.
pub fn halved(
    pattern: &Mesh,
    joint: &Joint,
    pins: Option<&PinWish>,
) -> Result<Halves, HalvesError> {
    let whole = Body::of(pattern)?;
    let [drag, cope] = joint.parted(&whole)?;
    let (drag, cope) = match joint {
        Joint::Flat(_) => (drag, cope),
        Joint::Blocks { .. } => (drag.tidied(NEEDLE_MM)?, cope.tidied(NEEDLE_MM)?),
    };
    let nothing_mm3 = NOTHING * whole.volume_mm3();
    if drag.volume_mm3() <= nothing_mm3 || cope.volume_mm3() <= nothing_mm3 {
        let [low, high] = pattern.bounds();
        return Err(HalvesError::OneSide {
            low_mm: low[2],
            high_mm: high[2],
        });
    }
    let Some(wish) = pins else {
        return Ok(Halves {
            drag: drag.mesh(),
            cope: cope.mesh(),
            pins: None,
        });
    };
    let pins = placed(pattern, joint, wish)?;
    let (mut drag, mut cope) = (drag, cope);
    for place in pins.places_mm {
        drag = drag.without(&hole(place, -1.0, pins.hole_mm, pins.wide_mm)?)?;
        cope = cope.without(&hole(place, 1.0, pins.diameter_mm, pins.depth_mm)?)?;
    }
    match (skin(&drag), skin(&cope)) {
        (Some(drag), Some(cope)) => Ok(Halves {
            drag,
            cope,
            pins: Some(pins),
        }),
        _ => Err(HalvesError::Join(BooleanError::Failed)),
    }
}

/// Share of a pattern that is a film on the joint, no half.
const NOTHING: f64 = 1e-9;

/// Rods thinner or thicker than these are no pins.
const RODS_MM: std::ops::RangeInclusive<f64> = 2.0..=30.0;

/// Pins closer together than so many diameters do not keep the halves from turning.
const APART: f64 = 3.0;

fn placed(pattern: &Mesh, joint: &Joint, wish: &PinWish) -> Result<Pins, HalvesError> {
    let clearance_mm = wish.clearance_mm;
    let given = wish.diameter_mm.unwrap_or(*RODS_MM.start());
    if !(RODS_MM.contains(&given) && (0.0..=1.0).contains(&clearance_mm)) {
        return Err(HalvesError::Pin {
            diameter_mm: given,
            clearance_mm,
        });
    }
    let tree = Tree::over(pattern);
    let bounds = pattern.bounds();
    let surface = joint.surface();
    let tried = diameters(pattern.diagonal(), wish.diameter_mm);
    let pairs = PIN_DEPTHS.into_iter();
    let mut pairs = pairs.flat_map(|depths| tried.iter().map(move |&rod| (depths, rod)));
    let found = pairs.find_map(|([wide, tight], diameter_mm)| {
        let hole_mm = diameter_mm + clearance_mm;
        let [wide_mm, depth_mm] = [wide * diameter_mm, tight * diameter_mm];
        let room = Room {
            axis: 2,
            // Half a hole before its end there is already as much wall beyond it as beside it.
            reach_mm: [wide_mm, depth_mm].map(|depth| depth - diameter_mm / 2.0),
            clear_mm: clear_mm(hole_mm),
            from_mm: 0.0,
        };
        let found = places(pattern, &tree, bounds, room, |at| {
            surface.level_around(at, room.clear_mm)
        });
        Some(Pins {
            places_mm: farthest_apart(&found, APART * diameter_mm)?,
            diameter_mm,
            hole_mm,
            depth_mm,
            wide_mm,
        })
    });
    if let Some(pins) = found {
        return Ok(pins);
    }
    let diameter_mm = tried.last().copied().unwrap_or(given);
    Err(HalvesError::NoRoom {
        diameter_mm,
        wall_mm: clear_mm(diameter_mm) - diameter_mm / 2.0,
    })
}

/// Over the joint by this much, mm, so that a hole opens into it.
const OVER_MM: f64 = 1.0;

fn hole(place: Vector, way: f64, diameter_mm: f64, depth_mm: f64) -> Result<Body, HalvesError> {
    let direction = along(2, way);
    let from = add(place, scale(direction, -OVER_MM));
    Ok(Body::of(&rod(
        from,
        direction,
        diameter_mm,
        depth_mm + OVER_MM,
    )?)?)
}
