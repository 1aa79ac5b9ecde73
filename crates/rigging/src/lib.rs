//! The mould as a set of solids in one flask.
//!
//! The sizes of the rigging come from the laws of the mould room; here each piece gets its place
//! and its shape, is joined with the castings into one body of metal, and is taken out of the sand.
//!
//! ```
//! use measure::length::{Area, Length};
//! use measure::matter::{Density, Mass};
//! use mould::flask::{Flask, Load, clearance, flask_to_make};
//! use mould::gating::running_system::basin_over;
//! use pattern::shape::{Form, Shape};
//! use rigging::given::{Casting, Densities, Given, Half, Parting, Sizes, Vents};
//! use rigging::mould::mould;
//! use rigging::placement::Placement;
//!
//! // A plate of 120 x 80 x 20 mm, half of it below the joint.
//! let mm = Length::from_mm;
//! let plate = Shape {
//!     form: Form::Block { size: [mm(120.0), mm(80.0), mm(20.0)] },
//!     at: [mm(60.0), mm(40.0), mm(-10.0)],
//!     axis: [0.0, 0.0, 1.0],
//!     turn_degrees: 0.0,
//!     is_taken_away: false,
//! };
//! let sand = clearance(Mass::from_kg(0.5));
//! let (flask, layout) = flask_to_make(
//!     &Load {
//!         count: 1,
//!         plan: [mm(120.0), mm(80.0)],
//!         above_joint: mm(10.0),
//!         below_joint: mm(10.0),
//!         sprue: mm(20.0),
//!     },
//!     &sand,
//! );
//! let pour_height = flask.cope + mm(25.0);
//! let given = Given {
//!     flask,
//!     layout,
//!     count: 1,
//!     sand,
//!     casting: Casting { mesh: plate.skin(1)?, sections: Vec::new(), cores: Vec::new() },
//!     sizes: Sizes {
//!         pour_height,
//!         sprue_top: mm(14.0),
//!         sprue_foot: mm(10.0),
//!         basin: basin_over(mm(14.0), pour_height),
//!         runners: Area::from_mm2(160.0),
//!         gates: Area::from_mm2(160.0),
//!         past_last_gate: mm(25.0),
//!         runner_half: Half::Drag,
//!         feeder: None,
//!         vents: Some(Vents { spacing: mm(30.0), wire: mm(2.0), short: mm(12.0) }),
//!     },
//!     parting: Parting::Flat,
//!     densities: Densities {
//!         metal: Density::from_kg_per_m3(2400.0),
//!         sand: Density::from_kg_per_m3(1600.0),
//!         core: Density::from_kg_per_m3(1600.0),
//!     },
//! };
//! let built = mould(&given, &Placement::default())?;
//! assert!(built.off_by.abs() < 1e-9);
//! assert!(built.cavity.volume.as_mm3() > 120.0 * 80.0 * 20.0);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! The nouns: [`given::Given`] goes in, with a [`placement::Placement`] where the founder wants it
//! otherwise; a [`mould::Mould`] of [`piece::Solid`]s and [`fact::Fact`]s comes out.

mod arrangement;
mod bars;
mod cavity;
mod cell;
mod cut;
mod downhill;
pub mod error;
pub mod face;
pub mod fact;
mod feeder;
mod following;
mod gate;
pub mod given;
mod lie;
pub mod mould;
pub mod piece;
pub mod placement;
mod plan_view;
mod runner;
mod standing;
mod vent;
