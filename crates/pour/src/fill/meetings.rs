//! Where fronts meet: around cores, over saddles, between gates.
//!
//! Fronts meet within a layer where metal spreads over bare floor or ceiling from more than one
//! side: from flats below that were parted, or from streams that land apart.

use std::collections::VecDeque;

use super::cooling::Metal;
use super::fact::Meeting;
use super::heat::{Arrived, Following};
use super::hollow::NONE;
use crate::cells::MouldCells;

/// Flats below smaller than this, in cells, are steps of the cells and bring no front of their own.
const LEAST_CELLS: usize = 8;

/// A cell of a seam.
#[derive(Clone, Copy, Debug)]
struct Seam {
    place: u32,
    at_s: f64,
    j_m3: f32,
}

/// Whose front came to a cell, and with what heat.
#[derive(Clone, Copy)]
struct Front {
    of: u32,
    j_m3: f32,
}

/// All meetings, the coldest first.
pub(super) fn meetings(
    cells: &MouldCells,
    following: &Following<'_>,
    arrived: &Arrived,
    metal: &Metal,
) -> Vec<Meeting> {
    let hollow = following.ground.hollow;
    let streams = following.streams();
    let mut fronts = vec![None; hollow.cells.len()];
    let mut seam: Vec<Seam> = Vec::new();
    let mut link = 0;
    for flat in 0..hollow.flats.len() as u32 {
        let from = link;
        while hollow
            .links
            .get(link)
            .is_some_and(|[upper, _]| *upper == flat)
        {
            link += 1;
        }
        let below: Vec<u32> = hollow.links[from..link]
            .iter()
            .map(|[_, lower]| *lower)
            .filter(|lower| hollow.cells_of(*lower).len() >= LEAST_CELLS)
            .collect();
        let first = streams.partition_point(|(at, _, _)| *at < flat);
        let landing = streams[first..].iter().take_while(|(at, _, _)| *at == flat);
        let landing: Vec<(usize, u32)> = landing
            .filter(|(_, stream, cell)| {
                hollow.below(*cell) == NONE && following.runs_into(*stream, flat)
            })
            .map(|(_, stream, cell)| (*stream, *cell))
            .collect();
        let streams_here = landing.first().zip(landing.last());
        let parted = streams_here.is_some_and(|(first, last)| first.0 != last.0);
        let joins = below.len() + usize::from(!landing.is_empty());
        if let (true, Some([_, at_s, _])) = (joins > 1 || parted, following.times_s(flat)) {
            let mut meet = Meet {
                following,
                arrived,
                fronts: &mut fronts,
                seam: &mut seam,
            };
            meet.in_flat(flat, &below, &landing, at_s);
        }
    }
    gathered(cells, seam, metal)
}

/// One flat with its fronts.
struct Meet<'a, 'b> {
    following: &'a Following<'a>,
    arrived: &'a Arrived,
    fronts: &'b mut [Option<Front>],
    seam: &'b mut Vec<Seam>,
}

impl Meet<'_, '_> {
    fn in_flat(&mut self, flat: u32, below: &[u32], landing: &[(usize, u32)], at_s: f64) {
        let hollow = self.following.ground.hollow;
        let mut spread = VecDeque::new();
        for cell in hollow.cells_of(flat) {
            let under = hollow.below(*cell);
            if under != NONE && below.contains(&hollow.flat[under as usize]) {
                self.fronts[*cell as usize] = Some(Front {
                    of: hollow.flat[under as usize],
                    j_m3: self.arrived.j_m3[under as usize],
                });
                spread.push_back(*cell);
            }
        }
        for (stream, cell) in landing {
            if self.fronts[*cell as usize].is_none() {
                self.fronts[*cell as usize] = Some(Front {
                    of: (hollow.flats.len() + stream) as u32,
                    j_m3: self.arrived.j_m3[*cell as usize],
                });
                spread.push_back(*cell);
            }
        }
        while let Some(cell) = spread.pop_front() {
            let Some(front) = self.fronts[cell as usize] else {
                continue;
            };
            for beside in hollow.beside(cell).into_iter().filter(|cell| *cell != NONE) {
                match self.fronts[beside as usize] {
                    None => {
                        self.fronts[beside as usize] = Some(front);
                        spread.push_back(beside);
                    }
                    Some(other) if other.of != front.of => {
                        let own = self.arrived.j_m3[cell as usize];
                        self.seam.push(Seam {
                            place: hollow.cells[cell as usize],
                            at_s,
                            j_m3: own.min(front.j_m3).min(other.j_m3),
                        });
                    }
                    Some(_) => {}
                }
            }
        }
    }
}

/// Cells of seams that touch, as meetings.
fn gathered(cells: &MouldCells, mut seam: Vec<Seam>, metal: &Metal) -> Vec<Meeting> {
    seam.sort_by(|a, b| a.place.cmp(&b.place).then(a.j_m3.total_cmp(&b.j_m3)));
    seam.dedup_by_key(|cell| cell.place);
    let mut of = vec![usize::MAX; seam.len()];
    let mut meetings = Vec::new();
    for first in 0..seam.len() {
        if of[first] != usize::MAX {
            continue;
        }
        let mut touching = vec![first];
        of[first] = first;
        let mut next = 0;
        while next < touching.len() {
            let here = cells.cell(seam[touching[next]].place as usize);
            for place in around(cells, here) {
                let found = seam.binary_search_by_key(&place, |cell| cell.place);
                if let Ok(other) = found.map_err(|_| ()).and_then(|other| match of[other] {
                    usize::MAX => Ok(other),
                    _ => Err(()),
                }) {
                    of[other] = first;
                    touching.push(other);
                }
            }
            next += 1;
        }
        touching.sort_unstable();
        let of_seam: Vec<Seam> = touching.into_iter().map(|cell| seam[cell]).collect();
        meetings.push(meeting(cells, &of_seam, metal));
    }
    meetings.sort_by(|a, b| {
        a.coldest_c
            .total_cmp(&b.coldest_c)
            .then(b.solid.total_cmp(&a.solid))
    });
    meetings
}

fn meeting(cells: &MouldCells, seam: &[Seam], metal: &Metal) -> Meeting {
    let coldest = seam
        .iter()
        .map(|cell| cell.j_m3)
        .fold(f32::INFINITY, f32::min);
    let state = metal.table.at(f64::from(coldest));
    let at = |solid| {
        metal
            .table
            .heat_at_solid(solid)
            .map(|heat| metal.table.at(heat).celsius)
    };
    let deficit = match (at(0.0), at(1.0)) {
        (Some(liquidus), Some(solidus)) if liquidus > solidus => {
            ((liquidus - state.celsius) / (liquidus - solidus)).clamp(0.0, 1.0)
        }
        // An arrest has no range: cold as far as it is solid.
        _ => state.solid,
    };
    let mut bounds_mm = [[f64::INFINITY; 3], [f64::NEG_INFINITY; 3]];
    for cell in seam {
        let middle = cells.middle_mm(cell.place as usize);
        for axis in 0..3 {
            bounds_mm[0][axis] = bounds_mm[0][axis].min(middle[axis] - 0.5 * cells.size_mm);
            bounds_mm[1][axis] = bounds_mm[1][axis].max(middle[axis] + 0.5 * cells.size_mm);
        }
    }
    Meeting {
        place_mm: super::hollow::middle_of(cells, seam.iter().map(|cell| cell.place)),
        bounds_mm,
        at_s: seam
            .iter()
            .map(|cell| cell.at_s)
            .fold(f64::INFINITY, f64::min),
        coldest_c: state.celsius,
        solid: state.solid,
        deficit,
    }
}

/// Places of the box that touch a cell, be it by a corner.
fn around(cells: &MouldCells, at: [usize; 3]) -> Vec<u32> {
    let range = |axis: usize| at[axis].saturating_sub(1)..(at[axis] + 2).min(cells.count[axis]);
    let mut places = Vec::with_capacity(27);
    for k in range(2) {
        for j in range(1) {
            for i in range(0) {
                places.push(cells.index([i, j, k]) as u32);
            }
        }
    }
    places
}
