//! Air through a bed of lumps.

use measure::flow::Speed;
use measure::length::Length;
use measure::matter::Density;
use sand::through::{Bed, THROUGH_BED, surface, through_bed};

use super::SILICA;
use super::air::{DRY_BULB, PRESSURE, RATIO, told};
use super::evaporation::typed;
use crate::answer::Answer;
use crate::input::Input;
use crate::reckoner::Reckoner;

/// The group of a drying by air through the bed.
pub(super) const BED: Reckoner = Reckoner {
    name: "drying-through",
    question: "How long does a bed of lumps dry with air blown through it?",
    law: &THROUGH_BED,
    inputs: &[
        DRY_BULB,
        RATIO,
        PRESSURE,
        Input::of::<Speed>("speed", "v", "of the air before the bed"),
        Input::of::<Density>("bed", "ρ", "dry sand in the volume of the bed"),
        Input::of::<Density>("inside", "", "dry sand in the volume of a lump").or(
            "1.5 to 1.7 g/cm3, likely 1.6 g/cm3",
            "shop-handbook-figures",
        ),
        Input::of::<Length>("depth", "L", "of the bed"),
        Input::of::<Length>("lump", "d", "size of the lumps"),
        Input::number(
            "surface",
            "a",
            "m² of lumps in a m³ of the bed, where they are not round",
        )
        .optional(),
    ],
    example: &[
        ("air", "28 C"),
        ("ratio", "0.012"),
        ("speed", "0.4 m/s"),
        ("bed", "0.9 g/cm3"),
        ("depth", "60 mm"),
        ("lump", "8 mm"),
    ],
    cautions: &[SILICA],
    work: |given| {
        for key in ["depth", "lump"] {
            if given.get::<Length>(key) <= Length::ZERO {
                return given.refuse(key, "is nought", "measure the bed and its lumps");
            }
        }
        let (bed, inside): (Density, Density) = (given.get("bed"), given.get("inside"));
        if bed >= inside {
            return given.refuse(
                "bed",
                "is as dense as a lump",
                "weigh a bucket of loose lumps",
            );
        }
        if given.get::<Speed>("speed").as_m_per_s() <= 0.0 {
            return given.refuse("speed", "is nought", "give the air a speed");
        }
        let lump = given.get("lump");
        let surface = match given.has("surface") {
            true => given.number("surface"),
            false => surface(bed, inside, lump),
        };
        let bed = Bed {
            density: bed,
            depth: given.get("depth"),
            lump,
            surface,
        };
        let group = told(
            given,
            "air",
            through_bed(&bed, &typed(given)?, given.get("speed")),
        )?;
        given.doubt("this is the group of a tray: reckon drying-time makes the time of it");
        Ok(vec![Answer::of("group", group)])
    },
};
