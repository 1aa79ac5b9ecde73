//! What a charge has to come to, as typed under `[charge]` in `job.toml` and as meant.

use std::collections::BTreeMap;

use measure::matter::Mass;
use measure::text::{TextError, Typed};
use metal::alloy::Family;
use metal::charge_makeup::target::{Target, TargetError, named};
use serde::Deserialize;
use thiserror::Error;

/// `[charge]`
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ChargeFile {
    /// Name of the target; left out, the alloy of the job.
    pub target: Option<String>,
    /// Limits of the founder's own, in place of those of the target.
    #[serde(default)]
    pub limits: BTreeMap<String, String>,
    /// Liquid metal wanted at the spout; left out, what the plan says.
    pub mass: Option<Typed<Mass>>,
    /// What has to go in: "2 kg of returns", "all of gates".
    #[serde(default)]
    pub use_up: Vec<String>,
}

/// A charge as meant.
#[derive(Clone, Debug, PartialEq)]
pub struct ChargeWish {
    /// What it has to come to.
    pub target: Target,
    /// Whether limits of the founder's own stand in it.
    pub narrowed: bool,
    /// Liquid metal wanted at the spout; nothing where the plan says it.
    pub metal: Option<Mass>,
    /// What has to go in.
    pub use_up: Vec<UsedUp>,
}

/// A heap that has to be used up.
#[derive(Clone, Debug, PartialEq)]
pub struct UsedUp {
    /// The heap.
    pub heap: String,
    /// At least so much of it; nothing for all that is there.
    pub at_least: Option<Mass>,
}

/// What is wrong with a charge that is asked for.
#[derive(Debug, Error)]
pub enum WishError {
    /// The target.
    #[error("charge.target: {0}")]
    Target(#[from] TargetError),
    /// A target of another metal than the job's.
    #[error("charge.target: {target} is another metal than the {alloy} of the job")]
    OtherMetal {
        /// The target.
        target: String,
        /// The alloy.
        alloy: String,
    },
    /// What has to be used up.
    #[error(
        "charge.use_up: \"{0}\" is not understood; write \"2 kg of returns\" or \"all of gates\""
    )]
    UseUp(String),
    /// A mass in it.
    #[error("charge.use_up: {0}")]
    Mass(#[from] TextError),
    /// No metal wanted.
    #[error("charge.mass: \"{0}\" is no charge; write the metal wanted at the spout, like 4 kg")]
    NoMetal(String),
}

impl ChargeFile {
    /// What is meant in a job of this alloy.
    ///
    /// # Errors
    ///
    /// Where the target, a limit or what is to be used up is not understood.
    pub fn meant(&self, alloy: &str, family: Family) -> Result<ChargeWish, WishError> {
        let wish = self.of_target(self.target.as_deref().unwrap_or(alloy))?;
        match wish.target.family == family {
            true => Ok(wish),
            false => Err(WishError::OtherMetal {
                target: wish.target.name,
                alloy: alloy.to_owned(),
            }),
        }
    }

    /// What is meant with a target of this name.
    ///
    /// # Errors
    ///
    /// As [`ChargeFile::meant`].
    pub fn of_target(&self, target: &str) -> Result<ChargeWish, WishError> {
        let no_metal = |mass: &&Typed<Mass>| mass.value <= Mass::ZERO;
        if let Some(mass) = self.mass.as_ref().filter(no_metal) {
            return Err(WishError::NoMetal(mass.typed.clone()));
        }
        Ok(ChargeWish {
            target: named(target)?.narrowed(&self.limits)?,
            narrowed: !self.limits.is_empty(),
            metal: self.mass.as_ref().map(|mass| mass.value),
            use_up: self
                .use_up
                .iter()
                .map(|typed| used_up(typed))
                .collect::<Result<_, _>>()?,
        })
    }
}

fn used_up(typed: &str) -> Result<UsedUp, WishError> {
    let refused = || WishError::UseUp(typed.to_owned());
    let (mass, heap) = typed.split_once(" of ").ok_or_else(refused)?;
    let heap = heap.trim().to_owned();
    if heap.is_empty() {
        return Err(refused());
    }
    let at_least = match mass.trim() {
        "all" => None,
        mass => Some(mass.parse::<Typed<Mass>>()?.value),
    };
    Ok(UsedUp { heap, at_least })
}
