//! What a response is taken to depend on: products of shares, settings and days.
//!
//! A point is a row of numbers, one a variable, in the order of [`Model::variables`]: first the
//! shares of a mix (they add up to one), then the settings (coded, −1 to 1), then the days.

/// The product of variables, each told by its place; one that stands twice is squared, and no
/// variable at all is the constant.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Term {
    /// Places of the variables that are multiplied, in rising order.
    pub factors: Vec<usize>,
}

/// The terms that are added up to a response.
#[derive(Clone, Debug, PartialEq)]
pub struct Model {
    /// What the numbers of a point are called, in their order.
    pub variables: Vec<String>,
    /// The terms, each with one coefficient.
    pub terms: Vec<Term>,
}

/// How far a canonical polynomial of a mixture goes (Scheffé; NIST/SEMATECH e-Handbook 5.5.4.2).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Blending {
    /// Each component for itself.
    Linear,
    /// And each pair together.
    Quadratic,
    /// And each three together.
    SpecialCubic,
}

/// How far a polynomial of settings goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bend {
    /// A plane.
    Flat,
    /// A plane that pairs of settings twist.
    Twisted,
    /// A full surface of second order.
    Bent,
}

/// The canonical polynomial of a mixture: no constant and no squares, because shares add up to one.
pub fn mixture(components: &[&str], blending: Blending) -> Model {
    let count = components.len();
    let mut terms: Vec<Term> = (0..count).map(|at| term(&[at])).collect();
    if blending != Blending::Linear {
        terms.extend(pairs(count));
    }
    if blending == Blending::SpecialCubic {
        for a in 0..count {
            for b in a + 1..count {
                terms.extend((b + 1..count).map(|c| term(&[a, b, c])));
            }
        }
    }
    Model {
        variables: named(components),
        terms,
    }
}

/// The polynomial of settings, with its constant.
pub fn surface(settings: &[&str], bend: Bend) -> Model {
    let count = settings.len();
    let mut terms = vec![term(&[])];
    terms.extend((0..count).map(|at| term(&[at])));
    if bend != Bend::Flat {
        terms.extend(pairs(count));
    }
    if bend == Bend::Bent {
        terms.extend((0..count).map(|at| term(&[at, at])));
    }
    Model {
        variables: named(settings),
        terms,
    }
}

/// A mixture whose blending itself changes with the settings: every term of the one times every
/// term of the other. Many coefficients; a few batches feed [`added`] only.
pub fn crossed(mixture: &Model, settings: &Model) -> Model {
    let shift = mixture.variables.len();
    let product = |setting: &Term| {
        let moved: Vec<usize> = setting.factors.iter().map(|at| at + shift).collect();
        mixture
            .terms
            .iter()
            .map(move |one| term(&[one.factors.as_slice(), moved.as_slice()].concat()))
    };
    Model {
        variables: joined(mixture, settings),
        terms: settings.terms.iter().flat_map(product).collect(),
    }
}

/// A mixture on which the settings act the same whatever the mix. The constant of the settings
/// falls away, because the shares hold it already.
pub fn added(mixture: &Model, settings: &Model) -> Model {
    let shift = mixture.variables.len();
    let own = settings.terms.iter().filter(|one| !one.factors.is_empty());
    let moved = own.map(|one| Term {
        factors: one.factors.iter().map(|at| at + shift).collect(),
    });
    Model {
        variables: joined(mixture, settings),
        terms: mixture.terms.iter().cloned().chain(moved).collect(),
    }
}

/// A model with the difference of each later day from the first.
pub fn with_days(model: &Model, days: usize) -> Model {
    let mut wider = model.clone();
    for day in 1..days {
        wider.terms.push(term(&[wider.variables.len()]));
        wider.variables.push(format!("day {}", day + 1));
    }
    wider
}

/// A point on one of the days, counted from nought.
pub fn on_day(point: &[f64], day: usize, days: usize) -> Vec<f64> {
    let marks = (1..days).map(|other| f64::from(u8::from(other == day)));
    point.iter().copied().chain(marks).collect()
}

/// A point on a day that is the mean of all days, to ask a fit with days what a mix gives.
pub fn on_mean_day(point: &[f64], days: usize) -> Vec<f64> {
    let share = 1.0 / days.max(1) as f64;
    let marks = (1..days).map(|_| share);
    point.iter().copied().chain(marks).collect()
}

impl Model {
    /// The value of each term at a point; not a number where the point lacks a variable.
    pub fn row(&self, point: &[f64]) -> Vec<f64> {
        let variable = |at: &usize| point.get(*at).copied().unwrap_or(f64::NAN);
        let value = |one: &Term| one.factors.iter().map(variable).product();
        self.terms.iter().map(value).collect()
    }

    /// A term as it is written: `a·b`, `heat²`, `constant`.
    pub fn name(&self, term: &Term) -> String {
        if term.factors.is_empty() {
            return "constant".to_owned();
        }
        let mut parts: Vec<String> = Vec::new();
        let mut at = 0;
        while at < term.factors.len() {
            let variable = term.factors[at];
            let power = term.factors[at..]
                .iter()
                .take_while(|other| **other == variable)
                .count();
            let name = &self.variables[variable];
            parts.push(match power {
                1 => name.clone(),
                2 => format!("{name}²"),
                3 => format!("{name}³"),
                more => format!("{name}^{more}"),
            });
            at += power;
        }
        parts.join("·")
    }
}

impl Term {
    /// Whether every variable of this term stands in the other too, and the other has more.
    pub fn is_part_of(&self, other: &Term) -> bool {
        let mut left = other.factors.clone();
        let held = self.factors.iter().all(|one| {
            let found = left.iter().position(|at| at == one);
            found.map(|at| left.remove(at)).is_some()
        });
        held && !left.is_empty()
    }
}

fn term(factors: &[usize]) -> Term {
    let mut factors = factors.to_vec();
    factors.sort_unstable();
    Term { factors }
}

fn pairs(count: usize) -> impl Iterator<Item = Term> {
    (0..count).flat_map(move |a| (a + 1..count).map(move |b| term(&[a, b])))
}

fn named(names: &[&str]) -> Vec<String> {
    names.iter().map(|name| (*name).to_owned()).collect()
}

fn joined(mixture: &Model, settings: &Model) -> Vec<String> {
    let all = mixture.variables.iter().chain(&settings.variables);
    all.cloned().collect()
}
