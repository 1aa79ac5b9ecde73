//! Batches that were weighed otherwise than planned: the fit takes what was weighed.

use bench::experiment::design::planned;
use bench::experiment::entry::{Meant, entered, entered_table};
use bench::experiment::reading::read;
use bench::experiment::results::{Note, Reading, readings, with};
use bench::experiment::trouble::EntryError;
use bench::experiment::weighing::weighed;
use bench::experiment::weighings::{weighings, with_weighings};

use crate::{experiment, one_session};

fn pairs(text: &[&str]) -> Vec<String> {
    text.iter().map(|one| (*one).to_owned()).collect()
}

/// By hand: sand of 1 % and clay of 4 % of water, both of the wet mass.
#[test]
fn what_was_weighed_is_counted_without_its_water() {
    let experiment = experiment(&one_session(9, "learn"));
    let plan = planned(&experiment).unwrap().batches;
    let rows = weighed(&experiment, &plan[0]).unwrap();
    let grams: Vec<f64> = rows.iter().map(|row| row.weigh.as_g()).collect();
    let clay = (grams[1] * 1.1).round();
    let typed = pairs(&[&format!("dug clay={clay} g"), "strength=40"]);
    let taken = entered(&experiment, &plan, &[], "1", &typed, Meant::default()).unwrap();
    let file = with("", &experiment, &taken.readings, &taken.weighings);
    assert!(
        file.contains(&format!("1,dug clay,{clay},weighed")),
        "{file}"
    );
    assert_eq!(readings(&file, &experiment, &plan).unwrap().len(), 1);
    let known = weighings(&file, &experiment, &plan).unwrap();
    let made = with_weighings(&experiment, &plan, &known).unwrap();
    let sand = grams[0] * 0.99;
    let water = grams[2] + grams[0] * 0.01 + clay * 0.04;
    let wanted = [100.0, clay * 0.96 / sand * 100.0, water / sand * 100.0];
    for (made, wanted) in made[0].made().iter().zip(wanted) {
        assert!((made - wanted).abs() < 1e-9, "{made}, {wanted}");
    }
    assert_eq!(made[0].amounts, plan[0].amounts);
    assert!(made[1].weighed.is_none());
}

/// A law without noise: taken as planned, careless weighing looks like noise; taken as weighed,
/// nothing is left of it.
#[test]
fn careless_weighing_is_no_noise_once_it_is_told() {
    let experiment = experiment(&one_session(9, "learn").replace(", step = 1", ""));
    let plan = planned(&experiment).unwrap().batches;
    let slips = [1.06, 0.93, 1.1, 0.97, 1.0, 1.08, 0.9, 1.03, 0.95];
    let mut text = String::new();
    for (batch, slip) in plan.iter().zip(slips) {
        let clay = weighed(&experiment, batch).unwrap()[1].weigh.as_g() * slip;
        let typed = pairs(&[&format!("dug clay={clay}")]);
        let number = batch.number.to_string();
        let taken = entered(&experiment, &plan, &[], &number, &typed, Meant::default());
        text = with(&text, &experiment, &[], &taken.unwrap().weighings);
    }
    let known = weighings(&text, &experiment, &plan).unwrap();
    let made = with_weighings(&experiment, &plan, &known).unwrap();
    let gives = |clay: f64, water: f64| 12.0 + 3.0 * clay - 0.05 * clay * clay + 2.0 * water;
    let results = made.iter().map(|batch| Reading {
        batch: batch.number,
        response: 0,
        value: gives(batch.made()[1], batch.made()[2]),
        note: Note::First,
    });
    let results: Vec<Reading> = results.collect();
    let noise = |batches: &[_]| {
        let said = read(&experiment, batches, &results, 0).unwrap();
        said.responses[0]
            .fitted
            .as_ref()
            .unwrap()
            .fit
            .noise
            .unwrap()
    };
    assert!(noise(&plan) > 0.5, "{}", noise(&plan));
    assert!(noise(&made) < 1e-6, "{}", noise(&made));
}

#[test]
fn a_slip_of_the_digits_is_asked_about_and_nonsense_refused() {
    let experiment = experiment(&one_session(9, "learn"));
    let plan = planned(&experiment).unwrap().batches;
    let enter =
        |text: &str, meant: Meant| entered(&experiment, &plan, &[], "2", &pairs(&[text]), meant);
    let slip = enter("dug clay=1800 g", Meant::default()).unwrap_err();
    assert!(matches!(slip, EntryError::OffPlan { .. }), "{slip}");
    assert!(slip.to_string().contains("--sure"));
    let sure = Meant {
        sure: true,
        ..Meant::default()
    };
    assert_eq!(enter("dug clay=1800 g", sure).unwrap().weighings.len(), 1);
    for text in ["dug clay=much", "dug clay=-3 g", "dug clay=3 kPa"] {
        let fault = enter(text, sure).unwrap_err();
        assert!(matches!(fault, EntryError::NotWeighed { .. }), "{fault}");
    }
    let nothing = enter("river sand=0 g", sure).unwrap_err();
    assert!(
        nothing.to_string().contains("weigh them again"),
        "{nothing}"
    );
    let table = "batch,dug clay,strength\n1,,40\n2,9999,41\n";
    let taken = entered_table(&experiment, &plan, &[], table, Meant::default()).unwrap();
    assert_eq!((taken.readings.len(), taken.weighings.len()), (2, 0));
    assert_eq!(taken.refused.len(), 1);
}
