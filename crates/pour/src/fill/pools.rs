//! The pools in which metal gathers while a hollow fills, as a tree.
//!
//! A pool begins at a lowest place or where two or more pools come together, and reaches up to the
//! layer at whose floor it comes together with others, or to its own ceiling. Found by joining
//! flats from below.

use super::hollow::{Hollow, NONE};

/// A stretch of hollow in which the metal has one level.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Pool {
    /// Its lowest layer.
    pub(crate) bottom: usize,
    /// Metal that each of its layers takes, m³, from below.
    pub(crate) layers_m3: Vec<f64>,
    /// Its flats, from below.
    pub(crate) flats: Vec<u32>,
    /// The pool that it becomes part of.
    pub(crate) parent: Option<usize>,
    /// The pools that came together in it.
    pub(crate) children: Vec<usize>,
}

/// All pools.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Pools {
    /// The pools, those that begin lower first.
    pub(crate) all: Vec<Pool>,
    /// The pool of each flat.
    pub(crate) of_flat: Vec<u32>,
}

/// Flats joined so far.
struct Joined {
    above: Vec<u32>,
    pool: Vec<u32>,
}

impl Pools {
    /// Of a hollow.
    pub(crate) fn of(hollow: &Hollow) -> Pools {
        let count = hollow.flats.len();
        let mut joined = Joined {
            above: (0..count as u32).collect(),
            pool: vec![NONE; count],
        };
        let mut pools = Pools {
            all: Vec::new(),
            of_flat: vec![NONE; count],
        };
        let (mut flat, mut link) = (0, 0);
        while flat < count {
            let layer = hollow.flats[flat].layer;
            let same = |at: &usize| hollow.flats.get(*at).is_some_and(|f| f.layer == layer);
            let end = (flat..).find(|at| !same(at)).unwrap_or(count);
            let links = hollow.links[link..].partition_point(|[upper, _]| (*upper as usize) < end);
            pools.add_layer(
                hollow,
                flat..end,
                &hollow.links[link..link + links],
                &mut joined,
            );
            (flat, link) = (end, link + links);
        }
        pools
    }

    /// Whether a pool is part of another, or the same.
    pub(crate) fn is_within(&self, pool: usize, whole: usize) -> bool {
        let mut at = Some(pool);
        while let Some(here) = at {
            if here == whole {
                return true;
            }
            at = self.all[here].parent;
        }
        false
    }

    fn add_layer(
        &mut self,
        hollow: &Hollow,
        flats: std::ops::Range<usize>,
        links: &[[u32; 2]],
        joined: &mut Joined,
    ) {
        // The pools below, before this layer brings them together.
        let below: Vec<(u32, u32)> = links
            .iter()
            .map(|[upper, lower]| (*upper, joined.pool_of(*lower)))
            .collect();
        for [upper, lower] in links {
            joined.join(*upper, *lower);
        }
        let mut meeting: Vec<(u32, u32)> = below
            .into_iter()
            .map(|(upper, pool)| (joined.root(upper), pool))
            .collect();
        meeting.sort_unstable();
        meeting.dedup();
        let mut begun: Vec<(u32, u32)> = Vec::new();
        for flat in flats {
            let root = joined.root(flat as u32);
            let from = meeting.partition_point(|(at, _)| *at < root);
            let to = meeting.partition_point(|(at, _)| *at <= root);
            let pool = match begun.iter().find(|(at, _)| *at == root) {
                Some((_, pool)) => *pool,
                None => {
                    let pool = self.pool_over(&meeting[from..to], hollow.flats[flat].layer);
                    begun.push((root, pool));
                    pool
                }
            };
            self.of_flat[flat] = pool;
            joined.pool[root as usize] = pool;
            self.all[pool as usize].take(flat as u32, hollow);
        }
    }

    /// The one pool below, or a new one.
    fn pool_over(&mut self, below: &[(u32, u32)], layer: usize) -> u32 {
        if let [(_, pool)] = below {
            return *pool;
        }
        let number = self.all.len();
        let children: Vec<usize> = below.iter().map(|(_, pool)| *pool as usize).collect();
        for child in &children {
            self.all[*child].parent = Some(number);
        }
        self.all.push(Pool {
            bottom: layer,
            layers_m3: Vec::new(),
            flats: Vec::new(),
            parent: None,
            children,
        });
        number as u32
    }
}

impl Pool {
    fn take(&mut self, flat: u32, hollow: &Hollow) {
        let layer = hollow.flats[flat as usize].layer - self.bottom;
        if self.layers_m3.len() <= layer {
            self.layers_m3.resize(layer + 1, 0.0);
        }
        self.layers_m3[layer] += hollow.flats[flat as usize].volume_m3;
        self.flats.push(flat);
    }
}

impl Joined {
    fn root(&mut self, flat: u32) -> u32 {
        let mut at = flat;
        while self.above[at as usize] != at {
            let over = self.above[self.above[at as usize] as usize];
            self.above[at as usize] = over;
            at = over;
        }
        at
    }

    fn pool_of(&mut self, flat: u32) -> u32 {
        let root = self.root(flat);
        self.pool[root as usize]
    }

    /// Joins two; the later flat leads, so that the outcome does not hang on the order.
    fn join(&mut self, a: u32, b: u32) {
        let (a, b) = (self.root(a), self.root(b));
        self.above[a.min(b) as usize] = a.max(b);
    }
}
