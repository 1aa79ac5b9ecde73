//! How often chance alone goes as far: the tails of the distributions of Student, Fisher and Gauss.

use statrs::distribution::{
    ChiSquared, Continuous, ContinuousCDF, FisherSnedecor, Normal, StudentsT,
};

/// How often a value of Student's t lies at least as far from nought, on either side.
pub fn two_sided(t: f64, degrees: usize) -> f64 {
    if t.is_nan() {
        return 1.0;
    }
    if t.is_infinite() {
        return 0.0;
    }
    let found = StudentsT::new(0.0, 1.0, degrees.max(1) as f64);
    found.map_or(1.0, |student| 2.0 * student.sf(t.abs()))
}

/// How far from nought Student's t lies within this share of the time, on either side.
pub fn within(share: f64, degrees: usize) -> f64 {
    let found = StudentsT::new(0.0, 1.0, degrees.max(1) as f64);
    found.map_or(f64::INFINITY, |student| {
        student.inverse_cdf(0.5 + share / 2.0)
    })
}

/// How often Fisher's F is at least as large.
pub fn upper_f(f: f64, above: usize, below: usize) -> f64 {
    if f.is_nan() {
        return 1.0;
    }
    if f.is_infinite() {
        return 0.0;
    }
    let found = FisherSnedecor::new(above.max(1) as f64, below.max(1) as f64);
    found.map_or(1.0, |fisher| fisher.sf(f.max(0.0)))
}

/// The value that chi squared stays below in this share of the time.
pub fn chi_squared_below(share: f64, degrees: usize) -> f64 {
    let found = ChiSquared::new(degrees.max(1) as f64);
    found.map_or(f64::NAN, |chi| chi.inverse_cdf(share))
}

/// The share of a normal distribution below z.
pub fn normal_below(z: f64) -> f64 {
    Normal::standard().cdf(z)
}

/// The z below which a normal distribution lies in this share of the time.
pub fn normal_at(share: f64) -> f64 {
    Normal::standard().inverse_cdf(share)
}

/// The height of the normal curve at z.
pub fn normal_height(z: f64) -> f64 {
    Normal::standard().pdf(z)
}
