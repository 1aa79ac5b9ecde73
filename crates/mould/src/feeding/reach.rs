//! How far a feeder reaches: guidance for where to put the next one, never a test of soundness.

use std::sync::LazyLock;

use measure::band::Band;
use measure::length::Length;
use measure::source::Law;
use serde::Deserialize;

/// How far a feeder reaches along a plate.
pub const REACH: Law = Law {
    name: "mould::feeding::reach::reach",
    formula: "l = r s",
    range: "plates, from the edge of the feeder; guidance only: outside steel the weakest figure \
            of the trade",
    sources: &["feeding-distance-memory"],
};

/// How far a feeder reaches along a bar of steel.
pub const REACH_ALONG_BAR: Law = Law {
    name: "mould::feeding::reach::reach_along_bar",
    formula: "l = 6 √s, both in inches",
    range: "square bars of steel with a cold end; guidance only",
    sources: &["feeding-distance-memory"],
};

/// Feeders along a plate.
pub const FEEDERS_ALONG: Law = Law {
    name: "mould::feeding::reach::feeders_along",
    formula: "n = ⌈(l − 2 e) / (2 m)⌉ + 1, not below 1",
    range: "e the reach to a cold end, m the reach towards the next feeder; guidance only",
    sources: &["feeding-distance-memory"],
};

/// How far feeders reach in one kind of metal, in thicknesses.
#[derive(Clone, Debug, PartialEq)]
pub struct ReachRow {
    /// The kind of metal.
    pub name: String,
    /// To a cold end and towards the next feeder; nothing where distance is not what counts.
    pub thicknesses: Option<[Band<f64>; 2]>,
    /// What goes with it.
    pub words: String,
    /// Key of the source.
    pub source: String,
}

/// Every kind of metal of the table.
pub fn reach_rows() -> &'static [ReachRow] {
    &ROWS
}

/// The row of a kind of metal.
pub fn reach_row(name: &str) -> Option<&'static ReachRow> {
    ROWS.iter().find(|row| row.name == name)
}

/// How far a feeder reaches. Law: [`REACH`].
pub fn reach(thickness: Length, thicknesses: f64) -> Length {
    thickness * thicknesses
}

/// How far a feeder reaches along a bar. Law: [`REACH_ALONG_BAR`].
pub fn reach_along_bar(thickness: Length) -> Length {
    Length::from_inch(6.0 * thickness.as_inch().sqrt())
}

/// How many feeders a length asks for. Law: [`FEEDERS_ALONG`].
pub fn feeders_along(length: Length, to_end: Length, to_next: Length) -> u32 {
    let left = (length - to_end * 2.0) / (to_next * 2.0);
    // A length that the reach just covers must not gain a feeder by a rounding error.
    let more = (left - 1e-9).ceil().max(0.0);
    // A plate of a million feeders is a mistyped length; the cast ends there.
    1 + more.min(1e6) as u32
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    name: String,
    to_end: Option<[f64; 2]>,
    to_next: Option<[f64; 2]>,
    source: String,
    words: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    row: Vec<Row>,
}

static ROWS: LazyLock<Vec<ReachRow>> = LazyLock::new(|| {
    let table: Result<Table, _> = toml::from_str(include_str!("../../data/feeding/reach.toml"));
    let rows = table.map(|table| table.row).unwrap_or_default();
    rows.into_iter().map(Row::meant).collect()
});

impl Row {
    fn meant(self) -> ReachRow {
        let band = |[low, high]: [f64; 2]| Band::new(low, (low + high) / 2.0, high);
        let both = self.to_end.zip(self.to_next);
        ReachRow {
            name: self.name,
            thicknesses: both.map(|(end, next)| [band(end), band(next)]),
            words: self.words,
            source: self.source,
        }
    }
}
