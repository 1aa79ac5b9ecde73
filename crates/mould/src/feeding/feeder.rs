//! The feeder (riser): the reserve that stays liquid longer than the section it feeds, and that
//! holds enough metal to make good the shrinkage.
//!
//! Two rules have to hold at once. By modulus: the feeder freezes last. By volume: it does not run
//! empty. Whether it is wanted at all comes first, in [`crate::feeding::need`].

use measure::length::{Length, Volume};
use measure::source::Law;

/// Modulus of an upright cylinder.
pub const CYLINDER_MODULUS: Law = Law {
    name: "mould::feeding::feeder::cylinder_modulus",
    formula: "M = D / (4 + n D / H)",
    range: "side and n ends cooling alike: H = D gives D/6 with two, D/5 with one",
    sources: &["gate-exam-2018-160", "gate-exam-riser"],
};

/// Diameter of a feeder that freezes last.
pub const DIAMETER_BY_MODULUS: Law = Law {
    name: "mould::feeding::feeder::diameter_by_modulus",
    formula: "D = k M (4 + n / (H/D))",
    range: "n the ends that cool; k 1.1 for iron, 1.2 for aluminium and copper alloys; 1.4 through \
            a section between",
    sources: &["feeder-article", "riser-notes-3202"],
};

/// Volume of a feeder that does not run empty.
pub const VOLUME_RULE: Law = Law {
    name: "mould::feeding::feeder::feeder_volume",
    formula: "V_f = β V_c / (ε − β)",
    range: "β below ε; ε = 0.14 for a plain cylinder of sand",
    sources: &["campbell-castings"],
};

/// How much longer a feeder lasts that has this share of the section's modulus.
pub const FREEZING_RATIO: Law = Law {
    name: "mould::feeding::feeder::freezing_ratio",
    formula: "t_feeder / t_section = (M_feeder / M_section)²",
    range: "both in the same sand",
    sources: &["gate-exam-2014-22"],
};

/// How many ends of a feeder cool: a side feeder on its neck cools at both, a top feeder that
/// stands on the casting only above.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CoolingEnds {
    /// Only the top.
    One,
    /// Top and bottom.
    Two,
}

/// Share of a plain cylinder that can run out before it freezes (`campbell-castings`, from memory).
pub const USABLE_SHARE: f64 = 0.14;

/// Modulus a feeder needs over that of the section: 1.2, and 1.1 for iron.
pub const MARGIN: f64 = 1.2;
/// Modulus a feeder needs over that of an iron section.
pub const IRON_MARGIN: f64 = 1.1;

/// Modulus of a cylinder. Law: [`CYLINDER_MODULUS`].
pub fn cylinder_modulus(diameter: Length, height: Length, ends: CoolingEnds) -> Length {
    diameter / (4.0 + ends.count() * (diameter / height))
}

/// Diameter by the freezing. Law: [`DIAMETER_BY_MODULUS`].
pub fn diameter_by_modulus(
    section: Length,
    margin: f64,
    height_over_diameter: f64,
    ends: CoolingEnds,
) -> Length {
    section * (margin * (4.0 + ends.count() / height_over_diameter))
}

/// Volume by the shrinkage, or nothing where no plain feeder is large enough. Law: [`VOLUME_RULE`].
pub fn feeder_volume(casting: Volume, demand: f64, usable: f64) -> Option<Volume> {
    (demand < usable).then(|| casting * (demand / (usable - demand)))
}

/// Diameter of the cylinder of this volume, and so many times as high as wide.
pub fn diameter_holding(volume: Volume, height_over_diameter: f64) -> Length {
    let cube = 4.0 * volume.as_m3() / (std::f64::consts::PI * height_over_diameter);
    Length::from_m(cube.cbrt())
}

/// How much longer a feeder stays liquid. Law: [`FREEZING_RATIO`].
pub fn freezing_ratio(feeder: Length, section: Length) -> f64 {
    (feeder / section).powi(2)
}

impl CoolingEnds {
    fn count(self) -> f64 {
        match self {
            CoolingEnds::One => 1.0,
            CoolingEnds::Two => 2.0,
        }
    }
}
