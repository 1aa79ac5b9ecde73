//! Whether a section wants a feeder at all. Most thin castings do not, nor does grey iron of high
//! carbon in a mould that does not give.

use measure::length::Length;
use measure::source::Law;

/// Whether a section wants a feeder.
pub const NEED: Law = Law {
    name: "mould::feeding::need::need",
    formula: "none where M ≤ 3 mm, grey iron M ≤ 5 mm; none where CE ≥ 4.2 and the mould is firm",
    range: "the gate feeds thin sections; a mould is firm that a test has shown not to give: \
            rammed hard, in a stiff flask, clamped or weighted",
    sources: &["common-practice", "foundry-handbooks-iron"],
};

/// Section modulus up to which a casting is thin enough to be fed by its own gate.
///
/// Common practice, no source: walls to some 6 mm. Raised, bosses would go without a feeder and
/// sink; lowered, every name plate would carry one.
pub const THIN_MODULUS: Length = Length::from_mm(3.0);

/// The same for grey iron of whatever carbon, walls to some 10 mm: half of its shrinkage comes
/// back when the graphite grows, and the gate gives the rest (common practice, no source).
pub const THIN_IRON_MODULUS: Length = Length::from_mm(5.0);

/// Carbon equivalent from which grey iron swells enough on freezing to feed itself (needs a mould
/// that does not give; from memory).
pub const SELF_FEEDING_CARBON: f64 = 4.2;

/// What is known of grey iron and its mould.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct IronKnown {
    /// Carbon equivalent in per cent, where there is an analysis or a chill wedge.
    pub carbon_equivalent: Option<f64>,
    /// Whether a test has shown the mould to be firm.
    pub firm: bool,
}

/// Whether a feeder is wanted, and of which kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Need {
    /// None.
    None(NoFeeder),
    /// A small one that gives what the liquid iron contracts, behind a neck that shuts early.
    Small,
    /// One by the rules of modulus and volume.
    Full,
}

/// Why a casting needs no feeder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoFeeder {
    /// Its heaviest section is thin.
    Thin,
    /// Grey iron of high carbon in a mould shown to be firm.
    FirmIron,
}

/// Whether a section of this modulus wants a feeder; `iron` for grey iron only. Law: [`NEED`].
pub fn need(heaviest: Length, iron: Option<IronKnown>) -> Need {
    let Some(known) = iron else {
        return match heaviest <= THIN_MODULUS {
            true => Need::None(NoFeeder::Thin),
            false => Need::Full,
        };
    };
    let rich = known
        .carbon_equivalent
        .is_some_and(|carbon| carbon >= SELF_FEEDING_CARBON);
    match (rich && known.firm, heaviest <= THIN_IRON_MODULUS) {
        (true, _) => Need::None(NoFeeder::FirmIron),
        (false, true) => Need::None(NoFeeder::Thin),
        (false, false) => Need::Small,
    }
}
