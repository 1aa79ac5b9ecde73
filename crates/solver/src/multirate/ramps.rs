//! The table of a material as a sum of clamped ramps, for whole rows in single precision.
//!
//! Heat content is counted from the solidus where there is one, so that the numbers carried are
//! small where their differences matter. Each piece of the table adds its slope times the clamped
//! heat content; there is no branch, and a row of cells goes through registers as wide as there
//! are.

use pulp::Simd;

use crate::material::{Knot, Material};
use crate::multirate::wide::{LANES, Wide, load};

/// One piece: from the clamped heat content its anchor is taken, the rest times the slope.
#[derive(Debug, Clone, Copy)]
pub struct Ramp {
    /// Lower end, J/m³.
    pub low: f32,
    /// Upper end, J/m³.
    pub high: f32,
    /// What is taken from the clamped heat content, J/m³.
    pub anchor: f32,
    /// What it is taken times.
    pub slope: f32,
}

/// A figure of a material along its heat content.
#[derive(Debug, Clone)]
pub struct Ramps {
    /// What all of them are added to.
    pub start: f32,
    /// The pieces.
    pub ramps: Vec<Ramp>,
    /// Whether the first and the last of them run on for ever.
    open: bool,
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

/// What gives a figure of a register of cells from their heat contents.
pub trait Figure<S: Simd> {
    /// The figures of register `at` of the row.
    fn of(&self, simd: S, at: usize, heat: Wide<S>) -> Wide<S>;
}

/// What is done to a row once its figure is known.
pub trait WithFigure<S: Simd> {
    /// Does it.
    fn with<F: Figure<S>>(self, figure: &F);
}

/// Ramps whose number the compiler knows; where they are open, both ends run on for ever.
struct Few<const N: usize, const OPEN: bool> {
    start: f32,
    ramps: [Ramp; N],
}

/// The figure of a block that holds several materials: ramp upon ramp with a material in each lane.
#[derive(Debug, Clone, PartialEq)]
pub struct Blend {
    start: [f32; LANES],
    /// Low end, high end, anchor and slope of each ramp.
    ramps: Vec<[[f32; LANES]; 4]>,
}

impl Blend {
    /// The figures of the cells of a block.
    pub fn of(figures: [&Ramps; LANES]) -> Blend {
        let most = figures.iter().map(|ramps| ramps.ramps.len()).max();
        let ramp = |number: usize| {
            // What has fewer ramps than another adds nothing from there on.
            let given = figures.map(|ramps| ramps.ramps.get(number).copied());
            let of = |pick: fn(Ramp) -> f32| given.map(|ramp| ramp.map_or(0.0, pick));
            [
                of(|ramp| ramp.low),
                of(|ramp| ramp.high),
                of(|ramp| ramp.anchor),
                of(|ramp| ramp.slope),
            ]
        };
        Blend {
            start: figures.map(|ramps| ramps.start),
            ramps: (0..most.unwrap_or(0)).map(ramp).collect(),
        }
    }
}

impl Ramps {
    /// Does something to a row with these ramps.
    #[inline(always)]
    pub fn give<S: Simd>(&self, work: impl WithFigure<S>) {
        let start = self.start;
        match (self.open, self.ramps.as_slice()) {
            (true, &[a]) => work.with(&Few::<1, true> { start, ramps: [a] }),
            (true, &[a, b]) => work.with(&Few::<2, true> {
                start,
                ramps: [a, b],
            }),
            (true, &[a, b, c]) => work.with(&Few::<3, true> {
                start,
                ramps: [a, b, c],
            }),
            (true, &[a, b, c, d]) => work.with(&Few::<4, true> {
                start,
                ramps: [a, b, c, d],
            }),
            _ => work.with(self),
        }
    }

    /// A figure that is the number itself.
    pub fn echo() -> Ramps {
        Ramps {
            start: 0.0,
            ramps: vec![Ramp {
                low: f32::NEG_INFINITY,
                high: f32::INFINITY,
                anchor: 0.0,
                slope: 1.0,
            }],
            open: true,
        }
    }

    /// The figure at one heat content above the base.
    pub fn at(&self, heat: f32) -> f32 {
        self.ramps
            .iter()
            .fold(self.start, |sum, ramp| sum + ramp.at(heat))
    }
}

impl<S: Simd> Figure<S> for Ramps {
    #[inline(always)]
    fn of(&self, simd: S, _: usize, heat: Wide<S>) -> Wide<S> {
        let mut sum = Wide::all(simd, self.start);
        for ramp in &self.ramps {
            sum = sum + ramp.of::<S, false, false>(simd, heat);
        }
        sum
    }
}

impl<S: Simd, const N: usize, const OPEN: bool> Figure<S> for Few<N, OPEN> {
    #[inline(always)]
    fn of(&self, simd: S, _: usize, heat: Wide<S>) -> Wide<S> {
        let mut sum = Wide::all(simd, self.start);
        for (at, ramp) in self.ramps.iter().enumerate() {
            let part = match (OPEN && at == 0, OPEN && at + 1 == N) {
                (true, true) => ramp.of::<S, true, true>(simd, heat),
                (true, false) => ramp.of::<S, true, false>(simd, heat),
                (false, true) => ramp.of::<S, false, true>(simd, heat),
                (false, false) => ramp.of::<S, false, false>(simd, heat),
            };
            sum = sum + part;
        }
        sum
    }
}

impl<S: Simd> Figure<S> for Blend {
    #[inline(always)]
    fn of(&self, simd: S, at: usize, heat: Wide<S>) -> Wide<S> {
        let mut sum = load(simd, &self.start, at);
        for [low, high, anchor, slope] in &self.ramps {
            let within = heat.max(load(simd, low, at)).min(load(simd, high, at));
            sum = sum + load(simd, slope, at) * (within - load(simd, anchor, at));
        }
        sum
    }
}

impl Ramp {
    #[inline(always)]
    fn at(&self, heat: f32) -> f32 {
        let above = if heat > self.low { heat } else { self.low };
        let within = if above < self.high { above } else { self.high };
        self.slope * (within - self.anchor)
    }

    /// The same of a register; an open end has nothing to hold the heat content at.
    #[inline(always)]
    fn of<S: Simd, const OPEN_LOW: bool, const OPEN_HIGH: bool>(
        &self,
        simd: S,
        heat: Wide<S>,
    ) -> Wide<S> {
        let all = |number| Wide::all(simd, number);
        let above = if OPEN_LOW {
            heat
        } else {
            heat.max(all(self.low))
        };
        let within = if OPEN_HIGH {
            above
        } else {
            above.min(all(self.high))
        };
        all(self.slope) * (within - all(self.anchor))
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
        open: true,
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
        open: false,
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
