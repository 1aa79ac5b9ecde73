//! Basin, lip, sprue and traps.

use measure::flow::{Duration, Flow};
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass, Pressure};
use mould::gating::aspiration::{
    FREE_JET, SPRUE_PRESSURE, StraightSprue, jet_area, lowest_pressure,
};
use mould::gating::basin::{
    BASIN_DEPTH, BASIN_LASTS, ENTRY_RADIUS, LIP_RATE, basin_depth, basin_lasts, ladle_lasts,
    lip_flow, lip_metal,
};
use mould::gating::slag_trap::{
    FIRST_METAL, RUN_OFF, SPRUE_WELL, first_metal, run_off, sprue_well,
};
use mould::gating::sprue::diameter_of;

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const LIQUID: Input = Input::of::<Density>("liquid_density", "ρ", "density of the liquid metal")
    .of_metal(Property::LiquidDensity);

const DISCHARGE: Input = Input::number(
    "discharge",
    "C",
    "what bends and gates let through of an ideal stream",
)
.or("0.73 to 0.9, likely 0.8", "gating-slides");

pub(super) const JET: Reckoner = Reckoner {
    name: "free-jet",
    question: "How thin is a falling stream of metal?",
    law: &FREE_JET,
    inputs: &[
        Input::of::<Area>("above", "A₀", "area where the metal above is known"),
        Input::of::<Length>("metal_above", "h₀", "metal above that place"),
        Input::of::<Length>("below", "z", "how far below it"),
    ],
    example: &[
        ("above", "300 mm2"),
        ("metal_above", "40 mm"),
        ("below", "100 mm"),
    ],
    cautions: &[],
    work: |given| {
        let area = jet_area(
            given.get("above"),
            given.get("metal_above"),
            given.get("below"),
        );
        Ok(vec![
            Answer::of("area", area),
            Answer::of("diameter", diameter_of(area)),
        ])
    },
};

pub(super) const SUCTION: Reckoner = Reckoner {
    name: "sprue-pressure",
    question: "Does this sprue draw air?",
    law: &SPRUE_PRESSURE,
    inputs: &[
        Input::of::<Length>("top", "", "diameter of the sprue at its top"),
        Input::of::<Length>(
            "foot",
            "",
            "diameter at its foot; the same for a straight sprue",
        ),
        Input::of::<Length>("basin", "h", "metal in the basin above the sprue"),
        Input::of::<Length>("height", "", "length of the sprue"),
        Input::of::<Flow>("flow", "Q", "metal that runs through: reckon lip-rate"),
        Input::metal(),
        LIQUID,
    ],
    example: &[
        ("top", "15 mm"),
        ("foot", "15 mm"),
        ("basin", "40 mm"),
        ("height", "100 mm"),
        ("flow", "0.29 l/s"),
        ("metal", "A356"),
    ],
    cautions: &[],
    work: |given| {
        let sprue = StraightSprue {
            top: given.get("top"),
            foot: given.get("foot"),
            basin: given.get("basin"),
            height: given.get("height"),
        };
        let lowest = lowest_pressure(given.get("liquid_density"), &sprue, given.get("flow"));
        let verdict = match lowest < Pressure::ZERO {
            true => "draws air: narrow the foot or deepen the basin",
            false => "runs full",
        };
        let suction = (Pressure::ZERO - lowest).max(Pressure::ZERO);
        Ok(vec![
            Answer::of("suction", suction).rounded_up(),
            Answer::words("verdict", verdict),
        ])
    },
};

pub(super) const LIP: Reckoner = Reckoner {
    name: "lip-rate",
    question: "How fast must be poured to keep the basin full?",
    law: &LIP_RATE,
    inputs: &[
        Input::of::<Area>("choke", "A", "area of the choke"),
        Input::of::<Length>("head", "H", "from the choke to the level in the basin"),
        Input::metal(),
        LIQUID,
        DISCHARGE,
        Input::of::<Mass>("ladle", "", "metal in the ladle or crucible").optional(),
    ],
    example: &[
        ("choke", "125 mm2"),
        ("head", "100 mm"),
        ("metal", "gunmetal"),
        ("ladle", "4.2 kg"),
    ],
    cautions: &[
        "Pour from the nearest a boot can stand; never lean over the basin.",
        "A stream that stops draws air and may spit: keep the basin full to the end.",
    ],
    work: |given| {
        let flow = lip_flow(given.get("choke"), discharge(given)?, given.get("head"));
        let liquid: Density = given.get("liquid_density");
        let mut answers = vec![
            Answer::of(
                "each second",
                lip_metal(flow, liquid, Duration::from_s(1.0)),
            ),
            Answer::of("flow", flow),
            Answer::of(
                "each kilogram in",
                ladle_lasts(Mass::from_kg(1.0), liquid, flow),
            ),
        ];
        if let Some(ladle) = given.find::<Mass>("ladle") {
            answers.push(Answer::of(
                "ladle empty in",
                ladle_lasts(ladle, liquid, flow),
            ));
        }
        Ok(answers)
    },
};

pub(super) const DEPTH: Reckoner = Reckoner {
    name: "basin-depth",
    question: "How deep is the basin over the sprue?",
    law: &BASIN_DEPTH,
    inputs: &[Input::of::<Length>(
        "sprue_top",
        "d_top",
        "diameter of the sprue at its top",
    )],
    example: &[("sprue_top", "18 mm")],
    cautions: &[],
    work: |given| {
        let depth = basin_depth(given.get("sprue_top"));
        Ok(vec![
            Answer::of("depth", depth).rounded_up(),
            Answer::of("entry radius", ENTRY_RADIUS).rounded_up(),
        ])
    },
};

pub(super) const STUTTER: Reckoner = Reckoner {
    name: "basin-lasts",
    question: "How long does the basin last when the pour stutters?",
    law: &BASIN_LASTS,
    inputs: &[
        Input::of::<Area>("basin", "A_b", "basin seen from above"),
        Input::of::<Area>("choke", "A", "area of the choke"),
        Input::of::<Length>("head", "H", "from the choke to the level in the full basin"),
        Input::of::<Length>(
            "spare",
            "h",
            "how far the metal may sink before the sprue mouth is bare",
        ),
        DISCHARGE,
    ],
    example: &[
        ("basin", "30 cm2"),
        ("choke", "125 mm2"),
        ("head", "100 mm"),
        ("spare", "20 mm"),
    ],
    cautions: &[],
    work: |given| {
        let (head, spare): (Length, Length) = (given.get("head"), given.get("spare"));
        if spare > head {
            let advice = "measure both from the level in the full basin";
            return given.refuse("spare", "is more than the whole head", advice);
        }
        let discharge = discharge(given)?;
        let lasts = basin_lasts(
            given.get("basin"),
            given.get("choke"),
            discharge,
            head,
            spare,
        );
        Ok(vec![Answer::of("time", lasts).rounded_down()])
    },
};

pub(super) const FIRST: Reckoner = Reckoner {
    name: "first-metal",
    question: "How much room does the first, cold and dirty metal want?",
    law: &FIRST_METAL,
    inputs: &[
        Input::of::<Mass>("poured", "m", "all metal poured"),
        Input::metal(),
        LIQUID,
        Input::share("share", "s", "part of it that is to be caught").or("5 %", "common-practice"),
    ],
    example: &[("poured", "4.2 kg"), ("metal", "gunmetal")],
    cautions: &[],
    work: |given| {
        let volume = first_metal(
            given.get("poured"),
            given.get("liquid_density"),
            given.number("share"),
        );
        Ok(vec![Answer::of("volume", volume).rounded_up()])
    },
};

pub(super) const PAST_LAST_GATE: Reckoner = Reckoner {
    name: "run-off",
    question: "How far does the runner go on past the last gate?",
    law: &RUN_OFF,
    inputs: &[
        Input::of::<Volume>(
            "first_metal",
            "V",
            "room for the first metal: reckon first-metal",
        ),
        Input::of::<Area>("runner", "A_runner", "area of the runner"),
    ],
    example: &[("first_metal", "26 cm3"), ("runner", "250 mm2")],
    cautions: &[],
    work: |given| {
        let length = run_off(given.get("first_metal"), given.get("runner"));
        Ok(vec![Answer::of("length", length).rounded_up()])
    },
};

pub(super) const WELL: Reckoner = Reckoner {
    name: "sprue-well",
    question: "How large is the well under the sprue?",
    law: &SPRUE_WELL,
    inputs: &[
        Input::of::<Area>("foot", "A_foot", "area of the sprue at its foot"),
        Input::of::<Length>("runner_depth", "d_runner", "depth of the runner"),
    ],
    example: &[("foot", "125 mm2"), ("runner_depth", "14 mm")],
    cautions: &[],
    work: |given| {
        let well = sprue_well(given.get("foot"), given.get("runner_depth"));
        Ok(vec![
            Answer::of("area", well.area),
            Answer::of("diameter", diameter_of(well.area)),
            Answer::of("depth", well.depth),
        ])
    },
};

fn discharge(given: &Given<'_>) -> Result<f64, Impossible> {
    let discharge = given.number("discharge");
    if discharge > 0.0 && discharge <= 1.0 {
        return Ok(discharge);
    }
    given.refuse(
        "discharge",
        "is a part of an ideal stream",
        "give a number above 0 and up to 1",
    )
}
