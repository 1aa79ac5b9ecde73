//! The thinnest wall a metal commonly runs into in a sand mould.

use measure::band::Band;
use measure::length::Length;
use measure::source::Sourced;

use crate::alloy::Family;

/// Walls from which casting is usual and from which it is easy; thinner ones run only near the
/// gate, with hot metal (from memory of the handbooks).
pub fn least_wall(family: Family) -> Sourced<Band<Length>> {
    let [low, high] = match family {
        Family::Aluminium => [3.0, 5.0],
        Family::Copper | Family::Iron => [3.0, 6.0],
        Family::Zinc | Family::Tin => [2.0, 3.0],
    };
    let value = Band::new(low, (low + high) / 2.0, high).map(Length::from_mm);
    Sourced {
        value,
        source: "least-wall-memory".to_owned(),
    }
}
