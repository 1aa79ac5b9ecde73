//! The basin over the sprue and the hand that keeps it full.
//!
//! The choke sets the pace only while the basin is full. So the founder has to pour as many
//! kilograms a second as the choke takes: the lip rate. Slower, and the sprue draws air; faster,
//! and it runs over.

use measure::flow::{Duration, Flow};
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, GRAVITY_M_PER_S2, Mass};
use measure::source::Law;

use crate::gating::sprue::fall_speed;

/// Depth of the basin.
pub const BASIN_DEPTH: Law = Law {
    name: "mould::gating::basin::basin_depth",
    formula: "h = 2.5 d_top, radius into the sprue at least 25 mm",
    range: "sprues of small moulds; deeper where the stream swirls",
    sources: &["pouring-basin-notes"],
};

/// Metal that has to leave the lip in each second.
pub const LIP_RATE: Law = Law {
    name: "mould::gating::basin::lip_flow",
    formula: "R = ρ C A √(2 g H)",
    range: "basin full; at the start, before metal stands above the gate; less towards the end",
    sources: &["gating-slides"],
};

/// How long a basin runs on when the pour stops.
pub const BASIN_LASTS: Law = Law {
    name: "mould::gating::basin::basin_lasts",
    formula: "t = (2 A_b / (C A √(2 g))) (√H − √(H − h))",
    range: "upright sides; h the metal that may sink before the sprue mouth is bare",
    sources: &["bottom-gate-exam"],
};

/// Radius of the edge from basin to sprue, at least (`pouring-basin-notes`).
pub const ENTRY_RADIUS: Length = Length::from_mm(25.0);

/// Depth of the basin over the sprue. Law: [`BASIN_DEPTH`].
pub fn basin_depth(sprue_top: Length) -> Length {
    sprue_top * 2.5
}

/// Metal by volume that a full basin wants; times the density it is the lip rate. Law:
/// [`LIP_RATE`].
pub fn lip_flow(choke: Area, discharge: f64, head: Length) -> Flow {
    choke * fall_speed(head) * discharge
}

/// Metal that leaves the lip in a time.
pub fn lip_metal(flow: Flow, liquid: Density, time: Duration) -> Mass {
    let volume: Volume = flow * time;
    liquid * volume
}

/// Time for which a ladle of metal lasts at a flow.
pub fn ladle_lasts(ladle: Mass, liquid: Density, flow: Flow) -> Duration {
    Volume::filled_by(ladle, liquid) / flow
}

/// How long the basin runs on when the pour stops. Law: [`BASIN_LASTS`].
pub fn basin_lasts(
    basin: Area,
    choke: Area,
    discharge: f64,
    head: Length,
    spare: Length,
) -> Duration {
    let left_m = (head - spare).as_m().max(0.0);
    let roots = head.as_m().sqrt() - left_m.sqrt();
    let widths = basin / choke / discharge;
    Duration::from_s(2.0 * widths / (2.0 * GRAVITY_M_PER_S2).sqrt() * roots)
}
