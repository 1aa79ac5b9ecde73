//! Facets that cross the joint cut in two or three along it; where the joint wanders, along a
//! straight line between the places at which their sides meet it.

use std::collections::BTreeMap;

use super::Heights;
use crate::mesh::Mesh;
use crate::vector::{add, scale, sub};

/// Nearer to the joint than this, mm, a corner lies on it: needles of a thousandth are no use.
const ON_JOINT_MM: f64 = 1e-3;

/// The same skin with corners wherever an edge crosses the joint, and the height of each corner
/// over the joint; corners that all but lie on it are taken to do so.
pub(super) fn split_at(mesh: &Mesh, joint: Heights<'_>) -> (Mesh, Vec<f64>) {
    let mut split = mesh.clone();
    let mut over = Vec::with_capacity(mesh.points.len());
    for point in &mut split.points {
        let level_mm = joint([point[0], point[1]]);
        if (point[2] - level_mm).abs() <= ON_JOINT_MM {
            point[2] = level_mm;
        }
        over.push(point[2] - level_mm);
    }
    let mut cuts = Cuts {
        over: &mut over,
        points: &mut split.points,
        on_edge: BTreeMap::new(),
    };
    let mut triangles = Vec::with_capacity(mesh.triangles.len() + mesh.triangles.len() / 8);
    for &triangle in &mesh.triangles {
        cuts.cut(triangle, &mut triangles);
    }
    split.triangles = triangles;
    (split, over)
}

struct Cuts<'a> {
    over: &'a mut Vec<f64>,
    points: &'a mut Vec<[f64; 3]>,
    on_edge: BTreeMap<(u32, u32), u32>,
}

impl Cuts<'_> {
    fn cut(&mut self, triangle: [u32; 3], into: &mut Vec<[u32; 3]>) {
        let sides = triangle.map(|point| self.side_of(point));
        let crosses = sides.contains(&1) && sides.contains(&-1);
        if !crosses {
            into.push(triangle);
            return;
        }
        // The corner that is alone on its side, or the one on the joint, comes first.
        let alone = |i: usize| {
            let others = [sides[(i + 1) % 3], sides[(i + 2) % 3]];
            match sides[i] {
                0 => true,
                own => !sides.contains(&0) && !others.contains(&own),
            }
        };
        let first = (0..3).find(|&i| alone(i)).unwrap_or(0);
        let [a, b, c] = [0, 1, 2].map(|i| triangle[(first + i) % 3]);
        if sides[first] == 0 {
            let on = self.between(b, c);
            into.extend([[a, b, on], [a, on, c]]);
            return;
        }
        let (ab, ac) = (self.between(a, b), self.between(a, c));
        into.extend([[a, ab, ac], [ab, b, c], [ab, c, ac]]);
    }

    fn side_of(&self, point: u32) -> i8 {
        let height = self.over[point as usize];
        i8::from(height > 0.0) - i8::from(height < 0.0)
    }

    fn between(&mut self, a: u32, b: u32) -> u32 {
        let (low, high) = (a.min(b), a.max(b));
        if let Some(&known) = self.on_edge.get(&(low, high)) {
            return known;
        }
        let [from, to] = [low, high].map(|point| self.points[point as usize]);
        let [below, above] = [low, high].map(|point| self.over[point as usize]);
        let share = below / (below - above);
        let new = self.points.len() as u32;
        self.points.push(add(from, scale(sub(to, from), share)));
        self.over.push(0.0);
        self.on_edge.insert((low, high), new);
        new
    }
}
