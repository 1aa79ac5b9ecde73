//! What jars, pucks and kitchen scales can tell of a sand, and what they cannot.

use measure::length::Length;
use measure::matter::Mass;
use sand::humidity::{Puck, UPTAKE, uptake};
use sand::jar::{LAYER_SHARE, layer_share};
use sand::moisture::{WEIGHING_ERROR, weighing_error};

use crate::answer::Answer;
use crate::input::Input;
use crate::reckoner::Reckoner;

/// Humidity above which a film of sugar takes up water again: `shop-handbook-figures`.
const REWETS: f64 = 0.60;

/// Error of a moisture above which a larger handful is asked for, a share of the wet mass: our
/// own choice, a third of the water of a good sand.
const COARSE: f64 = 0.01;

/// Uptake from damp air.
pub(super) const FROM_AIR: Reckoner = Reckoner {
    name: "puck-uptake",
    question: "How much water does my bonded sand take up from damp air?",
    law: &UPTAKE,
    inputs: &[
        Input::share(
            "humidity_1",
            "H_1",
            "relative humidity where the first puck stood",
        ),
        Input::share("gain_1", "w_1", "what it took up, of its dry mass"),
        Input::share(
            "humidity_2",
            "H_2",
            "relative humidity where the second puck stood",
        ),
        Input::share("gain_2", "w_2", "what it took up, of its dry mass"),
        Input::share("humidity", "H", "relative humidity asked for"),
    ],
    example: &[
        ("humidity_1", "40 %"),
        ("gain_1", "0.4 %"),
        ("humidity_2", "78 %"),
        ("gain_2", "1.9 %"),
        ("humidity", "65 %"),
    ],
    cautions: &["A mould or core that has taken up water blows: dry it again before you pour."],
    work: |given| {
        let puck = |humidity, gain| Puck {
            humidity: given.number(humidity),
            gain: given.number(gain),
        };
        let (one, other) = (puck("humidity_1", "gain_1"), puck("humidity_2", "gain_2"));
        let humidity = given.number("humidity");
        if humidity > REWETS {
            given.doubt("a baked sugar film gets wet again above about 60 %: bake again, use warm");
        }
        let (low, high) = (
            one.humidity.min(other.humidity),
            one.humidity.max(other.humidity),
        );
        if !(low..=high).contains(&humidity) {
            given.doubt("beyond the two pucks: in damper air it takes up more than the line says");
        }
        match uptake(one, other, humidity) {
            Ok(gain) => Ok(vec![Answer::share("taken up", gain)]),
            Err(fault) => given.refuse("humidity", fault.to_string(), "weigh another puck"),
        }
    },
};

/// The layer in a jar.
pub(super) const IN_JAR: Reckoner = Reckoner {
    name: "jar-layer",
    question: "What does the layer of fines in a jar say?",
    law: &LAYER_SHARE,
    inputs: &[
        Input::of::<Length>("fine", "h_fine", "height of the fine layer on top"),
        Input::of::<Length>(
            "all",
            "h_all",
            "height of all that settled, the layer with it",
        ),
    ],
    example: &[("fine", "18 mm"), ("all", "120 mm")],
    cautions: &[],
    work: |given| {
        let (fine, all): (Length, Length) = (given.get("fine"), given.get("all"));
        if fine > all || all <= Length::ZERO {
            return given.refuse(
                "all",
                "is less than the layer on it",
                "measure both on the glass",
            );
        }
        given.doubt("by volume: no per cent of clay by mass, since the layer holds water and silt");
        given.doubt("a jar never gives the dose of clay: wash, dry and weigh for that");
        Ok(vec![Answer::share("by volume", layer_share(fine, all))])
    },
};

/// What a scale can tell.
pub(super) const OF_SCALE: Reckoner = Reckoner {
    name: "moisture-error",
    question: "How far off is a moisture weighed on this scale?",
    law: &WEIGHING_ERROR,
    inputs: &[
        Input::of::<Mass>("step", "d", "smallest step of the scale"),
        Input::of::<Mass>("sample", "m", "the handful"),
    ],
    example: &[("step", "1 g"), ("sample", "50 g")],
    cautions: &[],
    work: |given| {
        let sample: Mass = given.get("sample");
        if sample <= Mass::ZERO {
            return given.refuse("sample", "weighs nothing", "weigh a handful");
        }
        let error = weighing_error(given.get("step"), sample);
        if error > COARSE {
            given.doubt("useless for moisture: take 200 g or more, or a finer scale");
        }
        Ok(vec![Answer::share("either way", error).rounded_up()])
    },
};
