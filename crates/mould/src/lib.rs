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
pub mod cooling;
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
pub mod heat_soak;
pub mod irons;
pub mod keeping;
pub mod lift;
pub mod niyama;
pub mod opening;
pub mod ramming;
pub mod restraint;
pub mod simple_body;
pub mod skin;
pub mod venting;

use measure::source::Law;

use crate::feeding::{caine, chill, feeder, neck, need, padding, rules, shape_factor, shop_rules};
use crate::gating::{
    aspiration, balance, basin, choke, fill_rules, filling, friction, gate_speed, network,
    pour_time, running_system, slag_trap, sprue, trapped_air,
};

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
    &fill_rules::CUBE_ROOT_TIME,
    &fill_rules::HEAVY_IRON_TIME,
    &sprue::FALL_SPEED,
    &sprue::SPRUE_EXIT,
    &sprue::SPRUE_TAPER,
    &sprue::FILL_FROM_TOP,
    &sprue::FILL_FROM_BOTTOM,
    &choke::CHOKE,
    &choke::EFFECTIVE_HEAD,
    &friction::FRICTION,
    &network::GATE_FLOWS,
    &filling::FILL_ORDER,
    &balance::BALANCED_GATES,
    &aspiration::FREE_JET,
    &aspiration::SPRUE_PRESSURE,
    &gate_speed::GATE_SPEED,
    &gate_speed::DROP_HEIGHT,
    &gate_speed::CRITICAL_SPEED,
    &trapped_air::TRAPPED_AIR,
    &slag_trap::FIRST_METAL,
    &slag_trap::RUN_OFF,
    &slag_trap::SPRUE_WELL,
    &basin::BASIN_DEPTH,
    &basin::LIP_RATE,
    &basin::BASIN_LASTS,
    &gating::reach::WALL_REACH,
    &gating::reach::LEAST_REACHING_WALL,
    &gating::reach::MISRUN_CHANCE,
    &gating::reach::IRON_FLUIDITY,
    &running_system::RUNNING_METAL,
    &running_system::POURED_MASS,
    &running_system::AREA_BY_RATIO,
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
    &feeding::reach::REACH,
    &feeding::reach::REACH_ALONG_BAR,
    &feeding::reach::FEEDERS_ALONG,
    &padding::PADDING,
    &chill::CHILL_AREA,
    &chill::CHILL_MASS,
    &chill::CHILLED_MODULUS,
    &niyama::NIYAMA,
    &opening::MARKS,
    &opening::COOLING_IN_AIR,
    &heat_soak::SOAK_DEPTH,
    &heat_soak::BURNT_DEPTH,
    &restraint::RESTRAINT,
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
