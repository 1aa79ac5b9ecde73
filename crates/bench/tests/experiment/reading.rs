//! What results say: winners only where there are any, days taken off, the next batch.

use bench::experiment::Experiment;
use bench::experiment::batches::{Batch, From};
use bench::experiment::design::{batch, planned};
use bench::experiment::reading::{Unnamed, Unread, read};
use bench::experiment::results::{Note, Reading};
use bench::experiment::space::Space;

use crate::simulated::{Noise, at, results};
use crate::{experiment, one_session};

/// A hill with its top inside: at 0.6 of the clay and 0.45 of the water.
fn hill(experiment: &Experiment, one: &Batch) -> f64 {
    let at = at(experiment, one);
    60.0 - 60.0 * (at[0] - 0.6).powi(2) - 90.0 * (at[1] - 0.45).powi(2)
}

/// The promise on pure noise: a winner is named in at most 70 of 1,000 sets. Both a plan of nine
/// and one spread over two days that differ are read.
#[test]
fn pure_noise_names_no_winner() {
    for (batches, days) in [(9, 1), (12, 2)] {
        let text = one_session(batches, "best")
            .replace("repeats = 2", &format!("repeats = 2\ndays = {days}"));
        let experiment = experiment(&text.replace(", step = 1", ""));
        let plan = planned(&experiment).unwrap().batches;
        let named = (0..1000).filter(|seed| {
            let mut noise = Noise(*seed);
            let made = results(&plan, |one| {
                40.0 + 20.0 * one.day as f64 + 5.0 * noise.normal()
            });
            let said = read(&experiment, &plan, &made, 0).unwrap();
            said.responses[0].fitted.as_ref().unwrap().unnamed.is_none()
        });
        let named = named.count();
        assert!(
            (20..=70).contains(&named),
            "{named} of 1000 with {days} days"
        );
    }
}

#[test]
fn a_hill_is_found_and_its_top_named() {
    let experiment = experiment(&one_session(12, "learn").replace(", step = 1", ""));
    let plan = planned(&experiment).unwrap().batches;
    let mut noise = Noise(5);
    let made = results(&plan, |one| hill(&experiment, one) + 1.5 * noise.normal());
    let said = read(&experiment, &plan, &made, 2).unwrap();
    let fitted = said.responses[0].fitted.as_ref().unwrap();
    assert_eq!(fitted.unnamed, None);
    let best = fitted.best.as_ref().unwrap();
    let space = Space::of(&experiment);
    let mix = batch(&space, &best.point, 99, 1, From::Next);
    assert!(hill(&experiment, &mix) > 57.0, "{mix:?}");
    assert!(best.as_good < 0.5);
    assert_eq!(said.next.better.len(), 2);
    let next = batch(&space, &said.next.better[0].point, 99, 1, From::Next);
    assert!(hill(&experiment, &next) > 50.0, "{next:?}");
    assert!(said.next.teaches.is_some() && said.open.is_empty());
}

/// Days that differ by far more than mixes do are taken off.
#[test]
fn days_do_not_pass_for_mixes() {
    let text = one_session(12, "learn").replace("repeats = 2", "repeats = 3\ndays = 2");
    let experiment = experiment(&text);
    let plan = planned(&experiment).unwrap().batches;
    let mut noise = Noise(8);
    let made = results(&plan, |one| {
        100.0 * one.day as f64 + hill(&experiment, one) + noise.normal()
    });
    let said = read(&experiment, &plan, &made, 1).unwrap();
    let fitted = said.responses[0].fitted.as_ref().unwrap();
    assert_eq!(fitted.days, 2);
    let apart = &fitted.days_apart[0];
    assert!(
        (apart.change - 100.0).abs() < apart.within.unwrap(),
        "{apart:?}"
    );
    let repeats = said.responses[0].repeats.unwrap();
    assert!(
        repeats.low < 1.0 && repeats.high > 1.0,
        "the noise without the days: {repeats:?}"
    );
    let best = fitted.best.as_ref().unwrap();
    let mix = batch(&Space::of(&experiment), &best.point, 99, 1, From::Next);
    assert!(hill(&experiment, &mix) > 56.0);
}

#[test]
fn what_cannot_be_read_says_why() {
    let experiment = experiment(&one_session(9, "learn"));
    let plan = planned(&experiment).unwrap().batches;
    let of = |made: &[Reading]| read(&experiment, &plan, made, 1).unwrap();
    let none = of(&[]);
    assert_eq!(
        none.responses[0].fitted.as_ref().unwrap_err(),
        &Unread::NoResults
    );
    assert_eq!(none.open.len(), 9);
    assert!(none.next.better.is_empty());
    let all = results(&plan, |one| hill(&experiment, one));
    let two = of(&all[..2]);
    assert!(matches!(
        two.responses[0].fitted,
        Err(Unread::Fit(_) | Unread::NeverVaried { .. })
    ));
    let alike = of(&results(&plan, |_| 40.0));
    assert_eq!(
        alike.responses[0].fitted.as_ref().unwrap_err(),
        &Unread::AllAlike
    );
    let one_clay: Vec<Reading> = plan
        .iter()
        .zip(&all)
        .filter(|(one, _)| one.amounts[1] == 15.0)
        .map(|(_, reading)| reading.clone())
        .collect();
    let said = of(&one_clay);
    let words = said.responses[0].fitted.as_ref().unwrap_err().to_string();
    assert!(words.contains("dug clay was 15 in every batch"), "{words}");
}

/// A batch that slipped is pointed at.
#[test]
fn the_odd_batch_is_pointed_at() {
    let experiment = experiment(&one_session(14, "learn"));
    let plan = planned(&experiment).unwrap().batches;
    let mut noise = Noise(3);
    let mut made = results(&plan, |one| hill(&experiment, one) + noise.normal());
    let before = read(&experiment, &plan, &made, 0).unwrap();
    assert!(before.responses[0].fitted.as_ref().unwrap().odd.is_none());
    made[6].value += 25.0;
    let said = read(&experiment, &plan, &made, 0).unwrap();
    let odd = said.responses[0].fitted.as_ref().unwrap().odd.unwrap();
    assert_eq!(odd.batch, 7);
}

#[test]
fn several_wishes_are_joined() {
    let text = one_session(12, "learn").replace(
        "response = [",
        "response = [{ name = \"openness\", want = \"high\" }, { name = \"feel\", want = \"4 to 8\" }, ",
    );
    let experiment = experiment(&text);
    let plan = planned(&experiment).unwrap().batches;
    let mut noise = Noise(21);
    let mut made = Vec::new();
    for one in &plan {
        let own = at(&experiment, one);
        let gives = [
            100.0 - 60.0 * own[0] + noise.normal(),
            3.0 + 6.0 * own[1] + 0.2 * noise.normal(),
            hill(&experiment, one) + noise.normal(),
        ];
        made.extend(gives.iter().enumerate().map(|(response, value)| Reading {
            batch: one.number,
            response,
            value: *value,
            note: Note::First,
        }));
    }
    let said = read(&experiment, &plan, &made, 1).unwrap();
    let joined = said.joined.unwrap();
    let best = joined.best.unwrap();
    assert_eq!(best.each.len(), 3);
    assert!(best.together > 0.4, "{}", best.together);
    assert_eq!(joined.taken_from_results, ["openness", "strength"]);
    let mix = batch(&Space::of(&experiment), &best.point, 99, 1, From::Next);
    let feel = 3.0 + 6.0 * at(&experiment, &mix)[1];
    assert!((4.0..8.0).contains(&feel), "{feel}");
    assert_eq!(
        said.responses[1].fitted.as_ref().unwrap().unnamed,
        Some(Unnamed::RangeWanted)
    );
    assert_eq!(said.next.better.len(), 1);
}
