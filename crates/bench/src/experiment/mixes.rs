//! Named mixes compared with each other: what is tried is the mixes themselves, and no range
//! between them. Each is made several times, and every day holds each of them, so that what a day
//! does is taken off.

use trials::chance::within;
use trials::plan::by_lot;

use crate::experiment::Experiment;
use crate::experiment::batches::{Batch, From, kept};
use crate::experiment::design::days;

pub mod answer_file;
pub(super) mod meant;
pub mod picture;
pub mod reading;
pub mod told;
pub mod trouble;

/// The mixes of an experiment, and how often each is made.
#[derive(Clone, Debug, PartialEq)]
pub struct Mixes {
    /// Each mix, two to eight of them.
    pub each: Vec<Mix>,
    /// How often each is made.
    pub times: usize,
}

/// A mix with a name.
#[derive(Clone, Debug, PartialEq)]
pub struct Mix {
    /// What it is called.
    pub name: String,
    /// The amount of each part of the experiment, in parts or per cent.
    pub amounts: Vec<f64>,
    /// The value of each setting.
    pub settings: Vec<f64>,
}

impl Experiment {
    /// The named mix of which a batch is; nothing where ranges are tried.
    pub fn mix_of(&self, batch: &Batch) -> Option<&Mix> {
        self.mixes.as_ref()?.each.get(batch.mix?)
    }
}

/// The batches of the first plan: every day holds each mix equally often, in an order drawn by lot
/// for that day. Nothing comes of an experiment of ranges.
pub fn planned(experiment: &Experiment) -> Vec<Batch> {
    let Some(mixes) = &experiment.mixes else {
        return Vec::new();
    };
    let mut batches = Vec::new();
    for day in 0..experiment.days {
        let rounds = (0..mixes.times).filter(|round| round * experiment.days / mixes.times == day);
        let made: Vec<usize> = rounds.flat_map(|_| 0..mixes.each.len()).collect();
        append(experiment, mixes, &made, day + 1, From::Plan, &mut batches);
    }
    batches
}

/// The batches there are and so many more, on a day of their own, of the mixes that are to be made
/// again: each in its turn, in an order drawn by lot.
pub fn with_more(
    experiment: &Experiment,
    batches: &[Batch],
    again: &[usize],
    count: usize,
) -> Vec<Batch> {
    let mut all = batches.to_vec();
    if let Some(mixes) = &experiment.mixes {
        let made: Vec<usize> = again.iter().copied().cycle().take(count).collect();
        let day = days(batches) + 1;
        append(experiment, mixes, &made, day, From::Next, &mut all);
    }
    all
}

/// By how many noises of one batch two mixes have to differ to be told apart 19 times in 20, when
/// all batches are measured; nothing where none is to spare.
pub fn shows(batches: &[Batch], mixes: &Mixes) -> Option<f64> {
    let taken = mixes.each.len() + days(batches) - 1;
    let degrees = batches.len().checked_sub(taken).filter(|left| *left > 0)?;
    Some(within(0.95, degrees) * (2.0 / mixes.times as f64).sqrt())
}

fn append(
    experiment: &Experiment,
    mixes: &Mixes,
    made: &[usize],
    day: usize,
    from: From,
    batches: &mut Vec<Batch>,
) {
    // Each day draws its own lot.
    for at in by_lot(made.len(), experiment.seed.wrapping_add(day as u64)) {
        let mix = made[at];
        let amounts = mixes.each[mix].amounts.iter().copied();
        batches.push(Batch {
            number: batches.len() + 1,
            day,
            from,
            mix: Some(mix),
            amounts: amounts.map(kept).collect(),
            weighed: None,
            settings: mixes.each[mix].settings.clone(),
        });
    }
}
