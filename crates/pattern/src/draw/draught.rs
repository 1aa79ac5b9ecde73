//! The draught that the walls of a part have along a draw, against what the rules ask at their
//! depth.
//!
//! A wall is judged as a patch, not facet by facet. Facets that stand within ten degrees of upright
//! and run on into each other smoothly make up a patch. If most of it leans alike it is a wall: its
//! lean is its draught. If its lean spreads it is a round flank or a fillet that passes through
//! upright; what is steep of that is shallow, and leaves the sand by itself. The facets around a
//! patch that run on from it smoothly are counted in, so that a coarse flank, of which one row of
//! facets is steep, is not taken for a wall.

use std::collections::BTreeSet;

use measure::length::Length;
use thiserror::Error;

use super::columns::{Columns, Plot};
use super::remedy::is_free;
use super::{DrawError, DrawSettings, sound};
use crate::draft::{DraftError, Side, Skin, angle, wanted};
use crate::mesh::{Edges, Mesh};
use crate::vector::{Vector, add, dot, norm, scale};

/// The draught of a part along a draw.
#[derive(Clone, Debug, PartialEq)]
pub struct Draught {
    /// For each facet of a wall the number of its patch; none for all that is no wall.
    pub patch_of: Vec<Option<usize>>,
    /// The walls, that with the most surface times missing draught first.
    pub patches: Vec<Patch>,
}

/// A wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Patch {
    /// Its centre, mm, in the part's axes.
    pub centre_mm: Vector,
    /// Its surface, mm².
    pub area_mm2: f64,
    /// How far it is drawn: from the level of the joint to its far end, mm.
    pub depth_mm: f64,
    /// Whether sand stands around it or within it.
    pub side: Side,
    /// Draught that the rules ask, as an angle in degrees.
    pub wanted_degrees: f64,
    /// Draught that it has; negative where it leans the wrong way.
    pub present_degrees: f64,
}

impl Patch {
    /// Draught that is missing, degrees; nought if it has enough.
    pub fn missing_degrees(&self) -> f64 {
        (self.wanted_degrees - self.present_degrees).max(0.0)
    }
}

/// Why the draught cannot be judged.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum DraughtError {
    /// The part cannot be looked at.
    #[error(transparent)]
    Draw(#[from] DrawError),
    /// The rules end above such a depth.
    #[error(transparent)]
    Draft(#[from] DraftError),
}

/// Facets within this of upright may be walls: no rule asks for more on a face of some depth.
const STEEP_DEGREES: f64 = 10.0;

/// Facets that meet at less than this run on into each other: the flats of a coarse round wall do,
/// the sides of an octagon do not.
const SMOOTH_DEGREES: f64 = 25.0;

/// A patch is a wall if this share of its surface, with what runs on from it, leans alike. Of a
/// round flank three in ten do, of a coarse one a row in three or two rows in four.
const ALIKE_DEGREES: f64 = 1.5;
const ALIKE_SHARE: f64 = 0.6;

/// The draught of the walls of a closed mesh, outward wound and in mm, when the cope is lifted
/// along `up` from a joint at a height along it. Laws: [`crate::draft::WANTED`],
/// [`crate::draft::ANGLE`].
///
/// # Errors
///
/// A part that cannot be looked at; a draw deeper than the rules go.
pub fn draught(
    mesh: &Mesh,
    up: Vector,
    level_mm: f64,
    skin: Skin,
    settings: &DrawSettings,
) -> Result<Draught, DraughtError> {
    let frame = sound(mesh, up)?;
    let turned = frame.turned(mesh);
    let columns = Columns::staggered(&turned, Plot::of_part(&turned, settings.columns));
    let lean: Vec<f64> = (0..turned.triangles.len())
        .map(|facet| lean(&turned, facet, level_mm))
        .collect();
    let mut patches = Vec::new();
    for facets in walls(&turned, &lean, level_mm) {
        let Some(present) = middle_lean(&turned, &facets, &lean) else {
            continue;
        };
        let side = side(&turned, &columns, &facets);
        let ends = facets
            .iter()
            .flat_map(|&facet| turned.corners(facet))
            .map(|p| p[2]);
        let depth_mm = ends.map(|z| (z - level_mm).abs()).fold(0.0, f64::max);
        let depth = Length::from_mm(depth_mm);
        let (area_mm2, centre) = area_and_centre(&turned, &facets);
        let patch = Patch {
            centre_mm: frame.part_from_draw(centre),
            area_mm2,
            depth_mm,
            side,
            wanted_degrees: angle(wanted(depth, skin, side)?, depth),
            present_degrees: present,
        };
        patches.push((patch, facets));
    }
    let weight = |patch: &Patch| patch.missing_degrees() * patch.area_mm2;
    patches.sort_by(|a, b| weight(&b.0).total_cmp(&weight(&a.0)));
    let mut patch_of = vec![None; turned.triangles.len()];
    for (number, (_, facets)) in patches.iter().enumerate() {
        facets
            .iter()
            .for_each(|&facet| patch_of[facet] = Some(number));
    }
    Ok(Draught {
        patch_of,
        patches: patches.into_iter().map(|(patch, _)| patch).collect(),
    })
}

/// How far a facet leans the way it is to be drawn, degrees: nought for an upright one.
fn lean(turned: &Mesh, facet: usize, level_mm: f64) -> f64 {
    let normal = turned.normal(facet);
    let upward = normal[2].atan2(normal[0].hypot(normal[1])).to_degrees();
    if is_above(turned, facet, level_mm) {
        upward
    } else {
        -upward
    }
}

fn is_above(turned: &Mesh, facet: usize, level_mm: f64) -> bool {
    turned
        .corners(facet)
        .iter()
        .map(|corner| corner[2])
        .sum::<f64>()
        >= 3.0 * level_mm
}

/// The facets of each wall, above and below the joint apart.
fn walls(turned: &Mesh, lean: &[f64], level_mm: f64) -> Vec<Vec<usize>> {
    let smooth = smooth_neighbours(turned);
    let groups = steep_groups(lean, &smooth);
    let walls = groups
        .into_iter()
        .filter(|group| is_wall(turned, group, lean, &smooth));
    let halves = walls.flat_map(|group| {
        let (above, below): (Vec<usize>, Vec<usize>) = group
            .into_iter()
            .partition(|&facet| is_above(turned, facet, level_mm));
        [above, below]
    });
    halves.filter(|half| !half.is_empty()).collect()
}

/// For each facet those that it runs on into.
fn smooth_neighbours(turned: &Mesh) -> Vec<Vec<usize>> {
    let mut beside: Vec<Vec<usize>> = vec![Vec::new(); turned.triangles.len()];
    let smooth = SMOOTH_DEGREES.to_radians().cos();
    for group in Edges::of(turned).groups() {
        let [a, b] = group else { continue };
        let (a, b) = (a.facet(), b.facet());
        let (na, nb) = (turned.normal(a), turned.normal(b));
        if dot(na, nb) >= smooth * norm(na) * norm(nb) {
            beside[a].push(b);
            beside[b].push(a);
        }
    }
    beside
}

/// Steep facets that run on into each other.
fn steep_groups(lean: &[f64], smooth: &[Vec<usize>]) -> Vec<Vec<usize>> {
    let is_steep = |facet: usize| lean[facet].abs() < STEEP_DEGREES;
    let mut is_taken = vec![false; lean.len()];
    let mut groups = Vec::new();
    for first in (0..lean.len()).filter(|&facet| is_steep(facet)) {
        let (mut group, mut next) = (Vec::new(), vec![first]);
        while let Some(facet) = next.pop() {
            if !std::mem::replace(&mut is_taken[facet], true) {
                group.push(facet);
                next.extend(smooth[facet].iter().filter(|&&on| is_steep(on)));
            }
        }
        if !group.is_empty() {
            groups.push(group);
        }
    }
    groups
}

/// Whether most of a patch, with what runs on from it, leans alike.
fn is_wall(turned: &Mesh, facets: &[usize], lean: &[f64], smooth: &[Vec<usize>]) -> bool {
    let Some(middle) = middle_lean(turned, facets, lean) else {
        return false;
    };
    // The neighbours, and the other halves of the flats that they are halves of.
    let around = facets.iter().flat_map(|&facet| &smooth[facet]).copied();
    let near: BTreeSet<usize> = around.chain(facets.iter().copied()).collect();
    let is_alike = |a: usize, b: usize| (lean[a] - lean[b]).abs() <= ALIKE_DEGREES;
    let halves = near
        .iter()
        .flat_map(|&facet| smooth[facet].iter().filter(move |&&on| is_alike(facet, on)));
    let all: BTreeSet<usize> = halves.chain(&near).copied().collect();
    let (mut alike, mut sum) = (0.0, 0.0);
    for facet in all {
        let area = norm(turned.normal(facet));
        sum += area;
        if (lean[facet] - middle).abs() <= ALIKE_DEGREES {
            alike += area;
        }
    }
    alike > ALIKE_SHARE * sum
}

/// The lean of the middle facet of a patch by surface; none for one without surface.
fn middle_lean(turned: &Mesh, facets: &[usize], lean: &[f64]) -> Option<f64> {
    let weighed = facets
        .iter()
        .map(|&facet| (lean[facet], norm(turned.normal(facet))));
    let mut leans: Vec<(f64, f64)> = weighed.filter(|(_, area)| *area > 0.0).collect();
    leans.sort_by(|a, b| a.0.total_cmp(&b.0));
    let half = leans.iter().map(|(_, area)| area).sum::<f64>() / 2.0;
    let mut so_far = 0.0;
    let middle = leans.iter().find(|(_, area)| {
        so_far += area;
        so_far >= half
    });
    middle.map(|(lean, _)| *lean)
}

fn area_and_centre(turned: &Mesh, facets: &[usize]) -> (f64, Vector) {
    let (mut area, mut moment) = (0.0, [0.0; 3]);
    for &facet in facets {
        let [a, b, c] = turned.corners(facet);
        let of_facet = norm(turned.normal(facet)) / 2.0;
        area += of_facet;
        moment = add(moment, scale(add(add(a, b), c), of_facet / 3.0));
    }
    (area, scale(moment, 1.0 / area.max(f64::MIN_POSITIVE)))
}

/// Facets of a patch that are asked which way they look, the largest first.
const ASKED: usize = 9;

/// Inside, if straight out from most of the patch there is metal again at the same height.
fn side(turned: &Mesh, columns: &Columns, facets: &[usize]) -> Side {
    let mut largest: Vec<usize> = facets.to_vec();
    largest.sort_by(|&a, &b| norm(turned.normal(b)).total_cmp(&norm(turned.normal(a))));
    largest.truncate(ASKED);
    let faces_metal = largest.iter().filter(|&&facet| {
        let normal = turned.normal(facet);
        let flat = normal[0].hypot(normal[1]);
        let way = [normal[0] / flat, normal[1] / flat];
        let [a, b, c] = turned.corners(facet);
        let middle = scale(add(add(a, b), c), 1.0 / 3.0);
        // Clear of the columns that the wall itself runs through.
        let clear = 2.0 * columns.size_mm;
        let from = [
            middle[0] + clear * way[0],
            middle[1] + clear * way[1],
            middle[2],
        ];
        !is_free(columns, from, way)
    });
    match 2 * faces_metal.count() > largest.len() {
        true => Side::Inside,
        false => Side::Outside,
    }
}
