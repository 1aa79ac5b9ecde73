//! How the mould of a job freezes: the solids of the mould, followed by the heat in them.

use measure::band::Band;
use measure::flow::Duration;
use measure::heat::Temperature;
use mould::freezing::SAND_AT_REST;
use mould::freezing::thirst_of_sand;
use pour::contact::contact;
use pour::freeze::{Freeze, FreezeError, Poured, Start, Told, freeze};
use pour::meshing::{ACROSS, BUDGET, Meshing};
use pour::tables::SandHeat;
use rigging::mould::Mould;
use thiserror::Error;

use crate::job::Job;
use crate::mould_solids::{NoMould, mould_of};
use crate::part::Part;
use crate::shop::Shop;
use crate::work_out::{FreezingGiven, freezing_given};

/// What is wished of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreezingWish {
    /// Most cells of the box around the metal.
    pub cells: f64,
}

impl Default for FreezingWish {
    fn default() -> FreezingWish {
        FreezingWish { cells: BUDGET }
    }
}

/// The freezing of the mould of a job.
#[derive(Clone, Debug)]
pub struct JobFrozen {
    /// The mould.
    pub mould: Mould,
    /// Its freezing.
    pub freeze: Freeze,
    /// What it was followed from.
    pub from: FrozenFrom,
    /// When the castings are solid, by the law of moduli.
    pub pencil: Band<Duration>,
}

/// What a freezing was followed from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrozenFrom {
    /// How hot the metal leaves the ladle.
    pub pouring: Temperature,
    /// How hot it is when the mould is full.
    pub start: Temperature,
    /// The sand.
    pub sand: SandHeat,
    /// Where the sand is known from.
    pub sand_known: SandKnown,
    /// Contact of metal and sand, W/(m² K).
    pub contact_w_m2k: Band<f64>,
}

/// Where the figures of a sand come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SandKnown {
    /// A slab timed in it, whatever its water.
    Trial,
    /// Books, with the water of the heap.
    Damp,
    /// Books, with the water that most moulding sand has.
    Usual,
    /// Books, dry, for sand bonded with oil.
    Oil,
}

/// Why the mould of a job was not followed.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum NoFreeze {
    /// No mould.
    #[error(transparent)]
    NoMould(#[from] NoMould),
    /// No contact of this metal in the table.
    #[error("no contact between this metal and sand is in the table")]
    NoContact,
    /// It could not be followed.
    #[error(transparent)]
    Freeze(#[from] FreezeError),
}

/// Water of moulding sand where nobody has measured it: the middle of 3 to 4 per cent (common
/// practice, no source). Two per cent more or less change the freezing by a tenth.
const USUAL_WATER: f64 = 0.035;

/// Follows the freezing of the mould of a job, for a part with nothing left to be settled.
///
/// # Errors
///
/// A job without a mould of solids, or one that cannot be followed.
pub fn freezing_of(
    job: &Job,
    shop: &Shop,
    part: &Part,
    wish: &FreezingWish,
    go_on: &mut dyn FnMut(&Told) -> bool,
) -> Result<JobFrozen, NoFreeze> {
    let given = freezing_given(job, shop, part);
    let mould = mould_of(job, shop, part)?;
    let contact = contact(job.alloy.family).ok_or(NoFreeze::NoContact)?;
    let (sand, sand_known, sand_times) = sand(shop);
    let start = job.alloy.liquidus.band.likely() + given.left;
    let poured = Poured {
        alloy: job.alloy,
        start: Start::Even(start),
        sand,
        sand_times,
        core: SandHeat::dry(),
        contact_w_m2k: contact.w_m2k(),
        air: SAND_AT_REST,
    };
    let meshing = Meshing {
        wall_mm: given.wall.as_mm(),
        across: ACROSS,
        budget: wish.cells,
        staircase: false,
    };
    let freeze = freeze(&mould, &meshing, &poured, go_on)?;
    Ok(JobFrozen {
        mould,
        freeze,
        from: from(&given, &poured, sand_known),
        pencil: given.heaviest,
    })
}

fn from(given: &FreezingGiven, poured: &Poured<'_>, sand_known: SandKnown) -> FrozenFrom {
    let start = match &poured.start {
        Start::Even(start) => *start,
        Start::Each(_) => given.pouring.likely(),
    };
    FrozenFrom {
        pouring: given.pouring.likely(),
        start,
        sand: poured.sand,
        sand_known,
        contact_w_m2k: poured.contact_w_m2k,
    }
}

/// The sand of the shop, and the slowest and the quickest that it may be.
fn sand(shop: &Shop) -> (SandHeat, SandKnown, [f64; 2]) {
    let heap = shop.heap.as_ref();
    let own = heap.and_then(|heap| heap.trial.as_ref());
    let band = own.map_or_else(thirst_of_sand, |trial| trial.thirst());
    let likely = band.likely().as_w_rts_per_m2_k();
    let times = [band.low(), band.high()].map(|end| end.as_w_rts_per_m2_k() / likely);
    if own.is_some() {
        return (SandHeat::drinking(band.likely()), SandKnown::Trial, times);
    }
    let water = heap
        .and_then(|heap| heap.moisture.as_ref())
        .map(|share| share.ratio);
    let (sand, known) = match (heap, water) {
        (Some(heap), _) if heap.bond.is_none() => (SandHeat::dry(), SandKnown::Oil),
        (_, Some(water)) => (SandHeat::damp(water), SandKnown::Damp),
        _ => (SandHeat::damp(USUAL_WATER), SandKnown::Usual),
    };
    (sand, known, times)
}
