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
pub mod finish;
pub mod heap;
pub mod humidity;
pub mod jar;
pub mod mix;
pub mod moisture;
pub mod permeability;
pub mod recipe;
pub mod scoops;
pub mod sieve;

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
    &finish::AS_CAST_ROUGHNESS,
    &heap::FINES_AFTER,
    &heap::NEW_SAND_FOR_FINES,
    &heap::DILUTE_DRY,
    &heap::TOP_UP,
    &heap::STEADY_FINES,
    &heap::DISCARD_SHARE,
    &humidity::UPTAKE,
    &jar::LAYER_SHARE,
    &mix::SCALE,
    &moisture::WET_BASIS,
    &moisture::DRY_FROM_WET,
    &moisture::WET_FROM_DRY,
    &moisture::DRY_DOWN_STOP,
    &moisture::WATER_TO_ADD,
    &moisture::WEIGHING_ERROR,
    &permeability::PERMEABILITY,
    &recipe::DOSE,
    &recipe::WATER_FOR_CLAY,
    &scoops::SHARE_BY_MASS,
    &scoops::SCOOPS,
    &sieve::GRAIN_FINENESS,
    &sieve::CLAY_BY_WASH,
];
