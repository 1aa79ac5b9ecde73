//! Metal left on for the file, the lathe or the mill, and the raw size it leads to.

use std::fmt;
use std::str::FromStr;
use std::sync::LazyLock;

use measure::band::Band;
use measure::length::Length;
use measure::source::{Law, Sourced};
use measure::text::Typed;
use serde::Deserialize;
use thiserror::Error;

use crate::cast_metal::CastMetal;

/// Stock wanted on each machined face, by the largest size of the casting and the grade.
///
/// One figure serves the whole casting. Slag and bubbles rise, so that a face cast uppermost
/// takes the next coarser grade.
pub const REQUIRED: Law = Law {
    name: "pattern::machining_stock::required",
    formula: "RMA = table (L_largest, grade)",
    range: "largest size up to 1000 mm, grades A to K",
    sources: &["iso-8062-1994", "gb-t-11350"],
};

/// Raw size of a machined feature: it keeps its stock even where the casting comes out smallest.
pub const RAW_SIZE: Law = Law {
    name: "pattern::machining_stock::raw_size",
    formula: "R = F + n RMA + CT / 2 outside; R = F − n RMA − CT / 2 inside",
    range: "n machined faces on the size, one or two",
    sources: &["iso-8062-1994"],
};

/// A grade of machining stock, A to K without I; the later the letter, the more.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct StockGrade(usize);

/// Where a machined face lies in the mould while it is poured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FaceUp {
    /// Uppermost, under the cope: what rises in the metal ends there.
    Cope,
    /// Below or at the side.
    DragOrSide,
}

/// Whether a size is measured over metal or across a hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Feature {
    /// Over metal: stock makes it larger.
    Outside,
    /// Across a hole or a slot: stock makes it smaller.
    Inside,
}

/// How many of the two faces of a size are machined.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Faces {
    /// One of them.
    One,
    /// Both of them.
    Both,
}

/// Why there is no stock.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum StockError {
    /// A letter that is no grade.
    #[error("\"{typed}\" is no grade of machining stock: take A to H, J or K")]
    NoSuchGrade {
        /// What was typed.
        typed: String,
    },
    /// Larger than the table goes.
    #[error(
        "{size_mm} mm is beyond the table, which ends at 1000 mm: leave on what your cut wants"
    )]
    TooLarge {
        /// The size in whole millimetres.
        size_mm: u64,
    },
    /// The coarsest grade has none coarser for the cope.
    #[error("no grade is coarser than K for a face under the cope: turn that face down")]
    NoCoarser,
}

impl StockGrade {
    /// The next coarser grade.
    pub fn coarser(self) -> Result<StockGrade, StockError> {
        match self.0 + 1 < TABLE.grades.len() {
            true => Ok(StockGrade(self.0 + 1)),
            false => Err(StockError::NoCoarser),
        }
    }
}

impl fmt::Display for StockGrade {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            to,
            "{}",
            TABLE.grades.get(self.0).map_or("", String::as_str)
        )
    }
}

impl FromStr for StockGrade {
    type Err = StockError;

    fn from_str(typed: &str) -> Result<StockGrade, StockError> {
        let letter = typed.trim();
        let found = TABLE.grades.iter().position(|own| own == letter);
        found
            .map(StockGrade)
            .ok_or_else(|| StockError::NoSuchGrade {
                typed: typed.to_owned(),
            })
    }
}

/// Stock on each machined face of a casting of this largest size. Law: [`REQUIRED`].
pub fn required(
    largest: Length,
    grade: StockGrade,
    face: FaceUp,
) -> Result<Sourced<Length>, StockError> {
    let grade = match face {
        FaceUp::Cope => grade.coarser()?,
        FaceUp::DragOrSide => grade,
    };
    let row = TABLE.row.iter().find(|row| largest.as_mm() <= row.to_mm);
    let stock = row.and_then(|row| row.stock_mm.get(grade.0));
    let stock_mm = stock.ok_or(StockError::TooLarge {
        size_mm: largest.as_mm() as u64,
    })?;
    Ok(Sourced {
        value: Length::from_mm(*stock_mm),
        source: TABLE.source.clone(),
    })
}

/// Stock on each machined face from a fine grade to a coarse one, likely that of the coarse: what
/// is left on is filed off, what is missing is not filed on. Law: [`REQUIRED`].
pub fn between_grades(
    largest: Length,
    [fine, coarse]: [StockGrade; 2],
    face: FaceUp,
) -> Result<Band<Length>, StockError> {
    let least = required(largest, fine, face)?.value;
    let most = required(largest, coarse, face)?.value;
    Ok(Band::new(least, most, most))
}

/// Grades usual for hand-moulded castings of a metal, the fine and the coarse one.
pub fn usual_grades(metal: CastMetal) -> Option<[StockGrade; 2]> {
    let row = TABLE.usual.iter().find(|row| row.metals.contains(&metal))?;
    let [fine, coarse] = &row.grades;
    Some([fine.parse().ok()?, coarse.parse().ok()?])
}

/// What the older rule of the trade leaves on each face, where it names the metal.
pub fn older_rule(metal: CastMetal) -> Option<Sourced<Band<Length>>> {
    let row = TABLE.older.iter().find(|row| row.metals.contains(&metal))?;
    let (least, most) = (row.least.value, row.most.value);
    Some(Sourced {
        value: Band::new(least, least, most),
        source: row.source.clone(),
    })
}

/// Raw size of a feature that is machined to `finished`, with `stock` on each machined face and
/// the casting's tolerance, the whole band. Law: [`RAW_SIZE`].
pub fn raw_size(
    finished: Length,
    stock: Length,
    tolerance: Length,
    faces: Faces,
    feature: Feature,
) -> Length {
    let count = match faces {
        Faces::One => 1.0,
        Faces::Both => 2.0,
    };
    let more = stock * count + tolerance * 0.5;
    match feature {
        Feature::Outside => finished + more,
        Feature::Inside => finished - more,
    }
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/machining_stock.toml");

static TABLE: LazyLock<Table> = LazyLock::new(|| toml::from_str(BUILT_IN).unwrap_or_default());

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    source: String,
    grades: Vec<String>,
    row: Vec<Row>,
    usual: Vec<Usual>,
    older: Vec<Older>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    to_mm: f64,
    stock_mm: Vec<f64>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Usual {
    metals: Vec<CastMetal>,
    grades: [String; 2],
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Older {
    metals: Vec<CastMetal>,
    least: Typed<Length>,
    most: Typed<Length>,
    source: String,
}
