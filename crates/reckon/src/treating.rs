//! Gas, zinc, losses, and what is put into the melt.

use measure::flow::Duration;
use measure::heat::Temperature;
use measure::length::{Area, Length};
use measure::matter::{Density, Mass, Pressure};
use metal::furnace::Furnace;
use metal::hydrogen::{
    ATMOSPHERE, DENSITY_INDEX, DISSOLVED, FROM_PERMEATION, Fire, GasRisk, Measured, SOLUBILITY,
    VAPOUR_IN_AIR, density_index, dissolved, from_permeation, solubility, vapour_in_air,
    vapour_over,
};
use metal::loss::{MELT_LOSS, clean_loss, form, holding, melt_loss};
use metal::treatment::{DOSE, NOT_WORTH_IT, all, dose, named};
use metal::zinc::{
    CARRIED_OFF_M_PER_S, FLARE, LOST, Pot, VAPOUR, VAPOUR_OVER_BRASS, flare, lost, vapour,
    vapour_over_brass,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// Said wherever zinc smokes.
const ZINC: &str = "Zinc fume gives metal fume fever: outdoors or under a hood, upwind, with a fume \
                    respirator (P3 or P100), always.";

/// Said wherever something is put into liquid metal.
const DRY: &str = "Everything that goes into liquid metal is dry and warm, or it spits.";

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "melt-loss",
        question: "How much of the charge is lost in the melt?",
        law: &MELT_LOSS,
        inputs: &[
            Input::metal(),
            Input::choice(
                "furnace",
                "what it is melted in",
                &["fuel", "electric", "induction", "cupola"],
            )
            .or("fuel", "common-practice"),
            Input::choice(
                "form",
                "how the stock comes",
                &["ingot", "heavy", "thin", "swarf", "cans"],
            ),
            Input::of::<Duration>("standing", "t", "minutes liquid beyond need")
                .or("0 to 15 min, likely 5 min", "common-practice"),
        ],
        example: &[("metal", "A356"), ("form", "cans"), ("standing", "10 min")],
        cautions: &[
            DRY,
            "Swarf and cans hold oil and water: dry them, feed them under the skin.",
        ],
        work: loss,
    },
    Reckoner {
        name: "zinc-vapour",
        question: "How hard does pure zinc push to boil?",
        law: &VAPOUR,
        inputs: &[TEMPERATURE],
        example: &[("temperature", "907 C")],
        cautions: &[ZINC],
        work: |given| {
            let at = zinc_hot(given)?;
            Ok(vec![Answer::of("pressure", vapour(at))])
        },
    },
    Reckoner {
        name: "zinc-over-brass",
        question: "How hard does the zinc in brass push to boil?",
        law: &VAPOUR_OVER_BRASS,
        inputs: &[ZINC_SHARE, TEMPERATURE],
        example: &[("zinc", "37 %"), ("temperature", "1000 C")],
        cautions: &[ZINC],
        work: |given| {
            let (zinc, at) = (zinc_share(given)?, zinc_hot(given)?);
            let pressure = vapour_over_brass(zinc, at);
            if pressure > ATMOSPHERE {
                given.doubt("above one atmosphere: it boils and flares");
            }
            Ok(vec![Answer::of("pressure", pressure)])
        },
    },
    Reckoner {
        name: "zinc-flare",
        question: "At what heat does this brass boil and flare?",
        law: &FLARE,
        inputs: &[Input::share("zinc", "w", "zinc in the brass")],
        example: &[("zinc", "35 to 40 %")],
        cautions: &[ZINC],
        work: |given| {
            let zinc = zinc_share(given)?;
            let Some(at) = flare(zinc) else {
                return given.refuse("zinc", "is too little to boil", "it only smokes");
            };
            given.doubt("it smokes from some 150 K below: white fume is the sign to stop heating");
            let off = measure::heat::TemperatureDifference::from_kelvin(30.0);
            let answer = Answer::temperature("flare", at).between(at - off, at + off);
            Ok(vec![answer])
        },
    },
    Reckoner {
        name: "zinc-lost",
        question: "How much zinc goes up in smoke, and do I replace it?",
        law: &LOST,
        inputs: &[
            ZINC_SHARE,
            TEMPERATURE,
            Input::of::<Length>("pot", "", "across the open metal"),
            Input::of::<Duration>(
                "standing",
                "t",
                "minutes at that heat, skimming and pouring too",
            ),
            Input::of::<Mass>("charge", "", "the charge, to see what share it is").optional(),
        ],
        example: &[
            ("zinc", "37 %"),
            ("temperature", "1030 C"),
            ("pot", "100 mm"),
            ("standing", "10 to 15 min"),
            ("charge", "6 kg"),
        ],
        cautions: &[
            ZINC,
            "Zinc is added warm and dry, pushed under with tongs at the lowest heat.",
        ],
        work: zinc_lost,
    },
    Reckoner {
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
    },
    Reckoner {
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
    },
    Reckoner {
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
    },
    Reckoner {
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
    },
    Reckoner {
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
    },
    Reckoner {
        name: "treatment",
        question: "How much flux, degasser, phosphor copper, refiner or inoculant, and when?",
        law: &DOSE,
        inputs: &[
            Input::of::<Mass>("melt", "m", "metal in the pot"),
            Input::new(
                "treatment",
                "",
                "what: phosphor copper, cover flux, grain refiner",
                Wanted::Text,
            ),
        ],
        example: &[("melt", "4.8 kg"), ("treatment", "phosphor copper")],
        cautions: &[
            DRY,
            "Fluxes and tablets fume: outdoors and upwind; some are banned where you live.",
        ],
        work: |given| {
            let Some(row) = named(given.words("treatment")) else {
                let names: Vec<&str> = all().iter().map(|row| row.name.as_str()).collect();
                return given.refuse(
                    "treatment",
                    "is not in the table",
                    format!("known: {}", names.join(", ")),
                );
            };
            let melt = given.get("melt");
            let of = &row.dose.band;
            given.doubt(row.mind.clone());
            for (what, why) in NOT_WORTH_IT.iter().filter(|_| row.turn == 4) {
                given.doubt(format!("not worth it: {what}: {why}"));
            }
            Ok(vec![
                Answer::of("dose", dose(melt, of.likely()))
                    .between(dose(melt, of.low()), dose(melt, of.high())),
                Answer::words("how", row.how.clone()),
                Answer::words("turn", TURNS[usize::from(row.turn).min(TURNS.len() - 1)]),
            ])
        },
    },
];

/// The order of treatment, by the turn of the table.
const TURNS: [&str; 6] = [
    "",
    "first, while it melts",
    "second, when all is liquid: flux and skim",
    "third: make up what burnt off",
    "fourth: drive the gas out, then let it stand",
    "last, just before pouring",
];

const TEMPERATURE: Input = Input::of::<Temperature>("temperature", "T", "the metal")
    .narrowed_by("a probe: by eye it is 50 K either way");
const ZINC_SHARE: Input = Input::share("zinc", "", "zinc in the brass");
const AIR: Input = Input::of::<Temperature>("air", "T", "the air of the shop");
const AIR_PLAIN: Input = Input::of::<Temperature>("air", "", "the air of the shop");
const HUMIDITY: Input = Input::share("humidity", "φ", "relative humidity");
const HUMIDITY_PLAIN: Input = Input::share("humidity", "", "relative humidity");

fn loss(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let Some(alloy) = given.alloy() else {
        return given.refuse("metal", "is not named", "losses differ by metal: name it");
    };
    let furnace = match given.words("furnace") {
        "electric" => Furnace::ElectricCrucible,
        "induction" => Furnace::Induction,
        "cupola" => Furnace::Cupola,
        _ => Furnace::FuelCrucible,
    };
    let parts = (
        clean_loss(furnace, alloy.family),
        form(given.words("form")),
        holding(alloy.family),
    );
    let (Some((clean, _)), Some(form), Some(rate)) = parts else {
        return given.refuse(
            "furnace",
            "has no figure for this metal",
            "weigh in and out once",
        );
    };
    let standing: Duration = given.get("standing");
    let (of_form, rate) = (&form.loss.band, &rate.ten_minutes.band);
    let low = melt_loss(clean.low(), of_form.low(), rate.low(), standing);
    let likely = melt_loss(clean.likely(), of_form.likely(), rate.likely(), standing);
    let high = melt_loss(clean.high(), of_form.high(), rate.high(), standing);
    given.doubt(format!(
        "{}; weigh what goes in and what comes out of three heats",
        form.what
    ));
    Ok(vec![
        Answer::share("loss", likely)
            .from_to(low, high)
            .rounded_up(),
    ])
}

fn zinc_lost(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let across: Length = given.get("pot");
    let pot = Pot {
        zinc: zinc_share(given)?,
        at: zinc_hot(given)?,
        surface: Area::from_m2(std::f64::consts::FRAC_PI_4 * across.as_m() * across.as_m()),
    };
    if vapour_over_brass(pot.zinc, pot.at) > ATMOSPHERE {
        given.doubt("it boils: the loss is whatever the fire can boil, far above this figure");
    }
    let standing: Duration = given.get("standing");
    let [low, likely, high] = CARRIED_OFF_M_PER_S.map(|pace| lost(&pot, standing, pace));
    let mut answers = vec![Answer::of("zinc lost", likely).between(low, high)];
    if let Some(charge) = given
        .find::<Mass>("charge")
        .filter(|mass| *mass > Mass::ZERO)
    {
        let share = Answer::share("of the charge", likely / charge);
        answers.push(share.from_to(low / charge, high / charge));
        if likely / charge > 0.05 {
            given.doubt("more than a twentieth of the charge: too hot or too long");
        }
    }
    answers.push(Answer::of("zinc to add", likely).between(low, high));
    answers.push(Answer::words(
        "how",
        "put back what was lost, last, at the lowest heat that runs",
    ));
    Ok(answers)
}

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

fn zinc_share(given: &Given<'_>) -> Result<f64, Impossible> {
    let zinc = given.number("zinc");
    if !(0.0..=1.0).contains(&zinc) || zinc == 0.0 {
        return given.refuse("zinc", "is no share of a brass", "give 5 to 50 %");
    }
    if !(0.05..=0.5).contains(&zinc) {
        given.doubt("the law is for brass with 5 to 50 % zinc");
    }
    Ok(zinc)
}

fn zinc_hot(given: &Given<'_>) -> Result<Temperature, Impossible> {
    let at: Temperature = given.get("temperature");
    if at < Temperature::from_celsius(419.0) {
        return given.refuse(
            "temperature",
            "is below the melting point of zinc",
            "give the melt's",
        );
    }
    if at > Temperature::from_celsius(1300.0) {
        given.doubt("above 1300 °C the law is carried on too far");
    }
    Ok(at)
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
