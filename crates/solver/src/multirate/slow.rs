//! The cells that go in one step: rows of one material at a sweep, the rest one by one.
//!
//! A row sleeps as long as it and all cells beside it have the very temperature they started with:
//! nothing can pass there. A row in which a temperature has changed wakes the rows beside it, and
//! nothing goes back to sleep.

mod rows;

use std::ops::Range;

use pulp::Simd;

use crate::case::Case;
use crate::link::{Link, Outer, SIDES, Side, side};
use crate::multirate::fetch::Fetch;
use crate::multirate::padded::Padded;
use crate::multirate::quick::{Given, fill_one};
use crate::multirate::ramps::Table;
use crate::multirate::slow::rows::{RowWeights, Rows, changing_row, plain_row, steady_row};
use crate::multirate::split::Kind;

/// Cells in a row that have only their own material beside them.
#[derive(Debug, Clone, Copy)]
struct Segment {
    at: u32,
    len: u32,
    place: [u32; 3],
    material: u8,
    stirred: bool,
}

/// Rows by which a sweep asks ahead: for the row in the plane above, and for the one it writes.
const AHEAD: usize = 2;

/// Rows are swept belt by belt, each belt through all planes, so that the three planes that are
/// read and the one that is written stay in the cache next to a core: a quarter of the megabyte
/// that such caches have. Wider belts are read from far away three times, narrower ones overlap.
const BELT_BYTES: usize = 1 << 18;

impl Segment {
    #[inline(always)]
    fn place(&self) -> [usize; 3] {
        let [x, y, z] = self.place;
        [x as usize, y as usize, z as usize]
    }
}

/// A cell with something else beside it.
#[derive(Debug, Clone)]
struct Mixed {
    at: u32,
    material: u8,
    volume_m3: f64,
    ways: Range<usize>,
    outers: Range<usize>,
}

/// The way to a neighbour of such a cell.
#[derive(Debug, Clone, Copy)]
struct Way {
    there: u32,
    material: u8,
    link: Link,
}

/// The slow cells of some planes.
pub struct Slow {
    segments: Vec<Segment>,
    mixed: Vec<Mixed>,
    ways: Vec<Way>,
    outers: Vec<Outer>,
    /// First cell of the planes.
    origin: usize,
    /// Heat that came in through faces so far, J.
    pub through_j: f64,
    /// Whether a row has stirred since the rows beside it were last woken.
    stirred: bool,
}

/// What a step of the slow cells needs beside its own planes.
pub struct Before<'all> {
    /// What stands at its start; conductivities may be left out where no slow cell changes its own.
    pub given: Given<'all>,
    /// Which rows of the box are awake, with a rim.
    pub awake: &'all [bool],
    /// Length of the step, s.
    pub step_s: f64,
}

impl Slow {
    /// The slow cells of planes z.
    pub fn of(case: &Case, kinds: &[Kind], padded: &Padded, z: Range<usize>) -> Slow {
        let mut slow = Slow {
            segments: Vec::new(),
            mixed: Vec::new(),
            ways: Vec::new(),
            outers: Vec::new(),
            origin: padded.plane_at(z.start),
            through_j: 0.0,
            stirred: true,
        };
        let [along, rows, _] = case.grid.counts();
        for z in z {
            for y in 0..rows {
                let row = (z * rows + y) * along;
                let mut x = 0;
                while x < along {
                    let own = (kinds[row + x], case.cells[row + x]);
                    let like = |at: &usize| (kinds[row + at], case.cells[row + at]) == own;
                    let len = (x..along).take_while(like).count();
                    match own.0 {
                        Kind::Even => slow.segments.push(Segment {
                            at: padded.at([x, y, z]) as u32,
                            len: len as u32,
                            place: [x, y, z].map(|at| at as u32),
                            material: own.1,
                            stirred: false,
                        }),
                        Kind::Mixed => {
                            (x..x + len).for_each(|x| slow.add_mixed(case, padded, [x, y, z]));
                        }
                        Kind::Void | Kind::Quick => {}
                    }
                    x += len;
                }
            }
        }
        let belt = (BELT_BYTES / (4 * size_of::<f32>() * padded.row)).max(1) as u32;
        slow.segments.sort_by_key(|segment| {
            let [x, y, z] = segment.place;
            (y / belt, z, y, x)
        });
        slow
    }

    /// Wakes rows whose own cells, or those beside them, differ from each other.
    pub fn wake_uneven(&self, padded: &Padded, celsius: &[f32], awake: &mut [bool]) {
        for segment in &self.segments {
            let len = segment.len as usize;
            let rows = Rows::of(celsius, padded, segment.at as usize, len);
            let first = rows.own[0];
            let same = |row: &[f32]| row.iter().all(|&celsius| celsius == first);
            let [x, y, z] = segment.place();
            let [along, across, planes] = padded.counts;
            let [left, right, front, back, below, above] = rows.sides;
            let even = same(rows.own)
                && (x == 0 || left[0] == first)
                && (x + len == along || right[len - 1] == first)
                && (y == 0 || same(front))
                && (y + 1 == across || same(back))
                && (z == 0 || same(below))
                && (z + 1 == planes || same(above));
            awake[row_of(segment, padded)] |= !even;
        }
        for mixed in &self.mixed {
            wake_around(mixed.at as usize / padded.row, padded, awake);
        }
    }

    /// Wakes the rows beside those that have stirred.
    pub fn wake(&mut self, padded: &Padded, awake: &mut [bool]) {
        if std::mem::take(&mut self.stirred) {
            for segment in self.segments.iter().filter(|segment| segment.stirred) {
                wake_around(row_of(segment, padded), padded, awake);
            }
        }
    }

    /// Conductivities where they change and the row is awake; `heat` and `w_mk` are those of the
    /// planes.
    #[inline(always)]
    pub fn refresh<S: Simd>(
        &self,
        simd: S,
        (tables, padded): (&[Table], &Padded),
        awake: &[bool],
        heat: &[f32],
        w_mk: &mut [f32],
    ) {
        for segment in &self.segments {
            let table = &tables[usize::from(segment.material)];
            if table.steady_w_mk.is_none() && awake[row_of(segment, padded)] {
                let at = segment.at as usize - self.origin;
                let row = at..at + segment.len as usize;
                fill_one(simd, &table.w_mk, &heat[row.clone()], &mut w_mk[row]);
            }
        }
        for mixed in &self.mixed {
            let table = &tables[usize::from(mixed.material)];
            if table.steady_w_mk.is_none() {
                let at = mixed.at as usize - self.origin;
                w_mk[at] = table.w_mk.at(heat[at]);
            }
        }
    }

    /// One step: temperatures after it into `celsius`; `heat` of those whose table is not plain.
    /// Both are those of the planes.
    #[inline(always)]
    pub fn step<S: Simd>(
        &mut self,
        simd: S,
        before: &Before,
        heat: &mut [f32],
        celsius: &mut [f32],
    ) {
        let Given { tables, padded, .. } = before.given;
        let across: Vec<_> = (tables.iter())
            .map(|table| RowWeights::of(table, before))
            .collect();
        let fetch = Fetch::new();
        for number in 0..self.segments.len() {
            if let Some(next) = self.segments.get(number + AHEAD) {
                let (at, len) = (next.at as usize, next.len as usize);
                let above = at + padded.plane;
                fetch.ahead(&before.given.celsius[above..above + len]);
                let here = at - self.origin;
                fetch.ahead(&celsius[here..here + len]);
            }
            let segment = &mut self.segments[number];
            if !before.awake[row_of(segment, padded)] {
                continue;
            }
            let table = &tables[usize::from(segment.material)];
            let at = segment.at as usize - self.origin;
            let row = at..at + segment.len as usize;
            let weights = &across[usize::from(segment.material)];
            if table.plain_j_m3k.is_some() {
                plain_row(simd, before, segment, weights, &mut celsius[row.clone()]);
            } else {
                let heat = &mut heat[row.clone()];
                match table.steady_w_mk {
                    Some(_) => steady_row(simd, before, segment, weights, heat),
                    None => changing_row(simd, before, segment, heat),
                }
                fill_one(simd, &table.celsius, heat, &mut celsius[row.clone()]);
            }
            if !segment.stirred {
                let own = &before.given.celsius[segment.at as usize..][..segment.len as usize];
                segment.stirred = own != &celsius[row];
                self.stirred |= segment.stirred;
            }
        }
        self.step_mixed(before, heat, celsius);
    }

    fn step_mixed(&mut self, before: &Before, heat: &mut [f32], celsius: &mut [f32]) {
        let Given {
            tables,
            celsius: before_c,
            w_mk,
            ..
        } = before.given;
        for mixed in &self.mixed {
            let at = mixed.at as usize;
            let table = &tables[usize::from(mixed.material)];
            let own_c = f64::from(before_c[at]);
            let w_mk_at = |steady: Option<f32>, at: usize| match steady {
                Some(steady) => f64::from(steady),
                None => f64::from(w_mk[at]),
            };
            let own_w_mk = w_mk_at(table.steady_w_mk, at);
            let mut watts = 0.0;
            for way in &self.ways[mixed.ways.clone()] {
                let other = way.there as usize;
                let steady = tables[usize::from(way.material)].steady_w_mk;
                let w_k = way.link.w_k(own_w_mk, w_mk_at(steady, other));
                watts += w_k * (f64::from(before_c[other]) - own_c);
            }
            for outer in &self.outers[mixed.outers.clone()] {
                let inflow = outer.inflow(own_c, own_w_mk);
                let through = inflow.w + inflow.w_k * (inflow.outside_c - own_c);
                self.through_j += before.step_s * through;
                watts += through;
            }
            let gained = before.step_s * watts / mixed.volume_m3;
            let here = at - self.origin;
            match table.plain_j_m3k {
                Some(j_m3k) => celsius[here] = (own_c + gained / f64::from(j_m3k)) as f32,
                None => {
                    heat[here] = (f64::from(heat[here]) + gained) as f32;
                    celsius[here] = table.celsius.at(heat[here]);
                }
            }
        }
    }

    fn add_mixed(&mut self, case: &Case, padded: &Padded, place: [usize; 3]) {
        let cell = case.grid.index(place);
        let (ways, outers) = (self.ways.len(), self.outers.len());
        for (axis, high) in SIDES {
            match side(case, place, axis, high) {
                Side::Next(other, link) => self.ways.push(Way {
                    there: padded.at(case.grid.place(other)) as u32,
                    material: case.cells[other],
                    link,
                }),
                Side::Out(outer) => self.outers.push(outer),
                Side::Closed => {}
            }
        }
        self.mixed.push(Mixed {
            at: padded.at(place) as u32,
            material: case.cells[cell],
            volume_m3: case.volume(cell),
            ways: ways..self.ways.len(),
            outers: outers..self.outers.len(),
        });
    }
}

/// Where the row of a segment stands among all rows.
#[inline(always)]
fn row_of(segment: &Segment, padded: &Padded) -> usize {
    segment.at as usize / padded.row
}

/// Wakes a row and the four beside it.
pub fn wake_around(row: usize, padded: &Padded, awake: &mut [bool]) {
    let plane = padded.plane / padded.row;
    for row in [row, row - 1, row + 1, row - plane, row + plane] {
        awake[row] = true;
    }
}
