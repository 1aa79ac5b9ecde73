//! How hard to ram, what hangs, what goes on as facing.

use measure::length::{Area, Length};
use measure::matter::{Density, Mass, Pressure};
use mould::facing::{FACING, Face, facing};
use mould::hanging::{
    BARS_BEYOND, COPE_ARCH, COPE_GRIP, HANGING, PLAIN_WALL_GRIPS, cope_arch, cope_grip, hanging,
};
use mould::ramming::{
    DENT_LIMITS, DENT_RESISTANCE, DENT_TARGET, Drop, at_reading, dent_resistance, dent_target,
    hardness_for,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::Input;
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const SAND: Input = Input::of::<Density>("sand_density", "ρ", "rammed sand")
    .or("1.5 to 1.7 g/cm3", "common-practice");

const MASS: Input = Input::of::<Mass>("mass", "m", "of the ball");
const BALL: Input = Input::of::<Length>("ball", "", "diameter of the ball");
const HEIGHT: Input = Input::of::<Length>("drop", "h", "from the ball's lowest point to the sand");
const DENT: Input =
    Input::of::<Length>("dent", "w", "width of the dent").narrowed_by("mean of five dents");

const METALS: &[&str] = &["aluminium", "zinc", "brass", "bronze", "iron"];

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "dent-resistance",
        question: "How firm is the sand, from the dent of a dropped ball?",
        law: &DENT_RESISTANCE,
        inputs: &[MASS, BALL, HEIGHT, DENT],
        example: &[
            ("mass", "110 g"),
            ("ball", "30 mm"),
            ("drop", "200 mm"),
            ("dent", "14 mm"),
        ],
        cautions: &[],
        work: |given| {
            let drop = drop_of(given, ["mass", "ball", "drop"]);
            let firm = firmness(given, &drop)?;
            Ok(vec![Answer::of("resistance", firm)])
        },
    },
    Reckoner {
        name: "dent-target",
        question: "How wide a dent to ram to, with another ball or drop?",
        law: &DENT_TARGET,
        inputs: &[
            MASS,
            BALL,
            Input::of::<Length>("drop", "h", "on the good day, from the ball to the sand"),
            Input::of::<Length>("dent", "w", "on the good day, with that drop")
                .narrowed_by("mean of five dents"),
            Input::of::<Mass>("new_mass", "", "of the ball now").optional(),
            Input::of::<Length>("new_ball", "", "diameter of the ball now").optional(),
            Input::of::<Length>("new_drop", "", "drop now").optional(),
        ],
        example: &[
            ("mass", "110 g"),
            ("ball", "30 mm"),
            ("drop", "200 mm"),
            ("dent", "14 mm"),
            ("new_drop", "100 mm"),
        ],
        cautions: &[],
        work: |given| {
            let good = drop_of(given, ["mass", "ball", "drop"]);
            let firm = firmness(given, &good)?;
            let now = Drop {
                mass: given.find("new_mass").unwrap_or(good.mass),
                ball: given.find("new_ball").unwrap_or(good.ball),
                height: given.find("new_drop").unwrap_or(good.height),
            };
            let times = now.ball / good.ball;
            if !(0.5..=2.0).contains(&times) {
                given
                    .doubt("the balls differ by more than two: drop both on one mould and compare");
            }
            Ok(vec![Answer::of("dent", dent(given, firm, &now)?)])
        },
    },
    Reckoner {
        name: "dent-limits",
        question: "Between which dents to ram for this metal?",
        law: &DENT_LIMITS,
        inputs: &[
            Input::choice("metal", "what is to be poured", METALS),
            Input::choice("good_day", "what was poured on the good day", METALS),
            MASS_HERE,
            BALL,
            Input::of::<Length>("drop", "", "from the ball's lowest point to the sand"),
            Input::of::<Length>("dent", "", "on the good day").narrowed_by("mean of five dents"),
        ],
        example: &[
            ("metal", "bronze"),
            ("good_day", "aluminium"),
            ("mass", "110 g"),
            ("ball", "30 mm"),
            ("drop", "200 mm"),
            ("dent", "14 mm"),
        ],
        cautions: &[],
        work: limits,
    },
    Reckoner {
        name: "hanging-sand",
        question: "Will the sand that hangs in the cope stay up?",
        law: &HANGING,
        inputs: &[
            Input::of::<Length>("depth", "d", "how far it hangs down"),
            Input::of::<Length>("width", "w", "the narrow way across"),
            SAND,
            Input::of::<Pressure>("tension", "", "green tension that breaks this sand").optional(),
            Input::of::<Pressure>("strength", "", "green compression strength, in its place")
                .optional(),
            Input::share("tension_share", "", "tension as a part of compression")
                .or("7 to 15 %, likely 10 %", "green-tensile-memory")
                .narrowed_by("pull a rammed bar apart once"),
            Input::number("margin", "", "how many times stronger it is to be")
                .or("2", "common-practice"),
        ],
        example: &[
            ("depth", "60 mm"),
            ("width", "80 mm"),
            ("strength", "35 kPa"),
        ],
        cautions: &["Hands out from under a cope while it is lifted or turned."],
        work: hangs,
    },
    Reckoner {
        name: "cope-arch",
        question: "Does the cope hold its own sand, or does it want bars?",
        law: &COPE_ARCH,
        inputs: &[
            Input::of::<Length>("width", "B", "the narrower inside width of the flask"),
            Input::of::<Length>("depth", "t", "of the cope"),
            SAND,
            Input::of::<Pressure>("strength", "", "green compression strength of this sand"),
        ],
        example: &[
            ("width", "250 mm"),
            ("depth", "80 mm"),
            ("strength", "50 kPa"),
        ],
        cautions: &["Hands out from under a cope while it is lifted or turned."],
        work: |given| {
            let (width, strength): (Length, Pressure) = (given.get("width"), given.get("strength"));
            let crush = cope_arch(given.get("sand_density"), width, given.get("depth"));
            let bars = crush * 3.0 > strength || width > BARS_BEYOND;
            let verdict = match bars {
                true => "bars: nail or screw cross bars in, clear of the pattern",
                false => "no bars",
            };
            Ok(vec![
                Answer::of("crushing", crush).rounded_up(),
                Answer::words("verdict", verdict),
                Answer::number("times stronger", strength / crush),
            ])
        },
    },
    Reckoner {
        name: "cope-grip",
        question: "Do plain flask walls grip the sand, or do they want a groove?",
        law: &COPE_GRIP,
        inputs: &[
            Input::of::<Length>("width", "B", "the narrower inside width of the flask"),
            Input::of::<Length>("depth", "t", "of the cope"),
        ],
        example: &[("width", "250 mm"), ("depth", "80 mm")],
        cautions: &[],
        work: |given| {
            let wanted = cope_grip(given.get("width"), given.get("depth"));
            let verdict = match wanted > PLAIN_WALL_GRIPS {
                true => "groove the walls or nail laths on",
                false => "plain walls grip",
            };
            Ok(vec![
                Answer::number("friction wanted", wanted),
                Answer::words("verdict", verdict),
            ])
        },
    },
    Reckoner {
        name: "facing",
        question: "How much facing sand does a pattern want?",
        law: &FACING,
        inputs: &[
            Input::of::<Length>("thickness", "t", "of the layer"),
            Input::list::<Length>("block", "", "sides of a block, the two on the joint first")
                .optional(),
            Input::choice(
                "sides",
                "sides of the block that get it",
                &["all", "below the joint"],
            )
            .or("all", "common-practice"),
            Input::of::<Area>("area", "A", "in place of a block: face that gets sand").optional(),
            Input::of::<Length>("edges", "E", "its outward edges, all together").optional(),
            Input::number("corners", "c", "its outward corners").or("0", "common-practice"),
            Input::of::<Density>("sand_density", "", "rammed facing sand")
                .or("1.5 to 1.7 g/cm3", "common-practice"),
        ],
        example: &[("thickness", "12 mm"), ("block", "80 mm, 60 mm, 18 mm")],
        cautions: &["Fine dry sand and parting harm the lungs: damp it, no silica flour, a mask."],
        work: |given| {
            let face = face(given)?;
            let volume = facing(&face, given.get("thickness"));
            let mass = given.get::<Density>("sand_density") * volume;
            Ok(vec![
                Answer::of("mass", mass).rounded_up(),
                Answer::of("volume", volume).rounded_up(),
                Answer::of("to have ready", sand::batch::with_spill(mass)).rounded_up(),
            ])
        },
    },
];

const MASS_HERE: Input = Input::of::<Mass>("mass", "", "of the ball");

fn drop_of(given: &Given<'_>, [mass, ball, height]: [&str; 3]) -> Drop {
    Drop {
        mass: given.get(mass),
        ball: given.get(ball),
        height: given.get(height),
    }
}

fn firmness(given: &Given<'_>, drop: &Drop) -> Result<Pressure, Impossible> {
    match dent_resistance(drop, given.get("dent")) {
        Some(firm) => Ok(firm),
        None => given.refuse(
            "dent",
            "is as wide as the ball",
            "drop it from lower down, or ram harder",
        ),
    }
}

fn dent(given: &Given<'_>, firm: Pressure, now: &Drop) -> Result<Length, Impossible> {
    match dent_target(firm, now) {
        Some(dent) => Ok(dent),
        None => given.refuse(
            "new_drop",
            "buries that ball to its middle",
            "take a lighter or larger ball, or a lower drop",
        ),
    }
}

fn limits(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let (Some(wanted), Some(good)) = (
        hardness_for(given.words("metal")),
        hardness_for(given.words("good_day")),
    ) else {
        return given.refuse("metal", "has no limits here", "take the nearest in weight");
    };
    let drop = drop_of(given, ["mass", "ball", "drop"]);
    let firm = firmness(given, &drop)?;
    let own = (good.soft + good.hard) / 2.0;
    let at = |reading: f64| dent(given, at_reading(firm, own, reading), &drop);
    given.doubt("your good day is taken for the middle of that metal's range");
    Ok(vec![
        Answer::of("widest dent, softest", at(wanted.soft)?),
        Answer::of("narrowest dent, hardest", at(wanted.hard)?),
        Answer::of("aim at", at((wanted.soft + wanted.hard) / 2.0)?),
    ])
}

fn hangs(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let share = given.number("tension_share");
    let of_strength = given.find::<Pressure>("strength").map(|all| all * share);
    let Some(tension) = given.find::<Pressure>("tension").or(of_strength) else {
        let advice = "press three rammed plugs on the bathroom scale, or pull one apart";
        return given.refuse("strength", "is not known", advice);
    };
    let pull = hanging(
        given.get("sand_density"),
        given.get("depth"),
        given.get("width"),
    );
    let safe = tension > pull * given.number("margin");
    let verdict = match safe {
        true => "safe: no gagger",
        false => "gagger: wet it with clay wash, hang it from a bar, short of the pattern",
    };
    Ok(vec![
        Answer::of("pull", pull).rounded_up(),
        Answer::words("verdict", verdict),
        Answer::number("times stronger", tension / pull),
    ])
}

fn face(given: &Given<'_>) -> Result<Face, Impossible> {
    let block = given.list::<Length>("block");
    if let [a, b, c] = block[..] {
        return Ok(match given.words("sides") {
            "below the joint" => Face::below_joint([a, b, c]),
            _ => Face::around_block([a, b, c]),
        });
    }
    match given.find("area") {
        Some(area) => Ok(Face {
            area,
            edges: given.find("edges").unwrap_or(Length::ZERO),
            corners: given.number("corners"),
        }),
        None => given.refuse(
            "block",
            "is not three sides",
            "write 80 mm, 60 mm, 18 mm, or give area and edges",
        ),
    }
}
