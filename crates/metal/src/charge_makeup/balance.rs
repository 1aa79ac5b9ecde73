//! The sums of charge make-up that are done by hand: mixing, losing, adding.

use measure::matter::Mass;
use measure::source::Law;

/// Share of an element in what comes of three heaps.
pub const BLEND: Law = Law {
    name: "metal::charge_makeup::balance::blend",
    formula: "w = (m₁ w₁ + m₂ w₂ + m₃ w₃) / (m₁ + m₂ + m₃)",
    range: "nothing lost on the way; a heap that is not there weighs nothing",
    sources: &["charge-calculation-page"],
};

/// How much of a rich heap to take, a lean one making up the rest.
pub const RICH_HEAP: Law = Law {
    name: "metal::charge_makeup::balance::rich_heap",
    formula: "m₁ = (m w − mₛ wₛ − (m − mₛ) w₂) / (w₁ − w₂)",
    range: "one element only; w between what the lean and the rich heap give; nothing lost",
    sources: &["charge-calculation-page"],
};

/// Share of an element after part of it has burnt off.
pub const AFTER_LOSS: Law = Law {
    name: "metal::charge_makeup::balance::after_loss",
    formula: "w_after = w (1 − l) / (1 − w l)",
    range: "the other elements stay; l below 0 where the melt takes the element up",
    sources: &["common-practice"],
};

/// How much of an addition brings a melt up to a share.
pub const ADDITION: Law = Law {
    name: "metal::charge_makeup::balance::addition",
    formula: "mₐ = m (w − w₀) / (r wₐ − w (1 − wₐ + r wₐ))",
    range: "what reaches the melt of the addition is richer than what is wanted",
    sources: &["common-practice"],
};

/// A heap, or what is taken of it, and its share of the element looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// How much of it.
    pub mass: Mass,
    /// Share of the element, in parts of one.
    pub share: f64,
}

/// Share of an element in a mix; nothing where nothing is mixed. Law: [`BLEND`].
pub fn blend(parts: &[Part]) -> f64 {
    let whole: Mass = parts.iter().map(|part| part.mass).sum();
    if whole <= Mass::ZERO {
        return 0.0;
    }
    let of_element: Mass = parts.iter().map(|part| part.mass * part.share).sum();
    of_element / whole
}

/// What to take of the rich heap so that `charge` comes to `wanted`; `set` is in it already, and
/// the lean heap makes up the rest. Below nought or above the rest where no mix of the two can do
/// it. Law: [`RICH_HEAP`].
pub fn rich_heap(charge: Mass, wanted: f64, set: Part, rich: f64, lean: f64) -> Mass {
    let of_lean = (charge - set.mass) * lean;
    (charge * wanted - set.mass * set.share - of_lean) / (rich - lean)
}

/// Share of an element once `loss` of it, as a share of that element, is gone. Law:
/// [`AFTER_LOSS`].
pub fn after_loss(share: f64, loss: f64) -> f64 {
    share * (1.0 - loss) / (1.0 - share * loss)
}

/// What to add to `melt` to bring it to `wanted`; `recovery` is the share of the addition's
/// element that reaches the melt. Law: [`ADDITION`].
pub fn addition(melt: Mass, now: f64, wanted: f64, in_addition: f64, recovery: f64) -> Mass {
    let reaches = recovery * in_addition;
    melt * (wanted - now) / (reaches - wanted * (1.0 - in_addition + reaches))
}
