//! Finds the flows of a network of gates.
//!
//! At held friction factors the head at the far end of each runner decides everything before it,
//! so two nested searches for a root find the flows and cannot run away. Round them goes the ring
//! of friction and flow, which comes to rest in a handful of turns.

use crate::gating::friction::Friction;
use crate::gating::network::{Network, Stretch, speed_head_of};
use crate::gating::root::rising_root;

/// Finds the flows; keeps the friction factors from one solution to the next, which differ little
/// while a mould fills.
pub(super) struct Solver<'a> {
    network: &'a Network,
    sprue: f64,
    runners: Vec<f64>,
    gates: Vec<f64>,
}

/// Turns round the ring of friction and flow: each takes at least half of the error.
const TURNS: usize = 80;

/// Change of the friction factors at which the ring has come to rest.
const AT_REST: f64 = 1e-11;

impl<'a> Solver<'a> {
    /// For a network that has been checked.
    pub(super) fn new(network: &'a Network) -> Solver<'a> {
        let count = network.gates().count();
        Solver {
            network,
            sprue: 0.03,
            runners: vec![0.03; count],
            gates: vec![0.03; count],
        }
    }

    /// Flow of each gate, m³/s, for the height in m against which it runs; nothing for a gate
    /// whose cavity is full.
    pub(super) fn solve(&mut self, outlets: &[Option<f64>]) -> Vec<f64> {
        let mut flows = self.at_rest(outlets);
        for _ in 0..TURNS {
            if self.renew_friction(&flows) <= AT_REST {
                break;
            }
            flows = self.at_rest(outlets);
        }
        flows
    }

    /// The flows at the friction factors held.
    fn at_rest(&self, outlets: &[Option<f64>]) -> Vec<f64> {
        let level = self.network.level.as_m();
        let open = outlets.iter().flatten().copied();
        let lowest = open.fold(f64::INFINITY, f64::min);
        if lowest >= level {
            return vec![0.0; outlets.len()];
        }
        let sprue = self.network.sprue.resistance(self.sprue);
        let over = |foot: f64| {
            let all: f64 = self.at_foot(foot, lowest, outlets).iter().sum();
            foot + sprue * all * all - level
        };
        let foot = rising_root(over, lowest, level);
        self.at_foot(foot, lowest, outlets)
    }

    /// The flows of all gates for a head at the foot of the sprue.
    fn at_foot(&self, foot: f64, lowest: f64, outlets: &[Option<f64>]) -> Vec<f64> {
        let mut flows = vec![0.0; outlets.len()];
        let mut first = 0;
        for side in &self.network.sides {
            let range = first..first + side.len();
            first = range.end;
            let over = |end: f64| self.backwards(end, side, range.start, outlets, None) - foot;
            let end = rising_root(over, lowest, foot);
            self.backwards(
                end,
                side,
                range.start,
                outlets,
                Some(&mut flows[range.clone()]),
            );
        }
        flows
    }

    /// From the head at the far end of a runner back to the sprue: the head that takes there.
    fn backwards(
        &self,
        end: f64,
        side: &[Stretch],
        first: usize,
        outlets: &[Option<f64>],
        mut flows: Option<&mut [f64]>,
    ) -> f64 {
        let (mut head, mut beyond) = (end, 0.0);
        for (place, stretch) in side.iter().enumerate().rev() {
            let turn = self.network.turn * speed_head_of(stretch.runner.area);
            let passage = &stretch.gate.passage;
            let out = speed_head_of(passage.area) + passage.resistance(self.gates[first + place]);
            let flow = outlets[first + place]
                .map_or(0.0, |outlet| through(head - outlet, beyond, turn, out));
            if let Some(flows) = flows.as_deref_mut() {
                flows[place] = flow;
            }
            beyond += flow;
            head += stretch.runner.resistance(self.runners[first + place]) * beyond * beyond;
        }
        head
    }

    /// Takes the friction factors to the flows; the largest change as a part of a factor.
    fn renew_friction(&mut self, flows: &[f64]) -> f64 {
        let friction = self.network.friction;
        let mut change = 0f64;
        // The middle of old and new, by their product: near the end of quiet flow the factor
        // rises with the speed, and whole steps would swing to and fro.
        let mut renew = |old: &mut f64, wanted: f64| {
            let next = match friction {
                Friction::Stated(factor) => factor,
                Friction::ByReynolds { .. } => (*old * wanted).sqrt(),
            };
            change = change.max((next - *old).abs() / next.max(f64::MIN_POSITIVE));
            *old = next;
        };
        let all: f64 = flows.iter().sum();
        renew(&mut self.sprue, self.network.sprue.factor(friction, all));
        let mut first = 0;
        for side in &self.network.sides {
            let mut beyond = 0.0;
            for (place, stretch) in side.iter().enumerate().rev() {
                let gate = first + place;
                beyond += flows[gate];
                let factor = stretch.runner.factor(friction, beyond);
                renew(&mut self.runners[gate], factor);
                let factor = stretch.gate.passage.factor(friction, flows[gate]);
                renew(&mut self.gates[gate], factor);
            }
            first += side.len();
        }
        change
    }
}

/// Flow of a gate under a head, with `beyond` running on past it: the root of
/// head = turn (beyond + q)² + out q².
fn through(head: f64, beyond: f64, turn: f64, out: f64) -> f64 {
    let left = head - turn * beyond * beyond;
    if left <= 0.0 {
        return 0.0;
    }
    let half = turn * beyond;
    left / (half + (half * half + (turn + out) * left).sqrt())
}
