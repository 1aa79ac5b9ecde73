//! Loose pieces: what is cut off, that the body draws, and that the piece comes out sideways.

use pattern::boolean::Body;
use pattern::draw::DrawSettings;
use pattern::draw::remedy::Remedy;
use pattern::draw::undercut::{Trapped, undercuts};
use pattern::made::halves::PinWish;
use pattern::made::joint::Joint;
use pattern::made::ledge::Side;
use pattern::made::loose::{Loosened, loosened};
use pattern::mesh::Mesh;
use pattern::shape::Shape;
use pattern::vector::{Vector, add, scale};

use measure::length::Length;

use crate::solids::{block, close, cylinder, example, mesh, volume};

const UP: Vector = [0.0, 0.0, 1.0];

fn made(pattern: &Mesh, joint_mm: f64, pins: Option<&PinWish>) -> Loosened {
    let found = undercuts(pattern, UP, &DrawSettings::suiting(pattern)).unwrap();
    loosened(pattern, &Joint::Flat(joint_mm), &found.regions, pins).unwrap()
}

fn held_mm3(mesh: &Mesh) -> f64 {
    let settings = DrawSettings::suiting(mesh);
    undercuts(mesh, UP, &settings).unwrap().trapped_mm3
}

/// A block of 60 × 40 × 40 mm with a rib of 8 × 30 × 8 mm at its upper end on the side of +x, and
/// something under it.
fn under_a_rib(lower: &[Shape]) -> Mesh {
    let upper = block([33.0, 0.0, 26.0], [10.0, 30.0, 8.0]);
    let mut all = vec![block([0.0; 3], [60.0, 40.0, 40.0]), upper];
    all.extend_from_slice(lower);
    mesh(&all)
}

/// A rib of 8 × 30 × 6 mm, let 2 mm into the block.
fn rib() -> Shape {
    block([33.0, 0.0, 10.0], [10.0, 30.0, 6.0])
}

/// Sand in the way of a mesh moved by `by`, by many places of it one after the other.
fn sand_met_mm3(piece: &Mesh, by: Vector, pattern: &Mesh, below_mm: f64) -> f64 {
    let metal = Body::of(pattern).unwrap();
    let steps = (0..=20).map(|step| {
        let moved = Mesh {
            points: piece
                .points
                .iter()
                .map(|&point| add(point, scale(by, f64::from(step) / 20.0)))
                .collect(),
            triangles: piece.triangles.clone(),
        };
        let [_, below] = Body::of(&moved)
            .unwrap()
            .cut_by_plane(UP, below_mm)
            .unwrap();
        below.without(&metal).unwrap().volume_mm3()
    });
    steps.fold(0.0, f64::max)
}

/// The lower rib is cut off flush with the block: 8 × 30 × 6 mm, moved 8 mm to the inside.
#[test]
fn a_rib_under_an_overhang_is_loose() {
    let pattern = under_a_rib(&[rib()]);
    assert!(held_mm3(&pattern) > 2000.0);
    let made = made(&pattern, 40.0, None);
    assert!(made.stuck.is_empty());
    let [piece] = made.pieces.as_slice() else {
        panic!("{} pieces", made.pieces.len());
    };
    close(volume(&piece.mesh), 8.0 * 30.0 * 6.0, 1e-9);
    close(piece.inward[0], -1.0, 1e-9);
    close(piece.move_mm, 8.0, 1e-9);
    assert!(piece.side == Side::Drag && piece.shaved_mm3 < 1e-6);
    close(
        volume(&made.body) + volume(&piece.mesh),
        volume(&pattern),
        1e-6,
    );
    assert_eq!(held_mm3(&made.body), 0.0);
    let in_block = scale(piece.inward, piece.move_mm);
    assert!(sand_met_mm3(&piece.mesh, in_block, &pattern, 40.0) < 1e-6);
}

/// With the joint at the foot of the block the cope hangs on the upper rib, 8 × 30 × 8 mm.
#[test]
fn in_the_cope_the_upper_rib_is_loose() {
    let pattern = under_a_rib(&[rib()]);
    let made = made(&pattern, 0.0, None);
    assert_eq!(made.pieces.len(), 1);
    assert_eq!(made.pieces[0].side, Side::Cope);
    close(volume(&made.pieces[0].mesh), 8.0 * 30.0 * 8.0, 1e-9);
    assert_eq!(held_mm3(&made.body), 0.0);
}

/// With the joint through the gap each half holds on its own rib.
#[test]
fn a_joint_between_the_ribs_makes_both_loose() {
    let pattern = under_a_rib(&[rib()]);
    let made = made(&pattern, 20.0, None);
    let sides: Vec<Side> = made.pieces.iter().map(|piece| piece.side).collect();
    assert_eq!(sides, [Side::Drag, Side::Cope]);
    let pieces: f64 = made.pieces.iter().map(|piece| volume(&piece.mesh)).sum();
    close(pieces, 8.0 * 30.0 * (6.0 + 8.0), 1e-9);
    close(volume(&made.body) + pieces, volume(&pattern), 1e-6);
}

/// A round boss of 20 mm, 8 mm long: all of it is behind its upper half. Pins of 3 mm go 6 mm
/// into the block and through the boss.
#[test]
fn a_boss_is_loose_and_pinned_through() {
    let boss = Shape {
        axis: [1.0, 0.0, 0.0],
        at: [28.0, 0.0, 13.0].map(Length::from_mm),
        ..cylinder([0.0; 3], 20.0, 10.0)
    };
    let upper = block([33.0, 0.0, 30.0], [10.0, 30.0, 8.0]);
    let pattern = mesh(&[block([0.0; 3], [60.0, 40.0, 40.0]), upper, boss]);
    let wish = PinWish {
        diameter_mm: Some(3.0),
        clearance_mm: 0.2,
    };
    let plain = made(&pattern, 40.0, None);
    let made = made(&pattern, 40.0, Some(&wish));
    assert_eq!(made.pieces.len(), 1);
    let boss = std::f64::consts::PI * 100.0 * 8.0;
    close(volume(&plain.pieces[0].mesh), boss, 2e-3);
    assert_eq!(held_mm3(&plain.body), 0.0);
    let pins = made.pieces[0].pins.unwrap();
    let hole = |d: f64, long: f64| 2.0 * std::f64::consts::PI / 4.0 * d * d * long;
    let of_piece = volume(&plain.pieces[0].mesh) - volume(&made.pieces[0].mesh);
    close(of_piece, hole(3.2, 8.0), 0.01);
    close(
        volume(&plain.body) - volume(&made.body),
        hole(3.0, 6.0),
        0.01,
    );
    let apart = (pins.places_mm[0][1] - pins.places_mm[1][1])
        .hypot(pins.places_mm[0][2] - pins.places_mm[1][2]);
    assert!(apart >= 6.0, "{apart}");
}

/// Like the bar of a T-slot: a head of 4 × 28 × 6 mm on a stem of 5 × 10 × 6 mm. Moved to the
/// inside the head comes to lie in the sand beside the stem, 4 × 18 × 6 mm of it: there is no loose
/// piece.
#[test]
fn a_head_on_a_stem_is_told_with_the_sand_in_its_way() {
    let stem = block([32.0, 0.0, 10.0], [8.0, 10.0, 6.0]);
    let head = block([37.0, 0.0, 10.0], [4.0, 28.0, 6.0]);
    let pattern = under_a_rib(&[stem, head]);
    let made = made(&pattern, 40.0, None);
    assert!(made.pieces.is_empty());
    assert_eq!(made.stuck.len(), 1, "{:?}", made.stuck);
    close(made.stuck[0].in_the_way_mm3, 4.0 * 18.0 * 6.0, 1e-6);
    close(volume(&made.body), volume(&pattern), 1e-9);
}

/// The base of a truss, drawn across its bars, with the joint half way up: of its lugs at the far
/// end one, 10.5 × 10 × 30 mm, overhangs another. The body draws there, and the piece comes out.
#[test]
fn the_lug_of_a_real_truss_is_loose() {
    let mut pattern = example("truss_base.stl");
    for point in &mut pattern.points {
        *point = [point[2], point[0], point[1]];
    }
    let [low, high] = pattern.bounds();
    let joint_mm = (low[2] + high[2]) / 2.0;
    let settings = DrawSettings::suiting(&pattern);
    let found = undercuts(&pattern, UP, &settings).unwrap();
    let made = loosened(&pattern, &Joint::Flat(joint_mm), &found.regions, None).unwrap();
    let [piece] = made.pieces.as_slice() else {
        panic!("{} pieces", made.pieces.len());
    };
    let whole = volume(&made.body) + volume(&piece.mesh);
    close(whole, volume(&pattern), 1e-6);
    // The one hollow is gone and no other has grown.
    let [low, high] = piece.mesh.bounds();
    let over = |at: Vector| (0..2).all(|axis| low[axis] <= at[axis] && at[axis] <= high[axis]);
    let advised = |hollow: &&Trapped| hollow.advice.remedy == Remedy::LoosePiece;
    let freed = found.regions.iter().filter(advised);
    let freed = freed.filter(|hollow| over(hollow.centre_mm));
    let freed_mm3 = freed.map(|hollow| hollow.volume_mm3).sum::<f64>();
    assert!(freed_mm3 > 200.0);
    close(held_mm3(&made.body), found.trapped_mm3 - freed_mm3, 1e-6);
    // What it shaves is nearer to the pattern than the play of its rapping, on two sides.
    let by = scale(piece.inward, piece.move_mm);
    let [_, wide, tall] = [0, 1, 2].map(|axis| high[axis] - low[axis]);
    let within_play = 2.0 * settings.play_mm * tall * (wide + piece.move_mm);
    assert!(sand_met_mm3(&piece.mesh, by, &pattern, joint_mm) < within_play);
}
