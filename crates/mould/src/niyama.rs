//! A criterion of sponge in the last metal to freeze: how steep the temperature is there for how
//! fast it cools.
//!
//! Metal is drawn through the last channels between crystals the harder, the flatter the gradient
//! and the faster the cooling. Where the figure is low the drawing costs most, and pores open.

use measure::source::Law;

/// The criterion of sponge.
pub const NIYAMA: Law = Law {
    name: "mould::niyama::niyama",
    formula: "Ny = G / √Ṫ",
    range: "near the end of freezing. Steel: sponge on film below 0.1, seen under the microscope \
            below 2 (K s)^½/mm. Other metals: no threshold is known, to compare places of one \
            casting only, and hot places are not told from cold ones",
    sources: &["niyama-1982", "carlson-2002", "tavakoli-2010"],
};

/// The criterion in (K s)^½/mm, from the gradient in K/mm and the cooling in K/s, above nought.
/// Law: [`NIYAMA`].
pub fn niyama(gradient_k_mm: f64, cooling_k_s: f64) -> f64 {
    gradient_k_mm / cooling_k_s.sqrt()
}
