//! Where the first cold and dirty metal is caught: the run-off past the last gate, and the well
//! under the sprue.

use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use measure::source::Law;

/// Room for the first metal.
pub const FIRST_METAL: Law = Law {
    name: "mould::gating::slag_trap::first_metal",
    formula: "V = s m / ρ, s = 0.05",
    range: "the first twentieth of the pour is the coldest and carries the loose sand",
    sources: &["common-practice"],
};

/// Length of the runner past the last gate.
pub const RUN_OFF: Law = Law {
    name: "mould::gating::slag_trap::run_off",
    formula: "L = V / A_runner, at least 25 mm",
    range: "a runner of one depth to its end; deepen the end instead where the flask is short",
    sources: &["pouring-basin-notes", "common-practice"],
};

/// The well under the sprue.
pub const SPRUE_WELL: Law = Law {
    name: "mould::gating::slag_trap::sprue_well",
    formula: "A = 5 A_foot, depth = 2 d_runner",
    range: "tapered sprue of one choke; the well breaks the fall before the runner",
    sources: &["well-memory"],
};

/// Part of the metal that comes first and is to be caught.
pub const FIRST_SHARE: f64 = 0.05;

/// Shortest run-off (`pouring-basin-notes`).
pub const SHORTEST: Length = Length::from_mm(25.0);

/// A round well under the sprue.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Well {
    /// Its area seen from above.
    pub area: Area,
    /// Its depth below the top of the runner.
    pub depth: Length,
}

/// Room for the first share of the metal. Law: [`FIRST_METAL`].
pub fn first_metal(poured: Mass, liquid: Density, share: f64) -> Volume {
    Volume::filled_by(poured * share, liquid)
}

/// Length past the last gate that holds it. Law: [`RUN_OFF`].
pub fn run_off(first_metal: Volume, runner: Area) -> Length {
    SHORTEST.max(first_metal / runner)
}

/// The well under a sprue. Law: [`SPRUE_WELL`].
pub fn sprue_well(foot: Area, runner_depth: Length) -> Well {
    Well {
        area: foot * 5.0,
        depth: runner_depth * 2.0,
    }
}
