//! How far a casting may come out from the size wanted: linear tolerances by grade.
//!
//! A grade says how much a way of moulding scatters; the table turns it into millimetres for a
//! size. The band is shared half above and half below the size wanted.

use std::collections::BTreeMap;
use std::fmt;
use std::str::FromStr;
use std::sync::LazyLock;

use measure::band::Band;
use measure::length::Length;
use measure::source::{Law, Sourced};
use serde::Deserialize;
use thiserror::Error;

use crate::cast_metal::CastMetal;

/// Tolerance of a length of a casting at a grade: the whole band, half of it either way.
pub const LINEAR: Law = Law {
    name: "pattern::tolerance::linear",
    formula: "CT = table (L, grade)",
    range: "sizes up to 2500 mm, grades 1 to 16 where the table has them",
    sources: &["iso-8062-3-pages", "iso-8062-3-memory"],
};

/// Grades that hand moulding holds on a size, fine and coarse end.
///
/// Small sizes come out better: three grades finer up to 10 mm, two up to 16 mm, one up to 25 mm.
pub const GRADES: Law = Law {
    name: "pattern::tolerance::grades",
    formula: "grades = table (moulding, metal, L)",
    range: "hand moulding, single castings and short runs",
    sources: &["iso-cd-8062-2"],
};

/// Grade of the thickness of a wall where the casting as a whole has another.
pub const WALL_GRADE: Law = Law {
    name: "pattern::tolerance::wall_grade",
    formula: "G_wall = G + 1",
    range: "grades 1 to 15",
    sources: &["iso-8062-3-memory"],
};

/// A way of moulding by hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Moulding {
    /// Sand bonded with clay, rammed by hand.
    ClayBonded,
    /// Sand bonded with silicate or another binder that sets.
    ChemicallyBonded,
}

impl Moulding {
    /// The word by which it is typed.
    pub const fn word(self) -> &'static str {
        match self {
            Moulding::ClayBonded => "clay-bonded",
            Moulding::ChemicallyBonded => "chemically-bonded",
        }
    }
}

impl FromStr for Moulding {
    type Err = ToleranceError;

    fn from_str(typed: &str) -> Result<Moulding, ToleranceError> {
        let all = [Moulding::ClayBonded, Moulding::ChemicallyBonded];
        let found = all.into_iter().find(|one| one.word() == typed.trim());
        found.ok_or_else(|| ToleranceError::UnknownMoulding {
            typed: typed.to_owned(),
        })
    }
}

/// A grade of casting tolerance, 1 to 16; the higher, the coarser.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Grade(u8);

impl Grade {
    /// The finest grade there is.
    pub const FINEST: u8 = 1;
    /// The coarsest grade there is.
    pub const COARSEST: u8 = 16;

    /// The grade of a number.
    pub fn new(number: u8) -> Result<Grade, ToleranceError> {
        match (Grade::FINEST..=Grade::COARSEST).contains(&number) {
            true => Ok(Grade(number)),
            false => Err(ToleranceError::NoSuchGrade { number }),
        }
    }

    /// Its number.
    pub const fn number(self) -> u8 {
        self.0
    }
}

impl fmt::Display for Grade {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(to, "DCTG {}", self.0)
    }
}

/// Grades that a way of moulding holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Grades {
    /// The best that can be counted on.
    pub fine: Grade,
    /// The worst to be reckoned with.
    pub coarse: Grade,
    /// Key of the bibliography.
    pub source: String,
}

/// How near to size a way of moulding comes.
#[derive(Clone, Debug, PartialEq)]
pub struct EitherWay {
    /// The grades it holds.
    pub grades: Grades,
    /// How far a length may come out either way: at the fine grade, at the one in the middle, and
    /// at the coarse one.
    pub band: Band<Length>,
    /// Key of the source of the millimetres.
    pub source: String,
}

/// Why there is no tolerance.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum ToleranceError {
    /// A number that is no grade.
    #[error("{number} is no grade of casting tolerance: take 1 to 16, hand moulding 10 to 15")]
    NoSuchGrade {
        /// The number given.
        number: u8,
    },
    /// The table has no figure for this grade at this size.
    #[error(
        "the table has no grade {number} at {size_mm} mm: take another grade, or agree on a \
         tolerance of your own"
    )]
    NotAtThisSize {
        /// The grade.
        number: u8,
        /// The size in whole millimetres.
        size_mm: u64,
    },
    /// Larger than the table goes.
    #[error("{size_mm} mm is beyond the table, which ends at 2500 mm: agree on a tolerance")]
    TooLarge {
        /// The size in whole millimetres.
        size_mm: u64,
    },
    /// No way of moulding in the table.
    #[error("\"{typed}\" is no way of moulding here; there is: clay-bonded, chemically-bonded")]
    UnknownMoulding {
        /// What was typed.
        typed: String,
    },
    /// The built-in table does not hold this metal.
    #[error("no grades for {metal} in the table: agree on a tolerance")]
    NoGrades {
        /// The metal.
        metal: CastMetal,
    },
}

/// Tolerance of a length at a grade, the whole band. Law: [`LINEAR`].
pub fn linear(size: Length, grade: Grade) -> Result<Sourced<Length>, ToleranceError> {
    let size_mm = size.as_mm();
    let of_size = |row: &&Row| size_mm <= row.to_mm;
    let row = TABLE.row.iter().find(of_size);
    let to_mm = row.map(|row| row.to_mm).ok_or(ToleranceError::TooLarge {
        size_mm: size_mm as u64,
    })?;
    let mut of_size = TABLE.row.iter().filter(|row| row.to_mm == to_mm);
    let found = of_size.find_map(|row| Some((row, row.band_at(grade)?)));
    let (row, band_mm) = found.ok_or(ToleranceError::NotAtThisSize {
        number: grade.number(),
        size_mm: size_mm as u64,
    })?;
    Ok(Sourced {
        value: Length::from_mm(band_mm),
        source: row.source.clone(),
    })
}

/// Grades that hand moulding holds in a metal on a size. Law: [`GRADES`].
pub fn grades(
    moulding: Moulding,
    metal: CastMetal,
    size: Length,
) -> Result<Grades, ToleranceError> {
    let row = TABLE.moulding.iter().find(|row| row.name == moulding);
    let ends = row.and_then(|row| Some((row, row.grades.get(&metal)?)));
    let (row, [fine, coarse]) = ends.ok_or(ToleranceError::NoGrades { metal })?;
    let finer = finer_by(size);
    Ok(Grades {
        fine: Grade::new(fine.saturating_sub(finer))?,
        coarse: Grade::new(coarse.saturating_sub(finer))?,
        source: row.source.clone(),
    })
}

/// How far a length comes out either way by hand moulding, over the grades that it holds. Laws:
/// [`GRADES`], [`LINEAR`].
pub fn either_way(
    moulding: Moulding,
    metal: CastMetal,
    size: Length,
) -> Result<EitherWay, ToleranceError> {
    let grades = grades(moulding, metal, size)?;
    let (fine, coarse) = (grades.fine.number(), grades.coarse.number());
    let half = |number: u8| linear(size, Grade::new(number)?);
    let (best, middle, worst) = (half(fine)?, half(fine.midpoint(coarse))?, half(coarse)?);
    let band = Band::new(best.value, middle.value, worst.value);
    Ok(EitherWay {
        grades,
        band: band.map(|whole| whole * 0.5),
        source: middle.source,
    })
}

/// Grade of a wall's thickness, one coarser than that of the casting. Law: [`WALL_GRADE`].
pub fn wall_grade(casting: Grade) -> Result<Grade, ToleranceError> {
    Grade::new(casting.number() + 1)
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/tolerance.toml");

static TABLE: LazyLock<Table> = LazyLock::new(|| toml::from_str(BUILT_IN).unwrap_or_default());

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    row: Vec<Row>,
    moulding: Vec<MouldingRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    to_mm: f64,
    first: u8,
    source: String,
    band_mm: Vec<f64>,
}

impl Row {
    fn band_at(&self, grade: Grade) -> Option<f64> {
        let place = grade.number().checked_sub(self.first)?;
        self.band_mm.get(usize::from(place)).copied()
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct MouldingRow {
    name: Moulding,
    source: String,
    grades: BTreeMap<CastMetal, [u8; 2]>,
}

/// Grades by which a small size comes out better: `iso-cd-8062-2`.
fn finer_by(size: Length) -> u8 {
    match size.as_mm() {
        ..=10.0 => 3,
        ..=16.0 => 2,
        ..=25.0 => 1,
        _ => 0,
    }
}
