//! How long sand takes to dry, and how long a mould may stand.

use measure::flow::{Duration, Speed};
use measure::length::{Area, Length};
use measure::matter::{Density, Mass};
use sand::drying::{
    BY_MEASURED_RATES, CONSTANT_TIME, DRYING_GROUP, DRYING_TIME, Load, OTHER_SPEED,
    OTHER_THICKNESS, SLAB_DIFFUSION, by_measured_rates, constant_time, drying_group, drying_time,
    other_speed, other_thickness, slab_diffusion,
};
use sand::standing::{STANDING_TIME, standing_time};

use super::SILICA;
use super::air::told;
use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const DRY: Input = Input::of::<Mass>("dry", "m_dry", "the dry sand");
const AREA: Input = Input::of::<Area>("area", "A", "surface it dries from");
const RATE: Input = Input::number("rate", "R", "kg/h m2 while it is wet: reckon drying-rate")
    .narrowed_by("weigh the tray part way: reckon drying-group");
const FROM: Input = Input::share("from", "X_1", "moisture at the start, of the dry mass");
const TO: Input = Input::share("to", "X_2", "moisture at the end, of the dry mass");
const CRITICAL: Input = Input::share(
    "critical",
    "X_c",
    "where the rate begins to fall, of the dry mass",
)
.or("2 to 6 %, likely 4 %", "common-practice");
const AT_REST: Input = Input::share(
    "at_rest",
    "X_e",
    "what this air leaves in it, of the dry mass",
)
.or("0 %", "common-practice");
const GROUP: Input = Input::of::<Duration>("group", "p", "of the tray: reckon drying-group");

/// One rate.
pub(super) const STEADY: Reckoner = Reckoner {
    name: "drying-steady",
    question: "How long does it dry at one rate?",
    law: &CONSTANT_TIME,
    inputs: &[DRY, AREA, FROM, TO, RATE],
    example: &[
        ("dry", "21.5 kg"),
        ("area", "1 m2"),
        ("from", "38 %"),
        ("to", "25 %"),
        ("rate", "1.51"),
    ],
    cautions: &[SILICA],
    work: |given| {
        let (from, to) = falling(given)?;
        let time = constant_time(per_area(given)?, from, to, rate(given)?);
        Ok(vec![Answer::of("time", time)])
    },
};

/// Both periods.
pub(super) const BOTH: Reckoner = Reckoner {
    name: "drying-time",
    question: "How long does a tray take to dry?",
    law: &DRYING_TIME,
    inputs: &[GROUP, FROM, TO, CRITICAL, AT_REST],
    example: &[
        ("group", "15.5 h"),
        ("from", "10 %"),
        ("to", "6 %"),
        ("at_rest", "0.5 %"),
    ],
    cautions: &[SILICA],
    work: |given| {
        let (from, to) = falling(given)?;
        let time = drying_time(&load(given), given.get("group"), from, to);
        Ok(vec![Answer::of("time", told(given, "to", time)?)])
    },
};

/// The group of a tray.
pub(super) const OF_TRAY: Reckoner = Reckoner {
    name: "drying-group",
    question: "What does one weighing part way say of a tray?",
    law: &DRYING_GROUP,
    inputs: &[
        Input::of::<Duration>("time", "t", "between the two weighings"),
        FROM,
        TO,
        CRITICAL,
        AT_REST,
    ],
    example: &[
        ("time", "90 min"),
        ("from", "10 %"),
        ("to", "8.5 %"),
        ("at_rest", "0.5 %"),
    ],
    cautions: &[],
    work: |given| {
        let (from, to) = falling(given)?;
        if from == to {
            return given.refuse("to", "has lost nothing", "weigh again later");
        }
        let group = drying_group(&load(given), given.get("time"), from, to);
        Ok(vec![Answer::of("group", told(given, "to", group)?)])
    },
};

/// A table of rates.
pub(super) const TABLE: Reckoner = Reckoner {
    name: "drying-by-rates",
    question: "How long does it dry, from rates at some moistures?",
    law: &BY_MEASURED_RATES,
    inputs: &[
        DRY,
        AREA,
        Input::new("moistures", "X", "of the dry mass, falling", Wanted::Shares),
        Input::new("rates", "R", "kg/h m2 at each", Wanted::Numbers),
    ],
    example: &[
        ("dry", "21.5 kg"),
        ("area", "1 m2"),
        ("moistures", "38 %, 19.5 %, 10 %, 4 %"),
        ("rates", "1.51, 1.51, 0.9, 0.27"),
    ],
    cautions: &[SILICA],
    work: |given| {
        let (moistures, rates) = (given.numbers("moistures"), given.numbers("rates"));
        if moistures.len() != rates.len() {
            let why = format!("has {} for {} moistures", rates.len(), moistures.len());
            return given.refuse("rates", why, "give one rate for each moisture");
        }
        let table: Vec<_> = moistures.into_iter().zip(rates).collect();
        let time = by_measured_rates(per_area(given)?, &table);
        Ok(vec![Answer::of("time", told(given, "rates", time)?)])
    },
};

/// A still slab.
pub(super) const SLAB: Reckoner = Reckoner {
    name: "drying-slab",
    question: "How long does a still slab take whose water finds its own way out?",
    law: &SLAB_DIFFUSION,
    inputs: &[
        Input::of::<Length>("half", "a", "half the thickness; all of it on a tight tray"),
        Input::number("diffusivity", "D", "mm2/h of the water in it"),
        FROM,
        TO,
        AT_REST,
    ],
    example: &[
        ("half", "12.7 mm"),
        ("diffusivity", "2.97"),
        ("from", "29 %"),
        ("to", "9 %"),
        ("at_rest", "4 %"),
    ],
    cautions: &[],
    work: |given| {
        let (from, to) = falling(given)?;
        let (rest, diffusivity) = (given.number("at_rest"), given.number("diffusivity"));
        if to <= rest {
            return given.refuse("to", "is never reached in this air", "dry in drier air");
        }
        if diffusivity <= 0.0 {
            return given.refuse("diffusivity", "is nought", "give more than nought");
        }
        if (to - rest) > 0.6 * (from - rest) {
            return given.refuse("to", "is early for this law", "use drying-time");
        }
        let time = slab_diffusion(given.get("half"), diffusivity * 1e-6, from, to, rest);
        Ok(vec![Answer::of("time", time)])
    },
};

/// Another thickness.
pub(super) const THICKER: Reckoner = Reckoner {
    name: "drying-thickness",
    question: "How long does a thicker or thinner layer take?",
    law: &OTHER_THICKNESS,
    inputs: &[
        Input::of::<Duration>("time", "t_1", "of the layer that was timed"),
        Input::of::<Length>("layer", "L_1", "its thickness"),
        Input::of::<Length>("other", "L_2", "thickness of the other"),
        Input::choice("how", "turned, or still", &["turned", "still"]),
    ],
    example: &[
        ("time", "5 h"),
        ("layer", "25 mm"),
        ("other", "40 mm"),
        ("how", "turned"),
    ],
    cautions: &[],
    work: |given| {
        let (layer, other): (Length, Length) = (given.get("layer"), given.get("other"));
        if layer <= Length::ZERO {
            return given.refuse("layer", "is nought", "measure it");
        }
        let turned = given.words("how") == "turned";
        let time = other_thickness(given.get("time"), layer, other, turned);
        Ok(vec![Answer::of("time", time)])
    },
};

/// Another wind.
pub(super) const FASTER: Reckoner = Reckoner {
    name: "drying-speed",
    question: "How long does it take in another wind?",
    law: &OTHER_SPEED,
    inputs: &[
        Input::of::<Duration>("time", "t_1", "that was timed"),
        Input::of::<Speed>("speed", "v_1", "of the air then"),
        Input::of::<Speed>("other", "v_2", "of the air now"),
    ],
    example: &[("time", "3.8 h"), ("speed", "0.75 m/s"), ("other", "4 m/s")],
    cautions: &[],
    work: |given| {
        let (speed, other): (Speed, Speed) = (given.get("speed"), given.get("other"));
        if speed <= Speed::ZERO || other <= Speed::ZERO {
            return given.refuse("speed", "is nought", "still air moves at some 0.1 m/s");
        }
        Ok(vec![Answer::of(
            "time",
            other_speed(given.get("time"), other / speed),
        )])
    },
};

/// A standing mould.
pub(super) const STANDING: Reckoner = Reckoner {
    name: "standing-time",
    question: "How long may a rammed mould stand open before its skin is dry?",
    law: &STANDING_TIME,
    inputs: &[
        Input::of::<Density>("sand_density", "ρ_dry", "dry sand in the mould")
            .or("1.5 g/cm3", "common-practice"),
        Input::of::<Length>("skin", "δ", "depth of skin that has to hold")
            .or("3 mm", "common-practice"),
        Input::share("now", "X_now", "moisture, of the dry mass"),
        Input::share(
            "least",
            "X_least",
            "at which an edge crumbles, of the dry mass",
        )
        .narrowed_by("let a lump stand, weigh it when its edges rub off"),
        RATE,
    ],
    example: &[("now", "4.5 %"), ("least", "3 %"), ("rate", "0.2")],
    cautions: &["A mould that was covered is damp below: lift the cover before you pour."],
    work: |given| {
        let (now, least) = (given.number("now"), given.number("least"));
        if least > now {
            return given.refuse("least", "is more than it has now", "spray it, or ram anew");
        }
        let (dry, skin) = (given.get("sand_density"), given.get("skin"));
        let time = standing_time(dry, skin, now, least, rate(given)?);
        Ok(vec![Answer::of("at least", time).rounded_down()])
    },
};

fn load(given: &Given<'_>) -> Load {
    Load {
        critical: given.number("critical"),
        at_rest: given.number("at_rest"),
    }
}

fn falling(given: &Given<'_>) -> Result<(f64, f64), Impossible> {
    let (from, to) = (given.number("from"), given.number("to"));
    match to > from {
        true => given.refuse("to", "is wetter than the start", "exchange the two"),
        false => Ok((from, to)),
    }
}

fn per_area(given: &Given<'_>) -> Result<f64, Impossible> {
    let (dry, area): (Mass, Area) = (given.get("dry"), given.get("area"));
    match area.as_m2() > 0.0 {
        true => Ok(dry.as_kg() / area.as_m2()),
        false => given.refuse("area", "is nought", "measure the tray"),
    }
}

fn rate(given: &Given<'_>) -> Result<f64, Impossible> {
    match given.number("rate") {
        rate if rate > 0.0 => Ok(rate),
        _ => given.refuse("rate", "is nought: it never dries", "wait for drier air"),
    }
}
