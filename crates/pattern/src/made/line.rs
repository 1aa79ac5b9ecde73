//! The joint line on the pattern: a groove to cut the sand to, and a table for the height gauge.

use thiserror::Error;

use super::plain::skin;
use crate::boolean::{Body, BooleanError};
use crate::mesh::Mesh;
use crate::slice::outlines;
use crate::vector::{Vector, norm, sub};

/// Width of the groove along z, mm: what a knife or a pencil finds.
pub const WIDTH_MM: f64 = 0.8;

/// Depth of the groove, mm: two coats of filler leave it to be seen.
pub const DEPTH_MM: f64 = 0.6;

/// A pattern with its line.
#[derive(Clone, Debug)]
pub struct Engraved {
    /// Its skin.
    pub mesh: Mesh,
    /// Length of all lines, mm.
    pub length_mm: f64,
    /// What the groove takes away, mm³.
    pub taken_mm3: f64,
}

/// A place on the line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// Which line, from nought.
    pub line: usize,
    /// Way along it from its first place, mm.
    pub along_mm: f64,
    /// In the plan, mm.
    pub place_mm: [f64; 2],
    /// Over the bed on which the pattern lies, mm.
    pub height_mm: f64,
    /// How steeply the line rises from here to the next station, degrees; falling is negative.
    pub slope_degrees: f64,
}

/// Why no line was cut.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum LineError {
    /// No line to cut.
    #[error("the joint at {level_mm:.1} mm does not cross the pattern: no line is engraved")]
    NoLine {
        /// Where the joint lies.
        level_mm: f64,
    },
    /// A line of less than three places.
    #[error("line {number} has less than three places; it has to go round the pattern")]
    NotRound {
        /// Which, from one.
        number: usize,
    },
    /// The groove could not be cut.
    #[error("the groove along the joint: {0}")]
    Join(#[from] BooleanError),
}

/// Where a flat joint crosses the pattern: closed lines with the pattern on their left.
///
/// # Errors
///
/// A joint beside the pattern.
pub fn flat_line(pattern: &Mesh, level_mm: f64) -> Result<Vec<Vec<Vector>>, LineError> {
    let [low, high] = pattern.bounds();
    let lines = match low[2] < level_mm && level_mm < high[2] {
        true => outlines(pattern, 2, level_mm),
        false => Vec::new(),
    };
    match lines.is_empty() {
        true => Err(LineError::NoLine { level_mm }),
        false => Ok(lines
            .into_iter()
            .map(|line| line.into_iter().map(|[x, y]| [x, y, level_mm]).collect())
            .collect()),
    }
}

/// The pattern with a groove along closed lines on its skin, the pattern on their left as seen
/// from above.
///
/// # Errors
///
/// No line, or a groove that cannot be cut.
pub fn engraved(pattern: &Mesh, lines: &[Vec<Vector>]) -> Result<Engraved, LineError> {
    let mut whole = Body::of(pattern)?;
    let before = whole.volume_mm3();
    let mut length_mm = 0.0;
    for (line, number) in lines.iter().zip(1..) {
        let line = thinned(line);
        if line.len() < 3 {
            return Err(LineError::NotRound { number });
        }
        length_mm += sides(&line)
            .map(|(from, to)| norm(sub(to, from)))
            .sum::<f64>();
        whole = whole.without(&Body::rebuilt(&band(&line))?)?;
    }
    Ok(Engraved {
        taken_mm3: before - whole.volume_mm3(),
        mesh: skin(&whole).ok_or(BooleanError::Failed)?,
        length_mm,
    })
}

/// Heights along the lines over the bed, about `every_mm` apart.
pub fn stations(lines: &[Vec<Vector>], bed_mm: f64, every_mm: f64) -> Vec<Station> {
    let mut told = Vec::new();
    for (line, points) in lines.iter().enumerate() {
        let length: f64 = sides(points).map(|(from, to)| norm(sub(to, from))).sum();
        let wanted = (length / every_mm).round().max(FEWEST) as usize;
        let places: Vec<(f64, Vector)> = (0..wanted)
            .map(|number| length * number as f64 / wanted as f64)
            .map(|along| (along, at(points, along)))
            .collect();
        for (number, &(along_mm, [x, y, z])) in places.iter().enumerate() {
            let (_, [next_x, next_y, next_z]) = places[(number + 1) % wanted];
            let run = (next_x - x).hypot(next_y - y);
            told.push(Station {
                line,
                along_mm,
                place_mm: [x, y],
                height_mm: z - bed_mm,
                slope_degrees: (next_z - z).atan2(run).to_degrees(),
            });
        }
    }
    told
}

/// Fewest stations on a line: with four a square has one at each corner.
const FEWEST: f64 = 4.0;

/// The place at a way along a closed line.
fn at(points: &[Vector], along_mm: f64) -> Vector {
    let mut rest = along_mm;
    for (from, to) in sides(points) {
        let length = norm(sub(to, from));
        if rest <= length && length > 0.0 {
            let share = rest / length;
            return [0, 1, 2].map(|axis| from[axis] + share * (to[axis] - from[axis]));
        }
        rest -= length;
    }
    points.first().copied().unwrap_or_default()
}

fn sides(points: &[Vector]) -> impl Iterator<Item = (Vector, Vector)> {
    let next = points.iter().cycle().skip(1);
    points.iter().copied().zip(next.copied())
}

/// Corners of a line nearer together than this, mm, make slivers and no bend that is seen.
const NEAR_MM: f64 = 0.02;

/// The line without corners that lie on the last one or straight between their neighbours.
fn thinned(line: &[Vector]) -> Vec<Vector> {
    let mut kept: Vec<Vector> = Vec::with_capacity(line.len());
    for &point in line {
        if kept
            .last()
            .is_none_or(|last| norm(sub(point, *last)) > NEAR_MM)
        {
            kept.push(point);
        }
    }
    while kept.len() > 1 && norm(sub(kept[0], kept[kept.len() - 1])) <= NEAR_MM {
        kept.pop();
    }
    kept
}

/// A corner is mitred by at most so many times the depth: sharper ones are cut off.
const MOST_MITRE: f64 = 3.0;

/// A closed band along the line, as wide along z as the groove, and as deep to either side.
fn band(line: &[Vector]) -> Mesh {
    let count = line.len();
    let mut mesh = Mesh::default();
    for i in 0..count {
        let (before, own, after) = (
            line[(i + count - 1) % count],
            line[i],
            line[(i + 1) % count],
        );
        let out = mitre(before, own, after);
        for (side, up) in [(1.0, -0.5), (1.0, 0.5), (-1.0, 0.5), (-1.0, -0.5)] {
            mesh.points.push([
                own[0] + side * DEPTH_MM * out[0],
                own[1] + side * DEPTH_MM * out[1],
                own[2] + up * WIDTH_MM,
            ]);
        }
    }
    for i in 0..count as u32 {
        let next = (i + 1) % count as u32;
        for side in 0..4 {
            let [a, b] = [4 * i + side, 4 * i + (side + 1) % 4];
            let [c, d] = [4 * next + side, 4 * next + (side + 1) % 4];
            mesh.triangles.extend([[a, c, d], [a, d, b]]);
        }
    }
    mesh
}

/// The way out of the pattern at a corner, as long as a band of width one needs it there.
fn mitre(before: Vector, own: Vector, after: Vector) -> [f64; 2] {
    let normal = |from: Vector, to: Vector| {
        let [x, y, _] = sub(to, from);
        let length = x.hypot(y).max(f64::MIN_POSITIVE);
        [y / length, -x / length]
    };
    let (a, b) = (normal(before, own), normal(own, after));
    let sum = [a[0] + b[0], a[1] + b[1]];
    let square = sum[0] * sum[0] + sum[1] * sum[1];
    if square < 1e-6 {
        return b;
    }
    let long = (2.0 / square).min(MOST_MITRE / square.sqrt());
    sum.map(|along| along * long)
}
