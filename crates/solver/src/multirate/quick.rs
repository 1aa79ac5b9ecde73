//! The cells that go in stages: runs of blocks of cells along x, packed, six conductances each.
//!
//! Conductances, heat from slow neighbours and surroundings are taken once a step and stand still
//! during its stages. A stage reads temperatures from one list and writes them to another, so that
//! it is one pass. Heat contents stand packed, and what a step changes in two lists of their own
//! that change places: added to the heat content at every stage, small changes would be lost in
//! rounding. What is lost when they are added at last is kept for the next step.
//!
//! A run is a whole number of blocks, so that no row has a rest to be done cell by cell. Slow cells
//! in a block keep their temperature through all stages; where a block overhangs the box or a void,
//! its figures there are waste. Neither conducts anything.

mod around;
mod block;
pub mod face;
pub mod lay;
mod rows;
mod seen;

use std::ops::Range;

use pulp::Simd;

use crate::multirate::padded::Padded;
use crate::multirate::quick::around::Around;
use crate::multirate::quick::block::{Block, StageOf};
use crate::multirate::quick::face::{Face, Way};
use crate::multirate::quick::rows::{Part, StageRow, conduct, fill, highest};
use crate::multirate::ramps::{Blend, Table};
use crate::multirate::stages::Stage;
use crate::multirate::wide::LANES;

pub use lay::Plan;
pub use rows::fill_one;

/// Blocks of quick cells in a row.
#[derive(Debug, Clone)]
struct Run {
    at: u32,
    len: u32,
    from: u32,
    place: [u32; 3],
    stretches: Range<u32>,
    faces: Range<u32>,
    closed: Range<u32>,
    outer: Option<u32>,
}

/// Blocks of a run that one table goes for, or one block of several materials.
#[derive(Debug, Clone, Copy)]
pub struct Stretch {
    /// Where they stand with a rim.
    pub at: u32,
    /// Their cells.
    pub len: u32,
    /// Where they stand packed.
    pub from: u32,
    /// What fills them.
    pub filling: Filling,
}

/// What fills a stretch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Filling {
    /// One material throughout.
    One(u8),
    /// Several: a block in the list of those.
    Several(u32),
}

/// What is told of cells.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Told {
    /// Their temperature, °C.
    Celsius,
    /// Their conductivity, W/(m K).
    Conductivity,
}

/// A block of several materials.
#[derive(Debug, Clone, PartialEq)]
pub struct Mix {
    /// Number of the material of each cell.
    pub numbers: [u8; LANES],
    /// The materials among them.
    pub among: Vec<u8>,
    celsius: Blend,
    w_mk: Blend,
    /// One over the least heat capacity of each cell, m³ K/J.
    inverse: [f32; LANES],
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

/// The quick cells of some planes.
pub struct Quick {
    runs: Vec<Run>,
    /// Blocks that one table goes for, in order.
    pub stretches: Vec<Stretch>,
    /// Blocks of several materials.
    pub mixes: Vec<Mix>,
    /// Cells of one material, in order.
    pub spans: Vec<Span>,
    faces: Vec<Face>,
    ways: Vec<Way>,
    closed: Vec<(u32, u8)>,
    crossing: Vec<Face>,
    arounds: Vec<Around>,
    /// Slow cells within blocks: where they stand packed and with a rim.
    echoes: Vec<(u32, u32)>,
    blocks: Vec<Block>,
    newest: usize,
    around_rate: Vec<f32>,
    around_c: Vec<f32>,
    around_m3: Vec<f32>,
    lost: Vec<[f32; LANES]>,
    /// Heat that came in through faces so far, J.
    pub through_j: f64,
    stage_j: f64,
    older_j: f64,
    steady_w: f64,
    origin: usize,
}

/// What stands at the start of a step.
pub struct Given<'all> {
    /// Tables of the materials.
    pub tables: &'all [Table],
    /// Weights of faces, per axis low and high.
    pub weights: &'all [[Vec<f32>; 2]; 3],
    /// The box with its rim.
    pub padded: &'all Padded,
    /// Temperatures of the box.
    pub celsius: &'all [f32],
    /// Conductivities, of the quick cells at least.
    pub w_mk: &'all [f32],
    /// Root of the time since contact that stands for the step, s^0.5.
    pub root_s: f32,
}

impl Quick {
    /// Cells, without those that overhang.
    pub fn cells(&self) -> usize {
        self.spans.iter().map(|span| span.len as usize).sum()
    }

    /// Cells with those that overhang.
    pub fn lanes(&self) -> usize {
        self.blocks.len() * LANES
    }

    /// What each cell carries from step to step: its heat content and what rounding has left.
    pub fn carried(&self) -> impl Iterator<Item = (f32, f32)> {
        let cells = self.spans.iter().flat_map(Span::packed);
        cells.map(|from| {
            let (block, lane) = (from / LANES, from % LANES);
            (self.blocks[block].heat[lane], self.lost[block][lane])
        })
    }

    /// Takes up what its cells have carried.
    pub fn take_up(&mut self, carried: &mut dyn Iterator<Item = (f32, f32)>) {
        for from in self.spans.iter().flat_map(Span::packed) {
            let (block, lane) = (from / LANES, from % LANES);
            if let Some((heat, lost)) = carried.next() {
                self.blocks[block].heat[lane] = heat;
                self.lost[block][lane] = lost;
            }
        }
    }

    /// Temperatures or conductivities of all cells, into the planes.
    #[inline(always)]
    pub fn fill<S: Simd>(&self, simd: S, told: Told, tables: &[Table], figures: &mut [f32]) {
        for stretch in &self.stretches {
            let blocks = &self.blocks[stretch.blocks()];
            let figures = &mut figures[stretch.within(self.origin)];
            match (stretch.filling, told) {
                (Filling::One(material), Told::Celsius) => {
                    fill(
                        simd,
                        &tables[usize::from(material)].celsius,
                        blocks,
                        figures,
                    );
                }
                (Filling::One(material), Told::Conductivity) => {
                    fill(simd, &tables[usize::from(material)].w_mk, blocks, figures);
                }
                (Filling::Several(mix), Told::Celsius) => {
                    fill(simd, &self.mixes[mix as usize].celsius, blocks, figures);
                }
                (Filling::Several(mix), Told::Conductivity) => {
                    fill(simd, &self.mixes[mix as usize].w_mk, blocks, figures);
                }
            }
        }
    }

    /// Takes conductances and all that stands still during a step; gives the highest rate over all
    /// cells, 1/s, the inverse of the longest explicit step.
    #[inline(always)]
    pub fn prepare<S: Simd>(&mut self, simd: S, given: &Given) -> f32 {
        for block in &mut self.blocks {
            block.source = [0.0; LANES];
            block.begin();
        }
        for face in &self.crossing {
            let fall = given.celsius[face.there as usize] - given.celsius[face.here as usize];
            let (block, lane) = place(face.from);
            self.blocks[block].source[lane] +=
                self.ways[face.way as usize].w_k(face, given.w_mk, given.root_s) * fall;
        }
        self.look_around(given.celsius, given.w_mk);
        self.stage_j = 0.0;
        self.older_j = 0.0;
        let mut most = 0.0_f32;
        for run in &self.runs {
            conduct(simd, run, given, &mut self.blocks[run.blocks()]);
            for face in &self.faces[indices(&run.faces)] {
                let (block, lane) = place(face.from);
                self.blocks[block].conductances[usize::from(face.side)][lane] =
                    self.ways[face.way as usize].w_k(face, given.w_mk, given.root_s);
            }
            for &(from, side) in &self.closed[indices(&run.closed)] {
                let (block, lane) = place(from);
                self.blocks[block].conductances[usize::from(side)][lane] = 0.0;
            }
            for stretch in &self.stretches[indices(&run.stretches)] {
                most = most.max(self.highest_rate(simd, run, stretch, given.tables));
            }
        }
        most
    }

    /// One stage: reads temperatures of the whole box, writes those of its planes.
    #[inline(always)]
    pub fn stage<S: Simd>(
        &mut self,
        simd: S,
        stage: Stage,
        (tables, padded): (&[Table], &Padded),
        celsius: &[f32],
        after: &mut [f32],
    ) {
        if stage.lean == 0.0 {
            // The first stage: slow cells have their temperatures by now.
            for &(from, at) in &self.echoes {
                let (block, lane) = place(from);
                self.blocks[block].heat[lane] = celsius[at as usize];
            }
        }
        let mut inflow_w = self.steady_w;
        let of_stage = StageOf::of(simd, stage, self.newest);
        for run in &self.runs {
            let (at, len) = (run.at as usize, run.len as usize);
            let outer = match run.outer {
                Some(dense) => {
                    let dense = dense as usize..dense as usize + len;
                    Some((&self.around_rate[dense.clone()], &self.around_c[dense]))
                }
                None => None,
            };
            let after = &mut after[at - self.origin..at - self.origin + len];
            let mut row = StageRow::of(simd, at, (padded, celsius), outer, after);
            for stretch in &self.stretches[indices(&run.stretches)] {
                let part = Part {
                    stage: of_stage,
                    row: &mut row,
                    blocks: &mut self.blocks[stretch.blocks()],
                    first: (stretch.from - run.from) as usize / LANES,
                };
                match stretch.filling {
                    Filling::One(material) => tables[usize::from(material)].celsius.give(part),
                    Filling::Several(mix) => {
                        part.of(&self.mixes[mix as usize].celsius);
                    }
                }
            }
            if let Some(dense) = run.outer {
                inflow_w += self.around_w(dense as usize, &celsius[at..at + len]);
            }
        }
        let newest_j = self.stage_j;
        self.stage_j +=
            f64::from(stage.lean) * (newest_j - self.older_j) + f64::from(stage.step_s) * inflow_w;
        self.older_j = newest_j;
        self.newest ^= 1;
    }

    /// Ends a step: adds what it has changed.
    #[inline(always)]
    pub fn settle<S: Simd>(&mut self, simd: S) {
        self.through_j += self.stage_j;
        for (block, lost) in self.blocks.iter_mut().zip(&mut self.lost) {
            block.settle(simd, self.newest, lost);
        }
    }

    #[inline(always)]
    fn highest_rate<S: Simd>(
        &self,
        simd: S,
        run: &Run,
        stretch: &Stretch,
        tables: &[Table],
    ) -> f32 {
        let one;
        let inverse = match stretch.filling {
            Filling::One(material) => {
                one = [1.0 / tables[usize::from(material)].least_j_m3k; LANES];
                &one
            }
            Filling::Several(mix) => &self.mixes[mix as usize].inverse,
        };
        let around = run.outer.map(|dense| {
            let from = (dense + stretch.from - run.from) as usize;
            &self.around_rate[from..from + stretch.len as usize]
        });
        highest(simd, &self.blocks[stretch.blocks()], around, inverse)
    }
}

/// Block and place within it of a cell by where it stands packed.
#[inline(always)]
fn place(from: u32) -> (usize, usize) {
    (from as usize / LANES, from as usize % LANES)
}

impl Run {
    fn blocks(&self) -> Range<usize> {
        self.from as usize / LANES..(self.from + self.len) as usize / LANES
    }
}

impl Stretch {
    fn blocks(&self) -> Range<usize> {
        self.from as usize / LANES..(self.from + self.len) as usize / LANES
    }

    /// Its cells in planes that begin at an origin.
    fn within(&self, origin: usize) -> Range<usize> {
        let at = self.at as usize - origin;
        at..at + self.len as usize
    }
}

impl Span {
    /// Its cells in packed lists.
    pub fn packed(&self) -> Range<usize> {
        self.from as usize..(self.from + self.len) as usize
    }
}

fn indices(range: &Range<u32>) -> Range<usize> {
    range.start as usize..range.end as usize
}
