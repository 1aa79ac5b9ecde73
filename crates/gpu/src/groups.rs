//! What each program has in sight, slab by slab.

use std::num::NonZeroU64;
use std::ops::Range;

use bytemuck::{Pod, Zeroable};
use wgpu::{BindGroup, BindingResource, Buffer, BufferBinding};

use crate::device::Device;
use crate::lists::Lists;
use crate::packed::Packed;
use crate::programs::{Program, Programs};
use crate::shape::{AROUND_BYTES, CELL_BYTES, LANE_BYTES, RIM_BYTES, RUN, RUN_BYTES};
use crate::steps::Told;

/// A part of the box that the programs see at a time.
#[derive(Debug)]
pub struct Slab {
    /// What they are told of it.
    pub figures: SlabFigures,
    /// Its own planes.
    planes: Range<usize>,
}

/// A slab as the programs read it.
#[derive(Debug, Clone, Copy, Pod, Zeroable)]
#[repr(C)]
pub struct SlabFigures {
    pitch: u32,
    plane: u32,
    nx: u32,
    ny: u32,
    /// Planes.
    pub nz: u32,
    z0: u32,
    cell0: u32,
    lane0: u32,
    run_first: u32,
    /// Runs.
    pub run_count: u32,
    rim0: u32,
    around0: u32,
    stride: u32,
    /// Planes that a thread of a sweep goes through.
    pub chunk: u32,
    even_inverse: f32,
    changing: u32,
}

/// What the programs have in sight of a slab; where there are two, by the list that holds the
/// temperatures before a step, or by even and odd stages.
#[derive(Debug)]
pub struct Groups {
    pub prepare: [BindGroup; 2],
    pub sweep: [BindGroup; 2],
    pub conduct: BindGroup,
    pub first: [BindGroup; 2],
    pub stage: [BindGroup; 2],
    pub settle: [BindGroup; 2],
}

/// Planes that a thread of a sweep goes through, an even number: with more, fewer are under way at
/// once; with fewer, more of them are read twice.
const CHUNK: usize = 4;

impl Slab {
    /// The slab of some planes.
    pub fn of(packed: &Packed, lists: &Lists, planes: Range<usize>) -> Slab {
        let shape = &packed.shape;
        let starts = &packed.starts;
        let seen = planes.start.saturating_sub(1);
        let figures = SlabFigures {
            pitch: shape.pitch as u32,
            plane: shape.plane as u32,
            nx: shape.counts[0] as u32,
            ny: shape.counts[1] as u32,
            nz: planes.len() as u32,
            z0: planes.start as u32,
            cell0: (planes.start * shape.plane) as u32,
            lane0: starts.runs[seen] * RUN as u32,
            run_first: starts.runs[planes.start] - starts.runs[seen],
            run_count: starts.runs[planes.end] - starts.runs[planes.start],
            rim0: (rims_from(starts.rims[planes.start]) / 4) as u32,
            around0: starts.arounds[planes.start],
            stride: lists.stride as u32,
            chunk: CHUNK as u32,
            even_inverse: packed.even_inverse,
            changing: u32::from(!lists.plain),
        };
        Slab { figures, planes }
    }
}

impl Groups {
    /// Those of a slab.
    pub fn of(
        device: &Device,
        programs: &Programs,
        packed: &Packed,
        (lists, told): (&Lists, &Told),
        slab: &Slab,
    ) -> Groups {
        let figures = device.figures("slab", size_of::<SlabFigures>() as u64);
        device
            .queue
            .write_buffer(&figures, 0, bytemuck::bytes_of(&slab.figures));
        let view = View {
            device,
            programs,
            lists,
            sight: Sight::of(packed, lists, slab),
            figures: &figures,
            told,
        };
        let [even, odd] = &lists.stages;
        Groups {
            prepare: [0, 1].map(|from| view.prepare(from)),
            sweep: [0, 1].map(|from| view.sweep(from)),
            conduct: view.conduct(),
            first: [0, 1].map(|from: usize| view.stage([&lists.celsius[from], odd], [0, 1])),
            // The second stage is even: it reads what the odd one before it left.
            stage: [
                view.stage([even, odd], [0, 1]),
                view.stage([odd, even], [1, 0]),
            ],
            settle: [0, 1].map(|from| view.settle(from)),
        }
    }
}

/// The lists as a slab sees them, in the order in which each program names them.
struct View<'all> {
    device: &'all Device,
    programs: &'all Programs,
    lists: &'all Lists,
    sight: Sight,
    figures: &'all Buffer,
    told: &'all Told,
}

impl<'all> View<'all> {
    fn prepare(&self, from: usize) -> BindGroup {
        let lists = self.lists;
        let mut seen = self.of_quick();
        seen.extend([
            self.cells(&lists.celsius[from]),
            part(&lists.arounds, &self.sight.arounds),
            part(&lists.rims, &self.sight.rims),
            lists.links.as_entire_binding(),
            lists.outers.as_entire_binding(),
            lists.axes.as_entire_binding(),
            part(&lists.conducts, &self.sight.conducts),
            self.told.rates.as_entire_binding(),
        ]);
        self.group(&self.programs.prepare, &self.told.ends, seen)
    }

    fn sweep(&self, from: usize) -> BindGroup {
        let (lists, sight) = (self.lists, &self.sight);
        let mut seen = vec![
            part(&lists.classes, &sight.classes),
            lists.along.as_entire_binding(),
            lists.across.as_entire_binding(),
            lists.factors.as_entire_binding(),
            self.cells(&lists.celsius[from]),
            self.cells(&lists.celsius[1 - from]),
        ];
        if lists.plain {
            return self.group(&self.programs.sweep, &self.told.rates, seen);
        }
        seen.extend([
            lists.tables.as_entire_binding(),
            part(&lists.conducts, &sight.conducts),
            part(&lists.swept, &sight.swept),
        ]);
        self.group(&self.programs.sweep_changing, &self.told.rates, seen)
    }

    fn conduct(&self) -> BindGroup {
        let (lists, sight) = (self.lists, &self.sight);
        let seen = vec![
            part(&lists.classes, &sight.classes),
            lists.tables.as_entire_binding(),
            lists.factors.as_entire_binding(),
            part(&lists.swept, &sight.swept),
            part(&lists.conducts, &sight.conducts),
        ];
        self.group(&self.programs.conduct, &self.told.ends, seen)
    }

    /// A stage from temperatures to temperatures, with the newest change and the one before it.
    fn stage(&self, [before, after]: [&'all Buffer; 2], changes: [usize; 2]) -> BindGroup {
        let lists = self.lists;
        let mut seen = self.of_quick();
        seen.extend(changes.map(|change| self.lanes(&lists.changes[change], 4)));
        seen.extend([
            self.cells(before),
            self.cells(after),
            part(&lists.arounds, &self.sight.arounds),
        ]);
        self.group(&self.programs.stage, &self.told.rates, seen)
    }

    fn settle(&self, from: usize) -> BindGroup {
        let (lists, [even, odd]) = (self.lists, &self.lists.stages);
        let [changed_even, changed_odd] = &lists.changes;
        let mut seen = self.of_runs();
        seen.extend([
            self.lanes(&lists.heats, 4),
            self.lanes(&lists.losts, 4),
            self.lanes(changed_even, 4),
            self.lanes(changed_odd, 4),
            self.cells(even),
            self.cells(odd),
            self.cells(&lists.celsius[1 - from]),
            part(&lists.arounds, &self.sight.arounds),
            self.lanes(&lists.written, LANE_BYTES),
            lists.axes.as_entire_binding(),
            self.told.ends.as_entire_binding(),
        ]);
        self.group(&self.programs.settle, &self.told.rates, seen)
    }

    /// What says which cells are quick, and of what they are.
    fn of_runs(&self) -> Vec<BindingResource<'all>> {
        let lists = self.lists;
        vec![
            lists.tables.as_entire_binding(),
            part(&lists.runs, &self.sight.runs),
            self.lanes(&lists.kinds, 4),
        ]
    }

    /// That with what a stage needs of each quick cell.
    fn of_quick(&self) -> Vec<BindingResource<'all>> {
        let lists = self.lists;
        let mut seen = self.of_runs();
        seen.extend([
            self.lanes(&lists.inverses, 4),
            self.lanes(&lists.flows, 16),
            self.lanes(&lists.heats, 4),
        ]);
        seen
    }

    fn cells(&self, list: &'all Buffer) -> BindingResource<'all> {
        part(list, &self.sight.cells)
    }

    /// What is in sight of a list with so many bytes a lane.
    fn lanes(&self, list: &'all Buffer, bytes: u64) -> BindingResource<'all> {
        let lanes = &self.sight.lanes;
        part(list, &(lanes.start * bytes..lanes.end * bytes))
    }

    /// The group of a program; the figures of the slab and what tells it whether a step is taken
    /// come first in each.
    fn group(
        &self,
        program: &Program,
        told: &Buffer,
        seen: Vec<BindingResource<'all>>,
    ) -> BindGroup {
        let first = [self.figures, told].map(Buffer::as_entire_binding);
        program.group(self.device, &[&first[..], &seen].concat())
    }
}

/// The parts of lists that a slab has in sight, in bytes, and its lanes.
struct Sight {
    cells: Range<u64>,
    swept: Range<u64>,
    conducts: Range<u64>,
    classes: Range<u64>,
    runs: Range<u64>,
    lanes: Range<u64>,
    rims: Range<u64>,
    arounds: Range<u64>,
}

impl Sight {
    fn of(packed: &Packed, lists: &Lists, slab: &Slab) -> Sight {
        let planes = &slab.planes;
        let plane = packed.shape.plane as u64;
        let between = |starts: &[u32], of: &Range<usize>, bytes: u64| {
            u64::from(starts[of.start]) * bytes..u64::from(starts[of.end]) * bytes
        };
        let (from, to) = (planes.start as u64, planes.end as u64);
        let seen = planes.start.saturating_sub(1)..(planes.end + 1).min(packed.shape.counts[2]);
        let cells = from * plane * CELL_BYTES..(to + 2) * plane * CELL_BYTES;
        Sight {
            swept: match lists.plain {
                true => 0..0,
                false => (from + 1) * plane * CELL_BYTES..(to + 1) * plane * CELL_BYTES,
            },
            conducts: if lists.plain { 0..0 } else { cells.clone() },
            cells,
            classes: from * plane / 2..to * plane / 2,
            runs: between(&packed.starts.runs, &seen, RUN_BYTES),
            lanes: between(&packed.starts.runs, &seen, RUN as u64),
            rims: {
                let rims = between(&packed.starts.rims, planes, RIM_BYTES);
                rims_from(packed.starts.rims[planes.start])..rims.end
            },
            arounds: between(&packed.starts.arounds, planes, AROUND_BYTES),
        }
    }
}

/// Where the part of the rims begins that holds one: a byte at which a part may begin.
fn rims_from(rim: u32) -> u64 {
    u64::from(rim) * RIM_BYTES / PART_BYTES * PART_BYTES
}

/// Bytes of which a part of a list begins at a whole number, on every card.
const PART_BYTES: u64 = 256;

/// A part of a list; all of it where the part is empty, since something has to be in sight.
fn part<'list>(buffer: &'list Buffer, range: &Range<u64>) -> BindingResource<'list> {
    if range.is_empty() {
        let least = NonZeroU64::new(buffer.size().min(256));
        return BindingResource::Buffer(BufferBinding {
            buffer,
            offset: 0,
            size: least,
        });
    }
    BindingResource::Buffer(BufferBinding {
        buffer,
        offset: range.start,
        size: NonZeroU64::new(range.end - range.start),
    })
}
