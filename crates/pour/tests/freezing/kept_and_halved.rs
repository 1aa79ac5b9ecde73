//! A freezing that is stopped and goes on, and one that is followed on one side of its middle.

use pour::freeze::{Told, freeze, freeze_from, grids};
use pour::halves::{evened, halve, sides};
use pour::meshing::{Meshed, Meshing, meshed};
use pour::no_freeze::FreezeError;
use pour::solved::{Kept, Solved, solved};
use pour::start::Start;
use rigging::piece::Piece;
use solver::run::SolveError;

use crate::bodies::{block, joined, mould};
use crate::{as_poured, plain};

fn same(one: &[f32], other: &[f32]) -> bool {
    one.len() == other.len()
        && one
            .iter()
            .zip(other)
            .all(|(one, other)| one.to_bits() == other.to_bits())
}

/// Stopped in its second run and once more in its fourth, it ends with the very numbers of one that
/// was never stopped, and takes up what was kept instead of beginning anew.
#[test]
fn what_was_stopped_goes_on_to_the_same_answer() {
    let (plate, meshing) = plain();
    let poured = as_poured();
    let cut = || grids(&plate, &meshing).expect("cells");
    let whole = freeze(cut(), &meshing, &poured, &mut |_| true).expect("it freezes");
    let mut kept: Vec<Kept> = Vec::new();
    for stops_in in [2, 4] {
        let before = kept.clone();
        let mut went_on = 0;
        let stopped = freeze_from(
            cut(),
            &meshing,
            &poured,
            &before,
            &mut |told: &Told, run| {
                went_on +=
                    usize::from(told.time_s > 0.0 && before.iter().any(|kept| run.is_of(kept)));
                let is_there = told.run == stops_in && told.solid > 0.3;
                if told.solid >= 1.0 || is_there {
                    let now = run.keep();
                    kept.retain(|kept| kept.of != now.of);
                    kept.push(now);
                }
                !is_there
            },
        );
        let stopped = stopped.expect_err("it was stopped");
        assert!(matches!(
            stopped,
            FreezeError::Solve(SolveError::Stopped { .. })
        ));
        assert_eq!(went_on > 0, !before.is_empty());
    }
    assert_eq!(kept.len(), 4);
    let mut bytes = Vec::new();
    kept[3].write_to(&mut bytes).expect("a list takes it");
    kept[3] = Kept::read_from(&mut bytes.as_slice()).expect("the same");
    let mut first = Vec::new();
    let resumed = freeze_from(cut(), &meshing, &poured, &kept, &mut |told, _| {
        if told.run == 4 {
            first.push(told.solid);
        }
        true
    });
    let resumed = resumed.expect("it goes on");
    assert!(same(&whole.solved.ends_s, &resumed.solved.ends_s));
    assert_eq!(whole.last_s, resumed.last_s);
    assert_eq!(whole.pieces, resumed.pieces);
    assert_eq!(
        (whole.by_grid, whole.by_contact, whole.by_sand),
        (resumed.by_grid, resumed.by_contact, resumed.by_sand)
    );
    assert!(first.first().is_some_and(|solid| *solid > 0.3), "{first:?}");
}

/// What was kept of another mould is passed over.
#[test]
fn what_was_kept_of_another_mould_is_not_taken_up() {
    let (plate, meshing) = plain();
    let poured = as_poured();
    let mut kept = Vec::new();
    let cut = |wall_mm: f64| {
        let meshing = Meshing { wall_mm, ..meshing };
        grids(&plate, &meshing).expect("cells")
    };
    let other = freeze_from(
        cut(meshing.wall_mm * 1.3),
        &meshing,
        &poured,
        &[],
        &mut |_, run| {
            kept.push(run.keep());
            kept.len() < 5
        },
    );
    assert!(other.is_err());
    let fresh = freeze(cut(meshing.wall_mm), &meshing, &poured, &mut |_| true).expect("it freezes");
    let with = freeze_from(
        cut(meshing.wall_mm),
        &meshing,
        &poured,
        &kept,
        &mut |_, run| {
            assert!(kept.iter().all(|kept| !run.is_of(kept)));
            true
        },
    );
    let with = with.expect("it freezes");
    assert!(same(&fresh.solved.ends_s, &with.solved.ends_s));
}

fn run(meshed: Meshed, start: &Start) -> Solved {
    let poured = pour::solved::Poured {
        start: start.clone(),
        ..as_poured()
    };
    let likely = pour::solved::filling(&poured, 320.0, 1.0);
    solved(meshed, &poured, &likely, &mut |_| true).expect("it freezes")
}

/// A staircase is the same on both sides to the last bit, so that a quarter of it stands for all:
/// what differs is the order in which single numbers are added up.
#[test]
fn a_quarter_freezes_as_the_whole_does() {
    let (plate, meshing) = plain();
    let meshing = Meshing {
        staircase: true,
        even: true,
        ..meshing
    };
    let start = as_poured().start;
    let mut cells = meshed(&plate, &meshing).expect("cells");
    let whole = run(cells.clone(), &start);
    assert!(sides(&cells).iter().all(|sides| sides.are_alike()));
    halve(&mut cells, [true, true]);
    let quarter = run(cells, &start);
    assert!(
        quarter.work.cells * 3 < whole.work.cells,
        "{:?}",
        quarter.work
    );
    assert!((quarter.last_s / whole.last_s - 1.0).abs() < 1e-4);
    for (one, other) in whole.ends_s.iter().zip(&quarter.ends_s) {
        assert_eq!(one.is_nan(), other.is_nan());
        assert!(
            one.is_nan() || (one - other).abs() / one < 1e-3,
            "{one} {other}"
        );
    }
}

/// With a boss on one side only, the plane across x divides like from unlike, and that across y
/// does not.
#[test]
fn a_boss_on_one_side_is_seen() {
    let blocks = [
        (Piece::Casting(1), [[40.0, 30.0, 30.0], [120.0, 70.0, 46.0]]),
        (
            Piece::Casting(2),
            [[100.0, 44.0, 46.0], [112.0, 56.0, 60.0]],
        ),
    ];
    let lone = joined(&blocks, [160.0, 100.0, 90.0]);
    let meshing = Meshing {
        even: true,
        ..plain().1
    };
    let [across_x, across_y] = sides(&meshed(&lone, &meshing).expect("cells"));
    assert!(!across_x.are_alike(), "{across_x:?}");
    assert!(across_x.place_mm.is_some_and(|[_, _, z]| z > 46.0));
    assert!(across_y.are_alike(), "{across_y:?}");
    // An odd number of cells has no plane between them.
    let odd = mould(
        block([60.0, 40.0, 12.0]),
        [80.0, 50.0, 45.0],
        [160.0, 100.0, 90.0],
    );
    let mut meshing = Meshing {
        wall_mm: 12.0,
        across: 3.0,
        even: false,
        ..meshing
    };
    meshing.staircase = true;
    let odd = sides(&meshed(&odd, &meshing).expect("cells"));
    assert!(odd.iter().any(|sides| !sides.are_alike()), "{odd:?}");
}

/// A start that differs between the sides is evened out, and by how much is told.
#[test]
fn both_sides_start_from_their_mean() {
    let (plate, meshing) = plain();
    let meshing = Meshing {
        even: true,
        ..meshing
    };
    let mut cells = meshed(&plate, &meshing).expect("cells");
    halve(&mut cells, [true, false]);
    let warm = |cell: usize| 650.0 + 0.5 * cells.cells.cell(cell)[0] as f32;
    let start = Start::Each((0..cells.cells.stuff.len()).map(warm).collect());
    let (even, off_k) = evened(&start, &cells);
    let Start::Each(each) = &even else {
        panic!("it stays one a cell");
    };
    let count = cells.cells.count[0] as f32;
    let mean = 650.0 + 0.25 * (count - 1.0);
    assert!(each.iter().all(|celsius| (celsius - mean).abs() < 1e-3));
    assert!(off_k > 0.0 && off_k < 0.5 * f64::from(count));
    assert!((even.mean_c(&cells) - start.mean_c(&cells)).abs() < 0.5);
}
