//! Feeders, necks, reach and chills against what has to hold.

use measure::heat::{HeatPerMass, SpecificHeat, TemperatureDifference};
use measure::length::{Area, Length, Volume};
use measure::matter::Density;
use mould::feeding::caine::{caine, caine_for_alloy, caine_metals, diameter_by_caine};
use mould::feeding::chill::{
    Chilled, chill_area, chill_mass, chill_metals, chill_thickness, chilled_modulus,
};
use mould::feeding::feeder::{CoolingEnds, cylinder_modulus, feeder_volume};
use mould::feeding::lining::linings;
use mould::feeding::neck::{flat_neck, iron_neck_margin, neck_margin, round_neck};
use mould::feeding::need::{IronKnown, Need, NoFeeder, need};
use mould::feeding::reach::{feeders_along, reach_row, reach_rows};
use mould::feeding::rules::{Fed, Rule, side_by_side};
use mould::feeding::shape_factor::volume_by_shape;
use proptest::prelude::{prop_assert, proptest};

/// A jaw of a bench vise in gunmetal.
fn jaw() -> Fed<'static> {
    Fed {
        section: Length::from_mm(6.4),
        volume: Volume::from_cm3(129.5),
        whole: Length::from_mm(6.4),
        inscribed: Some(Length::from_mm(22.0)),
        sides: Some([125.0, 47.0, 20.5].map(Length::from_mm)),
        demand: 0.045,
        margin: 1.2,
        height_over_diameter: 1.0,
        ends: CoolingEnds::One,
        usable: 0.14,
        longer: 1.0,
        caine: None,
    }
}

#[test]
fn a_jaw_of_gunmetal_gets_a_feeder_of_38_to_46_mm_with_every_rule_beside_it() {
    for demand in [0.04, 0.045, 0.05] {
        let rules = side_by_side(&Fed { demand, ..jaw() }).expect("a feeder");
        let across = rules.diameter.as_mm();
        assert!((38.0..=46.0).contains(&across), "{across}");
        assert_eq!(rules.says.len(), Rule::ALL.len());
        assert!(rules.governs.must_hold());
        assert_eq!(rules.diameter_by(Rule::Caine), None);
        assert!(rules.diameter_by(Rule::ShapeTable).is_some());
    }
}

#[test]
fn the_two_forms_of_the_shape_factor_are_told_to_disagree_at_chunky_shapes() {
    let chunky = volume_by_shape(2.0);
    assert!((chunky.power / chunky.table - 1.5).abs() < 0.01);
    let cube = [Length::from_mm(60.0); 3];
    let rules = side_by_side(&Fed {
        sides: Some(cube),
        ..jaw()
    })
    .expect("a feeder");
    let apart = rules.disagreeing(0.2);
    assert!(
        apart.iter().any(|says| says.rule == Rule::ShapePower),
        "{apart:?}"
    );
}

#[test]
fn a_sleeve_makes_the_feeder_smaller() {
    let across: Vec<f64> = linings()
        .iter()
        .map(|lining| {
            let (usable, longer) = (lining.usable.low(), lining.longer.low());
            let rules = side_by_side(&Fed {
                usable,
                longer,
                ..jaw()
            })
            .expect("a feeder");
            rules.diameter.as_mm()
        })
        .collect();
    assert_eq!(across.len(), 4);
    assert!(
        across.windows(2).all(|pair| pair[1] <= pair[0]),
        "{across:?}"
    );
    assert!(
        side_by_side(&Fed {
            demand: 0.2,
            ..jaw()
        })
        .is_none()
    );
}

#[test]
fn thin_iron_and_rich_iron_in_a_firm_mould_get_no_feeder() {
    let iron = |modulus_mm, carbon_equivalent, firm| {
        need(
            Length::from_mm(modulus_mm),
            Some(IronKnown {
                carbon_equivalent,
                firm,
            }),
        )
    };
    assert_eq!(iron(3.5, Some(4.2), true), Need::None(NoFeeder::FirmIron));
    assert_eq!(iron(20.0, Some(4.2), true), Need::None(NoFeeder::FirmIron));
    assert_eq!(iron(3.5, None, false), Need::None(NoFeeder::Thin));
    assert_eq!(iron(9.0, Some(4.3), false), Need::Small);
    assert_eq!(iron(9.0, None, true), Need::Small);
    assert_eq!(need(Length::from_mm(2.0), None), Need::None(NoFeeder::Thin));
    assert_eq!(need(Length::from_mm(6.4), None), Need::Full);
}

#[test]
fn necks_shut_after_the_casting_and_those_of_iron_before() {
    let section = Length::from_mm(10.0);
    let across = round_neck(section, neck_margin().likely());
    assert!(across / 4.0 > section && across / 4.0 < section * 1.2);
    assert!(round_neck(section, iron_neck_margin().high()) / 4.0 < section);
    assert_eq!(flat_neck(section, 1.1, Length::from_mm(22.0)), None);
}

#[test]
fn metals_of_a_long_range_have_no_reach_and_are_told_why() {
    assert_eq!(reach_rows().len(), 5);
    let long = reach_row("long freezing range").expect("a row");
    assert_eq!(long.thicknesses, None);
    assert!(!long.words.is_empty());
    assert!(caine_for_alloy("Gunmetal 85-5-5-5").is_none());
    assert!(caine_for_alloy("Al-Si7-Mg").is_some());
}

#[test]
fn a_chill_on_a_boss_turns_the_order_of_freezing_round() {
    // A boss of 8 mm modulus beside a wall of 5 mm.
    let (volume, surface) = (Volume::from_cm3(40.0), Area::from_cm2(50.0));
    let wall = Length::from_mm(5.0);
    assert!(volume / surface > wall);
    let section = Chilled {
        volume,
        surface,
        wanted: wall * 0.9,
    };
    let contact = chill_area(&section, 3.0).expect("a chill");
    assert!(chilled_modulus(volume, surface, contact, 3.0) < wall);
    assert!(chilled_modulus(volume, surface, Area::ZERO, 3.0) > wall);
    assert_eq!(
        chill_area(
            &Chilled {
                wanted: Length::from_mm(8.0),
                ..section
            },
            3.0
        ),
        None
    );
    assert_eq!(chill_area(&section, 1.0), None);
    for metal in chill_metals() {
        let heat = HeatPerMass::from_kj_per_kg(545.0);
        let density = Density::from_g_per_cm3(2.39);
        let rise = TemperatureDifference::from_kelvin(300.0);
        let mass = chill_mass(&section, contact, density, heat, metal.heat, rise);
        let thick = chill_thickness(mass, metal.density, contact).as_mm();
        assert!((3.0..60.0).contains(&thick), "{} {thick}", metal.name);
        let hotter = SpecificHeat::from_j_per_kg_k(metal.heat.as_j_per_kg_k() * 2.0);
        assert!(chill_mass(&section, contact, density, heat, hotter, rise) < mass);
    }
}

proptest! {
    #[test]
    fn a_feeder_by_volume_brings_what_both_shrink(
        cm3 in 1.0f64..5000.0, demand in 0.0f64..0.13, usable in 0.14f64..0.7,
    ) {
        let casting = Volume::from_cm3(cm3);
        let feeder = feeder_volume(casting, demand, usable).expect("below what it can give");
        let (gives, wanted) = (feeder * usable, (casting + feeder) * demand);
        prop_assert!((gives.as_cm3() - wanted.as_cm3()).abs() <= 1e-9 * cm3);
    }

    #[test]
    fn caines_feeder_lies_on_its_curve_and_grows_with_the_casting(
        cm3 in 1.0f64..5000.0, modulus_mm in 2.0f64..30.0, which in 0usize..7, more in 1.0f64..3.0,
    ) {
        let constants = &caine_metals()[which];
        let (casting, section) = (Volume::from_cm3(cm3), Length::from_mm(modulus_mm));
        let across = |casting| {
            diameter_by_caine(casting, section, 1.0, CoolingEnds::One, constants).expect("one")
        };
        let d = across(casting);
        let share = d * d * d * (std::f64::consts::PI / 4.0) / casting;
        let has = cylinder_modulus(d, d, CoolingEnds::One) / section;
        let needs = caine(share, constants).expect("above b");
        prop_assert!((has / needs - 1.0).abs() < 1e-6, "{has} {needs}");
        prop_assert!(across(casting * more) >= d * (1.0 - 1e-9));
    }

    #[test]
    fn more_reach_never_asks_for_more_feeders(
        length in 1.0f64..3000.0, end in 1.0f64..200.0, next in 1.0f64..200.0, more in 1.0f64..3.0,
    ) {
        let [length, end, next] = [length, end, next].map(Length::from_mm);
        let count = feeders_along(length, end, next);
        prop_assert!(count >= 1);
        prop_assert!(feeders_along(length, end * more, next * more) <= count);
        let covered = end * 2.0 + next * 2.0 * f64::from(count - 1);
        prop_assert!(count == 1 || covered >= length * (1.0 - 1e-6));
    }
}
