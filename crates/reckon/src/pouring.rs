//! How hot to pour.

mod spoon;

use measure::flow::Duration;
use measure::heat::{HeatDrawing, SpecificHeat, Temperature, TemperatureDifference};
use measure::length::{Area, Length, Volume};
use measure::matter::Mass;
use metal::alloy::Alloy;
use metal::crucible::{brim_volume, held};
use metal::order::{Mould, TURN_TEMPERATURE, order};
use metal::pouring_temperature::{POURING_BAND, SUPERHEAT, pouring_band, superheat};
use metal::superheat_path::{
    CARRY_DROP, Filled, LIFT_OUT, SOAK_DROP, before_carry, carry_drop, lift_out, soak_drop,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// Said wherever liquid metal is carried.
const PATH: &str = "Walk the way once with the crucible cold: nothing on the floor, nobody in it, \
                    dry sand under every step, one word that stops all.";

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "pouring-temperature",
        question: "How hot must the metal be when it is poured?",
        law: &POURING_BAND,
        inputs: &[
            Input::new("metal", "", "the alloy", Wanted::Metal),
            Input::new(
                "section",
                "",
                "modulus of the thinnest section, or a body",
                Wanted::Body,
            ),
        ],
        example: &[("metal", "gunmetal"), ("section", "plate 6 mm")],
        cautions: &[
            "Hotter than the band is more gas, more fume and rougher sand, not more safety.",
        ],
        work: |given| {
            let Some(alloy) = given.alloy() else {
                return given.refuse("metal", "is missing", "name the alloy");
            };
            let band = pouring_band(alloy, given.get("section"));
            Ok(vec![
                Answer::temperature("temperature", band.likely()).between(band.low(), band.high()),
            ])
        },
    },
    Reckoner {
        name: "carry-drop",
        question: "How much does the metal cool on the way to the mould?",
        law: &CARRY_DROP,
        inputs: &[
            Input::new("metal", "", "the alloy", Wanted::Metal),
            Input::number(
                "mark",
                "",
                "the number on the crucible: pounds of aluminium",
            )
            .optional(),
            Input::of::<Volume>("brim", "", "what it holds to the brim, without a mark").optional(),
            Input::share("fill", "", "how far it is filled").or("80 %", "common-practice"),
            HELD_MASS,
            Input::of::<Temperature>("from", "T", "as it is lifted out"),
            Input::of::<Temperature>("shop", "T_0", "the shop").or("20 C", "common-practice"),
            Input::of::<Duration>(
                "time",
                "t",
                "out of the furnace: skimming, walking, waiting",
            )
            .narrowed_by("walk it once with the crucible empty and cold, and time it"),
        ],
        example: &[
            ("metal", "gunmetal"),
            ("mark", "6"),
            ("from", "1200 C"),
            ("time", "60 s"),
        ],
        cautions: &[PATH],
        work: carried,
    },
    Reckoner {
        name: "soak-drop",
        question: "How much does the metal cool in a ladle, or in basin, sprue and runner?",
        law: &SOAK_DROP,
        inputs: &[
            Input::of::<Mass>("mass", "m", "metal that goes through"),
            Input::metal(),
            Input::of::<SpecificHeat>("liquid", "c", "specific heat of the liquid")
                .of_metal(Property::LiquidHeat),
            Input::of::<Temperature>("from", "T", "metal as it comes"),
            Input::of::<Temperature>("wall", "T_w", "lining or sand").or("20 C", "common-practice"),
            Input::of::<Area>("wetted", "A", "wall the metal wets"),
            Input::of::<HeatDrawing>("drawing", "b", "how hard the wall draws heat, √(k ρ c)").or(
                "900 to 1400 Ws^0.5/m2K, likely 1100 Ws^0.5/m2K",
                "common-practice",
            ),
            Input::of::<Duration>("time", "t", "from first to last metal"),
        ],
        example: &[
            ("mass", "4.2 kg"),
            ("metal", "gunmetal"),
            ("from", "1150 C"),
            ("wetted", "200 cm2"),
            ("time", "4 s"),
        ],
        cautions: &["A ladle is heated red and dry before metal goes in: steam throws it out."],
        work: |given| {
            let drop = soak_drop(
                given.get("mass"),
                given.get("liquid"),
                given.get("from"),
                given.get("wall"),
                given.get("wetted"),
                given.get("drawing"),
                given.get("time"),
            );
            Ok(vec![Answer::of("drop", drop).rounded_up()])
        },
    },
    Reckoner {
        name: "lift-out",
        question: "How hot must the metal be when I lift it out?",
        law: &LIFT_OUT,
        inputs: &[
            Input::new("metal", "", "the alloy", Wanted::Metal),
            Input::of::<Temperature>("pour", "T_pour", "wanted in the mould's mouth").optional(),
            Input::new(
                "section",
                "",
                "modulus of the thinnest section, or a body",
                Wanted::Body,
            )
            .optional(),
            Input::number(
                "mark",
                "",
                "the number on the crucible: pounds of aluminium",
            )
            .optional(),
            Input::of::<Volume>("brim", "", "what it holds to the brim, without a mark").optional(),
            Input::share("fill", "", "how far it is filled").or("80 %", "common-practice"),
            HELD_MASS,
            Input::of::<Duration>("time", "", "out of the furnace: skimming, walking, waiting")
                .narrowed_by("walk it once with the crucible empty and cold, and time it"),
            Input::of::<TemperatureDifference>("soak", "ΔT_soak", "lost in basin and sprue")
                .or("15 to 40 K", "common-practice")
                .narrowed_by("reckon soak-drop with your own sprue"),
            Input::of::<Temperature>("shop", "", "the shop").or("20 C", "common-practice"),
        ],
        example: &[
            ("metal", "gunmetal"),
            ("section", "plate 6 mm"),
            ("mark", "6"),
            ("time", "10 to 20 s"),
        ],
        cautions: &[PATH],
        work: lifted_out,
    },
    spoon::SPOON,
    Reckoner {
        name: "pour-order",
        question: "In which order do I pour my moulds, and is the last still hot enough?",
        law: &TURN_TEMPERATURE,
        inputs: &[
            Input::of::<Temperature>("first", "T_1", "metal at the first mould"),
            Input::of::<TemperatureDifference>("drop", "d", "from one mould to the next")
                .narrowed_by("reckon carry-drop for the seconds one mould takes"),
            Input::list::<Temperature>("needs", "", "coldest metal that fills each mould"),
            Input::list::<Length>("walls", "", "thinnest wall of each, in the same order")
                .optional(),
        ],
        example: &[
            ("first", "750 C"),
            ("drop", "8 to 15 K"),
            ("needs", "700 C, 670 C, 700 C, 690 C"),
            ("walls", "4 mm, 20 mm, 3 mm, 6 mm"),
        ],
        cautions: &[
            PATH,
            "The ingot mould stands hot and dry beside the last flask: what is left or too cold \
             goes there at once.",
        ],
        work: ordered,
    },
    Reckoner {
        name: "superheat",
        question: "How far above its liquidus is the metal poured?",
        law: &SUPERHEAT,
        inputs: &[
            Input::of::<Temperature>("pouring", "T_pour", "as it is poured"),
            Input::metal(),
            Input::of::<Temperature>("liquidus", "T_liquidus", "where the first metal freezes")
                .of_metal(Property::Liquidus),
        ],
        example: &[("pouring", "720 C"), ("metal", "A356")],
        cautions: &[],
        work: |given| {
            let (pouring, liquidus): (Temperature, Temperature) =
                (given.get("pouring"), given.get("liquidus"));
            if pouring < liquidus {
                given.doubt("below the liquidus: part of it is already frozen");
            }
            Ok(vec![Answer::of("superheat", superheat(pouring, liquidus))])
        },
    },
];

const HELD_MASS: Input =
    Input::of::<Mass>("metal_mass", "", "metal in it, in place of the filling").optional();

/// The metal as it stands in the crucible named, with low, likely and high glow.
fn crucible_of(given: &Given<'_>) -> Result<(&'static Alloy, [Filled; 3]), Impossible> {
    let Some(alloy) = given.alloy() else {
        return given.refuse("metal", "is missing", "name the alloy");
    };
    let marked = given.has("mark").then(|| brim_volume(given.number("mark")));
    let Some(brim) = marked.or_else(|| given.find("brim")) else {
        return given.refuse("mark", "is missing", "type the mark, or brim");
    };
    if let Some(metal) = given.find::<Mass>("metal_mass") {
        return match metal <= held(brim, 1.0, alloy.density_liquid.band.high()) {
            true => Ok((alloy, Filled::of(alloy, brim, metal))),
            false => given.refuse(
                "metal_mass",
                "is more than it holds",
                "take a larger crucible",
            ),
        };
    }
    let fill = given.number("fill");
    if !(fill > 0.05 && fill <= 1.0) {
        return given.refuse("fill", "is no filling", "give it like 80 %");
    }
    let metal = held(brim, fill, alloy.density_liquid.band.likely());
    Ok((alloy, Filled::of(alloy, brim, metal)))
}

fn carried(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let (alloy, pots) = crucible_of(given)?;
    let (from, shop): (Temperature, Temperature) = (given.get("from"), given.get("shop"));
    let time: Duration = given.get("time");
    if from < shop {
        return given.refuse("from", "is colder than the shop", "exchange the two");
    }
    let [low, likely, high] = pots.map(|pot| carry_drop(&pot, from, shop, time));
    if from - high < alloy.liquidus.band.likely() {
        given.doubt("may begin to freeze on the way: walk faster, or take a larger crucible");
    }
    Ok(vec![
        Answer::of("drop", likely).between(low, high).rounded_up(),
        Answer::temperature("left", from - likely).between(from - high, from - low),
    ])
}

fn lifted_out(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let (alloy, pots) = crucible_of(given)?;
    let (wanted, least) = pouring_wanted(given, alloy)?;
    let soak: TemperatureDifference = given.get("soak");
    let (shop, time): (Temperature, Duration) = (given.get("shop"), given.get("time"));
    let at_mould = wanted + soak;
    let carried = pots.map(|pot| before_carry(&pot, at_mould, shop, time) - at_mould);
    let [low, likely, high] = carried.map(|carry| lift_out(wanted, carry, soak));
    let top = alloy.pouring_light.band.high() + TemperatureDifference::from_kelvin(100.0);
    if likely > top {
        given.doubt(
            "more than 100 K over the hottest pour of the table: burnt metal, gas and fume; \
             bring the moulds nearer or take a larger crucible",
        );
    }
    Ok(vec![
        Answer::temperature("lift out", likely)
            .between(low, high)
            .rounded_up(),
        Answer::of("lost on the way", carried[1])
            .between(carried[0], carried[2])
            .rounded_up(),
        Answer::temperature("turn back below", least + soak).rounded_up(),
    ])
}

/// What is wanted in the mould's mouth, and the least that still fills it.
fn pouring_wanted(
    given: &Given<'_>,
    alloy: &'static Alloy,
) -> Result<(Temperature, Temperature), Impossible> {
    let liquidus = alloy.liquidus.band.likely();
    if let Some(pour) = given.find::<Temperature>("pour") {
        if pour <= liquidus {
            return given.refuse("pour", "is below the liquidus", "pour hotter");
        }
        let least = alloy.pouring_heavy.band.low();
        return Ok((pour, if least < pour { least } else { pour }));
    }
    match given.find::<Length>("section") {
        Some(modulus) => {
            let band = pouring_band(alloy, modulus);
            Ok((band.likely(), band.low()))
        }
        None => given.refuse("pour", "is missing", "type pour, or the section"),
    }
}

fn ordered(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let (needs, walls) = (
        given.list::<Temperature>("needs"),
        given.list::<Length>("walls"),
    );
    if given.has("walls") && walls.len() != needs.len() {
        let why = format!("has {} walls for {} moulds", walls.len(), needs.len());
        return given.refuse("walls", why, "give one wall for each mould");
    }
    let mould = |at: usize| Mould {
        name: (at + 1).to_string(),
        needs: needs[at],
        wall: walls.get(at).copied().unwrap_or(Length::ZERO),
    };
    let moulds: Vec<_> = (0..needs.len()).map(mould).collect();
    let poured = order(&moulds, given.get("first"), given.get("drop"));
    let Some(last) = poured.turns.last() else {
        return given.refuse(
            "first",
            "is too cold for every mould",
            "heat the metal first",
        );
    };
    if !poured.next_heat.is_empty() {
        given.doubt("not every mould is poured from this heat: see next heat");
    }
    let turns = poured.turns.iter().map(|turn| turn.mould);
    Ok(vec![
        Answer::temperature("last mould at", last.at),
        Answer::of("to spare there", last.spare).rounded_down(),
        Answer::words("order", names(&moulds, turns)),
        Answer::words(
            "next heat",
            names(&moulds, poured.next_heat.iter().copied()),
        ),
    ])
}

fn names(moulds: &[Mould], of: impl Iterator<Item = usize>) -> String {
    let names: Vec<_> = of.map(|at| moulds[at].name.as_str()).collect();
    match names.is_empty() {
        true => "none".to_owned(),
        false => names.join(", "),
    }
}
