//! Air blown through a bed of lumps instead of along it: riddled sand on a mesh with a fan below.
//!
//! The surface that dries is that of all lumps, so a bed dries in a tenth of the time that a tray
//! of as much sand takes.

use measure::flow::{Duration, Speed};
use measure::length::Length;
use measure::matter::Density;
use measure::source::Law;

use crate::psychrometrics::{Air, AirError, latent_heat, wet_bulb};

/// The group of a drying by air through the bed.
pub const THROUGH_BED: Law = Law {
    name: "sand::through::through_bed",
    formula: "p = ρ λ L / (G c_s (t − t_w) (1 − e^−N));  N = h a L / (G c_s);  h = 0.151 G^0.59 / \
              d^0.41 above Re 350, 0.214 G^0.49 / d^0.51 below;  G from v, t, W, p",
    range: "lumps of like size, air through all of the bed and none beside it; G in h in kg/h m²",
    sources: &["geankoplis-transport"],
};

/// Viscosity of warm air, Pa s, as far as it tells which of the two lines of heat holds.
const VISCOSITY: f64 = 2.1e-5;

/// Reynolds number at which the second line of heat takes over.
const TURNS: f64 = 350.0;

/// A bed of lumps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bed {
    /// Dry sand in the volume of the bed.
    pub density: Density,
    /// Depth through which the air goes.
    pub depth: Length,
    /// Size of the lumps.
    pub lump: Length,
    /// Surface of the lumps in a volume of the bed, m²/m³: [`surface`] for round ones.
    pub surface: f64,
}

/// Surface of round lumps in a bed, m²/m³: six over their size, of what is not air between them.
pub fn surface(bed: Density, inside: Density, lump: Length) -> f64 {
    6.0 * (bed / inside) / lump.as_m()
}

/// The time that a kilogram of water on each kilogram of dry sand takes while all lumps are wet;
/// [`crate::drying::drying_time`] makes the time to any moisture of it. Law: [`THROUGH_BED`].
///
/// # Errors
///
/// Air whose wet bulb cannot be told.
pub fn through_bed(bed: &Bed, air: &Air, speed: Speed) -> Result<Duration, AirError> {
    let wet = wet_bulb(air)?;
    let dry_air = speed.as_m_per_s() * air.density() / (1.0 + air.ratio);
    let carries = dry_air * air.humid_heat();
    let taken = transfer(dry_air * (1.0 + air.ratio), bed.lump) * bed.surface * bed.depth.as_m();
    let water = bed.density.as_kg_per_m3() * latent_heat(wet) * bed.depth.as_m();
    let warmer = air.dry_bulb.as_kelvin() - wet.as_kelvin();
    let given = carries * warmer * (1.0 - (-taken / carries).exp());
    Ok(Duration::from_s(water / given))
}

/// Heat from air to lumps, W/m²K, by the air that flows, kg/s m².
fn transfer(flow: f64, lump: Length) -> f64 {
    let (hourly, size) = (flow * 3600.0, lump.as_m());
    match size * flow / VISCOSITY > TURNS {
        true => 0.151 * hourly.powf(0.59) / size.powf(0.41),
        false => 0.214 * hourly.powf(0.49) / size.powf(0.51),
    }
}
