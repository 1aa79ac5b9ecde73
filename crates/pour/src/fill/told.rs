//! What was seen of a filling, put together.

use super::air::{Over, pockets};
use super::cooling::{Metal, Sand};
use super::fact::Fact;
use super::gates::{Landing, speeds};
use super::heat::{Arrived, Following, came};
use super::levels::Reading;
use super::meetings::meetings;
use super::misruns::{misruns, thinnest};
use super::network::Node;
use super::network::flow::Flows;
use super::network::part_full::part_full;
use super::priming::{Primed, primed};
use super::{Gating, Glance};
use crate::cells::MouldCells;

/// All that there is to tell.
pub(super) struct Seen<'a> {
    pub(super) cells: &'a MouldCells,
    pub(super) gating: &'a Gating,
    pub(super) metal: &'a Metal,
    pub(super) sand: &'a Sand,
    pub(super) following: &'a Following<'a>,
    pub(super) arrived: &'a Arrived,
    /// What runs while all gates run free.
    pub(super) flows: &'a Flows,
}

/// Puts it together.
pub(super) fn told(seen: &Seen<'_>) -> Glance {
    let levels = seen.following.levels;
    let hollow = seen.following.ground.hollow;
    let (primed, starts_s) = seen.primed();
    let mut glance = Glance {
        arrival_s: vec![f32::INFINITY; seen.cells.stuff.len()],
        arrival_c: vec![seen.sand.celsius as f32; seen.cells.stuff.len()],
        arrival_solid: vec![0.0; seen.cells.stuff.len()],
        readings: levels
            .readings
            .iter()
            .map(|reading| later(reading, starts_s))
            .collect(),
        gates: Vec::new(),
        facts: Vec::new(),
        starts_s,
        ends_s: starts_s + levels.ends_s,
        poured_m3: levels.poured_m3,
        lies_m3: levels.lies_m3,
        hollow_m3: hollow.flats.iter().map(|flat| flat.volume_m3).sum(),
    };
    glance.gates = speeds(&glance.readings, &seen.landings(), &seen.metal.kind);
    for primed in primed {
        seen.put(&mut glance, primed);
    }
    let flats = 0..hollow.flats.len() as u32;
    let times_s: Vec<[f64; 2]> = flats
        .map(|flat| {
            let times_s = seen.following.times_s(flat);
            times_s.map_or([f64::INFINITY; 2], |[_, middle_s, ceiling_s]| {
                [middle_s, ceiling_s].map(|time_s| starts_s + time_s)
            })
        })
        .collect();
    for (cell, place) in came(hollow, seen.arrived) {
        let primed = Primed {
            place,
            at_s: times_s[hollow.flat[cell] as usize][0],
            j_m3: f64::from(seen.arrived.j_m3[cell]),
        };
        seen.put(&mut glance, primed);
    }
    glance.facts = seen.facts(&times_s, starts_s);
    glance
}

fn later(reading: &Reading, by_s: f64) -> Reading {
    Reading {
        at_s: reading.at_s + by_s,
        ..reading.clone()
    }
}

impl Seen<'_> {
    fn put(&self, glance: &mut Glance, came: Primed) {
        let state = self.metal.table.at(came.j_m3);
        glance.arrival_s[came.place] = came.at_s as f32;
        glance.arrival_c[came.place] = state.celsius as f32;
        glance.arrival_solid[came.place] = state.solid as f32;
    }

    fn primed(&self) -> (Vec<Primed>, f64) {
        if self.gating.running.is_empty() {
            return (Vec::new(), 0.0);
        }
        let branches = self.following.ground.network.branches.iter();
        let leaving = branches
            .zip(&self.flows.branches)
            .filter(|(branch, _)| branch.from == Node::Basin);
        let flow_m3_s: f64 = leaving.map(|(_, flow)| flow).sum();
        let cooling = &self.following.cooling;
        primed(
            self.cells,
            &self.gating.running,
            flow_m3_s,
            cooling,
            self.following.thick_mm,
        )
    }

    fn landings(&self) -> Vec<Landing> {
        let ground = self.following.ground;
        let gates = ground.network.gates().into_iter().zip(ground.entries);
        gates
            .zip(&ground.network.outlets_m)
            .map(|((gate, entry), height_m)| {
                let last = entry.fall.path.last().copied().unwrap_or(entry.cell);
                let layer = ground.hollow.flats[ground.hollow.flat[last as usize] as usize].layer;
                Landing {
                    area_m2: ground.network.branches[gate].area_m2,
                    height_m: *height_m,
                    floor_m: ground.floor_m + ground.layer_m * layer as f64,
                    least_m: 0.5 * ground.layer_m,
                }
            })
            .collect()
    }

    fn facts(&self, times_s: &[[f64; 2]], starts_s: f64) -> Vec<Fact> {
        let (cells, following, arrived) = (self.cells, self.following, self.arrived);
        let ground = following.ground;
        let mut facts = self.unfilled();
        let level_m = ground.network.level_m;
        let thin = part_full(ground.network, level_m, self.flows);
        facts.extend(thin.into_iter().map(Fact::PartFull));
        let over = Over {
            level_m,
            floor_m: ground.floor_m,
            kg_m3: self.metal.kg_m3,
        };
        let shut_in = pockets(cells, ground.hollow, times_s, &self.gating.air, over);
        facts.extend(shut_in.into_iter().map(Fact::ShutIn));
        let meetings = meetings(cells, following, arrived, self.metal);
        facts.extend(meetings.into_iter().map(|mut meeting| {
            meeting.at_s += starts_s;
            Fact::Meeting(meeting)
        }));
        let misruns = misruns(cells, following, arrived, self.metal);
        facts.extend(misruns.into_iter().map(|mut misrun| {
            misrun.at_s += starts_s;
            Fact::Misrun(misrun)
        }));
        let thinnest = thinnest(cells, following, arrived, self.metal, self.sand);
        facts.extend(thinnest.map(Fact::LeastWall));
        facts
    }

    /// Hollow that stays empty: what no gate leads to, and what lies above the basin.
    fn unfilled(&self) -> Vec<Fact> {
        let hollow = self.following.ground.hollow;
        let level_mm = self.following.ground.network.level_m * 1e3;
        let mut empty = [(0.0, None), (0.0, None)];
        for (cell, place) in hollow.cells.iter().enumerate() {
            if self.arrived.age_s[cell].is_nan() {
                let middle_mm = self.cells.middle_mm(*place as usize);
                let above = middle_mm[2] + 0.5 * self.cells.size_mm >= level_mm;
                let (volume_mm3, lowest) = &mut empty[usize::from(above)];
                *volume_mm3 += self.cells.metal_mm3(*place as usize);
                lowest.get_or_insert(middle_mm);
            }
        }
        let told = |(above, (volume_mm3, lowest)): (usize, (f64, Option<[f64; 3]>))| {
            lowest.map(|place_mm| Fact::Unfilled {
                volume_mm3,
                place_mm,
                above_basin: above == 1,
            })
        };
        empty.into_iter().enumerate().filter_map(told).collect()
    }
}
