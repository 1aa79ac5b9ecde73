//! Which batch to make next: the one that is expected to improve most on the best so far.
//!
//! Expected improvement (m − b)Φ(z) + sφ(z) with z = (m − b)/s weighs a good guess and an unsure
//! one against each other (Jones, Schonlau and Welch 1998, from memory). With noise the best so
//! far is the best that is believed at a batch that was made, not the luckiest reading.

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

use crate::belief::{Belief, Believed};
use crate::chance::{normal_below, normal_height};
use crate::desirability::{Wanted, together};
use crate::verdict::Good;

/// A batch worth making.
#[derive(Clone, Debug, PartialEq)]
pub struct Next {
    /// The mix and its settings.
    pub point: Vec<f64>,
    /// What it is expected to give.
    pub believed: Believed,
    /// How much better than the best so far it is expected to be, counting worse as nothing. In
    /// units of the response; when it is small beside the noise, further batches are not worth it.
    pub improvement: f64,
}

/// A batch worth making for several responses at once.
#[derive(Clone, Debug, PartialEq)]
pub struct NextForAll {
    /// The mix and its settings.
    pub point: Vec<f64>,
    /// What each response is expected to be.
    pub believed: Vec<Believed>,
    /// How far all wishes together are met, if each response comes out as expected.
    pub met: f64,
    /// How much better than the best so far that is expected to be.
    pub improvement: f64,
}

/// Draws of every response when several are joined. With 200 the expected improvement of two
/// batches is told apart when they differ by about a tenth; more draws cost time in proportion.
const DRAWS: usize = 200;

/// How much better than the best a response of this mean and deviation is expected to be.
pub fn expected_improvement(mean: f64, deviation: f64, best: f64) -> f64 {
    if deviation <= 0.0 {
        return (mean - best).max(0.0);
    }
    let z = (mean - best) / deviation;
    (mean - best) * normal_below(z) + deviation * normal_height(z)
}

/// The batches of the next session, most promising first. Each takes the ones before it as made and
/// come out as expected, so that a session spreads.
pub fn next_batches(
    belief: &Belief,
    candidates: &[Vec<f64>],
    good: Good,
    count: usize,
) -> Vec<Next> {
    let sign = sign(good);
    let mut supposed = belief.clone();
    let mut found = Vec::new();
    for _ in 0..count {
        let best = best_made(&supposed, sign);
        let judged = candidates.iter().map(|point| {
            let believed = supposed.at(point);
            let mean = sign * believed.mean;
            (
                point,
                believed,
                expected_improvement(mean, believed.deviation, best),
            )
        });
        let most = judged.reduce(|most, one| if one.2 > most.2 { one } else { most });
        let Some((point, believed, improvement)) = most else {
            break;
        };
        supposed = supposed.supposing(point);
        found.push(Next {
            point: point.clone(),
            believed,
            improvement,
        });
    }
    found
}

/// The candidate that is believed to be the best, made or not.
pub fn best_believed(
    belief: &Belief,
    candidates: &[Vec<f64>],
    good: Good,
) -> Option<(Vec<f64>, Believed)> {
    let judged = candidates.iter().map(|point| (point, belief.at(point)));
    let sign = sign(good);
    let better = |most: (&Vec<f64>, Believed)| sign * most.1.mean;
    let best = judged.reduce(|most, one| {
        if better(one) > better(most) {
            one
        } else {
            most
        }
    });
    best.map(|(point, believed)| (point.clone(), believed))
}

/// The batches of the next session for several responses and a wish for each, most promising first.
/// The improvement is of the joint desirability, over seeded draws of all responses.
pub fn next_for_all(
    beliefs: &[Belief],
    wanted: &[Wanted],
    candidates: &[Vec<f64>],
    count: usize,
    seed: u64,
) -> Vec<NextForAll> {
    let draws = draws(beliefs.len(), seed);
    let mut supposed = beliefs.to_vec();
    let mut found: Vec<NextForAll> = Vec::new();
    for _ in 0..count {
        let best = best_met(&supposed, wanted);
        let judged = candidates.iter().map(|point| {
            let believed: Vec<Believed> = supposed.iter().map(|one| one.at(point)).collect();
            let improvement = improvement_of_all(&believed, wanted, &draws, best);
            (point, believed, improvement)
        });
        let most = judged.reduce(|most, one| if one.2 > most.2 { one } else { most });
        let Some((point, believed, improvement)) = most else {
            break;
        };
        supposed = supposed.iter().map(|one| one.supposing(point)).collect();
        found.push(NextForAll {
            point: point.clone(),
            met: met_at(&believed, wanted),
            believed,
            improvement,
        });
    }
    found
}

fn sign(good: Good) -> f64 {
    match good {
        Good::High => 1.0,
        Good::Low => -1.0,
    }
}

fn best_made(belief: &Belief, sign: f64) -> f64 {
    let made = belief
        .points
        .iter()
        .map(|point| sign * belief.at(point).mean);
    made.fold(f64::NEG_INFINITY, f64::max)
}

fn best_met(beliefs: &[Belief], wanted: &[Wanted]) -> f64 {
    let points = beliefs.first().map_or(&[][..], |one| one.points.as_slice());
    let met = points.iter().map(|point| {
        let believed: Vec<Believed> = beliefs.iter().map(|one| one.at(point)).collect();
        met_at(&believed, wanted)
    });
    met.fold(0.0, f64::max)
}

fn met_at(believed: &[Believed], wanted: &[Wanted]) -> f64 {
    let means: Vec<f64> = believed.iter().map(|one| one.mean).collect();
    together(wanted, &means)
}

fn improvement_of_all(
    believed: &[Believed],
    wanted: &[Wanted],
    draws: &[Vec<f64>],
    best: f64,
) -> f64 {
    let gains = draws.iter().map(|draw| {
        let one = believed.iter().zip(draw);
        let responses: Vec<f64> = one.map(|(one, z)| one.mean + z * one.deviation).collect();
        (together(wanted, &responses) - best).max(0.0)
    });
    gains.sum::<f64>() / draws.len() as f64
}

/// Normal draws by the method of Box and Muller, one a response.
fn draws(responses: usize, seed: u64) -> Vec<Vec<f64>> {
    let mut die = ChaCha8Rng::seed_from_u64(seed);
    let mut normal = || {
        let (one, other): (f64, f64) = (die.random(), die.random());
        (-2.0 * (1.0 - one).ln()).sqrt() * (std::f64::consts::TAU * other).cos()
    };
    let mut draw = || (0..responses).map(|_| normal()).collect();
    (0..DRAWS).map(|_| draw()).collect()
}
