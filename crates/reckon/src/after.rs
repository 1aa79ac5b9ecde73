//! After shake-out: is it hollow, and what heating it again does.

use measure::flow::Duration;
use measure::length::{Length, Volume};
use measure::matter::{Density, Mass};
use metal::after::{HIDDEN_HOLLOW, HOLD_TIME, Treatment, hidden_hollow, hold_time, treatment};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// Share of hollow that even a careful weighing may feign. A judgement.
const WITHIN_WEIGHING: f64 = 0.01;

/// Share of hollow from which a casting is sawn before it is used. A judgement.
const SAW_IT: f64 = 0.03;

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "hidden-hollow",
        question: "Is there a hollow inside that I cannot see?",
        law: &HIDDEN_HOLLOW,
        inputs: &[
            Input::of::<Mass>("weighed", "m", "the casting, sawn off and clean"),
            Input::of::<Volume>("volume", "V", "its volume")
                .narrowed_by("hang it in water on a string over the scale: grams are millilitres"),
            Input::metal(),
            Input::of::<Density>("density", "ρ", "the metal without holes")
                .of_metal(Property::SolidDensity)
                .narrowed_by("weigh a sound bar of the same heat the same way"),
            Input::choice(
                "serves",
                "what it has to serve for",
                &[
                    "ornament", "machine", "food", "pressure", "lifting", "brake",
                ],
            )
            .or("machine", "common-practice"),
        ],
        example: &[
            ("weighed", "742 g ± 1 g"),
            ("volume", "285 ml ± 2 ml"),
            ("metal", "A356"),
            ("serves", "pressure"),
        ],
        cautions: &["Hollows may hold water: warm a wet casting slowly before it is remelted."],
        work: hollow,
    },
    Reckoner {
        name: "heat-again",
        question: "How hot and how long, to soften, strengthen or quiet a casting?",
        law: &HOLD_TIME,
        inputs: &[
            Input::choice(
                "treatment",
                "what is to be done",
                &[
                    "stress-relief-iron",
                    "soften-iron",
                    "anneal-white-iron",
                    "t6-356",
                    "t5-356",
                    "t6-319",
                    "stress-relief-bronze",
                ],
            ),
            Input::of::<Length>("thickest", "d", "the thickest place"),
            Input::metal(),
            Input::of::<Duration>("each_inch", "u", "for each 25 mm, else the table's").optional(),
            Input::of::<Duration>("least", "t_least", "least time, else the table's").optional(),
        ],
        example: &[("treatment", "stress-relief-iron"), ("thickest", "26 mm")],
        cautions: &["Hot castings look cold: chalk HOT on everything that comes out."],
        work: heat_again,
    },
];

fn hollow(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let (weighed, volume): (Mass, Volume) = (given.get("weighed"), given.get("volume"));
    let share = hidden_hollow(weighed, volume, given.get("density"));
    if share < -0.1 {
        return given.refuse(
            "weighed",
            "is more than the metal itself could weigh",
            "look at volume and metal again",
        );
    }
    Ok(vec![
        Answer::share("hollow", share),
        Answer::words("what it says", said(share)),
        Answer::words("what to do", advice(given.words("serves"), share)),
    ])
}

fn said(share: f64) -> &'static str {
    match share {
        share if share > SAW_IT => "a hollow or much sponge: saw a sister casting through",
        share if share > WITHIN_WEIGHING => {
            "some sponge or a small hollow, or a density off by \
                                             a little"
        }
        share if share >= -WITHIN_WEIGHING => "nothing that weighing can find",
        _ => "heavier than it should be: volume or metal is not what was thought",
    }
}

/// What to do by use; no weighing makes a pressure, lifting or brake part good.
fn advice(serves: &str, share: f64) -> &'static str {
    let hollow = share > SAW_IT;
    match (serves, hollow) {
        ("lifting" | "brake", _) => {
            "no home test clears it: have it proved by those who answer for it, or buy the part"
        }
        ("pressure", true) => "scrap it: it will leak or burst where the hollow breaks through",
        ("pressure", false) => {
            "prove it by test: full of water, no air in it, to one and a half times its pressure, \
             from behind a wall; never with air or steam"
        }
        ("food", true) => "scrap it: food lodges in open pores",
        (_, true) => "saw where the metal is thickest, or scrap it; feed that place next time",
        _ => "use it as the saw and the eye allow",
    }
}

fn heat_again(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let Some(how) = treatment(given.words("treatment")) else {
        return given.refuse("treatment", "is not in the table", "name another");
    };
    if given.alloy().is_some_and(|alloy| !how.is_for(alloy)) {
        return given.refuse("metal", "is not what this is for", how.purpose.clone());
    }
    given.doubt(how.caution.clone());
    let heat = &how.heat.band;
    let [low, likely, high] = hours(given, how);
    Ok(vec![
        Answer::of("at heat", likely).between(low, high),
        Answer::temperature("temperature", heat.likely()).between(heat.low(), heat.high()),
        Answer::words("what it does", how.purpose.clone()),
        Answer::words("then", how.then.clone()),
    ])
}

fn hours(given: &Given<'_>, how: &Treatment) -> [Duration; 3] {
    let thickest: Length = given.get("thickest");
    let typed = |key| given.find::<Duration>(key);
    let (each, least) = (&how.each_inch.band, &how.least.band);
    let of = |each, least| {
        let each = typed("each_inch").unwrap_or(each);
        hold_time(thickest, each, typed("least").unwrap_or(least))
    };
    [
        of(each.low(), least.low()),
        of(each.likely(), least.likely()),
        of(each.high(), least.high()),
    ]
}
