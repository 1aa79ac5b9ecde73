//! What days do to results, as far as it is shown, taken off.
//!
//! A planned day holds mixes from everywhere, so the fit tells its shift from what the mixes do. A
//! session that was added holds the few mixes that looked best: a shift fitted to it would pass for
//! whatever these gave, and nothing would be learnt from them. There only a mix that was made on
//! both sides tells the day, and only where it differs by more than chance.

use crate::experiment::batches::{Batch, From};
use crate::experiment::reading::ResponseRead;
use crate::experiment::space::Space;

/// How many deviations of its own a shift has to have before it is taken off. With fewer, chance is
/// taken off as often as a day; with more, days pass for mixes.
const SHOWN: f64 = 2.0;

/// Results of some batches, which were all measured, as if made on the first of their days.
pub(super) fn taken_off(
    space: &Space,
    read: &ResponseRead,
    batches: &[Batch],
    of: &[usize],
) -> Vec<f64> {
    let mut days: Vec<usize> = read.measured.iter().map(|at| batches[*at].day).collect();
    days.sort_unstable();
    days.dedup();
    let mut freed = read.results.clone();
    for (place, day) in days.iter().enumerate() {
        let own: Vec<usize> = (0..read.measured.len())
            .filter(|at| batches[read.measured[*at]].day == *day)
            .collect();
        let added = own
            .iter()
            .all(|at| batches[read.measured[*at]].from == From::Next);
        let shift = match added {
            true => by_mixes_made_again(space, read, batches, &freed, &own, *day),
            false => by_fit(read, place),
        };
        for at in own {
            freed[at] -= shift;
        }
    }
    let result = |at: &usize| {
        let place = read.measured.iter().position(|measured| measured == at);
        place.map_or(f64::NAN, |place| freed[place])
    };
    of.iter().map(result).collect()
}

/// The shift of a planned day, as the fit has it.
fn by_fit(read: &ResponseRead, place: usize) -> f64 {
    let fitted = read.fitted.as_ref().ok();
    let apart = fitted.map_or(&[][..], |fitted| &fitted.days_apart);
    place
        .checked_sub(1)
        .and_then(|at| apart.get(at))
        .map_or(0.0, |one| one.change)
}

/// The shift of an added day by the mixes that were made before it too; nought where none was, or
/// where chance does as much.
fn by_mixes_made_again(
    space: &Space,
    read: &ResponseRead,
    batches: &[Batch],
    freed: &[f64],
    own: &[usize],
    day: usize,
) -> f64 {
    let batch = |at: usize| &batches[read.measured[at]];
    let mut apart = Vec::new();
    for at in own {
        let point = space.planned(batch(*at));
        let before = (0..freed.len())
            .filter(|other| batch(*other).day < day && space.planned(batch(*other)) == point);
        let before: Vec<f64> = before.map(|other| freed[other]).collect();
        if !before.is_empty() {
            let mean = before.iter().sum::<f64>() / before.len() as f64;
            apart.push(read.results[*at] - mean);
        }
    }
    let fitted = read.fitted.as_ref().ok().and_then(|one| one.fit.noise);
    let noise = read.repeats.map(|noise| noise.deviation).or(fitted);
    let count = apart.len() as f64;
    let shift = apart.iter().sum::<f64>() / count.max(1.0);
    let chance = noise.unwrap_or(0.0) * (2.0 / count.max(1.0)).sqrt();
    if shift.abs() > SHOWN * chance {
        shift
    } else {
        0.0
    }
}
