//! Meshes written as 3MF and STL, read back by this room and by a reader that knows nothing of it.

#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot get at its part must fail"
)]

mod shapes;

use std::path::PathBuf;
use std::process::Command;

use pattern::look::{Verdict, look};
use pattern::mesh::Mesh;
use pattern::read::read;
use pattern::stl::write_stl;
use pattern::threemf_write::{Metadata, Piece, WriteError, write_threemf};
use pattern::unit::{Unit, UnitBasis};
use shapes::{ball, block};

/// What the independent reader prints of a file; none where there is no Python to run it.
fn read_elsewhere(name: &str, bytes: &[u8]) -> Option<Vec<Vec<String>>> {
    let path = std::env::temp_dir().join(format!("{}-{name}", std::process::id()));
    std::fs::write(&path, bytes).unwrap();
    let script = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/independent/volume.py");
    let ran = Command::new("python3").arg(script).arg(&path).output();
    std::fs::remove_file(&path).unwrap();
    let ran = ran.ok()?;
    let said = String::from_utf8(ran.stderr).unwrap();
    assert!(ran.status.success(), "{said}");
    let lines = String::from_utf8(ran.stdout).unwrap();
    let words = |line: &str| line.split('\t').map(str::to_owned).collect();
    Some(lines.lines().map(words).collect())
}

#[test]
fn an_archive_reads_back_to_the_last_bit_with_unit_and_pieces() {
    let (cope, drag) = (
        ball(30.0 / 7.0, 40, 0.1),
        block([100.0, 0.0, -3.0], [20.0, 0.3, 7.0]),
    );
    let pieces = [
        Piece {
            name: "cope",
            mesh: &cope,
        },
        Piece {
            name: "drag",
            mesh: &drag,
        },
    ];
    let bytes = write_threemf(&pieces, &[]).unwrap();
    assert_eq!(bytes, write_threemf(&pieces, &[]).unwrap());
    let soup = read("pattern.3mf", &bytes).unwrap();
    assert_eq!(
        (soup.declared_unit, soup.pieces),
        (Some(Unit::Millimetre), 2)
    );
    assert_eq!(soup.points, [cope.points.as_slice(), &drag.points].concat());
    let found = look("pattern.3mf", &bytes, None).unwrap();
    assert_eq!(
        (found.verdict, found.basis),
        (Verdict::Accepted, UnitBasis::Declared)
    );
    let alone = look("cope.3mf", &write_threemf(&pieces[..1], &[]).unwrap(), None).unwrap();
    let together = alone.solid.volume_mm3 + 20.0 * 0.3 * 7.0;
    assert!((found.solid.volume_mm3 / together - 1.0).abs() < 1e-12);
}

#[test]
fn another_reader_finds_the_same_volumes_names_and_metadata() {
    let box_mesh = block([1.0, 2.0, 3.0], [20.0, 30.0, 40.0]);
    let round = ball(25.0, 60, 0.2);
    let name = "Feeder \"2\" <risers> & 'caps', Ø 30 mm";
    let pieces = [
        Piece {
            name,
            mesh: &box_mesh,
        },
        Piece {
            name: "plain",
            mesh: &round,
        },
    ];
    let title = (Metadata::Title, "Loose piece & core print < 3");
    let bytes = write_threemf(
        &pieces,
        &[title, (Metadata::Description, "two lines\nof it")],
    );
    let Some(lines) = read_elsewhere("written.3mf", &bytes.unwrap()) else {
        return;
    };
    assert_eq!(
        lines[0],
        ["metadata", "Title", "Loose piece & core print < 3"]
    );
    assert_eq!(lines[1][..2], ["metadata", "Description"]);
    let objects = &lines[lines.len() - 2..];
    assert_eq!(objects[0][..3], ["object", name, "millimeter"]);
    let volume = |line: &[String]| line[3].parse::<f64>().unwrap();
    assert!((volume(&objects[0]) - 24_000.0).abs() < 1e-9);
    let ours = look("round.stl", &write_stl(&round), None)
        .unwrap()
        .solid
        .volume_mm3;
    assert!((volume(&objects[1]) / ours - 1.0).abs() < 1e-6);
}

#[test]
fn another_reader_finds_the_same_volume_in_stl() {
    let round = ball(25.0, 60, 0.2);
    let bytes = write_stl(&round);
    let ours = look("round.stl", &bytes, None).unwrap().solid.volume_mm3;
    let Some(lines) = read_elsewhere("written.stl", &bytes) else {
        return;
    };
    let theirs: f64 = lines[0][3].parse().unwrap();
    assert!((theirs / ours - 1.0).abs() < 1e-12, "{theirs} and {ours}");
}

#[test]
fn what_could_not_be_read_again_is_not_written() {
    let sound = block([0.0; 3], [10.0; 3]);
    let refusal = |mesh: &Mesh| {
        write_threemf(
            &[Piece {
                name: "flask",
                mesh,
            }],
            &[],
        )
        .unwrap_err()
    };
    let name = || "flask".to_owned();
    assert_eq!(write_threemf(&[], &[]).unwrap_err(), WriteError::NoPieces);
    assert_eq!(
        refusal(&Mesh::default()),
        WriteError::NoFacets { name: name() }
    );
    let mut bad = sound.clone();
    bad.triangles[4][1] = 8;
    assert_eq!(
        refusal(&bad),
        WriteError::BadFacet {
            name: name(),
            facet: 5
        }
    );
    bad.triangles[4] = [3, 3, 1];
    assert_eq!(
        refusal(&bad),
        WriteError::BadFacet {
            name: name(),
            facet: 5
        }
    );
    let mut bad = sound.clone();
    bad.points[2][0] = f64::NAN;
    assert_eq!(
        refusal(&bad),
        WriteError::NotFinite {
            name: name(),
            point: 3
        }
    );
    let twice = [(Metadata::Title, "a"), (Metadata::Title, "b")];
    let found = write_threemf(
        &[Piece {
            name: "flask",
            mesh: &sound,
        }],
        &twice,
    );
    assert_eq!(
        found.unwrap_err(),
        WriteError::MetadataTwice(Metadata::Title)
    );
}

#[test]
fn letters_that_xml_cannot_hold_do_no_harm() {
    let sound = block([0.0; 3], [10.0; 3]);
    let pieces = [Piece {
        name: "bell\u{0}\u{1b}[1m \u{FFFF}",
        mesh: &sound,
    }];
    let bytes = write_threemf(&pieces, &[]).unwrap();
    assert!(read("bell.3mf", &bytes).is_ok());
    if let Some(lines) = read_elsewhere("letters.3mf", &bytes) {
        assert_eq!(lines[0][1].trim_end(), "bell  [1m");
    }
}
