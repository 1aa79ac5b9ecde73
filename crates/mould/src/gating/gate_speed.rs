//! How fast metal may leave the gate, and how fast it does.
//!
//! Two schools set the limit. One reckons the speed at which a drop of the metal would fly up
//! higher than its own skin can hold: faster, and the front breaks and folds its skin in. The
//! other writes down what lecture rooms teach. They are shown side by side.

use std::sync::LazyLock;

use measure::flow::{Flow, Speed};
use measure::length::{Area, Length};
use measure::matter::{Density, GRAVITY_M_PER_S2};
use measure::source::Law;
use serde::Deserialize;

/// Mean speed at the gates.
pub const GATE_SPEED: Law = Law {
    name: "mould::gating::gate_speed::gate_speed",
    formula: "v = Q / A",
    range: "gates full and sharing evenly; one gate of several may be much faster",
    sources: &["gating-slides"],
};

/// Height of a drop of metal that lies on a floor it does not wet.
pub const DROP_HEIGHT: Law = Law {
    name: "mould::gating::gate_speed::drop_height",
    formula: "h = 2 √(γ / (ρ g))",
    range: "wide drop, clean or with the skin counted into γ",
    sources: &["campbell-castings"],
};

/// Speed at which metal rises as high as its drop: the critical speed.
pub const CRITICAL_SPEED: Law = Law {
    name: "mould::gating::gate_speed::critical_speed",
    formula: "v = 2 (γ g / ρ)^(1/4)",
    range: "front free to splash; in sections of a few mm the walls hold it together at more",
    sources: &["campbell-castings", "front-speed-page"],
};

/// What sources say of the speed at the gate for one kind of metal.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SpeedLimit {
    /// The kind of metal: one of [`METALS`].
    pub metal: String,
    /// Who says so: "critical speed", "lecture notes", "practice".
    pub school: String,
    /// Fastest, m/s.
    pub m_per_s: f64,
    /// What it was said for.
    pub note: String,
    /// Key of the bibliography.
    pub source: String,
}

/// Surface of a liquid metal near its melting point.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LiquidSurface {
    /// The kind of metal: one of [`METALS`].
    pub metal: String,
    /// Surface tension, N/m: low, likely, high.
    pub tension_n_per_m: [f64; 3],
    /// Density of that liquid.
    pub kg_per_m3: f64,
    /// What it was measured on.
    pub note: String,
    /// Key of the bibliography.
    pub source: String,
}

/// The kinds of metal that the tables know.
pub const METALS: &[&str] = &[
    "aluminium",
    "aluminium-bronze",
    "copper",
    "zinc",
    "iron",
    "tin",
];

/// Mean speed at the gates. Law: [`GATE_SPEED`].
pub fn gate_speed(flow: Flow, gates: Area) -> Speed {
    flow / gates
}

/// Height of a drop for a surface tension in N/m. Law: [`DROP_HEIGHT`].
pub fn drop_height(tension_n_per_m: f64, liquid: Density) -> Length {
    let weight = liquid.as_kg_per_m3() * GRAVITY_M_PER_S2;
    Length::from_m(2.0 * (tension_n_per_m / weight).sqrt())
}

/// Critical speed for a surface tension in N/m. Law: [`CRITICAL_SPEED`].
pub fn critical_speed(tension_n_per_m: f64, liquid: Density) -> Speed {
    let inside = tension_n_per_m * GRAVITY_M_PER_S2 / liquid.as_kg_per_m3();
    Speed::from_m_per_s(2.0 * inside.powf(0.25))
}

/// What the sources say for a kind of metal, the slowest first.
pub fn limits_of(metal: &str) -> Vec<&'static SpeedLimit> {
    let mut found: Vec<_> = TABLES
        .limit
        .iter()
        .filter(|row| row.metal == metal)
        .collect();
    found.sort_by(|a, b| a.m_per_s.total_cmp(&b.m_per_s));
    found
}

/// The surface of a kind of metal.
pub fn surface_of(metal: &str) -> Option<&'static LiquidSurface> {
    TABLES.surface.iter().find(|row| row.metal == metal)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Tables {
    limit: Vec<SpeedLimit>,
    surface: Vec<LiquidSurface>,
}

static TABLES: LazyLock<Tables> = LazyLock::new(|| {
    toml::from_str(include_str!("../../data/gate_speeds.toml")).unwrap_or(Tables {
        limit: Vec::new(),
        surface: Vec::new(),
    })
});

#[cfg(test)]
mod tests {
    use super::{METALS, limits_of, surface_of};

    #[test]
    fn the_tables_know_every_metal_and_name_their_sources() {
        for metal in METALS {
            let limits = limits_of(metal);
            assert!(!limits.is_empty(), "{metal}");
            for limit in limits {
                assert!(
                    measure::source::source(&limit.source).is_some(),
                    "{limit:?}"
                );
            }
            let surface = surface_of(metal).unwrap();
            assert!(
                measure::source::source(&surface.source).is_some(),
                "{surface:?}"
            );
            let [low, likely, high] = surface.tension_n_per_m;
            assert!(low <= likely && likely <= high, "{surface:?}");
        }
    }
}
