//! Round holes found in a mesh, by their skin alone: facets that go once round an axis and look at
//! it.

use crate::mesh::{Edges, Mesh};
use crate::vector::{Vector, add, cross, dot, norm, scale, sub};

/// A round hole.
#[derive(Clone, Debug)]
pub(super) struct Bore {
    /// The facets of its skin.
    pub(super) facets: Vec<u32>,
    /// The way it runs, of length one.
    pub(super) axis: Vector,
    /// A place on its axis, at the middle of its corners.
    pub(super) centre: Vector,
    /// Across.
    pub(super) diameter_mm: f64,
}

/// How far, as a share, a facet may lean from the axis and still belong to a round hole: the taper
/// of a drill. More and a countersink joins the hole, less and a hole of a coarse file is lost.
const LEAN: f64 = 0.02;

/// Sharpest turn between two facets of a hole: eight flats make the coarsest one.
const SHARPEST_DEGREES: f64 = 46.0;

/// Least turn from which the way of the axis can be told.
const LEAST_DEGREES: f64 = 0.3;

/// How far, as a share of the radius, corners may lie off the circle; beside it [`OFF_MM`].
const OFF_ROUND: f64 = 0.01;

/// The same for small holes: two hundredths, what a file of few digits leaves.
const OFF_MM: f64 = 0.02;

/// All round holes, in the order of their first facets.
pub(super) fn bores(mesh: &Mesh) -> Vec<Bore> {
    let skin = Skin::of(mesh);
    let mut taken = vec![false; mesh.triangles.len()];
    let mut found = Vec::new();
    for facet in 0..mesh.triangles.len() as u32 {
        if taken[facet as usize] {
            continue;
        }
        if let Some(bore) = skin.bore_from(facet) {
            bore.facets.iter().for_each(|&f| taken[f as usize] = true);
            found.push(bore);
        }
    }
    found
}

/// A mesh with what stands beside each facet.
struct Skin<'a> {
    mesh: &'a Mesh,
    units: Vec<Vector>,
    beside: Vec<[u32; 3]>,
}

impl Skin<'_> {
    fn of(mesh: &Mesh) -> Skin<'_> {
        let mut beside = vec![[u32::MAX; 3]; mesh.triangles.len()];
        for group in Edges::of(mesh).groups() {
            if let [a, b] = group {
                beside[a.facet()][a.id as usize % 3] = b.facet() as u32;
                beside[b.facet()][b.id as usize % 3] = a.facet() as u32;
            }
        }
        let unit = |facet| {
            let normal = mesh.normal(facet);
            scale(normal, 1.0 / norm(normal).max(f64::MIN_POSITIVE))
        };
        Skin {
            mesh,
            units: (0..mesh.triangles.len()).map(unit).collect(),
            beside,
        }
    }

    fn bore_from(&self, facet: u32) -> Option<Bore> {
        let own = self.units[facet as usize];
        let neighbours = self.beside[facet as usize].into_iter();
        let turning = neighbours
            .filter(|&other| other != u32::MAX)
            .find(|&other| {
                let turn = norm(cross(own, self.units[other as usize]));
                turn > LEAST_DEGREES.to_radians().sin()
                    && self.is_smooth(facet, other)
                    && self.is_hollow(facet, other)
            })?;
        let across = cross(own, self.units[turning as usize]);
        let axis = scale(across, 1.0 / norm(across));
        let facets = self.around(facet, axis);
        self.fitted(facets, axis)
    }

    fn is_smooth(&self, a: u32, b: u32) -> bool {
        let [a, b] = [a, b].map(|facet| self.units[facet as usize]);
        dot(a, b) > SHARPEST_DEGREES.to_radians().cos()
    }

    /// Whether the neighbour stands before the facet rather than behind it.
    fn is_hollow(&self, facet: u32, other: u32) -> bool {
        let middle = |f: u32| {
            let [a, b, c] = self.mesh.corners(f as usize);
            scale(add(add(a, b), c), 1.0 / 3.0)
        };
        dot(
            sub(middle(other), middle(facet)),
            self.units[facet as usize],
        ) > 0.0
    }

    /// The facets along the axis that are reached without a sharp turn.
    fn around(&self, first: u32, axis: Vector) -> Vec<u32> {
        let runs_along = |facet: u32| dot(self.units[facet as usize], axis).abs() < LEAN;
        let mut reached = std::collections::BTreeSet::from([first]);
        let mut open = vec![first];
        while let Some(facet) = open.pop() {
            for other in self.beside[facet as usize] {
                let joins = other != u32::MAX && runs_along(other) && self.is_smooth(facet, other);
                if joins && reached.insert(other) {
                    open.push(other);
                }
            }
        }
        reached.into_iter().collect()
    }

    /// The circle through the corners, if they lie on one, go all round and look inward.
    fn fitted(&self, facets: Vec<u32>, axis: Vector) -> Option<Bore> {
        let mut weight = 0.0;
        let mut facing = [0.0; 3];
        let mut points: Vec<u32> = Vec::new();
        for &facet in &facets {
            let normal = self.mesh.normal(facet as usize);
            weight += norm(normal);
            facing = add(facing, normal);
            points.extend(self.mesh.triangles[facet as usize]);
        }
        // What goes all round looks nowhere on the whole.
        if norm(facing) > 0.05 * weight {
            return None;
        }
        points.sort_unstable();
        points.dedup();
        let at = |&point: &u32| self.mesh.points[point as usize];
        let sum = points.iter().map(at).fold([0.0; 3], add);
        let middle = scale(sum, 1.0 / points.len() as f64);
        let [u, v] = square_to(axis);
        let flat: Vec<[f64; 2]> = points
            .iter()
            .map(|point| sub(at(point), middle))
            .map(|off| [dot(off, u), dot(off, v)])
            .collect();
        let ([x, y], radius) = circle(&flat)?;
        let off = |p: &[f64; 2]| ((p[0] - x).hypot(p[1] - y) - radius).abs();
        let centre = add(middle, add(scale(u, x), scale(v, y)));
        let first = facets.first().copied()?;
        let inward = dot(
            sub(centre, self.mesh.corners(first as usize)[0]),
            self.units[first as usize],
        );
        let is_round = flat.iter().map(off).fold(0.0, f64::max) <= OFF_ROUND * radius + OFF_MM;
        (is_round && inward > 0.0).then_some(Bore {
            facets,
            axis,
            centre,
            diameter_mm: 2.0 * radius,
        })
    }
}

/// Two directions square to a unit vector and to each other.
fn square_to(axis: Vector) -> [Vector; 2] {
    let least = (0..3).min_by(|&a, &b| axis[a].abs().total_cmp(&axis[b].abs()));
    let mut other = [0.0; 3];
    other[least.unwrap_or(0)] = 1.0;
    let u = cross(other, axis);
    let u = scale(u, 1.0 / norm(u));
    [u, cross(axis, u)]
}

/// Middle and radius of the circle whose squared distances to the points fit best: a linear system
/// of two equations for points taken from their mean.
fn circle(points: &[[f64; 2]]) -> Option<([f64; 2], f64)> {
    let count = points.len() as f64;
    let mean = |of: &dyn Fn(&[f64; 2]) -> f64| points.iter().map(of).sum::<f64>() / count;
    let (mx, my) = (mean(&|p| p[0]), mean(&|p| p[1]));
    let from = |p: &[f64; 2]| (p[0] - mx, p[1] - my);
    let square = |(x, y): (f64, f64)| x * x + y * y;
    let xx = mean(&|p| from(p).0.powi(2));
    let yy = mean(&|p| from(p).1.powi(2));
    let xy = mean(&|p| from(p).0 * from(p).1);
    let xs = mean(&|p| from(p).0 * square(from(p))) / 2.0;
    let ys = mean(&|p| from(p).1 * square(from(p))) / 2.0;
    let whole = xx * yy - xy * xy;
    if whole.is_nan() || whole <= 1e-9 * (xx + yy).powi(2) {
        return None;
    }
    let x = (xs * yy - ys * xy) / whole;
    let y = (ys * xx - xs * xy) / whole;
    let radius = (x * x + y * y + xx + yy).sqrt();
    Some(([mx + x, my + y], radius))
}
