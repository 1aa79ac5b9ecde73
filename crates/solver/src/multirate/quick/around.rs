//! What surrounds quick cells: faces of the box and of voids.

use super::{Quick, place};
use crate::link::Outer;

/// Surroundings of a cell.
#[derive(Debug, Clone, Copy)]
pub struct Around {
    /// Where it stands packed.
    pub from: u32,
    /// Where it stands with a rim.
    pub here: u32,
    /// Where it stands in the lists of runs that have surroundings.
    pub dense: u32,
    /// Its volume, m³.
    pub volume_m3: f64,
    /// What is around.
    pub outer: Outer,
}

impl Quick {
    /// Takes what comes from surroundings as a straight line of the temperature of each cell.
    pub fn look_around(&mut self, celsius: &[f32], w_mk: &[f32]) {
        self.around_rate.fill(0.0);
        self.around_c.fill(0.0);
        self.steady_w = 0.0;
        for around in &self.arounds {
            let here = around.here as usize;
            let inflow = around
                .outer
                .inflow(f64::from(celsius[here]), f64::from(w_mk[here]));
            let (block, lane) = place(around.from);
            self.blocks[block].source[lane] += (inflow.w / around.volume_m3) as f32;
            self.steady_w += inflow.w;
            let dense = around.dense as usize;
            let (rate, mean_c) = (self.around_rate[dense], self.around_c[dense]);
            let added = (inflow.w_k / around.volume_m3) as f32;
            if added > 0.0 {
                let both = rate + added;
                self.around_rate[dense] = both;
                self.around_c[dense] = (rate * mean_c + added * inflow.outside_c as f32) / both;
            }
        }
    }

    /// What comes from surroundings to a run, W.
    pub fn around_w(&self, dense: usize, celsius: &[f32]) -> f64 {
        let mut inflow_w = 0.0;
        for (i, celsius) in celsius.iter().enumerate() {
            let rate = self.around_rate[dense + i];
            if rate > 0.0 {
                let gain = rate * (self.around_c[dense + i] - celsius);
                inflow_w += f64::from(gain) * f64::from(self.around_m3[dense + i]);
            }
        }
        inflow_w
    }
}
