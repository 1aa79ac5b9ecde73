//! The state of a case that was laid out, kept as one of the scheme for use, and taken up from it.

use crate::elsewhere::State;
use crate::kept::{Kept, KeptError};
use crate::laid::{Goes, Laid};
use crate::multirate::split::Kind;

impl Laid<'_> {
    /// Puts a state into what is kept.
    pub(crate) fn keep(&self, state: State, kept: &mut Kept) {
        let mut slow_j_m3 = match self.keeps_slow() {
            true if state.swept_j_m3.is_empty() => vec![0.0; self.kinds.len()],
            true => state.swept_j_m3,
            false => Vec::new(),
        };
        let carried = state.staged_j_m3.iter().zip(&state.lost_j_m3);
        for (cell, (heat, lost)) in self.staged().zip(carried) {
            if self.kinds[cell] == Kind::Quick {
                kept.quick_j_m3.push(*heat);
                kept.quick_lost_j_m3.push(*lost);
            } else if let Some(slow_j_m3) = slow_j_m3.get_mut(cell) {
                *slow_j_m3 = *heat;
            }
        }
        kept.slow_j_m3 = slow_j_m3;
        kept.celsius = state.celsius;
        kept.freezing = state.freezing;
        kept.through_j = state.through_j;
    }

    /// The state that was kept of the same case.
    pub(crate) fn take_up(&self, kept: &Kept) -> Result<State, KeptError> {
        let cells = self.kinds.len();
        let quick = self
            .kinds
            .iter()
            .filter(|kind| **kind == Kind::Quick)
            .count();
        let lists = [
            (kept.celsius.len(), cells),
            (
                kept.slow_j_m3.len(),
                if self.keeps_slow() { cells } else { 0 },
            ),
            (kept.quick_j_m3.len(), quick),
            (kept.quick_lost_j_m3.len(), quick),
        ];
        let fits = lists.iter().all(|(given, wanted)| given == wanted);
        let frozen: Vec<u32> = self.freezing_cells().collect();
        if !fits || !kept.freezing.is_of(&frozen) {
            return Err(KeptError::OtherCase);
        }
        let mut state = State {
            celsius: kept.celsius.clone(),
            freezing: kept.freezing.clone(),
            through_j: kept.through_j,
            ..State::default()
        };
        let mut carried = kept.quick_j_m3.iter().zip(&kept.quick_lost_j_m3);
        for cell in self.staged() {
            let of_slow = || (self.slow_j_m3(kept, cell), 0.0);
            let (heat, lost) = match self.kinds[cell] {
                Kind::Quick => carried
                    .next()
                    .map_or_else(of_slow, |(heat, lost)| (*heat, *lost)),
                _ => of_slow(),
            };
            state.staged_j_m3.push(heat);
            state.lost_j_m3.push(lost);
        }
        if self.has_heat_of_swept() {
            state.swept_j_m3.clone_from(&kept.slow_j_m3);
        }
        Ok(state)
    }

    /// Heat content above its base of a cell that the scheme for use takes in one step, J/m³.
    fn slow_j_m3(&self, kept: &Kept, cell: usize) -> f32 {
        let number = usize::from(self.case.cells[cell]);
        let table = &self.tables[number];
        match table.plain_j_m3k {
            None => kept.slow_j_m3[cell],
            Some(_) => {
                let celsius = f64::from(kept.celsius[cell]);
                (self.case.materials[number].heat_at(celsius) - table.base_j_m3) as f32
            }
        }
    }

    /// Whether the scheme for use carries heat contents of cells that it takes in one step.
    fn keeps_slow(&self) -> bool {
        let slow = |kind: &Kind| matches!(kind, Kind::Even | Kind::Mixed);
        let mut cells = self.case.cells.iter().zip(&self.kinds);
        cells.any(|(number, kind)| {
            slow(kind) && self.tables[usize::from(*number)].plain_j_m3k.is_none()
        })
    }

    /// Cells that the scheme for use takes in stages.
    pub(crate) fn staged_count(&self) -> usize {
        self.kinds
            .iter()
            .filter(|kind| kind.goes() == Goes::Staged)
            .count()
    }
}
