//! What fills the flask, and what holds the cope down.

use measure::band::Band;
use measure::length::{Area, Length};
use measure::matter::{Force, Mass};
use mould::handling::{FLASK_LOAD, flask_load};
use mould::irons::{Iron, enough};
use mould::keeping::Bond;
use mould::lift::{COPE_LIFT, HOLD_DOWN, SURGE, cope_lift, hold_down, laid_on};
use sand::batch::{SAND_TO_FILL, WITH_SPILL, rammed_density, sand_to_fill, with_spill};
use sand::moisture::{Dryness, dryness};

use crate::amount::Amount;
use crate::job::Job;
use crate::placed_part::PlacedPart;
use crate::remark::of_mould::MouldFact;
use crate::shop::{Heap, Shop};
use crate::words::said::Said;
use crate::work_out::bench;
use crate::work_out::cores::cores;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::rigging::Rigging;
use crate::work_out::told::{self, band, exact, number, text};

/// Writes the sand there has to be; gives what is rammed into the flask.
pub(super) fn sand(
    job: &Job,
    shop: &Shop,
    part: &PlacedPart,
    rigging: &Rigging,
    ledger: &mut Ledger,
) -> Band<Mass> {
    let flask = &rigging.chosen.flask;
    let patterns = part.volume.map(|volume| volume * job.count as f64);
    let density = rammed_density();
    let inside = flask.volume();
    let patterns = patterns.map(|patterns| patterns.min(inside));
    let rammed = density.value.with(&patterns, |density, patterns| {
        sand_to_fill(inside, patterns, density)
    });
    ledger.write(
        Entry::new(
            "sand to fill the flask",
            Amount::Mass(rammed),
            &SAND_TO_FILL,
        )
        .input("flask", exact(inside))
        .input("pattern", band(&patterns))
        .input("density", band(&density.value))
        .seen(&[density.source])
        .up(),
    );
    let ready = rammed.map(with_spill);
    ledger.write(
        Entry::new("sand to have ready", Amount::Mass(ready), &WITH_SPILL)
            .input("rammed", band(&rammed))
            .up(),
    );
    stands(job, shop, ledger);
    match &shop.heap {
        Some(heap) => judge_heap(heap, ready.high(), ledger),
        None => ledger.note(MouldFact::HeapUnknown),
    }
    rammed
}

/// A mould that waits for its pour: only the time is judged, the air is the founder's to feel.
fn stands(job: &Job, shop: &Shop, ledger: &mut Ledger) {
    let Some(stands) = job.stands else { return };
    let oil = shop.heap.as_ref().is_some_and(|heap| heap.bond.is_none());
    let bond = if oil { Bond::Oil } else { Bond::Green };
    if let Some(life) = bond.life() {
        let keeps = life.longest();
        ledger.note(MouldFact::Stands { stands, keeps });
    }
}

fn judge_heap(heap: &Heap, wanted: Mass, ledger: &mut Ledger) {
    if heap.mass < wanted {
        ledger.note(MouldFact::HeapTooSmall {
            wanted,
            there: heap.mass,
        });
    }
    let Some(bond) = heap.bond else { return };
    let Some(moisture) = heap.moisture.as_ref().map(|share| share.ratio) else {
        ledger.note(MouldFact::MoistureUnknown);
        return;
    };
    match dryness(bond, moisture) {
        Dryness::WithinLimit { .. } => {}
        Dryness::TooWet { limit } => ledger.note(MouldFact::TooWet { moisture, limit }),
        Dryness::Ask { .. } => ledger.note(MouldFact::MoistureUnknown),
    }
}

pub(super) fn weights(
    job: &Job,
    shop: &Shop,
    part: &PlacedPart,
    rigging: &Rigging,
    ledger: &mut Ledger,
) {
    let of_cores = cores(job, shop, rigging.pour_height, ledger);
    let lift = lift(job, part, rigging, &of_cores, ledger);
    let cope = cope_mass(job, part, rigging, ledger);
    // On the safe side the lift is the highest and the cope the lightest that may be.
    let wanted = Band::new(
        hold_down(lift.low(), SURGE, cope.high()),
        hold_down(lift.likely(), SURGE, cope.likely()),
        hold_down(lift.high(), SURGE, cope.low()),
    );
    let wanted = wanted.map(laid_on);
    let to_lay = wanted.high();
    let because = match to_lay > Mass::ZERO {
        true => Said::new("because-lay-on").with("mass", text(to_lay)),
        false => Said::new("because-cope-enough"),
    };
    ledger.write(
        Entry::new("weight on the cope", Amount::Mass(wanted), &HOLD_DOWN)
            .answer("lay on")
            .input("lift", told::force(&lift))
            .input("cope", band(&cope))
            .input("surge", number(&Band::exact(SURGE)))
            .because(because)
            .up(),
    );
    if to_lay > Mass::ZERO {
        ledger.note(MouldFact::WeightsNeeded { to_lay });
    }
    choose_irons(shop, to_lay, ledger);
    bench::clamps(&lift, &cope, ledger);
}

/// The lift with runners and cores.
fn lift(
    job: &Job,
    part: &PlacedPart,
    rigging: &Rigging,
    of_cores: &Band<Force>,
    ledger: &mut Ledger,
) -> Band<Force> {
    let liquid = &job.alloy.density_liquid.band;
    let (head, count) = (rigging.pour_height, job.count as f64);
    let shadow = part.shadow.map(|shadow| shadow * count);
    let above = part.in_cope.map(|above| above * count);
    let runners = runner_shadow(rigging);
    let seen = shadow.with(&runners, |castings, runners| castings + runners);
    let of_metal = liquid.with_two(&seen, &above, |density, seen, above| {
        cope_lift(density, seen, head, above)
    });
    let lift = of_metal.with(of_cores, |metal, cores| metal + cores);
    let entry = Entry::new("cope lift", Amount::Force(lift), &COPE_LIFT)
        .input("shadow", band(&seen))
        .input("head", exact(head))
        .input("above_joint", band(&above))
        .input("liquid_density", band(liquid))
        .beside(
            "of the shadow, runners and gates",
            told::band_text(&runners),
        )
        .because(Said::new("because-runner-counted"))
        .up();
    ledger.write(match of_cores.high() > Force::ZERO {
        false => entry,
        true => entry
            .in_part()
            .beside("cores, added", told::force(of_cores).shown),
    });
    lift
}

/// Runner and gates as square channels seen from above, the runner from a quarter of the flask,
/// where it ends at the nearest gate, to its whole length with all of the slag trap as run-off.
fn runner_shadow(rigging: &Rigging) -> Band<Area> {
    let side = |area: Area| Length::from_m(area.as_m2().sqrt());
    let [runner, gates] = rigging.running.runner_and_gates;
    let seen = |length: Length| side(runner) * length + side(gates) * GATES_SEEN;
    let whole = seen(rigging.runner_length);
    let short = seen((rigging.chosen.flask.length * 0.25).min(rigging.runner_length));
    let with_trap = seen(rigging.runner_length + rigging.running.past_last_gate);
    Band::new(short, whole, with_trap)
}

/// Length of the gates as seen from above.
const GATES_SEEN: Length = Length::from_mm(25.0);

fn cope_mass(job: &Job, part: &PlacedPart, rigging: &Rigging, ledger: &mut Ledger) -> Band<Mass> {
    let flask = &rigging.chosen.flask;
    let count = job.count as f64;
    let above = part
        .in_cope
        .map(|above| (above * count).min(flask.cope_volume()));
    let density = rammed_density();
    let mass = density.value.with(&above, |density, above| {
        flask_load(density, flask.cope_volume(), above, flask.cope_frame)
    });
    ledger.write(
        Entry::new("cope mass", Amount::Mass(mass), &FLASK_LOAD)
            .input("length", exact(flask.length))
            .input("width", exact(flask.width))
            .input("depth", exact(flask.cope))
            .input("pattern", band(&above))
            .beside("pattern above the joint", told::band_text(&above))
            .input("frame", exact(flask.cope_frame))
            .input("sand_density", band(&density.value))
            .seen(&[density.source]),
    );
    mass
}

fn choose_irons(shop: &Shop, to_lay: Mass, ledger: &mut Ledger) {
    let there: Mass = shop.irons.iter().map(|iron| iron.mass).sum();
    match enough(&shop.irons, to_lay) {
        Some(irons) if irons.is_empty() => {
            ledger.choose(
                "irons",
                Said::new("chosen-irons-none"),
                Said::new("reason-irons-none"),
            );
        }
        Some(irons) => {
            let laid: Mass = irons.iter().map(|iron| iron.mass).sum();
            let together = Said::new("reason-irons-together").with("mass", text(laid));
            ledger.choose("irons", Said::typed(counted(&irons)), together);
        }
        None => {
            ledger.choose(
                "irons",
                Said::new("chosen-irons-short"),
                Said::new("reason-irons-clamp"),
            );
            ledger.note(MouldFact::IronsTooLight {
                wanted: to_lay,
                there,
            });
        }
    }
}

/// "anvil, 2 x brick"
fn counted(irons: &[&Iron]) -> String {
    let mut names: Vec<(&str, usize)> = Vec::new();
    for iron in irons {
        match names.iter_mut().find(|(name, _)| *name == iron.name) {
            Some((_, count)) => *count += 1,
            None => names.push((&iron.name, 1)),
        }
    }
    let words = names.iter().map(|(name, count)| match count {
        1 => (*name).to_owned(),
        count => format!("{count} x {name}"),
    });
    words.collect::<Vec<_>>().join(", ")
}
