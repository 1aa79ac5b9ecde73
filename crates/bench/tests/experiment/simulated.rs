//! Batches that come out by a known law with seeded noise.

use bench::experiment::Experiment;
use bench::experiment::batches::Batch;
use bench::experiment::results::{Note, Reading};

/// A stream of normal numbers (splitmix64 and the method of Box and Muller), the same for the same
/// seed.
pub struct Noise(pub u64);

impl Noise {
    /// A number between 0 and 1.
    pub fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// A normal number.
    pub fn normal(&mut self) -> f64 {
        let (one, other) = (self.even(), self.even());
        (-2.0 * (1.0 - one).ln()).sqrt() * (std::f64::consts::TAU * other).cos()
    }
}

/// Results of all batches for the first response.
pub fn results(batches: &[Batch], mut gives: impl FnMut(&Batch) -> f64) -> Vec<Reading> {
    let reading = |batch: &Batch| Reading {
        batch: batch.number,
        response: 0,
        value: gives(batch),
        note: Note::First,
    };
    batches.iter().map(reading).collect()
}

/// The shares of the ranges at which a batch stands, 0 to 1, for the parts that change.
pub fn at(experiment: &Experiment, batch: &Batch) -> Vec<f64> {
    let parts = experiment.parts.iter().zip(&batch.amounts);
    parts
        .filter(|(part, _)| part.varies())
        .map(|(part, amount)| (amount - part.low) / (part.high - part.low))
        .collect()
}
