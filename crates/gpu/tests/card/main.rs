//! A card against the processor on the same cases, and what becomes of a run that loses its card.
//!
//! Where there is no card, software in its place does. A machine with neither passes these tests
//! by, unless `ODDSIDE_NEEDS_CARD` is set, as it is at the gate. Software is slow: long cases are
//! cut short for it, unless `ODDSIDE_WHOLE_CASES` is set.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

mod alike;
#[path = "../../../solver/tests/any_case/mod.rs"]
mod any_case;
#[path = "../../../solver/tests/block/mod.rs"]
mod block;
mod cases;
mod examples;
mod limits;
mod lost;

use block::materials;
use gpu::adapters::{Adapter, adapters};
use gpu::card::Card;

/// The card of this machine, or software in its place.
fn adapter() -> Option<Adapter> {
    let best = adapters().into_iter().next();
    let needed = std::env::var_os("ODDSIDE_NEEDS_CARD").is_some();
    assert!(
        best.is_some() || !needed,
        "no card, nor software in its place"
    );
    best
}

/// The same, open.
fn card() -> Option<Card> {
    adapter().map(|adapter| Card::open(&adapter).expect("it opens"))
}
