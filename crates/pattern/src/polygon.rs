//! A flat or nearly flat outline cut into triangles.

use crate::read::Trouble;
use crate::vector::{Vector, add, cross, dot, norm, scale, sub};

/// Most corners of an outline that is not convex: cutting it up takes time with their square.
pub const MOST_CORNERS: usize = 2048;

/// Most corner comparisons spent on the faces of one file.
const MOST_CUTTING: usize = 400_000_000;

/// A plane through an outline: centre of the corners, and two directions in it.
#[derive(Clone, Copy, Debug)]
pub struct Plane {
    /// Mean of the corners.
    pub centre: Vector,
    /// Unit normal; the outline runs anticlockwise seen from its tip.
    pub normal: Vector,
    across: Vector,
    up: Vector,
}

impl Plane {
    /// The mean plane of an outline by the areas it shows along the three axes; `None` if the
    /// outline encloses nothing.
    pub fn through(outline: &[Vector]) -> Option<Plane> {
        let count = outline.len() as f64;
        let centre = scale(
            outline.iter().fold([0.0; 3], |sum, &p| add(sum, p)),
            1.0 / count,
        );
        let doubled = doubled_area(outline, centre);
        let length = norm(doubled);
        let reach = outline
            .iter()
            .map(|&p| norm(sub(p, centre)))
            .fold(0.0, f64::max);
        if length.is_nan() || length <= 1e-12 * reach * reach {
            return None;
        }
        let normal = scale(doubled, 1.0 / length);
        let mut axis = [0.0; 3];
        let least = (0..3).min_by(|&a, &b| normal[a].abs().total_cmp(&normal[b].abs()))?;
        axis[least] = 1.0;
        let across = cross(axis, normal);
        let across = scale(across, 1.0 / norm(across));
        Some(Plane {
            centre,
            normal,
            across,
            up: cross(normal, across),
        })
    }

    /// Largest distance of a corner from the plane.
    pub fn unevenness(&self, outline: &[Vector]) -> f64 {
        let height = |&p: &Vector| dot(sub(p, self.centre), self.normal).abs();
        outline.iter().map(height).fold(0.0, f64::max)
    }

    fn flat(&self, point: Vector) -> [f64; 2] {
        let from_centre = sub(point, self.centre);
        [dot(from_centre, self.across), dot(from_centre, self.up)]
    }
}

/// Area enclosed by an outline, as seen along the normal of its mean plane.
pub fn area(outline: &[Vector]) -> f64 {
    outline
        .first()
        .map_or(0.0, |&origin| norm(doubled_area(outline, origin)) / 2.0)
}

/// Cuts an outline into triangles of corner numbers, wound as the outline.
///
/// A convex outline becomes a fan, any other loses one ear after another. `None` if it crosses
/// itself, encloses nothing, or is not convex and has more than [`MOST_CORNERS`] corners.
pub fn triangles(outline: &[Vector]) -> Option<Vec<[usize; 3]>> {
    if outline.len() == 3 {
        return Some(vec![[0, 1, 2]]);
    }
    let plane = Plane::through(outline)?;
    let flat: Vec<[f64; 2]> = outline.iter().map(|&p| plane.flat(p)).collect();
    if is_convex(&flat) {
        return Some((1..flat.len() - 1).map(|i| [0, i, i + 1]).collect());
    }
    if flat.len() > MOST_CORNERS {
        return None;
    }
    cut_ears(&flat)
}

/// Cuts a face given by point numbers into triangles of point numbers.
///
/// `cutting` counts the corner comparisons spent so far on the whole file; past a limit of some
/// two seconds, which no honest export comes near, the file is refused. An outline that cannot be
/// cut (it crosses itself or is a line) is taken as a fan, as most programs draw it; what that
/// makes wrong shows as crossing or open facets later.
pub fn cut_face(
    face: &[u32],
    points: &[Vector],
    cutting: &mut usize,
) -> Result<Vec<[u32; 3]>, Trouble> {
    let corners = face.len();
    if corners > 3 {
        *cutting += corners * corners.min(MOST_CORNERS);
    }
    if *cutting > MOST_CUTTING {
        return Err(Trouble::TooIntricate { corners });
    }
    let outline: Vec<Vector> = face.iter().map(|&index| points[index as usize]).collect();
    let cut =
        triangles(&outline).unwrap_or_else(|| (1..corners - 1).map(|i| [0, i, i + 1]).collect());
    Ok(cut
        .into_iter()
        .map(|triangle| triangle.map(|corner| face[corner]))
        .collect())
}

fn doubled_area(outline: &[Vector], origin: Vector) -> Vector {
    let mut sum = [0.0; 3];
    for (i, &a) in outline.iter().enumerate() {
        let b = outline[(i + 1) % outline.len()];
        sum = add(sum, cross(sub(a, origin), sub(b, origin)));
    }
    sum
}

fn turn(a: [f64; 2], b: [f64; 2], c: [f64; 2]) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/// Every corner turns left and the outline goes round once: the fan from corner 0 is then sound.
fn is_convex(flat: &[[f64; 2]]) -> bool {
    let count = flat.len();
    let all_left =
        (0..count).all(|i| turn(flat[i], flat[(i + 1) % count], flat[(i + 2) % count]) > 0.0);
    all_left && (1..count - 1).all(|i| turn(flat[0], flat[i], flat[i + 1]) > 0.0)
}

fn cut_ears(flat: &[[f64; 2]]) -> Option<Vec<[usize; 3]>> {
    let mut left: Vec<usize> = (0..flat.len()).collect();
    let mut cut = Vec::with_capacity(flat.len() - 2);
    let mut at = 0;
    let mut misses = 0;
    while left.len() > 3 {
        let count = left.len();
        let (a, b, c) = (
            left[at % count],
            left[(at + 1) % count],
            left[(at + 2) % count],
        );
        if is_ear(flat, &left, [a, b, c]) {
            cut.push([a, b, c]);
            left.remove((at + 1) % count);
            misses = 0;
        } else {
            at += 1;
            misses += 1;
        }
        if misses > count {
            return None;
        }
    }
    cut.push([left[0], left[1], left[2]]);
    Some(cut)
}

fn is_ear(flat: &[[f64; 2]], left: &[usize], [a, b, c]: [usize; 3]) -> bool {
    let (pa, pb, pc) = (flat[a], flat[b], flat[c]);
    if turn(pa, pb, pc) < 0.0 {
        return false;
    }
    let covers = |p: [f64; 2]| {
        p != pa
            && p != pb
            && p != pc
            && turn(pa, pb, p) >= 0.0
            && turn(pb, pc, p) >= 0.0
            && turn(pc, pa, p) >= 0.0
    };
    !left.iter().any(|&i| covers(flat[i]))
}
