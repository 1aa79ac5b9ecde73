//! Entering results: half-filled tables are kept, contradictions are asked about, nothing is lost.

use bench::experiment::batches::Batch;
use bench::experiment::design::planned;
use bench::experiment::entry::{Meant, entered, entered_table};
use bench::experiment::results::{Note, of_response, readings, with};
use bench::experiment::trouble::EntryError;

use crate::{experiment, one_session};

fn two_responses() -> (bench::experiment::Experiment, Vec<Batch>) {
    let text = one_session(9, "best").replace(
        "response = [",
        "response = [{ name = \"green strength\", unit = \"kPa\", want = \"high\" }, ",
    );
    let experiment = experiment(&text.replace("name = \"strength\"", "name = \"permeability\""));
    let batches = planned(&experiment).unwrap().batches;
    (experiment, batches)
}

fn pairs(all: &[&str]) -> Vec<String> {
    all.iter().map(|one| (*one).to_owned()).collect()
}

#[test]
fn a_table_half_filled_is_kept() {
    let (experiment, batches) = two_responses();
    let table = "batch;green strength;perm\n1;41,5;80\n2;;75\n3;39\n";
    let taken = entered_table(&experiment, &batches, &[], table, Meant::default()).unwrap();
    assert_eq!((taken.readings.len(), taken.refused.len()), (4, 0));
    let file = with("", &experiment, &taken.readings, &[]);
    let read = readings(&file, &experiment, &batches).unwrap();
    assert_eq!(read, taken.readings);
    let strength = of_response(&read, 0, 9);
    assert_eq!(strength[..4], [Some(41.5), None, Some(39.0), None]);
    let again = entered_table(&experiment, &batches, &read, table, Meant::default()).unwrap();
    assert_eq!((again.readings.len(), again.known), (0, 4));
}

#[test]
fn what_is_wrong_in_a_table_is_told_and_the_rest_is_taken() {
    let (experiment, batches) = two_responses();
    let table = "batch,green strength,permeability\n1,41,80\n12,40,70\n2,soft,77\n3,1,2,3,4\n";
    let taken = entered_table(&experiment, &batches, &[], table, Meant::default()).unwrap();
    assert_eq!(taken.readings.len(), 3, "41, 80 and 77");
    let lines: Vec<usize> = taken.refused.iter().map(|(line, _)| *line).collect();
    assert_eq!(lines, [3, 3, 4, 5]);
    let words = taken.refused[2].1.to_string();
    assert!(
        words.contains("green strength of batch 2") && words.contains("kPa"),
        "{words}"
    );
}

#[test]
fn a_contradiction_is_asked_about_and_both_stay_in_the_file() {
    let (experiment, batches) = two_responses();
    let enter = |known: &[_], pair: &str, meant| {
        entered(&experiment, &batches, known, "3", &pairs(&[pair]), meant)
    };
    let first = enter(&[], "green strength=41 kPa", Meant::default())
        .unwrap()
        .readings;
    let asked = enter(&first, "green=53", Meant::default()).unwrap_err();
    assert!(matches!(asked, EntryError::Differs { .. }), "{asked}");
    for (meant, note, result) in [
        (
            Meant {
                replace: true,
                ..Meant::default()
            },
            Note::Replaces,
            53.0,
        ),
        (
            Meant {
                again: true,
                ..Meant::default()
            },
            Note::Again,
            47.0,
        ),
    ] {
        let more = enter(&first, "green=53", meant).unwrap().readings;
        assert_eq!(more[0].note, note);
        let file = with(&with("", &experiment, &first, &[]), &experiment, &more, &[]);
        assert!(file.contains("3,green strength,41,") && file.contains("3,green strength,53,"));
        let read = readings(&file, &experiment, &batches).unwrap();
        assert_eq!(of_response(&read, 0, 9)[2], Some(result));
    }
}

#[test]
fn a_slipped_point_is_asked_about() {
    let (experiment, batches) = two_responses();
    let table = "batch,green\n1,41\n2,44\n3,39\n4,47\n";
    let known = entered_table(&experiment, &batches, &[], table, Meant::default()).unwrap();
    let enter = |meant| {
        entered(
            &experiment,
            &batches,
            &known.readings,
            "5",
            &pairs(&["green=430"]),
            meant,
        )
    };
    assert!(matches!(
        enter(Meant::default()),
        Err(EntryError::Far { .. })
    ));
    assert!(
        enter(Meant {
            sure: true,
            ..Meant::default()
        })
        .is_ok()
    );
}

#[test]
fn what_is_no_entry_is_refused() {
    let (experiment, batches) = two_responses();
    let enter = |batch: &str, pair: &str| {
        entered(
            &experiment,
            &batches,
            &[],
            batch,
            &pairs(&[pair]),
            Meant::default(),
        )
        .unwrap_err()
    };
    assert!(matches!(
        enter("10", "green=4"),
        EntryError::NoBatch { last: 9, .. }
    ));
    assert!(matches!(
        enter("1.5", "green=4"),
        EntryError::NoBatch { .. }
    ));
    assert!(matches!(
        enter("1", "hardness=4"),
        EntryError::NoResponse { .. }
    ));
    assert!(matches!(enter("1", "green 4"), EntryError::NotAPair(_)));
    assert!(matches!(
        enter("1", "green=4 psi"),
        EntryError::NotANumber { .. }
    ));
    let replace = Meant {
        replace: true,
        ..Meant::default()
    };
    let nothing = entered(
        &experiment,
        &batches,
        &[],
        "1",
        &pairs(&["green=4"]),
        replace,
    );
    assert!(matches!(nothing, Err(EntryError::NothingToReplace { .. })));
    let torn = readings(
        "batch,what,value,note\n1,green strength\n",
        &experiment,
        &batches,
    );
    assert!(matches!(torn, Err(EntryError::Line { line: 2, .. })));
}
