//! Which mixes are allowed: a low and a high share for each component, and limits on sums.

use thiserror::Error;

/// One component of a mix.
#[derive(Clone, Debug, PartialEq)]
pub struct Component {
    /// What it is called.
    pub name: String,
    /// Least share of the mix, 0 to 1.
    pub low: f64,
    /// Largest share of the mix, 0 to 1.
    pub high: f64,
}

/// A weighted sum of shares that has to stay between two values: two parts of the first to five of
/// the second at most is the weights 5 and −2, high end 0.
#[derive(Clone, Debug, PartialEq)]
pub struct Limit {
    /// What it is called.
    pub name: String,
    /// The weight of each component.
    pub weights: Vec<f64>,
    /// Least value; minus infinity for none.
    pub low: f64,
    /// Largest value; infinity for none.
    pub high: f64,
}

/// All mixes that are allowed.
#[derive(Clone, Debug, PartialEq)]
pub struct Region {
    /// The components, in the order of the shares.
    pub components: Vec<Component>,
    /// What else has to hold.
    pub limits: Vec<Limit>,
}

/// A bound that no mix can reach, because of the bounds of the others.
#[derive(Clone, Debug, PartialEq)]
pub struct Unattainable {
    /// The component.
    pub name: String,
    /// The bound as typed.
    pub bound: f64,
    /// The share that can be reached at most or at least.
    pub reachable: f64,
}

/// Why a region is no region.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum RegionError {
    /// Too few components.
    #[error("a mix needs two components at least, and there are {0}: name another")]
    TooFew(
        /// How many there are.
        usize,
    ),
    /// Too many to list the corners of.
    #[error("{0} components are too many to plan with: hold all but {MOST_COMPONENTS} fixed")]
    TooMany(
        /// How many there are.
        usize,
    ),
    /// Too many limits.
    #[error("{0} limits are too many to plan with: keep the {MOST_LIMITS} that matter most")]
    TooManyLimits(
        /// How many there are.
        usize,
    ),
    /// Bounds that are none.
    #[error(
        "{name} from {low} to {high} is no range of shares: give both between 0 and 1, in order"
    )]
    NoRange {
        /// The component.
        name: String,
        /// Low bound.
        low: f64,
        /// High bound.
        high: f64,
    },
    /// A limit that is none.
    #[error("the limit {name} needs one weight for each of {components} components, and an order")]
    NoLimit {
        /// The limit.
        name: String,
        /// How many components there are.
        components: usize,
    },
    /// The low bounds leave no room.
    #[error("the least shares add up to {:.2} %, more than the whole: lower some of them", .0 * 100.0)]
    LowsAboveWhole(
        /// Their sum.
        f64,
    ),
    /// The high bounds do not fill the whole.
    #[error("the largest shares add up to {:.2} %, less than the whole: raise some of them", .0 * 100.0)]
    HighsBelowWhole(
        /// Their sum.
        f64,
    ),
    /// A grid of more points than can be looked at.
    #[error("a grid of {0} mixes is too fine: take fewer steps, or hold a component fixed")]
    TooFine(
        /// How many points it would have.
        usize,
    ),
    /// The limits leave nothing.
    #[error("no mix within the bounds meets {}: widen it or the bounds", .0.join(" and "))]
    NoMixMeets(
        /// The limits.
        Vec<String>,
    ),
}

/// Why parts are not made into shares.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum SharesError {
    /// A part that is none.
    #[error("part {at} is {value}, which no mix can hold: weigh it again")]
    NoPart {
        /// Which part, counted from one.
        at: usize,
        /// Its value.
        value: f64,
    },
    /// Percent that do not add up.
    #[error(
        "the parts add up to {sum:.2} % instead of 100 %: \
         one of them is wrong, or missing, or meant per cent of something else"
    )]
    DoNotAddUp {
        /// Their sum in per cent.
        sum: f64,
    },
}

/// Most components that are planned with: the corners of ten number a few thousand, and each
/// further component doubles them.
pub const MOST_COMPONENTS: usize = 10;

/// Most limits beside the bounds, for the same reason.
pub const MOST_LIMITS: usize = 4;

/// How far a share may lie beyond its bound and still count as on it: rounding, no more.
pub(crate) const ROUNDING: f64 = 1e-9;

/// How far shares may miss the whole. Ten parts rounded to a tenth of a per cent each miss it by
/// half a per cent at worst; more is an error of typing.
const MISSED: f64 = 0.005;

/// Shares from percent of the whole. What rounding misses is spread over all in proportion.
///
/// # Errors
/// When a part is negative or no number, or all of them do not add up to 100.
pub fn shares(percent: &[f64]) -> Result<Vec<f64>, SharesError> {
    for (at, value) in percent.iter().enumerate() {
        if !(value.is_finite() && *value >= 0.0) {
            let (at, value) = (at + 1, *value);
            return Err(SharesError::NoPart { at, value });
        }
    }
    let sum: f64 = percent.iter().sum();
    match (sum / 100.0 - 1.0).abs() <= MISSED {
        true => Ok(percent.iter().map(|part| part / sum).collect()),
        false => Err(SharesError::DoNotAddUp { sum }),
    }
}

/// Checks that the bounds leave room for a mix. Limits are met or not by the corners
/// ([`crate::vertices::vertices`]).
///
/// # Errors
/// When a bound is none, or no shares within the bounds add up to the whole.
pub fn checked(region: &Region) -> Result<(), RegionError> {
    let components = region.components.len();
    match components {
        0 | 1 => return Err(RegionError::TooFew(components)),
        many if many > MOST_COMPONENTS => return Err(RegionError::TooMany(many)),
        _ => {}
    }
    if region.limits.len() > MOST_LIMITS {
        return Err(RegionError::TooManyLimits(region.limits.len()));
    }
    for one in &region.components {
        let (name, low, high) = (one.name.clone(), one.low, one.high);
        if !(0.0 <= low && low <= high && high <= 1.0) {
            return Err(RegionError::NoRange { name, low, high });
        }
    }
    for limit in &region.limits {
        let weights = limit.weights.iter().all(|weight| weight.is_finite());
        let ordered = limit.low <= limit.high;
        if limit.weights.len() != components || !weights || !ordered {
            let name = limit.name.clone();
            return Err(RegionError::NoLimit { name, components });
        }
    }
    let (lows, highs) = (region.lows(), region.highs());
    if lows > 1.0 + ROUNDING {
        return Err(RegionError::LowsAboveWhole(lows));
    }
    if highs < 1.0 - ROUNDING {
        return Err(RegionError::HighsBelowWhole(highs));
    }
    Ok(())
}

/// Every bound that the bounds of the other components keep from being reached (Piepel's test of
/// consistent bounds, from memory). They do no harm; something else may have been meant.
pub fn unattainable(region: &Region) -> Vec<Unattainable> {
    let mut found = Vec::new();
    for one in &region.components {
        let most = 1.0 - (region.lows() - one.low);
        let least = 1.0 - (region.highs() - one.high);
        let name = || one.name.clone();
        if one.high > most + ROUNDING {
            let (name, bound) = (name(), one.high);
            found.push(Unattainable {
                name,
                bound,
                reachable: most,
            });
        }
        if one.low < least - ROUNDING {
            let (name, bound) = (name(), one.low);
            found.push(Unattainable {
                name,
                bound,
                reachable: least,
            });
        }
    }
    found
}

impl Region {
    /// All mixes of these components, without bounds.
    pub fn whole(names: &[&str]) -> Region {
        let component = |name: &&str| Component {
            name: (*name).to_owned(),
            low: 0.0,
            high: 1.0,
        };
        Region {
            components: names.iter().map(component).collect(),
            limits: Vec::new(),
        }
    }

    /// Whether a mix keeps every bound and limit and is whole.
    pub fn holds(&self, mix: &[f64]) -> bool {
        let sum: f64 = mix.iter().sum();
        let within =
            |value: f64, low: f64, high: f64| low - ROUNDING <= value && value <= high + ROUNDING;
        let mut bounds = self.components.iter().zip(mix);
        within(sum, 1.0, 1.0)
            && bounds.all(|(one, share)| within(*share, one.low, one.high))
            && self
                .limits
                .iter()
                .all(|limit| within(limit.of(mix), limit.low, limit.high))
    }

    /// The mix as shares of what lies above the low bounds: narrow regions are fitted in these, in
    /// which they fill the whole range from 0 to 1.
    pub fn above_lows(&self, mix: &[f64]) -> Vec<f64> {
        let room = 1.0 - self.lows();
        let above = self.components.iter().zip(mix);
        above.map(|(one, share)| (share - one.low) / room).collect()
    }

    /// The mix of which [`Region::above_lows`] gave these shares.
    pub fn from_above_lows(&self, above: &[f64]) -> Vec<f64> {
        let room = 1.0 - self.lows();
        let shares = self.components.iter().zip(above);
        shares.map(|(one, part)| one.low + part * room).collect()
    }

    fn lows(&self) -> f64 {
        self.components.iter().map(|one| one.low).sum()
    }

    fn highs(&self) -> f64 {
        self.components.iter().map(|one| one.high).sum()
    }
}

impl Limit {
    /// The weighted sum of a mix.
    pub fn of(&self, mix: &[f64]) -> f64 {
        self.weights
            .iter()
            .zip(mix)
            .map(|(weight, share)| weight * share)
            .sum()
    }
}
