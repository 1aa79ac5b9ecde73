//! What a printed pattern weighs, and what makes it stand the rammer.

use measure::matter::{Density, Mass};
use rayon::prelude::*;
use thiserror::Error;

use super::volume_mm3;
use crate::distance::{is_inside, nearest};
use crate::mesh::Mesh;
use crate::tree::Tree;

/// How a pattern is printed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Printing {
    /// Density of the plastic.
    pub density: Density,
    /// Thickness of the walls, floors and roofs, mm.
    pub wall_mm: f64,
    /// Share of what lies within the walls that is filled.
    pub infill: f64,
    /// Height of a layer, mm.
    pub layer_mm: f64,
}

/// What goes into a print.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Filament {
    /// Plastic, supports not counted.
    pub mass: Mass,
    /// Room of the walls, mm³.
    pub walls_mm3: f64,
    /// Room within the walls, mm³.
    pub within_mm3: f64,
}

/// Something about a print that a founder should do otherwise, or know.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PrintAdvice {
    /// Walls too thin to be rammed against and rubbed down.
    ThinWalls {
        /// As given, mm.
        has_mm: f64,
        /// Wanted, mm.
        wanted_mm: f64,
    },
    /// Too little within the walls to bear the rammer.
    LightInfill {
        /// As given, a share.
        has: f64,
        /// Wanted, a share.
        wanted: f64,
    },
    /// Layers so high that the sand keys into them: fill and rub down along the draw.
    CoarseLayers {
        /// As given, mm.
        has_mm: f64,
        /// Wanted, mm.
        wanted_mm: f64,
    },
    /// Printed on the face of the joint the layers lie across the draw: seal and rub the walls
    /// down along it before the first mould.
    RubAlongDraw,
}

/// Why nothing was worked out.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum FilamentError {
    /// A wall that no printer lays down.
    #[error("a wall of {wall_mm} mm is none: take 0.2 to 20 mm")]
    Wall {
        /// As given.
        wall_mm: f64,
    },
    /// A share that is none.
    #[error("an infill of {:.0} % is none: take 0 to 100 %", infill * 100.0)]
    Infill {
        /// As given.
        infill: f64,
    },
}

/// Wall that stands ramming and still stands when its layers are rubbed down, mm: five lines of a
/// nozzle of 0.4 mm (common practice, no source).
const STURDY_WALL_MM: f64 = 2.0;

/// Infill that bears a roof of [`STURDY_WALL_MM`] under the rammer (common practice, no source).
const STURDY_INFILL: f64 = 0.25;

/// Layers up to this height, mm, are closed by two coats of filler (common practice, no source).
const FINE_LAYER_MM: f64 = 0.2;

/// Places within the solid that are asked how deep they lie. The share of the walls is then known
/// to about half a per cent; ten times as many give a third of that.
const PLACES: usize = 40_000;

/// Plastic of a solid print.
///
/// The walls are all places nearer to the skin than they are thick; they are counted at places
/// spread evenly, so that corners and thin webs are not counted twice.
///
/// # Errors
///
/// Walls or an infill that are none.
pub fn filament(mesh: &Mesh, printing: &Printing) -> Result<Filament, FilamentError> {
    let Printing {
        wall_mm, infill, ..
    } = *printing;
    if !(0.2..=20.0).contains(&wall_mm) {
        return Err(FilamentError::Wall { wall_mm });
    }
    if !(0.0..=1.0).contains(&infill) {
        return Err(FilamentError::Infill { infill });
    }
    let whole_mm3 = volume_mm3(mesh);
    let walls_mm3 = whole_mm3 * share_of_walls(mesh, wall_mm);
    let within_mm3 = whole_mm3 - walls_mm3;
    let filled_m3 = (walls_mm3 + infill * within_mm3) * 1e-9;
    Ok(Filament {
        mass: Mass::from_kg(filled_m3 * printing.density.as_kg_per_m3()),
        walls_mm3,
        within_mm3,
    })
}

fn share_of_walls(mesh: &Mesh, wall_mm: f64) -> f64 {
    let tree = Tree::over(mesh);
    let [low, high] = mesh.bounds();
    let box_mm3: f64 = (0..3).map(|axis| high[axis] - low[axis]).product();
    let within = (volume_mm3(mesh) / box_mm3.max(f64::MIN_POSITIVE)).clamp(0.02, 1.0);
    let tried = (PLACES as f64 / within) as usize;
    let (all, in_walls) = (1..=tried)
        .into_par_iter()
        .map(|number| {
            let place = [0, 1, 2].map(|axis| {
                let share = (number as f64 * SPREAD[axis]).fract();
                low[axis] + share * (high[axis] - low[axis])
            });
            match is_inside(mesh, &tree, place) {
                true => (
                    1,
                    usize::from(nearest(mesh, &tree, place, wall_mm).is_some()),
                ),
                false => (0, 0),
            }
        })
        .reduce(|| (0, 0), |a, b| (a.0 + b.0, a.1 + b.1));
    in_walls as f64 / (all as f64).max(1.0)
}

/// Steps of a sequence that fills a box evenly: powers of the inverse of the real root of
/// x⁴ = x + 1. A lattice would fall in step with walls that lie along the axes.
const SPREAD: [f64; 3] = [
    0.819_172_513_396_164_5,
    0.671_043_606_703_789_2,
    0.549_700_477_901_970_2,
];

/// What a founder should do otherwise, or know, before a print is rammed up.
pub fn advice(printing: &Printing) -> Vec<PrintAdvice> {
    let mut advice = Vec::new();
    if printing.wall_mm < STURDY_WALL_MM {
        advice.push(PrintAdvice::ThinWalls {
            has_mm: printing.wall_mm,
            wanted_mm: STURDY_WALL_MM,
        });
    }
    if printing.infill < STURDY_INFILL {
        advice.push(PrintAdvice::LightInfill {
            has: printing.infill,
            wanted: STURDY_INFILL,
        });
    }
    if printing.layer_mm > FINE_LAYER_MM {
        advice.push(PrintAdvice::CoarseLayers {
            has_mm: printing.layer_mm,
            wanted_mm: FINE_LAYER_MM,
        });
    }
    advice.push(PrintAdvice::RubAlongDraw);
    advice
}
