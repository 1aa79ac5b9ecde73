//! Flat cuts through a solid: their area, their outline, and the metal above them.

use std::collections::BTreeMap;

use measure::length::{Area, Length, Volume};

use crate::mesh::Mesh;

/// Areas of the cuts through a closed mesh at heights given from the lowest up.
///
/// Every facet a plane meets leaves a directed piece of outline with the metal on its left; half
/// the sum of their cross products is the area, without putting the outline together.
pub fn areas_at(mesh: &Mesh, heights: &[Length]) -> Vec<Area> {
    let levels: Vec<f64> = heights.iter().map(|height| height.as_mm()).collect();
    let mut twice = vec![0.0; levels.len()];
    for triangle in &mesh.triangles {
        let corners = triangle.map(|point| mesh.points[point as usize]);
        let z = corners.map(|corner| corner[2]);
        let first = levels.partition_point(|level| *level < z[0].min(z[1]).min(z[2]));
        let last = levels.partition_point(|level| *level <= z[0].max(z[1]).max(z[2]));
        for level in first..last {
            if let Some([from, to]) = piece(corners, 2, levels[level]) {
                twice[level] += from[0] * to[1] - from[1] * to[0];
            }
        }
    }
    twice
        .into_iter()
        .map(|twice| Area::from_mm2(twice / 2.0))
        .collect()
}

/// Outlines, in mm, of the cut across an axis (0 to 2) at a place along it; the two coordinates
/// left are kept in the order that makes outer outlines run anticlockwise.
pub fn outlines(mesh: &Mesh, axis: usize, at_mm: f64) -> Vec<Vec<[f64; 2]>> {
    chained(pieces(mesh, axis, at_mm))
}

/// Metal above a height in a closed mesh: the sum over facets of the column between each facet and
/// the plane, cut off at the plane.
pub fn volume_above(mesh: &Mesh, height: Length) -> Volume {
    let level = height.as_mm();
    let columns = mesh.triangles.iter().map(|triangle| {
        let corners = triangle.map(|point| mesh.points[point as usize]);
        let kept = kept_above(corners, level);
        let Some((first, rest)) = kept.split_first() else {
            return 0.0;
        };
        rest.windows(2)
            .map(|pair| column([*first, pair[0], pair[1]], level))
            .sum()
    });
    Volume::from_mm3(columns.sum())
}

fn column([a, b, c]: [[f64; 3]; 3], level: f64) -> f64 {
    let area = ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2.0;
    area * ((a[2] + b[2] + c[2]) / 3.0 - level)
}

/// The part of a facet above a level.
fn kept_above(corners: [[f64; 3]; 3], level: f64) -> Vec<[f64; 3]> {
    let mut kept = Vec::with_capacity(4);
    for side in 0..3 {
        let (from, to) = (corners[side], corners[(side + 1) % 3]);
        if from[2] >= level {
            kept.push(from);
        }
        if (from[2] >= level) != (to[2] >= level) {
            kept.push(between(from, to, (level - from[2]) / (to[2] - from[2])));
        }
    }
    kept
}

fn between(from: [f64; 3], to: [f64; 3], share: f64) -> [f64; 3] {
    [0, 1, 2].map(|axis| from[axis] + share * (to[axis] - from[axis]))
}

/// The directed pieces of outline, one from each facet that the plane meets.
fn pieces(mesh: &Mesh, axis: usize, at_mm: f64) -> Vec<[[f64; 2]; 2]> {
    let corners = mesh
        .triangles
        .iter()
        .map(|triangle| triangle.map(|p| mesh.points[p as usize]));
    corners
        .filter_map(|corners| piece(corners, axis, at_mm))
        .collect()
}

/// The piece that one facet leaves. Both facets of an edge have to meet the plane in one point, to
/// the last bit, so that pieces can be put together.
fn piece(corners: [[f64; 3]; 3], axis: usize, at_mm: f64) -> Option<[[f64; 2]; 2]> {
    let (u, v) = [(1, 2), (2, 0), (0, 1)][axis];
    let (mut enters, mut leaves) = (None, None);
    for side in 0..3 {
        let (from, to) = (corners[side], corners[(side + 1) % 3]);
        let (below, above) = if from[axis] < to[axis] {
            (from, to)
        } else {
            (to, from)
        };
        if (below[axis] < at_mm) && (above[axis] >= at_mm) {
            let share = (at_mm - below[axis]) / (above[axis] - below[axis]);
            let point = between(below, above, share);
            let end = if from[axis] < to[axis] {
                &mut enters
            } else {
                &mut leaves
            };
            *end = Some([point[u], point[v]]);
        }
    }
    // Outward facets have the metal on the left from where the outline dips to where it rises.
    Some([leaves?, enters?])
}

/// Puts directed pieces together, end to start, in the order in which they are met.
fn chained(pieces: Vec<[[f64; 2]; 2]>) -> Vec<Vec<[f64; 2]>> {
    let key = |point: [f64; 2]| point.map(f64::to_bits);
    let mut starts: BTreeMap<[u64; 2], Vec<usize>> = BTreeMap::new();
    for (place, [from, _]) in pieces.iter().enumerate() {
        starts.entry(key(*from)).or_default().push(place);
    }
    let mut used = vec![false; pieces.len()];
    let mut outlines = Vec::new();
    for first in 0..pieces.len() {
        let mut outline = Vec::new();
        let mut at = Some(first);
        while let Some(place) = at.filter(|&place| !used[place]) {
            used[place] = true;
            outline.push(pieces[place][0]);
            let followers = starts
                .get(&key(pieces[place][1]))
                .map_or(&[][..], Vec::as_slice);
            at = followers.iter().copied().find(|&next| !used[next]);
        }
        if outline.len() > 2 {
            outlines.push(outline);
        }
    }
    outlines
}
