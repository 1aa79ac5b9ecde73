//! The flows of a network at one moment, by Newton's method with the exact derivatives.
//!
//! Unknown are the flow of every channel and the head of every junction. Steps that do not lessen
//! what is left over are halved.

use measure::matter::GRAVITY_M_PER_S2;

use super::elimination::Square;
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

/// Most steps to the flows; some six are usual.
const STEPS: usize = 60;

/// Change, as a part of the largest flow, at which the flows are found.
const AT_REST: f64 = 1e-13;

/// Speed below which the derivative no longer falls, as a part of the fastest there can be: a
/// channel at rest would leave its head unsettled.
const SLOWEST: f64 = 1e-6;

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

/// One search for the flows.
struct Search<'a> {
    network: &'a Network,
    resistances: &'a [f64],
    moment: &'a Moment,
    held: &'a [Option<f64>],
    /// Flow that counts as one.
    unit: f64,
}

fn newton(
    network: &Network,
    resistances: &[f64],
    moment: &Moment,
    held: &[Option<f64>],
    guess: &[f64],
) -> Result<Flows, NetworkError> {
    let unit = guess
        .iter()
        .fold(self::guess(network), |a, q| a.max(q.abs()));
    let search = Search {
        network,
        resistances,
        moment,
        held,
        unit,
    };
    let channels = network.branches.len();
    let mut found: Vec<f64> = guess.iter().map(|flow| flow / unit).collect();
    found.extend(network.junctions_m.iter().map(|_| moment.basin_m));
    let mut left = search.left_over(&found);
    for _ in 0..STEPS {
        let right: Vec<f64> = left.iter().map(|r| -r).collect();
        let step = search.slopes(&found).solve(&right);
        let step = step.ok_or(NetworkError::Restless)?;
        let largest = |of: &[f64]| of.iter().fold(0.0, |a: f64, b| a.max(b.abs()));
        let at_rest = AT_REST * largest(&found[..channels]).max(1e-9);
        let is_last = largest(&step[..channels]) <= at_rest;
        let (before, mut share) = (largest(&left), 1.0);
        loop {
            let moved = found.iter().zip(&step).map(|(x, d)| x + share * d);
            let next: Vec<f64> = moved.collect();
            let next_left = search.left_over(&next);
            if is_last || largest(&next_left) < before || share < 1e-3 {
                (found, left) = (next, next_left);
                break;
            }
            share *= 0.5;
        }
        if is_last {
            break;
        }
    }
    let close = left.iter().all(|left| left.abs() < 1e-9);
    close.then_some(()).ok_or(NetworkError::Restless)?;
    Ok(Flows {
        branches: found[..channels].iter().map(|q| q * unit).collect(),
        junctions_m: found[channels..].to_vec(),
    })
}

impl Search<'_> {
    /// What the equations leave over: heads of the channels, then flows of the junctions.
    fn left_over(&self, found: &[f64]) -> Vec<f64> {
        let channels = self.network.branches.len();
        let mut left = vec![0.0; found.len()];
        for (number, branch) in self.network.branches.iter().enumerate() {
            let share = found[number];
            left[number] = match self.held[number] {
                Some(held) => share - held / self.unit,
                None => self.head_left(number, branch, found),
            };
            if let Node::Junction(from) = branch.from {
                left[channels + from] -= share;
            }
            if let Node::Junction(to) = branch.to {
                left[channels + to] += share;
            }
        }
        left
    }

    fn head_left(&self, number: usize, branch: &Branch, found: &[f64]) -> f64 {
        let flow = |number: usize| found[number] * self.unit;
        let squared = |number: usize| flow(number) * flow(number).abs();
        let turned = branch.turn.map_or(0.0, |turn| {
            let from = &self.network.branches[turn.from];
            turn.share * speed_head(from) * squared(turn.from)
        });
        let sped = match &self.moment.speeding {
            Some((from, _)) => self.inertia(branch) * (flow(number) - from[number]),
            None => 0.0,
        };
        let spent = self.resistances[number] * squared(number) + turned + sped;
        self.head(branch.from, found) - self.head(branch.to, found) - spent
    }

    fn head(&self, node: Node, found: &[f64]) -> f64 {
        let flows = |numbers: Vec<usize>| -> f64 {
            numbers
                .iter()
                .map(|number| found[*number] * self.unit)
                .sum()
        };
        match node {
            Node::Basin => self.moment.basin_m - self.moment.sinks * flows(self.leaving()),
            Node::Junction(number) => found[self.network.branches.len() + number],
            Node::Outlet(number) => {
                self.moment.outlets[number].map_or(0.0, |against| match against.rises {
                    0.0 => against.head_m,
                    rises => against.head_m + rises * flows(self.feeding(against.under)),
                })
            }
        }
    }

    /// The derivatives of what is left over.
    fn slopes(&self, found: &[f64]) -> Square {
        let channels = self.network.branches.len();
        let mut slopes = Square::of(found.len());
        for (number, branch) in self.network.branches.iter().enumerate() {
            match self.held[number] {
                Some(_) => slopes.add(number, number, 1.0),
                None => self.head_slopes(number, branch, found, &mut slopes),
            }
            if let Node::Junction(from) = branch.from {
                slopes.add(channels + from, number, -1.0);
            }
            if let Node::Junction(to) = branch.to {
                slopes.add(channels + to, number, 1.0);
            }
        }
        slopes
    }

    fn head_slopes(&self, number: usize, branch: &Branch, found: &[f64], slopes: &mut Square) {
        let channels = self.network.branches.len();
        let unit = self.unit;
        let squared = |number: usize| 2.0 * unit * unit * found[number].abs().max(SLOWEST);
        slopes.add(number, number, -self.resistances[number] * squared(number));
        if let Some(turn) = branch.turn {
            let head = turn.share * speed_head(&self.network.branches[turn.from]);
            slopes.add(number, turn.from, -head * squared(turn.from));
        }
        if self.moment.speeding.is_some() {
            slopes.add(number, number, -self.inertia(branch) * unit);
        }
        for (node, sign) in [(branch.from, 1.0), (branch.to, -1.0)] {
            match node {
                Node::Junction(at) => slopes.add(number, channels + at, sign),
                Node::Basin => self.leaving().into_iter().for_each(|from| {
                    slopes.add(number, from, -sign * self.moment.sinks * unit);
                }),
                Node::Outlet(at) => {
                    let Some(against) = self.moment.outlets[at] else {
                        continue;
                    };
                    if against.rises != 0.0 {
                        self.feeding(against.under).into_iter().for_each(|feeds| {
                            slopes.add(number, feeds, sign * against.rises * unit);
                        });
                    }
                }
            }
        }
    }

    /// Head that speeds a channel up by a m³/s within the moment, s/m².
    fn inertia(&self, branch: &Branch) -> f64 {
        let length_s = self.moment.speeding.as_ref().map_or(1.0, |(_, s)| *s);
        branch.length_m / (GRAVITY_M_PER_S2 * branch.area_m2 * length_s)
    }

    /// Channels that leave the basin.
    fn leaving(&self) -> Vec<usize> {
        let all = self.network.branches.iter().enumerate();
        let leaving = all.filter(|(_, branch)| branch.from == Node::Basin);
        leaving.map(|(number, _)| number).collect()
    }

    /// Channels that run into a pool.
    fn feeding(&self, pool: Option<usize>) -> Vec<usize> {
        let all = self.network.branches.iter().enumerate();
        let feeds = all.filter(|(_, branch)| match branch.to {
            Node::Outlet(outlet) => self.moment.outlets[outlet]
                .is_some_and(|against| pool.is_some() && against.into == pool),
            _ => false,
        });
        feeds.map(|(number, _)| number).collect()
    }
}
