//! What to weigh out for a batch, in grams.
//!
//! On the dry basis a damp part is weighed with the water it holds, and that water is taken off
//! the water to add; so each batch holds the water planned, whatever the heap's weather was.

use measure::matter::Mass;
use measure::text::rounded;

use crate::experiment::batches::Batch;
use crate::experiment::trouble::BatchesError;
use crate::experiment::{Basis, Counted, Experiment, Part};

/// What to weigh out of one part.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighed {
    /// The part.
    pub name: String,
    /// What to weigh, as it lies, rounded to the step of the scale.
    pub weigh: Mass,
    /// Water in it.
    pub holds: Mass,
    /// Whether it is the water.
    pub is_water: bool,
}

/// A part so small that the scale tells it badly.
#[derive(Clone, Debug, PartialEq)]
pub struct Coarse {
    /// The part.
    pub name: String,
    /// The smallest amount in any batch, g.
    pub least_g: f64,
    /// How far the scale may miss it, as a share of it.
    pub missed: f64,
}

/// A part is told badly when the scale may miss it by more than this share. Below it, the miss of
/// weighing is lost in the noise of a kitchen batch; above it, it is a noise of its own.
const TOLD_BADLY: f64 = 0.05;

/// What to weigh out for a batch, in the order of the parts.
///
/// # Errors
///
/// When damp parts bring more water than the batch may hold.
pub fn weighed(experiment: &Experiment, batch: &Batch) -> Result<Vec<Weighed>, BatchesError> {
    let sum: f64 = batch.amounts.iter().sum();
    let planned = |at: usize| experiment.batch * (batch.amounts[at] / sum);
    let mut rows: Vec<Weighed> = Vec::new();
    let mut brought = Mass::from_g(0.0);
    for (at, part) in experiment.parts.iter().enumerate() {
        let holds = match experiment.basis {
            Basis::Dry => planned(at) * sand::moisture::dry_from_wet(part.moisture),
            Basis::AsItLies => Mass::from_g(0.0),
        };
        brought += holds;
        rows.push(Weighed {
            name: part.name.clone(),
            weigh: planned(at) + holds,
            holds,
            is_water: part.is_water,
        });
    }
    let wettest = rows
        .iter()
        .max_by(|one, other| one.holds.as_g().total_cmp(&other.holds.as_g()));
    let wettest = wettest.map_or_else(String::new, |row| row.name.clone());
    for row in rows.iter_mut().filter(|row| row.is_water) {
        let left = row.weigh - brought;
        if left < Mass::from_g(0.0) {
            return Err(BatchesError::TooWet {
                batch: batch.number,
                name: wettest,
                brought: format!("{} g", rounded(brought.as_g(), 3)),
                wanted: format!("{} g", rounded(row.weigh.as_g(), 3)),
            });
        }
        row.weigh = left;
    }
    for row in &mut rows {
        row.weigh = to_step(row.weigh, experiment.scale_step);
    }
    Ok(rows)
}

/// The amounts of a batch of which some parts were weighed otherwise than planned, in parts beside
/// those that never change, or in per cent of the whole.
///
/// # Errors
///
/// As [`weighed`], and when nothing is left of what all others are counted beside.
pub fn made(
    experiment: &Experiment,
    batch: &Batch,
    scale: &[(usize, Mass)],
) -> Result<Vec<f64>, BatchesError> {
    let rows = weighed(experiment, batch)?;
    let mut own: Vec<Mass> = rows.iter().map(|row| row.weigh).collect();
    for (part, mass) in scale {
        own[*part] = *mass;
    }
    if experiment.basis == Basis::Dry {
        let mut brought = Mass::from_g(0.0);
        for (mass, part) in own.iter_mut().zip(&experiment.parts) {
            let holds = *mass * part.moisture;
            *mass = *mass - holds;
            brought += holds;
        }
        let water = experiment.parts.iter().position(|part| part.is_water);
        if let Some(at) = water {
            own[at] += brought;
        }
    }
    let stands = |part: &Part| experiment.counted == Counted::Percent || !part.varies();
    let beside = experiment.parts.iter().zip(batch.amounts.iter().zip(&own));
    let beside = beside.filter(|(part, _)| stands(part)).map(|(_, two)| two);
    let (planned, weighed) = beside.fold((0.0, 0.0), |sum, (amount, mass)| {
        (sum.0 + amount, sum.1 + mass.as_g())
    });
    if planned <= 0.0 || weighed <= 0.0 {
        return Err(BatchesError::NothingBeside(batch.number));
    }
    let in_amounts = own.iter().map(|mass| mass.as_g() * planned / weighed);
    Ok(in_amounts.collect())
}

/// Parts that the scale tells badly in some batch.
pub fn coarse(experiment: &Experiment, batches: &[Batch]) -> Vec<Coarse> {
    let mut found = Vec::new();
    for (at, part) in experiment.parts.iter().enumerate() {
        let grams = batches.iter().map(|batch| {
            let sum: f64 = batch.amounts.iter().sum();
            experiment.batch.as_g() * batch.amounts[at] / sum
        });
        let least_g = grams.filter(|one| *one > 0.0).fold(f64::INFINITY, f64::min);
        let missed = experiment.scale_step.as_g() / 2.0 / least_g;
        if missed > TOLD_BADLY {
            found.push(Coarse {
                name: part.name.clone(),
                least_g,
                missed,
            });
        }
    }
    found
}

fn to_step(mass: Mass, step: Mass) -> Mass {
    match step > Mass::from_g(0.0) {
        true => step * (mass.as_g() / step.as_g()).round(),
        false => mass,
    }
}
