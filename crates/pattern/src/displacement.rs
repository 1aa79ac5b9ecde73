//! The volume of anything, from what it weighs in water: no shape and no material is asked for.
//!
//! What sinks hangs on a thread in water and loses the weight of the water it displaces. What
//! floats is pushed under with a needle in a bucket that stands on the scale: the scale rises by
//! the same. Either way nothing may touch the bucket, and no air may cling to the part.

use measure::band::Band;
use measure::length::Volume;
use measure::matter::{Density, Mass};
use measure::source::{Law, Sourced};

/// Volume from the weights in air and in water.
pub const VOLUME_IN_WATER: Law = Law {
    name: "pattern::displacement::volume_in_water",
    formula: "V = (m_air - m_water) / ρ_water",
    range: "wholly under water, touching nothing, no air clinging to it; m_water below nought for \
            what has to be held under",
    sources: &["hydrostatic-weighing-page", "displaced-water-page"],
};

/// Volume of what weighs so much in air and in water. Law: [`VOLUME_IN_WATER`].
pub fn volume_in_water(in_air: Mass, in_water: Mass, water: Density) -> Volume {
    Volume::filled_by(in_air - in_water, water)
}

/// Density of water in a bucket: 0.992 at 40 °C, 0.998 at 20 °C, 1.000 just above freezing.
pub fn water() -> Sourced<Band<Density>> {
    let [warm, likely, cold] = [0.992, 0.998, 1.0].map(Density::from_g_per_cm3);
    Sourced {
        value: Band::new(warm, likely, cold),
        source: "water-density-memory".to_owned(),
    }
}

/// What a weighing in water may be off by, as a share of the water displaced, where nothing better
/// is said: a few bubbles, and the needle or thread (common practice, no source).
pub const READING: f64 = 0.01;
