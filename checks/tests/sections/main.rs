//! Sections of plain solids against moduli that can be summed on paper: M = V/A of the part that
//! freezes together, the joint between boss and plate not cooling (`chvorinov-1940`,
//! `wlodawer-1966`). Every solid is measured straight and turned by an odd angle.

use pattern::cells::Cells;
use pattern::mesh::Mesh;
use pattern::sections::{Section, sections};
use pattern::solid::measure;

use crate::solids::{ball, block, cylinder, plate_with_boss, shell, turned};

mod solids;

/// Share by which a modulus may be off paper: a sixth of the margin that a feeder gets.
const WITHIN: f64 = 0.03;

/// A solid whose heaviest section is known.
struct Case {
    name: &'static str,
    solid: Mesh,
    modulus_mm: f64,
    /// The sum on paper.
    because: &'static str,
}

#[test]
fn the_heaviest_section_has_the_modulus_of_paper() {
    let mut faults = Vec::new();
    println!(
        "{:<34} {:>9} {:>9} {:>8}  on paper",
        "solid", "expected", "got", "off by"
    );
    for case in cases() {
        for (how, solid) in [("", case.solid.clone()), (", turned", turned(&case.solid))] {
            let found = found_sections(&solid);
            let got_mm = found
                .first()
                .map_or(0.0, |heaviest| heaviest.modulus.as_mm());
            let off = got_mm / case.modulus_mm - 1.0;
            let name = format!("{}{how}", case.name);
            let line = format!(
                "{name:<34} {:>6.2} mm {got_mm:>6.2} mm {:>6.1} %  {}",
                case.modulus_mm,
                100.0 * off,
                case.because
            );
            println!("{line}");
            if off.is_nan() || off.abs() > WITHIN {
                faults.push(line);
            }
        }
    }
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

#[test]
fn the_plate_under_a_boss_keeps_its_own_section() {
    let found = found_sections(&plate_with_boss(150.0, 10.0, 40.0, 30.0));
    assert!(found.len() >= 2, "boss and plate are one: {found:?}");
}

/// A wall of two cells is a wall: it does not fall to pieces, and no piece of it is heavier than
/// half its thickness and a cell's error.
#[test]
fn a_large_thin_shell_is_one_section() {
    let found = found_sections(&shell(300.0, 4.0));
    let all: f64 = found.iter().map(|section| section.volume.as_cm3()).sum();
    let largest = found.iter().map(|section| section.volume.as_cm3());
    let largest = largest.fold(0.0, f64::max);
    assert!(largest > 0.97 * all, "{largest} of {all} cm³: {found:?}");
    let metal = std::f64::consts::PI / 6.0 * (30f64.powi(3) - 29.2f64.powi(3));
    assert!(all > 0.97 * metal, "{all} of {metal} cm³");
    let heaviest_mm = found[0].modulus.as_mm();
    assert!((1.9..2.6).contains(&heaviest_mm), "{heaviest_mm}");
}

fn cases() -> Vec<Case> {
    let case = |name, solid, modulus_mm, because| Case {
        name,
        solid,
        modulus_mm,
        because,
    };
    let boss = |name, diameter: f64, height: f64| Case {
        name,
        solid: plate_with_boss(150.0, 10.0, diameter, height),
        modulus_mm: diameter * (height + 10.0) / (4.0 * height + 2.0 * diameter),
        because: "D (h + t) / (4 h + 2 D): both ends and the side above the plate cool",
    };
    let half = "half the thickness, far from the rim";
    vec![
        case("cube 25", block([25.0; 3]), 25.0 / 6.0, "a/6"),
        case(
            "plate 100 x 100 x 10",
            block([100.0, 100.0, 10.0]),
            5.0,
            half,
        ),
        case(
            "plate 200 x 150 x 10",
            block([200.0, 150.0, 10.0]),
            5.0,
            half,
        ),
        case("ball 50", ball(50.0), 50.0 / 6.0, "D/6"),
        case("cylinder 40 x 40", cylinder(40.0, 40.0), 40.0 / 6.0, "D/6"),
        case(
            "bar 20 x 20 x 200",
            block([20.0, 20.0, 200.0]),
            5.0,
            "a/4 at its middle",
        ),
        boss("boss 40 x 30 on plate 10", 40.0, 30.0),
        boss("boss 30 x 20 on plate 10", 30.0, 20.0),
        boss("boss 50 x 20 on plate 10", 50.0, 20.0),
    ]
}

fn found_sections(solid: &Mesh) -> Vec<Section> {
    let one_shell = vec![0; solid.triangles.len()];
    let measured = measure(solid, &one_shell, 1);
    let size = Cells::suiting_size_mm(measured.volume_mm3, measured.area_mm2, measured.extents_mm);
    sections(&Cells::fill(solid, size))
}
