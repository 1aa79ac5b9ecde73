//! Any text as an ask: the first line is the name of a law, the others are `key=figure` on top of
//! the law's own example.
#![no_main]

use measure::text::System;
use reckon::ask::Ask;
use reckon::worked::work_out;

libfuzzer_sys::fuzz_target!(|text: &str| {
    let mut lines = text.lines();
    let name = lines.next().unwrap_or_default();
    let example = reckon::named(name).map(|reckoner| reckoner.example_ask());
    let ask = lines
        .filter_map(|line| line.split_once('='))
        .fold(example.unwrap_or_else(|| Ask::new(name)), |ask, (key, text)| ask.give(key, text));
    match work_out(&ask) {
        Err(no) => assert!(!no.to_string().is_empty()),
        Ok(worked) => {
            for figure in &worked.answers {
                let ends = figure.filed().map_or([0.0; 3], |(ends, _)| ends);
                assert!(ends.iter().all(|end| end.is_finite()));
                assert!(!figure.shown(System::Inch).likely.is_empty());
            }
        }
    }
});
