//! Gas from hot sand, and its way out.

use measure::flow::{Duration, Flow};
use measure::heat::Temperature;
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Pressure};
use mould::gas::{GAS_RATE, SAND_GAS, gas_rate, sand_gas};
use mould::keeping::{Bond, KEEPING, Keeps, keeping};
use mould::lift::CORE_SAND;
use mould::venting::{
    CORE_GAS, MOULD_GAS, SEEPAGE, SMOKE, STEAM_BACK, SandPath, VENT_PIPE, Vent, WetFace, core_gas,
    mould_gas, seepage, steam_back, vent_pipe, vents_wanted,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const PERMEABILITY: Input = Input::number("permeability", "P", "permeability number of the sand")
    .narrowed_by("time a bottle of water through a plug: reckon permeability");

const SAND: Input = Input::of::<Density>("sand_density", "ρ", "rammed sand")
    .or("1.5 to 1.7 g/cm3", "common-practice");

const STEAM_FRONT: Input = Input::number(
    "front",
    "κ",
    "depth of the front in mm after the first second: 1.0 to 1.6 for steam, 0.4 to 0.8 for binder",
)
.or("1.0 to 1.6, likely 1.3", "sand-front-sum");

const BINDER_LITRES: Input = Input::number(
    "binder_litres",
    "v_b",
    "gas of a kilogram of binder, litres at 20 °C",
)
.or("300 to 1000, likely 600", "binder-gas-memory");

const PASSING: Input = Input::of::<Flow>("flow", "Q", "gas that has to pass");

const STEAM: &str = "Wet sand under metal turns to steam and throws it back: test the moisture \
                     first. Core smoke burns and poisons: light the vents, keep the door open.";

/// Pencil grade, as every answer here has to say.
const FACTOR_TWO: &str = "pencil grade: good to a factor of two, better for comparing two moulds";

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "sand-gas",
        question: "How much gas does a kilogram of this sand give off?",
        law: &SAND_GAS,
        inputs: &[
            Input::share("water", "w", "water in the sand, of its mass"),
            Input::share("binder", "b", "organic binder that burns, of its mass")
                .or("0 %", "common-practice"),
            BINDER_LITRES,
            Input::of::<Temperature>("temperature", "T", "of the gas").or("100 C", "iso-80000-5"),
        ],
        example: &[("water", "4 %"), ("binder", "1.5 %")],
        cautions: &[STEAM],
        work: |given| {
            let litres = sand_gas(
                given.number("water"),
                given.number("binder"),
                given.number("binder_litres"),
                given.get("temperature"),
            );
            Ok(vec![Answer::number("litres a kg", litres)])
        },
    },
    Reckoner {
        name: "gas-rate",
        question: "How fast does a heated face of sand give off gas?",
        law: &GAS_RATE,
        inputs: &[
            Input::of::<Area>("face", "A", "sand that metal covers"),
            SAND,
            Input::number("gas", "v", "litres from each kilogram: reckon sand-gas"),
            STEAM_FRONT,
            Input::of::<Duration>("time", "t", "from covering to a frozen skin"),
        ],
        example: &[("face", "120 cm2"), ("gas", "68"), ("time", "4 s")],
        cautions: &[],
        work: |given| {
            let rate = gas_rate(
                given.get("face"),
                given.get("sand_density"),
                given.number("gas"),
                given.number("front"),
                given.get("time"),
            );
            given.doubt("mean over the time: at the first touch it is several times that");
            Ok(vec![Answer::of("gas", rate).rounded_up()])
        },
    },
    Reckoner {
        name: "seepage",
        question: "What pressure drives gas through sand?",
        law: &SEEPAGE,
        inputs: &[
            PASSING,
            PERMEABILITY,
            Input::of::<Area>("area", "a", "across the way of the gas"),
            Input::of::<Length>("way", "s", "through the sand"),
        ],
        example: &[
            ("flow", "0.5 l/s"),
            ("permeability", "80"),
            ("area", "120 cm2"),
            ("way", "50 mm"),
        ],
        cautions: &[],
        work: |given| {
            let path = path(given, "area", "way")?;
            let pressure = seepage(given.get("flow"), &path);
            given.doubt(FACTOR_TWO);
            Ok(vec![Answer::of("pressure", pressure).rounded_up()])
        },
    },
    Reckoner {
        name: "vent-pipe",
        question: "What pressure drives gas through vents?",
        law: &VENT_PIPE,
        inputs: &[
            PASSING,
            Input::of::<Length>("diameter", "d", "of one vent"),
            Input::of::<Length>("length", "l", "of one vent"),
            Input::number("vents", "n", "how many").or("1", "common-practice"),
        ],
        example: &[
            ("flow", "0.5 l/s"),
            ("diameter", "6 mm"),
            ("length", "80 mm"),
        ],
        cautions: &[],
        work: |given| {
            let vent = Vent {
                diameter: given.get("diameter"),
                length: given.get("length"),
            };
            let pressure = vent_pipe(given.get("flow"), &vent, given.number("vents"));
            Ok(vec![Answer::of("pressure", pressure).rounded_up()])
        },
    },
    Reckoner {
        name: "core-gas",
        question: "Does a core blow, or does its vent carry the gas?",
        law: &CORE_GAS,
        inputs: &[
            Input::of::<Area>("face", "", "face of the core that metal covers"),
            Input::share(
                "binder",
                "",
                "organic binder that burns, of the core's mass",
            ),
            Input::share("water", "", "damp left in the core").or("0.2 to 1 %", "common-practice"),
            Input::number(
                "binder_litres",
                "",
                "gas of a kilogram of binder, litres at 20 °C",
            )
            .or("300 to 1000, likely 600", "binder-gas-memory")
            .narrowed_by("ask the maker of the binder"),
            Input::number(
                "front",
                "",
                "depth of the burning in mm after the first second",
            )
            .or("0.4 to 0.8, likely 0.6", "sand-front-sum"),
            Input::of::<Duration>("time", "", "from covering to a frozen skin"),
            PERMEABILITY,
            Input::of::<Area>("print", "a", "print through which gas leaves"),
            Input::of::<Length>("way", "s", "from the middle of the core to the open"),
            Input::of::<Length>("thickness", "D", "of the core"),
            Input::of::<Length>("hole", "d", "diameter of the vent, none where it is closed")
                .optional(),
            Input::of::<Length>("hole_length", "l", "length of the vent").optional(),
            Input::of::<Length>("head", "", "of metal over the top of the core").optional(),
            Input::metal(),
            Input::of::<Density>("liquid_density", "", "density of the liquid metal")
                .of_metal(Property::LiquidDensity),
        ],
        example: &[
            ("face", "380 cm2"),
            ("binder", "2 %"),
            ("time", "4 s"),
            ("permeability", "100"),
            ("print", "28 cm2"),
            ("way", "50 mm"),
            ("thickness", "88 mm"),
            ("hole", "10 mm"),
            ("hole_length", "90 mm"),
            ("head", "76 mm"),
            ("metal", "silicon bronze"),
        ],
        cautions: &[STEAM],
        work: core_blows,
    },
    Reckoner {
        name: "steam-back",
        question: "How hard does steam press at the face of a green mould?",
        law: &STEAM_BACK,
        inputs: &[
            Input::of::<Flow>("flow", "Q", "steam: reckon gas-rate"),
            PERMEABILITY,
            Input::of::<Area>("face", "A", "sand that metal covers"),
            Input::of::<Length>("dried", "x", "depth dried so far"),
            Input::share("water", "w", "water in the sand, of its mass"),
        ],
        example: &[
            ("flow", "0.8 l/s"),
            ("permeability", "60"),
            ("face", "120 cm2"),
            ("dried", "2.6 mm"),
            ("water", "4 %"),
        ],
        cautions: &[STEAM],
        work: |given| {
            let pressure = steam_back(
                given.get("flow"),
                given.number("permeability"),
                given.get("face"),
                given.get("dried"),
                given.number("water"),
            );
            given.doubt(FACTOR_TWO);
            Ok(vec![Answer::of("pressure", pressure).rounded_up()])
        },
    },
    Reckoner {
        name: "mould-vents",
        question: "How many vents does this mould want, and how deep?",
        law: &MOULD_GAS,
        inputs: &[
            Input::of::<Area>("face", "A", "cope sand over the cavity"),
            Input::of::<Length>("sand", "L", "thickness of that sand"),
            Input::of::<Volume>("cavity", "", "air that the metal drives out"),
            Input::of::<Duration>("time", "", "in which the mould fills"),
            Input::share("water", "", "water in the sand, of its mass"),
            Input::share("binder", "", "organic binder that burns, of its mass")
                .or("0 %", "common-practice"),
            PERMEABILITY,
            Input::of::<Length>("head", "", "of metal over that face"),
            Input::metal(),
            Input::of::<Density>("liquid_density", "", "density of the liquid metal")
                .of_metal(Property::LiquidDensity),
            Input::of::<Length>("wire", "d", "vent wire").or("2 mm", "venting-memory"),
            Input::of::<Length>("short", "s", "where the wire stops, before the pattern")
                .or("12 mm", "venting-memory"),
            Input::number("margin", "", "how far the metal is to outweigh the gas")
                .or("2", "common-practice"),
            Input::number("vents", "n", "how many there are, to judge these").optional(),
        ],
        example: &[
            ("face", "117.5 cm2"),
            ("sand", "60 mm"),
            ("cavity", "280 cm3"),
            ("time", "4 s"),
            ("water", "4.1 %"),
            ("permeability", "60"),
            ("head", "80 mm"),
            ("metal", "gunmetal"),
        ],
        cautions: &[STEAM],
        work: mould_breathes,
    },
    Reckoner {
        name: "keeping",
        question: "Can I keep the mould or core till tomorrow?",
        law: &KEEPING,
        inputs: &[
            Input::choice(
                "bond",
                "what binds it",
                &["green", "sugar", "oil", "silicate"],
            ),
            Input::of::<Duration>("stood", "t", "how long it will have stood"),
            Input::share("humidity", "RH", "of the air where it stands"),
            Input::choice(
                "set",
                "where the core is",
                &["in the open", "in a closed green mould"],
            )
            .or("in the open", "common-practice"),
        ],
        example: &[
            ("bond", "sugar"),
            ("stood", "12 h"),
            ("humidity", "80 %"),
            ("set", "in a closed green mould"),
        ],
        cautions: &[
            "A core or skin that has drunk water blows: dry it again, or pour another day.",
        ],
        work: keeps,
    },
];

fn path(given: &Given<'_>, area: &str, way: &str) -> Result<SandPath, Impossible> {
    let path = SandPath {
        permeability: given.number("permeability"),
        area: given.get(area),
        way: given.get(way),
    };
    if path.permeability <= 0.0 {
        let advice = "time a bottle of water through a plug: reckon permeability";
        return given.refuse("permeability", "nought lets nothing through", advice);
    }
    Ok(path)
}

fn core_blows(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let litres = sand_gas(
        given.number("water"),
        given.number("binder"),
        given.number("binder_litres"),
        SMOKE,
    );
    let rate = gas_rate(
        given.get("face"),
        CORE_SAND,
        litres,
        given.number("front"),
        given.get("time"),
    );
    let print = path(given, "print", "way")?;
    let hole = match (given.find("hole"), given.find("hole_length")) {
        (Some(diameter), Some(length)) => Some(Vent { diameter, length }),
        (Some(_), None) => {
            return given.refuse("hole_length", "is not known", "say how deep the vent goes");
        }
        (None, _) => None,
    };
    let thickness: Length = given.get("thickness");
    if hole.is_some_and(|hole| hole.diameter * 2.0 > thickness) {
        return given.refuse(
            "hole",
            "takes more than half of the core",
            "give the diameter of the vent, not of the core",
        );
    }
    let pressure = core_gas(rate, &print, thickness, hole.as_ref());
    given.doubt(FACTOR_TWO);
    let mut answers = vec![
        Answer::of("gas pressure", pressure)
            .times(0.5, 2.0)
            .rounded_up(),
        Answer::of("gas", rate).rounded_up(),
    ];
    if let Some(head) = given.find::<Length>("head") {
        let metal = Pressure::under(given.get("liquid_density"), head);
        answers.extend(blow(pressure, metal));
    }
    Ok(answers)
}

/// Metal against gas.
fn blow(gas: Pressure, metal: Pressure) -> [Answer; 3] {
    let verdict = match metal > gas {
        true => "no blow: the metal outweighs the gas",
        false => "blows: the gas outweighs the metal",
    };
    [
        Answer::words("verdict", verdict),
        Answer::of("metal pressure", metal).rounded_down(),
        Answer::number("metal over gas", metal / gas),
    ]
}

fn mould_breathes(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let sand = path(given, "face", "sand")?;
    let (short, wire): (Length, Length) = (given.get("short"), given.get("wire"));
    if short >= sand.way {
        let advice = "a wire that stops before the pattern needs thicker sand; vent by the feeders";
        return given.refuse("sand", "is no thicker than where the wire stops", advice);
    }
    let face = WetFace {
        area: sand.area,
        time: given.get("time"),
        water: given.number("water"),
        binder: given.number("binder"),
        permeability: sand.permeability,
    };
    let air = face.air_and_smoke(given.get("cavity"));
    let steam = face.steam();
    let metal = Pressure::under(given.get("liquid_density"), given.get("head"));
    let borne = metal / given.number("margin");
    let dry = |vents: f64| mould_gas(air, &sand, short, wire, vents);
    given.doubt(FACTOR_TWO);
    if given.has("vents") {
        let there = given.number("vents");
        let gas = dry(there) + steam;
        let mut answers = vec![Answer::of("gas pressure", gas).times(0.5, 2.0).rounded_up()];
        answers.extend(blow(gas, metal));
        return Ok(answers);
    }
    match vents_wanted(air, &sand, short, wire, borne - steam) {
        Some(vents) => Ok(vec![
            Answer::number("vents", vents),
            Answer::words("verdict", advice(vents)),
            Answer::of("gas pressure with them", dry(vents) + steam)
                .times(0.5, 2.0)
                .rounded_up(),
            Answer::of("gas pressure without", dry(0.0) + steam)
                .times(0.5, 2.0)
                .rounded_up(),
            Answer::of("metal pressure", metal).rounded_down(),
        ]),
        None => given.refuse(
            "vents",
            "no number of wire vents lets that gas out",
            "dry the sand, open it with coarser, fill slower, or leave open feeders on the top",
        ),
    }
}

fn advice(vents: f64) -> &'static str {
    match vents > 0.0 {
        true => "even over the casting, more over bosses and the far end; stop short as given",
        false => "none needed: the sand is open enough",
    }
}

fn keeps(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let humidity = given.number("humidity");
    if !(0.0..=1.0).contains(&humidity) {
        let why = "air holds no more than 100 %";
        return given.refuse("humidity", why, "read it off a hygrometer in the shed");
    }
    let typed = given.words("bond");
    let bond = Bond::WORDS.iter().find(|(word, _)| *word == typed);
    let Some((_, bond)) = bond else {
        return given.refuse("bond", "is not known", "green, sugar, oil or silicate");
    };
    let closed = given.words("set") == "in a closed green mould";
    let kept = keeping(*bond, given.get("stood"), humidity, closed);
    let advice = bond.life().map_or("", |life| life.advice.as_str());
    let left = match kept {
        Keeps::Still(left) => left,
        _ => Duration::ZERO,
    };
    let verdict = match kept {
        Keeps::Still(_) => "yes".to_owned(),
        Keeps::TooLong => format!("too long: {advice}"),
        Keeps::TooDamp => format!("too damp: {advice}"),
        Keeps::InGreenMould => format!("it drinks from the green sand: set it late, or {advice}"),
    };
    given.doubt("weather and sand differ: shelf lives are words, hours, a day, weeks");
    Ok(vec![
        Answer::words("verdict", verdict),
        Answer::of("left", left).rounded_down(),
    ])
}
