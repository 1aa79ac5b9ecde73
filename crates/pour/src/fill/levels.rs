//! How metal rises through a hollow: from pool to pool, from event to event.
//!
//! A stream runs to the lowest place that it reaches; the pool there rises; where it comes up to a
//! saddle it runs over into the lower pool beside, and when that has come up as well the two rise
//! as one. In each pool the metal lies level. The running system answers to the levels over its
//! gates: while a gate is drowned in a pool that rises, flows and levels are carried on together;
//! otherwise flows stay as they are until something changes.

mod carrying;
mod course;
mod filling;
mod receiving;

pub(crate) use self::course::{Feed, Marks};
use self::filling::Filling;
pub(crate) use self::receiving::Spill;
use super::falling::{Fall, Spread};
use super::hollow::Hollow;
use super::network::{Network, NetworkError};
use super::pools::Pools;

/// Where a gate enters the hollow.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Entry {
    /// The cell it enters at.
    pub(crate) cell: u32,
    /// The way of its stream while it runs free.
    pub(crate) fall: Fall,
}

/// What runs through the gates at a time.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Since the gates began to run, s.
    pub at_s: f64,
    /// Flow of each gate, m³/s.
    pub gates_m3_s: Vec<f64>,
    /// Level of the metal over each gate, m; none while it runs free or takes no more.
    pub over_m: Vec<Option<f64>>,
    /// Level of the metal in the pool in which each gate's metal ends, m; none where it takes no
    /// more.
    pub pool_m: Vec<Option<f64>>,
    /// Level in the basin, m.
    pub basin_m: f64,
}

/// How a hollow fills.
#[derive(Clone, Debug)]
pub(crate) struct Levels {
    /// What was marked of each pool.
    pub(crate) marks: Vec<Marks>,
    /// What fed pools, by the numbers in their marks.
    pub(crate) feeds: Vec<Feed>,
    /// Where pools ran over.
    pub(crate) spills: Vec<Spill>,
    /// Flows and levels over time.
    pub(crate) readings: Vec<Reading>,
    /// All that left the basin, m³.
    pub(crate) poured_m3: f64,
    /// All that lies in the pools, m³.
    pub(crate) lies_m3: f64,
    /// When nothing runs any more, s.
    pub(crate) ends_s: f64,
}

impl Levels {
    /// What was marked of the pool of a flat, and the flat's layer in it.
    pub(crate) fn of_flat(&self, ground: &Ground<'_>, flat: u32) -> (&Marks, usize) {
        let pool = ground.pools.of_flat[flat as usize] as usize;
        let layer = ground.hollow.flats[flat as usize].layer;
        (&self.marks[pool], layer - ground.pools.all[pool].bottom)
    }
}

/// All that a filling goes by.
#[derive(Clone, Copy)]
pub(crate) struct Ground<'a> {
    /// The hollow.
    pub(crate) hollow: &'a Hollow,
    /// Its pools.
    pub(crate) pools: &'a Pools,
    /// Floor of the lowest layer, m.
    pub(crate) floor_m: f64,
    /// Height of a layer, m.
    pub(crate) layer_m: f64,
    /// The running system.
    pub(crate) network: &'a Network,
    /// Where its gates enter, in the order of its outlets.
    pub(crate) entries: &'a [Entry],
    /// Whether the metal starts from rest.
    pub(crate) from_rest: bool,
}

/// More steps than any hollow of a million flats takes.
const MOST_STEPS: usize = 400_000;

/// Fills a hollow.
///
/// # Errors
///
/// Flows that are not found.
pub(crate) fn rise(ground: &Ground<'_>, spread: &mut Spread) -> Result<Levels, NetworkError> {
    let mut filling = Filling::of(ground, spread);
    for _ in 0..MOST_STEPS {
        if !filling.step()? {
            return Ok(filling.told());
        }
    }
    Err(NetworkError::Restless)
}
