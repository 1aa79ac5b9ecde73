//! How large the pattern, what is left on it, how it draws, and how heavy its sections.

use measure::length::{Area, Length, Volume};
use metal::alloy::Alloy;
use pattern::cast_metal::CastMetal;
use pattern::contraction::{
    PATTERN_LENGTH, PATTERN_LENGTH_BY_VOLUME, pattern_length, pattern_length_by_volume,
};
use pattern::sections::{MODULUS, modulus};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

mod contraction;
mod draft;
mod original;
mod tolerance;
mod weighed;

/// Contraction typed, or that of the alloy.
const CONTRACTION: Input = Input::new(
    "contraction",
    "s",
    "pattern maker's contraction of the metal",
    Wanted::Contraction,
)
.of_metal(Property::Contraction)
.narrowed_by("measure three castings of your own: reckon own-contraction");

/// The metals of the tables of allowances, as they are typed.
const METALS: &[&str] = &[
    CastMetal::Aluminium.word(),
    CastMetal::Bronze.word(),
    CastMetal::Brass.word(),
    CastMetal::Zinc.word(),
    CastMetal::GreyIron.word(),
    CastMetal::DuctileIron.word(),
    CastMetal::MalleableIron.word(),
    CastMetal::Steel.word(),
];

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "pattern-length",
        question: "How much longer must the pattern be than the casting?",
        law: &PATTERN_LENGTH,
        inputs: &[
            Input::of::<Length>("part", "L_part", "length of the finished casting"),
            Input::metal(),
            CONTRACTION,
        ],
        example: &[("part", "320 mm"), ("metal", "grey iron")],
        cautions: &[],
        work: |given| {
            let contraction = given.number("contraction");
            let length = pattern_length(given.get("part"), contraction);
            let mut answers = vec![
                Answer::of("pattern", length),
                Answer::of("growth", length - given.get("part")),
            ];
            let sources = given.alloy().map(side_by_side);
            answers.extend(sources.map(|words| Answer::words("sources say", words)));
            Ok(answers)
        },
    },
    Reckoner {
        name: "pattern-length-by-volume",
        question: "How long must the pattern be if the losses are given by volume?",
        law: &PATTERN_LENGTH_BY_VOLUME,
        inputs: &[
            Input::of::<Length>("part", "L_part", "length of the finished casting"),
            Input::share("freezing", "s_freezing", "volume lost on freezing")
                .or("0 %", "common-practice"),
            Input::share("cooling", "s_cooling", "volume lost from freezing to cold"),
        ],
        example: &[("part", "80 mm"), ("cooling", "2 %")],
        cautions: &[],
        work: |given| {
            let (freezing, cooling) = (given.number("freezing"), given.number("cooling"));
            let length = pattern_length_by_volume(given.get("part"), freezing, cooling);
            Ok(vec![Answer::of("pattern", length)])
        },
    },
    Reckoner {
        name: "modulus",
        question: "What is the modulus of a section, volume over cooled surface?",
        law: &MODULUS,
        inputs: &[
            Input::new("body", "", "a plain body", Wanted::Body).optional(),
            Input::of::<Volume>("volume", "V", "metal in the section").optional(),
            Input::of::<Area>("cooled", "A", "surface that touches sand").optional(),
        ],
        example: &[("body", "block 80 x 60 x 18 mm")],
        cautions: &[],
        work: |given| match (
            given.find("body"),
            given.find("volume"),
            given.find("cooled"),
        ) {
            (Some(of_body), None, None) => Ok(vec![Answer::of::<Length>("modulus", of_body)]),
            (None, Some(volume), Some(cooled)) => {
                Ok(vec![Answer::of("modulus", modulus(volume, cooled))])
            }
            _ => given.refuse(
                "body",
                "is one way, volume with cooled surface the other",
                "give one of the two",
            ),
        },
    },
    contraction::CASTING,
    contraction::RAPPED,
    contraction::BY_SIZE_AND_CORES,
    contraction::OWN,
    contraction::IN_FOOT,
    contraction::ONE_IN_SO_MANY,
    original::MASTER,
    original::BUILT_UP,
    original::SHIMS,
    tolerance::OF_MOULDING,
    tolerance::OF_GRADE,
    tolerance::OF_WALL,
    tolerance::STOCK,
    tolerance::RAW,
    draft::ASKED,
    draft::BY_JOBBING,
    draft::BY_ANGLE,
    draft::BY_FACE_HEIGHT,
    draft::OF_TAPER,
    weighed::BY_WATER,
    weighed::BY_WEIGHT,
    weighed::OF_SIZES,
];

/// Every contraction that the sources give an alloy, with what they say it holds for.
fn side_by_side(alloy: &Alloy) -> String {
    let one = |given: &metal::alloy::ContractionGiven| {
        let note = match given.note.is_empty() {
            true => String::new(),
            false => format!(", {}", given.note),
        };
        format!("{} [{}{note}]", given.value.given_back(), given.source)
    };
    let all: Vec<_> = alloy.contraction.iter().map(one).collect();
    all.join("; ")
}

/// The metal of the tables that was chosen.
fn metal_of(given: &Given<'_>) -> Result<CastMetal, Impossible> {
    given
        .words("metal")
        .parse()
        .or_else(|fault: pattern::cast_metal::UnknownCastMetal| {
            given.refuse("metal", fault.to_string(), "choose one of them")
        })
}
