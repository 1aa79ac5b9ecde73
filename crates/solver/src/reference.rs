//! The plain explicit scheme in double precision: every cell, every face, one short step.
//!
//! It is slow and there is nothing in it to get wrong; the scheme for use is checked against it.
//! A face is worked out once and its heat taken from one cell and given to the other, so that heat
//! is kept to rounding.

use crate::case::Case;
use crate::early::{Early, root_of};
use crate::freezing::{Freezing, Levels, reached};
use crate::kept::{Kept, KeptError};
use crate::link::{self, Link, Outer, SIDES, Side, hottest_c, longest_step_s, side};
use crate::run::{Moment, Wish};

/// The state of a run.
pub struct Reference<'case> {
    case: &'case Case,
    heat: Vec<f64>,
    celsius: Vec<f64>,
    w_mk: Vec<f64>,
    gained_j: Vec<f64>,
    volume_m3: Vec<f64>,
    links: Vec<(u32, u32, Link)>,
    outers: Vec<(u32, Outer)>,
    early: Early,
    levels: Vec<Option<Levels>>,
    freezing: Freezing,
    /// Longest step that is stable, s, with a margin.
    pub step_s: f64,
    /// Heat that came in through all faces so far, J.
    pub through_j: f64,
    /// Cells that are not solid yet.
    pub unfrozen: usize,
}

/// Share of the longest stable step that is taken; above it a step of one cell may overshoot where
/// its capacity changes within the step.
const MARGIN: f64 = 0.95;

impl Reference<'_> {
    /// Stands at the start of a case.
    pub fn start<'case>(case: &'case Case, wish: &Wish) -> Reference<'case> {
        let early = Early::of(case, wish.early_contact);
        let cells = case.grid.cells();
        let solved = |cell: &usize| case.material(*cell).is_some();
        let heat_at = |cell| {
            let celsius = f64::from(case.start_c[cell]);
            case.material(cell)
                .map_or(0.0, |material| material.heat_at(celsius))
        };
        let hottest = hottest_c(case);
        let limits = (0..cells)
            .filter(solved)
            .map(|cell| longest_step_s(case, &early, cell, hottest));
        let limit_s = limits.fold(f64::INFINITY, f64::min);
        let levels = case
            .materials
            .iter()
            .map(|material| Levels::of(material, wish.passing_share));
        let mut reference = Reference {
            case,
            heat: (0..cells).map(heat_at).collect(),
            celsius: case
                .start_c
                .iter()
                .map(|&celsius| f64::from(celsius))
                .collect(),
            w_mk: vec![0.0; cells],
            gained_j: vec![0.0; cells],
            volume_m3: (0..cells).map(|cell| case.volume(cell)).collect(),
            links: Vec::new(),
            outers: Vec::new(),
            early,
            levels: levels.collect(),
            freezing: Freezing::default(),
            step_s: MARGIN * limit_s,
            through_j: 0.0,
            unfrozen: 0,
        };
        reference.lay_links();
        reference.watch();
        reference.read_tables();
        reference
    }

    /// Goes on by a step, which ends at `now_s`.
    pub fn advance(&mut self, step_s: f64, now_s: f64) {
        let root_s = root_of(now_s - step_s, now_s);
        for &(low, high, link) in &self.links {
            let (low, high) = (low as usize, high as usize);
            let w_k = link.w_k(self.w_mk[low], self.w_mk[high], root_s);
            let joules = step_s * w_k * (self.celsius[low] - self.celsius[high]);
            self.gained_j[low] -= joules;
            self.gained_j[high] += joules;
        }
        for &(cell, outer) in &self.outers {
            let cell = cell as usize;
            let inflow = outer.inflow(self.celsius[cell], self.w_mk[cell]);
            let joules = step_s * (inflow.w + inflow.w_k * (inflow.outside_c - self.celsius[cell]));
            self.gained_j[cell] += joules;
            self.through_j += joules;
        }
        self.record(step_s, now_s);
        for cell in 0..self.heat.len() {
            self.heat[cell] += self.gained_j[cell] / self.volume_m3[cell];
            self.gained_j[cell] = 0.0;
        }
        self.read_tables();
    }

    /// Heat in all cells, J.
    pub fn joules(&self) -> f64 {
        let pairs = self.heat.iter().zip(&self.volume_m3).enumerate();
        let solved = pairs.filter(|(cell, _)| self.case.material(*cell).is_some());
        solved.map(|(_, (heat, volume))| heat * volume).sum()
    }

    /// Temperatures and heat contents as they stand.
    pub fn moment(&self, now_s: f64) -> Moment {
        Moment {
            time_s: now_s,
            celsius: self.celsius.iter().map(|&celsius| celsius as f32).collect(),
            j_m3: self.heat.iter().map(|&heat| heat as f32).collect(),
        }
    }

    /// What was written down.
    pub fn freezing(self) -> Freezing {
        self.freezing
    }

    /// Puts what it carries from step to step into what is kept.
    pub fn keep(&self, kept: &mut Kept) {
        kept.step_s = self.step_s;
        kept.through_j = self.through_j;
        kept.freezing = self.freezing.clone();
        kept.exact_j_m3 = self.heat.clone();
    }

    /// Takes up what was kept of the same case.
    pub fn take_up(&mut self, kept: &Kept) -> Result<(), KeptError> {
        let cells = kept.exact_j_m3.len() == self.heat.len();
        if !cells || !kept.freezing.is_of(&self.freezing.cells) {
            return Err(KeptError::OtherCase);
        }
        self.heat.clone_from(&kept.exact_j_m3);
        self.freezing = kept.freezing.clone();
        self.through_j = kept.through_j;
        self.unfrozen = 0;
        for cell in 0..self.heat.len() {
            let levels = self.levels_of(cell);
            self.unfrozen += usize::from(levels.is_some_and(|l| self.heat[cell] > l.ends));
        }
        self.read_tables();
        Ok(())
    }

    fn lay_links(&mut self) {
        for cell in 0..self.case.grid.cells() {
            if self.case.material(cell).is_none() {
                continue;
            }
            let at = self.case.grid.place(cell);
            for (axis, high) in SIDES {
                match side(self.case, at, axis, high) {
                    Side::Next(other, mut link) if high == 1 => {
                        link.reach = self
                            .early
                            .reach([self.case.cells[cell], self.case.cells[other]]);
                        self.links.push((cell as u32, other as u32, link));
                    }
                    Side::Out(outer) => self.outers.push((cell as u32, outer)),
                    Side::Next(..) | Side::Closed => {}
                }
            }
        }
    }

    fn watch(&mut self) {
        for cell in 0..self.heat.len() {
            let levels = self.levels_of(cell);
            if let Some(levels) = levels {
                self.freezing.cells.push(cell as u32);
                self.unfrozen += usize::from(self.heat[cell] > levels.ends);
            }
        }
        let unknown = vec![f32::NAN; self.freezing.cells.len()];
        self.freezing.begins_s = unknown.clone();
        self.freezing.passes_s = unknown.clone();
        self.freezing.ends_s = unknown.clone();
        self.freezing.gradient_k_m = unknown.clone();
        self.freezing.cooling_k_s = unknown;
    }

    fn levels_of(&self, cell: usize) -> Option<Levels> {
        self.levels
            .get(usize::from(self.case.cells[cell]))
            .copied()
            .flatten()
    }

    fn read_tables(&mut self) {
        for cell in 0..self.heat.len() {
            if let Some(material) = self.case.material(cell) {
                let state = material.at(self.heat[cell]);
                self.celsius[cell] = state.celsius;
                self.w_mk[cell] = state.w_mk;
            }
        }
    }

    /// Writes down what a step crosses, before its heat is added.
    fn record(&mut self, step_s: f64, now_s: f64) {
        for entry in 0..self.freezing.cells.len() {
            let cell = self.freezing.cells[entry] as usize;
            let Some(levels) = self.levels_of(cell) else {
                continue;
            };
            let before = self.heat[cell];
            let after = before + self.gained_j[cell] / self.volume_m3[cell];
            let when = |level| {
                let share = reached(level, before, after);
                share.map(|share| (now_s - step_s + share * step_s) as f32)
            };
            let freezing = &mut self.freezing;
            if let Some(at) = when(levels.begins) {
                freezing.begins_s[entry] = at;
            }
            if let Some(at) = when(levels.passes) {
                freezing.passes_s[entry] = at;
            }
            if let Some(at) = when(levels.ends) {
                freezing.ends_s[entry] = at;
            }
            self.unfrozen += usize::from(before <= levels.ends && after > levels.ends);
            self.unfrozen -= usize::from(before > levels.ends && after <= levels.ends);
            if when(levels.gradient).is_some() {
                let cooled = self.celsius[cell] - self.case_celsius(cell, after);
                self.freezing.cooling_k_s[entry] = (cooled / step_s) as f32;
                self.freezing.gradient_k_m[entry] = self.gradient(cell) as f32;
            }
        }
    }

    fn case_celsius(&self, cell: usize, heat: f64) -> f64 {
        let material = self.case.material(cell);
        material.map_or(self.celsius[cell], |material| material.at(heat).celsius)
    }

    fn gradient(&self, cell: usize) -> f64 {
        let celsius = |cell: usize| self.celsius[cell];
        link::gradient_k_m(self.case, cell, &celsius)
    }
}
