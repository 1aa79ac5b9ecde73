//! A case as single facts, which the likelihoods are asked for. A number becomes a fact only where
//! it is far enough from what is usual; between, it says nothing.

use std::collections::BTreeSet;

use crate::diagnosis::case_file::{
    CaseFile, Core, Feeder, Grain, PourKind, Ramming, Record, Scrap, Seen, Vents,
};
use crate::diagnosis::sight::{Castings, FOUNDS, Kind, LOOKS, PLACES, Size, WALLS, When};

/// Points of moisture by which sand is wetter or drier than on good days. A kitchen scale tells
/// half a point; a whole one changes how sand moulds.
const MOISTURE_OFF: f64 = 0.8;
/// Moisture of bentonite-bonded sand that is high and low where no good days are known, per cent of
/// wet mass: it is stopped at above 6 %.
const MOISTURE_ENDS: (f64, f64) = (2.5, 6.0);
/// A part of the good days' figure by which permeability and strength are off. Tests repeat within
/// a tenth or two.
const TEST_OFF: f64 = 0.25;
/// Permeability that is low where no good days are known.
const PERMEABILITY_LOW: f64 = 30.0;
/// Loss on burning at which sands get gassy, and below which they are not, per cent of dry mass.
const BURNING_ENDS: (f64, f64) = (3.0, 5.0);
/// Compactability below which sand is friable, per cent.
const COMPACTABILITY_LOW: f64 = 35.0;
/// Kelvin by which the metal is colder or hotter than planned. A probe is good for ten.
const HEAT_OFF: f64 = 30.0;
/// A part of the planned time by which a pour is slow or fast.
const TIME_OFF: f64 = 0.35;
/// Gate speed above which metal folds and washes, and below which it does neither, m/s.
const GATE_ENDS: (f64, f64) = (0.5, 0.6);
/// Minutes held liquid that are long.
const HELD_LONG: f64 = 30.0;
/// Hours after which sand that was not covered has dried at its skin, and a closed mould is damp
/// at its irons.
const HOURS: (f64, f64) = (12.0, 3.0);
/// Pours after which a heap that was not renewed is full of fines.
const HEAP_OLD: f64 = 20.0;
/// Points by which contraction found and contraction built in differ.
const ALLOWANCE_OFF: f64 = 0.3;

/// The facts of a case, each a word of the likelihoods.
pub fn facts(case: &CaseFile) -> BTreeSet<String> {
    let mut facts = BTreeSet::new();
    of_seen(&case.seen, &mut facts);
    of_sand(&case.record, &mut facts);
    of_metal(&case.record, &mut facts);
    of_mould(&case.record, &mut facts);
    let found = case
        .plan
        .found
        .iter()
        .map(|one| format!("found-{}", FOUNDS[*one as usize]));
    facts.extend(found);
    facts
}

fn of_seen(seen: &Seen, facts: &mut BTreeSet<String>) {
    facts.extend(
        seen.look
            .iter()
            .map(|one| format!("look-{}", LOOKS[*one as usize])),
    );
    facts.extend(
        seen.place
            .iter()
            .map(|one| format!("place-{}", PLACES[*one as usize])),
    );
    facts.extend(
        seen.surface
            .iter()
            .map(|one| format!("wall-{}", WALLS[*one as usize])),
    );
    let mut say = |fact: Option<&str>| facts.extend(fact.map(str::to_owned));
    say(seen.metal.map(|kind| match kind {
        Kind::Iron => "metal-iron",
        _ => "metal-other",
    }));
    say(seen.size.map(|size| match size {
        Size::Small => "small",
        Size::Medium => "medium",
        Size::Large => "large",
    }));
    say(seen.when.map(|when| match when {
        When::KnockOut => "seen-knock-out",
        When::Cleaning => "seen-cleaning",
        When::Machining => "seen-machining",
        When::Sawing => "seen-sawing",
        When::Use => "seen-use",
    }));
    say(seen.castings.map(|castings| match castings {
        Castings::One => "on-one",
        Castings::Some => "on-some",
        Castings::All => "on-all",
    }));
    say(seen.other_heat.map(|too| {
        if too {
            "other-heat-too"
        } else {
            "other-heat-not"
        }
    }));
    say(seen.other_sand.map(|too| {
        if too {
            "other-sand-too"
        } else {
            "other-sand-not"
        }
    }));
    say(seen
        .sprue
        .map(|too| if too { "sprue-too" } else { "sprue-not" }));
}

fn of_sand(record: &Record, facts: &mut BTreeSet<String>) {
    let mut say = |fact: Option<&str>| facts.extend(fact.map(str::to_owned));
    say(record
        .moisture_percent
        .and_then(|now| match record.moisture_good_percent {
            Some(good) if now > good + MOISTURE_OFF => Some("moisture-high"),
            Some(good) if now < good - MOISTURE_OFF => Some("moisture-low"),
            Some(good) if (now - good).abs() < MOISTURE_OFF / 2.0 => Some("moisture-usual"),
            Some(_) => None,
            None if now > MOISTURE_ENDS.1 => Some("moisture-high"),
            None if now < MOISTURE_ENDS.0 => Some("moisture-low"),
            None => None,
        }));
    say(record
        .permeability
        .and_then(|now| match record.permeability_good {
            Some(good) if now < good * (1.0 - TEST_OFF) => Some("permeability-low"),
            Some(good) if now > good * (1.0 + TEST_OFF) => Some("permeability-high"),
            Some(_) => Some("permeability-usual"),
            None if now < PERMEABILITY_LOW => Some("permeability-low"),
            None => None,
        }));
    say(record
        .strength_kpa
        .zip(record.strength_good_kpa)
        .and_then(|(now, good)| match now / good {
            weak if weak < 1.0 - TEST_OFF => Some("strength-low"),
            strong if strong > 1.0 + TEST_OFF => Some("strength-high"),
            _ => None,
        }));
    say(record.burning_loss_percent.and_then(|now| match now {
        high if high >= BURNING_ENDS.1 => Some("burning-loss-high"),
        low if low <= BURNING_ENDS.0 => Some("burning-loss-usual"),
        _ => None,
    }));
    let low = |now: f64| (now < COMPACTABILITY_LOW).then_some("compactability-low");
    say(record.compactability_percent.and_then(low));
    say(record
        .hours_since_temper
        .filter(|hours| *hours > HOURS.0)
        .map(|_| "tempered-long-ago"));
    say(record
        .heap_pours
        .filter(|pours| *pours > HEAP_OLD)
        .map(|_| "heap-old"));
    say(record.rain.filter(|rain| *rain).map(|_| "rain"));
    say(record
        .air_humidity_percent
        .filter(|humid| *humid > 80.0)
        .map(|_| "humid"));
    say(record.grain.map(|grain| match grain {
        Grain::Fine => "grain-fine",
        Grain::Medium => "grain-medium",
        Grain::Coarse => "grain-coarse",
    }));
}

fn of_metal(record: &Record, facts: &mut BTreeSet<String>) {
    let mut say = |fact: Option<&str>| facts.extend(fact.map(str::to_owned));
    let heat = record
        .pour_temperature_c
        .zip(record.pour_temperature_planned_c);
    say(heat.and_then(|(now, planned)| match now - planned {
        colder if colder < -HEAT_OFF => Some("cold"),
        hotter if hotter > HEAT_OFF => Some("hot"),
        off if off.abs() < HEAT_OFF / 2.0 => Some("temperature-usual"),
        _ => None,
    }));
    let time = record.pour_time_s.zip(record.pour_time_planned_s);
    say(time.and_then(|(now, planned)| match now / planned {
        longer if longer > 1.0 + TIME_OFF => Some("slow"),
        shorter if shorter < 1.0 - TIME_OFF => Some("fast"),
        _ => None,
    }));
    say(record.gate_speed_m_s.and_then(|now| match now {
        slow if slow <= GATE_ENDS.0 => Some("gate-slow"),
        fast if fast >= GATE_ENDS.1 => Some("gate-fast"),
        _ => None,
    }));
    say(record
        .minutes_molten
        .filter(|held| *held > HELD_LONG)
        .map(|_| "held-long"));
    say(record
        .degassed
        .map(|done| if done { "degassed" } else { "not-degassed" }));
    say(record
        .skimmed
        .map(|done| if done { "skimmed" } else { "not-skimmed" }));
    say(record.pour.map(|pour| match pour {
        PourKind::Steady => "pour-steady",
        PourKind::Broken => "pour-broken",
        PourKind::Splashed => "pour-splashed",
        PourKind::Slow => "pour-slow",
        PourKind::RanShort => "pour-ran-short",
    }));
    say(record.scrap.map(|scrap| match scrap {
        Scrap::Clean => "scrap-clean",
        Scrap::Dirty => "scrap-dirty",
        Scrap::Damp => "scrap-damp",
    }));
}

fn of_mould(record: &Record, facts: &mut BTreeSet<String>) {
    let mut say = |fact: Option<&str>| facts.extend(fact.map(str::to_owned));
    say(record.ramming.map(|ramming| match ramming {
        Ramming::Soft => "rammed-soft",
        Ramming::Even => "rammed-even",
        Ramming::Hard => "rammed-hard",
    }));
    say(record.core.map(|core| match core {
        Core::WellBaked => "core-well-baked",
        Core::BakedShort => "core-baked-short",
        Core::Damp => "core-damp",
        Core::Unvented => "core-unvented",
        Core::None => "core-none",
    }));
    say(record.vents.map(|vents| match vents {
        Vents::None => "vents-none",
        Vents::Few => "vents-few",
        Vents::Many => "vents-many",
    }));
    say(record.feeder.map(|feeder| match feeder {
        Feeder::None => "feeder-none",
        Feeder::Small => "feeder-small",
        Feeder::Enough => "feeder-enough",
    }));
    say(record
        .hours_closed
        .filter(|hours| *hours > HOURS.1)
        .map(|_| "closed-long"));
    say(record.weights_share.map(|share| {
        if share < 0.95 {
            "lift-short"
        } else {
            "lift-held"
        }
    }));
    say(record.opened_share.map(|share| {
        if share < 0.8 {
            "opened-early"
        } else {
            "opened-late"
        }
    }));
    let allowance = record.allowance_percent.zip(record.contraction_percent);
    say(allowance.map(
        |(built, found)| match (built - found).abs() > ALLOWANCE_OFF {
            true => "allowance-off",
            false => "allowance-right",
        },
    ));
}
