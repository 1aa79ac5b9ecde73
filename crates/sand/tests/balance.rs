//! The book of a heap: nothing appears, nothing vanishes, and long runs end where sums say.

use measure::length::{Area, Length};
use measure::matter::{Density, Mass};
use proptest::prelude::{prop_assert, proptest};
use sand::heap::balance::{
    BOUND_WATER, BalanceError, Pour, Renewal, after_pour, burnt_share, clay_wanted, pours_left,
    renewed,
};
use sand::heap::holds::{Bounds, Heap, Passed};
use sand::heap::{discard_share, steady_fines};

fn kg(amount: f64) -> Mass {
    Mass::from_kg(amount)
}

fn heap() -> Heap {
    Heap {
        sand: kg(80.0),
        live_clay: kg(6.0),
        organic: kg(1.5),
        fines: kg(0.5),
        water: kg(3.6),
        ..Heap::default()
    }
}

fn near(one: Mass, other: f64) -> bool {
    (one.as_kg() - other).abs() < 1e-9
}

/// Thirty pours without renewal: what is alive falls by the same share each time, a geometric
/// row, and the clay that died is what is missing less its bound water.
#[test]
fn thirty_pours_end_where_the_geometric_row_ends() {
    let pour = Pour {
        clay_burnt: 0.02,
        organic_burnt: 0.05,
        dried: 0.0,
        ash: 0.1,
        core_sand: kg(0.2),
        parting: kg(0.01),
        ..Pour::default()
    };
    let mut now = heap();
    let (mut gas, mut steam) = (0.0, 0.0);
    for _ in 0..30 {
        let after = after_pour(&now, &pour).unwrap();
        now = after.heap;
        gas += after.gone.gas.as_kg();
        steam += after.gone.steam.as_kg();
    }
    let live = 6.0 * 0.98_f64.powi(30);
    let organic = 1.5 * 0.95_f64.powi(30);
    assert!(near(now.live_clay, live));
    assert!(near(now.dead_clay, (6.0 - live) * (1.0 - BOUND_WATER)));
    assert!(near(now.organic, organic));
    assert!(near(now.ash, (1.5 - organic) * 0.1));
    assert!(near(now.core_sand, 6.0));
    assert!(near(now.parting, 0.3));
    // Within half a per cent is asked for (needs.md, capability 28); it is to the gram.
    let brought_in = 30.0 * 0.21;
    assert!((heap().total().as_kg() + brought_in - gas - steam - now.total().as_kg()).abs() < 1e-9);
}

/// The share thrown out each time that [`discard_share`] asks for holds the fines under the limit
/// that it was asked for, and they settle where [`steady_fines`] says.
#[test]
fn the_share_thrown_out_holds_the_fines() {
    // What becomes of the clay that dies and of what is topped up: 0.3 % of the heap a pour.
    let (made, limit) = (0.003, 0.10);
    let share = discard_share(made, limit, 0.0);
    let mut now = Heap {
        sand: kg(100.0),
        ..Heap::default()
    };
    for _ in 0..400 {
        now.fines += kg(100.0 * made);
        now.sand += kg(-100.0 * made);
        let renewal = Renewal {
            heap_out: share,
            sand: kg(100.0 * share),
            ..Renewal::default()
        };
        now = renewed(&now, &Pour::default(), &renewal).unwrap().heap;
        assert!(now.dead() / now.dry() <= limit);
    }
    let settled = now.dead() / now.dry();
    // After the exchange the fines stand one throw below the settled level.
    let expected = steady_fines(made, share, 0.0) * (1.0 - share);
    assert!(
        (settled / expected - 1.0).abs() < 0.005,
        "{settled} {expected}"
    );
}

#[test]
fn throwing_the_crust_out_keeps_dead_clay_out() {
    let pour = Pour {
        clay_burnt: 0.03,
        organic_burnt: 0.05,
        ash: 0.1,
        ..Pour::default()
    };
    let poured = after_pour(&heap(), &pour).unwrap().heap;
    let with = |crust_out: f64| {
        let renewal = Renewal {
            crust_out,
            ..Renewal::default()
        };
        renewed(&poured, &pour, &renewal).unwrap().heap
    };
    assert!(with(0.0).dead_clay > Mass::ZERO);
    assert!(near(with(1.0).dead_clay, 0.0));
    assert!(near(with(1.0).sand, 80.0 * 0.97));
    assert!(near(with(1.0).live_clay, 6.0 * 0.97));
}

#[test]
fn a_heap_warns_before_it_goes_bad() {
    let pour = Pour {
        clay_burnt: 0.04,
        ..Pour::default()
    };
    let bounds = Bounds {
        live_clay: 0.05,
        dead: 0.12,
        organic: 0.05,
    };
    let left = pours_left(&heap(), &pour, &Renewal::default(), &bounds, 200).unwrap();
    // 6.82 % live at the start falls below 5 % after ln(5/6.82)/ln(0.96) pours: the eighth.
    assert_eq!(left, Some((8, Passed::LiveClay)));
    let kept = Renewal {
        clay: kg(0.53),
        heap_out: 0.05,
        sand: kg(4.4),
        ..Renewal::default()
    };
    let longer = pours_left(&heap(), &pour, &kept, &bounds, 200).unwrap();
    assert!(longer.is_none_or(|(pours, _)| pours > 8), "{longer:?}");
}

#[test]
fn clay_wanted_brings_the_live_clay_back() {
    let (dry, live) = (kg(82.0), kg(3.0));
    let clay = clay_wanted(dry, live, 0.06);
    assert!(((live + clay) / (dry + clay) - 0.06).abs() < 1e-12);
    assert_eq!(clay_wanted(dry, kg(8.0), 0.06), Mass::ZERO);
}

#[test]
fn a_deeper_crust_is_a_larger_share() {
    let share = |mm: f64| {
        let faces = Area::from_m2(0.06);
        burnt_share(
            faces,
            Length::from_mm(mm),
            Density::from_g_per_cm3(1.6),
            kg(90.0),
        )
    };
    assert!((share(16.0) / share(8.0) - 2.0).abs() < 1e-12);
}

#[test]
fn steps_that_are_none_are_told() {
    let odd = Pour {
        clay_burnt: 1.2,
        ..Pour::default()
    };
    let said = after_pour(&heap(), &odd).unwrap_err().to_string();
    assert!(said.contains("120.0 %"), "{said}");
    let nothing = after_pour(&Heap::default(), &Pour::default());
    assert_eq!(nothing, Err(BalanceError::Empty));
    let odd = Renewal {
        clay: kg(-1.0),
        ..Renewal::default()
    };
    let said = renewed(&heap(), &Pour::default(), &odd)
        .unwrap_err()
        .to_string();
    assert!(said.contains("new clay"), "{said}");
}

proptest! {
    /// What was there and came in is what is there and went out.
    #[test]
    fn masses_are_kept(
        burnt in 0.0..1.0, organic in 0.0..1.0, dried in 0.0..1.0, ash in 0.0..1.0,
        broken in 0.0..1.0, crust in 0.0..1.0, out in 0.0..1.0, clay in 0.0..5.0,
    ) {
        let pour = Pour {
            clay_burnt: burnt,
            organic_burnt: organic,
            dried,
            ash,
            broken,
            core_sand: kg(0.3),
            core_binder: kg(0.01),
            parting: kg(0.02),
        };
        let renewal = Renewal {
            crust_out: crust,
            heap_out: out,
            sand: kg(3.0),
            fines_of_sand: 0.01,
            clay: kg(clay),
            organic: kg(0.1),
            water: kg(0.5),
        };
        let poured = after_pour(&heap(), &pour).unwrap();
        let after = renewed(&poured.heap, &pour, &renewal).unwrap();
        let came = heap().total().as_kg() + 0.33 + 3.6 + clay;
        let went = (poured.gone.steam + poured.gone.gas + after.gone.thrown).as_kg();
        let left = after.heap.total().as_kg();
        prop_assert!((came - went - left).abs() < 1e-9, "{came} {went} {left}");
        let parts = after.heap.parts();
        prop_assert!(parts.iter().all(|(_, mass)| mass.as_kg() >= -1e-12));
    }
}
