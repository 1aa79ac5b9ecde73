//! The flows of a network at one moment, by Newton's method with the exact derivatives.
//!
//! Unknown are the flow of every channel and the head of every junction. Steps that do not lessen
//! what is left over are halved.

use measure::matter::GRAVITY_M_PER_S2;

use super::newton::newton;
use super::{Branch, Network, NetworkError, Node};

/// What stands against an outlet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Against {
    /// Head that presses back, m: the outlet's own height, or the level of the pool over it, and
    /// the air on top of it.
    pub head_m: f64,
    /// How much that head rises within the moment for each m³/s that runs into its pool, s/m².
    pub rises: f64,
    /// The pool whose level stands over it.
    pub under: Option<usize>,
    /// The pool into which it runs.
    pub into: Option<usize>,
}

/// What holds during one moment.
#[derive(Clone, Debug, PartialEq)]
pub struct Moment {
    /// Level in the basin, m.
    pub basin_m: f64,
    /// How much it sinks within the moment for each m³/s that leaves it, s/m².
    pub sinks: f64,
    /// What stands against each outlet; none for one that takes no more.
    pub outlets: Vec<Option<Against>>,
    /// Flows from which the metal is being sped up, and the length of the moment, s; none where
    /// its inertia is left out.
    pub speeding: Option<(Vec<f64>, f64)>,
}

/// What runs where.
#[derive(Clone, Debug, PartialEq)]
pub struct Flows {
    /// Flow of each channel, m³/s.
    pub branches: Vec<f64>,
    /// Head at each junction, m.
    pub junctions_m: Vec<f64>,
}

/// Turns round the ring of friction and flow.
const FRICTION_TURNS: usize = 60;

/// What an outlet may be pushed back, as a part of the largest flow, before it counts as shut.
const BACKWARDS: f64 = 1e-12;

/// Heads lost for a squared flow of one in each channel, s²/m⁵, at the friction of these flows.
pub fn resistances(network: &Network, flows: &[f64]) -> Vec<f64> {
    let of = |(branch, flow): (&Branch, &f64)| {
        let speed = flow.abs() / branch.area_m2;
        let factor = network.friction.factor(branch.hydraulic_m, speed);
        let leaves = f64::from(matches!(branch.to, Node::Outlet(_)));
        let heads = branch.loss + factor * branch.length_m / branch.hydraulic_m + leaves;
        heads * speed_head(branch)
    };
    network.branches.iter().zip(flows).map(of).collect()
}

/// Flows that do not change, against these heads at the outlets, m; none for an outlet that takes
/// no more.
///
/// # Errors
///
/// A network that is not sound, or flows that are not found.
pub fn steady(network: &Network, heads_m: &[Option<f64>]) -> Result<Flows, NetworkError> {
    network.check()?;
    let against = |head_m: &Option<f64>| {
        head_m.map(|head_m| Against {
            head_m,
            rises: 0.0,
            under: None,
            into: None,
        })
    };
    let moment = Moment {
        basin_m: network.level_m,
        sinks: 0.0,
        outlets: heads_m.iter().map(against).collect(),
        speeding: None,
    };
    let mut flows = vec![guess(network); network.branches.len()];
    let mut found = None;
    for _ in 0..FRICTION_TURNS {
        let resistances = resistances(network, &flows);
        let next = solve(network, &resistances, &moment, &flows)?;
        let largest = next.branches.iter().fold(0.0, |a: f64, q| a.max(q.abs()));
        let changes = next.branches.iter().zip(&flows).map(|(a, b)| (a - b).abs());
        let settled = changes.fold(0.0, f64::max) <= 1e-12 * largest;
        // Half way from the second turn on: near the end of quiet flow the factor rises with the
        // speed, and whole steps would swing to and fro.
        flows = match found {
            None => next.branches.clone(),
            Some(_) => middle(&next.branches, &flows),
        };
        found = Some(next);
        if settled {
            break;
        }
    }
    found.ok_or(NetworkError::Restless)
}

/// The flows of a moment at these resistances, begun from a guess; outlets that would run back
/// stand still, and a sprue passes no more than its narrowest place does.
///
/// # Errors
///
/// Flows that are not found.
pub fn solve(
    network: &Network,
    resistances: &[f64],
    moment: &Moment,
    guess: &[f64],
) -> Result<Flows, NetworkError> {
    let mut held: Vec<Option<f64>> = network.branches.iter().map(|_| None).collect();
    let gates = network.gates();
    for (gate, outlet) in gates.iter().zip(&moment.outlets) {
        if outlet.is_none() {
            held[*gate] = Some(0.0);
        }
    }
    let mut flows = newton(network, resistances, moment, &held, guess)?;
    for _ in 0..2 * gates.len() + network.branches.len() {
        let largest = flows.branches.iter().fold(0.0, |a: f64, q| a.max(q.abs()));
        let mut changed = limit_sprues(network, moment.basin_m, &flows, &mut held);
        for (gate, outlet) in gates.iter().zip(&moment.outlets) {
            let Some(outlet) = outlet else { continue };
            if held[*gate].is_none() && flows.branches[*gate] < -BACKWARDS * largest {
                held[*gate] = Some(0.0);
                changed = true;
            } else if held[*gate] == Some(0.0)
                && presses(network, moment, &flows, *gate) > outlet.head_m + 1e-9
            {
                held[*gate] = None;
                changed = true;
            }
        }
        if !changed {
            break;
        }
        flows = newton(network, resistances, moment, &held, &flows.branches)?;
    }
    // What is left of a shut outlet after the last turn is rounding.
    for gate in &gates {
        flows.branches[*gate] = flows.branches[*gate].max(0.0);
    }
    Ok(flows)
}

/// The fastest that anything can run out of this network, as a flow through its widest channel.
pub(super) fn guess(network: &Network) -> f64 {
    let lowest = network
        .outlets_m
        .iter()
        .fold(f64::INFINITY, |a, b| a.min(*b));
    let widest = network.branches.iter().map(|branch| branch.area_m2);
    let drives = (network.level_m - lowest).max(1e-6);
    let narrowest = widest.fold(f64::INFINITY, f64::min);
    narrowest * (2.0 * GRAVITY_M_PER_S2 * drives).sqrt()
}

/// Head of speed in a channel for a squared flow of one, s²/m⁵.
pub(super) fn speed_head(branch: &Branch) -> f64 {
    0.5 / (GRAVITY_M_PER_S2 * branch.area_m2 * branch.area_m2)
}

/// Flow that a sprue passes at most while its narrowest place, as a stream falls, is full.
pub(super) fn most_through(branch: &Branch, basin_m: f64) -> f64 {
    let passes = branch.sections.iter().map(|section| {
        let below = (basin_m - section.height_m).max(0.0);
        section.area_m2 * (2.0 * GRAVITY_M_PER_S2 * below).sqrt()
    });
    passes.fold(f64::INFINITY, f64::min)
}

fn limit_sprues(network: &Network, basin_m: f64, flows: &Flows, held: &mut [Option<f64>]) -> bool {
    let mut changed = false;
    for (number, branch) in network.branches.iter().enumerate() {
        let most = most_through(branch, basin_m);
        if held[number].is_none() && flows.branches[number] > most * (1.0 + 1e-12) {
            held[number] = Some(most);
            changed = true;
        }
    }
    changed
}

/// The head that stands before a gate.
fn presses(network: &Network, moment: &Moment, flows: &Flows, gate: usize) -> f64 {
    match network.branches[gate].from {
        Node::Junction(number) => flows.junctions_m[number],
        Node::Basin | Node::Outlet(_) => moment.basin_m,
    }
}

fn middle(a: &[f64], b: &[f64]) -> Vec<f64> {
    a.iter().zip(b).map(|(a, b)| 0.5 * (a + b)).collect()
}
