//! How the deviations are printed: one line for each figure, then the counts.

use std::collections::BTreeSet;

use checks::check::Check;

use crate::Outcome;

/// The line of a figure that is too far off.
pub fn fault(outcome: &Outcome<'_>) -> String {
    format!(
        "{} ({}): {} is {}, expected {}, off by {}, allowed {}",
        outcome.check.law,
        outcome.check.case,
        outcome.figure,
        outcome.deviation.got,
        outcome.expected,
        outcome.deviation.off,
        outcome.check.within
    )
}

/// Prints every figure with its deviation.
pub fn print(outcomes: &[Outcome<'_>]) {
    let heads = [
        "law", "case", "figure", "expected", "got", "off by", "allowed", "seen",
    ];
    let mut lines = vec![heads.map(str::to_owned)];
    for outcome in outcomes {
        lines.push([
            outcome.check.law.clone(),
            outcome.check.case.clone(),
            outcome.figure.to_owned(),
            outcome.expected.to_owned(),
            outcome.deviation.got.clone(),
            outcome.deviation.off.clone(),
            outcome.check.within.clone(),
            outcome.check.seen.clone(),
        ]);
    }
    let width = |column: usize| {
        let letters = lines.iter().map(|line| line[column].chars().count());
        letters.max().unwrap_or(0)
    };
    let widths: Vec<usize> = (0..heads.len()).map(width).collect();
    for line in &lines {
        let cells = line.iter().zip(&widths);
        let padded: Vec<String> = cells.map(|(cell, width)| pad(cell, *width)).collect();
        println!("{}", padded.join("  ").trim_end());
    }
}

/// Prints how many rows there are of which kind, and the laws that stand on hand sums alone.
pub fn print_counts(rows: &[Check], laws: &BTreeSet<&str>) {
    let published: BTreeSet<&str> = rows
        .iter()
        .filter(|row| !row.independent)
        .map(|row| row.law.as_str())
        .collect();
    let independent = rows.iter().filter(|row| row.independent).count();
    println!();
    println!("rows: {}", rows.len());
    println!("published rows: {}", rows.len() - independent);
    println!("independent rows: {independent}");
    println!("laws: {}", laws.len());
    let alone: Vec<&&str> = laws
        .iter()
        .filter(|law| !published.contains(*law))
        .collect();
    println!(
        "laws with independent rows only, meant to become fewer: {}",
        alone.len()
    );
    for law in alone {
        println!("  {law}");
    }
}

fn pad(cell: &str, width: usize) -> String {
    let room = width - cell.chars().count();
    format!("{cell}{}", " ".repeat(room))
}
