//! Slow cells with something else beside them, one by one.
//!
//! What comes to them is worked out from the temperatures before a step, so all of it before any
//! row is written over.

use std::ops::Range;

use super::{Slow, Step};
use crate::case::Case;
use crate::link::{Link, SIDES, Side, side};
use crate::multirate::padded::Padded;

/// A cell with something else beside it.
#[derive(Debug, Clone)]
pub struct Mixed {
    /// Where it stands with a rim.
    pub at: u32,
    /// Its material.
    pub material: u8,
    volume_m3: f64,
    ways: Range<usize>,
    outers: Range<usize>,
    /// What comes to it in the step, J/m³.
    gained_j_m3: f64,
}

/// The way to a neighbour of such a cell.
#[derive(Debug, Clone, Copy)]
pub struct Way {
    there: u32,
    material: u8,
    link: Link,
}

impl Slow {
    /// Adds such a cell.
    pub fn add_mixed(&mut self, case: &Case, padded: &Padded, place: [usize; 3]) {
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
            gained_j_m3: 0.0,
        });
    }

    /// Whether it has such cells.
    pub fn has_mixed(&self) -> bool {
        !self.mixed.is_empty()
    }

    /// Works out what comes to them in a step; `celsius` are the temperatures of the box before it.
    pub fn gather(&mut self, step: &Step, celsius: &[f32]) {
        for mixed in &mut self.mixed {
            let at = mixed.at as usize;
            let own_c = f64::from(celsius[at]);
            let w_mk_at = |material: u8, at: usize| {
                let steady = step.tables[usize::from(material)].steady_w_mk;
                f64::from(steady.unwrap_or_else(|| step.w_mk[at]))
            };
            let own_w_mk = w_mk_at(mixed.material, at);
            let mut watts = 0.0;
            for way in &self.ways[mixed.ways.clone()] {
                let other = way.there as usize;
                let w_k = way
                    .link
                    .w_k(own_w_mk, w_mk_at(way.material, other), f64::INFINITY);
                watts += w_k * (f64::from(celsius[other]) - own_c);
            }
            for outer in &self.outers[mixed.outers.clone()] {
                let inflow = outer.inflow(own_c, own_w_mk);
                let through = inflow.w + inflow.w_k * (inflow.outside_c - own_c);
                self.through_j += step.step_s * through;
                watts += through;
            }
            mixed.gained_j_m3 = step.step_s * watts / mixed.volume_m3;
        }
    }

    /// Gives it to them; `heat` and `celsius` are those of the planes.
    pub fn step_mixed(&self, step: &Step, heat: &mut [f32], celsius: &mut [f32]) {
        for mixed in &self.mixed {
            let table = &step.tables[usize::from(mixed.material)];
            let (here, gained) = (mixed.at as usize - self.origin, mixed.gained_j_m3);
            match table.plain_j_m3k {
                Some(j_m3k) => {
                    celsius[here] = (f64::from(celsius[here]) + gained / f64::from(j_m3k)) as f32;
                }
                None => {
                    heat[here] = (f64::from(heat[here]) + gained) as f32;
                    celsius[here] = table.celsius.at(heat[here]);
                }
            }
        }
    }
}
