//! The one way in which a job file gives its part.

use std::ops::Range;

use pattern::shape::ShapeError;
use thiserror::Error;
use toml::Spanned;

use crate::job_file::{JobFile, PartFile};
use crate::part::{Part, RoughPart, Weighing};

mod rough;
mod solids;

/// A part as the job file gives it.
#[derive(Clone, Debug)]
pub enum GivenPart {
    /// A file of this name, yet to be read.
    Mesh(String),
    /// Everything stands in the job file.
    Here(Box<Part>),
}

/// What is wrong with a part, and the bytes of the job file where it is.
#[derive(Clone, Debug, PartialEq, Error)]
#[error("{error}")]
pub struct PartFault {
    /// Where in the job file.
    pub span: Range<usize>,
    /// What is wrong.
    pub error: PartError,
}

/// What is wrong with the part of a job.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum PartError {
    /// No way at all.
    #[error("the job does not say what is to be cast")]
    NoWay,
    /// More than one.
    #[error("the part is given twice, by {first} and by {second}")]
    TwoWays {
        /// The one that stands first in the list of ways.
        first: &'static str,
        /// The other.
        second: &'static str,
    },
    /// A key that goes with a mesh only.
    #[error("part.unit is the unit of a mesh, and none is given")]
    UnitWithoutMesh,
    /// A key that five sizes do not need.
    #[error("part.up goes with a mesh or solids; of sizes the height stands upright")]
    UpWithSizes,
    /// A weight without sizes.
    #[error("a weight says nothing about walls: {way} needs [part.sizes] beside it")]
    NoSizes {
        /// Which.
        way: &'static str,
    },
    /// A size that a kind of solid needs.
    #[error("a {kind} needs {key}")]
    Missing {
        /// The kind.
        kind: &'static str,
        /// The key.
        key: &'static str,
    },
    /// A size that a kind of solid does not have.
    #[error("{key} does not go with a {kind}, which has {wanted}")]
    TooMuch {
        /// The kind.
        kind: &'static str,
        /// The key.
        key: &'static str,
        /// The keys it has.
        wanted: String,
    },
    /// Solids that make no part.
    #[error(transparent)]
    Shape(ShapeError),
    /// A size outside what is possible.
    #[error("part.sizes: {key} has to be from 0.1 mm to 10 m")]
    Size {
        /// The key.
        key: &'static str,
    },
    /// A section larger than the part.
    #[error(
        "part.sizes: the thickest section is a ball inside the part, at most its smallest side"
    )]
    ThickestTooThick,
    /// The thinnest is the thickest.
    #[error("part.sizes: thinnest is thicker than thickest")]
    ThinnestTooThick,
    /// A word for a shape that is not in the table.
    #[error("part.sizes: \"{typed}\" is not one of the shapes known")]
    UnknownShape {
        /// What was typed.
        typed: String,
    },
    /// Neither or both of two keys.
    #[error("{way}: write {either}, one of the two")]
    OneOf {
        /// The table.
        way: &'static str,
        /// The keys.
        either: &'static str,
    },
    /// A material that is neither a pattern's nor an alloy.
    #[error("part.weighed: \"{typed}\" is not a material known here")]
    UnknownMaterial {
        /// What was typed.
        typed: String,
    },
    /// A weight of nothing.
    #[error("{key} has to be more than nothing")]
    NoMass {
        /// The key.
        key: &'static str,
    },
    /// Heavier in water than in air.
    #[error(
        "part.displaced: in_water has to be less than in_air, the water carrying a share of it"
    )]
    HeavierInWater,
    /// More metal than the box holds.
    #[error(
        "the weight comes to {weighed_cm3} cm³ at least, and the box of the sizes holds {box_cm3}"
    )]
    MoreThanItsBox {
        /// Least volume by weight.
        weighed_cm3: String,
        /// The box.
        box_cm3: String,
    },
}

impl PartError {
    /// What to do about it, where the words do not say.
    pub fn hint(&self) -> Option<String> {
        let hint = match self {
            PartError::NoWay => {
                "write part.mesh, [[solid]] tables, [part.weighed] or [part.displaced] with \
                 [part.sizes], or [part.sizes] alone"
            }
            PartError::TwoWays { .. } => "keep the one you trust and put # before the other",
            PartError::UnknownShape { .. } => {
                let about = |shape: &pattern::rough::RoughShape| {
                    format!("{} ({})", shape.name, shape.about)
                };
                let words: Vec<_> = pattern::rough::shapes().iter().map(about).collect();
                return Some(format!("write one of: {}", words.join("; ")));
            }
            PartError::UnknownMaterial { .. } => {
                let name = |material: &pattern::material::Material| material.name.clone();
                let words: Vec<_> = pattern::material::all().iter().map(name).collect();
                let known = words.join(", ");
                return Some(format!(
                    "write an alloy, or one of: {known}; or density = \"0.45 to 0.55 g/cm3\""
                ));
            }
            PartError::MoreThanItsBox { .. } => "check the weight, the material and the sizes",
            PartError::ThinnestTooThick => "change the two about",
            _ => return None,
        };
        Some(hint.to_owned())
    }
}

/// The part of a job file.
///
/// # Errors
///
/// No way, more than one, or a way that cannot be.
pub fn given_part(file: &JobFile) -> Result<GivenPart, PartFault> {
    let (part, whole) = (file.part.get_ref(), file.part.span());
    one_way(file)?;
    if let Some(mesh) = &part.mesh {
        return Ok(GivenPart::Mesh(mesh.get_ref().clone()));
    }
    if let Some(unit) = &part.unit {
        return Err(fault(unit.span(), PartError::UnitWithoutMesh));
    }
    if !file.solid.is_empty() {
        return solids::built(&file.solid)
            .map(|built| GivenPart::Here(Box::new(Part::Solids(built))));
    }
    if part.up.is_some() {
        return Err(fault(whole, PartError::UpWithSizes));
    }
    rough_part(part, whole).map(|rough| GivenPart::Here(Box::new(Part::Rough(rough))))
}

/// Refuses a file that gives its part in no way or in two.
fn one_way(file: &JobFile) -> Result<(), PartFault> {
    let part = file.part.get_ref();
    let sizes = part
        .sizes
        .as_ref()
        .map(|sizes| ("[part.sizes]", sizes.span()));
    let drawn = [
        part.mesh.as_ref().map(|mesh| ("part.mesh", mesh.span())),
        file.solid.first().map(|solid| ("[[solid]]", solid.span())),
    ];
    let weighed = [
        part.weighed
            .as_ref()
            .map(|way| ("[part.weighed]", way.span())),
        part.displaced
            .as_ref()
            .map(|way| ("[part.displaced]", way.span())),
    ];
    // Sizes go with a weight, or alone; beside a drawing they are a second word on the same thing.
    let is_drawn = drawn.iter().any(Option::is_some);
    let is_weighed = weighed.iter().any(Option::is_some);
    let sizes = sizes.filter(|_| is_drawn || !is_weighed);
    let ways: Vec<_> = drawn
        .into_iter()
        .chain(weighed)
        .chain([sizes])
        .flatten()
        .collect();
    match ways.as_slice() {
        [] => Err(fault(file.part.span(), PartError::NoWay)),
        [_] => Ok(()),
        [(first, _), (second, span), ..] => {
            Err(fault(span.clone(), PartError::TwoWays { first, second }))
        }
    }
}

/// A part of five sizes, with its weighing.
fn rough_part(part: &PartFile, whole: Range<usize>) -> Result<RoughPart, PartFault> {
    let (weighing, span, way) = match (&part.weighed, &part.displaced) {
        (Some(way), _) => (meant(way, rough::weighed)?, way.span(), "[part.weighed]"),
        (_, Some(way)) => (
            meant(way, rough::displaced)?,
            way.span(),
            "[part.displaced]",
        ),
        _ => (Weighing::Guessed, whole, "part"),
    };
    let Some(typed) = &part.sizes else {
        return Err(fault(span, PartError::NoSizes { way }));
    };
    let sizes = meant(typed, rough::five_sizes)?;
    let rough = RoughPart { sizes, weighing };
    rough::goes_into_its_box(&rough).map_err(|error| fault(span, error))?;
    Ok(rough)
}

/// What is meant by a table; what is wrong with it stands where the table does.
fn meant<T, M>(typed: &Spanned<T>, of: fn(&T) -> Result<M, PartError>) -> Result<M, PartFault> {
    of(typed.get_ref()).map_err(|error| fault(typed.span(), error))
}

fn fault(span: Range<usize>, error: PartError) -> PartFault {
    PartFault { span, error }
}
