//! Named mixes side by side: every batch a cross, every mean a point with how far it may be off.

use std::fmt::Write as _;

use job::words::Language;
use job::words::said::Said;
use measure::text::rounded;
use trials::verdict::Verdict;

use crate::experiment::batches::Batch;
use crate::experiment::mixes::Mixes;
use crate::experiment::mixes::reading::{Compared, ResponseCompared};
use crate::experiment::picture::{Picture, file_name, titled};
use crate::experiment::{Experiment, Response};
use crate::svg::{line, opening, words};

/// Width of the picture, and where its plot begins and ends, px.
const WIDE: f64 = 700.0;
const LEFT: f64 = 190.0;
const RIGHT: f64 = 40.0;
const TOP: f64 = 70.0;
/// Height of the row of a mix.
const ROW: f64 = 46.0;

/// Letters of a name that fit beside the plot.
const LETTERS: usize = 24;

/// A picture of every response that can be judged.
pub fn pictures(
    experiment: &Experiment,
    mixes: &Mixes,
    batches: &[Batch],
    found: &Compared,
    language: Language,
) -> Vec<Picture> {
    let each = experiment.responses.iter().zip(&found.responses);
    let drawn = each.filter_map(|(response, read)| {
        let verdict = read.judged.as_ref().ok()?;
        let file = format!("{}-mixes", response.name);
        Some(Picture {
            file: format!("{}.svg", file_name(&file)),
            title: titled(response),
            svg: drawn(response, mixes, batches, read, verdict, language),
        })
    });
    drawn.collect()
}

fn drawn(
    response: &Response,
    mixes: &Mixes,
    batches: &[Batch],
    read: &ResponseCompared,
    verdict: &Verdict,
    language: Language,
) -> String {
    let title = titled(response);
    let caption = language.say(&Said::new("experiment-mix-picture"));
    let high = TOP + ROW * mixes.each.len() as f64 + 70.0;
    let mut svg = opening([WIDE, high], &title, &caption);
    words(&mut svg, [20.0, 28.0], "start", 18.0, &title);
    words(&mut svg, [20.0, high - 12.0], "start", 12.0, &caption);
    let scale = Scale::of(verdict, &read.results);
    scale.drawn(&mut svg, TOP, high - 56.0);
    for (at, mix) in mixes.each.iter().enumerate() {
        let y = TOP + ROW * (at as f64 + 0.5);
        let name: String = mix.name.chars().take(LETTERS).collect();
        words(&mut svg, [LEFT - 14.0, y + 5.0], "end", 14.0, &name);
        let made = read.measured.iter().zip(&read.results);
        for (_, result) in made.filter(|(place, _)| batches[**place].mix == Some(at)) {
            cross(&mut svg, scale.x(*result), y + 9.0);
        }
        mean(
            &mut svg,
            &scale,
            verdict,
            at,
            y - 5.0,
            read.winner == Some(at),
        );
    }
    svg + "</svg>\n"
}

/// Values to places.
struct Scale {
    low: f64,
    high: f64,
}

impl Scale {
    fn of(verdict: &Verdict, results: &[f64]) -> Scale {
        let means = verdict.means.iter().zip(&verdict.around);
        let ends = means.flat_map(|(mean, around)| [mean - around, mean + around]);
        let all = ends.chain(results.iter().copied());
        let (low, high) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), one| {
            (low.min(one), high.max(one))
        });
        Scale { low, high }
    }

    fn x(&self, value: f64) -> f64 {
        LEFT + (WIDE - LEFT - RIGHT) * (value - self.low) / (self.high - self.low)
    }

    fn drawn(&self, svg: &mut String, top: f64, foot: f64) {
        for tick in 0..=4 {
            let value = self.low + (self.high - self.low) * f64::from(tick) / 4.0;
            let x = self.x(value);
            line(svg, &[[x, top], [x, foot]], 0.4, "2 3");
            words(svg, [x, foot + 18.0], "middle", 13.0, &rounded(value, 3));
        }
        line(svg, &[[LEFT, foot], [WIDE - RIGHT, foot]], 1.0, "");
    }
}

fn mean(svg: &mut String, scale: &Scale, verdict: &Verdict, at: usize, y: f64, is_best: bool) {
    let (mean, around) = (verdict.means[at], verdict.around[at]);
    let [low, high] = [mean - around, mean + around].map(|end| scale.x(end));
    line(svg, &[[low, y], [high, y]], 2.0, "");
    for end in [low, high] {
        line(svg, &[[end, y - 5.0], [end, y + 5.0]], 2.0, "");
    }
    let fill = if is_best { "#222" } else { "#fff" };
    let _ = writeln!(
        svg,
        "<circle cx=\"{:.1}\" cy=\"{y:.1}\" r=\"5.5\" fill=\"{fill}\" stroke=\"#222\" \
         stroke-width=\"2\"/>",
        scale.x(mean)
    );
}

fn cross(svg: &mut String, x: f64, y: f64) {
    line(svg, &[[x - 4.0, y - 4.0], [x + 4.0, y + 4.0]], 1.4, "");
    line(svg, &[[x - 4.0, y + 4.0], [x + 4.0, y - 4.0]], 1.4, "");
}
