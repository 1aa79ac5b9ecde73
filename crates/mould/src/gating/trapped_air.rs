//! Air that is shut in under a roof while metal rises around it.
//!
//! Sand lets most of it out in time; where a core wash, a wet face or an iron core does not, nearly
//! all of the pocket stays a hole: the head of a mould squeezes air by a few hundredths only.

use measure::length::Length;
use measure::matter::{Density, Pressure};
use measure::source::Law;

/// How far metal rises into a pocket of air without a way out.
pub const TRAPPED_AIR: Law = Law {
    name: "mould::gating::trapped_air::rise_into_pocket",
    formula: "x: (p₀ + ρ g (H − x)) (h − x) = p₀ h; air at p₀ + ρ g (H − x)",
    range: "upright pocket of height h, its mouth H below the level of the metal, sealed, metal at \
            rest; air that the metal warms presses back harder, so that it rises less",
    sources: &["boyle-memory", "hydrostatics"],
};

/// The air of the weather, where nobody measures it.
pub const ATMOSPHERE: Pressure = Pressure::from_pa(101_325.0);

/// How far metal rises into a pocket of this height whose mouth lies under this head of it. Law:
/// [`TRAPPED_AIR`].
pub fn rise_into_pocket(pocket: Length, head: Length, liquid: Density, air: Pressure) -> Length {
    let (pocket_m, head_m) = (pocket.as_m(), head.as_m());
    // The air as a head of metal.
    let air_m = air.as_pa() / Pressure::under(liquid, Length::from_m(1.0)).as_pa();
    let half = 0.5 * (air_m + head_m + pocket_m);
    let root = (half * half - head_m * pocket_m).max(0.0).sqrt();
    Length::from_m(head_m * pocket_m / (half + root))
}

/// Pressure of the air in such a pocket over that of the weather. Law: [`TRAPPED_AIR`].
pub fn pressed_to(pocket: Length, head: Length, liquid: Density, air: Pressure) -> Pressure {
    let rise = rise_into_pocket(pocket, head, liquid, air);
    Pressure::under(liquid, head - rise)
}
