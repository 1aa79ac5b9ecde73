//! How far a place lies from the skin of a solid, and on which side of it.

use crate::mesh::Mesh;
use crate::rays;
use crate::tree::Tree;
use crate::vector::{Vector, add, dot, scale, sub};

/// The place of a skin that lies nearest to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nearest {
    /// Where on the skin.
    pub point: Vector,
    /// The facet it lies on.
    pub facet: u32,
    /// How far away, in the unit of the points; never negative.
    pub distance: f64,
}

/// The place of the skin nearest to `from`, if any is no farther away than `within`.
pub fn nearest(mesh: &Mesh, tree: &Tree, from: Vector, within: f64) -> Option<Nearest> {
    let mut found: Option<Nearest> = None;
    // A hair more, so that what lies exactly at the limit is still found.
    let mut limit = within * within * (1.0 + 1e-12);
    tree.wide().near(from, limit, |facet| {
        let point = on_facet(mesh.corners(facet as usize), from);
        let offset = sub(point, from);
        let squared = dot(offset, offset);
        if squared <= limit {
            limit = squared;
            found = Some(Nearest {
                point,
                facet,
                distance: squared.sqrt(),
            });
        }
        limit
    });
    found
}

/// Whether a place lies in the metal of a closed mesh wound outward, by the line from it upward.
pub fn is_inside(mesh: &Mesh, tree: &Tree, place: Vector) -> bool {
    let hits = rays::along(mesh, tree, 2, place);
    let above = hits.iter().filter(|hit| hit.at > place[2]);
    above.map(|hit| -hit.step).sum::<i32>() > 0
}

/// The place of a facet nearest to `from`: a corner, on a side, or within, told apart by the signs
/// of how far `from` lies along and beside each side (the usual method, from memory).
fn on_facet([a, b, c]: [Vector; 3], from: Vector) -> Vector {
    let (ab, ac) = (sub(b, a), sub(c, a));
    let along = |corner: Vector| {
        let offset = sub(from, corner);
        [dot(ab, offset), dot(ac, offset)]
    };
    let (at_a, at_b, at_c) = (along(a), along(b), along(c));
    if at_a[0] <= 0.0 && at_a[1] <= 0.0 {
        return a;
    }
    if at_b[0] >= 0.0 && at_b[1] <= at_b[0] {
        return b;
    }
    if at_c[1] >= 0.0 && at_c[0] <= at_c[1] {
        return c;
    }
    let beside_ab = at_a[0] * at_b[1] - at_b[0] * at_a[1];
    if beside_ab <= 0.0 && at_a[0] >= 0.0 && at_b[0] <= 0.0 {
        return add(a, scale(ab, at_a[0] / (at_a[0] - at_b[0])));
    }
    let beside_ac = at_c[0] * at_a[1] - at_a[0] * at_c[1];
    if beside_ac <= 0.0 && at_a[1] >= 0.0 && at_c[1] <= 0.0 {
        return add(a, scale(ac, at_a[1] / (at_a[1] - at_c[1])));
    }
    let beside_bc = at_b[0] * at_c[1] - at_c[0] * at_b[1];
    let (past_b, before_c) = (at_b[1] - at_b[0], at_c[0] - at_c[1]);
    if beside_bc <= 0.0 && past_b >= 0.0 && before_c >= 0.0 {
        return add(b, scale(sub(c, b), past_b / (past_b + before_c)));
    }
    let whole = beside_bc + beside_ac + beside_ab;
    if whole <= 0.0 {
        return a;
    }
    add(
        a,
        add(scale(ab, beside_ac / whole), scale(ac, beside_ab / whole)),
    )
}

#[cfg(test)]
mod tests {
    use super::on_facet;

    #[test]
    fn every_region_of_a_facet_has_its_nearest_place() {
        let facet = [[0.0, 0.0, 0.0], [4.0, 0.0, 0.0], [0.0, 4.0, 0.0]];
        let cases = [
            ([1.0, 1.0, 3.0], [1.0, 1.0, 0.0]),
            ([-1.0, -2.0, 1.0], [0.0, 0.0, 0.0]),
            ([6.0, -1.0, 0.0], [4.0, 0.0, 0.0]),
            ([-1.0, 7.0, 0.0], [0.0, 4.0, 0.0]),
            ([2.0, -3.0, 1.0], [2.0, 0.0, 0.0]),
            ([-3.0, 1.0, 1.0], [0.0, 1.0, 0.0]),
            ([4.0, 4.0, -2.0], [2.0, 2.0, 0.0]),
        ];
        for (from, wanted) in cases {
            assert_eq!(on_facet(facet, from), wanted, "{from:?}");
        }
    }
}
