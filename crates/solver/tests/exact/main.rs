//! The solver against problems whose answer is known in closed form or to many digits.
//!
//! The closed forms stand in Carslaw and Jaeger's book on conduction (from memory); their figures
//! were worked out apart from this program, with forty digits.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

mod column;
mod contact;
mod criteria;
mod drying;
mod early;
mod lumped;
#[path = "../block/materials.rs"]
mod materials;
mod mushy;
mod round;
mod sharp;
