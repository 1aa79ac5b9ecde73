//! The rim of a part's shadow: where an upright line just touches it, and how high it touches.

use std::collections::BTreeMap;

use rayon::prelude::*;

use super::columns::Columns;
use super::level::Band;
use crate::mesh::Mesh;
use crate::rays::along;
use crate::tree::Tree;

/// One place of the rim.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RimPlace {
    /// Where it lies across the draw, mm.
    pub at_mm: [f64; 2],
    /// The column of metal on its one side.
    pub dark: usize,
    /// The empty column on its other side.
    pub light: usize,
    /// The heights at which the joint may meet the part there.
    pub band: Band,
}

/// How near the rim the part is measured, as a share of its size: near enough that a ball shows its
/// equator within a hundredth of its radius, far enough that an upright wall of a file of single
/// precision shows whole.
const HAIR: f64 = 1e-5;

/// The rims of a part as its columns show them, each a closed row of places with the part on the
/// left: the outer one anticlockwise, those of holes clockwise.
pub fn rims(turned: &Mesh, tree: &Tree, columns: &Columns, play_mm: f64) -> Vec<Vec<RimPlace>> {
    let hair_mm = HAIR * turned.diagonal();
    let found = rows(columns).into_par_iter().map(|row| {
        let places = row
            .into_iter()
            .filter_map(|sides| place(turned, tree, columns, sides, hair_mm));
        let mut places: Vec<RimPlace> = places.collect();
        loosen(turned, tree, &mut places, play_mm);
        places
    });
    found.filter(|row: &Vec<RimPlace>| row.len() > 2).collect()
}

/// Widens the bands by what is found one play further in, square to the rim.
fn loosen(turned: &Mesh, tree: &Tree, row: &mut [RimPlace], play_mm: f64) {
    let places: Vec<[f64; 2]> = row.iter().map(|place| place.at_mm).collect();
    let count = places.len();
    for (number, place) in row.iter_mut().enumerate() {
        let before = places[(number + count - ALONG % count) % count];
        let after = places[(number + ALONG) % count];
        let along = [after[0] - before[0], after[1] - before[1]];
        let length = along[0].hypot(along[1]);
        if length == 0.0 {
            continue;
        }
        // The part lies on the left.
        let inward = [-along[1] / length, along[0] / length];
        let deeper = [0, 1].map(|axis| place.at_mm[axis] + play_mm * inward[axis]);
        if let Some([low, high]) = ends_at(turned, tree, deeper) {
            let tight = place.band.tight_mm;
            place.band.loose_mm = [tight[0].min(low), tight[1].max(high)];
        }
    }
}

/// Places before and after one that tell which way the rim runs there: fewer see the stairs of the
/// columns instead.
const ALONG: usize = 3;

/// Lowest and highest metal along an upright line, mm.
fn ends_at(turned: &Mesh, tree: &Tree, [x, y]: [f64; 2]) -> Option<[f64; 2]> {
    let met = along(turned, tree, 2, [x, y, 0.0]);
    Some([met.first()?.at, met.last()?.at])
}

/// Closes in on the rim between a column of metal and an empty one.
fn place(
    turned: &Mesh,
    tree: &Tree,
    columns: &Columns,
    [dark, light]: [usize; 2],
    hair_mm: f64,
) -> Option<RimPlace> {
    let (start, mut outside) = (columns.place_mm(dark), columns.place_mm(light));
    let mut inside = start;
    let mut tight_mm = ends_at(turned, tree, start)?;
    let mut apart_mm = columns.size_mm;
    while apart_mm > hair_mm {
        let middle = [0, 1].map(|axis| (inside[axis] + outside[axis]) / 2.0);
        match ends_at(turned, tree, middle) {
            Some(ends_mm) => (inside, tight_mm) = (middle, ends_mm),
            None => outside = middle,
        }
        apart_mm /= 2.0;
    }
    Some(RimPlace {
        at_mm: inside,
        dark,
        light,
        band: Band {
            tight_mm,
            loose_mm: tight_mm,
        },
    })
}

/// A step along the edge of the shadow, from one corner of the squares to the next.
struct Step {
    to: [usize; 2],
    sides: [usize; 2],
}

/// Follows the edge between columns of metal and empty ones; each step gives the two.
fn rows(columns: &Columns) -> Vec<Vec<[usize; 2]>> {
    let mut onward = steps(columns);
    let mut rows = Vec::new();
    while let Some((&start, _)) = onward.first_key_value() {
        let mut row = Vec::new();
        let mut at = start;
        while let Some(step) = take(&mut onward, at) {
            row.push(step.sides);
            at = step.to;
        }
        rows.push(row);
    }
    rows
}

fn steps(columns: &Columns) -> BTreeMap<[usize; 2], Vec<Step>> {
    let [nx, ny] = columns.count;
    let is_dark = |i: usize, j: usize| !columns.spans(i + nx * j).is_empty();
    let mut onward: BTreeMap<[usize; 2], Vec<Step>> = BTreeMap::new();
    // The border is empty: a plot keeps a square to spare.
    for (i, j) in (1..ny.max(1) - 1).flat_map(|j| (1..nx.max(1) - 1).map(move |i| (i, j))) {
        if !is_dark(i, j) {
            continue;
        }
        let sides = [
            ([i, j - 1], [i, j], [i + 1, j]),
            ([i + 1, j], [i + 1, j], [i + 1, j + 1]),
            ([i, j + 1], [i + 1, j + 1], [i, j + 1]),
            ([i - 1, j], [i, j + 1], [i, j]),
        ];
        for ([a, b], from, to) in sides {
            if !is_dark(a, b) {
                let sides = [i + nx * j, a + nx * b];
                onward.entry(from).or_default().push(Step { to, sides });
            }
        }
    }
    onward
}

fn take(onward: &mut BTreeMap<[usize; 2], Vec<Step>>, at: [usize; 2]) -> Option<Step> {
    let ends = onward.get_mut(&at)?;
    let next = ends.pop();
    if ends.is_empty() {
        onward.remove(&at);
    }
    next
}
