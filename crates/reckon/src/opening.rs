//! When the mould may be opened, what the heat does to the sand, and whether the casting cracks.

use measure::flow::Duration;
use measure::heat::{HeatDrawing, HeatPerMass, SpecificHeat, Temperature, TemperatureDifference};
use measure::length::Length;
use measure::matter::{Density, Mass};
use mould::cooling::Poured;
use mould::heat_soak::{BURNT_DEPTH, SOAK_DEPTH, burnt_depth, soak_depth};
use mould::opening::{
    COOLING_IN_AIR, MARKS, OpeningRow, cooling_in_air, marks, opening_row, opening_rows,
};
use mould::restraint::{
    RESTRAINT, Wheel, WheelChange, WheelModuli, WheelPart, changes, freezing_order, restraint,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const MODULUS: Input = Input::new(
    "section",
    "M",
    "modulus of the heaviest section, feeder and basin counted",
    Wanted::Body,
);
const MASS: Input = Input::of::<Mass>("poured", "", "all metal in the mould");
const SAND_MASS: Input = Input::of::<Mass>("sand_mass", "", "sand in the flask");
const DENSITY: Input =
    Input::of::<Density>("density", "ρ", "metal").of_metal(Property::LiquidDensity);
const LATENT: Input =
    Input::of::<HeatPerMass>("latent", "L", "heat of freezing").of_metal(Property::LatentHeat);
const LIQUID_HEAT: Input = Input::of::<SpecificHeat>("liquid", "c", "specific heat of the liquid")
    .of_metal(Property::LiquidHeat);
const SOLID_HEAT: Input = Input::of::<SpecificHeat>("solid", "c_s", "specific heat of the solid")
    .of_metal(Property::SolidHeat);
const SUPERHEAT: Input =
    Input::of::<TemperatureDifference>("superheat", "ΔT", "how far above the liquidus it enters")
        .or("100 K", "common-practice");
const SOLIDUS: Input = Input::of::<Temperature>("solidus", "T_s", "where the last metal freezes")
    .of_metal(Property::Solidus);
const SAND: Input = Input::of::<HeatDrawing>("sand", "b", "how hard the sand drinks heat")
    .or(
        "900 to 1300 Ws^0.5/m2K, likely 1080 Ws^0.5/m2K",
        "feeder-lecture",
    )
    .narrowed_by("time one slab in your own sand: reckon slab-trial, then sand-thirst");

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "opening",
        question: "When may I open the mould, and when may I take the casting in the hand?",
        law: &MARKS,
        inputs: &[
            MODULUS,
            MASS,
            SAND_MASS,
            Input::metal(),
            Input::choice(
                "family",
                "in place of the metal, for the temperatures of the marks",
                &["aluminium", "copper", "zinc", "iron", "tin"],
            )
            .optional(),
            Input::choice(
                "sections",
                "uneven where the heaviest is one and a half times the thinnest or more",
                &["even", "uneven"],
            )
            .or("even", "common-practice"),
            DENSITY,
            LATENT,
            LIQUID_HEAT,
            SOLID_HEAT,
            SUPERHEAT,
            SOLIDUS,
            SAND,
            Input::choice("bond", "what bonds the sand", &["clay", "oil"])
                .or("clay", "common-practice"),
        ],
        example: &[
            ("section", "8 mm"),
            ("poured", "5.9 kg"),
            ("sand_mass", "40 kg"),
            ("metal", "grey iron"),
        ],
        cautions: &[
            "wait for the high end of the range: nothing is lost but time",
            "opened early it is liquid inside and red outside: burns, and a flare where the sand \
             has oil or sugar in it",
            "the sand round it scalds long after the casting is dark; never water on it",
        ],
        work: |given| {
            let row = match given.words("sections") {
                "uneven" => row(given)?.for_uneven(),
                _ => row(given)?.clone(),
            };
            let Some(marks) = marks(&poured(given)?, &row) else {
                return given.refuse(
                    "poured",
                    "is not cold in a fortnight",
                    "look at the figures; so much metal in so little sand has to be laid open",
                );
            };
            if given.number("sand_mass") < 3.0 * given.number("poured") {
                given.doubt("under three times the metal's mass the sand grows hot through");
            }
            let marks = match given.words("bond") {
                "oil" => {
                    given.doubt("oil in hot sand flares when air reaches it: not in the same hour");
                    marks.in_oil_sand()
                }
                _ => marks,
            };
            Ok(vec![
                Answer::of("may be opened after", marks.open).rounded_up(),
                Answer::of("leave alone until", marks.leave).rounded_up(),
                Answer::of("may be handled after", marks.handle).rounded_up(),
                Answer::temperature("opened below", row.open),
            ])
        },
    },
    Reckoner {
        name: "cooling-in-air",
        question: "How long does a casting still burn the hand once it is out of the sand?",
        law: &COOLING_IN_AIR,
        inputs: &[
            Input::new(
                "section",
                "M",
                "modulus of its heaviest section",
                Wanted::Body,
            ),
            Input::metal(),
            Input::of::<Density>("density", "ρ", "metal").of_metal(Property::SolidDensity),
            Input::of::<SpecificHeat>("solid", "c", "specific heat of the solid")
                .of_metal(Property::SolidHeat),
            Input::of::<Temperature>("from", "T", "how hot it came out"),
        ],
        example: &[("section", "6 mm"), ("metal", "A356"), ("from", "250 C")],
        cautions: &[
            "hot aluminium and bronze look cold: a drop of water on the metal hisses, or gloves",
            "never quench a casting in water, least of all with sand or a core on it",
        ],
        work: |given| {
            let (density, heat) = (given.get("density"), given.get("solid"));
            let time = cooling_in_air(given.get("section"), density, heat, given.get("from"));
            Ok(vec![Answer::of("time", time).rounded_up()])
        },
    },
    Reckoner {
        name: "heat-soak",
        question: "How deep has heat gone into the sand behind a face held hot?",
        law: &SOAK_DEPTH,
        inputs: &[
            Input::of::<Temperature>("face", "T_face", "temperature of the face"),
            Input::of::<Temperature>("mark", "T", "temperature looked for in the sand"),
            SAND,
            Input::of::<Duration>("time", "t", "for how long"),
        ],
        example: &[("face", "1130 C"), ("mark", "600 C"), ("time", "4 min")],
        cautions: &[],
        work: |given| {
            let depth = soak_depth(
                given.get("face"),
                given.get("mark"),
                given.get("sand"),
                given.get("time"),
            );
            Ok(vec![Answer::of("depth", depth)])
        },
    },
    Reckoner {
        name: "burnt-sand",
        question: "How thick a crust of sand has the casting burnt?",
        law: &BURNT_DEPTH,
        inputs: &[
            MODULUS,
            MASS,
            SAND_MASS,
            Input::of::<Temperature>(
                "mark",
                "T_mark",
                "above which the bond is dead: sodium \
                bentonite 600 °C, calcium 320 to 450, sugar 450 to 550",
            )
            .or("600 C", "sand-death-memory"),
            Input::metal(),
            DENSITY,
            LATENT,
            LIQUID_HEAT,
            SOLID_HEAT,
            SUPERHEAT,
            SOLIDUS,
            SAND,
        ],
        example: &[
            ("section", "8 mm"),
            ("poured", "5.9 kg"),
            ("sand_mass", "40 kg"),
            ("metal", "grey iron"),
        ],
        cautions: &["burnt sand is dusty: damp it and wear a mask before you scrape"],
        work: |given| {
            let depth = burnt_depth(&poured(given)?, given.get("mark"));
            if depth == Length::ZERO {
                given.doubt("this metal does not heat the sand so far");
            }
            Ok(vec![Answer::of("depth", depth)])
        },
    },
    Reckoner {
        name: "wheel-restraint",
        question: "How hard is a wheel held while it shrinks: will its spokes crack?",
        law: &RESTRAINT,
        inputs: &[
            Input::of::<Length>("radius", "", "of the middle line of the rim"),
            Input::of::<Length>("rim", "", "thickness of the rim, as round"),
            Input::of::<Length>("spoke", "", "thickness of a spoke, as round"),
            Input::of::<Length>("spoke_length", "", "between hub and rim"),
            Input::of::<Length>("bow", "", "how far a spoke bows out of the straight line")
                .or("0 mm", "common-practice"),
            Input::number("spokes", "n", "number of spokes"),
            Input::new(
                "hub_modulus",
                "",
                "modulus of the hub, or a body",
                Wanted::Body,
            ),
            Input::new(
                "rim_modulus",
                "",
                "modulus of the rim, or a body",
                Wanted::Body,
            ),
            Input::new(
                "spoke_modulus",
                "",
                "modulus of the spokes, or a body",
                Wanted::Body,
            ),
        ],
        example: &[
            ("radius", "117 mm"),
            ("rim", "26 mm"),
            ("spoke", "16 mm"),
            ("spoke_length", "74 mm"),
            ("spokes", "5"),
            ("hub_modulus", "8.4 mm"),
            ("rim_modulus", "rod 26 mm"),
            ("spoke_modulus", "rod 16 mm"),
        ],
        cautions: &[
            "a cracked wheel flies apart or gives way: anything that lifts, brakes or \
                     guards has to be proved, whatever this says",
        ],
        work: |given| wheel(given).map(|wheel| wheel_answers(given, &wheel)),
    },
];

fn row(given: &Given<'_>) -> Result<&'static OpeningRow, Impossible> {
    let family = match given.alloy() {
        Some(alloy) => alloy.family.word(),
        None => given.words("family"),
    };
    match opening_row(family) {
        Some(row) => Ok(row),
        None => given.refuse(
            "family",
            "is wanted where no metal is named",
            opening_rows()
                .iter()
                .map(|row| row.name.as_str())
                .collect::<Vec<_>>()
                .join(", "),
        ),
    }
}

fn poured(given: &Given<'_>) -> Result<Poured, Impossible> {
    let solidus: Temperature = given.get("solidus");
    if solidus <= mould::freezing::SAND_AT_REST {
        return given.refuse("solidus", "is no hotter than the sand", "look at its unit");
    }
    for key in [
        "section",
        "poured",
        "sand_mass",
        "density",
        "latent",
        "liquid",
        "solid",
        "sand",
    ] {
        let amount = given.number(key);
        if amount <= 0.0 || !(1e-6..1e9).contains(&amount) {
            return given.refuse(
                "figures",
                format!("{key} is no such amount"),
                "look at its unit",
            );
        }
    }
    Ok(Poured {
        modulus: given.get("section"),
        mass: given.get("poured"),
        density: given.get("density"),
        latent: given.get("latent"),
        liquid_heat: given.get("liquid"),
        solid_heat: given.get("solid"),
        superheat: given.get("superheat"),
        solidus,
        sand: given.get("sand"),
        sand_mass: given.get("sand_mass"),
    })
}

fn wheel(given: &Given<'_>) -> Result<Wheel, Impossible> {
    let spokes = given.number("spokes");
    if !(2.0..=200.0).contains(&spokes) {
        return given.refuse("spokes", "are two or more", "count them");
    }
    Ok(Wheel {
        radius: given.get("radius"),
        rim: given.get("rim"),
        spoke: given.get("spoke"),
        spoke_length: given.get("spoke_length"),
        bow: given.get("bow"),
        spokes: spokes as u32,
        moduli: WheelModuli {
            hub: given.get("hub_modulus"),
            rim: given.get("rim_modulus"),
            spokes: given.get("spoke_modulus"),
        },
    })
}

fn wheel_answers(given: &Given<'_>, wheel: &Wheel) -> Vec<Answer> {
    let order = freezing_order(&wheel.moduli).map(part_word).join(", then ");
    given.doubt("an index for comparing two drawings of one wheel, not a stress");
    given.doubt("no number of spokes alone cures a wheel: open it late, ease the heavy part");
    let mut answers = vec![
        Answer::number("index", restraint(wheel)),
        Answer::words("freezes first", order),
    ];
    answers.extend(changes(wheel).into_iter().map(|change| {
        let name = match change.change {
            WheelChange::CurveSpokes => "with spokes bowed by one and a half thicknesses",
            WheelChange::OddSpokes => "with one spoke fewer, an odd number",
            WheelChange::ChillTheLast => "with what freezes last chilled to the next",
        };
        Answer::number(name, change.leaves)
    }));
    answers
}

fn part_word(part: WheelPart) -> &'static str {
    match part {
        WheelPart::Hub => "hub",
        WheelPart::Rim => "rim",
        WheelPart::Spokes => "spokes",
    }
}
