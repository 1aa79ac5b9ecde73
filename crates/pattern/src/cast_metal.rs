//! The metal of a casting, as far as allowances tell metals apart.

use std::fmt;
use std::str::FromStr;

use serde::Deserialize;
use thiserror::Error;

/// A metal in the tables of allowances, which know families rather than alloys.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CastMetal {
    /// Aluminium and its alloys; "light alloys" in the standards.
    Aluminium,
    /// Tin bronze, gunmetal, silicon and aluminium bronze.
    Bronze,
    /// Brass.
    Brass,
    /// Zinc and its casting alloys.
    Zinc,
    /// Grey iron.
    GreyIron,
    /// Iron with nodular graphite.
    DuctileIron,
    /// Malleable iron.
    MalleableIron,
    /// Cast steel.
    Steel,
}

/// A word that names no metal of the tables.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("\"{typed}\" is no metal of the allowance tables; there is: {known}")]
pub struct UnknownCastMetal {
    /// What was typed.
    pub typed: String,
    /// The words that are taken.
    pub known: String,
}

impl CastMetal {
    /// Every metal, in the order in which they are offered.
    pub const ALL: [CastMetal; 8] = [
        CastMetal::Aluminium,
        CastMetal::Bronze,
        CastMetal::Brass,
        CastMetal::Zinc,
        CastMetal::GreyIron,
        CastMetal::DuctileIron,
        CastMetal::MalleableIron,
        CastMetal::Steel,
    ];

    /// The word by which it is typed.
    pub const fn word(self) -> &'static str {
        match self {
            CastMetal::Aluminium => "aluminium",
            CastMetal::Bronze => "bronze",
            CastMetal::Brass => "brass",
            CastMetal::Zinc => "zinc",
            CastMetal::GreyIron => "grey-iron",
            CastMetal::DuctileIron => "ductile-iron",
            CastMetal::MalleableIron => "malleable-iron",
            CastMetal::Steel => "steel",
        }
    }
}

impl fmt::Display for CastMetal {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(to, "{}", self.word().replace('-', " "))
    }
}

impl FromStr for CastMetal {
    type Err = UnknownCastMetal;

    fn from_str(typed: &str) -> Result<CastMetal, UnknownCastMetal> {
        let found = CastMetal::ALL
            .into_iter()
            .find(|m| m.word() == typed.trim());
        found.ok_or_else(|| UnknownCastMetal {
            typed: typed.to_owned(),
            known: CastMetal::ALL.map(CastMetal::word).join(", "),
        })
    }
}
