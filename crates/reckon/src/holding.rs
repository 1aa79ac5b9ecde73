//! What lifts the cope and what holds it down.

use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Force, Mass};
use mould::lift::{COPE_LIFT, CORE_LIFT, HOLD_DOWN, cope_lift, core_lift, hold_down};

use crate::answer::Answer;
use crate::input::{Input, Property};
use crate::reckoner::Reckoner;

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
            Input::of::<Volume>("above_joint", "V_above", "metal above the joint")
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
            let force = core_lift(given.get("core"), liquid, core);
            Ok(vec![Answer::of("force", force).rounded_up()])
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
            ])
        },
    },
];
