//! Outcomes of the same case, side by side.

use gpu::card::Card;
use solver::case::Case;
use solver::run::{End, Outcome, Wish, solve, solve_on};

/// A case on the processor and on a card, which took all of its steps.
pub fn both(card: &Card, case: &Case, wish: &Wish) -> [Outcome; 2] {
    let here = solve(case, wish, &mut |_| true).expect("a sound case");
    let there = solve_on(Some(card), case, wish, None, &mut |_, _| true).expect("a sound case");
    let ran = there.ran.as_ref().expect("it was worth it");
    assert_eq!(ran.fell_back, None);
    [here, there]
}

/// Largest difference of two lists; what has not happened has happened in neither.
pub fn apart(one: &[f32], other: &[f32]) -> f32 {
    assert_eq!(one.len(), other.len());
    let off = |(one, other): (&f32, &f32)| {
        assert_eq!(one.is_nan(), other.is_nan(), "{one} and {other}");
        if one.is_nan() {
            0.0
        } else {
            (one - other).abs()
        }
    };
    one.iter().zip(other).map(off).fold(0.0, f32::max)
}

/// Checks that both say the same: times of freezing within 0.02 % of the last, temperatures within
/// as much of the span, heat kept to a hundred-thousandth.
pub fn assert_alike([here, there]: &[Outcome; 2], span_k: f32) {
    let (one, other) = (&here.freezing, &there.freezing);
    assert_eq!(one.cells, other.cells);
    let last_s = one.last_s().unwrap_or(here.last.time_s) as f32;
    for (one, other) in [
        (&one.begins_s, &other.begins_s),
        (&one.passes_s, &other.passes_s),
        (&one.ends_s, &other.ends_s),
    ] {
        let off = apart(one, other);
        assert!(off <= SHARE * last_s, "{off} s of {last_s} s");
    }
    let off = apart(&here.last.celsius, &there.last.celsius);
    assert!(off <= SHARE * span_k, "{off} K of {span_k} K");
    assert_eq!(here.unfrozen, there.unfrozen);
    assert_eq!(here.work.steps, there.work.steps);
    assert_eq!(here.last.time_s, there.last.time_s);
    assert!(there.balance.drift < 1e-5, "{:?}", there.balance);
    let whole_j = here.balance.start_j.abs().max(here.balance.through_j.abs());
    let off_j = (here.balance.through_j - there.balance.through_j).abs();
    assert!(
        off_j <= f64::from(SHARE) * whole_j,
        "{off_j} J of {whole_j} J through faces"
    );
}

/// Share of time or temperature by which both may differ.
const SHARE: f32 = 2e-4;

/// The wish cut short so that software in the place of a card is through with it in seconds; as it
/// is where the case is small, or where all of it is asked for.
pub fn cut_short(case: &Case, wish: &Wish) -> Wish {
    let mut wish = wish.clone();
    if std::env::var_os("ODDSIDE_WHOLE_CASES").is_some() {
        return wish;
    }
    let mut worked = 0;
    let mut reached_s = None;
    let through = solve(case, &wish, &mut |progress| {
        worked += case.cells.len() + CELLS_A_STEP;
        reached_s = Some(progress.time_s);
        worked < MOST_CELLS
    });
    if let (Err(_), Some(s)) = (through, reached_s) {
        wish.end = End::At { s };
        wish.moments_s.retain(|&at| at < s);
    }
    wish
}

/// Cells that software takes through a step in a few seconds, with a dozen stages each.
const MOST_CELLS: usize = 2_000_000;

/// What a step costs beside its cells.
const CELLS_A_STEP: usize = 10_000;
