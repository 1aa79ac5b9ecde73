//! What helps a casting to freeze in the right order: necks, reach, padding, chills.

use measure::heat::{HeatPerMass, SpecificHeat, TemperatureDifference};
use measure::length::{Area, Length, Volume};
use measure::matter::Density;
use mould::feeding::chill::{
    CHILL_AREA, CHILL_MASS, CHILLED_MODULUS, Chilled, chill_area, chill_mass, chill_metals,
    chill_thickness, chilled_modulus,
};
use mould::feeding::neck::{FLAT_NECK, NECK, flat_neck, iron_neck_margin, neck_margin, round_neck};
use mould::feeding::padding::{PADDING, padded_thickness};
use mould::feeding::reach::{
    FEEDERS_ALONG, REACH, REACH_ALONG_BAR, feeders_along, reach, reach_along_bar, reach_row,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const SECTION: Input = Input::new(
    "section",
    "M",
    "modulus of the section, or a plain body",
    Wanted::Body,
);
const NECK_METAL: Input = Input::choice(
    "iron",
    "whether it is grey iron, whose neck shuts early",
    &["yes", "no"],
)
.or("no", "common-practice");
const NECK_MARGIN: Input = Input::number(
    "margin",
    "k",
    "modulus of neck over section: 1.1, grey iron 0.6 to 0.9",
)
.optional();
const KIND: Input = Input::choice(
    "kind",
    "how the metal freezes",
    &[
        "steel",
        "short freezing range",
        "middle freezing range",
        "long freezing range",
        "grey iron",
    ],
);
const VOLUME: Input = Input::of::<Volume>("volume", "V", "of the heavy section");
const SURFACE: Input = Input::of::<Area>("surface", "A", "of it that cools, without the chill");
const WANTED: Input = Input::new(
    "wanted",
    "M",
    "modulus it is to have: that of the section beside it",
    Wanted::Body,
);
const CONTACT: Input = Input::of::<Area>("contact", "A_ch", "face of the chill on the casting");
const FASTER: Input = Input::number("faster", "f", "how many times as fast as sand it cools")
    .or("2 to 4, likely 3", "wlodawer-1966");

const DAMP_CHILL: &str = "a damp, rusty, oily or cold chill blows metal out of the mould: clean \
                          it bright, dry it, warm it past the hand, lay it in last and close at \
                          once";
const GUIDANCE: &str = "guidance for where to put the next feeder, not a test of soundness";

/// The reckoners of this file, of the topic of feeding.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "neck",
        question: "How thick must a round or square neck be between casting and feeder?",
        law: &NECK,
        inputs: &[SECTION, NECK_METAL, NECK_MARGIN],
        example: &[("section", "6.4 mm")],
        cautions: &[],
        work: |given| {
            let across = round_neck(given.get("section"), margin(given));
            let answer = Answer::of("across", across);
            Ok(vec![match given.has("margin") {
                true => answer,
                false => between_margins(given, answer),
            }])
        },
    },
    Reckoner {
        name: "flat-neck",
        question: "How wide must a flat neck be?",
        law: &FLAT_NECK,
        inputs: &[
            SECTION,
            Input::of::<Length>("thickness", "s", "thickness of the neck"),
            NECK_METAL,
            NECK_MARGIN,
        ],
        example: &[("section", "6.4 mm"), ("thickness", "20 mm")],
        cautions: &[],
        work: |given| match flat_neck(given.get("section"), margin(given), given.get("thickness")) {
            Some(width) => Ok(vec![Answer::of("width", width).rounded_up()]),
            None => given.refuse(
                "thickness",
                "freezes before the casting, however wide",
                "make it thicker than twice the neck's modulus",
            ),
        },
    },
    Reckoner {
        name: "feeding-distance",
        question: "How far does a feeder reach along a plate?",
        law: &REACH,
        inputs: &[
            KIND,
            Input::of::<Length>("thickness", "s", "of the plate"),
            Input::choice(
                "towards",
                "a cold end, or the next feeder",
                &["end", "feeder"],
            )
            .or("end", "common-practice"),
            Input::number("thicknesses", "r", "reach in thicknesses, if you know it").optional(),
        ],
        example: &[("kind", "middle freezing range"), ("thickness", "12 mm")],
        cautions: &[],
        work: |given| distance(given),
    },
    Reckoner {
        name: "feeding-distance-bar",
        question: "How far does a feeder reach along a square bar of steel?",
        law: &REACH_ALONG_BAR,
        inputs: &[Input::of::<Length>("thickness", "s", "side of the bar")],
        example: &[("thickness", "50 mm")],
        cautions: &[],
        work: |given| {
            given.doubt(GUIDANCE);
            let reach = reach_along_bar(given.get("thickness"));
            Ok(vec![Answer::of("reach", reach).rounded_down()])
        },
    },
    Reckoner {
        name: "feeders-along",
        question: "How many feeders does a length of plate ask for?",
        law: &FEEDERS_ALONG,
        inputs: &[
            Input::of::<Length>("length", "l", "from cold end to cold end, less the feeders"),
            Input::of::<Length>("to_end", "e", "reach to a cold end"),
            Input::of::<Length>("to_next", "m", "reach towards the next feeder"),
        ],
        example: &[
            ("length", "400 mm"),
            ("to_end", "24 to 48 mm"),
            ("to_next", "12 to 24 mm"),
        ],
        cautions: &[],
        work: |given| {
            given.doubt(GUIDANCE);
            if given.number("to_next") <= 0.0 {
                return given.refuse("to_next", "is nought", "reckon feeding-distance first");
            }
            let (to_end, to_next) = (given.get("to_end"), given.get("to_next"));
            let count = feeders_along(given.get("length"), to_end, to_next);
            Ok(vec![Answer::number("feeders", f64::from(count))])
        },
    },
    Reckoner {
        name: "padding",
        question: "How thick must a section grow towards its feeder?",
        law: &PADDING,
        inputs: &[
            Input::of::<Length>("thickness", "s", "at the far end"),
            Input::of::<Length>("length", "l", "from there to the feeder"),
            Input::of::<Length>("reach", "r", "how far a feeder reaches: feeding-distance"),
        ],
        example: &[
            ("thickness", "10 mm"),
            ("length", "120 mm"),
            ("reach", "30 mm"),
        ],
        cautions: &[],
        work: |given| {
            given.doubt(GUIDANCE);
            let far_end = given.get("thickness");
            let thickness = padded_thickness(far_end, given.get("length"), given.get("reach"));
            if thickness > far_end * 2.0 {
                given.doubt("more than twice as thick: a second feeder or a chill is cheaper");
            }
            Ok(vec![
                Answer::of("thickness at the feeder", thickness).rounded_up(),
            ])
        },
    },
    Reckoner {
        name: "chill-area",
        question: "How large a face of chill brings a heavy section down to its neighbour?",
        law: &CHILL_AREA,
        inputs: &[VOLUME, SURFACE, WANTED, FASTER],
        example: &[
            ("volume", "40 cm3"),
            ("surface", "50 cm2"),
            ("wanted", "plate 12 mm"),
        ],
        cautions: &[DAMP_CHILL],
        work: |given| {
            let section = chilled(given);
            match chill_area(&section, given.number("faster")) {
                Some(area) => {
                    if area > section.surface {
                        given.doubt("more than all its surface: chill and feed it, or pad it");
                    }
                    Ok(vec![Answer::of("area", area).rounded_up()])
                }
                None => given.refuse(
                    "wanted",
                    "is no less than what the section has, or the chill no faster than sand",
                    "no chill is wanted there",
                ),
            }
        },
    },
    Reckoner {
        name: "chill-mass",
        question: "How heavy must a chill be to hold the heat it draws?",
        law: &CHILL_MASS,
        inputs: &[
            VOLUME,
            SURFACE,
            WANTED,
            CONTACT,
            Input::metal(),
            Input::of::<Density>("density", "ρ", "of the metal").of_metal(Property::LiquidDensity),
            Input::of::<HeatPerMass>("latent", "L", "heat of freezing")
                .of_metal(Property::LatentHeat),
            Input::of::<SpecificHeat>("liquid", "c", "specific heat of the liquid")
                .of_metal(Property::LiquidHeat),
            Input::of::<TemperatureDifference>("superheat", "ΔT", "above the liquidus")
                .or("100 K", "common-practice"),
            Input::choice("chill", "metal of the chill", &["iron", "steel", "copper"])
                .or("iron", "common-practice"),
            Input::of::<TemperatureDifference>("rise", "ΔT_ch", "by which the chill may warm")
                .or("200 to 400 K, likely 300 K", "common-practice"),
        ],
        example: &[
            ("volume", "40 cm3"),
            ("surface", "50 cm2"),
            ("wanted", "plate 12 mm"),
            ("contact", "8 cm2"),
            ("metal", "A356"),
        ],
        cautions: &[DAMP_CHILL],
        work: |given| mass_of_chill(given),
    },
    Reckoner {
        name: "chilled-modulus",
        question: "What modulus has a section with a chill on it?",
        law: &CHILLED_MODULUS,
        inputs: &[VOLUME, SURFACE, CONTACT, FASTER],
        example: &[
            ("volume", "40 cm3"),
            ("surface", "50 cm2"),
            ("contact", "8 cm2"),
        ],
        cautions: &[DAMP_CHILL],
        work: |given| {
            let (surface, contact): (Area, Area) = (given.get("surface"), given.get("contact"));
            if contact > surface {
                given.doubt("the chill covers more than the section has");
            }
            let faster = given.number("faster");
            let modulus = chilled_modulus(given.get("volume"), surface, contact, faster);
            Ok(vec![Answer::of("modulus", modulus)])
        },
    },
];

fn margin(given: &Given<'_>) -> f64 {
    match (given.has("margin"), given.words("iron")) {
        (true, _) => given.number("margin"),
        (false, "yes") => iron_neck_margin().likely(),
        (false, _) => neck_margin().likely(),
    }
}

/// Widened to the margins in use for the metal.
fn between_margins(given: &Given<'_>, answer: Answer) -> Answer {
    let margins = match given.words("iron") {
        "yes" => iron_neck_margin(),
        _ => neck_margin(),
    };
    answer.times(
        margins.low() / margins.likely(),
        margins.high() / margins.likely(),
    )
}

fn distance(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    given.doubt(GUIDANCE);
    let thickness: Length = given.get("thickness");
    if given.has("thicknesses") {
        let reach = reach(thickness, given.number("thicknesses"));
        return Ok(vec![Answer::of("reach", reach).rounded_down()]);
    }
    let Some(row) = reach_row(given.words("kind")) else {
        return given.refuse("kind", "is none of the table", "look at the list of kinds");
    };
    let Some([to_end, to_next]) = row.thicknesses else {
        return Ok(vec![Answer::words("reach", row.words.clone())]);
    };
    let band = match given.words("towards") {
        "feeder" => to_next,
        _ => to_end,
    };
    let at = |thicknesses: f64| reach(thickness, thicknesses);
    let answer = Answer::of("reach", at(band.likely())).between(at(band.low()), at(band.high()));
    Ok(vec![
        answer.rounded_down(),
        Answer::words("metals", row.words.clone()),
    ])
}

fn chilled(given: &Given<'_>) -> Chilled {
    Chilled {
        volume: given.get("volume"),
        surface: given.get("surface"),
        wanted: given.get("wanted"),
    }
}

fn mass_of_chill(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let chill = chill_metals()
        .iter()
        .find(|row| row.name == given.words("chill"));
    let Some(chill) = chill else {
        return given.refuse(
            "chill",
            "is no metal of chills",
            "iron, steel, copper or graphite",
        );
    };
    let superheat: TemperatureDifference = given.get("superheat");
    let liquid: SpecificHeat = given.get("liquid");
    let latent: HeatPerMass = given.get("latent");
    let heat = latent + HeatPerMass::from_j_per_kg(liquid.as_j_per_kg_k() * superheat.as_kelvin());
    let (section, contact) = (chilled(given), given.get("contact"));
    let rise = given.get("rise");
    let mass = chill_mass(
        &section,
        contact,
        given.get("density"),
        heat,
        chill.heat,
        rise,
    );
    let thickness = chill_thickness(mass, chill.density, contact);
    if thickness > section.wanted * 4.0 {
        given.doubt(
            "thicker than twice the section beside it: the far side stays cold, so \
                     spread the chill over more face",
        );
    }
    Ok(vec![
        Answer::of("mass", mass).rounded_up(),
        Answer::of("thickness on that face", thickness).rounded_up(),
    ])
}
