//! What pour temperature, sand and contact change in what castings lack: which of the three is
//! worth turning, and how often the casting is short of metal within their spread.
//!
//! Followed on the wide cells, one thing at its end at a time; changes are taken to add up. The
//! ends of a band are read as its fifth and ninety-fifth of a hundred, so that three points stand
//! for each with the weights of Pearson and Tukey.

use metal::alloy::Alloy;

use crate::pipe::shrinkage;
use crate::solved::Solved;

/// What may be turned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// Poured hotter or colder.
    Pour,
    /// Sand that drinks heat harder or less hard.
    Sand,
    /// Contact between metal and sand that is better or worse.
    Contact,
}

/// One of them at one end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TurnedTo {
    /// What is turned.
    pub turn: Turn,
    /// To its high end (hotter, harder, better) or its low one.
    pub is_high: bool,
    /// What follows.
    pub lacks: Lacks,
}

/// What castings lack in the end, mm³.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lacks {
    /// In hollows and sunken faces.
    pub hollows_mm3: f64,
    /// In fine pores.
    pub pores_mm3: f64,
}

impl Lacks {
    /// Both.
    pub fn all_mm3(&self) -> f64 {
        self.hollows_mm3 + self.pores_mm3
    }
}

/// What is known of the three, on wide cells.
#[derive(Clone, Debug, PartialEq)]
pub struct Levers {
    /// With everything as is likely.
    pub likely: Lacks,
    /// Each at its low and its high end, two after each other.
    pub turned: Vec<TurnedTo>,
}

/// Weights of the fifth, the fiftieth and the ninety-fifth of a hundred of anything
/// (`keefer-bodily-1983`, from memory).
const WEIGHTS: [f64; 3] = [0.185, 0.63, 0.185];

/// Least share of what is lacking that a lever has to take away: the wide cells know no better.
const LEAST_SHARE: f64 = 0.1;

impl Levers {
    /// What helps most, where anything takes away more than a tenth of what is lacking and more
    /// than `least_mm3`.
    pub fn best(&self, least_mm3: f64) -> Option<TurnedTo> {
        let now = self.likely.all_mm3();
        let gain = |turned: &TurnedTo| now - turned.lacks.all_mm3();
        let best = self
            .turned
            .iter()
            .max_by(|one, other| gain(one).total_cmp(&gain(other)))?;
        (gain(best) > least_mm3.max(LEAST_SHARE * now)).then_some(*best)
    }

    /// How often hollows in castings come to more than `least_mm3` within the spread of all three,
    /// as a share.
    pub fn short_share(&self, least_mm3: f64) -> f64 {
        let likely = self.likely.hollows_mm3;
        let mut sums = vec![(1.0, likely)];
        for ends in self.turned.as_chunks::<2>().0 {
            let [low, high] = ends.map(|end| end.lacks.hollows_mm3 - likely);
            let points = [low, 0.0, high].into_iter().zip(WEIGHTS);
            let further = |(share, sum): &(f64, f64)| {
                let (share, sum) = (*share, *sum);
                points
                    .clone()
                    .map(move |(more, weight)| (share * weight, sum + more))
            };
            sums = sums.iter().flat_map(further).collect();
        }
        let short = sums.iter().filter(|(_, sum)| *sum > least_mm3);
        short.map(|(share, _)| share).sum()
    }
}

/// What castings lack in a mould that was followed, with the superheat it had when full, K.
pub fn lacks(solved: &Solved, alloy: &Alloy, superheat_k: f64) -> Lacks {
    let shrinkage = shrinkage(solved, alloy, superheat_k);
    Lacks {
        hollows_mm3: shrinkage.hollows_mm3(),
        pores_mm3: shrinkage.pores_mm3,
    }
}
