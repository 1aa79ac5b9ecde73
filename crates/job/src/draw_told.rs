//! Which ways a part draws, in words: the best lines of draw beside each other, and what is held
//! along the way in which the job lays it.

use measure::text::rounded;
use pattern::draw::remedy::turn_if_clear;
use pattern::draw::search::ways;
use pattern::draw::undercut::undercuts;
use pattern::draw::way::Way;
use pattern::draw::{DrawError, DrawSettings};
use pattern::mesh::Mesh;
use pattern::vector::Vector;

use crate::cores_told::{Line, note, of_all_left};
use crate::job::Job;
use crate::turning::Turning;
use crate::words::said::Said;

/// What is told.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// Ids of the heads of the table.
    pub heads: [&'static str; 7],
    /// The ways, the best first.
    pub rows: Vec<[String; 7]>,
    /// What is held as the job lays it.
    pub lines: Vec<Line>,
}

/// Lines of draw that are shown: more than three are not chosen from.
const SHOWN: usize = 3;

/// Heads of the table.
const HEADS: [&str; 7] = [
    "draw-way",
    "draw-held",
    "draw-undercut",
    "draw-cope",
    "draw-drag",
    "draw-wanders",
    "draw-shadow",
];

/// The ways in which a part draws, its mesh closed and in mm.
///
/// # Errors
///
/// A mesh that cannot be looked at.
pub fn told(job: &Job, part: &Mesh) -> Result<Told, DrawError> {
    let settings = DrawSettings::suiting(part);
    let ways = ways(part, None, &settings, SHOWN)?;
    let up = Turning::of(part, job.up).drawn_way(1.0);
    let mut found = undercuts(part, up, &settings)?;
    turn_if_clear(&mut found, &ways);
    let held = cm3(found.trapped_mm3);
    let as_it_lies = match found.regions.is_empty() {
        true => Said::new("draw-clear").with("way", way_text(up)),
        false => Said::new("draw-holds")
            .with("way", way_text(up))
            .with("held", held),
    };
    Ok(Told {
        heads: HEADS,
        rows: ways.iter().map(row).collect(),
        lines: std::iter::once(note(as_it_lies))
            .chain(of_all_left(&found.regions))
            .collect(),
    })
}

fn row(way: &Way) -> [String; 7] {
    let mm = |length: f64| format!("{length:.0} mm");
    let cm2 = |area: f64| format!("{} cm²", rounded(area / 100.0, 3));
    [
        way_text(way.up),
        cm3(way.trapped_mm3),
        cm2(way.undercut_mm2),
        mm(way.cope_mm),
        mm(way.drag_mm),
        mm(way.wanders_mm),
        cm2(way.shadow_mm2),
    ]
}

fn cm3(volume_mm3: f64) -> String {
    format!("{} cm³", rounded(volume_mm3 / 1000.0, 3))
}

/// A way along an axis by the word of the job file, any other by its three parts.
pub(crate) fn way_text(way: Vector) -> String {
    let along = (0..3).find(|&axis| way[axis].abs() > 0.9999);
    match along {
        Some(axis) => {
            let sign = if way[axis] > 0.0 { '+' } else { '-' };
            format!("{sign}{}", ["x", "y", "z"][axis])
        }
        None => way
            .map(|part| format!("{:.2}", (part * 100.0).round() / 100.0 + 0.0))
            .join(", "),
    }
}
