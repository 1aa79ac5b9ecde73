//! The taper on the sides of a pattern, so that it leaves the sand without tearing it.
//!
//! Rules differ. A jobbing foundry's table grows with the root of the depth, textbooks give angles
//! that fall with it, a standard gives lengths by height. The greater of the first two is asked
//! for; all are shown. A taper is a share here: draught over depth, 1 in 50 is 0.02.

use std::str::FromStr;
use std::sync::LazyLock;

use measure::length::Length;
use measure::source::{Law, Sourced};
use measure::text::Typed;
use serde::Deserialize;
use thiserror::Error;

use crate::mesh::Mesh;
use crate::tolerance::Moulding;
use crate::vector::{cross, norm, sub};

/// Draught against the depth drawn, as a jobbing foundry asks for it.
///
/// Between the rows the draught runs with the root of the depth, as the rows themselves do; above
/// the first row it stays, below the last it goes on growing with the root.
pub const JOBBING: Law = Law {
    name: "pattern::draft::jobbing",
    formula: "d = table (√h)",
    range: "depths of 1 to 10 in; on a shallower face the draught of 1 in",
    sources: &["jobbing-draft-page"],
};

/// Taper by depth, by what the pattern is made of, outside and inside.
pub const BY_SKIN: Law = Law {
    name: "pattern::draft::by_skin",
    formula: "α = table (h, skin, side)",
    range: "depths up to 800 mm",
    sources: &["draft-angles-memory"],
};

/// Draught as a length by the height of the face.
pub const BY_HEIGHT: Law = Law {
    name: "pattern::draft::by_height",
    formula: "d = table (h, bond)",
    range: "from memory and doubtful in detail: to be shown beside the other rules, not alone",
    sources: &["en-12890"],
};

/// Draught asked of a face: the greater of the jobbing foundry's and the table's for its skin.
pub const WANTED: Law = Law {
    name: "pattern::draft::wanted",
    formula: "d = max (d_jobbing, h tan α)",
    range: "depths up to 800 mm",
    sources: &["jobbing-draft-page", "draft-angles-memory"],
};

/// Angle of a face that draws in by so much over its depth.
pub const ANGLE: Law = Law {
    name: "pattern::draft::angle",
    formula: "α = arctan (d / h)",
    range: "plane faces",
    sources: &["common-practice"],
};

/// What the skin of a pattern is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Skin {
    /// Wood.
    Wood,
    /// Metal, or smooth plastic.
    MetalOrPlastic,
    /// Printed, with layer lines to be seen: no figure of its own was found, takes that of wood.
    Printed,
}

/// Which way a face looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// An outside face: the sand stands around it.
    Outside,
    /// An inside face: it grips the sand that hangs or stands within.
    Inside,
}

/// How the draught of a face stands to what the rules ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Judged {
    /// As much as the stricter rule asks.
    Enough,
    /// Between the rules: draws with care.
    Tight,
    /// Less than every rule asks.
    TooLittle,
}

/// Why there is no figure.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum DraftError {
    /// Deeper than the tables go.
    #[error("a draw of {depth_mm} mm is beyond the tables, which end at 800 mm: part it otherwise")]
    TooDeep {
        /// The depth in whole millimetres.
        depth_mm: u64,
    },
    /// No such skin.
    #[error("\"{typed}\" is no skin of a pattern; there is: wood, metal-or-plastic, printed")]
    UnknownSkin {
        /// What was typed.
        typed: String,
    },
}

impl FromStr for Skin {
    type Err = DraftError;

    fn from_str(typed: &str) -> Result<Skin, DraftError> {
        match typed.trim() {
            "wood" => Ok(Skin::Wood),
            "metal-or-plastic" => Ok(Skin::MetalOrPlastic),
            "printed" => Ok(Skin::Printed),
            other => Err(DraftError::UnknownSkin {
                typed: other.to_owned(),
            }),
        }
    }
}

/// Draught that a jobbing foundry asks for over a depth. Law: [`JOBBING`].
pub fn jobbing(depth: Length) -> Sourced<Length> {
    let table = &TABLE.jobbing;
    let root = depth.as_inch().max(0.0).sqrt();
    let points = table.row.iter().map(Drawn::root_and_draft);
    Sourced {
        value: Length::from_inch(along(points, root)),
        source: table.source.clone(),
    }
}

/// Taper by depth and skin, a share of the depth. Law: [`BY_SKIN`].
pub fn by_skin(depth: Length, skin: Skin, side: Side) -> Result<Sourced<f64>, DraftError> {
    let column = match skin {
        Skin::Wood | Skin::Printed => Skin::Wood,
        Skin::MetalOrPlastic => Skin::MetalOrPlastic,
    };
    let table = TABLE.skin.iter().find(|table| table.name == column);
    let row = table.and_then(|table| {
        let row = table.row.iter().find(|row| depth.as_mm() <= row.to_mm)?;
        Some((table, row))
    });
    let (table, row) = row.ok_or(DraftError::TooDeep {
        depth_mm: depth.as_mm() as u64,
    })?;
    let degrees = match side {
        Side::Outside => row.outside,
        Side::Inside => row.inside,
    };
    Ok(Sourced {
        value: degrees.to_radians().tan(),
        source: table.source.clone(),
    })
}

/// Draught by the height of the face. Law: [`BY_HEIGHT`].
pub fn by_height(height: Length, moulding: Moulding) -> Sourced<Length> {
    let table = &TABLE.by_height;
    let height_mm = height.as_mm();
    let within = table.row.iter().find(|row| height_mm <= row.to_mm);
    let draft_mm = match (within, table.row.last()) {
        (Some(row), _) => row.of(moulding),
        (None, Some(last)) => {
            let further = ((height_mm - last.to_mm) / table.each_mm).ceil();
            last.of(moulding) + table.more_mm * further
        }
        (None, None) => 0.0,
    };
    Sourced {
        value: Length::from_mm(draft_mm),
        source: table.source.clone(),
    }
}

/// Draught asked of a face. Law: [`WANTED`].
pub fn wanted(depth: Length, skin: Skin, side: Side) -> Result<Length, DraftError> {
    let of_skin = depth * by_skin(depth, skin, side)?.value;
    Ok(of_skin.max(jobbing(depth).value))
}

/// Angle in degrees of a face that draws in by so much over its depth. Law: [`ANGLE`].
pub fn angle(draft: Length, depth: Length) -> f64 {
    (draft / depth).atan().to_degrees()
}

/// Judges the draught that a face has.
pub fn judge(has: Length, depth: Length, skin: Skin, side: Side) -> Result<Judged, DraftError> {
    let of_skin = depth * by_skin(depth, skin, side)?.value;
    let of_jobbing = jobbing(depth).value;
    Ok(match has {
        has if has >= of_skin.max(of_jobbing) => Judged::Enough,
        has if has >= of_skin.min(of_jobbing) => Judged::Tight,
        _ => Judged::TooLittle,
    })
}

/// The text of the built-in tables.
pub const BUILT_IN: &str = include_str!("../data/draft.toml");

static TABLE: LazyLock<Tables> = LazyLock::new(|| toml::from_str(BUILT_IN).unwrap_or_default());

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Tables {
    jobbing: Jobbing,
    skin: Vec<SkinTable>,
    by_height: ByHeight,
}

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Jobbing {
    source: String,
    row: Vec<Drawn>,
}

/// Share of a skin that stands upright along an axis of the mesh: what has no draught when the
/// pattern is drawn that way. By the faces alone: whether one that leans hangs over is not told.
/// Nought for a mesh without skin.
pub fn upright_share(mesh: &Mesh, axis: usize) -> f64 {
    let least = UPRIGHT_DEGREES.to_radians().sin();
    let (mut upright, mut all) = (0.0, 0.0);
    for corners in &mesh.triangles {
        let [a, b, c] = corners.map(|corner| mesh.points[corner as usize]);
        let across = cross(sub(b, a), sub(c, a));
        let area = norm(across);
        all += area;
        if area > 0.0 && across[axis].abs() <= least * area {
            upright += area;
        }
    }
    if all > 0.0 { upright / all } else { 0.0 }
}

/// A face within this of upright has no draught worth the name: less than any table asks for.
const UPRIGHT_DEGREES: f64 = 0.2;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Drawn {
    depth: Typed<Length>,
    draft: Typed<Length>,
}

impl Drawn {
    /// Root of the depth and draught, both of inches.
    fn root_and_draft(&self) -> [f64; 2] {
        [
            self.depth.value.as_inch().sqrt(),
            self.draft.value.as_inch(),
        ]
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SkinTable {
    name: Skin,
    source: String,
    row: Vec<Angles>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Angles {
    to_mm: f64,
    outside: f64,
    inside: f64,
}

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct ByHeight {
    source: String,
    more_mm: f64,
    each_mm: f64,
    row: Vec<HeightRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct HeightRow {
    to_mm: f64,
    clay_bonded_mm: f64,
    chemically_bonded_mm: f64,
}

impl HeightRow {
    fn of(&self, moulding: Moulding) -> f64 {
        match moulding {
            Moulding::ClayBonded => self.clay_bonded_mm,
            Moulding::ChemicallyBonded => self.chemically_bonded_mm,
        }
    }
}

/// The value at a place along straight lines between points: that of the first point before it,
/// growing in proportion after the last.
fn along(points: impl Iterator<Item = [f64; 2]>, at: f64) -> f64 {
    let mut before: Option<[f64; 2]> = None;
    for [x, y] in points {
        if at <= x {
            return before.map_or(y, |[x0, y0]| y0 + (y - y0) * (at - x0) / (x - x0));
        }
        before = Some([x, y]);
    }
    before.map_or(0.0, |[x, y]| y * at / x)
}
