//! Fuel for a heat, and what the lining and the flue take of it.

mod cupola;

use measure::band::Band;
use measure::flow::MassRate;
use measure::heat::{Heat, HeatPerMass, Power, SpecificHeat, Temperature};
use measure::matter::Mass;
use metal::alloy::Family;
use metal::fuel::{
    BURNER_POWER, FLUE_SHARE, FUEL_MASS, FURNACE_BALANCE, Fuel, HEATING_TIME, OWN_EFFICIENCY,
    burner_power, flue_share, fuel_band, furnace_balance, heating_time, known, own_efficiency,
};
use metal::furnace::{Furnace, practice};
use metal::lining::{LINING_HEAT, NEXT_HEAT, lining_heat, next_heat};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::Input;
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// Said wherever fuel is burnt.
const FUME: &str = "Burn fuel outdoors or with the door open: carbon monoxide has no smell.";

/// What may be typed for a fuel, electricity with it.
const FUELS: &[&str] = &[
    "propane",
    "butane",
    "charcoal",
    "coke",
    "diesel",
    "waste-oil",
    "electricity",
];

const FURNACES: &[&str] = &["fuel-crucible", "electric-crucible", "induction", "cupola"];

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "fuel",
        question: "How much fuel does a heat take?",
        law: &FUEL_MASS,
        inputs: &[
            Input::metal(),
            Input::of::<Mass>("mass", "", "the charge, where the heat is not typed").optional(),
            Input::of::<Temperature>("to", "", "as it is to be poured").optional(),
            Input::of::<Temperature>("from", "", "as it is charged").or("20 C", "common-practice"),
            Input::of::<Heat>("heat", "H", "heat the metal takes up, where it is known").optional(),
            Input::choice("fuel", "what is burnt", FUELS),
            Input::of::<HeatPerMass>(
                "heating_value",
                "h",
                "lower heating value, else the table's",
            )
            .optional(),
            Input::choice("furnace", "the furnace", FURNACES)
                .or("fuel-crucible", "common-practice"),
            Input::share(
                "efficiency",
                "η",
                "share that reaches the metal, else the table's",
            )
            .optional()
            .narrowed_by("weigh the bottle before and after one heat: reckon own-efficiency"),
            Input::of::<Mass>("bottle", "", "a full bottle, a bag of charcoal").optional(),
        ],
        example: &[
            ("metal", "gunmetal"),
            ("mass", "20 lb"),
            ("to", "1150 C"),
            ("fuel", "propane"),
            ("bottle", "11 kg"),
        ],
        cautions: &[FUME],
        work: fuel,
    },
    Reckoner {
        name: "own-efficiency",
        question: "How much of the fuel's heat reaches the metal in my own furnace?",
        law: &OWN_EFFICIENCY,
        inputs: &[
            Input::of::<Heat>("heat", "H", "heat the metal took up: reckon heat-to-melt"),
            Input::of::<Mass>("burnt", "m_f", "fuel burnt, by weighing the bottle")
                .narrowed_by("weigh it on the same scale before and after"),
            Input::of::<HeatPerMass>("heating_value", "h", "lower heating value of the fuel"),
        ],
        example: &[
            ("heat", "6 MJ"),
            ("burnt", "1.1 kg ± 0.1 kg"),
            ("heating_value", "46.35 MJ/kg"),
        ],
        cautions: &[FUME],
        work: |given| {
            let burnt: Mass = given.get("burnt");
            let share = own_efficiency(given.get("heat"), burnt, given.get("heating_value"));
            if share > 1.0 {
                return given.refuse(
                    "heat",
                    "is more than the fuel holds",
                    "weigh the fuel again",
                );
            }
            Ok(vec![Answer::share("efficiency", share)])
        },
    },
    Reckoner {
        name: "burner-power",
        question: "How much heat does the burner give?",
        law: &BURNER_POWER,
        inputs: &[
            Input::of::<MassRate>("burnt", "q", "fuel burnt in an hour, by weighing"),
            Input::of::<HeatPerMass>("heating_value", "h", "lower heating value of the fuel"),
        ],
        example: &[("burnt", "1.8 kg/h"), ("heating_value", "46.35 MJ/kg")],
        cautions: &[FUME],
        work: |given| {
            let power = burner_power(given.get("burnt"), given.get("heating_value"));
            Ok(vec![Answer::of("power", power)])
        },
    },
    Reckoner {
        name: "melting-time",
        question: "How long does the melt take?",
        law: &HEATING_TIME,
        inputs: &[
            Input::of::<Heat>("fuel_heat", "H_f", "heat out of the fuel or the mains"),
            Input::of::<Power>("power", "P", "of the burner or the element")
                .narrowed_by("weigh the bottle over ten minutes: reckon burner-power"),
        ],
        example: &[("fuel_heat", "30 to 60 MJ"), ("power", "23 kW")],
        cautions: &[FUME],
        work: |given| {
            let time = heating_time(given.get("fuel_heat"), given.get("power"));
            Ok(vec![Answer::of("time", time).rounded_up()])
        },
    },
    Reckoner {
        name: "flue-loss",
        question: "How much of the fuel's heat goes up the flue?",
        law: &FLUE_SHARE,
        inputs: &[
            Input::choice("fuel", "what is burnt", &FUELS_BURNT),
            Input::of::<Temperature>(
                "gas",
                "T_g",
                "gas as it leaves the lid: about the furnace's",
            ),
            Input::of::<Temperature>("shop", "T_0", "the shop").or("20 C", "common-practice"),
            Input::share("excess", "e", "air blown beyond what burns")
                .or("0 to 30 %", "common-practice")
                .narrowed_by("a short green flame at the lid: little of either is left over"),
        ],
        example: &[("fuel", "propane"), ("gas", "1200 C")],
        cautions: &[FUME],
        work: flue_loss,
    },
    Reckoner {
        name: "lining-heat",
        question: "How much heat do lining and crucible drink on the first heat?",
        law: &LINING_HEAT,
        inputs: &[
            Input::of::<Mass>("mass", "m", "lining and crucible"),
            Input::of::<SpecificHeat>("specific_heat", "c", "of brick and clay")
                .or("900 to 1100 J/kgK, likely 1000 J/kgK", "common-practice"),
            Input::of::<Temperature>("fire", "T_f", "the hot face"),
            Input::of::<Temperature>("start", "T_0", "before lighting")
                .or("20 C", "common-practice"),
            Input::share("soaked", "s", "how far it is hot through")
                .or("30 to 100 %, likely 50 %", "common-practice")
                .narrowed_by("feel the shell: still cold is far below 50 %"),
        ],
        example: &[("mass", "36 kg"), ("fire", "1100 C")],
        cautions: &["Dry a new lining slowly before it sees fire: steam bursts it."],
        work: |given| {
            let (fire, start) = (given.get("fire"), given.get("start"));
            let (mass, heat, soaked) = (
                given.get("mass"),
                given.get("specific_heat"),
                given.number("soaked"),
            );
            if fire < start {
                return given.refuse("fire", "is colder than the start", "exchange the two");
            }
            Ok(vec![Answer::of(
                "heat",
                lining_heat(mass, heat, fire, start, soaked),
            )])
        },
    },
    Reckoner {
        name: "next-heat",
        question: "How much heat does the lining want on the next heat?",
        law: &NEXT_HEAT,
        inputs: &[
            Input::of::<Heat>(
                "lining",
                "H_l",
                "what it drank on the first: reckon lining-heat",
            ),
            Input::share(
                "kept",
                "k",
                "share of it still there when the next charge goes in",
            )
            .or("40 to 90 %, likely 65 %", "common-practice")
            .narrowed_by("charge again at once, lid shut; weigh the fuel of both heats"),
        ],
        example: &[("lining", "17 MJ")],
        cautions: &[],
        work: |given| {
            let heat = next_heat(given.get("lining"), given.number("kept"));
            Ok(vec![Answer::of("heat", heat)])
        },
    },
    Reckoner {
        name: "first-heat",
        question: "What must the fuel give for metal and lining together?",
        law: &FURNACE_BALANCE,
        inputs: &[
            Input::of::<Heat>("heat", "H", "heat the metal takes up"),
            Input::of::<Heat>(
                "lining",
                "H_l",
                "heat the lining drinks: reckon lining-heat",
            ),
            Input::share(
                "flue",
                "f",
                "share that leaves by the flue: reckon flue-loss",
            ),
            Input::share("kept", "", "share the lining keeps for the next heat")
                .or("40 to 90 %, likely 65 %", "common-practice"),
        ],
        example: &[
            ("heat", "5 MJ"),
            ("lining", "17 MJ"),
            ("flue", "45 to 60 %"),
        ],
        cautions: &[FUME],
        work: first_heat,
    },
    cupola::IRON,
    cupola::COKE,
    cupola::BED,
    cupola::AIR,
];

/// Fuels with a flue.
const FUELS_BURNT: [&str; 6] = [
    "propane",
    "butane",
    "charcoal",
    "coke",
    "diesel",
    "waste-oil",
];

fn fuel(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let heat = heat_wanted(given)?;
    let efficiency = efficiency(given)?;
    let Some(row) = Fuel::named(given.words("fuel")).and_then(known) else {
        let [low, likely, high] = ends(&heat.with(&efficiency, metal::melt::fuel_heat));
        return Ok(vec![
            Answer::of("electricity", likely)
                .between(low, high)
                .rounded_up(),
            Answer::of("for the metal alone", heat.likely()).between(heat.low(), heat.high()),
        ]);
    };
    let value = given
        .find::<HeatPerMass>("heating_value")
        .map_or(row.heating_value.band, Band::exact);
    let all = fuel_band(&heat, &efficiency, &value);
    let alone = fuel_band(&heat, &Band::exact(1.0), &value);
    let mut answers = vec![
        Answer::of("fuel", all.likely())
            .between(all.low(), all.high())
            .rounded_up(),
        Answer::of("for the metal alone", alone.likely()).between(alone.low(), alone.high()),
    ];
    if let Some(bottle) = given.find::<Mass>("bottle") {
        let share = all.map(|fuel| fuel / bottle);
        answers.push(
            Answer::number("bottles", share.likely())
                .from_to(share.low(), share.high())
                .rounded_up(),
        );
    }
    given.doubt(
        "a cold furnace takes the high end on its first heat; the next, charged at once, takes \
         less because the lining is hot: reckon first-heat",
    );
    Ok(answers)
}

/// The heat typed, or that of the charge in the alloy named.
fn heat_wanted(given: &Given<'_>) -> Result<Band<Heat>, Impossible> {
    if let Some(heat) = given.find::<Heat>("heat") {
        return Ok(Band::exact(heat));
    }
    let mass = given.find::<Mass>("mass");
    match (given.alloy(), mass, given.find::<Temperature>("to")) {
        (Some(alloy), Some(mass), Some(to)) => {
            let from = given.get("from");
            if to < from {
                return given.refuse("to", "is colder than from", "exchange the two");
            }
            let mass = Band::exact(mass);
            Ok(metal::melt::heat_band(alloy, &mass, from, &Band::exact(to)))
        }
        _ => given.refuse(
            "heat",
            "is not known",
            "type heat, or metal, mass and to together",
        ),
    }
}

/// The share typed, or that of the furnace for the metal where a source gives it.
fn efficiency(given: &Given<'_>) -> Result<Band<f64>, Impossible> {
    if given.has("efficiency") {
        let share = given.number("efficiency");
        return match share > 0.0 && share <= 1.0 {
            true => Ok(Band::exact(share)),
            false => given.refuse("efficiency", "is no share", "give it like 12 %"),
        };
    }
    let furnace = Furnace::named(given.words("furnace")).unwrap_or(Furnace::FuelCrucible);
    let of = |family| practice(furnace, family)?.efficiency.as_ref();
    let family = given
        .alloy()
        .map_or(Family::Aluminium, |alloy| alloy.family);
    if let Some(figure) = of(family) {
        return Ok(figure.band);
    }
    match of(Family::Aluminium).filter(|_| furnace == Furnace::FuelCrucible) {
        Some(figure) => {
            given.doubt("no source for this metal: the share is that of aluminium over gas");
            Ok(figure.band)
        }
        None => given.refuse(
            "efficiency",
            "has no source for this furnace and metal",
            "type it: reckon own-efficiency after one heat",
        ),
    }
}

fn flue_loss(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let Some(row) = Fuel::named(given.words("fuel")).and_then(known) else {
        return given.refuse("fuel", "is not in the table", "name another");
    };
    let (gas, shop): (Temperature, Temperature) = (given.get("gas"), given.get("shop"));
    let excess = given.number("excess");
    let (air, value) = (&row.air.band, &row.heating_value.band);
    let share = air.with(value, |air, value| {
        flue_share(air, excess, gas, shop, value)
    });
    if share.likely() >= 1.0 {
        return given.refuse(
            "excess",
            "cools the fire so far that nothing is left",
            "blow less air, or leave by a cooler flue",
        );
    }
    Ok(vec![
        Answer::share("flue", share.likely()).from_to(share.low(), share.high()),
    ])
}

fn first_heat(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let (metal, lining): (Heat, Heat) = (given.get("heat"), given.get("lining"));
    let flue = given.number("flue");
    if flue >= 1.0 {
        return given.refuse("flue", "leaves nothing", "give a share below 100 %");
    }
    let first = furnace_balance(metal, lining, flue);
    let next = furnace_balance(metal, next_heat(lining, given.number("kept")), flue);
    given.doubt("heat through the shell and out of the open lid comes on top");
    Ok(vec![
        Answer::of("first heat", first),
        Answer::of("next heat", next),
        Answer::share("efficiency of the first", metal / first),
        Answer::share("efficiency of the next", metal / next),
    ])
}

fn ends(band: &Band<Heat>) -> [Heat; 3] {
    [band.low(), band.likely(), band.high()]
}
