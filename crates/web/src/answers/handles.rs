//! Gates and feeders as they lie on the joint, to be moved on the plan.

use job::folder::Opened;
use job::mould_told;
use pattern::vector::{norm, sub};
use rigging::mould::Mould;
use rigging::piece::{Piece, Solid};
use rigging::placement::FeederAt;
use serde::Serialize;
use utoipa::ToSchema;

/// A gate or a feeder that can be moved.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct Handle {
    /// The key of the job's file under which the places of its kind stand.
    pub key: String,
    /// What it is called.
    pub label: String,
    /// Where it is, mm along the flask and across it from the front left inside corner.
    pub at_mm: [f64; 2],
    /// The same as it is typed.
    pub text: String,
}

/// Keys of the places.
const GATES: &str = "mould.place.gates";
const FEEDERS: &str = "mould.place.feeders";

/// What can be moved of a mould, gates first, in the order in which their places are typed.
pub fn handles(opened: &Opened, mould: &Mould) -> Vec<Handle> {
    let words = opened.shop.words;
    let typed = &opened.job.place;
    let pieces = mould.rigging.iter();
    pieces
        .filter_map(|solid| {
            let (key, at_mm) = match solid.piece {
                Piece::Gate(number) => {
                    let asked = typed.gates_mm.as_ref();
                    let asked = asked.and_then(|all| all.get(number.checked_sub(1)?));
                    (GATES, asked.copied().unwrap_or_else(|| mouth(solid, mould)))
                }
                Piece::Feeder(number) => {
                    let asked = typed.feeders.as_ref();
                    let asked = asked.and_then(|all| all.get(number.checked_sub(1)?));
                    let point = match asked {
                        Some(FeederAt::Point(point)) => *point,
                        _ => middle(solid),
                    };
                    (FEEDERS, point)
                }
                _ => return None,
            };
            Some(Handle {
                key: key.to_owned(),
                label: words.say(&mould_told::piece(&solid.piece)),
                at_mm,
                text: at_mm.map(tenths).join(", "),
            })
        })
        .collect()
}

fn middle(solid: &Solid) -> [f64; 2] {
    let [low, high] = solid.mesh.bounds();
    [0, 1].map(|axis| f64::midpoint(low[axis], high[axis]))
}

/// Points of a gate within this of its far end belong to it, mm.
const END_MM: f64 = 1.0;

/// Where a gate enters its casting: its end away from the runners.
fn mouth(gate: &Solid, mould: &Mould) -> [f64; 2] {
    let runners = mould.rigging.iter();
    let runners = runners.filter(|solid| matches!(solid.piece, Piece::Runner(_) | Piece::Sprue));
    let runners: Vec<_> = runners.flat_map(|solid| &solid.mesh.points).collect();
    let away = |point: &[f64; 3]| {
        let level =
            |other: &&[f64; 3]| norm(sub([point[0], point[1], 0.0], [other[0], other[1], 0.0]));
        runners.iter().map(level).fold(f64::INFINITY, f64::min)
    };
    let points: Vec<_> = gate
        .mesh
        .points
        .iter()
        .map(|point| (away(point), point))
        .collect();
    let farthest = points.iter().map(|(away, _)| *away).fold(0.0, f64::max);
    let end = points.iter().filter(|(away, _)| *away >= farthest - END_MM);
    let (mut sum, mut count) = ([0.0; 2], 0.0);
    for (_, point) in end {
        sum = [sum[0] + point[0], sum[1] + point[1]];
        count += 1.0;
    }
    match count > 0.0 && farthest.is_finite() {
        true => sum.map(|along| along / count),
        false => middle(gate),
    }
}

fn tenths(mm: f64) -> String {
    format!("{}", (10.0 * mm).round() / 10.0)
}
