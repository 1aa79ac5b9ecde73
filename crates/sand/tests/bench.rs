//! The tests of the bench, grains, and batches weighed out.

use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use sand::error::{Reading, product_rule};
use sand::grain::{lost, openness, spread, uniformity, voids};
use sand::mixing::{Ingredient, MixingError, Water, sand_for_mix, water_brought, weigh_out};
use sand::permeability::{permeability, round, water_column};
use sand::sieve::Sieving;
use sand::strength::{crushing, equal_ramming, splitting};

fn kg(amount: f64) -> Mass {
    Mass::from_kg(amount)
}

/// 70 kPa is 14.5 kgf on the standard face of 50.8 mm and 5.05 kgf on one of 30 mm: sand reference
/// 1.3, worked out there from the formula.
#[test]
fn a_bathroom_scale_is_a_strength_machine() {
    let standard = crushing(kg(14.5), Area::from_mm2(2026.8)).as_kpa();
    assert!((standard - 70.0).abs() < 0.5, "{standard}");
    let small = crushing(kg(5.05), round(Length::from_mm(30.0))).as_kpa();
    assert!((small - 70.0).abs() < 0.1, "{small}");
    let split = splitting(kg(2.0), Length::from_mm(50.0), Length::from_mm(50.0));
    assert!((split.as_kpa() - 4.994).abs() < 0.001);
}

/// 40 mm wide and high (50 cm³) wants 4.6 J: 2 kg from 80 mm three times, the sand reference says.
#[test]
fn ramming_is_matched_by_its_work() {
    let drop = equal_ramming(Volume::from_cm3(50.27), kg(2.0), 3.0);
    assert!((drop.as_mm() - 80.0).abs() < 2.0, "{drop:?}");
}

/// The EURACHEM guide's example A1 (unc-01): 1002.7 mg/l, 0.9 either way.
#[test]
fn errors_of_a_product_add_by_squares() {
    let readings = [
        (0.05 / 100.28, 1.0),
        (0.000_058 / 0.9999, 1.0),
        (0.07 / 100.0, -1.0),
    ];
    let readings = readings.map(|(share, power)| Reading { share, power });
    let concentration = 100.28 * 0.9999 / 100.0 * 1000.0;
    let off = product_rule(&readings) * concentration;
    assert!((concentration - 1002.7).abs() < 0.05, "{concentration}");
    assert!((off - 0.9).abs() < 0.05, "{off}");
}

fn sieving(kept: &[(u16, f64)], pan: f64) -> Sieving {
    let kept = kept
        .iter()
        .map(|(number, grams)| (*number, Mass::from_g(*grams)));
    Sieving {
        kept: kept.collect(),
        pan: Mass::from_g(pan),
    }
}

/// The stack of scenario 4.6.
fn river_sand() -> Sieving {
    let kept = [
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
    sieving(&kept, 0.5)
}

#[test]
fn sizes_lie_between_their_sieves() {
    let spread = spread(&river_sand()).unwrap();
    let total: f64 = spread.kept.iter().map(|(_, share)| share).sum();
    assert!((total - 1.0).abs() < 1e-12);
    let half = spread.size(0.5).unwrap();
    // 49 g in all: 15.5 g pass 0.212 mm (31.6 %), 29 g pass 0.3 mm (59.2 %).
    assert!(
        (half.low().as_mm(), half.high().as_mm()) == (0.212, 0.3),
        "{half:?}"
    );
    let along = (0.5 - 15.5 / 49.0) / (29.0 / 49.0 - 15.5 / 49.0);
    let wanted = 0.212 * (0.3_f64 / 0.212).powf(along);
    assert!((half.likely().as_mm() - wanted).abs() < 1e-9);
    let size = |share| spread.size(share).unwrap().likely();
    assert!(uniformity(size(0.6), size(0.1)) > 1.0);
    assert_eq!(spread.sieves_with_a_tenth(), 4);
    // 1.0 g of 49 passes no. 200.
    let dust = spread.dust();
    assert!(
        (dust.low() - 1.0 / 49.0).abs() < 1e-9 && dust.low() == dust.high(),
        "{dust:?}"
    );
    assert_eq!(spread.size(0.001), None);
}

#[test]
fn a_short_stack_leaves_dust_and_size_open() {
    let short = spread(&sieving(&[(40, 8.0), (70, 25.5), (140, 13.0)], 2.5)).unwrap();
    let dust = short.dust();
    assert!(dust.low() == 0.0 && (dust.high() - 2.5 / 49.0).abs() < 1e-9);
    let (few, full) = (
        short.size(0.5).unwrap(),
        spread(&river_sand()).unwrap().size(0.5).unwrap(),
    );
    assert!(few.low() <= full.likely() && full.likely() <= few.high());
}

#[test]
fn what_was_lost_on_the_sieves_is_told() {
    let off = lost(&river_sand(), Mass::from_g(50.0));
    assert!((off + 0.02).abs() < 1e-9, "{off}");
}

/// Carman and Kozeny at 220 µm and 38 % give a permeability of 125: sand reference 1.2.
#[test]
fn openness_of_a_clean_sand() {
    assert!((openness(Length::from_mm(0.22), 0.38) - 125.0).abs() < 1.0);
    assert!((voids(Density::from_g_per_cm3(1.643)) - 0.38).abs() < 1e-9);
}

/// sand-01 and sand-02 by way of a bottle.
#[test]
fn the_bottle_gives_the_trade_number() {
    let number = permeability(
        Volume::from_cm3(500.0),
        Length::from_mm(50.0),
        water_column(Length::from_mm(100.0)),
        round(Length::from_mm(50.0)),
        measure::flow::Duration::from_s(14.0),
    );
    assert!((number - 54.6).abs() < 0.05, "{number}");
}

const MOLASSES: Ingredient = Ingredient {
    share: 0.08,
    water: 0.2,
};
const BENTONITE: Ingredient = Ingredient {
    share: 0.04,
    water: 0.0,
};

/// Common practice: 100 of dry sand, 8 of molasses, 4 of bentonite, 2.5 of water.
#[test]
fn a_mix_by_parts_is_weighed_out_and_its_water_counted() {
    let parts = [MOLASSES, BENTONITE];
    let weighed = weigh_out(kg(10.0), 0.0, &parts, Water::OnSand(0.025)).unwrap();
    let grams: Vec<f64> = weighed.parts.iter().map(|mass| mass.as_g()).collect();
    assert!((grams[0] - 800.0).abs() < 1e-9 && (grams[1] - 400.0).abs() < 1e-9);
    assert!((weighed.to_add.as_g() - 250.0).abs() < 1e-9);
    assert!((weighed.brought.as_g() - 160.0).abs() < 1e-9);
}

#[test]
fn damp_sand_brings_its_water_along() {
    let parts = [BENTONITE];
    let damp = weigh_out(kg(10.0), 0.03, &parts, Water::OfMix(0.04)).unwrap();
    let all = damp.sand + damp.parts[0] + damp.to_add;
    let water = damp.brought + damp.to_add;
    assert!((water / all - 0.04).abs() < 1e-12);
    assert!((damp.sand.as_kg() - 10.0 / 0.97).abs() < 1e-9);
    let dry = sand_for_mix(all, 0.04, &parts);
    assert!((dry.as_kg() - 10.0).abs() < 1e-9);
}

#[test]
fn more_water_than_wanted_is_told_with_the_weight_to_dry_back_to() {
    let parts = [MOLASSES, BENTONITE];
    let fault = weigh_out(kg(10.0), 0.05, &parts, Water::OfMix(0.04)).unwrap_err();
    let MixingError::TooWet {
        stop,
        brought,
        surplus,
    } = fault
    else {
        panic!("{fault}")
    };
    assert!((brought - water_brought(kg(10.0), 0.05, &parts).as_g()).abs() < 1e-9);
    // 11.04 kg of dry stuff at 4 % is 11.5 kg.
    assert!((stop - 11.5).abs() < 1e-9 && surplus > 0.0);
    let odd = weigh_out(kg(10.0), 1.0, &parts, Water::OfMix(0.04));
    assert!(matches!(odd, Err(MixingError::Water { .. })));
    let odd = weigh_out(
        kg(10.0),
        0.0,
        &[Ingredient {
            share: -0.1,
            water: 0.0,
        }],
        Water::OnSand(0.0),
    );
    assert!(matches!(odd, Err(MixingError::Part { .. })));
}
