//! The book of a heap: what it holds, what a pour takes out of it and leaves in it.
//!
//! Nothing appears or vanishes: what leaves the heap stands under [`Gone`], so that the sums of
//! before and after are the same to the gram.

use measure::length::{Area, Length};
use measure::matter::{Density, Mass};
use measure::source::Law;
use thiserror::Error;

use super::holds::{Bounds, Heap, Passed};

/// Part of the heap that got hotter than a mark.
pub const BURNT_SHARE: Law = Law {
    name: "sand::heap::balance::burnt_share",
    formula: "φ = A δ ρ / m",
    range: "A all faces of metal against sand, δ the depth that passed the mark, m the heap",
    sources: &["common-practice"],
};

/// New clay that brings a heap back to its live clay.
pub const CLAY_WANTED: Law = Law {
    name: "sand::heap::balance::clay_wanted",
    formula: "m_clay = (b m_dry − m_live) / (1 − b)",
    range: "b of the dry heap, the new clay counted in it",
    sources: &["common-practice"],
};

/// Part of live clay that leaves as bound water when it dies: `clay-water-memory`, of bentonite.
pub const BOUND_WATER: f64 = 0.05;

/// Part of the dry solids of molasses or flour that stays as ash: `shop-handbook-figures`, 8 to
/// 12 %, from memory. Oil leaves next to none.
pub const ASH_OF_SUGAR: f64 = 0.10;

/// What one pour did.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Pour {
    /// Part of the heap hotter than the death of its clay.
    pub clay_burnt: f64,
    /// Part of the heap hotter than its binder bears.
    pub organic_burnt: f64,
    /// Part of the heap that was dried out.
    pub dried: f64,
    /// Part of the burnt organic binder that stays as ash.
    pub ash: f64,
    /// Part of the grains in the burnt layer that break up into fines.
    pub broken: f64,
    /// Grains of broken cores that fell in.
    pub core_sand: Mass,
    /// Unburnt binder that they brought.
    pub core_binder: Mass,
    /// Parting dust used.
    pub parting: Mass,
}

/// What was done after a pour.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Renewal {
    /// Burnt crust thrown out, as a part of what was burnt: 0 nothing, 1 all of it.
    pub crust_out: f64,
    /// Part of the mixed heap thrown out.
    pub heap_out: f64,
    /// New sand.
    pub sand: Mass,
    /// Fines in the new sand, a share of it.
    pub fines_of_sand: f64,
    /// New clay.
    pub clay: Mass,
    /// New organic binder, without its water.
    pub organic: Mass,
    /// Water, that of syrups and damp sand with it.
    pub water: Mass,
}

/// What left the heap.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Gone {
    /// Steam.
    pub steam: Mass,
    /// Gas of binder and the bound water of clay.
    pub gas: Mass,
    /// What was thrown out.
    pub thrown: Mass,
}

/// A heap after a step, and what left it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct After {
    /// The heap.
    pub heap: Heap,
    /// What left it.
    pub gone: Gone,
}

/// Why a step is none.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum BalanceError {
    /// A heap that weighs nothing.
    #[error("the heap weighs nothing: give what it holds")]
    Empty,
    /// A part of the heap that is none.
    #[error("{what} is {percent:.1} % of the heap: give 0 to 100 %")]
    Share {
        /// Which.
        what: &'static str,
        /// What was given, in per cent.
        percent: f64,
    },
    /// A mass below nought.
    #[error("{what} weighs {kg:.3} kg: give nought or more")]
    BelowNought {
        /// Which.
        what: &'static str,
        /// What was given, in kg.
        kg: f64,
    },
}

/// Part of a heap that got hotter than a mark. Law: [`BURNT_SHARE`].
pub fn burnt_share(faces: Area, depth: Length, rammed: Density, heap: Mass) -> f64 {
    rammed * (faces * depth) / heap
}

/// New clay for a wanted live part. Law: [`CLAY_WANTED`].
pub fn clay_wanted(dry: Mass, live: Mass, wanted: f64) -> Mass {
    ((dry * wanted - live) / (1.0 - wanted)).max(Mass::ZERO)
}

/// The heap after a pour, before anything is thrown out or added.
///
/// # Errors
///
/// Where a share or a mass is none.
pub fn after_pour(heap: &Heap, pour: &Pour) -> Result<After, BalanceError> {
    sound(heap)?;
    pour.check()?;
    let killed = heap.live_clay * pour.clay_burnt;
    let bound = killed * BOUND_WATER;
    let burnt = heap.organic * pour.organic_burnt;
    let ash = burnt * pour.ash;
    let steam = heap.water * pour.dried;
    let broken = heap.sand * (pour.clay_burnt * pour.broken);
    Ok(After {
        heap: Heap {
            sand: heap.sand - broken,
            live_clay: heap.live_clay - killed,
            dead_clay: heap.dead_clay + killed - bound,
            organic: heap.organic - burnt + pour.core_binder,
            ash: heap.ash + ash,
            core_sand: heap.core_sand + pour.core_sand,
            parting: heap.parting + pour.parting,
            fines: heap.fines + broken,
            water: heap.water - steam,
        },
        gone: Gone {
            steam,
            gas: bound + burnt - ash,
            thrown: Mass::ZERO,
        },
    })
}

/// The heap after the crust was thrown out, part of the rest too, and new stuff mixed in.
///
/// The crust has the make-up of the heap with its clay dead and its binder burnt: throwing it out
/// takes dead clay and ash of this very pour away before they are mixed in.
///
/// # Errors
///
/// Where a share or a mass is none.
pub fn renewed(heap: &Heap, pour: &Pour, renewal: &Renewal) -> Result<After, BalanceError> {
    sound(heap)?;
    renewal.check()?;
    let crust = crust_of(heap, pour).map(|mass| mass * renewal.crust_out);
    let rest = heap.with(&crust, |has, out| (has - out).max(Mass::ZERO));
    let out = rest.map(|mass| mass * renewal.heap_out);
    let kept = rest.with(&out, |has, out| has - out);
    let thrown = heap.total() - kept.total();
    let new_fines = renewal.sand * renewal.fines_of_sand;
    let fresh = Heap {
        sand: renewal.sand - new_fines,
        live_clay: renewal.clay,
        organic: renewal.organic,
        fines: new_fines,
        water: renewal.water,
        ..Heap::default()
    };
    Ok(After {
        heap: kept.with(&fresh, |has, new| has + new),
        gone: Gone {
            thrown,
            ..Gone::default()
        },
    })
}

/// How many pours of this kind, each followed by this renewal, until a bound is passed, and
/// which; none within `most` pours.
///
/// # Errors
///
/// Where a step is none.
pub fn pours_left(
    heap: &Heap,
    pour: &Pour,
    renewal: &Renewal,
    bounds: &Bounds,
    most: u32,
) -> Result<Option<(u32, Passed)>, BalanceError> {
    let mut now = *heap;
    for pours in 0..=most {
        if let Some(passed) = now.passed(bounds) {
            return Ok(Some((pours, passed)));
        }
        let poured = after_pour(&now, pour)?.heap;
        now = renewed(&poured, pour, renewal)?.heap;
        // Water is brought back at every mixing, however much went.
        now.water = heap.water;
    }
    Ok(None)
}

impl Pour {
    fn check(&self) -> Result<(), BalanceError> {
        shares(&[
            ("the part hotter than clay bears", self.clay_burnt),
            ("the part hotter than the binder bears", self.organic_burnt),
            ("the part dried out", self.dried),
            ("ash", self.ash),
            ("the part of the grains that broke", self.broken),
        ])?;
        masses(&[
            ("core sand", self.core_sand),
            ("the binder of cores", self.core_binder),
            ("parting dust", self.parting),
        ])
    }
}

impl Renewal {
    fn check(&self) -> Result<(), BalanceError> {
        shares(&[
            ("the crust thrown out", self.crust_out),
            ("the part thrown out", self.heap_out),
            ("fines of the new sand", self.fines_of_sand),
        ])?;
        masses(&[
            ("new sand", self.sand),
            ("new clay", self.clay),
            ("new binder", self.organic),
            ("water", self.water),
        ])
    }
}

fn shares(given: &[(&'static str, f64)]) -> Result<(), BalanceError> {
    let odd = given.iter().find(|(_, share)| !(0.0..=1.0).contains(share));
    match odd {
        Some((what, share)) => Err(BalanceError::Share {
            what,
            percent: share * 100.0,
        }),
        None => Ok(()),
    }
}

fn masses(given: &[(&'static str, Mass)]) -> Result<(), BalanceError> {
    let odd = given
        .iter()
        .find(|(_, mass)| !(0.0..f64::INFINITY).contains(&mass.as_kg()));
    match odd {
        Some((what, mass)) => Err(BalanceError::BelowNought {
            what,
            kg: mass.as_kg(),
        }),
        None => Ok(()),
    }
}

/// The crust that a pour left in this heap, which is the heap after it: no live clay, no
/// water, and of what the pour itself made all of it.
fn crust_of(heap: &Heap, pour: &Pour) -> Heap {
    let burnt = pour.clay_burnt;
    // Live clay before was what is left over one less the share that died.
    let killed = match burnt < 1.0 {
        true => heap.live_clay * (burnt / (1.0 - burnt)) * (1.0 - BOUND_WATER),
        false => heap.dead_clay,
    };
    let part = |mass: Mass| mass * burnt;
    let old_dead = (heap.dead_clay - killed).max(Mass::ZERO);
    Heap {
        sand: part(heap.sand),
        live_clay: Mass::ZERO,
        dead_clay: killed + part(old_dead),
        organic: Mass::ZERO,
        ash: part(heap.ash),
        core_sand: part(heap.core_sand),
        parting: part(heap.parting),
        fines: part(heap.fines),
        water: Mass::ZERO,
    }
}

fn sound(heap: &Heap) -> Result<(), BalanceError> {
    masses(&heap.parts())?;
    match heap.dry() > Mass::ZERO {
        true => Ok(()),
        false => Err(BalanceError::Empty),
    }
}
