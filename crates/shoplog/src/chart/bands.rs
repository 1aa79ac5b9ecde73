//! The shop's own figures as bands: what the book had, what is believed now, and where it lies.

use job::words::Language;
use job::words::said::Said;
use measure::text::rounded;

use crate::learn::told::label;
use crate::learn::{Lesson, Scale};

/// Letters of a band.
const WIDE: usize = 40;

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
