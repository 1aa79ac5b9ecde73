//! What a crucible holds, and which one to take.

use measure::band::Band;
use measure::length::Volume;
use measure::matter::{Density, Mass};
use measure::source::Law;

/// Share of the brim volume that is filled: the rest is room to lift, skim and pour.
/// Common practice, no source.
pub const WORKING_FILL: f64 = 0.8;

/// Density of the liquid aluminium by which crucibles are marked: `aluminium-hobby-page`.
pub const MARKED_BY: Density = Density::from_g_per_cm3(2.37);

/// Volume to the brim of a crucible from its mark: n pounds of liquid aluminium.
pub const BRIM_VOLUME: Law = Law {
    name: "metal::crucible::brim_volume",
    formula: "V = n · 1 lb / 2.37 g/cm³ = n · 0.191 l",
    range: "marks in pounds of aluminium (A4, No. 6); makers differ: fill yours with water once",
    sources: &[
        "crucible-mark-page",
        "crucible-number-page",
        "aluminium-hobby-page",
    ],
};

/// Metal that a crucible holds at a given fill.
pub const HELD: Law = Law {
    name: "metal::crucible::held",
    formula: "m = f V ρ_liquid,  f = 0.8 for work",
    range: "liquid metal; loose scrap fills a crucible long before",
    sources: &["common-practice"],
};

/// A crucible of the shop.
#[derive(Clone, Debug, PartialEq)]
pub struct Crucible {
    /// What it is called: "A6".
    pub name: String,
    /// Volume to the brim.
    pub brim: Volume,
}

impl Crucible {
    /// A crucible marked by the pounds of aluminium it holds.
    pub fn marked(name: &str, pounds_of_aluminium: f64) -> Crucible {
        Crucible {
            name: name.to_owned(),
            brim: brim_volume(pounds_of_aluminium),
        }
    }

    /// Metal it holds at working fill.
    pub fn holds(&self, liquid: &Band<Density>) -> Band<Mass> {
        liquid.map(|liquid| held(self.brim, WORKING_FILL, liquid))
    }
}

/// The smallest crucible that holds the high end of a charge at working fill, even where the
/// liquid is as light as it may be; of two alike the first.
pub fn smallest_that_holds<'a>(
    crucibles: &'a [Crucible],
    charge: &Band<Mass>,
    liquid: &Band<Density>,
) -> Option<&'a Crucible> {
    let large_enough = |crucible: &&Crucible| charge.high() <= crucible.holds(liquid).low();
    crucibles
        .iter()
        .filter(large_enough)
        .min_by(|a, b| a.brim.as_m3().total_cmp(&b.brim.as_m3()))
}

/// Volume to the brim of a crucible with this mark. Law: [`BRIM_VOLUME`].
pub fn brim_volume(pounds_of_aluminium: f64) -> Volume {
    Volume::filled_by(Mass::from_lb(pounds_of_aluminium), MARKED_BY)
}

/// Metal in a crucible filled to this share of its brim. Law: [`HELD`].
pub fn held(brim: Volume, fill: f64, liquid: Density) -> Mass {
    liquid * (brim * fill)
}
