//! What to charge, and the crucible that holds it.

use measure::band::Band;
use measure::matter::Mass;
use metal::charge::{CHARGE, Charge};
use metal::crucible::{Crucible, WORKING_FILL, smallest_that_holds};
use metal::loss::{MELT_LOSS, usual_standing};

use crate::amount::Amount;
use crate::charge::told::{chance_words, in_a_sentence};
use crate::charge::{self, Asked};
use crate::job::Job;
use crate::melt_loss::{MeltLoss, melt_loss};
use crate::remark::of_charge::{ChargeFact, remarks};
use crate::remark::of_metal::MetalFact;
use crate::shop::Shop;
use crate::words::said::Said;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::rigging::{Rigging, poured};
use crate::work_out::told::{band, share, word};

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
    if !shop.probe {
        ledger.note(MetalFact::NoProbe);
    }
    for origin in &job.scrap {
        ledger.note(MetalFact::Scrap(origin));
    }
    let known = melt_loss(job, shop);
    if known.guessed {
        ledger.note(MetalFact::LossUnknown);
    }
    if known.by_law {
        write_loss(job, shop, &known, ledger);
    }
    let (loss, keys) = (known.share, known.sources);
    let charge = Charge::for_pour(poured(rigging), job.pig, loss).ok()?;
    ledger.write(
        Entry::new("charge", Amount::Mass(charge.charged), &CHARGE)
            .input("poured", band(&charge.poured))
            .input("pig_share", share(&Band::exact(job.pig)))
            .input("loss", share(&loss))
            .seen(&keys)
            .up(),
    );
    let held = in_the_crucible(&charge, &loss);
    let crucible = crucible(job, shop, &held, ledger).cloned();
    from_heaps(job, shop, &charge, ledger);
    Some(Pot { charge, crucible })
}

/// What the crucible has to hold. The metal for the ingot mould is the reserve from which a mould
/// that takes more than is likely is filled: it is not wanted a second time on top of the most that
/// is poured.
fn in_the_crucible(charge: &Charge, loss: &Band<f64>) -> Band<Mass> {
    let most_poured = metal::charge::charge(charge.poured.high(), 0.0, loss.high());
    let charged = &charge.charged;
    Band::new(
        charged.low(),
        charged.likely(),
        most_poured.max(charged.likely()),
    )
}

/// Writes what is lost of the charge, where nobody has weighed it.
fn write_loss(job: &Job, shop: &Shop, known: &MeltLoss, ledger: &mut Ledger) {
    let because = match known.guessed {
        false => "because-loss-own",
        true => "because-loss-any",
    };
    ledger.write(
        Entry::new("melt loss", Amount::Share(known.share), &MELT_LOSS)
            .input("metal", word(&job.alloy.name))
            .input("furnace", word(shop.furnace.word()))
            .input("form", word(job.form.word()))
            .input("standing", band(&usual_standing()))
            .seen(&known.sources)
            .because(Said::new(because))
            .up(),
    );
}

/// The charge made up from the shop's own heaps, where the job asks for it.
fn from_heaps(job: &Job, shop: &Shop, charge: &Charge, ledger: &mut Ledger) {
    if job.charge.is_none() {
        return;
    }
    let metal: Mass = charge.poured.likely() + charge.pig.likely();
    let made = match Asked::of_job(job, shop, metal).map(|asked| charge::charge(&asked, shop)) {
        Ok(Ok(made)) => made,
        Ok(Err(error)) => return ledger.note(ChargeFact::from(error)),
        Err(_) => return ledger.note(ChargeFact::NotMade(Said::new("not-made-wish"))),
    };
    let sure = chance_words(&made);
    let because = match &made.makeup.cost {
        Some(cost) => Said::new("charge-sure-cost")
            .with("cost", cost.to_string())
            .with("sure", sure),
        None => sure,
    };
    ledger.choose(
        "charge from heaps",
        in_a_sentence(&made, shop.units),
        because,
    );
    let told = |code: &str| ledger.remarks.iter().any(|other| other.code == code);
    let new: Vec<_> = remarks(&made)
        .into_iter()
        .filter(|remark| !told(remark.code))
        .collect();
    ledger.remarks.extend(new);
    for key in made.sources {
        if !ledger.sources.contains(&key) {
            ledger.sources.push(key);
        }
    }
}

fn crucible<'a>(
    job: &Job,
    shop: &'a Shop,
    charge: &Band<Mass>,
    ledger: &mut Ledger,
) -> Option<&'a Crucible> {
    if shop.crucibles.is_empty() {
        ledger.note(MetalFact::CruciblesUnknown);
        return None;
    }
    let liquid = &job.alloy.density_liquid.band;
    let taken = smallest_that_holds(&shop.crucibles, charge, liquid);
    match taken {
        Some(crucible) => {
            let holds = measure::text::rounded(crucible.holds(liquid).low().as_kg(), 2);
            let because = Said::new("reason-crucible")
                .with("mass", format!("{holds} kg"))
                .with("fill", format!("{:.0} %", WORKING_FILL * 100.0));
            ledger.choose("crucible", Said::typed(crucible.name.as_str()), because);
        }
        None => {
            ledger.choose(
                "crucible",
                Said::new("chosen-crucible-none"),
                Said::new("reason-crucible-none"),
            );
            ledger.note(MetalFact::NoCrucible {
                charge: charge.high(),
            });
        }
    }
    taken
}
