//! Published data sets refitted: the coefficients have to come out as they were printed.
//!
//! "Printed" here means the digits given with the source named beside each case; a figure has to
//! agree with all of them, so its tolerance is half of its last digit and no more.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod charts;
mod compositions;
mod elsewhere;
mod mixtures;
mod printed;
mod surfaces;
