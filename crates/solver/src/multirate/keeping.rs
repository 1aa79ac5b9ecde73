//! What a run carries from step to step, put aside and taken up again, in the order of the cells.

use super::Multirate;
use crate::kept::{Kept, KeptError};

impl Multirate<'_> {
    /// Puts what it carries from step to step into what is kept.
    pub fn keep(&self, kept: &mut Kept) {
        kept.step_s = self.step_s;
        kept.stages = self.stages as u64;
        kept.through_j = self.through_j();
        kept.freezing = self.freezing();
        kept.celsius = self.without_rim(&self.celsius);
        if !self.heat.is_empty() {
            kept.slow_j_m3 = self.without_rim(&self.heat);
        }
        for (heat, lost) in self.quick.iter().flat_map(|quick| quick.carried()) {
            kept.quick_j_m3.push(heat);
            kept.quick_lost_j_m3.push(lost);
        }
    }

    /// Takes up what was kept of the same case.
    pub fn take_up(&mut self, kept: &Kept) -> Result<(), KeptError> {
        let cells = self.case.grid.cells();
        let slow = if self.heat.is_empty() { 0 } else { cells };
        let lists = [
            (kept.celsius.len(), cells),
            (kept.slow_j_m3.len(), slow),
            (kept.quick_j_m3.len(), self.quick_cells),
            (kept.quick_lost_j_m3.len(), self.quick_cells),
        ];
        let fits = lists.iter().all(|(given, wanted)| given == wanted);
        if !fits || !kept.freezing.is_of(&self.freezing().cells) {
            return Err(KeptError::OtherCase);
        }
        self.step_s = kept.step_s;
        self.stages = kept.stages as usize;
        self.before_j = kept.through_j;
        let carried = kept.quick_j_m3.iter().zip(&kept.quick_lost_j_m3);
        let mut carried = carried.map(|(heat, lost)| (*heat, *lost));
        let mut first = 0;
        for (quick, record) in self.quick.iter_mut().zip(&mut self.record) {
            quick.take_up(&mut carried);
            first = record.take_up(quick, &kept.freezing, first);
        }
        self.with_rim(&kept.celsius, &kept.slow_j_m3);
        self.wake();
        Ok(())
    }

    /// A list of all cells, without the rim.
    pub fn without_rim(&self, list: &[f32]) -> Vec<f32> {
        let along = self.padded.counts[0];
        let mut all = Vec::with_capacity(self.case.grid.cells());
        for place in self.padded.rows() {
            let at = self.padded.at(place);
            all.extend_from_slice(&list[at..at + along]);
        }
        all
    }

    fn with_rim(&mut self, celsius: &[f32], heat: &[f32]) {
        let along = self.padded.counts[0];
        for place in self.padded.rows() {
            let (cell, at) = (self.case.grid.index(place), self.padded.at(place));
            self.celsius[at..at + along].copy_from_slice(&celsius[cell..cell + along]);
            if !heat.is_empty() {
                self.heat[at..at + along].copy_from_slice(&heat[cell..cell + along]);
            }
        }
    }
}
