//! Cores as solids: bodies, prints, boxes and vents against what geometry says of plain parts.

#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot get at its part must fail"
)]

mod on_pattern;

use std::f64::consts::PI;

use measure::length::Length;
use pattern::boolean::Body;
use pattern::cores::CoreError;
use pattern::cores::body::{CoreBody, bodies};
use pattern::cores::core_box::{BoxSettings, core_box};
use pattern::cores::print::{PrintSize, PrintedCore, bearing, with_prints};
use pattern::cores::vent::vents;
use pattern::draw::DrawSettings;
use pattern::draw::frame::DrawFrame;
use pattern::draw::undercut::undercuts;
use pattern::look::look;
use pattern::mesh::Mesh;
use pattern::shape::{Form, Shape, build};
use pattern::unit::Unit;
use pattern::vector::{Vector, add, cross, norm, scale, sub};

const UP: Vector = [0.0, 0.0, 1.0];

fn mm(mm: f64) -> Length {
    Length::from_mm(mm)
}

fn placed(form: Form, at: Vector, axis: Vector, is_taken_away: bool) -> Shape {
    Shape {
        form,
        at: at.map(mm),
        axis,
        turn_degrees: 0.0,
        is_taken_away,
    }
}

fn block(at: Vector, size: Vector, is_taken_away: bool) -> Shape {
    placed(Form::Block { size: size.map(mm) }, at, UP, is_taken_away)
}

fn bore(at: Vector, axis: Vector, diameter: f64, length: f64) -> Shape {
    let form = Form::Cylinder {
        diameter: mm(diameter),
        length: mm(length),
    };
    placed(form, at, axis, true)
}

fn part(shapes: &[Shape]) -> Mesh {
    build(shapes).unwrap().looked.mesh
}

fn volume(mesh: &Mesh) -> f64 {
    Body::of(mesh).unwrap().volume_mm3()
}

fn bodies_of(part: &Mesh) -> Result<Vec<CoreBody>, CoreError> {
    let found = undercuts(part, UP, &DrawSettings::suiting(part)).unwrap();
    bodies(part, UP, &found.regions, found.column_mm)
}

fn printed(body: &CoreBody, length_mm: f64) -> PrintedCore {
    let size = PrintSize {
        length_mm,
        play_mm: 0.3,
    };
    let ends: Vec<_> = bearing(body, UP)
        .into_iter()
        .map(|end| (end, size))
        .collect();
    with_prints(body, &ends).unwrap()
}

/// A block of 60 × 40 × 40 mm with a bore of 20 mm along x.
fn bored() -> Mesh {
    let body = block([0.0; 3], [60.0, 40.0, 40.0], false);
    part(&[body, bore([-40.0, 0.0, 20.0], [1.0, 0.0, 0.0], 20.0, 80.0)])
}

#[track_caller]
fn near(found: f64, wanted: f64, within: f64) {
    assert!(
        (found / wanted - 1.0).abs() < within,
        "{found} for {wanted}"
    );
}

/// π/4 · 20² · 60 mm³ of bore, filled flush with both ends; part and core together are the block.
#[test]
fn a_bore_is_filled_flush_and_opens_at_both_ends() {
    let part = bored();
    let bodies = bodies_of(&part).unwrap();
    assert_eq!(bodies.len(), 1);
    let core = &bodies[0];
    near(core.volume_mm3, PI / 4.0 * 400.0 * 60.0, 1e-3);
    near(core.volume_mm3 + volume(&part), 60.0 * 40.0 * 40.0, 1e-9);
    assert_eq!(core.openings.len(), 2);
    for opening in &core.openings {
        near(opening.area_mm2, PI * 100.0, 1e-3);
        near(opening.out[0].abs(), 1.0, 1e-9);
        near(opening.across_mm(), 20.0, 1e-3);
        assert!(opening.is_sideways(UP));
    }
}

/// Two prints of 25 mm: π/4 · 20² · (60 + 2 · 25); on the pattern each is 25.3 long, 20.6 across
/// and starts a fiftieth of its length inside the core.
#[test]
fn prints_lengthen_the_core_and_are_wider_on_the_pattern() {
    let printed = printed(&bodies_of(&bored()).unwrap()[0], 25.0);
    near(printed.volume_mm3, PI / 4.0 * 400.0 * 110.0, 1e-3);
    assert_eq!(printed.prints.len(), 2);
    for print in &printed.prints {
        near(volume(print), PI / 4.0 * 20.6 * 20.6 * 25.3 * 1.02, 1e-3);
    }
}

/// The core's own print can be shifted by nearly its play of 0.3 mm, across and outward, and stays
/// within the print of the pattern.
#[test]
fn the_print_of_the_core_lies_within_that_of_the_pattern_by_its_play() {
    let printed = printed(&bodies_of(&bored()).unwrap()[0], 25.0);
    let core = Body::of(&printed.core).unwrap();
    let prints = printed.prints.iter().map(|print| Body::of(print).unwrap());
    let prints = prints.reduce(|a, b| a.with(&b).unwrap()).unwrap();
    for by in [
        [0.0; 3],
        [0.0, 0.29, 0.0],
        [0.0, 0.0, -0.29],
        [0.29, 0.0, 0.0],
        [-0.29, 0.0, 0.0],
    ] {
        for way in [-1.0, 1.0] {
            let [print, _] = core.cut_by_plane([way, 0.0, 0.0], 30.0).unwrap();
            let mut shifted = print.mesh();
            for point in &mut shifted.points {
                *point = add(*point, by);
            }
            let out = Body::of(&shifted).unwrap().without(&prints).unwrap();
            assert!(
                out.volume_mm3() < 1e-6,
                "{by:?} {way}: {}",
                out.volume_mm3()
            );
        }
    }
}

/// A slot like a T upside down: 10 mm wide at the top, 30 mm wide at its foot, running through.
#[test]
fn both_wings_of_a_slot_are_one_core() {
    let wings = block([0.0, 0.0, 10.0], [100.0, 30.0, 8.0], true);
    let neck = block([0.0, 0.0, 18.0], [100.0, 10.0, 30.0], true);
    let part = part(&[block([0.0; 3], [60.0, 60.0, 40.0], false), wings, neck]);
    let bodies = bodies_of(&part).unwrap();
    assert_eq!(bodies.len(), 1);
    assert_eq!(bodies[0].fills.len(), 2);
    // The foot of the T, and of the neck no more than the columns are apart.
    near(bodies[0].volume_mm3, 60.0 * 30.0 * 8.0, 0.02);
    let ends = bearing(&bodies[0], UP);
    assert_eq!(ends.len(), 2);
    assert!(ends.iter().all(|end| end.out[0].abs() > 0.99));
}

/// A groove of 6 × 8 mm around a pulley of 80 mm: π (40² − 34²) · 8 mm³, with one opening around.
#[test]
fn a_groove_is_filled_by_a_ring_whose_print_stands_out_all_round() {
    let pulley = |diameter: f64, z: f64, height: f64| {
        let form = Form::Cylinder {
            diameter: mm(diameter),
            length: mm(height),
        };
        placed(form, [0.0, 0.0, z], UP, false)
    };
    let part = part(&[
        pulley(80.0, 0.0, 10.0),
        pulley(68.0, 10.0, 8.0),
        pulley(80.0, 18.0, 10.0),
    ]);
    let bodies = bodies_of(&part).unwrap();
    assert_eq!(bodies.len(), 1);
    let ring = PI * (40.0_f64.powi(2) - 34.0_f64.powi(2)) * 8.0;
    near(bodies[0].volume_mm3, ring, 0.01);
    assert_eq!(bodies[0].openings.len(), 1);
    assert!(norm(bodies[0].openings[0].out) < 1e-9);
    let printed = printed(&bodies[0], 10.0);
    let outer = PI * (50.0_f64.powi(2) - 40.0_f64.powi(2)) * 8.0;
    near(printed.volume_mm3, ring + outer, 0.01);
}

#[test]
fn a_hollow_that_opens_nowhere_is_refused_with_its_place() {
    let ball = placed(
        Form::Ball { diameter: mm(20.0) },
        [5.0, 0.0, 20.0],
        UP,
        true,
    );
    let part = part(&[block([0.0; 3], [60.0, 40.0, 40.0], false), ball]);
    let Err(CoreError::NoPrint { centre_mm }) = bodies_of(&part) else {
        panic!("a closed hollow has no core");
    };
    assert!(
        norm(sub(centre_mm, [5.0, 0.0, 20.0])) < 0.5,
        "{centre_mm:?}"
    );
}

/// A round core with its prints lets go of two halves; they and it fill the block, less the two
/// holes of the dowels through its whole height.
#[test]
fn a_round_core_has_a_box_of_two_halves_open_at_the_prints() {
    let printed = printed(&bodies_of(&bored()).unwrap()[0], 25.0);
    let ends = [[1.0, 0.0, 0.0], [-1.0, 0.0, 0.0]];
    let settings = BoxSettings {
        wall_mm: 10.0,
        dowel_mm: 0.0,
    };
    let made = core_box(&printed.core, &ends, settings).unwrap();
    assert_eq!(made.open_sides, 2);
    // Across the core, not along it: the halves are 10 mm deep and not 55.
    assert!(made.up[0].abs() < 1e-9);
    let all = made.volumes_mm3[0] + made.volumes_mm3[1] + printed.volume_mm3;
    let [low, high] = printed.core.bounds();
    let [long, wide, tall] = sub(high, low);
    near(all, long * (wide + 20.0) * (tall + 20.0), 1e-6);
    near(made.volumes_mm3[0], made.volumes_mm3[1], 0.01);
    let with = BoxSettings {
        wall_mm: 10.0,
        dowel_mm: 6.0,
    };
    let pinned = core_box(&printed.core, &ends, with).unwrap();
    let holes = all - printed.volume_mm3 - pinned.volumes_mm3[0] - pinned.volumes_mm3[1];
    near(holes, 2.0 * PI / 4.0 * 36.0 * 40.0, 0.01);
}

/// A round bar along a course, its sections square to it, closed at both ends.
fn bar(course: &[Vector], radius: f64) -> Mesh {
    const SIDES: u32 = 24;
    let mut mesh = Mesh::default();
    for (at, &place) in course.iter().enumerate() {
        let way = sub(
            course[(at + 1).min(course.len() - 1)],
            course[at.saturating_sub(1)],
        );
        let way = scale(way, 1.0 / norm(way));
        let across = cross(UP, way);
        let across = scale(across, 1.0 / norm(across));
        let above = cross(way, across);
        mesh.points.extend((0..SIDES).map(|side| {
            let (sine, cosine) = (2.0 * PI * f64::from(side) / f64::from(SIDES)).sin_cos();
            let aside = add(scale(across, radius * cosine), scale(above, radius * sine));
            add(place, aside)
        }));
    }
    let ring = |at: usize, side: u32| at as u32 * SIDES + side % SIDES;
    for (at, side) in (1..course.len()).flat_map(|at| (0..SIDES).map(move |side| (at, side))) {
        let (a, b) = (ring(at - 1, side), ring(at - 1, side + 1));
        let (c, d) = (ring(at, side + 1), ring(at, side));
        mesh.triangles.extend([[a, b, c], [a, c, d]]);
    }
    for (at, is_first) in [(0, true), (course.len() - 1, false)] {
        let fan = (1..SIDES - 1).map(|side| match is_first {
            true => [ring(at, 0), ring(at, side + 1), ring(at, side)],
            false => [ring(at, 0), ring(at, side), ring(at, side + 1)],
        });
        mesh.triangles.extend(fan);
    }
    mesh
}

/// An open bend with a flange at each end, lying as it is moulded: the core is its bore and
/// nothing beside it, π/4 · 12² mm² along a quarter of 40 mm and twice 15 mm, as far as 24 sides
/// are round.
#[test]
fn the_core_of_an_open_bend_is_its_bore_alone() {
    let course = |beyond: f64| {
        let mut course = vec![[-15.0 - beyond, -40.0, 0.0]];
        course.extend((0..=24).map(|step| {
            let (sine, cosine) = (PI / 2.0 * f64::from(step) / 24.0).sin_cos();
            [40.0 * sine, -40.0 * cosine, 0.0]
        }));
        course.push([40.0, 15.0 + beyond, 0.0]);
        course
    };
    let disc = |at: Vector, way: Vector| bar(&[at, add(at, scale(way, 6.0))], 20.0);
    let body = |mesh: &Mesh| Body::of(mesh).unwrap();
    let ends = [
        disc([-15.0, -40.0, 0.0], [1.0, 0.0, 0.0]),
        disc([40.0, 9.0, 0.0], [0.0, 1.0, 0.0]),
    ];
    let outside = ends
        .iter()
        .fold(body(&bar(&course(0.0), 10.0)), |all, end| {
            all.with(&body(end)).unwrap()
        });
    let inner = body(&bar(&course(5.0), 6.0));
    let pipe = outside.without(&inner).unwrap();
    let bodies = bodies_of(&pipe.mesh()).unwrap();
    assert_eq!(bodies.len(), 1);
    let round = 24.0 / (2.0 * PI) * (2.0 * PI / 24.0).sin();
    let bore = PI * 36.0 * round * (PI / 2.0 * 40.0 + 30.0);
    near(bodies[0].volume_mm3, bore, 2e-3);
    near(
        bodies[0].volume_mm3,
        outside.common_with(&inner).unwrap().volume_mm3(),
        1e-6,
    );
    assert_eq!(bodies[0].openings.len(), 2);
}

/// The same of a real pipe with two bends, lying flat: its bore alone, between two mouths of 34 mm,
/// which is how far apart the points of their rims lie.
#[test]
fn the_core_of_a_real_bend_opens_at_its_two_flanges() {
    let name = "pipe_bend_metres.stl";
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/meshes/");
    let bytes = std::fs::read(format!("{folder}{name}")).unwrap();
    let mut pipe = look(name, &bytes, Some(Unit::Metre)).unwrap().mesh;
    for point in &mut pipe.points {
        *point = [point[1], point[2], point[0]];
    }
    let bodies = bodies_of(&pipe).unwrap();
    let most = bodies
        .iter()
        .max_by(|a, b| a.volume_mm3.total_cmp(&b.volume_mm3));
    let core = most.unwrap();
    assert_eq!(core.openings.len(), 2);
    for opening in &core.openings {
        near(opening.area_mm2, PI / 4.0 * 34.0 * 34.0, 0.02);
    }
    let [part, own] = [&pipe, &core.mesh].map(|mesh| Body::of(mesh).unwrap());
    assert!(part.common_with(&own).unwrap().volume_mm3() < 1e-6 * core.volume_mm3);
    // The bore is 34 mm wide, so that nothing of a core beside the pipe is in it.
    let [low, high] = core.mesh.bounds();
    near(high[2] - low[2], 34.0, 1e-3);
}

/// A core that bends a quarter round level, radius 30 mm, and goes on up a slope of 1 in 2: no
/// plane holds its middle line, so that every flat joint catches it.
fn bent_crosswise() -> Mesh {
    let mut course = vec![[-20.0, -30.0, 0.0]];
    course.extend((0..=24).map(|step| {
        let (sine, cosine) = (PI / 2.0 * f64::from(step) / 24.0).sin_cos();
        [30.0 * sine, -30.0 * cosine, 0.0]
    }));
    course.extend([[30.0, 10.0, 1.5], [30.0, 15.0, 3.5], [30.0, 50.0, 21.0]]);
    bar(&course, 6.0)
}

/// The box of a core bent twice parts along a step; each half comes off without cutting the core
/// by more than a share of what a column holds, and all three are the block.
#[test]
fn a_core_bent_crosswise_has_a_box_that_parts_along_a_step() {
    let core = bent_crosswise();
    let whole = Body::of(&core).unwrap();
    let settings = BoxSettings {
        wall_mm: 10.0,
        dowel_mm: 0.0,
    };
    let made = core_box(&core, &[[-1.0, 0.0, 0.0], [0.0, 0.894, 0.447]], settings).unwrap();
    assert!(made.is_stepped);
    let frame = DrawFrame::drawing_along(made.up).unwrap();
    let [low, high] = frame.turned(&core).bounds();
    // It is opened across both prints, which end squarely on two sides.
    near(made.up[1].abs(), 0.447, 1e-3);
    assert_eq!(made.open_sides, 2);
    let [long, wide, tall] = sub(high, low);
    let all = made.volumes_mm3[0] + made.volumes_mm3[1] + whole.volume_mm3();
    near(all, (long + 10.0) * (wide + 10.0) * (tall + 20.0), 1e-6);
    for (half, way) in made.halves.iter().zip([-1.0, 1.0]) {
        for by in [0.5, 2.0, 6.0, 15.0, 40.0] {
            let lifted = Body::of(&half.moved(scale(made.up, way * by))).unwrap();
            let cut = lifted.common_with(&whole).unwrap();
            assert!(
                cut.volume_mm3() < 5e-3 * whole.volume_mm3(),
                "{}",
                cut.volume_mm3()
            );
        }
    }
}

/// A ball with knobs on three arms at right angles: the neck under the knob that stands up is a
/// groove all round, which any two halves catch. Two slides free it, one from each side; drawn out
/// they pass the core by, and the halves then lift off it. All together is the block.
#[test]
fn a_core_that_no_two_halves_let_go_has_slides_in_its_box() {
    let ball = |z: f64| placed(Form::Ball { diameter: mm(40.0) }, [0.0, 0.0, z], UP, false);
    let arm = |axis: Vector| {
        let form = Form::Cylinder {
            diameter: mm(8.0),
            length: mm(60.0),
        };
        placed(form, [0.0; 3], axis, false)
    };
    let knob = |at: Vector| placed(Form::Ball { diameter: mm(24.0) }, at, UP, false);
    let core = part(&[
        ball(0.0),
        arm([1.0, 0.0, 0.0]),
        arm([0.0, 1.0, 0.0]),
        arm(UP),
        knob([60.0, 0.0, 0.0]),
        knob([0.0, 60.0, 0.0]),
        knob([0.0, 0.0, 60.0]),
    ]);
    let settings = BoxSettings {
        wall_mm: 8.0,
        dowel_mm: 0.0,
    };
    let made = core_box(&core, &[], settings).unwrap();
    assert_eq!(made.slides.len(), 2);
    let whole = Body::of(&core).unwrap();
    let frame = DrawFrame::drawing_along(made.up).unwrap();
    let [low, high] = frame.turned(&core).bounds();
    let block: f64 = sub(high, low).map(|side| side + 16.0).iter().product();
    let slides: f64 = made.slides.iter().map(|slide| slide.volume_mm3).sum();
    let all = made.volumes_mm3[0] + made.volumes_mm3[1] + slides + whole.volume_mm3();
    near(all, block, 1e-6);
    let slides = made.slides.iter().map(|slide| (&slide.mesh, slide.way));
    let halves = made.halves.iter().zip([-1.0, 1.0]);
    let halves = halves.map(|(half, way)| (half, scale(made.up, way)));
    for (piece, way) in slides.chain(halves) {
        for by in [0.5, 2.0, 6.0, 15.0, 40.0] {
            let drawn = Body::of(&piece.moved(scale(way, by))).unwrap();
            let cut = drawn.common_with(&whole).unwrap().volume_mm3();
            assert!(cut < 5e-3 * whole.volume_mm3(), "{cut} after {by} mm");
        }
    }
}

/// Two knobs stand up side by side and two stand out beside them, so that two grooves are caught
/// whichever way the box is opened across them. No room is in two pieces of the box, nor in none.
#[test]
fn the_slides_of_two_grooves_share_no_room() {
    let knobbed = |x: f64, axis: Vector| {
        let arm = Form::Cylinder {
            diameter: mm(8.0),
            length: mm(40.0),
        };
        let knob = Form::Ball { diameter: mm(20.0) };
        let end = add([x, 0.0, 0.0], scale(axis, 40.0));
        [
            placed(arm, [x, 0.0, 0.0], axis, false),
            placed(knob, end, UP, false),
        ]
    };
    let foot = block([0.0, 0.0, -8.0], [90.0, 30.0, 16.0], false);
    let side = [0.0, 1.0, 0.0];
    let knobs = [(-25.0, UP), (25.0, UP), (-25.0, side), (25.0, side)];
    let knobs = knobs.into_iter().flat_map(|(x, axis)| knobbed(x, axis));
    let core = part(&std::iter::once(foot).chain(knobs).collect::<Vec<Shape>>());
    let settings = BoxSettings {
        wall_mm: 8.0,
        dowel_mm: 0.0,
    };
    let made = core_box(&core, &[], settings).unwrap();
    assert!(made.slides.len() >= 2, "{}", made.slides.len());
    let frame = DrawFrame::drawing_along(made.up).unwrap();
    let [low, high] = frame.turned(&core).bounds();
    let block: f64 = sub(high, low).map(|side| side + 16.0).iter().product();
    let slides: f64 = made.slides.iter().map(|slide| slide.volume_mm3).sum();
    let all = made.volumes_mm3[0] + made.volumes_mm3[1] + slides + volume(&core);
    near(all, block, 1e-6);
}

/// A pocket wider within than at its mouth holds what is rammed around: the box would have to stay
/// in it.
#[test]
fn a_core_with_a_pocket_wider_within_has_no_box() {
    let core = part(&[
        block([0.0; 3], [60.0, 60.0, 50.0], false),
        bore([0.0, 0.0, 10.0], UP, 30.0, 20.0),
        bore([0.0, 0.0, 25.0], UP, 15.0, 30.0),
    ]);
    let settings = BoxSettings {
        wall_mm: 8.0,
        dowel_mm: 0.0,
    };
    let Err(CoreError::NoBox { held_mm3, .. }) = core_box(&core, &[], settings) else {
        panic!("such a core is caught");
    };
    // The ring of the pocket beside its mouth.
    near(
        held_mm3,
        PI / 4.0 * (30.0 * 30.0 - 15.0 * 15.0) * 20.0,
        0.05,
    );
}

/// Down the middle of a straight round core: as long as the core, clear by nearly its radius.
#[test]
fn a_straight_core_breathes_by_one_straight_wire() {
    let printed = printed(&bodies_of(&bored()).unwrap()[0], 25.0);
    let ends = [[55.0, 0.0, 20.0], [-55.0, 0.0, 20.0]];
    let vents = vents(&printed.core, printed.volume_mm3, &ends);
    assert_eq!(vents.len(), 1);
    assert!(vents[0].is_straight, "{vents:?}");
    near(vents[0].length_mm, 110.0, 0.05);
    assert!(
        (8.0..10.1).contains(&vents[0].clear_mm),
        "{}",
        vents[0].clear_mm
    );
}

/// A bend has no straight vent, and the vent keeps off its walls.
#[test]
fn a_bent_core_breathes_along_its_middle() {
    let bend = [
        bore([-40.0, 0.0, 20.0], [1.0, 0.0, 0.0], 16.0, 40.0),
        bore([0.0, -40.0, 20.0], [0.0, 1.0, 0.0], 16.0, 40.0),
        placed(
            Form::Ball { diameter: mm(16.0) },
            [0.0, 0.0, 20.0],
            UP,
            true,
        ),
    ];
    let mut shapes = vec![block([0.0; 3], [60.0, 60.0, 40.0], false)];
    shapes.extend(bend);
    let bodies = bodies_of(&part(&shapes)).unwrap();
    let printed = printed(&bodies[0], 15.0);
    let ends = [[-45.0, 0.0, 20.0], [0.0, -45.0, 20.0]];
    let vents = vents(&printed.core, printed.volume_mm3, &ends);
    assert_eq!(vents.len(), 1);
    assert!(
        !vents[0].is_straight && vents[0].clear_mm > 5.0,
        "{vents:?}"
    );
    near(vents[0].length_mm, 90.0, 0.1);
}
