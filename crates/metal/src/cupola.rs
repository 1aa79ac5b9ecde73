//! A cupola in estimate: iron in an hour, coke and blast.
//!
//! The figures are those of full-sized cupolas in lesson sums and an old book. A small cupola
//! takes more coke and melts less evenly; they size a blower and a heap of coke, no more.

use measure::flow::MassRate;
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use measure::source::Law;

/// Iron melted by each square centimetre of bore in an hour: `cupola-lesson`.
pub const IRON_RATE_KG_PER_H_CM2: f64 = 0.562;

/// Iron in an hour from the bore.
pub const IRON_RATE: Law = Law {
    name: "metal::cupola::iron_rate",
    formula: "q = u π d² / 4",
    range: "u of 0.56 kg/h for each cm² of bore, from a lesson on a cupola of 75 cm: an estimate",
    sources: &["cupola-lesson"],
};

/// Coke of the charges.
pub const CHARGE_COKE: Law = Law {
    name: "metal::cupola::charge_coke",
    formula: "m_coke = m_iron / r",
    range: "r of 7 to 12 kg of iron to one of coke between the charges; small cupolas at the low \
            end; the bed comes on top",
    sources: &["cupola-lesson", "cupola-question", "west-cast-iron"],
};

/// Coke of the bed.
pub const BED_COKE: Law = Law {
    name: "metal::cupola::bed_coke",
    formula: "m_bed = ρ h π d² / 4",
    range: "h to the melting zone, seen as a groove in the lining after the last heat",
    sources: &["cupola-lesson"],
};

/// Air blown for the iron melted.
pub const BLAST: Law = Law {
    name: "metal::cupola::blast",
    formula: "V = v m_iron",
    range: "v of 0.7 to 1.03 m³ of cold air for each kg of iron: two sources",
    sources: &["west-cast-iron", "cupola-question"],
};

/// Iron that a cupola of this bore melts in an hour; `each_cm2` in kilograms an hour for each
/// square centimetre. Law: [`IRON_RATE`].
pub fn iron_rate(bore: Length, each_cm2: f64) -> MassRate {
    MassRate::from_kg_per_h(each_cm2 * bore_area(bore).as_cm2())
}

/// Coke of the charges; `ratio` is iron to one of coke. Law: [`CHARGE_COKE`].
pub fn charge_coke(iron: Mass, ratio: f64) -> Mass {
    iron / ratio
}

/// Coke of the bed. Law: [`BED_COKE`].
pub fn bed_coke(bore: Length, height: Length, heaped: Density) -> Mass {
    heaped * (bore_area(bore) * height)
}

/// Cold air for the iron melted; `each_kg` is the volume for a kilogram. Law: [`BLAST`].
pub fn blast(iron: Mass, each_kg: Volume) -> Volume {
    each_kg * iron.as_kg()
}

fn bore_area(bore: Length) -> Area {
    bore * bore * (std::f64::consts::PI / 4.0)
}
