//! The tests of the bench, and what their readings are worth.

use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use sand::burning::{BOUND_IN_CLAY, BURNING_LOSS, burning_loss};
use sand::error::{PRODUCT_RULE, Reading, product_rule};
use sand::permeability::{TWO_LAYERS, two_layers};
use sand::strength::{
    COMPACTABILITY, CRUSHING, DROP, EQUAL_RAMMING, GOOD_COMPACTABILITY, SPLITTING, compactability,
    crushing, drop, equal_ramming, splitting,
};

use crate::answer::Answer;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;

const LOAD: Input = Input::of::<Mass>("load", "m", "on the scale when it gives way")
    .narrowed_by("press three and take the mean");

/// A pressed cylinder.
pub(super) const PRESSED: Reckoner = Reckoner {
    name: "pressed-cylinder",
    question: "How strong is the sand, from a cylinder pressed on a scale?",
    law: &CRUSHING,
    inputs: &[LOAD, Input::of::<Area>("area", "A", "its end")],
    example: &[("load", "14.5 kg"), ("area", "20.268 cm2")],
    cautions: &[],
    work: |given| {
        let area: Area = given.get("area");
        if area <= Area::ZERO {
            return given.refuse("area", "is nought", "measure the tube");
        }
        Ok(vec![Answer::of(
            "strength",
            crushing(given.get("load"), area),
        )])
    },
};

/// A split disc.
pub(super) const SPLIT: Reckoner = Reckoner {
    name: "split-disc",
    question: "How strong is the sand in tension, from a disc split on its rim?",
    law: &SPLITTING,
    inputs: &[
        LOAD,
        Input::of::<Length>("diameter", "D", "of the disc"),
        Input::of::<Length>("height", "H", "of the disc"),
    ],
    example: &[("load", "2 kg"), ("diameter", "50 mm"), ("height", "50 mm")],
    cautions: &[],
    work: |given| {
        let (diameter, height): (Length, Length) = (given.get("diameter"), given.get("height"));
        if diameter <= Length::ZERO || height <= Length::ZERO {
            return given.refuse("diameter", "or the height is nought", "measure the disc");
        }
        Ok(vec![Answer::of(
            "strength",
            splitting(given.get("load"), diameter, height),
        )])
    },
};

/// A dropped lump.
pub(super) const DROPPED: Reckoner = Reckoner {
    name: "drop-index",
    question: "What does the height say from which a lump breaks?",
    law: &DROP,
    inputs: &[
        Input::of::<Density>("sand_density", "ρ", "of the lump").or(
            "1.5 to 1.7 g/cm3, likely 1.6 g/cm3",
            "shop-handbook-figures",
        ),
        Input::of::<Length>("height", "h", "from which it breaks")
            .narrowed_by("drop five lumps and take the mean"),
    ],
    example: &[("height", "60 cm")],
    cautions: &[],
    work: |given| {
        given.doubt("an index to compare your own days by, no strength");
        let index = drop(given.get("sand_density"), given.get("height"));
        Ok(vec![Answer::of("index", index)])
    },
};

/// Blows that match the laboratory's.
pub(super) const RAMMED: Reckoner = Reckoner {
    name: "equal-ramming",
    question: "From what height do I drop my rammer to ram a test piece as laboratories do?",
    law: &EQUAL_RAMMING,
    inputs: &[
        Input::of::<Volume>("volume", "V", "of the rammed piece"),
        Input::of::<Mass>("weight", "m", "of the rammer"),
        Input::number("blows", "n", "how many").or("3", "afs-mold-core-handbook"),
    ],
    example: &[("volume", "50 cm3"), ("weight", "2 kg")],
    cautions: &[],
    work: |given| {
        let (weight, blows): (Mass, f64) = (given.get("weight"), given.number("blows"));
        if weight <= Mass::ZERO || blows <= 0.0 {
            return given.refuse("weight", "or the blows are nought", "weigh the rammer");
        }
        let volume: Volume = given.get("volume");
        Ok(vec![Answer::of(
            "height",
            equal_ramming(volume, weight, blows),
        )])
    },
};

/// How far loose sand sinks.
pub(super) const SUNK: Reckoner = Reckoner {
    name: "compactability",
    question: "Is the sand tempered, from how far it sinks under the rammer?",
    law: &COMPACTABILITY,
    inputs: &[
        Input::of::<Length>("loose", "h_0", "loose riddled sand, struck off")
            .or("120 mm", "afs-mold-core-handbook"),
        Input::of::<Length>("rammed", "h", "the same sand after three blows"),
    ],
    example: &[("rammed", "70 mm")],
    cautions: &[],
    work: |given| {
        let (loose, rammed): (Length, Length) = (given.get("loose"), given.get("rammed"));
        if rammed > loose || loose <= Length::ZERO {
            return given.refuse("rammed", "is higher than loose", "exchange the two");
        }
        let sunk = compactability(loose, rammed);
        if sunk < GOOD_COMPACTABILITY.0 {
            given.doubt("below 35 %, from memory: too dry for moulding by hand");
        }
        if sunk > GOOD_COMPACTABILITY.1 {
            given.doubt("above 50 %, from memory: too wet for moulding by hand");
        }
        Ok(vec![Answer::share("compactability", sunk)])
    },
};

/// What burns out.
pub(super) const BURNT_OUT: Reckoner = Reckoner {
    name: "burning-loss",
    question: "How much of the sand burns out?",
    law: &BURNING_LOSS,
    inputs: &[
        Input::of::<Mass>("dry", "m_dry", "dried sand before burning"),
        Input::of::<Mass>("burnt", "m_burnt", "the same after burning until it stays"),
    ],
    example: &[("dry", "50 g ± 0.1 g"), ("burnt", "48.55 g ± 0.1 g")],
    cautions: &["Burning sand smokes: outdoors, and never in a kitchen oven."],
    work: |given| {
        let (dry, burnt): (Mass, Mass) = (given.get("dry"), given.get("burnt"));
        if burnt > dry || dry <= Mass::ZERO {
            return given.refuse("burnt", "is heavier than dry", "exchange the two");
        }
        let (low, high) = BOUND_IN_CLAY;
        let clay = format!(
            "clay itself loses {:.0} to {:.0} % of its mass: take that off before you blame the \
             binder",
            low * 100.0,
            high * 100.0
        );
        given.doubt(clay);
        Ok(vec![Answer::share(
            "burning loss",
            burning_loss(dry, burnt),
        )])
    },
};

/// The error of a product.
pub(super) const OFF_BY: Reckoner = Reckoner {
    name: "error-of-product",
    question: "How far may a figure be off that was worked out from several readings?",
    law: &PRODUCT_RULE,
    inputs: &[
        Input::new("errors", "", "of each reading, of itself", Wanted::Shares),
        Input::new(
            "powers",
            "",
            "in which each stands: 1, -1, 2",
            Wanted::Numbers,
        ),
    ],
    example: &[("errors", "2 %, 1 %"), ("powers", "1, -2")],
    cautions: &[],
    work: |given| {
        let (errors, powers) = (given.numbers("errors"), given.numbers("powers"));
        if errors.len() != powers.len() || errors.is_empty() {
            let why = format!("has {} for {} errors", powers.len(), errors.len());
            return given.refuse("powers", why, "give one power for each error");
        }
        let readings = errors.into_iter().zip(powers);
        let readings: Vec<_> = readings
            .map(|(share, power)| Reading { share, power })
            .collect();
        Ok(vec![Answer::share("either way", product_rule(&readings))])
    },
};

/// Two layers one behind the other.
pub(super) const LAYERS: Reckoner = Reckoner {
    name: "two-layers",
    question: "How open do a fine face and the sand behind it stand together?",
    law: &TWO_LAYERS,
    inputs: &[
        Input::of::<Length>("face", "t", "thickness of the face"),
        Input::number(
            "face_permeability",
            "P_t",
            "permeability number of the face",
        ),
        Input::of::<Length>("backing", "L", "sand behind it to the outside"),
        Input::number("permeability", "P_L", "permeability number of that sand"),
    ],
    example: &[
        ("face", "12 mm"),
        ("face_permeability", "30"),
        ("backing", "60 mm"),
        ("permeability", "90"),
    ],
    cautions: &[],
    work: |given| {
        let (face, backing): (Length, Length) = (given.get("face"), given.get("backing"));
        let keys = ["face_permeability", "permeability"];
        if let Some(key) = keys.into_iter().find(|key| given.number(key) <= 0.0) {
            return given.refuse(key, "is not above nought", "test it: permeability");
        }
        if face <= Length::ZERO || backing <= Length::ZERO {
            return given.refuse("face", "is no thickness", "measure face and flask");
        }
        let [fine, coarse] = keys.map(|key| given.number(key));
        let both = two_layers((face, fine), (backing, coarse));
        Ok(vec![Answer::number("both", both)])
    },
};
