//! Moulds of plates: where their pieces lie, what they hold, what is noticed.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod cores;
mod plates;
mod wandering;

use pattern::mesh::Mesh;
use rigging::error::MouldError;
use rigging::fact::Fact;
use rigging::given::{Core, Given, Half};
use rigging::mould::{Mould, mould};
use rigging::piece::{Piece, Solid};
use rigging::placement::{FeederAt, Placement};

use plates::{block, heights, mm, plates};

fn by_rule(given: &Given) -> Mould {
    mould(given, &Placement::default()).unwrap()
}

fn piece<'a>(mould: &'a Mould, piece: &Piece) -> &'a Solid {
    let found = mould.solids().find(|solid| solid.piece == *piece);
    found.unwrap()
}

fn middle(solid: &Solid) -> [f64; 2] {
    let [low, high] = solid.mesh.bounds();
    [0, 1].map(|axis| (low[axis] + high[axis]) / 2.0)
}

fn near(value: f64, wanted: f64, share: f64) {
    assert!(
        (value - wanted).abs() <= share * wanted.abs(),
        "{value}, wanted {wanted}"
    );
}

/// Facts that say that something is wrong with how pieces meet or draw.
fn is_broken(fact: &Fact) -> bool {
    matches!(
        fact,
        Fact::Touch { .. } | Fact::Apart { .. } | Fact::Hooks { .. } | Fact::NoGate { .. }
    )
}

/// A cone cut off holds π h (D² + D d + d²) / 12.
#[test]
fn a_sprue_holds_what_a_cone_cut_off_does() {
    let given = plates(1, [60.0, 0.0]);
    let built = by_rule(&given);
    let sprue = piece(&built, &Piece::Sprue);
    let [low, high] = sprue.mesh.bounds();
    let (top, foot) = (14.0, 10.0);
    // The runner lies in the drag: the sprue goes from the foot of the basin to the joint, and a
    // millimetre on at either end along the same taper.
    let head = 100.0 - given.sizes.basin.depth.as_mm();
    near(high[2], head + 1.0, 1e-9);
    near(low[2], -1.0, 1e-9);
    let taper = (top - foot) / head;
    let (wide, narrow) = (top + taper, foot - taper);
    let squares = wide * wide + wide * narrow + narrow * narrow;
    let frustum = std::f64::consts::PI * (head + 2.0) / 12.0 * squares;
    near(sprue.volume.as_mm3(), frustum, 1e-9);
}

/// Volume of metal counted on lines straight up through all pieces, a millimetre apart.
fn counted(built: &Mould, cope: f64) -> f64 {
    let pieces: Vec<&Mesh> = built
        .castings
        .iter()
        .chain(&built.rigging)
        .map(|s| &s.mesh)
        .collect();
    let bounds: Vec<_> = pieces.iter().map(|mesh| mesh.bounds()).collect();
    let reach = |axis: usize| {
        let low = bounds
            .iter()
            .map(|b| b[0][axis])
            .fold(f64::INFINITY, f64::min);
        let high = bounds.iter().map(|b| b[1][axis]).fold(0.0, f64::max);
        (low.floor() as i32, high.ceil() as i32)
    };
    let ((left, right), (front, back)) = (reach(0), reach(1));
    let mut volume = 0.0;
    for x in left..right {
        for y in front..back {
            let (x, y) = (f64::from(x) + 0.503, f64::from(y) + 0.497);
            let is_over =
                |b: &[[f64; 3]; 2]| b[0][0] < x && x < b[1][0] && b[0][1] < y && y < b[1][1];
            let over = pieces.iter().zip(&bounds).filter(|(_, b)| is_over(b));
            let mut spans: Vec<[f64; 2]> = over
                .flat_map(|(mesh, _)| {
                    heights(mesh, x, y)
                        .chunks_exact(2)
                        .map(|p| [p[0], p[1].min(cope)])
                        .collect::<Vec<_>>()
                })
                .collect();
            spans.sort_by(|a, b| a[0].total_cmp(&b[0]));
            let mut filled_to = f64::NEG_INFINITY;
            for [low, high] in spans {
                volume += (high - low.max(filled_to)).max(0.0);
                filled_to = filled_to.max(high);
            }
        }
    }
    volume
}

#[test]
fn the_metal_is_all_pieces_counted_once() {
    let given = plates(2, [80.0, 40.0]);
    let built = by_rule(&given);
    let by_lines = counted(&built, given.flask.cope.as_mm());
    near(built.cavity.volume.as_mm3(), by_lines, 0.005);
    // And nothing is poured beside: it is one body.
    let edges = pattern::mesh::Edges::of(&built.cavity.mesh);
    assert!(edges.open().is_empty() && edges.over_shared() == 0);
    assert_eq!(bodies(&built.cavity.mesh), 1);
}

/// Separate skins of a mesh, by joining the corners of each facet.
fn bodies(mesh: &Mesh) -> usize {
    let mut of: Vec<usize> = (0..mesh.points.len()).collect();
    fn root(of: &mut [usize], mut at: usize) -> usize {
        while of[at] != at {
            of[at] = of[of[at]];
            at = of[at];
        }
        at
    }
    for [a, b, c] in mesh
        .triangles
        .iter()
        .map(|t| t.map(|corner| corner as usize))
    {
        for (p, q) in [(a, b), (b, c)] {
            let (p, q) = (root(&mut of, p), root(&mut of, q));
            of[p] = q;
        }
    }
    (0..of.len()).filter(|&at| of[at] == at).count()
}

#[test]
fn sand_metal_and_vents_fill_the_flask() {
    for count in [1, 2, 4, 6] {
        let built = by_rule(&plates(count, [120.0, 120.0]));
        assert!(built.off_by.abs() < 1e-9, "{count}: {}", built.off_by);
        let broken: Vec<_> = built.facts.iter().filter(|fact| is_broken(fact)).collect();
        assert!(broken.is_empty(), "{count}: {broken:?}");
        assert_eq!(built.castings.len(), count);
        for solid in [&built.cope, &built.drag] {
            near(solid.mass.as_kg(), 1600.0 * solid.volume.as_m3(), 1e-12);
        }
        let gates = built
            .rigging
            .iter()
            .filter(|s| matches!(s.piece, Piece::Gate(_)));
        assert!(gates.count() >= count);
    }
}

/// Between them the gates of a mould have the area asked for: width half way down times depth.
#[test]
fn gates_and_runners_have_the_areas_asked_for() {
    let given = plates(4, [120.0, 120.0]);
    let built = by_rule(&given);
    let depth = |solid: &Solid, half: Half| {
        let [low, high] = solid.mesh.bounds();
        match half {
            Half::Cope => high[2],
            Half::Drag => -low[2],
        }
    };
    // A gate is cut at a plane half way between runner and casting, a runner somewhere past its
    // end; both are trapezoids, and areas by the slice of the slab of a thousandth there.
    let area = |solid: &Solid, axis: usize, at: f64| {
        let outline = pattern::slice::outlines(&solid.mesh, axis, at);
        let twice: f64 = outline
            .iter()
            .flat_map(|outline| {
                (0..outline.len()).map(move |i| {
                    let ([a, b], [c, d]) = (outline[i], outline[(i + 1) % outline.len()]);
                    a * d - b * c
                })
            })
            .sum();
        twice / 2.0
    };
    let gates: Vec<&Solid> = built
        .rigging
        .iter()
        .filter(|s| matches!(s.piece, Piece::Gate(_)))
        .collect();
    let runs = |solid: &Solid| {
        let [low, high] = solid.mesh.bounds();
        usize::from(high[1] - low[1] > high[0] - low[0])
    };
    let mut all = 0.0;
    for gate in &gates {
        assert!(depth(gate, Half::Cope) >= 3.0);
        // Gates are short and broad: they run across their own longer side.
        let runner = piece(&built, &Piece::Runner(1));
        let axis = 1 - runs(runner);
        let [low, high] = gate.mesh.bounds();
        let (line, far) = (
            middle(runner)[axis],
            if middle(gate)[axis] > middle(runner)[axis] {
                high
            } else {
                low
            },
        );
        // Past the root in the runner, short of the slope at the end.
        all += area(gate, axis, line + 0.75 * (far[axis] - line)).abs();
    }
    near(all, 160.0, 0.02);
}

#[test]
fn a_sprue_moved_stands_where_it_is_wanted_and_is_joined() {
    let given = plates(1, [120.0, 60.0]);
    let placed = by_rule(&given);
    let was = middle(piece(&placed, &Piece::Sprue));
    let wanted = [was[0] + 12.0, was[1] + 40.0];
    let placement = Placement {
        sprue_mm: Some(wanted),
        ..Placement::default()
    };
    let built = mould(&given, &placement).unwrap();
    let stands = middle(piece(&built, &Piece::Sprue));
    assert!(
        (0..2).all(|axis| (stands[axis] - wanted[axis]).abs() < 0.05),
        "{stands:?}"
    );
    assert!(built.off_by.abs() < 1e-9);
    assert!(!built.facts.iter().any(is_broken), "{:?}", built.facts);
    assert_eq!(bodies(&built.cavity.mesh), 1);
    // Wanted on the casting it stands there, and that is told.
    let over = middle(&built.castings[0]);
    let placement = Placement {
        sprue_mm: Some(over),
        ..Placement::default()
    };
    let built = mould(&given, &placement).unwrap();
    let touches = |fact: &Fact| {
        matches!(
            fact,
            Fact::Touch {
                piece: Piece::Sprue | Piece::Well,
                other: Piece::Casting(1),
                ..
            }
        )
    };
    assert!(built.facts.iter().any(touches), "{:?}", built.facts);
    let outside = Placement {
        sprue_mm: Some([-1.0, 10.0]),
        ..Placement::default()
    };
    assert!(matches!(
        mould(&given, &outside),
        Err(MouldError::Outside { .. })
    ));
}

#[test]
fn a_gate_enters_where_it_is_wanted() {
    let given = plates(1, [60.0, 0.0]);
    let placed = by_rule(&given);
    let gate = piece(&placed, &Piece::Gate(1));
    let casting = placed.castings[0].mesh.bounds();
    let runner = middle(piece(&placed, &Piece::Runner(1)));
    let side = if runner[0] > casting[1][0] {
        casting[1][0]
    } else {
        casting[0][0]
    };
    let wanted = [side, casting[0][1] + 20.0];
    assert!((middle(gate)[1] - wanted[1]).abs() > 1.0);
    let placement = Placement {
        gates_mm: Some(vec![wanted]),
        ..Placement::default()
    };
    let built = mould(&given, &placement).unwrap();
    let gate = piece(&built, &Piece::Gate(1));
    near(middle(gate)[1], wanted[1], 1e-9);
    assert!(!built.facts.iter().any(is_broken), "{:?}", built.facts);
}

/// A feeder on a plate shares with it what its neck reaches in, and one set into the runner is
/// told.
#[test]
fn feeders_meet_their_casting_and_nothing_else() {
    let given = plates(1, [60.0, 0.0]);
    let built = by_rule(&given);
    let feeder = piece(&built, &Piece::Feeder(1));
    // The middle of the plate lies two balls of it from its edge: it is fed from above.
    let over = middle(&built.castings[0]);
    let stands = middle(feeder);
    assert!(
        (0..2).all(|axis| (stands[axis] - over[axis]).abs() < 0.1),
        "{stands:?} {over:?}"
    );
    let [low, high] = feeder.mesh.bounds();
    assert!(low[2] < 10.0 && low[2] > 5.0);
    near(high[2], given.flask.cope.as_mm(), 1e-9);
    // At a corner it is fed from the side, through a neck, and the metal stays one body.
    let mut at_the_edge = given.clone();
    at_the_edge.casting.sections[0].place_mm = [10.0, 40.0, 0.0];
    let built = by_rule(&at_the_edge);
    let feeder = piece(&built, &Piece::Feeder(1));
    let [low, high] = built.castings[0].mesh.bounds();
    let stands = middle(feeder);
    assert!((0..2).any(|axis| stands[axis] < low[axis] || stands[axis] > high[axis]));
    assert!(!built.facts.iter().any(is_broken), "{:?}", built.facts);
    assert_eq!(bodies(&built.cavity.mesh), 1);
    let volume = std::f64::consts::PI / 4.0 * 40.0 * 40.0 * 40.0;
    assert!(
        feeder.volume.as_mm3() > 0.97 * volume,
        "{}",
        feeder.volume.as_mm3() / volume
    );
    // Wanted in the runner.
    let runner = middle(piece(&built, &Piece::Runner(1)));
    let placement = Placement {
        feeders: Some(vec![FeederAt::Point(runner)]),
        ..Placement::default()
    };
    let built = mould(&given, &placement).unwrap();
    let touches = |fact: &Fact| {
        matches!(
            fact,
            Fact::Touch {
                piece: Piece::Feeder(1),
                other: Piece::Runner(_),
                ..
            }
        )
    };
    assert!(built.facts.iter().any(touches), "{:?}", built.facts);
}

#[test]
fn feeders_are_left_out_or_refused() {
    let given = plates(2, [80.0, 40.0]);
    let none = Placement {
        feeders: Some(Vec::new()),
        ..Placement::default()
    };
    let built = mould(&given, &none).unwrap();
    assert!(
        !built
            .rigging
            .iter()
            .any(|s| matches!(s.piece, Piece::Feeder(_)))
    );
    let no_section = Placement {
        feeders: Some(vec![FeederAt::Section(2)]),
        ..Placement::default()
    };
    let error = mould(&given, &no_section).unwrap_err();
    assert_eq!(
        error,
        MouldError::NoSection {
            number: 2,
            sections: 1
        }
    );
}

#[test]
fn a_flask_too_small_or_too_low_is_refused_with_figures() {
    let mut given = plates(2, [0.0, 0.0]);
    given.flask.length = mm(100.0);
    let error = mould(&given, &Placement::default()).unwrap_err();
    assert!(
        matches!(error, MouldError::NoRoom { count: 2, .. }),
        "{error}"
    );
    let mut given = plates(1, [60.0, 0.0]);
    given.flask.cope = mm(20.0);
    given.sizes.pour_height = mm(30.0);
    let error = mould(&given, &Placement::default()).unwrap_err();
    assert!(matches!(error, MouldError::NoFall { .. }), "{error}");
}

/// A round core across the plate is sand: it is taken out of the metal and of the mould.
#[test]
fn a_core_is_neither_metal_nor_mould() {
    let mut given = plates(1, [60.0, 0.0]);
    let bare = by_rule(&given);
    let corner = given.casting.mesh.bounds()[0];
    let mut core = block([20.0, 12.0, 10.0], -5.0);
    for point in &mut core.points {
        point[0] += corner[0] + 30.0;
        point[1] += corner[1] - 6.0;
    }
    given.casting.cores.push(Core {
        name: "Slot no. 1".to_owned(),
        mesh: core,
    });
    let built = by_rule(&given);
    assert!(built.off_by.abs() < 1e-9);
    let taken = bare.cavity.volume.as_mm3() - built.cavity.volume.as_mm3();
    near(taken, 20.0 * 6.0 * 10.0, 1e-6);
    let core = &built.cores[0];
    near(core.volume.as_mm3(), 2400.0, 1e-9);
    near(core.mass.as_kg(), 1500.0 * 2400e-9, 1e-9);
    assert_eq!(core.piece.to_string(), "core-slot-no--1");
}

#[test]
fn iron_has_its_runner_above_its_gates() {
    let mut given = plates(2, [80.0, 40.0]);
    given.sizes.runner_half = Half::Cope;
    let built = by_rule(&given);
    assert!(!built.facts.iter().any(is_broken), "{:?}", built.facts);
    assert!(piece(&built, &Piece::Runner(1)).mesh.bounds()[0][2] >= 0.0);
    assert!(piece(&built, &Piece::Gate(1)).mesh.bounds()[0][2] < -2.0);
    assert_eq!(bodies(&built.cavity.mesh), 1);
    assert!(built.off_by.abs() < 1e-9);
}

#[test]
fn the_same_mould_has_the_same_bytes() {
    let given = plates(2, [80.0, 40.0]);
    let bytes = |mould: &Mould| -> Vec<u8> {
        mould
            .solids()
            .flat_map(|solid| pattern::stl::write_stl(&solid.mesh))
            .collect()
    };
    assert_eq!(bytes(&by_rule(&given)), bytes(&by_rule(&given)));
}

/// Wires of 2 mm, 30 mm apart over a plate of 120 x 80 mm, from 12 mm above it to the top of the
/// cope: four rows of three, each a round of its own.
#[test]
fn vents_stand_evenly_and_stop_short() {
    let mut given = plates(1, [60.0, 0.0]);
    given.sizes.feeder = None;
    let built = by_rule(&given);
    let vents = built.vents.as_ref().unwrap();
    assert_eq!(bodies(&vents.mesh), 12);
    let [low, high] = vents.mesh.bounds();
    near(low[2], 22.0, 1e-9);
    near(high[2], 75.0, 1e-9);
    near(
        vents.volume.as_mm3(),
        12.0 * std::f64::consts::PI * 53.0,
        1e-9,
    );
    given.sizes.vents = None;
    let bare = by_rule(&given);
    let sand = bare.cope.volume.as_mm3() - built.cope.volume.as_mm3();
    near(sand, vents.volume.as_mm3(), 1e-6);
}
