//! The first moments of contact, when half a cell of a poor conductor resists too much.
//!
//! Between what freezes and what does not, heat passes half a cell of the latter. Until it has come
//! as far as the middle of that cell, the way that it has really gone is shorter: a half-space
//! whose face jumps to a temperature takes `k (T - T0) / sqrt(pi a t)`. So the half cell counts as
//! `min(half, sqrt(pi a t))`, which takes a few seconds with cells of a few millimetres. What is
//! missing without it is heat that the first cell should have taken: freezing times on coarse
//! cells are too long.
//!
//! Law: flux into a half-space, from Carslaw and Jaeger's book on conduction (from memory).

use crate::case::Case;
use crate::link::{coldest_c, hottest_c};

/// How far heat comes into each material.
#[derive(Debug, Clone)]
pub struct Early {
    /// `sqrt(pi a)` of each material that does not freeze, m for a root of a second.
    reach: Vec<Option<f64>>,
}

impl Early {
    /// That of a case where it is wished, else none.
    pub fn of(case: &Case, wished: bool) -> Early {
        let (cold, hot) = (coldest_c(case), hottest_c(case));
        let reach = |material: &crate::material::Material| {
            let corrected = wished && hot > cold && !material.freezes();
            corrected.then(|| (std::f64::consts::PI * material.diffusivity(cold, hot)).sqrt())
        };
        Early {
            reach: case.materials.iter().map(reach).collect(),
        }
    }

    /// How far heat comes into either side of a face between two materials, m for a root of a
    /// second: endless where the half cell always counts whole.
    pub fn reach(&self, [here, there]: [u8; 2]) -> [f64; 2] {
        let of = |number: u8| self.reach.get(usize::from(number)).copied().flatten();
        let endless = f64::INFINITY;
        match (of(here), of(there)) {
            (Some(reach), None) => [reach, endless],
            (None, Some(reach)) => [endless, reach],
            // Both freeze or neither does.
            _ => [endless; 2],
        }
    }
}

/// The root of the time since contact that stands for a step, s^0.5: one over the mean of
/// `1/sqrt(t)` over it.
pub fn root_of(from_s: f64, to_s: f64) -> f64 {
    0.5 * (from_s.max(0.0).sqrt() + to_s.sqrt())
}
