//! What a bonded sand holds at rest in damp air, from pucks weighed dry and again in known airs.
//!
//! Two pucks give a line ([`crate::humidity`]), three or more the curve that films of sugar and
//! clay follow. No published constants of molasses, sugar glass or bentonite are at hand: they are
//! the founder's own, from jars of salt.

use measure::heat::Temperature;
use measure::source::Law;
use thiserror::Error;

use crate::humidity::{Puck, REACH, UptakeError, uptake};

/// Water held at rest, by the constants of Guggenheim, Anderson and de Boer.
pub const AT_REST: Law = Law {
    name: "sand::sorption::at_rest",
    formula: "M = M_0 C K a / ((1 − K a) (1 − K a + C K a))",
    range: "a the relative humidity, up to 0.9; M of the dry mass",
    sources: &["gab-sorption-page"],
};

/// Humidity of the air over a saturated salt in a closed jar.
pub const SALT_JAR: Law = Law {
    name: "sand::sorption::salt_jar",
    formula: "φ = A exp(B / T), A and B of the salt",
    range: "15 to 35 °C, closed, undissolved salt left; 2 points either way",
    sources: &["crc-constant-humidity"],
};

/// The constants of a sorption curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curve {
    /// Water of the first layer, of the dry mass.
    pub layer: f64,
    /// How much harder the first layer holds than the others.
    pub first: f64,
    /// How the further layers hold, against free water.
    pub further: f64,
}

/// What pucks say of a bonded sand.
#[derive(Clone, Debug, PartialEq)]
pub struct Sorption {
    /// The pucks, from dry to damp air.
    pub pucks: Vec<Puck>,
    /// The curve through three or more, where there is one.
    pub curve: Option<Curve>,
}

/// Why pucks say nothing.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum SorptionError {
    /// Fewer than two.
    #[error("one puck gives no line: weigh a second one in other air")]
    TooFew,
    /// Lighter in damp air.
    #[error(
        "the puck at {damp:.0} % humidity holds less ({less:.2} %) than the one at {dry:.0} % \
         ({more:.2} %): dry both again to the same mass, and weigh again"
    )]
    Falls {
        /// The damper air, in per cent.
        damp: f64,
        /// What it holds, in per cent.
        less: f64,
        /// The drier air, in per cent.
        dry: f64,
        /// What it holds, in per cent.
        more: f64,
    },
    /// What two pucks cannot say.
    #[error(transparent)]
    Uptake(#[from] UptakeError),
}

/// The salts of closed jars with A, in per cent, and B, in kelvin: `crc-constant-humidity`.
pub const SALTS: [(&str, f64, f64); 6] = [
    ("lithium-chloride", 14.53, -75.0),
    ("magnesium-chloride", 29.26, 34.0),
    ("sodium-bromide", 20.49, 308.0),
    ("table-salt", 69.2, 25.0),
    ("potassium-nitrate", 43.22, 225.0),
    ("potassium-sulphate", 86.75, 34.0),
];

/// Water at rest of a curve, of the dry mass. Law: [`AT_REST`].
pub fn at_rest(curve: &Curve, humidity: f64) -> f64 {
    let ka = curve.further * humidity;
    curve.layer * curve.first * ka / ((1.0 - ka) * (1.0 - ka + curve.first * ka))
}

/// Humidity over a salt of [`SALTS`], 0.75 for 75 %; none where it is not listed. Law:
/// [`SALT_JAR`].
pub fn salt_jar(salt: &str, at: Temperature) -> Option<f64> {
    let (_, a, b) = SALTS.iter().find(|(name, ..)| *name == salt)?;
    Some(a / 100.0 * (b / at.as_kelvin()).exp())
}

/// Brings pucks together.
///
/// # Errors
///
/// Fewer than two, two in the same air, or one that holds less in damper air.
pub fn of_pucks(pucks: &[Puck]) -> Result<Sorption, SorptionError> {
    let mut pucks = pucks.to_vec();
    pucks.sort_by(|a, b| a.humidity.total_cmp(&b.humidity));
    if pucks.len() < 2 {
        return Err(SorptionError::TooFew);
    }
    for two in pucks.windows(2) {
        uptake(two[0], two[1], two[0].humidity)?;
        if two[1].gain < two[0].gain {
            return Err(SorptionError::Falls {
                damp: two[1].humidity * 100.0,
                less: two[1].gain * 100.0,
                dry: two[0].humidity * 100.0,
                more: two[0].gain * 100.0,
            });
        }
    }
    let curve = curve_through(&pucks);
    Ok(Sorption { pucks, curve })
}

impl Sorption {
    /// Water at rest in air of this humidity, of the dry mass: by the curve where there is one,
    /// else on the line through the two nearest pucks.
    ///
    /// # Errors
    ///
    /// [`UptakeError::TooFar`] more than 15 points beyond the outermost pucks.
    pub fn at(&self, humidity: f64) -> Result<f64, UptakeError> {
        let (driest, dampest) = (self.pucks[0], self.pucks[self.pucks.len() - 1]);
        // Says no where the humidity is none, or too far beyond.
        uptake(driest, dampest, humidity)?;
        if let Some(curve) = self.curve {
            return Ok(at_rest(&curve, humidity));
        }
        let above = self.pucks.iter().position(|puck| puck.humidity >= humidity);
        let above = above.unwrap_or(self.pucks.len() - 1).max(1);
        let (one, other) = (self.pucks[above - 1], self.pucks[above]);
        let along = (humidity - one.humidity) / (other.humidity - one.humidity);
        Ok((one.gain + (other.gain - one.gain) * along).max(0.0))
    }

    /// Highest humidity at which the sand stays below `gain`, within what the pucks reach; none
    /// where it is above it even in the driest air they speak of.
    pub fn driest_air_for(&self, gain: f64) -> Option<f64> {
        let low = (self.pucks[0].humidity - REACH).max(0.0);
        let high = (self.pucks[self.pucks.len() - 1].humidity + REACH).min(1.0);
        let below = |humidity: f64| self.at(humidity).is_ok_and(|held| held <= gain);
        if !below(low) {
            return None;
        }
        let (mut dry, mut damp) = (low, high);
        if below(high) {
            return Some(high);
        }
        for _ in 0..50 {
            let middle = (dry + damp) / 2.0;
            match below(middle) {
                true => dry = middle,
                false => damp = middle,
            }
        }
        Some(dry)
    }
}

/// The curve by least squares of a/M = α a² + β a + γ, which is the same law turned over. Kept
/// only where its constants mean something and every puck lies near it: within a tenth, or
/// 0.1 % of the dry mass. Wider, the curve would paint over a puck weighed wrong; narrower, the
/// step of a kitchen scale would throw good pucks out.
fn curve_through(pucks: &[Puck]) -> Option<Curve> {
    let usable = |puck: &&Puck| puck.humidity > 0.0 && puck.humidity < 1.0 && puck.gain > 0.0;
    let pucks: Vec<&Puck> = pucks.iter().filter(usable).collect();
    if pucks.len() < 3 {
        return None;
    }
    let [bend, slope, start] = parabola(&pucks)?;
    if start <= 0.0 {
        return None;
    }
    // γ = 1/(M₀CK), β = (1 − 2/C)/M₀, α = K(1/C − 1)/M₀.
    let root = (slope * slope - 4.0 * bend * start).sqrt();
    let further = (root - slope) / (2.0 * start);
    let first = 2.0 + slope / (start * further);
    let layer = 1.0 / (start * first * further);
    let curve = Curve {
        layer,
        first,
        further,
    };
    let sound = further > 0.0 && further < 1.0 && first > 0.0 && layer > 0.0;
    let near = |puck: &&Puck| {
        let off = (at_rest(&curve, puck.humidity) - puck.gain).abs();
        off <= (puck.gain * 0.1).max(0.001)
    };
    (sound && pucks.iter().all(near)).then_some(curve)
}

/// α, β and γ of the parabola through the turned-over pucks.
fn parabola(pucks: &[&Puck]) -> Option<[f64; 3]> {
    let mut rows = [[0.0_f64; 4]; 3];
    for puck in pucks {
        let a = puck.humidity;
        let terms = [a * a, a, 1.0];
        for (row, by) in rows.iter_mut().zip(terms) {
            for (cell, term) in row.iter_mut().zip(terms) {
                *cell += by * term;
            }
            row[3] += by * a / puck.gain;
        }
    }
    let column = |at: usize| [rows[0][at], rows[1][at], rows[2][at]];
    let whole = determinant(column(0), column(1), column(2));
    if whole.abs() < 1e-14 {
        return None;
    }
    let right = column(3);
    Some([
        determinant(right, column(1), column(2)) / whole,
        determinant(column(0), right, column(2)) / whole,
        determinant(column(0), column(1), right) / whole,
    ])
}

fn determinant(a: [f64; 3], b: [f64; 3], c: [f64; 3]) -> f64 {
    a[0] * (b[1] * c[2] - b[2] * c[1]) - b[0] * (a[1] * c[2] - a[2] * c[1])
        + c[0] * (a[1] * b[2] - a[2] * b[1])
}
