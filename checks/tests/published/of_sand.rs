//! The laws of the sand room on rows.

use checks::answer::Answer;
use checks::given::{Given, GivenError};
use measure::matter::Mass;
use sand::batch::{sand_to_fill, with_spill};
use sand::moisture::{dry_down_stop, dry_from_wet, water_to_add, wet_basis, wet_from_dry};
use sand::permeability::permeability;
use sand::sieve::{Sieving, clay_by_wash, grain_fineness};

use crate::laws::Calculation;

/// Calculations by law.
pub const CALCULATIONS: &[(&str, Calculation)] = &[
    ("sand::batch::sand_to_fill", |given| {
        let (flask, pattern) = (given.quantity("flask")?, given.quantity("pattern")?);
        let mass = sand_to_fill(flask, pattern, given.quantity("density")?);
        Ok(vec![
            Answer::quantity("mass", mass),
            Answer::quantity("weight", mass.weight()),
        ])
    }),
    ("sand::batch::with_spill", |given| {
        let mass = with_spill(given.quantity("rammed")?);
        Ok(vec![Answer::quantity("mass", mass)])
    }),
    ("sand::moisture::wet_basis", |given| {
        let moisture = wet_basis(given.quantity("wet")?, given.quantity("dry")?);
        Ok(vec![Answer::share("moisture", moisture)])
    }),
    ("sand::moisture::dry_from_wet", |given| {
        let dry_basis = dry_from_wet(given.share("wet_basis")?);
        Ok(vec![Answer::share("dry_basis", dry_basis)])
    }),
    ("sand::moisture::wet_from_dry", |given| {
        let wet_basis = wet_from_dry(given.share("dry_basis")?);
        Ok(vec![Answer::share("wet_basis", wet_basis)])
    }),
    ("sand::moisture::dry_down_stop", |given| {
        let (now, wanted) = (given.share("now")?, given.share("wanted")?);
        let stop = dry_down_stop(given.quantity("wet")?, now, wanted);
        Ok(vec![Answer::quantity("stop", stop)])
    }),
    ("sand::moisture::water_to_add", |given| {
        let (now, wanted) = (given.share("now")?, given.share("wanted")?);
        let water = water_to_add(given.quantity("sand")?, now, wanted);
        Ok(vec![Answer::quantity("water", water)])
    }),
    ("sand::permeability::permeability", |given| {
        let number = permeability(
            given.quantity("air")?,
            given.quantity("height")?,
            given.quantity("pressure")?,
            given.quantity("area")?,
            given.quantity("time")?,
        );
        Ok(vec![Answer::number("permeability", number)])
    }),
    ("sand::sieve::grain_fineness", |given| {
        let fineness = grain_fineness(&sieving(given)?);
        let fineness = fineness.map_err(|fault| GivenError::NoAnswer(fault.to_string()))?;
        Ok(vec![
            Answer::number("low", fineness.low()),
            Answer::number("likely", fineness.likely()),
            Answer::number("high", fineness.high()),
        ])
    }),
    ("sand::sieve::clay_by_wash", |given| {
        let clay = clay_by_wash(given.quantity("dried")?, given.quantity("washed")?);
        Ok(vec![Answer::share("clay", clay)])
    }),
];

fn sieving(given: &Given<'_>) -> Result<Sieving, GivenError> {
    let sieves = given.numbers("sieves")?;
    let kept: Vec<Mass> = given.quantities("kept")?;
    if sieves.len() != kept.len() {
        let fault = format!("{} sieves and {} weights", sieves.len(), kept.len());
        return Err(GivenError::NoAnswer(fault));
    }
    let numbers = sieves.iter().map(|number| *number as u16);
    Ok(Sieving {
        kept: numbers.zip(kept).collect(),
        pan: given.quantity("pan")?,
    })
}
