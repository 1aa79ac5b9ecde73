//! What a piece of scrap is, and why there is a hole in the casting.

use std::collections::BTreeMap;

use measure::matter::Mass;
use metal::fume::hazard;
use metal::hole::{CAUSES, LOOKS, PLACES, causes, parting};
use metal::scrap::{
    DENSITY_IN_WATER, ForFood, Kind, Look, NextLook, POSSIBLE, SHARES, Seen, for_food, kinds,
    next_look, origin, origins, shares, weighed,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// Said wherever scrap goes into a pot.
const SCRAP: &str = "Cut hollows open, dry every piece, strip paint: sealed, wet or painted scrap \
                     bursts, spits or poisons. What was weighed in water is dried first.";

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "density-in-water",
        question: "How dense is a piece, by its weight in air and hung in water?",
        law: &DENSITY_IN_WATER,
        inputs: &[AIR, WATER, STEP],
        example: &[("air", "200 g"), ("water", "126 g")],
        cautions: &[SCRAP],
        work: |given| {
            let density = dense(given)?;
            Ok(vec![density])
        },
    },
    Reckoner {
        name: "scrap",
        question: "What is this scrap, and may I use it for cookware?",
        law: &SHARES,
        inputs: &[
            unnamed(AIR).optional(),
            unnamed(WATER).optional(),
            STEP,
            look("magnet", "held to a magnet", Look::Magnet),
            look("colour", "colour of a fresh file mark", Look::Colour),
            look("file", "how the file takes it", Look::File),
            look(
                "vinegar",
                "a drop of vinegar on a filed spot",
                Look::Vinegar,
            ),
            look("spark", "held to a grinding wheel", Look::Spark),
            Input::new(
                "origin",
                "",
                "the part it was: piston, tap, radiator",
                Wanted::Text,
            )
            .optional(),
            Input::choice("painted", "painted or plated", &["no", "yes"])
                .or("no", "common-practice"),
        ],
        example: &[
            ("air", "200 g"),
            ("water", "126 g"),
            ("magnet", "none"),
            ("origin", "wheel"),
        ],
        cautions: &[SCRAP],
        work: |given| {
            let (seen, density) = seen(given)?;
            if let Some(origin) = seen.origin {
                given.doubt(format!("{}: {}", origin.names[0], origin.caution));
            }
            let mut ranked: Vec<(&Kind, f64)> = kinds().iter().zip(shares(&seen)).collect();
            ranked.sort_by(|a, b| b.1.total_cmp(&a.1));
            minded(given, &ranked);
            let mut answers = Vec::new();
            answers.extend(
                ranked
                    .first()
                    .map(|best| Answer::words("likely", &*best.0.name)),
            );
            answers.extend(density);
            answers.push(Answer::words("for food", food(&seen, given)));
            answers.push(Answer::words("next look", next(&seen)));
            let shown = ranked.into_iter().filter(|(_, share)| *share > SHOWN);
            answers.extend(shown.map(|(kind, share)| Answer::share(&kind.name, share)));
            Ok(answers)
        },
    },
    Reckoner {
        name: "hole",
        question: "Why is there a hole, and what do I change next time?",
        law: &CAUSES,
        inputs: &[
            Input::metal(),
            Input::choice("place", "where the hole is", PLACES).optional(),
            Input::choice("look", "how it looks", LOOKS).optional(),
        ],
        example: &[("metal", "A356"), ("place", "heavy"), ("look", "jagged")],
        cautions: &[
            "A part that holds pressure, lifts or brakes is proved by test, never by a look at it.",
        ],
        work: |given| {
            let Some(alloy) = given.alloy() else {
                return given.refuse("metal", "is not named", "causes differ by metal: name it");
            };
            if !given.has("place") || !given.has("look") {
                given.doubt("say where it is and how it looks: one without the other says little");
            }
            given.doubt("sorted by judgement: keep a log, it knows this shop better");
            let found = causes(alloy.family, given.words("place"), given.words("look"));
            let [first, second, ..] = found[..] else {
                return given.refuse("metal", "has no causes in the table", "try another");
            };
            let mut answers = vec![Answer::words("likely", &*first.0.name)];
            let three = found.iter().take(3);
            answers.extend(three.map(|(cause, share)| Answer::share(&cause.name, *share)));
            if let Some(check) = parting(first.0, second.0) {
                let words = format!(
                    "{} {}: {}. {}: {}",
                    check.what, first.0.name, check.first, second.0.name, check.second
                );
                answers.push(Answer::words("check", words));
            }
            answers.push(Answer::words("one change", &*first.0.lever));
            Ok(answers)
        },
    },
];

/// Shares below this are not shown: noise of the table.
const SHOWN: f64 = 0.005;

const AIR: Input = Input::of::<Mass>("air", "m_air", "the piece on the scale")
    .narrowed_by("a larger piece, or a finer scale");

const WATER: Input = Input::of::<Mass>(
    "water",
    "m_water",
    "hung in water by a thread, not touching",
)
.narrowed_by("a larger piece, or a finer scale");

const STEP: Input =
    Input::of::<Mass>("step", "", "smallest step of the scale").or("1 g", "common-practice");

/// The same input where the formula has no symbol for it.
const fn unnamed(mut input: Input) -> Input {
    input.symbol = "";
    input
}

const fn look(key: &'static str, about: &'static str, look: Look) -> Input {
    Input::choice(key, about, look.outcomes()).optional()
}

fn dense(given: &Given<'_>) -> Result<Answer, Impossible> {
    let (air, water): (Mass, Mass) = (given.get("air"), given.get("water"));
    match weighed(air, water, given.get("step")) {
        Some(band) => {
            let answer = Answer::of("density", band.likely());
            Ok(answer.between(band.low(), band.high()))
        }
        None => given.refuse(
            "water",
            "does not go with the weight in air on this scale",
            "it weighs less in water than in air by more than the step; take a larger piece",
        ),
    }
}

fn seen(given: &Given<'_>) -> Result<(Seen, Option<Answer>), Impossible> {
    let mut seen = Seen::default();
    let mut density = None;
    if given.has("air") && given.has("water") {
        density = Some(dense(given)?);
        seen.density = weighed(given.get("air"), given.get("water"), given.get("step"));
    }
    if given.has("air") != given.has("water") {
        given.doubt("one weighing alone says nothing: weigh it in air and in water");
    }
    let looked = Look::ALL.into_iter().filter(|look| given.has(look.name()));
    seen.looks = looked
        .map(|look| (look, given.words(look.name()).to_owned()))
        .collect::<BTreeMap<_, _>>();
    let from = given.words("origin").trim();
    if !from.is_empty() {
        seen.origin = origin(from);
        if seen.origin.is_none() {
            let names = origins().iter().map(|origin| origin.names[0].as_str());
            let known: Vec<&str> = names.collect();
            return given.refuse(
                "origin",
                format!("\"{from}\" is no part of the table"),
                format!("known: {}, or leave it out", known.join(", ")),
            );
        }
    }
    Ok((seen, density))
}

fn minded(given: &Given<'_>, ranked: &[(&Kind, f64)]) {
    let possible = |name: &str| {
        let found = ranked.iter().find(|(kind, _)| kind.name == name);
        found.is_some_and(|(_, share)| *share > POSSIBLE)
    };
    if let (true, Some(burns)) = (possible("magnesium alloy"), hazard("magnesium-scrap")) {
        given.doubt(format!(
            "it may be magnesium: {}; {}",
            burns.words, burns.advice
        ));
    }
    if given.words("painted") == "yes" {
        for hazard in ["painted", "galvanised"].into_iter().filter_map(hazard) {
            given.doubt(format!("{}; {}", hazard.words, hazard.advice));
        }
    }
}

fn food(seen: &Seen, given: &Given<'_>) -> String {
    match for_food(seen, given.words("painted") == "yes") {
        ForFood::Never(why) => format!("never: {why}"),
        ForFood::Unproven => "not proven: sorting lowers the risk and does not remove it; known \
                              ingot, and ask your food authority"
            .to_owned(),
    }
}

fn next(seen: &Seen) -> String {
    match next_look(seen) {
        None => "nothing simple parts the two best guesses".to_owned(),
        Some(NextLook::Weigh) => "weigh it in air and hung in water".to_owned(),
        Some(NextLook::At(look)) => {
            let outcomes = look.outcomes().join(", ");
            format!("{}: {outcomes}", look.name())
        }
    }
}
