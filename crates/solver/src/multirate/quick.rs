//! The cells that go in stages: runs of cells along x, packed, with six conductances each.
//!
//! Conductances, heat from slow neighbours and surroundings are taken once a step and stand still
//! during its stages. A stage reads temperatures from one list and writes them to another, so that
//! it is one pass. Heat contents stand packed, and what a step changes in two lists of their own
//! that change places: added to the heat content at every stage, small changes would be lost in
//! rounding. What is lost when they are added at last is kept for the next step.

mod lay;
mod rows;

use std::ops::Range;

use crate::freezing::Levels;
use crate::link::Outer;
use crate::multirate::padded::Padded;
use crate::multirate::quick::rows::{add_around, conduct, step_run, sum_of_six};
use crate::multirate::ramps::Table;
use crate::multirate::stages::Stage;

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

/// A face that is not within one material: a link in single precision, for a unit volume.
#[derive(Debug, Clone, Copy)]
struct Face {
    from: u32,
    side: u8,
    alike: bool,
    here: u32,
    there: u32,
    area: f32,
    here_m: f32,
    there_m: f32,
    contact: f32,
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
    /// Heat content above the base of each material, J/m³, at the start of a step.
    pub heat: Vec<f32>,
    /// What the step has changed so far, J/m³.
    pub change: Vec<f32>,
    older: Vec<f32>,
    lost: Vec<f32>,
    /// Heat that came in through faces so far, J.
    pub through_j: f64,
    stage_j: f64,
    older_j: f64,
    steady_w: f64,
    origin: usize,
}

impl Quick {
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
            self.conductances[usize::from(face.side)][face.from as usize] = face.w_k(w_mk);
        }
        for &(from, side) in &self.closed {
            self.conductances[usize::from(side)][from as usize] = 0.0;
        }
        self.source.fill(0.0);
        for face in &self.crossing {
            let fall = celsius[face.there as usize] - celsius[face.here as usize];
            self.source[face.from as usize] += face.w_k(w_mk) * fall;
        }
        self.look_around(celsius, w_mk);
        self.change.fill(0.0);
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
        let mut next = std::mem::take(&mut self.older);
        for run in &self.runs {
            let cells = run.packed();
            step_run(self, run, stage, padded, celsius, &mut next[cells.clone()]);
            if let Some(dense) = run.outer {
                let row = &celsius[run.at as usize..];
                inflow_w += add_around(self, dense as usize, stage, row, &mut next[cells.clone()]);
            }
            while let Some(span) = spans.next_if(|span| (span.from as usize) < cells.end) {
                let table = &tables[usize::from(span.material)];
                let (heat, change) = (&self.heat[span.packed()], &next[span.packed()]);
                let row = &mut after[span.within(self.origin)];
                table.celsius.fill_changed(heat, change, row);
            }
        }
        let newest_j = self.stage_j;
        self.stage_j +=
            f64::from(stage.lean) * (newest_j - self.older_j) + f64::from(stage.step_s) * inflow_w;
        self.older_j = newest_j;
        self.older = std::mem::replace(&mut self.change, next);
    }

    /// Ends a step: adds what it has changed.
    pub fn settle(&mut self) {
        self.through_j += self.stage_j;
        let changes = self.change.iter().zip(&mut self.lost);
        for (heat, (change, lost)) in self.heat.iter_mut().zip(changes) {
            let (before, change) = (*heat, change + *lost);
            *heat = before + change;
            *lost = change - (*heat - before);
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
    #[inline(always)]
    fn w_k(&self, w_mk: &[f32]) -> f32 {
        let (here, there) = (w_mk[self.here as usize], w_mk[self.there as usize]);
        if self.alike {
            return self.area * 0.5 * (here + there) / (self.here_m + self.there_m);
        }
        let both = here * there;
        let resisted = self.here_m * there + self.there_m * here + self.contact * both;
        self.area * both / resisted
    }
}
