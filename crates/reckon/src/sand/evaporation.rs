//! How fast water leaves a wet surface.

use measure::flow::{MassRate, Speed};
use measure::heat::Temperature;
use measure::length::{Area, Length};
use measure::matter::{Mass, Pressure};
use sand::evaporation::{
    AIR_ALONG, AIR_IN_CHANNEL, AIR_NEEDED, BY_PRESSURE, BY_RATIO, Exposure, Radiator,
    SURFACE_BALANCE, air_along, air_in_channel, air_needed, by_pressure, by_ratio, open_air,
    surface_balance,
};
use sand::psychrometrics::Air;

use super::air::{DRY_BULB, HUMIDITY, PRESSURE, RATIO, humid, told};
use crate::answer::Answer;
use crate::given::Given;
use crate::input::Input;
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const SPEED: Input = Input::of::<Speed>("speed", "v", "of the air over it");
const AREA: Input = Input::of::<Area>("area", "A", "wet surface");

/// What the law is worth either way: the books differ by as much.
const EITHER_WAY: f64 = 0.3;

/// Air that flows faster than this, kg/h m², or slower, is outside the trials.
const FLOWS: (f64, f64) = (2450.0, 29_300.0);

/// By humidity ratios.
pub(super) const RATIOS: Reckoner = Reckoner {
    name: "evaporation",
    question: "How fast does water leave a wet surface?",
    law: &BY_RATIO,
    inputs: &[
        SPEED,
        AREA,
        Input::number(
            "saturated",
            "W_s",
            "kg of water a kg of dry air at the surface",
        ),
        RATIO,
    ],
    example: &[
        ("speed", "0.5 m/s"),
        ("area", "6 m2"),
        ("saturated", "0.0198"),
        ("ratio", "0.0115"),
    ],
    cautions: &[],
    work: |given| {
        let (full, has) = (given.number("saturated"), given.number("ratio"));
        if has > full {
            return given.refuse("ratio", "is more than the air holds", "exchange the two");
        }
        let rate = by_ratio(given.get("speed"), given.get("area"), full, has);
        Ok(vec![
            Answer::of("water", MassRate::from_kg_per_h(rate)).give_or_take(EITHER_WAY),
        ])
    },
};

/// By vapour pressures.
pub(super) const PRESSURES: Reckoner = Reckoner {
    name: "evaporation-by-pressure",
    question: "How fast does water leave a wet surface, by the pressures of vapour?",
    law: &BY_PRESSURE,
    inputs: &[
        SPEED,
        AREA,
        Input::of::<Pressure>("saturated", "p_s", "at the surface: reckon vapour-pressure"),
        Input::of::<Pressure>("vapour", "p_w", "in the air"),
    ],
    example: &[
        ("speed", "2 m/s"),
        ("area", "32 m2"),
        ("saturated", "25.2 mmHg"),
        ("vapour", "7.92 mmHg"),
    ],
    cautions: &[],
    work: |given| {
        let (full, has): (Pressure, Pressure) = (given.get("saturated"), given.get("vapour"));
        if has > full {
            return given.refuse("vapour", "is more than the air holds", "exchange the two");
        }
        let rate = by_pressure(given.get("speed"), given.get("area"), full, has);
        Ok(vec![
            Answer::of("water", MassRate::from_kg_per_h(rate)).give_or_take(EITHER_WAY),
        ])
    },
};

/// Heat from air along a tray.
pub(super) const ALONG: Reckoner = Reckoner {
    name: "air-heat",
    question: "How much heat does a wind give to a tray, in W/m²K?",
    law: &AIR_ALONG,
    inputs: &[DRY_BULB, RATIO, PRESSURE, SPEED],
    example: &[("air", "65.6 C"), ("ratio", "0.01"), ("speed", "6.1 m/s")],
    cautions: &[],
    work: |given| {
        let (air, speed) = (typed(given)?, given.get::<Speed>("speed"));
        let flow = air.density() * speed.as_m_per_s() * 3600.0;
        if !(FLOWS.0..=FLOWS.1).contains(&flow) {
            given.doubt("air slower or faster than in the trials: a start, weigh part way");
        }
        Ok(vec![Answer::number("heat", air_along(&air, speed))])
    },
};

/// Heat from air in a channel.
pub(super) const CHANNEL: Reckoner = Reckoner {
    name: "channel-heat",
    question: "How much heat does air give to a tray in a rack or an oven, in W/m²K?",
    law: &AIR_IN_CHANNEL,
    inputs: &[
        DRY_BULB,
        RATIO,
        PRESSURE,
        SPEED,
        Input::of::<Length>(
            "across",
            "d",
            "four times the channel's section over its rim",
        ),
    ],
    example: &[
        ("air", "65 C"),
        ("ratio", "0.01"),
        ("speed", "3 m/s"),
        ("across", "175 mm"),
    ],
    cautions: &[],
    work: |given| {
        let across: Length = given.get("across");
        if across <= Length::ZERO {
            return given.refuse("across", "is nought", "measure the channel");
        }
        let heat = air_in_channel(&typed(given)?, given.get("speed"), across);
        Ok(vec![Answer::number("heat", heat)])
    },
};

/// The wet surface.
pub(super) const SURFACE: Reckoner = Reckoner {
    name: "drying-rate",
    question: "How fast does wet sand dry in this air, wind and sun, in kg/h m²?",
    law: &SURFACE_BALANCE,
    inputs: &[
        DRY_BULB,
        HUMIDITY,
        PRESSURE,
        Input::of::<Speed>("speed", "", "of the air over it; 0.2 m/s in a still room")
            .or("0.2 m/s", "common-practice")
            .narrowed_by("weigh the tray part way: reckon drying-group"),
        Input::number(
            "heat",
            "h",
            "W/m2K from the air: reckon air-heat or channel-heat",
        )
        .optional(),
        Input::number("below", "U", "W/m2K through the tray from the air under it")
            .or("0", "common-practice"),
        Input::number(
            "sun",
            "q_sun",
            "W/m2 of sun swallowed; some 500 at noon, 0 in shade",
        )
        .or("0", "common-practice"),
        Input::of::<Temperature>("radiator", "T_r", "walls or a radiator it sees").optional(),
        Input::number("emissivity", "ε", "of sand and radiator together")
            .or("0.94", "treybal-mass-transfer"),
    ],
    example: &[
        ("air", "28 C"),
        ("humidity", "50 %"),
        ("speed", "2 m/s"),
        ("sun", "500"),
    ],
    cautions: &["Dry sand dust is silica: damp it, or wear a mask for fine dust, outdoors."],
    work: |given| {
        let air = told(given, "humidity", humid(given))?;
        let transfer = match given.has("heat") {
            true => given.number("heat"),
            false => open_air(&air, given.get("speed")),
        };
        if transfer <= 0.0 {
            return given.refuse(
                "heat",
                "is nought",
                "leave it out, or give what reckon says",
            );
        }
        let radiator = given
            .find::<Temperature>("radiator")
            .map(|temperature| Radiator {
                temperature,
                emissivity: given.number("emissivity"),
            });
        let exposure = Exposure {
            air,
            transfer,
            below: given.number("below"),
            sun: given.number("sun"),
            radiator,
        };
        let found = told(given, "humidity", surface_balance(&exposure))?;
        Ok(vec![
            Answer::number("rate", found.rate),
            Answer::temperature("surface", found.surface),
            Answer::of("below the air", air.dry_bulb - found.surface),
        ])
    },
};

/// Air to carry the water off.
pub(super) const CARRIED: Reckoner = Reckoner {
    name: "drying-air",
    question: "How much air carries the water off?",
    law: &AIR_NEEDED,
    inputs: &[
        Input::of::<Mass>("water", "m_water", "to carry off"),
        Input::number("entering", "W_in", "kg of water a kg of dry air, coming in"),
        Input::number("leaving", "W_out", "the same, going out"),
    ],
    example: &[
        ("water", "0.38 kg"),
        ("entering", "0.01"),
        ("leaving", "0.03"),
    ],
    cautions: &[],
    work: |given| {
        let (entering, leaving) = (given.number("entering"), given.number("leaving"));
        if leaving <= entering {
            return given.refuse("leaving", "carries nothing off", "give more than entering");
        }
        Ok(vec![Answer::of(
            "dry air",
            air_needed(given.get("water"), entering, leaving),
        )])
    },
};

pub(super) fn typed(given: &Given<'_>) -> Result<Air, Impossible> {
    let ratio = given.number("ratio");
    if ratio < 0.0 {
        return given.refuse("ratio", "is below nought", "give nought or more");
    }
    Ok(Air {
        dry_bulb: given.get("air"),
        ratio,
        pressure: given.get("pressure"),
    })
}
