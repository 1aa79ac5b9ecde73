//! The chart of a log for the terminal and as a picture.

use bench::svg::{line, opening, words};
use job::words::Language;
use job::words::said::Said;
use measure::text::rounded;

use crate::chart::Chart;

/// Letters of a bar that stands for all castings of a month.
const BAR: usize = 20;
/// The picture, pixels.
const WIDE: f64 = 720.0;
const HIGH: f64 = 320.0;
/// The room of the curves within it.
const LEFT: f64 = 60.0;
const RIGHT: f64 = 20.0;
const TOP: f64 = 50.0;
const BOTTOM: f64 = 60.0;

/// A line for each month: a bar of rejects, their share, yield and fuel.
pub fn lines(chart: &Chart, language: Language) -> String {
    let each = chart.months.iter().enumerate().map(|(at, month)| {
        let filled = month
            .share()
            .map_or(0, |share| (share * BAR as f64).round() as usize);
        let bar = format!(
            "{}{}",
            "█".repeat(filled),
            "·".repeat(BAR - filled.min(BAR))
        );
        let bad = Said::new("log-chart-bad")
            .with("bad", month.bad.to_string())
            .with("judged", month.judged.to_string());
        let mut parts = vec![month.month.clone(), bar, language.say(&bad)];
        let percent = |share: f64| format!("{} %", rounded(share * 100.0, 3));
        if let Some(yields) = month.yields {
            parts.push(language.say(&Said::new("log-chart-yield").with("share", percent(yields))));
        }
        if let Some(fuel) = month.fuel {
            let fuel = rounded(fuel, 3);
            parts.push(language.say(&Said::new("log-chart-fuel").with("fuel", fuel)));
        }
        if chart.is_beyond(at) {
            parts.push(language.word("log-chart-beyond"));
        }
        format!("{}\n", parts.join("  "))
    });
    each.collect()
}

/// The share of rejects month by month with its limits, as SVG.
pub fn svg(chart: &Chart, language: Language) -> String {
    let (title, caption) = (
        language.word("log-chart-title"),
        language.word("log-chart-caption"),
    );
    let mut svg = opening([WIDE, HIGH], &title, &caption);
    let last = chart.months.len().max(2) - 1;
    let across = |at: usize| LEFT + (WIDE - LEFT - RIGHT) * at as f64 / last as f64;
    let upright = |share: f64| HIGH - BOTTOM - (HIGH - TOP - BOTTOM) * share.clamp(0.0, 1.0);
    words(&mut svg, [LEFT, 24.0], "start", 16.0, &title);
    for share in [0.0, 0.25, 0.5, 0.75, 1.0] {
        let y = upright(share);
        line(&mut svg, &[[LEFT, y], [WIDE - RIGHT, y]], 0.3, "");
        words(
            &mut svg,
            [LEFT - 6.0, y + 4.0],
            "end",
            12.0,
            &format!("{} %", share * 100.0),
        );
    }
    let centre = upright(chart.centre);
    line(&mut svg, &[[LEFT, centre], [WIDE - RIGHT, centre]], 1.0, "");
    type End = fn(&trials::chart::Limits) -> f64;
    let ends: [End; 2] = [|limits| limits.low, |limits| limits.high];
    for end in ends {
        let each = chart.limits.iter().enumerate();
        let points = each.filter_map(|(at, limits)| Some([across(at), upright(end(&(*limits)?))]));
        line(&mut svg, &points.collect::<Vec<_>>(), 1.0, "5 4");
    }
    let shares = chart.months.iter().enumerate();
    let shares = shares.filter_map(|(at, month)| Some([across(at), upright(month.share()?)]));
    line(&mut svg, &shares.collect::<Vec<_>>(), 2.0, "");
    let step = chart.months.len().div_ceil(12).max(1);
    for (at, month) in chart.months.iter().enumerate().step_by(step) {
        let place = [across(at), HIGH - BOTTOM + 20.0];
        words(&mut svg, place, "middle", 11.0, &month.month);
    }
    words(&mut svg, [LEFT, HIGH - 14.0], "start", 12.0, &caption);
    svg + "</svg>\n"
}
