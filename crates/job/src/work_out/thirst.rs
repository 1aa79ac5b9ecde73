//! How hard the sand drinks heat: by the books, or by a slab timed in the shop's own heap.

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
    /// Whether the trial was of the metal of the job, so that the metal's own uncertainty is in it.
    pub(super) same_metal: bool,
}

pub(super) fn thirst<'a>(job: &Job, shop: &'a Shop) -> Thirst<'a> {
    let own = shop.heap.as_ref().and_then(|heap| heap.trial.as_ref());
    Thirst {
        band: own.map_or_else(thirst_of_sand, SlabTrial::thirst),
        own,
        same_metal: own.is_some_and(|trial| trial.alloy.name == job.alloy.name),
    }
}
