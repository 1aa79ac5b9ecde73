//! How the grains of a sand spread, as a figure: what each sieve kept, and how much is finer.

use std::fmt::Write as _;

use job::words::Language;
use job::words::said::Said;
use measure::text::rounded;
use sand::grain::{Spread, spread};

use crate::svg::{line, opening, words};
use crate::tested::card::sieving;
use crate::tested::sand_file::SievingRecord;
use crate::trouble::BenchError;

/// Width of the longest bar in a terminal.
const BAR: f64 = 30.0;

/// How far the figure reaches beyond the finest and the coarsest sieve: one sieve of the usual
/// series, which steps by a root of two.
const BEYOND: f64 = std::f64::consts::SQRT_2;

/// The whole picture, px, and where its panels stand.
const WIDE: f64 = 700.0;
const HIGH: f64 = 520.0;
const LEFT: f64 = 60.0;
const RIGHT: f64 = 20.0;
const PANEL: f64 = 170.0;
const TOPS: [f64; 2] = [62.0, 282.0];

/// The spread of a sieving as it was entered.
///
/// # Errors
///
/// As the card of the sand: a sieve that is none, and weights that do not tally.
pub fn of_record(record: &SievingRecord) -> Result<Spread, BenchError> {
    Ok(spread(&sieving(record)?)?)
}

/// The figure as lines for a terminal, coarse to fine: sieve, opening, what it kept with a bar, and
/// how much is finer.
pub fn lines(spread: &Spread, language: Language) -> String {
    let most = spread
        .kept
        .iter()
        .map(|(_, share)| *share)
        .fold(0.0, f64::max);
    let heads = language.each(["bench-sizes-sieve", "bench-sizes-kept", "bench-sizes-finer"]);
    let mut text = format!(
        "{:>8} {:>9}  {:<38} {}\n",
        heads[0], "mm", heads[1], heads[2]
    );
    let openings = spread.passing.iter().rev().map(Some).chain([None]);
    for ((number, share), opening) in spread.kept.iter().zip(openings) {
        let name = sieve(*number, language);
        let width = (BAR * share / most).round() as usize;
        let bar = format!("{} {}", "#".repeat(width), percent(*share));
        let (size, finer) = opening.map_or_else(Default::default, |(size, finer)| {
            (rounded(size.as_mm(), 3), percent(*finer))
        });
        // Writing into a string does not fail.
        let _ = writeln!(text, "{name:>8} {size:>9}  {bar:<38} {finer}");
    }
    text
}

/// The figure as SVG: what each sieve kept above, how much is finer below, over one scale of sizes
/// that grows by factors.
pub fn svg(name: &str, spread: &Spread, language: Language) -> String {
    let title = language.say(&Said::new("bench-sizes-title").with("name", name));
    let caption = language.word("bench-sizes-caption");
    let mut svg = opening([WIDE, HIGH], &title, &caption);
    words(&mut svg, [LEFT, 26.0], "start", 17.0, &title);
    words(&mut svg, [LEFT, HIGH - 10.0], "start", 12.0, &caption);
    bars(&mut svg, spread, language);
    curve(&mut svg, spread, language);
    svg + "</svg>\n"
}

/// Sizes to places: the finest at the left.
struct Scale {
    low: f64,
    high: f64,
}

impl Scale {
    fn of(spread: &Spread) -> Scale {
        let sizes = || spread.passing.iter().map(|(size, _)| size.as_mm());
        Scale {
            low: sizes().fold(f64::INFINITY, f64::min) / BEYOND,
            high: sizes().fold(0.0, f64::max) * BEYOND,
        }
    }

    fn x(&self, size: f64) -> f64 {
        let along = (size / self.low).ln() / (self.high / self.low).ln();
        LEFT + (WIDE - LEFT - RIGHT) * along
    }
}

fn bars(svg: &mut String, spread: &Spread, language: Language) {
    let scale = Scale::of(spread);
    let most = spread
        .kept
        .iter()
        .map(|(_, share)| *share)
        .fold(0.0, f64::max);
    let foot = TOPS[0] + PANEL;
    panel(svg, 0, &language.word("bench-sizes-kept"));
    let mut coarser = scale.high;
    let openings = spread.passing.iter().rev().map(|(size, _)| size.as_mm());
    for ((number, share), size) in spread.kept.iter().zip(openings.chain([scale.low])) {
        let (from, to) = (scale.x(size), scale.x(coarser));
        let high = (PANEL - 24.0) * share / most;
        let _ = writeln!(
            svg,
            "<rect x=\"{from:.1}\" y=\"{:.1}\" width=\"{:.1}\" height=\"{high:.1}\" \
             fill=\"#cfe0ee\" stroke=\"#222\"/>",
            foot - high,
            to - from,
        );
        let middle = (from + to) / 2.0;
        words(
            svg,
            [middle, foot - high - 6.0],
            "middle",
            12.0,
            &percent(*share),
        );
        words(
            svg,
            [middle, foot + 15.0],
            "middle",
            12.0,
            &sieve(*number, language),
        );
        coarser = size;
    }
}

fn curve(svg: &mut String, spread: &Spread, language: Language) {
    let scale = Scale::of(spread);
    let y = |share: f64| TOPS[1] + PANEL * (1.0 - share);
    panel(svg, 1, &language.word("bench-sizes-finer"));
    for share in [0.0, 0.25, 0.5, 0.75, 1.0] {
        line(
            svg,
            &[[LEFT, y(share)], [WIDE - RIGHT, y(share)]],
            0.4,
            "2 3",
        );
        words(
            svg,
            [LEFT - 6.0, y(share) + 4.0],
            "end",
            12.0,
            &percent(share),
        );
    }
    for (size, _) in &spread.passing {
        let x = scale.x(size.as_mm());
        line(svg, &[[x, TOPS[1]], [x, TOPS[1] + PANEL + 4.0]], 0.4, "2 3");
        let size = rounded(size.as_mm(), 3);
        words(svg, [x, TOPS[1] + PANEL + 18.0], "middle", 12.0, &size);
    }
    let points = spread.passing.iter();
    let points: Vec<[f64; 2]> = points
        .map(|(size, finer)| [scale.x(size.as_mm()), y(*finer)])
        .collect();
    line(svg, &points, 2.0, "");
    for [x, y] in points {
        let _ = writeln!(
            svg,
            "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"3.5\" fill=\"#222\"/>"
        );
    }
    if let Some(half) = spread.size(0.5) {
        let x = scale.x(half.likely().as_mm());
        line(svg, &[[LEFT, y(0.5)], [x, y(0.5)], [x, y(0.0)]], 1.2, "6 3");
        let size = format!("d50 = {} mm", rounded(half.likely().as_mm(), 3));
        words(svg, [x + 6.0, y(0.08)], "start", 13.0, &size);
    }
}

/// The frame of a panel, counted from nought, with its head.
fn panel(svg: &mut String, at: usize, head: &str) {
    let (top, foot) = (TOPS[at], TOPS[at] + PANEL);
    let corners = [
        [LEFT, top],
        [WIDE - RIGHT, top],
        [WIDE - RIGHT, foot],
        [LEFT, foot],
        [LEFT, top],
    ];
    line(svg, &corners, 1.0, "");
    words(svg, [LEFT, top - 8.0], "start", 14.0, head);
}

fn sieve(number: Option<u16>, language: Language) -> String {
    number.map_or_else(
        || language.word("bench-sizes-pan"),
        |number| number.to_string(),
    )
}

fn percent(share: f64) -> String {
    format!("{} %", rounded(share * 100.0, 3))
}
