//! Several moulds from one furnace: which heat each comes from, and in which order they are poured.

use measure::flow::Duration;
use measure::heat::{Temperature, TemperatureDifference};
use measure::length::Length;
use measure::matter::Mass;
use measure::source::Law;
use thiserror::Error;

/// Temperature when a mould's turn comes.
pub const TURN_TEMPERATURE: Law = Law {
    name: "metal::order::turn_temperature",
    formula: "T_n = T_1 − d (n − 1)",
    range: "drop d from one mould to the next, alike for all: somewhat more for the last, as \
            less metal cools faster",
    sources: &["common-practice"],
};

/// How many heats so many equal moulds take.
pub const HEATS_WANTED: Law = Law {
    name: "metal::order::heats_wanted",
    formula: "n_heats = ⌈n / ⌊m_held / (m (1 + p))⌋⌉",
    range: "a mould is poured from one heat, never from two; a pig p is kept in each heat",
    sources: &["common-practice"],
};

/// How many heats fit in a stretch of time.
pub const HEATS_IN_TIME: Law = Law {
    name: "metal::order::heats_in_time",
    formula: "n = 1 + ⌊(t − t_1) / t_2⌋",
    range: "first heat t_1 from a cold furnace, each further one t_2, pouring with it",
    sources: &["common-practice"],
};

/// A mould that waits for metal.
#[derive(Clone, Debug, PartialEq)]
pub struct Mould {
    /// What it is called.
    pub name: String,
    /// The coldest metal that still fills it, at its mouth.
    pub needs: Temperature,
    /// Its thinnest wall: of two moulds that need the same heat the thinner goes first.
    pub wall: Length,
}

/// A mould's turn.
#[derive(Clone, Debug, PartialEq)]
pub struct Turn {
    /// Which mould, counted from nought in the list that was given.
    pub mould: usize,
    /// The metal's temperature then.
    pub at: Temperature,
    /// How far that is above what it needs; never below nought.
    pub spare: TemperatureDifference,
}

/// The order of a pour.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Order {
    /// One after the other.
    pub turns: Vec<Turn>,
    /// Moulds for which the metal is too cold by then, counted from nought: they wait for the next
    /// heat, and what is left goes into the hot ingot mould.
    pub next_heat: Vec<usize>,
}

/// The heats of a day: which moulds each pours.
#[derive(Clone, Debug, PartialEq)]
pub struct Heat {
    /// Which moulds, counted from nought in the list that was given.
    pub moulds: Vec<usize>,
    /// What they take together.
    pub poured: Mass,
    /// What the crucible could pour beyond that, the pig kept.
    pub spare: Mass,
}

/// A mould larger than the crucible.
#[derive(Clone, Debug, PartialEq, Error)]
#[error(
    "mould {} takes {:.2} kg with its pig, the crucible holds {:.2} kg: take a larger crucible",
    mould + 1, wants.as_kg(), holds.as_kg()
)]
pub struct TooLarge {
    /// Which mould, counted from nought.
    pub mould: usize,
    /// What it takes, pig included.
    pub wants: Mass,
    /// What the crucible holds.
    pub holds: Mass,
}

/// The order in which most moulds are poured warm enough: what needs the hottest metal first, the
/// thinner of two alike, and none below its need. Law: [`TURN_TEMPERATURE`].
pub fn order(moulds: &[Mould], first: Temperature, drop_each: TemperatureDifference) -> Order {
    let mut queue: Vec<usize> = (0..moulds.len()).collect();
    let hot = |mould: &Mould| mould.needs.as_kelvin();
    let thin = |mould: &Mould| mould.wall.as_mm();
    queue.sort_by(|&a, &b| {
        let (a, b) = (&moulds[a], &moulds[b]);
        hot(b).total_cmp(&hot(a)).then(thin(a).total_cmp(&thin(b)))
    });
    let mut poured = Order::default();
    for mould in queue {
        let at = turn_temperature(first, drop_each, poured.turns.len() + 1);
        let spare = at - moulds[mould].needs;
        match spare >= TemperatureDifference::ZERO {
            true => poured.turns.push(Turn { mould, at, spare }),
            false => poured.next_heat.push(mould),
        }
    }
    poured
}

/// Which moulds come from which heat, `takes` being what each takes: large ones first, each into
/// the first heat with room, so that no heat runs short.
///
/// # Errors
///
/// Where a mould takes more than the crucible holds.
pub fn heats(takes: &[Mass], holds: Mass, pig_share: f64) -> Result<Vec<Heat>, TooLarge> {
    let can_pour = holds / (1.0 + pig_share);
    let mut queue: Vec<usize> = (0..takes.len()).collect();
    queue.sort_by(|&a, &b| takes[b].as_kg().total_cmp(&takes[a].as_kg()));
    let mut heats: Vec<Heat> = Vec::new();
    for mould in queue {
        let mass = takes[mould];
        if mass > can_pour {
            let wants = mass * (1.0 + pig_share);
            return Err(TooLarge {
                mould,
                wants,
                holds,
            });
        }
        match heats.iter_mut().find(|heat| mass <= heat.spare) {
            Some(heat) => {
                heat.moulds.push(mould);
                heat.poured += mass;
                heat.spare = can_pour - heat.poured;
            }
            None => heats.push(Heat {
                moulds: vec![mould],
                poured: mass,
                spare: can_pour - mass,
            }),
        }
    }
    Ok(heats)
}

/// Temperature at the n-th turn, the first being 1. Law: [`TURN_TEMPERATURE`].
pub fn turn_temperature(
    first: Temperature,
    drop_each: TemperatureDifference,
    turn: usize,
) -> Temperature {
    first - drop_each * (turn as f64 - 1.0)
}

/// Equal moulds that one heat pours.
pub fn moulds_in_heat(each: Mass, pig_share: f64, held: Mass) -> f64 {
    // A hair over a whole number is rounding of the sums, not metal that is missing.
    (held / (each * (1.0 + pig_share)) + 1e-9).floor()
}

/// Heats that so many equal moulds take; endless where one alone is more than the crucible holds.
/// Law: [`HEATS_WANTED`].
pub fn heats_wanted(moulds: f64, each: Mass, pig_share: f64, held: Mass) -> f64 {
    (moulds / moulds_in_heat(each, pig_share, held)).ceil()
}

/// Heats that fit in a stretch of time; nought where not even the first does.
/// Law: [`HEATS_IN_TIME`].
pub fn heats_in_time(time: Duration, first: Duration, next: Duration) -> f64 {
    if time < first {
        return 0.0;
    }
    1.0 + ((time - first) / next).floor()
}
