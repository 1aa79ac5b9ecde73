//! What is done to the melt: inoculant, zinc to put back, deoxidiser, gas.

use measure::band::Band;
use measure::flow::Duration;
use measure::length::Length;
use metal::alloy::{Caution, Family};
use metal::charge_makeup::element::Element;
use metal::charge_makeup::measured::Measured;
use metal::charge_makeup::target;
use metal::crucible::inside_width;
use metal::iron::{INOCULANT, WANTED_EQUIVALENT, inoculant, inoculant_dose, wanted_equivalent};
use metal::treatment::{DOSE, dose, named};
use metal::zinc::{self, CARRIED_OFF_M_PER_S, LOST, lost, no_hotter_than_it_boils};

use crate::amount::Amount;
use crate::job::Job;
use crate::remark::of_metal::MetalFact;
use crate::words::said::Said;
use crate::work_out::casting::Casting;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::melting::Pot;
use crate::work_out::told::{band, exact, share, word};

/// Minutes that brass stands at its heat before the mould is full: skimming, carrying, pouring.
/// Shorter, and nobody has skimmed; longer, and the pour was held up.
const AT_HEAT_MIN: [f64; 3] = [5.0, 10.0, 15.0];

pub(super) fn treating(job: &Job, pot: &Pot, casting: &Casting, ledger: &mut Ledger) {
    match job.alloy.family {
        Family::Iron => iron(pot, casting, ledger),
        Family::Copper => {
            deoxidiser(job, pot, ledger);
            put_back(job, pot, casting, ledger);
        }
        Family::Aluminium => gas(pot, ledger),
        Family::Zinc | Family::Tin => {}
    }
}

/// Walls up to this are thin for iron: they misrun and come out white where it is poured cold
/// (common practice, no source).
const THIN_IRON: Length = Length::from_mm(10.0);

fn iron(pot: &Pot, casting: &Casting, ledger: &mut Ledger) {
    let (wall, pouring) = (casting.wall, casting.pouring);
    if wall <= THIN_IRON {
        ledger.note(MetalFact::PourHot { wall, pouring });
    }
    let grams = pot.charge.charged.with(&inoculant_dose(), inoculant);
    ledger.write(
        Entry::new("inoculant", Amount::Mass(grams), &INOCULANT)
            .input("iron", band(&pot.charge.charged))
            .input("share", share(&inoculant_dose()))
            .because(Said::new("because-ferrosilicon")),
    );
    if let Some(wanted) = wanted_equivalent(wall) {
        ledger.write(
            Entry::new(
                "wanted carbon equivalent",
                Amount::Share(wanted),
                &WANTED_EQUIVALENT,
            )
            .input("wall", exact(wall)),
        );
        ledger.note(MetalFact::WantedEquivalent { wall, wanted });
    }
}

/// Phosphor copper for the tin bronzes: those that a little aluminium or silicon spoils.
fn deoxidiser(job: &Job, pot: &Pot, ledger: &mut Ledger) {
    let tin_bronze = job.alloy.cautions.contains(&Caution::SpoiledByAluminium);
    if let (true, Some(row)) = (tin_bronze, named("phosphor copper")) {
        let grams = pot.charge.charged.with(&row.dose.band, dose);
        ledger.write(
            Entry::new("phosphor copper", Amount::Mass(grams), &DOSE)
                .input("melt", band(&pot.charge.charged))
                .input("treatment", word(&row.name))
                .seen(&row.dose.sources)
                .because(Said::typed(row.how.as_str())),
        );
    }
}

fn put_back(job: &Job, pot: &Pot, casting: &Casting, ledger: &mut Ledger) {
    let (Some(zinc), Some(crucible)) = (zinc_share(job), pot.crucible.as_ref()) else {
        return;
    };
    let across = inside_width(crucible.brim);
    let pouring = &casting.pouring;
    let at = Band::new(
        no_hotter_than_it_boils(zinc.low(), pouring.low()),
        no_hotter_than_it_boils(zinc.likely(), pouring.likely()),
        no_hotter_than_it_boils(zinc.high(), pouring.high()),
    );
    let [short, usual, long] = AT_HEAT_MIN.map(Duration::from_min);
    let standing = Band::new(short, usual, long);
    let [slow, middle, quick] = CARRIED_OFF_M_PER_S;
    let back = |pace: f64| {
        zinc.with_two(&at, &standing, |zinc, at, standing| {
            lost(&zinc::Pot::across(zinc, at, across), standing, pace)
        })
    };
    let back = Band::new(back(slow).low(), back(middle).likely(), back(quick).high());
    ledger.write(
        Entry::new("zinc to put back", Amount::Mass(back), &LOST)
            .input("zinc", share(&zinc))
            .input("temperature", band(&at))
            .input("pot", exact(across))
            .input("standing", band(&standing))
            .because(Said::new("because-zinc")),
    );
    ledger.note(MetalFact::ZincBack);
}

/// The share of zinc that the alloy holds, where it is a brass: from a tenth up. The few per cent
/// of gunmetal lose no more than the analysis can tell.
fn zinc_share(job: &Job) -> Option<Band<f64>> {
    let target = target::named(&job.alloy.name).ok()?;
    let of_zinc =
        |limit: &&metal::charge_makeup::limit::Limit| limit.of == Measured::Of(Element::Zinc);
    let limit = target.limits.iter().find(of_zinc)?;
    let (low, high) = (limit.low?, limit.high?);
    (low >= 0.1).then(|| Band::new(low, (low + high) / 2.0, high))
}

fn gas(pot: &Pot, ledger: &mut Ledger) {
    if let Some(row) = named("degassing tablet") {
        ledger.note(MetalFact::Degas {
            grams: pot.charge.charged.with(&row.dose.band, dose),
        });
    }
}
