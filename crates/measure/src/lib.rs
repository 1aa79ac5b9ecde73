//! A number with its unit, and a number with its source.
//!
//! ```
//! use measure::length::{Area, Length, Volume};
//! use measure::text::Typed;
//!
//! let side: Typed<Length> = "1 1/2 in".parse()?;
//! let cube: Volume = side.value * (side.value * side.value);
//! assert!((cube.as_cm3() - 55.306).abs() < 0.001);
//! assert_eq!(side.given_back(), "1 1/2 in (38.1 mm)");
//! # Ok::<(), measure::text::TextError>(())
//! ```
//!
//! Knows nothing of the trade: no alloy, no sand, no flask.

pub mod band;
pub mod flow;
pub mod heat;
pub mod length;
pub mod matter;
pub mod money;
mod quantity;
pub mod share;
pub mod source;
pub mod text;
