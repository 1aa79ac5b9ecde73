//! Sand for a mould, its moisture, its grain and its breath.
//!
//! ```
//! use measure::matter::Mass;
//!
//! let wet = Mass::from_g(200.0);
//! let dry = Mass::from_g(189.6);
//! let moisture = sand::moisture::wet_basis(wet, dry);
//! assert!((moisture - 0.052).abs() < 1e-9);
//!
//! let water = sand::moisture::water_to_add(Mass::from_kg(18.0), moisture, 0.075);
//! assert!((water.as_g() - 447.6).abs() < 0.1);
//! ```
//!
//! Moisture is a share of the wet mass wherever nothing else is said. Knows neither the metal nor
//! the pattern.

pub mod batch;
pub mod binder;
pub mod burning;
pub mod drying;
pub mod error;
pub mod evaporation;
pub mod finish;
pub mod grain;
pub mod heap;
pub mod humidity;
pub mod jar;
pub mod mix;
pub mod mixes;
pub mod mixing;
pub mod moisture;
pub mod mulling;
pub mod permeability;
pub mod psychrometrics;
pub mod recipe;
pub mod scoops;
pub mod sieve;
pub mod sorption;
pub mod standing;
pub mod strength;
pub mod through;

use measure::source::Law;

/// Every law of this crate.
pub const LAWS: &[&Law] = &[
    &batch::SAND_TO_FILL,
    &batch::WITH_SPILL,
    &binder::LIQUID_SHARE,
    &binder::BINDER_FOR_SAND,
    &binder::SILICATE_SOLIDS,
    &binder::SOLIDS_ON_SAND,
    &binder::CARBON_DIOXIDE,
    &burning::BURNING_LOSS,
    &drying::CONSTANT_TIME,
    &drying::DRYING_TIME,
    &drying::DRYING_GROUP,
    &drying::BY_MEASURED_RATES,
    &drying::SLAB_DIFFUSION,
    &drying::OTHER_THICKNESS,
    &drying::OTHER_SPEED,
    &error::PRODUCT_RULE,
    &evaporation::BY_RATIO,
    &evaporation::BY_PRESSURE,
    &evaporation::AIR_ALONG,
    &evaporation::AIR_IN_CHANNEL,
    &evaporation::SURFACE_BALANCE,
    &evaporation::AIR_NEEDED,
    &finish::AS_CAST_ROUGHNESS,
    &grain::GRAIN_SIZE,
    &grain::UNIFORMITY,
    &grain::VOIDS,
    &grain::OPENNESS,
    &heap::FINES_AFTER,
    &heap::NEW_SAND_FOR_FINES,
    &heap::DILUTE_DRY,
    &heap::TOP_UP,
    &heap::STEADY_FINES,
    &heap::DISCARD_SHARE,
    &heap::balance::BURNT_SHARE,
    &heap::balance::CLAY_WANTED,
    &humidity::UPTAKE,
    &jar::LAYER_SHARE,
    &mix::SCALE,
    &mixing::WATER_BROUGHT,
    &mixing::SAND_FOR_MIX,
    &moisture::WET_BASIS,
    &moisture::DRY_FROM_WET,
    &moisture::WET_FROM_DRY,
    &moisture::DRY_DOWN_STOP,
    &moisture::WATER_TO_ADD,
    &moisture::WEIGHING_ERROR,
    &permeability::PERMEABILITY,
    &permeability::TWO_LAYERS,
    &psychrometrics::SATURATION_PRESSURE,
    &psychrometrics::HUMIDITY_RATIO,
    &psychrometrics::FROM_WET_BULB,
    &psychrometrics::WET_BULB,
    &psychrometrics::DEW_POINT,
    &psychrometrics::AIR_PRESSURE,
    &psychrometrics::MOIST_AIR,
    &recipe::DOSE,
    &recipe::WATER_FOR_CLAY,
    &scoops::SHARE_BY_MASS,
    &scoops::SCOOPS,
    &sieve::GRAIN_FINENESS,
    &sieve::CLAY_BY_WASH,
    &sorption::AT_REST,
    &sorption::SALT_JAR,
    &standing::STANDING_TIME,
    &strength::CRUSHING,
    &strength::SPLITTING,
    &strength::DROP,
    &strength::EQUAL_RAMMING,
    &strength::COMPACTABILITY,
    &through::THROUGH_BED,
];
