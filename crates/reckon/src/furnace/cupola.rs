//! A cupola in estimate: iron, coke and air.

use measure::length::{Length, Volume};
use measure::matter::{Density, Mass};
use metal::cupola::{
    BED_COKE, BLAST, CHARGE_COKE, IRON_RATE, bed_coke, blast, charge_coke, iron_rate,
};

use crate::answer::Answer;
use crate::input::Input;
use crate::reckoner::Reckoner;

/// Said of every cupola.
const ESTIMATE: &str = "An estimate from full-sized cupolas: a small one takes more coke.";

/// Iron in an hour.
pub(super) const IRON: Reckoner = Reckoner {
    name: "cupola-iron",
    question: "How much iron does a cupola melt in an hour?",
    law: &IRON_RATE,
    inputs: &[
        Input::of::<Length>("bore", "d", "inside the lining at the melting zone"),
        Input::number(
            "each_cm2",
            "u",
            "kilograms an hour for each square centimetre",
        )
        .or("0.56", "cupola-lesson"),
    ],
    example: &[("bore", "250 mm")],
    cautions: &[ESTIMATE],
    work: |given| {
        let rate = iron_rate(given.get("bore"), given.number("each_cm2"));
        Ok(vec![Answer::of("iron", rate)])
    },
};

/// Coke between the charges.
pub(super) const COKE: Reckoner = Reckoner {
    name: "cupola-coke",
    question: "How much coke between the charges?",
    law: &CHARGE_COKE,
    inputs: &[
        Input::of::<Mass>("iron", "m_iron", "iron to melt"),
        Input::number("ratio", "r", "iron to one of coke").or("7 to 12, likely 9", "cupola-lesson"),
    ],
    example: &[("iron", "100 kg")],
    cautions: &[ESTIMATE],
    work: |given| {
        let coke = charge_coke(given.get("iron"), given.number("ratio"));
        Ok(vec![Answer::of("coke", coke).rounded_up()])
    },
};

/// Coke for the bed.
pub(super) const BED: Reckoner = Reckoner {
    name: "cupola-bed",
    question: "How much coke for the bed?",
    law: &BED_COKE,
    inputs: &[
        Input::of::<Length>("bore", "d", "inside the lining"),
        Input::of::<Length>("height", "h", "from the sand bottom to the melting zone"),
        Input::of::<Density>("coke", "ρ", "coke as it lies heaped")
            .or("482 kg/m3", "cupola-lesson")
            .narrowed_by("weigh a bucket of it"),
    ],
    example: &[("bore", "250 mm"), ("height", "700 mm")],
    cautions: &[ESTIMATE],
    work: |given| {
        let coke = bed_coke(given.get("bore"), given.get("height"), given.get("coke"));
        Ok(vec![Answer::of("coke", coke).rounded_up()])
    },
};

/// Air of the blower.
pub(super) const AIR: Reckoner = Reckoner {
    name: "cupola-blast",
    question: "How much air must the blower give for the iron?",
    law: &BLAST,
    inputs: &[
        Input::of::<Mass>("iron", "m_iron", "iron to melt"),
        Input::of::<Volume>("each_kg", "v", "cold air for each kilogram of iron")
            .or("0.7 to 1.03 m3", "west-cast-iron"),
    ],
    example: &[("iron", "100 kg")],
    cautions: &[
        ESTIMATE,
        "Carbon monoxide burns at the charging door: outdoors only.",
    ],
    work: |given| {
        let air = blast(given.get("iron"), given.get("each_kg"));
        Ok(vec![Answer::of("air", air).rounded_up()])
    },
};
