//! How fast heat is followed on the card of this machine: `measure EDGE...` runs a block with a
//! feeder in a cube of sand with so many cells along an edge, and tells how a sweep of cells of one
//! material stands to a copy. `measure --beside EDGE...` runs each on the processor too, and tells
//! how far both lie apart; `--sweeps` leaves the blocks out; `--card NUMBER` takes another card
//! than the best.

#![allow(clippy::print_stdout, reason = "a program that tells what it measured")]

#[path = "../../solver/tests/block/mod.rs"]
mod block;

use std::sync::Mutex;
use std::time::Instant;

use block::block_in_sand;
use gpu::adapters::{Adapter, adapters};
use gpu::card::Card;
use gpu::speed::{card_copy, processor_copy};
use solver::case::Case;
use solver::elsewhere::{Course, Elsewhere, State, Unable};
use solver::grid::Grid;
use solver::laid::Laid;
use solver::material::{Material, Phase};
use solver::run::{End, Outcome, SolveError, Wish, solve, solve_on};

/// A card that says when a run on it is ready to begin.
#[derive(Debug)]
struct Timed<'card> {
    card: &'card Card,
    ready: Mutex<Instant>,
}

impl Elsewhere for Timed<'_> {
    fn name(&self) -> &str {
        self.card.name()
    }

    fn is_worth(&self, _: usize) -> bool {
        true
    }

    fn begin<'case>(
        &self,
        laid: &'case Laid<'case>,
        state: &State,
    ) -> Result<Box<dyn Course + 'case>, Unable> {
        let course = self.card.begin(laid, state)?;
        if let Ok(mut ready) = self.ready.lock() {
            *ready = Instant::now();
        }
        Ok(course)
    }
}

/// What a run took, s: all of it, and its steps alone.
struct Took {
    outcome: Outcome,
    whole_s: f64,
    steps_s: f64,
    /// A step, s: the median over the batches that were handed over together.
    step_s: f64,
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut given = std::env::args().skip(1).peekable();
    let (mut beside, mut sweeps, mut number, mut edges) = (false, false, 0, Vec::new());
    while let Some(word) = given.next() {
        match word.as_str() {
            "--beside" => beside = true,
            "--sweeps" => sweeps = true,
            "--card" => number = given.next().unwrap_or_default().parse()?,
            edge => edges.push(edge.parse::<usize>()?),
        }
    }
    let begun = Instant::now();
    let found = adapters();
    let listed_s = begun.elapsed().as_secs_f64();
    for adapter in &found {
        tell(adapter);
    }
    let adapter = found.get(number).ok_or("no such card")?;
    let begun = Instant::now();
    let card = Card::open(adapter)?;
    let opened_s = begun.elapsed().as_secs_f64();
    println!("found in {listed_s:.3} s, opened with all programs in {opened_s:.3} s");
    let copied = card_copy(adapter)?;
    println!(
        "memory of the card {:.0} GB/s, of the processor {:.1} GB/s",
        copied / 1e9,
        processor_copy() / 1e9
    );
    for &edge in &edges {
        swept(&card, edge, copied)?;
    }
    for &edge in edges.iter().filter(|_| !sweeps) {
        followed(&card, edge, beside)?;
    }
    Ok(())
}

fn tell(adapter: &Adapter) {
    let Adapter {
        name,
        driver,
        kind,
        interface,
        bounds,
        ..
    } = adapter;
    println!("{name}: {kind}; {interface}, driver {driver}; {bounds:?}");
}

/// A sweep of a box in which heat passes everywhere.
fn swept(card: &Card, edge: usize, copied: f64) -> Result<(), SolveError> {
    let sand = Phase {
        j_m3k: 1.7e6,
        w_mk: 0.6,
    };
    let mut case = Case::filled(
        Grid::uniform([edge; 3], 0.002),
        Material::plain("sand", sand),
        20.0,
    );
    for (cell, celsius) in case.start_c.iter_mut().enumerate() {
        *celsius += (cell % 7) as f32;
    }
    let wish = Wish {
        most_bytes: 1e12,
        ..Wish::until(End::At { s: 1600.0 })
    };
    let took = timed(card, &case, &wish)?;
    let steps = took.outcome.work.steps;
    let bytes = 8.0 * case.cells.len() as f64 / took.step_s;
    println!(
        "sweep {edge}: {steps} steps in {:.4} s, {:.1} Gcell/s, {:.0} GB/s, {:.0} % of a copy",
        took.steps_s,
        bytes / 8e9,
        bytes / 1e9,
        100.0 * bytes / copied
    );
    Ok(())
}

/// A block in sand, followed until it is solid.
fn followed(card: &Card, edge: usize, beside: bool) -> Result<(), SolveError> {
    let case = block_in_sand(edge);
    let wish = Wish {
        most_bytes: 1e12,
        ..Wish::until(End::Solid { latest_s: 4000.0 })
    };
    for _ in 0..3 {
        let Took {
            outcome,
            whole_s,
            steps_s,
            step_s,
        } = timed(card, &case, &wish)?;
        println!(
            "block {edge}: steps {steps_s:.4} s, one {:.4} ms, all {whole_s:.3} s, {:?}, \
            last freeze {:.4} s, heat unaccounted {:.1e}, {:?}",
            1e3 * step_s,
            outcome.work,
            outcome.freezing.last_s().unwrap_or_default(),
            outcome.balance.drift,
            outcome.ran
        );
    }
    if beside {
        let there = timed(card, &case, &wish)?.outcome;
        let begun = Instant::now();
        let here = solve(&case, &wish, &mut |_| true)?;
        let here_s = begun.elapsed().as_secs_f64();
        let most = |one: &[f32], other: &[f32]| {
            one.iter()
                .zip(other)
                .map(|(a, b)| (a - b).abs())
                .fold(0.0, f32::max)
        };
        let (one, other) = (&here.freezing, &there.freezing);
        println!(
            "block {edge} on the processor: {here_s:.3} s, last freeze {:.4} s; the two lie apart \
            by at most {:.4} s (first solid), {:.4} s (all solid), {:.4} K",
            one.last_s().unwrap_or_default(),
            most(&one.begins_s, &other.begins_s),
            most(&one.ends_s, &other.ends_s),
            most(&here.last.celsius, &there.last.celsius)
        );
    }
    Ok(())
}

fn timed(card: &Card, case: &Case, wish: &Wish) -> Result<Took, SolveError> {
    let begun = Instant::now();
    let on = Timed {
        card,
        ready: Mutex::new(begun),
    };
    let mut told = Vec::new();
    let outcome = solve_on(Some(&on), case, wish, None, &mut |progress, _| {
        told.push((Instant::now(), progress.steps));
        true
    })?;
    let whole_s = begun.elapsed().as_secs_f64();
    let ready = on.ready.lock().map_or(begun, |ready| *ready);
    let last = told.last().map_or(ready, |told| told.0);
    let of_batch = |pair: &[(Instant, usize)]| {
        let took = pair[1].0.duration_since(pair[0].0).as_secs_f64();
        took / (pair[1].1 - pair[0].1) as f64
    };
    let mut batches: Vec<f64> = told.windows(2).map(of_batch).collect();
    batches.sort_by(f64::total_cmp);
    Ok(Took {
        outcome,
        whole_s,
        steps_s: last.duration_since(ready).as_secs_f64(),
        step_s: batches
            .get(batches.len() / 2)
            .copied()
            .unwrap_or(f64::INFINITY),
    })
}
