//! Damp air.

use measure::heat::{HeatPerMass, SpecificHeat, Temperature};
use measure::length::Length;
use measure::matter::{Density, Pressure};
use sand::psychrometrics::{
    AIR_PRESSURE, Air, AirError, DEW_POINT, FROM_WET_BULB, HUMIDITY_RATIO, MOIST_AIR,
    SATURATION_PRESSURE, WET_BULB, air, air_pressure, dew_point, from_wet_bulb, humidity_ratio,
    saturation_pressure, wet_bulb,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::Input;
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// The thermometer of the air.
pub(super) const DRY_BULB: Input =
    Input::of::<Temperature>("air", "t", "the air, thermometer dry and in the shade");
/// Relative humidity.
pub(super) const HUMIDITY: Input = Input::share("humidity", "φ", "relative humidity of the air");
/// Pressure of the air.
pub(super) const PRESSURE: Input =
    Input::of::<Pressure>("pressure", "p", "of the air: reckon air-pressure")
        .or("101325 Pa", "ashrae-fundamentals-2017");
/// Water in the air.
pub(super) const RATIO: Input = Input::number(
    "ratio",
    "W",
    "kg of water in the air for each kg of dry air",
);

/// Vapour pressure over water and ice.
pub(super) const VAPOUR: Reckoner = Reckoner {
    name: "vapour-pressure",
    question: "At what pressure is air full of water?",
    law: &SATURATION_PRESSURE,
    inputs: &[DRY_BULB],
    example: &[("air", "25 C")],
    cautions: &[],
    work: |given| {
        let full = told(given, "air", saturation_pressure(given.get("air")))?;
        Ok(vec![Answer::of("pressure", full)])
    },
};

/// Humidity ratio.
pub(super) const RATIO_OF: Reckoner = Reckoner {
    name: "humidity-ratio",
    question: "How much water does the air hold, from the pressure of its vapour?",
    law: &HUMIDITY_RATIO,
    inputs: &[
        Input::of::<Pressure>("vapour", "p_w", "of the water in the air"),
        Input::of::<Pressure>(
            "saturated",
            "p_s",
            "of air full of water: reckon vapour-pressure",
        ),
        PRESSURE,
    ],
    example: &[
        ("vapour", "2.76 kPa"),
        ("saturated", "3.5 kPa"),
        ("pressure", "101.3 kPa"),
    ],
    cautions: &[],
    work: |given| {
        let (vapour, full): (Pressure, Pressure) = (given.get("vapour"), given.get("saturated"));
        if vapour > full {
            return given.refuse("vapour", "is more than air holds", "exchange the two");
        }
        let pressure = given.get("pressure");
        let ratio = told(given, "vapour", humidity_ratio(vapour, pressure))?;
        let filled = told(given, "saturated", humidity_ratio(full, pressure))?;
        Ok(vec![
            Answer::number("ratio", ratio),
            Answer::number("saturated ratio", filled),
            Answer::share("relative humidity", vapour / full),
            Answer::share("percentage humidity", ratio / filled),
        ])
    },
};

/// Two thermometers.
pub(super) const TWO_THERMOMETERS: Reckoner = Reckoner {
    name: "two-thermometers",
    question: "How damp is the air, from a dry and a wet thermometer?",
    law: &FROM_WET_BULB,
    inputs: &[
        DRY_BULB,
        Input::of::<Temperature>("wet", "t_w", "thermometer in a wet rag, swung in the air"),
        PRESSURE,
    ],
    example: &[("air", "40 C"), ("wet", "20 C")],
    cautions: &[],
    work: |given| {
        let found = from_wet_bulb(given.get("air"), given.get("wet"), given.get("pressure"));
        let found = told(given, "wet", found)?;
        let humidity = told(given, "air", found.relative_humidity())?;
        Ok(vec![
            Answer::number("ratio", found.ratio),
            Answer::share("relative humidity", humidity),
        ])
    },
};

/// The wet bulb.
pub(super) const WET: Reckoner = Reckoner {
    name: "wet-bulb",
    question: "How cold does drying sand get in this air?",
    law: &WET_BULB,
    inputs: &[DRY_BULB, HUMIDITY, PRESSURE],
    example: &[("air", "28 C"), ("humidity", "60 %")],
    cautions: &[],
    work: |given| {
        let found = told(given, "humidity", humid(given))?;
        let wet = told(given, "air", wet_bulb(&found))?;
        Ok(vec![
            Answer::temperature("wet bulb", wet),
            Answer::of("below the air", given.get::<Temperature>("air") - wet),
        ])
    },
};

/// The dew point.
pub(super) const DEW: Reckoner = Reckoner {
    name: "dew-point",
    question: "Below what temperature does this air wet cold sand or metal?",
    law: &DEW_POINT,
    inputs: &[DRY_BULB, HUMIDITY],
    example: &[("air", "40 C"), ("humidity", "14 %")],
    cautions: &["Metal and chills colder than the dew point are wet, though they look dry."],
    work: |given| {
        let dew = dew_point(given.get("air"), given.number("humidity"));
        let dew = told(given, "humidity", dew)?;
        Ok(vec![
            Answer::temperature("dew point", dew),
            Answer::of("below the air", given.get::<Temperature>("air") - dew),
        ])
    },
};

/// Air by height.
pub(super) const BY_HEIGHT: Reckoner = Reckoner {
    name: "air-pressure",
    question: "What is the pressure of the air at this height?",
    law: &AIR_PRESSURE,
    inputs: &[Input::of::<Length>("height", "z", "above the sea")],
    example: &[("height", "1000 m")],
    cautions: &[],
    work: |given| {
        let height: Length = given.get("height");
        if !(-5000.0..=11_000.0).contains(&height.as_m()) {
            return given.refuse("height", "is outside −5 to 11 km", "look at the unit");
        }
        Ok(vec![Answer::of("pressure", air_pressure(height))])
    },
};

/// What moist air carries.
pub(super) const MOIST: Reckoner = Reckoner {
    name: "moist-air",
    question: "What room, weight and heat has damp air?",
    law: &MOIST_AIR,
    inputs: &[DRY_BULB, RATIO, PRESSURE],
    example: &[("air", "60 C"), ("ratio", "0.0225")],
    cautions: &[],
    work: |given| {
        let ratio = given.number("ratio");
        if ratio < 0.0 {
            return given.refuse("ratio", "is below nought", "give nought or more");
        }
        let air = Air {
            dry_bulb: given.get("air"),
            ratio,
            pressure: given.get("pressure"),
        };
        Ok(vec![
            Answer::number("cubic metres a kg", air.volume()),
            Answer::of("density", Density::from_kg_per_m3(air.density())),
            Answer::of("heat", HeatPerMass::from_j_per_kg(air.enthalpy())),
            Answer::of(
                "humid heat",
                SpecificHeat::from_j_per_kg_k(air.humid_heat()),
            ),
            Answer::number("grams a cubic metre", ratio / air.volume() * 1000.0),
        ])
    },
};

/// The air of a weather report.
pub(super) fn humid(given: &Given<'_>) -> Result<Air, AirError> {
    air(
        given.get("air"),
        given.number("humidity"),
        given.get("pressure"),
    )
}

/// The value, or the fault told under a key.
pub(super) fn told<T>(
    given: &Given<'_>,
    key: &'static str,
    found: Result<T, impl std::fmt::Display>,
) -> Result<T, Impossible> {
    match found {
        Ok(value) => Ok(value),
        Err(fault) => given.refuse(
            key,
            format!("does not do: {fault}"),
            "look at what was typed",
        ),
    }
}
