//! The chart of a test as SVG: readings with their limits above, weighted means with theirs below.

use std::fmt::Write as _;

use job::words::Language;
use job::words::said::Said;
use measure::text::rounded;
use trials::chart::Limits;

use crate::svg::{line, opening, words};
use crate::tested::readings::Test;
use crate::tested::watch::Watched;

/// The whole picture, px, and where its panels stand.
const WIDE: f64 = 760.0;
const HIGH: f64 = 500.0;
const LEFT: f64 = 70.0;
const RIGHT: f64 = 24.0;
const PANEL: f64 = 170.0;
const TOPS: [f64; 2] = [40.0, 260.0];

/// Most days that are named under the chart; more run into each other.
const DAYS: usize = 8;

/// A line of values with the limits that go with each.
struct Run {
    values: Vec<f64>,
    limits: Vec<Limits>,
    /// Which of them speak of a change.
    speaks: Vec<bool>,
}

/// The chart of a test as SVG.
pub fn svg(test: &Test, chart: &Watched, language: Language) -> String {
    svg_of(&Said::typed(test.name), test.unit, chart, language)
}

/// The chart of readings of anything as SVG, with what they are of and their unit.
pub fn svg_of(of: &Said, unit: &str, chart: &Watched, language: Language) -> String {
    let title = |id: &'static str| {
        let named = language.say(&Said::new(id).with("test", of.clone()));
        match unit {
            "" => named,
            unit => format!("{named}, {unit}"),
        }
    };
    let heads = [title("bench-chart-readings"), title("bench-chart-means")];
    let caption = language.word("bench-chart-caption");
    let mut svg = opening([WIDE, HIGH], &heads[0], &caption);
    let days: Vec<&str> = chart.readings.iter().map(|one| one.day.as_str()).collect();
    for (at, run) in [readings(chart), means(chart)].iter().enumerate() {
        words(&mut svg, [LEFT, TOPS[at] - 10.0], "start", 15.0, &heads[at]);
        panel(&mut svg, TOPS[at], run, &days);
    }
    named_days(&mut svg, &days);
    words(&mut svg, [LEFT, HIGH - 12.0], "start", 12.0, &caption);
    svg + "</svg>\n"
}

fn readings(chart: &Watched) -> Run {
    let count = chart.readings.len();
    let speaks = |at: usize| chart.signals.iter().any(|(signal, _)| *signal == at);
    Run {
        values: chart.readings.iter().map(|one| one.value).collect(),
        limits: vec![chart.limits.readings; count],
        speaks: (0..count).map(speaks).collect(),
    }
}

fn means(chart: &Watched) -> Run {
    let beyond = chart
        .means
        .iter()
        .map(|mean| !(mean.limits.low..=mean.limits.high).contains(&mean.value));
    Run {
        values: chart.means.iter().map(|mean| mean.value).collect(),
        limits: chart.means.iter().map(|mean| mean.limits).collect(),
        speaks: beyond.collect(),
    }
}

fn panel(svg: &mut String, top: f64, run: &Run, days: &[&str]) {
    let ends = run
        .limits
        .iter()
        .flat_map(|limits| [limits.low, limits.high]);
    let all = run.values.iter().copied().chain(ends);
    let (least, most) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), one| {
        (low.min(one), high.max(one))
    });
    // A flat line stands in the middle.
    let span = if most > least { most - least } else { 1.0 };
    let y = |value: f64| top + PANEL - 12.0 - (PANEL - 24.0) * (value - least) / span;
    let count = run.values.len();
    frame(svg, top);
    let of: [fn(&Limits) -> f64; 3] = [|one| one.low, |one| one.centre, |one| one.high];
    for (of, dash) in of.into_iter().zip(["7 4", "", "7 4"]) {
        let each = run.limits.iter().enumerate();
        let steps: Vec<[f64; 2]> = each
            .flat_map(|(at, limits)| {
                let half = (WIDE - LEFT - RIGHT) / count as f64 / 2.0;
                [-half, half].map(|off| [x(at, count) + off, y(of(limits))])
            })
            .collect();
        line(svg, &steps, 0.9, dash);
        if let Some(last) = run.limits.last() {
            let value = rounded(of(last), 3);
            words(svg, [LEFT - 6.0, y(of(last)) + 4.0], "end", 12.0, &value);
        }
    }
    let values = run.values.iter().enumerate();
    let points: Vec<[f64; 2]> = values
        .map(|(at, value)| [x(at, count), y(*value)])
        .collect();
    line(svg, &points, 1.6, "");
    for (at, point) in points.into_iter().enumerate() {
        // The days of neighbours would run into each other: the first of them is named.
        let is_first = at == 0 || !run.speaks[at - 1];
        let day = if is_first { days[at] } else { "" };
        mark(svg, top, point, run.speaks[at].then_some(day));
    }
}

/// A reading; one that speaks of a change is a hollow square with its day beside it.
fn mark(svg: &mut String, top: f64, [x, y]: [f64; 2], speaks: Option<&str>) {
    if let Some(day) = speaks {
        let _ = writeln!(
            svg,
            "<rect x=\"{:.1}\" y=\"{:.1}\" width=\"12\" height=\"12\" fill=\"#fff\" \
             stroke=\"#222\" stroke-width=\"2.4\"/>",
            x - 6.0,
            y - 6.0
        );
        let anchor = if x > WIDE / 2.0 { "end" } else { "start" };
        let off = if x > WIDE / 2.0 { -10.0 } else { 10.0 };
        let up = if y - top < 22.0 { 20.0 } else { -8.0 };
        words(svg, [x + off, y + up], anchor, 12.0, day);
    } else {
        let _ = writeln!(
            svg,
            "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"3.5\" fill=\"#222\"/>"
        );
    }
}

fn frame(svg: &mut String, top: f64) {
    let corners = [
        [LEFT, top],
        [WIDE - RIGHT, top],
        [WIDE - RIGHT, top + PANEL],
        [LEFT, top + PANEL],
        [LEFT, top],
    ];
    line(svg, &corners, 0.6, "");
}

/// Some days under the lower panel, evenly spread.
fn named_days(svg: &mut String, days: &[&str]) {
    let step = days.len().div_ceil(DAYS).max(1);
    for (at, day) in days.iter().enumerate().step_by(step) {
        let foot = TOPS[1] + PANEL;
        let x = x(at, days.len());
        line(svg, &[[x, foot], [x, foot + 5.0]], 0.9, "");
        words(svg, [x, foot + 19.0], "middle", 11.0, day);
    }
}

fn x(at: usize, count: usize) -> f64 {
    LEFT + (WIDE - LEFT - RIGHT) * (at as f64 + 0.5) / count as f64
}
