//! What a cell is filled with, as one table along its heat content.
//!
//! Temperature, conductivity and solid fraction are read off the heat content per volume, never the
//! other way round. An arrest at one temperature is then a flat piece of the table like any other,
//! and so is the heat that boils water out of a damp filling.

use thiserror::Error;

/// One line of the table of a material.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Knot {
    /// Temperature, °C.
    pub celsius: f64,
    /// Heat content, J/m³, from wherever the table likes to count.
    pub j_m3: f64,
    /// Conductivity, W/(m K).
    pub w_mk: f64,
    /// Solid share, 1 solid to 0 liquid; 1 throughout for what does not freeze.
    pub solid: f64,
}

/// A material: its table runs straight between knots and goes on as in its end pieces beyond them,
/// but for conductivity and solid share, which stay.
#[derive(Debug, Clone, PartialEq)]
pub struct Material {
    /// What errors call it.
    pub name: String,
    /// Heat content never falls, temperature never falls; two knots of one heat content have one
    /// temperature and let the conductivity jump.
    pub knots: Vec<Knot>,
}

/// Heat capacity and conductivity that do not change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Phase {
    /// Heat capacity by volume, J/(m³ K).
    pub j_m3k: f64,
    /// Conductivity, W/(m K).
    pub w_mk: f64,
}

/// How a material freezes, latent heat spread evenly over its range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Freezes {
    /// Below the range.
    pub solid: Phase,
    /// Above the range.
    pub liquid: Phase,
    /// Latent heat by volume, J/m³.
    pub latent_j_m3: f64,
    /// Where the last of it is solid, °C.
    pub solidus_c: f64,
    /// Where the first of it is solid, °C; the same as the solidus for an arrest.
    pub liquidus_c: f64,
}

/// What a table says at one heat content.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct State {
    /// Temperature, °C.
    pub celsius: f64,
    /// Conductivity, W/(m K).
    pub w_mk: f64,
    /// Solid share.
    pub solid: f64,
}

/// What is wrong with the table of a material.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum MaterialError {
    /// Not enough of it.
    #[error("material \"{name}\" has {knots} lines in its table: give at least two")]
    Short {
        /// The material.
        name: String,
        /// Lines there are.
        knots: usize,
    },
    /// A figure that is none, or no conductivity.
    #[error(
        "material \"{name}\", line {line}: every figure has to be a number, the conductivity above \
         zero and the solid share between 0 and 1"
    )]
    Figure {
        /// The material.
        name: String,
        /// Line of the table, from 1.
        line: usize,
    },
    /// A table that runs back.
    #[error(
        "material \"{name}\", line {line}: temperature and heat content may not fall from line to \
         line, the solid share may not rise, and at one heat content there is one temperature"
    )]
    Falls {
        /// The material.
        name: String,
        /// Line of the table, from 1.
        line: usize,
    },
    /// An end piece without a slope.
    #[error(
        "material \"{name}\": the {end} piece of its table has to rise in temperature and in heat \
         content, since it goes on beyond the table"
    )]
    FlatEnd {
        /// The material.
        name: String,
        /// Which end.
        end: &'static str,
    },
}

/// How far the two end pieces of a made table reach; any length draws the same straight line.
const END_PIECE_K: f64 = 1000.0;

impl Material {
    /// One that does not freeze and does not change.
    pub fn plain(name: &str, phase: Phase) -> Material {
        let knot = |celsius| Knot {
            celsius,
            j_m3: phase.j_m3k * celsius,
            w_mk: phase.w_mk,
            solid: 1.0,
        };
        Material {
            name: name.to_owned(),
            knots: vec![knot(0.0), knot(END_PIECE_K)],
        }
    }

    /// One that freezes over a range or at one temperature; heat is counted from the solidus. In
    /// the range the capacity is the mean of both phases and the conductivity goes over evenly.
    pub fn freezing(name: &str, freezes: Freezes) -> Material {
        let Freezes { solid, liquid, .. } = freezes;
        let range_k = freezes.liquidus_c - freezes.solidus_c;
        let full = 0.5 * (solid.j_m3k + liquid.j_m3k) * range_k + freezes.latent_j_m3;
        let knot = |celsius, j_m3, phase: Phase, solid| Knot {
            celsius,
            j_m3,
            w_mk: phase.w_mk,
            solid,
        };
        let below = -solid.j_m3k * END_PIECE_K;
        let above = full + liquid.j_m3k * END_PIECE_K;
        Material {
            name: name.to_owned(),
            knots: vec![
                knot(freezes.solidus_c - END_PIECE_K, below, solid, 1.0),
                knot(freezes.solidus_c, 0.0, solid, 1.0),
                knot(freezes.liquidus_c, full, liquid, 0.0),
                knot(freezes.liquidus_c + END_PIECE_K, above, liquid, 0.0),
            ],
        }
    }

    /// What the table says at a heat content, J/m³.
    pub fn at(&self, j_m3: f64) -> State {
        let (low, high) = self.piece(|knot| knot.j_m3 <= j_m3);
        let share = (j_m3 - low.j_m3) / (high.j_m3 - low.j_m3);
        let within = share.clamp(0.0, 1.0);
        State {
            celsius: low.celsius + share * (high.celsius - low.celsius),
            w_mk: low.w_mk + within * (high.w_mk - low.w_mk),
            solid: low.solid + within * (high.solid - low.solid),
        }
    }

    /// Heat content at a temperature, J/m³; at an arrest with all its latent heat still in it.
    pub fn heat_at(&self, celsius: f64) -> f64 {
        let (low, high) = self.piece(|knot| knot.celsius <= celsius);
        let share = (celsius - low.celsius) / (high.celsius - low.celsius);
        low.j_m3 + share * (high.j_m3 - low.j_m3)
    }

    /// Heat content at which a share is solid, J/m³: the lowest with none of it solid for 0, the
    /// highest with all of it solid for 1. None for what does not freeze.
    pub fn heat_at_solid(&self, solid: f64) -> Option<f64> {
        let high = self.knots.iter().position(|knot| knot.solid < 1.0)?;
        if solid >= 1.0 {
            return Some(self.knots[high - 1].j_m3);
        }
        let above = self.knots.iter().position(|knot| knot.solid <= solid)?;
        let (low, high) = (self.knots[above - 1], self.knots[above]);
        let share = (low.solid - solid) / (low.solid - high.solid);
        Some(low.j_m3 + share * (high.j_m3 - low.j_m3))
    }

    /// Whether its solid share changes.
    pub fn freezes(&self) -> bool {
        self.knots.iter().any(|knot| knot.solid < 1.0)
    }

    /// Whether one slope and one conductivity say all about it.
    pub fn is_plain(&self) -> bool {
        let ends = self.knots.first().zip(self.knots.last());
        let Some((first, last)) = ends else {
            return true;
        };
        let slope = (last.j_m3 - first.j_m3) / (last.celsius - first.celsius);
        self.knots.iter().all(|knot| {
            let straight = first.j_m3 + slope * (knot.celsius - first.celsius);
            knot.w_mk == first.w_mk
                && (knot.j_m3 - straight).abs() <= 1e-12 * (last.j_m3 - first.j_m3)
        }) && !self.freezes()
    }

    /// Smallest heat capacity by volume anywhere in the table, J/(m³ K).
    pub fn least_capacity(&self) -> f64 {
        let slope = |pair: &[Knot]| {
            let rise_k = pair[1].celsius - pair[0].celsius;
            (rise_k > 0.0).then(|| (pair[1].j_m3 - pair[0].j_m3) / rise_k)
        };
        let slopes = self.knots.windows(2).filter_map(slope);
        slopes.fold(f64::INFINITY, f64::min)
    }

    /// Largest conductivity anywhere in the table, W/(m K).
    pub fn most_conductivity(&self) -> f64 {
        self.knots.iter().map(|knot| knot.w_mk).fold(0.0, f64::max)
    }

    /// Diffusivity between two temperatures, m²/s: mean conductivity over mean heat capacity,
    /// latent heat and all.
    pub fn diffusivity(&self, cold_c: f64, hot_c: f64) -> f64 {
        let inner = self.knots.iter().map(|knot| knot.celsius);
        let inner = inner.filter(|&celsius| celsius > cold_c && celsius < hot_c);
        let marks: Vec<f64> = [cold_c].into_iter().chain(inner).chain([hot_c]).collect();
        let w_mk = |celsius| self.at(self.heat_at(celsius)).w_mk;
        let piece = |pair: &[f64]| 0.5 * (w_mk(pair[0]) + w_mk(pair[1])) * (pair[1] - pair[0]);
        let w_m: f64 = marks.windows(2).map(piece).sum();
        w_m / (self.heat_at(hot_c) - self.heat_at(cold_c))
    }

    /// Looks the table over.
    pub fn check(&self) -> Result<(), MaterialError> {
        let name = || self.name.clone();
        if self.knots.len() < 2 {
            let knots = self.knots.len();
            return Err(MaterialError::Short {
                name: name(),
                knots,
            });
        }
        if let Some(at) = self.knots.iter().position(|knot| !knot.is_sound()) {
            let line = at + 1;
            return Err(MaterialError::Figure { name: name(), line });
        }
        if let Some(at) = self.knots.windows(2).position(|pair| !rises(pair)) {
            let line = at + 2;
            return Err(MaterialError::Falls { name: name(), line });
        }
        let steep =
            |pair: &[Knot]| pair[1].celsius > pair[0].celsius && pair[1].j_m3 > pair[0].j_m3;
        for (end, at) in [("lowest", 0), ("highest", self.knots.len() - 2)] {
            if !steep(&self.knots[at..at + 2]) {
                return Err(MaterialError::FlatEnd { name: name(), end });
            }
        }
        match self.knots[0].solid {
            1.0 => Ok(()),
            _ => Err(MaterialError::Figure {
                name: name(),
                line: 1,
            }),
        }
    }

    /// The piece that holds a value: the last knot it has reached and the next, end pieces beyond.
    fn piece(&self, reached: impl Fn(&Knot) -> bool) -> (Knot, Knot) {
        let above = self.knots.partition_point(|knot| reached(knot));
        let high = above.clamp(1, self.knots.len() - 1);
        (self.knots[high - 1], self.knots[high])
    }
}

impl Knot {
    fn is_sound(&self) -> bool {
        let figures = [self.celsius, self.j_m3, self.w_mk, self.solid];
        figures.iter().all(|figure| figure.is_finite())
            && self.w_mk > 0.0
            && (0.0..=1.0).contains(&self.solid)
    }
}

fn rises(pair: &[Knot]) -> bool {
    let warmer = pair[1].celsius >= pair[0].celsius;
    let fuller = pair[1].j_m3 >= pair[0].j_m3;
    let as_solid = pair[1].solid <= pair[0].solid;
    let alike = pair[1].j_m3 > pair[0].j_m3
        || (pair[1].celsius == pair[0].celsius && pair[1].solid == pair[0].solid);
    warmer && fuller && as_solid && alike
}
