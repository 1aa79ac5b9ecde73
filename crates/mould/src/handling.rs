//! What people may lift: flasks, crucibles on a shank, tongs at arm's length.
//!
//! The figures are public guidelines for lifting at work, from memory; local codes rule, and a
//! load of liquid metal is no ordinary load: nobody can let go of it.

use measure::length::{Length, Volume};
use measure::matter::{Density, Force, Mass};
use measure::source::Law;

/// Mass of a rammed flask.
pub const FLASK_LOAD: Law = Law {
    name: "mould::handling::flask_load",
    formula: "m = ρ (V − V_pattern) + m_frame",
    range: "everything that is lifted at once: boards, bars and irons belong to the frame",
    sources: &["common-practice"],
};

/// Mass that one person may lift.
pub const LIFT_LIMIT: Law = Law {
    name: "mould::handling::lift_limit",
    formula: "m = 23 kg (25 cm / r) (1 − 0.003 |z − 75 cm| / cm) (0.82 + 4.5 cm / d)",
    range: "both hands, no twist, seldom; r 25 to 63 cm from the ankles, z to 175 cm, d from 25 cm",
    sources: &["niosh-lifting-1994"],
};

/// Mass that people may lift together.
pub const TEAM_LIFT: Law = Law {
    name: "mould::handling::team_lift",
    formula: "m = c n m_one, c = 1 for one, 2/3 for two, 1/2 for three",
    range: "people alike in height and strength, all with a good hold; more than three get a hoist",
    sources: &["hse-l23"],
};

/// What each end of a shank carries.
pub const SHANK_SHARE: Law = Law {
    name: "mould::handling::shank_share",
    formula: "F = (m b / (a + b) + m_shank / 2) g",
    range: "two carriers, shank level, the crucible a from this carrier and b from the other",
    sources: &["lever"],
};

/// What a load held out does to the one who holds it.
pub const ARMS_LENGTH: Law = Law {
    name: "mould::handling::arms_length",
    formula: "share = m / (23 kg (25 cm / r) (1 − 0.003 |z − 75 cm| / cm))",
    range: "crucible, metal and tongs at r from the ankles; above one it is not to be held",
    sources: &["niosh-lifting-1994"],
};

/// How a load is lifted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lifting {
    /// From the ankles to the hands.
    pub reach: Length,
    /// Height of the hands at the start.
    pub height: Length,
    /// How far it is lifted.
    pub travel: Length,
}

/// Most that anyone lifts at its best, close and at knuckle height (`niosh-lifting-1994`).
const AT_BEST: Mass = Mass::from_kg(23.0);

/// Nearest and farthest reach of the guideline, cm.
const REACH_CM: [f64; 2] = [25.0, 63.0];

/// Highest hands of the guideline, cm.
const HIGHEST_CM: f64 = 175.0;

/// Mass of a flask. Law: [`FLASK_LOAD`].
pub fn flask_load(sand: Density, inside: Volume, pattern: Volume, frame: Mass) -> Mass {
    sand * (inside - pattern.min(inside)) + frame
}

/// Limit for one person; nought beyond the guideline's reach. Law: [`LIFT_LIMIT`].
pub fn lift_limit(lifting: &Lifting) -> Mass {
    let travel_cm = (lifting.travel.as_mm() / 10.0).max(25.0);
    held_limit(lifting.reach, lifting.height) * (0.82 + 4.5 / travel_cm).min(1.0)
}

/// Limit for people together, nought for a number the guideline does not know. Law: [`TEAM_LIFT`].
pub fn team_lift(one: Mass, people: u32) -> Mass {
    let together = match people {
        1 => 1.0,
        2 => 2.0 * 2.0 / 3.0,
        3 => 3.0 / 2.0,
        _ => 0.0,
    };
    one * together
}

/// How many people a load wants; none where not even three may lift it.
pub fn people_wanted(load: Mass, one: Mass) -> Option<u32> {
    (1..=3).find(|people| load <= team_lift(one, *people))
}

/// Load on the carrier who stands `near` the crucible, the other `far` from it. Law:
/// [`SHANK_SHARE`].
pub fn shank_share(load: Mass, shank: Mass, near: Length, far: Length) -> Force {
    (load * (far / (near + far)) + shank * 0.5).weight()
}

/// Share of the limit that is used up; endless beyond the guideline's reach. Law: [`ARMS_LENGTH`].
pub fn arms_length(load: Mass, reach: Length, height: Length) -> f64 {
    load / held_limit(reach, height)
}

fn held_limit(reach: Length, height: Length) -> Mass {
    let (reach_cm, height_cm) = (reach.as_mm() / 10.0, height.as_mm() / 10.0);
    if reach_cm > REACH_CM[1] || height_cm > HIGHEST_CM {
        return Mass::ZERO;
    }
    let near = REACH_CM[0] / reach_cm.max(REACH_CM[0]);
    let upright = 1.0 - 0.003 * (height_cm - 75.0).abs();
    AT_BEST * (near * upright)
}
