//! The jar test: sand shaken up in water and left to settle in layers.

use measure::length::Length;
use measure::source::Law;

/// Share of the settled sand that is the fine layer on top, by volume.
///
/// Not per cent of clay by mass: the layer holds much water and silt as well, and how much is
/// not known without drying it.
pub const LAYER_SHARE: Law = Law {
    name: "sand::jar::layer_share",
    formula: "v = h_fine / h_all",
    range: "by volume, a straight-sided jar, settled until the water is clear",
    sources: &["common-practice"],
};

/// The fine layer as a share of all that settled, by volume. Law: [`LAYER_SHARE`].
pub fn layer_share(fine: Length, all: Length) -> f64 {
    fine / all
}
