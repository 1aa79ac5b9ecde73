//! What quick cells cross in a step, written down as it happens.

use pulp::Simd;

use crate::case::Case;
use crate::freezing::{Freezing, Levels, reached};
use crate::link::gradient_k_m;
use crate::multirate::padded::{LEAD, Padded};
use crate::multirate::quick::{Filling, Quick, Stretch};
use crate::multirate::ramps::Table;
use crate::multirate::wide::{LANES, registers};

/// Lists beside those of the quick cells of some planes.
pub struct Record {
    /// Levels of each material that freezes, J/m³ above its base: begins, passes, gradient, ends.
    levels: Vec<Option<[f32; 4]>>,
    begins_s: Vec<f32>,
    passes_s: Vec<f32>,
    ends_s: Vec<f32>,
    gradient_k_m: Vec<f32>,
    cooling_k_s: Vec<f32>,
    /// Cells that can freeze and are not solid yet.
    pub unfrozen: usize,
}

/// A step with the temperatures after it.
pub struct Step<'all> {
    /// Tables of the materials.
    pub tables: &'all [Table],
    /// The case.
    pub case: &'all Case,
    /// The box with its rim.
    pub padded: &'all Padded,
    /// Temperatures after it.
    pub celsius: &'all [f32],
    /// Its length, s.
    pub step_s: f64,
    /// When it ends, s.
    pub now_s: f64,
}

/// A cell that is looked at: where it stands packed and with a rim, and its material.
#[derive(Clone, Copy)]
struct Looked {
    from: usize,
    at: u32,
    material: u8,
}

impl Record {
    /// Nothing written yet.
    pub fn of(case: &Case, tables: &[Table], quick: &Quick, share: f64) -> Record {
        let levels = case
            .materials
            .iter()
            .zip(tables)
            .map(|(material, table)| Some(Levels::of(material, share)?.above(table.base_j_m3)));
        let levels: Vec<_> = levels.collect();
        let any = levels.iter().any(Option::is_some);
        let unknown = vec![f32::NAN; if any { quick.lanes() } else { 0 }];
        let mut record = Record {
            levels,
            begins_s: unknown.clone(),
            passes_s: unknown.clone(),
            ends_s: unknown.clone(),
            gradient_k_m: unknown.clone(),
            cooling_k_s: unknown,
            unfrozen: 0,
        };
        record.count(quick);
        record
    }

    /// Takes up what was written down, from an entry on; gives the first entry that is not its own.
    pub fn take_up(&mut self, quick: &Quick, kept: &Freezing, mut entry: usize) -> usize {
        for span in &quick.spans {
            if self.levels[usize::from(span.material)].is_none() {
                continue;
            }
            let (cells, end) = (span.packed(), entry + span.len as usize);
            self.begins_s[cells.clone()].copy_from_slice(&kept.begins_s[entry..end]);
            self.passes_s[cells.clone()].copy_from_slice(&kept.passes_s[entry..end]);
            self.ends_s[cells.clone()].copy_from_slice(&kept.ends_s[entry..end]);
            self.gradient_k_m[cells.clone()].copy_from_slice(&kept.gradient_k_m[entry..end]);
            self.cooling_k_s[cells].copy_from_slice(&kept.cooling_k_s[entry..end]);
            entry = end;
        }
        self.count(quick);
        entry
    }

    /// Counts the cells that are not solid yet.
    fn count(&mut self, quick: &Quick) {
        self.unfrozen = 0;
        for span in &quick.spans {
            if let Some([.., ends]) = self.levels[usize::from(span.material)] {
                let above = |from: &usize| quick.heat_of(*from).0 > ends;
                self.unfrozen += span.packed().filter(above).count();
            }
        }
    }

    /// Writes down what a step has crossed, before its changes are added.
    #[inline(always)]
    pub fn step<S: Simd>(&mut self, simd: S, quick: &Quick, step: &Step) {
        for stretch in &quick.stretches {
            match stretch.filling {
                Filling::One(material) => self.look(simd, quick, stretch, material, step),
                Filling::Several(mix) => {
                    for &material in &quick.mixes[mix as usize].among {
                        self.look(simd, quick, stretch, material, step);
                    }
                }
            }
        }
    }

    /// Most cells cross nothing in most steps: registers in which none does are passed by.
    #[inline(always)]
    fn look<S: Simd>(
        &mut self,
        simd: S,
        quick: &Quick,
        stretch: &Stretch,
        material: u8,
        step: &Step,
    ) {
        let Some(levels) = self.levels[usize::from(material)] else {
            return;
        };
        for i in 0..registers::<S>(LANES) {
            for (block, (before, after)) in quick.heats(simd, stretch, i).enumerate() {
                if before.any_crosses(after, &levels) {
                    let first = block * LANES + i * S::F32_LANES;
                    self.look_closer(quick, step, stretch, (first, S::F32_LANES), material);
                }
            }
        }
    }

    #[inline(never)]
    fn look_closer(
        &mut self,
        quick: &Quick,
        step: &Step,
        stretch: &Stretch,
        (first, count): (usize, usize),
        material: u8,
    ) {
        for cell in first..first + count {
            if quick.holds(stretch, cell, material) {
                let looked = Looked {
                    from: stretch.from as usize + cell,
                    at: stretch.at + cell as u32,
                    material,
                };
                self.write(quick, step, looked);
            }
        }
    }

    /// Adds what is written to the lists of the whole box.
    pub fn add_to(&self, quick: &Quick, case: &Case, padded: &Padded, all: &mut Freezing) {
        for span in &quick.spans {
            if self.levels[usize::from(span.material)].is_none() {
                continue;
            }
            let cells = span.packed();
            let places = (span.at..span.at + span.len).map(|at| cell_of(case, padded, at) as u32);
            all.cells.extend(places);
            all.begins_s.extend(&self.begins_s[cells.clone()]);
            all.passes_s.extend(&self.passes_s[cells.clone()]);
            all.ends_s.extend(&self.ends_s[cells.clone()]);
            all.gradient_k_m.extend(&self.gradient_k_m[cells.clone()]);
            all.cooling_k_s.extend(&self.cooling_k_s[cells]);
        }
    }

    fn write(&mut self, quick: &Quick, step: &Step, looked: Looked) {
        let Some([begins, passes, gradient, ends]) = self.levels[usize::from(looked.material)]
        else {
            return;
        };
        let at = looked.from;
        let (before, change) = quick.heat_of(at);
        let after = before + change;
        let when = |level: f32| {
            let share = reached(f64::from(level), f64::from(before), f64::from(after))?;
            Some((step.now_s - step.step_s + share * step.step_s) as f32)
        };
        self.begins_s[at] = when(begins).unwrap_or(self.begins_s[at]);
        self.passes_s[at] = when(passes).unwrap_or(self.passes_s[at]);
        self.ends_s[at] = when(ends).unwrap_or(self.ends_s[at]);
        self.unfrozen += usize::from(before <= ends && after > ends);
        self.unfrozen -= usize::from(before > ends && after <= ends);
        if when(gradient).is_some() {
            let table = &step.tables[usize::from(looked.material)];
            let cooled = table.celsius.at(before) - table.celsius.at(after);
            self.cooling_k_s[at] = (f64::from(cooled) / step.step_s) as f32;
            let cell = cell_of(step.case, step.padded, looked.at);
            let place = |cell| step.padded.at(step.case.grid.place(cell));
            let celsius = |cell: usize| f64::from(step.celsius[place(cell)]);
            self.gradient_k_m[at] = gradient_k_m(step.case, cell, &celsius) as f32;
        }
    }
}

/// The cell that stands somewhere in lists with a rim.
fn cell_of(case: &Case, padded: &Padded, at: u32) -> usize {
    let at = at as usize;
    let (z, y, x) = (
        at / padded.plane - 1,
        at % padded.plane / padded.row - 1,
        at % padded.row - LEAD,
    );
    case.grid.index([x, y, z])
}
