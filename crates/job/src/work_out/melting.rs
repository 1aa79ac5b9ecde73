//! What to charge, and the crucible that holds it.

use measure::band::Band;
use metal::charge::{CHARGE, Charge};
use metal::crucible::{Crucible, WORKING_FILL, smallest_that_holds};
use metal::furnace::practice;

use crate::amount::Amount;
use crate::job::Job;
use crate::remark::of_metal::MetalFact;
use crate::shop::Shop;
use crate::work_out::casting::band_text;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::rigging::{Rigging, poured};

/// Loss taken where no table knows the furnace and the metal: the high end of clean metal, so that
/// the mould does not run short.
const LOSS_UNKNOWN: f64 = 0.1;

/// What is melted, and in what.
pub(super) struct Pot {
    pub(super) charge: Charge,
    pub(super) crucible: Option<Crucible>,
}

pub(super) fn melting(
    job: &Job,
    shop: &Shop,
    rigging: &Rigging,
    ledger: &mut Ledger,
) -> Option<Pot> {
    let (loss, keys) = loss(job, shop, ledger);
    let charge = Charge::for_pour(poured(rigging), job.pig, loss).ok()?;
    let per_cent = |share: f64| measure::text::rounded(share * 100.0, 2);
    let lost = match loss.low() < loss.high() {
        true => format!(
            "{} to {} % of the charge",
            per_cent(loss.low()),
            per_cent(loss.high())
        ),
        false => format!("{} % of the charge", per_cent(loss.likely())),
    };
    ledger.write(
        Entry::new("charge", Amount::Mass(charge.charged), &CHARGE)
            .input("poured", band_text(&charge.poured))
            .input("pig", format!("{} % of what is poured", per_cent(job.pig)))
            .input("melt loss", lost)
            .seen(&keys)
            .up(),
    );
    let crucible = crucible(job, shop, &charge, ledger).cloned();
    Some(Pot { charge, crucible })
}

fn loss(job: &Job, shop: &Shop, ledger: &mut Ledger) -> (Band<f64>, Vec<String>) {
    if let Some(own) = &job.loss {
        return (Band::exact(own.ratio), Vec::new());
    }
    match practice(shop.furnace, job.alloy.family, job.stock) {
        Some(practice) => (practice.loss.band, practice.loss.sources.clone()),
        None => {
            ledger.note(MetalFact::LossUnknown);
            (
                Band::new(0.0, LOSS_UNKNOWN / 2.0, LOSS_UNKNOWN),
                vec!["common-practice".to_owned()],
            )
        }
    }
}

fn crucible<'a>(
    job: &Job,
    shop: &'a Shop,
    charge: &Charge,
    ledger: &mut Ledger,
) -> Option<&'a Crucible> {
    if shop.crucibles.is_empty() {
        ledger.note(MetalFact::CruciblesUnknown);
        return None;
    }
    let liquid = &job.alloy.density_liquid.band;
    let taken = smallest_that_holds(&shop.crucibles, &charge.charged, liquid);
    match taken {
        Some(crucible) => {
            let holds = measure::text::rounded(crucible.holds(liquid).low().as_kg(), 2);
            let because = format!(
                "holds {holds} kg at {:.0} % of its brim",
                WORKING_FILL * 100.0
            );
            ledger.choose("crucible", crucible.name.clone(), because);
        }
        None => {
            ledger.choose(
                "crucible",
                "none of your own",
                "the charge is more than any holds",
            );
            ledger.note(MetalFact::NoCrucible {
                charge: charge.charged.high(),
            });
        }
    }
    taken
}
