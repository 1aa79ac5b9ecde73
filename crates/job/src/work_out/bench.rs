//! What is done to the mould at the bench: clamped, lifted, rammed, vented.

use measure::band::Band;
use measure::length::{Length, Volume};
use measure::matter::{Force, Mass, Pressure};
use measure::text::rounded;
use metal::alloy::Family;
use mould::clamp::{CLAMP_FORCE, clamp_force};
use mould::flask::Flask;
use mould::handling::{FLASK_LOAD, Lifting, flask_load, lift_limit, people_wanted, team_lift};
use mould::lift::SURGE;
use mould::ramming::{at_reading, dent_resistance, dent_target, hardness_for};
use mould::venting::{SandPath, WetFace, vents_wanted};
use sand::batch::rammed_density;

use crate::amount::Amount;
use crate::job::Job;
use crate::placed_part::PlacedPart;
use crate::remark::of_mould::MouldFact;
use crate::shop::{GoodDay, Heap, Shop};
use crate::words::said::Said;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::rigging::Rigging;
use crate::work_out::told::{band, exact, force, number, text};

/// Clamps that are set, one at each corner.
const CLAMPS: f64 = 4.0;

/// Clamps in place of irons: nothing where the cope alone is heavy enough.
pub(super) fn clamps(lift: &Band<Force>, cope: &Band<Mass>, ledger: &mut Ledger) {
    let each = Band::new(
        clamp_force(lift.low(), SURGE, cope.high(), CLAMPS),
        clamp_force(lift.likely(), SURGE, cope.likely(), CLAMPS),
        clamp_force(lift.high(), SURGE, cope.low(), CLAMPS),
    );
    if each.high() <= Force::ZERO {
        return;
    }
    ledger.write(
        Entry::new(
            "force on each of four clamps",
            Amount::Force(each),
            &CLAMP_FORCE,
        )
        .input("lift", force(lift))
        .input("surge", number(&Band::exact(SURGE)))
        .input("cope", band(cope))
        .input("clamps", number(&Band::exact(CLAMPS)))
        .because(Said::new("because-clamps"))
        .up(),
    );
}

/// A flask on a bench: held close at its ends, lifted a hand high.
const AT_THE_BENCH: Lifting = Lifting {
    reach: Length::from_mm(300.0),
    height: Length::from_mm(750.0),
    travel: Length::from_mm(250.0),
};

/// Who lifts the heavier half of the flask. The pattern is out by then, but is counted as sand.
pub(super) fn people(rigging: &Rigging, ledger: &mut Ledger) {
    let flask = &rigging.chosen.flask;
    let one = lift_limit(&AT_THE_BENCH);
    let limit = |people| {
        let half_kilos = (team_lift(one, people).as_kg() * 2.0).floor();
        format!("{} kg", rounded(half_kilos / 2.0, 3))
    };
    let limits = Said::new("reason-lifting")
        .with("one", limit(1))
        .with("two", limit(2));
    let load = heavier_half(flask, &limits, ledger);
    let people = people_wanted(load.high(), one);
    let words = match people {
        Some(1) => "chosen-one-person",
        Some(2) => "chosen-two-people",
        Some(_) => "chosen-three-people",
        None => "chosen-nobody",
    };
    ledger.choose("lifted by", Said::new(words), limits);
    if people.is_none() {
        ledger.note(MouldFact::TooHeavy {
            load: load.high(),
            three: team_lift(one, 3),
        });
    }
}

fn heavier_half(flask: &Flask, limits: &Said, ledger: &mut Ledger) -> Band<Mass> {
    let depth = flask.cope.max(flask.drag);
    let inside = flask.length * flask.width * depth;
    let density = rammed_density();
    let load = density
        .value
        .map(|density| flask_load(density, inside, Volume::ZERO, flask.cope_frame));
    ledger.write(
        Entry::new("heavier half of the flask", Amount::Mass(load), &FLASK_LOAD)
            .input("length", exact(flask.length))
            .input("width", exact(flask.width))
            .input("depth", exact(depth))
            .input("frame", exact(flask.cope_frame))
            .input("sand_density", band(&density.value))
            .input("reach", exact(AT_THE_BENCH.reach))
            .input("height", exact(AT_THE_BENCH.height))
            .input("travel", exact(AT_THE_BENCH.travel))
            .seen(&[density.source])
            .because(limits.clone())
            .up(),
    );
    load
}

/// How wide a dent to ram to, where a good day has been measured.
pub(super) fn dent(job: &Job, shop: &Shop, ledger: &mut Ledger) {
    let Some(good) = &shop.good_day else { return };
    let Some([soft, aim, hard]) = dents(job, good) else {
        return;
    };
    let because = Said::new("reason-dent")
        .with("ball", text(good.drop.ball))
        .with("height", text(good.drop.height))
        .with("metal", good.metal.as_str())
        .with("dent", text(good.dent));
    let chosen = Said::new("chosen-dent")
        .with("aim", text(aim))
        .with("soft", text(soft))
        .with("hard", text(hard));
    ledger.choose("ram to a dent of", chosen, because);
}

/// Softest, the middle, hardest for the metal of the job.
fn dents(job: &Job, good: &GoodDay) -> Option<[Length; 3]> {
    let metal = match job.alloy.family {
        Family::Aluminium => "aluminium",
        Family::Copper => "bronze",
        Family::Zinc | Family::Tin => "zinc",
        Family::Iron => "iron",
    };
    let (wanted, then) = (hardness_for(metal)?, hardness_for(&good.metal)?);
    let firm = dent_resistance(&good.drop, good.dent)?;
    let own = (then.soft + then.hard) / 2.0;
    let at = |reading: f64| dent_target(at_reading(firm, own, reading), &good.drop);
    Some([
        at(wanted.soft)?,
        at((wanted.soft + wanted.hard) / 2.0)?,
        at(wanted.hard)?,
    ])
}

/// Vent wire, and where it stops (`venting-memory`).
pub(super) const WIRE: Length = Length::from_mm(2.0);
pub(super) const SHORT: Length = Length::from_mm(12.0);

/// How far the metal is to outweigh the gas (common practice, no source).
const MARGIN: f64 = 2.0;

/// Vents through the cope: by the sum where the heap has been tested, else by habit.
pub(super) fn vents(
    job: &Job,
    shop: &Shop,
    part: &PlacedPart,
    rigging: &Rigging,
    ledger: &mut Ledger,
) {
    let wanted = vents_by_sum(job, shop, part, rigging);
    let (chosen, because) = match wanted {
        Some(Some(vents)) if vents > 0.0 => (
            Said::new("chosen-vents").with("number", format!("{vents:.0}")),
            "reason-vents-gas",
        ),
        Some(Some(_)) => (Said::new("chosen-vents-none"), "reason-vents-gas"),
        Some(None) => (Said::new("chosen-vents-too-few"), "reason-vents-open"),
        None => (Said::new("chosen-vents-habit"), "reason-vents-habit"),
    };
    ledger.choose("vents", chosen, Said::new(because));
}

/// How far vents stand from each other, evenly over the castings; nothing where there are none.
pub(super) fn vent_spacing(
    job: &Job,
    shop: &Shop,
    part: &PlacedPart,
    rigging: &Rigging,
) -> Option<Length> {
    let shadow = part.shadow.likely() * job.count as f64;
    match vents_by_sum(job, shop, part, rigging) {
        Some(Some(vents)) if vents > 0.0 => {
            Some(Length::from_mm((shadow.as_mm2() / vents.ceil()).sqrt()))
        }
        Some(_) => None,
        None => Some(BY_HABIT),
    }
}

/// How far vents stand from each other where nothing is known of the sand (`venting-memory`).
const BY_HABIT: Length = Length::from_mm(30.0);

/// The number of vents by the sum: nothing where the heap is not tested, and nothing in it where
/// no number is enough.
fn vents_by_sum(
    job: &Job,
    shop: &Shop,
    part: &PlacedPart,
    rigging: &Rigging,
) -> Option<Option<f64>> {
    let tested = shop.heap.as_ref().and_then(tested)?;
    Some(vents_for(job, part, rigging, tested))
}

/// Permeability and moisture, where both are known.
fn tested(heap: &Heap) -> Option<(f64, f64)> {
    Some((heap.permeability?, heap.moisture.as_ref()?.ratio))
}

fn vents_for(
    job: &Job,
    part: &PlacedPart,
    rigging: &Rigging,
    (permeability, water): (f64, f64),
) -> Option<f64> {
    let count = job.count as f64;
    let above = part.extents[2] - part.joint;
    let least = SHORT + Length::from_mm(1.0);
    let sand = SandPath {
        permeability,
        area: part.shadow.likely() * count,
        way: (rigging.chosen.flask.cope - above).max(least),
    };
    let face = WetFace {
        area: sand.area,
        time: rigging.running.fill.band.likely(),
        water,
        binder: 0.0,
        permeability,
    };
    let air = face.air_and_smoke(part.volume.likely() * count);
    let head = (rigging.pour_height - above).max(Length::ZERO);
    let metal = Pressure::under(job.alloy.density_liquid.band.low(), head);
    vents_wanted(air, &sand, SHORT, WIRE, metal / MARGIN - face.steam())
}
