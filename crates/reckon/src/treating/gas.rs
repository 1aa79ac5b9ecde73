//! Gas in aluminium: damp, hydrogen, and what two cups tell.

use measure::flow::Duration;
use measure::heat::Temperature;
use measure::matter::{Density, Pressure};
use metal::hydrogen::{
    DENSITY_INDEX, DISSOLVED, FROM_PERMEATION, Fire, GasRisk, Measured, SOLUBILITY, VAPOUR_IN_AIR,
    density_index, dissolved, from_permeation, solubility, vapour_in_air, vapour_over,
};

use super::DRY;
use crate::answer::Answer;
use crate::given::Given;
use crate::input::Input;
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const AIR: Input = Input::of::<Temperature>("air", "T", "the air of the shop");

const AIR_PLAIN: Input = Input::of::<Temperature>("air", "", "the air of the shop");

const HUMIDITY: Input = Input::share("humidity", "φ", "relative humidity");

const HUMIDITY_PLAIN: Input = Input::share("humidity", "", "relative humidity");

/// Water in the air over the pot.
pub(super) const DAMP: Reckoner = Reckoner {
    name: "vapour-in-air",
    question: "How much water is in the air over the pot?",
    law: &VAPOUR_IN_AIR,
    inputs: &[AIR, HUMIDITY],
    example: &[("air", "28 C"), ("humidity", "85 %")],
    cautions: &[],
    work: |given| {
        let (air, humidity) = (given.get("air"), given.number("humidity"));
        Ok(vec![Answer::of("pressure", vapour_in_air(air, humidity))])
    },
};

/// Hydrogen that liquid aluminium can hold.
pub(super) const HELD: Reckoner = Reckoner {
    name: "hydrogen-solubility",
    question: "How much hydrogen can liquid aluminium hold?",
    law: &SOLUBILITY,
    inputs: &[
        Input::of::<Temperature>("temperature", "T", "the metal"),
        Input::choice(
            "by",
            "whose measurement",
            &["assessed", "ransley", "later", "quenched"],
        )
        .or("assessed", "hydrogen-assessment-1988"),
    ],
    example: &[("temperature", "700 C")],
    cautions: &[],
    work: |given| {
        let at = aluminium_hot(given)?;
        let who = Measured::named(given.words("by")).unwrap_or(Measured::Assessed);
        let all = Measured::ALL.map(|who| solubility(at, who));
        let (low, high) = (
            all.iter().copied().fold(f64::MAX, f64::min),
            all.iter().copied().fold(0.0, f64::max),
        );
        Ok(vec![
            Answer::number("cm3 per 100 g", solubility(at, who)).from_to(low, high),
        ])
    },
};

/// Hydrogen held, from how it seeps through.
pub(super) const SEEPING: Reckoner = Reckoner {
    name: "hydrogen-by-permeation",
    question: "How much hydrogen does a metal hold, from how it seeps through?",
    law: &FROM_PERMEATION,
    inputs: &[
        Input::number("permeation", "P", "in cm²/(s atm^½)"),
        Input::number("diffusion", "D", "in cm²/s"),
        Input::of::<Density>("density", "ρ", "density of the liquid"),
    ],
    example: &[
        ("permeation", "0.000027"),
        ("diffusion", "0.001365"),
        ("density", "2.36 g/cm3"),
    ],
    cautions: &[],
    work: |given| {
        let held = from_permeation(
            given.number("permeation"),
            given.number("diffusion"),
            given.get("density"),
        );
        Ok(vec![Answer::number("cm3 per 100 g", held)])
    },
};

/// Hydrogen taken up, and pinholes.
pub(super) const PINHOLES: Reckoner = Reckoner {
    name: "gas-in-aluminium",
    question: "How likely are pinholes, by damp, fire, heat and minutes?",
    law: &DISSOLVED,
    inputs: &[
        Input::of::<Temperature>("temperature", "", "the metal"),
        Input::of::<Duration>("standing", "t", "minutes liquid, until it is poured"),
        AIR_PLAIN,
        HUMIDITY_PLAIN,
        Input::choice(
            "fire",
            "what burns under the pot",
            &["electric", "charcoal", "oil", "gas"],
        ),
        Input::of::<Duration>("pace", "τ", "time in which two thirds of it is taken up")
            .or("15 to 60 min, likely 30 min", "common-practice"),
    ],
    example: &[
        ("temperature", "740 C"),
        ("standing", "5 to 20 min"),
        ("air", "28 C"),
        ("humidity", "85 %"),
        ("fire", "charcoal"),
    ],
    cautions: &[DRY],
    work: gas,
};

/// Gas by two cups.
pub(super) const TWO_CUPS: Reckoner = Reckoner {
    name: "density-index",
    question: "How gassy is the melt, by two cups?",
    law: &DENSITY_INDEX,
    inputs: &[
        Input::of::<Density>("air", "ρ_1", "the cup frozen in air")
            .narrowed_by("weigh it in water on a finer scale"),
        Input::of::<Density>("vacuum", "ρ_2", "the cup frozen in a vacuum")
            .narrowed_by("weigh it in water on a finer scale"),
    ],
    example: &[("air", "2.693 g/cm3"), ("vacuum", "2.385 g/cm3")],
    cautions: &["Cups warm and dry; under a vacuum a gassy cup froths over: goggles."],
    work: |given| {
        let (air, vacuum): (Density, Density) = (given.get("air"), given.get("vacuum"));
        if air <= Density::ZERO || vacuum > air * 1.05 {
            return given.refuse("vacuum", "is denser than the cup in air", "cups mixed up?");
        }
        let index = density_index(air, vacuum);
        if index < 0.0 {
            given.doubt("below nought: the weighing is not good enough");
        }
        let verdict = match index {
            index if index < 0.01 => "clean: little gas, few oxides",
            index if index < 0.04 => "common: good enough for most sand castings",
            _ => "gassy or full of oxides: degas, or let it stand and skim",
        };
        Ok(vec![
            Answer::share("index", index),
            Answer::words("melt", verdict),
        ])
    },
};

fn gas(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let at = aluminium_hot(given)?;
    let fire = match given.words("fire") {
        "charcoal" => Fire::Charcoal,
        "oil" => Fire::Oil,
        "gas" => Fire::Gas,
        _ => Fire::Electric,
    };
    let pace: Duration = given.get("pace");
    if pace <= Duration::ZERO {
        return given.refuse("pace", "is nought", "give a time, like 30 min");
    }
    let air = vapour_in_air(given.get("air"), given.number("humidity"));
    let (least, most) = vapour_over(air, fire);
    let amount = |vapour: Pressure, who: Measured| {
        dissolved(solubility(at, who), vapour, given.get("standing"), pace)
    };
    let middle = least * 0.5 + most * 0.5;
    let likely = amount(middle, Measured::Assessed);
    let (low, high) = (
        amount(least, Measured::Quenched),
        amount(most, Measured::Later),
    );
    Ok(vec![
        Answer::number("cm3 per 100 g", likely)
            .from_to(low, high)
            .rounded_up(),
        Answer::words("pinholes", GasRisk::of(likely).words()),
    ])
}

fn aluminium_hot(given: &Given<'_>) -> Result<Temperature, Impossible> {
    let at: Temperature = given.get("temperature");
    if at < Temperature::from_celsius(570.0) {
        return given.refuse(
            "temperature",
            "is below where aluminium is liquid",
            "give the melt's",
        );
    }
    if at > Temperature::from_celsius(850.0) {
        given.doubt("above 850 °C nothing was measured, and the skin burns");
    }
    Ok(at)
}
