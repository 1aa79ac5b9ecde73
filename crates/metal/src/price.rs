//! What a casting costs, and the least it may be sold for. Any currency, one in each sum.

use measure::matter::Mass;
use measure::money::{Money, MoneyError};
use measure::source::Law;

/// Casting as a share of what is poured.
pub const CASTING_YIELD: Law = Law {
    name: "metal::price::casting_yield",
    formula: "y = m_casting / m_poured",
    range: "castings trimmed; 40 to 70 % is usual in small work",
    sources: &["common-practice"],
};

/// What it costs to make one casting, good or bad.
pub const COST_EACH: Law = Law {
    name: "metal::price::cost_each",
    formula: "K = metal + sand + fuel + hours + other + K_pattern / n",
    range: "metal lost and sold counts, returns that are melted again do not; the pattern spread \
            over the castings it is made for",
    sources: &["common-practice"],
};

/// The least price at which nothing is lost.
pub const LEAST_PRICE: Law = Law {
    name: "metal::price::least_price",
    formula: "k = K / (1 − q)",
    range: "share q of castings that fail; nothing for profit, tools and rent unless in the hours",
    sources: &["common-practice"],
};

/// Whether mending a casting beats casting it again.
pub const MEND_OR_REMAKE: Law = Law {
    name: "metal::price::mend_or_remake",
    formula: "s = k − k_scrap − (k_mend + q k)",
    range: "s above nought: mend; q is the chance that the mended one fails after all",
    sources: &["common-practice"],
};

/// A line of a quote.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What it is for: "metal".
    pub name: String,
    /// What it costs for each casting.
    pub money: Money,
}

/// A quote for one casting.
#[derive(Clone, Debug, PartialEq)]
pub struct Quote {
    /// The lines, pattern and failures with them; together they are the price.
    pub lines: Vec<Line>,
    /// The least price.
    pub least_price: Money,
}

impl Quote {
    /// A quote from the lines of one casting, with the pattern spread over `castings` and a share
    /// of them failing. The failures stand as a line of their own, so that the risk is seen.
    ///
    /// # Errors
    ///
    /// Where two currencies meet.
    pub fn of(
        lines: Vec<Line>,
        pattern: &Money,
        castings: f64,
        failing: f64,
    ) -> Result<Quote, MoneyError> {
        let spread = Money {
            amount: pattern.amount / castings,
            currency: pattern.currency.clone(),
        };
        let mut lines = lines;
        lines.push(line("pattern", spread));
        let amounts: Vec<Money> = lines.iter().map(|line| line.money.clone()).collect();
        let cost = cost_each(&amounts, &pattern.currency)?;
        let least_price = least_price(&cost, failing);
        let risk = Money {
            amount: least_price.amount - cost.amount,
            currency: cost.currency,
        };
        lines.push(line("failures", risk));
        Ok(Quote { lines, least_price })
    }
}

/// A line of a quote.
pub fn line(name: &str, money: Money) -> Line {
    let name = name.to_owned();
    Line { name, money }
}

/// Casting as a share of what is poured. Law: [`CASTING_YIELD`].
pub fn casting_yield(castings: Mass, poured: Mass) -> f64 {
    castings / poured
}

/// The sum of the lines. Law: [`COST_EACH`].
///
/// # Errors
///
/// Where two currencies meet.
pub fn cost_each(lines: &[Money], currency: &str) -> Result<Money, MoneyError> {
    let nothing = Money {
        amount: 0.0,
        currency: currency.to_owned(),
    };
    lines.iter().try_fold(nothing, |sum, line| sum.plus(line))
}

/// The price at which the good castings pay for the bad; `failing` below one.
/// Law: [`LEAST_PRICE`].
pub fn least_price(cost: &Money, failing: f64) -> Money {
    Money {
        amount: cost.amount / (1.0 - failing),
        currency: cost.currency.clone(),
    }
}

/// What is saved by mending instead of casting again; below nought it is cheaper to remelt.
/// `failing` is the chance that the mended casting fails after all. Law: [`MEND_OR_REMAKE`].
pub fn mend_or_remake(remake: f64, scrap: f64, mend: f64, failing: f64) -> f64 {
    remake - scrap - (mend + failing * remake)
}
