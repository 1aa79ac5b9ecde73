//! What a law asks for.

use measure::text::Written;
use metal::alloy::Alloy;

use crate::given::Kind;

/// One thing a law asks for.
#[derive(Clone, Copy)]
pub struct Input {
    /// The key it is typed under: `poured`.
    pub key: &'static str,
    /// Its symbol in the formula; empty where it has none.
    pub symbol: &'static str,
    /// What it is, in words.
    pub about: &'static str,
    /// What has to be typed.
    pub wanted: Wanted,
    /// What is taken where nothing is typed.
    pub otherwise: Otherwise,
    /// How to know it better, where there is a way.
    pub narrowed_by: &'static str,
}

/// What has to be typed under a key.
#[derive(Clone, Copy)]
pub enum Wanted {
    /// A quantity with its unit, or a range.
    Quantity(Kind),
    /// Quantities with commas between them.
    Quantities(Kind),
    /// A per cent.
    Share,
    /// Per cents with commas between them.
    Shares,
    /// Contraction: per cent, per foot, or one in so many.
    Contraction,
    /// A number without a unit.
    Number,
    /// Numbers with commas between them.
    Numbers,
    /// One of these words.
    Choice(&'static [&'static str]),
    /// The name of an alloy.
    Metal,
    /// A modulus, or a plain body whose modulus is taken: "block 80 x 60 x 18 mm".
    Body,
    /// Words.
    Text,
}

/// What is taken where nothing is typed.
#[derive(Clone, Copy)]
pub enum Otherwise {
    /// It has to be typed.
    Needed,
    /// Nothing: the law does without.
    Nothing,
    /// This text, with the key of its source.
    Text(&'static str, &'static str),
    /// A figure of the alloy named under `metal`.
    OfMetal(Property),
}

/// A figure of an alloy that a law may ask for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Property {
    /// Density at room temperature.
    SolidDensity,
    /// Density of the liquid.
    LiquidDensity,
    /// Where the last metal freezes.
    Solidus,
    /// Where the first metal freezes.
    Liquidus,
    /// Specific heat of the solid.
    SolidHeat,
    /// Specific heat of the liquid.
    LiquidHeat,
    /// Heat of freezing.
    LatentHeat,
    /// Share of the volume lost on freezing.
    FreezingShrinkage,
    /// Share of the liquid's volume lost for each kelvin.
    LiquidContraction,
    /// Highest speed at the gate.
    EntrySpeed,
    /// Pattern maker's contraction.
    Contraction,
}

impl Input {
    /// A quantity, which has to be typed.
    pub const fn of<Q: Written + 'static>(
        key: &'static str,
        symbol: &'static str,
        about: &'static str,
    ) -> Input {
        Input::new(key, symbol, about, Wanted::Quantity(Kind::of::<Q>()))
    }

    /// Quantities with commas between them.
    pub const fn list<Q: Written + 'static>(
        key: &'static str,
        symbol: &'static str,
        about: &'static str,
    ) -> Input {
        Input::new(key, symbol, about, Wanted::Quantities(Kind::of::<Q>()))
    }

    /// A share in per cent.
    pub const fn share(key: &'static str, symbol: &'static str, about: &'static str) -> Input {
        Input::new(key, symbol, about, Wanted::Share)
    }

    /// A number.
    pub const fn number(key: &'static str, symbol: &'static str, about: &'static str) -> Input {
        Input::new(key, symbol, about, Wanted::Number)
    }

    /// One of some words.
    pub const fn choice(
        key: &'static str,
        about: &'static str,
        words: &'static [&'static str],
    ) -> Input {
        Input::new(key, "", about, Wanted::Choice(words))
    }

    /// The metal: asked for by laws that can take figures from an alloy. Not needed where all of
    /// them are typed.
    pub const fn metal() -> Input {
        Input::new("metal", "", "the alloy, for its figures", Wanted::Metal).optional()
    }

    /// Any input.
    pub const fn new(
        key: &'static str,
        symbol: &'static str,
        about: &'static str,
        wanted: Wanted,
    ) -> Input {
        Input {
            key,
            symbol,
            about,
            wanted,
            otherwise: Otherwise::Needed,
            narrowed_by: "",
        }
    }

    /// Not needed.
    pub const fn optional(mut self) -> Input {
        self.otherwise = Otherwise::Nothing;
        self
    }

    /// Taken as this text where nothing is typed; `source` is a key of the bibliography.
    pub const fn or(mut self, text: &'static str, source: &'static str) -> Input {
        self.otherwise = Otherwise::Text(text, source);
        self
    }

    /// Taken from the alloy where nothing is typed.
    pub const fn of_metal(mut self, property: Property) -> Input {
        self.otherwise = Otherwise::OfMetal(property);
        self
    }

    /// How to know it better.
    pub const fn narrowed_by(mut self, words: &'static str) -> Input {
        self.narrowed_by = words;
        self
    }
}

impl Property {
    /// Low, likely and high in SI units or shares, and the keys of the sources.
    pub(crate) fn of(self, alloy: &Alloy) -> Option<([f64; 3], Vec<String>)> {
        fn ends<Q: Written>(figure: &metal::figure::Figure<Q>) -> ([f64; 3], Vec<String>) {
            let band = &figure.band;
            let ends = [band.low().si(), band.likely().si(), band.high().si()];
            (ends, figure.sources.clone())
        }
        let share = |figure: &metal::figure::Figure<f64>| {
            let band = &figure.band;
            let ends = [band.low(), band.likely(), band.high()];
            (ends, figure.sources.clone())
        };
        Some(match self {
            Property::SolidDensity => ends(&alloy.density_solid),
            Property::LiquidDensity => ends(&alloy.density_liquid),
            Property::Solidus => ends(&alloy.solidus),
            Property::Liquidus => ends(&alloy.liquidus),
            Property::SolidHeat => ends(&alloy.specific_heat_solid),
            Property::LiquidHeat => ends(&alloy.specific_heat_liquid),
            Property::LatentHeat => ends(&alloy.latent_heat),
            Property::EntrySpeed => ends(&alloy.entry_speed),
            Property::FreezingShrinkage => share(&alloy.freezing_shrinkage),
            Property::LiquidContraction => share(&alloy.liquid_contraction),
            Property::Contraction => {
                let band = alloy.contraction_band()?;
                let given = alloy.contraction.iter();
                let sources = given.map(|given| given.source.clone()).collect();
                ([band.low(), band.likely(), band.high()], sources)
            }
        })
    }
}
