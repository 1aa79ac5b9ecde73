//! How hot to pour.

use measure::heat::Temperature;
use metal::pouring_temperature::{POURING_BAND, SUPERHEAT, pouring_band, superheat};

use crate::answer::Answer;
use crate::input::{Input, Property, Wanted};
use crate::reckoner::Reckoner;

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "pouring-temperature",
        question: "How hot must the metal be when it is poured?",
        law: &POURING_BAND,
        inputs: &[
            Input::new("metal", "", "the alloy", Wanted::Metal),
            Input::new(
                "section",
                "",
                "modulus of the thinnest section, or a body",
                Wanted::Body,
            ),
        ],
        example: &[("metal", "gunmetal"), ("section", "plate 6 mm")],
        cautions: &[
            "Hotter than the band is more gas, more fume and rougher sand, not more safety.",
        ],
        work: |given| {
            let Some(alloy) = given.alloy() else {
                return given.refuse("metal", "is missing", "name the alloy");
            };
            let band = pouring_band(alloy, given.get("section"));
            Ok(vec![
                Answer::temperature("temperature", band.likely()).between(band.low(), band.high()),
            ])
        },
    },
    Reckoner {
        name: "superheat",
        question: "How far above its liquidus is the metal poured?",
        law: &SUPERHEAT,
        inputs: &[
            Input::of::<Temperature>("pouring", "T_pour", "as it is poured"),
            Input::metal(),
            Input::of::<Temperature>("liquidus", "T_liquidus", "where the first metal freezes")
                .of_metal(Property::Liquidus),
        ],
        example: &[("pouring", "720 C"), ("metal", "A356")],
        cautions: &[],
        work: |given| {
            let (pouring, liquidus): (Temperature, Temperature) =
                (given.get("pouring"), given.get("liquidus"));
            if pouring < liquidus {
                given.doubt("below the liquidus: part of it is already frozen");
            }
            Ok(vec![Answer::of("superheat", superheat(pouring, liquidus))])
        },
    },
];
