//! The pattern that a job makes, from its own file to the files it writes.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::file_fault::read;
use job::job::{Job, JobError};
use job::job_file::JobFile;
use job::making::files::files;
use job::making::told::told;
use job::making::{Making, MakingError, Step, What, make};
use job::words::Language;
use measure::text::System;
use pattern::boolean::FILM_MM;
use pattern::look::look;
use pattern::made::volume_mm3;
use pattern::mesh::Mesh;
use pattern::read::read as read_mesh;

/// A block of 60 x 30 x 40 mm with a round through hole of 20 mm along y at its middle, its drawing
/// lying on its side: y is to be up.
const SOLIDS: &str = r#"
[[solid]]
kind = "box"
size = ["60 mm", "30 mm", "40 mm"]
axis = "y"
[[solid]]
kind = "cylinder"
diameter = "20 mm"
length = "50 mm"
at = [0, "-1 mm", 0]
axis = "y"
take_away = true
"#;

fn job(pattern: &str) -> Result<(Job, Mesh), JobError> {
    job_of(pattern, SOLIDS)
}

fn job_of(pattern: &str, solids: &str) -> Result<(Job, Mesh), JobError> {
    let text = format!(
        "name = \"Bush\"\n[part]\nup = \"+y\"\n[metal]\nalloy = \"aluminium\"\ncontraction = \
         \"1 %\"\n{pattern}\n{solids}"
    );
    let file: JobFile = read("job.toml", &text).unwrap();
    let part = job::given_part::given_part(&file).unwrap();
    let job::given_part::GivenPart::Here(part) = part else {
        unreachable!("solids are built here");
    };
    let mesh = part.looked().unwrap().mesh.clone();
    Ok((Job::meant(&file)?, mesh))
}

fn made(pattern: &str) -> Making {
    let (job, mesh) = job(pattern).unwrap();
    make(&job, &worked::shop(""), &mesh).unwrap()
}

fn close(found: f64, wanted: f64, share: f64) {
    let off = (found - wanted).abs();
    assert!(off <= share * wanted.abs(), "{found} is not {wanted}");
}

fn after(making: &Making, step: Step) -> f64 {
    making.steps.iter().find(|(own, _)| *own == step).unwrap().1
}

#[test]
fn stock_and_contraction_act_on_the_drawing_and_top_is_up_in_the_mould() {
    let making = made(
        "[pattern]\ndraught = 0\nstock = [{ on = \"top\", by = \"2 mm\" }, { on = \"bore D20\", by \
         = \"1 mm\" }]\ncontraction = [\"1 %\", \"2 %\", \"0 %\"]",
    );
    let part = after(&making, Step::Part);
    let hole = 60.0 * 30.0 * 40.0 - part;
    // Two millimetres of the top with the hole through it, then a tube from 20 to 18 mm.
    let wanted = part + 2.0 * (1800.0 - hole / 40.0) + hole / 40.0 * (1.0 - 0.81) * 42.0;
    close(after(&making, Step::Stock), wanted, 2e-3);
    close(
        after(&making, Step::Contraction),
        after(&making, Step::Stock) * 1.01 * 1.02,
        1e-9,
    );
    // x of the drawing lies along the flask, y of the drawing is up.
    close(making.part_mm[2], 40.0, 1e-9);
    close(making.pattern_mm[2], 42.0 * 1.02, 1e-9);
    let mut level = [making.pattern_mm[0], making.pattern_mm[1]];
    level.sort_by(f64::total_cmp);
    close(level[0] * level[1], 60.6 * 30.0, 1e-6);
}

#[test]
fn a_joint_across_the_pattern_makes_halves_with_pins_that_add_up() {
    let making = made("[mould]\njoint = \"20 mm\"\n[pattern]\ndraught = 1\npins = \"3 mm\"");
    let whole = after(&making, Step::Draught);
    close(making.joint_mm[0], 20.2, 1e-6);
    assert_eq!(making.joint_mm[0], making.joint_mm[1]);
    let kinds: Vec<What> = making.pieces.iter().map(|piece| piece.what).collect();
    assert_eq!(kinds, [What::Drag, What::Cope]);
    let pins = making.pins.unwrap();
    let hole = |d: f64| std::f64::consts::PI / 4.0 * d * d * pins.depth_mm;
    let sum: f64 = making
        .pieces
        .iter()
        .map(|piece| volume_mm3(&piece.mesh))
        .sum();
    close(sum + 2.0 * (hole(3.0) + hole(3.2)), whole, 1e-6);
    assert!(
        making
            .stations
            .iter()
            .all(|s| (s.height_mm - 20.2).abs() < 1e-6)
    );
    assert!(making.walls.0 > 0 && making.held_mm3 == 0.0);
}

#[test]
fn boards_and_prints_are_made_where_asked_and_cut_for_the_printer() {
    let making = made(
        "[mould]\njoint = \"20 mm\"\n[pattern]\none_piece = true\noddside = true\nbed = [\"80 mm\", \
         \"80 mm\", \"120 mm\"]\n[pattern.board]\ncount = 2\nthickness = \"10 mm\"\n\
         [[pattern.print]]\nat = [\"20 mm\", \"40 mm\", 0]\naxis = \"y\"\nlength = \"12 mm\"\ndiameter = \
         \"12 mm\"",
    );
    let print = after(&making, Step::Prints) - after(&making, Step::Draught);
    close(print, std::f64::consts::PI * 36.0 * 12.0, 1e-3);
    let fill = making.fill.unwrap();
    assert!(fill.gap < 1e-3 && fill.overlap < 1e-3);
    for piece in &making.pieces {
        let [low, high] = piece.mesh.bounds();
        let size = [0, 1, 2].map(|axis| high[axis] - low[axis]);
        assert!(
            size[0] <= 80.0 && size[1] <= 80.0 && size[2] <= 120.0,
            "{size:?}"
        );
    }
    let of = |what: What| making.pieces.iter().filter(move |piece| piece.what == what);
    assert_eq!(of(What::Pattern).count(), 1);
    assert!(of(What::Oddside).count() > 1 && of(What::Board).count() > 1);
    let text = told(&making, System::Metric, Language::Uk);
    assert_eq!(text.pieces.len(), making.pieces.len());
    assert!(!text.gauge.is_empty());
}

/// A block of 60 x 40 x 40 mm with two ribs of 8 x 30 mm on one side, one over the other.
const RIBBED: &str = r#"
[[solid]]
kind = "box"
size = ["60 mm", "40 mm", "40 mm"]
axis = "y"
[[solid]]
kind = "box"
size = ["10 mm", "30 mm", "6 mm"]
at = ["33 mm", "10 mm", 0]
axis = "y"
[[solid]]
kind = "box"
size = ["10 mm", "30 mm", "8 mm"]
at = ["33 mm", "26 mm", 0]
axis = "y"
"#;

/// The joint lies on top: the lower rib is a piece of its own that is written beside the pattern.
#[test]
fn a_rib_that_holds_sand_is_a_loose_piece_with_a_file_of_its_own() {
    let (job, mesh) = job_of("[mould]\njoint = \"40 mm\"\n[pattern]\ndraught = 0", RIBBED).unwrap();
    let making = make(&job, &worked::shop(""), &mesh).unwrap();
    let kinds: Vec<What> = making.pieces.iter().map(|piece| piece.what).collect();
    assert_eq!(kinds, [What::Pattern, What::Loose(1)]);
    assert_eq!(making.held_mm3, 0.0);
    close(making.loose[0].move_mm, 8.0 * 1.01, 1e-9);
    let piece = volume_mm3(&making.pieces[1].mesh);
    // Two loose pins go right through it.
    let pins = making.loose[0].pins.as_ref().unwrap();
    let holes = 2.0 * std::f64::consts::PI / 4.0 * pins.hole_mm.powi(2) * (8.0 * 1.01);
    close(piece + holes, 8.0 * 30.0 * 6.0 * 1.01_f64.powi(3), 0.001);
    let files = files(&making).unwrap();
    assert_eq!(files[2].0, "loose_piece_1.stl");
    let lines = told(&making, System::Metric, Language::Uk).lines;
    assert!(lines.iter().any(|line| line.id() == "making-loose-drag"));
}

/// Two bars at different heights and the riser between them: no level crosses both.
const STEPPED: &str = r#"
[[solid]]
kind = "box"
size = ["60 mm", "30 mm", "10 mm"]
at = ["-30 mm", 0, 0]
[[solid]]
kind = "box"
size = ["60 mm", "30 mm", "10 mm"]
at = ["30 mm", 0, "16 mm"]
[[solid]]
kind = "box"
size = ["16 mm", "30 mm", "26 mm"]
"#;

#[test]
fn a_stepped_part_is_parted_along_its_line_and_has_an_oddside() {
    let (mut job, mesh) = job_of("[pattern]\ndraught = 2\noddside = true", STEPPED).unwrap();
    job.up = job::job::Up::Axis(2, true);
    let making = make(&job, &worked::shop(""), &mesh).unwrap();
    let [low, high] = making.joint_mm;
    assert!(low <= 10.2 && high >= 16.0, "{low} {high}");
    let of = |what: What| {
        making
            .pieces
            .iter()
            .find(|piece| piece.what == what)
            .unwrap()
    };
    let [drag, cope] = [What::Drag, What::Cope].map(|what| volume_mm3(&of(what).mesh));
    let holes = making.pins.map_or(0.0, |pins| {
        let across = pins.diameter_mm.powi(2) + pins.hole_mm.powi(2);
        2.0 * std::f64::consts::PI / 4.0 * across * pins.depth_mm
    });
    // Films beside the halves are left out: less than their thickness over the whole plan.
    let lost = after(&making, Step::Draught) - (drag + cope + holes);
    let [length, width, _] = making.pattern_mm;
    assert!(lost > -1e-3 && lost < FILM_MM * length * width, "{lost}");
    // The half of the lower bar ends with it, and does not reach under the upper one.
    let [low, high] = of(What::Drag).mesh.bounds();
    assert!(high[0] - low[0] < 80.0, "{low:?} {high:?}");
    let fill = making.fill.unwrap();
    assert!(fill.gap < 1e-3 && fill.overlap < 1e-3, "{fill:?}");
}

#[test]
fn files_are_read_again_with_the_same_volume() {
    let making = made("[mould]\njoint = \"20 mm\"\n[pattern]\ndraught = 1\npins = \"3 mm\"");
    let files = files(&making).unwrap();
    let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(
        names,
        ["pattern.3mf", "pattern_drag.stl", "pattern_cope.stl"]
    );
    assert_eq!(read_mesh(names[0], &files[0].1).unwrap().pieces, 2);
    for ((name, bytes), piece) in files[1..].iter().zip(&making.pieces) {
        let looked = look(name, bytes, Some(pattern::unit::Unit::Millimetre)).unwrap();
        close(looked.solid.volume_mm3, volume_mm3(&piece.mesh), 1e-5);
    }
}

#[test]
fn what_is_typed_wrongly_is_told_with_its_key() {
    let wrong = [
        (
            "stock = [{ on = \"front\", by = \"2 mm\" }]",
            "pattern.stock",
        ),
        ("stock = [{ by = \"2 mm\" }]", "pattern.stock: say where"),
        ("material = \"cheese\"", "pattern.material"),
        ("infill = \"a fifth\"", "pattern.infill"),
        (
            "print = [{ at = [0, 0, 0], axis = \"y\", length = \"9 mm\" }]",
            "pattern.print 1",
        ),
    ];
    for (typed, told) in wrong {
        let error = job(&format!("[pattern]\n{typed}")).unwrap_err();
        assert!(error.to_string().starts_with(told), "{error}");
    }
    let (job, mesh) = job("[pattern]\nstock = [{ on = \"bore D7\", by = \"1 mm\" }]").unwrap();
    let error = make(&job, &worked::shop(""), &mesh).unwrap_err();
    assert!(matches!(error, MakingError::Stock(_)), "{error}");
    assert!(error.to_string().contains("20.0 mm"), "{error}");
}

#[test]
fn examples_with_bosses_at_their_edges_get_their_draught() {
    let examples = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples");
    for name in [
        "vise-jaws",
        "porch-bracket",
        "bell-crank",
        "pump-housing",
        "flanged-ring",
    ] {
        let folder = format!("{examples}/{name}");
        let text = std::fs::read_to_string(format!("{folder}/job.toml")).unwrap();
        let file: JobFile = read("job.toml", &text).unwrap();
        let mesh = match job::given_part::given_part(&file).unwrap() {
            job::given_part::GivenPart::Here(part) => part.looked().unwrap().mesh.clone(),
            job::given_part::GivenPart::Mesh(path) => {
                let bytes = std::fs::read(format!("{folder}/{path}")).unwrap();
                look(&path, &bytes, None).unwrap().mesh
            }
        };
        let making = make(&Job::meant(&file).unwrap(), &worked::shop(""), &mesh).unwrap();
        assert_eq!(making.no_draught, None, "{name}");
        let (before, with) = (
            after(&making, Step::Contraction),
            after(&making, Step::Draught),
        );
        assert!(
            with > 1.002 * before && with < 1.2 * before,
            "{name}: {before} {with}"
        );
    }
}
