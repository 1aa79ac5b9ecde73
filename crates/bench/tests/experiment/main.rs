//! Experiments planned, entered and read, against simulated surfaces and the promises of the bench.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod bad_input;
mod campaign;
mod entering;
mod mixes;
mod otherwise;
mod planning;
mod reading;
mod simulated;
mod telling;
mod ways;

use bench::experiment::Experiment;
use bench::experiment::file::ExperimentFile;
use bench::experiment::trouble::ExperimentError;

/// The experiment of a text.
pub fn experiment(text: &str) -> Experiment {
    meant(text).unwrap()
}

/// The experiment of a text, or what is wrong with it.
pub fn meant(text: &str) -> Result<Experiment, ExperimentError> {
    let typed: ExperimentFile = job::file_fault::read("experiment.toml", text).unwrap();
    typed.meant()
}

/// The plan of a heap from scratch: clay and water at three levels, molasses in a second session.
pub const FROM_SCRATCH: &str = r#"
name = "River sand and dug clay"
seed = 11
batch = "1 kg"
basis = "dry"
batches = 9
repeats = 2
aim = "learn"
part = [
    { name = "river sand", amount = 100, moisture = "1.0 % of wet mass" },
    { name = "dug clay", amount = "15 to 30", moisture = "4.0 % of wet mass" },
    { name = "water", amount = "7 to 12", is_water = true },
    { name = "molasses", amount = "0 to 3", moisture = "22 % of wet mass", later = true },
]
response = [{ name = "strength", unit = "kPa", want = "high", step = 1 }]
[later]
batches = 6
repeats = 1
"#;

/// The same without the second session.
pub fn one_session(batches: usize, aim: &str) -> String {
    let text = FROM_SCRATCH.split("[later]").next().unwrap();
    let text: Vec<&str> = text
        .lines()
        .filter(|line| !line.contains("molasses"))
        .collect();
    let text = text
        .join("\n")
        .replace("batches = 9", &format!("batches = {batches}"));
    text.replace("\"learn\"", &format!("\"{aim}\""))
}
