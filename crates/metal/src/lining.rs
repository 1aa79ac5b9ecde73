//! The lining of a furnace: heat it drinks on the first heat and keeps for the next.

use measure::heat::{Heat, SpecificHeat, Temperature};
use measure::matter::Mass;
use measure::source::Law;

/// Share of the heat of a wall hot right through that it holds with its outside still cool:
/// half for a steady wall, less for a thick one on a short heat. Common practice, no source.
pub const SOAKED: [f64; 3] = [0.3, 0.5, 1.0];

/// Share of its heat that a lining still has when the next charge goes in at once.
/// A judgement, no source: weigh the fuel of your own first and second heat.
pub const KEPT: [f64; 3] = [0.4, 0.65, 0.9];

/// Heat taken up by crucible and lining.
pub const LINING_HEAT: Law = Law {
    name: "metal::lining::lining_heat",
    formula: "H_l = s m c (T_f − T_0)",
    range: "s = 1 for a wall hot right through, 0.5 for a steady one, less for a thick one \
            on a short heat",
    sources: &["brass-heat-thread", "common-practice"],
};

/// Heat that the lining wants on the next heat.
pub const NEXT_HEAT: Law = Law {
    name: "metal::lining::next_heat",
    formula: "H_n = (1 − k) H_l",
    range: "next charge put in at once, lid closed; k is a judgement",
    sources: &["common-practice"],
};

/// Heat taken up by a lining and a crucible of this mass; `soaked` from nought to one.
/// Law: [`LINING_HEAT`].
pub fn lining_heat(
    mass: Mass,
    specific_heat: SpecificHeat,
    fire: Temperature,
    start: Temperature,
    soaked: f64,
) -> Heat {
    let each_kelvin = mass.as_kg() * specific_heat.as_j_per_kg_k() * soaked;
    Heat::from_kj(each_kelvin * (fire - start).as_kelvin() / 1e3)
}

/// Heat that the lining wants again when it kept a share of what it had. Law: [`NEXT_HEAT`].
pub fn next_heat(lining: Heat, kept: f64) -> Heat {
    lining * (1.0 - kept)
}
