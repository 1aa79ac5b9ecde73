//! A case as single facts, which the likelihoods are asked for. A number becomes a fact only where
//! it is far enough from what is usual; halfway there it says nothing; nearer than that it says
//! that it was looked at and is not off, which speaks against a cause that would show in it.

use std::collections::BTreeSet;

use crate::diagnosis::case_file::{
    CaseFile, Core, Feeder, Grain, PourKind, Ramming, Record, Scrap, Seen, Vents,
};
use crate::diagnosis::heat::usual_c;
use crate::diagnosis::sight::{Castings, FOUNDS, Kind, LOOKS, PLACES, Place, Size, WALLS, When};

/// Points of moisture by which sand is wetter or drier than on good days. A kitchen scale tells
/// half a point; a whole one changes how sand moulds.
const MOISTURE_OFF: f64 = 0.8;
/// Moisture of bentonite-bonded sand that is high and low where no good days are known, per cent of
/// wet mass: it is stopped at above 6 %.
const MOISTURE_ENDS: (f64, f64) = (2.5, 6.0);
/// A part of the good days' figure by which permeability and strength are off. Tests repeat within
/// a tenth or two.
const TEST_OFF: f64 = 0.25;
/// Permeability that is low where no good days are known, and that is not.
const PERMEABILITY_ENDS: (f64, f64) = (30.0, 45.0);
/// Loss on burning at which sands get gassy, and below which they are not, per cent of dry mass.
const BURNING_ENDS: (f64, f64) = (3.0, 5.0);
/// Compactability below which sand is friable, and above which it is not, per cent.
const COMPACTABILITY_ENDS: (f64, f64) = (35.0, 40.0);
/// Kelvin by which the metal is colder or hotter than planned. A probe is good for ten.
const HEAT_OFF: f64 = 30.0;
/// A part of the planned time by which a pour is slow or fast.
const TIME_OFF: f64 = 0.35;
/// Gate speed above which metal folds and washes, and below which it does neither, m/s.
const GATE_ENDS: (f64, f64) = (0.5, 0.6);
/// Minutes held liquid that are long.
const HELD_LONG: f64 = 30.0;
/// Hours after which sand that was not covered has dried at its skin.
const TEMPERED_LONG: f64 = 12.0;
/// Hours after which a closed mould is damp at its irons.
const CLOSED_LONG: f64 = 3.0;
/// Pours after which a heap that was not renewed is full of fines.
const HEAP_OLD: f64 = 20.0;
/// Points by which contraction found and contraction built in differ.
const ALLOWANCE_OFF: f64 = 0.3;
/// Humidity of the air that is high, per cent.
const HUMID: f64 = 80.0;
/// Weights as a share of those asked for that are too light, and time in the mould that is too
/// short.
const WEIGHTS_SHORT: f64 = 0.95;
const OPENED_EARLY: f64 = 0.8;

/// What a case says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Facts {
    /// What is met, each a word of the likelihoods.
    pub met: BTreeSet<String>,
    /// What was looked for and is not so: a word of the likelihoods, or the start of several.
    pub absent: BTreeSet<String>,
}

impl Facts {
    fn met(&mut self, fact: &str) {
        self.met.insert(fact.to_owned());
    }

    fn absent(&mut self, fact: &str) {
        self.absent.insert(fact.to_owned());
    }

    /// A fact that is met from one end up, and not so below another.
    fn above(&mut self, now: f64, (from, not_below): (f64, f64), fact: &str) {
        match now {
            now if now > from => self.met(fact),
            now if now < not_below => self.absent(fact),
            _ => {}
        }
    }

    /// A fact that is met from one end down, and not so above another.
    fn below(&mut self, now: f64, (from, not_above): (f64, f64), fact: &str) {
        match now {
            now if now < from => self.met(fact),
            now if now > not_above => self.absent(fact),
            _ => {}
        }
    }

    /// Facts of a number that may be off to both sides of what is usual.
    fn off(&mut self, now: f64, usual: f64, by: f64, [low, high]: [&str; 2]) {
        self.below(now, (usual - by, usual - by / 2.0), low);
        self.above(now, (usual + by, usual + by / 2.0), high);
    }

    /// A fact of a number that is long from here on, and surely not below half of it.
    fn long(&mut self, now: Option<f64>, from: f64, fact: &str) {
        if let Some(now) = now {
            self.above(now, (from, from / 2.0), fact);
        }
    }

    /// A fact that was written down as so or not so.
    fn flag(&mut self, is: Option<bool>, [yes, no]: [&str; 2]) {
        if let Some(is) = is {
            self.met(if is { yes } else { no });
        }
    }

    /// One of several ways; where it is as it should be, none of the others is so.
    fn way(&mut self, fact: &str, as_it_should_be: bool) {
        self.met(fact);
        if as_it_should_be && let Some((kind, _)) = fact.split_once('-') {
            self.absent(&format!("{kind}-"));
        }
    }
}

/// The facts of a case.
pub fn facts(case: &CaseFile) -> Facts {
    let mut facts = Facts::default();
    of_sight(&case.seen, &mut facts);
    of_castings(&case.seen, &mut facts);
    of_sand(&case.record, &mut facts);
    of_sand_tests(&case.record, &mut facts);
    of_heat(case, &mut facts);
    of_metal(&case.record, &mut facts);
    of_mould(&case.record, &mut facts);
    of_cores(&case.record, &mut facts);
    for one in &case.plan.found {
        facts.met(&format!("found-{}", FOUNDS[*one as usize]));
    }
    facts
}

fn of_sight(seen: &Seen, facts: &mut Facts) {
    for one in &seen.look {
        facts.met(&format!("look-{}", LOOKS[*one as usize]));
    }
    // What a cut lays open lies inside, whatever its cause.
    let cut = matches!(seen.when, Some(When::Machining | When::Sawing));
    let tells = |place: &&Place| !(cut && **place == Place::Inside);
    for one in seen.place.iter().filter(tells) {
        facts.met(&format!("place-{}", PLACES[*one as usize]));
    }
    for one in &seen.surface {
        facts.met(&format!("wall-{}", WALLS[*one as usize]));
    }
    match seen.size {
        Some(Size::Small) => facts.met("small"),
        Some(Size::Medium) => facts.met("medium"),
        Some(Size::Large) => facts.met("large"),
        None => {}
    }
    match seen.when {
        Some(When::KnockOut) => facts.met("seen-knock-out"),
        Some(When::Cleaning) => facts.met("seen-cleaning"),
        Some(When::Machining) => facts.met("seen-machining"),
        Some(When::Sawing) => facts.met("seen-sawing"),
        Some(When::Use) => facts.met("seen-use"),
        None => {}
    }
}

fn of_castings(seen: &Seen, facts: &mut Facts) {
    match seen.metal {
        Some(Kind::Iron) => facts.met("metal-iron"),
        Some(_) => facts.met("metal-other"),
        None => {}
    }
    match seen.castings {
        Some(Castings::One) => facts.met("on-one"),
        Some(Castings::Some) => facts.met("on-some"),
        Some(Castings::All) => facts.met("on-all"),
        None => {}
    }
    facts.flag(seen.other_heat, ["other-heat-too", "other-heat-not"]);
    facts.flag(seen.other_sand, ["other-sand-too", "other-sand-not"]);
    facts.flag(seen.sprue, ["sprue-too", "sprue-not"]);
}

fn of_sand(record: &Record, facts: &mut Facts) {
    if let Some(now) = record.moisture_percent {
        let words = ["moisture-low", "moisture-high"];
        let (low, high) = MOISTURE_ENDS;
        match record.moisture_good_percent {
            Some(good) => facts.off(now, good, MOISTURE_OFF, words),
            None => {
                facts.below(now, (low, low + MOISTURE_OFF), words[0]);
                facts.above(now, (high, high - MOISTURE_OFF), words[1]);
            }
        }
    }
    facts.long(
        record.hours_since_temper,
        TEMPERED_LONG,
        "tempered-long-ago",
    );
    facts.long(record.heap_pours, HEAP_OLD, "heap-old");
    match record.rain {
        Some(true) => facts.met("rain"),
        Some(false) => facts.absent("rain"),
        None => {}
    }
    if record
        .air_humidity_percent
        .is_some_and(|humid| humid > HUMID)
    {
        facts.met("humid");
    }
}

fn of_sand_tests(record: &Record, facts: &mut Facts) {
    let words = ["permeability-low", "permeability-high"];
    match (record.permeability, record.permeability_good) {
        (Some(now), Some(good)) => facts.off(now / good, 1.0, TEST_OFF, words),
        (Some(now), None) => facts.below(now, PERMEABILITY_ENDS, words[0]),
        _ => {}
    }
    if let Some((now, good)) = record.strength_kpa.zip(record.strength_good_kpa) {
        facts.off(now / good, 1.0, TEST_OFF, ["strength-low", "strength-high"]);
    }
    if let Some(now) = record.burning_loss_percent {
        let (low, high) = BURNING_ENDS;
        match now {
            now if now >= high => facts.met("burning-loss-high"),
            now if now <= low => facts.absent("burning-loss-high"),
            _ => {}
        }
    }
    if let Some(now) = record.compactability_percent {
        facts.below(now, COMPACTABILITY_ENDS, "compactability-low");
    }
    let grains = ["grain-fine", "grain-medium", "grain-coarse"];
    let is = record.grain.map(|grain| match grain {
        Grain::Fine => grains[0],
        Grain::Medium => grains[1],
        Grain::Coarse => grains[2],
    });
    if let Some(is) = is {
        facts.met(is);
        for other in grains.iter().filter(|other| **other != is) {
            facts.absent(other);
        }
    }
}

fn of_heat(case: &CaseFile, facts: &mut Facts) {
    let (record, words) = (&case.record, ["cold", "hot"]);
    let planned = record.pour_temperature_planned_c;
    match (record.pour_temperature_c, planned) {
        (Some(now), Some(planned)) => {
            facts.off(now, planned, HEAT_OFF, words);
            if (now - planned).abs() < HEAT_OFF / 2.0 {
                facts.met("temperature-usual");
            }
        }
        // Without a plan it is only told to be off where no alloy of the kind is poured so.
        (Some(now), None) => match case.seen.metal.and_then(usual_c) {
            Some([low, _]) if now < low - HEAT_OFF => facts.met(words[0]),
            Some([_, high]) if now > high + HEAT_OFF => facts.met(words[1]),
            _ => {}
        },
        _ => {}
    }
    let time = record.pour_time_s.zip(record.pour_time_planned_s);
    if let Some((now, planned)) = time {
        facts.off(now / planned, 1.0, TIME_OFF, ["fast", "slow"]);
    }
}

fn of_metal(record: &Record, facts: &mut Facts) {
    if let Some(now) = record.gate_speed_m_s {
        let (slow, fast) = GATE_ENDS;
        match now {
            now if now >= fast => facts.met("gate-fast"),
            now if now <= slow => facts.absent("gate-fast"),
            _ => {}
        }
    }
    facts.long(record.minutes_molten, HELD_LONG, "held-long");
    facts.flag(record.degassed, ["degassed", "not-degassed"]);
    facts.flag(record.skimmed, ["skimmed", "not-skimmed"]);
    match record.pour {
        Some(PourKind::Steady) => facts.way("pour-steady", true),
        Some(PourKind::Broken) => facts.way("pour-broken", false),
        Some(PourKind::Splashed) => facts.way("pour-splashed", false),
        Some(PourKind::Slow) => facts.way("pour-slow", false),
        Some(PourKind::RanShort) => facts.way("pour-ran-short", false),
        None => {}
    }
    match record.scrap {
        Some(Scrap::Clean) => facts.way("scrap-clean", true),
        Some(Scrap::Dirty) => facts.way("scrap-dirty", false),
        Some(Scrap::Damp) => facts.way("scrap-damp", false),
        None => {}
    }
}

fn of_mould(record: &Record, facts: &mut Facts) {
    match record.ramming {
        Some(Ramming::Soft) => facts.way("rammed-soft", false),
        Some(Ramming::Even) => facts.way("rammed-even", true),
        Some(Ramming::Hard) => {
            facts.way("rammed-hard", false);
            facts.absent("rammed-soft");
        }
        None => {}
    }
    match record.vents {
        Some(Vents::None) => facts.way("vents-none", false),
        Some(Vents::Few) => facts.way("vents-few", true),
        Some(Vents::Many) => facts.way("vents-many", true),
        None => {}
    }
    match record.feeder {
        Some(Feeder::None) => facts.way("feeder-none", false),
        Some(Feeder::Small) => facts.way("feeder-small", false),
        Some(Feeder::Enough) => facts.way("feeder-enough", true),
        None => {}
    }
    facts.long(record.hours_closed, CLOSED_LONG, "closed-long");
    if let Some(share) = record.weights_share {
        facts.below(share, (WEIGHTS_SHORT, WEIGHTS_SHORT), "lift-short");
    }
    if let Some(share) = record.opened_share {
        facts.below(share, (OPENED_EARLY, OPENED_EARLY), "opened-early");
    }
    let allowance = record.allowance_percent.zip(record.contraction_percent);
    if let Some((built, found)) = allowance {
        let ends = (ALLOWANCE_OFF, ALLOWANCE_OFF);
        facts.above((built - found).abs(), ends, "allowance-off");
    }
}

fn of_cores(record: &Record, facts: &mut Facts) {
    match record.core {
        Some(Core::WellBaked) => facts.way("core-well-baked", true),
        Some(Core::BakedShort) => facts.way("core-baked-short", false),
        Some(Core::Damp) => facts.way("core-damp", false),
        Some(Core::Unvented) => facts.way("core-unvented", false),
        Some(Core::None) => facts.way("core-none", false),
        None => {}
    }
}
