//! What a crucible holds, and which one to take.

use std::f64::consts::PI;

use measure::band::Band;
use measure::length::{Area, Length, Volume};
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

/// Height of a crucible inside for each unit of its width. Common practice, no source: makers
/// run from 1.1 to 1.4, and most taper.
pub const HEIGHT_TO_WIDTH: f64 = 1.2;

/// Thickness of wall and bottom for each unit of inside width. Common practice, no source.
pub const WALL_TO_WIDTH: f64 = 0.1;

/// Density of a clay-graphite or silicon-carbide wall. From memory, 1.9 to 2.3 g/cm³.
pub const WALL_DENSITY: Density = Density::from_g_per_cm3(2.1);

/// Room between crucible and lining, all round: `furnace-notes`.
pub const ROOM_IN_FURNACE: Length = Length::from_mm(64.0);

/// Inside width of a crucible of this brim volume.
pub const CRUCIBLE_WIDTH: Law = Law {
    name: "metal::crucible::inside_width",
    formula: "D = ∛(4 V / (1.2 π))",
    range: "upright, as high as 1.2 of its width: an estimate until yours is measured",
    sources: &["common-practice"],
};

/// What tongs and shank carry.
pub const LIFTED: Law = Law {
    name: "metal::crucible::lifted",
    formula: "m = m_metal + 0.56 V ρ_wall",
    range: "wall a tenth of the width, 2.1 g/cm³; tongs and shank come on top",
    sources: &["common-practice"],
};

/// The heaviest casting that a crucible can pour.
pub const MOST_CASTING: Law = Law {
    name: "metal::crucible::most_casting",
    formula: "m_casting = y m_held / (1 + p)",
    range: "yield y = casting / poured, pig p kept for the ingot mould",
    sources: &["common-practice"],
};

/// The yield from which so many castings fit in one heat.
pub const LEAST_YIELD: Law = Law {
    name: "metal::crucible::least_yield",
    formula: "y = n m (1 + p) / m_held",
    range: "above 1 no running system is small enough",
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

    /// Its size, estimated from what it holds.
    pub fn shape(&self) -> Shape {
        Shape::of(self.brim)
    }

    /// Metal it holds at working fill.
    pub fn holds(&self, liquid: &Band<Density>) -> Band<Mass> {
        liquid.map(|liquid| held(self.brim, WORKING_FILL, liquid))
    }
}

/// Size of a crucible, estimated from its volume: upright, as high as 1.2 of its width.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shape {
    /// Inside width.
    pub inside: Length,
    /// Outside width, by which tongs and furnace go.
    pub outside: Length,
    /// Thickness of the wall.
    pub thickness: Length,
    /// Outside height.
    pub height: Length,
    /// Open surface of the metal.
    pub mouth: Area,
    /// Outside of the wall and the bottom.
    pub wall: Area,
    /// The crucible itself.
    pub mass: Mass,
}

impl Shape {
    /// The size of a crucible of this brim volume.
    pub fn of(brim: Volume) -> Shape {
        let inside = inside_width(brim);
        let wall = inside * WALL_TO_WIDTH;
        let outside = inside + wall * 2.0;
        let height = inside * HEIGHT_TO_WIDTH + wall;
        let wall_volume = disc(outside) * height - disc(inside) * (inside * HEIGHT_TO_WIDTH);
        Shape {
            inside,
            outside,
            thickness: wall,
            height,
            mouth: disc(inside),
            wall: outside * height * PI + disc(outside),
            mass: WALL_DENSITY * wall_volume,
        }
    }

    /// Inside width of a furnace that takes it.
    pub fn furnace_bore(&self) -> Length {
        self.outside + ROOM_IN_FURNACE * 2.0
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

/// Inside width of a crucible of this brim volume. Law: [`CRUCIBLE_WIDTH`].
pub fn inside_width(brim: Volume) -> Length {
    let cube = 4.0 * brim.as_m3() / (HEIGHT_TO_WIDTH * PI);
    Length::from_m(cube.cbrt())
}

/// What has to be lifted when so much metal is in it. Law: [`LIFTED`].
pub fn lifted(metal: Mass, brim: Volume) -> Mass {
    metal + Shape::of(brim).mass
}

/// How far a crucible and its metal may be off what is reckoned of its volume, as a share of both:
/// makers differ in wall and taper (common practice, no source).
pub const LIFTED_MARGIN: f64 = 0.1;

/// The heaviest casting that so much metal can pour. Law: [`MOST_CASTING`].
pub fn most_casting(held: Mass, casting_yield: f64, pig_share: f64) -> Mass {
    held * casting_yield / (1.0 + pig_share)
}

/// The yield from which castings of this mass together fit in one heat. Law: [`LEAST_YIELD`].
pub fn least_yield(castings: Mass, pig_share: f64, held: Mass) -> f64 {
    castings * (1.0 + pig_share) / held
}

fn disc(width: Length) -> Area {
    width * width * (PI / 4.0)
}
