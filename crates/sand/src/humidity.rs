//! What a bonded sand takes up from damp air, from two weighed pucks.

use measure::source::Law;
use thiserror::Error;

/// Moisture that a puck takes up at a humidity, on the line through two that were weighed.
///
/// Uptake bends upwards in damp air, so that the line says too little beyond the damper puck: it
/// is not drawn far.
pub const UPTAKE: Law = Law {
    name: "sand::humidity::uptake",
    formula: "w = w_1 + (w_2 − w_1) (H − H_1) / (H_2 − H_1)",
    range: "between the two humidities, and 15 points beyond them at most",
    sources: &["common-practice"],
};

/// Points of relative humidity beyond the pucks to which the line is drawn: our own choice.
pub const REACH: f64 = 0.15;

/// A puck of bonded sand, weighed dry and again after standing in air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Puck {
    /// Relative humidity of the air it stood in, 0.4 for 40 %.
    pub humidity: f64,
    /// What it took up, a share of its dry mass.
    pub gain: f64,
}

/// Why no uptake is given.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum UptakeError {
    /// Two pucks in the same air.
    #[error("both pucks stood at {percent:.0} % humidity: let one stand in other air")]
    SameAir {
        /// The humidity in per cent.
        percent: f64,
    },
    /// Too far from what was weighed.
    #[error(
        "{asked_percent:.0} % is more than 15 points beyond the pucks ({low_percent:.0} to \
         {high_percent:.0} %): weigh a puck that stood in such air"
    )]
    TooFar {
        /// The humidity asked for, in per cent.
        asked_percent: f64,
        /// That of the drier puck.
        low_percent: f64,
        /// That of the damper puck.
        high_percent: f64,
    },
    /// No relative humidity.
    #[error("{percent:.0} % is no relative humidity: it lies between 0 and 100 %")]
    NotAHumidity {
        /// What was given, in per cent.
        percent: f64,
    },
}

/// Moisture taken up at a humidity. Law: [`UPTAKE`].
pub fn uptake(one: Puck, other: Puck, humidity: f64) -> Result<f64, UptakeError> {
    for given in [one.humidity, other.humidity, humidity] {
        if !(0.0..=1.0).contains(&given) {
            let percent = given * 100.0;
            return Err(UptakeError::NotAHumidity { percent });
        }
    }
    let (low, high) = (
        one.humidity.min(other.humidity),
        one.humidity.max(other.humidity),
    );
    if low == high {
        let percent = low * 100.0;
        return Err(UptakeError::SameAir { percent });
    }
    // A hair beyond, so that a reach of exactly 15 points is not lost to rounding.
    let reach = REACH + 1e-9;
    if !(low - reach..=high + reach).contains(&humidity) {
        return Err(UptakeError::TooFar {
            asked_percent: humidity * 100.0,
            low_percent: low * 100.0,
            high_percent: high * 100.0,
        });
    }
    let along = (humidity - one.humidity) / (other.humidity - one.humidity);
    Ok(one.gain + (other.gain - one.gain) * along)
}
