//! Damp air: how much water it holds, how much it could hold, how cold a wet rag gets in it.
//!
//! Percentage humidity compares masses of water, relative humidity compares pressures; the two
//! differ by a point or so and are never mixed here. Relative humidity is the one that weather
//! reports give.

use measure::heat::Temperature;
use measure::length::Length;
use measure::matter::Pressure;
use measure::source::Law;
use thiserror::Error;

/// Pressure of water vapour over water, and over ice below nought.
pub const SATURATION_PRESSURE: Law = Law {
    name: "sand::psychrometrics::saturation_pressure",
    formula: "p_s(t) of Hyland and Wexler:  ln p_s = C8/T + C9 + C10 T + C11 T² + C12 T³ + C13 ln T",
    range: "−100 to 200 °C, over ice below 0 °C; within 0.04 % of the tables",
    sources: &["ashrae-fundamentals-2017"],
};

/// Water in air for each kilogram of dry air.
pub const HUMIDITY_RATIO: Law = Law {
    name: "sand::psychrometrics::humidity_ratio",
    formula: "W = 0.621945 p_w / (p − p_w);  relative humidity = p_w / p_s",
    range: "vapour pressure below that of the air",
    sources: &["ashrae-fundamentals-2017", "geankoplis-transport"],
};

/// Water in air from a dry and a wet thermometer.
pub const FROM_WET_BULB: Law = Law {
    name: "sand::psychrometrics::from_wet_bulb",
    formula: "W = ((2501 − 2.326 t_w) W_s − 1.006 (t − t_w)) / (2501 + 1.86 t − 4.186 t_w);  \
              W_s saturated at t_w and p",
    range: "wet bulb at or above 0 °C, well aired",
    sources: &["ashrae-fundamentals-2017"],
};

/// Temperature of a wet surface that only the air warms.
pub const WET_BULB: Law = Law {
    name: "sand::psychrometrics::wet_bulb",
    formula: "t_w where the W of the two thermometers is that of air at t with φ at p",
    range: "wet bulb at or above 0 °C; drying sand that neither sun nor tray warms sits there",
    sources: &["ashrae-fundamentals-2017", "geankoplis-transport"],
};

/// Temperature at which the water of the air begins to settle as dew.
pub const DEW_POINT: Law = Law {
    name: "sand::psychrometrics::dew_point",
    formula: "t_d where p_s(t_d) = φ p_s(t)",
    range: "−100 to 200 °C",
    sources: &["ashrae-fundamentals-2017"],
};

/// Pressure of the standard atmosphere.
pub const AIR_PRESSURE: Law = Law {
    name: "sand::psychrometrics::air_pressure",
    formula: "p = 101325 Pa (1 − 2.25577e-5 z)^5.2559",
    range: "−5 to 11 km; weather moves it by 3 % either way",
    sources: &["ashrae-fundamentals-2017"],
};

/// Heat, volume and water of moist air.
pub const MOIST_AIR: Law = Law {
    name: "sand::psychrometrics::moist_air",
    formula: "h = 1.006 t + W (2501 + 1.86 t);  v = 287.042 T (1 + 1.607858 W) / p;  \
              c_s = 1.005 + 1.88 W",
    range: "for each kilogram of dry air; 0 to 100 °C",
    sources: &["ashrae-fundamentals-2017", "geankoplis-transport"],
};

/// Moist air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// By the dry thermometer.
    pub dry_bulb: Temperature,
    /// Kilograms of water for each kilogram of dry air.
    pub ratio: f64,
    /// Pressure of the air.
    pub pressure: Pressure,
}

/// Why nothing is said of an air.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum AirError {
    /// A humidity that is none.
    #[error("{percent} % is no relative humidity: it lies between 0 and 100 %")]
    Humidity {
        /// What was given, in per cent.
        percent: f64,
    },
    /// Outside the range in which the vapour pressure is known.
    #[error("{celsius:.0} °C is outside −100 to 200 °C: no vapour pressure is known there")]
    OutOfRange {
        /// What was given, in °C.
        celsius: f64,
    },
    /// A wet bulb above the dry one.
    #[error(
        "the wet bulb ({wet:.1} °C) is warmer than the dry one ({dry:.1} °C): exchange the two, \
         or wet the wick again"
    )]
    WetAboveDry {
        /// The wet bulb, in °C.
        wet: f64,
        /// The dry bulb, in °C.
        dry: f64,
    },
    /// Two thermometers that no air shows together.
    #[error(
        "no air is so dry that it shows {wet:.1} °C wet and {dry:.1} °C dry: wet the wick and \
         swing it again"
    )]
    DrierThanDry {
        /// The wet bulb, in °C.
        wet: f64,
        /// The dry bulb, in °C.
        dry: f64,
    },
    /// A wet bulb that freezes.
    #[error("the wet bulb would freeze in such air: dry indoors, or weigh and see")]
    Freezes,
    /// More vapour than the air pressure allows.
    #[error("vapour of {kpa:.1} kPa fills the air whole at this pressure: that is steam")]
    Boils {
        /// The vapour pressure, in kPa.
        kpa: f64,
    },
}

/// Pressure of saturated vapour. Law: [`SATURATION_PRESSURE`].
///
/// # Errors
///
/// [`AirError::OutOfRange`] outside −100 to 200 °C.
pub fn saturation_pressure(at: Temperature) -> Result<Pressure, AirError> {
    let celsius = at.as_celsius();
    if !(-100.0..=200.0).contains(&celsius) {
        return Err(AirError::OutOfRange { celsius });
    }
    Ok(Pressure::from_pa(ln_saturation(at.as_kelvin()).exp()))
}

/// Water for each kilogram of dry air. Law: [`HUMIDITY_RATIO`].
///
/// # Errors
///
/// [`AirError::Boils`] where the vapour has the pressure of the air or more.
pub fn humidity_ratio(vapour: Pressure, air: Pressure) -> Result<f64, AirError> {
    match vapour < air {
        true => Ok(0.621_945 * vapour.as_pa() / (air - vapour).as_pa()),
        false => {
            let kpa = vapour.as_pa() / 1000.0;
            Err(AirError::Boils { kpa })
        }
    }
}

/// Air from what a weather report gives: temperature and relative humidity, 0.6 for 60 %.
///
/// # Errors
///
/// As [`saturation_pressure`] and [`humidity_ratio`], and where the humidity is none.
pub fn air(dry_bulb: Temperature, humidity: f64, pressure: Pressure) -> Result<Air, AirError> {
    relative(humidity)?;
    let vapour = saturation_pressure(dry_bulb)? * humidity;
    Ok(Air {
        dry_bulb,
        ratio: humidity_ratio(vapour, pressure)?,
        pressure,
    })
}

/// Air from two thermometers. Law: [`FROM_WET_BULB`].
///
/// # Errors
///
/// Where the wet bulb is warmer than the dry one, frozen, or colder than in dry air.
pub fn from_wet_bulb(
    dry_bulb: Temperature,
    wet_bulb: Temperature,
    pressure: Pressure,
) -> Result<Air, AirError> {
    let (dry, wet) = (dry_bulb.as_celsius(), wet_bulb.as_celsius());
    if wet > dry {
        return Err(AirError::WetAboveDry { wet, dry });
    }
    if wet < 0.0 {
        return Err(AirError::Freezes);
    }
    let ratio = ratio_by_wet_bulb(dry_bulb, wet_bulb, pressure)?;
    match ratio >= 0.0 {
        true => Ok(Air {
            dry_bulb,
            ratio,
            pressure,
        }),
        false => Err(AirError::DrierThanDry { wet, dry }),
    }
}

/// Temperature of a wet surface in this air. Law: [`WET_BULB`].
///
/// # Errors
///
/// [`AirError::Freezes`] where it lies below nought.
pub fn wet_bulb(air: &Air) -> Result<Temperature, AirError> {
    let ratio =
        |wet: f64| ratio_by_wet_bulb(air.dry_bulb, Temperature::from_celsius(wet), air.pressure);
    let dry = air.dry_bulb.as_celsius();
    if dry < 0.0 || ratio(0.0)? > air.ratio {
        return Err(AirError::Freezes);
    }
    let (mut low, mut high) = (0.0, dry.min(boiling(air.pressure)));
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        match ratio(middle)? > air.ratio {
            true => high = middle,
            false => low = middle,
        }
    }
    Ok(Temperature::from_celsius((low + high) / 2.0))
}

/// Where dew begins, from temperature and relative humidity. Law: [`DEW_POINT`].
///
/// # Errors
///
/// As [`saturation_pressure`], and where the humidity is none or nought.
pub fn dew_point(dry_bulb: Temperature, humidity: f64) -> Result<Temperature, AirError> {
    relative(humidity)?;
    let wanted = (saturation_pressure(dry_bulb)? * humidity).as_pa().ln();
    let (mut low, mut high) = (-100.0, dry_bulb.as_celsius());
    let at = |celsius: f64| ln_saturation(Temperature::from_celsius(celsius).as_kelvin());
    if wanted < at(low) {
        return Err(AirError::OutOfRange { celsius: low });
    }
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        match at(middle) > wanted {
            true => high = middle,
            false => low = middle,
        }
    }
    Ok(Temperature::from_celsius((low + high) / 2.0))
}

/// Pressure of the standard atmosphere at a height above the sea. Law: [`AIR_PRESSURE`].
pub fn air_pressure(altitude: Length) -> Pressure {
    Pressure::from_pa(101_325.0 * (1.0 - 2.25577e-5 * altitude.as_m()).powf(5.2559))
}

impl Air {
    /// Relative humidity, 0.6 for 60 %. Law: [`HUMIDITY_RATIO`].
    ///
    /// # Errors
    ///
    /// As [`saturation_pressure`].
    pub fn relative_humidity(&self) -> Result<f64, AirError> {
        Ok(self.vapour() / saturation_pressure(self.dry_bulb)?)
    }

    /// Pressure of its vapour.
    pub fn vapour(&self) -> Pressure {
        self.pressure * (self.ratio / (0.621_945 + self.ratio))
    }

    /// Heat above nought, J for each kilogram of dry air. Law: [`MOIST_AIR`].
    pub fn enthalpy(&self) -> f64 {
        let celsius = self.dry_bulb.as_celsius();
        1006.0 * celsius + self.ratio * (2.501e6 + 1860.0 * celsius)
    }

    /// Cubic metres for each kilogram of dry air. Law: [`MOIST_AIR`].
    pub fn volume(&self) -> f64 {
        let kelvin = self.dry_bulb.as_kelvin();
        287.042 * kelvin * (1.0 + 1.607_858 * self.ratio) / self.pressure.as_pa()
    }

    /// Heat for a kelvin, J for each kilogram of dry air with its water. Law: [`MOIST_AIR`].
    pub fn humid_heat(&self) -> f64 {
        1005.0 + 1880.0 * self.ratio
    }

    /// Kilograms of moist air in a cubic metre.
    pub fn density(&self) -> f64 {
        (1.0 + self.ratio) / self.volume()
    }
}

/// Water of saturated air at a temperature and pressure, kg for each kg of dry air.
///
/// # Errors
///
/// As [`saturation_pressure`] and [`humidity_ratio`].
pub fn saturated_ratio(at: Temperature, pressure: Pressure) -> Result<f64, AirError> {
    humidity_ratio(saturation_pressure(at)?, pressure)
}

/// Heat that evaporates a kilogram of water at a temperature, J: `shop-handbook-figures`, from
/// memory; 0 to 60 °C, 2433 kJ at 28.9 °C and 2411 at 38 °C by the books on drying.
pub fn latent_heat(at: Temperature) -> f64 {
    2.501e6 - 2360.0 * at.as_celsius()
}

fn relative(humidity: f64) -> Result<(), AirError> {
    let percent = humidity * 100.0;
    match (0.0..=1.0).contains(&humidity) {
        true => Ok(()),
        false => Err(AirError::Humidity { percent }),
    }
}

fn ratio_by_wet_bulb(
    dry_bulb: Temperature,
    wet_bulb: Temperature,
    pressure: Pressure,
) -> Result<f64, AirError> {
    let (dry, wet) = (dry_bulb.as_celsius(), wet_bulb.as_celsius());
    let saturated = saturated_ratio(wet_bulb, pressure)?;
    let given = (2501.0 - 2.326 * wet) * saturated - 1.006 * (dry - wet);
    Ok(given / (2501.0 + 1.86 * dry - 4.186 * wet))
}

/// Just below where water boils under this pressure, °C: no wet bulb is hotter.
fn boiling(pressure: Pressure) -> f64 {
    let wanted = pressure.as_pa().max(1.0).ln();
    let (mut low, mut high) = (-100.0, 200.0);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        match ln_saturation(Temperature::from_celsius(middle).as_kelvin()) > wanted {
            true => high = middle,
            false => low = middle,
        }
    }
    low - 1e-6
}

fn ln_saturation(kelvin: f64) -> f64 {
    let t = kelvin;
    match t < 273.15 {
        true => {
            let powers = 6.392_524_7
                + t * (-9.677_843e-3
                    + t * (6.221_570_1e-7 + t * (2.074_782_5e-9 + t * -9.484_024e-13)));
            -5.674_535_9e3 / t + powers + 4.163_501_9 * t.ln()
        }
        false => {
            let powers =
                1.391_499_3 + t * (-4.864_023_9e-2 + t * (4.176_476_8e-5 + t * -1.445_209_3e-8));
            -5.800_220_6e3 / t + powers + 6.545_967_3 * t.ln()
        }
    }
}
