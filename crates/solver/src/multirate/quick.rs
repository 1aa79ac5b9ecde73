//! The cells that go in stages: runs of cells along x, packed, with six conductances each.
//!
//! Conductances, heat from slow neighbours and surroundings are taken once a step and stand still
//! during its stages. A stage reads temperatures from one list and writes them to another, so that
//! it is one pass; heat contents stand packed in two lists that change places.

use std::ops::Range;

use crate::case::Case;
use crate::freezing::Levels;
use crate::link::{Link, Outer, SIDES, Side, side};
use crate::multirate::padded::Padded;
use crate::multirate::ramps::Table;
use crate::multirate::split::Kind;

/// Quick cells in a row.
#[derive(Debug, Clone)]
struct Run {
    at: u32,
    len: u32,
    from: u32,
    place: [u32; 3],
    outer: Option<u32>,
}

/// Cells of one material within a run.
#[derive(Debug, Clone, Copy)]
pub struct Span {
    /// Where they stand with a rim.
    pub at: u32,
    /// How many.
    pub len: u32,
    /// Where they stand packed.
    pub from: u32,
    /// Their material.
    pub material: u8,
}

/// A face that is not within one material.
#[derive(Debug, Clone, Copy)]
struct Face {
    from: u32,
    side: u8,
    here: u32,
    there: u32,
    /// Its area is that of a unit volume of the cell.
    link: Link,
}

/// Surroundings of a cell.
#[derive(Debug, Clone, Copy)]
struct Around {
    from: u32,
    here: u32,
    dense: u32,
    volume_m3: f64,
    outer: Outer,
}

/// The quick cells of some planes.
pub struct Quick {
    runs: Vec<Run>,
    /// Cells of one material, in order.
    pub spans: Vec<Span>,
    faces: Vec<Face>,
    closed: Vec<(u32, u8)>,
    crossing: Vec<Face>,
    arounds: Vec<Around>,
    conductances: [Vec<f32>; 6],
    source: Vec<f32>,
    around_rate: Vec<f32>,
    around_c: Vec<f32>,
    around_m3: Vec<f32>,
    /// Heat content above the base of each material, J/m³.
    pub heat: Vec<f32>,
    older: Vec<f32>,
    /// Heat content before the step.
    pub before: Vec<f32>,
    /// Heat that came in through faces so far, J.
    pub through_j: f64,
    stage_j: f64,
    older_j: f64,
    steady_w: f64,
    origin: usize,
}

/// One stage: `y = newest + lean (newest - older) + step_s M(newest)`.
#[derive(Debug, Clone, Copy)]
pub struct Stage {
    /// Weight of the change before.
    pub lean: f32,
    /// Weight of the rate, s.
    pub step_s: f32,
}

impl Quick {
    /// The quick cells of planes z at their start.
    pub fn of(
        case: &Case,
        kinds: &[Kind],
        tables: &[Table],
        padded: &Padded,
        z: Range<usize>,
    ) -> Quick {
        let mut quick = Quick::empty(padded.plane_at(z.start));
        let [along, rows, _] = case.grid.counts();
        for z in z {
            for y in 0..rows {
                let row = (z * rows + y) * along;
                let mut x = 0;
                while x < along {
                    let is_quick = |at: &usize| kinds[row + at] == Kind::Quick;
                    let len = (x..along).take_while(is_quick).count();
                    if len > 0 {
                        quick.add_run(case, kinds, tables, padded, [x, y, z], len);
                    }
                    x += len.max(1);
                }
            }
        }
        let cells = quick.heat.len();
        quick.conductances = [0; 6].map(|_| vec![0.0; cells]);
        quick.source = vec![0.0; cells];
        quick.older = quick.heat.clone();
        quick.before = quick.heat.clone();
        quick
    }

    /// Cells.
    pub fn cells(&self) -> usize {
        self.heat.len()
    }

    /// Conductivities where they change, into the planes.
    #[inline(always)]
    pub fn refresh(&self, tables: &[Table], w_mk: &mut [f32]) {
        for span in &self.spans {
            let table = &tables[usize::from(span.material)];
            if table.steady_w_mk.is_none() {
                table.w_mk.fill(
                    &self.heat[span.packed()],
                    &mut w_mk[span.within(self.origin)],
                );
            }
        }
    }

    /// Temperatures, into the planes.
    #[inline(always)]
    pub fn temperatures(&self, tables: &[Table], celsius: &mut [f32]) {
        for span in &self.spans {
            let table = &tables[usize::from(span.material)];
            table.celsius.fill(
                &self.heat[span.packed()],
                &mut celsius[span.within(self.origin)],
            );
        }
    }

    /// Takes conductances and all that stands still during a step; gives the highest rate over all
    /// cells, 1/s, the inverse of the longest explicit step.
    #[inline(always)]
    pub fn prepare(
        &mut self,
        tables: &[Table],
        weights: &[[Vec<f32>; 2]; 3],
        padded: &Padded,
        celsius: &[f32],
        w_mk: &[f32],
    ) -> f32 {
        for run in &self.runs {
            conduct(run, weights, padded, w_mk, &mut self.conductances);
        }
        for face in &self.faces {
            let w_k = face.w_k(w_mk);
            self.conductances[usize::from(face.side)][face.from as usize] = w_k as f32;
        }
        for &(from, side) in &self.closed {
            self.conductances[usize::from(side)][from as usize] = 0.0;
        }
        self.source.fill(0.0);
        for face in &self.crossing {
            let fall =
                f64::from(celsius[face.there as usize]) - f64::from(celsius[face.here as usize]);
            self.source[face.from as usize] += (face.w_k(w_mk) * fall) as f32;
        }
        self.look_around(celsius, w_mk);
        self.before.copy_from_slice(&self.heat);
        self.stage_j = 0.0;
        self.older_j = 0.0;
        self.highest_rate(tables)
    }

    /// One stage: reads temperatures of the whole box, writes those of its planes.
    #[inline(always)]
    pub fn stage(
        &mut self,
        stage: Stage,
        tables: &[Table],
        padded: &Padded,
        celsius: &[f32],
        after: &mut [f32],
    ) {
        let mut spans = self.spans.iter().peekable();
        let mut inflow_w = self.steady_w;
        let mut heat = std::mem::take(&mut self.older);
        for run in &self.runs {
            let cells = run.packed();
            step_run(self, run, stage, padded, celsius, &mut heat[cells.clone()]);
            if let Some(dense) = run.outer {
                let row = &celsius[run.at as usize..];
                inflow_w += add_around(self, dense as usize, stage, row, &mut heat[cells.clone()]);
            }
            while let Some(span) = spans.next_if(|span| (span.from as usize) < cells.end) {
                let table = &tables[usize::from(span.material)];
                table
                    .celsius
                    .fill(&heat[span.packed()], &mut after[span.within(self.origin)]);
            }
        }
        let newest_j = self.stage_j;
        self.stage_j +=
            f64::from(stage.lean) * (newest_j - self.older_j) + f64::from(stage.step_s) * inflow_w;
        self.older_j = newest_j;
        self.older = std::mem::replace(&mut self.heat, heat);
    }

    /// Ends a step.
    pub fn settle(&mut self) {
        self.through_j += self.stage_j;
    }

    fn empty(origin: usize) -> Quick {
        Quick {
            runs: Vec::new(),
            spans: Vec::new(),
            faces: Vec::new(),
            closed: Vec::new(),
            crossing: Vec::new(),
            arounds: Vec::new(),
            conductances: [0; 6].map(|_| Vec::new()),
            source: Vec::new(),
            around_rate: Vec::new(),
            around_c: Vec::new(),
            around_m3: Vec::new(),
            heat: Vec::new(),
            older: Vec::new(),
            before: Vec::new(),
            through_j: 0.0,
            stage_j: 0.0,
            older_j: 0.0,
            steady_w: 0.0,
            origin,
        }
    }

    fn add_run(
        &mut self,
        case: &Case,
        kinds: &[Kind],
        tables: &[Table],
        padded: &Padded,
        place: [usize; 3],
        len: usize,
    ) {
        let at = padded.at(place) as u32;
        let from = self.heat.len() as u32;
        let arounds = self.arounds.len();
        for x in place[0]..place[0] + len {
            self.add_cell(case, kinds, tables, padded, [x, place[1], place[2]]);
        }
        let dense = self.around_rate.len() as u32;
        let outer = (self.arounds.len() > arounds).then_some(dense);
        if outer.is_some() {
            for around in &mut self.arounds[arounds..] {
                around.dense = dense + around.from - from;
            }
            let volumes = (place[0]..place[0] + len)
                .map(|x| case.volume(case.grid.index([x, place[1], place[2]])) as f32);
            self.around_m3.extend(volumes);
            self.around_rate.resize(self.around_m3.len(), 0.0);
            self.around_c.resize(self.around_m3.len(), 0.0);
        }
        let place = place.map(|at| at as u32);
        self.runs.push(Run {
            at,
            len: len as u32,
            from,
            place,
            outer,
        });
    }

    fn add_cell(
        &mut self,
        case: &Case,
        kinds: &[Kind],
        tables: &[Table],
        padded: &Padded,
        place: [usize; 3],
    ) {
        let cell = case.grid.index(place);
        let number = case.cells[cell];
        let from = self.heat.len() as u32;
        let here = padded.at(place) as u32;
        let volume_m3 = case.volume(cell);
        let start = case.materials[usize::from(number)].heat_at(f64::from(case.start_c[cell]));
        self.heat
            .push((start - tables[usize::from(number)].base_j_m3) as f32);
        match self.spans.last_mut() {
            Some(span) if span.at + span.len == here && span.material == number => span.len += 1,
            _ => self.spans.push(Span {
                at: here,
                len: 1,
                from,
                material: number,
            }),
        }
        if case.partial.is_none() && is_deep(case, kinds, place) {
            return;
        }
        for (axis, high) in SIDES {
            let side_number = (2 * axis + high) as u8;
            match side(case, place, axis, high) {
                Side::Next(other, mut link) => {
                    link.area_m2 /= volume_m3;
                    let there = padded.at(case.grid.place(other)) as u32;
                    let face = Face {
                        from,
                        side: side_number,
                        here,
                        there,
                        link,
                    };
                    match kinds[other] {
                        Kind::Quick if link.alike && case.partial.is_none() => {}
                        Kind::Quick => self.faces.push(face),
                        _ => {
                            self.crossing.push(face);
                            self.closed.push((from, side_number));
                        }
                    }
                }
                Side::Out(outer) => {
                    self.arounds.push(Around {
                        from,
                        here,
                        dense: 0,
                        volume_m3,
                        outer,
                    });
                    self.closed.push((from, side_number));
                }
                Side::Closed => self.closed.push((from, side_number)),
            }
        }
    }

    /// Takes what comes from surroundings as a straight line of the temperature of each cell.
    fn look_around(&mut self, celsius: &[f32], w_mk: &[f32]) {
        self.around_rate.fill(0.0);
        self.around_c.fill(0.0);
        self.steady_w = 0.0;
        for around in &self.arounds {
            let here = around.here as usize;
            let inflow = around
                .outer
                .inflow(f64::from(celsius[here]), f64::from(w_mk[here]));
            self.source[around.from as usize] += (inflow.w / around.volume_m3) as f32;
            self.steady_w += inflow.w;
            let dense = around.dense as usize;
            let (rate, mean_c) = (self.around_rate[dense], self.around_c[dense]);
            let added = (inflow.w_k / around.volume_m3) as f32;
            if added > 0.0 {
                let both = rate + added;
                self.around_rate[dense] = both;
                self.around_c[dense] = (rate * mean_c + added * inflow.outside_c as f32) / both;
            }
        }
    }

    #[inline(always)]
    fn highest_rate(&self, tables: &[Table]) -> f32 {
        let mut most = 0.0_f32;
        for span in &self.spans {
            let cells = span.packed();
            let sums = sum_of_six(&self.conductances, cells);
            most = most.max(sums / tables[usize::from(span.material)].least_j_m3k);
        }
        for run in &self.runs {
            let Some(dense) = run.outer else { continue };
            for i in 0..run.len as usize {
                let from = run.from as usize + i;
                let span = self
                    .spans
                    .partition_point(|span| span.from as usize <= from)
                    - 1;
                let sum: f32 = self.conductances.iter().map(|side| side[from]).sum();
                let least = tables[usize::from(self.spans[span].material)].least_j_m3k;
                most = most.max((sum + self.around_rate[dense as usize + i]) / least);
            }
        }
        most
    }
}

impl Run {
    fn packed(&self) -> Range<usize> {
        self.from as usize..(self.from + self.len) as usize
    }
}

impl Span {
    /// Its cells in packed lists.
    pub fn packed(&self) -> Range<usize> {
        self.from as usize..(self.from + self.len) as usize
    }

    /// Its cells in planes that begin at an origin.
    pub fn within(&self, origin: usize) -> Range<usize> {
        let at = self.at as usize - origin;
        at..at + self.len as usize
    }

    /// Levels that are watched in its material.
    pub fn levels(&self, levels: &[Option<Levels>]) -> Option<Levels> {
        levels[usize::from(self.material)]
    }
}

impl Face {
    fn w_k(&self, w_mk: &[f32]) -> f64 {
        let (here, there) = (w_mk[self.here as usize], w_mk[self.there as usize]);
        self.link.w_k(f64::from(here), f64::from(there))
    }
}

/// Whether a cell stands within the box with only quick cells of its own material beside it.
fn is_deep(case: &Case, kinds: &[Kind], place: [usize; 3]) -> bool {
    let [along, rows, planes] = case.grid.counts();
    let inner = (0..3).all(|axis| place[axis] > 0 && place[axis] + 1 < [along, rows, planes][axis]);
    let cell = case.grid.index(place);
    inner
        && [1, along, along * rows].into_iter().all(|away| {
            [cell - away, cell + away]
                .into_iter()
                .all(|other| case.cells[other] == case.cells[cell] && kinds[other] == Kind::Quick)
        })
}

#[inline(always)]
fn conduct(
    run: &Run,
    weights: &[[Vec<f32>; 2]; 3],
    padded: &Padded,
    w_mk: &[f32],
    conductances: &mut [Vec<f32>; 6],
) {
    let (at, len) = (run.at as usize, run.len as usize);
    let [x, y, z] = run.place.map(|at| at as usize);
    let own = &w_mk[at..at + len];
    let away = [1, padded.row, padded.plane];
    for (axis, high) in SIDES {
        let from = if high == 0 {
            at - away[axis]
        } else {
            at + away[axis]
        };
        let other = &w_mk[from..from + len];
        let sums = &mut conductances[2 * axis + high][run.packed()];
        let weights = &weights[axis][high];
        match axis {
            0 => {
                let weights = &weights[x..x + len];
                for i in 0..len {
                    sums[i] = weights[i] * (own[i] + other[i]);
                }
            }
            _ => {
                let weight = weights[if axis == 1 { y } else { z }];
                for i in 0..len {
                    sums[i] = weight * (own[i] + other[i]);
                }
            }
        }
    }
}

/// A stage of a run but for its surroundings; `heat` holds the older heat contents before it.
#[inline(always)]
fn step_run(
    quick: &Quick,
    run: &Run,
    stage: Stage,
    padded: &Padded,
    celsius: &[f32],
    heat: &mut [f32],
) {
    let (at, len) = (run.at as usize, run.len as usize);
    let row = |from: usize| &celsius[from..from + len];
    let own = row(at);
    let (left, right) = (row(at - 1), row(at + 1));
    let (front, back) = (row(at - padded.row), row(at + padded.row));
    let (below, above) = (row(at - padded.plane), row(at + padded.plane));
    let cells = run.packed();
    let [g0, g1, g2, g3, g4, g5] = &quick.conductances;
    let (g0, g1) = (&g0[cells.clone()], &g1[cells.clone()]);
    let (g2, g3) = (&g2[cells.clone()], &g3[cells.clone()]);
    let (g4, g5) = (&g4[cells.clone()], &g5[cells.clone()]);
    let source = &quick.source[cells.clone()];
    let newest = &quick.heat[cells];
    let Stage { lean, step_s } = stage;
    for i in 0..len {
        let t = own[i];
        let rate = source[i]
            + g0[i] * (left[i] - t)
            + g1[i] * (right[i] - t)
            + g2[i] * (front[i] - t)
            + g3[i] * (back[i] - t)
            + g4[i] * (below[i] - t)
            + g5[i] * (above[i] - t);
        heat[i] = newest[i] + (lean * (newest[i] - heat[i]) + step_s * rate);
    }
}

/// Adds what comes from surroundings to a run, and tells how much that is, W.
fn add_around(quick: &Quick, dense: usize, stage: Stage, celsius: &[f32], heat: &mut [f32]) -> f64 {
    let mut inflow_w = 0.0;
    for (i, heat) in heat.iter_mut().enumerate() {
        let rate = quick.around_rate[dense + i];
        if rate > 0.0 {
            let gain = rate * (quick.around_c[dense + i] - celsius[i]);
            *heat += stage.step_s * gain;
            inflow_w += f64::from(gain) * f64::from(quick.around_m3[dense + i]);
        }
    }
    inflow_w
}

/// The largest sum of the six conductances over some cells.
#[inline(always)]
fn sum_of_six(conductances: &[Vec<f32>; 6], cells: Range<usize>) -> f32 {
    const LANES: usize = 8;
    let [g0, g1, g2, g3, g4, g5] = conductances;
    let len = cells.len();
    let (g0, g1) = (&g0[cells.clone()], &g1[cells.clone()]);
    let (g2, g3) = (&g2[cells.clone()], &g3[cells.clone()]);
    let (g4, g5) = (&g4[cells.clone()], &g5[cells]);
    let sum = |i: usize| g0[i] + g1[i] + g2[i] + g3[i] + g4[i] + g5[i];
    let mut most = [0.0_f32; LANES];
    let whole = len / LANES * LANES;
    for from in (0..whole).step_by(LANES) {
        for (lane, most) in most.iter_mut().enumerate() {
            let sum = sum(from + lane);
            *most = if sum > *most { sum } else { *most };
        }
    }
    let rest = (whole..len).map(sum).fold(0.0, f32::max);
    most.into_iter().fold(rest, f32::max)
}
