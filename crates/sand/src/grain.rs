//! How the grains of a sand spread over the sizes, how open it stands, how much of it is dust.
//!
//! Sizes come from what was sieved, never from the grain fineness number: that is an index of
//! surface, and one paper gives 336 µm for a number that a list of means calls 150 µm.

use measure::band::Band;
use measure::length::Length;
use measure::matter::{Density, Mass};
use measure::source::Law;

use crate::sieve::{Sieving, SievingError, table};

/// Size below which a share of the grains lies.
pub const GRAIN_SIZE: Law = Law {
    name: "sand::grain::grain_size",
    formula: "log d = log d_1 + (log d_2 − log d_1) (q − q_1) / (q_2 − q_1)",
    range: "between two sieves that hold the share q between them; they are its band",
    sources: &["astm-d2487-memory"],
};

/// How even the grains are.
pub const UNIFORMITY: Law = Law {
    name: "sand::grain::uniformity",
    formula: "C_u = d_60 / d_10",
    range: "1 is all of one size; moulding sands of 2 and under are even",
    sources: &["astm-d2487-memory"],
};

/// Share of a bed that is air.
pub const VOIDS: Law = Law {
    name: "sand::grain::voids",
    formula: "e = 1 − ρ_dry / 2650 kg/m³",
    range: "quartz sand, its clay counted as quartz",
    sources: &["shop-handbook-figures"],
};

/// How open a clean sand of one grain stands.
pub const OPENNESS: Law = Law {
    name: "sand::grain::openness",
    formula: "P = e³ d² / (180 (1 − e)²) / 3.08e-13 m²",
    range: "clean dry sand of round grains; clay and water close it. A first guess of a change",
    sources: &["darcy-memory"],
};

/// Grains below this are dust in the air and fines in the sand, µm: the last sieve but one.
pub const DUST_UM: f64 = 75.0;

/// Share of the sample by which a sieving may be off before it is doubtful: what stuck to the
/// meshes or flew off. A fiftieth, as the trade has it (`common-practice`).
pub const LOST: f64 = 0.02;

/// Permeability in m² for one of the trade's number: 1.81e-5 Pa s of air.
const M2_PER_NUMBER: f64 = 3.08e-13;

/// Density of quartz, kg/m³: `shop-handbook-figures`.
const QUARTZ: f64 = 2650.0;

/// How the grains spread.
#[derive(Clone, Debug, PartialEq)]
pub struct Spread {
    /// Openings, fine to coarse, and the share of the grains that passes each.
    pub passing: Vec<(Length, f64)>,
    /// Share kept on each sieve, coarse to fine with the pan last, by the sieve's number; the pan
    /// has none.
    pub kept: Vec<(Option<u16>, f64)>,
}

/// The spread of a sieving.
///
/// # Errors
///
/// As [`crate::sieve::grain_fineness`].
pub fn spread(sieving: &Sieving) -> Result<Spread, SievingError> {
    crate::sieve::grain_fineness(sieving)?;
    let mut stack: Vec<(u16, Length, Mass)> = Vec::new();
    for (number, mass) in &sieving.kept {
        let sieve = table().sieves.iter().find(|sieve| sieve.number == *number);
        if let Some(sieve) = sieve {
            stack.push((*number, sieve.opening, *mass));
        }
    }
    stack.sort_by(|a, b| b.1.as_mm().total_cmp(&a.1.as_mm()));
    let total = stack.iter().map(|(.., mass)| *mass).sum::<Mass>() + sieving.pan;
    let share = |mass: Mass| mass / total;
    let mut kept: Vec<(Option<u16>, f64)> = Vec::new();
    let mut passing = Vec::new();
    let mut left = 1.0;
    for (number, opening, mass) in &stack {
        left -= share(*mass);
        kept.push((Some(*number), share(*mass)));
        passing.push((*opening, left.max(0.0)));
    }
    kept.push((None, share(sieving.pan)));
    passing.reverse();
    Ok(Spread { passing, kept })
}

/// How far the weights of a sieving are from the sample, a share of it; below nought where some
/// was lost.
pub fn lost(sieving: &Sieving, sample: Mass) -> f64 {
    let total = sieving.kept.iter().map(|(_, mass)| *mass).sum::<Mass>() + sieving.pan;
    (total - sample) / sample
}

/// Size on the line between two sieves. Law: [`GRAIN_SIZE`].
pub fn grain_size(finer: (Length, f64), coarser: (Length, f64), share: f64) -> Length {
    let (low, high) = (finer.0.as_mm().ln(), coarser.0.as_mm().ln());
    let along = (share - finer.1) / (coarser.1 - finer.1);
    Length::from_mm((low + (high - low) * along).exp())
}

/// Evenness of the grains. Law: [`UNIFORMITY`].
pub fn uniformity(sixty: Length, ten: Length) -> f64 {
    sixty / ten
}

/// Share of air in a bed. Law: [`VOIDS`].
pub fn voids(dry: Density) -> f64 {
    1.0 - dry.as_kg_per_m3() / QUARTZ
}

/// Permeability number of a clean bed. Law: [`OPENNESS`].
pub fn openness(grain: Length, voids: f64) -> f64 {
    let metres = grain.as_m();
    voids.powi(3) * metres * metres / (180.0 * (1.0 - voids).powi(2)) / M2_PER_NUMBER
}

impl Spread {
    /// Size below which a share of the grains lies, with the sieves around it as its band; none
    /// where it lies beyond the stack. Law: [`GRAIN_SIZE`].
    pub fn size(&self, share: f64) -> Option<Band<Length>> {
        let two = self.passing.windows(2);
        let two = two
            .into_iter()
            .find(|two| two[0].1 <= share && share <= two[1].1 && two[0].1 < two[1].1)?;
        let likely = grain_size(two[0], two[1], share);
        Some(Band::new(two[0].0, likely, two[1].0))
    }

    /// Dust: share of the grains below [`DUST_UM`]. Where that sieve was not in the stack, between
    /// what passed the next finer and the next coarser one.
    pub fn dust(&self) -> Band<f64> {
        let mark = DUST_UM / 1000.0 + 1e-9;
        let finer = self
            .passing
            .iter()
            .rev()
            .find(|(opening, _)| opening.as_mm() <= mark);
        let coarser = self
            .passing
            .iter()
            .find(|(opening, _)| opening.as_mm() >= mark - 2e-9);
        let low = finer.map_or(0.0, |(_, share)| *share);
        let high = coarser.map_or(1.0, |(_, share)| *share);
        Band::new(low, (low + high) / 2.0, high)
    }

    /// How many neighbouring sieves hold a tenth or more of the grains each: three or four are
    /// the trade's wish (`common-practice`), one or two part and buckle, more close up.
    pub fn sieves_with_a_tenth(&self) -> usize {
        self.kept.iter().filter(|(_, share)| *share >= 0.1).count()
    }
}
