//! Every figure of a plan is its law asked by name: what the plan writes as the inputs of a figure,
//! given to the reckoner of its law, gives the figure again.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use job::amount::Amount;
use job::folder::{STARTER_SHOP, open};
use job::part::Part;
use job::plan::{Figure, Plan};
use job::why::{ask, reckoner_of, why};
use job::work_out::work_out;
use measure::band::Band;
use measure::text::Written;
use reckon::answer::Outcome;
use reckon::worked::Worked;
use worked::{block, given};

/// How far a figure may be from what its law gives, as a share of each end: inputs are written to
/// eight figures, and what is left of a difference of two of them is good to three.
const WITHIN: f64 = 0.001;

/// An end smaller than this share of the largest of the three is nought beside it.
const BESIDE_THE_LARGEST: f64 = 1e-3;

/// Every figure that is not one call of its law, and why. Where one would pass, it has no business
/// here.
const LISTED: [(&str, &str); 5] = [
    (
        "contraction",
        "what sources say of the metal, or the founder's own castings: it goes into laws",
    ),
    (
        "modulus of the heaviest section",
        "felt place by place on the solid, or left open by the sizes given",
    ),
    (
        "modulus of the thinnest section",
        "left open where only sizes are given; on a solid it is volume over surface",
    ),
    (
        "cope lift",
        "the lift of the metal by the law, and what each core adds to it as it sits",
    ),
    (
        "core float",
        "a sum over cores, of which one that sinks holds no other down",
    ),
];

/// Jobs for figures and turns that no example has: keys of `[part]`, the rest of the job, the shop,
/// sides of a block in mm.
const OWN: [(&str, &str, &str, [f64; 3]); 9] = [
    (
        "from = \"worn original\"\nmachined = true\npattern_contraction = \"1.3 %\"",
        "[metal]\nalloy = \"gunmetal\"\ncontraction = \"1.4 %\"",
        "",
        [200.0, 80.0, 20.0],
    ),
    (
        "rapped = true\ncount = 3",
        "[metal]\nalloy = \"A356\"\n[melt]\nform = \"cans\"",
        "[furnace]\nkind = \"electric-crucible\"\n",
        [60.0, 40.0, 16.0],
    ),
    // A wall that hurries the pour, and one that none fills in time.
    (
        "",
        "[metal]\nalloy = \"aluminium\"",
        "",
        [150.0, 100.0, 4.0],
    ),
    (
        "",
        "[metal]\nalloy = \"aluminium\"",
        "",
        [400.0, 300.0, 1.2],
    ),
    // Higher than the metal in the basin.
    (
        "up = \"+z\"",
        "[metal]\nalloy = \"pewter\"\n[mould]\npour_height = \"60 mm\"\njoint = \"0 mm\"",
        "",
        [40.0, 40.0, 90.0],
    ),
    // A core that sinks beside one that floats, one hung and one across.
    (
        "up = \"+z\"",
        "[metal]\nalloy = \"A356\"\n[mould]\npour_height = \"120 mm\"\n\
         [[core]]\nname = \"loaded\"\nvolume = \"100 cm3\"\nmass = \"400 g\"\nsits = \"bridged\"\n\
         [[core]]\nname = \"hung\"\nvolume = \"80 cm3\"\nsits = \"hung\"\nprint = \"40 mm\"",
        "",
        [150.0, 100.0, 60.0],
    ),
    (
        "up = \"+z\"",
        "[metal]\nalloy = \"zinc\"\n[[core]]\nname = \"loaded\"\nvolume = \"20 cm3\"\n\
         mass = \"400 g\"\nsits = \"bridged\"",
        "[furnace]\nfuel = \"charcoal\"\n[heap]\nmass = \"90 kg\"\nbond = \"oil\"\n",
        [100.0, 80.0, 30.0],
    ),
    (
        "",
        "[metal]\nalloy = \"yellow brass\"\n[melt]\nloss = \"3 % of charge\"",
        "[furnace]\nfuel = \"propane\"\ncarry = \"15 s\"\n[heap]\nmass = \"90 kg\"\nbond = \"natural\"\n\
         [heap.trial]\nmetal = \"brass\"\nslab = [\"150 mm\", \"100 mm\", \"20 mm\"]\n\
         froze_in = \"4 min\"\n[[crucible]]\nname = \"A20\"\nmark = 20\n",
        [120.0, 80.0, 24.0],
    ),
    (
        "count = 5",
        "[metal]\nalloy = \"grey iron\"",
        "[furnace]\nkind = \"cupola\"\nfuel = \"coke\"\n[[crucible]]\nname = \"A60\"\nmark = 60\n",
        [160.0, 80.0, 40.0],
    ),
];

/// Parts known by sizes alone, and by weighings with ranges.
const ROUGH: [&str; 3] = [
    "[part.sizes]\nlength = \"140 mm\"\nwidth = \"90 mm\"\nheight = \"40 mm\"\n\
     thickest = \"24 mm\"\nthinnest = \"6 mm\"\nshape = \"shell\"\n",
    "[part.sizes]\nlength = \"60 mm\"\nwidth = \"50 mm\"\nheight = \"40 mm\"\n\
     thickest = \"40 mm\"\nthinnest = \"38 mm\"\nshape = \"shell\"\n",
    "[part.displaced]\nin_air = \"1.19 to 1.21 kg\"\nin_water = \"0.74 to 0.76 kg\"\n\
     [part.sizes]\nlength = \"140 mm\"\nwidth = \"120 mm\"\nheight = \"60 mm\"\n\
     thickest = \"16 mm\"\nthinnest = \"6 mm\"\n",
];

fn examples() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let entries = std::fs::read_dir(folder).unwrap();
    let mut folders: Vec<PathBuf> = entries
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.join("job.toml").is_file())
        .collect();
    folders.sort();
    folders
}

/// Every example, and every job of this file, by name.
static PLANS: LazyLock<Vec<(String, Plan)>> = LazyLock::new(|| {
    let examples = examples().into_iter().map(|folder| {
        let opened = open(&folder).unwrap();
        let plan = work_out(&opened.job, &opened.shop, &opened.part);
        (folder.display().to_string(), plan)
    });
    let own = OWN.iter().map(|(part, rest, shop, sides)| {
        let job = format!("name = \"own\"\n[part]\nmesh = \"part.obj\"\n{part}\n{rest}\n");
        let shop = format!("{}\n{shop}", flask_of(sides));
        planned(&job, &shop, &block(*sides))
    });
    let rough = ROUGH.iter().map(|part| {
        let job = format!("name = \"own\"\n[part]\n[metal]\nalloy = \"gunmetal\"\n{part}");
        planned(&job, STARTER_SHOP, &given(&job))
    });
    examples.chain(own).chain(rough).collect()
});

fn planned(job: &str, shop: &str, part: &Part) -> (String, Plan) {
    (job.to_owned(), worked::plan(job, shop, part))
}

/// A flask for a block.
fn flask_of([x, y, _]: &[f64; 3]) -> String {
    let (length, width) = (3.0 * x + 200.0, 3.0 * y + 200.0);
    format!(
        "flask = [{{ name = \"own\", length = \"{length} mm\", width = \"{width} mm\", \
         cope = \"120 mm\", drag = \"120 mm\" }}]"
    )
}

/// Low, likely and high as laws give them: in SI units, shares as parts of one, temperatures from
/// the freezing point of water.
fn ends_of(amount: &Amount) -> [f64; 3] {
    fn si<Q: Written>(band: &Band<Q>) -> [f64; 3] {
        [band.low().si(), band.likely().si(), band.high().si()]
    }
    match amount {
        Amount::Length(band) => si(band),
        Amount::Area(band) => si(band),
        Amount::Volume(band) => si(band),
        Amount::Mass(band) => si(band),
        Amount::Force(band) => si(band),
        Amount::Pressure(band) => si(band),
        Amount::Duration(band) => si(band),
        Amount::Speed(band) => si(band),
        Amount::Temperature(_) => amount.values(),
        Amount::Share(band) => [band.low(), band.likely(), band.high()],
    }
}

fn answer_of(figure: &Figure, worked: &Worked) -> Result<[f64; 3], String> {
    let answer = worked.answer(figure.answer).ok_or("no such answer")?;
    let Outcome::Figure { ends, .. } = &answer.outcome else {
        return Err("words in place of a figure".to_owned());
    };
    Ok(match figure.amount {
        Amount::Temperature(_) => ends.map(|kelvin| kelvin - 273.15),
        _ => *ends,
    })
}

/// How far off its law the figure is, at most, as a share of its ends; or why it cannot be asked.
fn off(figure: &Figure) -> Result<f64, String> {
    let reckoner = reckoner_of(figure).ok_or("its law has no reckoner")?;
    let worked = reckon::worked::work_out(&ask(reckoner, figure)).map_err(|no| no.to_string())?;
    let (told, law) = (ends_of(&figure.amount), answer_of(figure, &worked)?);
    let ends = law.iter().chain(&told).map(|end| end.abs());
    let largest = ends.fold(0.0, f64::max);
    if largest == 0.0 {
        return Ok(0.0);
    }
    let apart = told
        .iter()
        .zip(&law)
        .map(|(told, law)| (told - law).abs() / law.abs().max(BESIDE_THE_LARGEST * largest));
    Ok(apart.fold(0.0, f64::max))
}

/// Every figure of every plan, with the name of its job.
fn figures() -> impl Iterator<Item = (&'static str, &'static Figure)> {
    PLANS.iter().flat_map(|(job, plan)| {
        let figures = plan.figures.iter();
        figures.map(|figure| (job.as_str(), figure))
    })
}

#[test]
fn asking_the_law_gives_the_figure_again() {
    let mut faults = Vec::new();
    for (job, figure) in figures().filter(|(_, figure)| !figure.in_part) {
        match off(figure) {
            Ok(off) if off <= WITHIN => {}
            Ok(off) => faults.push(format!("{job}: {} is {off} off its law", figure.name)),
            Err(no) => faults.push(format!("{job}: {}: {no}", figure.name)),
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn what_is_not_one_call_is_listed_and_nothing_else_is() {
    let in_part: Vec<_> = figures().filter(|(_, figure)| figure.in_part).collect();
    let seen: BTreeSet<_> = in_part.iter().map(|(_, figure)| figure.name).collect();
    let listed: BTreeSet<_> = LISTED.iter().map(|(name, _)| *name).collect();
    assert_eq!(seen, listed);
    for (job, figure) in in_part {
        let off = off(figure);
        let passes = off.as_ref().is_ok_and(|off| *off <= WITHIN);
        assert!(!passes, "{job}: {} is its law after all", figure.name);
    }
    assert!(LISTED.iter().all(|(_, reason)| !reason.is_empty()));
}

#[test]
fn every_input_is_asked_for_by_the_reckoner_of_the_law() {
    for (job, figure) in figures() {
        let reckoner = reckoner_of(figure).unwrap();
        let mut once = BTreeSet::new();
        for (key, text) in &figure.asked {
            let known = reckoner.inputs.iter().any(|input| input.key == *key);
            assert!(known, "{job}: {} asks for no {key}", reckoner.name);
            assert!(once.insert(key), "{job}: {} has {key} twice", figure.name);
            let shown = figure.inputs.iter().any(|(name, _)| name == key);
            assert!(shown && !text.is_empty(), "{job}: {}: {key}", figure.name);
        }
    }
}

/// Figures of a number without its noughts: `0.0416` has three, `1140` has three.
fn figures_in(number: &str) -> usize {
    let digits: String = number.chars().filter(char::is_ascii_digit).collect();
    let digits = digits.trim_start_matches('0');
    match number.contains('.') {
        true => digits.len(),
        false => digits.trim_end_matches('0').len(),
    }
}

#[test]
fn numbers_in_the_formula_are_rounded_for_people() {
    let number = |c: char| !(c.is_ascii_digit() || c == '.');
    let mut filled = 0;
    for (job, figure) in figures() {
        let why = why(figure).unwrap();
        let formula: BTreeSet<_> = figure.law.formula.split(number).collect();
        filled += usize::from(why.with_numbers != figure.law.formula);
        for text in why.with_numbers.split(number) {
            let own = formula.contains(text);
            assert!(
                own || figures_in(text) <= 3,
                "{job}: {}: {}",
                figure.name,
                why.with_numbers
            );
        }
    }
    let all = figures().count();
    assert!(
        filled * 10 > all * 8,
        "{filled} of {all} have their numbers"
    );
}

#[test]
fn what_would_narrow_a_figure_is_told() {
    let narrowed = |name: &str, key: &str| {
        let of_name = figures().filter(|(_, figure)| figure.name == name);
        let whys = of_name.map(|(_, figure)| why(figure).unwrap());
        whys.flat_map(|why| why.narrowing).any(|by| by.key == key)
    };
    for (figure, key) in [
        ("casting mass", "density"),
        ("charge", "poured"),
        ("poured mass", "running"),
        ("freezing time of the heaviest section", "constant"),
        ("weight on the cope", "lift"),
        ("may be handled", "sand"),
        ("fuel", "efficiency"),
    ] {
        assert!(narrowed(figure, key), "{figure} by {key}");
    }
}

#[test]
fn a_figure_beside_its_law_is_found() {
    for (_, figure) in figures().filter(|(_, figure)| !figure.in_part) {
        if let Amount::Mass(band) = &figure.amount
            && band.high().as_kg() > 0.0
        {
            let wrong = Figure {
                amount: Amount::Mass(band.map(|mass| mass * 1.005)),
                ..figure.clone()
            };
            assert!(off(&wrong).unwrap() > WITHIN, "{}", figure.name);
        }
    }
}
