//! The table of deviations: one line for each figure and each warning.

use crate::verdict::Line;

const VERDICTS: [&str; 6] = [
    "in range",
    "overlaps, explained",
    "outside, explained",
    "as wanted",
    "told",
    "kept back",
];

/// Prints every line with its verdict, and how many there are of each.
pub fn print(lines: &[Line]) {
    let cells: Vec<[String; 5]> = lines.iter().map(cells).collect();
    let heads = [
        "scenario",
        "quantity",
        "expected",
        "got: likely (band)",
        "verdict",
    ];
    let heads = heads.map(str::to_owned);
    let all = || std::iter::once(&heads).chain(&cells);
    let width = |column: usize| all().map(|line| line[column].chars().count()).max();
    let widths: Vec<usize> = (0..5).map(|column| width(column).unwrap_or(0)).collect();
    for line in all() {
        let padded = line.iter().zip(&widths).map(|(cell, width)| {
            let room = width - cell.chars().count();
            format!("{cell}{}", " ".repeat(room))
        });
        println!("{}", padded.collect::<Vec<_>>().join("  ").trim_end());
    }
    let count = |wanted: &str| {
        let alike = lines.iter().filter(|line| line.verdict == Ok(wanted));
        alike.count()
    };
    for verdict in VERDICTS {
        println!("{verdict}: {}", count(verdict));
    }
}

fn cells(line: &Line) -> [String; 5] {
    let verdict = match &line.verdict {
        Ok(verdict) => (*verdict).to_owned(),
        Err(fault) => format!("FAILS: {fault}"),
    };
    let number = line.scenario.split(' ').next().unwrap_or_default();
    [
        number.to_owned(),
        line.what.clone(),
        line.expected.clone(),
        line.got.clone(),
        verdict,
    ]
}
