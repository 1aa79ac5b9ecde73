//! What lifts the cope, what holds it down, and who lifts the flask.

use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Force, Mass, Pressure};
use mould::clamp::{BOLT_HOLD, CLAMP_FORCE, bolt_hold, clamp_force, clamps_wanted, force_to_hold};
use mould::handling::{
    ARMS_LENGTH, FLASK_LOAD, LIFT_LIMIT, Lifting, SHANK_SHARE, TEAM_LIFT, arms_length, flask_load,
    lift_limit, people_wanted, shank_share, team_lift,
};
use mould::lift::{COPE_LIFT, CORE_LIFT, HOLD_DOWN, cope_lift, core_lift, hold_down, laid_on};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const LIQUID: Input = Input::of::<Density>("liquid_density", "ρ", "density of the liquid metal")
    .of_metal(Property::LiquidDensity);

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "cope-lift",
        question: "How hard does the metal lift the cope?",
        law: &COPE_LIFT,
        inputs: &[
            Input::of::<Area>("shadow", "A", "shadow of the cavity on the joint"),
            Input::of::<Length>("head", "H", "from the joint to the level in the basin"),
            Input::of::<Volume>(
                "above_joint",
                "V_above",
                "cavity above the joint, its cores with it",
            )
            .or("0 cm3", "common-practice"),
            Input::metal(),
            LIQUID,
        ],
        example: &[
            ("shadow", "117.5 cm2"),
            ("head", "100 mm"),
            ("metal", "gunmetal"),
        ],
        cautions: &[
            "Lay the weights on before the first drop: a lid that lifts lets metal run out.",
        ],
        work: |given| {
            let head = given.get("head");
            let above = given.get("above_joint");
            let force = cope_lift(
                given.get("liquid_density"),
                given.get("shadow"),
                head,
                above,
            );
            Ok(vec![Answer::of("force", force).rounded_up()])
        },
    },
    Reckoner {
        name: "core-lift",
        question: "How hard does a core float up?",
        law: &CORE_LIFT,
        inputs: &[
            Input::of::<Volume>("core", "V_core", "core that metal surrounds"),
            Input::metal(),
            Input::of::<Density>("liquid_density", "ρ_metal", "density of the liquid metal")
                .of_metal(Property::LiquidDensity),
            Input::of::<Density>("core_density", "ρ_core", "core sand")
                .or("1.6 g/cm3", "common-practice"),
        ],
        example: &[("core", "668 cm3"), ("metal", "silicon bronze")],
        cautions: &[],
        work: |given| {
            let (liquid, core): (Density, Density) =
                (given.get("liquid_density"), given.get("core_density"));
            if core > liquid {
                given.doubt("the core is heavier than the metal: it sinks");
            }
            let volume = given.get("core");
            let weightless = core_lift(volume, liquid, Density::ZERO);
            Ok(vec![
                Answer::of("force", core_lift(volume, liquid, core)).rounded_up(),
                Answer::of("displaced", weightless).rounded_up(),
            ])
        },
    },
    Reckoner {
        name: "cope-weight",
        question: "How much weight on the cope?",
        law: &HOLD_DOWN,
        inputs: &[
            Input::of::<Force>("lift", "", "lift of metal, runners and cores"),
            Input::number("surge", "", "how far the surge exceeds the metal at rest")
                .or("1.3 to 1.7, likely 1.5", "surge-factor-memory"),
            Input::of::<Mass>("cope", "m_cope", "rammed cope with its frame").optional(),
            Input::of::<Force>("cope_weight", "", "the same as a weight").optional(),
        ],
        example: &[("lift", "92 N"), ("cope", "9.6 kg")],
        cautions: &["Weights or clamps before the first drop; keep feet and face off the joint."],
        work: |given| {
            let surge = given.number("surge");
            if surge < 1.3 {
                given.doubt("a surge factor under 1.3 forgets the jerk when the mould is full");
            }
            let of_weight = given.find::<Force>("cope_weight").map(Force::held_by);
            let Some(cope) = given.find::<Mass>("cope").or(of_weight) else {
                return given.refuse("cope", "is not known", "weigh it, or reckon sand-to-fill");
            };
            let mass = hold_down(given.get("lift"), surge, cope);
            Ok(vec![
                Answer::of("mass", mass).rounded_up(),
                Answer::of("weight", mass.weight()).rounded_up(),
                Answer::of("lay on", laid_on(mass)).rounded_up(),
            ])
        },
    },
    Reckoner {
        name: "clamps",
        question: "How many clamps, and how hard does each pull?",
        law: &CLAMP_FORCE,
        inputs: &[
            Input::of::<Force>("lift", "F", "lift of metal, runners and cores"),
            SURGE_FACTOR,
            Input::of::<Mass>("cope", "m", "rammed cope with its frame")
                .or("0 kg", "common-practice"),
            Input::number("clamps", "n", "how many there are").or("4", "common-practice"),
            Input::of::<Force>("hold", "", "what one clamp is known to hold").optional(),
        ],
        example: &[("lift", "380 N"), ("cope", "22.8 kg"), ("hold", "200 N")],
        cautions: &["Clamps tight before the first drop; a wedge that works loose holds nothing."],
        work: clamped,
    },
    Reckoner {
        name: "bolt-hold",
        question: "What may a bolt through the flask lugs hold?",
        law: &BOLT_HOLD,
        inputs: &[
            Input::of::<Length>("diameter", "d", "nominal, of the thread"),
            Input::of::<Pressure>("allowed", "σ", "what the steel may bear")
                .or("60 MPa", "bolt-core-memory"),
        ],
        example: &[("diameter", "8 mm")],
        cautions: &["The lug and its screws in the wood give way long before the bolt: try them."],
        work: |given| {
            let hold = bolt_hold(given.get("diameter"), given.get("allowed"));
            Ok(vec![Answer::of("hold", hold).rounded_down()])
        },
    },
    Reckoner {
        name: "flask-load",
        question: "Can two people lift and roll this flask?",
        law: &FLASK_LOAD,
        inputs: &[
            Input::of::<Length>("length", "", "inside length"),
            Input::of::<Length>("width", "", "inside width"),
            Input::of::<Length>("depth", "", "of what is lifted: cope, drag or both"),
            Input::of::<Volume>("pattern", "V_pattern", "pattern in it")
                .or("0 cm3", "common-practice"),
            Input::of::<Mass>("frame", "m_frame", "frame, bars, board and irons on it"),
            Input::of::<Density>("sand_density", "ρ", "rammed sand")
                .or("1.5 to 1.7 g/cm3", "common-practice"),
            REACH,
            HEIGHT,
            TRAVEL,
        ],
        example: &[
            ("length", "420 mm"),
            ("width", "340 mm"),
            ("depth", "180 mm"),
            ("frame", "8 kg"),
        ],
        cautions: &[BACKS],
        work: carried,
    },
    Reckoner {
        name: "lift-limit",
        question: "What may one person lift?",
        law: &LIFT_LIMIT,
        inputs: &[
            Input::of::<Length>("reach", "r", "from the ankles to the hands"),
            Input::of::<Length>("height", "z", "of the hands at the start"),
            Input::of::<Length>("travel", "d", "how far it is lifted")
                .or("25 cm", "common-practice"),
        ],
        example: &[("reach", "40 cm"), ("height", "20 cm")],
        cautions: &[BACKS],
        work: |given| {
            let limit = lift_limit(&lifting(given));
            if limit <= Mass::ZERO {
                given.doubt("too far out or too high: the guideline allows nothing there");
            }
            Ok(vec![Answer::of("mass", limit).rounded_down()])
        },
    },
    Reckoner {
        name: "team-lift",
        question: "What may people lift together?",
        law: &TEAM_LIFT,
        inputs: &[
            Input::of::<Mass>(
                "one",
                "m_one",
                "what one of them may lift: reckon lift-limit",
            ),
            Input::number("people", "n", "one, two or three"),
        ],
        example: &[("one", "14 kg"), ("people", "2")],
        cautions: &[BACKS],
        work: |given| {
            let people = given.number("people").round() as u32;
            if !(1..=3).contains(&people) {
                return given.refuse("people", "one to three can lift as one", "take a hoist");
            }
            Ok(vec![
                Answer::of("mass", team_lift(given.get("one"), people)).rounded_down(),
            ])
        },
    },
    Reckoner {
        name: "shank-share",
        question: "What does each carrier of a shank bear?",
        law: &SHANK_SHARE,
        inputs: &[
            Input::of::<Mass>("load", "m", "crucible, ring and metal"),
            Input::of::<Mass>("shank", "m_shank", "the shank itself"),
            Input::of::<Length>("near", "a", "from this carrier to the crucible"),
            Input::of::<Length>("far", "b", "from the other carrier to the crucible"),
        ],
        example: &[
            ("load", "14 kg"),
            ("shank", "4 kg"),
            ("near", "700 mm"),
            ("far", "900 mm"),
        ],
        cautions: &[POURING],
        work: |given| {
            let (load, shank): (Mass, Mass) = (given.get("load"), given.get("shank"));
            let (near, far): (Length, Length) = (given.get("near"), given.get("far"));
            let this = shank_share(load, shank, near, far);
            let other = shank_share(load, shank, far, near);
            Ok(vec![
                Answer::of("this carrier", this.held_by()).rounded_up(),
                Answer::of("force on this carrier", this).rounded_up(),
                Answer::of("the other", other.held_by()).rounded_up(),
            ])
        },
    },
    Reckoner {
        name: "arms-length",
        question: "Can this crucible be held at arm's length?",
        law: &ARMS_LENGTH,
        inputs: &[
            Input::of::<Mass>("load", "m", "crucible, metal and tongs"),
            Input::of::<Length>("reach", "r", "from the ankles to the hands"),
            Input::of::<Length>("height", "z", "of the hands").or("75 cm", "common-practice"),
        ],
        example: &[("load", "6.5 kg"), ("reach", "50 cm"), ("height", "90 cm")],
        cautions: &[POURING],
        work: |given| {
            let (reach, height): (Length, Length) = (given.get("reach"), given.get("height"));
            let share = arms_length(given.get("load"), reach, height);
            if !share.is_finite() {
                let why = "is farther or higher than the guideline lets anyone hold a load";
                return given.refuse("reach", why, "shorten the reach, or carry it on a shank");
            }
            if share > 1.0 {
                given.doubt("more than may be held so: two on a shank, or a smaller crucible");
            }
            let moment = given.get::<Mass>("load").weight().as_n() * reach.as_m();
            Ok(vec![
                Answer::share("share of the limit", share),
                Answer::number("moment in N m", moment),
            ])
        },
    },
];

const SURGE_FACTOR: Input =
    Input::number("surge", "k", "how far the surge exceeds the metal at rest")
        .or("1.3 to 1.7, likely 1.5", "surge-factor-memory");

const REACH: Input =
    Input::of::<Length>("reach", "", "from the ankles to the hands").or("40 cm", "common-practice");
const HEIGHT: Input = Input::of::<Length>("height", "", "of the hands at the start: a bench 75 cm")
    .or("75 cm", "common-practice");
const TRAVEL: Input =
    Input::of::<Length>("travel", "", "how far it is lifted").or("25 cm", "common-practice");

const BACKS: &str = "A guideline for healthy backs, not a promise; local codes rule. Fingers out \
                     from under, feet clear, and turn it on a bench that takes the weight.";

const POURING: &str = "Try the whole lift cold, with sand in the crucible, boots and gear on. \
                       Nobody walks behind the carriers; if it falls, let it fall and get clear.";

fn lifting(given: &Given<'_>) -> Lifting {
    Lifting {
        reach: given.get("reach"),
        height: given.get("height"),
        travel: given.get("travel"),
    }
}

fn clamped(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let (lift, cope): (Force, Mass) = (given.get("lift"), given.get("cope"));
    let (surge, clamps) = (given.number("surge"), given.number("clamps"));
    if surge < 1.3 {
        given.doubt("a surge factor under 1.3 forgets the jerk when the mould is full");
    }
    if clamps < 2.0 {
        given.doubt("one clamp lets the far side gape: two at least, facing each other");
    }
    let all = force_to_hold(lift, surge, cope);
    let mut answers = vec![
        Answer::of("each", clamp_force(lift, surge, cope, clamps)).rounded_up(),
        Answer::of("all together", all).rounded_up(),
    ];
    if let Some(hold) = given.find::<Force>("hold") {
        answers.push(Answer::number("clamps wanted", clamps_wanted(all, hold)));
    }
    Ok(answers)
}

fn carried(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let (length, width): (Length, Length) = (given.get("length"), given.get("width"));
    let inside = length * width * given.get::<Length>("depth");
    let pattern: Volume = given.get("pattern");
    if pattern > inside {
        return given.refuse("pattern", "is larger than the flask", "check the units");
    }
    let load = flask_load(
        given.get("sand_density"),
        inside,
        pattern,
        given.get("frame"),
    );
    let one = lift_limit(&lifting(given));
    let verdict = match people_wanted(load, one) {
        Some(1) => "one person",
        Some(2) => "two people",
        Some(_) => "three people",
        None => "nobody by hand: a hoist, a smaller flask, or ram it where it is poured",
    };
    Ok(vec![
        Answer::of("mass", load).rounded_up(),
        Answer::words("who lifts it", verdict),
        Answer::of("two may lift", team_lift(one, 2)).rounded_down(),
        Answer::of("one may lift", one).rounded_down(),
        Answer::of("at one side, to roll it", load * 0.5).rounded_up(),
    ])
}
