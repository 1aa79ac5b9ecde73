//! The solid as a box of cells: which cells hold metal, how much of each, and how much of the
//! surface each one carries.
//!
//! A staircase of cells misses the true wall by up to half a cell, which on a wall of six cells
//! would be an error of one part in six. Each sample of the surface therefore hands its cell not
//! only its area but also the volume between the true wall and the step of the staircase, so that
//! the volume of every neighbourhood comes out right, not only the whole.

use crate::mesh::Mesh;

/// A box of cells of one size; cell `[i, j, k]` stands at `i + nx (j + ny k)`.
#[derive(Clone, Debug)]
pub struct Cells {
    /// Edge of a cell, mm.
    pub size_mm: f64,
    /// Cells along x, y, z.
    pub count: [usize; 3],
    /// Corner of cell `[0, 0, 0]`, mm.
    pub origin_mm: [f64; 3],
    /// Metal in each cell, mm³; nought where the cell is outside.
    pub volume_mm3: Vec<f64>,
    /// Cooled surface carried by each cell, mm².
    pub area_mm2: Vec<f64>,
    /// Share of the surface that belongs to walls too thin for cells of this size.
    pub unresolved: f64,
}

/// Cells across the mean wall. With fewer the two faces of a wall share their cells and the
/// heaviest place cannot be told from its neighbours; with more the time grows by the cube.
const CELLS_ACROSS_MEAN_WALL: f64 = 7.0;

/// Most cells of metal, and most cells of the whole box, so that the answer stays under a second.
const MOST_SOLID: f64 = 60_000.0;
const MOST_IN_BOX: f64 = 6_000_000.0;

/// How far above the middle of a cell a face has to lie for the cell to count as below it, in
/// cells: a level face right at the middles would by rounding take some of them and leave others.
const HAIR: f64 = 1e-6;

/// Empty cells kept around the solid.
const MARGIN: usize = 2;

impl Cells {
    /// A cell size that suits a solid: so many cells across the mean wall 2 V/A, fewer where the
    /// part is a large thin sheet.
    pub fn suiting_size_mm(volume_mm3: f64, area_mm2: f64, extents_mm: [f64; 3]) -> f64 {
        let by_wall = 2.0 * volume_mm3 / area_mm2 / CELLS_ACROSS_MEAN_WALL;
        let by_metal = (volume_mm3 / MOST_SOLID).cbrt();
        let by_box = (extents_mm.iter().product::<f64>() / MOST_IN_BOX).cbrt();
        by_wall.max(by_metal).max(by_box)
    }

    /// Fills cells of this size with the solid inside a closed mesh wound outward.
    pub fn fill(mesh: &Mesh, size_mm: f64) -> Cells {
        let (low, high) = bounds(mesh);
        let span = |axis: usize| ((high[axis] - low[axis]) / size_mm).ceil() as usize;
        let count = [0, 1, 2].map(|axis| span(axis).max(1) + 2 * MARGIN);
        // The box is centred on the solid, so that a symmetric part meets symmetric cells.
        let origin_mm =
            [0, 1, 2].map(|axis| (low[axis] + high[axis] - count[axis] as f64 * size_mm) / 2.0);
        Cells::fill_box(mesh, size_mm, origin_mm, count)
    }

    /// Fills a given box of cells with the solid; what reaches beyond the box is left out.
    pub fn fill_box(mesh: &Mesh, size_mm: f64, origin_mm: [f64; 3], count: [usize; 3]) -> Cells {
        let cells = count.iter().product();
        let mut filled = Cells {
            size_mm,
            count,
            origin_mm,
            volume_mm3: vec![0.0; cells],
            area_mm2: vec![0.0; cells],
            unresolved: 0.0,
        };
        filled.fill_columns(mesh);
        filled.lay_surface(mesh);
        filled
    }

    /// Where a cell stands in the rows.
    pub fn index(&self, [i, j, k]: [usize; 3]) -> usize {
        i + self.count[0] * (j + self.count[1] * k)
    }

    /// The cell that stands at a place in the rows.
    pub fn cell(&self, index: usize) -> [usize; 3] {
        let [nx, ny, _] = self.count;
        [index % nx, index / nx % ny, index / (nx * ny)]
    }

    /// Middle of a cell, mm.
    pub fn middle_mm(&self, index: usize) -> [f64; 3] {
        let cell = self.cell(index);
        [0, 1, 2].map(|axis| self.origin_mm[axis] + (cell[axis] as f64 + 0.5) * self.size_mm)
    }

    /// Whether a cell holds metal.
    pub fn is_solid(&self, index: usize) -> bool {
        self.volume_mm3[index] > 0.0
    }

    /// Distances along the rows to the six neighbours' places.
    pub fn strides(&self) -> [usize; 3] {
        [1, self.count[0], self.count[0] * self.count[1]]
    }

    fn fill_columns(&mut self, mesh: &Mesh) {
        let mut crossings = self.crossings(mesh);
        crossings.sort_by(|a, b| {
            (a.column, a.height)
                .partial_cmp(&(b.column, b.height))
                .unwrap_or(std::cmp::Ordering::Equal)
        });
        let mut winding = 0;
        for pair in crossings.windows(2) {
            let [from, to] = [&pair[0], &pair[1]];
            winding += from.enters;
            if from.column != to.column {
                winding = 0;
            } else if winding > 0 {
                self.fill_span(from.column, from.height, to.height);
            }
        }
    }

    fn fill_span(&mut self, column: usize, from_mm: f64, to_mm: f64) {
        let layer = |z: f64| {
            ((z - self.origin_mm[2]) / self.size_mm - 0.5 - HAIR)
                .ceil()
                .max(0.0) as usize
        };
        let (from, to) = (layer(from_mm), layer(to_mm).min(self.count[2]));
        let stride = self.strides()[2];
        for k in from..to {
            self.volume_mm3[column + stride * k] = self.size_mm.powi(3);
        }
    }

    /// Where the upright line through the middle of each column meets the surface.
    fn crossings(&self, mesh: &Mesh) -> Vec<Crossing> {
        // Lines through exact middles would run along edges of parts drawn on round numbers.
        let aside = [self.size_mm * 1.618e-5, self.size_mm * 1.202e-5];
        let start = [0, 1].map(|axis| self.origin_mm[axis] + 0.5 * self.size_mm + aside[axis]);
        let mut found = Vec::new();
        for triangle in &mesh.triangles {
            let [a, b, c] = triangle.map(|point| mesh.points[point as usize]);
            let double_area = cross(a, b, c);
            if double_area == 0.0 {
                continue;
            }
            let range = |axis: usize| {
                let least = a[axis].min(b[axis]).min(c[axis]);
                let most = a[axis].max(b[axis]).max(c[axis]);
                let cell = |value: f64| (value - start[axis]) / self.size_mm;
                let last = cell(most).floor().min(self.count[axis] as f64 - 1.0);
                (cell(least).ceil().max(0.0) as i64, last as i64)
            };
            let ((i0, i1), (j0, j1)) = (range(0), range(1));
            for (i, j) in (j0..=j1).flat_map(|j| (i0..=i1).map(move |i| (i, j))) {
                let at = [
                    start[0] + i as f64 * self.size_mm,
                    start[1] + j as f64 * self.size_mm,
                    0.0,
                ];
                let share = [cross(at, b, c), cross(at, c, a), cross(at, a, b)];
                let inside = share.iter().all(|s| s * double_area > 0.0);
                if inside {
                    let height =
                        (share[0] * a[2] + share[1] * b[2] + share[2] * c[2]) / double_area;
                    let column = i as usize + self.count[0] * j as usize;
                    // A facet that looks down is where an upright line enters the metal.
                    let enters = if double_area < 0.0 { 1 } else { -1 };
                    found.push(Crossing {
                        column,
                        height,
                        enters,
                    });
                }
            }
        }
        found
    }

    fn lay_surface(&mut self, mesh: &Mesh) {
        let (mut laid, mut lost) = (0.0, 0.0);
        for triangle in &mesh.triangles {
            let corners = triangle.map(|point| mesh.points[point as usize]);
            for_each_sample(corners, self.size_mm / 2.0, |point, normal, area| {
                laid += area;
                if !self.lay_sample(point, normal, area) {
                    lost += area;
                }
            });
        }
        let least = 0.05 * self.size_mm.powi(3);
        for volume in self.volume_mm3.iter_mut().filter(|volume| **volume != 0.0) {
            *volume = volume.max(least);
        }
        self.unresolved = if laid > 0.0 { lost / laid } else { 0.0 };
    }

    /// Gives a piece of surface, and the metal between it and the staircase, to the cell under it.
    fn lay_sample(&mut self, point: [f64; 3], normal: [f64; 3], area: f64) -> bool {
        let axis = (0..3)
            .max_by(|a, b| normal[*a].abs().total_cmp(&normal[*b].abs()))
            .unwrap_or(2);
        let outward = normal[axis].signum();
        let along = (point[axis] - self.origin_mm[axis]) / self.size_mm;
        let mut cell = self.cell_at(point);
        let nearest_face = (along + if outward > 0.0 { -1e-9 } else { 1e-9 }).round() as i64;
        for shift in [0, 1, -1, 2, -2] {
            let face = nearest_face + shift;
            let (inner, outer) = if outward > 0.0 {
                (face - 1, face)
            } else {
                (face, face - 1)
            };
            if inner < 0 || outer < 0 || inner.max(outer) >= self.count[axis] as i64 {
                continue;
            }
            cell[axis] = outer as usize;
            let empty = self.volume_mm3[self.index(cell)] == 0.0;
            cell[axis] = inner as usize;
            let index = self.index(cell);
            if empty && self.volume_mm3[index] != 0.0 {
                let gap = (along - face as f64) * outward * self.size_mm;
                self.area_mm2[index] += area;
                self.volume_mm3[index] += gap * area * normal[axis].abs();
                return true;
            }
        }
        self.lay_beside(point, normal, area, axis)
    }

    /// A sample beside an edge stands over an empty column: the nearest cell of metal takes it.
    fn lay_beside(&mut self, point: [f64; 3], normal: [f64; 3], area: f64, axis: usize) -> bool {
        let near = self.cell_at([0, 1, 2].map(|a| point[a] - 0.5 * self.size_mm * normal[a]));
        let mut best: Option<(f64, usize)> = None;
        for place in 0..27 {
            let step = [place % 3, place / 3 % 3, place / 9];
            let cell = [0, 1, 2].map(|a| (near[a] + step[a]).saturating_sub(1));
            if (0..3).any(|a| cell[a] >= self.count[a]) {
                continue;
            }
            let index = self.index(cell);
            let middle = self.middle_mm(index);
            let away: f64 = (0..3).map(|a| (point[a] - middle[a]).powi(2)).sum();
            if self.volume_mm3[index] != 0.0 && best.is_none_or(|(least, _)| away < least) {
                best = Some((away, index));
            }
        }
        let Some((_, index)) = best else { return false };
        let beyond = (point[axis] - self.middle_mm(index)[axis]) * normal[axis].signum();
        self.area_mm2[index] += area;
        self.volume_mm3[index] += (beyond - 0.5 * self.size_mm) * area * normal[axis].abs();
        true
    }

    fn cell_at(&self, point: [f64; 3]) -> [usize; 3] {
        [0, 1, 2].map(|axis| {
            let along = ((point[axis] - self.origin_mm[axis]) / self.size_mm).floor();
            along.clamp(0.0, self.count[axis] as f64 - 1.0) as usize
        })
    }
}

/// Where an upright line meets the surface.
struct Crossing {
    column: usize,
    height: f64,
    enters: i32,
}

/// Twice the area of a triangle seen from above, positive when it looks up.
fn cross(a: [f64; 3], b: [f64; 3], c: [f64; 3]) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

fn bounds(mesh: &Mesh) -> ([f64; 3], [f64; 3]) {
    let ends = ([f64::INFINITY; 3], [f64::NEG_INFINITY; 3]);
    mesh.points.iter().fold(ends, |(low, high), point| {
        (
            [0, 1, 2].map(|a| low[a].min(point[a])),
            [0, 1, 2].map(|a| high[a].max(point[a])),
        )
    })
}

/// Calls with points spread evenly over a triangle, its normal, and the area each stands for. The
/// triangle is cut into strips along its longest side, so that a needle costs what its area costs.
pub fn for_each_sample(
    corners: [[f64; 3]; 3],
    spacing: f64,
    mut lay: impl FnMut([f64; 3], [f64; 3], f64),
) {
    let [a, b, c] = longest_side_first(corners);
    let [ab, ac] = [less(b, a), less(c, a)];
    let normal = [
        ab[1] * ac[2] - ab[2] * ac[1],
        ab[2] * ac[0] - ab[0] * ac[2],
        ab[0] * ac[1] - ab[1] * ac[0],
    ];
    let (double_area, longest) = (length(normal), length(ab));
    if double_area == 0.0 || !double_area.is_finite() {
        return;
    }
    let normal = normal.map(|n| n / double_area);
    let strips = pieces(double_area / longest / spacing);
    for strip in 0..strips {
        let (from, to) = (
            strip as f64 / strips as f64,
            (strip + 1) as f64 / strips as f64,
        );
        let v = (from + to) / 2.0;
        let along = pieces(longest * (1.0 - v) / spacing);
        let area = double_area * (1.0 - v) * (to - from) / along as f64;
        for piece in 0..along {
            let u = (1.0 - v) * (piece as f64 + 0.5) / along as f64;
            lay(
                [0, 1, 2].map(|axis| a[axis] + u * ab[axis] + v * ac[axis]),
                normal,
                area,
            );
        }
    }
}

/// Most pieces a side is cut into: a wall of 2,000 cells is longer than any box of cells.
const MOST_PIECES: f64 = 4_000.0;

fn pieces(wanted: f64) -> usize {
    wanted.ceil().clamp(1.0, MOST_PIECES) as usize
}

fn longest_side_first([a, b, c]: [[f64; 3]; 3]) -> [[f64; 3]; 3] {
    let (ab, bc, ca) = (length(less(b, a)), length(less(c, b)), length(less(a, c)));
    if ab >= bc && ab >= ca {
        [a, b, c]
    } else if bc >= ca {
        [b, c, a]
    } else {
        [c, a, b]
    }
}

fn less(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [0, 1, 2].map(|axis| a[axis] - b[axis])
}

fn length(v: [f64; 3]) -> f64 {
    v.iter().map(|x| x * x).sum::<f64>().sqrt()
}
