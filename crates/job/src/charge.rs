//! A charge made up from the shop's own heaps: from what is typed to what is told.
//!
//! The sums stand in `metal::charge_makeup`; here the heaps of `shop.toml` and the `[charge]` of
//! `job.toml` become what those sums want, and what comes of them gets its words.

use measure::matter::Mass;
use metal::alloy::Family;
use metal::charge_makeup::heap::Heap;
use metal::charge_makeup::loss;
use metal::charge_makeup::makeup::{MakeUp, MakeUpError, UseUp, Wish, make_up};
use metal::charge_makeup::target::Target;

use crate::charge::wish::{ChargeFile, ChargeWish, WishError};
use crate::job::Job;
use crate::job_file::{Serves, StockForm};
use crate::melt_loss::{MeltLoss, by_the_law, melt_loss};
use crate::plan::Plan;
use crate::shop::Shop;
use crate::words::said::Said;

pub mod heap_file;
pub mod made_file;
pub mod not_made;
pub mod told;
pub mod wish;

/// Where the drawing of lots begins: any number would do, as long as it is always the same.
const SEED: u64 = 20_061_837;

/// A charge asked for, with everything it is worked out from.
#[derive(Clone, Debug)]
pub struct Asked {
    /// The job it is for; nothing for a charge without a job.
    pub job: Option<String>,
    /// What it has to come to, and what has to go in.
    pub wish: ChargeWish,
    /// Liquid metal wanted at the spout.
    pub metal: Mass,
    /// What is lost.
    pub loss: MeltLoss,
    /// What the casting has to serve for.
    pub serves: Serves,
}

impl Asked {
    /// What a job asks for: its `[charge]`, or else its alloy; `metal` is what the plan says, taken
    /// where the job says no mass.
    ///
    /// # Errors
    ///
    /// Where there is no target for the alloy.
    pub fn of_job(job: &Job, shop: &Shop, metal: Mass) -> Result<Asked, WishError> {
        let of_alloy = || ChargeFile::default().meant(&job.alloy.name, job.alloy.family);
        let wish = job.charge.clone().map_or_else(of_alloy, Ok)?;
        Ok(Asked {
            job: Some(job.name.clone()),
            metal: wish.metal.unwrap_or(metal),
            wish,
            loss: melt_loss(job, shop),
            serves: job.serves,
        })
    }

    /// What is asked for without a job: so much metal of heavy stock.
    pub fn alone(wish: ChargeWish, shop: &Shop, metal: Mass) -> Asked {
        Asked {
            job: None,
            metal,
            loss: by_the_law(shop.furnace, wish.target.family, StockForm::default()),
            wish,
            serves: Serves::Machine,
        }
    }
}

/// A charge made up, with what it was made from.
#[derive(Clone, Debug)]
pub struct Made {
    /// What was asked for.
    pub asked: Asked,
    /// The heaps that go into this metal.
    pub heaps: Vec<Heap>,
    /// What came of it.
    pub makeup: MakeUp,
    /// The likely step of the scale.
    pub scale_step: Mass,
    /// Keys of the sources of target and losses.
    pub sources: Vec<String>,
}

/// Makes up a charge from the heaps of a shop that go into the metal of the target.
///
/// # Errors
///
/// What the sums say: no heap, no metal, no charge that meets the target.
pub fn charge(asked: &Asked, shop: &Shop) -> Result<Made, MakeUpError> {
    let target = &asked.wish.target;
    let heaps = heaps_for(shop, target.family);
    let losses = loss::of_melt(target.family, shop.furnace);
    let wish = Wish {
        target: target.clone(),
        metal: asked.metal,
        melt_loss: asked.loss.share.likely(),
        losses: loss::bands(&losses),
        use_up: use_up(&asked.wish, &heaps),
        clearance: None,
        scale_step: shop.scale_step,
        seed: SEED,
    };
    let makeup = make_up(&heaps, &wish)?;
    let of_losses = losses.iter().flat_map(|row| &row.loss.sources);
    let of_melt = asked.loss.sources.iter();
    Ok(Made {
        asked: asked.clone(),
        makeup,
        scale_step: shop.scale_step,
        sources: once_each(target.sources.iter().chain(of_losses).chain(of_melt)),
        heaps,
    })
}

/// The heaps that go into a metal.
pub fn heaps_for(shop: &Shop, family: Family) -> Vec<Heap> {
    let goes_in = shop.metal_heaps.iter();
    goes_in
        .filter(|heap| heap.goes_into.contains(&family))
        .map(|heap| heap.heap.clone())
        .collect()
}

/// Liquid metal at the spout as a plan has it: its likely charge, less what is lost.
pub fn metal_of(plan: &Plan, loss: &MeltLoss) -> Option<Mass> {
    let [_, charge_kg, _] = plan.figure("charge")?.amount.values();
    Some(Mass::from_kg(charge_kg) * (1.0 - loss.share.likely()))
}

/// The target as it is told: its name, and that it was changed where the founder narrowed it.
pub fn target_words(target: &Target, narrowed: bool) -> Said {
    match narrowed && !target.sources.is_empty() {
        true => Said::new("charge-target-own").with("target", target.name.as_str()),
        false => Said::typed(target.name.as_str()),
    }
}

/// "All of" a heap is what lies there.
fn use_up(wish: &ChargeWish, heaps: &[Heap]) -> Vec<UseUp> {
    let there = |name: &str| {
        heaps
            .iter()
            .find(|heap| heap.name == name)
            .map(|heap| heap.mass)
    };
    let of_heap = wish.use_up.iter();
    of_heap
        .map(|asked| UseUp {
            heap: asked.heap.clone(),
            at_least: asked.at_least.or(there(&asked.heap)).unwrap_or(Mass::ZERO),
        })
        .collect()
}

fn once_each<'a>(keys: impl Iterator<Item = &'a String>) -> Vec<String> {
    let mut once: Vec<String> = Vec::new();
    for key in keys {
        if !once.contains(key) {
            once.push(key.clone());
        }
    }
    once
}
