//! Walls of metal too thin to run, walls of sand too thin to stand, and inside corners without a
//! fillet.
//!
//! A wall is measured from the middle of each facet straight in, and straight out, to the face that
//! looks back at it. What does not look back is no wall: the far side of a wedge, or open sand.

use rayon::prelude::*;

use crate::mesh::{Edges, Mesh};
use crate::rays::first_met;
use crate::tree::Tree;
use crate::vector::{Vector, add, cross, dot, norm, scale, sub};

/// The least that is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Least {
    /// Wall of metal, mm.
    pub metal_mm: f64,
    /// Wall of sand between two faces, mm.
    pub sand_mm: f64,
    /// Inside corners that turn by less than this need no fillet, degrees.
    pub corner_degrees: f64,
}

/// The walls of a part.
#[derive(Clone, Debug, PartialEq)]
pub struct Walls {
    /// Metal under each facet, mm; none where no face looks back.
    pub metal_mm: Vec<Option<f64>>,
    /// Sand over each facet, mm; none where it is open.
    pub sand_mm: Vec<Option<f64>>,
    /// How far the skin turns inward at the sharpest side of each facet, degrees; nought where it
    /// turns outward or not at all.
    pub turn_degrees: Vec<f64>,
    /// Places with too little metal, the largest first.
    pub thin_metal: Vec<Thin>,
    /// Places with too little sand, the largest first.
    pub thin_sand: Vec<Thin>,
    /// Inside corners without a fillet, the longest first.
    pub corners: Vec<Corner>,
}

/// A place where a wall is too thin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thin {
    /// The middle of its surface, mm.
    pub centre_mm: Vector,
    /// Its surface, mm²: both faces of the wall where they join around an edge, else each apart.
    pub area_mm2: f64,
    /// The thinnest of it, mm.
    pub least_mm: f64,
}

/// An inside corner without a fillet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// The middle of its edges, mm.
    pub centre_mm: Vector,
    /// Their length, mm.
    pub length_mm: f64,
    /// How far the skin turns there at most, degrees: 90 where a rib stands square on a plate.
    pub turn_degrees: f64,
}

/// A face looks back at another if it leans less than this against it: cosine of 60°.
const LOOKS_BACK: f64 = 0.5;

/// Measures the walls of a closed mesh, outward wound and in mm.
pub fn walls(mesh: &Mesh, least: &Least) -> Walls {
    let tree = Tree::over(mesh);
    let off_mm = 1e-6 * mesh.diagonal();
    let across = |sign: f64| -> Vec<Option<f64>> {
        let facets = (0..mesh.triangles.len()).into_par_iter();
        facets
            .map(|facet| across(mesh, &tree, facet, sign, off_mm))
            .collect()
    };
    let (metal_mm, sand_mm) = (across(-1.0), across(1.0));
    let edges = Edges::of(mesh);
    let pairs: Vec<[usize; 2]> = edges
        .groups()
        .filter_map(|group| match group {
            [a, b] => Some([a.facet(), b.facet()]),
            _ => None,
        })
        .collect();
    Walls {
        thin_metal: thin(mesh, &pairs, &metal_mm, least.metal_mm),
        thin_sand: thin(mesh, &pairs, &sand_mm, least.sand_mm),
        corners: corners(mesh, &edges, least.corner_degrees),
        turn_degrees: turns(mesh, &edges),
        metal_mm,
        sand_mm,
    }
}

/// From the middle of a facet along its normal times `sign` to a face that looks back, mm.
fn across(mesh: &Mesh, tree: &Tree, facet: usize, sign: f64, off_mm: f64) -> Option<f64> {
    let normal = mesh.normal(facet);
    let doubled = norm(normal);
    if doubled == 0.0 {
        return None;
    }
    let way = scale(normal, sign / doubled);
    let from = add(middle(mesh, facet), scale(way, off_mm));
    let (met, distance) = first_met(mesh, tree, from, way)?;
    let other = mesh.normal(met as usize);
    let looks_back = dot(normal, other) <= -LOOKS_BACK * doubled * norm(other);
    looks_back.then_some(distance + off_mm)
}

fn middle(mesh: &Mesh, facet: usize) -> Vector {
    let [a, b, c] = mesh.corners(facet);
    scale(add(add(a, b), c), 1.0 / 3.0)
}

/// Facets with less than the least, joined where they share an edge.
fn thin(mesh: &Mesh, pairs: &[[usize; 2]], wall_mm: &[Option<f64>], least_mm: f64) -> Vec<Thin> {
    let is_thin = |facet: usize| wall_mm[facet].is_some_and(|wall| wall < least_mm);
    let thin: Vec<usize> = (0..wall_mm.len()).filter(|&facet| is_thin(facet)).collect();
    let joined = pairs
        .iter()
        .filter(|pair| pair.iter().all(|&facet| is_thin(facet)));
    let mut places: Vec<Thin> = groups(wall_mm.len(), &thin, joined.copied())
        .into_iter()
        .map(|facets| {
            let (mut area, mut moment, mut least) = (0.0, [0.0; 3], f64::INFINITY);
            for facet in facets {
                let of_facet = norm(mesh.normal(facet)) / 2.0;
                area += of_facet;
                moment = add(moment, scale(middle(mesh, facet), of_facet));
                least = wall_mm[facet].map_or(least, |wall| wall.min(least));
            }
            Thin {
                centre_mm: scale(moment, 1.0 / area),
                area_mm2: area,
                least_mm: least,
            }
        })
        .collect();
    places.sort_by(|a, b| b.area_mm2.total_cmp(&a.area_mm2));
    places
}

/// How far the skin turns inward at the sharpest side of each facet, degrees.
fn turns(mesh: &Mesh, edges: &Edges) -> Vec<f64> {
    let mut turns = vec![0.0f64; mesh.triangles.len()];
    for group in edges.groups() {
        let [a, b] = group else { continue };
        let turn = turn_inward(mesh, [a.low, a.high], a.facet(), b.facet());
        for facet in [a.facet(), b.facet()] {
            turns[facet] = turns[facet].max(turn);
        }
    }
    turns
}

/// Edges at which the skin turns inward by more than so many degrees, joined at their ends.
fn corners(mesh: &Mesh, edges: &Edges, least_degrees: f64) -> Vec<Corner> {
    let mut sharp: Vec<([u32; 2], f64)> = Vec::new();
    for group in edges.groups() {
        let [a, b] = group else { continue };
        let turn = turn_inward(mesh, [a.low, a.high], a.facet(), b.facet());
        if turn > least_degrees {
            sharp.push(([a.low, a.high], turn));
        }
    }
    let all: Vec<usize> = (0..sharp.len()).collect();
    let mut ends: Vec<(u32, usize)> = sharp
        .iter()
        .zip(0..)
        .flat_map(|((ends, _), edge)| ends.map(|end| (end, edge)))
        .collect();
    ends.sort_unstable();
    let meeting = ends.windows(2).filter(|pair| pair[0].0 == pair[1].0);
    let joined: Vec<[usize; 2]> = meeting.map(|pair| [pair[0].1, pair[1].1]).collect();
    let mut corners: Vec<Corner> = groups(sharp.len(), &all, joined.into_iter())
        .into_iter()
        .map(|edges| {
            let (mut length, mut moment, mut turn) = (0.0, [0.0; 3], 0.0f64);
            for edge in edges {
                let [a, b] = sharp[edge].0.map(|point| mesh.points[point as usize]);
                let of_edge = norm(sub(b, a));
                length += of_edge;
                moment = add(moment, scale(add(a, b), of_edge / 2.0));
                turn = turn.max(sharp[edge].1);
            }
            Corner {
                centre_mm: scale(moment, 1.0 / length),
                length_mm: length,
                turn_degrees: turn,
            }
        })
        .collect();
    corners.sort_by(|a, b| b.length_mm.total_cmp(&a.length_mm));
    corners
}

/// How far the skin turns inward over an edge, degrees; negative where it turns outward.
fn turn_inward(mesh: &Mesh, edge: [u32; 2], a: usize, b: usize) -> f64 {
    let (na, nb) = (mesh.normal(a), mesh.normal(b));
    let angle = norm(cross(na, nb)).atan2(dot(na, nb)).to_degrees();
    let apex = mesh.triangles[b].iter().find(|point| !edge.contains(point));
    let rises = apex.is_some_and(|&apex| {
        let from_edge = sub(mesh.points[apex as usize], mesh.points[edge[0] as usize]);
        dot(na, from_edge) > 0.0
    });
    if rises { angle } else { -angle }
}

/// Members joined by pairs, each group in the order of its members.
fn groups(
    count: usize,
    members: &[usize],
    pairs: impl Iterator<Item = [usize; 2]>,
) -> Vec<Vec<usize>> {
    let mut beside: Vec<Vec<usize>> = vec![Vec::new(); count];
    for [a, b] in pairs {
        beside[a].push(b);
        beside[b].push(a);
    }
    let mut is_taken = vec![false; count];
    let mut groups = Vec::new();
    for &first in members {
        let (mut group, mut next) = (Vec::new(), vec![first]);
        while let Some(member) = next.pop() {
            if !std::mem::replace(&mut is_taken[member], true) {
                group.push(member);
                next.extend(&beside[member]);
            }
        }
        if !group.is_empty() {
            group.sort_unstable();
            groups.push(group);
        }
    }
    groups
}
