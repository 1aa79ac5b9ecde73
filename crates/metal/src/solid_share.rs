//! How much of an alloy is solid at each temperature of its freezing range.
//!
//! Heat of freezing comes free as metal turns solid, and most of it seldom comes evenly: half of
//! Al-Si7-Mg freezes at its eutectic, bronzes freeze most of theirs in the upper third of the
//! range.

use measure::heat::Temperature;
use measure::source::Law;

/// Solid share where the solid keeps what it froze with.
pub const SEGREGATION: Law = Law {
    name: "metal::solid_share::segregated_share",
    formula: "f = 1 − ((T_m − T) / (T_m − T_L))^(1/(k − 1))",
    range: "two elements, straight lines in their diagram, nothing moves within the solid; down to \
            the eutectic",
    sources: &["flemings-1974"],
};

/// Solid share where solid and liquid even out.
pub const EVEN: Law = Law {
    name: "metal::solid_share::even_share",
    formula: "f = (T_L − T) / ((1 − k) (T_m − T))",
    range: "two elements, straight lines in their diagram, all evens out within the solid",
    sources: &["flemings-1974"],
};

/// How an alloy freezes between its liquidus and its solidus.
#[derive(Clone, Debug, PartialEq)]
pub struct SolidShare {
    /// The way it goes.
    pub path: Path,
    /// Keys of the bibliography.
    pub sources: Vec<String>,
    /// Doubts, and how it was worked out; empty where there is nothing to say.
    pub remark: String,
}

/// The way from all liquid to all solid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Path {
    /// All at one temperature.
    Arrest,
    /// Law: [`SEGREGATION`] down to the eutectic, which then freezes at its temperature.
    Segregated {
        /// Where the base metal alone melts.
        base: Temperature,
        /// What the solid holds of the other element beside the liquid.
        partition: f64,
        /// Where the eutectic freezes.
        eutectic: Temperature,
        /// Share that is solid when the eutectic is through.
        after: f64,
    },
    /// Law: [`EVEN`], the partition such that it ends at the solidus.
    Even {
        /// Where the base metal alone melts.
        base: Temperature,
    },
    /// Evenly down to the eutectic, which then freezes at its temperature.
    Eutectic {
        /// Where the eutectic freezes.
        eutectic: Temperature,
        /// Share of the whole that freezes there.
        share: f64,
        /// Share that is solid when the eutectic is through.
        after: f64,
    },
    /// Evenly over the range, where nothing is known.
    Straight,
}

/// Width over which a eutectic is taken to freeze, K: what undercooling and traces make of it. An
/// arrest without any width says the same but makes the steps of a solver shorter.
const EUTECTIC_K: f64 = 1.0;

/// Points into which a curve is cut: with eight, straight pieces stay within a hundredth of it.
const PIECES: usize = 8;

/// Solid share at a temperature between liquidus and eutectic, for a partition other than 1. Law:
/// [`SEGREGATION`].
pub fn segregated_share(base: Temperature, liquidus: Temperature, k: f64, at: Temperature) -> f64 {
    let ratio = (base - at).as_kelvin() / (base - liquidus).as_kelvin();
    1.0 - ratio.powf(1.0 / (k - 1.0))
}

/// Solid share at a temperature between liquidus and solidus, for a partition other than 1. Law:
/// [`EVEN`].
pub fn even_share(base: Temperature, liquidus: Temperature, k: f64, at: Temperature) -> f64 {
    (liquidus - at).as_kelvin() / ((1.0 - k) * (base - at).as_kelvin())
}

/// Temperatures and solid shares from the liquidus, where nothing is solid, down to the solidus,
/// where all is; straight between them. Neither the temperature nor the share ever turns back.
pub fn freezing_path(
    path: &Path,
    liquidus: Temperature,
    solidus: Temperature,
) -> Vec<(Temperature, f64)> {
    let mut points = vec![(liquidus, 0.0)];
    match *path {
        Path::Segregated {
            base,
            partition,
            eutectic,
            after,
        } if eutectic > solidus && liquidus > eutectic && base > liquidus => {
            let share = |at| segregated_share(base, liquidus, partition, at);
            points.extend(curve(liquidus, eutectic, share));
            points.push(end_of_eutectic(eutectic, solidus, after));
        }
        Path::Even { base } if base > liquidus && liquidus > solidus => {
            let k = (base - liquidus).as_kelvin() / (base - solidus).as_kelvin();
            points.extend(curve(liquidus, solidus, |at| {
                even_share(base, liquidus, k, at)
            }));
        }
        Path::Eutectic {
            eutectic,
            share,
            after,
        } if eutectic >= solidus && liquidus > eutectic => {
            points.push((eutectic, 1.0 - share));
            points.push(end_of_eutectic(eutectic, solidus, after));
        }
        _ => {}
    }
    points.retain(|(_, share)| *share < 1.0);
    points.push((solidus, 1.0));
    let mut most = 0.0_f64;
    for (_, share) in &mut points {
        most = most.max(*share);
        *share = most;
    }
    points
}

fn curve(
    from: Temperature,
    to: Temperature,
    share: impl Fn(Temperature) -> f64,
) -> impl Iterator<Item = (Temperature, f64)> {
    (1..=PIECES).map(move |piece| {
        let at = from - (from - to) * (piece as f64 / PIECES as f64);
        (at, share(at))
    })
}

fn end_of_eutectic(eutectic: Temperature, solidus: Temperature, after: f64) -> (Temperature, f64) {
    let room_k = (eutectic - solidus).as_kelvin();
    let below = EUTECTIC_K.min(room_k / 2.0);
    let at = Temperature::from_celsius(eutectic.as_celsius() - below);
    (at, after)
}
