//! A card that is lost in the middle of a run, and runs that change places.

use gpu::card::Card;
use solver::kept::Kept;
use solver::run::{End, Outcome, SolveError, Wish, solve, solve_from, solve_on};

use crate::alike::assert_alike;
use crate::block::block_in_sand;
use crate::card;

fn wish() -> Wish {
    Wish {
        longest_step_s: Some(4.0),
        moments_s: vec![10.0],
        ..Wish::until(End::At { s: 60.0 })
    }
}

/// The run goes on here from the last state that was read; the answer is the same.
#[test]
fn a_lost_card_loses_nothing() {
    let Some(card) = card() else { return };
    let (case, wish) = (block_in_sand(16), wish());
    let whole = solve(&case, &wish, &mut |_| true).expect("a sound case");
    let mut told = Vec::new();
    let outcome = solve_on(Some(&card), &case, &wish, None, &mut |progress, _| {
        told.push(progress.time_s);
        if told.len() == 1 {
            card.device.destroy();
        }
        true
    });
    let outcome = outcome.expect("the processor goes on");
    let ran = outcome.ran.clone().expect("it was tried");
    let (unable, from_s) = ran.fell_back.expect("it was lost");
    assert!(unable.to_string().contains("lost"), "{unable}");
    assert!(from_s < told[0], "{from_s} s");
    assert_alike(&[whole, outcome], 675.0);
    // A card that is gone is told as such to whoever comes next.
    let next = solve_on(Some(&card), &case, &wish, None, &mut |_, _| true);
    assert!(next.is_ok_and(|next| next.ran.is_some_and(|ran| ran.fell_back.is_some())));
}

/// What was kept on a card just before it was lost is taken up from there.
#[test]
fn a_run_goes_on_here_and_there() {
    let Some(card) = card() else { return };
    let (case, wish) = (block_in_sand(16), wish());
    let whole = solve(&case, &wish, &mut |_| true).expect("a sound case");
    let on_card = kept_at(&wish, |go_on| {
        solve_on(Some(&card), &case, &wish, None, go_on)
    });
    let here = solve_from(&case, &wish, Some(&on_card), &mut |_, _| true);
    assert_alike(&[whole.clone(), here.expect("the same case")], 675.0);
    let on_processor = kept_at(&wish, |go_on| solve_from(&case, &wish, None, go_on));
    let there = solve_on(
        Some(&card),
        &case,
        &wish,
        Some(&on_processor),
        &mut |_, _| true,
    );
    let there = there.expect("the same case");
    assert!(
        there
            .ran
            .as_ref()
            .is_some_and(|ran| ran.fell_back.is_none())
    );
    assert_alike(&[whole, there], 675.0);
}

/// The state of a run after the moment that is kept whole, by way of bytes.
fn kept_at(
    wish: &Wish,
    run: impl FnOnce(
        &mut dyn FnMut(&solver::run::Progress, &solver::run::Standing<'_>) -> bool,
    ) -> Result<Outcome, SolveError>,
) -> Kept {
    let mut bytes = Vec::new();
    let stopped = run(&mut |progress, standing| {
        let goes_on = progress.time_s <= wish.moments_s[0];
        if !goes_on {
            let kept = standing.keep();
            assert_eq!(kept.time_s, progress.time_s);
            kept.write_to(&mut bytes).expect("memory takes all");
        }
        goes_on
    });
    assert!(
        matches!(stopped, Err(SolveError::Stopped { .. })),
        "{stopped:?}"
    );
    Kept::read_from(&mut &*bytes).expect("whole bytes")
}

/// Asking for the state of a card that is gone gives the last one that was read.
#[test]
fn a_state_is_kept_though_the_card_is_gone() {
    let Some(card) = card() else { return };
    let (case, wish) = (block_in_sand(16), wish());
    let mut kept = None;
    let outcome = solve_on(Some(&card), &case, &wish, None, &mut |_, standing| {
        lose_first(&card, &mut kept, standing.keep());
        true
    });
    assert!(outcome.is_ok());
    let kept = kept.expect("a state");
    assert!(solve_from(&case, &wish, Some(&kept), &mut |_, _| true).is_ok());
}

/// The first state is read from the card, which is then lost.
fn lose_first(card: &Card, first: &mut Option<Kept>, now: Kept) {
    if first.is_none() {
        card.device.destroy();
    }
    *first = Some(now);
}
