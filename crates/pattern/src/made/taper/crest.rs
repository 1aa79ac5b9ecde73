//! Crests: the edges in which walls that want draught begin, seen from the end that leaves the sand
//! last, and the way in which the wall goes out below each corner of them.

use std::collections::BTreeMap;

use super::Heights;
use super::walls::Walls;
use crate::mesh::{Edges, Mesh, Side};
use crate::vector::{norm, sub};

/// An edge in which a wall begins.
#[derive(Clone, Copy, Debug)]
pub(super) struct Crest {
    /// The facet of the wall below it.
    pub(super) facet: usize,
    /// Its corners, in the order of that facet.
    pub(super) ends: [u32; 2],
    /// The way along z in which the wall draws.
    pub(super) way: f64,
    /// What the skin goes out by, along x and y, for each millimetre below either corner.
    pub(super) rates: [[f64; 2]; 2],
    /// The same for a rate of one across the wall.
    pub(super) mitres: [[f64; 2]; 2],
}

/// Steepest edge that is a crest, rise over length: steeper ones are the sides of a wall, and a
/// skirt that hangs on one would be a blade.
const STEEPEST: f64 = 0.97;

/// The crests of all walls.
pub(super) fn crests(mesh: &Mesh, walls: &Walls) -> Vec<Crest> {
    let mut found = Vec::new();
    for group in Edges::of(mesh).groups() {
        let [one, other] = group else { continue };
        found.extend(begins(mesh, walls, *one, other.facet()));
        found.extend(begins(mesh, walls, *other, one.facet()));
    }
    found.sort_by_key(|crest| (crest.facet, crest.ends));
    let mut asked: BTreeMap<(u32, bool), [Asked; 2]> = BTreeMap::new();
    for crest in &found {
        let [x, y, _] = walls.units[crest.facet];
        let level = x.hypot(y);
        for end in crest.ends {
            let of_end = asked.entry((end, crest.way > 0.0)).or_default();
            of_end[0].take([x / level, y / level], walls.patch(crest.facet).wanted);
            of_end[1].take([x / level, y / level], 1.0);
        }
    }
    for crest in &mut found {
        for end in 0..2 {
            if let Some([rate, mitre]) = asked.get(&(crest.ends[end], crest.way > 0.0)) {
                crest.rates[end] = rate.solved();
                crest.mitres[end] = mitre.solved();
            }
        }
    }
    found
}

/// Cuts crests under which the joint wanders into pieces, so that each skirt ends on the joint; the
/// corners between are added to the mesh.
pub(super) fn cut_fine(mesh: &mut Mesh, crests: Vec<Crest>, joint: Heights<'_>) -> Vec<Crest> {
    let mut fine = Vec::with_capacity(crests.len());
    for crest in crests {
        let [a, b] = crest.ends.map(|end| mesh.points[end as usize]);
        let at = |share: f64| [0, 1, 2].map(|axis| a[axis] + share * (b[axis] - a[axis]));
        let level = |share: f64| joint([at(share)[0], at(share)[1]]);
        let count = (norm(sub(a, b)) / PIECE_MM).ceil().clamp(1.0, MOST_PIECES) as usize;
        let share = |piece: usize| piece as f64 / count as f64;
        let bends = |piece: usize| {
            let straight = level(0.0) + share(piece) * (level(1.0) - level(0.0));
            (level(share(piece)) - straight).abs() > BEND_MM
        };
        if !(1..count).any(bends) {
            fine.push(crest);
            continue;
        }
        let first = mesh.points.len() as u32;
        mesh.points.extend((1..count).map(|piece| at(share(piece))));
        let end = |piece: usize| match piece {
            0 => crest.ends[0],
            piece if piece == count => crest.ends[1],
            piece => first + piece as u32 - 1,
        };
        let between = |[from, to]: [[f64; 2]; 2], piece: usize| {
            [0, 1].map(|axis| from[axis] + share(piece) * (to[axis] - from[axis]))
        };
        fine.extend((0..count).map(|piece| Crest {
            ends: [end(piece), end(piece + 1)],
            rates: [piece, piece + 1].map(|at| between(crest.rates, at)),
            mitres: [piece, piece + 1].map(|at| between(crest.mitres, at)),
            ..crest
        }));
    }
    fine
}

/// Pieces of a crest over a joint that wanders, mm, and the most of them.
const PIECE_MM: f64 = 1.0;
const MOST_PIECES: f64 = 64.0;

/// A joint that is straight under a crest to within this, mm, is followed as it is.
const BEND_MM: f64 = 0.01;

/// The crest on a side of a facet, if a wall begins there.
fn begins(mesh: &Mesh, walls: &Walls, side: Side, beyond: usize) -> Option<Crest> {
    let facet = side.facet();
    let way = walls.wants(facet)?;
    if walls.wants(beyond) == Some(way) {
        return None;
    }
    let (from, to) = mesh.ends(side.id);
    let [a, b] = [from, to].map(|end| mesh.points[end as usize]);
    let third = mesh.triangles[facet]
        .iter()
        .find(|&&p| p != from && p != to)?;
    let below = way * ((a[2] + b[2]) / 2.0 - mesh.points[*third as usize][2]);
    let is_level = (a[2] - b[2]).abs() <= STEEPEST * norm(sub(a, b));
    (below > 0.0 && is_level).then_some(Crest {
        facet,
        ends: [from, to],
        way,
        rates: [[0.0; 2]; 2],
        mitres: [[0.0; 2]; 2],
    })
}

/// Two walls that turn by less than some two degrees give no second direction to solve for; their
/// mean is taken.
const SAME_WAY: f64 = 1e-3;

/// A corner goes out by at most this many times what its walls ask for: at a spike sharper than
/// some 30 degrees the mitre is cut.
const MOST_MITRE: f64 = 4.0;

/// Normal equations of what the walls at one corner ask for: n · u = out, for every wall.
#[derive(Clone, Copy, Debug, Default)]
struct Asked {
    xx: f64,
    xy: f64,
    yy: f64,
    right: [f64; 2],
    count: f64,
    most: f64,
}

impl Asked {
    fn take(&mut self, [x, y]: [f64; 2], out: f64) {
        self.xx += x * x;
        self.xy += x * y;
        self.yy += y * y;
        self.right[0] += out * x;
        self.right[1] += out * y;
        self.count += 1.0;
        self.most = self.most.max(out);
    }

    /// The shortest way that fits best, by the directions in which the equations are worth
    /// something.
    fn solved(&self) -> [f64; 2] {
        let (mean, half) = ((self.xx + self.yy) / 2.0, (self.xx - self.yy) / 2.0);
        let spread = half.hypot(self.xy);
        let angle = self.xy.atan2(half) / 2.0;
        let (sin, cos) = angle.sin_cos();
        let mut way = [0.0; 2];
        for (value, [x, y]) in [(mean + spread, [cos, sin]), (mean - spread, [-sin, cos])] {
            if value > SAME_WAY * self.count {
                let length = (x * self.right[0] + y * self.right[1]) / value;
                way = [way[0] + length * x, way[1] + length * y];
            }
        }
        let length = way[0].hypot(way[1]);
        let cut = (MOST_MITRE * self.most / length.max(f64::MIN_POSITIVE)).min(1.0);
        way.map(|along| along * cut)
    }
}
