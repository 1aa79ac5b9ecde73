//! An independent count of undercut surface: dense points on every facet, and a ray up and a ray
//! down from each against all facets near it, by Möller and Trumbore's intersection (1997).

use pattern::mesh::Mesh;
use rayon::prelude::{IntoParallelIterator, ParallelIterator};

type Point = [f64; 3];

/// Undercut surface of each facet, mm², with points about so far apart. The rays start a hundred
/// thousandth of the part off the surface: files of single precision are no closer.
pub fn undercut_of_facets(mesh: &Mesh, up: Point, spacing: f64) -> Vec<f64> {
    let bins = Bins::of(mesh, up);
    (0..mesh.triangles.len())
        .into_par_iter()
        .map(|facet| bins.undercut_of(facet, spacing))
        .collect()
}

/// Facets by the square of the plane across the rays that they stand over.
struct Bins {
    corners: Vec<[Point; 3]>,
    up: Point,
    basis: [Point; 2],
    low: [f64; 2],
    size: f64,
    off: f64,
    facets: Vec<Vec<u32>>,
}

const SQUARES: usize = 250;

impl Bins {
    fn of(mesh: &Mesh, up: Point) -> Bins {
        let length = dot(up, up).sqrt();
        let up = up.map(|x| x / length);
        let aside = if up[2].abs() < 0.7 {
            [0.0, 0.0, 1.0]
        } else {
            [0.0, 1.0, 0.0]
        };
        let first = cross(up, aside);
        let first = first.map(|x| x / dot(first, first).sqrt());
        let basis = [first, cross(up, first)];
        let corners: Vec<[Point; 3]> = mesh
            .triangles
            .iter()
            .map(|t| t.map(|point| mesh.points[point as usize]))
            .collect();
        let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
        for point in corners.iter().flatten() {
            for axis in 0..2 {
                low[axis] = low[axis].min(dot(*point, basis[axis]));
                high[axis] = high[axis].max(dot(*point, basis[axis]));
            }
        }
        let size = (high[0] - low[0]).max(high[1] - low[1]) / SQUARES as f64 * 1.001;
        let mut bins = Bins {
            corners,
            up,
            basis,
            low,
            size,
            off: 1e-5 * mesh.diagonal(),
            facets: Vec::new(),
        };
        bins.facets = vec![Vec::new(); (SQUARES + 1) * (SQUARES + 1)];
        for facet in 0..bins.corners.len() {
            let squares = bins.corners[facet].map(|point| bins.square(point));
            let range = |axis: usize| {
                let along = squares.map(|square| square[axis]);
                *along.iter().min().unwrap()..=*along.iter().max().unwrap()
            };
            for (j, i) in range(1).flat_map(|j| range(0).map(move |i| (j, i))) {
                bins.facets[i + (SQUARES + 1) * j].push(facet as u32);
            }
        }
        bins
    }

    fn square(&self, point: Point) -> [usize; 2] {
        [0, 1].map(|axis| {
            let along = (dot(point, self.basis[axis]) - self.low[axis]) / self.size;
            along.clamp(0.0, SQUARES as f64) as usize
        })
    }

    fn undercut_of(&self, facet: usize, spacing: f64) -> f64 {
        let [a, b, c] = self.corners[facet];
        let (ab, ac) = (sub(b, a), sub(c, a));
        let normal = cross(ab, ac);
        let doubled = dot(normal, normal).sqrt();
        if doubled == 0.0 {
            return 0.0;
        }
        let parts = (doubled.sqrt() / spacing).ceil().max(2.0) as usize;
        let mut hidden = 0usize;
        // The middles of the small triangles into which each side cut in so many parts cuts it.
        for i in 0..parts {
            for j in 0..parts - i {
                let mut middles = vec![(i as f64 + 1.0 / 3.0, j as f64 + 1.0 / 3.0)];
                if i + j + 1 < parts {
                    middles.push((i as f64 + 2.0 / 3.0, j as f64 + 2.0 / 3.0));
                }
                for (u, v) in middles {
                    let (u, v) = (u / parts as f64, v / parts as f64);
                    let point = [0, 1, 2]
                        .map(|k| a[k] + u * ab[k] + v * ac[k] + self.off * normal[k] / doubled);
                    let down = self.up.map(|x| -x);
                    if self.is_blocked(point, self.up) && self.is_blocked(point, down) {
                        hidden += 1;
                    }
                }
            }
        }
        doubled / 2.0 * hidden as f64 / (parts * parts) as f64
    }

    fn is_blocked(&self, from: Point, way: Point) -> bool {
        let [i, j] = self.square(from);
        let facets = &self.facets[i + (SQUARES + 1) * j];
        facets
            .iter()
            .any(|&facet| meets(self.corners[facet as usize], from, way))
    }
}

fn meets([a, b, c]: [Point; 3], from: Point, way: Point) -> bool {
    let (ab, ac) = (sub(b, a), sub(c, a));
    let p = cross(way, ac);
    let determinant = dot(ab, p);
    if determinant == 0.0 {
        return false;
    }
    let t = sub(from, a);
    let u = dot(t, p) / determinant;
    let q = cross(t, ab);
    let v = dot(way, q) / determinant;
    u >= 0.0 && v >= 0.0 && u + v <= 1.0 && dot(ac, q) / determinant > 1e-9
}

fn sub(a: Point, b: Point) -> Point {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn dot(a: Point, b: Point) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn cross(a: Point, b: Point) -> Point {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}
