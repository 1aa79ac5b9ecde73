//! The cells that go in one step: rows of one material at a sweep, the rest one by one.
//!
//! A row sleeps as long as it and all cells beside it have the very temperature they started with:
//! nothing can pass there. A row in which a temperature has changed wakes the rows beside it, and
//! nothing goes back to sleep.

use std::ops::Range;

use crate::case::Case;
use crate::link::{Link, Outer, SIDES, Side, side};
use crate::multirate::padded::Padded;
use crate::multirate::ramps::Table;
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

/// A cell with something else beside it.
#[derive(Debug, Clone)]
struct Mixed {
    at: u32,
    material: u8,
    volume_m3: f64,
    links: Range<usize>,
    outers: Range<usize>,
}

/// The slow cells of some planes.
pub struct Slow {
    segments: Vec<Segment>,
    mixed: Vec<Mixed>,
    links: Vec<(u32, Link)>,
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
    /// Temperatures at the start of the step.
    pub celsius: &'all [f32],
    /// Conductivities at the start of the step.
    pub w_mk: &'all [f32],
    /// Tables of the materials.
    pub tables: &'all [Table],
    /// Weights of faces, per axis low and high.
    pub weights: &'all [[Vec<f32>; 2]; 3],
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
            links: Vec::new(),
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
        slow
    }

    /// Wakes rows whose own cells, or those beside them, differ from each other.
    pub fn wake_uneven(&self, padded: &Padded, celsius: &[f32], awake: &mut [bool]) {
        for segment in &self.segments {
            let len = segment.len as usize;
            let rows = Rows::of(celsius, padded, segment.at as usize, len);
            let first = rows.own[0];
            let same = |row: &[f32]| row.iter().all(|&celsius| celsius == first);
            let [x, y, z] = segment.place.map(|at| at as usize);
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
    pub fn refresh(
        &self,
        tables: &[Table],
        padded: &Padded,
        awake: &[bool],
        heat: &[f32],
        w_mk: &mut [f32],
    ) {
        for segment in &self.segments {
            let table = &tables[usize::from(segment.material)];
            if table.steady_w_mk.is_none() && awake[row_of(segment, padded)] {
                let at = segment.at as usize - self.origin;
                let row = at..at + segment.len as usize;
                table.w_mk.fill(&heat[row.clone()], &mut w_mk[row]);
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
    pub fn step(
        &mut self,
        before: &Before,
        padded: &Padded,
        heat: &mut [f32],
        celsius: &mut [f32],
    ) {
        let across: Vec<_> = before
            .tables
            .iter()
            .map(|table| RowWeights::of(table, before))
            .collect();
        for segment in &mut self.segments {
            if !before.awake[row_of(segment, padded)] {
                continue;
            }
            let table = &before.tables[usize::from(segment.material)];
            let at = segment.at as usize - self.origin;
            let row = at..at + segment.len as usize;
            let weights = &across[usize::from(segment.material)];
            match table.plain_j_m3k {
                Some(_) => plain_row(before, padded, segment, weights, &mut celsius[row.clone()]),
                None => {
                    let heat = &mut heat[row.clone()];
                    changing_row(before, padded, segment, heat);
                    table.celsius.fill(heat, &mut celsius[row.clone()]);
                }
            }
            if !segment.stirred {
                let own = &before.celsius[segment.at as usize..][..segment.len as usize];
                segment.stirred = own != &celsius[row];
                self.stirred |= segment.stirred;
            }
        }
        self.step_mixed(before, heat, celsius);
    }

    fn step_mixed(&mut self, before: &Before, heat: &mut [f32], celsius: &mut [f32]) {
        for mixed in &self.mixed {
            let at = mixed.at as usize;
            let (own_c, own_w_mk) = (f64::from(before.celsius[at]), f64::from(before.w_mk[at]));
            let mut watts = 0.0;
            for &(other, link) in &self.links[mixed.links.clone()] {
                let other = other as usize;
                let w_k = link.w_k(own_w_mk, f64::from(before.w_mk[other]));
                watts += w_k * (f64::from(before.celsius[other]) - own_c);
            }
            for outer in &self.outers[mixed.outers.clone()] {
                let inflow = outer.inflow(own_c, own_w_mk);
                let through = inflow.w + inflow.w_k * (inflow.outside_c - own_c);
                self.through_j += before.step_s * through;
                watts += through;
            }
            let gained = before.step_s * watts / mixed.volume_m3;
            let table = &before.tables[usize::from(mixed.material)];
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
        let (links, outers) = (self.links.len(), self.outers.len());
        for (axis, high) in SIDES {
            match side(case, place, axis, high) {
                Side::Next(other, link) => {
                    self.links
                        .push((padded.at(case.grid.place(other)) as u32, link));
                }
                Side::Out(outer) => self.outers.push(outer),
                Side::Closed => {}
            }
        }
        self.mixed.push(Mixed {
            at: padded.at(place) as u32,
            material: case.cells[cell],
            volume_m3: case.volume(cell),
            links: links..self.links.len(),
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

/// Step, weights along the row and what a plain material makes of them.
struct RowWeights {
    low: Vec<f32>,
    high: Vec<f32>,
    factor: f32,
}

impl RowWeights {
    fn of(table: &Table, before: &Before) -> RowWeights {
        let [low, high] = &before.weights[0];
        let (Some(j_m3k), Some(w_mk)) = (table.plain_j_m3k, table.steady_w_mk) else {
            return RowWeights {
                low: Vec::new(),
                high: Vec::new(),
                factor: 0.0,
            };
        };
        let factor = (before.step_s * 2.0 * f64::from(w_mk) / f64::from(j_m3k)) as f32;
        let times = |weights: &[f32]| weights.iter().map(|weight| factor * weight).collect();
        RowWeights {
            low: times(low),
            high: times(high),
            factor,
        }
    }
}

/// Seven rows of a list: a row of cells and its neighbours.
struct Rows<'all> {
    own: &'all [f32],
    sides: [&'all [f32]; 6],
}

impl<'all> Rows<'all> {
    #[inline(always)]
    fn of(all: &'all [f32], padded: &Padded, at: usize, len: usize) -> Rows<'all> {
        let row = |from: usize| &all[from..from + len];
        let Padded {
            row: next, plane, ..
        } = *padded;
        let sides = [at - 1, at + 1, at - next, at + next, at - plane, at + plane].map(row);
        Rows {
            own: row(at),
            sides,
        }
    }
}

#[inline(always)]
fn plain_row(
    before: &Before,
    padded: &Padded,
    segment: &Segment,
    across: &RowWeights,
    celsius: &mut [f32],
) {
    let len = celsius.len();
    let [x, y, z] = segment.place.map(|at| at as usize);
    let rows = Rows::of(before.celsius, padded, segment.at as usize, len);
    let [left, right, front, back, below, above] = rows.sides;
    let (low, high) = (&across.low[x..x + len], &across.high[x..x + len]);
    let weight =
        |axis: usize, high: usize, at: usize| across.factor * before.weights[axis][high][at];
    let (to_front, to_back) = (weight(1, 0, y), weight(1, 1, y));
    let (to_below, to_above) = (weight(2, 0, z), weight(2, 1, z));
    for i in 0..len {
        let own = rows.own[i];
        celsius[i] = own
            + (low[i] * (left[i] - own)
                + high[i] * (right[i] - own)
                + to_front * (front[i] - own)
                + to_back * (back[i] - own)
                + to_below * (below[i] - own)
                + to_above * (above[i] - own));
    }
}

#[inline(always)]
fn changing_row(before: &Before, padded: &Padded, segment: &Segment, heat: &mut [f32]) {
    let len = heat.len();
    let [x, y, z] = segment.place.map(|at| at as usize);
    let t = Rows::of(before.celsius, padded, segment.at as usize, len);
    let k = Rows::of(before.w_mk, padded, segment.at as usize, len);
    let [left, right, front, back, below, above] = t.sides;
    let [k_left, k_right, k_front, k_back, k_below, k_above] = k.sides;
    let [low, high] = &before.weights[0];
    let (low, high) = (&low[x..x + len], &high[x..x + len]);
    let step = before.step_s as f32;
    let (to_front, to_back) = (before.weights[1][0][y], before.weights[1][1][y]);
    let (to_below, to_above) = (before.weights[2][0][z], before.weights[2][1][z]);
    for i in 0..len {
        let (own, k) = (t.own[i], k.own[i]);
        heat[i] += step
            * (low[i] * (k + k_left[i]) * (left[i] - own)
                + high[i] * (k + k_right[i]) * (right[i] - own)
                + to_front * (k + k_front[i]) * (front[i] - own)
                + to_back * (k + k_back[i]) * (back[i] - own)
                + to_below * (k + k_below[i]) * (below[i] - own)
                + to_above * (k + k_above[i]) * (above[i] - own));
    }
}
