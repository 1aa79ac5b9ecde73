//! Which pool takes the metal of each gate, and which stands over it.

use super::filling::{Filling, Going, STOPS_M};
use crate::fill::falling::Fall;
use crate::fill::network::step::Way;

/// Where a pool runs over into another.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Spill {
    /// The cell over it from which the metal comes.
    pub(crate) lip: u32,
    /// The way down from there.
    pub(crate) fall: Fall,
}

impl Filling<'_, '_> {
    /// Where the metal of each gate goes now.
    pub(super) fn going(&mut self) -> Going {
        let mut pools: Vec<usize> = Vec::new();
        let mut place = |pool: usize| match pools.iter().position(|known| *known == pool) {
            Some(at) => at,
            None => {
                pools.push(pool);
                pools.len() - 1
            }
        };
        let (mut ways, mut spills) = (Vec::new(), Vec::new());
        for gate in 0..self.ground.entries.len() {
            let receiving = self.receiving(self.ground.entries[gate].fall.pool);
            let under = self.over(gate);
            ways.push(receiving.map(|(into, _)| Way {
                under: under.map(&mut place),
                into: Some(place(into)),
            }));
            spills.push(receiving.and_then(|(_, spill)| spill));
        }
        Going {
            pools,
            ways,
            spills,
        }
    }

    /// The pool in which metal ends that runs to a lowest place, and the spill by which it came
    /// there at last; none where there is no more room.
    fn receiving(&mut self, lowest: usize) -> Option<(usize, Option<usize>)> {
        let pools = self.ground.pools;
        let (mut at, mut by) = (lowest, None);
        // Every turn goes up, or over into a pool with room.
        for _ in 0..4 * pools.all.len() + 4 {
            if !self.course[at].is_full() {
                let stands = self.level_m(at) >= self.basin_m - STOPS_M - 1e-9;
                return (!stands).then_some((at, by));
            }
            let parent = pools.all[at].parent?;
            let children = &pools.all[parent].children;
            if children.iter().all(|child| self.course[*child].is_full()) {
                at = parent;
                if pools.is_within(lowest, parent) {
                    by = None;
                }
                continue;
            }
            let spill = self.spill_of(at)?;
            at = self.spills[spill].fall.pool;
            by = Some(spill);
        }
        None
    }

    /// The spill of a full pool: the one it has, while there is room behind it.
    fn spill_of(&mut self, from: usize) -> Option<usize> {
        let parent = self.ground.pools.all[from].parent?;
        if let Some(known) = self.spilled[from] {
            let mut child = self.spills[known].fall.pool;
            while self.ground.pools.all[child].parent != Some(parent) {
                child = self.ground.pools.all[child].parent?;
            }
            if !self.course[child].is_full() {
                return Some(known);
            }
        }
        let (hollow, pools) = (self.ground.hollow, self.ground.pools);
        let is_full = |pool: usize| self.course[pool].is_full();
        let [lip, edge] = self.spread.spill(hollow, pools, from, &is_full)?;
        let fall = self.spread.fall(hollow, pools, edge);
        self.spills.push(Spill { lip, fall });
        self.spilled[from] = Some(self.spills.len() - 1);
        self.spilled[from]
    }

    /// The pool whose level stands over a gate.
    fn over(&self, gate: usize) -> Option<usize> {
        let (hollow, pools) = (self.ground.hollow, self.ground.pools);
        let flat = hollow.flat[self.ground.entries[gate].cell as usize];
        let mut at = pools.of_flat[flat as usize] as usize;
        while let Some(parent) = pools.all[at].parent {
            let children = &pools.all[parent].children;
            if !children.iter().all(|child| self.course[*child].is_full()) {
                break;
            }
            at = parent;
        }
        let height_m = self.ground.network.outlets_m[gate];
        (self.level_m(at) >= height_m - 1e-9).then_some(at)
    }
}
