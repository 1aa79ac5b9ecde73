//! How sure a charge is to come out in target: the heaps drawn many times over.

use measure::band::Band;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

use crate::charge_makeup::limit::Limit;
use crate::charge_makeup::measured::Measured;
use crate::charge_makeup::mix::{Brought, Mix};

/// How often the draws came out in target.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chance {
    /// Share of the draws in target.
    pub share: f64,
    /// Low end of what more draws would give, 19 times in 20 (Wilson's interval).
    pub low: f64,
    /// High end of it.
    pub high: f64,
}

/// How many times the heaps are drawn. With 4000 the chance is known within 1.6 points at worst;
/// ten times as many would tell half a point and nothing more of the scrap.
pub const DRAWS: usize = 4000;

/// How much is left out at either end of a usual range: nine times in ten lies between.
const TAIL: f64 = 0.05;

/// Chance of keeping every limit, and the usual range of each thing.
pub(super) struct Drawn {
    pub(super) chance: Chance,
    pub(super) usual: Vec<(f64, f64)>,
}

/// Draws a charge. Every share of every heap, every recovery and every loss falls in a triangle
/// over its band, the likely value on top; heaps do not know of each other, while what the melt
/// keeps of an element is one draw for the whole heat.
pub(super) fn drawn(
    mix: &Mix,
    kg: &[f64],
    limits: &[Limit],
    things: &[Measured],
    seed: u64,
) -> Drawn {
    let mut die = ChaCha8Rng::seed_from_u64(seed);
    let mut shares = vec![Vec::with_capacity(DRAWS); things.len()];
    let mut hits = 0;
    for _ in 0..DRAWS {
        let melt = one_heat(mix, kg, &mut die);
        let share = |of| mix.measured(&melt, of) / melt.whole;
        hits += usize::from(limits.iter().all(|limit| limit.holds(share(limit.of))));
        for (of, into) in things.iter().zip(&mut shares) {
            into.push(share(*of));
        }
    }
    Drawn {
        chance: Chance::of(hits, DRAWS),
        usual: shares.into_iter().map(usual).collect(),
    }
}

impl Chance {
    fn of(hits: usize, draws: usize) -> Chance {
        let (hits, draws) = (hits as f64, draws as f64);
        let (share, z) = (hits / draws, 1.96);
        let pull = z * z / draws;
        let middle = (share + pull / 2.0) / (1.0 + pull);
        let half = z * (share * (1.0 - share) / draws + pull / (4.0 * draws)).sqrt() / (1.0 + pull);
        Chance {
            share,
            low: (middle - half).max(0.0).min(share),
            high: (middle + half).min(1.0).max(share),
        }
    }
}

fn one_heat(mix: &Mix, kg: &[f64], die: &mut ChaCha8Rng) -> Brought {
    let kept: Vec<f64> = mix.kept.iter().map(|band| triangle(band, die)).collect();
    let columns = mix.columns.iter().zip(kg);
    let drawn: Vec<_> = columns
        .map(|(column, kg)| match *kg > 0.0 {
            true => (
                column
                    .shares
                    .iter()
                    .map(|band| triangle(band, die))
                    .collect(),
                column.recovery.map(|band| triangle(&band, die)),
            ),
            false => (Vec::new(), None),
        })
        .collect();
    mix.charge(kg, |at, column| {
        let (shares, recovery): &(Vec<f64>, Option<f64>) = &drawn[at];
        mix.brings(
            column,
            |element| shares[element],
            |element| recovery.unwrap_or(kept[element]),
        )
    })
}

/// One draw from a triangle over a band.
fn triangle(band: &Band<f64>, die: &mut ChaCha8Rng) -> f64 {
    let (low, top, high) = (band.low(), band.likely(), band.high());
    if high <= low {
        return top;
    }
    let even: f64 = die.random();
    let rising = (top - low) / (high - low);
    match even < rising {
        true => low + ((high - low) * (top - low) * even).sqrt(),
        false => high - ((high - low) * (high - top) * (1.0 - even)).sqrt(),
    }
}

fn usual(mut shares: Vec<f64>) -> (f64, f64) {
    shares.sort_by(f64::total_cmp);
    let at = |part: f64| shares[((shares.len() - 1) as f64 * part).round() as usize];
    (at(TAIL), at(1.0 - TAIL))
}
