//! The laws of the metal room on rows.

use checks::answer::Answer;
use checks::given::GivenError;
use measure::heat::Temperature;
use metal::casting_mass::{casting_mass, pattern_mass, with_button};
use metal::charge::{charge, pig};
use metal::crucible::{brim_volume, held};
use metal::melt::{Heat, Melting, fuel_heat, heat_to_melt};
use metal::pouring_temperature::{pouring_band, superheat};
use metal::shrinkage::{feed_demand, feed_volume, solid_side, solid_volume};

use crate::laws::Calculation;

/// Calculations by law.
pub const CALCULATIONS: &[(&str, Calculation)] = &[
    ("metal::casting_mass::casting_mass", |given| {
        let mass = casting_mass(given.quantity("volume")?, given.quantity("density")?);
        Ok(vec![Answer::quantity("mass", mass)])
    }),
    ("metal::casting_mass::pattern_mass", |given| {
        let mass = pattern_mass(
            given.quantity("pattern_mass")?,
            given.quantity("pattern_density")?,
            given.quantity("metal_density")?,
        );
        Ok(vec![Answer::quantity("metal_mass", mass)])
    }),
    ("metal::casting_mass::with_button", |given| {
        let mass = with_button(given.quantity("casting_mass")?, given.share("allowance")?);
        Ok(vec![Answer::quantity("metal_mass", mass)])
    }),
    ("metal::charge::pig", |given| {
        let mass = pig(given.quantity("poured")?, given.share("pig_share")?);
        Ok(vec![Answer::quantity("pig", mass)])
    }),
    ("metal::charge::charge", |given| {
        let (pig_share, loss) = (given.share("pig_share")?, given.share("loss")?);
        let mass = charge(given.quantity("poured")?, pig_share, loss);
        Ok(vec![Answer::quantity("charge", mass)])
    }),
    ("metal::crucible::brim_volume", |given| {
        let volume = brim_volume(given.number("mark")?);
        Ok(vec![Answer::quantity("volume", volume)])
    }),
    ("metal::crucible::held", |given| {
        let (brim, fill) = (given.quantity("brim")?, given.share("fill")?);
        let mass = held(brim, fill, given.quantity("liquid_density")?);
        Ok(vec![Answer::quantity("mass", mass)])
    }),
    ("metal::melt::heat_to_melt", |given| {
        let metal = Melting {
            solid: given.quantity("solid")?,
            melts_at: given.quantity("melts_at")?,
            latent: given.quantity("latent")?,
            liquid: given.quantity("liquid")?,
        };
        let (from, to) = (given.quantity("from")?, given.quantity("to")?);
        let heat = heat_to_melt(given.quantity("mass")?, from, to, &metal);
        Ok(vec![Answer::quantity("heat", heat)])
    }),
    ("metal::melt::fuel_heat", |given| {
        let heat: Heat = given.quantity("heat")?;
        let fuel = fuel_heat(heat, given.share("efficiency")?);
        Ok(vec![Answer::quantity("fuel", fuel)])
    }),
    ("metal::pouring_temperature::superheat", |given| {
        let pouring: Temperature = given.quantity("pouring")?;
        let above = superheat(pouring, given.quantity("liquidus")?);
        Ok(vec![Answer::quantity("superheat", above)])
    }),
    ("metal::pouring_temperature::pouring_band", |given| {
        let alloy = metal::alloys::named(given.text("alloy")?)
            .map_err(|fault| GivenError::NoAnswer(fault.to_string()))?;
        let band = pouring_band(alloy, given.quantity("modulus")?);
        Ok(vec![
            Answer::temperature("low", band.low()),
            Answer::temperature("likely", band.likely()),
            Answer::temperature("high", band.high()),
        ])
    }),
    ("metal::shrinkage::feed_demand", |given| {
        let per_kelvin = given.share("per_100_kelvin")? / 100.0;
        let superheat = given.quantity("superheat")?;
        let demand = feed_demand(given.share("freezing")?, per_kelvin, superheat);
        Ok(vec![Answer::share("demand", demand)])
    }),
    ("metal::shrinkage::feed_volume", |given| {
        let volume = feed_volume(given.quantity("casting_volume")?, given.share("demand")?);
        Ok(vec![Answer::quantity("volume", volume)])
    }),
    ("metal::shrinkage::solid_volume", |given| {
        let (freezing, cooling) = (given.share("freezing")?, given.share("cooling")?);
        let volume = solid_volume(given.quantity("mould_volume")?, freezing, cooling);
        Ok(vec![Answer::quantity("volume", volume)])
    }),
    ("metal::shrinkage::solid_side", |given| {
        let (freezing, cooling) = (given.share("freezing")?, given.share("cooling")?);
        let side = solid_side(given.quantity("mould_side")?, freezing, cooling);
        Ok(vec![Answer::quantity("side", side)])
    }),
];
