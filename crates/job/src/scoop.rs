//! The founder's own scoops, buckets and spoons, each weighed once: `2 red scoops`.

use std::borrow::Cow;

use measure::matter::Mass;
use measure::text::{plain_number, rounded};

/// A scoop that was weighed full.
#[derive(Clone, Debug, PartialEq)]
pub struct Scoop {
    /// What it is called: "red scoop".
    pub name: String,
    /// What it was weighed with: "bentonite".
    pub of: String,
    /// What it holds of that.
    pub holds: Mass,
}

/// Puts the weight in the place of scoops: `2 red scoops` of 310 g each becomes `620 g`; any other
/// text stays as it is.
pub fn weighed<'a>(scoops: &[Scoop], text: &'a str) -> Cow<'a, str> {
    scoops
        .iter()
        .find_map(|scoop| mass_of(scoop, text))
        .map_or(Cow::Borrowed(text), |mass| {
            Cow::Owned(format!("{} g", rounded(mass.as_g(), 9)))
        })
}

/// `2 red scoops`, `1 1/2 red scoop`, `2 red scoops of bentonite`.
fn mass_of(scoop: &Scoop, text: &str) -> Option<Mass> {
    let text = text.trim();
    let of = format!(" of {}", scoop.of);
    let text = text.strip_suffix(of.as_str()).unwrap_or(text);
    let number = text
        .strip_suffix(&scoop.name)
        .or_else(|| text.strip_suffix('s')?.strip_suffix(&scoop.name))?;
    let count = plain_number(number).filter(|count| *count >= 0.0)?;
    Some(scoop.holds * count)
}
