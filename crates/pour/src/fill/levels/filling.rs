//! A hollow while it fills, step by step.

use super::carrying::{meet, run_on};
use super::course::{Course, Feed};
use super::receiving::Spill;
use super::{Ground, Levels, Reading};
use crate::fill::falling::Spread;
use crate::fill::network::flow::{resistances, steady};
use crate::fill::network::step::{Held, Rise, State, Way};
use crate::fill::network::{NetworkError, Node};

/// Farthest that a level moves between two looks at the running system, m.
const RISE_M: f64 = 5e-3;

/// The same as a part of the head that is left: the flow goes by its root.
const OF_THE_HEAD: f64 = 0.125;

/// How near to the level in the basin metal stops, m: the last of it would come at no flow at all.
pub(super) const STOPS_M: f64 = 1e-4;

/// Flow, as a part of the first, at which the metal counts as standing.
const STANDING: f64 = 1e-6;

/// Part of the hollow that may run in while flows are taken as they are.
const SPECK: f64 = 1e-6;

/// Steps in the time that metal takes to come up to speed, and such times until its inertia no
/// longer tells.
const SPEEDING_STEPS: f64 = 25.0;
const SPEEDING_TIMES: f64 = 12.0;

/// A hollow while it fills.
pub(super) struct Filling<'a, 'b> {
    pub(super) ground: &'a Ground<'a>,
    pub(super) spread: &'b mut Spread,
    pub(super) course: Vec<Course>,
    pub(super) spilled: Vec<Option<usize>>,
    pub(super) spills: Vec<Spill>,
    feeds: Vec<Feed>,
    readings: Vec<Reading>,
    flows: Vec<f64>,
    resistances: Vec<f64>,
    pub(super) basin_m: f64,
    time_s: f64,
    poured_m3: f64,
    whole_m3: f64,
    first_m3_s: f64,
    /// Time that metal takes to come up to speed while its inertia tells.
    speeding_s: Option<f64>,
    speeding_step_s: f64,
    open: usize,
}

/// Where the metal of each gate goes during one step, pools by their places in a short list.
pub(super) struct Going {
    pub(super) pools: Vec<usize>,
    pub(super) ways: Vec<Option<Way>>,
    pub(super) spills: Vec<Option<usize>>,
}

impl<'a, 'b> Filling<'a, 'b> {
    /// Empty.
    pub(super) fn of(ground: &'a Ground<'a>, spread: &'b mut Spread) -> Filling<'a, 'b> {
        let course: Vec<Course> = ground.pools.all.iter().map(Course::of).collect();
        let channels = ground.network.branches.len();
        Filling {
            whole_m3: course.iter().map(Course::top_m3).sum(),
            spilled: vec![None; course.len()],
            course,
            ground,
            spread,
            spills: Vec::new(),
            feeds: Vec::new(),
            readings: Vec::new(),
            flows: vec![0.0; channels],
            resistances: Vec::new(),
            basin_m: ground.network.level_m,
            time_s: 0.0,
            poured_m3: 0.0,
            first_m3_s: 0.0,
            speeding_s: None,
            speeding_step_s: 0.0,
            open: 0,
        }
    }

    /// On to the next change; whether anything ran.
    pub(super) fn step(&mut self) -> Result<bool, NetworkError> {
        let going = self.going();
        if going.ways.iter().all(Option::is_none) {
            return Ok(false);
        }
        self.look_at_inertia(&going)?;
        let (held, state) = self.held(&going)?;
        let into = held.into_pools(&state.flows);
        let all: f64 = into.iter().sum();
        if !held.inertia && all <= STANDING * self.first_m3_s {
            return Ok(false);
        }
        let rises = |way: &Way| way.under.is_some_and(|under| into[under] > 0.0);
        let answers = held.ways.iter().flatten().any(rises);
        let is_tied = held.inertia || answers || held.network.sinking_m2.is_some();
        let targets = |pool: &usize| self.target(*pool, is_tied);
        let targets: Vec<f64> = going.pools.iter().map(targets).collect();
        let Some(length_s) = self.length_s(&going, &targets, &into) else {
            return Ok(false);
        };
        self.mark_beginnings(&going, &into, held.inertia);
        self.read(&going, &state.flows);
        let is_speck = length_s * all <= SPECK * self.whole_m3;
        let frozen = match self.speeding_s {
            Some(speeding_s) => is_speck && length_s <= SPECK * speeding_s,
            None => is_speck || !is_tied,
        };
        let (ended, took_s) = match frozen {
            true => (run_on(&held, &state, &into, length_s), length_s),
            false => meet(&held, &state, length_s, &self.left(&going, &targets))?,
        };
        let into = [into, held.into_pools(&ended.flows)];
        self.arrive(&going, &targets, &ended, took_s, &into);
        self.read(&going, &ended.flows);
        Ok(true)
    }

    /// What each pool still takes before its next change, m³.
    fn left(&self, going: &Going, targets: &[f64]) -> Vec<f64> {
        let pools = going.pools.iter().zip(targets);
        pools
            .map(|(pool, target)| target - self.course[*pool].lies_m3)
            .collect()
    }

    /// How long flows may run until the first pool has its next change, or the running system; none
    /// where nothing ever changes.
    fn length_s(&self, going: &Going, targets: &[f64], into: &[f64]) -> Option<f64> {
        let left = self.left(going, targets);
        let fed = left.iter().zip(into).filter(|(_, into)| **into > 0.0);
        let mut length_s = fed
            .map(|(left, into)| left / into)
            .fold(f64::INFINITY, f64::min);
        if self.speeding_s.is_some() {
            length_s = length_s.min(self.speeding_step_s);
        }
        if let Some(area_m2) = self.ground.network.sinking_m2 {
            let all: f64 = into.iter().sum();
            length_s = length_s.min(RISE_M * area_m2 / all.max(f64::MIN_POSITIVE));
        }
        length_s.is_finite().then_some(length_s)
    }

    /// Takes what a step has brought.
    fn arrive(
        &mut self,
        going: &Going,
        targets: &[f64],
        ended: &State,
        took_s: f64,
        into: &[Vec<f64>; 2],
    ) {
        let times_s = [self.time_s, self.time_s + took_s];
        for (at, pool) in going.pools.iter().enumerate() {
            let course = &mut self.course[*pool];
            let near = 1e-9 * course.top_m3() + 1e-12 * self.whole_m3;
            let mut lies_m3 = course.lies_m3 + ended.pools_m3[at];
            if lies_m3 > targets[at] - near {
                lies_m3 = targets[at];
            }
            course.rise_to(lies_m3, times_s, [into[0][at], into[1][at]]);
        }
        self.flows.clone_from(&ended.flows);
        self.basin_m = ended.basin_m;
        self.poured_m3 += ended.poured_m3;
        self.time_s = times_s[1];
    }

    /// Inertia tells at the start from rest, until the metal runs or a gate stops.
    fn look_at_inertia(&mut self, going: &Going) -> Result<(), NetworkError> {
        let open = going.ways.iter().flatten().count();
        if self.resistances.is_empty() {
            let network = self.ground.network;
            let heads = network.outlets_m.iter().zip(&going.ways);
            let heads: Vec<_> = heads.map(|(head, way)| way.map(|_| *head)).collect();
            let steady = steady(network, &heads)?;
            self.resistances = resistances(network, &steady.branches);
            let leaving = network.branches.iter().zip(&steady.branches);
            let leaving = leaving.filter(|(branch, _)| branch.from == Node::Basin);
            self.first_m3_s = leaving.map(|(_, flow)| flow).sum();
            match self.ground.from_rest {
                true => self.speeding_s = Some(network.speeding_s(&steady.branches)),
                false => self.flows = steady.branches,
            }
            self.speeding_step_s = self.speeding_s.unwrap_or(0.0) / SPEEDING_STEPS;
        } else if let Some(speeding_s) = self.speeding_s {
            if self.time_s > 4.0 * speeding_s {
                self.speeding_step_s *= 1.2;
            }
            let is_over = self.time_s > SPEEDING_TIMES * speeding_s || open < self.open;
            if is_over || speeding_s <= 0.0 {
                self.speeding_s = None;
            }
        }
        self.open = open;
        Ok(())
    }

    fn held(&mut self, going: &Going) -> Result<(Held<'a>, State), NetworkError> {
        let rise = |pool: &usize| {
            let course = &self.course[*pool];
            Rise {
                level_m: self.level_m(*pool),
                per_m3: self.ground.layer_m / course.layer_m3(),
            }
        };
        let mut held = Held {
            network: self.ground.network,
            resistances: self.resistances.clone(),
            ways: going.ways.clone(),
            rises: going.pools.iter().map(rise).collect(),
            inertia: self.speeding_s.is_some_and(|s| s > 0.0),
        };
        let mut state = State {
            flows: self.flows.clone(),
            basin_m: self.basin_m,
            pools_m3: vec![0.0; going.pools.len()],
            poured_m3: 0.0,
        };
        if !held.inertia {
            state.flows = held.at_once(&state)?.branches;
            self.resistances = resistances(held.network, &state.flows);
            held.resistances.clone_from(&self.resistances);
        }
        Ok((held, state))
    }

    /// Metal in a pool at its next change, m³: brimful, a gate drowned, the metal at a stand; and
    /// where flows answer to it, another shape or some millimetres.
    fn target(&self, pool: usize, is_tied: bool) -> f64 {
        let course = &self.course[pool];
        let (level_m, layer_m) = (self.level_m(pool), self.ground.layer_m);
        let bottom_m = self.bottom_m(pool);
        let mut target = course.top_m3();
        let mut stop_at = |height_m: f64| {
            let lies_m3 = course.lies_at((height_m - bottom_m) / layer_m);
            if height_m > level_m + 1e-9 && lies_m3 > course.lies_m3 {
                target = target.min(lies_m3);
            }
        };
        let pools = self.ground.pools;
        let heights = self.ground.network.outlets_m.iter();
        for (entry, height_m) in self.ground.entries.iter().zip(heights) {
            let flat = self.ground.hollow.flat[entry.cell as usize];
            if pools.of_flat[flat as usize] as usize == pool {
                stop_at(*height_m);
            }
        }
        stop_at(self.basin_m - STOPS_M);
        if is_tied {
            let head = (self.basin_m - level_m).max(2.0 * STOPS_M);
            let farthest_m = RISE_M.min(OF_THE_HEAD * head);
            target = target.min(course.next_shape(farthest_m / layer_m));
        }
        target
    }

    /// Level of the metal in a pool, m.
    pub(super) fn level_m(&self, pool: usize) -> f64 {
        self.bottom_m(pool) + self.ground.layer_m * self.course[pool].risen_layers()
    }

    fn bottom_m(&self, pool: usize) -> f64 {
        self.ground.floor_m + self.ground.layer_m * self.ground.pools.all[pool].bottom as f64
    }

    fn mark_beginnings(&mut self, going: &Going, into: &[f64], speeds_up: bool) {
        for (at, pool) in going.pools.iter().enumerate() {
            let feeds = |way: &Option<Way>| way.is_some_and(|way| way.into == Some(at));
            let is_fed = into[at] > 0.0 || (speeds_up && going.ways.iter().any(feeds));
            if !is_fed {
                continue;
            }
            let feed = going.feed(at);
            let number = match self.feeds.iter().position(|known| *known == feed) {
                Some(number) => number,
                None => {
                    self.feeds.push(feed);
                    self.feeds.len() - 1
                }
            };
            self.course[*pool].begin(self.time_s, number as u32);
        }
    }

    fn read(&mut self, going: &Going, flows: &[f64]) {
        let gates = self.ground.network.gates();
        let flow = |(gate, way): (usize, &Option<Way>)| way.map_or(0.0, |_| flows[gate]);
        let level = |at: Option<usize>| at.map(|at| self.level_m(going.pools[at]));
        let ways = going.ways.iter();
        let reading = Reading {
            at_s: self.time_s,
            gates_m3_s: gates.into_iter().zip(ways.clone()).map(flow).collect(),
            over_m: ways
                .clone()
                .map(|way| level(way.and_then(|way| way.under)))
                .collect(),
            pool_m: ways
                .map(|way| level(way.and_then(|way| way.into)))
                .collect(),
            basin_m: self.basin_m,
        };
        if self.readings.last() != Some(&reading) {
            self.readings.push(reading);
        }
    }

    /// What has been marked.
    pub(super) fn told(self) -> Levels {
        Levels {
            lies_m3: self.course.iter().map(|course| course.lies_m3).sum(),
            marks: self.course.into_iter().map(|course| course.marks).collect(),
            feeds: self.feeds,
            spills: self.spills,
            readings: self.readings,
            poured_m3: self.poured_m3,
            ends_s: self.time_s,
        }
    }
}

impl Going {
    /// What feeds a pool of the list.
    fn feed(&self, pool: usize) -> Feed {
        let mut feed = Feed::default();
        for (gate, way) in self.ways.iter().enumerate() {
            let Some(way) = way.filter(|way| way.into == Some(pool)) else {
                continue;
            };
            match self.spills[gate] {
                Some(spill) if !feed.spills.contains(&spill) => feed.spills.push(spill),
                Some(_) => {}
                None if way.under == Some(pool) => feed.drowned.push(gate),
                None => feed.falling.push(gate),
            }
        }
        feed
    }
}
