//! The cores of a job as solids: what is made for a bore, what is told, and that part, core and
//! sand fill the flask.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use std::f64::consts::PI;

use job::cores_told::told;
use job::made_cores::{MadeCores, cores_files, made_cores};
use job::mould_solids::mould_of;
use job::printed_cores::LengthsBy;
use job::words::Language;
use job::words::said::{Given, Said};
use job::work_out::mould_given;
use pattern::stl::read_binary;
use rigging::fact::Fact;
use rigging::piece::Piece;

/// A block of 60 × 40 × 40 mm, parted half way up, with a bore of 20 mm along x.
const BORED: &str = r#"
name = "Bored block"
[part]
up = "+z"
[metal]
alloy = "A356"
contraction = "1.3 %"
[mould]
joint = "20 mm"
[[solid]]
kind = "box"
size = ["60 mm", "40 mm", "40 mm"]
[[solid]]
kind = "cylinder"
diameter = "20 mm"
length = "80 mm"
at = ["-40 mm", 0, "20 mm"]
axis = "x"
take_away = true
[[core]]
name = "bore"
volume = "20 cm3"
"#;

const SHOP: &str = r#"
[[flask]]
name = "B"
length = "300 mm"
width = "250 mm"
cope = "100 mm"
drag = "100 mm"
"#;

fn made(job: &str) -> MadeCores {
    made_in(job, SHOP)
}

fn made_in(job: &str, shop: &str) -> MadeCores {
    let (shop, part) = (worked::shop(shop), worked::given(job));
    let job = worked::job(job);
    let given = mould_given(&job, &shop, &part).unwrap();
    made_cores(&job, &shop, &given.casting.mesh).unwrap()
}

/// As wide as the bore and as long as bore and two prints as long as wide, all larger by what the
/// metal contracts: π/4 · 20² · (60 + 2 · 20) · 1.013³ mm³.
#[test]
fn the_core_of_a_bore_is_as_large_as_its_cavity() {
    let made = made(BORED);
    assert_eq!(made.cores.len(), 1);
    assert!(made.left.is_empty());
    let core = &made.cores[0];
    assert_eq!(core.name, "bore");
    let wanted = PI / 4.0 * 400.0 * 100.0 * 1.013_f64.powi(3);
    let off = core.volume.as_mm3() / wanted - 1.0;
    assert!(off.abs() < 2e-3, "{off}");
    // 1.6 g/cm³ of core sand.
    assert!((core.mass.as_kg() - 1.6e-6 * core.volume.as_mm3()).abs() < 1e-9);
    assert!(core.core_box.is_ok() && core.vents.len() == 1);
}

/// A sand of 0.5 kPa bears no core of this weight on prints as long as wide. By L = k F / (σ d n):
/// F is the weight of π/4 · 20² · 60 · 1.013³ mm³ of core sand of 1.6 g/cm³, more than it floats
/// by in aluminium of 2.4 g/cm³; k = 3, d = 20 · 1.013 mm, n = 2.
#[test]
fn weak_sand_gets_longer_prints() {
    let heap = "[heap]\nmass = \"90 kg\"\nbond = \"bentonite\"\nmoisture = \"4 % of wet mass\"";
    let shop = |strength: &str| format!("{SHOP}\n{heap}\nstrength = \"{strength}\"");
    let weak = made_in(BORED, &shop("0.5 kPa"));
    let force = 1600.0 * PI / 4.0 * 400.0 * 60.0 * 1.013_f64.powi(3) * 1e-9 * 9.80665;
    let wanted_mm = 3.0 * force / (500.0 * 0.020_26 * 2.0) * 1e3;
    assert_eq!(weak.cores[0].lengths_by, LengthsBy::Sand);
    for length in &weak.cores[0].print_lengths {
        let off = length.as_mm() / wanted_mm - 1.0;
        assert!(off.abs() < 3e-3, "{} for {wanted_mm}", length.as_mm());
    }
    let firm = made_in(BORED, &shop("50 kPa"));
    assert_eq!(firm.cores[0].lengths_by, LengthsBy::Rule);
}

/// Prints of 150 mm go through the wall of a flask of 300 mm. What is then told to write stays in.
#[test]
fn a_print_through_the_wall_is_told_with_the_length_to_write() {
    let deep = |mm: f64| {
        let print =
            format!("print = \"20 mm\"\nprint_depth = \"{mm:.0} mm\"\nsits = \"bridged\"\n");
        format!("{BORED}{print}")
    };
    let facts = |job: &str| {
        let (shop, part) = (worked::shop(SHOP), worked::given(job));
        mould_of(&worked::job(job), &shop, &part).unwrap().facts
    };
    let long = facts(&deep(150.0));
    let told = long.iter().find_map(|fact| match fact {
        Fact::LongPrint { longest_mm, .. } => *longest_mm,
        _ => None,
    });
    let longest_mm = told.unwrap();
    assert!((10.0..150.0).contains(&longest_mm), "{longest_mm}");
    let is_long = |fact: &Fact| matches!(fact, Fact::LongPrint { .. });
    assert!(!facts(&deep(longest_mm)).iter().any(is_long));
}

#[test]
fn part_core_and_sand_fill_the_flask() {
    let (shop, part) = (worked::shop(SHOP), worked::given(BORED));
    let mould = mould_of(&worked::job(BORED), &shop, &part).unwrap();
    assert!(mould.off_by.abs() < 1e-6, "{}", mould.off_by);
    assert_eq!(mould.cores.len(), 1);
    assert_eq!(mould.cores[0].piece, Piece::Core("bore".to_owned()));
    let undrawn = |fact: &Fact| matches!(fact, Fact::CoreNotDrawn { .. });
    assert!(!mould.facts.iter().any(undrawn));
}

/// Told of by its volume, in a part without a hollow: it has no body.
#[test]
fn a_core_without_a_hollow_is_told() {
    let [head, rest] = BORED
        .split_once("[[solid]]\nkind = \"cylinder\"")
        .unwrap()
        .into();
    let (_, core) = rest.split_once("[[core]]").unwrap();
    let (shop, job) = (worked::shop(SHOP), format!("{head}[[core]]{core}"));
    let mould = mould_of(&worked::job(&job), &shop, &worked::given(&job)).unwrap();
    let undrawn = |fact: &Fact| matches!(fact, Fact::CoreNotDrawn { name } if name == "bore");
    assert!(mould.facts.iter().any(undrawn) && mould.cores.is_empty());
}

#[test]
fn every_solid_is_a_file_that_is_read_back() {
    let files = cores_files(&worked::job(BORED), &made(BORED)).unwrap();
    let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    let wanted = [
        "core-bore.stl",
        "core-bore-print-1.stl",
        "core-bore-print-2.stl",
        "core-bore-box-lower.stl",
        "core-bore-box-upper.stl",
        "cores.3mf",
    ];
    assert_eq!(names, wanted);
    for (name, bytes) in files.iter().filter(|(name, _)| name.ends_with(".stl")) {
        assert!(!read_binary(bytes).unwrap().triangles.is_empty(), "{name}");
    }
    let archive = pattern::look::look("cores.3mf", &files[5].1, None).unwrap();
    assert_eq!(archive.pieces, 5);
}

#[test]
fn what_is_told_has_words_in_every_language() {
    let lines = told(&made(BORED));
    assert_eq!(lines.len(), 4);
    for said in lines.iter().map(|line| &line.words).flat_map(parts_of) {
        for language in Language::ALL {
            let shown = language.say(said);
            assert!(
                shown != said.id() && !shown.contains('{'),
                "{language:?}: {shown}"
            );
        }
    }
}

fn parts_of(said: &Said) -> Vec<&Said> {
    let within = said.given().iter().flat_map(|(_, given)| match given {
        Given::Said(said) => parts_of(said),
        _ => Vec::new(),
    });
    std::iter::once(said).chain(within).collect()
}

/// A solid block draws without a core, and says so.
#[test]
fn a_part_that_draws_needs_none() {
    let solid = BORED
        .split("[[solid]]\nkind = \"cylinder\"")
        .next()
        .unwrap();
    let made = made(solid);
    assert!(made.cores.is_empty());
    assert_eq!(told(&made)[0].words.id(), "cores-none");
    assert!(cores_files(&worked::job(solid), &made).unwrap().is_empty());
}
