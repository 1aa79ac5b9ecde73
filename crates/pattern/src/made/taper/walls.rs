//! The walls of a part: which facets want draught, which way each is drawn, and how deep it goes.

use std::collections::BTreeMap;

use rayon::prelude::*;

use super::{Draught, Draws, TaperError, Wall, tangent, wall_degrees};
use crate::draft::Side;
use crate::mesh::{Edges, Mesh};
use crate::rays::first_met;
use crate::tree::Tree;
use crate::vector::{Vector, add, dot, norm, scale};

/// The walls, and which one each facet belongs to.
pub(super) struct Walls {
    /// The patches.
    pub(super) patches: Vec<Patch>,
    /// Number of the patch of each facet, or [`NONE`].
    pub(super) patch_of: Vec<u32>,
    /// Unit normals of all facets.
    pub(super) units: Vec<Vector>,
    /// Which way each facet of a wall is drawn, along z: 1 up, −1 down, 0 for what is no wall.
    ways: Vec<f64>,
    /// Tangent of the draught that each facet of a wall has.
    has: Vec<f64>,
}

impl Walls {
    /// The way along z in which a facet draws, if it is part of a wall that wants more draught
    /// than the facet has.
    pub(super) fn wants(&self, facet: usize) -> Option<f64> {
        let patch = self.patches.get(self.patch_of[facet] as usize)?;
        let is_short = self.has[facet] < patch.wanted - SHORT;
        (is_short && patch.wall.draws != Draws::Neither).then_some(self.ways[facet])
    }

    /// The patch that a facet of a wall belongs to.
    pub(super) fn patch(&self, facet: usize) -> &Patch {
        &self.patches[self.patch_of[facet] as usize]
    }
}

/// Tangents closer than this are one draught: what rounding leaves of it.
const SHORT: f64 = 1e-5;

/// A smooth patch of wall facets drawn the same way.
pub(super) struct Patch {
    /// What is told of it.
    pub(super) wall: Wall,
    /// Tangent of the draught wanted.
    pub(super) wanted: f64,
    /// Its height along z, mm.
    pub(super) reach_mm: f64,
}

/// A facet of no wall.
pub(super) const NONE: u32 = u32::MAX;

/// A wall may hang over by so much and still be a wall: what rounding leaves on an upright one.
/// Beyond, it is an undercut and no draught helps it.
const OVERHANG_DEGREES: f64 = 0.5;

/// Sharpest turn within one wall: beyond it two walls meet in an edge, and each has its own depth.
const SMOOTH_DEGREES: f64 = 30.0;

/// How far off a wall the lines start that ask what lies above and below it, as a share of the
/// size of the part; a ripple of that height does not hold a pattern.
const OFF_WALL: f64 = 5e-4;

/// Finds the walls of a mesh that is split at the joint; `over_mm` are the heights of its corners
/// over the joint.
pub(super) fn walls(mesh: &Mesh, over_mm: &[f64], draught: Draught) -> Result<Walls, TaperError> {
    let tree = Tree::over(mesh);
    let units: Vec<Vector> = (0..mesh.triangles.len()).map(|f| unit(mesh, f)).collect();
    let off_mm = OFF_WALL * mesh.diagonal();
    let is_over = |facet: usize| {
        let corners = mesh.triangles[facet].iter();
        corners.map(|&point| over_mm[point as usize]).sum::<f64>() >= 0.0
    };
    let seen: Vec<Option<Seen>> = (0..mesh.triangles.len())
        .into_par_iter()
        .map(|facet| {
            seen(
                mesh,
                &tree,
                facet,
                units[facet],
                off_mm,
                is_over(facet),
                draught,
            )
        })
        .collect();
    let patch_of = patches(mesh, &seen, &units);
    let count = patch_of.iter().filter(|&&patch| patch != NONE).max();
    let count = count.map_or(0, |&last| last as usize + 1);
    let mut gathered: Vec<Gathered> = (0..count).map(|_| Gathered::default()).collect();
    for (facet, &patch) in patch_of.iter().enumerate() {
        if let Some(seen) = seen[facet].filter(|_| patch != NONE) {
            gathered[patch as usize].take(mesh, over_mm, facet, &seen);
        }
    }
    let patches = gathered.iter().map(|one| one.patch(draught));
    let ways = seen.iter().map(|one| one.map_or(0.0, |seen| seen.way));
    let has = seen.iter().map(|one| one.map_or(0.0, |seen| seen.has));
    Ok(Walls {
        patches: patches.collect::<Result<_, _>>()?,
        ways: ways.collect(),
        has: has.collect(),
        patch_of,
        units,
    })
}

fn unit(mesh: &Mesh, facet: usize) -> Vector {
    let normal = mesh.normal(facet);
    let length = norm(normal);
    scale(normal, 1.0 / length.max(f64::MIN_POSITIVE))
}

/// What a facet of a wall shows.
#[derive(Clone, Copy)]
struct Seen {
    draws: Draws,
    /// The way it is drawn, along z.
    way: f64,
    /// Tangent of the draught it has.
    has: f64,
    is_inside: bool,
}

/// Looks from a facet up, down and straight out; `None` for what is no wall.
fn seen(
    mesh: &Mesh,
    tree: &Tree,
    facet: usize,
    unit: Vector,
    off_mm: f64,
    is_over: bool,
    draught: Draught,
) -> Option<Seen> {
    let level = unit[0].hypot(unit[1]);
    let wall = wall_degrees(draught).to_radians();
    if level == 0.0 || unit[2].abs() >= wall.sin() {
        return None;
    }
    let [a, b, c] = mesh.corners(facet);
    let middle = scale(add(add(a, b), c), 1.0 / 3.0);
    let out = [unit[0] / level, unit[1] / level, 0.0];
    let from = add(middle, scale(out, off_mm));
    let is_free = |way: f64| first_met(mesh, tree, from, [0.0, 0.0, way]).is_none();
    let draws = match (is_free(1.0), is_free(-1.0)) {
        (true, true) => Draws::BothWays,
        (true, false) => Draws::Up,
        (false, true) => Draws::Down,
        (false, false) => Draws::Neither,
    };
    let way = match draws {
        Draws::Up => 1.0,
        Draws::Down => -1.0,
        _ if is_over => 1.0,
        _ => -1.0,
    };
    let has = way * unit[2] / level;
    (has >= -OVERHANG_DEGREES.to_radians().tan()).then(|| Seen {
        draws,
        way,
        has,
        is_inside: first_met(mesh, tree, middle_off(middle, out), out).is_some(),
    })
}

/// A hair off the facet, so that the line does not meet the facet it starts from.
fn middle_off(middle: Vector, out: Vector) -> Vector {
    add(middle, scale(out, 1e-6))
}

/// Whether two facets may belong to one wall: what the joint parts is one on both sides of it, and
/// goes over into what stands on metal and leaves with the same half.
fn are_one(a: Seen, b: Seen) -> bool {
    let parts = [a, b].map(|seen| seen.draws == Draws::BothWays);
    let is_held = [a, b].map(|seen| seen.draws == Draws::Neither);
    match (parts, is_held) {
        ([true, true], _) | (_, [true, true]) => true,
        (_, [false, false]) => a.way == b.way,
        _ => false,
    }
}

/// Facets that meet without a sharp turn and draw the same way make one patch.
fn patches(mesh: &Mesh, seen: &[Option<Seen>], units: &[Vector]) -> Vec<u32> {
    let mut root: Vec<u32> = (0..mesh.triangles.len() as u32).collect();
    let least = SMOOTH_DEGREES.to_radians().cos();
    for group in Edges::of(mesh).groups() {
        let [a, b] = group else { continue };
        let (a, b) = (a.facet(), b.facet());
        if let (Some(one), Some(other)) = (&seen[a], &seen[b])
            && are_one(*one, *other)
            && dot(units[a], units[b]) >= least
        {
            let (a, b) = (root_of(&mut root, a as u32), root_of(&mut root, b as u32));
            root[a.max(b) as usize] = a.min(b);
        }
    }
    let mut numbers: BTreeMap<u32, u32> = BTreeMap::new();
    let mut patch_of = vec![NONE; seen.len()];
    for facet in (0..seen.len()).filter(|&facet| seen[facet].is_some()) {
        let root = root_of(&mut root, facet as u32);
        let next = numbers.len() as u32;
        patch_of[facet] = *numbers.entry(root).or_insert(next);
    }
    patch_of
}

fn root_of(root: &mut [u32], mut facet: u32) -> u32 {
    while root[facet as usize] != facet {
        root[facet as usize] = root[root[facet as usize] as usize];
        facet = root[facet as usize];
    }
    facet
}

/// Sums over the facets of one patch.
#[derive(Default)]
struct Gathered {
    area_mm2: f64,
    has: f64,
    inside_mm2: f64,
    draws: Option<Draws>,
    place_mm: Vector,
    reach_mm: Option<[f64; 2]>,
    /// Farthest from the joint.
    off_joint_mm: f64,
}

impl Gathered {
    fn take(&mut self, mesh: &Mesh, over_mm: &[f64], facet: usize, seen: &Seen) {
        let corners = mesh.corners(facet);
        let area_mm2 = norm(mesh.normal(facet)) / 2.0;
        self.area_mm2 += area_mm2;
        self.has += area_mm2 * seen.has;
        self.inside_mm2 += if seen.is_inside { area_mm2 } else { 0.0 };
        let draws = self.draws.get_or_insert(seen.draws);
        *draws = (*draws).min(seen.draws);
        for [_, _, z] in corners {
            let [low, high] = self.reach_mm.get_or_insert([z, z]);
            (*low, *high) = (low.min(z), high.max(z));
        }
        for point in mesh.triangles[facet] {
            self.off_joint_mm = self.off_joint_mm.max(over_mm[point as usize].abs());
        }
        if self.area_mm2 == area_mm2 {
            let [a, b, c] = corners;
            self.place_mm = scale(add(add(a, b), c), 1.0 / 3.0);
        }
    }

    fn patch(&self, draught: Draught) -> Result<Patch, TaperError> {
        let draws = self.draws.unwrap_or(Draws::Neither);
        let reach_mm = self.reach_mm.unwrap_or_default();
        let depth_mm = match draws {
            Draws::BothWays => self.off_joint_mm,
            _ => reach_mm[1] - reach_mm[0],
        };
        let side = match self.inside_mm2 > self.area_mm2 / 2.0 {
            true => Side::Inside,
            false => Side::Outside,
        };
        let has = self.has / self.area_mm2.max(f64::MIN_POSITIVE);
        let too_deep = |error| TaperError::TooDeep {
            place_mm: self.place_mm,
            error,
        };
        let wanted = match draws {
            Draws::Neither => has,
            _ => tangent(draught, depth_mm, side).map_err(too_deep)?,
        };
        Ok(Patch {
            wall: Wall {
                place_mm: self.place_mm,
                area_mm2: self.area_mm2,
                depth_mm,
                side,
                draws,
                had_degrees: has.atan().to_degrees(),
                has_degrees: has.max(wanted).atan().to_degrees(),
            },
            wanted,
            reach_mm: reach_mm[1] - reach_mm[0],
        })
    }
}
