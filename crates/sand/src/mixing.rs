//! A mix weighed out: parts on a hundred of dry sand, and the water that its parts bring.
//!
//! A part is counted as it is weighed, a syrup with its water in it. Water is always of the wet
//! mass of the whole mix.

use measure::matter::Mass;
use measure::source::Law;
use thiserror::Error;

/// Water that comes in with damp sand and syrups.
pub const WATER_BROUGHT: Law = Law {
    name: "sand::mixing::water_brought",
    formula: "m_water = m_dry (w_sand / (1 − w_sand) + Σ b_i w_i)",
    range: "b_i parts on one of dry sand as weighed, w_i the water in each",
    sources: &["treybal-mass-transfer", "molasses-sugar-content"],
};

/// Dry sand in a mix of a wanted mass and moisture.
pub const SAND_FOR_MIX: Law = Law {
    name: "sand::mixing::sand_for_mix",
    formula: "m_dry = m_mix (1 − w) / (1 + Σ b_i (1 − w_i))",
    range: "w of the wet mix, b_i parts on one of dry sand as weighed",
    sources: &["treybal-mass-transfer"],
};

/// Something mixed in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ingredient {
    /// Parts of it on one part of dry sand, as it is weighed.
    pub share: f64,
    /// Water in it, a share of it as weighed.
    pub water: f64,
}

/// What to weigh out.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighed {
    /// Sand as it is, with its own water.
    pub sand: Mass,
    /// The ingredients, in their order.
    pub parts: Vec<Mass>,
    /// Water that sand and ingredients bring.
    pub brought: Mass,
    /// Water to pour in.
    pub to_add: Mass,
}

/// Why nothing is weighed out.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum MixingError {
    /// Shares that are none.
    #[error("{percent:.1} % of water is none: give 0 up to less than 100 %")]
    Water {
        /// What was given, in per cent.
        percent: f64,
    },
    /// A part that is none.
    #[error("{parts:.2} parts on 100 of dry sand is none: give nought or more")]
    Part {
        /// What was given.
        parts: f64,
    },
    /// More water comes in than is wanted.
    #[error(
        "sand and binder bring {brought:.0} g of water, {surplus:.0} g more than wanted: dry the \
         sand first, or mix and dry the batch back to {stop:.2} kg"
    )]
    TooWet {
        /// What comes in, in g.
        brought: f64,
        /// How much too much, in g.
        surplus: f64,
        /// What the batch weighs at the wanted moisture, in kg.
        stop: f64,
    },
}

/// Water that sand and ingredients bring to so much dry sand. Law: [`WATER_BROUGHT`].
pub fn water_brought(dry_sand: Mass, sand_moisture: f64, parts: &[Ingredient]) -> Mass {
    let of_parts: f64 = parts.iter().map(|part| part.share * part.water).sum();
    dry_sand * (sand_moisture / (1.0 - sand_moisture) + of_parts)
}

/// Dry sand in so much of a mix. Law: [`SAND_FOR_MIX`].
pub fn sand_for_mix(mix: Mass, moisture: f64, parts: &[Ingredient]) -> Mass {
    let solids: f64 = parts
        .iter()
        .map(|part| part.share * (1.0 - part.water))
        .sum();
    mix * (1.0 - moisture) / (1.0 + solids)
}

/// Weighs out a batch with so much dry sand in it. `moisture` of the wet mix, or none where a
/// fixed share of water, `added` on one of dry sand, goes in whatever the parts bring.
///
/// # Errors
///
/// Where a share is none, and [`MixingError::TooWet`] where more water comes in than is wanted.
pub fn weigh_out(
    dry_sand: Mass,
    sand_moisture: f64,
    parts: &[Ingredient],
    water: Water,
) -> Result<Weighed, MixingError> {
    let waters = parts.iter().map(|part| part.water).chain([sand_moisture]);
    let wanted = match water {
        Water::OfMix(wanted) => Some(wanted),
        Water::OnSand(_) => None,
    };
    if let Some(odd) = waters
        .chain(wanted)
        .find(|share| !(0.0..1.0).contains(share))
    {
        let percent = odd * 100.0;
        return Err(MixingError::Water { percent });
    }
    let added = match water {
        Water::OnSand(added) => added,
        Water::OfMix(_) => 0.0,
    };
    let shares = parts.iter().map(|part| part.share).chain([added]);
    if let Some(odd) = shares
        .into_iter()
        .find(|share| !(0.0..f64::INFINITY).contains(share))
    {
        let parts = odd * 100.0;
        return Err(MixingError::Part { parts });
    }
    let brought = water_brought(dry_sand, sand_moisture, parts);
    Ok(Weighed {
        sand: dry_sand / (1.0 - sand_moisture),
        parts: parts.iter().map(|part| dry_sand * part.share).collect(),
        brought,
        to_add: to_add(dry_sand, parts, brought, water)?,
    })
}

/// How the water of a mix is told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Water {
    /// All the water in the mix, a share of the wet mix.
    OfMix(f64),
    /// Water poured in besides what the parts bring, on one of dry sand.
    OnSand(f64),
}

fn to_add(
    dry_sand: Mass,
    parts: &[Ingredient],
    brought: Mass,
    water: Water,
) -> Result<Mass, MixingError> {
    let moisture = match water {
        Water::OnSand(added) => return Ok(dry_sand * added),
        Water::OfMix(moisture) => moisture,
    };
    let solids: f64 = parts
        .iter()
        .map(|part| part.share * (1.0 - part.water))
        .sum();
    let dry = dry_sand * (1.0 + solids);
    let all = dry * (moisture / (1.0 - moisture));
    match brought <= all * (1.0 + 1e-9) {
        true => Ok((all - brought).max(Mass::ZERO)),
        false => Err(MixingError::TooWet {
            brought: brought.as_g(),
            surplus: (brought - all).as_g(),
            stop: (dry + all).as_kg(),
        }),
    }
}
