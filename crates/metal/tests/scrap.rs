//! Scrap, holes and fume: what is likely, what parts it, what is forbidden.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use std::collections::{BTreeMap, BTreeSet};

use measure::matter::{Density, Mass};
use metal::alloy::Family;
use metal::fume::{HazardLevel, hazard, hazards};
use metal::hole::{self, LOOKS, PLACES, causes, parting};
use metal::scrap::{
    ForFood, Look, NextLook, Seen, best_two, density_in_water, for_food, kinds, next_look, origin,
    origins, shares, weighed,
};
use proptest::prelude::{prop_assert, proptest};

fn grams(amount: f64) -> Mass {
    Mass::from_g(amount)
}

fn share_of(seen: &Seen, name: &str) -> f64 {
    let place = kinds().iter().position(|kind| kind.name == name).unwrap();
    shares(seen)[place]
}

fn weighed_as(air: f64, water: f64) -> Seen {
    let density = weighed(grams(air), grams(water), grams(1.0));
    Seen {
        density,
        ..Seen::default()
    }
}

fn looks(seen: &[(Look, &str)]) -> Seen {
    let looks = seen
        .iter()
        .map(|(look, outcome)| (*look, (*outcome).to_owned()));
    Seen {
        looks: looks.collect::<BTreeMap<_, _>>(),
        ..Seen::default()
    }
}

#[test]
fn the_tables_are_read_whole_and_use_known_words() {
    assert!(metal::scrap::read(metal::scrap::BUILT_IN).is_ok());
    assert!(metal::scrap::read("kind = 3").is_err());
    assert!(hole::read(hole::BUILT_IN).is_ok());
    assert!(hole::read("[[cause]]\nname = \"bad luck\"").is_err());
    assert!(metal::fume::read(metal::fume::BUILT_IN).is_ok());
    assert!(metal::fume::read("[[hazard]]\nmark = \"dust\"").is_err());
    let text: toml::Table = metal::scrap::BUILT_IN.parse().unwrap();
    for kind in text["kind"].as_array().unwrap() {
        for look in Look::ALL {
            let outcomes = kind[look.name()].as_table().unwrap();
            let known = |word: &String| look.outcomes().contains(&word.as_str());
            assert!(outcomes.keys().all(known), "{kind}");
            let all: i64 = outcomes.values().filter_map(toml::Value::as_integer).sum();
            assert_eq!(all, 100, "{} {}", kind["name"], look.name());
        }
    }
    let names: BTreeSet<&str> = kinds().iter().map(|kind| kind.name.as_str()).collect();
    for origin in text["origin"].as_array().unwrap() {
        for name in origin["likely"].as_table().unwrap().keys() {
            assert!(names.contains(name.as_str()), "{name}");
        }
    }
}

#[test]
fn the_table_of_holes_uses_known_words() {
    let text: toml::Table = hole::BUILT_IN.parse().unwrap();
    for cause in text["cause"].as_array().unwrap() {
        for (key, known) in [("place", PLACES), ("look", LOOKS)] {
            let outcomes = cause[key].as_table().unwrap();
            assert!(outcomes.keys().all(|word| known.contains(&word.as_str())));
            let all: i64 = outcomes.values().filter_map(toml::Value::as_integer).sum();
            assert_eq!(all, 100, "{} {key}", cause["name"]);
        }
    }
}

#[test]
fn a_kitchen_scale_tells_aluminium_from_zinc_alloy() {
    let density = weighed(grams(200.0), grams(126.0), grams(1.0)).unwrap();
    let in_g = |density: Density| density.as_g_per_cm3();
    assert!((in_g(density.likely()) - 2.70).abs() < 0.01);
    assert!(
        in_g(density.high()) - in_g(density.low()) < 0.1,
        "2.70 ± 0.05"
    );
    let light = weighed_as(200.0, 126.0);
    let aluminium = share_of(&light, "cast aluminium") + share_of(&light, "wrought aluminium");
    assert!(aluminium > 0.99, "{aluminium}");
    let heavy = weighed_as(200.0, 170.0);
    assert!(share_of(&heavy, "zinc die-casting alloy") > 0.6);
    assert!(share_of(&heavy, "cast aluminium") < 1e-6);
}

#[test]
fn a_piece_too_small_for_the_scale_has_no_density() {
    assert_eq!(weighed(grams(2.0), grams(1.5), grams(1.0)), None);
    assert_eq!(weighed(grams(200.0), grams(200.0), grams(1.0)), None);
    assert_eq!(weighed(grams(200.0), grams(0.0), grams(1.0)), None);
}

#[test]
fn looks_find_the_metal() {
    let found = |seen: &Seen| {
        let (best, _) = best_two(&shares(seen)).unwrap();
        kinds()[best].name.as_str()
    };
    let iron = [
        (Look::Magnet, "strong"),
        (Look::Spark, "short-red"),
        (Look::File, "dust"),
    ];
    assert_eq!(found(&looks(&iron)), "grey iron");
    let steel = [(Look::Magnet, "strong"), (Look::Spark, "bursts")];
    assert_eq!(found(&looks(&steel)), "steel");
    let copper = [(Look::Colour, "red"), (Look::File, "clogs")];
    assert_eq!(found(&looks(&copper)), "copper");
    assert_eq!(found(&looks(&[(Look::Colour, "yellow")])), "yellow brass");
    let burns = [
        (Look::Magnet, "none"),
        (Look::Vinegar, "fizzes"),
        (Look::Spark, "glare"),
    ];
    assert_eq!(found(&looks(&burns)), "magnesium alloy");
}

#[test]
fn the_next_look_parts_the_two_best() {
    let white = looks(&[(Look::Magnet, "none"), (Look::Colour, "white")]);
    let next = next_look(&white);
    assert!(next.is_some());
    let housing = Seen {
        origin: origin("saw housing"),
        ..looks(&[(Look::Colour, "white"), (Look::Magnet, "none")])
    };
    let parting = [
        NextLook::Weigh,
        NextLook::At(Look::Vinegar),
        NextLook::At(Look::Spark),
    ];
    assert!(next_look(&housing).is_some_and(|next| parting.contains(&next)));
    let all_taken = looks(&[
        (Look::Magnet, "strong"),
        (Look::Spark, "bursts"),
        (Look::Colour, "white"),
        (Look::File, "bites"),
        (Look::Vinegar, "still"),
    ]);
    assert!(matches!(
        next_look(&all_taken),
        None | Some(NextLook::Weigh)
    ));
}

#[test]
fn no_scrap_is_ever_declared_fit_for_food() {
    let refused = |seen: &Seen| matches!(for_food(seen, false), ForFood::Never(_));
    let from = |word: &str| Seen {
        origin: origin(word),
        ..weighed_as(200.0, 126.0)
    };
    assert!(refused(&from("radiator")));
    assert!(refused(&from("mixed")));
    assert!(refused(&from("pan")));
    assert!(refused(&weighed_as(200.0, 126.0)), "unknown origin");
    assert!(refused(&looks(&[(Look::Colour, "yellow")])));
    assert_eq!(for_food(&from("piston"), false), ForFood::Unproven);
    assert!(matches!(for_food(&from("piston"), true), ForFood::Never(_)));
    let tap = Seen {
        origin: origin("tap"),
        ..looks(&[(Look::Colour, "yellow")])
    };
    assert!(refused(&tap));
}

#[test]
fn radiators_and_food_are_blocked_and_stops_come_first() {
    let charge = hazards(&["unknown-scrap", "zinc-fume", "sealed"], true);
    assert_eq!(charge[0].0, HazardLevel::Stop);
    assert!(
        charge.iter().any(|(level, hazard)| {
            *level == HazardLevel::Stop && hazard.mark == "unknown-scrap"
        })
    );
    assert!(charge.is_sorted_by_key(|(level, _)| *level));
    let machine = hazards(&["lead"], false);
    assert_eq!(machine[0].0, HazardLevel::Caution);
    assert!(hazard("cadmium").is_some_and(|of| of.level == HazardLevel::Stop));
    assert!(hazards(&["sunshine"], true).is_empty());
}

#[test]
fn every_pair_of_causes_has_a_check_and_every_cause_one_change() {
    for one in hole::all() {
        assert!(!one.lever.is_empty());
        for other in hole::all().iter().filter(|other| other.name != one.name) {
            let check = parting(one, other);
            assert!(check.is_some(), "{} or {}", one.name, other.name);
        }
    }
}

/// Holes as founders describe them, with the cause that common practice names: metal, place,
/// look, and words of the cause.
const TOLD: [(Family, &str, &str, &str); 20] = [
    (Family::Aluminium, "through", "round-bright", "dissolved"),
    (Family::Aluminium, "heavy", "round-bright", "dissolved"),
    (Family::Aluminium, "heavy", "jagged", "shrinkage"),
    (Family::Aluminium, "heavy", "sink", "shrinkage"),
    (Family::Aluminium, "skin", "round-dull", "mould"),
    (Family::Aluminium, "thin", "seam", "cold"),
    (Family::Aluminium, "top", "dross", "dross"),
    (Family::Aluminium, "core", "one-large-smooth", "core"),
    (Family::Aluminium, "gate", "jagged", "shrinkage"),
    (Family::Aluminium, "top", "one-large-smooth", "air"),
    (Family::Copper, "through", "round-bright", "dissolved"),
    (Family::Copper, "skin", "round-bright", "mould"),
    (Family::Copper, "heavy", "jagged", "shrinkage"),
    (Family::Copper, "top", "sand", "sand"),
    (Family::Copper, "thin", "seam", "cold"),
    (Family::Iron, "skin", "round-bright", "mould"),
    (Family::Iron, "top", "sand", "sand"),
    (Family::Iron, "top", "dross", "slag"),
    (Family::Iron, "heavy", "sink", "shrinkage"),
    (Family::Zinc, "top", "one-large-smooth", "air"),
];

#[test]
fn told_holes_are_found_among_the_first_two() {
    let right = TOLD.iter().filter(|(metal, place, look, cause)| {
        let found = causes(*metal, place, look);
        found.iter().take(2).any(|(of, _)| of.name.contains(cause))
    });
    let right = right.count();
    assert!(right >= 16, "{right} of 20");
}

proptest! {
    #[test]
    fn shares_are_parts_of_one(
        air in 50.0..2000.0, part in 0.3..0.95, magnet in 0_usize..3, spark in 0_usize..5,
        from in 0_usize..17
    ) {
        let mut seen = weighed_as(air, air * part);
        let outcome = |look: Look, which: usize| (look, look.outcomes()[which].to_owned());
        seen.looks.extend([outcome(Look::Magnet, magnet), outcome(Look::Spark, spark)]);
        seen.origin = origins().get(from);
        let all: f64 = shares(&seen).iter().sum();
        prop_assert!((all - 1.0).abs() < 1e-9, "{all}");
    }

    #[test]
    fn causes_are_parts_of_one_the_likeliest_first(place in 0_usize..8, look in 0_usize..8) {
        let found = causes(Family::Copper, PLACES[place], LOOKS[look]);
        let all: f64 = found.iter().map(|(_, share)| share).sum();
        prop_assert!((all - 1.0).abs() < 1e-9);
        prop_assert!(found.is_sorted_by(|a, b| a.1 >= b.1));
    }

    #[test]
    fn a_finer_scale_never_widens_the_density(
        air in 20.0_f64..2000.0, density in 1.7_f64..11.0, step in 0.1_f64..2.0
    ) {
        let water = air * (1.0 - 0.998 / density);
        let coarse = weighed(grams(air), grams(water), grams(step));
        let fine = weighed(grams(air), grams(water), grams(step / 2.0));
        if let (Some(coarse), Some(fine)) = (coarse, fine) {
            prop_assert!(coarse.low() <= fine.low() && fine.high() <= coarse.high());
            prop_assert!((fine.likely().as_g_per_cm3() - density).abs() < 1e-6);
        }
    }

    #[test]
    fn the_law_of_archimedes_turns_round(air in 10.0_f64..2000.0, density in 1.2_f64..20.0) {
        let liquid = Density::from_g_per_cm3(1.0);
        let water = air * (1.0 - 1.0 / density);
        let found = density_in_water(grams(air), grams(water), liquid).as_g_per_cm3();
        prop_assert!((found - density).abs() < 1e-6 * density);
    }
}
