//! The shop's own figures as bands: what the book had, what is believed now, and where it lies.

use bench::svg::{line, opening, words};
use job::words::Language;
use job::words::said::Said;
use measure::text::rounded;

use crate::learn::told::label;
use crate::learn::{Lesson, Scale};

/// Letters of a band.
const WIDE: usize = 40;

/// The picture, pixels: across, its margins, each line of it, and what stands above and below.
const ACROSS: f64 = 760.0;
const LEFT: f64 = 250.0;
const RIGHT: f64 = 150.0;
const LINE: f64 = 34.0;
const HEAD: f64 = 50.0;
const FOOT: f64 = 64.0;
/// Marks of the scale.
const MARKS: usize = 4;

/// A line for each figure in per cent: contraction by metal and direction, melt loss. Dots reach as
/// far as the book's range, the thick line as far as the shop's own, the ball is its middle.
pub fn lines(lessons: &[Lesson], language: Language) -> String {
    let each = lessons
        .iter()
        .filter(|lesson| lesson.scale == Scale::Percent)
        .map(|lesson| {
            let (was, now) = (lesson.was(), lesson.now());
            let percent = |number: f64| format!("{} %", rounded(number, 3));
            let between = Said::new("between").with("low", percent(now[0]));
            let between = language.say(&between.with("high", percent(now[2])));
            let (band, label) = (band(was, now), language.say(&label(&lesson.of)));
            format!("{band}  {label}  {}  {between}\n", percent(now[1]))
        });
    each.collect()
}

fn band(was: [f64; 3], now: [f64; 3]) -> String {
    let (least, most) = (was[0].min(now[0]), was[2].max(now[2]));
    let step = ((most - least) / (WIDE - 1) as f64).max(f64::MIN_POSITIVE);
    let place = |number: f64| ((number - least) / step).round() as usize;
    let letter = |at: usize| match at {
        at if at == place(now[1]) => '●',
        at if (place(now[0])..=place(now[2])).contains(&at) => '━',
        at if (place(was[0])..=place(was[2])).contains(&at) => '·',
        _ => ' ',
    };
    (0..WIDE).map(letter).collect()
}

/// The same as SVG: dashed as far as the book's range, thick as far as the shop's own, a stroke at
/// its middle; nothing where there are no lessons in per cent.
pub(super) fn svg(lessons: &[Lesson], language: Language) -> Option<String> {
    let ends = lessons
        .iter()
        .flat_map(|lesson| [lesson.was(), lesson.now()]);
    let (least, most) = ends.fold(None, |all: Option<(f64, f64)>, [low, _, high]| {
        let (least, most) = all.unwrap_or((low, high));
        Some((least.min(low), most.max(high)))
    })?;
    let (title, caption) = (
        language.word("log-chart-own-title"),
        language.word("log-chart-own-caption"),
    );
    let high = HEAD + LINE * lessons.len() as f64 + FOOT;
    let span = (most - least).max(f64::MIN_POSITIVE);
    let x = |percent: f64| LEFT + (ACROSS - LEFT - RIGHT) * (percent - least) / span;
    let mut svg = opening([ACROSS, high], &title, &caption);
    words(&mut svg, [20.0, 26.0], "start", 16.0, &title);
    for mark in 0..=MARKS {
        let percent = least + span * mark as f64 / MARKS as f64;
        let foot = high - FOOT;
        line(
            &mut svg,
            &[[x(percent), HEAD - 8.0], [x(percent), foot]],
            0.3,
            "",
        );
        let shown = format!("{} %", rounded(percent, 2));
        words(&mut svg, [x(percent), foot + 18.0], "middle", 12.0, &shown);
    }
    for (at, lesson) in lessons.iter().enumerate() {
        let y = HEAD + LINE * (at as f64 + 0.5);
        let ([was_low, _, was_high], [low, likely, up]) = (lesson.was(), lesson.now());
        let label = language.say(&label(&lesson.of));
        words(&mut svg, [LEFT - 10.0, y + 4.0], "end", 12.0, &label);
        line(
            &mut svg,
            &[[x(was_low), y + 5.0], [x(was_high), y + 5.0]],
            1.2,
            "4 4",
        );
        line(&mut svg, &[[x(low), y], [x(up), y]], 4.0, "");
        line(
            &mut svg,
            &[[x(likely), y - 7.0], [x(likely), y + 7.0]],
            2.0,
            "",
        );
        let shown = Said::new("between").with("low", format!("{} %", rounded(low, 3)));
        let shown = language.say(&shown.with("high", format!("{} %", rounded(up, 3))));
        words(
            &mut svg,
            [ACROSS - RIGHT + 10.0, y + 4.0],
            "start",
            12.0,
            &shown,
        );
    }
    words(&mut svg, [20.0, high - 14.0], "start", 12.0, &caption);
    Some(svg + "</svg>\n")
}
