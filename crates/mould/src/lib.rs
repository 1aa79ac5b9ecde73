//! Flask, gating, feeding, cores, vents and lift around one solid.
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

pub mod chaplet;
pub mod clamp;
pub mod core_print;
pub mod core_rod;
pub mod core_seat;
pub mod facing;
pub mod feeding;
pub mod flask;
pub mod freezing;
pub mod gas;
pub mod gating;
pub mod handling;
pub mod hanging;
pub mod irons;
pub mod keeping;
pub mod lift;
pub mod ramming;
pub mod venting;

use measure::source::Law;

use crate::feeding::feeder;
use crate::gating::{choke, pour_time, running_system, sprue};

/// Every law of this room.
pub const LAWS: &[&Law] = &[
    &freezing::FREEZING_TIME,
    &freezing::MOULD_CONSTANT,
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
    &core_seat::HUNG_CORE,
    &core_seat::STANDING_CORE,
    &core_seat::BRIDGED_CORE,
    &core_print::PRINT_PRESSURE,
    &core_print::PRINT_AREA,
    &core_print::PRINT_LENGTH,
    &core_print::BOOK_BEARING,
    &chaplet::CHAPLETS,
    &chaplet::CHAPLET_METAL,
    &core_rod::CORE_BENDING,
    &core_rod::BAR_STRENGTH,
    &core_rod::CORE_ROD,
    &gas::SAND_GAS,
    &gas::GAS_RATE,
    &venting::SEEPAGE,
    &venting::VENT_PIPE,
    &venting::CORE_GAS,
    &venting::STEAM_BACK,
    &venting::MOULD_GAS,
    &keeping::KEEPING,
    &handling::FLASK_LOAD,
    &handling::LIFT_LIMIT,
    &handling::TEAM_LIFT,
    &handling::SHANK_SHARE,
    &handling::ARMS_LENGTH,
    &ramming::DENT_RESISTANCE,
    &ramming::DENT_TARGET,
    &ramming::DENT_LIMITS,
    &hanging::HANGING,
    &hanging::COPE_ARCH,
    &hanging::COPE_GRIP,
    &facing::FACING,
    &lift::COPE_LIFT,
    &lift::CORE_LIFT,
    &clamp::CLAMP_FORCE,
    &clamp::BOLT_HOLD,
    &lift::HOLD_DOWN,
];
