//! A card against the processor on the same cases, and what happens when a card is lost.
//!
//! Where there is no card, software in its place does; a machine with neither passes these tests by
//! unless `ODDSIDE_NEEDS_CARD` is set, as it is at the gate.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]
#![allow(clippy::print_stderr, reason = "figures")]

#[path = "../../solver/tests/block/mod.rs"]
mod block;

use block::block_in_sand;
use gpu::adapters::adapters;
use gpu::card::Card;
use solver::elsewhere::Elsewhere;
use solver::run::{End, Wish, solve, solve_on};

fn card() -> Option<Card> {
    let best = adapters().into_iter().next();
    assert!(
        best.is_some() || std::env::var_os("ODDSIDE_NEEDS_CARD").is_none(),
        "no card, nor software in its place"
    );
    best.map(|adapter| Card::open(&adapter).expect("it opens"))
}

#[test]
fn block() {
    let Some(card) = card() else { return };
    for edge in [32, 64] {
        let case = block_in_sand(edge);
        let wish = Wish {
            longest_step_s: Some(2.0),
            ..Wish::until(End::Solid { latest_s: 4000.0 })
        };
        let here = solve(&case, &wish, &mut |_| true).expect("a sound case");
        let begun = std::time::Instant::now();
        let there = solve_on(Some(&card), &case, &wish, None, &mut |_, _| true).expect("a case");
        eprintln!(
            "{edge} {:?} {:?} {:?}",
            card.name(),
            begun.elapsed(),
            there.ran
        );
        eprintln!("{:?} {:?}", here.work, here.balance);
        eprintln!("{:?} {:?}", there.work, there.balance);
        eprintln!("{:?} {:?}", here.freezing.last_s(), there.freezing.last_s());
        let most = |a: &[f32], b: &[f32]| {
            a.iter()
                .zip(b)
                .map(|(a, b)| (a - b).abs())
                .fold(0.0, f32::max)
        };
        eprintln!(
            "begins {} passes {} ends {} gradient {} cooling {}",
            most(&here.freezing.begins_s, &there.freezing.begins_s),
            most(&here.freezing.passes_s, &there.freezing.passes_s),
            most(&here.freezing.ends_s, &there.freezing.ends_s),
            most(&here.freezing.gradient_k_m, &there.freezing.gradient_k_m),
            most(&here.freezing.cooling_k_s, &there.freezing.cooling_k_s),
        );
        eprintln!("celsius {}", most(&here.last.celsius, &there.last.celsius));
    }
}
