//! The joint that wanders on a page of its own: the line where it meets a casting from above, with
//! contour lines of the sand around it, the same line laid out straight, and its heights in a
//! table.

use job::plan::{JointDrawing, JointStation, Plan};
use job::words::said::Said;

use crate::drawings::{Scale, scale_within};
use crate::pen::{Anchor, FIRM, MEDIUM, Pen, Spot, THIN};

/// Room for the picture, mm: that of a page of templates.
pub(crate) const ROOM_MM: [f64; 2] = [184.0, 205.0];

/// Room for the view from above, mm of height; the straight line and the table share the rest.
const ABOVE_MM: f64 = 110.0;

/// Least sand shown around the line, mm of the real thing, and how steeply all joints come back to
/// their level at least, rise over run.
const AROUND_MM: f64 = 12.0;
const COMES_BACK: f64 = 1.5;

/// Height of a row of the table, mm.
const ROW_MM: f64 = 4.6;

/// Columns of the table.
const COLUMNS: usize = 3;

/// Radius of the dot at a station, mm.
const DOT_MM: f64 = 0.6;

/// From a dot to its number, mm.
const OFF_MM: f64 = 2.6;

/// Two numbers nearer than this, mm across and down, run into each other: the later one is left
/// out, and its dot counted from the one before.
const NUMBER_MM: [f64; 2] = [4.2, 3.6];

/// From the middle of a figure of 10 pt down to its base line, mm.
const HALF_FIGURE_MM: f64 = 1.25;

/// The page, or nothing where the joint is flat.
pub(crate) fn joint_page(plan: &Plan) -> Option<String> {
    let joint = plan.drawing.joint.as_ref()?;
    let mut pen = Pen::new();
    let foot = from_above(&mut pen, plan, joint)?;
    let foot = straight(&mut pen, plan, joint, foot + 8.0);
    table(&mut pen, plan, &joint.stations, foot + 8.0);
    Some(pen.finish(ROOM_MM))
}

/// The corner of the flask that is shown, in the mould.
fn shown(plan: &Plan, joint: &JointDrawing) -> Option<[[f64; 2]; 2]> {
    let inside = plan.drawing.flask_inside_mm;
    let places = || joint.lines.iter().flatten();
    let furthest = places().map(|place| place[2].abs()).fold(0.0, f64::max);
    let around_mm = AROUND_MM.max(furthest / COMES_BACK);
    let ends = |axis: usize| {
        let along = places().map(|place| place[axis]);
        let low = along.clone().fold(f64::INFINITY, f64::min) - around_mm;
        let high = along.fold(f64::NEG_INFINITY, f64::max) + around_mm;
        [low.max(0.0), high.min(inside[axis])]
    };
    let ([left, right], [front, back]) = (ends(0), ends(1));
    (left < right && front < back).then_some([[left, front], [right, back]])
}

/// The line from above with its stations and the contour lines around it; how far down it goes.
fn from_above(pen: &mut Pen, plan: &Plan, joint: &JointDrawing) -> Option<f64> {
    let [low, high] = shown(plan, joint)?;
    let size = [high[0] - low[0], high[1] - low[1]];
    let scale = scale_within(size, [ROOM_MM[0], ABOVE_MM - 2.0 * ROW_MM]);
    title(pen, plan, "joint-from-above", scale, ROW_MM);
    let top = 2.0 * ROW_MM;
    let on_paper = |[x, y]: [f64; 2]| -> Spot {
        [
            scale.on_paper(x - low[0]),
            top + scale.on_paper(high[1] - y),
        ]
    };
    let is_shown = |[x, y]: [f64; 2]| low[0] <= x && x <= high[0] && low[1] <= y && y <= high[1];
    let contours = joint.contours.iter().flat_map(|contour| {
        let lines = contour
            .lines
            .iter()
            .filter(|line| line.iter().all(|&at| is_shown(at)));
        lines.map(|line| {
            let spots: Vec<Spot> = line.iter().map(|&at| on_paper(at)).collect();
            (contour.height_mm, spots)
        })
    });
    let contours: Vec<(f64, Vec<Spot>)> = contours.collect();
    for (_, spots) in &contours {
        pen.fine(std::slice::from_ref(spots));
    }
    let flat = |line: &Vec<[f64; 3]>| line.iter().map(|&[x, y, _]| on_paper([x, y])).collect();
    let lines: Vec<Vec<Spot>> = joint.lines.iter().map(flat).collect();
    pen.metal(&lines);
    let middle = on_paper([0, 1].map(|axis| (low[axis] + high[axis]) / 2.0));
    heights(pen, &contours, middle);
    let mut numbered: Vec<Spot> = Vec::new();
    for (station, number) in joint.stations.iter().zip(1..) {
        let spot = on_paper([station.place_mm[0], station.place_mm[1]]);
        pen.circle(spot, DOT_MM);
        let is_free = |other: &Spot| {
            (other[0] - spot[0]).abs() > NUMBER_MM[0] || (other[1] - spot[1]).abs() > NUMBER_MM[1]
        };
        if !numbered.iter().all(is_free) {
            continue;
        }
        numbered.push(spot);
        let away = [spot[0] - middle[0], spot[1] - middle[1]];
        let far = away[0].hypot(away[1]).max(f64::MIN_POSITIVE);
        let [x, y] = [0, 1].map(|axis| spot[axis] - OFF_MM * away[axis] / far);
        pen.word(
            [x, y + HALF_FIGURE_MM],
            Anchor::Middle,
            &number.to_string(),
            true,
        );
    }
    let to = on_paper([high[0], low[1]]);
    pen.rectangle([0.0, top], to, MEDIUM);
    Some(to[1])
}

/// The heights of contour lines at their outermost places, the furthest off the level first; one
/// that would stand on another is left out.
fn heights(pen: &mut Pen, contours: &[(f64, Vec<Spot>)], middle: Spot) {
    let mut told: Vec<Spot> = Vec::new();
    let mut furthest_first: Vec<&(f64, Vec<Spot>)> = contours.iter().collect();
    furthest_first.sort_by(|(a, _), (b, _)| b.abs().total_cmp(&a.abs()));
    for (height_mm, spots) in furthest_first {
        let away = |spot: &Spot| (spot[0] - middle[0]).hypot(spot[1] - middle[1]);
        let outermost = spots.iter().max_by(|a, b| away(a).total_cmp(&away(b)));
        let Some(&[x, y]) = outermost else {
            continue;
        };
        let is_free =
            |other: &Spot| (other[0] - x).abs() > APART_MM[0] || (other[1] - y).abs() > APART_MM[1];
        if told.iter().all(is_free) {
            told.push([x, y]);
            let (anchor, off) = match x < middle[0] {
                true => (Anchor::End, -1.0),
                false => (Anchor::Start, 1.0),
            };
            let words = signed(*height_mm);
            pen.word([x + off, y + HALF_FIGURE_MM], anchor, &words, false);
        }
    }
}

/// Two heights nearer than this, mm across and down, run into each other.
const APART_MM: [f64; 2] = [10.0, 3.6];

/// The lines with stations laid out straight one after the other, as high as long, over the level
/// of the joint; how far down they go.
fn straight(pen: &mut Pen, plan: &Plan, joint: &JointDrawing, down: f64) -> f64 {
    let told = joint.stations.last().map_or(0, |station| station.line + 1);
    let ways = joint.lines.iter().take(told).map(|line| laid_out(line));
    let ways: Vec<Vec<[f64; 2]>> = ways.collect();
    if ways.is_empty() {
        return down;
    }
    let length_of = |way: &[[f64; 2]]| way.last().map_or(0.0, |last| last[0]);
    let gap_mm = GAP * ways.iter().map(|way| length_of(way)).sum::<f64>();
    let mut starts_mm = Vec::with_capacity(ways.len());
    let mut so_far_mm = 0.0;
    for way in &ways {
        starts_mm.push(so_far_mm);
        so_far_mm += length_of(way) + gap_mm;
    }
    let heights = || ways.iter().flatten().map(|place| place[1]).chain([0.0]);
    let low = heights().fold(f64::INFINITY, f64::min);
    let high = heights().fold(f64::NEG_INFINITY, f64::max);
    let length_mm = so_far_mm - gap_mm;
    let scale = scale_within([length_mm, high - low], [ROOM_MM[0], STRAIGHT_MM]);
    title(pen, plan, "joint-straight", scale, down);
    let top = down + 2.0 * ROW_MM;
    let on_paper =
        |[along, height]: [f64; 2]| [scale.on_paper(along), top + scale.on_paper(high - height)];
    for (way, start_mm) in ways.iter().zip(&starts_mm) {
        let spots: Vec<Spot> = way
            .iter()
            .map(|&[along, height]| on_paper([start_mm + along, height]))
            .collect();
        let end_mm = start_mm + length_of(way);
        pen.chain(&[on_paper([*start_mm, 0.0]), on_paper([end_mm, 0.0])]);
        pen.through(&spots, FIRM);
    }
    let foot = on_paper([0.0, low])[1];
    for (station, number) in joint.stations.iter().zip(1..) {
        let along_mm = starts_mm[station.line] + station.along_mm;
        let spot = on_paper([along_mm, station.height_mm]);
        pen.line(spot, [spot[0], foot + 1.5], THIN);
        let words = [spot[0], foot + 1.5 + 2.0 * HALF_FIGURE_MM];
        pen.word(words, Anchor::Middle, &number.to_string(), true);
    }
    foot + ROW_MM
}

/// Paper between two lines, as a share of all of them.
const GAP: f64 = 0.03;

/// A closed line laid out: the way along it and the height, back to where it began.
fn laid_out(line: &[[f64; 3]]) -> Vec<[f64; 2]> {
    let next = line.iter().cycle().skip(1);
    let mut way = vec![[0.0, line.first().map_or(0.0, |place| place[2])]];
    for (from, to) in line.iter().zip(next) {
        let step = (0..3)
            .map(|axis| (to[axis] - from[axis]).powi(2))
            .sum::<f64>();
        let so_far = way.last().map_or(0.0, |last| last[0]);
        way.push([so_far + step.sqrt(), to[2]]);
    }
    way
}

/// Most height of the line laid out straight, mm.
const STRAIGHT_MM: f64 = 28.0;

/// Where each station lies in the flask and how high.
fn table(pen: &mut Pen, plan: &Plan, stations: &[JointStation], down: f64) {
    let told = plan.words.word("joint-table");
    pen.word([0.0, down], Anchor::Start, &told, true);
    let rows = stations.len().div_ceil(COLUMNS).max(1);
    for (at, station) in stations.iter().enumerate() {
        let left = (at / rows) as f64 * ROOM_MM[0] / COLUMNS as f64;
        let line = down + (1 + at % rows) as f64 * ROW_MM;
        let [x, y] = station.place_mm;
        pen.word([left + 6.0, line], Anchor::End, &(at + 1).to_string(), true);
        let place = format!("{x:.0}, {y:.0}");
        pen.word([left + 30.0, line], Anchor::End, &place, false);
        let height = signed(station.height_mm);
        pen.word([left + 46.0, line], Anchor::End, &height, true);
    }
}

fn title(pen: &mut Pen, plan: &Plan, id: &'static str, scale: Scale, down: f64) {
    let words = plan.words.word(id);
    let scale = Said::new("drawing-scale").with("scale", scale.to_string());
    let words = format!("{words} {}", plan.words.say(&scale));
    pen.word([0.0, down], Anchor::Start, &words, true);
}

/// A height with its sign, to the tenth of a millimetre.
fn signed(height_mm: f64) -> String {
    let tenths = (height_mm * 10.0).round() / 10.0;
    match tenths {
        tenths if tenths > 0.0 => format!("+{tenths}"),
        tenths if tenths < 0.0 => format!("−{}", -tenths),
        _ => "0".to_owned(),
    }
}
