//! What burns out of the sand: the residue of sugar, oil and coal.

use measure::matter::Mass;
use measure::source::Law;

/// Loss on burning.
pub const BURNING_LOSS: Law = Law {
    name: "sand::burning::burning_loss",
    formula: "L = (m_dry − m_burnt) / m_dry",
    range: "dried first, then at 900 to 1000 °C until it loses no more; water bound in clay goes too",
    sources: &["afs-mold-core-handbook"],
};

/// Share of a gram of clay that goes as bound water when it is burnt: montmorillonite some 5 %,
/// kaolin 14 %; `clay-water-memory`. A sand of 8 % clay so shows up to 1 % without a trace of
/// binder.
pub const BOUND_IN_CLAY: (f64, f64) = (0.05, 0.14);

/// Loss on burning of dried sand, of its dry mass. Law: [`BURNING_LOSS`].
pub fn burning_loss(dry: Mass, burnt: Mass) -> f64 {
    (dry - burnt) / dry
}
