//! Order of pour, heats, weighing, heat treatment and price.

use measure::flow::Duration;
use measure::heat::{Temperature, TemperatureDifference};
use measure::length::{Length, Volume};
use measure::matter::{Density, Mass};
use measure::money::Money;
use metal::after::{hidden_hollow, hold_time, treatment, treatments};
use metal::crucible::{WORKING_FILL, brim_volume, held};
use metal::cupola::{IRON_RATE_KG_PER_H_CM2, bed_coke, blast, charge_coke, iron_rate};
use metal::order::{Mould, Order, heats, heats_in_time, heats_wanted, moulds_in_heat, order};
use metal::price::{Line, Quote, casting_yield, least_price, line, mend_or_remake};
use proptest::prelude::{prop_assert, prop_assert_eq, proptest};

fn near(value: f64, wanted: f64, within: f64) {
    let off = (value - wanted).abs() / wanted.abs();
    assert!(off <= within, "{value} is not {wanted}");
}

fn celsius(degrees: f64) -> Temperature {
    Temperature::from_celsius(degrees)
}

fn kelvin(step: f64) -> TemperatureDifference {
    TemperatureDifference::from_kelvin(step)
}

fn mould(name: &str, needs: f64, wall: f64) -> Mould {
    Mould {
        name: name.to_owned(),
        needs: celsius(needs),
        wall: Length::from_mm(wall),
    }
}

fn names(moulds: &[Mould], order: &Order) -> Vec<String> {
    let turns = order.turns.iter();
    turns.map(|turn| moulds[turn.mould].name.clone()).collect()
}

#[test]
fn thin_moulds_go_first_and_none_is_poured_too_cold() {
    let moulds = [
        mould("boss", 670.0, 20.0),
        mould("rib", 700.0, 4.0),
        mould("lattice", 700.0, 3.0),
        mould("plate", 690.0, 6.0),
    ];
    let poured = order(&moulds, celsius(740.0), kelvin(12.0));
    assert_eq!(names(&moulds, &poured), ["lattice", "rib", "plate", "boss"]);
    near(poured.turns[3].at.as_celsius(), 704.0, 1e-9);
    near(poured.turns[3].spare.as_kelvin(), 34.0, 1e-6);
    let late = order(&moulds, celsius(705.0), kelvin(12.0));
    assert_eq!(names(&moulds, &late), ["lattice", "plate", "boss"]);
    assert_eq!(late.next_heat, [1]);
}

fn kilograms(masses: &[f64]) -> Vec<Mass> {
    masses.iter().map(|kg| Mass::from_kg(*kg)).collect()
}

fn holds(mark: f64) -> Mass {
    held(
        brim_volume(mark),
        WORKING_FILL,
        Density::from_g_per_cm3(2.38),
    )
}

#[test]
fn six_flasks_of_paperweights_take_three_heats_of_either_crucible() {
    let each = 0.85 / 0.6;
    let flasks = kilograms(&[each; 6]);
    for mark in [10.0, 12.0] {
        let poured = heats(&flasks, holds(mark), 0.08).unwrap();
        let moulds: Vec<_> = poured.iter().map(|heat| heat.moulds.len()).collect();
        assert_eq!(moulds, [2, 2, 2], "A{mark}");
    }
    let short = 3.0 * each * 1.08 - holds(12.0).as_kg();
    near(short, 0.2, 0.15);
    let better = kilograms(&[0.85 / 0.64; 6]);
    assert_eq!(heats(&better, holds(12.0), 0.08).unwrap().len(), 2);
    assert_eq!(
        heats_wanted(6.0, Mass::from_kg(each), 0.08, holds(10.0)),
        3.0
    );
    assert_eq!(
        heats_wanted(6.0, Mass::from_kg(0.85 / 0.64), 0.08, holds(12.0)),
        2.0
    );
    assert_eq!(moulds_in_heat(Mass::from_kg(each), 0.08, holds(12.0)), 2.0);
}

#[test]
fn a_mould_larger_than_the_crucible_is_refused() {
    let too_large = heats(&kilograms(&[1.0, 9.0]), holds(10.0), 0.08).unwrap_err();
    assert_eq!(too_large.mould, 1);
    assert!(too_large.to_string().contains("mould 2"));
    assert!(heats_wanted(1.0, Mass::from_kg(9.0), 0.08, holds(10.0)).is_infinite());
}

#[test]
fn a_double_lesson_holds_as_many_heats_as_its_minutes() {
    let min = Duration::from_min;
    assert_eq!(heats_in_time(min(80.0), min(40.0), min(20.0)), 3.0);
    assert_eq!(heats_in_time(min(80.0), min(90.0), min(20.0)), 0.0);
    assert_eq!(heats_in_time(min(40.0), min(40.0), min(20.0)), 1.0);
}

#[test]
fn the_cupola_of_the_lesson() {
    let bore = Length::from_m(0.75);
    near(
        iron_rate(bore, IRON_RATE_KG_PER_H_CM2).as_kg_per_h(),
        2480.0,
        0.002,
    );
    near(
        charge_coke(Mass::from_kg(2480.0), 10.0).as_kg(),
        248.0,
        1e-9,
    );
    let bed = bed_coke(bore, Length::from_m(1.5), Density::from_kg_per_m3(482.0));
    near(bed.as_kg(), 320.0, 0.002);
    let air = blast(Mass::from_kg(1000.0), Volume::from_m3(0.7));
    near(air.as_m3(), 700.0, 1e-9);
}

#[test]
fn a_light_casting_has_a_hollow() {
    let share = hidden_hollow(
        Mass::from_g(252.0),
        Volume::from_cm3(100.0),
        Density::from_g_per_cm3(2.67),
    );
    near(share, 0.0562, 0.002);
}

#[test]
fn every_treatment_is_below_where_its_metal_melts() {
    assert!(treatments().len() >= 6);
    for treatment in treatments() {
        let solidus = metal::alloys::all()
            .iter()
            .filter(|alloy| treatment.is_for(alloy))
            .map(|alloy| alloy.solidus.band.low())
            .fold(celsius(5000.0), |a, b| if b < a { b } else { a });
        assert!(treatment.heat.band.high() < solidus, "{}", treatment.name);
        assert!(
            solidus < celsius(5000.0),
            "{} is for no alloy",
            treatment.name
        );
    }
    let relief = treatment("stress-relief-iron").unwrap();
    let inch = relief.each_inch.band.likely();
    let least = relief.least.band.likely();
    near(
        hold_time(Length::from_mm(75.0), inch, least).as_s(),
        3.0 * 3600.0,
        1e-9,
    );
    near(
        hold_time(Length::from_mm(10.0), inch, least).as_s(),
        2.0 * 3600.0,
        1e-9,
    );
}

fn euro(amount: f64) -> Money {
    Money {
        amount,
        currency: "EUR".to_owned(),
    }
}

fn lines() -> Vec<Line> {
    vec![
        line("metal", euro(4.35)),
        line("sand", euro(0.4)),
        line("fuel", euro(2.1)),
        line("hours", euro(24.0)),
    ]
}

#[test]
fn a_quote_is_the_exact_sum_of_its_lines() {
    let quote = Quote::of(lines(), &euro(60.0), 10.0, 0.2).unwrap();
    let sum: f64 = quote.lines.iter().map(|line| line.money.amount).sum();
    near(sum, quote.least_price.amount, 1e-12);
    near(quote.least_price.amount, 36.85 / 0.8, 1e-12);
    assert_eq!(
        quote.lines.last().map(|line| line.name.as_str()),
        Some("failures")
    );
}

#[test]
fn two_currencies_never_meet() {
    let dollar = Money {
        amount: 60.0,
        currency: "$".to_owned(),
    };
    assert!(Quote::of(lines(), &dollar, 10.0, 0.2).is_err());
}

#[test]
fn mending_pays_while_it_is_cheap_and_sure() {
    assert!(mend_or_remake(40.0, 5.0, 10.0, 0.2) > 0.0);
    assert!(mend_or_remake(40.0, 5.0, 10.0, 0.9) < 0.0);
    near(
        casting_yield(Mass::from_kg(2.28), Mass::from_kg(4.2)),
        0.5429,
        0.001,
    );
}

proptest! {
    #[test]
    fn no_mould_is_ever_poured_below_its_need(
        needs in proptest::collection::vec(600.0f64..800.0, 1..12),
        first in 650.0f64..850.0, drop in 1.0f64..30.0,
    ) {
        let moulds: Vec<_> = needs.iter().map(|needs| mould("", *needs, 5.0)).collect();
        let poured = order(&moulds, celsius(first), kelvin(drop));
        prop_assert_eq!(poured.turns.len() + poured.next_heat.len(), moulds.len());
        for turn in &poured.turns {
            prop_assert!(turn.at >= moulds[turn.mould].needs);
        }
        let hot_first = poured.turns.windows(2).all(|pair| {
            moulds[pair[0].mould].needs >= moulds[pair[1].mould].needs
        });
        prop_assert!(hot_first);
    }

    #[test]
    fn no_order_pours_more(
        needs in proptest::collection::vec(600.0f64..700.0, 1..6),
        first in 640.0f64..720.0, drop in 5.0f64..30.0,
    ) {
        let moulds: Vec<_> = needs.iter().map(|needs| mould("", *needs, 5.0)).collect();
        let best = order(&moulds, celsius(first), kelvin(drop)).turns.len();
        prop_assert!(most_in_any_order(&needs, first, drop, 0) <= best);
    }

    #[test]
    fn a_heat_never_runs_short(
        masses in proptest::collection::vec(0.1f64..3.0, 1..20), pig in 0.0f64..0.2,
    ) {
        let moulds = kilograms(&masses);
        let holds = Mass::from_kg(4.0);
        let poured = heats(&moulds, holds, pig).unwrap();
        let mut seen: Vec<usize> = poured.iter().flat_map(|heat| heat.moulds.clone()).collect();
        seen.sort_unstable();
        prop_assert_eq!(seen, (0..moulds.len()).collect::<Vec<_>>());
        for heat in &poured {
            let takes: Mass = heat.moulds.iter().map(|mould| moulds[*mould]).sum();
            prop_assert!((takes * (1.0 + pig)).as_kg() <= holds.as_kg() + 1e-9);
        }
    }

    #[test]
    fn more_failures_never_lower_the_price(
        cost in 0.1f64..1e4, q in 0.0f64..0.8, more in 0.0f64..0.19,
    ) {
        let price = |q| least_price(&euro(cost), q).amount;
        prop_assert!(price(q) <= price(q + more));
        prop_assert!(price(q) >= cost);
    }
}

/// By trying every choice of the next mould.
fn most_in_any_order(left: &[f64], at: f64, drop: f64, poured: usize) -> usize {
    let mut most = poured;
    for next in 0..left.len() {
        if at >= left[next] {
            let mut rest = left.to_vec();
            rest.remove(next);
            most = most.max(most_in_any_order(&rest, at - drop, drop, poured + 1));
        }
    }
    most
}
