//! Quick cells are found and packed.

use std::ops::Range;

use super::around::Around;
use super::block::Block;
use super::face::{Face, Way, number_of};
use super::{Filling, Mix, Quick, Run, Span, Stretch};
use crate::case::Case;
use crate::early::Early;
use crate::link::{SIDES, Side, side};
use crate::multirate::padded::Padded;
use crate::multirate::ramps::{Blend, Ramps, Table};
use crate::multirate::split::{Kind, runs};
use crate::multirate::wide::LANES;

/// What cells are laid out from.
pub struct Plan<'all> {
    /// The case.
    pub case: &'all Case,
    /// How each cell goes.
    pub kinds: &'all [Kind],
    /// How far heat comes at first.
    pub early: &'all Early,
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
        let runs_of = |z: usize, y: usize| {
            let row = (z * rows + y) * along;
            runs(&plan.kinds[row..row + along])
        };
        let places = || z.clone().flat_map(|z| (0..rows).map(move |y| (z, y)));
        let lanes = |(z, y)| runs_of(z, y).map(|run| run.len()).sum::<usize>();
        // Counted beforehand: a list that grows leaves holes behind.
        let blocks = places().map(lanes).sum::<usize>() / LANES;
        quick.blocks.reserve_exact(blocks);
        for (z, y) in places() {
            for run in runs_of(z, y) {
                quick.add_run(plan, [run.start, y, z], run.len());
            }
        }
        quick.lost = vec![[0.0; LANES]; blocks];
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
            echoes: Vec::new(),
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
        let mut lanes = Vec::with_capacity(len);
        for lane in 0..len {
            if lane % LANES == 0 {
                self.blocks.push(Block::EMPTY);
            }
            let place = [place[0] + lane, place[1], place[2]];
            lanes.push(self.add_lane(plan, place, from + lane as u32, lanes.last().copied()));
        }
        let outer = (self.arounds.len() > before.0).then_some(self.around_rate.len() as u32);
        if let Some(dense) = outer {
            self.add_dense(plan.case, place, (before.0, dense, from), len);
        }
        let stretches = self.add_stretches(plan.tables, (at, from), &lanes);
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

    /// A quick cell, or what stands in a block beside quick cells: closed on all sides.
    fn add_lane(&mut self, plan: &Plan, place: [usize; 3], from: u32, last: Option<Lane>) -> Lane {
        let cell = plan.case.grid.index(place);
        let within = place[0] < plan.case.grid.counts()[0];
        let kind = if within { plan.kinds[cell] } else { Kind::Void };
        if kind == Kind::Quick {
            self.add_cell(plan, place, from);
            let material = plan.case.cells[cell];
            return Lane {
                number: material,
                conducts_as: material,
            };
        }
        self.closed.extend((0..6).map(|side| (from, side)));
        match (kind, last) {
            // A run begins with a quick cell: what is not solved goes with the last that is.
            (Kind::Void, Some(last)) => last,
            _ => {
                let (block, lane) = super::place(from);
                self.blocks[block].heat[lane] = plan.case.start_c[cell];
                self.echoes.push((from, plan.padded.at(place) as u32));
                Lane {
                    number: ECHO,
                    conducts_as: plan.case.cells[cell],
                }
            }
        }
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
        lanes: &[Lane],
    ) -> Range<u32> {
        let first = self.stretches.len() as u32;
        for (block, lanes) in lanes.chunks(LANES).enumerate() {
            let one = lanes.iter().all(|lane| *lane == lanes[0]);
            let filling = match one {
                true => Filling::One(lanes[0].number),
                false => {
                    let mix = Mix::of(lanes, tables);
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
            early,
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
        if whole && is_deep(case, &|cell| kinds[cell] == Kind::Quick, place) {
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
                        reach: early.reach([number, case.cells[other]]).map(|m| m as f32),
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

/// What stands in a lane: a material by its number or the echo of a slow cell, and the material
/// whose conductivity it has.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Lane {
    number: u8,
    conducts_as: u8,
}

/// The number of no material: a slow cell in a block of quick ones. Its lane holds its temperature
/// after the step and says it again at every stage, so that a block can be written as a whole.
const ECHO: u8 = u8::MAX;

impl Mix {
    fn of(lanes: &[Lane], tables: &[Table]) -> Mix {
        let echo = Ramps::echo();
        // A block is whole.
        let numbers: [u8; LANES] = std::array::from_fn(|at| lanes[at].number);
        let celsius = numbers.map(|number| match number {
            ECHO => &echo,
            material => &tables[usize::from(material)].celsius,
        });
        let w_mk = std::array::from_fn(|at| &tables[usize::from(lanes[at].conducts_as)].w_mk);
        let mut among: Vec<u8> = numbers
            .into_iter()
            .filter(|&number| number != ECHO)
            .collect();
        among.sort_unstable();
        among.dedup();
        Mix {
            numbers,
            among,
            celsius: Blend::of(celsius),
            w_mk: Blend::of(w_mk),
            inverse: numbers.map(|number| match number {
                ECHO => 0.0,
                material => 1.0 / tables[usize::from(material)].least_j_m3k,
            }),
        }
    }
}

/// Whether a cell stands within the box with only such cells of its own material beside it.
pub fn is_deep(case: &Case, is_such: &impl Fn(usize) -> bool, place: [usize; 3]) -> bool {
    let [along, rows, planes] = case.grid.counts();
    let inner = (0..3).all(|axis| place[axis] > 0 && place[axis] + 1 < [along, rows, planes][axis]);
    let cell = case.grid.index(place);
    inner
        && [1, along, along * rows].into_iter().all(|away| {
            [cell - away, cell + away]
                .into_iter()
                .all(|other| case.cells[other] == case.cells[cell] && is_such(other))
        })
}
