//! Alloys, what to charge, how to melt it and how hot to pour it.
//!
//! ```
//! use measure::length::{Length, Volume};
//! use measure::band::Band;
//!
//! let gunmetal = metal::alloys::named("gunmetal")?;
//! let casting = Band::exact(Volume::from_cm3(130.0));
//! let mass = casting.with(&gunmetal.density_solid.band, metal::casting_mass::casting_mass);
//! assert!((mass.likely().as_kg() - 1.144).abs() < 0.001);
//!
//! let pouring = metal::pouring_temperature::pouring_band(gunmetal, Length::from_mm(2.0));
//! assert_eq!(pouring.high().as_celsius().round(), 1290.0);
//! # Ok::<(), metal::alloys::UnknownAlloy>(())
//! ```
//!
//! The nouns: an [`alloy::Alloy`] with its [`figure::Figure`]s, a [`charge::Charge`], a
//! [`charge_makeup::heap::Heap`] and a [`charge_makeup::target::Target`] that make it up, a
//! [`crucible::Crucible`], a [`furnace::Furnace`]. Knows neither the pattern nor the sand.

pub mod after;
pub mod alloy;
pub mod alloys;
pub mod casting_mass;
pub mod charge;
pub mod charge_makeup;
pub mod crucible;
pub mod cupola;
pub mod evidence;
pub mod figure;
pub mod fuel;
pub mod fume;
pub mod furnace;
pub mod hole;
pub mod hydrogen;
pub mod iron;
pub mod least_wall;
pub mod lining;
pub mod loss;
pub mod melt;
pub mod order;
pub mod pouring_temperature;
pub mod price;
pub mod scrap;
pub mod shrinkage;
pub mod solid_share;
pub mod spoon;
pub mod superheat_path;
pub mod treatment;
pub mod zinc;

use measure::source::Law;

/// Every law of this crate.
pub const LAWS: &[&Law] = &[
    &casting_mass::CASTING_MASS,
    &casting_mass::PATTERN_MASS,
    &casting_mass::WITH_BUTTON,
    &charge::PIG,
    &charge::CHARGE,
    &charge_makeup::balance::BLEND,
    &charge_makeup::balance::RICH_HEAP,
    &charge_makeup::balance::AFTER_LOSS,
    &charge_makeup::balance::ADDITION,
    &crucible::BRIM_VOLUME,
    &crucible::HELD,
    &crucible::CRUCIBLE_WIDTH,
    &crucible::LIFTED,
    &crucible::MOST_CASTING,
    &crucible::LEAST_YIELD,
    &hole::CAUSES,
    &hydrogen::VAPOUR_IN_AIR,
    &hydrogen::SOLUBILITY,
    &hydrogen::FROM_PERMEATION,
    &hydrogen::DISSOLVED,
    &hydrogen::DENSITY_INDEX,
    &iron::CARBON_EQUIVALENT,
    &iron::COMPOSITION_FACTOR,
    &iron::WANTED_EQUIVALENT,
    &iron::GREY_WALL,
    &iron::WEDGE,
    &iron::INOCULANT,
    &iron::FADE,
    &loss::MELT_LOSS,
    &scrap::DENSITY_IN_WATER,
    &scrap::SHARES,
    &treatment::DOSE,
    &zinc::VAPOUR,
    &zinc::VAPOUR_OVER_BRASS,
    &zinc::FLARE,
    &zinc::LOST,
    &melt::HEAT_TO_MELT,
    &melt::FUEL_HEAT,
    &fuel::FUEL_MASS,
    &fuel::OWN_EFFICIENCY,
    &fuel::BURNER_POWER,
    &fuel::HEATING_TIME,
    &fuel::FLUE_SHARE,
    &fuel::FURNACE_BALANCE,
    &lining::LINING_HEAT,
    &lining::NEXT_HEAT,
    &cupola::IRON_RATE,
    &cupola::CHARGE_COKE,
    &cupola::BED_COKE,
    &cupola::BLAST,
    &pouring_temperature::POURING_BAND,
    &pouring_temperature::SUPERHEAT,
    &superheat_path::CARRY_DROP,
    &superheat_path::SOAK_DROP,
    &superheat_path::LIFT_OUT,
    &spoon::SPOON_TEMPERATURE,
    &order::TURN_TEMPERATURE,
    &order::HEATS_WANTED,
    &order::HEATS_IN_TIME,
    &after::HIDDEN_HOLLOW,
    &after::HOLD_TIME,
    &price::CASTING_YIELD,
    &price::COST_EACH,
    &price::LEAST_PRICE,
    &price::MEND_OR_REMAKE,
    &shrinkage::FEED_DEMAND,
    &shrinkage::FEED_VOLUME,
    &shrinkage::SOLID_VOLUME,
    &shrinkage::SOLID_SIDE,
    &solid_share::SEGREGATION,
    &solid_share::EVEN,
];
