//! Undercuts against analytic volumes and areas, and against an independent count of rays.

use std::f64::consts::PI;

use measure::length::Length;
use pattern::draw::remedy::{Remedy, Why};
use pattern::draw::undercut::{Undercuts, undercuts};
use pattern::draw::{DrawError, DrawSettings};
use pattern::mesh::Mesh;
use pattern::shape::Shape;

use crate::parts::{
    ball, bar, block, cone, less, mug, part, ring, sound_examples, tee_slot, turned,
};
use crate::rays::undercut_of_facets;

const Z: [f64; 3] = [0.0, 0.0, 1.0];

fn along(mesh: &Mesh, up: [f64; 3]) -> Undercuts {
    undercuts(mesh, up, &DrawSettings::suiting(mesh)).unwrap()
}

fn assert_near(what: &str, found: f64, wanted: f64, share: f64) {
    let off = (found - wanted).abs();
    assert!(
        off <= share * wanted.abs(),
        "{what}: {found} instead of {wanted}"
    );
}

fn assert_free(what: &str, mesh: &Mesh, up: [f64; 3]) {
    let found = along(mesh, up);
    assert!(found.regions.is_empty(), "{what}: {:?}", found.regions);
    assert_eq!(found.area_mm2, 0.0, "{what}");
    assert!(found.facet_mm2.iter().all(|area| *area == 0.0), "{what}");
}

#[test]
fn a_ball_draws_every_way() {
    let mesh = part(&[ball([3.0, 2.0, 1.0], 80.0)]);
    let ways = [
        Z,
        [1.0, 0.0, 0.0],
        [1.0, 1.0, 1.0],
        [0.3, -0.5, 0.2],
        [-0.9, 0.1, 0.01],
    ];
    ways.iter().for_each(|&up| assert_free("ball", &mesh, up));
}

#[test]
fn upright_walls_and_fillets_raise_no_alarm() {
    let walls = part(&[
        block([0.0; 3], [60.0, 40.0, 30.0]),
        bar([10.0, 0.0, 10.0], Z, 20.0, 50.0),
        less(bar([-15.0, 0.0, -5.0], Z, 12.0, 50.0)),
    ]);
    assert_free("walls", &walls, Z);
    // Lying askew the walls are upright only to the last digit.
    let askew = turned(&turned(&walls, 0, 23.0), 1, 41.0);
    let lift = turned(
        &turned(
            &Mesh {
                points: vec![Z],
                triangles: Vec::new(),
            },
            0,
            23.0,
        ),
        1,
        41.0,
    );
    assert_free("walls askew", &askew, lift.points[0]);
    // A bar with round ends: its sides pass through upright.
    let rounded = part(&[
        bar([-30.0, 0.0, 0.0], [1.0, 0.0, 0.0], 20.0, 60.0),
        ball([-30.0, 0.0, 0.0], 20.0),
        ball([30.0, 0.0, 0.0], 20.0),
        block([0.0, 0.0, -6.0], [50.0, 30.0, 12.0]),
    ]);
    assert_free("rounded", &rounded, Z);
    assert_free("ring", &part(&[ring([0.0; 3], Z, 90.0, 20.0)]), Z);
}

#[test]
fn the_wings_of_a_tee_slot_are_held() {
    let found = along(&tee_slot(), Z);
    // Two wings of 9 × 10 over 100 mm; each has floor, roof and one wall.
    assert_near("sand", found.trapped_mm3, 2.0 * 9.0 * 10.0 * 100.0, 0.005);
    assert_near(
        "surface",
        found.area_mm2,
        2.0 * (9.0 + 9.0 + 10.0) * 100.0,
        0.005,
    );
    assert_eq!(found.regions.len(), 2);
    for region in &found.regions {
        assert!((region.centre_mm[2] - 25.0).abs() < 0.1, "{region:?}");
        assert!((region.centre_mm[1].abs() - 10.5).abs() < 0.1, "{region:?}");
        assert_eq!(region.advice.remedy, Remedy::Core);
        assert_eq!(region.advice.why, Why::RunsThrough);
        let opening = region.advice.opening.unwrap();
        assert!(opening[0].abs() > 0.999, "{opening:?}");
    }
}

#[test]
fn a_pocket_that_widens_downward_by_five_degrees_is_held() {
    let (mouth, depth) = (20.0, 20.0);
    let floor = mouth + depth * 5f64.to_radians().tan();
    let mesh = part(&[
        block([0.0; 3], [80.0, 80.0, 40.0]),
        less(cone([0.0, 0.0, 20.0], Z, 2.0 * floor, 2.0 * mouth, depth)),
    ]);
    let found = along(&mesh, Z);
    // The foot of a cone less the upright bore through its mouth.
    let whole = PI * depth / 3.0 * (floor * floor + floor * mouth + mouth * mouth);
    assert_near(
        "sand",
        found.trapped_mm3,
        whole - PI * mouth * mouth * depth,
        0.02,
    );
    let slant = (depth * depth + (floor - mouth).powi(2)).sqrt();
    let wall = PI * (floor + mouth) * slant;
    let ledge = PI * (floor * floor - mouth * mouth);
    assert_near("surface", found.area_mm2, wall + ledge, 0.02);
    // The other way about it opens downward by as much and draws.
    let open = part(&[
        block([0.0; 3], [80.0, 80.0, 40.0]),
        less(cone([0.0, 0.0, 20.0], Z, 2.0 * mouth, 2.0 * floor, depth)),
    ]);
    assert_free("open pocket", &open, Z);
}

#[test]
fn a_lean_within_the_rapping_play_does_not_hold() {
    let lean = |degrees: f64| {
        let floor = 20.0 + 20.0 * degrees.to_radians().tan();
        part(&[
            block([0.0; 3], [80.0, 80.0, 40.0]),
            less(cone([0.0, 0.0, 20.0], Z, 2.0 * floor, 40.0, 20.0)),
        ])
    };
    let settings = DrawSettings {
        play_mm: 0.2,
        columns: 320,
    };
    // Over 20 mm of depth 0.3° overhang by 0.10 mm, 1° by 0.35 mm.
    assert!(
        undercuts(&lean(0.3), Z, &settings)
            .unwrap()
            .regions
            .is_empty()
    );
    assert!(
        !undercuts(&lean(1.0), Z, &settings)
            .unwrap()
            .regions
            .is_empty()
    );
}

#[test]
fn the_handle_of_a_mug_holds_as_much_as_rays_count() {
    let mesh = mug();
    for up in [Z, [0.0, 1.0, 0.0], [1.0, 0.2, 0.1]] {
        let counted: f64 = undercut_of_facets(&mesh, up, 0.5).iter().sum();
        let found = along(&mesh, up);
        assert!(counted > 500.0, "{counted}");
        assert_near(&format!("{up:?}"), found.area_mm2, counted, 0.02);
    }
}

#[test]
fn the_remedy_fits_the_place() {
    let advice = |shapes: &[_]| {
        let found = along(&part(shapes), Z);
        assert_eq!(found.regions.len(), 1, "{:?}", found.regions);
        found.regions[0].advice
    };
    let body = block([0.0; 3], [60.0, 60.0, 60.0]);
    // A notch in one wall, wide open to the side and shallow.
    let notch = advice(&[body, less(block([28.0, 0.0, 20.0], [14.0, 20.0, 20.0]))]);
    assert_eq!(
        (notch.remedy, notch.why),
        (Remedy::LoosePiece, Why::OpensSideways)
    );
    assert!(notch.opening.unwrap()[0] > 0.99);
    // The same on a wall of 300 mm.
    let long = advice(&[
        block([0.0; 3], [60.0, 300.0, 60.0]),
        less(block([28.0, 0.0, 20.0], [14.0, 280.0, 20.0])),
    ]);
    assert_eq!(
        (long.remedy, long.why),
        (Remedy::Drawback, Why::OpensSidewaysLong)
    );
    // A blind hole from the side.
    let blind = advice(&[
        body,
        less(bar([-10.0, 0.0, 30.0], [1.0, 0.0, 0.0], 20.0, 50.0)),
    ]);
    assert_eq!(
        (blind.remedy, blind.why),
        (Remedy::Core, Why::DeeperThanHigh)
    );
    // A hole from side to side.
    let through = advice(&[
        body,
        less(bar([-40.0, 0.0, 30.0], [1.0, 0.0, 0.0], 20.0, 80.0)),
    ]);
    assert_eq!(
        (through.remedy, through.why),
        (Remedy::Core, Why::RunsThrough)
    );
    // The groove of a pulley.
    let wheel = bar([0.0; 3], Z, 80.0, 30.0);
    let groove = advice(&[
        bar([0.0; 3], Z, 60.0, 30.0),
        bar([0.0; 3], Z, 80.0, 8.0),
        Shape {
            at: [0.0, 0.0, 22.0].map(Length::from_mm),
            ..bar([0.0; 3], Z, 80.0, 8.0)
        },
    ]);
    assert_eq!(
        (groove.remedy, groove.why),
        (Remedy::Core, Why::NoSingleMove)
    );
    // A hollow with no way out.
    let hollow = advice(&[wheel, less(ball([0.0, 0.0, 15.0], 20.0))]);
    assert_eq!((hollow.remedy, hollow.why), (Remedy::Core, Why::Closed));
    assert_eq!(hollow.opening, None);
}

/// Facets may be flagged only where the rays find them covered; with next to no play they must be.
/// Facets that the edge of the covered surface runs through are counted by a handful of rays each,
/// hence the half of a percent. Round walls that stand upright are often cut into facets that lean
/// in and out by a few hundredths of a degree: rays count those, a moulder does not.
#[test]
fn no_example_raises_a_false_alarm() {
    for (name, mesh) in sound_examples() {
        let counted = undercut_of_facets(&mesh, Z, mesh.diagonal() / 60.0);
        let found = along(&mesh, Z);
        let pairs = found.facet_mm2.iter().zip(&counted);
        let false_alarm: f64 = pairs
            .filter(|(_, rays)| **rays == 0.0)
            .map(|(area, _)| area)
            .sum();
        let area = mesh.area();
        assert!(
            false_alarm <= 1e-3 * area,
            "{name}: {false_alarm} of {area} mm²"
        );
        let all: f64 = counted.iter().sum();
        assert!(
            found.area_mm2 <= 1.005 * all + 1e-4 * area,
            "{name}: {} of {all}",
            found.area_mm2
        );
        let leans = |facet: &usize| {
            let normal = mesh.normal(*facet);
            let length = normal.iter().map(|x| x * x).sum::<f64>().sqrt();
            normal[2].abs() > 0.02 * length
        };
        let tight = DrawSettings {
            play_mm: 1e-3,
            ..DrawSettings::suiting(&mesh)
        };
        let found = undercuts(&mesh, Z, &tight).unwrap();
        let missed = (0..counted.len())
            .filter(leans)
            .map(|facet| (counted[facet] - found.facet_mm2[facet]).max(0.0));
        let missed: f64 = missed.sum();
        assert!(
            missed <= 0.005 * area,
            "{name}: {missed} of {area} mm² missed"
        );
    }
}

#[test]
fn what_cannot_be_looked_at_is_refused() {
    let mesh = part(&[ball([0.0; 3], 20.0)]);
    let settings = DrawSettings::suiting(&mesh);
    let nowhere = undercuts(&mesh, [0.0; 3], &settings);
    assert_eq!(nowhere, Err(DrawError::NoDirection { up: [0.0; 3] }));
    let nothing = undercuts(&Mesh::default(), Z, &settings);
    assert_eq!(nothing, Err(DrawError::NoPart));
}
