//! How hot to lift out, what the tongs carry, and the fuel of the heat.

use std::f64::consts::PI;

use measure::band::Band;
use measure::flow::Duration;
use measure::heat::{Temperature, TemperatureDifference};
use measure::length::Area;
use metal::crucible::{Crucible, LIFTED, LIFTED_MARGIN, lifted};
use metal::fuel::{FUEL_MASS, fuel_band, known};
use metal::furnace::practice;
use metal::melt::heat_band;
use metal::superheat_path::{Filled, LIFT_OUT, before_carry, lift_out, soak_drop};
use mould::freezing::thirst_of_sand;

use crate::amount::Amount;
use crate::job::Job;
use crate::learned::{OWN_FACTOR, shown};
use crate::shop::Shop;
use crate::words::said::Said;
use crate::work_out::casting::Casting;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::melting::Pot;
use crate::work_out::rigging::Rigging;
use crate::work_out::told::{band, exact, share, text, word};

/// The shop and the charge before the fire.
const SHOP_AIR: Temperature = Temperature::from_celsius(20.0);

/// From lift-out to the mould in a small shop, seconds, where it has not been walked.
/// Common practice, no source.
const CARRY: [f64; 3] = [10.0, 20.0, 30.0];

pub(super) fn heating(
    job: &Job,
    shop: &Shop,
    casting: &Casting,
    rigging: &Rigging,
    pot: &Pot,
    ledger: &mut Ledger,
) {
    if let Some(crucible) = &pot.crucible {
        way(job, shop, casting, rigging, crucible, pot, ledger);
        let load = pot.charge.charged.map(|metal| lifted(metal, crucible.brim));
        let load = Band::new(
            load.low() * (1.0 - LIFTED_MARGIN),
            load.likely(),
            load.high() * (1.0 + LIFTED_MARGIN),
        );
        ledger.write(
            Entry::new("tongs load", Amount::Mass(load), &LIFTED)
                .input("metal_mass", band(&pot.charge.charged))
                .input("brim", exact(crucible.brim))
                .beside("crucible", crucible.name.clone())
                .because(Said::new("because-tongs"))
                .up(),
        );
    }
    fuel(job, shop, casting, pot, ledger);
}

/// The temperature to lift out at, so that the likely pouring temperature is left at the mould.
fn way(
    job: &Job,
    shop: &Shop,
    casting: &Casting,
    rigging: &Rigging,
    crucible: &Crucible,
    pot: &Pot,
    ledger: &mut Ledger,
) {
    let wanted = casting.pouring.likely();
    let carry = shop.carry.map_or_else(
        || Band::new(CARRY[0], CARRY[1], CARRY[2]).map(Duration::from_s),
        Band::exact,
    );
    let soak = soak(job, casting, rigging);
    let pots = Filled::of(job.alloy, crucible.brim, pot.charge.poured.likely());
    let at = |filled: &Filled, time: Duration, soak: TemperatureDifference| {
        let left = wanted + soak;
        lift_out(
            wanted,
            before_carry(filled, left, SHOP_AIR, time) - left,
            soak,
        )
    };
    let lift_at = Band::new(
        at(&pots[0], carry.low(), soak.low()),
        at(&pots[1], carry.likely(), soak.likely()),
        at(&pots[2], carry.high(), soak.high()),
    );
    let turn_back = casting.pouring.low() + soak.likely();
    let turn_back = text(turn_back);
    ledger.write(
        Entry::new(
            "lift-out temperature",
            Amount::Temperature(lift_at),
            &LIFT_OUT,
        )
        .input("metal", word(&job.alloy.name))
        .input("pour", exact(wanted))
        .input("brim", exact(crucible.brim))
        .input("metal_mass", exact(pot.charge.poured.likely()))
        .input("time", band(&carry))
        .input("soak", band(&soak))
        .input("shop", exact(SHOP_AIR))
        .beside("crucible", crucible.name.clone())
        .because(Said::new("because-turn-back").with("heat", turn_back)),
    );
}

/// What basin, sprue and runner take from the metal while the mould fills.
fn soak(job: &Job, casting: &Casting, rigging: &Rigging) -> Band<TemperatureDifference> {
    let running = &rigging.running;
    let (top, foot) = (running.sprue_top.likely(), running.sprue_foot.likely());
    let sprue = (top + foot) * 0.5 * rigging.pour_height * PI;
    let side = running.runner_and_gates[0].as_mm2().sqrt();
    let runner = Area::from_mm2(4.0 * side * rigging.runner_length.as_mm());
    let wetted = sprue + runner;
    let fill = &running.fill.band;
    thirst_of_sand().with(fill, |drawing, time| {
        soak_drop(
            running.poured.likely(),
            job.alloy.specific_heat_liquid.band.likely(),
            casting.pouring.likely(),
            SHOP_AIR,
            wetted,
            drawing,
            time,
        )
    })
}

/// Fuel for the heat, where the shop says what it burns and a source says what the furnace wastes.
fn fuel(job: &Job, shop: &Shop, casting: &Casting, pot: &Pot, ledger: &mut Ledger) {
    let Some(row) = shop.fuel.and_then(known) else {
        return;
    };
    let practice = practice(shop.furnace, job.alloy.family);
    let Some(efficiency) = practice.and_then(|practice| practice.efficiency.as_ref()) else {
        return;
    };
    let book = &efficiency.band;
    let own = shop.learned.efficiency.as_ref();
    let efficiency_band = own.map_or(*book, |factor| factor.map(|times| book.likely() * times));
    let heat = heat_band(job.alloy, &pot.charge.charged, SHOP_AIR, &casting.pouring);
    let value = &row.heating_value;
    let mass = fuel_band(&heat, &efficiency_band, &value.band);
    let entry = Entry::new("fuel", Amount::Mass(mass), &FUEL_MASS)
        .input("heat", band(&heat))
        .input("fuel", word(row.fuel.word()))
        .input("heating_value", band(&value.band))
        .input("efficiency", share(&efficiency_band))
        .seen(&efficiency.sources)
        .seen(&value.sources)
        .because(Said::new("because-fuel").with("fuel", row.fuel.word()))
        .up();
    ledger.write(match own {
        Some(factor) => entry.beside(OWN_FACTOR, shown(factor)),
        None => entry,
    });
}
