//! The table of a material as a sum of clamped ramps, for whole rows in single precision.
//!
//! Heat content is counted from the solidus where there is one, so that the numbers carried are
//! small where their differences matter. Each piece of the table adds its slope times the clamped
//! heat content; there is no branch, and a row of cells goes through registers as wide as there
//! are.

use crate::material::{Knot, Material};

/// One piece: from the clamped heat content its anchor is taken, the rest times the slope.
#[derive(Debug, Clone, Copy)]
struct Ramp {
    low: f32,
    high: f32,
    anchor: f32,
    slope: f32,
}

/// A figure of a material along its heat content.
#[derive(Debug, Clone)]
pub struct Ramps {
    start: f32,
    ramps: Vec<Ramp>,
}

/// A material in single precision.
#[derive(Debug, Clone)]
pub struct Table {
    /// Heat content that is called nought, J/m³.
    pub base_j_m3: f64,
    /// Temperature along heat content above the base.
    pub celsius: Ramps,
    /// Conductivity along heat content above the base.
    pub w_mk: Ramps,
    /// Conductivity, where it does not change.
    pub steady_w_mk: Option<f32>,
    /// Heat capacity, where one slope and one conductivity say it all.
    pub plain_j_m3k: Option<f32>,
    /// Smallest heat capacity, J/(m³ K).
    pub least_j_m3k: f32,
}

/// Share of the whole range of a table over which a jump of conductivity is drawn out: far less
/// than a step changes, and wide enough to have a slope in single precision.
const JUMP: f64 = 1e-5;

impl Table {
    /// The table of a material.
    pub fn of(material: &Material) -> Table {
        let knots = &material.knots;
        let base = knots.iter().take_while(|knot| knot.solid == 1.0).count() - 1;
        let base = if material.freezes() { base } else { 0 };
        let first = knots[0].w_mk;
        let steady = knots.iter().all(|knot| knot.w_mk == first);
        Table {
            base_j_m3: knots[base].j_m3,
            celsius: temperature(knots, base),
            w_mk: conductivity(knots, base),
            steady_w_mk: steady.then_some(first as f32),
            plain_j_m3k: material
                .is_plain()
                .then(|| material.least_capacity() as f32),
            least_j_m3k: material.least_capacity() as f32,
        }
    }
}

impl Ramps {
    /// The figure of each cell of a row.
    #[inline(always)]
    pub fn fill(&self, heat: &[f32], figures: &mut [f32]) {
        let heat = &heat[..figures.len()];
        self.fill_from(|i| heat[i], figures);
    }

    /// The figure of each cell of a row whose heat content has changed.
    #[inline(always)]
    pub fn fill_changed(&self, heat: &[f32], change: &[f32], figures: &mut [f32]) {
        let (heat, change) = (&heat[..figures.len()], &change[..figures.len()]);
        self.fill_from(|i| heat[i] + change[i], figures);
    }

    #[inline(always)]
    fn fill_from(&self, heat: impl Fn(usize) -> f32, figures: &mut [f32]) {
        match self.ramps.as_slice() {
            [] => figures.fill(self.start),
            [one] => fill_with(self.start, [*one], heat, figures),
            [one, two] => fill_with(self.start, [*one, *two], heat, figures),
            [one, two, three] => fill_with(self.start, [*one, *two, *three], heat, figures),
            [a, b, c, d] => fill_with(self.start, [*a, *b, *c, *d], heat, figures),
            more => {
                figures.fill(self.start);
                more.iter().for_each(|ramp| add(ramp, &heat, figures));
            }
        }
    }

    /// The figure at one heat content above the base.
    pub fn at(&self, heat: f32) -> f32 {
        self.ramps
            .iter()
            .fold(self.start, |sum, ramp| sum + ramp.at(heat))
    }
}

impl Ramp {
    #[inline(always)]
    fn at(&self, heat: f32) -> f32 {
        let above = if heat > self.low { heat } else { self.low };
        let within = if above < self.high { above } else { self.high };
        self.slope * (within - self.anchor)
    }
}

#[inline(always)]
fn fill_with<const N: usize>(
    start: f32,
    ramps: [Ramp; N],
    heat: impl Fn(usize) -> f32,
    figures: &mut [f32],
) {
    for (i, figure) in figures.iter_mut().enumerate() {
        let heat = heat(i);
        let mut sum = start;
        for ramp in &ramps {
            sum += ramp.at(heat);
        }
        *figure = sum;
    }
}

#[inline(always)]
fn add(ramp: &Ramp, heat: impl Fn(usize) -> f32, figures: &mut [f32]) {
    for (i, figure) in figures.iter_mut().enumerate() {
        *figure += ramp.at(heat(i));
    }
}

/// Ramps of temperature: the two ends run on for ever.
fn temperature(knots: &[Knot], base: usize) -> Ramps {
    let from = knots[base].j_m3;
    let last = knots.len() - 2;
    let mut ramps = Vec::new();
    for (piece, pair) in knots.windows(2).enumerate() {
        let (low, high) = (pair[0].j_m3 - from, pair[1].j_m3 - from);
        let rise_k = pair[1].celsius - pair[0].celsius;
        if rise_k > 0.0 {
            ramps.push(Ramp {
                low: if piece == 0 {
                    f32::NEG_INFINITY
                } else {
                    low as f32
                },
                high: if piece == last {
                    f32::INFINITY
                } else {
                    high as f32
                },
                anchor: anchor(low, high),
                slope: (rise_k / (high - low)) as f32,
            });
        }
    }
    Ramps {
        start: knots[base].celsius as f32,
        ramps,
    }
}

/// Ramps of conductivity: it stays beyond the ends.
fn conductivity(knots: &[Knot], base: usize) -> Ramps {
    let from = knots[base].j_m3;
    let whole = knots[knots.len() - 1].j_m3 - knots[0].j_m3;
    let mut start = knots[0].w_mk;
    let mut ramps = Vec::new();
    for pair in knots.windows(2) {
        let rise = pair[1].w_mk - pair[0].w_mk;
        if rise == 0.0 {
            continue;
        }
        let low = pair[0].j_m3 - from;
        let high = (pair[1].j_m3 - from).max(low + JUMP * whole);
        let slope = rise / (high - low);
        let anchor = anchor(low, high);
        // What the ramp gives far below it has to be nothing.
        start += slope * (f64::from(anchor) - low);
        let (low, high, slope) = (low as f32, high as f32, slope as f32);
        ramps.push(Ramp {
            low,
            high,
            anchor,
            slope,
        });
    }
    Ramps {
        start: start as f32,
        ramps,
    }
}

/// The end of a piece that lies towards the base.
fn anchor(low: f64, high: f64) -> f32 {
    if low >= 0.0 {
        low as f32
    } else {
        high.min(0.0) as f32
    }
}

#[cfg(test)]
mod tests {
    use super::Table;
    use crate::material::{Freezes, Material, Phase};

    #[test]
    fn ramps_say_what_the_table_says() {
        let solid = Phase {
            j_m3k: 2.7e6,
            w_mk: 150.0,
        };
        let liquid = Phase {
            j_m3k: 2.5e6,
            w_mk: 90.0,
        };
        let (solidus_c, liquidus_c) = (555.0, 615.0);
        let freezes = Freezes {
            solid,
            liquid,
            latent_j_m3: 9.7e8,
            solidus_c,
            liquidus_c,
        };
        let metal = Material::freezing("metal", freezes);
        let filling = Phase {
            j_m3k: 1.7e6,
            w_mk: 0.6,
        };
        for material in [metal, Material::plain("filling", filling)] {
            let table = Table::of(&material);
            for celsius in [
                -20.0, 25.0, 400.0, 554.0, 556.0, 600.0, 616.0, 700.0, 1500.0,
            ] {
                let heat = (material.heat_at(celsius) - table.base_j_m3) as f32;
                let state = material.at(material.heat_at(celsius));
                assert!(
                    (table.celsius.at(heat) - celsius as f32).abs() < 1e-3,
                    "{celsius}"
                );
                assert!(
                    (table.w_mk.at(heat) - state.w_mk as f32).abs() < 1e-3,
                    "{celsius}"
                );
            }
        }
    }
}
