//! How rough a face comes out of the sand.
//!
//! Metal copies the grains it lies against. No published law ties roughness to the grain fineness
//! number alone: ramming, the metal's heat and its head count as much. So there is the band that
//! works reach with their sands, and the fineness that such sands have.

use measure::band::Band;
use measure::length::Length;
use measure::source::Law;

/// Roughness of a face as cast.
pub const AS_CAST_ROUGHNESS: Law = Law {
    name: "sand::finish::as_cast_roughness",
    formula: "Ra by the longest side L:  L ≤ 300 mm: 12.5 to 25 µm;  L ≤ 800 mm: 14 to 28 µm",
    range: "grey iron from the green sand of works, longest side up to 800 mm, before blasting; \
            sand rammed by hand lies at the rough end or beyond",
    sources: &["green-sand-roughness-page"],
};

/// Fineness of the sands that aluminium, brass and bronze are cast in: `shop-handbook-figures`.
pub const FINENESS_FOR_NON_FERROUS: (f64, f64) = (70.0, 140.0);

/// Longest side up to which a row holds, mm, and its least and greatest Ra, µm.
const ROWS: [(f64, f64, f64); 2] = [(300.0, 12.5, 25.0), (800.0, 14.0, 28.0)];

/// Arithmetic mean roughness Ra of an as-cast face, µm; nothing beyond the last row. Law:
/// [`AS_CAST_ROUGHNESS`].
pub fn as_cast_roughness_um(longest: Length) -> Option<Band<f64>> {
    let row = ROWS.iter().find(|(up_to, ..)| longest.as_mm() <= *up_to)?;
    let (_, low, high) = *row;
    Some(Band::new(low, (low + high) / 2.0, high))
}
