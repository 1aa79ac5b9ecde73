//! What a charge comes to, as a band, against its target.

use measure::band::Band;

use crate::charge_makeup::limit::{Limit, Side};
use crate::charge_makeup::measured::Measured;
use crate::charge_makeup::mix::Mix;

/// One thing measured of a melt.
#[derive(Clone, Debug, PartialEq)]
pub struct Measure {
    /// What.
    pub of: Measured,
    /// The likely share between the least and the most that the heaps and losses allow.
    pub share: Band<f64>,
    /// Between what it comes out nine times in ten.
    pub usual: (f64, f64),
    /// What the target says of it.
    pub limit: Option<Limit>,
}

/// What is measured of a melt: everything the target limits, then the elements it is silent about.
pub(super) fn things(mix: &Mix, limits: &[Limit]) -> Vec<Measured> {
    let mut things: Vec<Measured> = limits.iter().map(|limit| limit.of).collect();
    let silent = mix.elements.iter().map(|element| Measured::Of(*element));
    let silent: Vec<_> = silent.filter(|of| !things.contains(of)).collect();
    things.extend(silent);
    things
}

/// The likely share of a thing in a charge, and the corners of its band.
pub(super) fn share(mix: &Mix, kg: &[f64], of: Measured) -> Band<f64> {
    let at = |side| {
        let worst = mix.charge(kg, |_, column| mix.worst(column, of, side));
        ratio(mix.measured(&worst, of), worst.whole)
    };
    Band::new(at(Side::Low), likely(mix, kg, of), at(Side::High))
}

/// The likely share of a thing in a charge.
pub(super) fn likely(mix: &Mix, kg: &[f64], of: Measured) -> f64 {
    let brought = mix.charge(kg, |_, column| mix.likely(column));
    ratio(mix.measured(&brought, of), brought.whole)
}

fn ratio(part: f64, whole: f64) -> f64 {
    if whole > 0.0 { part / whole } else { 0.0 }
}
