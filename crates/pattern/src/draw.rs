//! How a pattern leaves the sand: which way it draws, what holds it back, and where it parts.
//!
//! The part lies in two halves of sand that are lifted off each other along one straight line. A
//! place of its surface draws upward if no metal lies above it along that line, downward if none
//! lies below. Where metal lies on both sides the sand between is held: that is an undercut.
//!
//! The way through the files: [`frame`] turns the part so that it is drawn along z; [`columns`]
//! cuts it into upright columns of metal and room; [`undercut`] finds the room that is held and the
//! surface around it, [`remedy`] what can be done about it. [`search`] tries the directions of
//! [`candidates`], to which [`symmetry`] and [`inertia`] add, and ranks them by the weights of
//! [`way`], for which [`level`] says how flat the joint can be. [`rim`] follows the edge of the
//! shadow, [`parting`] lays the line along it, [`joint`] leads it out to the flask, and [`blocks`]
//! are the two halves of sand.
//! [`draught`] holds the lean of the walls against what the rules ask at their depth,
//! [`walls`] measures metal and sand that may be too thin, and inside corners, [`balls`] the
//! largest ball in the metal at each facet. [`maps`] brings all of it together facet by facet.

pub mod balls;
pub mod blocks;
pub mod candidates;
pub mod columns;
pub mod draught;
pub mod frame;
pub mod inertia;
pub mod joint;
pub mod level;
pub mod maps;
pub mod parting;
pub mod remedy;
pub mod rim;
pub mod search;
pub mod symmetry;
mod trapped;
pub mod undercut;
pub mod walls;
pub mod way;

use thiserror::Error;

use crate::mesh::Mesh;
use crate::vector::{Vector, norm, sub};

/// How closely to look, and how much the pattern is loosened.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrawSettings {
    /// How far the pattern is rapped sideways in its sand before it is drawn, mm: what overhangs
    /// by less than this does not hold.
    pub play_mm: f64,
    /// Columns along the longer side of the part as seen along the draw.
    pub columns: usize,
}

/// Why a part cannot be looked at along a direction.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum DrawError {
    /// A direction of no length, or not a number.
    #[error("the direction {up:?} points nowhere: give one with a length")]
    NoDirection {
        /// What was given.
        up: Vector,
    },
    /// A mesh without facets, or without any extent.
    #[error("there is no part: the mesh holds no facets of any size")]
    NoPart,
}

/// Rapping play of a part this small, mm, and how much is added up to a part this large: judgement
/// of the trade, no source. With less every ripple of a printed skin would hold; with more a true
/// ledge of a small part would be overlooked.
const PLAY_MM: [f64; 2] = [0.1, 0.3];
const PLAY_SIZES_MM: [f64; 2] = [50.0, 300.0];

/// Columns along the longer side: on a part of 100 mm they stand 0.3 mm apart, about the rapping
/// play, so that no ledge which holds slips between them. Twice as many take four times as long.
const COLUMNS: usize = 320;

impl DrawSettings {
    /// Settings that suit the size of a part.
    pub fn suiting(mesh: &Mesh) -> DrawSettings {
        let [low, high] = mesh.bounds();
        let longest = sub(high, low).into_iter().fold(0.0, f64::max);
        let [small, large] = PLAY_SIZES_MM;
        let share = ((longest - small) / (large - small)).clamp(0.0, 1.0);
        DrawSettings {
            play_mm: PLAY_MM[0] + share * (PLAY_MM[1] - PLAY_MM[0]),
            columns: COLUMNS,
        }
    }
}

/// The frame of a draw, once direction and part are sound.
fn sound(mesh: &Mesh, up: Vector) -> Result<frame::DrawFrame, DrawError> {
    let frame = frame::DrawFrame::drawing_along(up).ok_or(DrawError::NoDirection { up })?;
    let [low, high] = mesh.bounds();
    let size = norm(sub(high, low));
    match size.is_finite() && size > 0.0 {
        true => Ok(frame),
        false => Err(DrawError::NoPart),
    }
}
