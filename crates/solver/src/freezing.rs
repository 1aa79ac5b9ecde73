//! What is written down of every cell that freezes, while the run passes by.
//!
//! A crossing is placed within the step by drawing the heat content straight over the step.

use crate::material::Material;

/// What happened to the cells that can freeze, one entry a cell in each list; not a number where it
/// has not happened.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Freezing {
    /// The cells, by where they stand in the list of all cells.
    pub cells: Vec<u32>,
    /// When the first of it was solid, s.
    pub begins_s: Vec<f32>,
    /// When so much of it was solid as was asked for, s.
    pub passes_s: Vec<f32>,
    /// When the last of it was solid, s.
    pub ends_s: Vec<f32>,
    /// Temperature gradient shortly before the end, K/m, over cells of the same material.
    pub gradient_k_m: Vec<f32>,
    /// How fast it cooled then, K/s.
    pub cooling_k_s: Vec<f32>,
}

impl Freezing {
    /// When the last cell was solid through, s, of those that froze.
    pub fn last_s(&self) -> Option<f64> {
        let ended = self.ends_s.iter().filter(|end| end.is_finite());
        ended.map(|&end| f64::from(end)).reduce(f64::max)
    }

    /// Whether it tells of these cells, one entry each in every list.
    pub fn is_of(&self, cells: &[u32]) -> bool {
        let lists = [
            &self.begins_s,
            &self.passes_s,
            &self.ends_s,
            &self.gradient_k_m,
            &self.cooling_k_s,
        ];
        self.cells == cells && lists.iter().all(|list| list.len() == cells.len())
    }
}

/// Heat contents of a material that are watched, J/m³.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Levels {
    /// The first of it is solid below.
    pub begins: f64,
    /// The share asked for is solid below.
    pub passes: f64,
    /// Gradient and cooling are taken here.
    pub gradient: f64,
    /// All of it is solid from here down.
    pub ends: f64,
}

/// Where in the freezing range gradient and cooling are taken: a tenth above its lower end.
const GRADIENT_AT: f64 = 0.1;

impl Levels {
    /// The levels of a material that freezes, with the solid share that is asked for.
    pub fn of(material: &Material, share: f64) -> Option<Levels> {
        let begins = material.heat_at_solid(0.0)?;
        let ends = material.heat_at_solid(1.0)?;
        let (solidus_c, liquidus_c) = (material.at(ends).celsius, material.at(begins).celsius);
        let gradient = match liquidus_c > solidus_c {
            true => material.heat_at(solidus_c + GRADIENT_AT * (liquidus_c - solidus_c)),
            // At an arrest the temperature says nothing, the heat that is left does.
            false => ends + GRADIENT_AT * (begins - ends),
        };
        let passes = material.heat_at_solid(share)?;
        Some(Levels {
            begins,
            passes,
            gradient,
            ends,
        })
    }

    /// All of them above a base, in single precision: begins, passes, gradient, ends.
    pub fn above(&self, base_j_m3: f64) -> [f32; 4] {
        let all = [self.begins, self.passes, self.gradient, self.ends];
        all.map(|level| (level - base_j_m3) as f32)
    }
}

/// The share of a step at which a falling heat content reached a level.
pub fn reached(level: f64, before: f64, after: f64) -> Option<f64> {
    (before > level && after <= level).then(|| (before - level) / (before - after))
}
