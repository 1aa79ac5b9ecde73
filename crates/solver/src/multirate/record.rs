//! What quick cells cross in a step, written down as it happens.

use crate::case::Case;
use crate::freezing::{Freezing, Levels, reached};
use crate::link::gradient_k_m;
use crate::multirate::padded::Padded;
use crate::multirate::quick::{Quick, Span};
use crate::multirate::ramps::Table;

/// Lists beside those of the quick cells of some planes.
pub struct Record {
    levels: Vec<Option<Levels>>,
    begins_s: Vec<f32>,
    passes_s: Vec<f32>,
    ends_s: Vec<f32>,
    gradient_k_m: Vec<f32>,
    cooling_k_s: Vec<f32>,
    /// Cells that can freeze and are not solid yet.
    pub unfrozen: usize,
}

/// A step with the temperatures after it.
struct Step<'all> {
    table: &'all Table,
    case: &'all Case,
    padded: &'all Padded,
    celsius: &'all [f32],
    step_s: f64,
    now_s: f64,
}

impl Record {
    /// Nothing written yet.
    pub fn of(case: &Case, quick: &Quick, share: f64) -> Record {
        let levels = case
            .materials
            .iter()
            .map(|material| Levels::of(material, share));
        let levels: Vec<_> = levels.collect();
        let any = levels.iter().any(Option::is_some);
        let unknown = vec![f32::NAN; if any { quick.cells() } else { 0 }];
        let mut record = Record {
            levels,
            begins_s: unknown.clone(),
            passes_s: unknown.clone(),
            ends_s: unknown.clone(),
            gradient_k_m: unknown.clone(),
            cooling_k_s: unknown,
            unfrozen: 0,
        };
        for span in &quick.spans {
            if let Some(levels) = span.levels(&record.levels) {
                let base =
                    crate::multirate::ramps::Table::of(&case.materials[usize::from(span.material)])
                        .base_j_m3;
                let above = |heat: &&f32| f64::from(**heat) + base > levels.ends;
                record.unfrozen += quick.heat[span.packed()].iter().filter(above).count();
            }
        }
        record
    }

    /// Writes down what the step that ends at `now_s` has crossed.
    pub fn step(
        &mut self,
        quick: &Quick,
        tables: &[Table],
        case: &Case,
        (padded, celsius): (&Padded, &[f32]),
        step_s: f64,
        now_s: f64,
    ) {
        for span in &quick.spans {
            let Some(levels) = span.levels(&self.levels) else {
                continue;
            };
            let table = &tables[usize::from(span.material)];
            let base = table.base_j_m3;
            let [begins, passes, gradient, ends] =
                [levels.begins, levels.passes, levels.gradient, levels.ends]
                    .map(|level| (level - base) as f32);
            let cells = span.packed();
            let pairs = quick.heat[cells.clone()].iter().zip(&quick.change[cells]);
            let step = Step {
                table,
                case,
                padded,
                celsius,
                step_s,
                now_s,
            };
            for (i, (&before, &change)) in pairs.enumerate() {
                let after = before + change;
                // Most cells cross nothing in most steps.
                let crosses = |level: f32| (before > level) != (after > level);
                if crosses(begins) || crosses(passes) || crosses(gradient) || crosses(ends) {
                    let levels = [begins, passes, gradient, ends];
                    self.write(&step, span, i, (before, after), levels);
                }
            }
        }
    }

    /// Adds what is written to the lists of the whole box.
    pub fn add_to(&self, quick: &Quick, case: &Case, padded: &Padded, all: &mut Freezing) {
        for span in &quick.spans {
            if span.levels(&self.levels).is_none() {
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

    fn write(
        &mut self,
        step: &Step,
        span: &Span,
        i: usize,
        (before, after): (f32, f32),
        [begins, passes, gradient, ends]: [f32; 4],
    ) {
        let at = span.from as usize + i;
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
            let cooled = step.table.celsius.at(before) - step.table.celsius.at(after);
            self.cooling_k_s[at] = (f64::from(cooled) / step.step_s) as f32;
            let cell = cell_of(step.case, step.padded, span.at + i as u32);
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
        at % padded.row - 1,
    );
    case.grid.index([x, y, z])
}
