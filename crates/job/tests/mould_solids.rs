//! The moulds of the examples as solids: they fill their flasks, their metal meets, their files are
//! read back, and places typed in the job move the rigging.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use std::path::Path;

use job::file_fault::read;
use job::folder::{FolderError, Opened, open, write_all_new};
use job::job::{Job, Up};
use job::job_file::JobFile;
use job::mould_solids::{NoMould, mould_files, mould_of};
use job::mould_told::{noticed, piece};
use job::remark::Level;
use job::words::Language;
use pattern::draw::joint::STEEPEST;
use pattern::rays::along;
use pattern::stl::read_binary;
use pattern::tree::Tree;
use rigging::fact::Fact;
use rigging::mould::Mould;
use rigging::piece::Piece;

fn example(name: &str) -> Opened {
    let examples = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    open(&examples.join(name)).unwrap()
}

fn built(opened: &Opened) -> Mould {
    mould_of(&opened.job, &opened.shop, &opened.part).unwrap()
}

fn count(mould: &Mould, is_one: impl Fn(&Piece) -> bool) -> usize {
    mould.solids().filter(|solid| is_one(&solid.piece)).count()
}

#[test]
fn moulds_of_examples_fill_their_flasks_and_run() {
    for name in ["porch-bracket", "vise-jaws", "pump-housing", "bell-crank"] {
        let opened = example(name);
        let mould = built(&opened);
        assert!(mould.off_by.abs() < 1e-6, "{name}: {}", mould.off_by);
        let is_broken = |fact: &&Fact| {
            matches!(
                fact,
                Fact::Touch { .. } | Fact::Apart { .. } | Fact::Hooks { .. } | Fact::NoGate { .. }
            )
        };
        let broken: Vec<_> = mould.facts.iter().filter(is_broken).collect();
        assert!(broken.is_empty(), "{name}: {broken:?}");
        assert_eq!(mould.castings.len(), opened.job.count, "{name}");
        assert!(count(&mould, |piece| matches!(piece, Piece::Gate(_))) >= opened.job.count);
    }
}

/// Castings whose cores go out through one of their sides: nothing that is cut runs into a core.
#[test]
fn gates_and_feeders_of_examples_keep_off_cores() {
    for name in ["hollow-owl", "pipe-bend"] {
        let mould = built(&example(name));
        assert!(!mould.cores.is_empty(), "{name}");
        let is_core = |piece: &Piece| matches!(piece, Piece::Core(_));
        let runs_into = |fact: &&Fact| match fact {
            Fact::Touch { piece, other, .. } => is_core(piece) || is_core(other),
            _ => false,
        };
        let told = mould.facts.iter().find(runs_into);
        assert!(told.is_none(), "{name}: {told:?}");
    }
}

/// Sand that the castings pull along as they are drawn, as a share of their metal, counted on
/// upright lines: of the drag over all metal, of the cope under all of it.
fn pulled(mould: &Mould, height: impl Fn([f64; 2]) -> f64) -> f64 {
    let (mut pulled, mut metal) = (0.0, 0.0);
    for casting in &mould.castings {
        let tree = Tree::over(&casting.mesh);
        let [low, high] = casting.mesh.bounds();
        for i in 0..120 {
            for j in 0..120 {
                let share = |axis: usize, at: i32| {
                    low[axis] + (f64::from(at) + 0.503) / 120.0 * (high[axis] - low[axis])
                };
                let at = [share(0, i), share(1, j)];
                let met = along(&casting.mesh, &tree, 2, [at[0], at[1], 0.0]);
                if let (Some(from), Some(to)) = (met.first(), met.last()) {
                    let joint = height(at);
                    pulled += (from.at - joint).max(joint - to.at).max(0.0);
                    metal += to.at - from.at;
                }
            }
        }
    }
    pulled / metal
}

/// Parts whose parting line wanders: with the joint along it the flask is full, the rigging meets
/// and draws, and hardly any sand is pulled along that a flat joint would have pulled.
#[test]
fn a_joint_that_wanders_goes_through_the_mould() {
    for name in ["bell-crank", "forked-jaw", "pump-housing"] {
        let mould = built(&example(name));
        let wandering = mould.joint.as_ref();
        assert!(wandering.is_some(), "{name}");
        let joint = &wandering.unwrap().joint;
        assert!(mould.off_by.abs() < 1e-3, "{name}: {}", mould.off_by);
        let [low, high] = joint.shown_mm;
        assert!(high - low > 1.0, "{name}: {low} {high}");
        assert!(joint.steepest <= STEEPEST, "{name}: {}", joint.steepest);
        let (flat, led) = (
            pulled(&mould, |_| 0.0),
            pulled(&mould, |at| joint.height_mm(at)),
        );
        assert!(
            led < 0.002 && led < flat / 2.0,
            "{name}: flat {flat}, led {led}"
        );
        let said = job::mould_told::joint(&mould);
        assert_eq!(said.id(), "mould-joint-wanders");
        for language in Language::ALL {
            let shown = language.say(&said);
            assert!(shown.contains(&format!("{high:.1} mm")), "{shown}");
        }
    }
}

/// The drawing of a joint tells the heights that the sand has.
#[test]
fn a_joint_that_wanders_is_drawn_as_it_lies() {
    for name in ["forked-jaw", "pump-housing"] {
        let opened = example(name);
        let mould = built(&opened);
        let joint = &mould.joint.as_ref().unwrap().joint;
        let plan = job::work_out::work_out(&opened.job, &opened.shop, &opened.part);
        assert!(plan.drawing.joint.is_none());
        let drawn = job::mould_drawn::drawn(&plan.drawing, &mould)
            .joint
            .unwrap();
        let [first, .., last] = drawn.section[..] else {
            panic!("{name}: no section");
        };
        let length = plan.drawing.flask_inside_mm[0];
        assert_eq!([first, last], [[0.0, 0.0], [length, 0.0]], "{name}");
        assert!(!drawn.contours.is_empty(), "{name}");
        for contour in &drawn.contours {
            for at in contour.lines.iter().flatten() {
                let off = joint.height_mm(*at) - contour.height_mm;
                assert!(off.abs() < 1e-6, "{name}: {at:?} {off}");
            }
        }
        let [low, high] = joint.shown_mm;
        let furthest = drawn.stations.iter().map(|station| station.height_mm.abs());
        let furthest = furthest.fold(0.0, f64::max);
        assert!(
            furthest > 0.5 && furthest < high.max(-low) + 1.0,
            "{name}: {furthest}"
        );
    }
}

/// Where sand holds no joint the flat one is not taken silently: a base of bars that stands on its
/// end.
#[test]
fn a_joint_that_sand_does_not_hold_is_told() {
    let mut opened = example("truss-base");
    opened.job.up = Up::Axis(0, true);
    let found = mould_of(&opened.job, &opened.shop, &opened.part);
    let Err(error @ NoMould::Joint { .. }) = found else {
        panic!("a joint, or another error");
    };
    let told = error.to_string();
    assert!(told.contains(" mm") && told.contains("[mould]"), "{told}");
    let mut flat = opened.job.clone();
    flat.joint = Some(measure::length::Length::from_mm(40.0));
    assert!(
        mould_of(&flat, &opened.shop, &opened.part)
            .unwrap()
            .joint
            .is_none()
    );
}

/// A cavity is larger than its casting by the cube of what the metal contracts.
#[test]
fn castings_are_as_large_as_their_patterns() {
    let opened = example("vise-jaws");
    let mould = built(&opened);
    let part = opened.part.looked().unwrap().solid.volume_mm3;
    let growth = opened.job.alloy.contraction_band().unwrap().likely();
    let wanted = part * (1.0 + growth).powi(3);
    for casting in &mould.castings {
        let volume = casting.volume.as_mm3();
        assert!((volume / wanted - 1.0).abs() < 1e-9, "{volume} {wanted}");
    }
    let plan = job::work_out::work_out(&opened.job, &opened.shop, &opened.part);
    // The plan weighs what is poured from laws, the mould from solids: the metal of the castings is
    // the same in both but for growth and liquid density, the rigging as near as it can be cut.
    let poured = plan.figure("poured mass").unwrap().amount.values();
    let built = mould.cavity.mass.as_kg()
        + mould.above_cope.as_m3() * opened.job.alloy.density_liquid.band.likely().as_kg_per_m3();
    assert!(
        poured[0] * 0.75 < built && built < poured[2] * 1.35,
        "{poured:?} {built}"
    );
}

#[test]
fn every_file_is_read_back_and_none_is_written_over_unasked() {
    let mould = built(&example("vise-jaws"));
    let files = mould_files(&mould);
    let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    for wanted in [
        "cavity.stl",
        "cope.stl",
        "drag.stl",
        "sprue.stl",
        "runner-1.stl",
        "mould.glb",
    ] {
        assert!(names.contains(&wanted), "{names:?}");
    }
    for (solid, (name, bytes)) in mould.solids().zip(&files) {
        let soup = read_binary(bytes).unwrap();
        assert_eq!(soup.triangles.len(), solid.mesh.triangles.len(), "{name}");
    }
    let folder = std::env::temp_dir().join(format!("oddside-mould-{}", std::process::id()));
    let written = write_all_new(&folder, &files, false).unwrap();
    assert_eq!(written.len(), files.len());
    std::fs::remove_file(folder.join("cavity.stl")).unwrap();
    let again = write_all_new(&folder, &files, false);
    assert!(matches!(again, Err(FolderError::WouldOverwrite { .. })));
    assert!(!folder.join("cavity.stl").exists());
    assert_eq!(write_all_new(&folder, &files, true).unwrap(), written);
    std::fs::remove_dir_all(folder).unwrap();
}

const JOB: &str = "name = \"plate\"\n[part]\n[metal]\nalloy = \"A356\"\n\
                   [[solid]]\nkind = \"box\"\nsize = [\"120 mm\", \"80 mm\", \"24 mm\"]\n";

fn job(place: &str) -> Result<Job, String> {
    let text = JOB.replace("[[solid]]", &format!("{place}\n[[solid]]"));
    let typed: Result<JobFile, _> = read("job.toml", &text);
    let typed = typed.map_err(|fault| fault.to_string())?;
    Job::meant(&typed).map_err(|error| error.to_string())
}

#[test]
fn places_are_read_in_mm_and_other_units() {
    let place = |text: &str| job(&format!("[mould.place]\n{text}")).map(|job| job.place);
    let typed = "sprue = \"250, 100\"\ngates = [\"1 in; 45 mm\"]\n\
                 feeders = [\"heaviest\", \"Section 2\", \"12.5, 8 cm\"]";
    let placement = place(typed).unwrap();
    assert_eq!(placement.sprue_mm, Some([250.0, 100.0]));
    let gate = placement.gates_mm.unwrap()[0];
    assert!((gate[0] - 25.4).abs() < 1e-9 && (gate[1] - 45.0).abs() < 1e-9);
    use rigging::placement::FeederAt::{Point, Section};
    let feeders = placement.feeders.unwrap();
    assert_eq!(feeders[..2], [Section(1), Section(2)]);
    assert!(
        matches!(feeders[2], Point([x, y]) if (x - 12.5).abs() < 1e-9 && (y - 80.0).abs() < 1e-9)
    );
    assert_eq!(place("feeders = []").unwrap().feeders, Some(Vec::new()));
    for wrong in [
        "sprue = \"250\"",
        "feeders = [\"section 0\"]",
        "feeders = [\"boss\"]",
        "gates = [\"a, b\"]",
    ] {
        let error = place(wrong).unwrap_err();
        assert!(error.contains("no place"), "{error}");
    }
}

#[test]
fn a_part_of_sizes_has_no_shape_to_mould() {
    let opened = example("boot-scraper");
    let error = mould_of(&opened.job, &opened.shop, &opened.part).unwrap_err();
    assert_eq!(error, NoMould::NoShape);
}

/// Every fact and every piece has words in every language, and all that is put in is taken.
#[test]
fn every_fact_is_told_in_every_language() {
    use rigging::fact::Side;
    let (sprue, casting) = (Piece::Sprue, Piece::Casting(2));
    let mut facts: Vec<Fact> = [Side::Wall, Side::Top, Side::Bottom]
        .map(|side| Fact::ThinWall {
            piece: casting.clone(),
            side,
            sand_mm: 11.0,
            wanted_mm: 25.0,
        })
        .to_vec();
    facts.extend([
        Fact::ThinSand {
            piece: sprue.clone(),
            other: casting.clone(),
            place_mm: [61.0, 62.0],
            sand_mm: 11.0,
            wanted_mm: 25.0,
        },
        Fact::Touch {
            piece: sprue.clone(),
            other: casting.clone(),
            shared_mm3: 7700.0,
        },
        Fact::Apart {
            piece: sprue.clone(),
            other: casting.clone(),
            place_mm: [61.0, 62.0],
        },
        Fact::Hooks {
            piece: Piece::Well,
            place_mm: [61.0, 62.0, 63.0],
        },
        Fact::NoGate { casting: 2 },
        Fact::ShortRunOff {
            piece: Piece::Runner(3),
            missing_mm: 11.0,
        },
        Fact::LowFeeder {
            piece: Piece::Feeder(3),
            missing_mm: 11.0,
        },
        Fact::FlatElsewhere { joint_mm: 11.5 },
        Fact::LongPrint {
            piece: Piece::Core("bore".to_owned()),
            through_mm: 3.0,
            longest_mm: Some(17.0),
        },
        Fact::LongPrint {
            piece: Piece::Core("bore".to_owned()),
            through_mm: 30.0,
            longest_mm: None,
        },
        Fact::CoreNotDrawn {
            name: "bore".to_owned(),
        },
    ]);
    let pieces = [
        casting,
        Piece::Basin,
        sprue,
        Piece::Well,
        Piece::Runner(1),
        Piece::Gate(1),
        Piece::Feeder(1),
        Piece::Vents,
        Piece::Core("bore".to_owned()),
        Piece::Cavity,
        Piece::Cope,
        Piece::Drag,
    ];
    let told = facts
        .iter()
        .map(|fact| job::mould_told::of_fact(fact).words);
    for said in told.chain(pieces.iter().map(piece)) {
        for language in Language::ALL {
            let shown = language.say(&said);
            assert!(
                shown != said.id() && !shown.contains('{'),
                "{language:?}: {shown}"
            );
            for (_, given) in said.given() {
                if let job::words::said::Given::Text(text) = given {
                    assert!(
                        shown.contains(text.as_str()),
                        "{language:?}: {text} in {shown}"
                    );
                }
            }
        }
    }
    let mould = built(&example("porch-bracket"));
    assert!(
        noticed(&mould)
            .windows(2)
            .all(|pair| pair[0].level <= pair[1].level)
    );
    assert!(
        noticed(&mould)
            .iter()
            .all(|noticed| noticed.level != Level::Stop)
    );
}
