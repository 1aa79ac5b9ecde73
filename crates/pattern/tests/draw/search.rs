//! Ways of drawing parts whose best way is plain to see.

use pattern::draw::remedy::{Remedy, Why, turn_if_clear};
use pattern::draw::search::ways;
use pattern::draw::undercut::undercuts;
use pattern::draw::way::Way;
use pattern::draw::{DrawError, DrawSettings};
use pattern::mesh::Mesh;

use crate::parts::{ball, bar, block, cone, less, mug, part, ring, tee_slot, turned};

const Z: [f64; 3] = [0.0, 0.0, 1.0];

fn best(mesh: &Mesh, clean: Option<[f64; 3]>) -> Way {
    let ways = ways(mesh, clean, &DrawSettings::suiting(mesh), 4).unwrap();
    assert!(ways.windows(2).all(|pair| pair[0].cost <= pair[1].cost));
    ways[0].clone()
}

fn assert_line(way: &Way, axis: [f64; 3], degrees: f64) {
    let cos = (0..3).map(|i| way.up[i] * axis[i]).sum::<f64>().abs();
    assert!(cos >= degrees.to_radians().cos(), "{way:?}");
}

#[test]
fn a_ring_draws_along_its_axis_however_it_lies() {
    let flat = part(&[ring([0.0; 3], Z, 90.0, 20.0)]);
    let way = best(&flat, None);
    assert_line(&way, Z, 0.5);
    assert_eq!(way.undercut_mm2, 0.0);
    // The joint lies flat at mid height.
    assert!(way.level_mm.abs() < 0.3 && way.wanders_mm == 0.0, "{way:?}");
    assert!((way.cope_mm - 10.0).abs() < 0.3, "{way:?}");
    let askew = turned(&turned(&flat, 0, 33.0), 1, 52.0);
    let axis = turned(
        &turned(
            &Mesh {
                points: vec![Z],
                triangles: Vec::new(),
            },
            0,
            33.0,
        ),
        1,
        52.0,
    );
    let way = best(&askew, None);
    assert_line(&way, axis.points[0], 0.5);
    assert_eq!(way.undercut_mm2, 0.0);
}

#[test]
fn a_ball_draws_with_half_of_it_in_each_box() {
    let way = best(&part(&[ball([0.0; 3], 80.0)]), None);
    assert_eq!((way.undercut_mm2, way.trapped_mm3), (0.0, 0.0));
    assert!(
        (way.cope_mm - 40.0).abs() < 1.0 && (way.drag_mm - 40.0).abs() < 1.0,
        "{way:?}"
    );
    let shadow = std::f64::consts::PI * 1600.0;
    assert!((way.shadow_mm2 - shadow).abs() < 0.01 * shadow, "{way:?}");
}

#[test]
fn a_tapered_pattern_lies_whole_in_the_drag_unless_its_back_is_to_be_clean() {
    let boss = part(&[
        block([0.0; 3], [100.0, 60.0, 10.0]),
        cone([0.0, 0.0, 10.0], Z, 40.0, 36.0, 20.0),
    ]);
    let way = best(&boss, None);
    assert_line(&way, Z, 0.1);
    assert!(
        way.up[2] < 0.0 && way.cope_mm < 0.1 && way.undercut_mm2 == 0.0,
        "{way:?}"
    );
    assert!((way.drag_mm - 30.0).abs() < 0.1, "{way:?}");
    let back_down = best(&boss, Some([0.0, 0.0, -1.0]));
    assert!(back_down.up[2] > 0.0, "{back_down:?}");
    assert_eq!(back_down.clean_down, Some(1.0));
}

#[test]
fn a_tee_slot_is_turned_on_its_side() {
    // Drawn along the slot nothing is held.
    let mesh = tee_slot();
    let settings = DrawSettings::suiting(&mesh);
    let found = ways(&mesh, None, &settings, 4).unwrap();
    assert_line(&found[0], [1.0, 0.0, 0.0], 0.5);
    assert_eq!(found[0].trapped_mm3, 0.0);
    let mut upright = undercuts(&mesh, Z, &settings).unwrap();
    turn_if_clear(&mut upright, &found);
    for region in &upright.regions {
        assert_eq!(region.advice.remedy, Remedy::TurnThePart);
        assert_eq!(region.advice.why, Why::ClearWhenTurned);
        assert_eq!(region.advice.opening, Some(found[0].up));
    }
}

#[test]
fn a_tilted_bar_is_laid_down() {
    let axis = [1.0, 0.3, 0.5];
    let bar = part(&[bar([0.0; 3], axis, 20.0, 120.0)]);
    let way = best(&bar, None);
    assert_eq!(way.undercut_mm2, 0.0);
    let length = axis.iter().map(|x| x * x).sum::<f64>().sqrt();
    let lean = (0..3).map(|i| way.up[i] * axis[i]).sum::<f64>().abs() / length;
    assert!(lean < 0.02, "{way:?}");
    assert!((way.cope_mm - 10.0).abs() < 1.0, "{way:?}");
}

#[test]
fn the_same_part_gives_the_same_ways() {
    let mesh = mug();
    let settings = DrawSettings::suiting(&mesh);
    let once = ways(&mesh, None, &settings, 3).unwrap();
    assert_eq!(once, ways(&mesh, None, &settings, 3).unwrap());
    assert_eq!(once.len(), 3);
    // Every way of drawing a mug holds sand: in its hollow, or in the eye of its handle.
    assert!(once.iter().all(|way| way.trapped_mm3 > 0.0));
}

#[test]
fn nothing_has_no_ways() {
    let settings = DrawSettings {
        play_mm: 0.1,
        columns: 100,
    };
    assert_eq!(
        ways(&Mesh::default(), None, &settings, 3),
        Err(DrawError::NoPart)
    );
    let hollow = part(&[
        block([0.0; 3], [9.0; 3]),
        less(block([0.0; 3], [3.0, 3.0, 20.0])),
    ]);
    assert!(ways(&hollow, None, &settings, 3).is_ok());
}
