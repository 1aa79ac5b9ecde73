//! The rules of thumb for the filling time side by side: by the square root of the mass and by its
//! cube root.
//!
//! They were found on different castings and part company: at one kilogram a rule of each kind may
//! say the same, at fifty the cube root says half of the square root. Neither knows the metal's
//! skin or the wall's freezing; the thinnest wall has the last word.

use std::sync::LazyLock;

use measure::flow::Duration;
use measure::length::Length;
use measure::matter::Mass;
use measure::source::Law;
use serde::Deserialize;

use crate::gating::pour_time::pour_time;

/// Time to fill from the cube root of the mass.
pub const CUBE_ROOT_TIME: Law = Law {
    name: "mould::gating::fill_rules::cube_root_time",
    formula: "t = K ∛m",
    range: "K 1.3 to 2.8 s/∛kg for copper alloys by gating, 1.62 to 2.2 for walls of 1.5 to 15 mm",
    sources: &["gating-slides", "pour-time-root-memory"],
};

/// Time to fill heavy moulds of grey iron.
pub const HEAVY_IRON_TIME: Law = Law {
    name: "mould::gating::fill_rules::heavy_iron_time",
    formula: "t = K (1.236 + T/16.65) ∛m, K = fluidity in inches / 40",
    range: "grey iron above 450 kg, T in mm",
    sources: &["rao-manufacturing-technology"],
};

/// Which root a rule takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Root {
    /// t = S √m.
    Square,
    /// t = K ∛m.
    Cube,
}

/// A rule of thumb.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FillRule {
    /// Which root.
    pub root: Root,
    /// The constant, s/√kg or s/∛kg.
    pub constant: f64,
    /// What it says it holds for.
    pub holds_for: String,
    /// The kind of metal, `any` for all.
    pub metal: String,
    /// Walls in mm it is for.
    pub wall_mm: [f64; 2],
    /// Key of the bibliography.
    pub source: String,
}

impl FillRule {
    /// The time it gives.
    pub fn time(&self, poured: Mass) -> Duration {
        match self.root {
            Root::Square => pour_time(poured, self.constant),
            Root::Cube => cube_root_time(poured, self.constant),
        }
    }
}

/// Time to fill. Law: [`CUBE_ROOT_TIME`].
pub fn cube_root_time(poured: Mass, constant: f64) -> Duration {
    let poured_kg = poured.as_kg();
    Duration::from_s(constant * poured_kg.cbrt())
}

/// Time to fill a heavy mould of grey iron. Law: [`HEAVY_IRON_TIME`].
pub fn heavy_iron_time(poured: Mass, wall: Length, fluidity: Length) -> Duration {
    let (poured_kg, wall_mm) = (poured.as_kg(), wall.as_mm());
    Duration::from_s(fluidity.as_inch() / 40.0 * (1.236 + wall_mm / 16.65) * poured_kg.cbrt())
}

/// The rules that claim a kind of metal and a wall: `copper` finds those for copper alloys and
/// those for any metal.
pub fn rules_for(metal: &str, wall: Length) -> Vec<&'static FillRule> {
    let claims = |rule: &&FillRule| {
        let [from_mm, to_mm] = rule.wall_mm;
        let of_metal = rule.metal == "any" || rule.metal == metal;
        of_metal && (from_mm..=to_mm).contains(&wall.as_mm())
    };
    TABLE.rule.iter().filter(claims).collect()
}

/// Longest of the times that some rules give over the shortest.
pub fn disagreement(rules: &[&FillRule], poured: Mass) -> f64 {
    let times = rules.iter().map(|rule| rule.time(poured).as_s());
    let longest = times.clone().fold(0.0, f64::max);
    longest / times.fold(longest, f64::min)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    rule: Vec<FillRule>,
}

static TABLE: LazyLock<Table> = LazyLock::new(|| {
    toml::from_str(include_str!("../../data/fill_rules.toml")).unwrap_or(Table { rule: Vec::new() })
});

#[cfg(test)]
mod tests {
    use measure::length::Length;
    use measure::matter::Mass;

    use super::{Root, disagreement, rules_for};

    #[test]
    fn both_roots_speak_of_every_wall_of_a_small_casting_and_name_their_sources() {
        for wall_mm in [2.0, 2.5, 4.0, 7.0, 15.0] {
            let rules = rules_for("aluminium", Length::from_mm(wall_mm));
            let roots: Vec<_> = rules.iter().map(|rule| rule.root).collect();
            assert!(roots.contains(&Root::Cube), "{wall_mm}");
            assert!(wall_mm < 2.5 || roots.contains(&Root::Square), "{wall_mm}");
            for rule in rules {
                assert!(measure::source::source(&rule.source).is_some(), "{rule:?}");
            }
        }
        assert!(rules_for("copper", Length::from_mm(7.0)).len() > 2);
    }

    #[test]
    fn the_roots_part_company_with_the_mass() {
        let rules = rules_for("aluminium", Length::from_mm(7.0));
        let at = |kg| disagreement(&rules, Mass::from_kg(kg));
        assert!((at(1.0) - 1.0).abs() < 1e-9);
        assert!(
            at(8.0) > 1.3 && at(64.0) > at(8.0),
            "{} {}",
            at(8.0),
            at(64.0)
        );
    }
}
