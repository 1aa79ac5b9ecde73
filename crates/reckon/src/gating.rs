//! How the metal gets in: filling time, sprue, choke, running system.

mod basin;
mod network;
mod reach;
mod running;
mod speeds;

use measure::flow::{Duration, Flow};
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use mould::gating::choke::{CHOKE, EFFECTIVE_HEAD, choke, effective_head};
use mould::gating::pour_time::{
    IRON_POUR_TIME, POUR_TIME, THIN_WALL_LIMIT, ToRun, as_iron, constant_for, iron_pour_time,
    pour_time, thin_wall_limit, time_to_fill,
};
use mould::gating::sprue::{
    FALL_SPEED, FILL_FROM_BOTTOM, FILL_FROM_TOP, SPRUE_EXIT, SPRUE_TAPER, diameter_of, fall_speed,
    fill_from_bottom, fill_from_top, sprue_exit, sprue_top,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const FILLED: Input = Input::of::<Mass>(
    "filled",
    "m_filled",
    "castings and feeders alone, where sprue and runner are known",
)
.optional();

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "fill-time",
        question: "In how many seconds is the mould to be full?",
        law: &POUR_TIME,
        inputs: &[
            Input::of::<Mass>("poured", "m", "all metal poured"),
            Input::of::<Length>("wall", "", "thinnest wall that has to run").optional(),
            Input::number("constant", "S", "in place of the wall, s/√kg").optional(),
            Input::of::<Duration>(
                "freezing",
                "t_freeze",
                "time in which the thinnest wall freezes: it is to be full in half of it",
            )
            .optional()
            .narrowed_by("time one slab in your own sand: reckon freezing-time"),
            FILLED,
            Input::of::<Density>("liquid_density", "ρ", "of the metal, where it is not iron")
                .or("6.9 g/cm3", "foundry-handbooks-iron"),
        ],
        example: &[("poured", "4.2 kg"), ("wall", "6 mm")],
        cautions: &[],
        work: |given| {
            let constant = match (given.find::<Length>("wall"), given.has("constant")) {
                (Some(wall), false) => {
                    if wall < Length::from_mm(2.5) || wall > Length::from_mm(15.0) {
                        given.doubt("the rule was given for walls of 2.5 to 15 mm");
                    }
                    constant_for(wall)
                }
                (None, true) => given.number("constant"),
                _ => {
                    let advice = "give the wall, or the constant in its place";
                    return given.refuse("wall", "or constant is wanted, one of the two", advice);
                }
            };
            let poured: Mass = given.get("poured");
            let to_run = ToRun {
                liquid: given.get("liquid_density"),
                filled: filled(given, poured)?,
                freezing: given.find("freezing"),
            };
            let time = time_to_fill(poured, constant, &to_run);
            if time < pour_time(as_iron(poured, to_run.liquid), constant) {
                given.doubt("hurried: the thinnest wall would freeze before it is full");
            }
            Ok(vec![Answer::of("time", time)])
        },
    },
    Reckoner {
        name: "thin-wall-limit",
        question: "When at the latest must the thinnest wall be full?",
        law: &THIN_WALL_LIMIT,
        inputs: &[
            Input::of::<Duration>("freezing", "t_freeze", "time in which that wall freezes")
                .narrowed_by("time one slab in your own sand: reckon freezing-time"),
            Input::of::<Mass>("poured", "m", "all metal poured, with the running system")
                .optional(),
            FILLED,
        ],
        example: &[
            ("freezing", "11 to 25 s"),
            ("poured", "2.3 kg"),
            ("filled", "1.8 kg"),
        ],
        cautions: &[],
        work: |given| {
            let all: Option<Mass> = given.find("poured").or_else(|| given.find("filled"));
            let poured = all.unwrap_or(Mass::from_kg(1.0));
            let latest = thin_wall_limit(given.get("freezing"), poured, filled(given, poured)?);
            Ok(vec![Answer::of("time", latest).rounded_down()])
        },
    },
    Reckoner {
        name: "iron-fill-time",
        question: "In how many seconds is a mould of grey iron to be full, a second opinion?",
        law: &IRON_POUR_TIME,
        inputs: &[
            Input::of::<Mass>("poured", "m", "all iron poured"),
            Input::of::<Length>("wall", "T", "thickness of the section"),
            Input::of::<Length>("fluidity", "", "fluidity of the iron in the spiral")
                .or("30 to 40 in", "common-practice"),
        ],
        example: &[("poured", "6.2 kg"), ("wall", "7 mm")],
        cautions: &[],
        work: |given| {
            let poured: Mass = given.get("poured");
            if poured > Mass::from_kg(450.0) {
                given.doubt("above 450 kg another form of the rule holds");
            }
            let time = iron_pour_time(poured, given.get("wall"), given.get("fluidity"));
            Ok(vec![Answer::of("time", time)])
        },
    },
    speeds::CUBE_ROOT,
    speeds::HEAVY_IRON,
    Reckoner {
        name: "fall-speed",
        question: "How fast is metal after a fall?",
        law: &FALL_SPEED,
        inputs: &[Input::of::<Length>("fall", "h", "height of the fall")],
        example: &[("fall", "100 mm")],
        cautions: &[],
        work: |given| Ok(vec![Answer::of("speed", fall_speed(given.get("fall")))]),
    },
    Reckoner {
        name: "sprue-exit",
        question: "How large is the foot of a sprue that carries a given flow?",
        law: &SPRUE_EXIT,
        inputs: &[
            Input::of::<Flow>("flow", "Q", "metal by volume"),
            Input::of::<Length>("fall", "h", "from the level in the basin to the foot"),
        ],
        example: &[("flow", "0.7 l/s"), ("fall", "185 mm")],
        cautions: &[],
        work: |given| {
            let area = sprue_exit(given.get("flow"), given.get("fall"));
            Ok(vec![
                Answer::of("area", area),
                Answer::of("diameter", diameter_of(area)),
            ])
        },
    },
    Reckoner {
        name: "sprue-taper",
        question: "How wide is the sprue at the top, so that it draws no air?",
        law: &SPRUE_TAPER,
        inputs: &[
            Input::of::<Length>("foot", "", "diameter at the foot"),
            Input::of::<Length>("basin", "h_basin", "depth of metal above the sprue"),
            Input::of::<Length>(
                "total",
                "h_total",
                "from the level in the basin to the foot",
            ),
        ],
        example: &[("foot", "14 mm"), ("basin", "40 mm"), ("total", "140 mm")],
        cautions: &[],
        work: |given| {
            let foot: Length = given.get("foot");
            let (basin, total): (Length, Length) = (given.get("basin"), given.get("total"));
            if basin > total {
                return given.refuse(
                    "basin",
                    "is deeper than the whole fall",
                    "measure the total from the level in the basin",
                );
            }
            let top = sprue_top(foot, basin, total);
            Ok(vec![
                Answer::of("top", top),
                Answer::number("foot_to_top_area", (foot / top).powi(2)),
            ])
        },
    },
    basin::JET,
    basin::SUCTION,
    Reckoner {
        name: "fill-from-top",
        question: "How long does a top-gated cavity take to fill?",
        law: &FILL_FROM_TOP,
        inputs: &[
            Input::of::<Volume>("cavity", "V", "what has to be filled"),
            Input::of::<Area>("foot", "A", "area at the foot of the sprue"),
            Input::of::<Length>("fall", "h", "from the level in the basin to the foot"),
        ],
        example: &[("cavity", "1000 cm3"), ("foot", "1 cm2"), ("fall", "20 cm")],
        cautions: &[],
        work: |given| {
            let time = fill_from_top(given.get("cavity"), given.get("foot"), given.get("fall"));
            given
                .doubt("no loss in bends is counted: a real running system is slower by a quarter");
            Ok(vec![Answer::of("time", time)])
        },
    },
    Reckoner {
        name: "fill-from-bottom",
        question: "How long does a bottom-gated cavity take to fill?",
        law: &FILL_FROM_BOTTOM,
        inputs: &[
            Input::of::<Area>("plan", "A_m", "cavity seen from above"),
            Input::of::<Area>("gate", "A_g", "area of the gate"),
            Input::of::<Length>("head", "h_t", "from the gate to the level in the basin"),
            Input::of::<Length>(
                "cavity_height",
                "h_m",
                "height of the cavity above the gate",
            ),
        ],
        example: &[
            ("plan", "5000 cm2"),
            ("gate", "10 cm2"),
            ("head", "0.3 m"),
            ("cavity_height", "0.25 m"),
        ],
        cautions: &[],
        work: |given| {
            let (head, height): (Length, Length) = (given.get("head"), given.get("cavity_height"));
            if height >= head {
                return given.refuse(
                    "head",
                    "does not reach above the cavity: it never fills",
                    "raise the sprue or the basin",
                );
            }
            let time = fill_from_bottom(given.get("plan"), given.get("gate"), head, height);
            Ok(vec![Answer::of("time", time)])
        },
    },
    Reckoner {
        name: "choke",
        question: "How large must the narrowest place of the running system be?",
        law: &CHOKE,
        inputs: &[
            Input::of::<Mass>("poured", "m", "all metal that runs through it"),
            Input::of::<Duration>("time", "t", "time in which the mould is to be full"),
            Input::metal(),
            Input::of::<Density>("liquid_density", "ρ", "density of the liquid metal")
                .of_metal(Property::LiquidDensity),
            Input::number(
                "discharge",
                "C",
                "what bends and gates let through of an ideal stream",
            )
            .or("0.73 to 0.9, likely 0.8", "gating-slides"),
            Input::of::<Length>("head", "H", "mean head of metal above the gate"),
        ],
        example: &[
            ("poured", "4.2 kg"),
            ("time", "3.4 to 4.6 s"),
            ("metal", "gunmetal"),
            ("head", "100 mm"),
        ],
        cautions: &[],
        work: |given| {
            let head: Length = given.get("head");
            if head <= Length::ZERO {
                return given.refuse(
                    "head",
                    "is nought: nothing drives the metal",
                    "raise the sprue",
                );
            }
            let area = choke(
                given.get("poured"),
                given.get("liquid_density"),
                given.get("time"),
                given.number("discharge"),
                head,
            );
            Ok(vec![
                Answer::of("area", area),
                Answer::of("diameter", diameter_of(area)),
            ])
        },
    },
    Reckoner {
        name: "effective-head",
        question: "What head drives the metal on average, while the casting fills behind the gate?",
        law: &EFFECTIVE_HEAD,
        inputs: &[
            Input::of::<Length>(
                "pour_above_gate",
                "h",
                "from the gate to the level in the basin",
            ),
            Input::of::<Length>("above_gate", "h₁", "casting above the gate"),
            Input::of::<Length>("casting", "h₂", "height of the whole casting"),
        ],
        example: &[
            ("pour_above_gate", "100 mm"),
            ("above_gate", "30 mm"),
            ("casting", "60 mm"),
        ],
        cautions: &[],
        work: |given| {
            let (pour, above): (Length, Length) =
                (given.get("pour_above_gate"), given.get("above_gate"));
            if above > pour {
                return given.refuse(
                    "above_gate",
                    "stands higher than the metal in the basin: it never fills",
                    "raise the sprue or the basin",
                );
            }
            let casting: Length = given.get("casting");
            if above > casting {
                return given.refuse(
                    "above_gate",
                    "is more than the whole casting",
                    "measure both from the same casting",
                );
            }
            Ok(vec![Answer::of(
                "head",
                effective_head(pour, above, casting),
            )])
        },
    },
    basin::LIP,
    basin::DEPTH,
    basin::STUTTER,
    network::FRICTION_FACTOR,
    network::GATE_SHARES,
    network::FILL_IN_ORDER,
    network::EVEN_GATES,
    speeds::SPEED_AT_GATES,
    speeds::DROP,
    speeds::CRITICAL,
    speeds::TRAPPED,
    running::METAL,
    running::POURED,
    running::BY_RATIO,
    basin::FIRST,
    basin::PAST_LAST_GATE,
    basin::WELL,
    reach::REACH,
    reach::LEAST,
    reach::MISRUN,
    reach::SPIRAL,
];

/// Castings and feeders alone; all of the metal where nothing is said of them.
fn filled(given: &Given<'_>, poured: Mass) -> Result<Mass, Impossible> {
    let filled = given.find("filled").unwrap_or(poured);
    if filled <= Mass::ZERO || filled > poured * LARGER_PART {
        let advice = "weigh the castings without sprue and runner";
        return given.refuse("filled", "is a part of what is poured", advice);
    }
    Ok(filled)
}

/// At the low end of what is poured, the likely castings may be a little more than all.
const LARGER_PART: f64 = 2.0;
