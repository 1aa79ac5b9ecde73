//! Zinc that smokes, boils and is put back.

use measure::flow::Duration;
use measure::heat::Temperature;
use measure::length::Length;
use measure::matter::Mass;
use metal::hydrogen::ATMOSPHERE;
use metal::zinc::{
    CARRIED_OFF_M_PER_S, FLARE, LOST, Pot, VAPOUR, VAPOUR_OVER_BRASS, flare, lost, vapour,
    vapour_over_brass,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::Input;
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// Said wherever zinc smokes.
const ZINC: &str = "Zinc fume gives metal fume fever: outdoors or under a hood, upwind, with a fume \
                    respirator (P3 or P100), always.";

const TEMPERATURE: Input = Input::of::<Temperature>("temperature", "T", "the metal")
    .narrowed_by("a probe: by eye it is 50 K either way");

const ZINC_SHARE: Input = Input::share("zinc", "", "zinc in the brass");

/// Vapour of pure zinc.
pub(super) const PURE: Reckoner = Reckoner {
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
};

/// Vapour of the zinc in brass.
pub(super) const OVER_BRASS: Reckoner = Reckoner {
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
};

/// Where brass boils.
pub(super) const BOILS: Reckoner = Reckoner {
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
};

/// Zinc that goes up in smoke.
pub(super) const SMOKE: Reckoner = Reckoner {
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
};

fn zinc_lost(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let pot = Pot::across(zinc_share(given)?, zinc_hot(given)?, given.get("pot"));
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
