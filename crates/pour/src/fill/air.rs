//! Where air is shut in while metal rises: so, where vents have to go.
//!
//! The hollow is filled up backwards: last places first. A place that no later one touches is a
//! high point of the filling; the air of it and of what joins it is shut in when the last way out
//! is covered with metal.

use measure::length::Length;
use measure::matter::Density;
use mould::gating::trapped_air::{ATMOSPHERE, rise_into_pocket};

use super::hollow::{Hollow, NONE};
use crate::cells::{MouldCells, Stuff};

/// Ways out for air besides open air above the hollow, as in feeders and vents that are cells.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WaysOut {
    /// Whether the sand of the mould lets it through fast enough.
    pub through_sand: bool,
    /// Whether the cores do.
    pub through_cores: bool,
    /// Where vents meet the hollow, mm in the mould's coordinates.
    pub vents_mm: Vec<[f64; 3]>,
}

/// A highest place of shut-in air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct High {
    /// Where, mm in the mould's coordinates.
    pub place_mm: [f64; 3],
    /// Air that gathers there before it joins that of a higher place, mm³.
    pub volume_mm3: f64,
}

/// Air without a way out.
#[derive(Clone, Debug, PartialEq)]
pub struct Pocket {
    /// How much is shut in, mm³.
    pub volume_mm3: f64,
    /// How much of that stays a hole, mm³, where nothing lets it out: what the head of the metal at
    /// rest does not squeeze away, the pocket taken as upright.
    pub hole_mm3: f64,
    /// When its last way out was covered, s; none where it never had one.
    pub closed_at_s: Option<f64>,
    /// Its highest places, the one with most air first: a vent at each lets it out.
    pub highs: Vec<High>,
}

/// Pockets and highs smaller than this, in cells, are steps of the cells and not of the casting.
const LEAST_CELLS: f64 = 8.0;

/// Air that hangs together at a time, looked at backwards.
#[derive(Clone, Debug)]
struct Air {
    has_way_out: bool,
    volume_m3: f64,
    /// The flat that fills last.
    high: u32,
    /// Other highs that have joined, with their air.
    others: Vec<(u32, f64)>,
    /// Its lowest layer.
    lowest: usize,
}

/// The metal over the air when the mould is full.
#[derive(Clone, Copy, Debug)]
pub(super) struct Over {
    /// Its level, m.
    pub(super) level_m: f64,
    /// Floor of the lowest layer of cells, m.
    pub(super) floor_m: f64,
    /// Its density, kg/m³.
    pub(super) kg_m3: f64,
}

impl Over {
    /// Part of a sealed pocket between two layers that the metal does not come to fill.
    fn stays(&self, layer_m: f64, [lowest, highest]: [usize; 2]) -> f64 {
        let mouth_m = self.floor_m + layer_m * lowest as f64;
        let pocket = Length::from_m(layer_m * (highest + 1 - lowest) as f64);
        let head = Length::from_m((self.level_m - mouth_m).max(0.0));
        let liquid = Density::from_kg_per_m3(self.kg_m3);
        let rise = rise_into_pocket(pocket, head, liquid, ATMOSPHERE);
        1.0 - rise / pocket
    }
}

/// Pockets of air, the largest first; `times_s` tells for each flat when metal comes to its middle
/// and to its ceiling, without end where it never does.
pub(super) fn pockets(
    cells: &MouldCells,
    hollow: &Hollow,
    times_s: &[[f64; 2]],
    ways: &WaysOut,
    over: Over,
) -> Vec<Pocket> {
    let lets_out = lets_out(cells, hollow, ways);
    let beside = beside(hollow);
    let mut order: Vec<u32> = (0..hollow.flats.len() as u32).collect();
    let [middle_s, ceiling_s] = [0, 1].map(|at| move |flat: u32| times_s[flat as usize][at]);
    order.sort_by(|a, b| middle_s(*b).total_cmp(&middle_s(*a)).then(b.cmp(a)));
    let mut shut = Shut {
        over: vec![NONE; hollow.flats.len()],
        air: vec![None; hollow.flats.len()],
        found: Vec::new(),
        least_m3: LEAST_CELLS * (cells.size_mm * 1e-3).powi(3),
    };
    for flat in order {
        let mut joins = beside[flat as usize].clone();
        joins.retain(|next| shut.over[*next as usize] != NONE);
        joins.iter_mut().for_each(|next| *next = shut.root(*next));
        joins.sort_unstable();
        joins.dedup();
        let own = Air {
            has_way_out: lets_out[flat as usize],
            volume_m3: hollow.flats[flat as usize].volume_m3,
            high: flat,
            others: Vec::new(),
            lowest: hollow.flats[flat as usize].layer,
        };
        shut.add(flat, own, &joins, ceiling_s(flat));
    }
    shut.told(cells, hollow, over)
}

/// Air joined so far.
struct Shut {
    over: Vec<u32>,
    air: Vec<Option<Air>>,
    found: Vec<(Air, Option<f64>)>,
    least_m3: f64,
}

impl Shut {
    fn root(&mut self, flat: u32) -> u32 {
        let mut at = flat;
        while self.over[at as usize] != at {
            let over = self.over[self.over[at as usize] as usize];
            self.over[at as usize] = over;
            at = over;
        }
        at
    }

    fn add(&mut self, flat: u32, own: Air, joins: &[u32], at_s: f64) {
        let parts: Vec<Air> = joins
            .iter()
            .filter_map(|root| self.air[*root as usize].take())
            .collect();
        let has_way_out = own.has_way_out || parts.iter().any(|air| air.has_way_out);
        let mut whole = Air {
            has_way_out,
            volume_m3: own.volume_m3,
            high: own.high,
            others: Vec::new(),
            lowest: own.lowest,
        };
        let mut most_m3 = 0.0;
        for air in parts {
            whole.volume_m3 += air.volume_m3;
            if has_way_out && !air.has_way_out {
                self.found.push((air, Some(at_s)));
                continue;
            }
            whole.lowest = whole.lowest.min(air.lowest);
            whole.others.extend(air.others);
            if air.volume_m3 > most_m3 {
                if most_m3 >= self.least_m3 {
                    whole.others.push((whole.high, most_m3));
                }
                (whole.high, most_m3) = (air.high, air.volume_m3);
            } else if air.volume_m3 >= self.least_m3 {
                whole.others.push((air.high, air.volume_m3));
            }
        }
        for join in joins {
            self.over[*join as usize] = flat;
        }
        self.over[flat as usize] = flat;
        self.air[flat as usize] = Some(whole);
    }

    fn told(mut self, cells: &MouldCells, hollow: &Hollow, over: Over) -> Vec<Pocket> {
        let shut = self.air.iter_mut().filter_map(Option::take);
        let never = shut.filter(|air| !air.has_way_out).map(|air| (air, None));
        self.found.extend(never.collect::<Vec<_>>());
        let least_m3 = self.least_m3;
        let mut pockets: Vec<Pocket> = self
            .found
            .into_iter()
            .filter(|(air, _)| air.volume_m3 >= least_m3)
            .map(|(air, closed_at_s)| {
                let mut highs = vec![(air.high, air.volume_m3)];
                highs.extend(air.others);
                highs.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
                let high = |(flat, volume_m3): (u32, f64)| High {
                    place_mm: hollow.middle_mm(cells, flat),
                    volume_mm3: volume_m3 * 1e9,
                };
                let highest = hollow.flats[air.high as usize].layer;
                let layers = [air.lowest, highest.max(air.lowest)];
                Pocket {
                    volume_mm3: air.volume_m3 * 1e9,
                    hole_mm3: air.volume_m3 * 1e9 * over.stays(cells.size_mm * 1e-3, layers),
                    closed_at_s,
                    highs: highs.into_iter().map(high).collect(),
                }
            })
            .collect();
        pockets.sort_by(|a, b| b.volume_mm3.total_cmp(&a.volume_mm3));
        pockets
    }
}

/// Which flats let air out themselves.
fn lets_out(cells: &MouldCells, hollow: &Hollow, ways: &WaysOut) -> Vec<bool> {
    let lets = |stuff: Stuff| match stuff {
        Stuff::Air => true,
        Stuff::Chill(_) => false,
        Stuff::Sand => ways.through_sand,
        Stuff::Core => ways.through_cores,
        Stuff::Metal => false,
    };
    let mut found = vec![false; hollow.flats.len()];
    for (cell, place) in hollow.cells.iter().enumerate() {
        let flat = hollow.flat[cell] as usize;
        let [upper, lower] = [hollow.above(cell as u32), hollow.below(cell as u32)];
        let beside = hollow.beside(cell as u32);
        let is_within = upper != NONE && lower != NONE && !beside.contains(&NONE);
        if found[flat] || is_within {
            continue;
        }
        let mut next = cells.neighbours(*place as usize);
        found[flat] = next.any(|next| lets(cells.stuff[next]));
    }
    for vent_mm in &ways.vents_mm {
        if let Ok(cell) = super::nearest(cells, hollow, *vent_mm) {
            found[hollow.flat[cell as usize] as usize] = true;
        }
    }
    found
}

/// The flats above and below each flat.
fn beside(hollow: &Hollow) -> Vec<Vec<u32>> {
    let mut beside = vec![Vec::new(); hollow.flats.len()];
    for [upper, lower] in &hollow.links {
        beside[*upper as usize].push(*lower);
        beside[*lower as usize].push(*upper);
    }
    beside
}
