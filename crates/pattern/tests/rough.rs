//! Parts known by five sizes: what is said of them has to hold the true part.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use measure::band::Band;
use measure::length::{Length, Volume};
use measure::matter::{Density, Mass};
use measure::text::Written;
use pattern::displacement::{volume_in_water, water};
use pattern::material;
use pattern::rough::{FiveSizes, Rough, shape_named, shapes};
use proptest::prelude::proptest;

fn sizes(extents: [f64; 3], thickest: f64, thinnest: f64, shape: &str) -> FiveSizes {
    FiveSizes {
        extents: extents.map(Length::from_mm),
        thickest: Length::from_mm(thickest),
        thinnest: Length::from_mm(thinnest),
        shape: shape_named(shape).unwrap(),
    }
}

#[track_caller]
fn holds<Q: Written + std::fmt::Debug>(band: &Band<Q>, truth: Q) {
    let [low, high] = [band.low().si(), band.high().si()];
    // The last bits of a sum of products are no part of the claim.
    let rounding = 1e-12 * truth.si();
    let truth_si = truth.si();
    let inside = low - rounding <= truth_si && truth_si <= high + rounding;
    assert!(inside, "{truth:?} in {band:?}");
}

/// A cube of 60 mm: modulus 10 mm, shadow 36 cm².
#[test]
fn a_cube_lies_in_its_bands() {
    let rough = sizes([60.0; 3], 60.0, 60.0, "block").rough(None);
    holds(&rough.volume, Volume::from_cm3(216.0));
    holds(&rough.heaviest, Length::from_mm(10.0));
    holds(&rough.area, measure::length::Area::from_cm2(216.0));
    holds(&rough.shadow, measure::length::Area::from_cm2(36.0));
}

/// Half a ball shell of 300 mm across and 4 mm, 640 cm³ with its lugs of 12 mm.
#[test]
fn a_pot_lies_in_its_bands() {
    let rough = sizes([300.0, 300.0, 150.0], 12.0, 4.0, "shell").rough(None);
    holds(&rough.volume, Volume::from_cm3(640.0));
    holds(&rough.thinnest, Length::from_mm(1.97));
}

/// A hand-wheel of 260 mm with a bar of 26 mm and a hub of 60 x 45: some 575 cm³.
#[test]
fn a_wheel_lies_in_its_bands() {
    let rough = sizes([260.0, 260.0, 45.0], 45.0, 16.0, "frame").rough(None);
    holds(&rough.volume, Volume::from_cm3(575.0));
}

#[test]
fn a_weighing_narrows_the_volume_and_nothing_else_is_surer_for_it() {
    let five = sizes([120.0, 90.0, 40.0], 24.0, 6.0, "any");
    let weighed = Band::exact(Volume::from_cm3(150.0));
    let (guessed, known) = (five.rough(None), five.rough(Some(weighed)));
    assert_eq!(known.volume, weighed);
    assert!(guessed.volume.high().as_cm3() / guessed.volume.low().as_cm3() > 5.0);
    assert_eq!(known.heaviest, guessed.heaviest);
}

#[test]
fn every_word_for_a_shape_has_a_sensible_row() {
    assert_eq!(shapes().len(), 7);
    for shape in shapes() {
        let (covers, shades) = (&shape.covers, &shape.shades);
        assert!(
            covers.low() > 0.0 && covers.low() < covers.high(),
            "{}",
            shape.name
        );
        assert!(shades.low() > 0.0 && shades.high() <= 1.0, "{}", shape.name);
        assert!(measure::source::source(&shape.source).is_some());
    }
}

#[test]
fn every_material_has_its_density_and_source() {
    assert!(!material::all().is_empty());
    let rows = material::read(material::BUILT_IN).unwrap();
    assert_eq!(rows.len(), material::all().len());
    for row in material::all() {
        let density = [row.density.low(), row.density.high()].map(|d| d.as_g_per_cm3());
        assert!(density[0] > 0.0 && density[1] < 9.0, "{}", row.name);
        assert!(
            measure::source::source(&row.source).is_some(),
            "{}",
            row.name
        );
    }
    let pine = material::named(" Scots Pine ").unwrap();
    assert_eq!(pine.density.low().as_g_per_cm3(), 0.4);
    assert_eq!(pine.density.high().as_g_per_cm3(), 0.6);
}

proptest! {
    #[test]
    fn bands_are_in_order_and_finite(
        length in 5.0..2000.0f64,
        width in 0.05..1.0f64,
        height in 0.02..1.0f64,
        thickest in 0.05..1.0f64,
        thinnest in 0.05..1.0f64,
        shape in 0..7usize,
    ) {
        let extents = [length, length * width, length * height];
        let least = extents.into_iter().fold(f64::INFINITY, f64::min);
        let (thick, name) = (least * thickest, &shapes()[shape].name);
        let five = sizes(extents, thick, thick * thinnest, name);
        let Rough { volume, area, shadow, heaviest, thinnest } = five.rough(None);
        assert!(volume.low() > Volume::ZERO && volume.high() <= five.box_volume());
        assert!(area.low().as_m2() > 0.0 && area.high().as_m2().is_finite());
        assert!(shadow.high() <= five.extents[0] * five.extents[1]);
        assert!(thinnest.low() <= heaviest.low() && thinnest.high() <= heaviest.high());
        assert!(heaviest.high() <= five.thickest * 0.5);
    }

    #[test]
    fn a_weighing_in_water_gives_back_what_was_put_in(
        cm3 in 1.0..5000.0f64,
        g_per_cm3 in 0.2..9.0f64,
    ) {
        let water = water().value.likely();
        let (volume, density) = (Volume::from_cm3(cm3), Density::from_g_per_cm3(g_per_cm3));
        let in_air = density * volume;
        let in_water = in_air - water * volume;
        assert!((volume_in_water(in_air, in_water, water) / volume - 1.0).abs() < 1e-9);
    }
}

#[test]
fn what_floats_has_a_weight_below_nought_in_water() {
    let (in_air, held_down) = (Mass::from_g(250.0), Mass::from_g(-249.0));
    let volume = volume_in_water(in_air, held_down, Density::from_g_per_cm3(0.998));
    assert!((volume.as_cm3() - 500.0).abs() < 0.1);
}
