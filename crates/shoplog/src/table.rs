//! The tables of the log, in the order in which one stands on the other.

pub mod around;
pub mod castings;
pub mod melt;
pub mod mould;
pub mod sand;

use crate::column::{Column, Holds};

/// A table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Table {
    /// Its name: `pours`.
    pub name: &'static str,
    /// One entry of it: `pour`.
    pub one: &'static str,
    /// What an entry is, in a line.
    pub says: &'static str,
    /// Its own columns; every table has [`OF_ALL`] before them.
    pub columns: &'static [Column],
}

/// What every entry has beside the columns of its table: its id, its number and when it was
/// written.
pub const OF_ALL: [(&str, &str, &str); 3] = [
    (
        "id",
        "TEXT",
        "32 hexadecimal digits, chosen by whoever writes; never changes",
    ),
    (
        "number",
        "INTEGER",
        "counts the entries of the table in this log, for people",
    ),
    (
        "written",
        "TEXT",
        "when it was written down, in universal time",
    ),
];

/// Every table; those that others stand on come first.
pub const TABLES: [Table; 14] = [
    around::WEATHER,
    sand::HEAPS,
    sand::BATCHES,
    sand::SAND_TESTS,
    mould::MOULDS,
    mould::PLANNED,
    melt::HEATS,
    melt::POURS,
    castings::CASTINGS,
    castings::SIZES,
    castings::DEFECTS,
    around::PHOTOS,
    around::FILES,
    around::CHANGES,
];

/// The table of a name, of one or of many: `pour` or `pours`.
pub fn named(name: &str) -> Option<&'static Table> {
    let same = |table: &&Table| table.name == name || table.one == name;
    TABLES.iter().find(same)
}

impl Table {
    /// The column of a key or of a full name.
    pub fn column(&self, key: &str) -> Option<&'static Column> {
        let same = |column: &&Column| column.key == key || column.name() == key;
        self.columns.iter().find(same)
    }

    /// The tables that its entries point to, with the key that points.
    pub fn points_to(&self) -> impl Iterator<Item = (&'static Column, &'static str)> {
        self.columns.iter().filter_map(|column| match column.holds {
            Holds::Entry(table) => Some((column, table)),
            _ => None,
        })
    }
}

/// A column that may be left out.
pub(crate) const fn may(key: &'static str, holds: Holds, says: &'static str) -> Column {
    Column {
        key,
        holds,
        says,
        wanted: false,
    }
}

/// A column without which an entry is half-filled.
pub(crate) const fn wanted(key: &'static str, holds: Holds, says: &'static str) -> Column {
    Column {
        key,
        holds,
        says,
        wanted: true,
    }
}
