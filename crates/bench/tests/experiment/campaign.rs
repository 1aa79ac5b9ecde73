//! A whole campaign as a founder runs it: plan, enter, read, four more batches, and so on to 24.

use bench::experiment::Experiment;
use bench::experiment::batches::{Batch, From};
use bench::experiment::design::{batch, planned};
use bench::experiment::more::with_more;
use bench::experiment::reading::read;
use bench::experiment::results::{Note, Reading};
use bench::experiment::space::Space;

use crate::experiment;
use crate::simulated::{Noise, at};

const HEAP: &str = r#"
name = "Campaign"
seed = SEED
batch = "1 kg"
basis = "dry"
batches = 12
repeats = 2
aim = "best"
part = [
    { name = "sand", amount = 100 },
    { name = "clay", amount = "4 to 14" },
    { name = "molasses", amount = "0 to 5" },
    { name = "water", amount = "2 to 8", is_water = true },
]
response = [{ name = "strength", unit = "kPa", want = "high" }]
"#;

/// Batches of a campaign, how many come in a session after the first, noise as a share of the
/// range of the response, and how near the top counts as found.
const BATCHES: usize = 24;
const SESSION: usize = 4;
const NOISE: f64 = 0.05;
const FOUND: f64 = 0.95;

/// A response with one top inside the ranges; how it falls away from it is one of three laws.
struct Surface {
    top: [f64; 3],
    turn: [[f64; 3]; 3],
    steep: [f64; 3],
    law: u64,
    bottom: f64,
}

impl Surface {
    fn drawn(seed: u64) -> Surface {
        let mut die = Noise(seed * 77 + 13);
        let mut between = |low: f64, high: f64| low + (high - low) * die.even();
        let top = [0; 3].map(|_| between(0.15, 0.85));
        let turn = square([0; 3].map(|_| [0; 3].map(|_| between(-1.0, 1.0))));
        let steep = [0; 3].map(|_| between(0.7_f64.ln(), 7.0_f64.ln()).exp());
        let law = seed % 3;
        let mut found = Surface {
            top,
            turn,
            steep,
            law,
            bottom: 0.0,
        };
        let steps = || (0..=10).map(|step| f64::from(step) / 10.0);
        let corner = |x| steps().flat_map(move |y| steps().map(move |z| [x, y, z]));
        let all = steps().flat_map(corner).map(|mix| found.height(mix));
        found.bottom = all.fold(f64::INFINITY, f64::min);
        found
    }

    fn height(&self, mix: [f64; 3]) -> f64 {
        let away = [0, 1, 2].map(|at| mix[at] - self.top[at]);
        let along = |way: &[f64; 3]| (0..3).map(|at| way[at] * away[at]).sum::<f64>();
        let ways = self.turn.iter().zip(self.steep);
        let fall: f64 = ways.map(|(way, steep)| steep * along(way).powi(2)).sum();
        match self.law {
            0 => 1.0 - fall,
            1 => (-fall).exp(),
            _ => 1.0 / (1.0 + fall),
        }
    }

    /// The response as a share of its range, 1 at the top.
    fn share(&self, mix: [f64; 3]) -> f64 {
        (self.height(mix) - self.bottom) / (1.0 - self.bottom)
    }
}

/// Three ways at right angles, by Gram and Schmidt.
fn square(mut ways: [[f64; 3]; 3]) -> [[f64; 3]; 3] {
    for at in 0..3 {
        for before in 0..at {
            let other = ways[before];
            let along: f64 = (0..3).map(|one| ways[at][one] * other[one]).sum();
            for (one, other) in ways[at].iter_mut().zip(other) {
                *one -= along * other;
            }
        }
        let long = ways[at].iter().map(|one| one * one).sum::<f64>().sqrt();
        for one in &mut ways[at] {
            *one /= long;
        }
    }
    ways
}

fn mix_of(experiment: &Experiment, batch: &Batch) -> [f64; 3] {
    at(experiment, batch).try_into().unwrap()
}

/// The mix that `experiment read` tells as the best after 24 batches.
fn ours(surface: &Surface, seed: u64) -> [f64; 3] {
    let experiment = experiment(&HEAP.replace("SEED", &seed.to_string()));
    let space = Space::of(&experiment);
    let mut noise = Noise(1000 + seed);
    let mut batches = planned(&experiment).unwrap().batches;
    let mut readings: Vec<Reading> = Vec::new();
    loop {
        for one in &batches[readings.len()..] {
            let value = surface.share(mix_of(&experiment, one)) + NOISE * noise.normal();
            readings.push(Reading {
                batch: one.number,
                response: 0,
                value: 20.0 + 40.0 * value,
                note: Note::First,
            });
        }
        let said = read(&experiment, &batches, &readings, SESSION).unwrap();
        if batches.len() >= BATCHES {
            let best = &said.next.believed.unwrap().point;
            return mix_of(&experiment, &batch(&space, best, 99, 1, From::Next));
        }
        batches = with_more(&experiment, &batches, &readings, &said, SESSION);
    }
}

/// From the middle, each part in turn at eight levels, the best of which is kept.
fn one_at_a_time(surface: &Surface, seed: u64) -> [f64; 3] {
    let mut noise = Noise(1000 + seed);
    let mut kept = [0.5; 3];
    for at in 0..3 {
        let levels = (0..BATCHES / 3).map(|level| {
            let mut tried = kept;
            tried[at] = level as f64 / (BATCHES / 3 - 1) as f64;
            (surface.share(tried) + NOISE * noise.normal(), tried)
        });
        kept = levels.max_by(|a, b| a.0.total_cmp(&b.0)).unwrap().1;
    }
    kept
}

/// The promise: of 100 surfaces with their top inside and noise of 5 % of the range, the best mix
/// told after 24 batches lies within 5 % of the range of the top in 80 at least, and in 15 more
/// than by 24 batches of one thing at a time.
#[test]
fn twenty_four_batches_find_the_top() {
    let start = std::time::Instant::now();
    let (mut found, mut plain) = (0, 0);
    for seed in 1..=100 {
        let surface = Surface::drawn(seed);
        let is_found = |mix: [f64; 3]| usize::from(surface.share(mix) >= FOUND);
        found += is_found(ours(&surface, seed));
        plain += is_found(one_at_a_time(&surface, seed));
    }
    let seconds = start.elapsed().as_secs_f64();
    println!("found {found}, by one thing at a time {plain}, {seconds:.0} s");
    assert!(found >= 80, "{found}");
    assert!(found >= plain + 15, "{found} against {plain}");
}
