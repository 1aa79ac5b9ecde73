//! Binder in grams and in per cent, and what a bottle of silicate holds.

use measure::length::Volume;
use measure::matter::{Density, Mass};
use sand::binder::{
    BINDER_FOR_SAND, CARBON_DIOXIDE, LIQUID_SHARE, SILICATE_SOLIDS, SOLIDS_ON_SAND,
    binder_for_sand, carbon_dioxide, liquid_share, silicate_solids, solids_on_sand,
};

use super::above_nought;
use crate::answer::Answer;
use crate::input::Input;
use crate::reckoner::Reckoner;

const DRY_SAND: Input = Input::of::<Mass>("sand", "m", "dry sand");

const LYE: &str = "Silicate is lye: gloves and goggles, and water at hand for the eyes.";

/// Most gas blown through, in multiples of what is bound: `shop-handbook-figures`.
const BLOWN_THROUGH: f64 = 10.0;

/// Share of a liquid binder.
pub(super) const OF_LIQUID: Reckoner = Reckoner {
    name: "binder-share",
    question: "How many per cent is the binder I pour in?",
    law: &LIQUID_SHARE,
    inputs: &[
        Input::of::<Volume>("binder", "V", "binder poured in"),
        Input::of::<Density>(
            "density",
            "ρ",
            "density of the binder; silicate about 1.4 g/ml",
        )
        .narrowed_by("weigh 100 ml of it"),
        DRY_SAND,
    ],
    example: &[
        ("binder", "10 ml"),
        ("density", "1.4 g/ml"),
        ("sand", "500 g"),
    ],
    cautions: &[LYE],
    work: |given| {
        let sand: Mass = given.get("sand");
        if sand <= Mass::ZERO {
            return given.refuse("sand", "weighs nothing", "weigh the sand");
        }
        let (binder, density): (Volume, Density) = (given.get("binder"), given.get("density"));
        Ok(vec![
            Answer::share("of the dry sand", liquid_share(binder, density, sand)),
            Answer::of("binder", density * binder),
        ])
    },
};

/// Binder for sand.
pub(super) const FOR_SAND: Reckoner = Reckoner {
    name: "binder-for-sand",
    question: "How many grams of binder for this much sand?",
    law: &BINDER_FOR_SAND,
    inputs: &[
        Input::share(
            "share",
            "b",
            "binder of the dry sand; silicate runs from 1.1 to 6 %",
        ),
        DRY_SAND,
        Input::of::<Density>("density", "", "density of a liquid binder").optional(),
    ],
    example: &[("share", "1.1 to 6 %"), ("sand", "336 g")],
    cautions: &[LYE],
    work: |given| {
        above_nought(given, &["share"])?;
        let binder = binder_for_sand(given.number("share"), given.get("sand"));
        let mut answers = vec![Answer::of("binder", binder)];
        if let Some(density) = given.find::<Density>("density") {
            answers.push(Answer::of("by volume", Volume::filled_by(binder, density)));
        }
        Ok(answers)
    },
};

/// Solids of a silicate.
pub(super) const OF_BOTTLE: Reckoner = Reckoner {
    name: "silicate-solids",
    question: "How much solid is in this bottle of silicate?",
    law: &SILICATE_SOLIDS,
    inputs: &[
        Input::share("soda", "x_soda", "soda, Na2O, on the bottle"),
        Input::share("silica", "x_silica", "silica, SiO2, on the bottle"),
    ],
    example: &[("soda", "8.9 %"), ("silica", "28.7 %")],
    cautions: &[LYE],
    work: |given| {
        above_nought(given, &["soda", "silica"])?;
        let (soda, silica) = (given.number("soda"), given.number("silica"));
        let solids = silicate_solids(soda, silica);
        if solids > 1.0 {
            return given.refuse(
                "silica",
                "and soda are more than the whole",
                "read the bottle",
            );
        }
        let mut answers = vec![Answer::share("solids", solids)];
        if soda > 0.0 {
            answers.push(Answer::number("ratio", silica / soda));
        }
        Ok(answers)
    },
};

/// Solids on the sand.
pub(super) const ON_SAND: Reckoner = Reckoner {
    name: "silicate-on-sand",
    question: "How much solid silicate does a dose leave on the sand?",
    law: &SOLIDS_ON_SAND,
    inputs: &[
        Input::share("share", "b", "liquid silicate of the dry sand"),
        Input::share(
            "solids",
            "S",
            "solids of the liquid: reckon silicate-solids",
        ),
    ],
    example: &[("share", "6.5 %"), ("solids", "37.6 %")],
    cautions: &[],
    work: |given| {
        above_nought(given, &["share", "solids"])?;
        let solids = solids_on_sand(given.number("share"), given.number("solids"));
        Ok(vec![Answer::share("of the dry sand", solids)])
    },
};

/// Gas for a silicate.
pub(super) const GAS: Reckoner = Reckoner {
    name: "gas-for-silicate",
    question: "How much carbon dioxide does a silicate bind?",
    law: &CARBON_DIOXIDE,
    inputs: &[
        Input::of::<Mass>("liquid", "m_liquid", "liquid silicate in the cores"),
        Input::share("soda", "x_soda", "soda, Na2O, on the bottle")
            .or("8.9 %", "silicate-grades-page"),
    ],
    example: &[("liquid", "100 g")],
    cautions: &[
        "Carbon dioxide is heavier than air and is not smelt: gas cores outdoors, never in a pit \
         or a closed room.",
    ],
    work: |given| {
        above_nought(given, &["soda"])?;
        let bound = carbon_dioxide(given.get("liquid"), given.number("soda"));
        given.doubt("two to ten times as much is blown through; too much makes the core crumble");
        Ok(vec![
            Answer::of("bound", bound),
            Answer::of("to have ready", bound * BLOWN_THROUGH).rounded_up(),
        ])
    },
};
