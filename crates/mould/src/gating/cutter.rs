//! What to cut a sprue with: the nearest drill for a peg, the nearest pipe for a cutter.

use std::sync::LazyLock;

use measure::length::Length;
use serde::Deserialize;

/// Something found in a shop that makes a round hole in sand.
#[derive(Clone, Debug, PartialEq)]
pub struct Cutter {
    /// What it is.
    pub kind: Kind,
    /// The size it is asked for by over the counter: "12 mm", "1/2 in".
    pub size: String,
    /// The hole it leaves.
    pub hole: Length,
}

/// What makes a round hole in sand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// A drill, for a peg of the same size.
    Drill,
    /// Copper tube, named by its outside.
    CopperTube,
    /// Threaded steel pipe, named by its bore.
    SteelPipe,
}

/// The metric drill nearest to a diameter: half millimetres, the steps of a common set (`iso-235`).
pub fn nearest_drill(diameter: Length) -> Cutter {
    let hole_mm = ((diameter.as_mm() * 2.0).round() / 2.0).max(1.0);
    Cutter {
        kind: Kind::Drill,
        size: format!("{hole_mm} mm"),
        hole: Length::from_mm(hole_mm),
    }
}

/// The pipe whose outside is nearest to a diameter, for a thin-walled cutter.
pub fn nearest_pipe(diameter: Length) -> Option<&'static Cutter> {
    let away = |pipe: &&Cutter| (pipe.hole.as_mm() - diameter.as_mm()).abs();
    PIPES.iter().min_by(|a, b| away(a).total_cmp(&away(b)))
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    pipe: Vec<Row>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    kind: Kind,
    size: String,
    outside_mm: f64,
}

static PIPES: LazyLock<Vec<Cutter>> = LazyLock::new(|| {
    let table: Table =
        toml::from_str(include_str!("../../data/pipes.toml")).unwrap_or(Table { pipe: Vec::new() });
    let cutter = |row: Row| Cutter {
        kind: row.kind,
        size: row.size,
        hole: Length::from_mm(row.outside_mm),
    };
    table.pipe.into_iter().map(cutter).collect()
});
