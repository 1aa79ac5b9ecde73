//! What is in the heap, and what it lacks.

use measure::flow::Duration;
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass, Pressure};
use sand::batch::{SAND_TO_FILL, WITH_SPILL, sand_to_fill, with_spill};
use sand::moisture::{
    DRY_DOWN_STOP, DRY_FROM_WET, WATER_TO_ADD, WET_BASIS, WET_FROM_DRY, dry_down_stop,
    dry_from_wet, water_to_add, wet_basis, wet_from_dry,
};
use sand::permeability::{PERMEABILITY, permeability};
use sand::sieve::{CLAY_BY_WASH, GRAIN_FINENESS, Sieving, clay_by_wash, grain_fineness};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

mod air;
mod bench;
mod binder;
mod drying;
mod evaporation;
mod finish;
mod grain;
mod heap;
mod kitchen;
mod mixing;
mod recipe;
mod sorption;
mod through;

/// A sieving as it is asked for.
const STACK: &[Input] = &[
    Input::new(
        "sieves",
        "",
        "numbers of the sieves, coarse to fine",
        Wanted::Numbers,
    ),
    Input::list::<Mass>("kept", "", "what each kept, in the same order"),
    Input::of::<Mass>("pan", "", "what fell through"),
];

/// Said wherever dry sand is handled.
const SILICA: &str = "Dry sand dust is silica: damp it, or wear a mask for fine dust, outdoors.";

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "sand-to-fill",
        question: "How much sand does a flask take?",
        law: &SAND_TO_FILL,
        inputs: &[
            Input::of::<Volume>("flask", "V_flask", "inside of the flask"),
            Input::of::<Volume>("pattern", "V_pattern", "pattern in it")
                .or("0 cm3", "common-practice"),
            Input::of::<Density>("density", "ρ_rammed", "rammed sand")
                .or(
                    "1.5 to 1.7 g/cm3, likely 1.6 g/cm3",
                    "shop-handbook-figures",
                )
                .narrowed_by("ram a tin of known volume and weigh it"),
        ],
        example: &[("flask", "10.6 l"), ("pattern", "350 cm3")],
        cautions: &[],
        work: |given| {
            let (flask, pattern): (Volume, Volume) = (given.get("flask"), given.get("pattern"));
            if pattern > flask {
                return given.refuse("pattern", "is larger than the flask", "take a larger flask");
            }
            let mass = sand_to_fill(flask, pattern, given.get("density"));
            Ok(vec![
                Answer::of("sand", mass).rounded_up(),
                Answer::of("weight", mass.weight()).rounded_up(),
            ])
        },
    },
    Reckoner {
        name: "sand-with-spill",
        question: "How much sand to have ready for so much rammed?",
        law: &WITH_SPILL,
        inputs: &[Input::of::<Mass>(
            "rammed",
            "m_rammed",
            "sand in the flasks",
        )],
        example: &[("rammed", "57.6 kg")],
        cautions: &[],
        work: |given| {
            Ok(vec![
                Answer::of("sand", with_spill(given.get("rammed"))).rounded_up(),
            ])
        },
    },
    Reckoner {
        name: "moisture",
        question: "How wet is the sand, from one handful weighed wet and dried?",
        law: &WET_BASIS,
        inputs: &[
            Input::of::<Mass>("wet", "m_wet", "handful as taken")
                .narrowed_by("take a larger handful, or a finer scale"),
            Input::of::<Mass>("dry", "m_dry", "the same handful dried until it stays"),
        ],
        example: &[("wet", "200 g ± 1 g"), ("dry", "189.6 g ± 1 g")],
        cautions: &["Dry it in an oven or a pan, not over a torch: the organic binder burns."],
        work: |given| {
            let (wet, dry): (Mass, Mass) = (given.get("wet"), given.get("dry"));
            if dry > wet {
                return given.refuse("dry", "is heavier than wet", "exchange the two");
            }
            let moisture = wet_basis(wet, dry);
            Ok(vec![
                Answer::share("moisture", moisture),
                Answer::share("of dry sand", dry_from_wet(moisture)),
            ])
        },
    },
    Reckoner {
        name: "moisture-of-dry-sand",
        question: "What is a moisture of the wet mass as a share of the dry sand?",
        law: &DRY_FROM_WET,
        inputs: &[Input::share(
            "wet_basis",
            "w",
            "moisture as a share of the wet mass",
        )],
        example: &[("wet_basis", "5.2 %")],
        cautions: &[],
        work: |given| {
            let dry = dry_from_wet(given.number("wet_basis"));
            Ok(vec![Answer::share("dry_basis", dry)])
        },
    },
    Reckoner {
        name: "moisture-of-wet-sand",
        question: "What is a moisture of the dry sand as a share of the wet mass?",
        law: &WET_FROM_DRY,
        inputs: &[Input::share(
            "dry_basis",
            "X",
            "moisture as a share of the dry sand",
        )],
        example: &[("dry_basis", "5.49 %")],
        cautions: &[],
        work: |given| {
            let wet = wet_from_dry(given.number("dry_basis"));
            Ok(vec![Answer::share("wet_basis", wet)])
        },
    },
    Reckoner {
        name: "dry-down",
        question: "At what weight do I stop drying a tub of sand?",
        law: &DRY_DOWN_STOP,
        inputs: &[
            Input::of::<Mass>("wet", "m", "the tub of sand now, without the tub"),
            Input::share("now", "w_now", "moisture now, of the wet mass"),
            Input::share("wanted", "w_wanted", "moisture wanted, of the wet mass"),
        ],
        example: &[("wet", "22 kg"), ("now", "9 %"), ("wanted", "6 %")],
        cautions: &[SILICA],
        work: |given| {
            let (now, wanted) = (given.number("now"), given.number("wanted"));
            if wanted > now {
                return given.refuse("wanted", "is wetter than it is now", "use water-to-add");
            }
            let wet: Mass = given.get("wet");
            let stop = dry_down_stop(wet, now, wanted);
            Ok(vec![
                Answer::of("stop", stop),
                Answer::of("to lose", wet - stop),
            ])
        },
    },
    Reckoner {
        name: "water-to-add",
        question: "How much water does the heap want?",
        law: &WATER_TO_ADD,
        inputs: &[
            Input::of::<Mass>("sand", "m", "sand as it is"),
            Input::share("now", "w_now", "moisture now, of the wet mass")
                .narrowed_by("weigh a handful wet and dry: reckon moisture"),
            Input::share("wanted", "w_wanted", "moisture wanted, of the wet mass"),
        ],
        example: &[("sand", "18 kg"), ("now", "5.2 %"), ("wanted", "7.5 %")],
        cautions: &[
            "Add it in three sprays and keep back the last third: water is not taken out \
                     again.",
            "Natural sands mould best at 8 to 9 %, far above bentonite sand: do not correct one to \
                     the figure of the other.",
        ],
        work: |given| {
            let (now, wanted) = (given.number("now"), given.number("wanted"));
            if wanted < now {
                return given.refuse("wanted", "is drier than it is now", "use dry-down");
            }
            if wanted > 0.12 {
                given.doubt("more than 12 % of water: steam; no moulding sand is poured so wet");
            }
            Ok(vec![Answer::of(
                "water",
                water_to_add(given.get("sand"), now, wanted),
            )])
        },
    },
    Reckoner {
        name: "permeability",
        question: "How open is the sand, from air timed through a plug of it?",
        law: &PERMEABILITY,
        inputs: &[
            Input::of::<Volume>("air", "V", "air pressed through"),
            Input::of::<Length>("height", "H", "height of the plug"),
            Input::of::<Pressure>("pressure", "p", "pressure, \"10 cmH2O\""),
            Input::of::<Area>("area", "A", "cross-section of the plug"),
            Input::of::<Duration>("time", "t", "time it took").narrowed_by("time it three times"),
        ],
        example: &[
            ("air", "500 ml"),
            ("height", "50 mm"),
            ("pressure", "10 cmH2O"),
            ("area", "19.635 cm2"),
            ("time", "14 s"),
        ],
        cautions: &[],
        work: |given| {
            let number = permeability(
                given.get("air"),
                given.get("height"),
                given.get("pressure"),
                given.get("area"),
                given.get("time"),
            );
            Ok(vec![Answer::number("permeability", number)])
        },
    },
    Reckoner {
        name: "grain-fineness",
        question: "How fine is the sand, from what stays on the sieves?",
        law: &GRAIN_FINENESS,
        inputs: STACK,
        example: &[
            ("sieves", "40, 70, 140"),
            ("kept", "19.5 g, 22.5 g, 5.5 g"),
            ("pan", "1 g"),
        ],
        cautions: &[SILICA],
        work: |given| {
            let fineness = grain_fineness(&sieving(given)?);
            match fineness {
                Ok(band) => Ok(vec![
                    Answer::number("grain fineness", band.likely())
                        .from_to(band.low(), band.high()),
                ]),
                Err(fault) => given.refuse("kept", fault.to_string(), "look at sieves and weights"),
            }
        },
    },
    Reckoner {
        name: "clay-by-wash",
        question: "How much clay and fines is in the sand, from what washes away?",
        law: &CLAY_BY_WASH,
        inputs: &[
            Input::of::<Mass>("dried", "m_dry", "sand dried before the wash"),
            Input::of::<Mass>("washed", "m_washed", "the same sand washed clear and dried"),
        ],
        example: &[("dried", "50 g ± 0.1 g"), ("washed", "44.6 g ± 0.1 g")],
        cautions: &[],
        work: |given| {
            let (dried, washed): (Mass, Mass) = (given.get("dried"), given.get("washed"));
            if washed > dried {
                return given.refuse("washed", "is heavier than dried", "exchange the two");
            }
            let clay = clay_by_wash(dried, washed);
            given.doubt("what washes away is clay, dead clay and silt together");
            Ok(vec![Answer::share("clay", clay)])
        },
    },
    kitchen::OF_SCALE,
    kitchen::IN_JAR,
    kitchen::FROM_AIR,
    recipe::RECIPE,
    recipe::WATER,
    recipe::BY_PARTS,
    recipe::IN_SCOOPS,
    recipe::CORE_MIX,
    bench::LAYERS,
    finish::FINISH,
    binder::OF_LIQUID,
    binder::FOR_SAND,
    binder::OF_BOTTLE,
    binder::ON_SAND,
    binder::GAS,
    heap::FINES,
    heap::NEW_SAND,
    heap::DILUTION,
    heap::CLAY_TOP_UP,
    heap::SETTLED,
    heap::DISCARD,
    heap::BURNT,
    heap::CLAY,
    grain::SIZE,
    grain::EVEN,
    grain::AIR,
    grain::OPEN,
    mixing::BROUGHT,
    mixing::FOR_MIX,
    sorption::RESTING,
    sorption::SALT,
    bench::PRESSED,
    bench::SPLIT,
    bench::DROPPED,
    bench::RAMMED,
    bench::SUNK,
    bench::BURNT_OUT,
    bench::OFF_BY,
    air::VAPOUR,
    air::RATIO_OF,
    air::TWO_THERMOMETERS,
    air::WET,
    air::DEW,
    air::BY_HEIGHT,
    air::MOIST,
    evaporation::RATIOS,
    evaporation::PRESSURES,
    evaporation::ALONG,
    evaporation::CHANNEL,
    evaporation::SURFACE,
    evaporation::CARRIED,
    through::BED,
    drying::STEADY,
    drying::BOTH,
    drying::OF_TRAY,
    drying::TABLE,
    drying::SLAB,
    drying::THICKER,
    drying::FASTER,
    drying::STANDING,
];

fn sieving(given: &Given<'_>) -> Result<Sieving, Impossible> {
    let (sieves, kept) = (given.numbers("sieves"), given.list::<Mass>("kept"));
    if sieves.len() != kept.len() {
        let why = format!("has {} weights for {} sieves", kept.len(), sieves.len());
        return given.refuse("kept", why, "give one weight for each sieve");
    }
    let numbers = sieves.iter().map(|number| *number as u16);
    Ok(Sieving {
        kept: numbers.zip(kept).collect(),
        pan: given.get("pan"),
    })
}

/// Refuses shares below nought.
fn above_nought(given: &Given<'_>, keys: &[&'static str]) -> Result<(), Impossible> {
    match keys.iter().find(|key| given.number(key) < 0.0) {
        Some(key) => given.refuse(key, "is below nought", "give nought or more"),
        None => Ok(()),
    }
}
