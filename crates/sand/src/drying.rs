//! How long sand takes to dry, and what it weighs on the way.
//!
//! While the surface is wet the water leaves at one rate. Below the critical moisture it has to
//! come up from below and the rate falls, here in a straight line down to the moisture at which
//! the sand is at rest with the air. Moistures in this file are of the *dry* mass, so that the
//! water is counted against what does not change.

use measure::flow::Duration;
use measure::length::Length;
use measure::matter::Mass;
use measure::source::Law;
use thiserror::Error;

/// Time of the first period, at one rate.
pub const CONSTANT_TIME: Law = Law {
    name: "sand::drying::constant_time",
    formula: "t = (m_dry / A) (X_1 − X_2) / R",
    range: "moistures of the dry mass, above the critical one",
    sources: &["geankoplis-transport"],
};

/// Time of both periods.
pub const DRYING_TIME: Law = Law {
    name: "sand::drying::drying_time",
    formula: "t = p ((X_1 − X_c) + (X_c − X_e) ln((X_c − X_e) / (X_2 − X_e)));  p = m_dry / (A R)",
    range: "X_2 above X_e; thin layers turned now and then. Thick still layers take longer",
    sources: &["coulson-richardson-2", "anantharaman-begum"],
};

/// The group of a drying, from one weighing part way.
pub const DRYING_GROUP: Law = Law {
    name: "sand::drying::drying_group",
    formula: "p = t / ((X_1 − X_c) + (X_c − X_e) ln((X_c − X_e) / (X_2 − X_e)))",
    range: "the same tray, layer and weather",
    sources: &["coulson-richardson-2", "anantharaman-begum"],
};

/// Time from rates measured at some moistures.
pub const BY_MEASURED_RATES: Law = Law {
    name: "sand::drying::by_measured_rates",
    formula: "t = (m_dry / A) ∫ 1 / R over X, by trapezoids between the moistures",
    range: "rates above nought, moistures falling; other sums of the same table differ by 3 %",
    sources: &["geankoplis-transport", "treybal-mass-transfer"],
};

/// Time of a slab whose water has to find its way out by itself.
pub const SLAB_DIFFUSION: Law = Law {
    name: "sand::drying::slab_diffusion",
    formula: "t = (4 a² / π² D) ln(8 (X_1 − X_e) / (π² (X_2 − X_e)))",
    range: "a half the thickness where both faces are open; less than 0.6 of the water left",
    sources: &["geankoplis-transport"],
};

/// Time of a thicker layer from that of a thinner one.
pub const OTHER_THICKNESS: Law = Law {
    name: "sand::drying::other_thickness",
    formula: "t_2 = t_1 (L_2 / L_1)^n",
    range: "n = 1 turned layers, whose surface decides; n = 2 still thick ones, whose inside does",
    sources: &["coulson-richardson-2", "anantharaman-begum"],
};

/// Time at another air speed.
pub const OTHER_SPEED: Law = Law {
    name: "sand::drying::other_speed",
    formula: "t_2 = t_1 (v_1 / v_2)^0.71",
    range: "first period, or a layer whose surface decides",
    sources: &["anantharaman-begum"],
};

/// Critical moisture of sand, of the dry mass, where nobody measured it: judgement, no source; the
/// finely ground beds of the published rows have more. Taken lower, the time comes out too short
/// and the sand is weighed too early, which costs a walk; taken higher, it dries on past the mark.
pub const CRITICAL: [f64; 3] = [0.02, 0.04, 0.06];

/// What a drying starts from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    /// Where the rate begins to fall, of the dry mass.
    pub critical: f64,
    /// At rest with the air, of the dry mass.
    pub at_rest: f64,
}

/// Why no time is given. Moistures in per cent of the dry mass.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum DryingError {
    /// The end is wetter than the start.
    #[error(
        "it is to dry from {from:.2} to {to:.2} % of the dry mass: that is wetter; exchange them, \
         or add water"
    )]
    Wetter {
        /// The start.
        from: f64,
        /// The end.
        to: f64,
    },
    /// The air keeps it damper than that.
    #[error(
        "this air leaves {at_rest:.2} % in the sand, it never comes to {to:.2} %: dry in warmer \
         or drier air, or bake it"
    )]
    NeverThere {
        /// At rest with the air.
        at_rest: f64,
        /// The end.
        to: f64,
    },
    /// The rate begins to fall below what is left at rest.
    #[error(
        "the critical moisture ({critical:.2} %) is not above the one at rest ({at_rest:.2} %): \
         give a higher one"
    )]
    NothingFalls {
        /// The critical moisture.
        critical: f64,
        /// At rest with the air.
        at_rest: f64,
    },
    /// A table of rates that is none.
    #[error(
        "rates are wanted at two moistures at least, falling, each rate above nought: look at \
         line {line}"
    )]
    Table {
        /// The line, counted from one.
        line: usize,
    },
    /// Lighter than the dry sand.
    #[error(
        "{weighed:.2} kg is less than the dry sand in it ({dry:.2} kg): weigh again, or look at \
         the moisture it began with"
    )]
    LighterThanDry {
        /// What was weighed, kg.
        weighed: f64,
        /// The dry sand, kg.
        dry: f64,
    },
}

/// Time at one rate, from dry sand over its surface (kg/m²) and the rate (kg/h m²). Law:
/// [`CONSTANT_TIME`].
pub fn constant_time(dry_per_area: f64, from: f64, to: f64, rate: f64) -> Duration {
    hours(dry_per_area * (from - to) / rate)
}

/// Time of both periods for a group `p`, the time that a unit of moisture takes at the first
/// rate. Law: [`DRYING_TIME`].
///
/// # Errors
///
/// Where the end is wetter than the start, or than the air allows.
pub fn drying_time(
    load: &Load,
    group: Duration,
    from: f64,
    to: f64,
) -> Result<Duration, DryingError> {
    Ok(group * way(load, from, to)?)
}

/// The group `p` from one run between two moistures. Law: [`DRYING_GROUP`].
///
/// # Errors
///
/// As [`drying_time`].
pub fn drying_group(
    load: &Load,
    time: Duration,
    from: f64,
    to: f64,
) -> Result<Duration, DryingError> {
    Ok(time / way(load, from, to)?)
}

/// Moisture after a time, the inverse of [`drying_time`].
///
/// # Errors
///
/// Where the load is none.
pub fn moisture_after(
    load: &Load,
    group: Duration,
    from: f64,
    time: Duration,
) -> Result<f64, DryingError> {
    falls(load)?;
    let way = time / group;
    let steady = (from - load.critical).max(0.0);
    if way <= steady {
        return Ok(from - way);
    }
    let start = from.min(load.critical);
    let span = load.critical - load.at_rest;
    Ok(load.at_rest + (start - load.at_rest) * (-(way - steady) / span).exp())
}

/// Time from measured rates (kg/h m²) at falling moistures. Law: [`BY_MEASURED_RATES`].
///
/// # Errors
///
/// [`DryingError::Table`] where the table is none.
pub fn by_measured_rates(dry_per_area: f64, table: &[(f64, f64)]) -> Result<Duration, DryingError> {
    if table.len() < 2 {
        return Err(DryingError::Table { line: 1 });
    }
    let mut sum = 0.0;
    for (at, two) in table.windows(2).enumerate() {
        let [(wetter, fast), (drier, slow)] = [two[0], two[1]];
        let sound = wetter > drier && fast > 0.0 && slow > 0.0;
        if !sound {
            return Err(DryingError::Table { line: at + 2 });
        }
        sum += (wetter - drier) * (1.0 / fast + 1.0 / slow) / 2.0;
    }
    Ok(hours(dry_per_area * sum))
}

/// Time of a slab by diffusion, `half` its half thickness, `diffusivity` in m²/h. Law:
/// [`SLAB_DIFFUSION`].
pub fn slab_diffusion(
    half: Length,
    diffusivity: f64,
    from: f64,
    to: f64,
    at_rest: f64,
) -> Duration {
    let square = std::f64::consts::PI * std::f64::consts::PI;
    let left = 8.0 * (from - at_rest) / (square * (to - at_rest));
    hours(4.0 * half.as_m() * half.as_m() / (square * diffusivity) * left.ln())
}

/// Time of another thickness. Law: [`OTHER_THICKNESS`].
pub fn other_thickness(time: Duration, from: Length, to: Length, turned: bool) -> Duration {
    let power = if turned { 1 } else { 2 };
    time * (to / from).powi(power)
}

/// Time at another air speed. Law: [`OTHER_SPEED`].
pub fn other_speed(time: Duration, speed_ratio: f64) -> Duration {
    time * speed_ratio.powf(-0.71)
}

/// Moisture of the dry mass of a load weighed part way.
///
/// # Errors
///
/// [`DryingError::LighterThanDry`].
pub fn moisture_of(weighed: Mass, dry: Mass) -> Result<f64, DryingError> {
    match weighed >= dry {
        true => Ok((weighed - dry) / dry),
        false => Err(DryingError::LighterThanDry {
            weighed: weighed.as_kg(),
            dry: dry.as_kg(),
        }),
    }
}

/// How far a drying has to go, in moistures at the first rate.
fn way(load: &Load, from: f64, to: f64) -> Result<f64, DryingError> {
    falls(load)?;
    if to > from {
        return Err(DryingError::Wetter {
            from: from * 100.0,
            to: to * 100.0,
        });
    }
    if to <= load.at_rest {
        return Err(DryingError::NeverThere {
            at_rest: load.at_rest * 100.0,
            to: to * 100.0,
        });
    }
    let steady = (from - to.max(load.critical)).max(0.0);
    let (start, end) = (from.min(load.critical), to.min(load.critical));
    let span = load.critical - load.at_rest;
    let falling = span * ((start - load.at_rest) / (end - load.at_rest)).ln();
    Ok(steady + falling)
}

fn falls(load: &Load) -> Result<(), DryingError> {
    match load.critical > load.at_rest {
        true => Ok(()),
        false => Err(DryingError::NothingFalls {
            critical: load.critical * 100.0,
            at_rest: load.at_rest * 100.0,
        }),
    }
}

fn hours(amount: f64) -> Duration {
    Duration::from_s(amount * 3600.0)
}
