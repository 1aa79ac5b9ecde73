//! Recipes at pencil grade: what the sources say, side by side, and a batch to test it on.

use measure::matter::{Density, Mass};
use measure::text::rounded;
use sand::binder::binder_for_sand;
use sand::mix::{SCALE, scale};
use sand::recipe::{
    Binder, DOSE, Dose, Poured, Said, Use, WATER_FOR_CLAY, Water, WaterBasis, named, water_for_clay,
};
use sand::scoops::{SCOOPS, SHARE_BY_MASS, scoops, share_by_mass};

use super::{SILICA, above_nought};
use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// Sand of the batch on which a recipe is tried before the heap is mixed.
const TEST_BATCH: Mass = Mass::from_kg(1.0);

/// How many times apart sources may be before it is said.
const APART: f64 = 1.5;

const BINDERS: Wanted = Wanted::Choice(&[
    "sodium-bentonite",
    "calcium-bentonite",
    "fireclay",
    "dug-clay",
    "molasses",
    "sugar",
    "flour",
    "dextrin",
    "linseed-oil",
    "silicate",
]);

/// What the sources take of a binder.
pub(super) const RECIPE: Reckoner = Reckoner {
    name: "recipe",
    question: "How much clay or binder for this sand and metal, and who says so?",
    law: &DOSE,
    inputs: &[
        Input::new(
            "binder",
            "binder",
            "what binds the sand; a clay nobody has tested is dug-clay",
            BINDERS,
        ),
        Input::new("use", "use", "what for", Wanted::Choice(&["mould", "core"])),
        Input::new(
            "metal",
            "metal",
            "what is poured",
            Wanted::Choice(&["non-ferrous", "iron"]),
        ),
        Input::of::<Mass>("sand", "", "dry sand"),
    ],
    example: &[
        ("binder", "dug-clay"),
        ("use", "mould"),
        ("metal", "non-ferrous"),
        ("sand", "60 kg"),
    ],
    cautions: &[SILICA],
    work: |given| {
        let binder = named(given.words("binder")).or_else(|fault| {
            given.refuse("binder", fault.to_string(), "choose the nearest of them")
        })?;
        let said = said(given, binder)?;
        let (share, sand) = (said.share, given.get::<Mass>("sand"));
        let of_sand = share.map(|share| binder_for_sand(share, sand));
        let likely = of_sand.likely();
        let mut answers = vec![
            Answer::of("amount", likely).between(of_sand.low(), of_sand.high()),
            Answer::share("of the dry sand", share.likely()).from_to(share.low(), share.high()),
            Answer::of(
                "in a test batch of 1 kg",
                binder_for_sand(share.likely(), TEST_BATCH),
            ),
            Answer::words("takes least", in_words(said.least)),
            Answer::words("takes most", in_words(said.most)),
        ];
        answers.extend(
            binder
                .waters
                .first()
                .map(|water| of_water(water, sand, likely)),
        );
        given.doubt("a start for a test batch: mix 1 kg, ram it, test it, then mix the heap");
        binder
            .cautions
            .iter()
            .for_each(|caution| given.doubt(caution));
        let apart = said.most.share.likely() / said.least.share.likely();
        if apart > APART {
            let (title, times) = (&binder.title, rounded(apart, 2));
            given.doubt(format!("sources on {title} are {times} times apart"));
        }
        Ok(answers)
    },
};

/// Water for clay.
pub(super) const WATER: Reckoner = Reckoner {
    name: "water-for-clay",
    question: "How much water does this clay take?",
    law: &WATER_FOR_CLAY,
    inputs: &[
        Input::of::<Mass>("clay", "m_clay", "live clay"),
        Input::share(
            "ratio",
            "r",
            "water of the clay; sodium bentonite 30 to 40 %",
        )
        .or("30 to 40 %", "shop-handbook-figures")
        .narrowed_by("mix test batches at three waters and ram them"),
    ],
    example: &[("clay", "600 g")],
    cautions: &["Add it in three sprays and keep back the last third."],
    work: |given| {
        above_nought(given, &["ratio"])?;
        let water = water_for_clay(given.get("clay"), given.number("ratio"));
        given.doubt("for clay dug from the ground no ratio holds: go by a test batch");
        Ok(vec![Answer::of("water", water)])
    },
};

/// Clay by mass from parts by volume.
pub(super) const BY_PARTS: Reckoner = Reckoner {
    name: "clay-by-parts",
    question: "How much clay by mass is a mix in parts by volume?",
    law: &SHARE_BY_MASS,
    inputs: &[
        Input::number("sand_parts", "n_sand", "parts of sand by volume"),
        Input::number("clay_parts", "n_clay", "parts of clay by volume"),
        Input::of::<Density>("sand_loose", "ρ_sand", "dry sand, struck off in a can")
            .or("1.45 to 1.6 g/cm3", "shop-handbook-figures")
            .narrowed_by("weigh a can of it, struck off level"),
        Input::of::<Density>("clay_loose", "ρ_clay", "dry clay, struck off in a can")
            .narrowed_by("weigh a can of it, struck off level"),
    ],
    example: &[
        ("sand_parts", "7"),
        ("clay_parts", "1"),
        ("sand_loose", "1.45 g/ml"),
        ("clay_loose", "0.85 g/ml"),
    ],
    cautions: &[SILICA],
    work: |given| {
        let (sand_parts, clay_parts) = (given.number("sand_parts"), given.number("clay_parts"));
        if sand_parts <= 0.0 || clay_parts < 0.0 {
            return given.refuse(
                "sand_parts",
                "cannot be below nought",
                "give parts as scooped",
            );
        }
        let (sand_loose, clay_loose) = (given.get("sand_loose"), given.get("clay_loose"));
        let clay = share_by_mass(sand_parts, clay_parts, sand_loose, clay_loose);
        Ok(vec![
            Answer::share("clay of the dry mix", clay),
            Answer::share("clay on the dry sand", clay / (1.0 - clay)),
        ])
    },
};

/// Scoops of a mass.
pub(super) const IN_SCOOPS: Reckoner = Reckoner {
    name: "scoops",
    question: "How many of my scoops is that?",
    law: &SCOOPS,
    inputs: &[
        Input::of::<Mass>("mass", "m", "what is wanted"),
        Input::of::<Mass>(
            "scoop",
            "m_scoop",
            "one scoop of the same stuff, struck off",
        )
        .narrowed_by("weigh ten scoops together"),
    ],
    example: &[("mass", "600 g"), ("scoop", "85 g ± 5 g")],
    cautions: &[],
    work: |given| {
        let (mass, scoop): (Mass, Mass) = (given.get("mass"), given.get("scoop"));
        if scoop <= Mass::ZERO {
            return given.refuse("scoop", "weighs nothing", "weigh one full scoop");
        }
        Ok(vec![Answer::number("scoops", scoops(mass, scoop))])
    },
};

/// A core mix by weights.
pub(super) const CORE_MIX: Reckoner = Reckoner {
    name: "core-mix",
    question: "What do I weigh out of each part for this much core sand?",
    law: &SCALE,
    inputs: &[
        Input::list::<Mass>("mix", "m", "the parts of the mix by weight, sand first"),
        Input::of::<Mass>("wanted", "m_wanted", "core sand wanted in all"),
    ],
    example: &[("mix", "500 g, 15 g, 10 g, 12 g"), ("wanted", "1.07 kg")],
    cautions: &["Bake cores outdoors or under an exhaust, and vent them to air."],
    work: |given| {
        let parts = given.list::<Mass>("mix");
        let times = match scale(&parts, given.get("wanted")) {
            Ok(times) => times,
            Err(fault) => return given.refuse("mix", fault.to_string(), "weigh each part"),
        };
        let grams = |part: &Mass| format!("{} g", rounded((*part * times).as_g(), 3));
        let each: Vec<_> = parts.iter().map(grams).collect();
        Ok(vec![
            Answer::number("times the mix", times),
            Answer::words("weigh out", each.join(", ")),
        ])
    },
};

fn said<'a>(given: &Given<'_>, binder: &'a Binder) -> Result<Said<'a>, Impossible> {
    let used_for = match given.words("use") {
        "core" => Use::Core,
        _ => Use::Mould,
    };
    let metal = match given.words("metal") {
        "iron" => Poured::Iron,
        _ => Poured::NonFerrous,
    };
    binder.said(used_for, metal).or_else(|fault| {
        given.refuse(
            "use",
            fault.to_string(),
            "take another binder, or try small batches",
        )
    })
}

fn in_words(dose: &Dose) -> String {
    let [low, high] = [dose.share.low(), dose.share.high()].map(|s| rounded(s * 100.0, 3));
    let amount = match low == high {
        true => format!("{low} %"),
        false => format!("{low} to {high} %"),
    };
    let title = measure::source::source(&dose.source).map_or("", |source| source.title.as_str());
    match dose.note.is_empty() {
        true => format!("{amount}: {}", title.trim()),
        false => format!("{amount}: {} ({})", title.trim(), dose.note),
    }
}

fn of_water(water: &Water, sand: Mass, binder: Mass) -> Answer {
    let of = |share: f64| match water.basis {
        WaterBasis::OfClay => water_for_clay(binder, share),
        WaterBasis::OfWetSand => (sand + binder) * (share / (1.0 - share)),
    };
    let share = water.share;
    Answer::of("water, on dry sand", of(share.likely())).between(of(share.low()), of(share.high()))
}
