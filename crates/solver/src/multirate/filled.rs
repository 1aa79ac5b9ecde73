//! The lists of a run are filled from the start of its case.

use super::Multirate;
use crate::multirate::slow::wake_around;
use crate::multirate::split::{Kind, Split};

impl Multirate<'_> {
    /// Takes the start of the case.
    pub fn fill(&mut self, split: Split) {
        let along = self.padded.counts[0];
        let of_material = |number: u8| self.tables.get(usize::from(number));
        let changing = self
            .case
            .cells
            .iter()
            .zip(&split.kinds)
            .any(|(number, kind)| {
                let slow = matches!(kind, Kind::Even | Kind::Mixed);
                slow && of_material(*number).is_some_and(|table| table.plain_j_m3k.is_none())
            });
        if changing {
            self.heat = vec![0.0; self.padded.len()];
        }
        let steady = (self.tables.iter().zip(&split.quick_materials))
            .all(|(table, quick)| *quick || table.steady_w_mk.is_some());
        if !steady {
            self.w_mk = vec![0.0; self.padded.len()];
        }
        drop(split);
        for place in self.padded.rows() {
            let (cell, at) = (self.case.grid.index(place), self.padded.at(place));
            let start_c = &self.case.start_c[cell..cell + along];
            self.celsius[at..at + along].copy_from_slice(start_c);
            if changing || !steady {
                self.fill_row(cell, at, along);
            }
        }
        self.fill_quick_temperatures();
        self.wake();
    }

    /// Wakes rows in which heat may pass.
    pub fn wake(&mut self) {
        for slow in &self.slow {
            slow.wake_uneven(&self.padded, &self.celsius, &mut self.awake);
        }
        for span in self.quick.iter().flat_map(|quick| &quick.spans) {
            let row = span.at as usize / self.padded.row;
            wake_around(row, &self.padded, &mut self.awake);
        }
    }

    /// Heat contents and conductivities of a row, where they are kept.
    fn fill_row(&mut self, cell: usize, at: usize, along: usize) {
        for x in 0..along {
            let number = usize::from(self.case.cells[cell + x]);
            let Some(table) = self.tables.get(number) else {
                continue;
            };
            let celsius = f64::from(self.case.start_c[cell + x]);
            let heat = self.case.materials[number].heat_at(celsius) - table.base_j_m3;
            if let Some(kept) = self.heat.get_mut(at + x) {
                *kept = heat as f32;
            }
            if let Some(w_mk) = self.w_mk.get_mut(at + x) {
                *w_mk = table.w_mk.at(heat as f32);
            }
        }
    }
}
