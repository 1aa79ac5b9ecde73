//! A response along the one thing that changes: the line, how far it may be off, the batches.

use std::fmt::Write as _;

use measure::text::rounded;
use trials::model::on_mean_day;

use crate::experiment::picture::drawn::Drawing;
use crate::experiment::picture::view::held;
use crate::experiment::reading::{Fitted, ResponseRead};
use crate::experiment::space::Space;
use crate::svg::{line, opening, words};

/// The whole picture, px, and where its plot stands.
const WIDE: f64 = 660.0;
const HIGH: f64 = 470.0;
const LEFT: f64 = 80.0;
const RIGHT: f64 = 30.0;
const TOP: f64 = 60.0;
const FOOT: f64 = 370.0;

/// Steps of the line: with 20 a bend shows corners.
const STEPS: usize = 60;

/// What the picture runs along: an axis, or the first of two shares.
pub(super) struct Along {
    at: usize,
    /// What stands at the foot of the picture, with its unit.
    pub(super) name: String,
}

/// What there is to run along where nothing else changes by degrees; nothing otherwise.
pub(super) fn along(space: &Space) -> Option<Along> {
    let shares = space.shares();
    let axes = (0..space.axes.len()).filter(|at| !space.axes[*at].is_choice);
    let axes: Vec<usize> = axes.collect();
    match (shares, axes.as_slice()) {
        (0, [one]) => {
            let axis = &space.axes[*one];
            let name = match axis.unit.as_str() {
                "" => axis.name.clone(),
                unit => format!("{}, {unit}", axis.name),
            };
            Some(Along { at: *one, name })
        }
        (2, []) => {
            let name = format!("{}, %", space.names()[0]);
            Some(Along { at: 0, name })
        }
        _ => None,
    }
}

/// Draws the picture.
pub(super) fn drawn(
    space: &Space,
    along: &Along,
    fitted: &Fitted,
    read: &ResponseRead,
    drawing: &Drawing,
) -> String {
    let mut svg = opening([WIDE, HIGH], &drawing.title, &drawing.caption);
    words(&mut svg, [LEFT, 26.0], "start", 18.0, &drawing.title);
    words(
        &mut svg,
        [20.0, HIGH - 12.0],
        "start",
        12.0,
        &drawing.caption,
    );
    if let Some(held) = &drawing.held {
        words(&mut svg, [20.0, HIGH - 30.0], "start", 12.0, held);
    }
    let line_of = curve(space, along, fitted);
    let frame = Frame::of(space, along, &line_of, &read.results);
    frame.drawn(&mut svg, space, along);
    frame.band(&mut svg, &line_of);
    for known in line_of.split(|spot| spot.unknown) {
        let points: Vec<[f64; 2]> = known
            .iter()
            .map(|spot| frame.spot(spot.level, spot.value))
            .collect();
        line(&mut svg, &points, 2.0, "");
    }
    for (point, result) in drawing.made.iter().zip(&read.results) {
        let [x, y] = frame.spot(point[along.at], *result);
        line(&mut svg, &[[x - 4.0, y - 4.0], [x + 4.0, y + 4.0]], 1.6, "");
        line(&mut svg, &[[x - 4.0, y + 4.0], [x + 4.0, y - 4.0]], 1.6, "");
    }
    svg + "</svg>\n"
}

/// The response at a level.
struct Spot {
    level: f64,
    value: f64,
    mean: Option<(f64, f64)>,
    unknown: bool,
}

/// From the low to the high end, everything else held still.
fn curve(space: &Space, along: &Along, fitted: &Fitted) -> Vec<Spot> {
    let still = held(space, fitted);
    let (low, high) = ends(space, along);
    let spot = |step: usize| {
        let level = low + (high - low) * step as f64 / STEPS as f64;
        let mut point = still.clone();
        point[along.at] = level;
        if space.shares() == 2 {
            point[1] = 1.0 - level;
        }
        let expected = fitted.fit.at(&on_mean_day(&point, fitted.days));
        Spot {
            level,
            value: expected.value,
            mean: expected.mean,
            unknown: expected.unknown,
        }
    };
    (0..=STEPS).map(spot).collect()
}

/// The ends of the numbers of a point there.
fn ends(space: &Space, along: &Along) -> (f64, f64) {
    match &space.mixture {
        Some(own) => {
            let [first, second] = [0, 1].map(|at| &own.region.components[along.at + at]);
            (
                first.low.max(1.0 - second.high),
                first.high.min(1.0 - second.low),
            )
        }
        None => (-1.0, 1.0),
    }
}

/// Numbers to places.
struct Frame {
    ends: (f64, f64),
    low: f64,
    high: f64,
}

impl Frame {
    fn of(space: &Space, along: &Along, line: &[Spot], results: &[f64]) -> Frame {
        let known = line.iter().filter(|spot| !spot.unknown);
        let spots = known.flat_map(|spot| {
            let (low, high) = spot.mean.unwrap_or((spot.value, spot.value));
            [low, high]
        });
        let all = spots.chain(results.iter().copied());
        let (low, high) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), one| {
            (low.min(one), high.max(one))
        });
        Frame {
            ends: ends(space, along),
            low,
            high,
        }
    }

    fn spot(&self, level: f64, value: f64) -> [f64; 2] {
        let across = (level - self.ends.0) / (self.ends.1 - self.ends.0);
        let up = (value - self.low) / (self.high - self.low).max(f64::MIN_POSITIVE);
        [
            LEFT + (WIDE - LEFT - RIGHT) * across,
            FOOT - 10.0 - (FOOT - TOP - 20.0) * up,
        ]
    }

    fn drawn(&self, svg: &mut String, space: &Space, along: &Along) {
        let corners = [
            [LEFT, TOP],
            [WIDE - RIGHT, TOP],
            [WIDE - RIGHT, FOOT],
            [LEFT, FOOT],
            [LEFT, TOP],
        ];
        line(svg, &corners, 1.0, "");
        for tick in 0..=4 {
            let part = f64::from(tick) / 4.0;
            let level = self.ends.0 + (self.ends.1 - self.ends.0) * part;
            let value = self.low + (self.high - self.low) * part;
            let [x, y] = self.spot(level, value);
            line(svg, &[[x, FOOT], [x, FOOT + 5.0]], 1.0, "");
            let shown = rounded(self.in_unit(space, along, level), 3);
            words(svg, [x, FOOT + 20.0], "middle", 13.0, &shown);
            words(svg, [LEFT - 8.0, y + 5.0], "end", 13.0, &rounded(value, 3));
        }
        let middle = (LEFT + WIDE - RIGHT) / 2.0;
        words(svg, [middle, FOOT + 42.0], "middle", 15.0, &along.name);
    }

    fn in_unit(&self, space: &Space, along: &Along, level: f64) -> f64 {
        match &space.mixture {
            Some(own) => own.plain.from_above_lows(&[level, 1.0 - level])[0] * own.together,
            None => space.axes[along.at].in_unit(level),
        }
    }

    /// How far the line may be off, 19 times in 20, as a grey band.
    fn band(&self, svg: &mut String, line: &[Spot]) {
        for known in line.split(|spot| spot.unknown) {
            let edge = |pick: fn((f64, f64)) -> f64| {
                let spots = known.iter();
                let spots = spots.filter_map(|spot| Some(self.spot(spot.level, pick(spot.mean?))));
                spots.collect::<Vec<[f64; 2]>>()
            };
            let (low, mut high) = (edge(|ends| ends.0), edge(|ends| ends.1));
            high.reverse();
            let corners = low.into_iter().chain(high);
            let corners: Vec<String> = corners.map(|[x, y]| format!("{x:.1},{y:.1}")).collect();
            let _ = writeln!(
                svg,
                "<polygon points=\"{}\" fill=\"#d9e6f2\" stroke=\"none\"/>",
                corners.join(" ")
            );
        }
    }
}
