//! What feeds a casting while it shrinks.

use measure::length::{Area, Length, Volume};
use metal::alloy::Family;
use mould::feeding::caine::{
    CAINE, CaineConstants, DIAMETER_BY_CAINE, caine, caine_for_alloy, caine_metals, caine_of,
    diameter_by_caine,
};
use mould::feeding::feeder::{
    CYLINDER_MODULUS, CoolingEnds, DIAMETER_BY_MODULUS, FREEZING_RATIO, IRON_MARGIN, MARGIN,
    VOLUME_RULE, cylinder_modulus, diameter_by_modulus, diameter_holding, feeder_volume,
    freezing_ratio,
};
use mould::feeding::lining::linings;
use mould::feeding::need::{IronKnown, NEED, Need, NoFeeder, need};
use mould::feeding::rules::{Fed, GOVERNING, Rule, SideBySide, side_by_side};
use mould::feeding::shape_factor::{
    SHAPE_FACTOR, VOLUME_BY_SHAPE, shape_factor, table_range, volume_by_shape,
};
use mould::feeding::shop_rules::{
    INSCRIBED_CIRCLE, THRICE_THE_SHRINKAGE, diameter_by_circle, thrice_the_shrinkage,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const SECTION: Input = Input::new(
    "section",
    "M",
    "modulus of the section, or a plain body",
    Wanted::Body,
);
const CASTING: Input = Input::of::<Volume>("casting", "V_c", "casting it feeds");
const DEMAND: Input = Input::share(
    "demand",
    "β",
    "share of the volume lost from pouring to frozen: reckon feed-demand",
);
const SLIMNESS: Input =
    Input::number("height_over_diameter", "", "height over diameter").or("1", "common-practice");
const CAINE_METAL: Input = Input::choice(
    "curve",
    "metal of Caine's constants",
    &[
        "steel",
        "aluminium",
        "brass",
        "white iron",
        "grey iron",
        "aluminium bronze",
        "silicon bronze",
    ],
);
const OTHER_METALS: &str = "the handbooks have no constants for gunmetal, tin bronze, zinc and \
                            pewter; those of the others are few and old";

const ENDS: Input = Input::choice(
    "cooling_ends",
    "ends that cool: one on a casting",
    &["one", "two"],
)
.or("one", "common-practice");

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "feeder-needed",
        question: "Does this casting want a feeder at all?",
        law: &NEED,
        inputs: &[
            SECTION,
            Input::choice("iron", "whether it is grey iron", &["yes", "no"]),
            Input::number("carbon_equivalent", "CE", "grey iron: CE in per cent").optional(),
            Input::choice(
                "firm",
                "whether a test has shown the mould firm",
                &["yes", "no"],
            )
            .or("no", "common-practice"),
        ],
        example: &[
            ("section", "plate 7 mm"),
            ("iron", "yes"),
            ("carbon_equivalent", "4.2"),
            ("firm", "yes"),
        ],
        cautions: &[],
        work: |given| {
            let iron = (given.words("iron") == "yes").then(|| IronKnown {
                carbon_equivalent: given
                    .has("carbon_equivalent")
                    .then(|| given.number("carbon_equivalent")),
                firm: given.words("firm") == "yes",
            });
            let need = need(given.get("section"), iron);
            Ok(vec![
                Answer::number("feeders at least", need_count(need)),
                Answer::words("feeder", need_words(need)),
                Answer::words("because", need_reason(need)),
            ])
        },
    },
    Reckoner {
        name: "feeder",
        question: "How large a feeder, by every rule side by side?",
        law: &GOVERNING,
        inputs: &[
            SECTION,
            Input::of::<Volume>("casting", "V", "casting, or the part of it that it feeds"),
            Input::of::<Area>("surface", "", "its whole surface, for Caine's curve").optional(),
            DEMAND,
            Input::metal(),
            Input::number(
                "margin",
                "k",
                "how much more modulus the feeder has: 1.1 for iron",
            )
            .or("1.2", "feeder-article"),
            Input::share("usable", "ε", "share of the feeder that can run out").optional(),
            Input::choice(
                "lining",
                "what lines it",
                &["sand", "half ball", "insulating sleeve", "heating sleeve"],
            )
            .or("sand", "campbell-castings"),
            SLIMNESS,
            ENDS,
            Input::list::<Length>("box", "", "length, width, thickness of the box round it")
                .optional(),
            Input::of::<Length>("inscribed", "", "largest circle in the section").optional(),
        ],
        example: &[
            ("section", "6.4 mm"),
            ("casting", "130 cm3"),
            ("surface", "185 cm2"),
            ("demand", "4 to 5 %"),
            ("metal", "A356"),
            ("box", "125 mm, 47 mm, 20.5 mm"),
        ],
        cautions: &[
            "a blind feeder needs a vent or a dry core to let the air in, or it does not \
                     feed",
        ],
        work: |given| feeder_answers(given),
    },
    Reckoner {
        name: "caine",
        question: "How many times the casting's modulus must a feeder of some share have?",
        law: &CAINE,
        inputs: &[
            CAINE_METAL,
            Input::number("share", "Y", "volume of feeder over casting"),
        ],
        example: &[("curve", "aluminium"), ("share", "0.5")],
        cautions: &[],
        work: |given| {
            given.doubt(OTHER_METALS);
            match caine(given.number("share"), curve(given)?) {
                Some(ratio) => Ok(vec![Answer::number("modulus over casting", ratio)]),
                None => given.refuse(
                    "share",
                    "is no more than what the casting draws",
                    "take a larger feeder",
                ),
            }
        },
    },
    Reckoner {
        name: "feeder-by-caine",
        question: "How thick must a feeder be by Caine's curve?",
        law: &DIAMETER_BY_CAINE,
        inputs: &[
            CAINE_METAL,
            Input::of::<Volume>("casting", "V_casting", "casting it feeds"),
            Input::new(
                "section",
                "M_casting",
                "its modulus, or a plain body",
                Wanted::Body,
            ),
            SLIMNESS,
            ENDS,
        ],
        example: &[
            ("curve", "aluminium"),
            ("casting", "130 cm3"),
            ("section", "6.4 mm"),
        ],
        cautions: &[],
        work: |given| {
            given.doubt(OTHER_METALS);
            let slimness = given.number("height_over_diameter");
            let (casting, section) = (given.get("casting"), given.get("section"));
            match diameter_by_caine(casting, section, slimness, ends(given), curve(given)?) {
                Some(diameter) => Ok(vec![
                    Answer::of("diameter", diameter).rounded_up(),
                    Answer::of("height", diameter * slimness).rounded_up(),
                ]),
                None => given.refuse("casting", "is no body that can be fed", "look at its unit"),
            }
        },
    },
    Reckoner {
        name: "shape-factor",
        question: "How flat is a casting, for the rule of the shape factor?",
        law: &SHAPE_FACTOR,
        inputs: &[
            Input::of::<Length>("length", "a", "longest side of the box round it"),
            Input::of::<Length>("width", "w", "next side"),
            Input::of::<Length>("thickness", "s", "shortest side"),
        ],
        example: &[
            ("length", "125 mm"),
            ("width", "47 mm"),
            ("thickness", "20.5 mm"),
        ],
        cautions: &[],
        work: |given| {
            let factor = shape_factor(
                given.get("length"),
                given.get("width"),
                given.get("thickness"),
            );
            Ok(vec![Answer::number("shape factor", factor)])
        },
    },
    Reckoner {
        name: "feeder-by-shape",
        question: "How large a feeder by the shape factor, table and power side by side?",
        law: &VOLUME_BY_SHAPE,
        inputs: &[
            Input::number("factor", "S", "shape factor"),
            Input::of::<Volume>("casting", "", "casting it feeds"),
            SLIMNESS,
        ],
        example: &[("factor", "8.4"), ("casting", "130 cm3")],
        cautions: &[],
        work: |given| {
            let factor = given.number("factor");
            let (by, casting) = (volume_by_shape(factor), given.get::<Volume>("casting"));
            let slimness = given.number("height_over_diameter");
            let [least, most] = table_range();
            if !(least..=most).contains(&factor) {
                given.doubt("beyond the table: its end row stands");
            }
            given.doubt("both were measured on steel; at chunky shapes they differ by a half");
            let diameter = |share: f64| diameter_holding(casting * share, slimness);
            Ok(vec![
                Answer::of("volume", casting * by.table).rounded_up(),
                Answer::of("diameter", diameter(by.table)).rounded_up(),
                Answer::of("volume by the power", casting * by.power).rounded_up(),
                Answer::of("diameter by the power", diameter(by.power)).rounded_up(),
                Answer::number("power over table", by.power / by.table),
            ])
        },
    },
    Reckoner {
        name: "thrice-the-shrinkage",
        question: "How large a feeder by three times the shrinkage?",
        law: &THRICE_THE_SHRINKAGE,
        inputs: &[CASTING, DEMAND],
        example: &[("casting", "130 cm3"), ("demand", "4 to 5 %")],
        cautions: &[],
        work: |given| {
            let volume = thrice_the_shrinkage(given.get("casting"), given.number("demand"));
            given.doubt("in bare sand a feeder gives a seventh, so that this may run empty");
            Ok(vec![Answer::of("volume", volume).rounded_up()])
        },
    },
    Reckoner {
        name: "feeder-by-circle",
        question: "How thick a feeder by the circle that fits into the section?",
        law: &INSCRIBED_CIRCLE,
        inputs: &[
            Input::of::<Length>("inscribed", "d", "largest circle in the section"),
            Input::number("factor", "f", "factor").or("1.5 to 3", "plant-risering-notes"),
        ],
        example: &[("inscribed", "22 mm")],
        cautions: &[],
        work: |given| {
            let diameter = diameter_by_circle(given.get("inscribed"), given.number("factor"));
            Ok(vec![Answer::of("diameter", diameter).rounded_up()])
        },
    },
    Reckoner {
        name: "cylinder-modulus",
        question: "What is the modulus of a round feeder?",
        law: &CYLINDER_MODULUS,
        inputs: &[
            Input::of::<Length>("diameter", "D", "its diameter"),
            Input::of::<Length>("height", "H", "its height"),
            ENDS,
        ],
        example: &[("diameter", "40 mm"), ("height", "60 mm")],
        cautions: &[],
        work: |given| {
            let (diameter, height) = (given.get("diameter"), given.get("height"));
            let modulus = cylinder_modulus(diameter, height, ends(given));
            Ok(vec![Answer::of("modulus", modulus)])
        },
    },
    Reckoner {
        name: "feeder-by-modulus",
        question: "How thick must a feeder be to stay liquid longer than the section?",
        law: &DIAMETER_BY_MODULUS,
        inputs: &[
            Input::new(
                "section",
                "M",
                "modulus it feeds, or a plain body",
                Wanted::Body,
            ),
            Input::number("margin", "k", "how much more modulus the feeder has")
                .or("1.2", "feeder-article"),
            Input::number("height_over_diameter", "", "slimness").or("1", "common-practice"),
            ENDS,
        ],
        example: &[("section", "6.4 mm")],
        cautions: &[],
        work: |given| {
            let (margin, slimness) = (given.number("margin"), given.number("height_over_diameter"));
            let diameter = diameter_by_modulus(given.get("section"), margin, slimness, ends(given));
            Ok(vec![
                Answer::of("diameter", diameter).rounded_up(),
                Answer::of("height", diameter * slimness).rounded_up(),
            ])
        },
    },
    Reckoner {
        name: "feeder-by-volume",
        question: "How much metal must a feeder hold to give what the casting wants?",
        law: &VOLUME_RULE,
        inputs: &[
            Input::of::<Volume>("casting", "V_c", "casting it feeds"),
            Input::share(
                "demand",
                "β",
                "share of the volume lost from pouring to frozen",
            ),
            Input::share("usable", "ε", "share of a feeder that can flow out")
                .or("14 %", "campbell-castings"),
            SLIMNESS,
        ],
        example: &[("casting", "130 cm3"), ("demand", "4 to 5 %")],
        cautions: &[],
        work: |given| {
            let (demand, usable) = (given.number("demand"), given.number("usable"));
            let slimness = given.number("height_over_diameter");
            match feeder_volume(given.get("casting"), demand, usable) {
                Some(volume) => Ok(vec![
                    Answer::of("volume", volume).rounded_up(),
                    Answer::of("diameter", diameter_holding(volume, slimness)).rounded_up(),
                ]),
                None => given.refuse(
                    "demand",
                    "is as large as what a feeder can give",
                    "use an insulated feeder, which gives more",
                ),
            }
        },
    },
    Reckoner {
        name: "freezing-ratio",
        question: "Which of two sections freezes last, and how many times longer does it take?",
        law: &FREEZING_RATIO,
        inputs: &[
            Input::new(
                "feeder",
                "M_feeder",
                "modulus of the one, a feeder say, or a body",
                Wanted::Body,
            ),
            Input::new(
                "section",
                "M_section",
                "modulus of the other, or a body",
                Wanted::Body,
            ),
        ],
        example: &[
            ("feeder", "cylinder 60 x 60 mm"),
            ("section", "plate 20 mm"),
        ],
        cautions: &[],
        work: |given| {
            let ratio = freezing_ratio(given.get("feeder"), given.get("section"));
            if ratio < 1.0 {
                given.doubt("the feeder freezes first: it draws from the casting");
            } else if ratio < 1.2 {
                given.doubt("so near to each other that sand and ramming decide which is last");
            }
            let last = match ratio < 1.0 {
                true => "section",
                false => "feeder",
            };
            Ok(vec![
                Answer::number("ratio", ratio),
                Answer::words("freezes last", last),
            ])
        },
    },
];

fn ends(given: &Given<'_>) -> CoolingEnds {
    match given.words("cooling_ends") {
        "two" => CoolingEnds::Two,
        _ => CoolingEnds::One,
    }
}

fn curve(given: &Given<'_>) -> Result<&'static CaineConstants, Impossible> {
    match caine_of(given.words("curve")) {
        Some(constants) => Ok(constants),
        None => {
            let names = caine_metals().iter().map(|row| row.name.as_str());
            given.refuse(
                "curve",
                "is wanted",
                format!("one of {}", names.collect::<Vec<_>>().join(", ")),
            )
        }
    }
}

fn need_count(need: Need) -> f64 {
    match need {
        Need::None(_) => 0.0,
        Need::Small | Need::Full => 1.0,
    }
}

fn need_words(need: Need) -> &'static str {
    match need {
        Need::None(_) => "none",
        Need::Small => "a small one",
        Need::Full => "yes",
    }
}

fn need_reason(need: Need) -> &'static str {
    match need {
        Need::None(NoFeeder::Thin) => "thin enough to be fed by its gate; feed a boss on its own",
        Need::None(NoFeeder::FirmIron) => {
            "iron of this carbon swells while it freezes, as long as every mould is as firm"
        }
        Need::Small => {
            "for what the liquid iron contracts, behind a neck that shuts early; none if CE is \
             4.2 or more and a test shows the mould firm"
        }
        Need::Full => "it shrinks while it freezes: size it by modulus and by volume",
    }
}

fn feeder_answers(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let lining = linings()
        .iter()
        .find(|row| row.name == given.words("lining"));
    let Some(lining) = lining else {
        return given.refuse("lining", "is none of the table", "sand, or a sleeve");
    };
    let iron = given
        .alloy()
        .is_some_and(|alloy| alloy.family == Family::Iron);
    if iron && given.number("margin") == MARGIN {
        given.doubt(format!(
            "for iron k = {IRON_MARGIN} is enough: reckon feeder-needed first"
        ));
    }
    if lining.longer.low() < lining.longer.high() {
        given.doubt("a sleeve does what its maker measured: the low figure from memory is taken");
    }
    let (section, casting): (Length, Volume) = (given.get("section"), given.get("casting"));
    let surface = given.find::<Area>("surface");
    let sides = given.list::<Length>("box");
    let fed = Fed {
        section,
        volume: casting,
        whole: surface.map_or(section, |surface| casting / surface),
        inscribed: given.find("inscribed"),
        sides: <[Length; 3]>::try_from(sides).ok(),
        demand: given.number("demand"),
        margin: given.number("margin"),
        height_over_diameter: given.number("height_over_diameter"),
        ends: ends(given),
        usable: match given.has("usable") {
            true => given.number("usable"),
            false => lining.usable.low(),
        },
        longer: lining.longer.low(),
        caine: given.alloy().and_then(|alloy| caine_for_alloy(&alloy.name)),
    };
    match side_by_side(&fed) {
        Some(rules) => Ok(rule_answers(given, &fed, &rules)),
        None => given.refuse(
            "demand",
            "is as large as what such a feeder can give",
            "take an insulating sleeve, several feeders, or chills",
        ),
    }
}

/// Rules further than this from the one that governs are told to disagree.
const DISAGREES: f64 = 0.2;

fn rule_answers(given: &Given<'_>, fed: &Fed<'_>, rules: &SideBySide) -> Vec<Answer> {
    let height = rules.diameter * fed.height_over_diameter;
    let mut answers = vec![
        Answer::of("diameter", rules.diameter).rounded_up(),
        Answer::of("height", height).rounded_up(),
        Answer::words("governs", rules.governs.name()),
    ];
    for says in &rules.says {
        match says.diameter {
            Some(diameter) => answers.push(Answer::of(says.rule.name(), diameter)),
            None if says.rule == Rule::Caine => given.doubt(OTHER_METALS),
            None => {}
        }
    }
    let apart = rules.disagreeing(DISAGREES);
    let names: Vec<_> = apart.iter().map(|says| says.rule.name()).collect();
    if !names.is_empty() {
        answers.push(Answer::words("more than a fifth apart", names.join(", ")));
    }
    answers
}
