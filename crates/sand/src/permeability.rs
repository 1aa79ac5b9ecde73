//! How well the rammed sand breathes.

use measure::flow::Duration;
use measure::length::{Area, Length, Volume};
use measure::matter::Pressure;
use measure::source::Law;

/// Pascals in a gram-force a square centimetre, which is a centimetre of water: `iso-80000-3`.
const GRAM_FORCE_PER_CM2: f64 = 98.0665;

/// Permeability number of a rammed cylinder.
///
/// The number has the units of the trade, cm and minutes and grams-force, whatever the specimen;
/// the standard one (2000 cm³ through 50.8 mm at 10 cm of water) gives 3007.7 / t in seconds.
pub const PERMEABILITY: Law = Law {
    name: "sand::permeability::permeability",
    formula: "P = V H / (p A t)  in cm³, cm, g/cm², cm², min",
    range: "any rammed cylinder at about 10 cm of water; the air drop through the hose left out",
    sources: &["permeability-page", "rao-manufacturing-technology"],
};

/// How open two layers of sand stand together, the gas passing one after the other.
pub const TWO_LAYERS: Law = Law {
    name: "sand::permeability::two_layers",
    formula: "P = (t + L) / (t / P_t + L / P_L)",
    range: "layers rammed alike, gas straight through both; the joint between them left out",
    sources: &["darcy-memory"],
};

/// Permeability number from the air that went through a plug of sand. Law: [`PERMEABILITY`].
pub fn permeability(
    air: Volume,
    height: Length,
    pressure: Pressure,
    area: Area,
    time: Duration,
) -> f64 {
    let air_cm3 = air.as_cm3();
    let height_cm = height.as_mm() / 10.0;
    let pressure_g_per_cm2 = pressure.as_pa() / GRAM_FORCE_PER_CM2;
    air_cm3 * height_cm / (pressure_g_per_cm2 * area.as_cm2() * time.as_min())
}

/// Permeability number of a face before a backing. Law: [`TWO_LAYERS`].
pub fn two_layers(face: (Length, f64), backing: (Length, f64)) -> f64 {
    let whole = (face.0 + backing.0).as_mm();
    whole / (face.0.as_mm() / face.1 + backing.0.as_mm() / backing.1)
}

/// The area of a round plug of this diameter.
pub fn round(diameter: Length) -> Area {
    diameter * diameter * (std::f64::consts::PI / 4.0)
}

/// The pressure of a column of water of this height, at 1 g/cm³.
pub fn water_column(height: Length) -> Pressure {
    Pressure::from_pa(height.as_mm() / 10.0 * GRAM_FORCE_PER_CM2)
}
