//! Bands and lines of equal height over a net of triangles.
//!
//! Within a triangle the height is taken as even, so a band is a polygon and a line is straight;
//! what is drawn agrees with itself at every edge.

/// A corner: across, up, height.
pub(super) type Corner = [f64; 3];

/// The part of a triangle with heights between two values, as a polygon; nothing if there is none.
pub(super) fn band(triangle: &[Corner; 3], low: f64, high: f64) -> Vec<[f64; 2]> {
    let above = cut(triangle, |height| height - low);
    let between = cut(&above, |height| high - height);
    match between.len() {
        0..=2 => Vec::new(),
        _ => between.iter().map(|one| [one[0], one[1]]).collect(),
    }
}

/// The line of one height across a triangle.
pub(super) fn line(triangle: &[Corner; 3], height: f64) -> Option<[[f64; 2]; 2]> {
    let mut ends = Vec::new();
    for at in 0..3 {
        let (one, other) = (triangle[at], triangle[(at + 1) % 3]);
        if (one[2] < height) != (other[2] < height) {
            let part = (height - one[2]) / (other[2] - one[2]);
            ends.push([
                one[0] + part * (other[0] - one[0]),
                one[1] + part * (other[1] - one[1]),
            ]);
        }
    }
    match ends.as_slice() {
        [one, other] => Some([*one, *other]),
        _ => None,
    }
}

/// Pieces of lines joined end to end, as far as they go.
pub(super) fn joined(mut pieces: Vec<[[f64; 2]; 2]>) -> Vec<Vec<[f64; 2]>> {
    let mut found = Vec::new();
    while let Some([one, other]) = pieces.pop() {
        let mut line = vec![one, other];
        for _ in 0..2 {
            while let Some(next) = line.last().and_then(|end| taken(&mut pieces, *end)) {
                line.push(next);
            }
            line.reverse();
        }
        found.push(line);
    }
    found
}

/// Even heights within a range, four to nine of them: 1, 2 or 5 times a power of ten apart.
pub(super) fn levels(low: f64, high: f64) -> Vec<f64> {
    let wanted = (high - low) / 9.0;
    if !(wanted > 0.0 && wanted.is_finite()) {
        return Vec::new();
    }
    let power = 10.0_f64.powf(wanted.log10().floor());
    let steps = [1.0, 2.0, 5.0, 10.0].map(|one| one * power);
    let step = steps.into_iter().find(|step| *step >= wanted);
    let step = step.unwrap_or(10.0 * power);
    let first = (low / step).ceil() as i64;
    let last = (high / step).floor() as i64;
    (first..=last).map(|at| at as f64 * step).collect()
}

/// The polygon's part where a distance that is even over it is not below nought.
fn cut(polygon: &[Corner], distance: impl Fn(f64) -> f64) -> Vec<Corner> {
    let mut kept = Vec::new();
    for at in 0..polygon.len() {
        let (one, other) = (polygon[at], polygon[(at + 1) % polygon.len()]);
        let (here, there) = (distance(one[2]), distance(other[2]));
        if here >= 0.0 {
            kept.push(one);
        }
        if (here >= 0.0) != (there >= 0.0) {
            let part = here / (here - there);
            kept.push([0, 1, 2].map(|axis| one[axis] + part * (other[axis] - one[axis])));
        }
    }
    kept
}

fn taken(pieces: &mut Vec<[[f64; 2]; 2]>, end: [f64; 2]) -> Option<[f64; 2]> {
    let near = |spot: &[f64; 2]| (spot[0] - end[0]).abs() + (spot[1] - end[1]).abs() < 1e-9;
    let at = pieces
        .iter()
        .position(|[one, other]| near(one) || near(other))?;
    let [one, other] = pieces.swap_remove(at);
    Some(if near(&one) { other } else { one })
}

#[cfg(test)]
mod tests {
    use super::{band, joined, levels, line};

    #[test]
    fn a_band_and_its_line_share_their_edge() {
        let slope = [[0.0, 0.0, 0.0], [1.0, 0.0, 1.0], [0.0, 1.0, 0.0]];
        assert_eq!(line(&slope, 0.5), Some([[0.5, 0.0], [0.5, 0.5]]));
        let right = band(&slope, 0.5, 2.0);
        assert_eq!(right, [[0.5, 0.0], [1.0, 0.0], [0.5, 0.5]]);
        assert!(band(&slope, 1.5, 2.0).is_empty());
    }

    #[test]
    fn pieces_are_joined_whatever_their_order() {
        let pieces = vec![
            [[2.0, 0.0], [3.0, 0.0]],
            [[0.0, 0.0], [1.0, 0.0]],
            [[2.0, 0.0], [1.0, 0.0]],
        ];
        let lines = joined(pieces);
        assert_eq!(lines.len(), 1);
        assert_eq!(lines[0].len(), 4);
    }

    #[test]
    fn levels_are_round_and_within() {
        assert_eq!(levels(31.0, 58.2), [35.0, 40.0, 45.0, 50.0, 55.0]);
        assert!(levels(4.0, 4.0).is_empty());
    }
}
