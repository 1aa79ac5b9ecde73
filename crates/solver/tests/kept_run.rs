//! A run that goes on from what was kept gives the answer of one that was never stopped.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

mod block;

use block::block_in_sand;
use block::materials::damp;
use rayon::ThreadPoolBuilder;
use solver::case::Case;
use solver::grid::Grid;
use solver::kept::{Kept, KeptError};
use solver::material::{Freezes, Material, Phase};
use solver::run::{End, Mode, Outcome, SolveError, Wish, solve, solve_from};

/// A run that is kept as bytes after so many steps and stopped there.
fn kept_after(case: &Case, wish: &Wish, steps: usize) -> Vec<u8> {
    let mut bytes = Vec::new();
    let stopped = solve_from(case, wish, None, &mut |progress, standing| {
        if progress.steps == steps {
            let kept = standing.keep();
            kept.write_to(&mut bytes).expect("memory takes all");
        }
        progress.steps < steps
    });
    assert!(
        matches!(stopped, Err(SolveError::Stopped { .. })),
        "{stopped:?}"
    );
    bytes
}

fn taken_up(case: &Case, wish: &Wish, bytes: &[u8]) -> Outcome {
    let kept = Kept::read_from(&mut &*bytes).expect("whole bytes");
    solve_from(case, wish, Some(&kept), &mut |_, _| true).expect("the same case")
}

/// Both to the last digit, but for sums that the threads share.
fn assert_same(one: &Outcome, other: &Outcome) {
    assert_eq!(one.last, other.last);
    assert_eq!(one.moments, other.moments);
    assert_eq!(one.work, other.work);
    assert_eq!(one.unfrozen, other.unfrozen);
    // What has not happened is not a number, which never equals itself.
    assert_eq!(
        format!("{:?}", one.freezing),
        format!("{:?}", other.freezing)
    );
    let whole = one.balance.start_j.abs();
    for (one_j, other_j) in [
        (one.balance.start_j, other.balance.start_j),
        (one.balance.end_j, other.balance.end_j),
        (one.balance.through_j, other.balance.through_j),
    ] {
        assert!(
            (one_j - other_j).abs() <= 1e-12 * whole,
            "{one_j} and {other_j} J"
        );
    }
}

/// What freezes in sand that dries, one end held cold.
fn bar_in_damp_sand() -> Case {
    let phase = Phase {
        j_m3k: 2.7e6,
        w_mk: 120.0,
    };
    let metal = Freezes {
        solid: phase,
        liquid: phase,
        latent_j_m3: 9e8,
        solidus_c: 577.0,
        liquidus_c: 577.0,
    };
    let mut case = Case::filled(Grid::uniform([26, 17, 15], 0.004), damp(), 25.0);
    case.materials.push(Material::freezing("metal", metal));
    case.faces[3] = solver::case::Condition::Held { celsius: 15.0 };
    for cell in 0..case.grid.cells() {
        let [x, y, z] = case.grid.place(cell);
        if (5..19).contains(&x) && (5..9).contains(&y) && (4..11).contains(&z) {
            case.cells[cell] = 1;
            case.start_c[cell] = 650.0;
        }
    }
    case
}

#[test]
fn a_run_goes_on_to_the_same_answer() {
    let case = block_in_sand(32);
    let wish = Wish {
        longest_step_s: Some(4.0),
        moments_s: vec![5.0, 100.0, 300.0],
        ..Wish::until(End::Solid { latest_s: 4000.0 })
    };
    let whole = solve(&case, &wish, &mut |_| true).expect("a sound case");
    for steps in [1, 80, whole.work.steps - 1, whole.work.steps] {
        let bytes = kept_after(&case, &wish, steps);
        assert_same(&taken_up(&case, &wish, &bytes), &whole);
    }
}

#[test]
fn other_threads_go_on_to_the_same_answer() {
    let case = bar_in_damp_sand();
    let wish = Wish {
        moments_s: vec![20.0],
        early_contact: true,
        ..Wish::until(End::At { s: 200.0 })
    };
    let whole = solve(&case, &wish, &mut |_| true).expect("a sound case");
    let bytes = kept_after(&case, &wish, 60);
    for threads in [1, 3] {
        let pool = ThreadPoolBuilder::new().num_threads(threads).build();
        let pool = pool.expect("threads");
        assert_same(&pool.install(|| taken_up(&case, &wish, &bytes)), &whole);
    }
}

#[test]
fn the_reference_goes_on_too() {
    let case = bar_in_damp_sand();
    let wish = Wish {
        mode: Mode::Reference,
        ..Wish::until(End::At { s: 20.0 })
    };
    let whole = solve(&case, &wish, &mut |_| true).expect("a sound case");
    let bytes = kept_after(&case, &wish, 100);
    assert_same(&taken_up(&case, &wish, &bytes), &whole);
}

#[test]
fn what_is_not_whole_or_of_another_case_is_refused() {
    let case = bar_in_damp_sand();
    let wish = Wish::until(End::At { s: 50.0 });
    let bytes = kept_after(&case, &wish, 20);
    for cut in [0, 7, 16, 60, bytes.len() / 2, bytes.len() - 1] {
        let error = Kept::read_from(&mut &bytes[..cut]).expect_err("cut off");
        let wanted = if cut < 16 {
            KeptError::Foreign
        } else {
            KeptError::Broken
        };
        assert_eq!(error, wanted, "{cut}");
    }
    let mut changed = bytes.clone();
    changed[bytes.len() / 2] ^= 1;
    assert_eq!(Kept::read_from(&mut &*changed), Err(KeptError::Broken));
    // A length beyond all bounds takes no memory.
    let mut long = bytes.clone();
    long[16 + 3 * 8 + 4 * 8..][..8].copy_from_slice(&u64::MAX.to_le_bytes());
    assert_eq!(Kept::read_from(&mut &*long), Err(KeptError::Broken));
    let kept = Kept::read_from(&mut &*bytes).expect("whole bytes");
    let mut other = case.clone();
    other.start_c[0] = 26.0;
    let longer = Wish::until(End::At { s: 51.0 });
    for (case, wish) in [(&other, &wish), (&case, &longer)] {
        let refused = solve_from(case, wish, Some(&kept), &mut |_, _| true);
        assert_eq!(refused, Err(SolveError::Kept(KeptError::OtherCase)));
    }
}
