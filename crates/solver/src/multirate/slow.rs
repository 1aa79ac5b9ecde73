//! The cells that go in one step: rows of one material at a sweep, the rest one by one.
//!
//! A row sleeps as long as it and all cells beside it have the very temperature they started with:
//! nothing can pass there. A row in which a temperature has changed wakes the rows beside it, and
//! nothing goes back to sleep.

mod aside;
mod mixed;
mod rows;

use std::ops::Range;

use pulp::Simd;

use crate::case::Case;
use crate::link::Outer;
use crate::multirate::fetch::Fetch;
use crate::multirate::padded::{LEAD, Padded};
use crate::multirate::quick::fill_one;
use crate::multirate::ramps::Table;
use crate::multirate::slow::aside::{Aside, Place};
use crate::multirate::slow::mixed::{Mixed, Way};
use crate::multirate::slow::rows::{RowWeights, Rows, changing_row, plain_row, steady_row};
use crate::multirate::split::Kind;

pub use aside::Borders;

/// Cells in a row that have only their own material beside them.
#[derive(Debug, Clone, Copy)]
struct Segment {
    at: u32,
    len: u32,
    place: [u32; 3],
    material: u8,
    stirred: bool,
}

/// Rows by which a sweep asks ahead for the row in the plane above.
const AHEAD: usize = 2;

/// Rows are swept belt by belt, each belt through all planes, so that two planes and what is kept
/// aside stay in the cache next to a core: a quarter of the megabyte that such caches have. Of
/// wider belts rows are read from far away again, of narrower ones more is kept for the next.
const BELT_BYTES: usize = 1 << 18;

impl Segment {
    #[inline(always)]
    fn place(&self) -> [usize; 3] {
        let [x, y, z] = self.place;
        [x as usize, y as usize, z as usize]
    }
}

/// The segments of a row.
#[derive(Debug, Clone)]
struct RowOf {
    place: Place,
    segments: Range<u32>,
}

impl RowOf {
    #[inline(always)]
    fn segments(&self) -> Range<usize> {
        self.segments.start as usize..self.segments.end as usize
    }
}

/// The slow cells of some planes.
pub struct Slow {
    segments: Vec<Segment>,
    /// Rows that have segments, belt by belt.
    rows: Vec<RowOf>,
    mixed: Vec<Mixed>,
    ways: Vec<Way>,
    outers: Vec<Outer>,
    aside: Aside,
    /// First cell of the planes.
    origin: usize,
    /// Heat that came in through faces so far, J.
    pub through_j: f64,
    /// Whether a row has stirred since the rows beside it were last woken.
    stirred: bool,
}

/// What a step of the slow cells needs beside temperatures.
pub struct Step<'all> {
    /// Tables of the materials.
    pub tables: &'all [Table],
    /// Weights of faces, per axis low and high.
    pub weights: &'all [[Vec<f32>; 2]; 3],
    /// The box with its rim.
    pub padded: &'all Padded,
    /// Conductivities; none where no slow cell changes its own.
    pub w_mk: &'all [f32],
    /// Which rows of the box are awake, with a rim.
    pub awake: &'all [bool],
    /// Length of the step, s.
    pub step_s: f64,
}

impl Slow {
    /// The slow cells of planes z.
    pub fn of(case: &Case, kinds: &[Kind], padded: &Padded, z: Range<usize>) -> Slow {
        let belt = BELT_BYTES / (3 * size_of::<f32>() * padded.row);
        let mut slow = Slow {
            aside: Aside::of(padded, z.start, z.len(), belt),
            segments: Vec::new(),
            rows: Vec::new(),
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
        slow.segments.sort_by_key(|segment| {
            let [x, y, z] = segment.place();
            (slow.aside.belt_of(y), z, y, x)
        });
        slow.part_rows(padded);
        slow
    }

    /// Parts the segments by the rows that they stand in.
    fn part_rows(&mut self, padded: &Padded) {
        let mut from = 0;
        let row_of = |segment: &Segment| row_of(segment, padded);
        for segments in self
            .segments
            .chunk_by(|one, other| row_of(one) == row_of(other))
        {
            let [_, y, z] = segments[0].place();
            let end = from + segments.len() as u32;
            self.rows.push(RowOf {
                place: self.aside.place([y, z]),
                segments: from..end,
            });
            from = end;
        }
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

    /// One step, in place: `celsius`, and `heat` of those whose table is not plain, are those of
    /// the planes.
    #[inline(always)]
    pub fn step<S: Simd>(
        &mut self,
        simd: S,
        step: &Step,
        borders: &Borders,
        (heat, celsius): (&mut [f32], &mut [f32]),
    ) {
        let across: Vec<_> = (step.tables.iter())
            .map(|table| RowWeights::of(table, step))
            .collect();
        let fetch = Fetch::new();
        self.aside.begin();
        for number in 0..self.rows.len() {
            let next = self.rows.get(number + AHEAD).map(|row| row.place);
            if let Some(next) = next.filter(|next| step.awake[next.number()]) {
                fetch.ahead(self.aside.above(next, celsius));
            }
            let row = &self.rows[number];
            if !step.awake[row.place.number()] {
                continue;
            }
            let (before, after) = self.aside.take(simd, row.place, borders, celsius);
            for segment in &mut self.segments[row.segments()] {
                let len = segment.len as usize;
                let after = &mut after[LEAD + segment.place[0] as usize..][..len];
                let rows = Rows::within(&before, segment);
                let weights = &across[usize::from(segment.material)];
                let heat = heat.get_mut(segment.at as usize - self.origin..);
                let heat = heat.unwrap_or_default();
                step_segment(simd, step, (segment, weights), &rows, (heat, after));
                if !segment.stirred {
                    segment.stirred = rows.own != after;
                    self.stirred |= segment.stirred;
                }
            }
        }
        self.step_mixed(step, heat, celsius);
    }
}

/// A step of a segment; `heat`, from where it begins, is that of those whose table is not plain.
#[inline(always)]
fn step_segment<S: Simd>(
    simd: S,
    step: &Step,
    (segment, weights): (&Segment, &RowWeights),
    rows: &Rows,
    (heat, after): (&mut [f32], &mut [f32]),
) {
    let table = &step.tables[usize::from(segment.material)];
    if table.plain_j_m3k.is_some() {
        plain_row(simd, step, (segment, weights), rows, after);
        return;
    }
    let heat = &mut heat[..after.len()];
    match table.steady_w_mk {
        Some(_) => steady_row(simd, step, (segment, weights), rows, heat),
        None => changing_row(simd, step, segment, rows, heat),
    }
    fill_one(simd, &table.celsius, heat, after);
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
