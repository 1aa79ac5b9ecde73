//! Cores by how they sit, and what is done to the mould at the bench.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::file_fault::read;
use job::job::{Job, JobError};
use job::job_file::JobFile;
use job::plan::Plan;
use worked::{block, chosen, says, values};

const SHOP: &str = r#"
[heap]
mass = "200 kg"
bond = "bentonite"
moisture = "4 % of wet mass"
HEAP

[[flask]]
name = "owl"
length = "260 mm"
width = "220 mm"
cope = "100 mm"
drag = "100 mm"
"#;

const JOB: &str = r#"
name = "Owl"
[part]
mesh = "owl.obj"
up = "+z"
[metal]
alloy = "silicon bronze"
[mould]
flask = "owl"
pour_height = "120 mm"
joint = "50 mm"
[[core]]
name = "body"
volume = "668 cm3"
"#;

fn text(sits: &str) -> String {
    format!("{JOB}{sits}\n")
}

fn job(sits: &str) -> Result<Job, JobError> {
    let typed: JobFile = read("job.toml", &text(sits)).unwrap();
    Job::meant(&typed)
}

/// A block of 150 by 100 by 90 mm, its joint at 50 mm.
fn plan(sits: &str, heap: &str) -> Plan {
    let shop = SHOP.replace("HEAP", heap);
    worked::plan(&text(sits), &shop, &block([150.0, 100.0, 90.0]))
}

#[test]
fn float_is_shown_net_and_as_displaced() {
    let plan = plan("sits = \"bridged\"", "");
    let kgf = |name| values(&plan, name)[1] / 9.806_65;
    assert!((kgf("core float") / 4.1 - 1.0).abs() < 0.02);
    assert!((kgf("core float, core weightless") / 5.1 - 1.0).abs() < 0.02);
}

#[test]
fn a_print_of_sixty_presses_with_fourteen_to_eighteen_kilopascals() {
    let standing = "sits = \"standing\"\nprint = \"60 mm\"";
    let owl = plan(standing, "strength = \"50 kPa\"");
    let [low, likely, high] = values(&owl, "core print pressure");
    assert!(
        13.5 < low && high < 18.0 && likely > 14.0,
        "{low} {likely} {high}"
    );
    assert!(!says(&owl, "core_print"));
    assert!(says(&plan(standing, "strength = \"20 kPa\""), "core_print"));
    assert!(says(&owl, "core_loose"));
    let pinned = format!("{standing}\npins = 4");
    assert!(!says(&plan(&pinned, ""), "core_loose"));
}

/// The more of a core metal cannot press down, the heavier the cope has to be.
#[test]
fn the_weight_on_the_cope_follows_how_the_core_sits() {
    let wanted = |sits: &str| values(&plan(sits, ""), "weight on the cope")[2];
    let bridged = wanted("sits = \"bridged\"");
    let hung = wanted("sits = \"hung\"\nprint = \"60 mm\"");
    let deep = wanted("sits = \"standing\"\nprint = \"60 mm\"\nprint_depth = \"30 mm\"");
    // 1.5 times the head of 120 mm over the mouth of 28.3 cm², and of the print of 30 mm.
    assert!(
        (hung - bridged - 1.5 * 28.27 * 12.0 * 7.7e-3).abs() < 0.6,
        "{hung} {bridged}"
    );
    assert!(
        (deep - bridged - 1.5 * 28.27 * 3.0 * 7.7e-3).abs() < 0.6,
        "{deep} {bridged}"
    );
    assert_eq!(wanted("sits = \"chaplets\"\npins = 4"), bridged);
    assert_eq!(wanted(""), bridged);
}

#[test]
fn a_core_without_a_print_wants_three_pins() {
    assert!(says(
        &plan("sits = \"chaplets\"\npins = 2", ""),
        "core_pins"
    ));
    assert!(!says(
        &plan("sits = \"chaplets\"\npins = 3", ""),
        "core_pins"
    ));
    assert!(says(&plan("", ""), "core_seat_unknown"));
}

#[test]
fn a_hung_core_has_to_say_how_large_its_print_is() {
    assert_eq!(
        job("sits = \"hung\"").unwrap_err(),
        JobError::NoPrint("body".to_owned())
    );
    assert!(job("print = \"60 m\"").is_err());
}

#[test]
fn open_sand_wants_no_vents_and_closed_sand_does() {
    let vents = |heap: &str| chosen(&plan("", heap), "vents");
    assert!(vents("permeability = 300").starts_with("none needed"));
    let closed = vents("permeability = 25");
    assert!(!closed.starts_with("none"), "{closed}");
    assert!(vents("").contains("every 30 mm"));
}

#[test]
fn people_are_told_who_lifts_the_flask() {
    let plan = plan("", "");
    let [_, likely, high] = values(&plan, "heavier half of the flask");
    // 26 by 22 by 10 cm at 1.6 g/cm³.
    assert!((likely - 9.15).abs() < 0.01 && high > likely);
    assert_eq!(chosen(&plan, "lifted by"), "one person");
}

#[test]
fn four_clamps_hold_what_the_irons_would() {
    let plan = plan("", "");
    let each = values(&plan, "force on each of four clamps");
    let weight = values(&plan, "weight on the cope");
    let held = 4.0 * each[2] / 9.806_65;
    // The irons are rounded up to the half kilogram.
    assert!(
        held <= weight[2] && weight[2] < held + 0.5,
        "{held} {weight:?}"
    );
}

#[test]
fn the_dent_of_a_good_day_gives_the_one_to_ram_to() {
    let good_day = |metal: &str| {
        format!(
            "[ramming]\nball = \"30 mm\"\nmass = \"110 g\"\ndrop = \"200 mm\"\ndent = \"14 mm\"\n\
             metal = \"{metal}\""
        )
    };
    let dent = |metal: &str| chosen(&plan("", &good_day(metal)), "ram to a dent of");
    assert!(dent("bronze").starts_with("14 mm"), "{}", dent("bronze"));
    // Bronze wants a firmer mould than the aluminium of the good day.
    let aluminium = dent("aluminium");
    assert!(aluminium.starts_with("12."), "{aluminium}");
    assert!(plan("", "").choice("ram to a dent of").is_none());
}
