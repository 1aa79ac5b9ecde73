//! A part of five sizes, guessed or weighed.

use measure::band::Band;
use measure::length::Length;
use measure::matter::{Density, Mass};
use measure::text::ranged::Ranged;
use measure::text::rounded;
use pattern::material;
use pattern::rough::{FiveSizes, shape_named};

use crate::given_part::PartError;
use crate::job_file::{DisplacedFile, SizesFile, WeighedFile};
use crate::part::{RoughPart, Weighing};

/// Sizes that a casting may have, mm.
const SIZES_MM: std::ops::RangeInclusive<f64> = 0.1..=10_000.0;

/// The shape where none is said.
const ANY: &str = "any";

pub(super) fn five_sizes(typed: &SizesFile) -> Result<FiveSizes, PartError> {
    let keys = [
        ("length", &typed.length),
        ("width", &typed.width),
        ("height", &typed.height),
        ("thickest", &typed.thickest),
        ("thinnest", &typed.thinnest),
    ];
    for (key, size) in keys {
        if !SIZES_MM.contains(&size.value.as_mm()) {
            return Err(PartError::Size { key });
        }
    }
    let [length, width, height, thickest, thinnest] = keys.map(|(_, size)| size.value);
    // A part is measured to a hair: a ball that just fills it may come out a hair larger.
    let hair = Length::from_mm(1e-6);
    if thickest > length.min(width).min(height) + hair {
        return Err(PartError::ThickestTooThick);
    }
    if thinnest > thickest {
        return Err(PartError::ThinnestTooThick);
    }
    let word = typed.shape.as_deref().unwrap_or(ANY);
    let shape = shape_named(word).ok_or_else(|| PartError::UnknownShape {
        typed: word.to_owned(),
    })?;
    Ok(FiveSizes {
        extents: [length, width, height],
        thickest,
        thinnest,
        shape,
    })
}

pub(super) fn weighed(typed: &WeighedFile) -> Result<Weighing, PartError> {
    let mass = more_than_nothing("part.weighed: mass", &typed.mass)?;
    let (of, density, sources) = match (&typed.of, &typed.density) {
        (Some(of), None) => known_density(of)?,
        (None, Some(density)) => {
            let words = format!("something of {}", density.typed);
            (words, density.band, Vec::new())
        }
        _ => {
            return Err(PartError::OneOf {
                way: "part.weighed",
                either: "of = \"pine\" or density = \"0.45 to 0.55 g/cm3\"",
            });
        }
    };
    if density.low() <= Density::ZERO {
        let key = "part.weighed: density";
        return Err(PartError::NoMass { key });
    }
    Ok(Weighing::Weighed {
        mass,
        of,
        density,
        sources,
    })
}

pub(super) fn displaced(typed: &DisplacedFile) -> Result<Weighing, PartError> {
    match (&typed.pushed_out, &typed.in_air, &typed.in_water) {
        (Some(pushed_out), None, None) => {
            let pushed_out = more_than_nothing("part.displaced: pushed_out", pushed_out)?;
            Ok(Weighing::Displaced {
                words: format!("{} of water pushed out", pushed_out.typed),
                in_air: pushed_out.band,
                in_water: Band::exact(Mass::ZERO),
            })
        }
        (None, Some(in_air), Some(in_water)) => {
            if in_water.band.high() >= in_air.band.low() {
                return Err(PartError::HeavierInWater);
            }
            Ok(Weighing::Displaced {
                words: format!("{} in air, {} in water", in_air.typed, in_water.typed),
                in_air: in_air.band,
                in_water: in_water.band,
            })
        }
        _ => Err(PartError::OneOf {
            way: "part.displaced",
            either: "pushed_out, or in_air together with in_water",
        }),
    }
}

/// Refuses more metal than the sizes have room for.
pub(super) fn goes_into_its_box(part: &RoughPart) -> Result<(), PartError> {
    let (Some(weighed), most) = (part.weighed(), part.sizes.box_volume()) else {
        return Ok(());
    };
    match weighed.low() > most {
        true => Err(PartError::MoreThanItsBox {
            weighed_cm3: rounded(weighed.low().as_cm3(), 3),
            box_cm3: rounded(most.as_cm3(), 3),
        }),
        false => Ok(()),
    }
}

/// The density of a pattern's material, or of an alloy where the original is cast.
fn known_density(of: &str) -> Result<(String, Band<Density>, Vec<String>), PartError> {
    if let Some(material) = material::named(of) {
        let sources = vec![material.source.clone()];
        return Ok((material.name.clone(), material.density, sources));
    }
    match metal::alloys::named(of) {
        Ok(alloy) => {
            let density = &alloy.density_solid;
            Ok((alloy.name.clone(), density.band, density.sources.clone()))
        }
        Err(_) => Err(PartError::UnknownMaterial {
            typed: of.to_owned(),
        }),
    }
}

fn more_than_nothing(key: &'static str, mass: &Ranged<Mass>) -> Result<Ranged<Mass>, PartError> {
    match mass.band.low() > Mass::ZERO {
        true => Ok(mass.clone()),
        false => Err(PartError::NoMass { key }),
    }
}
