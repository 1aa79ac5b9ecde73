//! How long a section takes to freeze.

use measure::flow::{Duration, FreezingConstant};
use measure::heat::{
    Conductivity, HeatDrawing, HeatPerMass, SpecificHeat, Temperature, TemperatureDifference,
};
use measure::length::Length;
use measure::matter::Density;
use metal::solid_share::{EVEN, SEGREGATION, even_share, segregated_share};
use mould::freezing::{
    FREEZING_TIME, FreezingHeat, MOULD_CONSTANT, ROUND_FREEZING_TIME, Round, SUPERHEAT_FACTOR,
    TRIAL_CONSTANT, TRIAL_THIRST, constant_from_trial, freezing_time, mould_constant,
    round_freezing_time, superheat_factor, thirst_from_trial,
};
use mould::niyama::{NIYAMA, niyama};
use mould::simple_body::{Bore, SIMPLE_MODULUS, Side, SimpleBody, simple_modulus};
use mould::skin::{SKIN_ON_SAND, TIME_ON_COLD_FACE, skin_on_sand, time_on_cold_face};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const DENSITY: Input =
    Input::of::<Density>("density", "ρ", "metal at its freezing").of_metal(Property::LiquidDensity);
const LATENT: Input =
    Input::of::<HeatPerMass>("latent", "L", "heat of freezing").of_metal(Property::LatentHeat);
const LIQUID_HEAT: Input = Input::of::<SpecificHeat>("liquid", "c", "specific heat of the liquid")
    .of_metal(Property::LiquidHeat);
const SUPERHEAT: Input =
    Input::of::<TemperatureDifference>("superheat", "ΔT", "how far above the liquidus it enters");
const SOLIDUS: Input = Input::of::<Temperature>("solidus", "T_s", "where the last metal freezes")
    .of_metal(Property::Solidus);
const SAND: Input = Input::of::<HeatDrawing>("sand", "b", "how hard the sand drinks heat")
    .or(
        "900 to 1300 Ws^0.5/m2K, likely 1080 Ws^0.5/m2K",
        "feeder-lecture",
    )
    .narrowed_by("time one slab in your own sand: reckon slab-trial, then sand-thirst");

const LIQUIDUS: Input =
    Input::of::<Temperature>("liquidus", "T_L", "where the first metal freezes")
        .of_metal(Property::Liquidus);
const BASE: Input = Input::of::<Temperature>("base", "T_m", "where the base metal alone melts");
const PARTITION: Input = Input::number(
    "partition",
    "k",
    "what the solid holds of the other element beside the liquid",
);
const AT: Input = Input::of::<Temperature>("at", "T", "the temperature asked about");

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "sponge-criterion",
        question: "How likely is sponge where the last metal freezes, beside another place?",
        law: &NIYAMA,
        inputs: &[
            Input::number("gradient", "G", "fall of temperature there, K for each mm"),
            Input::number("cooling", "Ṫ", "how fast it cools there, K for each second"),
        ],
        example: &[("gradient", "1"), ("cooling", "1.6667")],
        cautions: &[],
        work: |given| {
            let cooling = given.number("cooling");
            if cooling <= 0.0 {
                return given.refuse(
                    "cooling",
                    "is not above nought",
                    "it holds while the place cools: give it like 1.5",
                );
            }
            let value = niyama(given.number("gradient"), cooling);
            given.doubt("the lower, the likelier; outside of steel only beside another place");
            Ok(vec![Answer::number("criterion", value)])
        },
    },
    Reckoner {
        name: "solid-share",
        question: "How much of an alloy is solid at a temperature, if the solid keeps what it froze with?",
        law: &SEGREGATION,
        inputs: &[AT, LIQUIDUS, BASE, PARTITION],
        example: &[
            ("at", "590 C"),
            ("liquidus", "614 C"),
            ("base", "660 C"),
            ("partition", "0.13"),
        ],
        cautions: &[],
        work: |given| solid_share(given, segregated_share),
    },
    Reckoner {
        name: "solid-share-even",
        question: "How much of an alloy is solid at a temperature, if solid and liquid even out?",
        law: &EVEN,
        inputs: &[AT, LIQUIDUS, BASE, PARTITION],
        example: &[
            ("at", "590 C"),
            ("liquidus", "614 C"),
            ("base", "660 C"),
            ("partition", "0.13"),
        ],
        cautions: &[],
        work: |given| solid_share(given, even_share),
    },
    Reckoner {
        name: "plain-body",
        question: "What is the modulus of a plain body, with the faces that do not cool left out?",
        law: &SIMPLE_MODULUS,
        inputs: &[
            Input::choice(
                "body",
                "what it is: block (plate, bar, cube), ball, round (bar, disc, tube)",
                &["block", "ball", "round"],
            ),
            Input::of::<Length>("thickness", "a", "block: first side").optional(),
            Input::of::<Length>("width", "b", "block: second side, nothing if long").optional(),
            Input::of::<Length>("length", "c", "block: third side, nothing if long").optional(),
            Input::of::<Length>("diameter", "D", "ball or round: outside").optional(),
            Input::of::<Length>("bore", "d", "round: bore").optional(),
            Input::of::<Length>("height", "H", "round: along the axis, nothing if long").optional(),
            Input::number(
                "thickness_faces",
                "i",
                "faces across the first side that cool",
            )
            .or("2", "common-practice"),
            Input::number("width_faces", "j", "faces across the second side that cool")
                .or("2", "common-practice"),
            Input::number("length_faces", "k", "faces across the third side that cool")
                .or("2", "common-practice"),
            Input::number("ends", "n", "round: ends that cool").or("2", "common-practice"),
            Input::choice(
                "core",
                "whether the core in the bore still drinks heat",
                &["cools", "hot"],
            )
            .or("cools", "common-practice"),
        ],
        example: &[
            ("body", "block"),
            ("thickness", "20 mm"),
            ("width", "30 mm"),
        ],
        cautions: &[],
        work: |given| match simple_modulus(&body(given)?) {
            Some(modulus) => Ok(vec![Answer::of("modulus", modulus)]),
            None => given.refuse(
                "faces",
                "none of them cools",
                "give the faces that lie on sand",
            ),
        },
    },
    Reckoner {
        name: "freezing-time",
        question: "How long does a section take to freeze?",
        law: &FREEZING_TIME,
        inputs: &[
            Input::new("section", "M", "its modulus, or a plain body", Wanted::Body),
            Input::of::<FreezingConstant>("constant", "C", "mould constant")
                .optional()
                .narrowed_by("time one slab in your own sand"),
            Input::new("first", "", "a section that was timed", Wanted::Body).optional(),
            Input::of::<Duration>("first_time", "", "the time in which it froze").optional(),
        ],
        example: &[
            ("section", "plate 12 mm"),
            ("first", "plate 20 mm"),
            ("first_time", "5 min"),
        ],
        cautions: &[],
        work: |given| {
            let time = freezing_time(constant(given)?, given.get("section"));
            Ok(vec![Answer::of("time", time)])
        },
    },
    Reckoner {
        name: "mould-constant",
        question: "What is the mould constant of a metal in a sand?",
        law: &MOULD_CONSTANT,
        inputs: &[
            Input::metal(),
            DENSITY,
            LATENT,
            LIQUID_HEAT,
            SUPERHEAT,
            SOLIDUS,
            SAND,
        ],
        example: &[("metal", "A356"), ("superheat", "90 K")],
        cautions: &[],
        work: |given| {
            let heat = freezing_heat(given, given.get("sand"))?;
            Ok(vec![Answer::of("constant", mould_constant(&heat))])
        },
    },
    Reckoner {
        name: "slab-trial",
        question: "What is the constant of my own mould, from one slab that was timed?",
        law: &TRIAL_CONSTANT,
        inputs: &[
            Input::new(
                "section",
                "M",
                "modulus of the slab, or a plain body",
                Wanted::Body,
            ),
            Input::of::<Duration>(
                "time",
                "t",
                "from full to frozen, with the error of the watch",
            )
            .narrowed_by("time a thicker slab, or the same one three times"),
            Input::number(
                "true_to_size",
                "",
                "thickness of the casting over what was meant",
            )
            .or("0.97 to 1.03", "common-practice")
            .narrowed_by("measure the slab once it is cold"),
        ],
        example: &[
            ("section", "block 150 x 100 x 20 mm"),
            ("time", "4.5 min ± 0.3 min"),
        ],
        cautions: &[],
        work: |given| {
            let slab: Length = given.get("section");
            let constant =
                constant_from_trial(slab * given.number("true_to_size"), given.get("time"));
            if slab < Length::from_mm(5.0) {
                given
                    .doubt("a slab under 10 mm freezes while it is still being poured: take 20 mm");
            }
            Ok(vec![Answer::of("constant", constant)])
        },
    },
    Reckoner {
        name: "sand-thirst",
        question: "How hard does my sand drink heat, so that a trial serves another metal?",
        law: &TRIAL_THIRST,
        inputs: &[
            Input::metal(),
            DENSITY,
            LATENT,
            LIQUID_HEAT,
            SUPERHEAT,
            SOLIDUS,
            Input::of::<FreezingConstant>("constant", "C", "constant of the trial: slab-trial"),
        ],
        example: &[
            ("metal", "A356"),
            ("superheat", "90 K"),
            ("constant", "5.5 to 6.5 min/cm2"),
        ],
        cautions: &[],
        work: |given| {
            let metal = freezing_heat(given, HeatDrawing::ZERO)?;
            let thirst = thirst_from_trial(&metal, given.get("constant"));
            let usual = [700.0, 1700.0].map(HeatDrawing::from_w_rts_per_m2_k);
            if thirst < usual[0] || thirst > usual[1] {
                given.doubt("no moulding sand drinks so: look at the time and the thickness again");
            }
            Ok(vec![Answer::of("sand", thirst)])
        },
    },
    Reckoner {
        name: "superheat-factor",
        question: "How much longer does a section take to freeze for the superheat?",
        law: &SUPERHEAT_FACTOR,
        inputs: &[Input::metal(), LATENT, LIQUID_HEAT, SUPERHEAT],
        example: &[("metal", "A356"), ("superheat", "90 K")],
        cautions: &[],
        work: |given| {
            let factor = superheat_factor(
                given.get("latent"),
                given.get("liquid"),
                given.get("superheat"),
            );
            given.doubt(
                "encyclopaedias print 1 + (c ΔT / L)², a slip of the bracket: it is shown beside \
                 the balance of heat and should not be used",
            );
            Ok(vec![
                Answer::number("factor", factor.balance),
                Answer::number("with the bracket misplaced", factor.misplaced),
            ])
        },
    },
    Reckoner {
        name: "round-freezing-time",
        question: "How long does a ball or a round bar take to freeze?",
        law: &ROUND_FREEZING_TIME,
        inputs: &[
            Input::new("section", "M", "its modulus, or a plain body", Wanted::Body),
            Input::of::<FreezingConstant>("constant", "C", "mould constant"),
            Input::choice("shape", "what it is", &["ball", "bar"]),
        ],
        example: &[
            ("section", "ball 60 mm"),
            ("constant", "5.5 min/cm2"),
            ("shape", "ball"),
        ],
        cautions: &[],
        work: |given| {
            let round = match given.words("shape") {
                "ball" => Round::Ball,
                _ => Round::Bar,
            };
            let (constant, section) = (given.get("constant"), given.get("section"));
            let plain = freezing_time(constant, section);
            given.doubt(
                "seen in an abstract only; the plain rule takes the shape for a plate and is the \
                 late side for a casting, the hopeful side for a feeder",
            );
            Ok(vec![
                Answer::of("time", round_freezing_time(constant, section, round)),
                Answer::of("by the plain rule", plain),
            ])
        },
    },
    Reckoner {
        name: "skin-on-sand",
        question: "How thick is the skin on sand after some time?",
        law: &SKIN_ON_SAND,
        inputs: &[
            Input::metal(),
            SAND,
            SOLIDUS,
            DENSITY,
            LATENT,
            Input::of::<Duration>("time", "t", "since the face was covered"),
        ],
        example: &[("metal", "Al 99.5"), ("time", "20 s")],
        cautions: &["a skin is no lid: what is liquid behind it still burns and runs out"],
        work: |given| {
            let skin = skin_on_sand(
                given.get("sand"),
                given.get("solidus"),
                given.get("density"),
                given.get("latent"),
                given.get("time"),
            );
            Ok(vec![Answer::of("skin", skin).rounded_down()])
        },
    },
    Reckoner {
        name: "cold-face-time",
        question: "How soon at best does a thickness freeze on a chill?",
        law: &TIME_ON_COLD_FACE,
        inputs: &[
            Input::of::<Length>("thickness", "s", "what is to freeze, from one face"),
            Input::metal(),
            DENSITY,
            LATENT,
            Input::of::<Conductivity>("conductivity", "k", "of the frozen metal"),
            Input::of::<TemperatureDifference>("below", "ΔT", "face of the chill below freezing"),
        ],
        example: &[
            ("thickness", "10 mm"),
            ("metal", "Al 99.5"),
            ("conductivity", "210 W/mK"),
            ("below", "200 K"),
        ],
        cautions: &[],
        work: |given| {
            let time = time_on_cold_face(
                given.get("thickness"),
                given.get("density"),
                given.get("latent"),
                given.get("conductivity"),
                given.get("below"),
            );
            given.doubt("a real chill touches badly and warms: it takes several times as long");
            Ok(vec![Answer::of("time", time)])
        },
    },
];

/// The constant itself, or that of a mould in which a first section froze in a known time.
fn constant(given: &Given<'_>) -> Result<FreezingConstant, Impossible> {
    match (
        given.find("constant"),
        given.find("first"),
        given.find("first_time"),
    ) {
        (Some(constant), None, None) => Ok(constant),
        (None, Some(first), Some(time)) => Ok(constant_from_trial(first, time)),
        _ => given.refuse(
            "constant",
            "is one way, a first section with the time it took the other",
            "give one of the two",
        ),
    }
}

fn freezing_heat(given: &Given<'_>, sand: HeatDrawing) -> Result<FreezingHeat, Impossible> {
    let solidus: Temperature = given.get("solidus");
    if solidus <= mould::freezing::SAND_AT_REST {
        return given.refuse("solidus", "is no hotter than the sand", "look at its unit");
    }
    Ok(FreezingHeat {
        density: given.get("density"),
        latent: given.get("latent"),
        liquid_heat: given.get("liquid"),
        superheat: given.get("superheat"),
        solidus,
        sand,
    })
}

fn body(given: &Given<'_>) -> Result<SimpleBody, Impossible> {
    let side = |key: &str, faces: f64| Side {
        across: given.find(key),
        // Faces are counted: whatever is typed, there are none, one or two.
        cooling: faces.clamp(0.0, 2.0) as u8,
    };
    match given.words("body") {
        "block" => Ok(SimpleBody::Block([
            side("thickness", given.number("thickness_faces")),
            side("width", given.number("width_faces")),
            side("length", given.number("length_faces")),
        ])),
        "ball" => Ok(SimpleBody::Ball {
            diameter: diameter(given)?,
        }),
        _ => round(given, side("height", given.number("ends"))),
    }
}

fn round(given: &Given<'_>, height: Side) -> Result<SimpleBody, Impossible> {
    let diameter = diameter(given)?;
    let bore = given.find::<Length>("bore");
    if bore.is_some_and(|bore| bore >= diameter) {
        return given.refuse(
            "bore",
            "is no smaller than the outside",
            "give the inside width",
        );
    }
    Ok(SimpleBody::Round {
        diameter,
        bore: bore.map(|diameter| Bore {
            diameter,
            cools: given.words("core") == "cools",
        }),
        height,
    })
}

fn diameter(given: &Given<'_>) -> Result<Length, Impossible> {
    match given.find("diameter") {
        Some(diameter) => Ok(diameter),
        None => given.refuse("diameter", "is wanted for what is round", "give it"),
    }
}

/// The share by one of the two laws, between the liquidus and where all is solid.
fn solid_share(
    given: &Given<'_>,
    law: fn(Temperature, Temperature, f64, Temperature) -> f64,
) -> Result<Vec<Answer>, Impossible> {
    let (base, liquidus): (Temperature, Temperature) = (given.get("base"), given.get("liquidus"));
    let (at, partition): (Temperature, f64) = (given.get("at"), given.number("partition"));
    if base <= liquidus {
        return given.refuse(
            "base",
            "is not above the liquidus",
            "the law holds where adding the other element lowers the melting point",
        );
    }
    if !(0.0..1.0).contains(&partition) {
        return given.refuse("partition", "is not between 0 and 1", "give it like 0.13");
    }
    if at > liquidus {
        return Ok(vec![Answer::share("solid", 0.0)]);
    }
    let share = law(base, liquidus, partition, at);
    if share > 1.0 {
        given.doubt("below the solidus all is solid");
    }
    Ok(vec![Answer::share("solid", share.min(1.0))])
}
