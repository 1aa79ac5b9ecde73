//! Chaplets and pins: how many hold a core that no print holds.

use measure::length::Area;
use measure::matter::{Force, Pressure};
use measure::source::Law;

/// Number of chaplets by what the sand bears under their feet.
pub const CHAPLETS: Law = Law {
    name: "mould::chaplet::chaplets",
    formula: "n = k F / (σ a), whole ones",
    range: "feet flat on rammed sand of compression strength σ; a core without a print wants three",
    sources: &["common-practice"],
};

/// Metal of chaplets by the text-books.
pub const CHAPLET_METAL: Law = Law {
    name: "mould::chaplet::chaplet_metal",
    formula: "A = 29 mm² F / N as printed, 29 mm² F / kgf as it is more likely meant",
    range: "doubtful unit: the two readings are ten times apart and both are shown",
    sources: &["core-print-rules-memory"],
};

/// Metal for each newton as printed, mm².
const BOOK_MM2_PER_N: f64 = 29.0;

/// A pin through the wall of the mould into the core: its two ends, mm, in any frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pin {
    /// The end in the mould.
    pub foot: [f64; 3],
    /// The end in or on the core.
    pub head: [f64; 3],
}

/// Number wanted, at least so many as the prints leave to be held. Law: [`CHAPLETS`].
pub fn chaplets(force: Force, strength: Pressure, margin: f64, foot: Area, prints: u32) -> f64 {
    let borne = (force.max(Force::ZERO) * margin / (strength * foot)).ceil();
    borne.max(least_pins(prints))
}

/// Pins that a core wants whatever the force: without a print three, lest it turn on two; on one
/// print two, under and over the free end; on two prints none (common practice).
pub fn least_pins(prints: u32) -> f64 {
    match prints {
        0 => 3.0,
        1 => 2.0,
        _ => 0.0,
    }
}

/// Metal by the text-books, likelier reading and printed reading. Law: [`CHAPLET_METAL`].
pub fn chaplet_metal(force: Force) -> [Area; 2] {
    let area = |force: f64| Area::from_mm2(BOOK_MM2_PER_N * force);
    [area(force.as_kgf()), area(force.as_n())]
}

/// Part of their spread by which pins have to stand out of a plane: below a tenth the core still
/// rocks about that plane, since no pin fits its hole without play.
const OUT_OF_PLANE: f64 = 0.1;

/// Whether all pins lie in one plane, so that the core can rock about it.
pub fn in_one_plane(pins: &[Pin]) -> bool {
    let ends: Vec<[f64; 3]> = pins.iter().flat_map(|pin| [pin.foot, pin.head]).collect();
    let Some(&first) = ends.first() else {
        return true;
    };
    let from_first: Vec<[f64; 3]> = ends.iter().map(|end| less(*end, first)).collect();
    let along = longest(&from_first);
    let across: Vec<[f64; 3]> = from_first.iter().map(|to| cross(*to, along)).collect();
    let normal = longest(&across);
    let spread = size(along);
    let height = |to: &[f64; 3]| (dot(*to, normal) / size(normal)).abs();
    let out = from_first.iter().map(height).fold(0.0, f64::max);
    // Where all ends lie on one line there is no normal, and the quotient is no number.
    out.is_nan() || size(normal) == 0.0 || out < OUT_OF_PLANE * spread
}

fn longest(all: &[[f64; 3]]) -> [f64; 3] {
    let larger = |a: [f64; 3], b: &[f64; 3]| if size(*b) > size(a) { *b } else { a };
    all.iter().fold([0.0; 3], larger)
}

fn less(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

fn size(a: [f64; 3]) -> f64 {
    dot(a, a).sqrt()
}
