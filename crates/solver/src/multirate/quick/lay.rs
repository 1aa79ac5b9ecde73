//! Quick cells are found and packed.

use std::ops::Range;

use super::{Around, Face, Quick, Run, Span};
use crate::case::Case;
use crate::link::{SIDES, Side, side};
use crate::multirate::padded::Padded;
use crate::multirate::ramps::Table;
use crate::multirate::split::Kind;

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
        quick.change = vec![0.0; cells];
        quick.older = vec![0.0; cells];
        quick.lost = vec![0.0; cells];
        quick
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
            change: Vec::new(),
            older: Vec::new(),
            lost: Vec::new(),
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
        let whole = case.is_whole(cell);
        if whole && is_deep(case, kinds, place) {
            return;
        }
        for (axis, high) in SIDES {
            let side_number = (2 * axis + high) as u8;
            match side(case, place, axis, high) {
                Side::Next(other, link) => {
                    let there = padded.at(case.grid.place(other)) as u32;
                    let face = Face {
                        from,
                        side: side_number,
                        alike: link.alike,
                        here,
                        there,
                        area: (link.area_m2 / volume_m3) as f32,
                        here_m: link.here_m as f32,
                        there_m: link.there_m as f32,
                        contact: link.contact_m2kw as f32,
                    };
                    match kinds[other] {
                        Kind::Quick if link.alike && whole => {}
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
