//! What cannot be an experiment is refused with what to write instead.

use bench::experiment::design::planned;
use bench::experiment::trouble::{BatchesError, ExperimentError};
use bench::experiment::weighing::weighed;
use trials::plan::PlanError;

use crate::{FROM_SCRATCH, experiment, meant, one_session};

fn refused(change: &[(&str, &str)]) -> ExperimentError {
    let mut text = one_session(9, "learn");
    for (from, to) in change {
        assert!(text.contains(from), "{from}");
        text = text.replace(from, to);
    }
    meant(&text).unwrap_err()
}

#[test]
fn what_is_left_out_or_wrong_is_named() {
    assert_eq!(
        refused(&[("basis = \"dry\"", "")]),
        ExperimentError::NoBasis
    );
    assert!(matches!(
        refused(&[("\"dry\"", "\"damp\"")]),
        ExperimentError::Basis(_)
    ));
    assert!(matches!(
        refused(&[("\"learn\"", "\"win\"")]),
        ExperimentError::Word { .. }
    ));
    assert!(matches!(
        refused(&[("15 to 30", "30 to 15")]),
        ExperimentError::Falling { .. }
    ));
    assert!(matches!(
        refused(&[("15 to 30", "some")]),
        ExperimentError::Amount { .. }
    ));
    assert!(matches!(
        refused(&[("15 to 30", "15 to 30 %")]),
        ExperimentError::PartsAndPercent { .. }
    ));
    assert!(matches!(
        refused(&[("\"high\"", "\"more\"")]),
        ExperimentError::Want { .. }
    ));
    assert!(matches!(
        refused(&[("dug clay", "Water")]),
        ExperimentError::Twice(_)
    ));
    assert!(matches!(
        refused(&[("dug clay", "a,b")]),
        ExperimentError::Name(_)
    ));
    assert!(matches!(
        refused(&[(", is_water = true", "")]),
        ExperimentError::NoWater(_)
    ));
    assert!(matches!(
        refused(&[("\"dry\"", "\"as it lies\"")]),
        ExperimentError::MoistureAsItLies(_)
    ));
    assert!(matches!(
        refused(&[("1.0 % of wet mass", "1.0 % of sand")]),
        ExperimentError::Moisture(_)
    ));
    let fixed = [("15 to 30", "15"), ("7 to 12", "7")];
    assert_eq!(refused(&fixed), ExperimentError::NothingVaries);
    let later = FROM_SCRATCH.split("[later]").next().unwrap();
    assert_eq!(meant(later).unwrap_err(), ExperimentError::Later);
}

#[test]
fn per_cents_that_do_not_add_up_are_refused() {
    let of = |sand: &str, clay: &str, water: &str| {
        let text = one_session(9, "learn").replace("100", &format!("\"{sand} %\""));
        let text = text.replace("15 to 30", &format!("{clay} %"));
        meant(&text.replace("7 to 12", &format!("{water} %"))).unwrap_err()
    };
    let words = of("80 to 90", "30 to 40", "5 to 8").to_string();
    assert!(words.contains("add up to 115.00 %"), "{words}");
    assert!(matches!(
        of("50 to 60", "10 to 20", "5 to 8"),
        ExperimentError::Percent(_)
    ));
    assert!(matches!(
        of("80", "10", "5"),
        ExperimentError::NothingVaries | ExperimentError::DoNotAddUp(_)
    ));
    assert!(matches!(
        of("80", "10 to 20", "5"),
        ExperimentError::OneVaries(_)
    ));
}

#[test]
fn too_few_batches_are_refused_with_how_many_it_takes() {
    let bent = |batches: usize, more: &str| {
        let text = one_session(batches, "learn").replace("repeats = 2", more);
        planned(&experiment(&text))
    };
    let error = bent(6, "repeats = 2\nshape = \"bent\"").unwrap_err();
    assert!(error.to_string().contains("takes 6 numbers"), "{error}");
    assert!(matches!(
        bent(3, "repeats = 3").unwrap_err(),
        ExperimentError::Plan(PlanError::TooManyRepeats { .. })
    ));
    assert!(matches!(
        bent(4, "repeats = 0\ndays = 9").unwrap_err(),
        ExperimentError::Plan(PlanError::Days { .. })
    ));
}

#[test]
fn sand_that_brings_too_much_water_is_refused_with_grams() {
    let wet = one_session(9, "learn").replace("1.0 % of wet", "9.0 % of wet");
    let experiment = experiment(&wet);
    let batches = planned(&experiment).unwrap().batches;
    let dry_ones = batches.iter().filter(|one| one.amounts[2] < 8.0);
    for batch in dry_ones {
        let error = weighed(&experiment, batch).unwrap_err();
        assert!(matches!(&error, BatchesError::TooWet { name, .. } if name == "river sand"));
    }
}
