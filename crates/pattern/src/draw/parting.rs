//! The parting line: where the surface that is drawn upward meets the surface that is drawn
//! downward, as a line on the part.
//!
//! On an upright wall the line is free between the ends of the wall, and is laid flat wherever the
//! wall lets it; on round flanks it runs along the widest place.

use super::columns::{Columns, Plot};
use super::level::{Band, Level, level, level_at, rough_bands};
use super::rim::rims;
use super::{DrawError, DrawSettings, sound};
use crate::mesh::Mesh;
use crate::tree::Tree;
use crate::vector::Vector;

/// A parting line.
#[derive(Clone, Debug, PartialEq)]
pub struct PartingLine {
    /// The level at which it lies flat where it can.
    pub level: Level,
    /// Closed lines in mm in the part's axes; the first point is not given again at the end. Seen
    /// from the cope, the part lies on their left.
    pub loops: Vec<Vec<Vector>>,
    /// Lowest and highest height of the line along the draw, mm.
    pub heights_mm: [f64; 2],
}

impl PartingLine {
    /// Whether all of it lies at one height.
    pub fn is_flat(&self) -> bool {
        self.heights_mm[0] == self.heights_mm[1]
    }
}

/// A joint is flat if it can be so on this share of its line: what is left are roundings of a file
/// whose flanks lean a little. With more, hardly a rounded part has a flat joint.
pub const FLAT_ENOUGH: f64 = 0.97;

/// A line within this of its level is on it, as a share of the size of the part.
pub(super) const FLAT: f64 = 1e-5;

/// The parting line of a closed mesh, outward wound and in mm, when the cope is lifted along `up`.
///
/// # Errors
///
/// A direction of no length, or a mesh without facets.
pub fn parting_line(
    mesh: &Mesh,
    up: Vector,
    settings: &DrawSettings,
) -> Result<PartingLine, DrawError> {
    laid(mesh, up, None, settings)
}

/// The same about a level that is given: the height, along the draw, at which the halves of the
/// flask meet.
///
/// # Errors
///
/// Those of [`parting_line`].
pub fn parting_line_at(
    mesh: &Mesh,
    up: Vector,
    level_mm: f64,
    settings: &DrawSettings,
) -> Result<PartingLine, DrawError> {
    laid(mesh, up, Some(level_mm), settings)
}

/// Columns for a first look at a rim: a part of 100 mm is seen to 0.6 mm, and the look is over in a
/// few hundredths of a second.
const GLANCE: usize = 160;

/// The level of a joint for a closed mesh as it lies in its mould, z up: that which is preferred if
/// the line can lie flat there, else that at which it is as flat as it can be.
///
/// # Errors
///
/// A mesh without facets.
pub fn level_near(
    laid: &Mesh,
    preferred_mm: f64,
    settings: &DrawSettings,
) -> Result<f64, DrawError> {
    let [low, high] = laid.bounds();
    let columns = Columns::staggered(laid, Plot::of_part(laid, GLANCE));
    let seen = level_at(&rough_bands(&columns), [low[2], high[2]], preferred_mm);
    match seen.flat_share >= FLAT_ENOUGH {
        true => Ok(preferred_mm),
        false => Ok(parting_line(laid, [0.0, 0.0, 1.0], settings)?.level.at_mm),
    }
}

fn laid(
    mesh: &Mesh,
    up: Vector,
    level_mm: Option<f64>,
    settings: &DrawSettings,
) -> Result<PartingLine, DrawError> {
    let frame = sound(mesh, up)?;
    let turned = frame.turned(mesh);
    let columns = Columns::regular(&turned, Plot::of_part(&turned, settings.columns));
    let rims = rims(&turned, &Tree::over(&turned), &columns, settings.play_mm);
    let bands: Vec<Band> = rims.iter().flatten().map(|place| place.band).collect();
    let [low, high] = turned.bounds();
    let ends_mm = [low[2], high[2]];
    let level = match level_mm {
        Some(at_mm) => level_at(&bands, ends_mm, at_mm),
        None => level(&bands, ends_mm),
    };
    let hair = FLAT * mesh.diagonal();
    let mut heights_mm = [f64::INFINITY, f64::NEG_INFINITY];
    let mut loops = Vec::with_capacity(rims.len());
    for rim in &rims {
        let mut points = Vec::with_capacity(rim.len());
        for place in rim {
            let height = place.band.height_near(level.at_mm, hair);
            heights_mm = [heights_mm[0].min(height), heights_mm[1].max(height)];
            points.push(frame.part_from_draw([place.at_mm[0], place.at_mm[1], height]));
        }
        loops.push(points);
    }
    Ok(PartingLine {
        level,
        loops,
        heights_mm,
    })
}
