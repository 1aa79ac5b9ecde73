//! The height at which a joint lies flat around as much of a part as possible.
//!
//! At each place of the rim of the shadow the joint may meet the part anywhere in a band: on an
//! upright wall anywhere between its ends, on a round one within a hair of the widest place.

use super::columns::Columns;

/// Where the joint may meet the part at one place of its rim.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Lowest and highest height at which the part is as wide as anywhere, mm.
    pub tight_mm: [f64; 2],
    /// The same, give or take the rapping play, mm; holds the first band.
    pub loose_mm: [f64; 2],
}

/// A flat level of the joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Level {
    /// Height along the draw, mm.
    pub at_mm: f64,
    /// Share of the rim at which the joint can lie at this height.
    pub flat_share: f64,
    /// How far the joint must leave this height, down and up, mm; both nought for a flat joint.
    pub wanders_mm: [f64; 2],
}

/// How near an end of the part must lie to the end of a wall to be its flat back, as a share of the
/// height of the part.
const FLAT_BACK: f64 = 1e-3;

/// Most heights that are weighed against each other.
const MOST_TRIED: usize = 300;

/// The level for a rim; `ends_mm` are the lowest and highest point of the part.
///
/// If one height suits the whole rim the joint is flat. Among such heights the back of the part is
/// taken where it is flat, the upper one first, because the pattern then lies whole in the drag and
/// needs no cut; else the middle. If none suits, the height is taken that suits most of the rim,
/// and among those the one from which the rest of the rim lies least far off.
pub fn level(bands: &[Band], ends_mm: [f64; 2]) -> Level {
    let low = bands
        .iter()
        .map(|band| band.tight_mm[0])
        .fold(f64::NEG_INFINITY, f64::max);
    let high = bands
        .iter()
        .map(|band| band.tight_mm[1])
        .fold(f64::INFINITY, f64::min);
    let hair = flat_back_mm(ends_mm);
    let at_mm = match () {
        () if bands.is_empty() => ends_mm[0],
        () if low > high => least_cost(bands, ends_mm),
        () if high >= ends_mm[1] - hair => ends_mm[1],
        () if low <= ends_mm[0] + hair => ends_mm[0],
        () => (low + high) / 2.0,
    };
    level_at(bands, ends_mm, at_mm)
}

/// How a rim lies to a level that is given.
pub fn level_at(bands: &[Band], ends_mm: [f64; 2], at_mm: f64) -> Level {
    let hair = flat_back_mm(ends_mm);
    let flat = bands
        .iter()
        .filter(|band| holds(band.loose_mm, at_mm, hair))
        .count();
    let off = bands
        .iter()
        .map(|band| band.height_near(at_mm, hair) - at_mm);
    let wanders_mm = off.fold([0.0, 0.0], |[down, up]: [f64; 2], off| {
        [down.min(off), up.max(off)]
    });
    Level {
        at_mm,
        flat_share: flat as f64 / bands.len().max(1) as f64,
        wanders_mm: wanders_mm.map(f64::abs),
    }
}

fn flat_back_mm(ends_mm: [f64; 2]) -> f64 {
    FLAT_BACK * (ends_mm[1] - ends_mm[0])
}

impl Band {
    /// The height in this band for a joint that lies at a level elsewhere: the level itself if the
    /// play allows it within `hair`, else the end of the tight band that is nearest.
    pub fn height_near(&self, level_mm: f64, hair: f64) -> f64 {
        match holds(self.loose_mm, level_mm, hair) {
            true => level_mm,
            false => level_mm.clamp(self.tight_mm[0], self.tight_mm[1]),
        }
    }
}

fn holds([low, high]: [f64; 2], at_mm: f64, hair: f64) -> bool {
    low - hair <= at_mm && at_mm <= high + hair
}

/// Bands at the rim as far as the columns tell: wider on round parts than they are, by the width of
/// half a column, which hides no more than a small share of the wandering.
pub(super) fn rough_bands(columns: &Columns) -> Vec<Band> {
    let is_light = |column: usize| columns.spans(column).is_empty();
    let at_rim = |column: &usize| columns.beside(*column).any(is_light);
    (0..columns.len())
        .filter(at_rim)
        .filter_map(|column| {
            let spans = columns.spans(column);
            let ends_mm = [spans.first()?.from_mm, spans.last()?.to_mm];
            Some(Band {
                tight_mm: ends_mm,
                loose_mm: ends_mm,
            })
        })
        .collect()
}

fn least_cost(bands: &[Band], ends_mm: [f64; 2]) -> f64 {
    let mut tried: Vec<f64> = bands
        .iter()
        .flat_map(|band| [band.tight_mm[0], band.middle(), band.tight_mm[1]])
        .collect();
    tried.sort_by(f64::total_cmp);
    let every = tried.len().div_ceil(MOST_TRIED).max(1);
    let tall_mm = (ends_mm[1] - ends_mm[0]).max(f64::MIN_POSITIVE);
    let cost = |at_mm: f64| {
        let of_band = |band: &Band| {
            let off = (at_mm - at_mm.clamp(band.tight_mm[0], band.tight_mm[1])).abs() / tall_mm;
            off + f64::from(u8::from(!holds(band.loose_mm, at_mm, 0.0)))
        };
        bands.iter().map(of_band).sum::<f64>()
    };
    let costs = tried
        .iter()
        .step_by(every)
        .map(|&at_mm| (cost(at_mm), at_mm));
    costs
        .min_by(|a, b| a.0.total_cmp(&b.0))
        .map_or(ends_mm[0], |(_, at_mm)| at_mm)
}

impl Band {
    fn middle(&self) -> f64 {
        (self.tight_mm[0] + self.tight_mm[1]) / 2.0
    }
}
