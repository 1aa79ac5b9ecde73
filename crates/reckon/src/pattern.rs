//! How large the pattern, and how heavy its sections.

use measure::length::{Area, Length, Volume};
use pattern::contraction::{
    PATTERN_LENGTH, PATTERN_LENGTH_BY_VOLUME, pattern_length, pattern_length_by_volume,
};
use pattern::sections::{MODULUS, modulus};

use crate::answer::Answer;
use crate::input::{Input, Property, Wanted};
use crate::reckoner::Reckoner;

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "pattern-length",
        question: "How much longer must the pattern be than the casting?",
        law: &PATTERN_LENGTH,
        inputs: &[
            Input::of::<Length>("part", "L_part", "length of the finished casting"),
            Input::metal(),
            Input::new(
                "contraction",
                "s",
                "pattern maker's contraction of the metal",
                Wanted::Contraction,
            )
            .of_metal(Property::Contraction)
            .narrowed_by("measure three castings of your own against their patterns"),
        ],
        example: &[("part", "320 mm"), ("metal", "grey iron")],
        cautions: &[],
        work: |given| {
            let contraction = given.number("contraction");
            let length = pattern_length(given.get("part"), contraction);
            Ok(vec![
                Answer::of("pattern", length),
                Answer::of("growth", length - given.get("part")),
            ])
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
];
