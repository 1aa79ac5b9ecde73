//! What the cores do to cope and prints.

use measure::band::Band;
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Force, Mass};
use mould::chaplet::least_pins;
use mould::core_print::{PRINT_PRESSURE, print_pressure};
use mould::core_seat::{Drowned, Seat, displaced, float};
use mould::lift::{CORE_LIFT, CORE_SAND};

use crate::amount::Amount;
use crate::job::{Core, Job};
use crate::job_file::Sits;
use crate::remark::of_core::CoreFact;
use crate::shop::Shop;
use crate::words::said::Said;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::told::{self, band, exact, text};

/// Writes what the cores of one casting do, and gives the lift of all cores in the mould on the
/// cope.
pub(super) fn cores(job: &Job, shop: &Shop, head: Length, ledger: &mut Ledger) -> Band<Force> {
    let of_all = |law: &dyn Fn(&Core, Density) -> Force| {
        job.alloy.density_liquid.band.map(|density| {
            let lifts = job.cores.iter().map(|core| law(core, density));
            lifts.map(|lift| lift.max(Force::ZERO)).sum::<Force>()
        })
    };
    if job.cores.is_empty() {
        return Band::exact(Force::ZERO);
    }
    write_float(
        "core float",
        &of_all(&|core, at| float(&drowned(core, at))),
        job,
        ledger,
    );
    let of_metal = of_all(&|core, at| displaced(&drowned(core, at)));
    write_float("core float, core weightless", &of_metal, job, ledger);
    for core in &job.cores {
        tell(core, job, ledger);
    }
    press(job, shop, head, ledger);
    let count = job.count as f64;
    let likely = of_all(&|core, at| on_cope(core, at));
    let at_most = of_all(&|core, at| on_cope_at_most(core, at, head));
    likely.or(&at_most).map(|lift| lift * count)
}

/// As far as the scale or the volume tells; without the scale its prints are not counted, so that
/// it is taken for too light and floats too much.
fn drowned(core: &Core, liquid: Density) -> Drowned {
    Drowned {
        volume: core.volume,
        mass: mass(core),
        liquid,
    }
}

fn mass(core: &Core) -> Mass {
    core.mass.unwrap_or(CORE_SAND * core.volume)
}

/// How it sits, where the job says all that is wanted.
fn seat(core: &Core, head: Length) -> Option<Seat> {
    let print = core.print;
    Some(match core.sits? {
        Sits::Hung => Seat::Hung {
            mouth: print?.mouth,
            head,
        },
        Sits::Standing => Seat::Standing {
            mouth: print?.mouth,
            depth: print?.depth,
        },
        Sits::Bridged => Seat::Bridged,
        Sits::Chaplets => Seat::Chaplets,
    })
}

/// Lift of a core on the cope, beside the lift of the cavity's shadow: over the mouth of a hung
/// core that shadow already counts what the metal does not press down.
fn on_cope(core: &Core, liquid: Density) -> Force {
    let drowned = drowned(core, liquid);
    match core.sits {
        Some(Sits::Hung) => float(&drowned),
        _ => seat(core, Length::ZERO).map_or(float(&drowned), |seat| seat.lift(&drowned)),
    }
}

/// The same where a hung core goes right through, so that its mouth is no part of the shadow.
fn on_cope_at_most(core: &Core, liquid: Density, head: Length) -> Force {
    let drowned = drowned(core, liquid);
    seat(core, head).map_or(float(&drowned), |seat| seat.lift(&drowned))
}

fn write_float(name: &'static str, lift: &Band<Force>, job: &Job, ledger: &mut Ledger) {
    let volume: Volume = job.cores.iter().map(|core| core.volume).sum();
    let of_all: Mass = job.cores.iter().map(mass).sum();
    let weightless = name.ends_with("weightless");
    let density = match weightless {
        true => Density::ZERO,
        false => of_all / volume,
    };
    let liquid = &job.alloy.density_liquid.band;
    let sinks = |core: &Core| mass(core) > liquid.low() * core.volume;
    let entry = Entry::new(name, Amount::Force(*lift), &CORE_LIFT)
        .input("core", exact(volume))
        .input("liquid_density", band(liquid))
        .input("core_density", exact(density))
        .because(Said::new("because-all-cores"))
        .up();
    // A core that sinks holds no other down: it is counted as nought.
    ledger.write(match !weightless && job.cores.iter().any(sinks) {
        true => entry.in_part(),
        false => entry,
    });
}

/// A core that bears on a print of known size.
struct Pressed<'a> {
    core: &'a Core,
    mouth: Area,
    force: Band<Force>,
}

/// The core whose print bears the hardest.
fn hardest_pressed(job: &Job, head: Length) -> Option<Pressed<'_>> {
    let liquid = &job.alloy.density_liquid.band;
    let mut hardest: Option<Pressed<'_>> = None;
    for core in &job.cores {
        let (Some(print), Some(seat)) = (core.print, seat(core, head)) else {
            continue;
        };
        let share = if seat == Seat::Bridged { 0.5 } else { 1.0 };
        let force = liquid.map(|at| (seat.lift(&drowned(core, at)) * share).max(Force::ZERO));
        let pressed = Pressed {
            core,
            mouth: print.mouth,
            force,
        };
        let harder = |than: &Pressed<'_>| {
            print_pressure(pressed.force.high(), pressed.mouth)
                > print_pressure(than.force.high(), than.mouth)
        };
        if hardest.as_ref().is_none_or(harder) {
            hardest = Some(pressed);
        }
    }
    hardest
}

/// Writes how hard the hardest pressed print bears.
fn press(job: &Job, shop: &Shop, head: Length, ledger: &mut Ledger) {
    let Some(Pressed { core, mouth, force }) = hardest_pressed(job, head) else {
        return;
    };
    let pressure = force.map(|force| print_pressure(force, mouth));
    let strength = shop.heap.as_ref().and_then(|heap| heap.strength);
    let beside = strength.map_or_else(
        || Said::new("because-print-compare"),
        |strength| Said::new("because-print-bears").with("strength", text(strength)),
    );
    ledger.write(
        Entry::new(
            "core print pressure",
            Amount::Pressure(pressure),
            &PRINT_PRESSURE,
        )
        .input("force", told::force(&force))
        .input("mouth", exact(mouth))
        .because(beside.with("core", core.name.as_str()))
        .up(),
    );
    if let Some(strength) = strength.filter(|strength| pressure.high() * 2.0 > *strength) {
        ledger.note(CoreFact::PrintSmall {
            name: core.name.clone(),
            pressure: pressure.high(),
            strength,
        });
    }
}

/// What has to be said of how a core sits.
fn tell(core: &Core, job: &Job, ledger: &mut Ledger) {
    let name = core.name.clone();
    let lift = on_cope(core, job.alloy.density_liquid.band.high());
    match core.sits {
        None => ledger.note(CoreFact::SeatUnknown { name }),
        Some(Sits::Chaplets) if f64::from(core.pins) < least_pins(0) => {
            ledger.note(CoreFact::FewPins {
                name,
                pins: core.pins,
            });
        }
        Some(Sits::Standing) if core.pins == 0 && lift > Force::ZERO => {
            ledger.note(CoreFact::StandsLoose { name, lift });
        }
        Some(_) => {}
    }
}
