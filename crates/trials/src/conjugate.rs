//! What is believed of a mean before and after it was measured, where neither it nor the scatter
//! is known: the conjugate belief of the textbooks (normal with an inverse gamma for the scatter;
//! Gelman and others, Bayesian Data Analysis, section 3.3, from memory), which is exact.

use crate::chance::within;

/// A belief about a mean and the scatter round it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeanBelief {
    /// Where the mean is believed to be.
    pub mean: f64,
    /// How many measurements the belief about the mean is worth.
    pub worth: f64,
    /// How many degrees of freedom the belief about the scatter is worth.
    pub degrees: f64,
    /// The scatter of one measurement as it is believed to be.
    pub scatter: f64,
}

/// Degrees of freedom that a published scatter is worth. With fewer, ten measurements are needed
/// before any width is told; with more, a shop that scatters half as much again as the published
/// one is told intervals that hold in four of five cases where nine of ten are promised.
pub const WORTH_OF_A_SCATTER: f64 = 4.0;

impl MeanBelief {
    /// Before anything was measured: the mean and how far it is spread from shop to shop (one
    /// standard deviation), and the scatter within one.
    pub fn before(mean: f64, spread: f64, scatter: f64) -> MeanBelief {
        MeanBelief {
            mean,
            worth: (scatter / spread).powi(2),
            degrees: WORTH_OF_A_SCATTER,
            scatter,
        }
    }

    /// After these measurements.
    #[must_use]
    pub fn after(&self, measured: &[f64]) -> MeanBelief {
        if measured.is_empty() {
            return *self;
        }
        let count = measured.len() as f64;
        let mean = measured.iter().sum::<f64>() / count;
        let squares: f64 = measured.iter().map(|one| (one - mean).powi(2)).sum();
        let worth = self.worth + count;
        let degrees = self.degrees + count;
        let apart = self.worth * count / worth * (mean - self.mean).powi(2);
        let scale = self.degrees * self.scatter.powi(2) + squares + apart;
        MeanBelief {
            mean: (self.worth * self.mean + count * mean) / worth,
            worth,
            degrees,
            scatter: (scale / degrees).sqrt(),
        }
    }

    /// How far the mean may be off to either side, so often as this share says.
    pub fn around(&self, share: f64) -> f64 {
        within(share, self.degrees.round() as usize) * self.scatter / self.worth.sqrt()
    }
}
