//! How long a section takes to freeze.

use measure::flow::{Duration, FreezingConstant};
use measure::heat::{HeatDrawing, HeatPerMass, SpecificHeat, Temperature, TemperatureDifference};
use measure::matter::Density;
use mould::freezing::{
    FREEZING_TIME, FreezingHeat, MOULD_CONSTANT, constant_from_trial, freezing_time, mould_constant,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "freezing-time",
        question: "How long does a section take to freeze?",
        law: &FREEZING_TIME,
        inputs: &[
            Input::new("section", "M", "its modulus, or a plain body", Wanted::Body),
            Input::of::<FreezingConstant>("constant", "C", "mould constant")
                .optional()
                .narrowed_by("time one slab in your own sand"),
            Input::new("first", "", "a section that was timed", Wanted::Body).optional(),
            Input::of::<Duration>("first_time", "", "the time in which it froze").optional(),
        ],
        example: &[
            ("section", "plate 12 mm"),
            ("first", "plate 20 mm"),
            ("first_time", "5 min"),
        ],
        cautions: &[],
        work: |given| {
            let time = freezing_time(constant(given)?, given.get("section"));
            Ok(vec![Answer::of("time", time)])
        },
    },
    Reckoner {
        name: "mould-constant",
        question: "What is the mould constant of a metal in a sand?",
        law: &MOULD_CONSTANT,
        inputs: &[
            Input::metal(),
            Input::of::<Density>("density", "ρ", "metal at its freezing")
                .of_metal(Property::LiquidDensity),
            Input::of::<HeatPerMass>("latent", "L", "heat of freezing")
                .of_metal(Property::LatentHeat),
            Input::of::<SpecificHeat>("liquid", "c", "specific heat of the liquid")
                .of_metal(Property::LiquidHeat),
            Input::of::<TemperatureDifference>("superheat", "ΔT", "above the liquidus"),
            Input::of::<Temperature>("solidus", "T_s", "where the last metal freezes")
                .of_metal(Property::Solidus),
            Input::of::<HeatDrawing>("sand", "b", "how hard the sand drinks heat")
                .or(
                    "900 to 1300 Ws^0.5/m2K, likely 1080 Ws^0.5/m2K",
                    "feeder-lecture",
                )
                .narrowed_by("time one slab in your own sand"),
        ],
        example: &[("metal", "A356"), ("superheat", "90 K")],
        cautions: &[],
        work: |given| {
            let heat = FreezingHeat {
                density: given.get("density"),
                latent: given.get("latent"),
                liquid_heat: given.get("liquid"),
                superheat: given.get("superheat"),
                solidus: given.get("solidus"),
                sand: given.get("sand"),
            };
            Ok(vec![Answer::of("constant", mould_constant(&heat))])
        },
    },
];

/// The constant itself, or that of a mould in which a first section froze in a known time.
fn constant(given: &Given<'_>) -> Result<FreezingConstant, Impossible> {
    match (
        given.find("constant"),
        given.find("first"),
        given.find("first_time"),
    ) {
        (Some(constant), None, None) => Ok(constant),
        (None, Some(first), Some(time)) => Ok(constant_from_trial(first, time)),
        _ => given.refuse(
            "constant",
            "is one way, a first section with the time it took the other",
            "give one of the two",
        ),
    }
}
