//! Contraction, worn originals, tolerance, machining stock and draught.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use measure::band::Band;
use measure::length::Length;
use measure::share::Contraction;
use measure::source::source;
use pattern::cast_metal::CastMetal;
use pattern::contraction::{
    Build, Measured, MeasuredError, by_size, casting_length, from_castings, growth_sideways,
    pattern_length, rapped_length,
};
use pattern::original::{built_up_length, master_length, shim};
use pattern::shrink_rule::{marks, one_in, per_foot};
use proptest::prelude::{Strategy, prop_assert, proptest};

/// Grey iron as two sources have it: 3/32 and 1/8 in per ft.
const IRON: [f64; 2] = [3.0 / 32.0 / 12.0, 1.0 / 8.0 / 12.0];

fn mm(amount: f64) -> Length {
    Length::from_mm(amount)
}

fn contraction(text: &str) -> f64 {
    text.parse::<Contraction>().unwrap().ratio
}

fn within(length: Length, low_mm: f64, high_mm: f64) -> bool {
    // The figures aimed at are rounded to a tenth of a millimetre.
    (low_mm - 0.05..=high_mm + 0.05).contains(&length.as_mm())
}

#[test]
fn every_law_names_its_own_path_and_known_sources() {
    for law in pattern::LAWS {
        assert!(law.name.starts_with("pattern::"), "{}", law.name);
        for key in law.sources {
            assert!(source(key).is_some(), "{}: {key}", law.name);
        }
    }
}

#[test]
fn an_iron_original_used_as_it_is_comes_out_small() {
    for s in IRON {
        assert!(within(casting_length(mm(100.0), s), 99.0, 99.2));
        assert!(within(casting_length(mm(320.0), s), 316.7, 317.5));
        assert!(within(casting_length(mm(280.0), s), 277.1, 277.8));
    }
}

#[test]
fn patterns_of_the_shop_come_out_in_their_bands() {
    let jaw = ["5/32 in per ft", "0.166 in per ft"].map(contraction);
    assert!(
        jaw.iter()
            .all(|s| within(pattern_length(mm(125.0), *s), 126.6, 127.0))
    );
    let cleat = ["5/32 in per ft", "1/4 in per ft"].map(contraction);
    assert!(
        cleat
            .iter()
            .all(|s| within(pattern_length(mm(230.0), *s), 233.0, 234.8))
    );
    let wheel = ["3/32 in per ft", "1.3 %"].map(contraction);
    assert!(
        wheel
            .iter()
            .all(|s| within(pattern_length(mm(260.0), *s), 262.0, 263.4))
    );
    let body = ["1.04 %", "1.82 %"].map(contraction);
    let growth = body.map(|s| (pattern_length(mm(140.0), s) - mm(140.0)).as_mm());
    assert!(
        growth.iter().all(|mm| (1.45..=2.55).contains(mm)),
        "{growth:?}"
    );
}

#[test]
fn a_small_rapped_pattern_grows_in_depth_alone() {
    let aluminium = Band::new(0.0104, 0.013, 0.0182);
    let sideways = growth_sideways(mm(60.0), &aluminium);
    assert!(sideways.likely() == 0.0 && sideways.high() == aluminium.high());
    assert!(pattern_length(mm(60.0), aluminium.low()) > mm(60.0));
    let large = growth_sideways(mm(76.0), &aluminium);
    assert_eq!(large, aluminium);
    let play = pattern_length(mm(60.0), 0.013) - mm(60.0);
    let across = rapped_length(mm(60.0), 0.013, play);
    assert!((across.as_mm() - 60.0).abs() < 1e-12);
}

#[test]
fn three_castings_narrow_the_band_and_stay_inside_the_data() {
    let published = Band::new(0.0104, 0.013, 0.0182);
    let castings = [98.82, 98.75, 98.69].map(|cast| Measured {
        pattern: mm(100.0),
        casting: mm(cast),
    });
    let own = from_castings(&castings).unwrap();
    let each = castings.map(|one| one.pattern / one.casting - 1.0);
    assert!(own.low() >= each[0] && own.high() <= each[2]);
    assert!(own.low() < own.likely() && own.likely() < own.high());
    assert!(own.high() - own.low() < published.high() - published.low());
    // 1.27 and a few hundredths either way, as a shop would say it.
    assert!((own.likely() - 0.0127).abs() < 0.0001, "{own:?}");
}

#[test]
fn two_castings_or_another_length_give_nothing() {
    let one = Measured {
        pattern: mm(100.0),
        casting: mm(98.8),
    };
    assert_eq!(
        from_castings(&[one, one]),
        Err(MeasuredError::TooFew { given: 2 })
    );
    let other = Measured {
        casting: mm(80.0),
        ..one
    };
    let refused = from_castings(&[one, other, one]);
    assert!(matches!(
        refused,
        Err(MeasuredError::NotTheSameLength { number: 2, .. })
    ));
    let nothing = Measured {
        casting: Length::ZERO,
        ..one
    };
    assert!(from_castings(&[one, one, nothing]).is_err());
}

#[test]
fn the_table_by_size_is_whole_and_falls_with_size_and_cores() {
    let ratio = |metal, size, build| by_size(metal, mm(size), build).unwrap().value;
    let iron = |size, build| ratio(CastMetal::GreyIron, size, build).likely();
    assert!((iron(300.0, Build::Open) - 0.125 / 12.0).abs() < 1e-12);
    assert!(iron(1500.0, Build::Open) < iron(1000.0, Build::Open));
    assert!(iron(1000.0, Build::Cored) < iron(1000.0, Build::Open));
    let bronze = ratio(CastMetal::Bronze, 200.0, Build::Cored);
    assert!(bronze.low() < 0.0105 && bronze.high() > 0.0208);
    assert!(by_size(CastMetal::Zinc, mm(100.0), Build::Open).is_none());
    let metals = [
        CastMetal::GreyIron,
        CastMetal::Steel,
        CastMetal::Aluminium,
        CastMetal::Brass,
    ];
    for metal in metals {
        for build in [Build::Open, Build::Cored] {
            let mut last = f64::INFINITY;
            for size in (1..30).map(|step| f64::from(step) * 100.0) {
                let row = by_size(metal, mm(size), build).unwrap();
                assert!(row.value.high() <= last, "{metal} at {size}");
                assert!(source(&row.source).is_some());
                last = row.value.high();
            }
        }
    }
}

#[test]
fn a_worn_original_is_built_up_for_wear_machining_and_contraction() {
    let original = mm(99.4);
    let pattern = built_up_length(original, mm(0.6), mm(3.0), 0.01);
    assert!((pattern.as_mm() - 104.03).abs() < 1e-9);
    assert!((shim(pattern, original).as_mm() - 4.63).abs() < 1e-9);
    // Without wear and machining it is the plain pattern.
    let plain = built_up_length(original, Length::ZERO, Length::ZERO, 0.01);
    assert_eq!(plain, pattern_length(original, 0.01));
}

#[test]
fn a_pattern_cast_in_metal_contracts_twice() {
    let master = master_length(mm(100.0), 0.0104, 0.013);
    let pattern = casting_length(master, 0.013);
    assert!((casting_length(pattern, 0.0104).as_mm() - 100.0).abs() < 1e-9);
}

#[test]
fn contraction_is_spoken_of_in_three_ways() {
    assert!((per_foot(contraction("1 in 96")) - 0.125).abs() < 1e-12);
    assert!((one_in(contraction("5/32 in per ft")) - 76.8).abs() < 1e-9);
    assert!((contraction("1 in 75") - 0.01333).abs() < 0.00001);
}

#[test]
fn a_contraction_rule_has_a_mark_for_every_step_and_both_ends() {
    let rule: Vec<_> = marks(mm(300.0), mm(1.0), 0.013).collect();
    assert_eq!(rule.len(), 301);
    assert_eq!(rule[0].at, Length::ZERO);
    assert!((rule[300].at.as_mm() - 303.9).abs() < 1e-9);
    let inches: Vec<_> = marks(
        Length::from_inch(12.0),
        Length::from_inch(1.0 / 16.0),
        0.0125,
    )
    .collect();
    assert_eq!(inches.len(), 193);
    assert!((inches[192].at.as_inch() - 12.15).abs() < 1e-9);
    assert_eq!(marks(mm(300.0), Length::ZERO, 0.01).count(), 0);
    assert_eq!(marks(Length::ZERO, Length::ZERO, 0.01).count(), 0);
}

proptest! {
    #[test]
    fn the_casting_of_a_pattern_is_the_part_in_any_unit(
        size in 1.0f64..2000.0, s in 0.0f64..0.03,
    ) {
        let back = casting_length(pattern_length(mm(size), s), s);
        prop_assert!((back.as_mm() - size).abs() < 1e-9 * size);
        let in_inches = pattern_length(Length::from_inch(size / 25.4), s);
        prop_assert!((in_inches / pattern_length(mm(size), s) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn more_of_anything_asks_for_a_larger_pattern(
        size in 1.0f64..2000.0, wear in 0.0f64..5.0, stock in 0.0f64..10.0, s in 0.0f64..0.03,
        more in 0.001f64..1.0,
    ) {
        let (wear, stock, more) = (mm(wear), mm(stock), mm(more));
        let size = mm(size);
        let pattern = built_up_length(size, wear, stock, s);
        prop_assert!(pattern >= size);
        prop_assert!(built_up_length(size, wear + more, stock, s) > pattern);
        prop_assert!(built_up_length(size, wear, stock + more, s) > pattern);
        prop_assert!(built_up_length(size, wear, stock, s + 0.001) > pattern);
        prop_assert!(shim(pattern, size) >= wear + stock);
    }

    #[test]
    fn castings_of_ones_own_never_leave_what_was_measured(
        castings in proptest::collection::vec(96.0f64..100.0, 3..12),
    ) {
        let measured: Vec<_> = castings
            .iter()
            .map(|cast| Measured { pattern: mm(100.0), casting: mm(*cast) })
            .collect();
        let own = from_castings(&measured).unwrap();
        let each = castings.iter().map(|cast| 100.0 / cast - 1.0);
        let least = each.clone().fold(f64::INFINITY, f64::min);
        let most = each.fold(f64::NEG_INFINITY, f64::max);
        prop_assert!(least - 1e-12 <= own.low() && own.high() <= most + 1e-12);
        prop_assert!(own.low() <= own.likely() && own.likely() <= own.high());
    }

    #[test]
    fn marks_lie_evenly_and_never_add_up_an_error(
        steps in 1usize..2000, step in 0.1f64..20.0, s in 0.0f64..0.03,
    ) {
        let rule: Vec<_> = marks(mm(step * steps as f64), mm(step), s).collect();
        prop_assert!(rule.len() == steps + 1);
        for mark in rule {
            let exact = mark.number as f64 * step * (1.0 + s);
            prop_assert!((mark.at.as_mm() - exact).abs() < 1e-9 * exact.max(1.0));
        }
    }

    #[test]
    fn the_three_ways_of_a_contraction_agree(s in (1u32..300).prop_map(|n| f64::from(n) / 1e4)) {
        prop_assert!((per_foot(s) * one_in(s) - 12.0).abs() < 1e-9);
    }
}
