//! Sieves, clay and permeability.

use measure::flow::Duration;
use measure::length::{Length, Volume};
use measure::matter::Mass;
use proptest::prelude::{prop_assert, proptest};
use sand::permeability::{permeability, round, water_column};
use sand::sieve::{BUILT_IN, Sieving, SievingError, clay_by_wash, grain_fineness, read, table};

const RIVER_SAND: [(u16, f64); 9] = [
    (20, 0.5),
    (30, 1.5),
    (40, 6.0),
    (50, 12.0),
    (70, 13.5),
    (100, 9.0),
    (140, 4.0),
    (200, 1.5),
    (270, 0.5),
];

fn sieving(kept: &[(u16, f64)], pan: f64) -> Sieving {
    Sieving {
        kept: kept
            .iter()
            .map(|(sieve, grams)| (*sieve, Mass::from_g(*grams)))
            .collect(),
        pan: Mass::from_g(pan),
    }
}

/// The same sand through fewer sieves: each holds what would have lain on those left out above.
fn through(stack: &[u16]) -> Sieving {
    let mut kept: Vec<(u16, f64)> = stack.iter().map(|sieve| (*sieve, 0.0)).collect();
    let mut pan = 0.5;
    for (sieve, grams) in RIVER_SAND {
        match kept.iter_mut().find(|(coarser, _)| sieve <= *coarser) {
            Some((_, held)) => *held += grams,
            None => pan += grams,
        }
    }
    sieving(&kept, pan)
}

#[test]
fn the_table_of_sieves_is_whole_and_runs_coarse_to_fine() {
    assert_eq!(&read(BUILT_IN).unwrap(), table());
    assert_eq!(table().sieves.len(), 11);
    for pair in table().sieves.windows(2) {
        assert!(pair[0].opening > pair[1].opening);
        assert!(pair[0].factor < pair[1].factor);
    }
}

#[test]
fn every_law_names_its_own_path_and_known_sources() {
    for law in sand::LAWS {
        assert!(law.name.starts_with("sand::"), "{}", law.name);
        for key in law.sources {
            assert!(
                measure::source::source(key).is_some(),
                "{}: {key}",
                law.name
            );
        }
    }
    let rammed = sand::batch::rammed_density();
    assert!(measure::source::source(&rammed.source).is_some());
}

#[test]
fn river_sand_through_the_full_stack() {
    let number = grain_fineness(&sieving(&RIVER_SAND, 0.5)).unwrap();
    assert!((number.likely() - 58.4).abs() < 0.1, "{number:?}");
    assert!(number.high() - number.low() < 0.2, "{number:?}");
}

#[test]
fn fewer_sieves_widen_the_band_and_still_hold_the_number() {
    let full = grain_fineness(&sieving(&RIVER_SAND, 0.5)).unwrap();
    let three = grain_fineness(&through(&[40, 70, 140])).unwrap();
    assert!(
        three.low() < full.low() && full.high() < three.high(),
        "{three:?}"
    );
    let four = grain_fineness(&through(&[40, 50, 70, 140])).unwrap();
    assert!(four.high() - four.low() < three.high() - three.low());
}

#[test]
fn the_order_of_the_sieves_does_not_matter() {
    let mut upside_down = RIVER_SAND;
    upside_down.reverse();
    let turned = grain_fineness(&sieving(&upside_down, 0.5)).unwrap();
    let straight = grain_fineness(&sieving(&RIVER_SAND, 0.5)).unwrap();
    assert!((turned.likely() - straight.likely()).abs() < 1e-12);
}

#[test]
fn a_stack_that_makes_no_sense_is_refused() {
    let unknown = grain_fineness(&sieving(&[(45, 1.0)], 0.0));
    assert!(matches!(
        unknown,
        Err(SievingError::UnknownSieve { number: 45, .. })
    ));
    let twice = grain_fineness(&sieving(&[(40, 1.0), (40, 1.0)], 0.0));
    assert_eq!(twice, Err(SievingError::Twice { number: 40 }));
    let empty = grain_fineness(&sieving(&[(40, 0.0)], 0.0));
    assert_eq!(empty, Err(SievingError::NothingKept));
}

#[test]
fn washed_fines_of_a_tired_heap() {
    let clay = clay_by_wash(Mass::from_g(50.0), Mass::from_g(44.6));
    assert!((clay - 0.108).abs() < 1e-9);
}

#[test]
fn a_bottle_of_air_through_a_plug() {
    let number = permeability(
        Volume::from_cm3(500.0),
        Length::from_mm(50.0),
        water_column(Length::from_mm(100.0)),
        round(Length::from_mm(50.0)),
        Duration::from_s(14.0),
    );
    assert!((number - 54.6).abs() < 0.1, "{number}");
}

proptest! {
    #[test]
    fn leaving_out_sieves_never_loses_the_number(left_out in 0usize..512) {
        let stack: Vec<u16> = RIVER_SAND
            .iter()
            .enumerate()
            .filter(|(place, _)| left_out & (1 << place) == 0)
            .map(|(_, (sieve, _))| *sieve)
            .collect();
        let full = grain_fineness(&sieving(&RIVER_SAND, 0.5)).unwrap();
        let fewer = grain_fineness(&through(&stack)).unwrap();
        prop_assert!(fewer.low() <= full.low() + 1e-9 && full.high() <= fewer.high() + 1e-9);
        prop_assert!(fewer.low() <= full.likely() && full.likely() <= fewer.high() + 1e-9);
    }
}
