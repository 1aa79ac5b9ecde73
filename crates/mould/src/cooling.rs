//! A casting cooling in its sand: one balance of heat from the pour to the hand.
//!
//! The casting is taken as one temperature and as if all its metal were as thick as its heaviest
//! section. The sand opens outwards round it no faster than round a ball of the same surface: of
//! all rounded bodies the ball has the least sand at each depth (Minkowski's inequality). As much
//! sand is counted as the flask holds, with air on its far side. So every time is on the late side.

use measure::flow::Duration;
use measure::heat::{HeatDrawing, HeatPerMass, SpecificHeat, Temperature, TemperatureDifference};
use measure::length::Length;
use measure::matter::{Density, Mass};

use crate::freezing::SAND_AT_REST;

/// What was poured, and into what.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Poured {
    /// Modulus of the heaviest section, feeders and basin counted.
    pub modulus: Length,
    /// All metal in the mould.
    pub mass: Mass,
    /// Density of the metal.
    pub density: Density,
    /// Heat of freezing.
    pub latent: HeatPerMass,
    /// Specific heat of the liquid.
    pub liquid_heat: SpecificHeat,
    /// Specific heat of the solid.
    pub solid_heat: SpecificHeat,
    /// How far above its liquidus it entered.
    pub superheat: TemperatureDifference,
    /// Temperature at which the last of it freezes.
    pub solidus: Temperature,
    /// How hard the sand drinks heat.
    pub sand: HeatDrawing,
    /// Sand in the flask.
    pub sand_mass: Mass,
}

/// How the casting and the sand behind it cooled.
#[derive(Clone, Debug, PartialEq)]
pub struct Cooling {
    /// Time since the pour and temperature of the casting, from the pour on.
    pub casting: Vec<(Duration, Temperature)>,
    /// When the last of it was frozen.
    pub frozen: Option<Duration>,
    /// Depth in the sand and the highest temperature it saw, from the face outwards.
    pub sand_peaks: Vec<(Length, Temperature)>,
}

/// Density times specific heat of rammed sand, J/m³K: 1600 kg/m³ and 1100 J/kgK
/// (`flemings-1974`, from memory).
pub const HEAT_OF_SAND_J_PER_M3_K: f64 = 1600.0 * 1100.0;

/// Density of rammed sand, kg/m³ (`shop-handbook-figures`).
const RAMMED_KG_PER_M3: f64 = 1600.0;

/// Air and radiation on the outside of a flask, W/m²K: common practice, no source; the low end.
const AIR_W_PER_M2_K: f64 = 8.0;

/// Longest that is followed: what is not cold in a fortnight was typed wrong.
const LONGEST_S: f64 = 14.0 * 24.0 * 3600.0;

/// How much longer each step of time and each cell of sand is than the one before.
const STEP_GROWTH: f64 = 1.04;
const CELL_GROWTH: f64 = 1.25;

/// A flask without sand is no flask: one grain.
const THINNEST_M: f64 = 3e-4;

/// Depth beyond which no heat arrives within a fortnight.
const DEEPEST_M: f64 = 3.0;

/// Follows the cooling until the casting is below a temperature, at most for a fortnight.
pub fn cooling(poured: &Poured, until: Temperature) -> Cooling {
    let mut casting = Metal::of(poured);
    let mut sand = Column::of(poured);
    let mut cooling = Cooling {
        casting: vec![(Duration::ZERO, at_celsius(casting.temperature()))],
        frozen: None,
        sand_peaks: Vec::new(),
    };
    let (mut time, mut step) = (0.0, first_step_s(poured));
    while time < LONGEST_S {
        let held = casting.heat;
        sand.step(&mut casting, step);
        if held > 0.0 && casting.heat <= 0.0 {
            let share = held / (held - casting.heat);
            cooling.frozen = Some(Duration::from_s(time + step * share));
        }
        time += step;
        step *= STEP_GROWTH;
        let temperature = at_celsius(casting.temperature());
        cooling.casting.push((Duration::from_s(time), temperature));
        if temperature < until {
            break;
        }
    }
    cooling.sand_peaks = sand.peaks();
    cooling
}

impl Cooling {
    /// When the casting fell below a temperature, or nothing where it was not followed so far.
    pub fn below(&self, mark: Temperature) -> Option<Duration> {
        let above = self.casting.partition_point(|(_, at)| *at >= mark);
        let (after, cold) = self.casting.get(above)?;
        let Some((before, hot)) = above.checked_sub(1).and_then(|i| self.casting.get(i)) else {
            return Some(*after);
        };
        let share = (*hot - mark).as_kelvin() / (*hot - *cold).as_kelvin();
        Some(*before + (*after - *before) * share)
    }

    /// How deep the sand was at some time hotter than a temperature.
    pub fn sand_over(&self, mark: Temperature) -> Length {
        let over = self.sand_peaks.partition_point(|(_, peak)| *peak > mark);
        let Some((near, hot)) = over.checked_sub(1).and_then(|i| self.sand_peaks.get(i)) else {
            return Length::ZERO;
        };
        let Some((far, cold)) = self.sand_peaks.get(over) else {
            return *near;
        };
        let share = (*hot - mark).as_kelvin() / (*hot - *cold).as_kelvin();
        *near + (*far - *near) * share
    }
}

/// A thousandth of the time in which so much metal freezes, near enough.
fn first_step_s(poured: &Poured) -> f64 {
    let heat = poured.density.as_kg_per_m3() * poured.latent.as_j_per_kg();
    let drawn = poured.sand.as_w_rts_per_m2_k() * (poured.solidus - SAND_AT_REST).as_kelvin();
    let root = poured.modulus.as_m() * heat / drawn;
    (root * root * 1e-3).max(1e-6)
}

/// The amount within its limits; the low one for what is no number, so that every loop ends.
fn held_between(low: f64, amount: f64, high: f64) -> f64 {
    match amount {
        amount if amount >= high => high,
        amount if amount > low => amount,
        _ => low,
    }
}

fn at_celsius(degrees: f64) -> Temperature {
    Temperature::from_celsius(degrees)
}

/// The metal behind a square metre of its surface.
struct Metal {
    /// Heat above that of the solid at its solidus, J/m².
    heat: f64,
    latent: f64,
    liquid: f64,
    solid: f64,
    solidus: f64,
}

impl Metal {
    fn of(poured: &Poured) -> Metal {
        let mass = poured.density.as_kg_per_m3() * poured.modulus.as_m();
        let latent = mass * poured.latent.as_j_per_kg();
        let liquid = mass * poured.liquid_heat.as_j_per_kg_k();
        Metal {
            heat: latent + liquid * poured.superheat.as_kelvin(),
            latent,
            liquid,
            solid: mass * poured.solid_heat.as_j_per_kg_k(),
            solidus: poured.solidus.as_celsius(),
        }
    }

    fn temperature(&self) -> f64 {
        let over = match self.heat {
            heat if heat < 0.0 => heat / self.solid,
            heat if heat > self.latent => (heat - self.latent) / self.liquid,
            _ => 0.0,
        };
        self.solidus + over
    }

    /// Loses heat for so long to sand that draws `slope` W/m²K times its temperature, less `back`.
    fn lose(&mut self, seconds: f64, slope: f64, back: f64) {
        let (drawn, left) = (seconds * slope, self.heat + seconds * back);
        let at_solidus = left - drawn * self.solidus;
        self.heat = match at_solidus {
            heat if heat < 0.0 => heat / (1.0 + drawn / self.solid),
            heat if heat > self.latent => {
                self.latent + (heat - self.latent) / (1.0 + drawn / self.liquid)
            }
            heat => heat,
        };
    }
}

/// The sand behind a square metre of surface, cell by cell outwards, each wider than the last.
struct Column {
    /// Depth of the middle of each cell, m.
    middles: Vec<f64>,
    /// Heat each cell stores for a kelvin, J/K for a square metre of casting.
    stores: Vec<f64>,
    /// What passes from the casting into the first cell, from cell to cell, and from the last into
    /// the air, W/K for a square metre of casting.
    passes: Vec<f64>,
    at: Vec<f64>,
    peak: Vec<f64>,
    face_peak: f64,
    /// Slope and offset of each cell's temperature in that of the one before it.
    lines: Vec<(f64, f64)>,
}

impl Column {
    fn of(poured: &Poured) -> Column {
        let per_area = poured.density.as_kg_per_m3() * poured.modulus.as_m();
        let surface = poured.mass.as_kg() / per_area;
        let ball = Ball {
            radius: (surface / (4.0 * std::f64::consts::PI)).sqrt(),
            conducts: poured.sand.as_w_rts_per_m2_k().powi(2) / HEAT_OF_SAND_J_PER_M3_K,
        };
        let behind = poured.sand_mass.as_kg() / RAMMED_KG_PER_M3 / surface;
        let depth = ball.radius * ((1.0 + 3.0 * behind / ball.radius).cbrt() - 1.0);
        let faces = faces(poured, held_between(THINNEST_M, depth, DEEPEST_M));
        let middles: Vec<f64> = faces
            .windows(2)
            .map(|pair| (pair[0] + pair[1]) / 2.0)
            .collect();
        let stores = faces
            .windows(2)
            .map(|pair| HEAT_OF_SAND_J_PER_M3_K * (ball.space(pair[1]) - ball.space(pair[0])));
        let (cells, rest) = (middles.len(), SAND_AT_REST.as_celsius());
        Column {
            stores: stores.collect(),
            passes: ball.passes(&faces, &middles),
            at: vec![rest; cells],
            peak: vec![rest; cells],
            face_peak: rest,
            lines: vec![(0.0, 0.0); cells],
            middles,
        }
    }

    /// One step: the sand is solved from the air inwards, each cell as a straight line in the
    /// temperature of the one before it, the first in that of the casting.
    fn step(&mut self, casting: &mut Metal, seconds: f64) {
        let mut beyond = (0.0, SAND_AT_REST.as_celsius());
        for cell in (0..self.at.len()).rev() {
            let stores = self.stores[cell] / seconds;
            let (inward, outward) = (self.passes[cell], self.passes[cell + 1]);
            let (slope, offset) = beyond;
            let all = stores + inward + outward * (1.0 - slope);
            let held = stores * self.at[cell] + outward * offset;
            beyond = (inward / all, held / all);
            self.lines[cell] = beyond;
        }
        let ((slope, offset), face) = (beyond, self.passes[0]);
        casting.lose(seconds, face * (1.0 - slope), face * offset);
        let mut before = casting.temperature();
        self.face_peak = self.face_peak.max(before);
        for (cell, (slope, offset)) in self.lines.iter().enumerate() {
            before = slope * before + offset;
            self.at[cell] = before;
            self.peak[cell] = self.peak[cell].max(before);
        }
    }

    fn peaks(&self) -> Vec<(Length, Temperature)> {
        let face = (Length::ZERO, at_celsius(self.face_peak));
        let cells = self.middles.iter().zip(&self.peak);
        let inside = cells.map(|(depth, peak)| (Length::from_m(*depth), at_celsius(*peak)));
        std::iter::once(face).chain(inside).collect()
    }
}

/// Depths of the faces between the cells, close together at the casting.
fn faces(poured: &Poured, depth: f64) -> Vec<f64> {
    let mut faces = vec![0.0];
    let (mut filled, mut next) = (0.0, held_between(1e-6, poured.modulus.as_m() / 40.0, 2e-4));
    while filled < depth {
        filled = (filled + next).min(depth);
        faces.push(filled);
        next *= CELL_GROWTH;
    }
    faces
}

/// The ball round which the sand opens, and what the sand conducts, W/mK.
struct Ball {
    radius: f64,
    conducts: f64,
}

impl Ball {
    fn passes(&self, faces: &[f64], middles: &[f64]) -> Vec<f64> {
        let outside = faces.last().copied().unwrap_or(0.0);
        let innermost = middles.first().map(|first| 1.0 / self.resists(0.0, *first));
        let between = middles
            .windows(2)
            .map(|pair| 1.0 / self.resists(pair[0], pair[1]));
        let air = 1.0 / (AIR_W_PER_M2_K * self.widens(outside).powi(2));
        let outermost = middles
            .last()
            .map(|last| 1.0 / (self.resists(*last, outside) + air));
        innermost
            .into_iter()
            .chain(between)
            .chain(outermost)
            .collect()
    }

    /// Volume inside a depth for each square metre of casting, m.
    fn space(&self, depth: f64) -> f64 {
        self.radius / 3.0 * self.widens(depth).powi(3)
    }

    fn resists(&self, near: f64, far: f64) -> f64 {
        (far - near) / (self.conducts * self.widens(near) * self.widens(far))
    }

    /// How much wider round the ball it is at a depth.
    fn widens(&self, depth: f64) -> f64 {
        1.0 + depth / self.radius
    }
}
