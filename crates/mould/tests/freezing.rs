//! Freezing: trials, round bodies, simple bodies, and the wheel of a sluice.

use measure::flow::{Duration, FreezingConstant};
use measure::heat::{HeatDrawing, HeatPerMass, SpecificHeat, Temperature, TemperatureDifference};
use measure::length::Length;
use measure::matter::Density;
use mould::freezing::{
    FreezingHeat, Round, constant_from_trial, freezing_time, mould_constant, round_freezing_time,
    superheat_factor, thirst_from_trial, thirst_of_sand,
};
use mould::restraint::{
    Wheel, WheelChange, WheelModuli, WheelPart, changes, freezing_order, restraint,
};
use mould::simple_body::{Side, SimpleBody, simple_modulus};
use proptest::prelude::{prop_assert, proptest};

fn aluminium(sand: f64) -> FreezingHeat {
    FreezingHeat {
        density: Density::from_g_per_cm3(2.39),
        latent: HeatPerMass::from_kj_per_kg(430.0),
        liquid_heat: SpecificHeat::from_j_per_kg_k(1155.0),
        superheat: TemperatureDifference::from_kelvin(90.0),
        solidus: Temperature::from_celsius(557.0),
        sand: HeatDrawing::from_w_rts_per_m2_k(sand),
    }
}

/// The wheel of a canal sluice in grey iron: rim 26, spokes 16, hub 60 by 45 with a cored bore.
fn wheel() -> Wheel {
    Wheel {
        radius: Length::from_mm(117.0),
        rim: Length::from_mm(26.0),
        spoke: Length::from_mm(16.0),
        spoke_length: Length::from_mm(74.0),
        bow: Length::ZERO,
        spokes: 5,
        moduli: WheelModuli {
            hub: Length::from_mm(8.3),
            rim: Length::from_mm(6.5),
            spokes: Length::from_mm(4.0),
        },
    }
}

#[test]
fn a_trial_in_one_metal_gives_back_its_sand_for_another() {
    for sand in [900.0, 1080.0, 1300.0] {
        let trial = aluminium(sand);
        let thirst = thirst_from_trial(&aluminium(1.0), mould_constant(&trial));
        assert!((thirst.as_w_rts_per_m2_k() / sand - 1.0).abs() < 1e-9);
    }
    let book = thirst_of_sand();
    assert!(book.low() < book.likely() && book.likely() < book.high());
}

#[test]
fn the_misplaced_bracket_makes_a_third_too_little_of_60_kelvin_in_aluminium() {
    let factor = superheat_factor(
        HeatPerMass::from_kj_per_kg(397.0),
        SpecificHeat::from_j_per_kg_k(1177.0),
        TemperatureDifference::from_kelvin(60.0),
    );
    assert!((factor.balance - 1.39).abs() < 0.005, "{factor:?}");
    assert!((factor.misplaced - 1.03).abs() < 0.005, "{factor:?}");
}

#[test]
fn the_sand_round_a_ball_helps_as_much_as_the_flow_of_heat_says() {
    // Heat into sand round a ball goes as 1/√(π a t) + 1/R; to the first order γ = √(π a) / 6.
    let diffusivity_cm2_per_s = 3.4e-3_f64;
    let ball = (std::f64::consts::PI * diffusivity_cm2_per_s).sqrt() / 6.0;
    let bar = (std::f64::consts::PI * diffusivity_cm2_per_s).sqrt() / 8.0;
    assert!(
        (Round::Ball.opening_cm_per_root_s() / ball - 1.0).abs() < 0.1,
        "{ball}"
    );
    assert!(
        (Round::Bar.opening_cm_per_root_s() / bar - 1.0).abs() < 0.1,
        "{bar}"
    );
}

#[test]
fn the_spokes_of_the_sluice_wheel_freeze_first_and_its_hub_last() {
    let order = freezing_order(&wheel().moduli);
    assert_eq!(order, [WheelPart::Spokes, WheelPart::Rim, WheelPart::Hub]);
    // With the handbook's constants of grey iron, 4.6 to 10.3 min/cm².
    let band = |part: WheelPart| {
        [4.6, 10.3].map(|constant| {
            let constant = FreezingConstant::from_min_per_cm2(constant);
            freezing_time(constant, wheel().moduli.of(part)).as_s()
        })
    };
    let near = |got: [f64; 2], want: [f64; 2]| {
        got.iter()
            .zip(want)
            .all(|(got, want)| (got / want - 1.0).abs() < 0.04)
    };
    assert!(near(band(WheelPart::Spokes), [45.0, 99.0]));
    assert!(near(band(WheelPart::Rim), [118.0, 262.0]));
    assert!(near(band(WheelPart::Hub), [190.0, 420.0]));
}

#[test]
fn straight_spokes_score_worse_than_curved_odd_or_slender_ones() {
    let straight = restraint(&wheel());
    let curved = Wheel {
        bow: Length::from_mm(24.0),
        ..wheel()
    };
    assert!(restraint(&curved) < straight * 0.6);
    let slender = Wheel {
        spoke: Length::from_mm(12.0),
        ..wheel()
    };
    assert!(restraint(&slender) < straight);
    let even = Wheel {
        spokes: 6,
        ..wheel()
    };
    assert!(restraint(&even) > straight);
    // Five spokes alone cure nothing: the index of the straight five is far from nought.
    assert!(straight > 0.05, "{straight}");
}

#[test]
fn the_changes_are_told_best_first_and_each_helps() {
    let even = Wheel {
        spokes: 6,
        ..wheel()
    };
    let told = changes(&even);
    assert_eq!(told.len(), 3);
    assert!(told.windows(2).all(|pair| pair[0].leaves <= pair[1].leaves));
    assert!(told.iter().all(|change| change.leaves < restraint(&even)));
    let five = changes(&wheel());
    assert!(
        five.iter()
            .all(|change| change.change != WheelChange::OddSpokes)
    );
}

#[test]
fn a_joined_face_makes_a_body_freeze_later() {
    let side = |cooling| Side {
        across: Some(Length::from_mm(20.0)),
        cooling,
    };
    let cube = |faces: u8| {
        simple_modulus(&SimpleBody::Block([side(faces), side(2), side(2)])).expect("cools")
    };
    assert!((cube(2).as_mm() - 20.0 / 6.0).abs() < 1e-9);
    assert!(cube(1) > cube(2) && cube(0) > cube(1));
    assert_eq!(
        simple_modulus(&SimpleBody::Block([side(0), side(0), Side::LONG])),
        None
    );
}

proptest! {
    #[test]
    fn a_trial_gives_back_the_time_it_was_taken_from(
        modulus_mm in 0.5f64..100.0, seconds in 1.0f64..1e5,
    ) {
        let (section, time) = (Length::from_mm(modulus_mm), Duration::from_s(seconds));
        let again = freezing_time(constant_from_trial(section, time), section);
        prop_assert!((again / time - 1.0).abs() < 1e-12);
    }

    #[test]
    fn round_bodies_freeze_before_plates_and_balls_before_bars(
        modulus_mm in 0.5f64..100.0, minutes in 1.0f64..20.0,
    ) {
        let (section, constant) =
            (Length::from_mm(modulus_mm), FreezingConstant::from_min_per_cm2(minutes));
        let plate = freezing_time(constant, section);
        let bar = round_freezing_time(constant, section, Round::Bar);
        let ball = round_freezing_time(constant, section, Round::Ball);
        prop_assert!(ball < bar && bar < plate);
    }

    #[test]
    fn a_wheel_measured_in_inches_scores_the_same(scale in 0.1f64..10.0, bow_mm in 0.0f64..30.0) {
        let here = Wheel { bow: Length::from_mm(bow_mm), ..wheel() };
        let there = Wheel {
            radius: here.radius * scale,
            rim: here.rim * scale,
            spoke: here.spoke * scale,
            spoke_length: here.spoke_length * scale,
            bow: here.bow * scale,
            ..here
        };
        prop_assert!((restraint(&there) / restraint(&here) - 1.0).abs() < 1e-9);
    }
}
