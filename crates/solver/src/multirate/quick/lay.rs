//! Quick cells are found and packed.

use std::ops::Range;

use super::block::Block;
use super::face::{Face, Way, number_of};
use super::{Around, Filling, Mix, Quick, Run, Span, Stretch};
use crate::case::Case;
use crate::link::{SIDES, Side, side};
use crate::multirate::padded::Padded;
use crate::multirate::ramps::{Blend, Table};
use crate::multirate::split::{Kind, runs};
use crate::multirate::wide::LANES;

/// What cells are laid out from.
pub struct Plan<'all> {
    /// The case.
    pub case: &'all Case,
    /// How each cell goes.
    pub kinds: &'all [Kind],
    /// Tables of the materials.
    pub tables: &'all [Table],
    /// The box with its rim.
    pub padded: &'all Padded,
}

impl Quick {
    /// The quick cells of planes z at their start.
    pub fn of(plan: &Plan, z: Range<usize>) -> Quick {
        let mut quick = Quick::empty(plan.padded.plane_at(z.start));
        let [along, rows, _] = plan.case.grid.counts();
        for z in z {
            for y in 0..rows {
                let row = (z * rows + y) * along;
                for run in runs(&plan.kinds[row..row + along]) {
                    quick.add_run(plan, [run.start, y, z], run.len());
                }
            }
        }
        quick.lost = vec![[0.0; LANES]; quick.blocks.len()];
        quick.blocks.shrink_to_fit();
        quick
    }

    fn empty(origin: usize) -> Quick {
        Quick {
            runs: Vec::new(),
            stretches: Vec::new(),
            mixes: Vec::new(),
            spans: Vec::new(),
            faces: Vec::new(),
            ways: Vec::new(),
            closed: Vec::new(),
            crossing: Vec::new(),
            arounds: Vec::new(),
            blocks: Vec::new(),
            newest: 0,
            around_rate: Vec::new(),
            around_c: Vec::new(),
            around_m3: Vec::new(),
            lost: Vec::new(),
            through_j: 0.0,
            stage_j: 0.0,
            older_j: 0.0,
            steady_w: 0.0,
            origin,
        }
    }

    fn add_run(&mut self, plan: &Plan, place: [usize; 3], len: usize) {
        let at = plan.padded.at(place) as u32;
        let from = (self.blocks.len() * LANES) as u32;
        let before = (self.arounds.len(), self.faces.len(), self.closed.len());
        let mut materials = Vec::with_capacity(len);
        for lane in 0..len {
            if lane % LANES == 0 {
                self.blocks.push(Block::EMPTY);
            }
            let here = [place[0] + lane, place[1], place[2]];
            let x = here[0];
            let solved = x < plan.case.grid.counts()[0]
                && plan.kinds[plan.case.grid.index(here)] == Kind::Quick;
            match solved {
                true => {
                    self.add_cell(plan, here, from + lane as u32);
                    materials.push(plan.case.cells[plan.case.grid.index(here)]);
                }
                false => {
                    // A run begins with a cell that is solved: what overhangs goes with the last.
                    materials.extend(materials.last().copied());
                    let from = from + lane as u32;
                    self.closed.extend((0..6).map(|side| (from, side)));
                }
            }
        }
        let outer = (self.arounds.len() > before.0).then_some(self.around_rate.len() as u32);
        if let Some(dense) = outer {
            self.add_dense(plan.case, place, (before.0, dense, from), len);
        }
        let stretches = self.add_stretches(plan.tables, (at, from), &materials);
        self.runs.push(Run {
            at,
            len: len as u32,
            from,
            place: place.map(|at| at as u32),
            stretches,
            faces: before.1 as u32..self.faces.len() as u32,
            closed: before.2 as u32..self.closed.len() as u32,
            outer,
        });
    }

    /// Room for the surroundings of a run that has any.
    fn add_dense(
        &mut self,
        case: &Case,
        [along, y, z]: [usize; 3],
        (arounds, dense, from): (usize, u32, u32),
        len: usize,
    ) {
        for around in &mut self.arounds[arounds..] {
            around.dense = dense + around.from - from;
        }
        let volume = |x: usize| match x < case.grid.counts()[0] {
            true => case.volume(case.grid.index([x, y, z])) as f32,
            false => 0.0,
        };
        self.around_m3.extend((along..along + len).map(volume));
        self.around_rate.resize(self.around_m3.len(), 0.0);
        self.around_c.resize(self.around_m3.len(), 0.0);
    }

    /// Parts the blocks of a run by what fills them.
    fn add_stretches(
        &mut self,
        tables: &[Table],
        (at, from): (u32, u32),
        materials: &[u8],
    ) -> Range<u32> {
        let first = self.stretches.len() as u32;
        for (block, materials) in materials.chunks(LANES).enumerate() {
            let one = materials.iter().all(|material| *material == materials[0]);
            let filling = match one {
                true => Filling::One(materials[0]),
                false => {
                    let mix = Mix::of(materials, tables);
                    Filling::Several(number_of(&mut self.mixes, mix))
                }
            };
            let away = (block * LANES) as u32;
            let goes_on = self.stretches.len() as u32 > first;
            match self.stretches.last_mut() {
                Some(last) if goes_on && one && last.filling == filling => {
                    last.len += LANES as u32;
                }
                _ => self.stretches.push(Stretch {
                    at: at + away,
                    len: LANES as u32,
                    from: from + away,
                    filling,
                }),
            }
        }
        first..self.stretches.len() as u32
    }

    fn add_cell(&mut self, plan: &Plan, place: [usize; 3], from: u32) {
        let Plan {
            case,
            kinds,
            tables,
            padded,
        } = *plan;
        let cell = case.grid.index(place);
        let number = case.cells[cell];
        let here = padded.at(place) as u32;
        let volume_m3 = case.volume(cell);
        let start = case.materials[usize::from(number)].heat_at(f64::from(case.start_c[cell]));
        let (block, lane) = super::place(from);
        self.blocks[block].heat[lane] = (start - tables[usize::from(number)].base_j_m3) as f32;
        match self.spans.last_mut() {
            Some(span) if span.at + span.len == here && span.material == number => span.len += 1,
            _ => self.spans.push(Span {
                at: here,
                len: 1,
                from,
                material: number,
            }),
        }
        let whole = case.is_whole(cell);
        if whole && is_deep(case, kinds, place) {
            return;
        }
        for (axis, high) in SIDES {
            let side_number = (2 * axis + high) as u8;
            match side(case, place, axis, high) {
                Side::Next(other, link) => {
                    let there = padded.at(case.grid.place(other)) as u32;
                    let way = Way {
                        alike: link.alike,
                        area: (link.area_m2 / volume_m3) as f32,
                        here_m: link.here_m as f32,
                        there_m: link.there_m as f32,
                        contact: link.contact_m2kw as f32,
                        there_w_mk: match kinds[other] {
                            Kind::Quick => None,
                            _ => tables[usize::from(case.cells[other])].steady_w_mk,
                        },
                    };
                    let face = |ways: &mut Vec<Way>| Face {
                        from,
                        here,
                        there,
                        way: number_of(ways, way),
                        side: side_number,
                    };
                    match kinds[other] {
                        Kind::Quick if link.alike && whole => {}
                        Kind::Quick => self.faces.push(face(&mut self.ways)),
                        _ => {
                            self.crossing.push(face(&mut self.ways));
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
}

impl Mix {
    fn of(materials: &[u8], tables: &[Table]) -> Mix {
        // A block is whole: what overhangs has a material too.
        let numbers: [u8; LANES] = std::array::from_fn(|lane| materials[lane]);
        let tables = numbers.map(|material| &tables[usize::from(material)]);
        let mut among = materials.to_vec();
        among.sort_unstable();
        among.dedup();
        Mix {
            numbers,
            among,
            celsius: Blend::of(tables.map(|table| &table.celsius)),
            w_mk: Blend::of(tables.map(|table| &table.w_mk)),
            inverse: tables.map(|table| 1.0 / table.least_j_m3k),
        }
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
