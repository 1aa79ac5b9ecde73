//! The length unit of a mesh file: declared, asked for, judged from the size, or unknown.

use serde::{Deserialize, Serialize};

use crate::vector::{Vector, norm, scale};

/// A length unit a mesh file may be drawn in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Unit {
    /// 1 mm.
    Millimetre,
    /// 10 mm.
    Centimetre,
    /// 1000 mm.
    Metre,
    /// 25.4 mm exactly.
    Inch,
    /// 0.001 mm.
    Micrometre,
    /// 304.8 mm exactly; only a 3MF file declares it.
    Foot,
}

/// How the unit of a mesh came to be known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum UnitBasis {
    /// The file says so.
    Declared,
    /// The founder said so; this wins over everything else.
    Asked,
    /// The file is silent and its size is that of a casting in millimetres.
    Judged,
    /// The file is silent and its size fits no casting in millimetres: the founder must say.
    Unknown,
}

/// One unit the founder may choose and the size the part would then have.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    /// The unit.
    pub unit: Unit,
    /// Extents of the part in millimetres if the file is drawn in that unit.
    pub extents_mm: Vector,
}

/// Smallest largest extent, in file units, that is taken for millimetres unasked.
///
/// Common practice, no source: below it the same number more often means inches or centimetres
/// (parts drawn in inches seldom pass 18 in), and a casting this small is rarely sand cast.
pub const LEAST_JUDGED_MM: f64 = 18.0;

/// Largest extent, in file units, that is taken for millimetres unasked.
///
/// Common practice, no source: above it the part would not fit any flask of a small foundry and
/// the file is more likely drawn in micrometres or placed in a building.
pub const MOST_JUDGED_MM: f64 = 3000.0;

impl Unit {
    /// Every unit in the order in which it is offered.
    pub const ALL: [Unit; 6] = [
        Unit::Millimetre,
        Unit::Inch,
        Unit::Centimetre,
        Unit::Metre,
        Unit::Foot,
        Unit::Micrometre,
    ];

    /// Millimetres in one unit.
    pub fn mm(self) -> f64 {
        match self {
            Unit::Millimetre => 1.0,
            Unit::Centimetre => 10.0,
            Unit::Metre => 1000.0,
            Unit::Inch => 25.4,
            Unit::Micrometre => 0.001,
            Unit::Foot => 304.8,
        }
    }

    /// Short sign as typed and printed: `mm`, `cm`, `m`, `in`, `um`, `ft`.
    pub fn sign(self) -> &'static str {
        match self {
            Unit::Millimetre => "mm",
            Unit::Centimetre => "cm",
            Unit::Metre => "m",
            Unit::Inch => "in",
            Unit::Micrometre => "um",
            Unit::Foot => "ft",
        }
    }

    /// The unit behind a short sign, upper or lower case, or nothing.
    pub fn parse(text: &str) -> Option<Unit> {
        let sign = text.trim().to_ascii_lowercase();
        if sign == "µm" {
            return Some(Unit::Micrometre);
        }
        Unit::ALL.into_iter().find(|unit| unit.sign() == sign)
    }
}

impl std::fmt::Display for Unit {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.sign())
    }
}

/// Settles the unit of a file: asked before declared, declared before judged by size.
///
/// `extents` are in file units.
pub fn settle(
    asked: Option<Unit>,
    declared: Option<Unit>,
    extents: Vector,
) -> (Option<Unit>, UnitBasis) {
    if asked.is_some() {
        return (asked, UnitBasis::Asked);
    }
    if declared.is_some() {
        return (declared, UnitBasis::Declared);
    }
    if is_casting_size_mm(extents) {
        return (Some(Unit::Millimetre), UnitBasis::Judged);
    }
    (None, UnitBasis::Unknown)
}

/// Whether the largest of `extents`, read as millimetres, is that of a casting.
pub fn is_casting_size_mm(extents: Vector) -> bool {
    let largest = extents.into_iter().fold(0.0, f64::max);
    (LEAST_JUDGED_MM..=MOST_JUDGED_MM).contains(&largest)
}

/// The units worth offering for a part of these file-unit extents, millimetres first.
///
/// A unit that would make the part smaller than 1 mm or longer than 20 m is left out.
pub fn choices(extents: Vector) -> Vec<Choice> {
    Unit::ALL
        .into_iter()
        .map(|unit| Choice {
            unit,
            extents_mm: scale(extents, unit.mm()),
        })
        .filter(|choice| (1.0..=20_000.0).contains(&norm(choice.extents_mm)))
        .collect()
}
