//! How far metal runs in a thin wall.

use measure::flow::Speed;
use measure::heat::{HeatPerMass, SpecificHeat, Temperature, TemperatureDifference};
use measure::length::Length;
use measure::matter::Density;
use mould::gating::reach::{
    IRON_FLUIDITY, LEAST_REACHING_WALL, MISRUN_CHANCE, RunningMetal, WALL_REACH, iron_fluidity,
    least_wall, misrun_chance, wall_reach,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const POURING: Input =
    Input::of::<Temperature>("pouring", "", "of the metal as it enters the mould");
const LIQUIDUS: Input =
    Input::of::<Temperature>("liquidus", "T_m", "where the first metal freezes")
        .of_metal(Property::Liquidus);
const LATENT: Input =
    Input::of::<HeatPerMass>("latent", "L", "heat of freezing").of_metal(Property::LatentHeat);
const HEAT: Input = Input::of::<SpecificHeat>("liquid_heat", "c", "specific heat of the liquid")
    .of_metal(Property::LiquidHeat);
const LIQUID: Input = Input::of::<Density>("liquid_density", "ρ", "density of the liquid metal")
    .of_metal(Property::LiquidDensity);
const SPEED: Input = Input::of::<Speed>("speed", "v", "of the front in the wall")
    .or("0.25 to 0.5 m/s, likely 0.4 m/s", "common-practice");
const FROZEN: Input = Input::number(
    "frozen",
    "f",
    "part that may be frozen before it stops: 0.5 to 1 as a skin, 0.2 to 0.5 as mush",
)
.or("0.2 to 0.5, likely 0.35", "flemings-1974");
const FILM: Input = Input::number("film", "h", "heat passing from metal to sand, W/m²K")
    .or("700 to 2200, likely 1200", "carslaw-jaeger-1959")
    .narrowed_by("pour one strip of the wall in question and measure how far it ran");
const SAND: Input = Input::of::<Temperature>("sand", "T_0", "of the sand before the pour")
    .or("20 C", "common-practice");

pub(super) const REACH: Reckoner = Reckoner {
    name: "wall-reach",
    question: "How far does the metal run in this wall before it stops?",
    law: &WALL_REACH,
    inputs: &[
        Input::of::<Length>("wall", "", "thickness of the wall"),
        POURING,
        Input::metal(),
        LIQUIDUS,
        LATENT,
        HEAT,
        LIQUID,
        SPEED,
        FROZEN,
        FILM,
        SAND,
        Input::of::<Length>("path", "", "how far it has to run").optional(),
    ],
    example: &[
        ("wall", "3 mm"),
        ("pouring", "720 C"),
        ("metal", "A356"),
        ("path", "150 mm"),
    ],
    cautions: &["Hotter metal runs farther and gives more gas and fume: lengthen the gate first."],
    work: |given| {
        let wall = given.get("wall");
        doubt_thin(given, wall);
        let reach = wall_reach(wall, &running(given)?);
        if given
            .find::<Length>("path")
            .is_some_and(|path| path > reach)
        {
            given.doubt("at one end of the band the path is longer than the reach: it may misrun");
        }
        Ok(vec![Answer::of("reach", reach).rounded_down()])
    },
};

pub(super) const LEAST: Reckoner = Reckoner {
    name: "least-reaching-wall",
    question: "How thin may a wall be that has to run this far?",
    law: &LEAST_REACHING_WALL,
    inputs: &[
        Input::of::<Length>("path", "x", "how far it has to run"),
        POURING,
        Input::metal(),
        LIQUIDUS,
        LATENT,
        HEAT,
        LIQUID,
        SPEED,
        FROZEN,
        FILM,
        SAND,
    ],
    example: &[("path", "100 mm"), ("pouring", "720 C"), ("metal", "A356")],
    cautions: &[],
    work: |given| {
        let wall = least_wall(given.get("path"), &running(given)?);
        doubt_thin(given, wall);
        Ok(vec![Answer::of("wall", wall).rounded_up()])
    },
};

pub(super) const MISRUN: Reckoner = Reckoner {
    name: "misrun-chance",
    question: "How likely is it that this path does not run full?",
    law: &MISRUN_CHANCE,
    inputs: &[
        Input::of::<Length>("path", "x", "how far it has to run"),
        Input::of::<Length>("reach", "L_f", "how far it likely runs: reckon wall-reach"),
        Input::number("off", "k", "how many times the reach may be off").or("3", "common-practice"),
    ],
    example: &[("path", "150 mm"), ("reach", "180 mm")],
    cautions: &[],
    work: |given| {
        let off = given.number("off");
        if off.is_nan() || off <= 1.0 {
            return given.refuse(
                "off",
                "says how far the reach may be off",
                "give a number above 1",
            );
        }
        let chance = misrun_chance(given.get("path"), given.get("reach"), off);
        Ok(vec![Answer::share("chance", chance).rounded_up()])
    },
};

pub(super) const SPIRAL: Reckoner = Reckoner {
    name: "iron-fluidity",
    question: "How far does this grey iron run in the spiral?",
    law: &IRON_FLUIDITY,
    inputs: &[
        Input::share("carbon", "C", "carbon"),
        Input::share("silicon", "Si", "silicon"),
        Input::share("phosphorus", "P", "phosphorus").or("0.1 %", "common-practice"),
        Input::of::<Temperature>("pouring", "t", "of the iron as it is poured"),
    ],
    example: &[
        ("carbon", "3.4 %"),
        ("silicon", "2 %"),
        ("pouring", "1380 C"),
    ],
    cautions: &[],
    work: |given| {
        let [carbon, silicon, phosphorus] =
            ["carbon", "silicon", "phosphorus"].map(|key| given.number(key));
        let fluidity = iron_fluidity(carbon, silicon, phosphorus, given.get("pouring"));
        if fluidity <= Length::ZERO {
            given.doubt("the rule says that this does not run at all: too cold or too lean");
        }
        Ok(vec![Answer::of("fluidity", fluidity)])
    },
};

/// Thinnest wall that handbooks call a sand casting in any metal but zinc.
const LEAST_SAND_CAST: Length = Length::from_mm(3.0);

fn doubt_thin(given: &Given<'_>, wall: Length) {
    if wall < LEAST_SAND_CAST {
        given.doubt(
            "under 3 mm handbooks call no wall a sand casting, zinc apart: heat alone would let it \
             run, skin and surface tension may not",
        );
    }
}

fn running(given: &Given<'_>) -> Result<RunningMetal, Impossible> {
    let (pouring, liquidus): (Temperature, Temperature) =
        (given.get("pouring"), given.get("liquidus"));
    let sand: Temperature = given.get("sand");
    let superheat = pouring - liquidus;
    if superheat <= TemperatureDifference::ZERO {
        let advice = "heat it above the liquidus, and more for the way to the mould";
        return given.refuse("pouring", "is not above the liquidus: nothing runs", advice);
    }
    if sand >= liquidus {
        return given.refuse(
            "sand",
            "is hotter than the metal freezes",
            "give the sand as it lies",
        );
    }
    let frozen_at_stop = given.number("frozen");
    if !(0.0..=1.0).contains(&frozen_at_stop) {
        return given.refuse(
            "frozen",
            "is a part of the metal",
            "give a number from 0 to 1",
        );
    }
    let film_w_per_m2_k = given.number("film");
    if film_w_per_m2_k.is_nan() || film_w_per_m2_k <= 0.0 {
        return given.refuse("film", "passes no heat", "give a number above nought");
    }
    Ok(RunningMetal {
        liquid: given.get("liquid_density"),
        latent: given.get("latent"),
        liquid_heat: given.get("liquid_heat"),
        superheat,
        above_sand: liquidus - sand,
        speed: given.get("speed"),
        frozen_at_stop,
        film_w_per_m2_k,
    })
}
