//! The ledge of a pattern under which, drawn, sand would be lifted: the metal straight behind the
//! skin that the held sand lies on, cut off along the walls of that sand.

use std::collections::BTreeSet;

use super::joint::Joint;
use crate::boolean::{Body, BooleanError};
use crate::draw::undercut::Trapped;
use crate::mesh::{Edges, Mesh};
use crate::rays::along;
use crate::sweep::{between, solid};
use crate::tree::Tree;
use crate::vector::{Vector, add, cross, dot, norm, scale, sub};

/// The side of the mould in which the sand is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Below the joint: the pattern is drawn up.
    Drag,
    /// Above it: the pattern is drawn down, the cope turned over.
    Cope,
}

impl Side {
    /// Rise along the way in which the pattern is drawn, of length one.
    pub fn up(self) -> f64 {
        match self {
            Side::Drag => 1.0,
            Side::Cope => -1.0,
        }
    }
}

/// Sand lower than this over its ledge is none, mm: a grain (common practice, no source).
const GRAIN_MM: f64 = 0.05;

/// How far beyond the sand a ledge that goes on is cut, mm. With less the grain of the columns by
/// which the sand was measured leaves splinters on the body; with more the piece grows.
const BEYOND_MM: f64 = 1.0;

/// Everything of the mould straight behind the ledge that some sand lies on, on one side of the
/// joint; `outward` is the level way, of length one, in which the sand is open. None where no sand
/// of the hollow lies on that side. Only what of it is metal of the pattern is the ledge.
pub(super) fn behind_ledge(
    pattern: &Mesh,
    tree: &Tree,
    joint: &Joint,
    hollow: &Trapped,
    outward: Vector,
    side: Side,
) -> Result<Option<Body>, BooleanError> {
    let sand = sand_on(joint, hollow, side);
    let facets = facets_under(pattern, tree, &sand, side);
    if facets.is_empty() {
        return Ok(None);
    }
    let facets = grown(pattern, tree, facets, &sand, side);
    let mut patch = Mesh {
        points: pattern.points.clone(),
        triangles: facets
            .iter()
            .map(|&f| pattern.triangles[f as usize])
            .collect(),
    };
    patch.drop_unused_points();
    let [low, high] = pattern.bounds();
    let end = match side {
        Side::Drag => low[2] - BEYOND_MM,
        Side::Cope => high[2] + BEYOND_MM,
    };
    let behind: Vec<Vector> = patch.points.iter().map(|&[x, y, _]| [x, y, end]).collect();
    let swept = solid(between(&patch, &behind, &patch.points))?;
    let near = swept.common_with(&around(
        &sand,
        outward,
        [low[2] - BEYOND_MM, high[2] + BEYOND_MM],
    )?)?;
    let [below, above] = joint.parted(&near)?;
    Ok(Some(match side {
        Side::Drag => below,
        Side::Cope => above,
    }))
}

/// Columns of sand on one side of the joint, from the ledge that they lie on, which is lifted with
/// the pattern, to their other end.
fn sand_on(joint: &Joint, hollow: &Trapped, side: Side) -> Vec<[Vector; 2]> {
    let height = joint.heights();
    let on_ledge = hollow.sand_mm.iter().map(|&[low, high]| match side {
        Side::Drag => [low, high],
        Side::Cope => [high, low],
    });
    let is_there =
        |[foot, _]: &[Vector; 2]| side.up() * (height([foot[0], foot[1]]) - foot[2]) > GRAIN_MM;
    on_ledge.filter(is_there).collect()
}

/// The facets that columns of sand lie on.
fn facets_under(pattern: &Mesh, tree: &Tree, sand: &[[Vector; 2]], side: Side) -> BTreeSet<u32> {
    let leaving = -side.up() as i32;
    let under = sand.iter().filter_map(|[foot, _]| {
        let hits = along(pattern, tree, 2, *foot);
        let off = |at: f64| (at - foot[2]).abs();
        let surfaces = hits.into_iter().filter(|hit| hit.step == leaving);
        let nearest = surfaces.min_by(|a, b| off(a.at).total_cmp(&off(b.at)))?;
        (off(nearest.at) < GRAIN_MM).then_some(nearest.facet)
    });
    under.collect()
}

/// Places of a facet that are asked whether sand lies on it, as shares of its corners.
const ASKED: [Vector; 4] = [
    [1.0 / 3.0, 1.0 / 3.0, 1.0 / 3.0],
    [0.9, 0.05, 0.05],
    [0.05, 0.9, 0.05],
    [0.05, 0.05, 0.9],
];

/// The facets with those beside them that lie under the same sand but between its columns, such as
/// the strips of a fillet.
fn grown(
    pattern: &Mesh,
    tree: &Tree,
    mut facets: BTreeSet<u32>,
    sand: &[[Vector; 2]],
    side: Side,
) -> BTreeSet<u32> {
    let Some([low, high]) = crate::vector::bounds_of(sand.iter().flatten().copied()) else {
        return facets;
    };
    let is_near = |place: Vector| {
        (0..3).all(|axis| {
            low[axis] - BEYOND_MM <= place[axis] && place[axis] <= high[axis] + BEYOND_MM
        })
    };
    let is_under_sand = |facet: u32| {
        let corners = pattern.corners(facet as usize);
        let looks = side.up() * pattern.normal(facet as usize)[2] > 0.0;
        looks
            && ASKED.iter().any(|shares| {
                let [a, b, c] = [0, 1, 2].map(|i| scale(corners[i], shares[i]));
                let place = add(add(a, b), c);
                is_near(place) && has_roof(pattern, tree, place, side)
            })
    };
    let beside = beside(pattern);
    let mut open: Vec<u32> = facets.iter().copied().collect();
    let mut asked = facets.clone();
    while let Some(facet) = open.pop() {
        for &other in &beside[facet as usize] {
            if asked.insert(other) && is_under_sand(other) {
                facets.insert(other);
                open.push(other);
            }
        }
    }
    facets
}

/// Whether sand on a place of the skin has metal again on its other side.
fn has_roof(pattern: &Mesh, tree: &Tree, place: Vector, side: Side) -> bool {
    let hits = along(pattern, tree, 2, place);
    hits.iter()
        .any(|hit| side.up() * (hit.at - place[2]) > GRAIN_MM && f64::from(hit.step) == side.up())
}

/// The facets that share a side with each.
fn beside(mesh: &Mesh) -> Vec<Vec<u32>> {
    let mut beside = vec![Vec::new(); mesh.triangles.len()];
    for sides in Edges::of(mesh).groups() {
        for (one, other) in sides.iter().flat_map(|a| sides.iter().map(move |b| (a, b))) {
            if one.facet() != other.facet() {
                beside[one.facet()].push(other.facet() as u32);
            }
        }
    }
    beside
}

/// An upright block around sand, square to its way out and a hair larger, as tall as the pattern.
fn around(
    sand: &[[Vector; 2]],
    outward: Vector,
    [low, high]: [f64; 2],
) -> Result<Body, BooleanError> {
    let across = cross([0.0, 0.0, 1.0], outward);
    let ends = |way: Vector| {
        let places = sand.iter().map(move |[foot, _]| dot(*foot, way));
        let ends = (f64::INFINITY, f64::NEG_INFINITY);
        let (from, to) = places.fold(ends, |(from, to), at| (from.min(at), to.max(at)));
        [from - BEYOND_MM, to + BEYOND_MM]
    };
    let (deep, wide) = (ends(outward), ends(across));
    let mut corners = Vec::with_capacity(8);
    for (at, aside) in deep
        .iter()
        .flat_map(|&at| wide.map(move |aside| (at, aside)))
    {
        let flat = add(scale(outward, at), scale(across, aside));
        corners.extend([low, high].map(|z| [flat[0], flat[1], z]));
    }
    Body::around(&corners)
}

/// How far a mesh reaches along a way of length one, mm.
pub(super) fn reach(mesh: &Mesh, way: Vector) -> [f64; 2] {
    let places = mesh.points.iter().map(|&point| dot(point, way));
    let ends = (f64::INFINITY, f64::NEG_INFINITY);
    let (from, to) = places.fold(ends, |(from, to), at| (from.min(at), to.max(at)));
    [from, to]
}

/// A way without its rise, of length one; none for an upright one.
pub(super) fn level(way: Vector) -> Option<Vector> {
    let flat = sub(way, [0.0, 0.0, way[2]]);
    let length = norm(flat);
    (length > f64::MIN_POSITIVE).then(|| scale(flat, 1.0 / length))
}
