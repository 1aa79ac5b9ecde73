//! A figure with its margin.

/// The lowest, the likely and the highest value of a figure.
///
/// Invariant: `low <= likely <= high`. A law that rises or falls steadily in each of its inputs
/// takes its extremes at the corners of the inputs' bands, so that widening an input can only
/// widen the answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band<T> {
    low: T,
    likely: T,
    high: T,
}

impl<T: Copy + PartialOrd> Band<T> {
    /// A value without a margin.
    pub fn exact(value: T) -> Band<T> {
        Band {
            low: value,
            likely: value,
            high: value,
        }
    }

    /// Three values, the outer two in any order; the likely one widens the band if it lies outside.
    pub fn new(one_end: T, likely: T, other_end: T) -> Band<T> {
        Band {
            low: least(least(one_end, other_end), likely),
            likely,
            high: most(most(one_end, other_end), likely),
        }
    }

    /// The lowest value.
    pub fn low(&self) -> T {
        self.low
    }

    /// The likely value.
    pub fn likely(&self) -> T {
        self.likely
    }

    /// The highest value.
    pub fn high(&self) -> T {
        self.high
    }

    /// The band of a function that is steady (rising or falling) over this band.
    pub fn map<U: Copy + PartialOrd>(&self, law: impl Fn(T) -> U) -> Band<U> {
        Band::new(law(self.low), law(self.likely), law(self.high))
    }

    /// The band of a function of two bands, steady in each.
    pub fn with<S, U>(&self, other: &Band<S>, law: impl Fn(T, S) -> U) -> Band<U>
    where
        S: Copy + PartialOrd,
        U: Copy + PartialOrd,
    {
        let corners = [
            law(self.low, other.low),
            law(self.low, other.high),
            law(self.high, other.low),
            law(self.high, other.high),
        ];
        let likely = law(self.likely, other.likely);
        let low = corners.iter().copied().fold(likely, least);
        let high = corners.iter().copied().fold(likely, most);
        Band { low, likely, high }
    }

    /// The band of a function of three bands, steady in each.
    pub fn with_two<S, R, U>(
        &self,
        second: &Band<S>,
        third: &Band<R>,
        law: impl Fn(T, S, R) -> U,
    ) -> Band<U>
    where
        S: Copy + PartialOrd,
        R: Copy + PartialOrd,
        U: Copy + PartialOrd,
    {
        let at = |value: T| second.with(third, |s, r| law(value, s, r));
        let (low, likely, high) = (at(self.low), at(self.likely), at(self.high));
        Band {
            low: least(least(low.low, likely.low), high.low),
            likely: likely.likely,
            high: most(most(low.high, likely.high), high.high),
        }
    }

    /// The smallest band that holds both, with the likely value of the first.
    pub fn or(&self, other: &Band<T>) -> Band<T> {
        Band {
            low: least(self.low, other.low),
            likely: self.likely,
            high: most(self.high, other.high),
        }
    }
}

fn least<T: PartialOrd>(a: T, b: T) -> T {
    if b < a { b } else { a }
}

fn most<T: PartialOrd>(a: T, b: T) -> T {
    if b > a { b } else { a }
}
