//! The shadow of a solid on the joint: its area, which the lifting metal presses on, its outline,
//! which the bench drawing shows, and the room that the solid takes out of the cope above it.

use std::collections::BTreeMap;

use measure::length::{Area, Length, Volume};

use crate::mesh::Mesh;

/// The shadow of a solid along z.
#[derive(Clone, Debug, PartialEq)]
pub struct Silhouette {
    /// Area of the shadow.
    pub area: Area,
    /// Its outlines in mm, holes included, to be filled by the even-odd rule.
    pub outlines: Vec<Vec<[f64; 2]>>,
    /// The highest point over each dot of the shadow, mm.
    tops_mm: Vec<f64>,
    dot_mm: f64,
}

impl Silhouette {
    /// Room between a level and the upper skin of the solid, hollows under that skin counted in:
    /// what a pattern takes out of a cope that is parted there.
    pub fn room_above(&self, level: Length) -> Volume {
        let level_mm = level.as_mm();
        let over = self
            .tops_mm
            .iter()
            .map(|top_mm| (top_mm - level_mm).max(0.0));
        Volume::from_mm3(over.sum::<f64>() * self.dot_mm * self.dot_mm)
    }
}

/// Dots along the longer side. An outline is off by half a dot at most and by chance on either
/// side, so that the area of a shadow as plain as a disc comes out within a thousandth.
const DOTS: f64 = 800.0;

/// The shadow of a mesh along z.
pub fn silhouette(mesh: &Mesh) -> Silhouette {
    let shadow = Shadow::cast(mesh);
    let tops_mm: Vec<f64> = shadow
        .tops_mm
        .iter()
        .copied()
        .filter(|top| top.is_finite())
        .collect();
    let area = Area::from_mm2(tops_mm.len() as f64 * shadow.dot_mm * shadow.dot_mm);
    Silhouette {
        area,
        outlines: shadow.outlines(),
        tops_mm,
        dot_mm: shadow.dot_mm,
    }
}

/// A picture of the shadow: the highest point over each dot, endlessly low where there is light.
struct Shadow {
    dot_mm: f64,
    origin: [f64; 2],
    width: usize,
    height: usize,
    tops_mm: Vec<f64>,
}

impl Shadow {
    fn cast(mesh: &Mesh) -> Shadow {
        let ends = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
        let (low, high) = mesh.points.iter().fold(ends, |(low, high), p| {
            (
                [0, 1].map(|a| low[a].min(p[a])),
                [0, 1].map(|a| high[a].max(p[a])),
            )
        });
        let dot_mm = ((high[0] - low[0]).max(high[1] - low[1]) / DOTS).max(f64::MIN_POSITIVE);
        let dots = |axis: usize| ((high[axis] - low[axis]) / dot_mm).ceil() as usize + 2;
        let (width, height) = (dots(0), dots(1));
        let origin =
            [(0, width), (1, height)].map(|(a, n)| (low[a] + high[a] - n as f64 * dot_mm) / 2.0);
        let mut shadow = Shadow {
            dot_mm,
            origin,
            width,
            height,
            tops_mm: vec![f64::NEG_INFINITY; width * height],
        };
        for triangle in &mesh.triangles {
            shadow.darken(triangle.map(|point| mesh.points[point as usize]));
        }
        shadow
    }

    /// Darkens the dots whose middles a facet covers, row by row.
    fn darken(&mut self, corners: [[f64; 3]; 3]) {
        let flat = |p: [f64; 3], a: usize| (p[a] - self.origin[a]) / self.dot_mm - 0.5;
        let at = corners.map(|p| [flat(p, 0), flat(p, 1), p[2]]);
        let rows = at.map(|p| p[1]);
        let first = rows
            .iter()
            .copied()
            .fold(f64::INFINITY, f64::min)
            .ceil()
            .max(0.0) as usize;
        let last = rows
            .iter()
            .copied()
            .fold(f64::NEG_INFINITY, f64::max)
            .floor();
        for row in first..=(last.max(-1.0) + 1.0) as usize {
            if row as f64 > last || row >= self.height {
                break;
            }
            self.darken_row(row, at);
        }
    }

    /// Darkens the dots of one row between the two sides that it crosses, and raises their tops.
    fn darken_row(&mut self, row: usize, at: [[f64; 3]; 3]) {
        // Place along the row and height in mm, where the sides cross it.
        let (mut left, mut right) = ([f64::INFINITY, 0.0], [f64::NEG_INFINITY, 0.0]);
        for side in 0..3 {
            let (a, b) = (at[side], at[(side + 1) % 3]);
            let (low, high) = (a[1].min(b[1]), a[1].max(b[1]));
            if (low..=high).contains(&(row as f64)) && high > low {
                let part = (row as f64 - a[1]) / (b[1] - a[1]);
                let crossed = [a[0] + part * (b[0] - a[0]), a[2] + part * (b[2] - a[2])];
                if crossed[0] < left[0] {
                    left = crossed;
                }
                if crossed[0] > right[0] {
                    right = crossed;
                }
            }
        }
        let from = left[0].ceil().max(0.0) as usize;
        let to = (right[0].floor() + 1.0).clamp(0.0, self.width as f64) as usize;
        let slope = (right[1] - left[1]) / (right[0] - left[0]).max(f64::MIN_POSITIVE);
        for x in from..to {
            let height = left[1] + slope * (x as f64 - left[0]);
            let top = &mut self.tops_mm[row * self.width + x];
            *top = top.max(height);
        }
    }

    fn is_dark(&self, x: i64, y: i64) -> bool {
        let inside = (0..self.width as i64).contains(&x) && (0..self.height as i64).contains(&y);
        inside && self.tops_mm[x as usize + self.width * y as usize].is_finite()
    }

    /// Follows the edges between dark and light dots, dark on the left.
    fn outlines(&self) -> Vec<Vec<[f64; 2]>> {
        let mut onward = self.edges();
        let mut outlines = Vec::new();
        while let Some((&start, _)) = onward.first_key_value() {
            let mut outline = Vec::new();
            let mut at = start;
            while let Some(next) = take_edge(&mut onward, at) {
                outline.push([0, 1].map(|a| self.origin[a] + at[a] as f64 * self.dot_mm));
                at = next;
            }
            // Specks of a few dots are the grain of the picture, not of the part.
            if outline.len() > 12 {
                outlines.push(thinned(outline, self.dot_mm));
            }
        }
        outlines
    }

    fn edges(&self) -> BTreeMap<[i64; 2], Vec<[i64; 2]>> {
        let mut onward: BTreeMap<[i64; 2], Vec<[i64; 2]>> = BTreeMap::new();
        for y in 0..self.height as i64 {
            for x in (0..self.width as i64).filter(|&x| self.is_dark(x, y)) {
                let sides = [
                    ((0, -1), [x, y], [x + 1, y]),
                    ((1, 0), [x + 1, y], [x + 1, y + 1]),
                    ((0, 1), [x + 1, y + 1], [x, y + 1]),
                    ((-1, 0), [x, y + 1], [x, y]),
                ];
                for ((dx, dy), from, to) in sides {
                    if !self.is_dark(x + dx, y + dy) {
                        onward.entry(from).or_default().push(to);
                    }
                }
            }
        }
        onward
    }
}

fn take_edge(onward: &mut BTreeMap<[i64; 2], Vec<[i64; 2]>>, at: [i64; 2]) -> Option<[i64; 2]> {
    let ends = onward.get_mut(&at)?;
    let next = ends.pop();
    if ends.is_empty() {
        onward.remove(&at);
    }
    next
}

/// Leaves out the points of a closed outline that lie within a tolerance of the line without them.
fn thinned(outline: Vec<[f64; 2]>, tolerance: f64) -> Vec<[f64; 2]> {
    let mut keep = vec![false; outline.len()];
    let half = outline.len() / 2;
    (keep[0], keep[half]) = (true, true);
    let mut spans = vec![(0, half), (half, outline.len())];
    while let Some((from, to)) = spans.pop() {
        let end = outline[to % outline.len()];
        let away = |place: &usize| distance_to_line(outline[*place], outline[from], end);
        let furthest = (from + 1..to).max_by(|a, b| away(a).total_cmp(&away(b)));
        if let Some(place) = furthest.filter(|place| away(place) > tolerance) {
            keep[place] = true;
            spans.extend([(from, place), (place, to)]);
        }
    }
    outline
        .into_iter()
        .zip(keep)
        .filter_map(|(point, keep)| keep.then_some(point))
        .collect()
}

fn distance_to_line(point: [f64; 2], from: [f64; 2], to: [f64; 2]) -> f64 {
    let (along, off) = (
        [0, 1].map(|a| to[a] - from[a]),
        [0, 1].map(|a| point[a] - from[a]),
    );
    let length = along[0].hypot(along[1]);
    match length > 0.0 {
        true => (along[0] * off[1] - along[1] * off[0]).abs() / length,
        false => off[0].hypot(off[1]),
    }
}
