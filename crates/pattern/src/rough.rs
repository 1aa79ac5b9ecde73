//! A part known by five sizes and a word for its shape: what can be said of it, and how surely.
//!
//! Length, width and height give its box, the thickest section and the thinnest wall its moduli.
//! The metal in the box is guessed from the shape, unless the part was weighed; what follows from
//! a guess has a band as wide as the guess.

use std::sync::LazyLock;

use measure::band::Band;
use measure::length::{Area, Length, Volume};
use measure::source::Law;
use serde::Deserialize;

/// Metal of a part from its sizes and the share of them that its shape covers.
pub const VOLUME_OF_SIZES: Law = Law {
    name: "pattern::rough::volume_of_sizes",
    formula: "V = c F s",
    range: "a guess: F is the face or the skin spanned, s its thickness, c the share covered",
    sources: &["common-practice"],
};

/// The five sizes, as the part lies in the mould, and the shape.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FiveSizes {
    /// Length, width and height of the box around it.
    pub extents: [Length; 3],
    /// The largest ball that goes into it: its thickest section.
    pub thickest: Length,
    /// The thinnest wall.
    pub thinnest: Length,
    /// What it looks like.
    pub shape: &'static RoughShape,
}

/// A word for a shape and what it stands for.
#[derive(Clone, Debug, PartialEq)]
pub struct RoughShape {
    /// The word.
    pub name: String,
    /// What it means.
    pub about: String,
    /// What of the box is covered.
    pub of: Covered,
    /// Which share of it.
    pub covers: Band<f64>,
    /// Which share of length times width lies in shadow.
    pub shades: Band<f64>,
    /// Key of the source.
    pub source: String,
}

/// What of its box a shape covers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Covered {
    /// All of it.
    Box,
    /// The largest face, as thick as the walls.
    Face,
    /// Top and sides, as thick as the walls.
    Skin,
}

/// What five sizes say of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rough {
    /// Metal.
    pub volume: Band<Volume>,
    /// Surface.
    pub area: Band<Area>,
    /// Shadow on the joint.
    pub shadow: Band<Area>,
    /// Modulus of the thickest section.
    pub heaviest: Band<Length>,
    /// Modulus of the thinnest wall.
    pub thinnest: Band<Length>,
}

/// Metal from sizes: c, F and s, never more than the box round it has room for, where that is
/// known. Law: [`VOLUME_OF_SIZES`].
pub fn volume_of_sizes(
    covered: f64,
    spanned: Area,
    thickness: Length,
    room: Option<Volume>,
) -> Volume {
    let metal = spanned * thickness * covered;
    room.map_or(metal, |room| metal.min(room))
}

/// The shape of a word, or nothing.
pub fn shape_named(name: &str) -> Option<&'static RoughShape> {
    let wanted = name.trim().to_lowercase();
    SHAPES.iter().find(|shape| shape.name == wanted)
}

/// Every shape of the built-in table.
pub fn shapes() -> &'static [RoughShape] {
    &SHAPES
}

/// Share of the thickest section by which a mean wall is thicker than the thinnest: most of a
/// casting is wall and little of it boss (an estimate; nothing hangs on its digits).
const TOWARDS_THICKEST: f64 = 0.25;

/// A wall is at least three times as wide as it is thick, a bar of 1 : 3 having three quarters of
/// the modulus of a plate.
const NARROW_WALL: f64 = 0.75;

impl FiveSizes {
    /// What follows, with the metal as weighed or as guessed.
    pub fn rough(&self, weighed: Option<Band<Volume>>) -> Rough {
        let volume = weighed.unwrap_or_else(|| self.guessed_volume());
        let plate = self.plate_modulus(self.thinnest);
        let thinnest = Band::new(plate * NARROW_WALL, plate, self.most_modulus(self.thinnest));
        let heaviest = self.heaviest(&thinnest);
        let mean = self.wall().likely() * 0.5;
        Rough {
            volume,
            area: Band::new(
                volume.low() / heaviest.high(),
                volume.likely() / mean,
                volume.high() / thinnest.low(),
            ),
            shadow: self.shadow(&volume),
            heaviest,
            thinnest,
        }
    }

    /// The box around it.
    pub fn box_volume(&self) -> Volume {
        let [length, width, height] = self.extents;
        length * width * height
    }

    /// The law of the guess, with its face and thickness.
    fn guessed_volume(&self) -> Band<Volume> {
        let (spanned, thickness) = self.spanned();
        let room = Some(self.box_volume());
        let volume = |covers, thickness| volume_of_sizes(covers, spanned, thickness, room);
        self.shape.covers.with(&thickness, volume)
    }

    /// F and s: what the shape spans, and how thick.
    pub fn spanned(&self) -> (Area, Band<Length>) {
        let [length, width, height] = self.extents;
        match self.shape.of {
            Covered::Box => (length * width, Band::exact(height)),
            Covered::Face => {
                let faces = (length * width).max(length * height).max(width * height);
                (faces, self.wall())
            }
            Covered::Skin => {
                let sides = (length * height + width * height) * 2.0;
                (length * width + sides, self.wall())
            }
        }
    }

    /// How thick its walls are on the whole.
    fn wall(&self) -> Band<Length> {
        let likely = self.thinnest + (self.thickest - self.thinnest) * TOWARDS_THICKEST;
        Band::new(self.thinnest, likely, self.thickest)
    }

    /// From a ball to a plate as thick as the thickest section; a round bar is likely. No section
    /// freezes before the thinnest wall.
    fn heaviest(&self, thinnest: &Band<Length>) -> Band<Length> {
        let high = self.most_modulus(self.thickest).max(thinnest.high());
        let at_least = |share: f64, least: Length| (self.thickest * share).max(least).min(high);
        Band::new(
            at_least(1.0 / 6.0, thinnest.low()),
            at_least(1.0 / 4.0, thinnest.likely()),
            high,
        )
    }

    /// Modulus of a plate of this thickness that reaches over the two longer sides of the box.
    fn plate_modulus(&self, thickness: Length) -> Length {
        let mut sides = self.extents;
        sides.sort_by(|a, b| b.as_mm().total_cmp(&a.as_mm()));
        let [long, wide, _] = sides;
        let skin = (long * wide + long * thickness + wide * thickness) * 2.0;
        (long * wide * thickness) / skin
    }

    /// The most a section of this thickness can have: that of a plate, or half the thickness where
    /// there is room for a wall that closes on itself and has no edges.
    fn most_modulus(&self, thickness: Length) -> Length {
        let [length, width, height] = self.extents;
        match thickness * 3.0 <= length.min(width).min(height) {
            true => thickness * 0.5,
            false => self.plate_modulus(thickness),
        }
    }

    /// The shadow: by the shape, and never less than the metal needs under the height of the box.
    fn shadow(&self, volume: &Band<Volume>) -> Band<Area> {
        let [length, width, height] = self.extents;
        let whole = length * width;
        let shaded = |share: f64, volume: Volume| (whole * share).max(volume / height).min(whole);
        let shades = &self.shape.shades;
        Band::new(
            shaded(shades.low(), volume.low()),
            shaded(shades.likely(), volume.likely()),
            shaded(shades.high(), volume.high()),
        )
    }
}

/// The text of the built-in table.
const BUILT_IN: &str = include_str!("../data/rough_shapes.toml");

static SHAPES: LazyLock<Vec<RoughShape>> = LazyLock::new(|| {
    let typed: Result<TableText, _> = toml::from_str(BUILT_IN);
    let rows = typed.map_or_else(|_| Vec::new(), |table| table.shape);
    rows.into_iter().map(ShapeText::meant).collect()
});

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    shape: Vec<ShapeText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct ShapeText {
    name: String,
    about: String,
    of: Covered,
    covers: [f64; 3],
    shades: [f64; 3],
    source: String,
}

impl ShapeText {
    fn meant(self) -> RoughShape {
        let band = |[low, likely, high]: [f64; 3]| Band::new(low, likely, high);
        RoughShape {
            name: self.name,
            about: self.about,
            of: self.of,
            covers: band(self.covers),
            shades: band(self.shades),
            source: self.source,
        }
    }
}
