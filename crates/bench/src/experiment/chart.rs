//! A response over two things in the terminal: a figure a place, 0 the least and 9 the most, a dot
//! where nothing is known.

use job::words::said::Said;
use measure::text::rounded;
use trials::model::on_mean_day;

use crate::experiment::picture::view::{View, held, views};
use crate::experiment::reading::{Fitted, ResponseRead};
use crate::experiment::space::Space;
use crate::experiment::{Experiment, Response};

/// A chart: rows of figures, the topmost first, and how they are read.
#[derive(Clone, Debug, PartialEq)]
pub struct Chart {
    /// The rows.
    pub rows: Vec<String>,
    /// How they are read.
    pub key: Said,
}

/// Columns and rows of a chart: twice as many across, since a letter is twice as high as wide.
const ACROSS: usize = 48;
const UP: usize = 16;

/// The chart of a response over the first two axes that it changes along; nothing where there are
/// no two, or it cannot be read.
pub fn chart(experiment: &Experiment, response: &Response, read: &ResponseRead) -> Option<Chart> {
    let space = Space::of(experiment);
    let fitted = read.fitted.as_ref().ok()?;
    let two = views(&space).into_iter().find_map(|view| match view {
        View::Square(two) => Some(two),
        View::Triangle(_) => None,
    })?;
    let heights = heights(&space, fitted, two);
    let known = || heights.iter().flatten().flatten().copied();
    let least = known().fold(f64::INFINITY, f64::min);
    let most = known().fold(f64::NEG_INFINITY, f64::max);
    let figure = |height: &Option<f64>| match height {
        Some(height) if most > least => {
            let part = (height - least) / (most - least) * 10.0;
            char::from_digit(part.clamp(0.0, 9.0) as u32, 10).unwrap_or('9')
        }
        Some(_) => '0',
        None => '.',
    };
    let rows = heights.iter().map(|row| row.iter().map(figure).collect());
    let [across, up] = two.map(|at| &space.axes[at - space.shares()]);
    let end = |value: f64, unit: &str| {
        format!("{} {unit}", rounded(value, 3))
            .trim_end()
            .to_owned()
    };
    let key = Said::new("experiment-chart-across")
        .with("across", across.name.as_str())
        .with("low", end(across.low, &across.unit))
        .with("high", end(across.high, &across.unit))
        .with("up", up.name.as_str())
        .with("from", end(up.low, &up.unit))
        .with("to", end(up.high, &up.unit))
        .with("least", response.shown(least))
        .with("most", response.shown(most));
    known().next().is_some().then(|| Chart {
        rows: rows.collect(),
        key,
    })
}

/// Heights from the topmost row down; nothing where they are not known.
fn heights(space: &Space, fitted: &Fitted, [across, up]: [usize; 2]) -> Vec<Vec<Option<f64>>> {
    let held = held(space, fitted);
    let level = |step: usize, steps: usize| 2.0 * step as f64 / (steps - 1) as f64 - 1.0;
    let height = |row: usize, column: usize| {
        let mut point = held.clone();
        point[across] = level(column, ACROSS);
        point[up] = level(row, UP);
        let expected = fitted.fit.at(&on_mean_day(&point, fitted.days));
        (!expected.unknown).then_some(expected.value)
    };
    let row = |row: usize| (0..ACROSS).map(|column| height(row, column)).collect();
    (0..UP).rev().map(row).collect()
}
