//! Where the corners of tapered walls go: level, so that every wall they belong to moves out by its
//! share.

use super::walls::{NONE, Walls};
use crate::mesh::Mesh;
use crate::vector::{Vector, dot, norm, sub};

/// Two walls that turn by less than some two degrees give no second direction to solve for; their
/// mean is taken. With a smaller share, walls of unlike depth in one smooth curve throw their
/// common corner far out.
const SAME_WAY: f64 = 1e-3;

/// A facet that leans from level by less than this, degrees, is a flat: it ends what moves with a
/// wall, for the wall's foot slides over it.
const FLAT_DEGREES: f64 = 5.0;

/// A corner moves out by at most this many times what its walls ask for: at a spike sharper than
/// some 30 degrees the mitre is cut.
const MOST_MITRE: f64 = 4.0;

/// The level way of each corner, mm along x and y.
pub(super) fn shifts(mesh: &Mesh, walls: &Walls, over_mm: &[f64]) -> Vec<[f64; 2]> {
    let mut asked = vec![Asked::default(); mesh.points.len()];
    for (facet, triangle) in mesh.triangles.iter().enumerate() {
        let patch = walls.patch_of[facet];
        if patch == NONE {
            continue;
        }
        let [x, y, _] = walls.units[facet];
        let level = x.hypot(y);
        for corner in 0..3 {
            let point = triangle[corner] as usize;
            let z = mesh.points[point][2];
            let out = walls.patches[patch as usize].out_mm(z, over_mm[point]);
            let weight = angle_at(mesh, *triangle, corner);
            asked[point].take([x / level, y / level], out, weight);
        }
    }
    let mut moves: Vec<[f64; 2]> = asked.iter().map(Asked::solved).collect();
    let of_wall: Vec<bool> = asked.iter().map(|one| one.weight > 0.0).collect();
    carry(mesh, walls, of_wall, &mut moves);
    moves
}

/// Angle of a facet at one of its corners: weighs what the facet asks for, so that the way a wall
/// is cut into facets does not matter.
fn angle_at(mesh: &Mesh, triangle: [u32; 3], corner: usize) -> f64 {
    let at = |i: usize| mesh.points[triangle[(corner + i) % 3] as usize];
    let (a, b): (Vector, Vector) = (sub(at(1), at(0)), sub(at(2), at(0)));
    let cos = dot(a, b) / (norm(a) * norm(b)).max(f64::MIN_POSITIVE);
    cos.clamp(-1.0, 1.0).acos().max(1e-6)
}

/// Normal equations of what the walls at one corner ask for: n · u = out, for every facet.
#[derive(Clone, Copy, Default)]
struct Asked {
    xx: f64,
    xy: f64,
    yy: f64,
    right: [f64; 2],
    weight: f64,
    most: f64,
}

impl Asked {
    fn take(&mut self, [x, y]: [f64; 2], out: f64, weight: f64) {
        self.xx += weight * x * x;
        self.xy += weight * x * y;
        self.yy += weight * y * y;
        self.right[0] += weight * out * x;
        self.right[1] += weight * out * y;
        self.weight += weight;
        self.most = self.most.max(out);
    }

    /// The shortest way that fits best, by the directions in which the equations are worth
    /// something.
    fn solved(&self) -> [f64; 2] {
        if self.weight == 0.0 || self.most == 0.0 {
            return [0.0; 2];
        }
        let (mean, half) = ((self.xx + self.yy) / 2.0, (self.xx - self.yy) / 2.0);
        let spread = half.hypot(self.xy);
        let angle = self.xy.atan2(half) / 2.0;
        let (sin, cos) = angle.sin_cos();
        let mut way = [0.0; 2];
        for (value, [x, y]) in [(mean + spread, [cos, sin]), (mean - spread, [-sin, cos])] {
            if value > SAME_WAY * self.weight {
                let length = (x * self.right[0] + y * self.right[1]) / value;
                way = [way[0] + length * x, way[1] + length * y];
            }
        }
        let length = way[0].hypot(way[1]);
        let cut = (MOST_MITRE * self.most / length.max(f64::MIN_POSITIVE)).min(1.0);
        way.map(|along| along * cut)
    }
}

/// What is neither wall nor flat, a rounding or a chamfer, moves with the walls beside it: ring by
/// ring each corner takes the mean of those it hangs on.
fn carry(mesh: &Mesh, walls: &Walls, mut is_set: Vec<bool>, moves: &mut [[f64; 2]]) {
    let flat = FLAT_DEGREES.to_radians().cos();
    let leans = |facet: usize| walls.patch_of[facet] == NONE && walls.units[facet][2].abs() < flat;
    let mut rest: Vec<usize> = (0..mesh.triangles.len()).filter(|&f| leans(f)).collect();
    loop {
        let mut sums: Vec<(u32, [f64; 2])> = Vec::new();
        rest.retain(|&facet| {
            let triangle = mesh.triangles[facet];
            let (set, open): (Vec<u32>, Vec<u32>) =
                triangle.iter().partition(|&&point| is_set[point as usize]);
            for &to in &open {
                sums.extend(set.iter().map(|&from| (to, moves[from as usize])));
            }
            !open.is_empty()
        });
        if sums.is_empty() {
            return;
        }
        sums.sort_by_key(|(to, _)| *to);
        for of_one in sums.chunk_by(|a, b| a.0 == b.0) {
            let count = of_one.len() as f64;
            let (to, _) = of_one[0];
            let sum = |axis: usize| of_one.iter().map(|(_, way)| way[axis]).sum::<f64>();
            moves[to as usize] = [sum(0) / count, sum(1) / count];
            is_set[to as usize] = true;
        }
    }
}
