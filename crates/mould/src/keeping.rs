//! Whether a mould or a core may stand till it is poured.

use std::sync::LazyLock;

use measure::flow::Duration;
use measure::source::Law;
use serde::Deserialize;

/// How long sand of a bond keeps.
pub const KEEPING: Law = Law {
    name: "mould::keeping::keeping",
    formula: "left = t_life − t, nothing left where RH > RH_life",
    range: "pencil grade: shelf lives are spoken of as hours, a day, weeks",
    sources: &["keeping-memory"],
};

/// What binds the sand of a mould or core, as far as keeping goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bond {
    /// Green sand: clay and water.
    Green,
    /// Baked sugar, molasses, flour or starch.
    Sugar,
    /// Baked drying oil.
    Oil,
    /// Silicate hardened with gas.
    Silicate,
}

/// What becomes of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Keeps {
    /// Good for this much longer.
    Still(Duration),
    /// It has stood too long.
    TooLong,
    /// The air is too damp for it.
    TooDamp,
    /// A core that drinks water stands in a closed green mould.
    InGreenMould,
}

/// How long sand of a bond keeps, and in what air.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Life {
    bond: String,
    hours: f64,
    humidity: f64,
    /// What to do before it is poured late.
    pub advice: String,
}

impl Life {
    /// The longest that it is left standing.
    pub fn longest(&self) -> Duration {
        Duration::from_s(self.hours * 3600.0)
    }
}

impl Bond {
    /// Every bond with the word for it.
    pub const WORDS: [(&'static str, Bond); 4] = [
        ("green", Bond::Green),
        ("sugar", Bond::Sugar),
        ("oil", Bond::Oil),
        ("silicate", Bond::Silicate),
    ];

    /// How it keeps.
    pub fn life(self) -> Option<&'static Life> {
        let word = Bond::WORDS.iter().find(|(_, bond)| *bond == self)?.0;
        LIVES.iter().find(|life| life.bond == word)
    }
}

/// Longest that a core of sugar or flour stands in a closed green mould: there it drinks from the
/// sand round it, whatever the weather; cores are set just before pouring.
const IN_GREEN_MOULD: Duration = Duration::from_s(3600.0);

/// Whether it may still be poured after standing so long in such air. Law: [`KEEPING`].
///
/// `humidity` is the share of saturation; `closed_green` says that a core stands in a closed mould
/// of green sand.
pub fn keeping(bond: Bond, stood: Duration, humidity: f64, closed_green: bool) -> Keeps {
    let Some(life) = bond.life() else {
        return Keeps::TooLong;
    };
    let longest = life.longest();
    if bond == Bond::Sugar && closed_green && stood > IN_GREEN_MOULD {
        return Keeps::InGreenMould;
    }
    if humidity > life.humidity {
        return Keeps::TooDamp;
    }
    match stood < longest {
        true => Keeps::Still(longest - stood),
        false => Keeps::TooLong,
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    life: Vec<Life>,
}

static LIVES: LazyLock<Vec<Life>> = LazyLock::new(|| {
    let table: Result<Table, _> = toml::from_str(include_str!("../data/keeping.toml"));
    table.map(|table| table.life).unwrap_or_default()
});
