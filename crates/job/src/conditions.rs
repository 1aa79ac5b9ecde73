//! Under what conditions the mould of a job freezes: sand, contact, how hot the metal comes.

use measure::band::Band;
use measure::heat::HeatDrawing;
use metal::alloy::Alloy;
use mould::freezing::{SAND_AT_REST, thirst_of_sand};
use pour::chill::around;
use pour::contact::{ContactRow, chill_contact, contact};
use pour::meshing::{ACROSS, Meshing};
use pour::solved::Poured;
use pour::start::Start;
use pour::tables::SandHeat;

use crate::freezing::NoFreeze;
use crate::job::Job;
use crate::placed_part::PlacedPart;
use crate::shop::Shop;
use crate::work_out::{FreezingGiven, freezing_given};

/// All that the heat in a mould is followed under.
pub(crate) struct Conditions {
    /// The alloy.
    pub(crate) alloy: &'static Alloy,
    /// What the steps of the plan give.
    pub(crate) given: FreezingGiven,
    /// The sand.
    pub(crate) sand: SandHeat,
    /// Where it is known from.
    pub(crate) sand_known: SandKnown,
    /// How hard it drinks.
    pub(crate) thirst: Band<HeatDrawing>,
    /// Contact of metal and sand, W/(m² K).
    pub(crate) contact_w_m2k: Band<f64>,
    /// Box around the chills of the job, mm.
    pub(crate) also_mm: Option<[[f64; 3]; 2]>,
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

/// Water of moulding sand where nobody has measured it: the middle of 3 to 4 per cent (common
/// practice, no source). Two per cent more or less change the freezing by a tenth.
const USUAL_WATER: f64 = 0.035;

impl Conditions {
    /// Those of a job in its shop.
    pub(crate) fn of(job: &Job, shop: &Shop, part: &PlacedPart) -> Result<Conditions, NoFreeze> {
        let contact = contact(job.alloy.family).ok_or(NoFreeze::NoContact)?;
        let (sand, sand_known) = sand(shop);
        Ok(Conditions {
            alloy: job.alloy,
            given: freezing_given(job, shop, part),
            sand,
            sand_known,
            thirst: thirst(shop),
            contact_w_m2k: own_contact(contact.w_m2k(), shop),
            also_mm: around(&job.chills),
        })
    }

    /// Metal at the liquidus and what is likely left of its superheat when the mould is full.
    pub(crate) fn even(&self) -> Start {
        Start::Even(self.alloy.liquidus.band.likely() + self.given.left)
    }

    /// What is poured, with this start.
    pub(crate) fn poured(&self, start: Start) -> Poured<'static> {
        let likely = self.thirst.likely().as_w_rts_per_m2_k();
        let ends = [self.thirst.low(), self.thirst.high()];
        let pouring = self.given.pouring.map(|hot| hot.as_celsius());
        Poured {
            alloy: self.alloy,
            start,
            start_off_k: [pouring.low(), pouring.high()].map(|end| end - pouring.likely()),
            sand: self.sand,
            sand_times: ends.map(|end| end.as_w_rts_per_m2_k() / likely),
            core: SandHeat::dry(),
            contact_w_m2k: self.contact_w_m2k,
            chill_w_m2k: chill_contact().map_or(self.contact_w_m2k, ContactRow::w_m2k),
            air: SAND_AT_REST,
            on: None,
        }
    }

    /// How the mould is cut into so many cells at the most.
    pub(crate) fn meshing(&self, cells: f64) -> Meshing {
        Meshing {
            wall_mm: self.given.wall.as_mm(),
            across: ACROSS,
            budget: cells,
            staircase: false,
            even: false,
            also_mm: self.also_mm,
        }
    }
}

/// The contact of the books, or as the shop's log has taught it.
fn own_contact(book: Band<f64>, shop: &Shop) -> Band<f64> {
    let own = shop.learned.contact;
    own.map_or(book, |factor| factor.map(|times| book.likely() * times))
}

/// How hard the sand of the shop drinks heat.
fn thirst(shop: &Shop) -> Band<HeatDrawing> {
    let own = shop.heap.as_ref().and_then(|heap| heap.trial.as_ref());
    own.map_or_else(thirst_of_sand, |trial| trial.thirst())
}

/// The sand of the shop.
fn sand(shop: &Shop) -> (SandHeat, SandKnown) {
    let heap = shop.heap.as_ref();
    if let Some(trial) = heap.and_then(|heap| heap.trial.as_ref()) {
        return (
            SandHeat::drinking(trial.thirst().likely()),
            SandKnown::Trial,
        );
    }
    let water = heap
        .and_then(|heap| heap.moisture.as_ref())
        .map(|share| share.ratio);
    match (heap, water) {
        (Some(heap), _) if heap.bond.is_none() => (SandHeat::dry(), SandKnown::Oil),
        (_, Some(water)) => (SandHeat::damp(water), SandKnown::Damp),
        _ => (SandHeat::damp(USUAL_WATER), SandKnown::Usual),
    }
}
