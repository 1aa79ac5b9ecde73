//! A casting in its place in the flask.

use pattern::boolean::Body;
use pattern::mesh::Mesh;
use pattern::slice::outlines;
use pattern::vector::Vector;

use crate::error::MouldError;
use crate::given::{Casting, Given, Half, Heavy};
use crate::piece::Piece;
use crate::plan_view::{Point, apart, holds};

/// A casting as it lies in the flask.
#[derive(Clone)]
pub(crate) struct Lying {
    /// Its number, from one.
    pub(crate) number: usize,
    /// Its skin in the mould's coordinates.
    pub(crate) mesh: Mesh,
    /// The same as a body.
    pub(crate) body: Body,
    /// Its sections in the mould's coordinates.
    pub(crate) sections: Vec<Heavy>,
    /// Lowest and highest corner.
    pub(crate) bounds: [Vector; 2],
    /// Its cores in the mould's coordinates.
    pub(crate) cores: Vec<LyingCore>,
}

/// A core as it lies in the flask.
#[derive(Clone)]
pub(crate) struct LyingCore {
    /// Its name.
    pub(crate) piece: Piece,
    /// Its skin.
    pub(crate) mesh: Mesh,
    /// The same as a body.
    pub(crate) body: Body,
}

/// Heights nearer to the joint than this, mm, are the joint: what growth and subtraction leave of
/// a face that lies in it.
const IN_THE_JOINT_MM: f64 = 1e-6;

/// The castings laid with the front left corners of their boxes in these places.
pub(crate) fn lay(given: &Given, corners: &[Point]) -> Result<Vec<Lying>, MouldError> {
    let [low, high] = given.casting.mesh.bounds();
    let turned = given.layout.turned;
    let place = |[x, y, z]: Vector, [left, front]: Point| {
        let z = if z.abs() < IN_THE_JOINT_MM { 0.0 } else { z };
        match turned {
            false => [left + x - low[0], front + y - low[1], z],
            true => [left + high[1] - y, front + x - low[0], z],
        }
    };
    let lying = corners
        .iter()
        .zip(1..)
        .map(|(corner, number)| Lying::of(given, number, |point| place(point, *corner)));
    lying.collect()
}

impl Lying {
    fn of(
        given: &Given,
        number: usize,
        place: impl Fn(Vector) -> Vector,
    ) -> Result<Lying, MouldError> {
        let casting: &Casting = &given.casting;
        let moved_skin = |mesh: &Mesh| Mesh {
            points: mesh.points.iter().map(|point| place(*point)).collect(),
            triangles: mesh.triangles.clone(),
        };
        let mesh = moved_skin(&casting.mesh);
        let cores = casting.cores.iter().map(|core| {
            let name = match given.count {
                1 => core.name.clone(),
                _ => format!("{} {number}", core.name),
            };
            LyingCore::of(name, moved_skin(&core.mesh))
        });
        let moved = |heavy: &Heavy| Heavy {
            place_mm: place(heavy.place_mm),
            ..*heavy
        };
        let wrong = |error| MouldError::Join {
            piece: Piece::Casting(number),
            error,
        };
        Ok(Lying {
            number,
            body: Body::of(&mesh).map_err(wrong)?,
            bounds: mesh.bounds(),
            sections: casting.sections.iter().map(moved).collect(),
            cores: cores.collect::<Result<_, _>>()?,
            mesh,
        })
    }

    /// How far it reaches into a half of the mould.
    pub(crate) fn reach_mm(&self, half: Half) -> f64 {
        match half {
            Half::Cope => self.bounds[1][2].max(0.0),
            Half::Drag => (-self.bounds[0][2]).max(0.0),
        }
    }

    /// Its cut at a height.
    pub(crate) fn cut(&self, height_mm: f64) -> Vec<Vec<Point>> {
        outlines(&self.mesh, 2, height_mm)
    }

    /// The heights at which an upright line passes through its skin, from below.
    pub(crate) fn heights_at(&self, [x, y]: Point) -> Vec<f64> {
        // A hair aside, so that the line runs along no edge drawn on round numbers.
        let (x, y) = (x + 1.7e-5, y + 2.3e-5);
        let mut heights = Vec::new();
        for triangle in &self.mesh.triangles {
            let [a, b, c] = triangle.map(|point| self.mesh.points[point as usize]);
            let side =
                |p: Vector, q: Vector| (q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0]);
            let shares = [side(b, c), side(c, a), side(a, b)];
            let is_in = shares.iter().all(|s| *s > 0.0) || shares.iter().all(|s| *s < 0.0);
            if is_in {
                let whole: f64 = shares.iter().sum();
                let [p, q, r] = shares;
                heights.push((p * a[2] + q * b[2] + r * c[2]) / whole);
            }
        }
        heights.sort_by(f64::total_cmp);
        heights
    }

    /// How far a point lies outside of it on the joint: nought over the casting.
    pub(crate) fn away_mm(&self, point: Point) -> f64 {
        if !self.heights_at(point).is_empty() {
            return 0.0;
        }
        let beside = |axis: usize| point[axis].clamp(self.bounds[0][axis], self.bounds[1][axis]);
        apart(point, [beside(0), beside(1)]).max(f64::MIN_POSITIVE)
    }

    /// Whether it has metal at a point.
    pub(crate) fn has_metal(&self, point: Point, height_mm: f64) -> bool {
        holds(&self.cut(height_mm), point)
    }
}

impl LyingCore {
    fn of(name: String, mesh: Mesh) -> Result<LyingCore, MouldError> {
        let piece = Piece::Core(name);
        let wrong = |error| MouldError::Join {
            piece: piece.clone(),
            error,
        };
        Ok(LyingCore {
            body: Body::of(&mesh).map_err(wrong)?,
            piece,
            mesh,
        })
    }
}

/// The casting nearest to a point, of equal ones the first.
pub(crate) fn nearest(lying: &[Lying], point: Point) -> Option<&Lying> {
    let away = |lying: &Lying| lying.away_mm(point);
    lying.iter().min_by(|a, b| away(a).total_cmp(&away(b)))
}
