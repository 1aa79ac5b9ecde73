//! The part as it lies in the mould: turned the right way up, cut by the joint, measured.

use measure::band::Band;
use measure::length::{Area, Length, Volume};
use mould::opening::UNEVEN;
use pattern::cells::Cells;
use pattern::draw::DrawSettings;
use pattern::draw::parting::level_near;
use pattern::mesh::Mesh;
use pattern::rough::Rough;
use pattern::sections::{Section, modulus, sections};
use pattern::silhouette::silhouette;
use pattern::slice::{areas_at, outlines, volume_above};

use crate::job::Up;
use crate::part::RoughPart;
use crate::turning::Turning;

/// A part in the mould. Its lowest point stands at height nought; x and y start at its own corner.
///
/// What was measured has a band without width; what was not carries how far it may be off.
#[derive(Clone, Debug)]
pub struct PlacedPart {
    /// How volume and sections are known, in a few words.
    pub known: String,
    /// Whether they were measured on a drawn or built solid.
    pub is_measured: bool,
    /// Size along the flask, across it, and upright.
    pub extents: [Length; 3],
    /// Metal.
    pub volume: Band<Volume>,
    /// Surface.
    pub area: Band<Area>,
    /// Height of the joint above the lowest point.
    pub joint: Length,
    /// Metal above the joint.
    pub above_joint: Band<Volume>,
    /// Room that the part takes out of the cope: the metal above the joint with whatever hollow
    /// lies under its upper skin.
    pub in_cope: Band<Volume>,
    /// Shadow on the joint.
    pub shadow: Band<Area>,
    /// Outlines of the shadow in mm, holes included, to be filled by the even-odd rule.
    pub outlines: Vec<Vec<[f64; 2]>>,
    /// The cut through the middle along x, x and height in mm.
    pub cut_along: Vec<Vec<[f64; 2]>>,
    /// The cut through the middle along y, y and height in mm.
    pub cut_across: Vec<Vec<[f64; 2]>>,
    /// Sections, the heaviest first, their places in the mould's coordinates.
    pub sections: Vec<Section>,
    /// The section that freezes last.
    pub heaviest: Spot,
    /// The thinnest section that holds a fair share of the metal: the first to freeze.
    pub thinnest: Spot,
    /// Share of the surface that belongs to walls too thin to be measured.
    pub unresolved: f64,
    /// How it was turned out of its drawing, where it was drawn.
    pub turning: Option<Turning>,
}

/// A section of a part as far as the plan needs it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// Modulus.
    pub modulus: Band<Length>,
    /// Where it lies, mm in the mould's coordinates, where that is known.
    pub place_mm: Option<[f64; 3]>,
    /// Diameter of the largest ball inside it, where that is known.
    pub inscribed: Option<Length>,
    /// Metal and cooled surface, where the modulus is the one over the other.
    pub over: Option<(Volume, Area)>,
}

impl PlacedPart {
    /// Places a closed mesh (mm).
    pub fn of(mesh: &Mesh, up: Up, joint: Option<Length>) -> PlacedPart {
        let turning = Turning::of(mesh, up);
        let turned = turning.turned(mesh);
        let [low, high] = turned.bounds();
        let extents = [0, 1, 2].map(|axis| high[axis] - low[axis]);
        let (volume_mm3, area_mm2) = (volume_above(&turned, Length::ZERO).as_mm3(), turned.area());
        let size = Cells::suiting_size_mm(volume_mm3, area_mm2, extents);
        let cells = Cells::fill(&turned, size);
        let height = Length::from_mm(extents[2]);
        let joint = joint.map_or_else(|| joint_level(&turned, height), |asked| asked.min(height));
        let (volume, area) = (Volume::from_mm3(volume_mm3), Area::from_mm2(area_mm2));
        let sections = sections(&cells);
        let whole = Spot::whole(volume, area);
        let shadow = silhouette(&turned);
        PlacedPart {
            known: "measured on the mesh".to_owned(),
            is_measured: true,
            extents: extents.map(Length::from_mm),
            volume: Band::exact(volume),
            area: Band::exact(area),
            joint,
            above_joint: Band::exact(volume_above(&turned, joint).max(Volume::ZERO)),
            in_cope: Band::exact(shadow.room_above(joint)),
            shadow: Band::exact(shadow.area),
            outlines: shadow.outlines,
            cut_along: cut_along(&turned, extents[1]),
            cut_across: outlines(&turned, 0, beside_middle(extents[0])),
            heaviest: sections.first().map_or(whole, Spot::heaviest_of),
            thinnest: thinnest(&sections, volume).map_or(whole, Spot::mean_of),
            sections,
            unresolved: cells.unresolved,
            turning: Some(turning),
        }
    }

    /// Whether its thick sections freeze so long after its thin ones that they may crack them.
    pub fn is_uneven(&self) -> bool {
        self.heaviest.modulus.likely() >= self.thinnest.modulus.likely() * UNEVEN
    }

    /// Places a part of which only sizes are known: its box, with the longer side along x. Without
    /// a word on the joint it is parted half way up.
    pub fn of_sizes(part: &RoughPart, joint: Option<Length>) -> PlacedPart {
        let [length, width, height] = part.sizes.extents;
        let rough = part.sizes.rough(part.weighed());
        let joint = joint.map_or(height * 0.5, |asked| asked.min(height));
        let extents = [length.max(width), length.min(width), height];
        let given = |modulus, size| Spot {
            modulus,
            place_mm: None,
            inscribed: Some(size),
            over: None,
        };
        let [x, y, z] = extents;
        PlacedPart {
            known: part.known(),
            is_measured: false,
            extents,
            volume: rough.volume,
            area: rough.area,
            joint,
            above_joint: above(&rough, joint, height),
            in_cope: in_cope(&rough, joint, height),
            shadow: rough.shadow,
            outlines: vec![box_outline(x, y)],
            cut_along: vec![box_outline(x, z)],
            cut_across: vec![box_outline(y, z)],
            sections: Vec::new(),
            turning: None,
            heaviest: given(rough.heaviest, part.sizes.thickest),
            thinnest: given(rough.thinnest, part.sizes.thinnest),
            unresolved: 0.0,
        }
    }
}

/// Metal above the joint of a part of sizes: no more on either side than its shadow times the
/// height there, and likely as much as of the box.
fn above(rough: &Rough, joint: Length, height: Length) -> Band<Volume> {
    let (widest, over) = (rough.shadow.high(), height - joint);
    let least = (rough.volume.low() - widest * joint).max(Volume::ZERO);
    let most = rough.volume.high().min(widest * over);
    Band::new(least, rough.volume.likely() * (over / height), most)
}

/// Room in the cope of a part of sizes: the metal there at least, the shadow up to the top at most,
/// and half way between for want of better.
fn in_cope(rough: &Rough, joint: Length, height: Length) -> Band<Volume> {
    let least = above(rough, joint, height);
    let most = rough.shadow.map(|shadow| shadow * (height - joint));
    let middle = (least.likely() + most.likely()) * 0.5;
    Band::new(least.low().min(middle), middle, most.high().max(middle))
}

fn box_outline(across: Length, up: Length) -> Vec<[f64; 2]> {
    let (a, b) = (across.as_mm(), up.as_mm());
    vec![[0.0, 0.0], [a, 0.0], [a, b], [0.0, b]]
}

impl Spot {
    /// The whole part, where no section stands out.
    fn whole(volume: Volume, area: Area) -> Spot {
        Spot {
            modulus: Band::exact(modulus(volume, area)),
            place_mm: None,
            inscribed: None,
            over: Some((volume, area)),
        }
    }

    /// A section at its heaviest place.
    fn heaviest_of(section: &Section) -> Spot {
        Spot {
            modulus: Band::exact(section.modulus),
            place_mm: Some(section.place_mm),
            inscribed: Some(section.inscribed),
            over: None,
        }
    }

    /// A section taken as a whole.
    fn mean_of(section: &Section) -> Spot {
        Spot {
            modulus: Band::exact(modulus(section.volume, section.cooled)),
            over: Some((section.volume, section.cooled)),
            ..Spot::heaviest_of(section)
        }
    }
}

/// The thinnest section such that it and those thinner still hold a fair share of the metal: five
/// spokes count together, though each is small.
fn thinnest(sections: &[Section], volume: Volume) -> Option<&Section> {
    let of = |section: &Section| modulus(section.volume, section.cooled).as_mm();
    let mut thin: Vec<&Section> = sections.iter().collect();
    thin.sort_by(|a, b| of(a).total_cmp(&of(b)));
    let worth = volume * LEAST_SHARE_TO_RUN;
    let mut held = Volume::ZERO;
    thin.into_iter().find(|section| {
        held += section.volume;
        held >= worth
    })
}

/// Thin sections with less of the metal than this do not set the pace of the pour. Raised, thin
/// ribs are forgotten; lowered, the rounding of an edge becomes a wall.
const LEAST_SHARE_TO_RUN: f64 = 0.03;

/// The level of the joint where the job has none: that of the largest cut if the parting line can
/// lie flat there, else that at which it is flattest.
pub(crate) fn joint_level(mesh: &Mesh, height: Length) -> Length {
    let widest = widest_level(mesh, height);
    let near = level_near(mesh, widest.as_mm(), &DrawSettings::suiting(mesh));
    near.map_or(widest, Length::from_mm)
}

/// Levels tried for the joint.
const LEVELS: usize = 60;

/// The level of the largest cut, where a flat joint leaves the least undercut; of levels alike to a
/// hundredth the highest, so that the weight of the pattern lies in the drag.
fn widest_level(mesh: &Mesh, height: Length) -> Length {
    let heights: Vec<Length> = (0..LEVELS)
        .map(|level| height * ((level as f64 + 0.5) / LEVELS as f64))
        .collect();
    let levels: Vec<(Length, Area)> = heights
        .iter()
        .copied()
        .zip(areas_at(mesh, &heights))
        .collect();
    let widest = levels
        .iter()
        .map(|(_, area)| *area)
        .fold(Area::ZERO, Area::max);
    let alike = levels.iter().rev().find(|(_, area)| *area >= widest * 0.99);
    match alike {
        // The top level of a block stands for its top face.
        Some((level, _)) if *level >= height * (1.0 - 1.0 / LEVELS as f64) => height,
        Some((level, _)) => *level,
        None => height,
    }
}

fn cut_along(mesh: &Mesh, width: f64) -> Vec<Vec<[f64; 2]>> {
    let swapped = |outline: Vec<[f64; 2]>| outline.into_iter().map(|[z, x]| [x, z]).collect();
    outlines(mesh, 1, beside_middle(width))
        .into_iter()
        .map(swapped)
        .collect()
}

/// The middle but for a hair, so that the cut does not run along the edges of a part drawn on round
/// numbers.
fn beside_middle(side: f64) -> f64 {
    side * (0.5 + 1.7e-6)
}
