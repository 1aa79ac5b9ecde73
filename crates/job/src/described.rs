//! A job's file for a part that nobody has drawn: a plain solid, or five sizes.

use std::collections::BTreeMap;

use thiserror::Error;
use toml_edit::{Array, ArrayOfTables, DocumentMut, Item, Table, TomlError, value};

use crate::folder::STARTER_JOB;

/// A way to describe a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shape {
    /// Its word: `sizes`, or the kind of a solid.
    pub kind: &'static str,
    /// What has to be said of it, by the keys of the file; a box and an ellipsoid have their three
    /// sides as one there.
    pub keys: &'static [&'static str],
}

/// The ways there are.
pub const SHAPES: [Shape; 8] = [
    Shape {
        kind: SIZES,
        keys: &["length", "width", "height", "thickest", "thinnest", "shape"],
    },
    Shape {
        kind: "box",
        keys: &SIDES,
    },
    Shape {
        kind: "cylinder",
        keys: &["diameter", "length"],
    },
    Shape {
        kind: "tube",
        keys: &["diameter", "bore", "length"],
    },
    Shape {
        kind: "cone",
        keys: &["diameter", "top", "length"],
    },
    Shape {
        kind: "ball",
        keys: &["diameter"],
    },
    Shape {
        kind: "ellipsoid",
        keys: &SIDES,
    },
    Shape {
        kind: "ring",
        keys: &["diameter", "thickness"],
    },
];

const SIZES: &str = "sizes";
const SIDES: [&str; 3] = ["length", "width", "height"];

/// Words for the shape of five sizes.
pub const LIKE: [&str; 7] = ["block", "disc", "ball", "plate", "frame", "shell", "any"];

/// Why no file is made.
#[derive(Debug, Error)]
pub enum DescribedError {
    /// No such way.
    #[error("\"{0}\" is no way to describe a part here")]
    Kind(
        /// What was asked for.
        String,
    ),
    /// The starter.
    #[error("the starter of a job cannot be read: {0}")]
    Starter(#[from] TomlError),
    /// The starter, in another form than is known here.
    #[error("the starter of a job has no [part]")]
    NoPart,
}

/// The text of a job's file with a part that is described; whether its figures can be is told when
/// it is read.
///
/// # Errors
///
/// A way that is none.
pub fn described(kind: &str, given: &BTreeMap<String, String>) -> Result<String, DescribedError> {
    let shape = SHAPES.iter().find(|shape| shape.kind == kind);
    let shape = shape.ok_or_else(|| DescribedError::Kind(kind.to_owned()))?;
    let mut file: DocumentMut = STARTER_JOB.parse()?;
    let part = file.get_mut("part").and_then(Item::as_table_mut);
    let part = part.ok_or(DescribedError::NoPart)?;
    part.remove("mesh");
    part.remove("unit");
    let said = shape.keys.iter().filter_map(|key| {
        let text = given.get(*key).map(|text| text.trim())?;
        (!text.is_empty()).then_some((*key, text))
    });
    let mut table = Table::new();
    if shape.kind == SIZES {
        for (key, text) in said {
            table[key] = value(text);
        }
        part.insert(SIZES, Item::Table(table));
        return Ok(file.to_string());
    }
    table["kind"] = value(shape.kind);
    if shape.keys == SIDES {
        let sides: Array = said.map(|(_, text)| text).collect();
        table["size"] = value(sides);
    } else {
        for (key, text) in said {
            table[key] = value(text);
        }
    }
    let mut solids = ArrayOfTables::new();
    solids.push(table);
    file.insert("solid", Item::ArrayOfTables(solids));
    Ok(file.to_string())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

    use std::collections::BTreeMap;
    use std::path::Path;

    use super::{SHAPES, described};
    use crate::folder::noted_of;

    /// Every way gives a job that can be read once all is said.
    #[test]
    fn whatever_is_described_is_a_job() {
        let sizes = [
            ("length", "140 mm"),
            ("width", "90 mm"),
            ("height", "40 mm"),
            ("thickest", "24 mm"),
            ("thinnest", "6 mm"),
            ("shape", "plate"),
            ("diameter", "60 mm"),
            ("bore", "20 mm"),
            ("top", "30 mm"),
            ("thickness", "10 mm"),
        ];
        let given: BTreeMap<String, String> = sizes
            .iter()
            .map(|(key, text)| ((*key).to_owned(), (*text).to_owned()))
            .collect();
        for shape in SHAPES {
            let text = described(shape.kind, &given).unwrap();
            assert!(text.contains("# pour_height"), "the notes stay");
            let read = noted_of(Path::new("job.toml"), &text);
            assert!(read.is_ok(), "{}: {:?}\n{text}", shape.kind, read.err());
            let half = described(shape.kind, &BTreeMap::new()).unwrap();
            assert!(noted_of(Path::new("job.toml"), &half).is_err(), "{half}");
        }
        assert!(described("mesh", &given).is_err());
    }
}
