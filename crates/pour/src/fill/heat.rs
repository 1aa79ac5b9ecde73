//! Heat lost on the way, cell by cell in the order in which metal comes.
//!
//! A cell gets the metal of the neighbour through which it was reached, cooled for the time since
//! that metal left the gate: from below where a pool rises, and over the pool from where a stream
//! lands on it. Within a layer metal spreads as fast as the layer fills. Metal that follows the
//! first through the running system finds it warm and loses less.

use std::collections::VecDeque;

use super::cooling::Cooling;
use super::hollow::{Hollow, NONE};
use super::levels::{Feed, Ground, Levels};
use super::network::flow::{Flows, steady};
use super::network::{NetworkError, Node};

/// What came to each cell of the hollow.
#[derive(Clone, Debug)]
pub(super) struct Arrived {
    /// Heat with which it came, J/m³.
    pub(super) j_m3: Vec<f32>,
    /// Time since it left the gate, s; not a number where none came.
    pub(super) age_s: Vec<f32>,
    /// The way it came from the gate, in cells.
    pub(super) way: Vec<f32>,
}

/// The channels to a gate: surface over volume, 1/m, and the ages of the first metal at their
/// ends, s.
pub(super) type Channels = Vec<(f64, [f64; 2])>;

/// The channels to each gate at the flows at which the gates begin to run, and those flows.
///
/// # Errors
///
/// Flows that are not found.
pub(super) fn channels(ground: &Ground<'_>) -> Result<(Vec<Channels>, Flows), NetworkError> {
    let network = ground.network;
    let heads: Vec<_> = network.outlets_m.iter().copied().map(Some).collect();
    let flows: Flows = steady(network, &heads)?;
    let of = |gate: usize| {
        let mut way = vec![gate];
        while let Node::Junction(junction) = network.branches[way[way.len() - 1]].from {
            let ends = |branch: usize| network.branches[branch].to == Node::Junction(junction);
            match (0..network.branches.len()).find(|branch| ends(*branch)) {
                Some(before) if !way.contains(&before) => way.push(before),
                _ => break,
            }
        }
        let mut age_s = 0.0;
        let of_branch = |number: usize| {
            let branch = &network.branches[number];
            let speed = flows.branches[number] / branch.area_m2;
            let takes_s = match speed > 0.0 {
                true => branch.length_m / speed,
                false => 0.0,
            };
            let from_s = age_s;
            age_s += takes_s;
            (4.0 / branch.hydraulic_m, [from_s, age_s])
        };
        way.into_iter().rev().map(of_branch).collect()
    };
    let all = network.gates().into_iter().map(of).collect();
    Ok((all, flows))
}

/// Heat with which metal leaves a gate so long after the first, J/m³.
pub(super) fn at_gate(cooling: &Cooling, channels: &Channels, after_s: f64) -> f64 {
    let through = |j_m3: f64, (per_m, ages_s): &(f64, [f64; 2])| {
        cooling.after(j_m3, *per_m, ages_s.map(|age| age + after_s))
    };
    channels.iter().fold(cooling.poured_j_m3, through)
}

/// All that the metal is followed by.
pub(super) struct Following<'a> {
    pub(super) ground: &'a Ground<'a>,
    pub(super) levels: &'a Levels,
    pub(super) cooling: Cooling,
    pub(super) channels: &'a [Channels],
    /// Twice the volume over the cooling surface around each cell of the box, mm.
    pub(super) thick_mm: &'a [f32],
}

impl Following<'_> {
    /// What comes to each cell.
    pub(super) fn arrived(&self) -> Arrived {
        let hollow = self.ground.hollow;
        let count = hollow.cells.len();
        let mut arrived = Arrived {
            j_m3: vec![self.cooling.coldest_j_m3 as f32; count],
            age_s: vec![f32::NAN; count],
            way: vec![0.0; count],
        };
        let mut order: Vec<(f64, u32)> = (0..hollow.flats.len() as u32)
            .filter_map(|flat| self.times_s(flat).map(|[floor_s, _, _]| (floor_s, flat)))
            .collect();
        order.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        let streams = self.streams();
        let mut spread = VecDeque::new();
        for (_, flat) in order {
            self.fill(flat, &streams, &mut arrived, &mut spread);
        }
        arrived
    }

    /// When metal comes to the floor, the middle and the ceiling of a flat, s.
    pub(super) fn times_s(&self, flat: u32) -> Option<[f64; 3]> {
        let (marks, layer) = self.levels.of_flat(self.ground, flat);
        let middle_s = *marks.middles_s.get(layer)?;
        let ceiling_s = marks.floors_s.get(layer + 1).copied();
        let ceiling_s = ceiling_s.unwrap_or(self.levels.ends_s);
        Some([marks.floors_s[layer], middle_s, ceiling_s.max(middle_s)])
    }

    /// What fed a flat while it filled.
    fn feed(&self, flat: u32) -> Option<&Feed> {
        let (marks, layer) = self.levels.of_flat(self.ground, flat);
        self.levels.feeds.get(*marks.feeds.get(layer)? as usize)
    }

    /// Whether a stream fell into the pool of a flat while it filled.
    pub(super) fn runs_into(&self, stream: usize, flat: u32) -> bool {
        let gates = self.ground.entries.len();
        self.feed(flat).is_some_and(|feed| match stream < gates {
            true => feed.falling.contains(&stream),
            false => feed.spills.contains(&(stream - gates)),
        })
    }

    /// The cells of each flat that streams pass, with the streams: gates first, then spills.
    pub(super) fn streams(&self) -> Vec<(u32, usize, u32)> {
        let gates = self.ground.entries.iter().map(|entry| &entry.fall);
        let spills = self.levels.spills.iter().map(|spill| &spill.fall);
        let mut streams = Vec::new();
        for (stream, fall) in gates.chain(spills).enumerate() {
            for cell in &fall.path {
                streams.push((self.ground.hollow.flat[*cell as usize], stream, *cell));
            }
        }
        streams.sort_unstable();
        streams
    }

    fn fill(
        &self,
        flat: u32,
        streams: &[(u32, usize, u32)],
        arrived: &mut Arrived,
        spread: &mut VecDeque<(u32, f64)>,
    ) {
        let Some([floor_s, middle_s, ceiling_s]) = self.times_s(flat) else {
            return;
        };
        let hollow = self.ground.hollow;
        spread.clear();
        let first = streams.partition_point(|(at, _, _)| *at < flat);
        let here = streams[first..].iter().take_while(|(at, _, _)| *at == flat);
        for (_, stream, cell) in here.filter(|(_, stream, _)| self.runs_into(*stream, flat)) {
            let came = self.of_stream(*stream, middle_s, arrived);
            arrived.take(*cell, came, spread);
        }
        for gate in self.feed(flat).map_or(&[][..], |feed| &feed.drowned) {
            let cell = self.ground.entries[*gate].cell;
            if hollow.flat[cell as usize] == flat {
                let came = self.of_stream(*gate, middle_s, arrived);
                arrived.take(cell, came, spread);
            }
        }
        if spread.is_empty() {
            self.well_up(flat, middle_s, arrived, spread);
        }
        if spread.is_empty() {
            // A pool that nothing known feeds: metal as the first gate gives it.
            let came = self.of_stream(0, middle_s, arrived);
            arrived.take(hollow.cells_of(flat)[0], came, spread);
        }
        let each_s = (ceiling_s - floor_s) / hollow.cells_of(flat).len() as f64;
        let mut delay_s = 0.0;
        while let Some((cell, since_s)) = spread.pop_front() {
            for beside in hollow.beside(cell) {
                if beside != NONE && arrived.age_s[beside as usize].is_nan() {
                    delay_s += each_s;
                    let came = self.moved(cell, beside, delay_s - since_s, arrived);
                    arrived.take_late(beside, came, delay_s, spread);
                }
            }
        }
    }

    /// Metal of a pool that rises comes from the cells below.
    fn well_up(
        &self,
        flat: u32,
        middle_s: f64,
        arrived: &mut Arrived,
        spread: &mut VecDeque<(u32, f64)>,
    ) {
        let hollow = self.ground.hollow;
        let mut last = (NONE, 0.0);
        for cell in hollow.cells_of(flat) {
            let below = hollow.below(*cell);
            if below == NONE || arrived.age_s[below as usize].is_nan() {
                continue;
            }
            let lower = hollow.flat[below as usize];
            if last.0 != lower {
                let then_s = self
                    .times_s(lower)
                    .map_or(middle_s, |[_, then_s, _]| then_s);
                last = (lower, (middle_s - then_s).max(0.0));
            }
            let came = self.moved(below, *cell, last.1, arrived);
            arrived.take(*cell, came, spread);
        }
    }

    /// Metal of a stream as it lands: heat, age, way.
    fn of_stream(&self, stream: usize, at_s: f64, arrived: &Arrived) -> [f64; 3] {
        let gates = self.ground.entries.len();
        if stream < gates {
            return [
                at_gate(&self.cooling, &self.channels[stream], at_s),
                0.0,
                0.0,
            ];
        }
        let lip = self.levels.spills[stream - gates].lip;
        let below = self.ground.hollow.below(lip) as usize;
        match arrived.age_s.get(below).filter(|age| !age.is_nan()) {
            Some(age_s) => {
                let of = [arrived.j_m3[below], *age_s, arrived.way[below]];
                of.map(f64::from)
            }
            None => self.of_stream(0, at_s, arrived),
        }
    }

    /// Metal of one cell after it has moved on into the next.
    fn moved(&self, from: u32, to: u32, takes_s: f64, arrived: &Arrived) -> [f64; 3] {
        let from = from as usize;
        let age_s = f64::from(arrived.age_s[from]);
        let place = self.ground.hollow.cells[to as usize] as usize;
        let per_m = 2e3 / f64::from(self.thick_mm[place]);
        let ages_s = [age_s, age_s + takes_s];
        [
            self.cooling
                .after(f64::from(arrived.j_m3[from]), per_m, ages_s),
            age_s + takes_s,
            f64::from(arrived.way[from]) + 1.0,
        ]
    }
}

impl Arrived {
    fn take(&mut self, cell: u32, came: [f64; 3], spread: &mut VecDeque<(u32, f64)>) {
        self.take_late(cell, came, 0.0, spread);
    }

    fn take_late(
        &mut self,
        cell: u32,
        [j_m3, age_s, way]: [f64; 3],
        delay_s: f64,
        spread: &mut VecDeque<(u32, f64)>,
    ) {
        let cell_at = cell as usize;
        if self.age_s[cell_at].is_nan() {
            self.j_m3[cell_at] = j_m3 as f32;
            self.age_s[cell_at] = age_s as f32;
            self.way[cell_at] = way as f32;
            spread.push_back((cell, delay_s));
        }
    }
}

/// The cells of a hollow to which metal came, and their places in the box.
pub(super) fn came<'a>(
    hollow: &'a Hollow,
    arrived: &'a Arrived,
) -> impl Iterator<Item = (usize, usize)> + 'a {
    let cells = hollow.cells.iter().enumerate();
    cells
        .filter(|(cell, _)| !arrived.age_s[*cell].is_nan())
        .map(|(cell, place)| (cell, *place as usize))
}
