//! What to charge, and what it takes to melt it.

use measure::heat::{Heat, HeatPerMass, SpecificHeat, Temperature, TemperatureDifference};
use measure::length::{Length, Volume};
use measure::matter::{Density, Mass};
use metal::casting_mass::{
    CASTING_MASS, PATTERN_MASS, WITH_BUTTON, casting_mass, pattern_mass, with_button,
};
use metal::charge::{CHARGE, PIG, charge, pig};
use metal::crucible::{BRIM_VOLUME, HELD, brim_volume, held};
use metal::melt::{FUEL_HEAT, HEAT_TO_MELT, Melting, fuel_heat, heat_to_melt};
use metal::shrinkage::{
    FEED_DEMAND, FEED_VOLUME, SOLID_SIDE, SOLID_VOLUME, feed_demand, feed_volume, solid_side,
    solid_volume,
};

use crate::answer::Answer;
use crate::input::{Input, Property};
use crate::reckoner::Reckoner;

/// Said wherever metal is melted.
const DRY: &str = "Everything that touches liquid metal is dry and warm: charge, tongs, skimmer, \
                   ingot mould, floor. A drop of water throws it out.";

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "casting-mass",
        question: "How heavy is the casting?",
        law: &CASTING_MASS,
        inputs: &[
            Input::of::<Volume>("volume", "V", "its volume"),
            Input::metal(),
            Input::of::<Density>("density", "ρ", "density of the metal")
                .of_metal(Property::SolidDensity),
        ],
        example: &[("volume", "130 cm3"), ("metal", "gunmetal")],
        cautions: &[],
        work: |given| {
            let mass = casting_mass(given.get("volume"), given.get("density"));
            Ok(vec![Answer::of("mass", mass)])
        },
    },
    Reckoner {
        name: "mass-from-pattern",
        question: "How heavy is the casting, from the weight of its pattern?",
        law: &PATTERN_MASS,
        inputs: &[
            Input::of::<Mass>("pattern_mass", "m_pattern", "the pattern on the scale"),
            Input::of::<Density>("pattern_density", "ρ_pattern", "what it is made of")
                .narrowed_by("weigh it in water too: the volume follows without the density"),
            Input::metal(),
            Input::of::<Density>("metal_density", "ρ_metal", "density of the metal")
                .of_metal(Property::SolidDensity),
        ],
        example: &[
            ("pattern_mass", "250 g"),
            ("pattern_density", "0.4 to 0.6 g/cm3"),
            ("metal", "grey iron"),
        ],
        cautions: &[],
        work: |given| {
            let mass = pattern_mass(
                given.get("pattern_mass"),
                given.get("pattern_density"),
                given.get("metal_density"),
            );
            Ok(vec![Answer::of("metal_mass", mass)])
        },
    },
    Reckoner {
        name: "mass-with-button",
        question: "How much metal with an allowance for button and sprue?",
        law: &WITH_BUTTON,
        inputs: &[
            Input::of::<Mass>("casting_mass", "m_casting", "the casting"),
            Input::share("allowance", "a", "allowance").or("10 %", "common-practice"),
        ],
        example: &[("casting_mass", "93.6 g")],
        cautions: &[],
        work: |given| {
            let mass = with_button(given.get("casting_mass"), given.number("allowance"));
            Ok(vec![Answer::of("metal_mass", mass).rounded_up()])
        },
    },
    Reckoner {
        name: "pig",
        question: "How much metal to keep for the ingot mould, so that the mould never runs short?",
        law: &PIG,
        inputs: &[
            Input::of::<Mass>("poured", "m_poured", "metal the mould takes"),
            Input::share("pig_share", "p", "share kept").or("10 %", "common-practice"),
        ],
        example: &[("poured", "4.2 kg")],
        cautions: &[DRY],
        work: |given| {
            let mass = pig(given.get("poured"), given.number("pig_share"));
            Ok(vec![Answer::of("pig", mass).rounded_up()])
        },
    },
    Reckoner {
        name: "charge",
        question: "How much metal must I melt so that I do not run short?",
        law: &CHARGE,
        inputs: &[
            Input::of::<Mass>("poured", "m_poured", "castings, feeders, running system"),
            Input::share("pig_share", "", "share kept for the ingot mould")
                .or("10 %", "common-practice"),
            Input::share("loss", "l", "melt loss")
                .narrowed_by("weigh what goes in and what comes out of three heats"),
        ],
        example: &[("poured", "4.2 kg"), ("loss", "2 to 5 %")],
        cautions: &[DRY],
        work: |given| {
            let loss = given.number("loss");
            if loss >= 0.5 {
                given.doubt("half the charge lost: only drink cans melt so badly");
            }
            if loss >= 1.0 {
                return given.refuse(
                    "loss",
                    "leaves no metal",
                    "give it as a share of the charge",
                );
            }
            let mass = charge(given.get("poured"), given.number("pig_share"), loss);
            Ok(vec![Answer::of("charge", mass).rounded_up()])
        },
    },
    Reckoner {
        name: "crucible-volume",
        question: "How much does a crucible of a mark hold to the brim?",
        law: &BRIM_VOLUME,
        inputs: &[Input::number("mark", "n", "the number on the crucible")],
        example: &[("mark", "6")],
        cautions: &[],
        work: |given| {
            let volume = brim_volume(given.number("mark"));
            Ok(vec![Answer::of("volume", volume).rounded_down()])
        },
    },
    Reckoner {
        name: "crucible-holds",
        question: "How much metal may the crucible hold at work?",
        law: &HELD,
        inputs: &[
            Input::of::<Volume>("brim", "V", "what it holds to the brim"),
            Input::share("fill", "f", "how far it is filled").or("80 %", "common-practice"),
            Input::metal(),
            Input::of::<Density>("liquid_density", "ρ_liquid", "density of the liquid metal")
                .of_metal(Property::LiquidDensity),
        ],
        example: &[("brim", "1.15 l"), ("metal", "gunmetal")],
        cautions: &[DRY],
        work: |given| {
            let fill = given.number("fill");
            if fill > 0.9 {
                given.doubt("fuller than nine tenths: it slops when it is carried");
            }
            let mass = held(given.get("brim"), fill, given.get("liquid_density"));
            Ok(vec![Answer::of("mass", mass).rounded_down()])
        },
    },
    Reckoner {
        name: "heat-to-melt",
        question: "How much heat does the charge take up?",
        law: &HEAT_TO_MELT,
        inputs: &[
            Input::of::<Mass>("mass", "m", "the charge"),
            Input::of::<Temperature>("from", "T_0", "as it is charged")
                .or("20 C", "common-practice"),
            Input::of::<Temperature>("to", "T_p", "as it is to be poured"),
            Input::metal(),
            Input::of::<SpecificHeat>("solid", "c_s", "mean specific heat of the solid")
                .of_metal(Property::SolidHeat),
            Input::of::<Temperature>("melts_at", "T_m", "where it melts")
                .of_metal(Property::Liquidus),
            Input::of::<HeatPerMass>("latent", "L", "heat of melting")
                .of_metal(Property::LatentHeat),
            Input::of::<SpecificHeat>("liquid", "c_l", "specific heat of the liquid")
                .of_metal(Property::LiquidHeat),
        ],
        example: &[("mass", "5 kg"), ("to", "720 C"), ("metal", "A356")],
        cautions: &[],
        work: |given| {
            let metal = Melting {
                solid: given.get("solid"),
                melts_at: given.get("melts_at"),
                latent: given.get("latent"),
                liquid: given.get("liquid"),
            };
            let (from, to) = (given.get("from"), given.get("to"));
            let heat = heat_to_melt(given.get("mass"), from, to, &metal);
            Ok(vec![Answer::of("heat", heat)])
        },
    },
    Reckoner {
        name: "fuel-heat",
        question: "How much heat must the fuel give?",
        law: &FUEL_HEAT,
        inputs: &[
            Input::of::<Heat>("heat", "H", "heat the metal takes up"),
            Input::share(
                "efficiency",
                "η",
                "share of the fuel's heat that reaches the metal",
            )
            .narrowed_by("weigh the gas bottle before and after one heat"),
        ],
        example: &[("heat", "5.5 MJ"), ("efficiency", "7 to 19 %")],
        cautions: &["Burn fuel outdoors or with the door open: carbon monoxide has no smell."],
        work: |given| {
            let efficiency = given.number("efficiency");
            if efficiency <= 0.0 {
                return given.refuse("efficiency", "is nought", "give it as a share, like 12 %");
            }
            Ok(vec![Answer::of(
                "fuel",
                fuel_heat(given.get("heat"), efficiency),
            )])
        },
    },
    Reckoner {
        name: "feed-demand",
        question: "What share of its volume does the metal lose from pouring to frozen?",
        law: &FEED_DEMAND,
        inputs: &[
            Input::metal(),
            Input::share("freezing", "β_freezing", "lost on freezing")
                .of_metal(Property::FreezingShrinkage),
            Input::share("per_100_kelvin", "", "lost by the liquid in every 100 K"),
            Input::of::<TemperatureDifference>("superheat", "", "above the liquidus"),
        ],
        example: &[
            ("metal", "A356"),
            ("per_100_kelvin", "1.3 %"),
            ("superheat", "90 K"),
        ],
        cautions: &[],
        work: |given| {
            let per_kelvin = given.number("per_100_kelvin") / 100.0;
            let demand = feed_demand(given.number("freezing"), per_kelvin, given.get("superheat"));
            Ok(vec![Answer::share("demand", demand)])
        },
    },
    Reckoner {
        name: "feed-volume",
        question: "How much liquid metal does the casting draw in while it freezes?",
        law: &FEED_VOLUME,
        inputs: &[
            Input::of::<Volume>("casting_volume", "V", "the casting"),
            Input::share("demand", "β", "share lost from pouring to frozen"),
        ],
        example: &[("casting_volume", "64 cm3"), ("demand", "7 %")],
        cautions: &[],
        work: |given| {
            let volume = feed_volume(given.get("casting_volume"), given.number("demand"));
            Ok(vec![Answer::of("volume", volume)])
        },
    },
    Reckoner {
        name: "solid-volume",
        question: "What is left of the mould's volume when the metal is frozen and cold, unfed?",
        law: &SOLID_VOLUME,
        inputs: &[
            Input::of::<Volume>("mould_volume", "V_mould", "the mould"),
            Input::share("freezing", "β_freezing", "lost on freezing"),
            Input::share("cooling", "β_solid", "lost from freezing to cold"),
        ],
        example: &[
            ("mould_volume", "125 cm3"),
            ("freezing", "4 %"),
            ("cooling", "6 %"),
        ],
        cautions: &[],
        work: |given| {
            let (freezing, cooling) = (given.number("freezing"), given.number("cooling"));
            let volume = solid_volume(given.get("mould_volume"), freezing, cooling);
            Ok(vec![Answer::of("volume", volume)])
        },
    },
    Reckoner {
        name: "solid-side",
        question: "What is left of a side of the mould when the metal is frozen and cold, unfed?",
        law: &SOLID_SIDE,
        inputs: &[
            Input::of::<Length>("mould_side", "a_mould", "side of the mould"),
            Input::share("freezing", "β_freezing", "lost on freezing"),
            Input::share("cooling", "β_solid", "lost from freezing to cold"),
        ],
        example: &[
            ("mould_side", "50 mm"),
            ("freezing", "4 %"),
            ("cooling", "6 %"),
        ],
        cautions: &[],
        work: |given| {
            let (freezing, cooling) = (given.number("freezing"), given.number("cooling"));
            let side = solid_side(given.get("mould_side"), freezing, cooling);
            Ok(vec![Answer::of("side", side)])
        },
    },
];
