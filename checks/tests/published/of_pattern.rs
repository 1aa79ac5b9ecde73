//! The laws of the pattern room on rows.

use checks::answer::Answer;
use measure::length::Length;
use measure::share::Contraction;
use pattern::contraction::{pattern_length, pattern_length_by_volume};
use pattern::sections::modulus;

use checks::given::GivenError;

use crate::laws::Calculation;
use crate::shape::measures_of;

/// Calculations by law.
pub const CALCULATIONS: &[(&str, Calculation)] = &[
    ("pattern::contraction::pattern_length", |given| {
        let part: Length = given.quantity("part")?;
        let typed = given.text("contraction")?;
        let contraction: Contraction = typed.parse().map_err(|_| GivenError::Not {
            key: "contraction".to_owned(),
            typed: typed.to_owned(),
            wanted: "a contraction",
        })?;
        let length = pattern_length(part, contraction.ratio);
        Ok(vec![Answer::quantity("pattern", length)])
    }),
    ("pattern::contraction::pattern_length_by_volume", |given| {
        let (freezing, cooling) = (given.share("freezing")?, given.share("cooling")?);
        let length = pattern_length_by_volume(given.quantity("part")?, freezing, cooling);
        Ok(vec![Answer::quantity("pattern", length)])
    }),
    ("pattern::sections::modulus", |given| {
        let (volume, cooled) = measures_of(given)?;
        let modulus = modulus(volume, cooled);
        Ok(vec![Answer::quantity("modulus", modulus)])
    }),
];
