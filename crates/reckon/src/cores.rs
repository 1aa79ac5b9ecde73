//! How a core sits, bears and bends.

use measure::heat::Temperature;
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Force, Mass, Pressure};
use mould::chaplet::{
    CHAPLET_METAL, CHAPLETS, Pin, chaplet_metal, chaplets, in_one_plane, least_pins,
};
use mould::core_print::{
    BOOK_BEARING, LONGEST_BY_RULE, PRINT_AREA, PRINT_LENGTH, PRINT_PRESSURE, book_bearing,
    length_by_rule, print_area, print_length, print_pressure,
};
use mould::core_rod::{
    BAR_STRENGTH, Bar, CORE_BENDING, CORE_ROD, Ends, bar_strength, core_bending, core_rod, yield_at,
};
use mould::core_seat::{
    BRIDGED_CORE, Drowned, HUNG_CORE, STANDING_CORE, bridged_core, displaced, float, hung_core,
    sealed_core, standing_core,
};
use mould::gating::sprue::diameter_of;

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Property};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const LIQUID: Input = Input::of::<Density>("liquid_density", "ρ", "density of the liquid metal")
    .of_metal(Property::LiquidDensity);

const DROWNED: Input = Input::of::<Volume>("core", "V", "the core as far as metal surrounds it");

const CORE_MASS: Input = Input::of::<Mass>("mass", "m", "the whole core with its prints")
    .narrowed_by("put the dried core on the scale");

const MARGIN: Input = Input::number("margin", "k", "how many times stronger the sand is to be")
    .or("2 to 3", "common-practice");

const STRENGTH: Input =
    Input::of::<Pressure>("strength", "σ", "green compression strength of this sand")
        .narrowed_by("press three rammed plugs on the bathroom scale");

const BOLD: &str = "A core that comes loose lets metal up through the mould: hold it by more than \
                    its print, and keep your face away from the feeders.";

/// Surrounded, and with its prints.
fn drowned(given: &Given<'_>) -> Drowned {
    let core = Drowned {
        volume: given.get("core"),
        mass: given.get("mass"),
        liquid: given.get("liquid_density"),
    };
    if core.mass > core.liquid * core.volume {
        given.doubt("the core is heavier than the metal it displaces: it does not float");
    }
    core
}

/// The two floats that belong beside every answer on a core.
fn floats(core: &Drowned) -> [Answer; 2] {
    [
        Answer::of("net float", float(core)).rounded_up(),
        Answer::of("displaced", displaced(core)).rounded_up(),
    ]
}

/// Area of the mouth, from a diameter or as it is.
fn mouth(given: &Given<'_>) -> Result<Area, Impossible> {
    let round = |across: Length| across * across * std::f64::consts::FRAC_PI_4;
    let of_diameter = given.find::<Length>("print").map(round);
    match given.find::<Area>("mouth").or(of_diameter) {
        Some(area) if area > Area::ZERO => Ok(area),
        Some(_) => given.refuse("print", "is nought", "measure across the print"),
        None => given.refuse(
            "print",
            "is not known",
            "give its diameter, or mouth= its area",
        ),
    }
}

const PRINT: Input = Input::of::<Length>("print", "", "diameter of the print").optional();

const MOUTH: Input =
    Input::of::<Area>("mouth", "A", "mouth of the print, where not round").optional();

fn ends(given: &Given<'_>) -> Ends {
    match given.words("ends") {
        "one" => Ends::One,
        _ => Ends::Both,
    }
}

fn bar(given: &Given<'_>) -> Bar {
    let bar = Bar {
        diameter: given.get("diameter"),
        span: given.get("length"),
        ends: ends(given),
        liquid: given.get("liquid_density"),
        core: given.get("core_density"),
    };
    if bar.is_slender() {
        given.doubt("slender: wire it whatever the sum says, it has to live through the setting");
    }
    bar
}

const CORE_DENSITY: Input = Input::of::<Density>("core_density", "ρ_core", "core sand, dry")
    .or("1.6 g/cm3", "common-practice");

const ENDS: Input = Input::choice("ends", "prints that hold it: both or one", &["both", "one"])
    .or("both", "common-practice");

const ACROSS: Input = Input::of::<Length>("diameter", "D", "thickness of the round core");

const LONG: Input = Input::of::<Length>("length", "L", "between the prints, or to the free end");

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "hung-core",
        question: "How hard does the metal push a core that hangs from the cope?",
        law: &HUNG_CORE,
        inputs: &[
            DROWNED,
            CORE_MASS,
            PRINT,
            MOUTH,
            Input::of::<Length>(
                "head",
                "h",
                "from the mouth of the print up to the basin's level",
            ),
            Input::metal(),
            LIQUID,
        ],
        example: &[
            ("core", "668 cm3"),
            ("mass", "1.07 kg"),
            ("print", "60 mm"),
            ("head", "76 mm"),
            ("metal", "silicon bronze"),
        ],
        cautions: &[BOLD],
        work: |given| {
            let core = drowned(given);
            let area = mouth(given)?;
            let force = hung_core(&core, area, given.get("head"));
            let mut answers = vec![
                Answer::of("force on the cope", force).rounded_up(),
                Answer::of("print pressure", print_pressure(force, area)).rounded_up(),
            ];
            answers.extend(floats(&core));
            Ok(answers)
        },
    },
    Reckoner {
        name: "standing-core",
        question: "How hard does a core on a base print float up?",
        law: &STANDING_CORE,
        inputs: &[
            DROWNED,
            CORE_MASS,
            PRINT,
            MOUTH,
            Input::of::<Length>("depth", "p", "depth of the print"),
            Input::of::<Length>(
                "head",
                "h",
                "from the mouth of the print up to the basin's level",
            ),
            Input::metal(),
            LIQUID,
        ],
        example: &[
            ("core", "668 cm3"),
            ("mass", "1.07 kg"),
            ("print", "60 mm"),
            ("depth", "0 mm"),
            ("head", "164 mm"),
            ("metal", "silicon bronze"),
        ],
        cautions: &[BOLD],
        work: |given| {
            let core = drowned(given);
            let area = mouth(given)?;
            let under = standing_core(&core, area, given.get("depth"));
            let sealed = sealed_core(&core, area, given.get("head"));
            let up = sealed.max(Force::ZERO);
            let down = (sealed * -1.0).max(Force::ZERO);
            if sealed < Force::ZERO {
                given.doubt("pressed down while the print seals, and lifted once it does not");
            }
            let lift = under.max(up);
            let mut answers = vec![
                Answer::of("lift with metal under the print", lift).rounded_up(),
                Answer::of("lift while the print seals", up).rounded_up(),
                Answer::of("press on the print while it seals", down).rounded_up(),
                Answer::of("print pressure", print_pressure(lift.max(down), area)).rounded_up(),
            ];
            answers.extend(floats(&core));
            Ok(answers)
        },
    },
    Reckoner {
        name: "bridged-core",
        question: "How hard does each print of a core across the cavity bear?",
        law: &BRIDGED_CORE,
        inputs: &[
            DROWNED,
            CORE_MASS,
            Input::number("prints", "n", "prints that share it").or("2", "common-practice"),
            Input::metal(),
            LIQUID,
        ],
        example: &[
            ("core", "210 cm3"),
            ("mass", "400 g"),
            ("metal", "Al-Si7-Mg"),
        ],
        cautions: &[BOLD],
        work: |given| {
            let core = drowned(given);
            let force = bridged_core(&core, given.number("prints"));
            given.doubt("prints at unlike distances: the nearer one carries more");
            let mut answers = vec![Answer::of("force on each print", force).rounded_up()];
            answers.extend(floats(&core));
            Ok(answers)
        },
    },
    Reckoner {
        name: "print-pressure",
        question: "How hard does a core print press on the sand?",
        law: &PRINT_PRESSURE,
        inputs: &[
            Input::of::<Force>("force", "F", "force of the core on this print"),
            PRINT,
            MOUTH,
            Input::of::<Pressure>("strength", "", "green compression strength of this sand")
                .optional(),
        ],
        example: &[
            ("force", "4.1 to 5.1 kgf"),
            ("print", "60 mm"),
            ("strength", "50 kPa"),
        ],
        cautions: &[],
        work: |given| {
            let pressure = print_pressure(given.get("force"), mouth(given)?);
            let mut answers = vec![Answer::of("pressure", pressure).rounded_up()];
            if let Some(strength) = given.find::<Pressure>("strength") {
                answers.push(Answer::number("times stronger", strength / pressure));
                if pressure * 2.0 > strength {
                    given.doubt("the sand is not twice as strong as that: enlarge the print");
                }
            }
            Ok(answers)
        },
    },
    Reckoner {
        name: "print-area",
        question: "How large must a core print be, for this sand?",
        law: &PRINT_AREA,
        inputs: &[
            Input::of::<Force>("force", "F", "force of the core on this print"),
            STRENGTH,
            MARGIN,
        ],
        example: &[("force", "5.1 kgf"), ("strength", "50 kPa")],
        cautions: &[],
        work: |given| {
            let area = print_area(
                given.get("force"),
                given.get("strength"),
                given.number("margin"),
            );
            Ok(vec![
                Answer::of("area", area).rounded_up(),
                Answer::of("diameter", diameter_of(area)).rounded_up(),
            ])
        },
    },
    Reckoner {
        name: "print-length",
        question: "How long must the prints of a lying core be?",
        law: &PRINT_LENGTH,
        inputs: &[
            Input::of::<Force>("force", "F", "float of the core"),
            STRENGTH,
            MARGIN,
            Input::of::<Length>("diameter", "d", "thickness of the round print"),
            Input::number("prints", "n", "prints that share it").or("2", "common-practice"),
        ],
        example: &[
            ("force", "20 N"),
            ("strength", "50 kPa"),
            ("diameter", "30 mm"),
        ],
        cautions: &[],
        work: |given| {
            let diameter: Length = given.get("diameter");
            let by_sand = print_length(
                given.get("force"),
                given.get("strength"),
                given.number("margin"),
                diameter,
                given.number("prints"),
            );
            let by_rule = length_by_rule(diameter);
            if diameter > LONGEST_BY_RULE {
                given.doubt("the rule of thumb was given to 3 in");
            }
            Ok(vec![
                Answer::of("length", by_sand.max(by_rule)).rounded_up(),
                Answer::of("by this sand", by_sand).rounded_up(),
                Answer::of("by rule of thumb", by_rule),
            ])
        },
    },
    Reckoner {
        name: "print-bearing-by-book",
        question: "What do text-books let a core print bear?",
        law: &BOOK_BEARING,
        inputs: &[Input::of::<Area>("area", "A", "face of the print")],
        example: &[("area", "28.3 cm2")],
        cautions: &[],
        work: |given| {
            given.doubt(
                "350 N a cm² is 3.5 MPa; green sand bears some fiftieth of it: the unit is \
                 doubtful, go by your own strength test with print-area",
            );
            Ok(vec![Answer::of(
                "force as printed",
                book_bearing(given.get("area")),
            )])
        },
    },
    Reckoner {
        name: "chaplets",
        question: "How many chaplets or pins does a core want?",
        law: &CHAPLETS,
        inputs: &[
            Input::of::<Force>("force", "F", "float of the core that no print holds"),
            STRENGTH,
            MARGIN,
            Input::of::<Area>("foot", "a", "foot of one chaplet on the sand"),
            Input::number("prints", "", "prints that hold it").or("0", "common-practice"),
            Input::list::<Length>("feet", "", "x, y, z of each pin in the mould, one by one")
                .optional(),
            Input::list::<Length>("heads", "", "x, y, z of each pin in the core, one by one")
                .optional(),
        ],
        example: &[
            ("force", "4.1 kgf"),
            ("strength", "50 kPa"),
            ("foot", "4 cm2"),
        ],
        cautions: &["Chaplets dry, warm and free of rust: a damp one blows."],
        work: |given| {
            let prints = given.number("prints").round() as u32;
            let wanted = chaplets(
                given.get("force"),
                given.get("strength"),
                given.number("margin"),
                given.get("foot"),
                prints,
            );
            if prints == 0 {
                given.doubt("three or more, not all in one plane: on two the core turns");
            }
            let mut answers = vec![
                Answer::number("chaplets", wanted),
                Answer::number("whatever the force", least_pins(prints)),
            ];
            if given.has("feet") || given.has("heads") {
                answers.push(Answer::words("as placed", placed(given, prints)?));
            }
            Ok(answers)
        },
    },
    Reckoner {
        name: "chaplet-metal",
        question: "How much chaplet metal do text-books want?",
        law: &CHAPLET_METAL,
        inputs: &[Input::of::<Force>(
            "force",
            "F",
            "float that no print holds",
        )],
        example: &[("force", "4.1 kgf")],
        cautions: &[],
        work: |given| {
            let [likely, printed] = chaplet_metal(given.get("force"));
            given.doubt("the unit of the printed rule is doubtful: N or kgf, ten times apart");
            Ok(vec![
                Answer::of("area", likely)
                    .between(likely, printed)
                    .rounded_up(),
            ])
        },
    },
    Reckoner {
        name: "core-bending",
        question: "Does a long core bear its own float?",
        law: &CORE_BENDING,
        inputs: &[
            ACROSS,
            LONG,
            ENDS,
            Input::metal(),
            LIQUID,
            CORE_DENSITY,
            Input::of::<Pressure>("strength", "", "tension that breaks this core sand").optional(),
        ],
        example: &[
            ("diameter", "12 mm"),
            ("length", "150 mm"),
            ("metal", "silicon bronze"),
        ],
        cautions: &[],
        work: |given| {
            let bar = bar(given);
            let tension = core_bending(&bar);
            let verdict = match bar.is_slender() {
                true => "slender: put a rod or wire in",
                false => "stout enough to be handled bare",
            };
            let mut answers = vec![
                Answer::of("tension", tension).rounded_up(),
                Answer::words("shape", verdict),
            ];
            if let Some(strength) = given.find::<Pressure>("strength") {
                answers.push(Answer::number("times stronger", strength / tension));
                if tension * 3.0 > strength {
                    given.doubt("the sand is not three times as strong as that: put a rod in");
                }
            }
            Ok(answers)
        },
    },
    Reckoner {
        name: "bar-strength",
        question: "How strong is core sand, from a bar broken on a scale?",
        law: &BAR_STRENGTH,
        inputs: &[
            Input::of::<Force>("load", "F", "on the scale as it broke"),
            Input::of::<Length>("span", "L", "between the edges it lay on"),
            Input::of::<Length>("breadth", "b", "of the bar"),
            Input::of::<Length>("height", "h", "of the bar, upright"),
        ],
        example: &[
            ("load", "3.63 kgf"),
            ("span", "150 mm"),
            ("breadth", "20 mm"),
            ("height", "20 mm"),
        ],
        cautions: &["Dry sand dust harms the lungs: break bars over a damp cloth, with a mask."],
        work: |given| {
            let (span, height): (Length, Length) = (given.get("span"), given.get("height"));
            if span < height * 4.0 {
                given.doubt("a bar shorter than four times its height seems stronger than it is");
            }
            let strength = bar_strength(given.get("load"), span, given.get("breadth"), height);
            Ok(vec![Answer::of("strength", strength).rounded_down()])
        },
    },
    Reckoner {
        name: "core-rod",
        question: "How thick a steel rod does a core want?",
        law: &CORE_ROD,
        inputs: &[
            ACROSS,
            LONG,
            ENDS,
            Input::metal(),
            LIQUID,
            CORE_DENSITY,
            Input::of::<Temperature>("heat", "", "the rod while the metal is still liquid")
                .or("500 to 700 C", "common-practice"),
            Input::number("margin", "k", "how many times stronger the rod is to be")
                .or("2", "common-practice"),
        ],
        example: &[
            ("diameter", "12 mm"),
            ("length", "150 mm"),
            ("metal", "silicon bronze"),
        ],
        cautions: &["Steel goes soft at red heat: a rod bare to the metal holds nothing."],
        work: |given| {
            let heat: Temperature = given.get("heat");
            let yield_point = yield_at(heat);
            if yield_point <= Pressure::ZERO {
                let why = "steel has no strength left at that heat";
                return given.refuse("heat", why, "thicken the sand round the rod");
            }
            let bar = bar(given);
            let rod = core_rod(&bar, yield_point, given.number("margin"));
            if rod * 3.0 > bar.diameter {
                given.doubt("more than a third of the core: it will not come out, nor the gas");
            }
            Ok(vec![
                Answer::of("rod", rod).rounded_up(),
                Answer::of("yield at that heat", yield_point).rounded_down(),
            ])
        },
    },
];

/// Whether the pins as placed hold.
fn placed(given: &Given<'_>, prints: u32) -> Result<&'static str, Impossible> {
    let ends = |key: &str| -> Vec<[f64; 3]> {
        let lengths = given.list::<Length>(key);
        let triples = lengths.chunks_exact(3);
        triples
            .map(|xyz| [xyz[0].as_mm(), xyz[1].as_mm(), xyz[2].as_mm()])
            .collect()
    };
    let (feet, heads) = (ends("feet"), ends("heads"));
    if feet.len() != heads.len() || feet.is_empty() {
        return given.refuse(
            "feet",
            "and heads do not match",
            "give x, y and z of both ends of each pin, in the same order",
        );
    }
    let pins = feet.into_iter().zip(heads);
    let pins: Vec<Pin> = pins.map(|(foot, head)| Pin { foot, head }).collect();
    Ok(match (pins.len() as f64) < least_pins(prints) {
        true => "too few: the core can turn on them",
        false if prints == 0 && in_one_plane(&pins) => {
            "all in one plane: the core can rock about it"
        }
        false => "not in one plane",
    })
}
