//! Batches weighed out, with the water that their parts bring.

use measure::matter::Mass;
use sand::mixing::{Ingredient, SAND_FOR_MIX, WATER_BROUGHT, sand_for_mix, water_brought};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const SHARES: Input = Input::new(
    "parts",
    "b_i",
    "on dry sand, each as weighed",
    Wanted::Shares,
);
const WATERS: Input = Input::new(
    "waters",
    "w_i",
    "water in each, of its mass",
    Wanted::Shares,
);

/// Water that comes in.
pub(super) const BROUGHT: Reckoner = Reckoner {
    name: "water-brought",
    question: "How much water do damp sand and syrup bring?",
    law: &WATER_BROUGHT,
    inputs: &[
        Input::of::<Mass>("dry", "m_dry", "dry sand in the batch"),
        Input::share("moisture", "w_sand", "of the sand, of its wet mass")
            .or("0 %", "common-practice"),
        SHARES,
        WATERS,
    ],
    example: &[
        ("dry", "10 kg"),
        ("parts", "8 %, 4 %"),
        ("waters", "20 %, 10 %"),
    ],
    cautions: &[],
    work: |given| {
        let (parts, moisture) = (ingredients(given)?, given.number("moisture"));
        if !(0.0..1.0).contains(&moisture) {
            return given.refuse("moisture", "is no part of wet sand", "give 0 to 20 %");
        }
        let water = water_brought(given.get("dry"), moisture, &parts);
        Ok(vec![Answer::of("water", water)])
    },
};

/// Sand for a mix.
pub(super) const FOR_MIX: Reckoner = Reckoner {
    name: "sand-for-mix",
    question: "How much dry sand goes into so much of a mix?",
    law: &SAND_FOR_MIX,
    inputs: &[
        Input::of::<Mass>("mix", "m_mix", "wanted, wet"),
        Input::share("moisture", "w", "of the wet mix"),
        SHARES,
        WATERS,
    ],
    example: &[
        ("mix", "20 kg"),
        ("moisture", "4 %"),
        ("parts", "8 %, 4 %"),
        ("waters", "20 %, 10 %"),
    ],
    cautions: &[],
    work: |given| {
        let moisture = given.number("moisture");
        if !(0.0..1.0).contains(&moisture) {
            return given.refuse("moisture", "is no part of a mix", "give 0 to 20 %");
        }
        let sand = sand_for_mix(given.get("mix"), moisture, &ingredients(given)?);
        Ok(vec![Answer::of("dry sand", sand)])
    },
};

fn ingredients(given: &Given<'_>) -> Result<Vec<Ingredient>, Impossible> {
    let (parts, waters) = (given.numbers("parts"), given.numbers("waters"));
    if parts.len() != waters.len() {
        let why = format!("has {} for {} parts", waters.len(), parts.len());
        return given.refuse("waters", why, "give one for each part");
    }
    let both = parts.into_iter().zip(waters);
    let both: Vec<_> = both
        .map(|(share, water)| Ingredient { share, water })
        .collect();
    match both
        .iter()
        .all(|one| one.share >= 0.0 && (0.0..1.0).contains(&one.water))
    {
        true => Ok(both),
        false => given.refuse("parts", "or waters are none", "give nought or more"),
    }
}
