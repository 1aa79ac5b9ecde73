//! Cuts and shadows of solids whose areas are known on paper.

mod shapes;

use measure::length::Length;
use pattern::mesh::Mesh;
use pattern::silhouette::silhouette;
use pattern::slice::{areas_at, outlines, volume_above};
use shapes::{ball, block, both};

fn mm(length: f64) -> Length {
    Length::from_mm(length)
}

fn near(value: f64, wanted: f64, share: f64) {
    assert!(
        (value / wanted - 1.0).abs() < share,
        "{value} is not {wanted}"
    );
}

/// Two blocks beside each other, 10 and 20 mm high.
fn steps() -> Mesh {
    both(
        &block([0.0; 3], [30.0, 20.0, 10.0]),
        &block([40.0, 0.0, 0.0], [10.0, 20.0, 20.0]),
    )
}

#[test]
fn areas_of_cuts_are_those_of_paper() {
    let areas = areas_at(&steps(), &[mm(-1.0), mm(5.0), mm(15.0), mm(25.0)]);
    let areas: Vec<f64> = areas.iter().map(|area| area.as_mm2()).collect();
    assert_eq!(areas[0], 0.0);
    near(areas[1], 800.0, 1e-12);
    near(areas[2], 200.0, 1e-12);
    assert_eq!(areas[3], 0.0);
}

#[test]
fn metal_above_a_height() {
    near(volume_above(&steps(), mm(0.0)).as_mm3(), 10_000.0, 1e-12);
    near(volume_above(&steps(), mm(5.0)).as_mm3(), 6_000.0, 1e-12);
    near(volume_above(&steps(), mm(15.0)).as_mm3(), 1_000.0, 1e-12);
    assert!(volume_above(&steps(), mm(20.0)).as_mm3().abs() < 1e-9);
}

#[test]
fn a_cut_runs_anticlockwise_round_the_metal() {
    for axis in 0..3 {
        let cut = outlines(&block([0.0; 3], [30.0, 20.0, 10.0]), axis, 4.0);
        assert_eq!(cut.len(), 1);
        let pairs = cut[0].iter().zip(cut[0].iter().cycle().skip(1));
        let twice: f64 = pairs.map(|(a, b)| a[0] * b[1] - a[1] * b[0]).sum();
        near(twice / 2.0, 6_000.0 / [30.0, 20.0, 10.0][axis], 1e-12);
    }
}

#[test]
fn a_shadow_has_the_area_of_paper() {
    near(silhouette(&steps()).area.as_mm2(), 800.0, 5e-3);
    assert_eq!(silhouette(&steps()).outlines.len(), 2);
    // A ball of facets casts a shadow a little smaller than its circle.
    let disc = std::f64::consts::PI * 25.0 * 25.0;
    near(silhouette(&ball(25.0, 96, 0.0)).area.as_mm2(), disc, 5e-3);
}

#[test]
fn a_part_takes_the_hollow_under_its_skin_out_of_the_cope() {
    near(
        silhouette(&steps()).room_above(mm(0.0)).as_mm3(),
        10_000.0,
        5e-3,
    );
    near(
        silhouette(&steps()).room_above(mm(5.0)).as_mm3(),
        6_000.0,
        5e-3,
    );
    // A table: its legs are 2 cm³ of metal, and the sand under its top belongs to the drag.
    let table = both(
        &block([0.0; 3], [10.0, 20.0, 10.0]),
        &block([0.0, 0.0, 10.0], [30.0, 20.0, 2.0]),
    );
    near(
        silhouette(&table).room_above(mm(0.0)).as_mm3(),
        7_200.0,
        5e-3,
    );
    let half = 2.0 / 3.0 * std::f64::consts::PI * 25.0_f64.powi(3);
    near(
        silhouette(&ball(25.0, 96, 0.0))
            .room_above(mm(0.0))
            .as_mm3(),
        half,
        5e-3,
    );
}
