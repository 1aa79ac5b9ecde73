//! The volume of a part without a drawing: weighed, or guessed from its sizes.

use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use pattern::displacement::{READING, VOLUME_IN_WATER, volume_in_water};
use pattern::material::{VOLUME_BY_WEIGHT, volume_by_weight};
use pattern::rough::{VOLUME_OF_SIZES, volume_of_sizes};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::Input;
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// By weighing in water.
pub(super) const BY_WATER: Reckoner = Reckoner {
    name: "volume-in-water",
    question: "What is its volume, from what it weighs in air and in water?",
    law: &VOLUME_IN_WATER,
    inputs: &[
        Input::of::<Mass>("in_air", "m_air", "in air; or the water it pushes out"),
        Input::of::<Mass>(
            "in_water",
            "m_water",
            "hanging in water; nought for water pushed out",
        )
        .or("0 g", "hydrostatic-weighing-page"),
        Input::of::<Density>("water", "ρ_water", "density of the water")
            .or(
                "0.992 to 1 g/cm3, likely 0.998 g/cm3",
                "water-density-memory",
            )
            .narrowed_by("read the temperature of the water"),
    ],
    example: &[("in_air", "1.2 kg"), ("in_water", "0.75 kg")],
    cautions: &[],
    work: |given| {
        let (in_air, in_water) = weighed_in_water(given)?;
        let volume = volume_in_water(in_air, in_water, given.get("water"));
        Ok(vec![Answer::of("volume", volume).give_or_take(READING)])
    },
};

/// By its weight and material.
pub(super) const BY_WEIGHT: Reckoner = Reckoner {
    name: "volume-by-weight",
    question: "What is its volume, from its weight and what it is made of?",
    law: &VOLUME_BY_WEIGHT,
    inputs: &[
        Input::of::<Mass>("mass", "m", "on the scale, dry and without its base"),
        Input::of::<Density>("density", "ρ", "density of what it is made of")
            .narrowed_by("weigh it in water too: the volume follows without the density"),
    ],
    example: &[("mass", "250 g"), ("density", "0.4 to 0.6 g/cm3")],
    cautions: &[],
    work: |given| {
        let density: Density = given.get("density");
        if density <= Density::ZERO {
            return given.refuse("density", "is nought", "give that of the material");
        }
        let volume = volume_by_weight(given.get("mass"), density);
        Ok(vec![Answer::of("volume", volume)])
    },
};

/// Guessed from its sizes.
pub(super) const OF_SIZES: Reckoner = Reckoner {
    name: "volume-of-sizes",
    question: "How much metal is in it, guessed from its sizes?",
    law: &VOLUME_OF_SIZES,
    inputs: &[
        Input::number(
            "covered",
            "c",
            "share of it that is there, 1 for a plain plate",
        ),
        Input::of::<Area>("spanned", "F", "face or skin that the part spans"),
        Input::of::<Length>("thickness", "s", "mean thickness over that face")
            .narrowed_by("weigh the pattern in water instead"),
        Input::of::<Volume>("room", "", "the box round it: there is never more metal").optional(),
    ],
    example: &[
        ("covered", "0.7 to 1"),
        ("spanned", "120 cm2"),
        ("thickness", "6 to 9 mm"),
    ],
    cautions: &[],
    work: |given| {
        let (spanned, thickness) = (given.get("spanned"), given.get("thickness"));
        let covered = given.number("covered");
        let volume = volume_of_sizes(covered, spanned, thickness, given.find("room"));
        Ok(vec![Answer::of("volume", volume)])
    },
};

/// The two weights, refused where the water carries all of it or nothing.
fn weighed_in_water(given: &Given<'_>) -> Result<(Mass, Mass), Impossible> {
    let (in_air, in_water): (Mass, Mass) = (given.get("in_air"), given.get("in_water"));
    match in_water < in_air {
        true => Ok((in_air, in_water)),
        false => given.refuse(
            "in_water",
            "is not less than the weight in air, and water carries a share of everything",
            "weigh again with the part hanging free",
        ),
    }
}
