//! The mould seen from above: lines that meet outlines, and how much sand stands between two
//! things.

use pattern::mesh::Mesh;
use pattern::vector::Vector;

/// A point on the joint: x along the flask, y across it, mm.
pub(crate) type Point = [f64; 2];

/// What a round or a bar covers on the joint: a line with a half width around it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Footprint {
    from: Point,
    to: Point,
    half_mm: f64,
}

impl Footprint {
    /// Of a round.
    pub(crate) fn round(middle: Point, diameter_mm: f64) -> Footprint {
        Footprint {
            from: middle,
            to: middle,
            half_mm: diameter_mm / 2.0,
        }
    }

    /// Of a bar with square ends. Its corners are taken as round, so that the sand at a corner is
    /// told as up to a fifth of the bar's width too thick.
    pub(crate) fn bar(from: Point, to: Point, width_mm: f64) -> Footprint {
        let half_mm = width_mm / 2.0;
        let (way, length) = way_to(from, to);
        let inset = half_mm.min(length / 2.0);
        Footprint {
            from: along(from, way, inset),
            to: along(to, way, -inset),
            half_mm,
        }
    }

    /// The line along its middle, and its width.
    pub(crate) fn spine(&self) -> ([Point; 2], f64) {
        ([self.from, self.to], 2.0 * self.half_mm)
    }

    /// Its middle.
    pub(crate) fn middle(&self) -> Point {
        [0, 1].map(|axis| (self.from[axis] + self.to[axis]) / 2.0)
    }

    /// Lowest and highest corner of the box around it.
    pub(crate) fn bounds(&self) -> [Point; 2] {
        let low = |axis: usize| self.from[axis].min(self.to[axis]) - self.half_mm;
        let high = |axis: usize| self.from[axis].max(self.to[axis]) + self.half_mm;
        [[low(0), low(1)], [high(0), high(1)]]
    }

    /// Sand between two of them; below nought where they overlap.
    pub(crate) fn gap(&self, other: &Footprint) -> f64 {
        between([self.from, self.to], [other.from, other.to]) - self.half_mm - other.half_mm
    }

    /// Sand between it and the part of a solid between two heights.
    pub(crate) fn gap_to(&self, mesh: &Mesh, [low, high]: [f64; 2]) -> f64 {
        let mut nearest = f64::INFINITY;
        for triangle in &mesh.triangles {
            let corners = triangle.map(|point| mesh.points[point as usize]);
            let heights = corners.map(|corner| corner[2]);
            let is_above = heights.iter().all(|height| *height > high);
            let is_below = heights.iter().all(|height| *height < low);
            if !is_above && !is_below {
                nearest = nearest.min(self.facet_gap(corners.map(flat)));
            }
        }
        nearest - self.half_mm
    }

    fn facet_gap(&self, [a, b, c]: [Point; 3]) -> f64 {
        if is_in([a, b, c], self.from) {
            return 0.0;
        }
        let spine = [self.from, self.to];
        let sides = [[a, b], [b, c], [c, a]].map(|side| between(spine, side));
        sides.into_iter().fold(f64::INFINITY, f64::min)
    }
}

/// How far along a half line its passages through outlines lie, in order.
pub(crate) fn passages(outlines: &[Vec<Point>], from: Point, way: Point) -> Vec<f64> {
    let mut found = Vec::new();
    for outline in outlines {
        for (place, a) in outline.iter().enumerate() {
            let b = outline[(place + 1) % outline.len()];
            found.extend(passage([*a, b], from, way));
        }
    }
    found.sort_by(f64::total_cmp);
    found
}

/// Whether a point lies within outlines, by the even-odd rule.
pub(crate) fn holds(outlines: &[Vec<Point>], point: Point) -> bool {
    // A way that runs along no edge drawn on round numbers.
    passages(outlines, point, [0.995_3, 0.096_84]).len() % 2 == 1
}

/// Seen from above.
pub(crate) fn flat(point: Vector) -> Point {
    [point[0], point[1]]
}

/// A step along a way.
pub(crate) fn along(from: Point, way: Point, step_mm: f64) -> Point {
    [from[0] + way[0] * step_mm, from[1] + way[1] * step_mm]
}

/// The way from one point to another, and how far it is.
pub(crate) fn way_to(from: Point, to: Point) -> (Point, f64) {
    let [x, y] = [to[0] - from[0], to[1] - from[1]];
    let length = x.hypot(y);
    match length > 0.0 {
        true => ([x / length, y / length], length),
        false => ([1.0, 0.0], 0.0),
    }
}

/// The point of a piece of line that lies nearest.
pub(crate) fn nearest_on([a, b]: [Point; 2], point: Point) -> Point {
    let (way, length) = way_to(a, b);
    let at = (point[0] - a[0]) * way[0] + (point[1] - a[1]) * way[1];
    along(a, way, at.clamp(0.0, length))
}

/// How far two points lie from each other.
pub(crate) fn apart(a: Point, b: Point) -> f64 {
    way_to(a, b).1
}

fn passage([a, b]: [Point; 2], from: Point, way: Point) -> Option<f64> {
    let side = |point: Point| (point[0] - from[0]) * way[1] - (point[1] - from[1]) * way[0];
    let (left, right) = (side(a), side(b));
    if (left < 0.0) == (right < 0.0) {
        return None;
    }
    let share = left / (left - right);
    let at = [0, 1].map(|axis| a[axis] + share * (b[axis] - a[axis]) - from[axis]);
    let ahead = at[0] * way[0] + at[1] * way[1];
    (ahead >= 0.0).then_some(ahead)
}

/// How far two pieces of line lie from each other.
fn between([a, b]: [Point; 2], [c, d]: [Point; 2]) -> f64 {
    let turn = |p: Point, q: Point, r: Point| {
        (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
    };
    let crosses = turn(a, b, c) * turn(a, b, d) < 0.0 && turn(c, d, a) * turn(c, d, b) < 0.0;
    if crosses {
        return 0.0;
    }
    let to = |line, point| apart(nearest_on(line, point), point);
    to([a, b], c)
        .min(to([a, b], d))
        .min(to([c, d], a))
        .min(to([c, d], b))
}

fn is_in([a, b, c]: [Point; 3], point: Point) -> bool {
    let side =
        |p: Point, q: Point| (q[0] - p[0]) * (point[1] - p[1]) - (q[1] - p[1]) * (point[0] - p[0]);
    let sides = [side(a, b), side(b, c), side(c, a)];
    sides.iter().all(|side| *side > 0.0) || sides.iter().all(|side| *side < 0.0)
}

#[cfg(test)]
mod tests {
    use super::{Footprint, holds, passages};

    #[test]
    fn sand_between_rounds_and_bars() {
        let round = Footprint::round([0.0, 0.0], 10.0);
        let bar = Footprint::bar([-50.0, 20.0], [50.0, 20.0], 8.0);
        assert!((round.gap(&bar) - 11.0).abs() < 1e-12);
        assert!((bar.gap(&round) - 11.0).abs() < 1e-12);
        let across = Footprint::bar([0.0, 0.0], [0.0, 40.0], 8.0);
        assert!(across.gap(&bar) < 0.0);
        assert_eq!(bar.bounds(), [[-50.0, 16.0], [50.0, 24.0]]);
    }

    #[test]
    fn a_line_through_a_frame_meets_four_walls() {
        let square = |half: f64| vec![[-half, -half], [half, -half], [half, half], [-half, half]];
        let frame = vec![square(30.0), square(20.0)];
        let met = passages(&frame, [-50.0, 1.0], [1.0, 0.0]);
        assert_eq!(met, vec![20.0, 30.0, 70.0, 80.0]);
        assert!(holds(&frame, [25.0, 0.0]) && !holds(&frame, [0.0, 0.0]));
    }
}
