//! The cases of the solver's own tests.

use proptest::prelude::{prop_assert, proptest};
use proptest::test_runner::Config;
use solver::case::{Case, Condition, Contact};
use solver::grid::Grid;
use solver::run::{End, Wish, solve, solve_on};

use crate::alike::{apart, assert_alike, both};
use crate::any_case::cases;
use crate::block::block_in_sand;
use crate::card;
use crate::materials::{damp, metal};

#[test]
fn a_block_in_sand_freezes_as_on_the_processor() {
    let Some(card) = card() else { return };
    let case = block_in_sand(32);
    let wish = Wish {
        longest_step_s: Some(8.0),
        moments_s: vec![20.0, 300.0],
        ..Wish::until(End::Solid { latest_s: 4000.0 })
    };
    let outcomes = both(&card, &case, &wish);
    assert_alike(&outcomes, 675.0);
    let [here, there] = &outcomes;
    assert_eq!(there.unfrozen, 0);
    assert_eq!(here.work, there.work);
    for (one, other) in here.moments.iter().zip(&there.moments) {
        assert_eq!(one.time_s, other.time_s);
        assert!(apart(&one.celsius, &other.celsius) < 0.1);
        assert!(apart(&one.j_m3, &other.j_m3) < 3e5);
    }
    // Criteria are read off the same places.
    let (one, other) = (&here.freezing, &there.freezing);
    let most = |list: &[f32]| list.iter().copied().fold(0.0, f32::max);
    let off = apart(&one.gradient_k_m, &other.gradient_k_m);
    assert!(off < 0.01 * most(&one.gradient_k_m), "{off} K/m");
    let off = apart(&one.cooling_k_s, &other.cooling_k_s);
    assert!(off < 0.01 * most(&one.cooling_k_s), "{off} K/s");
}

/// Sand whose water boils and whose conductivity changes, a contact that resists, half cells that
/// count less at first.
#[test]
fn damp_sand_a_contact_and_the_first_moments_go_alike() {
    let Some(card) = card() else { return };
    let mut case = block_in_sand(16);
    case.materials[0] = damp();
    case.contacts = vec![Contact {
        between: [0, 1],
        w_m2k: 500.0,
    }];
    let wish = Wish {
        longest_step_s: Some(8.0),
        early_contact: true,
        ..Wish::until(End::At { s: 250.0 })
    };
    assert_alike(&both(&card, &case, &wish), 675.0);
}

/// All that may lie at a side: held, put in, exchanged, nothing, and air within the box.
#[test]
fn what_passes_through_faces_is_the_same() {
    let Some(card) = card() else { return };
    let air = Condition::Exchange {
        w_m2k: 20.0,
        celsius: 25.0,
        emissivity: 0.4,
    };
    let mut case = Case::filled(Grid::uniform([14, 13, 12], 0.004), damp(), 25.0);
    case.materials.push(metal());
    case.voids = vec![air];
    case.faces = [
        Condition::Held { celsius: 15.0 },
        Condition::Insulated,
        air,
        Condition::Flux { w_m2: 2e4 },
        Condition::Insulated,
        Condition::Flux { w_m2: -1e3 },
    ];
    for cell in 0..case.cells.len() {
        let [x, y, z] = case.grid.place(cell);
        if (4..10).contains(&x) && (4..9).contains(&y) && (3..8).contains(&z) {
            case.cells[cell] = 1;
            case.start_c[cell] = 700.0;
        }
        if (9..12).contains(&x) && y > 8 && z > 6 {
            case.cells[cell] = 2;
        }
    }
    // Cells at a side go in one step on the processor and in stages on a card: both err by as much
    // as a step is long.
    let wish = Wish {
        longest_step_s: Some(0.25),
        ..Wish::until(End::At { s: 40.0 })
    };
    let outcomes = both(&card, &case, &wish);
    assert_alike(&outcomes, 685.0);
    assert!(outcomes[1].balance.through_j.abs() > 1e3);
}

proptest! {
    #![proptest_config(Config { cases: 24, failure_persistence: None, ..Config::default() })]

    /// Uneven cells, cells that are not full, chills, contacts and air, in any order: heat is kept,
    /// nothing leaves the extremes, and both say the same. Cells that the processor takes in one
    /// step may go in stages on a card, which differ by what a step errs.
    #[test]
    fn any_case_goes_alike(case in cases()) {
        let Some(card) = card() else { return Ok(()) };
        let longest_step_s = Some(0.01);
        let wish = Wish { longest_step_s, ..Wish::until(End::At { s: 0.4 }) };
        let here = solve(&case, &wish, &mut |_| true).expect("a sound case");
        let there = solve_on(Some(&card), &case, &wish, None, &mut |_, _| true);
        let there = there.expect("a sound case");
        prop_assert!(there.ran.is_some_and(|ran| ran.fell_back.is_none()));
        prop_assert!(there.balance.drift < 2e-6, "{:?}", there.balance);
        prop_assert!(there.beyond_k <= 0.001, "{}", there.beyond_k);
        for (one, other) in here.last.celsius.iter().zip(&there.last.celsius) {
            prop_assert!((one - other).abs() < 0.002 * 675.0, "{one} and {other}");
        }
    }
}
