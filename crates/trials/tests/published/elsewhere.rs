//! Every published set fitted by statsmodels too, wherever a Python with it is present.

#![allow(clippy::print_stdout, reason = "a comparison that is left out says so")]

use std::io::{BufRead, BufReader, Write};
use std::path::PathBuf;
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};
use std::sync::{LazyLock, Mutex};

use serde_json::{Value, json};
use trials::fit::{Fit, FitError};
use trials::model::Model;

/// A Python that answers a line for each line it is asked.
struct Other {
    ask: ChildStdin,
    answers: BufReader<ChildStdout>,
    _running: Child,
}

static OTHER: LazyLock<Mutex<Option<Other>>> = LazyLock::new(|| Mutex::new(started()));

/// As [`trials::fit::fit`], held to statsmodels: coefficients, noise and the share taken up agree
/// in nine digits of the largest.
pub fn fit(model: &Model, points: &[Vec<f64>], responses: &[f64]) -> Result<Fit, FitError> {
    let own = trials::fit::fit(model, points, responses)?;
    let rows: Vec<_> = points.iter().map(|point| model.row(point)).collect();
    if let Some(theirs) = asked(&json!({ "rows": rows, "measured": responses })) {
        let values: Vec<f64> = serde_json::from_value(theirs["values"].clone()).unwrap();
        near(&own.values(), &values);
        let single = |name: &str, own: Option<f64>| {
            let theirs = theirs[name].as_f64();
            near(
                &own.into_iter().collect::<Vec<_>>(),
                &theirs.into_iter().collect::<Vec<_>>(),
            );
        };
        single("noise", own.noise);
        single("taken_up", own.taken_up);
    }
    Ok(own)
}

fn near(own: &[f64], theirs: &[f64]) {
    assert_eq!(own.len(), theirs.len(), "{own:?}, {theirs:?}");
    let size = theirs.iter().fold(0.0_f64, |size, one| size.max(one.abs()));
    for (own, theirs) in own.iter().zip(theirs) {
        assert!((own - theirs).abs() <= 1e-9 * size, "{own}, {theirs}");
    }
}

fn asked(case: &Value) -> Option<Value> {
    let mut other = OTHER.lock().unwrap();
    let other = other.as_mut()?;
    writeln!(other.ask, "{case}").unwrap();
    other.ask.flush().unwrap();
    let mut line = String::new();
    other.answers.read_line(&mut line).unwrap();
    Some(serde_json::from_str(&line).unwrap())
}

fn started() -> Option<Other> {
    let script = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/independent/statistics.py");
    let mut command = Command::new("python3");
    let command = command.arg(script).arg("--lines");
    let command = command.stdin(Stdio::piped()).stdout(Stdio::piped());
    let mut running = command.spawn().ok()?;
    let (ask, answers) = (running.stdin.take()?, running.stdout.take()?);
    let mut answers = BufReader::new(answers);
    let mut line = String::new();
    answers.read_line(&mut line).ok()?;
    if line.trim() != "ready" {
        println!("left out, no Python with statsmodels and scipy");
        let _ = running.wait();
        return None;
    }
    Some(Other {
        ask,
        answers,
        _running: running,
    })
}
