//! How fast water leaves a wet surface: still air, wind, sun, a warm oven, a warm tray.
//!
//! The books differ by a quarter and more in still air. A rate from here is a start, good to a
//! third either way, until one tray has been weighed part way ([`crate::drying`]).

use measure::flow::Speed;
use measure::heat::Temperature;
use measure::length::{Area, Length};
use measure::matter::{Mass, Pressure};
use measure::source::Law;
use thiserror::Error;

use crate::psychrometrics::{Air, AirError, latent_heat, saturated_ratio};

/// Water that leaves a free surface, by the humidity ratios.
pub const BY_RATIO: Law = Law {
    name: "sand::evaporation::by_ratio",
    formula: "g = (25 + 19 v) A (W_s − W)  in kg/h, m/s, m²",
    range: "water or sand wet at its surface, air along it; 30 % either way",
    sources: &["pool-evaporation-thread"],
};

/// Water that leaves a free surface, by the vapour pressures.
pub const BY_PRESSURE: Law = Law {
    name: "sand::evaporation::by_pressure",
    formula: "g = (0.0175 + 0.02 v) A (p_s − p_w)  in kg/h, m/s, m², mmHg",
    range: "water or sand wet at its surface, air along it; 30 % either way",
    sources: &["evaporation-page"],
};

/// Heat that moving air gives to a surface along which it flows.
pub const AIR_ALONG: Law = Law {
    name: "sand::evaporation::air_along",
    formula: "h = 0.0204 G^0.8;  G = 3600 ρ v, ρ of air at t, W, p  in W/m²K, kg/h m²",
    range: "air along the tray, G from 2450 to 29300 kg/h m²; 45 to 150 °C",
    sources: &["geankoplis-transport"],
};

/// Heat that air gives to a tray in a channel.
pub const AIR_IN_CHANNEL: Law = Law {
    name: "sand::evaporation::air_in_channel",
    formula: "h = 5.90 G^0.71 / d^0.29;  G = ρ v, ρ of air at t, W, p  in W/m²K, kg/s m², m",
    range: "trays in a rack or an oven; d four times the channel's section over its rim",
    sources: &["treybal-mass-transfer"],
};

/// Temperature of a wet surface and the water that leaves it.
pub const SURFACE_BALANCE: Law = Law {
    name: "sand::evaporation::surface_balance",
    formula: "λ (h / c_s) (W_s − W) = (h + U) (t − t_s) + ε σ (T_r⁴ − T_s⁴) + q_sun;  \
              W of air at t, φ, p",
    range: "surface wet all over; without sun, radiator and tray t_s is the wet bulb",
    sources: &["treybal-mass-transfer", "geankoplis-transport"],
};

/// Air that carries the water off.
pub const AIR_NEEDED: Law = Law {
    name: "sand::evaporation::air_needed",
    formula: "m_air = m_water / (W_out − W_in)",
    range: "dry air; a closed oven has to change its air",
    sources: &["anantharaman-begum"],
};

/// Stefan and Boltzmann's constant, W/m²K⁴.
const STEFAN_BOLTZMANN: f64 = 5.670_374e-8;

/// Millimetres of mercury in a pascal.
const MMHG_PER_PA: f64 = 1.0 / 133.322_4;

/// What a wet surface is given to dry by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exposure {
    /// The air over it.
    pub air: Air,
    /// Heat it takes from the air, W/m²K.
    pub transfer: f64,
    /// Heat it takes through the tray from air of the same warmth, W/m²K over the surface.
    pub below: f64,
    /// Sun that it swallows, W/m².
    pub sun: f64,
    /// Walls or a radiator that it sees.
    pub radiator: Option<Radiator>,
}

/// What shines on the sand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Radiator {
    /// Its temperature.
    pub temperature: Temperature,
    /// Share of black radiation that passes, 0.94 for wet sand under a wide dark plate.
    pub emissivity: f64,
}

/// How a wet surface dries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leaving {
    /// The surface.
    pub surface: Temperature,
    /// Water that leaves it, kg/h m².
    pub rate: f64,
}

/// Why nothing dries.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum EvaporationError {
    /// The air has no humidity that can be reckoned with.
    #[error(transparent)]
    Air(#[from] AirError),
    /// The air takes nothing up.
    #[error(
        "this air takes no water up: its water would settle on the sand; wait for drier air, or \
         warm it"
    )]
    TakesNothing,
}

/// Water that leaves a free surface, kg/h. Law: [`BY_RATIO`].
pub fn by_ratio(speed: Speed, area: Area, saturated: f64, air: f64) -> f64 {
    (25.0 + 19.0 * speed.as_m_per_s()) * area.as_m2() * (saturated - air)
}

/// Water that leaves a free surface, kg/h. Law: [`BY_PRESSURE`].
pub fn by_pressure(speed: Speed, area: Area, saturated: Pressure, vapour: Pressure) -> f64 {
    let drop = (saturated - vapour).as_pa() * MMHG_PER_PA;
    (0.0175 + 0.02 * speed.as_m_per_s()) * area.as_m2() * drop
}

/// Heat from air along a tray, W/m²K. Law: [`AIR_ALONG`].
pub fn air_along(air: &Air, speed: Speed) -> f64 {
    0.0204 * (air.density() * speed.as_m_per_s() * 3600.0).powf(0.8)
}

/// Heat from air in a channel, W/m²K. Law: [`AIR_IN_CHANNEL`].
pub fn air_in_channel(air: &Air, speed: Speed, diameter: Length) -> f64 {
    5.90 * (air.density() * speed.as_m_per_s()).powf(0.71) / diameter.as_m().powf(0.29)
}

/// Heat from open air, W/m²K: what [`AIR_ALONG`] says, and in slow air what [`BY_RATIO`] stands
/// for. The two meet at about half a metre a second.
pub fn open_air(air: &Air, speed: Speed) -> f64 {
    let slow = (25.0 + 19.0 * speed.as_m_per_s()) * air.humid_heat() / 3600.0;
    slow.max(air_along(air, speed))
}

/// Where a wet surface settles, and how fast it dries. Law: [`SURFACE_BALANCE`].
///
/// # Errors
///
/// [`EvaporationError::TakesNothing`] where dew settles instead, and as
/// [`saturated_ratio`] where the air is none.
pub fn surface_balance(exposure: &Exposure) -> Result<Leaving, EvaporationError> {
    // What the surface takes in less what its water carries off, W/m².
    let gain = |celsius: f64| -> Result<f64, AirError> {
        let surface = Temperature::from_celsius(celsius);
        Ok(taken_in(exposure, surface) - carried_off(exposure, surface)?)
    };
    let (mut low, mut high) = (0.0, hottest(exposure));
    if gain(low)? < 0.0 {
        return Err(AirError::Freezes.into());
    }
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        match gain(middle)? > 0.0 {
            true => low = middle,
            false => high = middle,
        }
    }
    let surface = Temperature::from_celsius((low + high) / 2.0);
    let rate = carried_off(exposure, surface)? / latent_heat(surface) * 3600.0;
    match rate > 0.0 {
        true => Ok(Leaving { surface, rate }),
        false => Err(EvaporationError::TakesNothing),
    }
}

/// Dry air that carries so much water off. Law: [`AIR_NEEDED`].
pub fn air_needed(water: Mass, entering: f64, leaving: f64) -> Mass {
    water / (leaving - entering)
}

fn taken_in(exposure: &Exposure, surface: Temperature) -> f64 {
    let warmer = (exposure.air.dry_bulb - surface).as_kelvin();
    let shone = exposure.radiator.map_or(0.0, |radiator| {
        let fourth = |at: Temperature| at.as_kelvin().powi(4);
        let drop = fourth(radiator.temperature) - fourth(surface);
        radiator.emissivity * STEFAN_BOLTZMANN * drop
    });
    (exposure.transfer + exposure.below) * warmer + shone + exposure.sun
}

fn carried_off(exposure: &Exposure, surface: Temperature) -> Result<f64, AirError> {
    let air = &exposure.air;
    let drive = saturated_ratio(surface, air.pressure)? - air.ratio;
    Ok(latent_heat(surface) * exposure.transfer / air.humid_heat() * drive)
}

/// A little under where water boils in this air: wet sand is never hotter, °C.
fn hottest(exposure: &Exposure) -> f64 {
    let boils = |celsius: f64| {
        let at = Temperature::from_celsius(celsius);
        saturated_ratio(at, exposure.air.pressure).is_err()
    };
    let (mut low, mut high) = (0.0, 200.0);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        match boils(middle) {
            true => high = middle,
            false => low = middle,
        }
    }
    low
}
