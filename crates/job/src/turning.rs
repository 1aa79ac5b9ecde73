//! How a part is turned to lie in the mould: the wanted way up, its longer side along x, never
//! mirrored, its own corner at nought.

use pattern::mesh::Mesh;

use crate::job::Up;

/// A quarter turn or several, and back.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turning {
    low: [f64; 3],
    high: [f64; 3],
    upright: usize,
    upward: bool,
    quarter: bool,
}

impl Turning {
    /// The turn of a mesh whose wanted way is up.
    pub fn of(mesh: &Mesh, up: Up) -> Turning {
        let [low, high] = mesh.bounds();
        let size = [0, 1, 2].map(|axis| high[axis] - low[axis]);
        let (upright, upward) = match up {
            Up::Axis(axis, upward) => (axis, upward),
            Up::Flattest => (flattest(size), true),
        };
        let (a, b) = ((upright + 1) % 3, (upright + 2) % 3);
        Turning {
            low,
            high,
            upright,
            upward,
            quarter: size[b] > size[a],
        }
    }

    /// The axis of the mesh that stands upright.
    pub fn upright(&self) -> usize {
        self.upright
    }

    /// The mesh as it lies in the mould.
    pub fn turned(&self, mesh: &Mesh) -> Mesh {
        Mesh {
            points: mesh.points.iter().map(|point| self.place(*point)).collect(),
            triangles: mesh.triangles.clone(),
        }
    }

    /// A point of the drawing as it lies in the mould.
    pub(crate) fn place(&self, point: [f64; 3]) -> [f64; 3] {
        // (a, b, upright) is a right-handed order; so is (b, -a, upright).
        let [a, b] = self.level();
        let of = |axis: usize| point[axis] - self.low[axis];
        let back = |axis: usize| self.high[axis] - point[axis];
        match (self.upward, self.quarter) {
            (true, true) => [of(b), back(a), of(self.upright)],
            (true, false) => [of(a), of(b), of(self.upright)],
            (false, true) => [of(b), of(a), back(self.upright)],
            (false, false) => [of(a), back(b), back(self.upright)],
        }
    }

    /// The same the other way round: where a place in the mould lies in the drawing.
    pub fn drawn(&self, place: [f64; 3]) -> [f64; 3] {
        let [a, b] = self.level();
        let mut point = [0.0; 3];
        let mut of = |axis: usize, along: f64| point[axis] = self.low[axis] + along;
        match self.quarter {
            true => of(b, place[0]),
            false => of(a, place[0]),
        }
        match (self.upward, self.quarter) {
            (true, false) => of(b, place[1]),
            (false, true) => of(a, place[1]),
            _ => {}
        }
        if self.upward {
            of(self.upright, place[2]);
        }
        let mut back = |axis: usize, along: f64| point[axis] = self.high[axis] - along;
        match (self.upward, self.quarter) {
            (true, true) => back(a, place[1]),
            (false, false) => back(b, place[1]),
            _ => {}
        }
        if !self.upward {
            back(self.upright, place[2]);
        }
        point
    }

    /// The way in the drawing that is up in the mould, so many times.
    pub(crate) fn drawn_way(&self, up: f64) -> [f64; 3] {
        let mut way = [0.0; 3];
        way[self.upright] = if self.upward { up } else { -up };
        way
    }

    fn level(&self) -> [usize; 2] {
        [(self.upright + 1) % 3, (self.upright + 2) % 3]
    }
}

/// The axis along which a part is lowest; of equal ones the last.
pub fn flattest(size: [f64; 3]) -> usize {
    let axes = [2, 1, 0].into_iter();
    axes.min_by(|a, b| size[*a].total_cmp(&size[*b]))
        .unwrap_or(2)
}

#[cfg(test)]
mod tests {
    use pattern::mesh::Mesh;

    use super::Turning;
    use crate::job::Up;

    #[test]
    fn back_in_the_drawing_is_where_it_was() {
        let points = vec![[1.0, 2.0, 3.0], [11.0, 7.0, 30.0], [4.0, 5.5, 9.0]];
        let long = Mesh {
            points: points.iter().map(|[x, y, z]| [*y, *x, *z]).collect(),
            triangles: vec![[0, 1, 2]],
        };
        let flat = Mesh {
            points,
            triangles: vec![[0, 1, 2]],
        };
        for mesh in [flat, long] {
            for axis in 0..3 {
                for upward in [true, false] {
                    let turning = Turning::of(&mesh, Up::Axis(axis, upward));
                    let laid = turning.turned(&mesh);
                    let back: Vec<_> = laid.points.iter().map(|p| turning.drawn(*p)).collect();
                    assert_eq!(back, mesh.points, "{axis} {upward}");
                }
            }
        }
    }
}
