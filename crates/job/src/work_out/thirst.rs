//! How hard the sand drinks heat: by the books, by a slab timed in the shop's own heap, or as the
//! shop's log has taught on top of either.

use measure::band::Band;
use measure::heat::HeatDrawing;
use mould::freezing::thirst_of_sand;

use crate::job::Job;
use crate::shop::Shop;
use crate::slab_trial::SlabTrial;

/// How hard the sand drinks heat.
pub(super) struct Thirst<'a> {
    pub(super) band: Band<HeatDrawing>,
    /// The trial it was taken from, where there is one.
    pub(super) own: Option<&'a SlabTrial>,
    /// How the shop's castings froze over what this would give them, where the log has taught it.
    pub(super) learned: Option<Band<f64>>,
    /// Whether the trial was of the metal of the job, so that the metal's own uncertainty is in it.
    pub(super) same_metal: bool,
}

pub(super) fn thirst<'a>(job: &Job, shop: &'a Shop) -> Thirst<'a> {
    let own = shop.heap.as_ref().and_then(|heap| heap.trial.as_ref());
    let by_trial = own.map_or_else(thirst_of_sand, SlabTrial::thirst);
    let learned = shop.learned.freezing;
    // A time is as the inverse square of the thirst; the factor was learned on the likely one.
    let by_log = learned.map(|factor| factor.map(|times| by_trial.likely() * (1.0 / times.sqrt())));
    Thirst {
        band: by_log.unwrap_or(by_trial),
        own,
        learned,
        same_metal: own.is_some_and(|trial| trial.alloy.name == job.alloy.name),
    }
}
