//! Core prints put on the pattern: plain rods and blocks where the core will lie in the sand.

use measure::length::Length;
use thiserror::Error;

use super::plain::{skin, standing};
use crate::boolean::{Body, BooleanError};
use crate::mesh::Mesh;
use crate::shape::{Form, ShapeError};
use crate::vector::Vector;

/// A print.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Print {
    /// The middle of the face by which it stands on the pattern, mm. Put it a hair within.
    pub at_mm: Vector,
    /// The way it stands out; need not be of any length.
    pub axis: Vector,
    /// How far it stands out, mm.
    pub length_mm: f64,
    /// What it looks like along its axis.
    pub section: Section,
}

/// Section of a print.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Section {
    /// Round, of this diameter, mm.
    Round(f64),
    /// Round, narrower at its far end so that it draws: diameters at the pattern and there, mm.
    Tapered([f64; 2]),
    /// Two sides, mm.
    Square([f64; 2]),
}

/// A pattern with its prints.
#[derive(Clone, Debug)]
pub struct Printed {
    /// Its skin.
    pub mesh: Mesh,
    /// What each print adds, mm³.
    pub added_mm3: Vec<f64>,
}

/// Why a print was not put on; `number` counts from one.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum PrintError {
    /// Sizes or a direction that no print has.
    #[error("core print {number}: {error}")]
    Shape {
        /// Which print.
        number: usize,
        /// What is wrong.
        error: ShapeError,
    },
    /// It does not touch the pattern.
    #[error(
        "core print {number} at ({:.1}, {:.1}, {:.1}) mm does not touch the pattern: move it onto \
         the mouth of the hole", at_mm[0], at_mm[1], at_mm[2]
    )]
    Apart {
        /// Which print.
        number: usize,
        /// Where it was put.
        at_mm: Vector,
    },
    /// It lies within the pattern.
    #[error(
        "core print {number} at ({:.1}, {:.1}, {:.1}) mm lies within the pattern and adds \
         nothing: turn its axis outward", at_mm[0], at_mm[1], at_mm[2]
    )]
    Within {
        /// Which print.
        number: usize,
        /// Where it was put.
        at_mm: Vector,
    },
    /// The solids could not be joined.
    #[error("core print {number}: {error}")]
    Join {
        /// Which print.
        number: usize,
        /// Why.
        error: BooleanError,
    },
}

/// Share of a print that is rounding, no wood.
const NOTHING: f64 = 1e-6;

/// The pattern with prints put on.
///
/// # Errors
///
/// A print that is none, stands apart or lies within.
pub fn with_prints(pattern: &Mesh, prints: &[Print]) -> Result<Printed, PrintError> {
    let mut added_mm3 = Vec::with_capacity(prints.len());
    let whole = Body::of(pattern).map_err(|error| PrintError::Join { number: 0, error });
    let mut whole = whole?;
    for (print, number) in prints.iter().zip(1..) {
        let at_mm = print.at_mm;
        let shaped = standing(print.form(), at_mm, print.axis);
        let shaped = shaped.map_err(|error| PrintError::Shape { number, error })?;
        let wrong = |error| PrintError::Join { number, error };
        let own = Body::of(&shaped).map_err(wrong)?;
        let pieces = pieces(&whole) + 1;
        let next = whole.with(&own).map_err(wrong)?;
        let added = next.volume_mm3() - whole.volume_mm3();
        if added <= NOTHING * own.volume_mm3() {
            return Err(PrintError::Within { number, at_mm });
        }
        if self::pieces(&next) >= pieces {
            return Err(PrintError::Apart { number, at_mm });
        }
        added_mm3.push(added);
        whole = next;
    }
    let mesh = skin(&whole).unwrap_or_default();
    Ok(Printed { mesh, added_mm3 })
}

/// Separate skins of a body.
fn pieces(body: &Body) -> usize {
    let mut mesh = body.mesh();
    let edges = crate::mesh::Edges::of(&mesh);
    crate::shells::wind_alike(&mut mesh, &edges).shells.len()
}

impl Print {
    fn form(&self) -> Form {
        let length = Length::from_mm(self.length_mm);
        match self.section {
            Section::Round(diameter) => Form::Cylinder {
                diameter: Length::from_mm(diameter),
                length,
            },
            Section::Tapered([diameter, top]) => Form::Cone {
                diameter: Length::from_mm(diameter),
                top: Length::from_mm(top),
                length,
            },
            Section::Square([a, b]) => Form::Block {
                size: [Length::from_mm(a), Length::from_mm(b), length],
            },
        }
    }
}
