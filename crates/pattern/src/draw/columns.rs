//! A part in the draw cut into upright columns: where each one runs through metal.
//!
//! A column is a line, met exactly by the facets; only where the lines stand is a choice. They are
//! put off the middle of their square, each row and each file differently, so that a wall along the
//! rows is not taken for half a square thicker than it is: over many rows the error evens out.

use rayon::prelude::*;

use crate::mesh::Mesh;
use crate::rays::{hit, offset};

/// Upright lines over a rectangle, and the metal along each.
#[derive(Clone, Debug)]
pub struct Columns {
    /// Side of the square that a column stands for, mm.
    pub size_mm: f64,
    /// Columns along x and along y; column `[i, j]` stands at `i + nx j`.
    pub count: [usize; 2],
    /// Corner of the first square, mm.
    pub origin_mm: [f64; 2],
    is_staggered: bool,
    starts: Vec<u32>,
    spans: Vec<Span>,
}

/// A stretch of metal along a column.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Where the metal begins, mm.
    pub from_mm: f64,
    /// Where it ends, mm.
    pub to_mm: f64,
    /// The facet under it, which looks down.
    pub under: u32,
    /// The facet on top of it, which looks up.
    pub over: u32,
}

/// Where columns are to stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plot {
    /// Corner of the first square, mm.
    pub origin_mm: [f64; 2],
    /// Side of a square, mm.
    pub size_mm: f64,
    /// Squares along x and along y.
    pub count: [usize; 2],
}

impl Plot {
    /// Squares of a size over the rectangle between two corners, with one square to spare around.
    pub fn over(low: [f64; 2], high: [f64; 2], size_mm: f64) -> Plot {
        let squares = |axis: usize| ((high[axis] - low[axis]) / size_mm).ceil().max(1.0) as usize;
        let count = [squares(0) + 2, squares(1) + 2];
        let corner = |axis: usize| (low[axis] + high[axis] - count[axis] as f64 * size_mm) / 2.0;
        Plot {
            origin_mm: [corner(0), corner(1)],
            size_mm,
            count,
        }
    }

    /// So many squares along the longer side of a part in the draw.
    pub fn of_part(turned: &Mesh, columns: usize) -> Plot {
        let [low, high] = turned.bounds();
        let longer = (high[0] - low[0]).max(high[1] - low[1]);
        let size_mm = longer.max(f64::MIN_POSITIVE) / columns.max(1) as f64;
        Plot::over([low[0], low[1]], [high[0], high[1]], size_mm)
    }
}

impl Columns {
    /// Columns through a closed mesh, each row and file put aside differently.
    pub fn staggered(turned: &Mesh, plot: Plot) -> Columns {
        Columns::cast(turned, plot, true)
    }

    /// Columns through a closed mesh that stand in the middle of their squares.
    pub fn regular(turned: &Mesh, plot: Plot) -> Columns {
        Columns::cast(turned, plot, false)
    }

    /// Number of columns.
    pub fn len(&self) -> usize {
        self.count[0] * self.count[1]
    }

    /// Whether there is no column.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// Where a column stands, mm.
    pub fn place_mm(&self, column: usize) -> [f64; 2] {
        place(
            self.plot(),
            self.is_staggered,
            column % self.count[0],
            column / self.count[0],
        )
    }

    /// The metal along a column, from below.
    pub fn spans(&self, column: usize) -> &[Span] {
        &self.spans[self.starts[column] as usize..self.starts[column + 1] as usize]
    }

    /// The column whose square holds a place, if there is one.
    pub fn at(&self, place_mm: [f64; 2]) -> Option<usize> {
        let along = |axis: usize| (place_mm[axis] - self.origin_mm[axis]) / self.size_mm;
        let (i, j) = (along(0).floor(), along(1).floor());
        let inside = i >= 0.0 && j >= 0.0 && i < self.count[0] as f64 && j < self.count[1] as f64;
        inside.then(|| i as usize + self.count[0] * j as usize)
    }

    /// The columns in the squares beside this one; fewer at the border.
    pub fn beside(&self, column: usize) -> impl Iterator<Item = usize> + use<> {
        let [nx, ny] = self.count;
        let (i, j) = (column % nx, column / nx);
        let sides = [
            (i > 0).then(|| column - 1),
            (i + 1 < nx).then(|| column + 1),
            (j > 0).then(|| column - nx),
            (j + 1 < ny).then(|| column + nx),
        ];
        sides.into_iter().flatten()
    }

    /// Where the columns stand.
    pub fn plot(&self) -> Plot {
        Plot {
            origin_mm: self.origin_mm,
            size_mm: self.size_mm,
            count: self.count,
        }
    }

    fn cast(turned: &Mesh, plot: Plot, is_staggered: bool) -> Columns {
        let crossings = crossings(turned, plot, is_staggered);
        let columns = plot.count[0] * plot.count[1];
        let mut starts = Vec::with_capacity(columns + 1);
        let mut spans = Vec::with_capacity(crossings.len() / 2);
        let mut rest = crossings.as_slice();
        for column in 0..columns as u32 {
            starts.push(spans.len() as u32);
            let here = rest.partition_point(|crossing| crossing.column == column);
            add_spans(&rest[..here], &mut spans);
            rest = &rest[here..];
        }
        starts.push(spans.len() as u32);
        Columns {
            size_mm: plot.size_mm,
            count: plot.count,
            origin_mm: plot.origin_mm,
            is_staggered,
            starts,
            spans,
        }
    }
}

/// Where a column meets a facet.
#[derive(Clone, Copy)]
struct Crossing {
    column: u32,
    at_mm: f64,
    facet: u32,
    step: i32,
}

/// Facets worked through at a time.
const PORTION: usize = 4096;

/// All crossings, column by column and from below.
fn crossings(turned: &Mesh, plot: Plot, is_staggered: bool) -> Vec<Crossing> {
    let facets = turned.triangles.len();
    let portions: Vec<Vec<Crossing>> = (0..facets.div_ceil(PORTION))
        .into_par_iter()
        .map(|portion| {
            let mut found = Vec::new();
            for facet in portion * PORTION..((portion + 1) * PORTION).min(facets) {
                cross_facet(turned, plot, is_staggered, facet as u32, &mut found);
            }
            found
        })
        .collect();
    let mut all = portions.concat();
    all.par_sort_unstable_by(|a, b| {
        let order = (a.column).cmp(&b.column).then(a.at_mm.total_cmp(&b.at_mm));
        order.then(a.facet.cmp(&b.facet))
    });
    all
}

fn cross_facet(
    turned: &Mesh,
    plot: Plot,
    is_staggered: bool,
    facet: u32,
    found: &mut Vec<Crossing>,
) {
    let [a, b, c] = turned.corners(facet as usize);
    let squares = |axis: usize| {
        let square = |value: f64| (value - plot.origin_mm[axis]) / plot.size_mm;
        let first = square(a[axis].min(b[axis]).min(c[axis])).floor().max(0.0);
        let last = square(a[axis].max(b[axis]).max(c[axis])).floor();
        first as usize..(last.min(plot.count[axis] as f64 - 1.0) + 1.0).max(0.0) as usize
    };
    for j in squares(1) {
        for i in squares(0) {
            let through = place(plot, is_staggered, i, j);
            if let Some(met) = hit(turned, facet, 2, through) {
                found.push(Crossing {
                    column: (i + plot.count[0] * j) as u32,
                    at_mm: met.at,
                    facet,
                    step: met.step,
                });
            }
        }
    }
}

fn place(plot: Plot, is_staggered: bool, i: usize, j: usize) -> [f64; 2] {
    let aside = match is_staggered {
        true => [
            offset(j, 0.618_033_988_749_895),
            offset(i, 0.414_213_562_373_095),
        ],
        false => [0.5, 0.5],
    };
    let along = [i as f64 + aside[0], j as f64 + aside[1]];
    [0, 1].map(|axis| plot.origin_mm[axis] + along[axis] * plot.size_mm)
}

/// The stretches of one column that lie within one body or more. A line that does not come out of
/// the solid it went into ran along an edge; it is left out.
fn add_spans(crossings: &[Crossing], spans: &mut Vec<Span>) {
    if crossings.iter().map(|crossing| crossing.step).sum::<i32>() != 0 {
        return;
    }
    let mut depth = 0;
    let mut entered = None;
    for crossing in crossings {
        let before = depth;
        depth += crossing.step;
        if before <= 0 && depth > 0 {
            entered = Some(crossing);
        }
        if let (true, Some(from)) = (before > 0 && depth <= 0, entered) {
            spans.push(Span {
                from_mm: from.at_mm,
                to_mm: crossing.at_mm,
                under: from.facet,
                over: crossing.facet,
            });
        }
    }
}
