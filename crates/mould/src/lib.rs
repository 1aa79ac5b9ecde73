//! Flask, gating, feeding and lift around one solid.
//!
//! The laws take quantities and give quantities; they know neither meshes nor alloys.
//!
//! ```
//! use measure::length::{Area, Length, Volume};
//! use measure::matter::{Density, Mass};
//! use mould::lift::{SURGE, cope_lift, hold_down};
//!
//! // Two gunmetal jaws face down, 100 mm of metal over their shadow.
//! let lift = cope_lift(
//!     Density::from_g_per_cm3(7.95),
//!     Area::from_cm2(117.5),
//!     Length::from_mm(100.0),
//!     Volume::ZERO,
//! );
//! let irons = hold_down(lift, SURGE, Mass::from_kg(9.6));
//! assert!((irons.as_kg() - 4.41).abs() < 0.01);
//! ```

pub mod cooling;
pub mod feeding;
pub mod flask;
pub mod freezing;
pub mod gating;
pub mod heat_soak;
pub mod irons;
pub mod lift;
pub mod opening;
pub mod restraint;
pub mod simple_body;
pub mod skin;

use measure::source::Law;

use crate::feeding::{
    caine, chill, feeder, neck, need, padding, reach, rules, shape_factor, shop_rules,
};
use crate::gating::{choke, pour_time, running_system, sprue};

/// Every law of this room.
pub const LAWS: &[&Law] = &[
    &freezing::FREEZING_TIME,
    &freezing::MOULD_CONSTANT,
    &freezing::TRIAL_CONSTANT,
    &freezing::TRIAL_THIRST,
    &freezing::SUPERHEAT_FACTOR,
    &freezing::ROUND_FREEZING_TIME,
    &simple_body::SIMPLE_MODULUS,
    &skin::SKIN_ON_SAND,
    &skin::TIME_ON_COLD_FACE,
    &pour_time::POUR_TIME,
    &pour_time::THIN_WALL_LIMIT,
    &pour_time::IRON_POUR_TIME,
    &sprue::FALL_SPEED,
    &sprue::SPRUE_EXIT,
    &sprue::SPRUE_TAPER,
    &sprue::FILL_FROM_TOP,
    &sprue::FILL_FROM_BOTTOM,
    &choke::CHOKE,
    &choke::EFFECTIVE_HEAD,
    &running_system::RUNNING_METAL,
    &feeder::CYLINDER_MODULUS,
    &feeder::DIAMETER_BY_MODULUS,
    &feeder::VOLUME_RULE,
    &feeder::FREEZING_RATIO,
    &need::NEED,
    &rules::GOVERNING,
    &caine::CAINE,
    &caine::DIAMETER_BY_CAINE,
    &shape_factor::SHAPE_FACTOR,
    &shape_factor::VOLUME_BY_SHAPE,
    &shop_rules::THRICE_THE_SHRINKAGE,
    &shop_rules::INSCRIBED_CIRCLE,
    &neck::NECK,
    &neck::FLAT_NECK,
    &reach::REACH,
    &reach::REACH_ALONG_BAR,
    &reach::FEEDERS_ALONG,
    &padding::PADDING,
    &chill::CHILL_AREA,
    &chill::CHILL_MASS,
    &chill::CHILLED_MODULUS,
    &opening::MARKS,
    &opening::COOLING_IN_AIR,
    &heat_soak::SOAK_DEPTH,
    &heat_soak::BURNT_DEPTH,
    &restraint::RESTRAINT,
    &lift::COPE_LIFT,
    &lift::CORE_LIFT,
    &lift::HOLD_DOWN,
];
