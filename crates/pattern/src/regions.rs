//! Regions of like depth: where one section of a solid ends and the next begins.
//!
//! From every cell one climbs the depth to a top. A top whose inscribed ball holds a place a
//! quarter deeper still is a shoulder, and the climb goes on there; one that does not is settled.
//! Settled tops are then joined across their common cuts where they are nearly equally deep and the
//! way between them does not pass a neck. Beside a boss on a plate the climb into the boss begins
//! exactly where the boss begins: the ball of half the plate's thickness then first reaches a place
//! a quarter deeper.
//!
//! Crumbs that have more cut than surface of their own (the meeting of three ribs) are no section;
//! they go to the neighbour with which they share most.

use std::collections::{BTreeMap, BTreeSet};

use crate::cells::Cells;

/// The label of cells that hold no metal.
pub const OUTSIDE: u32 = u32::MAX;

/// A top is a shoulder when its own ball holds a place this much deeper, and two regions are alike
/// when neither is this much deeper than the other.
const SHOULDER: f64 = 1.25;

/// Regions shallower than so many cells are measured coarsely. Raised, a boss on a wall four cells
/// thick is no longer told from it; lowered, a wall of two cells falls to pieces.
const COARSE: f64 = 2.0;

/// A region with more cut than this share of its own surface is a crumb.
const MOST_CUT: f64 = 0.7;

/// Numbers the regions of a solid from nought, cell by cell; [`OUTSIDE`] where there is no metal.
pub fn regions(cells: &Cells, depth: &[f64]) -> Vec<u32> {
    let mut up = climb_to_neighbours(cells, depth);
    let tops: Vec<usize> = (0..up.len())
        .filter(|&cell| up[cell] as usize == cell && cells.is_solid(cell))
        .collect();
    for &top in &tops {
        let deepest = deepest_in_ball(cells, depth, top);
        if depth[deepest] > SHOULDER * depth[top] {
            up[top] = deepest as u32;
        }
    }
    let mut label = number_tops(cells, &up);
    join_alike(cells, depth, &mut label);
    join_crumbs(cells, &mut label);
    label
}

/// Calls with every cell whose middle lies within a radius of a cell's middle.
pub fn for_ball(cells: &Cells, middle: usize, radius_mm: f64, mut each: impl FnMut(usize)) {
    let reach = (radius_mm / cells.size_mm).floor() as i64;
    let limit = (radius_mm / cells.size_mm).powi(2);
    let at = cells.cell(middle).map(|c| c as i64);
    let ends = |axis: usize| {
        (
            (at[axis] - reach).max(0),
            (at[axis] + reach).min(cells.count[axis] as i64 - 1),
        )
    };
    let [(i0, i1), (j0, j1), (k0, k1)] = [ends(0), ends(1), ends(2)];
    for k in k0..=k1 {
        for j in j0..=j1 {
            let across = ((k - at[2]).pow(2) + (j - at[1]).pow(2)) as f64;
            for i in i0..=i1 {
                if across + ((i - at[0]).pow(2) as f64) <= limit {
                    each(cells.index([i as usize, j as usize, k as usize]));
                }
            }
        }
    }
}

/// The deepest of each cell's neighbours, or the cell itself.
fn climb_to_neighbours(cells: &Cells, depth: &[f64]) -> Vec<u32> {
    let around = neighbours(cells);
    (0..depth.len())
        .map(|cell| {
            if !cells.is_solid(cell) {
                return OUTSIDE;
            }
            let mut best = cell;
            for step in around {
                let next = (cell as i64 + step) as usize;
                if depth[next] > depth[best] + 1e-9 {
                    best = next;
                }
            }
            best as u32
        })
        .collect()
}

fn neighbours(cells: &Cells) -> [i64; 26] {
    let [sx, sy, sz] = cells.strides().map(|stride| stride as i64);
    let mut steps = [0; 26];
    let cube = (0..27).filter(|place| *place != 13);
    for (slot, place) in steps.iter_mut().zip(cube) {
        *slot = (place % 3 - 1) * sx + (place / 3 % 3 - 1) * sy + (place / 9 - 1) * sz;
    }
    steps
}

fn deepest_in_ball(cells: &Cells, depth: &[f64], middle: usize) -> usize {
    let mut best = middle;
    for_ball(cells, middle, depth[middle], |cell| {
        if depth[cell] > depth[best] + 1e-9 {
            best = cell;
        }
    });
    best
}

/// Follows every cell up to its top and numbers the tops in the order they are met.
fn number_tops(cells: &Cells, up: &[u32]) -> Vec<u32> {
    let mut label = vec![OUTSIDE; up.len()];
    let mut next = 0;
    let mut path = Vec::new();
    for cell in (0..up.len()).filter(|&cell| cells.is_solid(cell)) {
        let mut at = cell;
        while label[at] == OUTSIDE && up[at] as usize != at {
            path.push(at);
            at = up[at] as usize;
        }
        if label[at] == OUTSIDE {
            label[at] = next;
            next += 1;
        }
        for passed in path.drain(..) {
            label[passed] = label[at];
        }
    }
    label
}

/// Joins regions that are nearly equally deep and between which there is no neck.
fn join_alike(cells: &Cells, depth: &[f64], label: &mut [u32]) {
    let count = region_count(label);
    let mut deepest = vec![0f64; count];
    for (cell, region) in label
        .iter()
        .enumerate()
        .filter(|(_, region)| **region != OUTSIDE)
    {
        deepest[*region as usize] = deepest[*region as usize].max(depth[cell]);
    }
    let mut necks: BTreeMap<(u32, u32), f64> = BTreeMap::new();
    for_cuts(cells, label, |(cell, next), pair| {
        let neck = necks.entry(pair).or_default();
        *neck = neck.max(depth[cell].min(depth[next]));
    });
    let mut group: Vec<u32> = (0..count as u32).collect();
    // In a wall of few cells it is chance how near to its middle a cell lies.
    let chance = cells.size_mm / 2.0;
    for ((a, b), neck) in necks {
        let (shallow, deep) = {
            let (a, b) = (deepest[a as usize], deepest[b as usize]);
            (a.min(b), a.max(b))
        };
        let slack = if shallow < COARSE * cells.size_mm {
            chance
        } else {
            0.0
        };
        let alike = deep <= (SHOULDER * shallow).max(shallow + slack);
        if alike && neck * SHOULDER + slack >= shallow {
            join(&mut group, a, b);
        }
    }
    renumber(label, &mut group);
}

/// Gives every crumb to the neighbour with which it shares most, the smallest first.
fn join_crumbs(cells: &Cells, label: &mut [u32]) {
    let count = region_count(label);
    let mut surface = vec![0.0; count];
    for (cell, region) in label
        .iter()
        .enumerate()
        .filter(|(_, region)| **region != OUTSIDE)
    {
        surface[*region as usize] += cells.area_mm2[cell];
    }
    let mut shared: Vec<BTreeMap<u32, f64>> = vec![BTreeMap::new(); count];
    let face = cells.size_mm * cells.size_mm;
    for_cuts(cells, label, |_, (a, b)| {
        *shared[a as usize].entry(b).or_default() += face;
        *shared[b as usize].entry(a).or_default() += face;
    });
    let mut group: Vec<u32> = (0..count as u32).collect();
    let mut crumbs = Crumbs::of(surface, shared);
    while let Some(crumb) = crumbs.smallest.pop_first() {
        match crumbs.join_to_neighbour(crumb.region) {
            Some(host) => group[crumb.region] = host as u32,
            None => break,
        }
    }
    renumber(label, &mut group);
}

/// Regions with their surface and what they share, and those of them that are crumbs.
struct Crumbs {
    surface: Vec<f64>,
    shared: Vec<BTreeMap<u32, f64>>,
    smallest: BTreeSet<Crumb>,
}

/// A crumb; the one of least surface comes first, of equal ones the first met.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Crumb {
    /// The bits of a number that is not negative stand in its own order.
    surface: u64,
    region: usize,
}

impl Crumbs {
    fn of(surface: Vec<f64>, shared: Vec<BTreeMap<u32, f64>>) -> Crumbs {
        let mut crumbs = Crumbs {
            surface,
            shared,
            smallest: BTreeSet::new(),
        };
        (0..crumbs.surface.len()).for_each(|region| crumbs.enter(region));
        crumbs
    }

    fn enter(&mut self, region: usize) {
        let cut: f64 = self.shared[region].values().sum();
        if cut > MOST_CUT * self.surface[region] {
            self.smallest.insert(self.crumb(region));
        }
    }

    fn crumb(&self, region: usize) -> Crumb {
        Crumb {
            surface: self.surface[region].to_bits(),
            region,
        }
    }

    /// Gives a crumb to the neighbour with which it shares most. What the others share with the
    /// crumb they share with that neighbour from then on, so that no other region changes.
    fn join_to_neighbour(&mut self, crumb: usize) -> Option<usize> {
        let most = |(a, x): &(&u32, &f64), (b, y): &(&u32, &f64)| x.total_cmp(y).then(b.cmp(a));
        let host = self.shared[crumb].iter().max_by(most)?;
        let host = *host.0 as usize;
        self.smallest.remove(&self.crumb(host));
        self.surface[host] += self.surface[crumb];
        for (other, cut) in std::mem::take(&mut self.shared[crumb]) {
            self.shared[other as usize].remove(&(crumb as u32));
            if other as usize != host {
                *self.shared[host].entry(other).or_default() += cut;
                *self.shared[other as usize].entry(host as u32).or_default() += cut;
            }
        }
        self.enter(host);
        Some(host)
    }
}

/// Calls with every pair of touching cells of different regions, the smaller region first.
fn for_cuts(cells: &Cells, label: &[u32], mut each: impl FnMut((usize, usize), (u32, u32))) {
    let strides = cells.strides();
    for cell in (0..label.len()).filter(|&cell| label[cell] != OUTSIDE) {
        for next in strides.map(|stride| cell + stride) {
            let (a, b) = (label[cell], label[next]);
            if b != OUTSIDE && a != b {
                each((cell, next), (a.min(b), a.max(b)));
            }
        }
    }
}

fn region_count(label: &[u32]) -> usize {
    label
        .iter()
        .filter(|l| **l != OUTSIDE)
        .max()
        .map_or(0, |most| *most as usize + 1)
}

fn join(group: &mut [u32], a: u32, b: u32) {
    let (a, b) = (root(group, a), root(group, b));
    group[a.max(b) as usize] = a.min(b);
}

fn root(group: &mut [u32], region: u32) -> u32 {
    let mut at = region;
    while group[at as usize] != at {
        let above = group[group[at as usize] as usize];
        group[at as usize] = above;
        at = above;
    }
    at
}

fn renumber(label: &mut [u32], group: &mut [u32]) {
    let mut number = vec![OUTSIDE; group.len()];
    let mut next = 0;
    for region in label.iter_mut().filter(|region| **region != OUTSIDE) {
        let root = root(group, *region) as usize;
        if number[root] == OUTSIDE {
            number[root] = next;
            next += 1;
        }
        *region = number[root];
    }
}
