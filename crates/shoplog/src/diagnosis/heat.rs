//! How hot a kind of metal is poured at all, where no plan says how hot this pour was to be.

use job::usual_pouring::usual_pouring_c;

use crate::diagnosis::sight::Kind;

/// The lowest and the highest temperature, °C, at which any alloy of this kind is poured; nothing
/// for copper, which is not in the tables.
pub fn usual_c(kind: Kind) -> Option<[f64; 2]> {
    usual_pouring_c(metals(kind))
}

/// The metals of the tables that are of this kind.
pub fn metals(kind: Kind) -> &'static [&'static str] {
    match kind {
        Kind::Aluminium => &[
            "Al 99.5",
            "Al-Si12",
            "Al-Si6-Cu4",
            "Al-Si7-Mg",
            "Al wrought scrap",
        ],
        Kind::Zinc => &["Zamak 3", "ZA-8", "ZA-12", "ZA-27"],
        Kind::Pewter => &["Pewter 92-7.5-0.5"],
        Kind::Brass => &["Yellow brass", "Silicon brass"],
        Kind::Bronze => &[
            "Tin bronze 88-10-2",
            "Gunmetal 85-5-5-5",
            "Silicon bronze",
            "Aluminium bronze",
        ],
        Kind::Copper => &[],
        Kind::Iron => &["Grey iron"],
    }
}
