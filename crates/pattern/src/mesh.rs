//! Triangles, the edges between them, and what a reader hands over.

use crate::read::Format;
use crate::unit::Unit;
use crate::vector::{Vector, add, bounds_of, cross, norm, sub};

/// What a reader hands over: facets as they stand in the file, nothing joined or mended.
#[derive(Clone, Debug, PartialEq)]
pub struct Soup {
    /// The file format that was recognised; none for facets that come from no file.
    pub format: Option<Format>,
    /// The unit the file declares, if its format can.
    pub declared_unit: Option<Unit>,
    /// Corner points in file units; all finite.
    pub points: Vec<Vector>,
    /// Facets as indices into `points`; all in range.
    pub triangles: Vec<[u32; 3]>,
    /// Named solids, objects or placed items in the file; at least one.
    pub pieces: usize,
}

/// A triangle mesh whose facets share points.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mesh {
    /// Corner points.
    pub points: Vec<Vector>,
    /// Facets as indices into `points`, anticlockwise seen from outside.
    pub triangles: Vec<[u32; 3]>,
}

/// One side of one facet, filed under the edge it lies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Side {
    /// Lower of the two point indices.
    pub low: u32,
    /// Higher of the two point indices.
    pub high: u32,
    /// Three times the facet index plus the corner from which the side starts.
    pub id: u32,
}

impl Side {
    /// The facet this side belongs to.
    pub fn facet(self) -> usize {
        self.id as usize / 3
    }
}

/// All sides of a mesh sorted by edge, then by facet.
#[derive(Clone, Debug)]
pub struct Edges {
    sides: Vec<Side>,
}

impl Mesh {
    /// The three corner points of facet `facet`.
    pub fn corners(&self, facet: usize) -> [Vector; 3] {
        let [a, b, c] = self.triangles[facet];
        [
            self.points[a as usize],
            self.points[b as usize],
            self.points[c as usize],
        ]
    }

    /// Twice the facet's area as a vector along its outward normal.
    pub fn normal(&self, facet: usize) -> Vector {
        let [a, b, c] = self.corners(facet);
        cross(sub(b, a), sub(c, a))
    }

    /// Start and end point of a side given by its id.
    pub fn ends(&self, side: u32) -> (u32, u32) {
        let corner = side as usize % 3;
        let triangle = self.triangles[side as usize / 3];
        (triangle[corner], triangle[(corner + 1) % 3])
    }

    /// Lowest and highest corner of the box around the facets; zero for an empty mesh.
    pub fn bounds(&self) -> [Vector; 2] {
        let used = self
            .triangles
            .iter()
            .flatten()
            .map(|&point| self.points[point as usize]);
        bounds_of(used).unwrap_or([[0.0; 3]; 2])
    }

    /// Length of the diagonal of the box around the facets.
    pub fn diagonal(&self) -> f64 {
        let [low, high] = self.bounds();
        norm(sub(high, low))
    }

    /// The same mesh elsewhere.
    pub fn moved(&self, by: Vector) -> Mesh {
        Mesh {
            points: self.points.iter().map(|&point| add(point, by)).collect(),
            triangles: self.triangles.clone(),
        }
    }

    /// Sum of the areas of all facets.
    pub fn area(&self) -> f64 {
        (0..self.triangles.len())
            .map(|facet| norm(self.normal(facet)) / 2.0)
            .sum()
    }

    /// Drops points that no facet uses and renumbers the rest in their old order.
    pub fn drop_unused_points(&mut self) {
        let mut new_index = vec![u32::MAX; self.points.len()];
        for &point in self.triangles.iter().flatten() {
            new_index[point as usize] = 0;
        }
        let mut kept = Vec::with_capacity(self.points.len());
        for (point, index) in self.points.iter().zip(&mut new_index) {
            if *index == 0 {
                *index = kept.len() as u32;
                kept.push(*point);
            }
        }
        self.points = kept;
        for point in self.triangles.iter_mut().flatten() {
            *point = new_index[*point as usize];
        }
    }
}

impl Edges {
    /// Files every side of `mesh` under its edge; a side from a point to itself is left out.
    ///
    /// Sides are dealt into one bucket per lower point and only the buckets, a handful of sides
    /// each, are sorted: linear in the number of facets for any mesh met in practice.
    pub fn of(mesh: &Mesh) -> Edges {
        let mut next = vec![0u32; mesh.points.len() + 1];
        for_each_side(mesh, |side| next[side.low as usize + 1] += 1);
        for point in 1..next.len() {
            next[point] += next[point - 1];
        }
        let ends: Vec<u32> = next[1..].to_vec();
        let empty = Side {
            low: 0,
            high: 0,
            id: 0,
        };
        let mut sides = vec![empty; ends.last().map_or(0, |&end| end as usize)];
        for_each_side(mesh, |side| {
            let slot = &mut next[side.low as usize];
            sides[*slot as usize] = side;
            *slot += 1;
        });
        let mut start = 0;
        for end in ends {
            sides[start..end as usize].sort_unstable();
            start = end as usize;
        }
        Edges { sides }
    }

    /// The sides lying on each edge, edge by edge.
    pub fn groups(&self) -> impl Iterator<Item = &[Side]> {
        self.sides
            .chunk_by(|a, b| a.low == b.low && a.high == b.high)
    }

    /// Sides that no other facet meets.
    pub fn open(&self) -> Vec<Side> {
        self.groups()
            .filter(|group| group.len() == 1)
            .map(|group| group[0])
            .collect()
    }

    /// Number of edges with more than two facets.
    pub fn over_shared(&self) -> usize {
        self.groups().filter(|group| group.len() > 2).count()
    }
}

fn for_each_side(mesh: &Mesh, mut deal: impl FnMut(Side)) {
    for (facet, triangle) in mesh.triangles.iter().enumerate() {
        for corner in 0..3 {
            let (from, to) = (triangle[corner], triangle[(corner + 1) % 3]);
            if from != to {
                let id = (facet * 3 + corner) as u32;
                deal(Side {
                    low: from.min(to),
                    high: from.max(to),
                    id,
                });
            }
        }
    }
}
