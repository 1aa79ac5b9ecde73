//! The network over time: metal sped up from rest, pools that rise and a basin that sinks.
//!
//! A step takes five moments of one shape, each solved with its own end in it, so that stiff
//! channels (short, wide) do not cut the step short. The coefficients are those of the stiffly
//! accurate method of order four by Hairer and Wanner (Solving Ordinary Differential Equations II,
//! table IV.6.5; from memory, and held to its order by the tests).

use super::flow::{Against, Flows, Moment, solve};
use super::{Network, NetworkError};

/// What changes over time.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// Flow of each channel, m³/s.
    pub flows: Vec<f64>,
    /// Level in the basin, m.
    pub basin_m: f64,
    /// Metal that has run into each pool since the last change of its shape, m³.
    pub pools_m3: Vec<f64>,
    /// All metal that has left the basin, m³.
    pub poured_m3: f64,
}

/// How the level of a pool goes with the metal that runs into it, for one step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rise {
    /// Level with none of it in, m.
    pub level_m: f64,
    /// Rise with each m³, 1/m².
    pub per_m3: f64,
}

/// Where an outlet runs to during one step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Way {
    /// The pool whose level stands over the outlet; none for one that runs free.
    pub under: Option<usize>,
    /// The pool that its metal ends in.
    pub into: Option<usize>,
}

/// All that holds during one step.
#[derive(Clone, Debug, PartialEq)]
pub struct Held<'a> {
    /// The running system.
    pub network: &'a Network,
    /// Resistances of its channels, s²/m⁵, as `flow::resistances` gives them.
    pub resistances: Vec<f64>,
    /// Where each outlet runs; none for one that takes no more.
    pub ways: Vec<Option<Way>>,
    /// How the pools rise.
    pub rises: Vec<Rise>,
    /// Whether the inertia of the metal counts.
    pub inertia: bool,
}

/// Diagonal of the method.
const GAMMA: f64 = 0.25;

/// What each stage takes of the stages before it.
const STAGES: [&[f64]; 5] = [
    &[],
    &[0.5],
    &[17.0 / 50.0, -1.0 / 25.0],
    &[371.0 / 1360.0, -137.0 / 2720.0, 15.0 / 544.0],
    &[25.0 / 24.0, -49.0 / 48.0, 125.0 / 16.0, -85.0 / 12.0],
];

/// Rates of change at a stage.
struct Stage {
    flows: Vec<f64>,
    pools: Vec<f64>,
    leaves: f64,
}

/// The state after a step of so many seconds.
///
/// # Errors
///
/// Flows that are not found.
pub fn step(held: &Held<'_>, state: &State, step_s: f64) -> Result<State, NetworkError> {
    let mut stages: Vec<Stage> = Vec::with_capacity(STAGES.len());
    let mut last = state.clone();
    for shares in STAGES {
        let base = held.begun(state, shares, &stages, step_s);
        let moment = held.moment(&base, GAMMA * step_s);
        let flows = solve(held.network, &held.resistances, &moment, &last.flows)?;
        let stage = held.rates(&base, &flows, GAMMA * step_s);
        last = base.moved(&stage, GAMMA * step_s);
        last.basin_m = held.basin_after(base.basin_m, GAMMA * step_s * stage.leaves);
        last.flows = flows.branches;
        stages.push(stage);
    }
    Ok(last)
}

impl Held<'_> {
    /// The flows that a state has at once, inertia aside.
    ///
    /// # Errors
    ///
    /// Flows that are not found.
    pub fn at_once(&self, state: &State) -> Result<Flows, NetworkError> {
        let moment = Moment {
            speeding: None,
            ..self.moment(state, 0.0)
        };
        solve(self.network, &self.resistances, &moment, &state.flows)
    }

    /// Metal that runs into each pool at these flows, m³/s.
    pub fn into_pools(&self, flows: &[f64]) -> Vec<f64> {
        let mut pools = vec![0.0; self.rises.len()];
        for (gate, way) in self.network.gates().into_iter().zip(&self.ways) {
            if let Some(into) = way.and_then(|way| way.into) {
                pools[into] += flows[gate];
            }
        }
        pools
    }

    fn begun(&self, state: &State, shares: &[f64], stages: &[Stage], step_s: f64) -> State {
        let mut base = state.clone();
        for (share, stage) in shares.iter().zip(stages) {
            base = base.moved(stage, share * step_s);
        }
        let left = base.poured_m3 - state.poured_m3;
        base.basin_m = self.basin_after(state.basin_m, left);
        base
    }

    fn basin_after(&self, basin_m: f64, left_m3: f64) -> f64 {
        let sunk = self.network.sinking_m2.map_or(0.0, |area| left_m3 / area);
        basin_m - sunk
    }

    fn moment(&self, base: &State, length_s: f64) -> Moment {
        let outlets = self.network.outlets_m.iter().zip(&self.ways);
        let against = |(height_m, way): (&f64, &Option<Way>)| {
            way.map(|way| match way.under {
                None => Against {
                    head_m: *height_m,
                    rises: 0.0,
                    under: None,
                    into: way.into,
                },
                Some(pool) => Against {
                    head_m: self.rises[pool].level_m
                        + self.rises[pool].per_m3 * base.pools_m3[pool],
                    rises: self.rises[pool].per_m3 * length_s,
                    under: Some(pool),
                    into: way.into,
                },
            })
        };
        Moment {
            basin_m: base.basin_m,
            sinks: self.network.sinking_m2.map_or(0.0, |area| length_s / area),
            outlets: outlets.map(against).collect(),
            speeding: self.inertia.then(|| (base.flows.clone(), length_s)),
        }
    }

    fn rates(&self, base: &State, flows: &Flows, length_s: f64) -> Stage {
        let changes = flows.branches.iter().zip(&base.flows);
        let leaving = self.network.branches.iter().zip(&flows.branches);
        let leaves = leaving.filter(|(branch, _)| branch.from == super::Node::Basin);
        Stage {
            flows: changes.map(|(new, old)| (new - old) / length_s).collect(),
            pools: self.into_pools(&flows.branches),
            leaves: leaves.map(|(_, flow)| flow).sum(),
        }
    }
}

impl State {
    fn moved(&self, stage: &Stage, by_s: f64) -> State {
        let along = |(now, rate): (&f64, &f64)| now + by_s * rate;
        State {
            flows: self.flows.iter().zip(&stage.flows).map(along).collect(),
            basin_m: self.basin_m,
            pools_m3: self.pools_m3.iter().zip(&stage.pools).map(along).collect(),
            poured_m3: self.poured_m3 + by_s * stage.leaves,
        }
    }
}
