//! What holds for every law that can be called by name.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use std::collections::BTreeSet;

use proptest::prelude::{Strategy, prop_assert, proptest};
use reckon::answer::Outcome;
use reckon::ask::Ask;
use reckon::input::{Otherwise, Wanted};
use reckon::reckoner::Reckoner;
use reckon::refusal::Refusal;
use reckon::worked::{Worked, work_out};

fn worked(ask: &Ask) -> Worked {
    work_out(ask).unwrap()
}

/// Ends of the first answer that is a figure.
fn ends(worked: &Worked) -> [f64; 3] {
    let figure = worked
        .answers
        .iter()
        .find_map(|answer| match &answer.outcome {
            Outcome::Figure { ends, .. } => Some(*ends),
            Outcome::Words(_) => None,
        });
    figure.unwrap_or_default()
}

#[test]
fn names_are_trade_words_joined_by_hyphens_and_no_two_alike() {
    let mut seen = BTreeSet::new();
    for (_, reckoner) in reckon::all() {
        let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        assert!(reckoner.name.chars().all(plain), "{}", reckoner.name);
        assert!(seen.insert(reckoner.name), "{} twice", reckoner.name);
        assert!(reckoner.question.ends_with('?'), "{}", reckoner.question);
    }
}

#[test]
fn every_example_is_answered_with_its_numbers_in_the_formula() {
    for (_, reckoner) in reckon::all() {
        let worked = work_out(&reckoner.example_ask());
        let worked = worked.unwrap_or_else(|no| panic!("{}: {no}", reckoner.name));
        assert!(!worked.answers.is_empty(), "{}", reckoner.name);
        let symbols = reckoner.inputs.iter().filter(|input| {
            !input.symbol.is_empty() && worked.given.iter().any(|back| back.key == input.key)
        });
        for input in symbols {
            assert!(
                reckon::formula::with_numbers(
                    reckoner.law.formula,
                    &[(input.symbol, "@".to_owned())]
                )
                .contains("(@)"),
                "{}: {} is no symbol of {}",
                reckoner.name,
                input.symbol,
                reckoner.law.formula
            );
        }
    }
}

#[test]
fn sources_resolve_and_defaults_can_be_read() {
    for (_, reckoner) in reckon::all() {
        for input in reckoner.inputs {
            if let Otherwise::Text(_, source) = input.otherwise {
                assert!(
                    measure::source::source(source).is_some(),
                    "{}: {source}",
                    reckoner.name
                );
            }
        }
        assert!(
            !worked(&reckoner.example_ask()).sources.is_empty(),
            "{}",
            reckoner.name
        );
    }
}

#[test]
fn what_is_missing_strange_or_unreadable_is_named() {
    assert!(matches!(
        work_out(&Ask::new("chok")),
        Err(Refusal::NoSuchName {
            near: Some("choke"),
            ..
        })
    ));
    for (_, reckoner) in reckon::all() {
        let strange = reckoner.example_ask().give("moonshine", "3");
        assert!(matches!(work_out(&strange), Err(Refusal::NotAsked { .. })));
        for input in reckoner.inputs {
            let nonsense = reckoner.example_ask().give(input.key, "?!");
            let takes_words = matches!(input.wanted, Wanted::Text);
            assert!(
                takes_words || work_out(&nonsense).is_err(),
                "{}",
                reckoner.name
            );
        }
    }
}

#[test]
fn nothing_typed_is_answered_or_asked_for_and_never_a_panic() {
    for (_, reckoner) in reckon::all() {
        let _ = work_out(&Ask::new(reckoner.name)).map(|worked| worked.answers.len());
    }
}

/// Inputs of the example that are single quantities, and so can be widened.
fn widenable(reckoner: &'static Reckoner) -> Vec<(&'static str, String)> {
    let worked = worked(&reckoner.example_ask());
    let quantity = |key: &str| {
        reckoner.inputs.iter().any(|input| {
            input.key == key
                && matches!(
                    input.wanted,
                    Wanted::Quantity(_) | Wanted::Share | Wanted::Number
                )
        })
    };
    let typed = worked
        .given
        .iter()
        .filter(|back| back.typed && quantity(back.key));
    let single = typed.filter(|back| !back.text.contains(" to ") && !back.text.contains('±'));
    single.map(|back| (back.key, back.text.clone())).collect()
}

/// How the doubt begins that tells of an end that a law refuses.
const REFUSED_END: &str = "at the end of what was given";

fn any_name() -> impl Strategy<Value = &'static str> {
    let all: Vec<_> = reckon::all().map(|(_, reckoner)| reckoner.name).collect();
    proptest::sample::select(all)
}

proptest! {
    /// Widening an input never narrows the answer, and the likely answer stays where it is. Where
    /// the law refuses an end of the wider one the band stops short of it, and that is told.
    #[test]
    fn widening_never_narrows(
        name in any_name(),
        which in 0_usize..8,
        narrow in 0.0..1.5,
        more in 0.0..1.5,
    ) {
        let reckoner = reckon::named(name).unwrap();
        let inputs = widenable(reckoner);
        if let Some((key, text)) = inputs.get(which % inputs.len().max(1)) {
            let wide = |margin: f64| format!("{text} ± {margin} %");
            let ask = |margin: f64| reckoner.example_ask().give(key, &wide(margin));
            if let (Ok(one), Ok(other)) = (work_out(&ask(narrow)), work_out(&ask(narrow + more))) {
                let ([low, likely, high], [lower, same, higher]) = (ends(&one), ends(&other));
                let hair = 1e-9 * likely.abs();
                let stops_short = other.doubts.iter().any(|doubt| doubt.starts_with(REFUSED_END));
                prop_assert!(stops_short || lower <= low + hair && high <= higher + hair, "{}", reckoner.name);
                prop_assert!((same - likely).abs() <= hair);
                prop_assert!(low <= likely + hair && likely <= high + hair);
            }
        }
    }

    /// Any text at all gives an answer or a reason, never a panic.
    #[test]
    fn any_text_is_answered_or_refused(
        name in any_name(), which in 0_usize..8, text in "\\PC{0,20}"
    ) {
        let reckoner = reckon::named(name).unwrap();
        let input = &reckoner.inputs[which % reckoner.inputs.len()];
        let ask = reckoner.example_ask().give(input.key, &text);
        prop_assert!(work_out(&ask).map_or_else(|no| !no.to_string().is_empty(), |_| true));
    }

    /// Noughts and giants: an answer that is a number, or a reason.
    #[test]
    fn extreme_figures_are_answered_or_refused(
        name in any_name(),
        which in 0_usize..8,
        times in proptest::sample::select(vec![0.0, 1e-9, 1e-3, 1e3, 1e9, 1e30]),
    ) {
        let reckoner = reckon::named(name).unwrap();
        let inputs = widenable(reckoner);
        if let Some((key, text)) = inputs.get(which % inputs.len().max(1)) {
            let number = text.find(|c: char| !(c.is_ascii_digit() || c == '.'));
            let (number, unit) = text.split_at(number.unwrap_or(text.len()));
            if let Ok(number) = number.parse::<f64>() {
                let ask = reckoner.example_ask().give(key, &format!("{} {unit}", number * times));
                if let Ok(worked) = work_out(&ask) {
                    prop_assert!(ends(&worked).iter().all(|end| end.is_finite()));
                }
            }
        }
    }
}
