//! What bonded sand holds at rest in damp air, and jars that keep an air.

use measure::heat::Temperature;
use sand::sorption::{AT_REST, Curve, SALT_JAR, at_rest, salt_jar};

use crate::answer::Answer;
use crate::input::Input;
use crate::reckoner::Reckoner;

/// Water at rest.
pub(super) const RESTING: Reckoner = Reckoner {
    name: "water-at-rest",
    question: "How much water does a bonded sand hold at rest in damp air?",
    law: &AT_REST,
    inputs: &[
        Input::share("layer", "M_0", "water of the first layer, of the dry mass"),
        Input::number("first", "C", "how the first layer holds"),
        Input::number("further", "K", "how the further ones hold"),
        Input::share("humidity", "a", "relative humidity"),
    ],
    example: &[
        ("layer", "0.5 %"),
        ("first", "10"),
        ("further", "0.85"),
        ("humidity", "60 %"),
    ],
    cautions: &["A mould or core that has taken up water blows: dry it again before you pour."],
    work: |given| {
        let curve = Curve {
            layer: given.number("layer"),
            first: given.number("first"),
            further: given.number("further"),
        };
        let humidity = given.number("humidity");
        let sound = curve.first > 0.0 && curve.further > 0.0 && curve.layer >= 0.0;
        if !sound {
            return given.refuse("first", "or another constant is nought", "fit three pucks");
        }
        if !(0.0..=1.0).contains(&humidity) || curve.further * humidity >= 1.0 {
            return given.refuse("humidity", "is beyond the curve", "stay below 90 %");
        }
        if humidity > 0.9 {
            given.doubt("above 90 % the curve says little");
        }
        Ok(vec![Answer::share("held", at_rest(&curve, humidity))])
    },
};

/// Air over salt.
pub(super) const SALT: Reckoner = Reckoner {
    name: "salt-jar",
    question: "How damp is the air in a closed jar over wet salt?",
    law: &SALT_JAR,
    inputs: &[
        Input::choice(
            "salt",
            "what lies in the jar, wet and not all dissolved",
            &[
                "lithium-chloride",
                "magnesium-chloride",
                "sodium-bromide",
                "table-salt",
                "potassium-nitrate",
                "potassium-sulphate",
            ],
        ),
        Input::of::<Temperature>("at", "T", "of the jar"),
    ],
    example: &[("salt", "table-salt"), ("at", "25 C")],
    cautions: &["Keep jars of salts away from food, and lithium salts from the hands."],
    work: |given| {
        let at: Temperature = given.get("at");
        if !(0.0..=60.0).contains(&at.as_celsius()) {
            return given.refuse("at", "is outside the table", "stand the jar at 15 to 35 °C");
        }
        match salt_jar(given.words("salt"), at) {
            Some(humidity) => Ok(vec![Answer::share("relative humidity", humidity)]),
            None => given.refuse("salt", "is not in the table", "take one of the list"),
        }
    },
};
