//! What holds for cores, vents, ramming and lifting whatever the figures.

use measure::flow::Flow;
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Force, Mass, Pressure};
use mould::chaplet::{Pin, chaplets, in_one_plane};
use mould::clamp::{bolt_hold, clamp_force, clamps_wanted, force_to_hold};
use mould::core_print::{length_by_rule, print_length};
use mould::core_rod::{Bar, Ends, bar_strength, core_bending, core_rod, yield_at};
use mould::core_seat::{Drowned, Seat, displaced, float, hung_core, sealed_core, standing_core};
use mould::facing::{Face, facing};
use mould::gas::{gas_rate, sand_gas};
use mould::handling::{Lifting, lift_limit, people_wanted, shank_share, team_lift};
use mould::hanging::hanging;
use mould::irons::{Iron, enough};
use mould::keeping::{Bond, Keeps, keeping};
use mould::lift::{cope_lift, core_lift, hold_down};
use mould::ramming::{Drop, dent_resistance, dent_target};
use mould::venting::{SandPath, Vent, core_gas, mould_gas, vents_wanted};
use proptest::prelude::{any, prop_assert, prop_assert_eq, proptest};

fn bronze(core_cm3: f64, mass_kg: f64) -> Drowned {
    Drowned {
        volume: Volume::from_cm3(core_cm3),
        mass: Mass::from_kg(mass_kg),
        liquid: Density::from_g_per_cm3(7.7),
    }
}

#[test]
fn the_owl_floats_by_four_kilograms_and_displaces_five() {
    let owl = bronze(668.0, 668.0 * 1.6e-3);
    assert!((float(&owl).as_kgf() / 4.1 - 1.0).abs() < 0.01);
    assert!((displaced(&owl).as_kgf() / 5.1 - 1.0).abs() < 0.01);
    let print = Length::from_mm(60.0) * Length::from_mm(60.0) * std::f64::consts::FRAC_PI_4;
    let kpa = |force: Force| (force / print).as_kpa();
    assert!(kpa(float(&owl)) > 14.0 && kpa(displaced(&owl)) < 18.0);
}

#[test]
fn the_owl_lifts_its_cope_by_thirteen_kilograms() {
    // Half-axes 80, 55 and 50 mm, half above the joint, 120 mm of head.
    let shadow = Area::from_mm2(std::f64::consts::PI * 80.0 * 55.0);
    let above = Volume::from_mm3(2.0 / 3.0 * std::f64::consts::PI * 80.0 * 55.0 * 50.0);
    let liquid = Density::from_g_per_cm3(7.7);
    let cavity = cope_lift(liquid, shadow, Length::from_mm(120.0), above);
    let lift = cavity + Seat::Bridged.lift(&bronze(668.0, 1.0688));
    assert!((lift.as_kgf() - 13.3).abs() < 0.1, "{}", lift.as_kgf());
}

#[test]
fn a_slender_core_is_flagged_and_a_stout_one_is_not() {
    let bar = |diameter: f64, span: f64| Bar {
        diameter: Length::from_mm(diameter),
        span: Length::from_mm(span),
        ends: Ends::Both,
        liquid: Density::from_g_per_cm3(7.7),
        core: Density::from_g_per_cm3(1.6),
    };
    assert!(bar(12.0, 150.0).is_slender());
    assert!(!bar(30.0, 60.0).is_slender());
    assert!(core_bending(&bar(12.0, 150.0)) > core_bending(&bar(30.0, 60.0)) * 10.0);
}

#[test]
fn pins_in_one_plane_are_told_from_pins_that_are_not() {
    let pin = |foot: [f64; 3], head: [f64; 3]| Pin { foot, head };
    let flat = [
        pin([90.0, 0.0, 0.0], [74.0, 0.0, 0.0]),
        pin([-90.0, 0.0, 0.0], [-74.0, 0.0, 0.0]),
        pin([0.0, 65.0, 0.0], [0.0, 49.0, 0.0]),
    ];
    assert!(in_one_plane(&flat));
    assert!(in_one_plane(&flat[..2]));
    let with_one_below = [
        flat[0],
        flat[1],
        pin([0.0, 0.0, 60.0], [0.0, 0.0, 44.0]),
        pin([0.0, 65.0, 0.0], [0.0, 49.0, 0.0]),
    ];
    assert!(!in_one_plane(&with_one_below));
}

#[test]
fn a_closed_vent_flips_the_verdict() {
    let gas = Flow::from_litre_per_s(0.5);
    let print = SandPath {
        permeability: 100.0,
        area: Area::from_cm2(28.0),
        way: Length::from_mm(50.0),
    };
    let hole = Vent {
        diameter: Length::from_mm(10.0),
        length: Length::from_mm(90.0),
    };
    let metal = Pressure::under(Density::from_g_per_cm3(7.7), Length::from_mm(76.0));
    let thick = Length::from_mm(88.0);
    assert!(core_gas(gas, &print, thick, Some(&hole)) < metal);
    assert!(core_gas(gas, &print, thick, None) > metal);
}

#[test]
fn deep_hanging_sand_is_pulled_more_than_its_weak_bond_bears() {
    let sand = Density::from_g_per_cm3(1.6);
    let weak = Pressure::from_kpa(3.5);
    let pull = |depth| hanging(sand, Length::from_mm(depth), Length::from_mm(80.0)) * 2.0;
    assert!(pull(60.0) > weak);
    assert!(pull(20.0) < weak);
}

#[test]
fn a_core_that_drinks_is_not_left_in_a_closed_green_mould() {
    let hours = |hours: f64| measure::flow::Duration::from_s(hours * 3600.0);
    let told = |bond, stood, humidity, closed| keeping(bond, hours(stood), humidity, closed);
    assert_eq!(
        told(Bond::Sugar, 12.0, 0.8, true),
        Keeps::InGreenMould,
        "12 h at 80 %"
    );
    assert_eq!(told(Bond::Sugar, 3.0, 0.8, false), Keeps::TooDamp);
    assert_eq!(told(Bond::Green, 20.0, 0.5, false), Keeps::TooLong);
    assert!(matches!(told(Bond::Oil, 20.0, 0.5, false), Keeps::Still(_)));
}

/// Volume within a distance of a block, counted on a grid; only above its floor where told.
fn counted_layer(sides: [f64; 3], thick: f64, below_joint: bool) -> f64 {
    let step = 0.5;
    let out = |at: f64, side: f64| (at - side).max(-at).max(0.0);
    let count = |from: f64, to: f64| ((to - from) / step).round() as i32;
    let mut inside = 0_u64;
    let [nx, ny] = [0, 1].map(|axis: usize| count(-thick, sides[axis] + thick));
    let nz = count(
        -thick,
        if below_joint {
            sides[2]
        } else {
            sides[2] + thick
        },
    );
    for (x, y, z) in
        (0..nx).flat_map(|x| (0..ny).flat_map(move |y| (0..nz).map(move |z| (x, y, z))))
    {
        let at = [x, y, z].map(|n| -thick + (f64::from(n) + 0.5) * step);
        let away = [0, 1, 2].map(|axis: usize| out(at[axis], sides[axis]));
        let squared: f64 = away.iter().map(|a| a * a).sum();
        inside += u64::from(squared > 0.0 && squared <= thick * thick);
    }
    inside as f64 * step * step * step
}

#[test]
fn facing_on_a_block_is_what_geometry_counts() {
    let sides = [80.0, 60.0, 18.0];
    let lengths = sides.map(Length::from_mm);
    let thick = Length::from_mm(12.0);
    let all = facing(&Face::around_block(lengths), thick).as_mm3();
    let below = facing(&Face::below_joint(lengths), thick).as_mm3();
    assert!((all / counted_layer(sides, 12.0, false) - 1.0).abs() < 0.01);
    assert!((below / counted_layer(sides, 12.0, true) - 1.0).abs() < 0.01);
}

proptest! {
    /// Hung more than surrounded, and a sealed standing core less: metal over the print is missing
    /// in the one, metal under it in the other.
    #[test]
    fn what_metal_cannot_reach_adds_above_and_takes_below(
        core in 1.0..3000.0, weight in 0.1..0.9, mouth in 1.0..80.0, head in 1.0..400.0,
        depth in 0.0..60.0,
    ) {
        let core = bronze(core, core * weight * 7.7e-3);
        let mouth = Area::from_cm2(mouth);
        let head = Length::from_mm(head);
        let free = float(&core);
        prop_assert!(hung_core(&core, mouth, head) > free);
        prop_assert!(sealed_core(&core, mouth, head) < free);
        prop_assert!(standing_core(&core, mouth, Length::from_mm(depth)) >= free);
        prop_assert!(free < displaced(&core));
        let added = hung_core(&core, mouth, head) - free;
        let taken = free - sealed_core(&core, mouth, head);
        prop_assert!((added - taken).as_n().abs() < 1e-9 * added.as_n());
    }

    /// Cope and hung core together: the lift of the whole shadow, the core as if it were metal
    /// pressed up by what it displaces. Cope round the print and core in it give the same sum.
    #[test]
    fn a_hung_core_and_its_cope_lift_as_one(
        core in 1.0..500.0, mouth in 1.0..50.0, more in 1.0..100.0, head in 60.0..300.0,
    ) {
        let weightless = bronze(core, 0.0);
        let (mouth, more) = (Area::from_cm2(mouth), Area::from_cm2(more));
        let head = Length::from_mm(head);
        let liquid = weightless.liquid;
        // A flat cavity in the drag: no metal above the joint.
        let apart = cope_lift(liquid, more, head, Volume::ZERO)
            + hung_core(&weightless, mouth, head);
        let as_one = cope_lift(liquid, more + mouth, head, Volume::ZERO)
            + core_lift(weightless.volume, liquid, Density::ZERO);
        prop_assert!((apart - as_one).as_n().abs() < 1e-9 * as_one.as_n());
    }

    /// Irons laid on, clamps set and bolts drawn are never less than what is needed.
    #[test]
    fn what_holds_the_cope_is_never_too_little(
        lift in 0.0..2000.0, surge in 1.0..2.0, cope in 0.0..60.0, hold in 1.0..900.0,
        irons in proptest::collection::vec(0.2..25.0, 0..12),
    ) {
        let lift = Force::from_n(lift);
        let cope = Mass::from_kg(cope);
        let need = hold_down(lift, surge, cope);
        let irons: Vec<Iron> = irons
            .iter()
            .map(|kg| Iron { name: "iron".to_owned(), mass: Mass::from_kg(*kg) })
            .collect();
        let there: Mass = irons.iter().map(|iron| iron.mass).sum();
        match enough(&irons, need) {
            Some(laid) => {
                let laid: Mass = laid.iter().map(|iron| iron.mass).sum();
                prop_assert!(laid >= need);
            }
            None => prop_assert!(there < need),
        }
        let all = force_to_hold(lift, surge, cope);
        let clamps = clamps_wanted(all, Force::from_n(hold));
        prop_assert!(clamps * hold >= all.as_n() - 1e-9);
        prop_assert!(clamps != 1.0, "one clamp lets the far side gape");
        if clamps > 0.0 {
            let each = clamp_force(lift, surge, cope, clamps);
            prop_assert!(each.as_n() <= hold + 1e-9);
            prop_assert!((each.as_n() * clamps - need.weight().as_n()).abs() < 1e-6);
        }
        let eight = bolt_hold(Length::from_mm(8.0), Pressure::from_kpa(60e3));
        prop_assert!(eight.as_n() < 36.6 * 60.0, "thread of M8, 36.6 mm²");
    }

    #[test]
    fn more_chaplets_for_more_float_and_three_at_least(
        float in 0.0..500.0, more in 0.0..500.0, strength in 5.0..200.0, foot in 0.5..20.0,
    ) {
        let wanted = |n: f64, prints| {
            let (force, sand) = (Force::from_n(n), Pressure::from_kpa(strength));
            chaplets(force, sand, 2.0, Area::from_cm2(foot), prints)
        };
        prop_assert!(wanted(float, 0) >= 3.0);
        prop_assert!(wanted(float + more, 0) >= wanted(float, 0));
        prop_assert!(wanted(float, 2) <= wanted(float, 1) && wanted(float, 1) <= wanted(float, 0));
        prop_assert!(wanted(float, 2) * strength * foot * 0.1 >= 2.0 * float * (1.0 - 1e-12));
    }

    /// A turned or moved set of pins is judged alike.
    #[test]
    fn pins_are_judged_alike_wherever_they_lie(
        ends in proptest::collection::vec(proptest::array::uniform3(-90.0..90.0), 6..12),
        by in proptest::array::uniform3(-500.0..500.0), flat in any::<bool>(),
    ) {
        let pins = |turn: fn([f64; 3]) -> [f64; 3], by: [f64; 3]| -> Vec<Pin> {
            let put = |end: &[f64; 3]| {
                let mut end = *end;
                if flat { end[2] = 0.0; }
                let end = turn(end);
                [end[0] + by[0], end[1] + by[1], end[2] + by[2]]
            };
            ends.chunks_exact(2).map(|two| Pin { foot: put(&two[0]), head: put(&two[1]) }).collect()
        };
        let here = in_one_plane(&pins(|end| end, [0.0; 3]));
        let there = in_one_plane(&pins(|[x, y, z]| [y, z, x], by));
        prop_assert_eq!(here, there);
        prop_assert!(!flat || here);
    }

    #[test]
    fn prints_grow_with_float_and_shrink_with_strength(
        force in 1.0..300.0, strength in 5.0..200.0, across in 5.0..120.0, times in 1.0..5.0,
    ) {
        let length = |n: f64, kpa: f64| {
            let (force, sand) = (Force::from_n(n), Pressure::from_kpa(kpa));
            print_length(force, sand, 2.0, Length::from_mm(across), 2.0)
        };
        prop_assert!(length(force * times, strength) >= length(force, strength));
        prop_assert!(length(force, strength * times) <= length(force, strength));
        prop_assert!(length_by_rule(Length::from_mm(across)) <= Length::from_mm(76.2));
    }

    /// The rod found bears its core with the margin asked for, and a hotter one has to be thicker.
    #[test]
    fn a_rod_bears_its_core(
        across in 5.0..80.0, long in 20.0..600.0, one in any::<bool>(), heat in 20.0..1100.0,
    ) {
        let bar = Bar {
            diameter: Length::from_mm(across),
            span: Length::from_mm(long),
            ends: if one { Ends::One } else { Ends::Both },
            liquid: Density::from_g_per_cm3(7.7),
            core: Density::from_g_per_cm3(1.6),
        };
        let yields = |celsius| yield_at(measure::heat::Temperature::from_celsius(celsius));
        let rod = core_rod(&bar, yields(heat), 2.0);
        // Tension goes with the cube of the thickness at the same moment.
        let in_rod = core_bending(&bar) * (bar.diameter / rod).powi(3);
        prop_assert!((in_rod * 2.0 / yields(heat) - 1.0).abs() < 1e-9);
        prop_assert!(core_rod(&bar, yields(heat + 50.0), 2.0) >= rod);
    }

    /// A bar is as strong whichever way the figures are turned: twice the load, twice the strength.
    #[test]
    fn a_bar_breaks_by_the_beam_formula(
        load in 0.5..60.0, span in 60.0..300.0, breadth in 10.0..40.0, height in 10.0..40.0,
    ) {
        let strength = |times: f64| bar_strength(
            Force::from_n(load * times),
            Length::from_mm(span),
            Length::from_mm(breadth),
            Length::from_mm(height),
        );
        let mpa: f64 = 3.0 * load * span / (2.0 * breadth * height * height);
        let pressure: Pressure = strength(1.0);
        prop_assert!((pressure.as_kpa() / (mpa * 1e3) - 1.0).abs() < 1e-9);
        prop_assert!((strength(2.0) / strength(1.0) - 2.0).abs() < 1e-9);
    }

    /// More binder and more water, more pressure; more vents and more open sand, less.
    #[test]
    fn gas_presses_more_where_there_is_more_and_less_where_it_gets_out(
        binder in 0.001..0.05, water in 0.0..0.08, seconds in 0.5..30.0, number in 5.0..400.0,
        face in 5.0..2000.0, vents in 0.0..200.0, way in 25.0..200.0, wire in 1.0..4.0,
    ) {
        let gas = |binder, water| {
            let hot = measure::heat::Temperature::from_celsius(400.0);
            let litres = sand_gas(water, binder, 600.0, hot);
            let time = measure::flow::Duration::from_s(seconds);
            gas_rate(Area::from_cm2(face), Density::from_g_per_cm3(1.6), litres, 0.6, time)
        };
        let path = |number| SandPath {
            permeability: number,
            area: Area::from_cm2(face),
            way: Length::from_mm(way),
        };
        let thick = Length::from_mm(40.0);
        let core = |binder, number| core_gas(gas(binder, water), &path(number), thick, None);
        let twice = core(binder * 2.0, number);
        prop_assert!(twice > core(binder, number));
        prop_assert!(gas(binder, water + 0.01) > gas(binder, water));
        prop_assert!(core(binder, number * 2.0) < core(binder, number));
        let (short, wire) = (Length::from_mm(12.0), Length::from_mm(wire));
        let mould = |vents| mould_gas(gas(binder, water), &path(number), short, wire, vents);
        prop_assert!(mould(vents + 1.0) <= mould(vents));
        // Without vents it is plain seepage through the whole sand.
        let plain = mould::venting::seepage(gas(binder, water), &path(number));
        prop_assert!((mould(0.0) / plain - 1.0).abs() < 1e-9);
    }

    /// The vents found are enough, and one fewer is not.
    #[test]
    fn vents_found_are_the_fewest_that_are_enough(
        litres in 0.01..5.0, number in 5.0..300.0, face in 20.0..2000.0, borne in 0.05..20.0,
    ) {
        let sand = SandPath {
            permeability: number,
            area: Area::from_cm2(face),
            way: Length::from_mm(60.0),
        };
        let (short, wire) = (Length::from_mm(12.0), Length::from_mm(2.0));
        let gas = Flow::from_litre_per_s(litres);
        let borne = Pressure::from_kpa(borne);
        let enough = |vents| mould_gas(gas, &sand, short, wire, vents) <= borne;
        if let Some(vents) = vents_wanted(gas, &sand, short, wire, borne) {
            prop_assert!(enough(vents));
            prop_assert!(vents == 0.0 || !enough(vents - 1.0));
        } else {
            prop_assert!(!enough(0.0));
        }
    }

    /// Nobody is told that a load may be lifted which is over the limit of those who lift it.
    #[test]
    fn people_are_never_too_few(
        load in 0.1..120.0, reach in 10.0..90.0, height in 0.0..200.0, travel in 5.0..150.0,
    ) {
        let cm = |cm: f64| Length::from_mm(cm * 10.0);
        let lifting = Lifting { reach: cm(reach), height: cm(height), travel: cm(travel) };
        let one = lift_limit(&lifting);
        prop_assert!(one <= Mass::from_kg(23.0));
        let farther = Lifting { reach: cm(reach + 5.0), ..lifting };
        prop_assert!(lift_limit(&farther) <= one);
        let load = Mass::from_kg(load);
        match people_wanted(load, one) {
            Some(people) => {
                prop_assert!(team_lift(one, people) >= load);
                prop_assert!(people == 1 || team_lift(one, people - 1) < load);
            }
            None => prop_assert!(team_lift(one, 3) < load),
        }
        let shares = |near, far| shank_share(load, Mass::from_kg(3.0), cm(near), cm(far));
        let both = shares(reach, height + 1.0) + shares(height + 1.0, reach);
        prop_assert!((both.as_kgf() - load.as_kg() - 3.0).abs() < 1e-9);
    }

    /// The target with the same drop is the dent itself, and a lower drop makes a smaller one.
    #[test]
    fn a_lower_drop_scales_the_dent(
        grams in 20.0..600.0, ball in 12.0..60.0, drop in 50.0..500.0, part in 0.1..0.8,
        lower in 0.2..0.95,
    ) {
        let good = Drop {
            mass: Mass::from_g(grams),
            ball: Length::from_mm(ball),
            height: Length::from_mm(drop),
        };
        let dent = good.ball * part;
        let firm = dent_resistance(&good, dent);
        prop_assert!(firm.is_some());
        let firm = firm.unwrap_or(Pressure::ZERO);
        let again = dent_target(firm, &good).unwrap_or(Length::ZERO);
        prop_assert!((again / dent - 1.0).abs() < 1e-6);
        let lower = Drop { height: good.height * lower, ..good };
        let smaller = dent_target(firm, &lower).unwrap_or(Length::ZERO);
        prop_assert!(smaller < dent && smaller > Length::ZERO);
    }
}
