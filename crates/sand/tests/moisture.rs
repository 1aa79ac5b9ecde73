//! Moisture: counting it, adding it, drying it off, and when not to pour.

use measure::matter::Mass;
use proptest::prelude::{prop_assert, proptest};
use sand::moisture::{
    Bond, Dryness, Missing, dry_down_stop, dry_from_wet, dryness, water_to_add, wet_basis,
    wet_from_dry,
};

#[test]
fn one_handful_on_both_bases() {
    let moisture = wet_basis(Mass::from_g(200.0), Mass::from_g(189.6));
    assert!((moisture - 0.0520).abs() < 1e-9);
    assert!((dry_from_wet(moisture) - 0.0549).abs() < 0.00005);
}

#[test]
fn water_for_a_heap() {
    let water = water_to_add(Mass::from_kg(18.0), 0.052, 0.075);
    assert!((water.as_g() - 448.0).abs() < 1.0);
}

#[test]
fn drying_stops_at_a_mark_on_the_scale() {
    let stop = dry_down_stop(Mass::from_kg(22.0), 0.09, 0.06);
    assert!((stop.as_kg() - 21.30).abs() < 0.005);
}

#[test]
fn a_rained_on_heap_loses_kilograms() {
    let lost = |wanted| {
        let heap = Mass::from_kg(90.0);
        (heap - dry_down_stop(heap, 0.091, wanted)).as_kg()
    };
    assert!((lost(0.045) - 4.34).abs() < 0.005);
    assert!((lost(0.040) - 4.78).abs() < 0.005);
    assert!((lost(0.050) - 3.88).abs() < 0.005);
}

#[test]
fn bentonite_sand_is_not_poured_above_six_per_cent() {
    assert_eq!(
        dryness(Bond::Bentonite, 0.06),
        Dryness::WithinLimit { limit: 0.06 }
    );
    assert_eq!(
        dryness(Bond::Bentonite, 0.061),
        Dryness::TooWet { limit: 0.06 }
    );
}

#[test]
fn natural_sand_goes_by_its_own_temper() {
    let own = Bond::Natural { temper: Some(0.08) };
    assert!(matches!(dryness(own, 0.085), Dryness::WithinLimit { .. }));
    assert!(matches!(dryness(own, 0.095), Dryness::TooWet { .. }));
}

#[test]
fn what_is_not_known_is_asked() {
    let natural = dryness(Bond::Natural { temper: None }, 0.04);
    assert_eq!(
        natural,
        Dryness::Ask {
            missing: Missing::Temper
        }
    );
    let unknown = dryness(Bond::Unknown, 0.04);
    assert_eq!(
        unknown,
        Dryness::Ask {
            missing: Missing::Bond
        }
    );
}

proptest! {
    #[test]
    fn the_bases_lead_back_to_each_other(moisture in 0.0f64..0.5) {
        prop_assert!((wet_from_dry(dry_from_wet(moisture)) - moisture).abs() < 1e-12);
    }

    #[test]
    fn water_added_is_water_to_dry_off_again(
        kilograms in 0.1f64..500.0, now in 0.0f64..0.1, more in 0.0f64..0.1,
    ) {
        let heap = Mass::from_kg(kilograms);
        let wetter = heap + water_to_add(heap, now, now + more);
        let back = dry_down_stop(wetter, now + more, now);
        prop_assert!((back.as_kg() - kilograms).abs() < 1e-9 * kilograms);
    }
}
