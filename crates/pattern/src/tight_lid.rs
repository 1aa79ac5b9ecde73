//! The lid of least area over a bent outline: the skin that a drop of soap would stretch over it,
//! cut into triangles between the points of the outline.
//!
//! The least lid between two points of the outline is a triangle with a third point and the least
//! lids beside it, so that all are found from the shortest spans up (the usual dynamic programme,
//! from memory).

use crate::vector::{Vector, cross, norm, sub};

/// Most points of an outline. The work grows with their cube: so many take half a second.
pub const MOST_POINTS: usize = 600;

/// Triangles of the least lid, as positions along the outline in its own sense; none for an outline
/// of fewer than three points or more than [`MOST_POINTS`].
pub fn tight_lid(outline: &[Vector]) -> Option<Vec<[usize; 3]>> {
    let count = outline.len();
    if !(3..=MOST_POINTS).contains(&count) {
        return None;
    }
    let mut least = vec![0.0; count * count];
    let mut third = vec![0; count * count];
    for span in 2..count {
        for from in 0..count - span {
            let to = from + span;
            let across = sub(outline[to], outline[from]);
            let tried = (from + 1..to).map(|middle| {
                let doubled = norm(cross(sub(outline[middle], outline[from]), across));
                let beside = least[from * count + middle] + least[middle * count + to];
                (beside + doubled / 2.0, middle)
            });
            let (area, middle) = tried.min_by(|a, b| a.0.total_cmp(&b.0))?;
            least[from * count + to] = area;
            third[from * count + to] = middle;
        }
    }
    Some(triangles(&third, count))
}

fn triangles(third: &[usize], count: usize) -> Vec<[usize; 3]> {
    let mut found = Vec::with_capacity(count - 2);
    let mut spans = vec![[0, count - 1]];
    while let Some([from, to]) = spans.pop() {
        if to - from < 2 {
            continue;
        }
        let middle = third[from * count + to];
        found.push([from, middle, to]);
        spans.extend([[from, middle], [middle, to]]);
    }
    found
}

#[cfg(test)]
mod tests {
    use super::tight_lid;
    use crate::vector::{Vector, cross, norm, sub};

    fn area(outline: &[Vector], lid: &[[usize; 3]]) -> f64 {
        lid.iter()
            .map(|&[a, b, c]| {
                norm(cross(
                    sub(outline[b], outline[a]),
                    sub(outline[c], outline[a]),
                )) / 2.0
            })
            .sum()
    }

    /// Of the two lids over a bent square that with the fold along its shorter diagonal is smaller.
    #[test]
    fn a_bent_square_is_folded_where_it_is_least() {
        let lifted = [
            [0.0, 0.0, 1.0],
            [2.0, 0.0, 0.0],
            [2.0, 2.0, 1.0],
            [0.0, 2.0, 0.0],
        ];
        let lid = tight_lid(&lifted).unwrap();
        assert_eq!(lid.len(), 2);
        // Both folds of this one are alike, two triangles of ½ |(2, −2, 4)| each; pulled long, not.
        assert!((area(&lifted, &lid) - 24f64.sqrt()).abs() < 1e-12);
        let long = [
            [0.0, 0.0, 1.0],
            [2.0, 0.5, 0.0],
            [4.0, 0.0, 1.0],
            [2.0, -0.5, 0.0],
        ];
        let along: f64 = area(&long, &[[0, 1, 2], [0, 2, 3]]);
        let across: f64 = area(&long, &[[0, 1, 3], [1, 2, 3]]);
        let found = area(&long, &tight_lid(&long).unwrap());
        assert!(
            (found - along.min(across)).abs() < 1e-12,
            "{found} of {along}, {across}"
        );
    }

    #[test]
    fn a_flat_outline_gets_its_own_area_and_its_own_sense() {
        let outline: Vec<Vector> = [
            [0.0, 0.0],
            [4.0, 0.0],
            [4.0, 1.0],
            [1.0, 1.0],
            [1.0, 3.0],
            [0.0, 3.0],
        ]
        .map(|[x, y]| [x, y, 0.0])
        .to_vec();
        let lid = tight_lid(&outline).unwrap();
        assert_eq!(lid.len(), 4);
        assert!((area(&outline, &lid) - 6.0).abs() < 1e-12);
        let upward = lid.iter().all(|&[a, b, c]| {
            cross(sub(outline[b], outline[a]), sub(outline[c], outline[a]))[2] >= 0.0
        });
        assert!(upward, "{lid:?}");
    }

    #[test]
    fn what_is_no_outline_gets_no_lid() {
        assert_eq!(tight_lid(&[[0.0; 3]; 2]), None);
        assert_eq!(tight_lid(&vec![[0.0; 3]; super::MOST_POINTS + 1]), None);
    }
}
