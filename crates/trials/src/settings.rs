//! Settings that are no part of the mix: minutes of mixing, days of rest, a temperature.
//!
//! Plans are made in coded settings: −1 is the low end, 1 the high end, 0 the middle.

use thiserror::Error;

/// A setting with the ends between which it is tried.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    /// What it is called.
    pub name: String,
    /// Low end, in its own unit.
    pub low: f64,
    /// High end.
    pub high: f64,
}

/// Why a setting cannot be planned with.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum SettingError {
    /// The ends do not rise.
    #[error("{name} from {low} to {high} does not vary: give a low end below the high end")]
    DoesNotVary {
        /// The setting.
        name: String,
        /// Low end.
        low: f64,
        /// High end.
        high: f64,
    },
    /// More settings than a plan of all corners can hold.
    #[error("{0} settings are too many for all their corners: hold all but {MOST} fixed")]
    TooMany(
        /// How many there are.
        usize,
    ),
}

/// Most settings of which all corners are listed: six make 64 batches, more than a season.
pub const MOST: usize = 6;

/// Checks settings.
///
/// # Errors
/// When the ends of one do not rise, or there are too many.
pub fn checked(settings: &[Setting]) -> Result<(), SettingError> {
    if settings.len() > MOST {
        return Err(SettingError::TooMany(settings.len()));
    }
    for one in settings {
        if !(one.low < one.high && one.low.is_finite() && one.high.is_finite()) {
            return Err(SettingError::DoesNotVary {
                name: one.name.clone(),
                low: one.low,
                high: one.high,
            });
        }
    }
    Ok(())
}

impl Setting {
    /// The coded value of a setting in its own unit.
    pub fn coded(&self, value: f64) -> f64 {
        (2.0 * value - self.low - self.high) / (self.high - self.low)
    }

    /// The setting in its own unit of a coded value.
    pub fn in_unit(&self, coded: f64) -> f64 {
        (self.low + self.high + coded * (self.high - self.low)) / 2.0
    }
}

/// All corners: every setting low or high, the first one changing fastest.
pub fn two_level(settings: usize) -> Vec<Vec<f64>> {
    let settings = settings.min(MOST);
    let end = |run: usize, at: usize| if run >> at & 1 == 0 { -1.0 } else { 1.0 };
    (0..1 << settings)
        .map(|run| (0..settings).map(|at| end(run, at)).collect())
        .collect()
}

/// Half of all corners: the last setting is the product of the others, so that it cannot be told
/// from what they do all together.
pub fn half_of_two_level(settings: usize) -> Vec<Vec<f64>> {
    let rest = two_level(settings.min(MOST).saturating_sub(1)).into_iter();
    rest.map(|mut run| {
        run.push(run.iter().product());
        run
    })
    .collect()
}

/// All corners, the middle of each setting at −`reach` and `reach`, and so many runs in the centre:
/// the central composite plan. At a reach of 1 no setting leaves its ends.
pub fn central_composite(settings: usize, reach: f64, centres: usize) -> Vec<Vec<f64>> {
    let settings = settings.min(MOST);
    let star = (0..settings).flat_map(|at| {
        [-reach, reach].map(|end| {
            let mut run = vec![0.0; settings];
            run[at] = end;
            run
        })
    });
    let centre = std::iter::repeat_n(vec![0.0; settings], centres);
    two_level(settings)
        .into_iter()
        .chain(star)
        .chain(centre)
        .collect()
}

/// Every setting low, in the middle and high: what plans with squares are chosen from.
pub fn three_level(settings: usize) -> Vec<Vec<f64>> {
    let mut runs: Vec<Vec<f64>> = vec![Vec::new()];
    for _ in 0..settings.min(MOST) {
        let longer = runs
            .iter()
            .flat_map(|run| [-1.0, 0.0, 1.0].map(|end| [run.as_slice(), &[end]].concat()));
        runs = longer.collect();
    }
    runs
}

/// Every mix at every run of the settings.
pub fn crossed(mixes: &[Vec<f64>], runs: &[Vec<f64>]) -> Vec<Vec<f64>> {
    let at = |mix: &Vec<f64>| {
        let with = |run: &Vec<f64>| [mix.as_slice(), run.as_slice()].concat();
        runs.iter().map(with).collect::<Vec<_>>()
    };
    mixes.iter().flat_map(at).collect()
}
