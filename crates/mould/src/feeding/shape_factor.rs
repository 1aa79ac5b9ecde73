//! The rule of the shape factor: flat castings need less feeder than chunky ones.
//!
//! Two forms of it are in use and differ by up to a half at chunky shapes; both are shown. Both
//! were measured on steel.

use std::sync::LazyLock;

use measure::length::Length;
use measure::source::Law;
use serde::Deserialize;

/// The shape factor.
pub const SHAPE_FACTOR: Law = Law {
    name: "mould::feeding::shape_factor::shape_factor",
    formula: "S = (a + w) / s",
    range: "length, width and thickness of the box round the casting",
    sources: &["feeding-course-slides", "gate-exam-2015-50"],
};

/// Volume of the feeder over that of the casting, by table and by power.
pub const VOLUME_BY_SHAPE: Law = Law {
    name: "mould::feeding::shape_factor::volume_by_shape",
    formula: "V_f / V_c from the table at S; beside it 2.51 S^(−0.74)",
    range: "steel, S 2 to 12 in the table, beyond it the last row; a second opinion elsewhere",
    sources: &["gate-exam-2015-50", "shape-power-memory"],
};

/// The two forms side by side, volume of the feeder over that of the casting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ByShape {
    /// By the table of the examination.
    pub table: f64,
    /// By the power fitted in the steel trade.
    pub power: f64,
}

/// The shape factor. Law: [`SHAPE_FACTOR`].
pub fn shape_factor(length: Length, width: Length, thickness: Length) -> f64 {
    (length + width) / thickness
}

/// Volume of the feeder over that of the casting. Law: [`VOLUME_BY_SHAPE`].
pub fn volume_by_shape(factor: f64) -> ByShape {
    ByShape {
        table: on_the_table(factor),
        power: 2.51 * factor.powf(-0.74),
    }
}

/// Shape factors that the table holds.
pub fn table_range() -> [f64; 2] {
    let ends = [ROWS.first(), ROWS.last()];
    ends.map(|row| row.map_or(0.0, |row| row.factor))
}

/// On the straight line between two rows; beyond the ends the end row stands.
fn on_the_table(factor: f64) -> f64 {
    let between = ROWS.windows(2).find_map(|pair| match pair {
        [low, high] if (low.factor..=high.factor).contains(&factor) => {
            let along = (factor - low.factor) / (high.factor - low.factor);
            Some(low.volume + along * (high.volume - low.volume))
        }
        _ => None,
    });
    let end = match ROWS.first() {
        Some(first) if factor < first.factor => Some(first),
        _ => ROWS.last(),
    };
    between
        .or(end.map(|row| row.volume))
        .unwrap_or(f64::INFINITY)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    factor: f64,
    volume: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    row: Vec<Row>,
}

static ROWS: LazyLock<Vec<Row>> = LazyLock::new(|| {
    let text = include_str!("../../data/feeding/shape_factor.toml");
    let table: Result<Table, _> = toml::from_str(text);
    table.map(|table| table.row).unwrap_or_default()
});
