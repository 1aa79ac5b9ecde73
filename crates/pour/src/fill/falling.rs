//! Where a stream runs: straight down where it can, else over the floor to the nearest edge.

use std::collections::VecDeque;

use super::hollow::{Hollow, NONE};
use super::pools::Pools;

/// The way of a stream.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Fall {
    /// The pool at whose bottom it ends.
    pub(crate) pool: usize,
    /// The cells it passes, from its source.
    pub(crate) path: Vec<u32>,
}

/// Cells looked at so far, and from which each was reached.
pub(crate) struct Spread {
    turn: u32,
    seen: Vec<u32>,
    from: Vec<u32>,
}

impl Spread {
    /// For a hollow.
    pub(crate) fn of(hollow: &Hollow) -> Spread {
        Spread {
            turn: 0,
            seen: vec![0; hollow.cells.len()],
            from: vec![NONE; hollow.cells.len()],
        }
    }

    /// The way of a stream from a cell to the lowest place it reaches without rising.
    pub(crate) fn fall(&mut self, hollow: &Hollow, pools: &Pools, source: u32) -> Fall {
        let (mut at, mut path) = (source, vec![source]);
        loop {
            let below = hollow.below(at);
            if below != NONE {
                at = below;
                path.push(at);
                continue;
            }
            let edge = |cell: u32| hollow.below(cell) != NONE;
            match self.nearest(hollow, &[at], &mut |_| Vec::new(), edge) {
                Some(edge) => {
                    path.extend(self.way_to(edge).into_iter().skip(1));
                    at = edge;
                }
                None => {
                    let flat = hollow.flat[at as usize] as usize;
                    let pool = pools.of_flat[flat] as usize;
                    return Fall { pool, path };
                }
            }
        }
    }

    /// Where a full pool runs over into one beside it that is not full, on the floor of the pool
    /// above both: the cell over the full pool from which the metal comes, and the one from which
    /// it falls.
    pub(crate) fn spill(
        &mut self,
        hollow: &Hollow,
        pools: &Pools,
        from: usize,
        is_full: &dyn Fn(usize) -> bool,
    ) -> Option<[u32; 2]> {
        let parent = pools.all[from].parent?;
        let layer = pools.all[parent].bottom;
        let on_floor = |flat: &&u32| hollow.flats[**flat as usize].layer == layer;
        let flats = pools.all[parent].flats.iter().take_while(on_floor);
        let child_of = |lower: u32| {
            let mut at = pools.of_flat[hollow.flat[lower as usize] as usize] as usize;
            while let Some(over) = pools.all[at].parent.filter(|over| *over != parent) {
                at = over;
            }
            at
        };
        let mut over: Vec<(usize, u32)> = Vec::new();
        for flat in flats {
            for cell in hollow.cells_of(*flat) {
                let below = hollow.below(*cell);
                if below != NONE {
                    over.push((child_of(below), *cell));
                }
            }
        }
        over.sort_unstable();
        let cells_over = |child: usize| -> Vec<u32> {
            let first = over.partition_point(|(at, _)| *at < child);
            let cells = over[first..].iter().take_while(|(at, _)| *at == child);
            cells.map(|(_, cell)| *cell).collect()
        };
        let mut reached = vec![from];
        // Metal on a full pool beside spreads over the whole of that pool.
        let mut along = |cell: u32| {
            let below = hollow.below(cell);
            if below == NONE {
                return Vec::new();
            }
            let child = child_of(below);
            if reached.contains(&child) || !is_full(child) {
                return Vec::new();
            }
            reached.push(child);
            cells_over(child)
        };
        let falls = |cell: u32| {
            let below = hollow.below(cell);
            below != NONE && !is_full(child_of(below))
        };
        let edge = self.nearest(hollow, &cells_over(from), &mut along, falls)?;
        let lip = self.way_to(edge).first().copied()?;
        Some([lip, edge])
    }

    /// The first cell that will do, spreading side by side from some cells.
    fn nearest(
        &mut self,
        hollow: &Hollow,
        sources: &[u32],
        along: &mut dyn FnMut(u32) -> Vec<u32>,
        will_do: impl Fn(u32) -> bool,
    ) -> Option<u32> {
        self.turn += 1;
        let mut queue: VecDeque<u32> = VecDeque::new();
        for source in sources {
            self.reach(*source, NONE, &mut queue);
        }
        while let Some(cell) = queue.pop_front() {
            if will_do(cell) {
                return Some(cell);
            }
            for beside in hollow.beside(cell) {
                if beside != NONE {
                    self.reach(beside, cell, &mut queue);
                }
            }
            for other in along(cell) {
                self.reach(other, cell, &mut queue);
            }
        }
        None
    }

    fn reach(&mut self, cell: u32, from: u32, queue: &mut VecDeque<u32>) {
        if self.seen[cell as usize] != self.turn {
            self.seen[cell as usize] = self.turn;
            self.from[cell as usize] = from;
            queue.push_back(cell);
        }
    }

    fn way_to(&self, cell: u32) -> Vec<u32> {
        let mut way = vec![cell];
        let mut at = cell;
        while self.from[at as usize] != NONE {
            at = self.from[at as usize];
            way.push(at);
        }
        way.reverse();
        way
    }
}
