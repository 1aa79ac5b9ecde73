//! What lines a feeder: bare sand, or a sleeve that keeps it hot.

use std::sync::LazyLock;

use measure::band::Band;
use serde::Deserialize;

/// A lining with what it does for the feeder.
#[derive(Clone, Debug, PartialEq)]
pub struct Lining {
    /// What it is called: "sand", "insulating sleeve".
    pub name: String,
    /// Share of the feeder that can run out before it freezes.
    pub usable: Band<f64>,
    /// How many times its own modulus it counts for.
    pub longer: Band<f64>,
    /// Key of the source.
    pub source: String,
}

/// Every lining of the table, bare sand first.
pub fn linings() -> &'static [Lining] {
    &LININGS
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    name: String,
    usable: [f64; 2],
    longer: [f64; 2],
    source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    row: Vec<Row>,
}

static LININGS: LazyLock<Vec<Lining>> = LazyLock::new(|| {
    let table: Result<Table, _> = toml::from_str(include_str!("../../data/feeding/lining.toml"));
    let rows = table.map(|table| table.row).unwrap_or_default();
    rows.into_iter().map(Row::meant).collect()
});

impl Row {
    fn meant(self) -> Lining {
        // Of a range the smaller figure is the one to count on.
        let band = |[low, high]: [f64; 2]| Band::new(low, low, high);
        Lining {
            usable: band(self.usable),
            longer: band(self.longer),
            name: self.name,
            source: self.source,
        }
    }
}
