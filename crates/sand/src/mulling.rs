//! Working clay in under pressure: how long by each way, and when it is enough.
//!
//! Minutes are common practice without a source: heaps and machines differ, so the strength of the
//! sand itself says when to stop.

use measure::band::Band;

/// A way to work clay in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Shovel and boots on a floor, turned and trodden.
    Hand,
    /// A drill with a paddle, or a drum mixer: it mixes and hardly presses.
    Mixer,
    /// Wheels or paddles that press and smear.
    Muller,
}

/// Every way, the plainest first.
pub const WAYS: [Way; 3] = [Way::Hand, Way::Mixer, Way::Muller];

/// Minutes that a batch of up to some 30 kg usually takes (`common-practice`).
pub fn minutes(way: Way) -> Band<f64> {
    match way {
        Way::Hand => Band::new(20.0, 25.0, 40.0),
        Way::Mixer => Band::new(10.0, 15.0, 25.0),
        Way::Muller => Band::new(4.0, 6.0, 10.0),
    }
}

/// Whether strength still grows: the gain between two tests is more than two tests of the same
/// sand differ by, whose standard deviation is √2 of one test's.
pub fn still_grows(before: f64, after: f64, deviation: f64) -> bool {
    after - before > std::f64::consts::SQRT_2 * deviation
}
