//! Figures on which people's bodies depend are shown on the safe side, in both systems of units.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use measure::length::Length;
use measure::matter::{Force, Mass};
use measure::text::{System, Typed, Written};
use mould::clamp::{clamp_force, clamps_wanted, force_to_hold};
use mould::handling::{Lifting, lift_limit, team_lift};
use mould::lift::{SURGE, hold_down};
use proptest::prelude::{prop_assert, proptest};
use reckon::answer::Outcome;
use reckon::ask::Ask;
use reckon::worked::{Figure, work_out};

/// What the sums of 64-bit numbers leave over.
const HAIR: f64 = 1e-8;

fn figure(ask: &Ask, name: &str) -> Figure {
    let worked = work_out(ask).unwrap();
    let mut answers = worked.answers.into_iter();
    answers.find(|answer| answer.name == name).unwrap()
}

/// The likely value as printed, in each system, read back.
fn printed<Q: Written>(figure: &Figure) -> Vec<Q> {
    let both = [System::Metric, System::Inch].map(|system| figure.shown(system));
    let texts = both
        .into_iter()
        .flat_map(|shown| [Some(shown.likely), shown.other]);
    let read = |text: String| text.parse::<Typed<Q>>().unwrap().value;
    texts.flatten().map(read).collect()
}

fn never_below<Q: Written>(figure: &Figure, need: Q) -> bool {
    let told = printed::<Q>(figure);
    told.len() > 1
        && told
            .iter()
            .all(|told| told.si() >= need.si() * (1.0 - HAIR))
}

fn never_above<Q: Written>(figure: &Figure, limit: Q) -> bool {
    let told = printed::<Q>(figure);
    told.len() > 1
        && told
            .iter()
            .all(|told| told.si() <= limit.si() * (1.0 + HAIR))
}

proptest! {
    /// The weight, the clamps and the lift told are never below the exact need.
    #[test]
    fn what_holds_the_cope_is_never_told_too_light(lift in 1.0..3000.0, cope in 0.0..50.0) {
        let ask = |name| {
            Ask::new(name)
                .give("lift", &format!("{lift} N"))
                .give("cope", &format!("{cope} kg"))
                .give("surge", &format!("{SURGE}"))
        };
        let (lift, cope) = (Force::from_n(lift), Mass::from_kg(cope));
        let need = hold_down(lift, SURGE, cope);
        let weight = figure(&ask("cope-weight"), "mass");
        let clamps = ask("clamps").give("clamps", "3").give("hold", "150 N");
        let each = clamp_force(lift, SURGE, cope, 3.0);
        if need > Mass::ZERO {
            prop_assert!(never_below(&weight, need));
            prop_assert!(never_below(&figure(&clamps, "each"), each));
        }
        let wanted = figure(&clamps, "clamps wanted").shown(System::Metric).likely;
        let wanted: f64 = wanted.parse().unwrap();
        let exact = clamps_wanted(force_to_hold(lift, SURGE, cope), Force::from_n(150.0));
        prop_assert!(wanted >= exact);
    }

    /// The high end of a band is never below the exact need at the worst corner.
    #[test]
    fn a_band_reaches_the_worst_corner(lift in 20.0..2000.0, cope in 0.0..2.0) {
        let ask = Ask::new("cope-weight")
            .give("lift", &format!("{lift} N"))
            .give("cope", &format!("{cope} kg"))
            .give("surge", "1.3 to 1.7");
        let worst = hold_down(Force::from_n(lift), 1.7, Mass::from_kg(cope));
        let weight = figure(&ask, "mass");
        for system in [System::Metric, System::Inch] {
            let band = weight.shown(system).band.unwrap();
            let high: Typed<Mass> = band.high.parse().unwrap();
            prop_assert!(high.value.as_kg() >= worst.as_kg() * (1.0 - HAIR), "{band}");
        }
    }

    /// Floats and print pressures are never told too small.
    #[test]
    fn a_core_is_never_told_to_float_less(core in 1.0..3000.0, print in 10.0..120.0) {
        let mass = core * 1.6e-3;
        let ask = Ask::new("hung-core")
            .give("core", &format!("{core} cm3"))
            .give("mass", &format!("{mass} kg"))
            .give("print", &format!("{print} mm"))
            .give("head", "90 mm")
            .give("liquid_density", "7.7 g/cm3");
        for name in ["force on the cope", "net float", "displaced"] {
            let found = figure(&ask, name);
            let Outcome::Figure { ends, .. } = found.outcome else { panic!("{name} is a figure") };
            prop_assert!(never_below(&found, Force::from_n(ends[1])), "{name}");
        }
    }

    /// What people may lift is never told too high.
    #[test]
    fn nobody_is_told_to_lift_more(reach in 20.0..62.0, height in 0.0..170.0) {
        let cm = |cm: f64| Length::from_mm(cm * 10.0);
        let lifting = Lifting { reach: cm(reach), height: cm(height), travel: cm(25.0) };
        let limit = lift_limit(&lifting);
        let ask = Ask::new("lift-limit")
            .give("reach", &format!("{reach} cm"))
            .give("height", &format!("{height} cm"));
        prop_assert!(never_above(&figure(&ask, "mass"), limit));
        let team = Ask::new("team-lift")
            .give("one", &format!("{} kg", limit.as_kg()))
            .give("people", "2");
        prop_assert!(never_above(&figure(&team, "mass"), team_lift(limit, 2)));
    }
}
