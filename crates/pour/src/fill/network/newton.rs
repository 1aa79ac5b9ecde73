//! Flows by Newton's method with the exact derivatives.
//!
//! Unknown are the flow of every channel and the head of every junction. Steps that do not lessen
//! what is left over are halved.

use measure::matter::GRAVITY_M_PER_S2;

use super::elimination::Square;
use super::flow::{Flows, Moment, guess, speed_head};
use super::{Branch, Network, NetworkError, Node};

/// Most steps to the flows; some six are usual.
const STEPS: usize = 60;

/// Change, as a part of the largest flow, at which the flows are found.
const AT_REST: f64 = 1e-13;

/// Speed below which the derivative no longer falls, as a part of the fastest there can be: a
/// channel at rest would leave its head unsettled.
const SLOWEST: f64 = 1e-6;

/// One search for the flows.
struct Search<'a> {
    network: &'a Network,
    resistances: &'a [f64],
    moment: &'a Moment,
    held: &'a [Option<f64>],
    /// Flow that counts as one.
    unit: f64,
}

/// Flows from a guess; those of channels that are held are given.
pub(super) fn newton(
    network: &Network,
    resistances: &[f64],
    moment: &Moment,
    held: &[Option<f64>],
    begun: &[f64],
) -> Result<Flows, NetworkError> {
    let unit = begun.iter().fold(guess(network), |a, q| a.max(q.abs()));
    let search = Search {
        network,
        resistances,
        moment,
        held,
        unit,
    };
    let channels = network.branches.len();
    let mut found: Vec<f64> = begun.iter().map(|flow| flow / unit).collect();
    found.extend(network.junctions_m.iter().map(|_| moment.basin_m));
    let mut left = search.left_over(&found);
    let mut is_found = false;
    for _ in 0..STEPS {
        let right: Vec<f64> = left.iter().map(|r| -r).collect();
        let step = search.slopes(&found).solve(&right);
        let step = step.ok_or(NetworkError::Restless)?;
        let largest = |of: &[f64]| of.iter().fold(0.0, |a: f64, b| a.max(b.abs()));
        let at_rest = AT_REST * largest(&found[..channels]).max(1e-9);
        is_found = largest(&step[..channels]) <= at_rest;
        let (before, mut share) = (largest(&left), 1.0);
        loop {
            let moved = found.iter().zip(&step).map(|(x, d)| x + share * d);
            let next: Vec<f64> = moved.collect();
            let next_left = search.left_over(&next);
            if is_found || largest(&next_left) < before || share < 1e-3 {
                (found, left) = (next, next_left);
                break;
            }
            share *= 0.5;
        }
        if is_found {
            break;
        }
    }
    if !is_found && left.iter().any(|left| left.abs() > 1e-9) {
        return Err(NetworkError::Restless);
    }
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
