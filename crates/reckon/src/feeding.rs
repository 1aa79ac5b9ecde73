//! What feeds a casting while it shrinks.

use measure::length::{Length, Volume};
use mould::feeding::feeder::{
    CYLINDER_MODULUS, CoolingEnds, DIAMETER_BY_MODULUS, FREEZING_RATIO, VOLUME_RULE,
    cylinder_modulus, diameter_by_modulus, feeder_volume, freezing_ratio,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;

const ENDS: Input = Input::choice(
    "cooling_ends",
    "ends that cool: one on a casting",
    &["one", "two"],
)
.or("one", "common-practice");

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "cylinder-modulus",
        question: "What is the modulus of a round feeder?",
        law: &CYLINDER_MODULUS,
        inputs: &[
            Input::of::<Length>("diameter", "D", "its diameter"),
            Input::of::<Length>("height", "H", "its height"),
            ENDS,
        ],
        example: &[("diameter", "40 mm"), ("height", "60 mm")],
        cautions: &[],
        work: |given| {
            let (diameter, height) = (given.get("diameter"), given.get("height"));
            let modulus = cylinder_modulus(diameter, height, ends(given));
            Ok(vec![Answer::of("modulus", modulus)])
        },
    },
    Reckoner {
        name: "feeder-by-modulus",
        question: "How thick must a feeder be to stay liquid longer than the section?",
        law: &DIAMETER_BY_MODULUS,
        inputs: &[
            Input::new(
                "section",
                "M_section",
                "modulus it feeds, or a plain body",
                Wanted::Body,
            ),
            Input::number("margin", "k", "how much more modulus the feeder has")
                .or("1.2", "feeder-article"),
            Input::number("height_over_diameter", "", "slimness").or("1", "common-practice"),
            ENDS,
        ],
        example: &[("section", "6.4 mm")],
        cautions: &[],
        work: |given| {
            let (margin, slimness) = (given.number("margin"), given.number("height_over_diameter"));
            let diameter = diameter_by_modulus(given.get("section"), margin, slimness, ends(given));
            Ok(vec![
                Answer::of("diameter", diameter).rounded_up(),
                Answer::of("height", diameter * slimness).rounded_up(),
            ])
        },
    },
    Reckoner {
        name: "feeder-by-volume",
        question: "How much metal must a feeder hold to give what the casting wants?",
        law: &VOLUME_RULE,
        inputs: &[
            Input::of::<Volume>("casting", "V_c", "casting it feeds"),
            Input::share(
                "demand",
                "β",
                "share of the volume lost from pouring to frozen",
            ),
            Input::share("usable", "ε", "share of a feeder that can flow out")
                .or("14 %", "campbell-castings"),
        ],
        example: &[("casting", "130 cm3"), ("demand", "4 to 5 %")],
        cautions: &[],
        work: |given| {
            let (demand, usable) = (given.number("demand"), given.number("usable"));
            match feeder_volume(given.get("casting"), demand, usable) {
                Some(volume) => Ok(vec![Answer::of("volume", volume).rounded_up()]),
                None => given.refuse(
                    "demand",
                    "is as large as what a feeder can give",
                    "use an insulated feeder, which gives more",
                ),
            }
        },
    },
    Reckoner {
        name: "freezing-ratio",
        question: "How much longer does a feeder stay liquid than the section?",
        law: &FREEZING_RATIO,
        inputs: &[
            Input::new(
                "feeder",
                "M_feeder",
                "modulus of the feeder, or a body",
                Wanted::Body,
            ),
            Input::new(
                "section",
                "M_section",
                "modulus of the section, or a body",
                Wanted::Body,
            ),
        ],
        example: &[
            ("feeder", "cylinder 60 x 60 mm"),
            ("section", "plate 20 mm"),
        ],
        cautions: &[],
        work: |given| {
            let ratio = freezing_ratio(given.get("feeder"), given.get("section"));
            if ratio < 1.0 {
                given.doubt("the feeder freezes first: it draws from the casting");
            }
            Ok(vec![Answer::number("ratio", ratio)])
        },
    },
];

fn ends(given: &Given<'_>) -> CoolingEnds {
    match given.words("cooling_ends") {
        "two" => CoolingEnds::Two,
        _ => CoolingEnds::One,
    }
}
