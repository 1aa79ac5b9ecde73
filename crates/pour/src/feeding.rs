//! Which pools of liquid metal are cut off from every feeder, when, and how much they still lack.
//!
//! Told backwards in time: cells are put in in the order in which they stop to pass metal on, the
//! latest first. The first of a neighbourhood is a hot spot, the last liquid place there. Where two
//! pools meet, they were one before that moment and parted at it. A pool that parts from one with a
//! feeder or the sprue in it, and has none itself, is cut off from then on.

use rigging::piece::Piece;

use crate::cells::Stuff;
use crate::solved::{Solved, metal_cells};

/// A pool of liquid metal that is cut off.
#[derive(Clone, Debug, PartialEq)]
pub struct CutOff {
    /// The piece in which its last metal freezes.
    pub piece: Piece,
    /// When it is cut off, s.
    pub at_s: f64,
    /// Where: the bridge that freezes, mm; none where it was never joined to anything.
    pub neck_mm: Option<[f64; 3]>,
    /// The feeder, sprue or basin from which; none where it never had one.
    pub from: Option<Piece>,
    /// When its last metal stops to flow, s.
    pub last_s: f64,
    /// Where that is, mm.
    pub last_mm: [f64; 3],
    /// Metal in it at that moment, liquid or not, mm³.
    pub holds_mm3: f64,
    /// Metal in it that is still to freeze, mm³.
    pub to_freeze_mm3: f64,
}

/// A place that freezes later than all around it.
#[derive(Clone, Debug, PartialEq)]
pub struct HotSpot {
    /// The piece it lies in.
    pub piece: Piece,
    /// When it stops to pass metal on, s.
    pub last_s: f64,
    /// Where, mm.
    pub place_mm: [f64; 3],
}

/// How metal can flow to where it is missing.
#[derive(Clone, Debug, PartialEq)]
pub struct Feeding {
    /// Pools that are cut off, the one with most left to freeze first.
    pub cut_off: Vec<CutOff>,
    /// Places that freeze later than all around them, the latest first.
    pub hot_spots: Vec<HotSpot>,
}

/// Cells of the smallest pool that is told: of fewer than these the grid makes some everywhere.
const LEAST_CELLS: usize = 8;

/// How much longer than until its cutting off a pool lives, as a share, to be told: below that two
/// cells that freeze at nearly the same moment make a pool.
const LEAST_LIFE: f64 = 0.02;

/// Finds pools and hot spots.
pub fn feeding(solved: &Solved) -> Feeding {
    let mut order: Vec<usize> = metal_cells(&solved.meshed)
        .filter(|&cell| solved.passes_s[cell].is_finite())
        .collect();
    // Of like times the order of the cells decides, so that the same mould gives the same pools.
    order.sort_by(|&one, &other| {
        let later = solved.passes_s[other].total_cmp(&solved.passes_s[one]);
        later.then(one.cmp(&other))
    });
    let mut pools = Pools::of(solved);
    for &cell in &order {
        pools.put_in(cell);
    }
    pools.told()
}

/// Whether a piece is open to the air and holds metal for the castings.
pub fn feeds(piece: &Piece) -> bool {
    matches!(piece, Piece::Feeder(_) | Piece::Sprue | Piece::Basin)
}

/// A pool while it grows backwards in time.
struct Pool {
    /// The first cell put in: the last to freeze.
    spot: usize,
    /// Its cells, which move to the larger pool where two meet.
    cells: Vec<u32>,
    /// The piece that feeds it, the one that freezes last.
    source: Option<(f32, u8)>,
}

struct Pools<'a> {
    solved: &'a Solved,
    /// The pool of each cell that is in.
    of: Vec<u32>,
    pools: Vec<Option<Pool>>,
    cut_off: Vec<CutOff>,
    spots: Vec<(usize, f64)>,
}

const OUT: u32 = u32::MAX;

impl<'a> Pools<'a> {
    fn of(solved: &'a Solved) -> Pools<'a> {
        Pools {
            solved,
            of: vec![OUT; solved.passes_s.len()],
            pools: Vec::new(),
            cut_off: Vec::new(),
            spots: Vec::new(),
        }
    }

    fn put_in(&mut self, cell: usize) {
        let cells = &self.solved.meshed.cells;
        let mut beside: Vec<u32> = cells
            .neighbours(cell)
            .map(|next| self.of[next])
            .filter(|&pool| pool != OUT)
            .collect();
        beside.sort_unstable();
        beside.dedup();
        let piece = self.solved.meshed.piece[cell];
        let is_source = feeds(&self.solved.meshed.pieces[usize::from(piece)]);
        let source = is_source.then(|| (self.solved.passes_s[cell], piece));
        let Some(&first) = beside.first() else {
            self.of[cell] = self.pools.len() as u32;
            self.pools.push(Some(Pool {
                spot: cell,
                cells: vec![cell as u32],
                source,
            }));
            return;
        };
        let mut into = first;
        for &other in &beside[1..] {
            into = self.join(into, other, cell);
        }
        self.of[cell] = into;
        if let Some(Some(pool)) = self.pools.get_mut(into as usize) {
            pool.cells.push(cell as u32);
            pool.source = latest(pool.source, source);
        }
    }

    /// Two pools that met at a cell become the larger of them.
    fn join(&mut self, one: u32, other: u32, neck: usize) -> u32 {
        let taken = [one, other].map(|pool| self.pools[pool as usize].take());
        let [Some(one_pool), Some(other_pool)] = taken else {
            return one;
        };
        match (one_pool.source, other_pool.source) {
            (None, Some(source)) => self.part(&one_pool, neck, Some(source.1)),
            (Some(source), None) => self.part(&other_pool, neck, Some(source.1)),
            _ => {}
        }
        let (younger, older) = match self.lives(&one_pool) < self.lives(&other_pool) {
            true => (&one_pool, &other_pool),
            false => (&other_pool, &one_pool),
        };
        let life = self.lives(younger) / f64::from(self.solved.passes_s[neck]) - 1.0;
        if younger.cells.len() >= LEAST_CELLS && life >= LEAST_LIFE {
            self.spots.push((younger.spot, self.lives(younger)));
        }
        let (spot, source) = (older.spot, latest(one_pool.source, other_pool.source));
        let (into, mut large, small) = match one_pool.cells.len() >= other_pool.cells.len() {
            true => (one, one_pool.cells, other_pool.cells),
            false => (other, other_pool.cells, one_pool.cells),
        };
        for &cell in &small {
            self.of[cell as usize] = into;
        }
        large.extend(small);
        self.pools[into as usize] = Some(Pool {
            spot,
            cells: large,
            source,
        });
        into
    }

    fn lives(&self, pool: &Pool) -> f64 {
        f64::from(self.solved.passes_s[pool.spot])
    }

    /// Notes a pool without a source that parts at a neck, if it is worth it.
    fn part(&mut self, pool: &Pool, neck: usize, from: Option<u8>) {
        let at_s = f64::from(self.solved.passes_s[neck]);
        let life = self.lives(pool) / at_s - 1.0;
        if pool.cells.len() < LEAST_CELLS || life < LEAST_LIFE {
            return;
        }
        let place = self.solved.meshed.cells.middle_mm(neck);
        let found = self.cut(pool, at_s, Some(place), from);
        self.cut_off.push(found);
    }

    fn cut(&self, pool: &Pool, at_s: f64, neck_mm: Option<[f64; 3]>, from: Option<u8>) -> CutOff {
        let (solved, meshed) = (self.solved, &self.solved.meshed);
        let cells = || pool.cells.iter().map(|&cell| cell as usize);
        CutOff {
            piece: self.piece(pool.spot),
            at_s,
            neck_mm,
            from: from.map(|piece| meshed.pieces[usize::from(piece)].clone()),
            last_s: self.lives(pool),
            last_mm: meshed.cells.middle_mm(pool.spot),
            holds_mm3: cells().map(|cell| meshed.cells.metal_mm3(cell)).sum(),
            to_freeze_mm3: cells()
                .map(|cell| meshed.cells.metal_mm3(cell) * (1.0 - solved.solid_at(cell, at_s)))
                .sum(),
        }
    }

    fn piece(&self, cell: usize) -> Piece {
        let meshed = &self.solved.meshed;
        meshed.pieces[usize::from(meshed.piece[cell])].clone()
    }

    fn told(mut self) -> Feeding {
        // What never met a source has none from the start; what is left is the whole.
        let left: Vec<Pool> = self.pools.iter_mut().filter_map(Option::take).collect();
        for pool in &left {
            if pool.source.is_none() && pool.cells.len() >= LEAST_CELLS {
                let found = self.cut(pool, 0.0, None, None);
                self.cut_off.push(found);
            }
            self.spots.push((pool.spot, self.lives(pool)));
        }
        let mut cut_off = std::mem::take(&mut self.cut_off);
        cut_off.sort_by(|one, other| other.to_freeze_mm3.total_cmp(&one.to_freeze_mm3));
        let mut hot_spots: Vec<HotSpot> = self
            .spots
            .iter()
            .map(|&(spot, last_s)| HotSpot {
                piece: self.piece(spot),
                last_s,
                place_mm: self.solved.meshed.cells.middle_mm(spot),
            })
            .collect();
        hot_spots.sort_by(|one, other| other.last_s.total_cmp(&one.last_s));
        Feeding { cut_off, hot_spots }
    }
}

fn latest(one: Option<(f32, u8)>, other: Option<(f32, u8)>) -> Option<(f32, u8)> {
    match (one, other) {
        (Some(one), Some(other)) => Some(if other.0 > one.0 { other } else { one }),
        (one, other) => one.or(other),
    }
}

impl Solved {
    /// Share of a cell of metal that is solid at a time, straight between the moments written down.
    pub fn solid_at(&self, cell: usize, time_s: f64) -> f64 {
        let [begins, passes, ends] =
            [&self.begins_s, &self.passes_s, &self.ends_s].map(|times| f64::from(times[cell]));
        let between = |from: f64, to: f64| match to > from {
            true => ((time_s - from) / (to - from)).clamp(0.0, 1.0),
            false => 1.0,
        };
        match time_s {
            time_s if time_s < begins => 0.0,
            time_s if time_s < passes => self.passing_share * between(begins, passes),
            time_s if time_s < ends => {
                self.passing_share + (1.0 - self.passing_share) * between(passes, ends)
            }
            _ => 1.0,
        }
    }

    /// Whether a cell is metal.
    pub fn is_metal(&self, cell: usize) -> bool {
        self.meshed.cells.stuff[cell] == Stuff::Metal
    }
}
