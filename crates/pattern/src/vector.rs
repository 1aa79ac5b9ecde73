//! The handful of operations on points and directions that measuring a mesh takes.

/// A point or a direction: x, y, z.
pub type Vector = [f64; 3];

/// Difference `a − b`.
pub fn sub(a: Vector, b: Vector) -> Vector {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

/// Sum `a + b`.
pub fn add(a: Vector, b: Vector) -> Vector {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

/// `a` made `factor` times as long.
pub fn scale(a: Vector, factor: f64) -> Vector {
    [a[0] * factor, a[1] * factor, a[2] * factor]
}

/// Scalar product.
pub fn dot(a: Vector, b: Vector) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// Vector product, right-handed.
pub fn cross(a: Vector, b: Vector) -> Vector {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

/// Length.
pub fn norm(a: Vector) -> f64 {
    dot(a, a).sqrt()
}

/// Smallest box around `points` as lowest and highest corner; `None` without points.
pub fn bounds_of(points: impl IntoIterator<Item = Vector>) -> Option<[Vector; 2]> {
    let mut points = points.into_iter();
    let first = points.next()?;
    let start = [first, first];
    Some(points.fold(start, |[low, high], p| {
        [
            [low[0].min(p[0]), low[1].min(p[1]), low[2].min(p[2])],
            [high[0].max(p[0]), high[1].max(p[1]), high[2].max(p[2])],
        ]
    }))
}
