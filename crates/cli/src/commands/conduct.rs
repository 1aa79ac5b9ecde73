//! `oddside conduct CASE`: a bare case of heat conduction, run and told beside what it should give.

use std::fmt::Write;
use std::fs::File;
use std::io::{BufReader, ErrorKind};
use std::path::Path;
use std::process::ExitCode;
use std::time::Instant;

use conduct::answer::{Answer, Expected, Kept, KeptError, run_on};
use conduct::reading::{Bare, read};
use gpu::card::{Card, elsewhere};
use job::folder::{forget, write_whole};
use serde::Serialize;

use crate::args::Place;
use crate::commands::computer::card_for;
use crate::commands::keeping::{Ended, Keeping};
use crate::print;
use crate::progress::{Working, in_cells};
use crate::trouble::Trouble;

/// The one object that `--json` prints.
#[derive(Serialize)]
struct ConductFile {
    #[serde(flatten)]
    answer: Answer,
    /// Wall time of the run, without reading the file.
    wall_s: f64,
}

/// Reads, runs and tells; an expectation that does not hold ends with 2.
pub fn run(
    path: &Path,
    on: Option<Place>,
    keep: Option<&Path>,
    json: bool,
) -> Result<ExitCode, Trouble> {
    let name = path.display().to_string();
    let text = match std::fs::read_to_string(path) {
        Ok(text) => text,
        Err(error) => return Err(Trouble::CaseDisk { path: name, error }),
    };
    let bare = match read(&text) {
        Ok(bare) => bare,
        Err(error) => return Err(Trouble::CaseFile { path: name, error }),
    };
    let card = card_for(on, bare.case.grid.cells())?;
    let begun = Instant::now();
    let answer = {
        let takes = bare.takes();
        let _working = Working::on(in_cells("following the heat", takes.cells, takes.bytes));
        answer(&bare, card.as_ref(), keep)?
    };
    let answer = match answer {
        Ended::Through(answer) => answer,
        Ended::Stopped(code) => {
            print::talk("stopped and kept: the same command goes on from there");
            return Ok(code);
        }
    };
    let wall_s = begun.elapsed().as_secs_f64();
    let holds = answer.expected.iter().all(|expected| expected.holds);
    let text = match json {
        true => {
            let file = ConductFile { answer, wall_s };
            serde_json::to_string_pretty(&file).unwrap_or_default() + "\n"
        }
        false => told(&answer, wall_s),
    };
    print::out(&text)?;
    Ok(if holds {
        ExitCode::SUCCESS
    } else {
        ExitCode::from(2)
    })
}

/// Runs a case, from where it was kept if it was, and keeps it on the way. What was kept goes when
/// the run is through.
fn answer(bare: &Bare, card: Option<&Card>, keep: Option<&Path>) -> Result<Ended<Answer>, Trouble> {
    let on = elsewhere(card);
    let Some(file) = keep else {
        let answer = run_on(on, bare, None, &mut |_, _| true)?;
        return Ok(Ended::Through(answer));
    };
    let kept = kept_in(file)?;
    let mut keeping = Keeping::begin();
    let answer = run_on(on, bare, kept, &mut |_, standing| {
        keeping.goes_on(false, || {
            let mut bytes = Vec::new();
            // A list in memory takes all that is written to it.
            let _ = standing.keep().write_to(&mut bytes);
            write_whole(file, &bytes)
        })
    });
    let ended = keeping.ended(answer)?;
    if matches!(ended, Ended::Through(_)) {
        forget(file)?;
    }
    Ok(ended)
}

/// The run that a file keeps, if there is such a file.
fn kept_in(file: &Path) -> Result<Option<Kept>, Trouble> {
    let path = || file.display().to_string();
    match File::open(file) {
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(None),
        Err(error) => Err(Trouble::CaseDisk {
            path: path(),
            error,
        }),
        Ok(open) => match Kept::read_from(&mut BufReader::new(open)) {
            Ok(kept) => Ok(Some(kept)),
            Err(KeptError::Disk(words)) => Err(Trouble::CaseDisk {
                path: path(),
                error: std::io::Error::other(words),
            }),
            Err(error) => Err(Trouble::KeptRun {
                path: path(),
                error,
            }),
        },
    }
}

/// Least by which a temperature beyond all that was given is told, K: less is rounding.
const LEAST_BEYOND_K: f64 = 0.1;

fn told(answer: &Answer, wall_s: f64) -> String {
    let mut text = format!("{}\n\n", answer.title);
    let mut line = |label: &str, words: String| _ = writeln!(text, "{label:<18} {words}");
    let images = match answer.images {
        1.0 => String::new(),
        images => format!(", mirrored to stand for {images} such boxes"),
    };
    line(
        "cells",
        format!(
            "{}, {} of them in stages{images}",
            answer.cells, answer.quick_cells
        ),
    );
    line(
        "steps",
        format!(
            "{} with {} stages in {wall_s:.2} s",
            answer.steps, answer.stages
        ),
    );
    if let Some(on) = &answer.on {
        line("on", on.clone());
    }
    if let Some(why) = &answer.fell_back {
        line("NOT ON THE CARD", why.clone());
    }
    line("reached", format!("{:.4} s", answer.end_s));
    if let Some(last_s) = answer.last_freeze_s {
        line(
            "last freeze",
            format!("{last_s:.4} s, {} cells not solid", answer.unfrozen),
        );
    }
    let heat = &answer.heat;
    line(
        "heat through faces",
        format!("{:.6e} J of {:.6e} J", heat.through_j, heat.start_j),
    );
    line(
        "heat unaccounted",
        format!("{:.1e} of the whole", heat.drift),
    );
    if answer.beyond_k > LEAST_BEYOND_K {
        line(
            "TOO LONG A STEP",
            format!(
                "a temperature lies {:.0} K beyond all that was given: give longest_step_s",
                answer.beyond_k.ceil()
            ),
        );
    }
    for at in &answer.moments {
        for probe in &at.probes {
            line(
                &probe.name,
                format!("{:.4} °C at {:.4} s", probe.celsius, at.time_s),
            );
        }
        for front in &at.fronts {
            let mm = front
                .mm
                .map_or("nowhere".to_owned(), |mm| format!("{mm:.4} mm"));
            line(&front.name, format!("{mm} at {:.4} s", at.time_s));
        }
    }
    answer
        .expected
        .iter()
        .for_each(|expected| line("expected", judged(expected)));
    text
}

fn judged(expected: &Expected) -> String {
    let Expected {
        what,
        is,
        within,
        got,
        holds,
    } = expected;
    let got = got.map_or("nothing".to_owned(), |got| format!("{got:.6}"));
    let holds = if *holds { "holds" } else { "DOES NOT HOLD" };
    format!("{what}: {is} within {within}, got {got}: {holds}")
}
