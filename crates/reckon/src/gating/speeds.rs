//! Speed at the gates, and the rules for the filling time side by side.

use measure::flow::Flow;
use measure::length::{Area, Length};
use measure::matter::{Density, Mass, Pressure};
use measure::text::rounded;
use metal::alloy::{Alloy, Caution, Family};
use mould::gating::fill_rules::{
    CUBE_ROOT_TIME, FillRule, HEAVY_IRON_TIME, Root, cube_root_time, disagreement, heavy_iron_time,
    rules_for,
};
use mould::gating::gate_speed::{
    CRITICAL_SPEED, DROP_HEIGHT, GATE_SPEED, critical_speed, drop_height, gate_speed, limits_of,
    surface_of,
};
use mould::gating::trapped_air::{TRAPPED_AIR, pressed_to, rise_into_pocket};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

pub(super) const SPEED_AT_GATES: Reckoner = Reckoner {
    name: "gate-speed",
    question: "How fast does the metal leave the gates, and is that too fast?",
    law: &GATE_SPEED,
    inputs: &[
        Input::of::<Flow>(
            "flow",
            "Q",
            "metal by volume: poured volume over filling time",
        ),
        Input::of::<Area>("gates", "A", "area of all gates together"),
        Input::metal(),
    ],
    example: &[
        ("flow", "0.15 l/s"),
        ("gates", "250 mm2"),
        ("metal", "A356"),
    ],
    cautions: &[],
    work: |given| {
        let speed = gate_speed(given.get("flow"), given.get("gates"));
        let limits = given
            .alloy()
            .map_or_else(Vec::new, |alloy| limits_of(kind_of(alloy)));
        for limit in &limits {
            if speed.as_m_per_s() > limit.m_per_s {
                given.doubt(format!(
                    "over the {} m/s of the {} ({}): widen the gates",
                    limit.m_per_s, limit.school, limit.note
                ));
            }
        }
        let said = limits
            .iter()
            .map(|limit| format!("{} m/s by {} ({})", limit.m_per_s, limit.school, limit.note));
        let said = said.collect::<Vec<_>>().join("; ");
        let said = if said.is_empty() {
            "name the metal to have its limits".to_owned()
        } else {
            said
        };
        Ok(vec![
            Answer::of("speed", speed).rounded_up(),
            Answer::words("limits", said),
        ])
    },
};

const TENSION: Input = Input::number(
    "tension",
    "γ",
    "surface tension of the liquid, N/m; by the metal where left out",
)
.optional();

const LIQUID: Input = Input::of::<Density>("liquid_density", "ρ", "density of the liquid metal")
    .of_metal(Property::LiquidDensity);

pub(super) const DROP: Reckoner = Reckoner {
    name: "drop-height",
    question: "How high stands a drop of the metal on a floor?",
    law: &DROP_HEIGHT,
    inputs: &[TENSION, Input::metal(), LIQUID],
    example: &[("tension", "0.9"), ("liquid_density", "2.4 g/cm3")],
    cautions: &[],
    work: |given| {
        let [low, likely, high] = tension(given)?;
        let at = |tension| drop_height(tension, given.get("liquid_density"));
        Ok(vec![
            Answer::of("height", at(likely)).between(at(low), at(high)),
        ])
    },
};

pub(super) const CRITICAL: Reckoner = Reckoner {
    name: "critical-speed",
    question: "Above which speed does the front break and fold in its skin?",
    law: &CRITICAL_SPEED,
    inputs: &[TENSION, Input::metal(), LIQUID],
    example: &[("metal", "A356")],
    cautions: &[],
    work: |given| {
        let [low, likely, high] = tension(given)?;
        let at = |tension| critical_speed(tension, given.get("liquid_density"));
        let speed = Answer::of("speed", at(likely)).between(at(low), at(high));
        Ok(vec![speed.rounded_down()])
    },
};

pub(super) const TRAPPED: Reckoner = Reckoner {
    name: "trapped-air",
    question: "How much of a pocket without a vent does the metal fill?",
    law: &TRAPPED_AIR,
    inputs: &[
        Input::of::<Length>(
            "pocket",
            "h",
            "height of the pocket, from its mouth to its roof",
        ),
        Input::of::<Length>(
            "head",
            "H",
            "from the mouth of the pocket up to the metal in the basin",
        ),
        Input::metal(),
        LIQUID,
        Input::of::<Pressure>("air", "p₀", "pressure of the weather")
            .or("101325 Pa", "ashrae-fundamentals-2017"),
    ],
    example: &[
        ("pocket", "50 mm"),
        ("head", "250 mm"),
        ("liquid_density", "2.4 g/cm3"),
    ],
    cautions: &[],
    work: |given| {
        let (pocket, head): (Length, Length) = (given.get("pocket"), given.get("head"));
        let (liquid, air) = (given.get("liquid_density"), given.get("air"));
        Ok(vec![
            Answer::of("rise", rise_into_pocket(pocket, head, liquid, air)),
            Answer::of("pressure", pressed_to(pocket, head, liquid, air)),
        ])
    },
};

pub(super) const CUBE_ROOT: Reckoner = Reckoner {
    name: "cube-root-time",
    question: "What do the rules by the cube root and by the square root say of the filling time?",
    law: &CUBE_ROOT_TIME,
    inputs: &[
        Input::of::<Mass>("poured", "m", "all metal poured"),
        Input::of::<Length>("wall", "", "thinnest wall that has to run").optional(),
        Input::metal(),
        Input::number("constant", "K", "in place of the wall, s/∛kg").optional(),
    ],
    example: &[
        ("poured", "4.2 kg"),
        ("wall", "6 mm"),
        ("metal", "gunmetal"),
    ],
    cautions: &[],
    work: |given| {
        let poured: Mass = given.get("poured");
        match (given.find::<Length>("wall"), given.has("constant")) {
            (None, true) => {
                let time = cube_root_time(poured, given.number("constant"));
                Ok(vec![Answer::of("time", time)])
            }
            (Some(wall), false) => side_by_side(given, poured, wall),
            _ => {
                let advice = "give the wall, or the constant in its place";
                given.refuse("wall", "or constant is wanted, one of the two", advice)
            }
        }
    },
};

pub(super) const HEAVY_IRON: Reckoner = Reckoner {
    name: "heavy-iron-fill-time",
    question: "In how many seconds is a mould of more than 450 kg of grey iron to be full?",
    law: &HEAVY_IRON_TIME,
    inputs: &[
        Input::of::<Mass>("poured", "m", "all iron poured"),
        Input::of::<Length>("wall", "T", "thickness of the section"),
        Input::of::<Length>("fluidity", "", "fluidity of the iron: reckon iron-fluidity")
            .or("30 to 40 in", "common-practice"),
    ],
    example: &[("poured", "600 kg"), ("wall", "20 mm")],
    cautions: &[],
    work: |given| {
        let poured: Mass = given.get("poured");
        if poured < Mass::from_kg(450.0) {
            given.doubt("below 450 kg another form of the rule holds: reckon iron-fill-time");
        }
        let time = heavy_iron_time(poured, given.get("wall"), given.get("fluidity"));
        Ok(vec![Answer::of("time", time)])
    },
};

/// Times that differ by more than this are told to disagree.
const DISAGREE: f64 = 1.5;

fn side_by_side(given: &Given<'_>, poured: Mass, wall: Length) -> Result<Vec<Answer>, Impossible> {
    let kind = given.alloy().map_or("any", kind_of);
    let rules = rules_for(kind, wall);
    let cube: Vec<&FillRule> = rules
        .iter()
        .copied()
        .filter(|rule| rule.root == Root::Cube)
        .collect();
    let Some(first) = cube.first() else {
        let advice = "the rules know walls of 1.5 to 15 mm: give the constant in place of the wall";
        return given.refuse("wall", "is claimed by no rule of the cube root", advice);
    };
    let time = first.time(poured);
    let (low, high) = cube.iter().fold((time, time), |(low, high), rule| {
        (low.min(rule.time(poured)), high.max(rule.time(poured)))
    });
    let apart = disagreement(&rules, poured);
    if apart > DISAGREE {
        given.doubt(format!(
            "the rules disagree by {} times; the freezing of the thinnest wall has the last word: \
             reckon thin-wall-limit",
            rounded(apart, 2)
        ));
    }
    let each = rules.iter().map(|rule| {
        let root = if rule.root == Root::Cube {
            "∛m"
        } else {
            "√m"
        };
        let seconds = rounded(rule.time(poured).as_s(), 2);
        format!(
            "{seconds} s by {} {root}: {}",
            rule.constant, rule.holds_for
        )
    });
    let each = each.collect::<Vec<_>>().join("; ");
    Ok(vec![
        Answer::of("time", time).between(low, high),
        Answer::words("side by side", each),
    ])
}

/// Low, likely and high surface tension, N/m.
fn tension(given: &Given<'_>) -> Result<[f64; 3], Impossible> {
    if given.has("tension") {
        return Ok([given.number("tension"); 3]);
    }
    match given.alloy().and_then(|alloy| surface_of(kind_of(alloy))) {
        Some(surface) => {
            given.doubt(format!("surface tension by the table: {}", surface.note));
            Ok(surface.tension_n_per_m)
        }
        None => given.refuse("tension", "is missing", "give it in N/m, or name the metal"),
    }
}

/// The kind of metal under which the tables of gating keep an alloy.
fn kind_of(alloy: &Alloy) -> &'static str {
    match alloy.family {
        Family::Aluminium => "aluminium",
        // Of the copper alloys only aluminium bronze has a skin that folds.
        Family::Copper if alloy.cautions.contains(&Caution::OxideFolds) => "aluminium-bronze",
        Family::Copper => "copper",
        Family::Zinc => "zinc",
        Family::Iron => "iron",
        Family::Tin => "tin",
    }
}
