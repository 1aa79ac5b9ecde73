//! A joint that wanders drawn from the solids of its mould: where it meets a casting, its contour
//! lines, its cut, and the heights to which it is struck off.

use pattern::draw::blocks::blocks;
use pattern::draw::joint::Joint;
use pattern::made::line::stations;
use pattern::mesh::Mesh;
use pattern::rays::along;
use pattern::slice::outlines;
use pattern::tree::Tree;
use pattern::vector::{Vector, norm, sub};
use rigging::mould::Mould;

use crate::plan::{Contour, JointDrawing, JointStation};

/// Most contour lines above or below the level: more run into each other on paper.
const MOST_CONTOURS: f64 = 8.0;

/// Heights between two contour lines, mm, the finest first.
const EVERY_MM: [f64; 6] = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0];

/// Stations along the line, and the least way between two, mm: a hand's breadth bends less.
const STATIONS: f64 = 18.0;
const LEAST_WAY_MM: f64 = 5.0;

/// Lines shorter than this share of the longest have no stations: their numbers would run together,
/// and the contours around them say as much.
const WORTH_STATIONS: f64 = 0.2;

/// The joint of a mould, cut at a place across the flask; nothing where it is flat.
pub(crate) fn joint_drawn(mould: &Mould, across_mm: f64) -> Option<JointDrawing> {
    let wandering = mould.joint.as_ref()?;
    let joint = &wandering.joint;
    let [low, high] = joint.shown_mm;
    let suits = |every: &f64| high.max(-low) / every <= MOST_CONTOURS;
    let every_mm = EVERY_MM.into_iter().find(suits).unwrap_or(EVERY_MM[5]);
    let own = wandering.lines.len() / mould.castings.len().max(1);
    let mut lines: Vec<Vec<Vector>> = wandering.lines.iter().take(own).cloned().collect();
    let is_flat = |line: &[Vector]| !leaves_level(line);
    lines.sort_by(|a, b| {
        let longer = length_mm(b).total_cmp(&length_mm(a));
        is_flat(a).cmp(&is_flat(b)).then(longer)
    });
    let longest_mm = lines.first().map_or(0.0, |line| length_mm(line));
    let is_told =
        |line: &&Vec<Vector>| !is_flat(line) && length_mm(line) >= WORTH_STATIONS * longest_mm;
    let told = lines.iter().take_while(is_told).count().max(1);
    let told = lines.get(..told).unwrap_or_default();
    let way_mm =
        (told.iter().map(|line| length_mm(line)).sum::<f64>() / STATIONS).max(LEAST_WAY_MM);
    let stations = stations(told, 0.0, way_mm);
    let station = stations.iter().map(|station| JointStation {
        line: station.line,
        along_mm: station.along_mm,
        place_mm: station.place_mm,
        height_mm: station.height_mm,
    });
    Some(JointDrawing {
        stations: station.collect(),
        lines,
        every_mm,
        contours: contours(mould, joint, every_mm),
        section: cut(joint, across_mm),
    })
}

/// Whether a line lies further off the level anywhere than a contour line tells.
fn leaves_level(line: &[Vector]) -> bool {
    line.iter().any(|place| place[2].abs() > EVERY_MM[0] / 2.0)
}

fn length_mm(line: &[Vector]) -> f64 {
    let next = line.iter().cycle().skip(1);
    let steps = line
        .iter()
        .zip(next)
        .map(|(from, to)| norm(sub(*to, *from)));
    steps.sum()
}

/// Lines of one height around every hill and hollow of the sand; the level itself has none, and
/// what the joint does within the metal is not told.
fn contours(mould: &Mould, joint: &Joint, every_mm: f64) -> Vec<Contour> {
    let [low, high] = joint.shown_mm;
    let [sand, _] = blocks(joint);
    let castings = mould.castings.iter().map(|solid| &solid.mesh);
    let castings: Vec<(&Mesh, Tree)> = castings.map(|mesh| (mesh, Tree::over(mesh))).collect();
    let is_sand = |at: &[f64; 2]| {
        let is_off =
            |(mesh, tree): &(&Mesh, Tree)| along(mesh, tree, 2, [at[0], at[1], 0.0]).is_empty();
        castings.iter().all(is_off)
    };
    let [from, to] = joint.flask;
    let is_inside = |line: &Vec<[f64; 2]>| {
        let off_walls =
            |at: &[f64; 2]| (0..2).all(|axis| from[axis] < at[axis] && at[axis] < to[axis]);
        line.iter().all(off_walls)
    };
    let steps = [(low / every_mm).ceil(), (high / every_mm).floor()].map(|step| step as i32);
    let heights = (steps[0]..=steps[1]).filter(|step| *step != 0);
    let heights = heights.map(|step| f64::from(step) * every_mm);
    let contour = heights.map(|height_mm| {
        let lines = outlines(&sand, 2, height_mm).into_iter();
        let lines = lines.filter(|line| is_inside(line) && line.iter().any(is_sand));
        Contour {
            height_mm,
            lines: lines.collect(),
        }
    });
    contour
        .filter(|contour| !contour.lines.is_empty())
        .collect()
}

/// The joint along the flask, x and z, bends only.
fn cut(joint: &Joint, across_mm: f64) -> Vec<[f64; 2]> {
    let at = |x: &f64| [*x, joint.height_mm([*x, across_mm])];
    let mut kept: Vec<[f64; 2]> = Vec::new();
    for place in joint.heights.xs_mm.iter().map(at) {
        if let [.., before, last] = kept[..] {
            let slope = |from: [f64; 2], to: [f64; 2]| (to[1] - from[1]) / (to[0] - from[0]);
            if (slope(before, last) - slope(last, place)).abs() < STRAIGHT {
                kept.pop();
            }
        }
        kept.push(place);
    }
    kept
}

/// A bend of less than this, rise over run, is none.
const STRAIGHT: f64 = 1e-6;
