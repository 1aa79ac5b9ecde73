//! A figure of a log month by month, as SVG.

use std::fmt::Write as _;

use bench::svg::{line, opening, words};
use job::words::Language;
use measure::text::rounded;
use trials::chart::Limits;

use crate::chart::picture::{Kind, title};
use crate::chart::{Chart, Month};

/// The picture, pixels.
const WIDE: f64 = 720.0;
const HIGH: f64 = 320.0;
/// The room of the curves within it.
const LEFT: f64 = 60.0;
const RIGHT: f64 = 36.0;
const TOP: f64 = 50.0;
const BOTTOM: f64 = 60.0;
/// Months that are named below; more run into each other.
const NAMED: usize = 12;

/// What is drawn of a kind.
struct Drawn {
    /// The values month by month.
    values: Vec<Option<f64>>,
    /// A line right across.
    centre: Option<f64>,
    /// Limits month by month.
    limits: Vec<Option<Limits>>,
    /// Where the scale ends, and what it is counted in.
    most: f64,
    /// A value as it stands at the scale.
    shown: fn(f64) -> String,
    /// Id of the caption.
    caption: &'static str,
}

/// Rejects, yield or fuel month by month; nothing where no month has a value, or for another kind.
pub(super) fn svg(chart: &Chart, kind: Kind, language: Language) -> Option<String> {
    let drawn = drawn(chart, kind)?;
    if drawn.values.iter().all(Option::is_none) {
        return None;
    }
    let (title, caption) = (language.say(&title(kind)), language.word(drawn.caption));
    let mut svg = opening([WIDE, HIGH], &title, &caption);
    words(&mut svg, [LEFT, 24.0], "start", 16.0, &title);
    scale(&mut svg, &drawn);
    limits(&mut svg, &drawn);
    let place = |at: usize, value: f64| [across(at, &drawn), upright(value, &drawn)];
    let values = drawn.values.iter().enumerate();
    let values = values.filter_map(|(at, value)| Some((at, place(at, (*value)?))));
    let values: Vec<(usize, [f64; 2])> = values.collect();
    let points: Vec<[f64; 2]> = values.iter().map(|(_, point)| *point).collect();
    line(&mut svg, &points, 2.0, "");
    for (at, point) in values {
        mark(
            &mut svg,
            point,
            kind == Kind::Rejects && chart.is_beyond(at),
        );
    }
    let step = chart.months.len().div_ceil(NAMED).max(1);
    for (at, month) in chart.months.iter().enumerate().step_by(step) {
        let place = [across(at, &drawn), HIGH - BOTTOM + 20.0];
        words(&mut svg, place, "middle", 11.0, &month.month);
    }
    words(&mut svg, [LEFT, HIGH - 14.0], "start", 12.0, &caption);
    Some(svg + "</svg>\n")
}

fn drawn(chart: &Chart, kind: Kind) -> Option<Drawn> {
    let none = || vec![None; chart.months.len()];
    let each = |value: fn(&Month) -> Option<f64>| chart.months.iter().map(value).collect();
    let percent: fn(f64) -> String = |share| format!("{} %", rounded(share * 100.0, 3));
    Some(match kind {
        Kind::Rejects => Drawn {
            values: each(Month::share),
            centre: Some(chart.centre),
            limits: chart.limits.clone(),
            most: 1.0,
            shown: percent,
            caption: "log-chart-caption",
        },
        Kind::Yield => Drawn {
            values: each(|month| month.yields),
            centre: None,
            limits: none(),
            most: 1.0,
            shown: percent,
            caption: "log-chart-yield-caption",
        },
        Kind::Fuel => {
            let values: Vec<Option<f64>> = each(|month| month.fuel);
            let most = values.iter().flatten().copied().fold(0.0, f64::max);
            Drawn {
                values,
                centre: None,
                limits: none(),
                most: round_end(most),
                shown: |fuel| format!("{} kg", rounded(fuel, 3)),
                caption: "log-chart-fuel-caption",
            }
        }
        _ => return None,
    })
}

/// The next of 1, 2, 4, 8 and their tens: its quarters are read at sight.
fn round_end(most: f64) -> f64 {
    if most <= 0.0 || !most.is_finite() {
        return 1.0;
    }
    let ten = 10_f64.powf(most.log10().floor());
    let ends = [1.0, 2.0, 4.0, 8.0].map(|end| end * ten);
    let reached = ends.into_iter().find(|end| *end >= most);
    reached.unwrap_or(10.0 * ten)
}

fn scale(svg: &mut String, drawn: &Drawn) {
    for part in [0.0, 0.25, 0.5, 0.75, 1.0] {
        let y = upright(part * drawn.most, drawn);
        line(svg, &[[LEFT, y], [WIDE - RIGHT, y]], 0.3, "");
        let shown = (drawn.shown)(part * drawn.most);
        words(svg, [LEFT - 6.0, y + 4.0], "end", 12.0, &shown);
    }
}

/// The line right across, and the limits month by month, each as wide as its month.
fn limits(svg: &mut String, drawn: &Drawn) {
    if let Some(centre) = drawn.centre {
        let y = upright(centre, drawn);
        line(svg, &[[LEFT, y], [WIDE - RIGHT, y]], 1.0, "");
    }
    type End = fn(&Limits) -> f64;
    let ends: [End; 2] = [|limits| limits.low, |limits| limits.high];
    for end in ends {
        let each = drawn.limits.iter().enumerate();
        let points = each
            .filter_map(|(at, limits)| Some([across(at, drawn), upright(end(&(*limits)?), drawn)]));
        line(svg, &points.collect::<Vec<_>>(), 1.0, "5 4");
    }
}

/// A month: a dot, or a hollow square where it is beyond its limits.
fn mark(svg: &mut String, [x, y]: [f64; 2], beyond: bool) {
    // Writing into a string does not fail.
    let _ = match beyond {
        true => writeln!(
            svg,
            "<rect x=\"{:.1}\" y=\"{:.1}\" width=\"12\" height=\"12\" fill=\"#fff\" \
             stroke=\"#222\" stroke-width=\"2.4\"/>",
            x - 6.0,
            y - 6.0
        ),
        false => writeln!(
            svg,
            "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"3.5\" fill=\"#222\"/>"
        ),
    };
}

fn across(at: usize, drawn: &Drawn) -> f64 {
    let last = drawn.values.len().max(2) - 1;
    LEFT + (WIDE - LEFT - RIGHT) * at as f64 / last as f64
}

fn upright(value: f64, drawn: &Drawn) -> f64 {
    let part = (value / drawn.most).clamp(0.0, 1.0);
    HIGH - BOTTOM - (HIGH - TOP - BOTTOM) * part
}
