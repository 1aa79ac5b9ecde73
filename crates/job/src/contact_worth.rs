//! How much longer a section takes to freeze because metal and sand touch badly, told as so many
//! millimetres of modulus.
//!
//! By the balance of heat (`flemings-1974`): what the metal has to lose passes a contact h alone in
//! ρ (L + c ΔT) M / (h (T_s − 20 °C)); over the constant C of the sand that is k M with
//! k = 1.128 b / (h √C), so that a section takes about C (M² + k M).

use measure::band::Band;
use measure::heat::TemperatureDifference;
use metal::alloys::named;
use mould::freezing::{FreezingHeat, mould_constant, thirst_of_sand};
use pour::contact::contact;

/// Superheat of an ordinary pour, K. Twice as much changes the worth by a tenth.
const SUPERHEAT: f64 = 60.0;

/// The worth of the contact of a metal with sand by the books, mm of modulus: the better the
/// contact, the less. Nothing for a metal or a contact that is not in the tables.
pub fn contact_worth_mm(metal: &str) -> Option<Band<f64>> {
    let alloy = named(metal).ok()?;
    let sand = thirst_of_sand().likely();
    let constant = mould_constant(&FreezingHeat {
        density: alloy.density_liquid.band.likely(),
        latent: alloy.latent_heat.band.likely(),
        liquid_heat: alloy.specific_heat_liquid.band.likely(),
        superheat: TemperatureDifference::from_kelvin(SUPERHEAT),
        solidus: alloy.solidus.band.likely(),
        sand,
    });
    let root = constant.as_s_per_m2().sqrt();
    let drawn = std::f64::consts::FRAC_2_SQRT_PI * sand.as_w_rts_per_m2_k();
    let w_m2k = contact(alloy.family)?.w_m2k();
    Some(w_m2k.map(|h| 1000.0 * drawn / (h * root)))
}
