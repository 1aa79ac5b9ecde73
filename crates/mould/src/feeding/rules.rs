//! Every rule for a feeder side by side: which governs, and which of them disagree.
//!
//! Modulus and volume are physics and have to hold together; the larger governs. The others are
//! experience, most of it with steel, and are shown so that a book on the shelf can be held beside
//! the answer.

use measure::length::{Length, Volume};
use measure::source::Law;

use crate::feeding::caine::{CaineConstants, DIAMETER_BY_CAINE, diameter_by_caine};
use crate::feeding::feeder::{
    CoolingEnds, DIAMETER_BY_MODULUS, VOLUME_RULE, diameter_by_modulus, diameter_holding,
    feeder_volume,
};
use crate::feeding::shape_factor::{VOLUME_BY_SHAPE, shape_factor, volume_by_shape};
use crate::feeding::shop_rules::{
    CIRCLE_FACTORS, INSCRIBED_CIRCLE, THRICE_THE_SHRINKAGE, diameter_by_circle,
    thrice_the_shrinkage,
};

/// Diameter of the feeder by the rules that have to hold.
pub const GOVERNING: Law = Law {
    name: "mould::feeding::rules::side_by_side",
    formula: "D = max(k M (4 + n / (H/D)), ∛(4 β V / (π (ε − β) (H/D))))",
    range: "k and n as by modulus, β and ε as by volume; the other rules beside it are opinions",
    sources: &["wlodawer-1966", "campbell-castings"],
};

/// A casting that is to be fed, and the feeder wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fed<'a> {
    /// Modulus of the section to be fed.
    pub section: Length,
    /// Volume of the casting, or of the part of it that this feeder feeds.
    pub volume: Volume,
    /// Modulus of all of that: its volume over its surface.
    pub whole: Length,
    /// Diameter of the largest ball that fits into the section, where it is known.
    pub inscribed: Option<Length>,
    /// Length, width and thickness of the box round it, where they are known.
    pub sides: Option<[Length; 3]>,
    /// What the feeder has to bring, as a share of the casting.
    pub demand: f64,
    /// Modulus of feeder over section.
    pub margin: f64,
    /// Height of the feeder over its diameter.
    pub height_over_diameter: f64,
    /// How many ends of it cool.
    pub ends: CoolingEnds,
    /// Share of it that can run out.
    pub usable: f64,
    /// How many times its own modulus it counts for.
    pub longer: f64,
    /// Constants of Caine's curve, where the handbooks have any for the metal.
    pub caine: Option<&'a CaineConstants>,
}

/// A rule for the diameter of a feeder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rule {
    /// It freezes last.
    Modulus,
    /// It does not run empty.
    Volume,
    /// Caine's curve.
    Caine,
    /// The table by shape factor.
    ShapeTable,
    /// The power by shape factor.
    ShapePower,
    /// Three times the shrinkage.
    Thrice,
    /// The inscribed circle with its least factor.
    CircleLeast,
    /// The inscribed circle with its largest factor.
    CircleMost,
}

/// What one rule says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Says {
    /// The rule.
    pub rule: Rule,
    /// Its diameter, or nothing where it has none for this metal.
    pub diameter: Option<Length>,
}

/// All rules side by side.
#[derive(Clone, Debug, PartialEq)]
pub struct SideBySide {
    /// Every rule, in a fixed order.
    pub says: Vec<Says>,
    /// The rule that sets the diameter.
    pub governs: Rule,
    /// The diameter to make.
    pub diameter: Length,
}

impl Rule {
    /// Every rule, those that have to hold first.
    pub const ALL: [Rule; 8] = [
        Rule::Modulus,
        Rule::Volume,
        Rule::Caine,
        Rule::ShapeTable,
        Rule::ShapePower,
        Rule::Thrice,
        Rule::CircleLeast,
        Rule::CircleMost,
    ];

    /// What it is called.
    pub fn name(self) -> &'static str {
        match self {
            Rule::Modulus => "by modulus",
            Rule::Volume => "by volume",
            Rule::Caine => "by Caine's curve",
            Rule::ShapeTable => "by the table of shapes",
            Rule::ShapePower => "by the power of shapes",
            Rule::Thrice => "by three times the shrinkage",
            Rule::CircleLeast => "by one and a half circles",
            Rule::CircleMost => "by three circles",
        }
    }

    /// The law behind it.
    pub fn law(self) -> &'static Law {
        match self {
            Rule::Modulus => &DIAMETER_BY_MODULUS,
            Rule::Volume => &VOLUME_RULE,
            Rule::Caine => &DIAMETER_BY_CAINE,
            Rule::ShapeTable | Rule::ShapePower => &VOLUME_BY_SHAPE,
            Rule::Thrice => &THRICE_THE_SHRINKAGE,
            Rule::CircleLeast | Rule::CircleMost => &INSCRIBED_CIRCLE,
        }
    }

    /// Whether it has to hold, being physics.
    pub fn must_hold(self) -> bool {
        matches!(self, Rule::Modulus | Rule::Volume)
    }
}

impl SideBySide {
    /// What a rule says.
    pub fn diameter_by(&self, rule: Rule) -> Option<Length> {
        self.says
            .iter()
            .find(|says| says.rule == rule)
            .and_then(|says| says.diameter)
    }

    /// The rules that ask for a diameter more than so far from the one to make, as a share of it.
    pub fn disagreeing(&self, by: f64) -> Vec<Says> {
        let far = |says: &&Says| {
            says.diameter
                .is_some_and(|d| (d / self.diameter - 1.0).abs() > by)
        };
        self.says.iter().filter(far).copied().collect()
    }
}

/// All rules, or nothing where no feeder of this lining can give what the casting shrinks. Law:
/// [`GOVERNING`].
pub fn side_by_side(fed: &Fed<'_>) -> Option<SideBySide> {
    let says = Rule::ALL.map(|rule| Says {
        rule,
        diameter: diameter(rule, fed),
    });
    let by_modulus = diameter(Rule::Modulus, fed)?;
    let by_volume = diameter(Rule::Volume, fed)?;
    let governs = match by_volume > by_modulus {
        true => Rule::Volume,
        false => Rule::Modulus,
    };
    Some(SideBySide {
        says: says.to_vec(),
        governs,
        diameter: by_modulus.max(by_volume),
    })
}

fn diameter(rule: Rule, fed: &Fed<'_>) -> Option<Length> {
    let slimness = fed.height_over_diameter;
    let by_shape = fed
        .sides
        .map(|[length, width, thickness]| volume_by_shape(shape_factor(length, width, thickness)));
    let by_circle = |factor: f64| {
        fed.inscribed
            .map(|circle| diameter_by_circle(circle, factor))
    };
    let holding = |volume: Volume| diameter_holding(volume, slimness);
    match rule {
        Rule::Modulus => {
            let margin = fed.margin / fed.longer;
            Some(diameter_by_modulus(fed.section, margin, slimness, fed.ends))
        }
        Rule::Volume => feeder_volume(fed.volume, fed.demand, fed.usable).map(holding),
        Rule::Caine => fed.caine.and_then(|constants| {
            diameter_by_caine(fed.volume, fed.whole, slimness, fed.ends, constants)
        }),
        Rule::ShapeTable => by_shape.map(|by| holding(fed.volume * by.table)),
        Rule::ShapePower => by_shape.map(|by| holding(fed.volume * by.power)),
        Rule::Thrice => Some(holding(thrice_the_shrinkage(fed.volume, fed.demand))),
        Rule::CircleLeast => by_circle(CIRCLE_FACTORS[0]),
        Rule::CircleMost => by_circle(CIRCLE_FACTORS[1]),
    }
}
