//! From a job to its plan, top to bottom.
//!
//! Each step takes what the steps above it found, writes its figures into the ledger, and hands on
//! what the next steps need. The formulas stand in the rooms of the trade; here they only meet.

use ::rigging::given::Given;
use measure::band::Band;
use measure::flow::Duration;
use measure::heat::{Temperature, TemperatureDifference};
use measure::length::Length;

use crate::job::Job;
use crate::part::Part;
use crate::placed_part::PlacedPart;
use crate::plan::Plan;
use crate::remark::of_mesh;
use crate::remark::sorted;
use crate::shop::Shop;
use crate::work_out::ledger::Ledger;

mod allowances;
mod bench;
mod casting;
mod cores;
mod drawing;
mod feeding;
mod gates;
mod heating;
mod holding;
mod hot_spot;
mod ledger;
mod melting;
mod opening;
mod placing;
mod rigging;
mod solids;
mod thirst;
mod told;
mod treating;

/// Works a job out in a shop, for a part that has nothing left to be settled.
pub fn work_out(job: &Job, shop: &Shop, part: &Part) -> Plan {
    work_out_placed(job, shop, part, &placed(job, part))
}

/// The part of a job as it lies in the mould: it follows from the part, the way up and the joint.
pub fn placed(job: &Job, part: &Part) -> PlacedPart {
    placing::placed(job, part)
}

/// As [`work_out`], for a part whose place was worked out before.
pub fn work_out_placed(job: &Job, shop: &Shop, part: &Part, placed: &PlacedPart) -> Plan {
    let mut ledger = Ledger::default();
    // What hurts people comes before what hurts castings.
    ledger.cautions(job);
    let (given, looked) = (part, part.looked());
    placing::told(job, given, placed, &mut ledger);
    let part = placed;
    let casting = casting::casting(job, shop, part, &mut ledger);
    let feeding = feeding::feeding(job, part, &casting, &mut ledger);
    hot_spot::hot_spot(job, given, part, &mut ledger);
    let rigging = rigging::rigging(job, shop, part, &casting, &feeding, &mut ledger);
    let pot = melting::melting(job, shop, &rigging, &mut ledger);
    if let Some(pot) = pot {
        heating::heating(job, shop, &casting, &rigging, &pot, &mut ledger);
        treating::treating(job, &pot, &casting, &mut ledger);
    }
    let sand = holding::sand(job, shop, part, &rigging, &mut ledger);
    holding::weights(job, shop, part, &rigging, &mut ledger);
    let in_flask = opening::InFlask {
        part,
        casting: &casting,
        feeding: &feeding,
        rigging: &rigging,
        sand,
    };
    opening::opening(job, shop, &in_flask, &mut ledger);
    bench::people(&rigging, &mut ledger);
    bench::dent(job, shop, &mut ledger);
    bench::vents(job, shop, part, &rigging, &mut ledger);
    let mut remarks = looked.map_or_else(Vec::new, of_mesh::remarks);
    remarks.extend(ledger.remarks);
    Plan {
        name: job.name.clone(),
        date: job.date.clone(),
        alloy: job.alloy.name.clone(),
        count: job.count,
        figures: ledger.figures,
        choices: ledger.choices,
        solved: None,
        remarks: sorted(without_doubles(remarks)),
        sources: ledger.sources,
        drawing: drawing::drawing(job, part, &rigging),
        units: shop.units,
        words: shop.words,
    }
}

/// What the solids of the mould are built from, by the same steps as the plan; nothing for a part
/// of which no more than sizes are known.
pub fn mould_given(job: &Job, shop: &Shop, part: &Part) -> Option<Given> {
    mould_given_placed(job, shop, part, &placed(job, part))
}

/// As [`mould_given`], for a part whose place was worked out before.
pub fn mould_given_placed(
    job: &Job,
    shop: &Shop,
    part: &Part,
    placed: &PlacedPart,
) -> Option<Given> {
    let mut ledger = Ledger::default();
    let looked = part.looked()?;
    let part = placed;
    let casting = casting::casting(job, shop, part, &mut ledger);
    let feeding = feeding::feeding(job, part, &casting, &mut ledger);
    let rigging = rigging::rigging(job, shop, part, &casting, &feeding, &mut ledger);
    let vents = bench::vent_spacing(job, shop, part, &rigging);
    let built = solids::Sized {
        job,
        part,
        casting: &casting,
        feeding: &feeding,
        rigging: &rigging,
        vents,
    };
    solids::given(&built, &looked.mesh)
}

/// What the freezing of a mould is followed from, by the same steps as the plan.
pub struct FreezingGiven {
    /// The thinnest wall of the part.
    pub wall: Length,
    /// How hot the metal is poured.
    pub pouring: Band<Temperature>,
    /// How much of its superheat is left when the mould is full.
    pub left: TemperatureDifference,
    /// When the heaviest section freezes by the law of moduli, superheat counted.
    pub heaviest: Band<Duration>,
    /// When the thinnest one does.
    pub thinnest: Band<Duration>,
    /// Whether thick and thin sections hang together.
    pub uneven: bool,
}

/// What the freezing of the mould of a job is followed from, for its part as it lies there.
pub fn freezing_given(job: &Job, shop: &Shop, part: &PlacedPart) -> FreezingGiven {
    let mut ledger = Ledger::default();
    let casting = casting::casting(job, shop, part, &mut ledger);
    FreezingGiven {
        wall: part.thinnest.modulus.likely() * 2.0,
        pouring: casting.pouring,
        left: feeding::left_when_full(&casting),
        heaviest: casting.heaviest_freezes,
        thinnest: casting.wall_freezes,
        uneven: part.is_uneven(),
    }
}

/// A plan's own word on a fact stands for that of the mesh: the heavier of two alike is kept.
fn without_doubles(remarks: Vec<crate::remark::Remark>) -> Vec<crate::remark::Remark> {
    let heavier = |remark: &crate::remark::Remark| {
        remarks
            .iter()
            .any(|other| other.code == remark.code && other.level < remark.level)
    };
    remarks
        .iter()
        .filter(|remark| !heavier(remark))
        .cloned()
        .collect()
}
