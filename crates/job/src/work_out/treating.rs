//! What is done to the melt: inoculant, zinc to put back, deoxidiser, gas.

use measure::band::Band;
use measure::flow::Duration;
use measure::heat::Temperature;
use measure::length::{Area, Length};
use measure::matter::Mass;
use metal::alloy::{Caution, Family};
use metal::charge_makeup::element::Element;
use metal::charge_makeup::measured::Measured;
use metal::charge_makeup::target;
use metal::crucible::inside_width;
use metal::iron::{INOCULANT, WANTED_EQUIVALENT, inoculant, inoculant_dose, wanted_equivalent};
use metal::pouring_temperature::pouring_band;
use metal::treatment::{DOSE, dose, named};
use metal::zinc::{self, CARRIED_OFF_M_PER_S, LOST, lost};

use crate::amount::Amount;
use crate::job::Job;
use crate::remark::of_metal::MetalFact;
use crate::work_out::casting::{Casting, band_text};
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::melting::Pot;

/// Minutes that brass stands at its heat before the mould is full: skimming, carrying, pouring.
/// Shorter, and nobody has skimmed; longer, and the pour was held up.
const AT_HEAT_MIN: [f64; 3] = [5.0, 10.0, 15.0];

pub(super) fn treating(job: &Job, pot: &Pot, casting: &Casting, ledger: &mut Ledger) {
    match job.alloy.family {
        Family::Iron => iron(pot, casting.wall, ledger),
        Family::Copper => {
            deoxidiser(job, pot, ledger);
            put_back(job, pot, casting.wall, ledger);
        }
        Family::Aluminium => gas(pot, ledger),
        Family::Zinc | Family::Tin => {}
    }
}

fn iron(pot: &Pot, wall: Length, ledger: &mut Ledger) {
    let grams = pot.charge.charged.with(&inoculant_dose(), inoculant);
    ledger.write(
        Entry::new("inoculant", Amount::Mass(grams), &INOCULANT)
            .input("iron in the ladle", band_text(&pot.charge.charged))
            .input("dose", "0.2 to 0.4 %")
            .because("ferrosilicon with 75 % Si, dry, into the stream; half is gone in 5 minutes"),
    );
    if let Some(wanted) = wanted_equivalent(wall) {
        ledger.write(
            Entry::new(
                "wanted carbon equivalent",
                Amount::Share(wanted),
                &WANTED_EQUIVALENT,
            )
            .input("thinnest wall", band_text(&Band::exact(wall))),
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
                .input("melt", band_text(&pot.charge.charged))
                .seen(&row.dose.sources)
                .because(row.how.clone()),
        );
    }
}

fn put_back(job: &Job, pot: &Pot, wall: Length, ledger: &mut Ledger) {
    let (Some(share), Some(crucible)) = (zinc_share(job), pot.crucible.as_ref()) else {
        return;
    };
    let across = inside_width(crucible.brim);
    let surface = Area::from_m2(std::f64::consts::FRAC_PI_4 * across.as_m() * across.as_m());
    let pouring = pouring_band(job.alloy, wall * 0.5);
    let grams = |zinc: f64, wanted: Temperature, minutes: f64, pace: f64| -> Mass {
        // No brass gets hotter than it boils.
        let at = match zinc::flare(zinc) {
            Some(flare) if flare < wanted => flare,
            _ => wanted,
        };
        let brass = zinc::Pot { zinc, at, surface };
        lost(&brass, Duration::from_min(minutes), pace)
    };
    let [short, usual, long] = AT_HEAT_MIN;
    let [slow, middle, quick] = CARRIED_OFF_M_PER_S;
    let back = Band::new(
        grams(share.low(), pouring.low(), short, slow),
        grams(share.likely(), pouring.likely(), usual, middle),
        grams(share.high(), pouring.high(), long, quick),
    );
    ledger.write(
        Entry::new("zinc to put back", Amount::Mass(back), &LOST)
            .input(
                "at the pouring temperature",
                format!("{short} to {long} min"),
            )
            .input("across the pot", band_text(&Band::exact(across)))
            .because("what goes up in smoke before the mould is full, to a factor of three"),
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
