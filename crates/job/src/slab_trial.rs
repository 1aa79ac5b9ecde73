//! A slab timed in the shop's own sand, from which the mould's constant is taken.

use measure::band::Band;
use measure::flow::{Duration, FreezingConstant};
use measure::heat::{HeatDrawing, TemperatureDifference};
use measure::length::Length;
use measure::text::Typed;
use metal::alloy::Alloy;
use mould::freezing::{FreezingHeat, constant_from_trial, thirst_from_trial};
use mould::simple_body::{Side, SimpleBody, simple_modulus};
use serde::Deserialize;

/// A slab that was timed.
#[derive(Clone, Debug, PartialEq)]
pub struct SlabTrial {
    /// The metal it was poured in.
    pub alloy: &'static Alloy,
    /// Its modulus.
    pub modulus: Length,
    /// The time from full to frozen, over the error of reading it.
    pub time: Band<Duration>,
    /// How far above the liquidus it was poured.
    pub superheat: TemperatureDifference,
}

/// A slab as typed in `shop.toml`.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SlabTrialFile {
    metal: String,
    slab: [Typed<Length>; 3],
    froze_in: Typed<Duration>,
    read_within: Option<Typed<Duration>>,
    superheat: Option<Typed<TemperatureDifference>>,
}

/// A slab comes out this much thicker or thinner than the pattern (common practice).
const THICKNESS_ERROR: f64 = 0.03;

/// The moment of freezing is seen to a tenth of the time where nothing better is told.
const READ_WITHIN: f64 = 0.1;

/// Usual superheat where none was written down.
const USUAL_SUPERHEAT: TemperatureDifference = TemperatureDifference::from_kelvin(100.0);

impl SlabTrial {
    /// The constant of the mould, over the errors of the watch and of the thickness.
    pub fn constant(&self) -> Band<FreezingConstant> {
        let thickness = Band::new(1.0 - THICKNESS_ERROR, 1.0, 1.0 + THICKNESS_ERROR);
        self.time.with(&thickness, |time, thicker| {
            constant_from_trial(self.modulus * thicker, time)
        })
    }

    /// How hard the sand drank, over the same errors.
    pub fn thirst(&self) -> Band<HeatDrawing> {
        let alloy = self.alloy;
        let metal = FreezingHeat {
            density: alloy.density_liquid.band.likely(),
            latent: alloy.latent_heat.band.likely(),
            liquid_heat: alloy.specific_heat_liquid.band.likely(),
            superheat: self.superheat,
            solidus: alloy.solidus.band.likely(),
            sand: HeatDrawing::ZERO,
        };
        self.constant()
            .map(|constant| thirst_from_trial(&metal, constant))
    }
}

impl SlabTrialFile {
    /// What is meant, or what is wrong, in a sentence.
    ///
    /// # Errors
    ///
    /// Where the metal is not known, and where size or time are none.
    pub fn meant(self) -> Result<SlabTrial, String> {
        let alloy = metal::alloys::named(&self.metal).map_err(|fault| format!("heap: {fault}"))?;
        let sides = self.slab.map(|side| Side::open(side.value));
        let modulus = simple_modulus(&SimpleBody::Block(sides));
        let time = self.froze_in.value;
        let within = self
            .read_within
            .map_or(time * READ_WITHIN, |within| within.value);
        match modulus {
            Some(modulus) if modulus > Length::ZERO && time > within => Ok(SlabTrial {
                alloy,
                modulus,
                time: Band::new(time - within, time, time + within),
                superheat: self.superheat.map_or(USUAL_SUPERHEAT, |above| above.value),
            }),
            _ => Err(
                "heap: a slab needs three sides, and a time longer than its error: \
                      slab = [\"150 mm\", \"100 mm\", \"20 mm\"], froze_in = \"4.5 min\""
                    .to_owned(),
            ),
        }
    }
}
