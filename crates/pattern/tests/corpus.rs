//! The example meshes against what independent programs measured on them.

#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot get at its part must fail"
)]

use std::collections::BTreeMap;
use std::path::PathBuf;

use pattern::look::{Looked, Verdict, look};
use pattern::unit::Unit;
use toml::{Table, Value};

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../examples/meshes")
}

fn references() -> BTreeMap<String, Table> {
    let text = std::fs::read_to_string(folder().join("reference.toml")).unwrap();
    toml::from_str(&text).unwrap()
}

fn looked(name: &str, asked: Option<Unit>) -> Looked {
    look(name, &std::fs::read(folder().join(name)).unwrap(), asked).unwrap()
}

fn number(value: &Value) -> f64 {
    value.as_float().unwrap()
}

fn words(looked: &Looked) -> &'static str {
    match looked.verdict {
        Verdict::Accepted if looked.faults.is_empty() => "accept",
        Verdict::Accepted => "accept_with_warning",
        Verdict::Healed => "heal",
        Verdict::Ask => "ask",
        Verdict::Refused => "reject",
    }
}

fn assert_near(what: &str, found: f64, wanted: f64, within: f64) {
    assert!(
        (found - wanted).abs() <= within,
        "{what}: {found} instead of {wanted}"
    );
}

#[test]
fn every_verdict_is_one_of_those_allowed() {
    for (name, reference) in references() {
        let found = looked(&name, None);
        let allowed = reference["verdicts"].as_array().unwrap();
        let is_allowed = allowed
            .iter()
            .any(|verdict| verdict.as_str() == Some(words(&found)));
        assert!(is_allowed, "{name}: {} {:?}", words(&found), found.faults);
    }
}

#[test]
fn every_part_is_measured_as_others_measured_it() {
    for (name, reference) in references() {
        let unit = Unit::parse(reference["unit"].as_str().unwrap()).unwrap();
        let mm = unit.mm();
        let found = looked(&name, Some(unit));
        assert!(
            matches!(found.verdict, Verdict::Accepted | Verdict::Healed),
            "{name}: {:?}",
            found.faults
        );
        let volume = number(&reference["volume"]) * mm.powi(3);
        let within = number(&reference["within"]) * volume;
        assert_near(
            &format!("volume of {name}"),
            found.solid.volume_mm3,
            volume,
            within,
        );
        let count = |key: &str| reference[key].as_integer().unwrap() as usize;
        let counted = (found.solid.bodies, found.solid.voids);
        assert_eq!(counted, (count("bodies"), count("voids")), "{name}");
        if reference["closed"].as_bool().unwrap() {
            let area = number(&reference["area"]) * mm * mm;
            assert_near(
                &format!("area of {name}"),
                found.solid.area_mm2,
                area,
                1e-3 * area,
            );
            for (axis, wanted) in reference["centre"].as_array().unwrap().iter().enumerate() {
                let largest = found.solid.extents_mm.into_iter().fold(0.0, f64::max);
                let wanted = number(wanted) * mm;
                let what = format!("centre of {name}");
                assert_near(&what, found.solid.centre_mm[axis], wanted, 1e-3 * largest);
            }
        }
    }
}

#[test]
fn the_same_block_in_two_formats_has_the_same_volume() {
    let stl = looked("featured_block_inches.stl", Some(Unit::Inch));
    let archive = looked("featured_block.3mf", None);
    let wanted = stl.solid.volume_mm3;
    assert_near("volume", archive.solid.volume_mm3, wanted, 1e-3 * wanted);
}

/// Codes of the reference that are not reported, because the fault is gone once equal points are
/// joined, or lies below the depth from which facets count as crossing.
const NOT_REPORTED: [(&str, &str); 2] = [
    ("angle_bracket.stl", "non_manifold"),
    ("grooved_pulley_inches.stl", "self_intersection"),
];

#[test]
fn faults_that_others_counted_are_named() {
    for (name, reference) in references() {
        let found = looked(&name, None);
        let named: Vec<&str> = found.faults.iter().map(|fault| fault.code()).collect();
        for code in reference["codes"].as_array().unwrap() {
            let code = code.as_str().unwrap();
            let is_exempt = NOT_REPORTED.contains(&(name.as_str(), code));
            assert!(
                named.contains(&code) != is_exempt,
                "{name}: {code} among {named:?}"
            );
        }
    }
}
