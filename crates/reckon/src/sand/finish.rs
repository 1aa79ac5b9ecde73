//! How rough the casting comes out of this sand.

use measure::length::Length;
use sand::finish::{AS_CAST_ROUGHNESS, FINENESS_FOR_NON_FERROUS, as_cast_roughness_um};

use crate::answer::Answer;
use crate::input::Input;
use crate::reckoner::Reckoner;

/// Roughness of a face as cast.
pub(super) const FINISH: Reckoner = Reckoner {
    name: "finish",
    question: "What finish (Ra, µm) comes out of green sand, and is my sand fine enough for it?",
    law: &AS_CAST_ROUGHNESS,
    inputs: &[
        Input::of::<Length>("longest", "L", "longest side of the casting"),
        Input::number("fineness", "", "grain fineness number of the facing")
            .optional()
            .narrowed_by("sieve the sand: grain-fineness"),
    ],
    example: &[("longest", "140 mm"), ("fineness", "60")],
    cautions: &[
        "Finer sand breathes less: try its permeability, and vent, before the metal goes in.",
    ],
    work: |given| {
        let longest: Length = given.get("longest");
        if longest <= Length::ZERO {
            return given.refuse("longest", "is no length", "measure the casting");
        }
        let Some(roughness) = as_cast_roughness_um(longest) else {
            let why = "is beyond the table, which ends at 800 mm";
            return given.refuse("longest", why, "ask for the part of it that must be smooth");
        };
        let (coarsest, finest) = FINENESS_FOR_NON_FERROUS;
        if given.has("fineness") {
            let fineness = given.number("fineness");
            if fineness < coarsest {
                given.doubt(
                    "coarser than the 70 to 140 usual for aluminium, brass and bronze: expect the \
                     rough end or beyond, or face the pattern with finer sand",
                );
            }
            if fineness > finest {
                given.doubt("finer than the usual 70 to 140: smooth, but it hardly breathes");
            }
        }
        given.doubt(
            "no law ties roughness to the grain alone: ramming, heat and head count as much",
        );
        Ok(vec![
            Answer::number("roughness", roughness.likely())
                .from_to(roughness.low(), roughness.high()),
        ])
    },
};
