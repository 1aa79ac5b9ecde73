//! Facets that cross the joint cut in two or three along it.

use std::collections::BTreeMap;

use crate::mesh::Mesh;
use crate::vector::{add, scale, sub};

/// Nearer to the joint than this, mm, a corner lies on it: needles of a thousandth are no use.
const ON_JOINT_MM: f64 = 1e-3;

/// The same skin with corners wherever an edge crosses the level; corners that all but lie on it
/// are put there.
pub(super) fn split_at(mesh: &Mesh, level_mm: f64) -> Mesh {
    let mut split = mesh.clone();
    for point in &mut split.points {
        if (point[2] - level_mm).abs() <= ON_JOINT_MM {
            point[2] = level_mm;
        }
    }
    let mut cuts = Cuts {
        level_mm,
        points: &mut split.points,
        on_edge: BTreeMap::new(),
    };
    let mut triangles = Vec::with_capacity(mesh.triangles.len() + mesh.triangles.len() / 8);
    for &triangle in &mesh.triangles {
        cuts.cut(triangle, &mut triangles);
    }
    split.triangles = triangles;
    split
}

struct Cuts<'a> {
    level_mm: f64,
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
        let height = self.points[point as usize][2] - self.level_mm;
        i8::from(height > 0.0) - i8::from(height < 0.0)
    }

    fn between(&mut self, a: u32, b: u32) -> u32 {
        let (low, high) = (a.min(b), a.max(b));
        if let Some(&known) = self.on_edge.get(&(low, high)) {
            return known;
        }
        let [from, to] = [low, high].map(|point| self.points[point as usize]);
        let share = (self.level_mm - from[2]) / (to[2] - from[2]);
        let mut place = add(from, scale(sub(to, from), share));
        place[2] = self.level_mm;
        let new = self.points.len() as u32;
        self.points.push(place);
        self.on_edge.insert((low, high), new);
        new
    }
}
