//! Planes of symmetry of parts that are mirror images by how they are built.

use pattern::draw::candidates::made;
use pattern::draw::symmetry::{SymmetryPlane, symmetry_planes};
use pattern::mesh::Mesh;

use crate::parts::{bar, block, less, part, sound_examples, turned};

const X: [f64; 3] = [1.0, 0.0, 0.0];
const Y: [f64; 3] = [0.0, 1.0, 0.0];
const Z: [f64; 3] = [0.0, 0.0, 1.0];

fn has(planes: &[SymmetryPlane], normal: [f64; 3]) -> bool {
    let is_along = |plane: &SymmetryPlane| {
        let cos: f64 = (0..3).map(|i| plane.normal[i] * normal[i]).sum();
        cos.abs() >= 0.5_f64.to_radians().cos()
    };
    planes.iter().any(is_along)
}

fn tee() -> Mesh {
    part(&[
        bar([-60.0, 0.0, 0.0], X, 40.0, 120.0),
        bar([0.0; 3], Y, 40.0, 60.0),
        less(bar([-61.0, 0.0, 0.0], X, 30.0, 122.0)),
        less(bar([0.0; 3], Y, 30.0, 61.0)),
    ])
}

#[test]
fn a_tee_has_its_two_planes_and_no_third() {
    let planes = symmetry_planes(&tee());
    assert!(has(&planes, X) && has(&planes, Z), "{planes:?}");
    assert_eq!(planes.len(), 2, "{planes:?}");
    assert!(planes.iter().all(|plane| plane.off_mm < 0.7), "{planes:?}");
    // However it lies: the plane through both its pipes is tried as a direction of draw.
    let axis = Mesh {
        points: vec![Z],
        triangles: Vec::new(),
    };
    let askew = |mesh: &Mesh| turned(&turned(mesh, 0, 31.0), 1, 47.0);
    let (mesh, normal) = (askew(&tee()), askew(&axis).points[0]);
    assert!(has(&symmetry_planes(&mesh), normal));
    let found = made(&mesh).into_iter().any(|way| {
        let cos: f64 = (0..3).map(|i| way[i] * normal[i]).sum();
        cos.abs() >= 0.5_f64.to_radians().cos()
    });
    assert!(found);
}

#[test]
fn a_wheel_of_three_or_five_arms_has_its_planes_along_them() {
    for arms in [3, 5] {
        let turn = std::f64::consts::TAU / f64::from(arms);
        let aim = |arm: i32| {
            let (sin, cos) = (0.2 + turn * f64::from(arm)).sin_cos();
            [cos, sin, 0.0]
        };
        let mut shapes = vec![bar([0.0; 3], Z, 40.0, 30.0)];
        shapes.extend((0..arms).map(|arm| bar([0.0, 0.0, 12.0], aim(arm), 16.0, 80.0)));
        let planes = symmetry_planes(&part(&shapes));
        for arm in 0..arms {
            let [x, y, _] = aim(arm);
            assert!(has(&planes, [-y, x, 0.0]), "{arms} arms: {planes:?}");
        }
    }
}

#[test]
fn the_pulley_has_the_plane_across_its_axis_and_a_lug_takes_planes_away() {
    let (_, pulley) = sound_examples()
        .into_iter()
        .find(|(name, _)| name.contains("pulley"))
        .unwrap();
    assert!(!symmetry_planes(&pulley).is_empty());
    let lopsided = part(&[
        block([0.0; 3], [100.0, 60.0, 20.0]),
        block([30.0, 10.0, 20.0], [20.0, 10.0, 15.0]),
        bar([-50.0, -20.0, 10.0], [-1.0, 0.0, 0.0], 10.0, 25.0),
    ]);
    assert_eq!(symmetry_planes(&lopsided), Vec::new());
}
