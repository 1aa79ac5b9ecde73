//! Where the shrinkage shows: how far feeders and sprue sink, which hollows stay in the castings.
//!
//! Metal shrinks as it loses its superheat and as it freezes. What a place lacks flows in from the
//! liquid it still hangs together with, and that liquid sinks from its highest place. So the
//! freezing is walked forward in steps:
//!
//! 1. What each cell lacks in the step is told to the neighbour that stays open longest, and on,
//!    until it comes to liquid metal that can flow. Where that way is closed it stays in the cell
//!    as fine pores.
//! 2. Each pool of liquid takes what it lacks from its highest cells, layer by layer. What a pool
//!    cannot give any more stays as pores all over it.
//!
//! What is emptied in feeders and sprue is the pipe, what is emptied in a casting is a shrinkage
//! hollow. All metal that is lacking is in one of the three, so that the budget closes.

use metal::alloy::Alloy;
use rigging::piece::Piece;

use crate::feeding::feeds;
use crate::solved::{Solved, metal_cells};

/// What the metal lacks, and where it shows; volumes in mm³.
#[derive(Clone, Debug, PartialEq)]
pub struct Shrinkage {
    /// All that is lacking, from full mould to all solid.
    pub demand_mm3: f64,
    /// What was emptied of each piece, and how far it sank.
    pub emptied: Vec<Emptied>,
    /// Fine pores in castings.
    pub pores_mm3: f64,
    /// Fine pores in the rigging, which is cut off.
    pub pores_in_rigging_mm3: f64,
    /// Share of each cell that is empty in the end: pipe and hollows.
    pub empty: Vec<f32>,
    /// Pores of each cell as a share of it.
    pub porous: Vec<f32>,
}

/// What was emptied of a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Emptied {
    /// Which piece.
    pub piece: Piece,
    /// How much, mm³.
    pub volume_mm3: f64,
    /// What it holds, mm³.
    pub holds_mm3: f64,
    /// From its top to the deepest place that is mostly empty, mm.
    pub depth_mm: f64,
    /// The deepest place that is mostly empty, or the emptiest where none is, mm.
    pub place_mm: [f64; 3],
}

/// Steps in which the freezing is walked through: with half of them a feeder sinks by a hundredth
/// otherwise.
const STEPS: usize = 60;

/// Share of a cell above which it is told as empty.
const MOSTLY: f32 = 0.5;

impl Shrinkage {
    /// Emptied in feeders, sprue and the rest of the rigging, mm³.
    pub fn pipe_mm3(&self) -> f64 {
        self.emptied_where(|piece| !is_casting(piece))
    }

    /// Emptied in castings, mm³.
    pub fn hollows_mm3(&self) -> f64 {
        self.emptied_where(is_casting)
    }

    fn emptied_where(&self, is_it: impl Fn(&Piece) -> bool) -> f64 {
        let of = self.emptied.iter().filter(|emptied| is_it(&emptied.piece));
        of.map(|emptied| emptied.volume_mm3).sum()
    }
}

fn is_casting(piece: &Piece) -> bool {
    matches!(piece, Piece::Casting(_))
}

/// Walks a freezing through. `superheat_k` is what the metal has when the mould is full. Metal that
/// grows as it freezes lacks nothing: what it pushes back is left out.
pub fn shrinkage(solved: &Solved, alloy: &Alloy, superheat_k: f64) -> Shrinkage {
    let on_freezing = alloy.freezing_shrinkage.band.likely();
    let as_liquid = alloy.liquid_contraction.band.likely() * superheat_k.max(0.0);
    let mut walk = Walk::of(solved, [as_liquid.max(0.0), on_freezing.max(0.0)]);
    let mut ends: Vec<f64> = walk
        .cells
        .iter()
        .map(|&cell| f64::from(solved.ends_s[cell]))
        .collect();
    ends.sort_by(f64::total_cmp);
    let mut before_s = 0.0;
    for step in 1..=STEPS {
        let Some(&now_s) = ends.get((step * ends.len() / STEPS).saturating_sub(1)) else {
            break;
        };
        walk.step(before_s, now_s);
        before_s = now_s;
    }
    walk.told()
}

struct Walk<'a> {
    solved: &'a Solved,
    /// Shares lacking while the liquid cools, and while it freezes.
    shares: [f64; 2],
    /// Cells of metal, the first to stop passing metal first.
    cells: Vec<usize>,
    /// The same from the top down.
    from_top: Vec<usize>,
    /// The neighbour of each cell that stays open longest, itself at a hot spot.
    onward: Vec<u32>,
    lacking: Vec<f64>,
    emptied: Vec<f64>,
    pores: Vec<f64>,
    pool: Vec<u32>,
    demand: f64,
}

const NO_POOL: u32 = u32::MAX;

impl<'a> Walk<'a> {
    fn of(solved: &'a Solved, shares: [f64; 2]) -> Walk<'a> {
        let grid = &solved.meshed.cells;
        let passes = |cell: usize| solved.passes_s[cell];
        let mut cells: Vec<usize> = metal_cells(&solved.meshed)
            .filter(|&cell| passes(cell).is_finite())
            .collect();
        cells.sort_by(|&one, &other| passes(one).total_cmp(&passes(other)).then(one.cmp(&other)));
        let mut from_top = cells.clone();
        from_top.sort_unstable_by(|one, other| other.cmp(one));
        let all = grid.stuff.len();
        let mut onward: Vec<u32> = (0..all as u32).collect();
        for &cell in &cells {
            // Later, or as late and further up the list: nothing runs in a circle.
            let rank = |cell: usize| (passes(cell), cell);
            let later = grid
                .neighbours(cell)
                .filter(|&next| solved.is_metal(next) && passes(next).is_finite())
                .max_by(|&one, &other| {
                    let ((one, a), (other, b)) = (rank(one), rank(other));
                    one.total_cmp(&other).then(a.cmp(&b))
                });
            if let Some(next) = later.filter(|&next| rank(next) > rank(cell)) {
                onward[cell] = next as u32;
            }
        }
        Walk {
            solved,
            shares,
            cells,
            from_top,
            onward,
            lacking: vec![0.0; all],
            emptied: vec![0.0; all],
            pores: vec![0.0; all],
            pool: vec![NO_POOL; all],
            demand: 0.0,
        }
    }

    fn step(&mut self, before_s: f64, now_s: f64) {
        let reached = self.reached(now_s);
        for at in 0..self.cells.len() {
            let cell = self.cells[at];
            let lacking = self.lacks(cell, before_s, now_s);
            self.demand += lacking;
            self.lacking[cell] += lacking;
            if self.flows(cell, now_s) {
                continue;
            }
            let all = std::mem::take(&mut self.lacking[cell]);
            match reached[cell] {
                true => self.lacking[self.onward[cell] as usize] += all,
                false => self.pores[cell] += all,
            }
        }
        let pools = self.pools(now_s);
        let (mut lacking, mut holds) = (vec![0.0; pools], vec![0.0; pools]);
        let held = |cell: usize| self.solved.meshed.cells.metal_mm3(cell);
        for &cell in &self.cells {
            let pool = self.pool[cell] as usize;
            if pool < pools {
                lacking[pool] += std::mem::take(&mut self.lacking[cell]);
                holds[pool] += held(cell);
            }
        }
        self.sink(&mut lacking);
        // What a pool cannot give any more stays as pores all over it.
        for &cell in &self.cells {
            let pool = self.pool[cell] as usize;
            if pool < pools && lacking[pool] > 0.0 {
                self.pores[cell] += lacking[pool] * held(cell) / holds[pool];
            }
        }
    }

    /// Whether what a cell lacks still comes to liquid that can flow.
    fn reached(&self, now_s: f64) -> Vec<bool> {
        let mut reached = vec![false; self.onward.len()];
        for &cell in self.cells.iter().rev() {
            let onward = self.onward[cell] as usize;
            reached[cell] = self.flows(cell, now_s) || onward != cell && reached[onward];
        }
        reached
    }

    /// What a cell lacks in a step, mm³: its liquid contraction until it begins to freeze, its
    /// freezing shrinkage as it freezes.
    fn lacks(&self, cell: usize, before_s: f64, now_s: f64) -> f64 {
        let solved = self.solved;
        let begins = f64::from(solved.begins_s[cell]).max(1e-6);
        let cooled = |time_s: f64| (time_s / begins).min(1.0);
        let solid = |time_s: f64| solved.solid_at(cell, time_s);
        let [as_liquid, on_freezing] = self.shares;
        let share = as_liquid * (cooled(now_s) - cooled(before_s))
            + on_freezing * (solid(now_s) - solid(before_s));
        share * solved.meshed.cells.metal_mm3(cell)
    }

    /// Whether a cell has liquid that can flow.
    fn flows(&self, cell: usize, now_s: f64) -> bool {
        let held = self.solved.meshed.cells.metal_mm3(cell);
        f64::from(self.solved.passes_s[cell]) > now_s && self.emptied[cell] < 0.999 * held
    }

    /// Numbers the pools of cells that flow; gives how many there are.
    fn pools(&mut self, now_s: f64) -> usize {
        self.pool.fill(NO_POOL);
        let mut count = 0;
        let mut open = Vec::new();
        for at in 0..self.cells.len() {
            let cell = self.cells[at];
            if self.pool[cell] != NO_POOL || !self.flows(cell, now_s) {
                continue;
            }
            self.pool[cell] = count;
            open.push(cell);
            while let Some(here) = open.pop() {
                for next in self.solved.meshed.cells.neighbours(here) {
                    let is_new = self.solved.is_metal(next) && self.pool[next] == NO_POOL;
                    if is_new && self.flows(next, now_s) {
                        self.pool[next] = count;
                        open.push(next);
                    }
                }
            }
            count += 1;
        }
        count as usize
    }

    /// Takes what each pool lacks from its highest cells, layer by layer; what is left over stays.
    fn sink(&mut self, lacking: &mut [f64]) {
        let cells = &self.solved.meshed.cells;
        let layer_of = |cell: usize| cell / (cells.count[0] * cells.count[1]);
        let mut from = 0;
        while from < self.from_top.len() {
            let layer = layer_of(self.from_top[from]);
            let to = from
                + self.from_top[from..]
                    .iter()
                    .take_while(|&&cell| layer_of(cell) == layer)
                    .count();
            let mut liquid = vec![0.0; lacking.len()];
            let left = |walk: &Walk<'_>, cell: usize| cells.metal_mm3(cell) - walk.emptied[cell];
            for &cell in &self.from_top[from..to] {
                if let Some(sum) = liquid.get_mut(self.pool[cell] as usize) {
                    *sum += left(self, cell);
                }
            }
            for at in from..to {
                let cell = self.from_top[at];
                let pool = self.pool[cell] as usize;
                if let Some(&sum) = liquid.get(pool).filter(|&&sum| sum > 0.0) {
                    let share = (lacking[pool] / sum).min(1.0);
                    self.emptied[cell] += share * left(self, cell);
                }
            }
            for (lacking, liquid) in lacking.iter_mut().zip(&liquid) {
                *lacking -= lacking.min(*liquid);
            }
            from = to;
        }
    }

    fn told(self) -> Shrinkage {
        let meshed = &self.solved.meshed;
        let share = |of: &[f64]| -> Vec<f32> {
            let each = of.iter().enumerate();
            each.map(|(cell, &volume)| match volume > 0.0 {
                true => (volume / meshed.cells.metal_mm3(cell)) as f32,
                false => 0.0,
            })
            .collect()
        };
        let empty = share(&self.emptied);
        let pieces = meshed.pieces.iter().enumerate();
        let emptied = pieces.filter_map(|(number, piece)| {
            let of = self
                .from_top
                .iter()
                .copied()
                .filter(|&cell| usize::from(meshed.piece[cell]) == number);
            let cells: Vec<usize> = of.collect();
            let top = *cells.first()?;
            let sum = |of: &dyn Fn(usize) -> f64| cells.iter().map(|&cell| of(cell)).sum::<f64>();
            let emptiest = cells
                .iter()
                .copied()
                .max_by(|&one, &other| empty[one].total_cmp(&empty[other]))?;
            let mostly = cells
                .iter()
                .copied()
                .rev()
                .find(|&cell| empty[cell] > MOSTLY);
            let height = |cell: usize| meshed.cells.middle_mm(cell)[2];
            Some(Emptied {
                piece: piece.clone(),
                volume_mm3: sum(&|cell| self.emptied[cell]),
                holds_mm3: sum(&|cell| meshed.cells.metal_mm3(cell)),
                depth_mm: mostly.map_or(0.0, |cell| {
                    height(top) - height(cell) + meshed.cells.size_mm
                }),
                place_mm: meshed.cells.middle_mm(mostly.unwrap_or(emptiest)),
            })
        });
        let pores_where = |in_casting: bool| -> f64 {
            let is_it = |cell: &&usize| {
                is_casting(&meshed.pieces[usize::from(meshed.piece[**cell])]) == in_casting
            };
            self.cells
                .iter()
                .filter(is_it)
                .map(|&cell| self.pores[cell])
                .sum()
        };
        Shrinkage {
            demand_mm3: self.demand,
            emptied: emptied.collect(),
            pores_mm3: pores_where(true),
            pores_in_rigging_mm3: pores_where(false),
            porous: share(&self.pores),
            empty,
        }
    }
}

/// How well feeders did: what they gave over what they hold.
pub fn feeder_efficiency(shrinkage: &Shrinkage) -> Option<f64> {
    let feeders = || {
        shrinkage
            .emptied
            .iter()
            .filter(|emptied| feeds(&emptied.piece))
    };
    let feeders = || feeders().filter(|emptied| matches!(emptied.piece, Piece::Feeder(_)));
    let (gave, holds) = (
        feeders().map(|emptied| emptied.volume_mm3).sum::<f64>(),
        feeders().map(|emptied| emptied.holds_mm3).sum::<f64>(),
    );
    (holds > 0.0).then_some(gave / holds)
}
