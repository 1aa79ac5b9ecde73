//! Charges made up of heaps: published and hand sums, limits, chance, and why it fails.

use measure::band::Band;
use measure::matter::Mass;
use measure::source::source;
use metal::charge_makeup::element::Element;
use metal::charge_makeup::heap::{Heap, Mark, Origin};
use metal::charge_makeup::infeasible::{Cause, Infeasible};
use metal::charge_makeup::limit::Side;
use metal::charge_makeup::makeup::{Binding, MakeUpError, Wish, make_up};
use metal::charge_makeup::measured::Measured;
use metal::charge_makeup::next_change::Aim;
use metal::charge_makeup::order::order_of_charging;
use metal::charge_makeup::{loss, stock, target};

use crate::heaps::{heap, iron, likely, taken, using_up};

mod heaps;
mod laws;

#[test]
fn the_tables_are_read_whole_and_name_sources_that_are_there() {
    let targets = target::read(target::BUILT_IN).expect("the targets");
    let losses = loss::read(loss::BUILT_IN).expect("the losses");
    let stock = stock::read(stock::BUILT_IN).expect("the stock");
    assert_eq!([targets.len(), losses.len(), stock.len()], [21, 15, 15]);
    let of_targets = targets.iter().flat_map(|target| &target.sources);
    let of_losses = losses.iter().flat_map(|row| &row.loss.sources);
    let of_stock = stock.iter().flat_map(|stock| &stock.sources);
    for key in of_targets.chain(of_losses).chain(of_stock) {
        assert!(source(key).is_some(), "{key} is not in the bibliography");
    }
}

#[test]
fn every_alloy_of_the_table_is_a_target_too() {
    for alloy in metal::alloys::all() {
        let target = target::named(&alloy.name).expect("a target");
        assert_eq!(target.family, alloy.family, "{}", alloy.name);
    }
    assert_eq!(target::named("a-356").expect("A356").name, "A356");
    let unknown = target::named("mystery metal").expect_err("no such metal");
    assert!(unknown.to_string().contains("targets known: Al 99.5, 356"));
}

/// The published charge of 500 kg: a quarter returns, pig and steel for 3.6 % carbon, 322 kg of
/// pig and 53 kg of steel, 1.32 % silicon (`charge-calculation-page`).
#[test]
fn the_published_charge_of_pig_returns_and_steel_comes_out() {
    let heaps = [
        heap(
            "pig",
            400.0,
            "0.60 EUR/kg",
            &[("C", "4.2 %"), ("Si", "1.0 %")],
        ),
        heap(
            "returns",
            125.0,
            "0.30 EUR/kg",
            &[("C", "3.5 %"), ("Si", "2.6 %")],
        ),
        heap(
            "steel",
            200.0,
            "0.20 EUR/kg",
            &[("C", "0.2 %"), ("Si", "0.2 %")],
        ),
    ];
    let wish = using_up(iron(500.0, &[("C", "3.6 %")]), "returns", 125.0);
    let made = make_up(&heaps, &wish).expect("a charge");
    assert!((taken(&made, "pig") - 321.875).abs() < 0.001);
    assert!((taken(&made, "steel") - 53.125).abs() < 0.001);
    assert!((likely(&made, "Si") - 1.315).abs() < 0.001);
    assert!((made.charged.as_kg() - 500.0).abs() < 1e-5);
}

/// Two heaps mixed by hand: 3.1 kg at 3.45 % C, 2.35 % Si and 1.7 kg at 3.20 % C, 1.25 % Si give
/// 3.3615 % C and 1.9604 % Si. The charge that is asked for that silicon has to be that mix.
#[test]
fn two_heaps_of_iron_come_out_as_mixed_by_hand() {
    let heaps = [
        heap(
            "radiators",
            9.0,
            "0.40 EUR/kg",
            &[("C", "3.45 %"), ("Si", "2.35 %")],
        ),
        heap(
            "weights",
            9.0,
            "0.30 EUR/kg",
            &[("C", "3.20 %"), ("Si", "1.25 %")],
        ),
    ];
    let by_hand_c = (3.1 * 3.45 + 1.7 * 3.20) / 4.8;
    let by_hand_si = (3.1 * 2.35 + 1.7 * 1.25) / 4.8;
    let wish = iron(
        4.8,
        &[
            ("Si", &format!("at least {by_hand_si} %")),
            ("C", "3 to 4 %"),
        ],
    );
    let made = make_up(&heaps, &wish).expect("a charge");
    assert!((likely(&made, "C") - by_hand_c).abs() < 0.01);
    assert!((likely(&made, "Si") - by_hand_si).abs() < 0.01);
    assert!((taken(&made, "radiators") - 3.1).abs() < 0.001);
    assert_eq!(
        made.binding,
        [Binding::Limit(Measured::Of(Element::Silicon), Side::Low)]
    );
}

#[test]
fn losses_are_made_up_for_and_an_addition_counts_with_its_recovery() {
    let mut silicon = heap("ferrosilicon", 1.0, "2 EUR/kg", &[("Si", "75 %")]);
    silicon.origin = Origin::Addition;
    silicon.recovery = Some(Band::exact(0.9));
    let heaps = [
        heap("radiators", 9.0, "0.4 EUR/kg", &[("Si", "1.8 %")]),
        silicon,
    ];
    let mut wish = iron(5.0, &[("Si", "2.2 %")]);
    wish.losses.insert(Element::Silicon, Band::exact(0.1));
    wish.melt_loss = 0.02;
    let made = make_up(&heaps, &wish).expect("a charge");
    let (iron_kg, added_kg) = (taken(&made, "radiators"), taken(&made, "ferrosilicon"));
    let silicon_kg = iron_kg * 0.018 * 0.9 + added_kg * 0.75 * 0.9;
    let melt_kg = iron_kg * (1.0 - 0.018 * 0.1) + added_kg * (1.0 - 0.75 * 0.1);
    assert!((silicon_kg / melt_kg - 0.022).abs() < 1e-6);
    assert!((melt_kg * 0.98 - 5.0).abs() < 1e-5, "{melt_kg}");
    assert!((made.metal.as_kg() - 5.0).abs() < 1e-5);
}

#[test]
fn what_the_scale_tells_apart_is_what_is_weighed_out() {
    let heaps = [
        heap(
            "radiators",
            9.0,
            "0.40 EUR/kg",
            &[("C", "3.3 to 3.5 %"), ("Si", "2.2 to 2.5 %")],
        ),
        heap(
            "weights",
            1.237,
            "0.10 EUR/kg",
            &[("C", "3.1 to 3.3 %"), ("Si", "1.2 to 1.5 %")],
        ),
    ];
    let mut wish = iron(4.8, &[("Si", "1.9 to 2.3 %")]);
    wish.scale_step = Mass::from_g(50.0);
    let made = make_up(&heaps, &wish).expect("a charge");
    for weighed in &made.weighed {
        let steps = weighed.mass.as_g() / 50.0;
        let on_scale = (steps - steps.round()).abs() < 1e-6;
        let all_of_it = (weighed.mass.as_kg() - 1.237).abs() < 1e-9;
        assert!(on_scale || all_of_it, "{} kg", weighed.mass.as_kg());
    }
    assert!(made.metal.as_kg() >= 4.8 && made.metal.as_kg() < 4.8 + 0.1);
    assert!(made.off_by_scale.is_empty());
}

#[test]
fn a_scale_too_coarse_for_a_target_is_told() {
    let heaps = [
        heap("a", 9.0, "", &[("Si", "2.4 %")]),
        heap("b", 9.0, "", &[("Si", "1.2 %")]),
    ];
    let mut wish = iron(4.8, &[("Si", "2.01 to 2.02 %")]);
    wish.scale_step = Mass::from_kg(1.0);
    let made = make_up(&heaps, &wish).expect("a charge");
    assert_eq!(made.off_by_scale, [Measured::Of(Element::Silicon)]);
}

#[test]
fn without_prices_the_charge_stands_in_the_middle() {
    let heaps = [
        heap("a", 9.0, "", &[("Si", "2.8 to 3.0 %")]),
        heap("b", 9.0, "", &[("Si", "1.2 to 1.4 %")]),
    ];
    let made = make_up(&heaps, &iron(4.8, &[("Si", "1.9 to 2.3 %")])).expect("a charge");
    assert!((likely(&made, "Si") - 2.1).abs() < 1e-3);
    assert!(made.cost.is_none() && made.chance.share > 0.99);
}

#[test]
fn the_chance_falls_as_the_heaps_are_known_less() {
    let with = |si: &str| {
        let heaps = [
            heap("a", 9.0, "", &[("Si", si)]),
            heap("b", 9.0, "", &[("Si", "1.3 %")]),
        ];
        let made = make_up(&heaps, &iron(4.8, &[("Si", "1.9 to 2.3 %")])).expect("a charge");
        assert!(made.chance.low <= made.chance.share && made.chance.share <= made.chance.high);
        made.chance.share
    };
    let chances = [
        with("2.8 to 3.0 %"),
        with("2.4 to 3.4 %"),
        with("1.9 to 3.9 %"),
    ];
    assert!(
        chances[0] > chances[1] && chances[1] > chances[2],
        "{chances:?}"
    );
}

/// A single heap of 2.0 to 2.4 %, likely 2.2 %: a triangle of which all but the tip above 2.3 %
/// keeps to the limit; the tip holds (0.1/0.2)²/2 of it.
#[test]
fn the_chance_of_one_heap_is_that_of_its_triangle() {
    let heaps = [heap("a", 9.0, "", &[("Si", "2.0 to 2.4 %")])];
    let mut wish = iron(1.0, &[("Si", "at most 2.3 %")]);
    wish.clearance = Some(0.0);
    let made = make_up(&heaps, &wish).expect("a charge");
    let chance = made.chance;
    assert!(chance.low <= 0.875 && 0.875 <= chance.high, "{chance:?}");
}

#[test]
fn the_carbon_equivalent_is_a_target_like_any_other() {
    let heaps = [
        heap(
            "pig",
            9.0,
            "0.9 EUR/kg",
            &[("C", "4.2 %"), ("Si", "2.4 %"), ("P", "0.1 %")],
        ),
        heap(
            "steel",
            9.0,
            "0.2 EUR/kg",
            &[("C", "0.2 %"), ("Si", "0.2 %")],
        ),
    ];
    let made = make_up(&heaps, &iron(5.0, &[("CE", "4.0 to 4.3 %")])).expect("a charge");
    let by_hand = likely(&made, "C") + (likely(&made, "Si") + likely(&made, "P")) / 3.0;
    assert!((likely(&made, "CE") - by_hand).abs() < 1e-9);
    assert!((by_hand - 4.0).abs() < 1e-4, "{by_hand}");
}

fn infeasible(heaps: &[Heap], wish: &Wish) -> Option<Infeasible> {
    match make_up(heaps, wish) {
        Err(MakeUpError::Infeasible(out)) => Some(*out),
        _ => None,
    }
}

#[test]
fn no_heap_low_enough_is_told_with_what_to_add() {
    let heaps = [
        heap(
            "radiators",
            9.0,
            "0.4 EUR/kg",
            &[("C", "3.4 %"), ("Si", "2.6 %")],
        ),
        heap(
            "stoves",
            9.0,
            "0.3 EUR/kg",
            &[("C", "3.5 %"), ("Si", "2.9 %")],
        ),
    ];
    let wish = iron(5.0, &[("Si", "1.9 to 2.3 %")]);
    let out = infeasible(&heaps, &wish).expect("no charge");
    let Cause::OutOfReach(limits) = &out.cause else {
        panic!("{:?}", out.cause);
    };
    assert_eq!(limits[0].of, Measured::Of(Element::Silicon));
    assert_eq!((limits[0].side, limits[0].wanted), (Side::High, 0.023));
    assert!((limits[0].nearest - 0.026).abs() < 1e-9 && limits[0].by_every_heap);
    let [help] = &out.help[..] else {
        panic!("{:?}", out.help);
    };
    assert_eq!(help.stock.name, "steel scrap");
    assert_eq!(out.helped_by(help.stock), Some((limits[0], 0.003)));
    assert!((0.650..=0.660).contains(&help.mass.as_kg()));
    // What is advised is enough, and a tenth less is not.
    let with = |kg: f64| {
        let steel = heap("steel", kg, "", &[("C", "0.2 %"), ("Si", "0.3 %")]);
        let all = [heaps[0].clone(), heaps[1].clone(), steel];
        make_up(&all, &wish)
    };
    assert!(with(0.660).is_ok() && with(0.594).is_err());
}

#[test]
fn too_little_metal_and_limits_that_quarrel_are_told_apart() {
    let one = |kg: f64| heap("a", kg, "", &[("C", "3.4 %"), ("Si", "2.0 %")]);
    let little = infeasible(&[one(2.0)], &iron(5.0, &[("Si", "1 to 3 %")])).expect("too little");
    let (there, wanted) = (Mass::from_kg(2.0), Mass::from_kg(5.0));
    assert_eq!(little.cause, Cause::TooLittle { there, wanted });
    let heaps = [
        heap("lean", 9.0, "", &[("C", "3.0 %"), ("Si", "1.0 %")]),
        heap("rich", 9.0, "", &[("C", "3.8 %"), ("Si", "3.0 %")]),
    ];
    let wish = iron(5.0, &[("C", "at least 3.6 %"), ("Si", "at most 2.0 %")]);
    let quarrel = infeasible(&heaps, &wish).expect("a quarrel");
    assert!(matches!(quarrel.cause, Cause::NotTogether(Some(_))));
    let wish = using_up(iron(5.0, &[("Si", "1 to 3 %")]), "lean", 7.0);
    let too_much = infeasible(&heaps, &wish).expect("too much to use up");
    assert_eq!(too_much.cause, Cause::UseUp);
}

#[test]
fn two_currencies_do_not_meet_in_one_charge() {
    let heaps = [
        heap("a", 9.0, "1 EUR/kg", &[("Si", "2.4 %")]),
        heap("b", 9.0, "KSh 85/kg", &[("Si", "1.2 %")]),
    ];
    let refused = make_up(&heaps, &iron(4.8, &[("Si", "1.9 to 2.3 %")]));
    assert!(matches!(refused, Err(MakeUpError::Money(_))));
}

#[test]
fn an_unsure_charge_is_told_what_makes_it_surer() {
    let heaps = [
        heap("radiators", 9.0, "0.4 EUR/kg", &[("Si", "2.1 to 2.7 %")]),
        heap("weights", 9.0, "0.1 EUR/kg", &[("Si", "1.2 to 1.6 %")]),
    ];
    let mut wish = iron(4.8, &[("Si", "1.9 to 2.5 %")]);
    wish.clearance = Some(0.0);
    let made = make_up(&heaps, &wish).expect("a charge");
    assert!(made.chance.share < 0.7);
    let next = made.next.expect("a change");
    assert_eq!(next.aim, Aim::Surer);
    assert!(next.chance.share > made.chance.share + 0.02);
    assert!(next.beyond.is_empty() && next.dearer.is_some_and(|more| more.amount > 0.0));
    let radiators = next.steps.iter().find(|(heap, _)| heap == "radiators");
    assert!(radiators.is_some_and(|(_, more_kg)| *more_kg > 0.0));
}

#[test]
fn a_cheap_heap_that_runs_out_is_named() {
    let heaps = [
        heap("ingot", 9.0, "2 EUR/kg", &[("Si", "2.1 %")]),
        heap("returns", 1.0, "0.1 EUR/kg", &[("Si", "2.1 %")]),
    ];
    let made = make_up(&heaps, &iron(4.8, &[("Si", "1.9 to 2.3 %")])).expect("a charge");
    let next = made.next.expect("a change");
    assert_eq!(next.aim, Aim::Cheaper);
    assert!((next.beyond[0].1.as_kg() - 3.8).abs() < 1e-3);
    assert!(made.binding.contains(&Binding::AllOf("returns".to_owned())));
}

#[test]
fn returns_go_in_first_and_additions_last() {
    let mut returns = heap("returns", 9.0, "", &[("Si", "2 %")]);
    returns.origin = Origin::Returns;
    let mut painted = heap("painted", 9.0, "", &[("Si", "2 %")]);
    painted.marks.push(Mark::Painted);
    let mut addition = heap("ferrosilicon", 9.0, "", &[("Si", "75 %")]);
    addition.origin = Origin::Addition;
    let heaps = [
        addition,
        painted,
        heap("clean", 9.0, "", &[("Si", "2 %")]),
        returns,
    ];
    let mut wish = iron(4.0, &[("Si", "1.9 to 2.3 %")]);
    for (name, kg) in [
        ("painted", 1.0),
        ("clean", 2.0),
        ("returns", 0.5),
        ("ferrosilicon", 0.01),
    ] {
        wish = using_up(wish, name, kg);
    }
    let made = make_up(&heaps, &wish).expect("a charge");
    let order: Vec<_> = order_of_charging(&made.weighed, &heaps)
        .iter()
        .map(|weighed| weighed.name.as_str())
        .collect();
    assert_eq!(order, ["returns", "clean", "painted", "ferrosilicon"]);
}
