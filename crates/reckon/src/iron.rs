//! Whether iron comes out grey, and what to put into the ladle.

use measure::flow::Duration;
use measure::length::Length;
use measure::matter::Mass;
use metal::iron::{
    CARBON_EQUIVALENT, COMPOSITION_FACTOR, ChillRisk, EUTECTIC, FADE, GREY_WALL, INOCULANT,
    TABLE_MARGIN, WANTED_EQUIVALENT, WEDGE, behaves_as, carbon_equivalent, composition_factor,
    effect_left, grey_wall, inoculant, wall_from_wedge, wanted_equivalent,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::Input;
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// Said wherever iron is treated.
const LADLE: &str = "Ladle, tools and additions dry and hot: liquid iron on damp throws itself out. \
                     Full face cover, leather, spats.";

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "carbon-equivalent",
        question: "What is the carbon equivalent of this iron?",
        law: &CARBON_EQUIVALENT,
        inputs: &[CARBON, SILICON, PHOSPHORUS],
        example: &[
            ("carbon", "3.4 %"),
            ("silicon", "2.3 %"),
            ("phosphorus", "0.1 %"),
        ],
        cautions: &[],
        work: |given| {
            let [carbon, silicon, phosphorus] = elements(given)?;
            let equivalent = carbon_equivalent(carbon, silicon, phosphorus);
            if equivalent > EUTECTIC {
                given.doubt("above 4.3 %: kish floats up in thick sections");
            }
            if equivalent < 0.032 {
                given.doubt("below 3.2 %: no common grey iron, it chills in anything thin");
            }
            Ok(vec![Answer::share("equivalent", equivalent)])
        },
    },
    Reckoner {
        name: "composition-factor",
        question: "How well does this iron run, by its composition?",
        law: &COMPOSITION_FACTOR,
        inputs: &[CARBON, SILICON, PHOSPHORUS],
        example: &[
            ("carbon", "3.4 %"),
            ("silicon", "2.3 %"),
            ("phosphorus", "0.1 %"),
        ],
        cautions: &[],
        work: |given| {
            let [carbon, silicon, phosphorus] = elements(given)?;
            let factor = composition_factor(carbon, silicon, phosphorus);
            Ok(vec![Answer::share("factor", factor)])
        },
    },
    Reckoner {
        name: "wanted-equivalent",
        question: "What carbon equivalent does this wall want, so that it can be filed?",
        law: &WANTED_EQUIVALENT,
        inputs: &[Input::of::<Length>(
            "wall",
            "t",
            "the thinnest wall that matters",
        )],
        example: &[("wall", "7 mm")],
        cautions: &[],
        work: |given| {
            let wall: Length = given.get("wall");
            let Some(wanted) = positive(wall).and_then(wanted_equivalent) else {
                return given.refuse("wall", "has no thickness", "give it like 7 mm");
            };
            if wall < Length::from_mm(3.0) {
                given.doubt("under 3 mm grey iron chills whatever its composition");
            }
            if wall > Length::from_mm(25.0) {
                given.doubt("above 25 mm a leaner iron than the table is stronger and still grey");
            }
            let answer = Answer::share("wanted", wanted.likely());
            Ok(vec![answer.from_to(wanted.low(), wanted.high())])
        },
    },
    Reckoner {
        name: "grey-wall",
        question: "Will this wall come out white and hard?",
        law: &GREY_WALL,
        inputs: &[
            Input::share("equivalent", "CE", "carbon equivalent of the iron")
                .narrowed_by("pour a chill wedge of it"),
            Input::share("effect", "e", "part of the inoculation that is left")
                .or("50 to 100 %", "common-practice"),
            Input::of::<Length>("wall", "", "the wall asked about").optional(),
        ],
        example: &[("equivalent", "4.0 to 4.2 %"), ("wall", "7 mm")],
        cautions: &[],
        work: |given| {
            let effect = given.number("effect");
            let grey = grey_wall(given.number("equivalent"), effect);
            let Some(grey) = grey.filter(|_| (0.0..=1.0).contains(&effect)) else {
                return given.refuse("effect", "is no part of a whole", "give 0 to 100 %");
            };
            let mut answers = vec![
                Answer::of("least wall", grey)
                    .times(1.0 / TABLE_MARGIN, TABLE_MARGIN)
                    .rounded_up(),
            ];
            if let Some(wall) = given.find::<Length>("wall") {
                answers.push(Answer::words(
                    "this wall",
                    ChillRisk::of(wall, grey).words(),
                ));
            }
            Ok(answers)
        },
    },
    Reckoner {
        name: "chill-wedge",
        question: "What does the white tip of a chill wedge say about the walls?",
        law: &WEDGE,
        inputs: &[
            Input::of::<Length>(
                "white",
                "b",
                "width of the wedge where the clear white ends",
            ),
            Input::number("per_white", "k", "wall for each width of white")
                .or("1.5 to 3, likely 2", "common-practice")
                .narrowed_by("break a thin casting of the same iron and compare"),
        ],
        example: &[("white", "3.5 mm")],
        cautions: &[
            LADLE,
            "Break the wedge cold and with goggles: white iron flies in splinters.",
        ],
        work: |given| {
            let grey = wall_from_wedge(given.get("white"), given.number("per_white"));
            let Some(behaves) = positive(grey).and_then(behaves_as) else {
                return given.refuse(
                    "white",
                    "is nought",
                    "no white at all: any wall comes out grey",
                );
            };
            given.doubt("reckon with what it behaves as, not with what was charged");
            Ok(vec![
                Answer::of("least wall", grey).rounded_up(),
                Answer::share("behaves as", behaves),
            ])
        },
    },
    Reckoner {
        name: "inoculant",
        question: "How much ferrosilicon into the ladle?",
        law: &INOCULANT,
        inputs: &[
            Input::of::<Mass>("iron", "m", "iron in the ladle"),
            Input::share("share", "s", "dose of ferrosilicon with 75 % Si")
                .or("0.2 to 0.4 %", "foundry-handbooks-iron"),
            Input::share("silicon", "", "silicon in the ferrosilicon")
                .or("75 %", "common-practice"),
            Input::share("recovery", "", "part of it that ends up in the iron")
                .or("80 to 95 %", "common-practice"),
        ],
        example: &[("iron", "6.2 kg")],
        cautions: &[
            LADLE,
            "Ferrosilicon is kept dry: damp, it gives off gas that burns and poisons.",
        ],
        work: |given| {
            let share = given.number("share");
            if share > 0.01 {
                given.doubt("above 1 % it cools the ladle more than it helps");
            }
            let grams = inoculant(given.get("iron"), share);
            let raised = share * given.number("silicon") * given.number("recovery");
            Ok(vec![
                Answer::of("inoculant", grams),
                Answer::share("silicon raised by", raised),
            ])
        },
    },
    Reckoner {
        name: "inoculant-left",
        question: "How much of the inoculation is left when I pour?",
        law: &FADE,
        inputs: &[
            Input::of::<Duration>("since", "t", "from the addition to the last mould"),
            Input::of::<Duration>("half", "t_half", "time in which half of it is gone")
                .or("3 to 8 min, likely 5 min", "foundry-handbooks-iron")
                .narrowed_by("a chill wedge at the first and at the last mould"),
        ],
        example: &[("since", "6 min")],
        cautions: &[LADLE],
        work: |given| {
            let half: Duration = given.get("half");
            if half <= Duration::ZERO {
                return given.refuse("half", "is nought", "give a time, like 5 min");
            }
            let left = effect_left(given.get("since"), half);
            if left < 0.5 {
                given.doubt("more than half is gone: add a little again, in the stream");
            }
            Ok(vec![Answer::share("left", left).rounded_down()])
        },
    },
];

const CARBON: Input = Input::share("carbon", "C", "total carbon");
const SILICON: Input = Input::share("silicon", "Si", "silicon");
const PHOSPHORUS: Input = Input::share("phosphorus", "P", "phosphorus")
    .or("0.05 to 0.6 %, likely 0.15 %", "foundry-handbooks-iron")
    .narrowed_by("old stove plate and radiators are high, brake discs and machine iron low");

fn elements(given: &Given<'_>) -> Result<[f64; 3], Impossible> {
    let parts = ["carbon", "silicon", "phosphorus"].map(|key| given.number(key));
    if parts[0] > 0.067 {
        return given.refuse(
            "carbon",
            "is more than iron holds",
            "grey iron has 3 to 3.8 %",
        );
    }
    Ok(parts)
}

fn positive(length: Length) -> Option<Length> {
    (length > Length::ZERO).then_some(length)
}
