//! OBJ and PLY files as they come, sound and unsound.

#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot get at its part must fail"
)]

mod shapes;

use pattern::look::look;
use pattern::read::{Place, ReadError, Trouble, read};
use pattern::unit::Unit;
use shapes::block;

const POINTS: &str = "v 0 0 0\nv 20 0 0\nv 20 20 0\nv 0 20 0\nv 0 0 20\nv 20 0 20\nv 20 20 20\n\
                      v 0 20 20\n";

fn volume(name: &str, bytes: &[u8]) -> f64 {
    look(name, bytes, Some(Unit::Millimetre))
        .unwrap()
        .solid
        .volume_mm3
}

fn obj_error(text: &str) -> ReadError {
    read("part.obj", text.as_bytes()).unwrap_err()
}

#[test]
fn quads_slashes_negative_numbers_and_long_lines_give_a_cube() {
    let quads = "f 4 3 2 1\nf 5/1 6/1 7/1 8/1\nf 1//1 2//1 6//1 5//1\nf 2/1/1 3/1/1 7/1/1 6/1/1\n\
                 f -6 -5 -1 -2\nf 4 1 \\\n 5 8 # left\n";
    let text = format!("# a cube\nmtllib\nusemtl\no one\n{POINTS}{quads}");
    assert!((volume("a.obj", text.as_bytes()) - 8000.0).abs() < 1e-9);
    assert!((volume("a.obj", text.replace('\n', "\r\n").as_bytes()) - 8000.0).abs() < 1e-9);
    assert!((volume("noname", text.as_bytes()) - 8000.0).abs() < 1e-9);
}

#[test]
fn a_face_that_is_not_convex_is_cut_along_its_outline() {
    let floor = [[0, 0], [30, 0], [30, 30], [20, 30], [20, 10], [0, 10]];
    let mut text = String::new();
    for z in [0, 20] {
        for [x, y] in floor {
            text += &format!("v {x} {y} {z}\n");
        }
    }
    text += "f 6 5 4 3 2 1\nf 7 8 9 10 11 12\n";
    for i in 0..6 {
        let j = (i + 1) % 6;
        text += &format!("f {} {} {} {}\n", i + 1, j + 1, j + 7, i + 7);
    }
    assert!((volume("a.obj", text.as_bytes()) - 500.0 * 20.0).abs() < 1e-9);
}

#[test]
fn wrong_numbers_in_an_obj_are_refused_with_their_line() {
    let zero = obj_error(&format!("{POINTS}f 0 1 2\n"));
    assert_eq!(zero.place, Place::Line(9));
    assert_eq!(
        zero.trouble,
        Trouble::NoSuchPoint {
            index: 0,
            points: 8
        }
    );
    let far = obj_error(&format!("{POINTS}f 1 2 9\n"));
    assert_eq!(
        far.trouble,
        Trouble::NoSuchPoint {
            index: 9,
            points: 8
        }
    );
    let back = obj_error(&format!("{POINTS}f 1 2 -9\n"));
    assert_eq!(
        back.trouble,
        Trouble::NoSuchPoint {
            index: -9,
            points: 8
        }
    );
    assert_eq!(
        obj_error("v 0 nan 0\nf 1 1 1\n").trouble,
        Trouble::NotFinite
    );
    assert_eq!(obj_error("v 0 0\nf 1 1 1\n").place, Place::Line(1));
    assert_eq!(
        obj_error(&format!("{POINTS}f 1 2\n")).trouble,
        Trouble::TooFewCorners { corners: 2 }
    );
    assert_eq!(obj_error(POINTS).trouble, Trouble::NoFacets);
}

fn ply(format: &str, body: &[u8]) -> Vec<u8> {
    let head = format!(
        "ply\nformat {format} 1.0\nelement vertex 8\nproperty float x\nproperty double y\n\
         property float z\nelement face 12\nproperty list uchar int vertex_indices\nend_header\n"
    );
    [head.as_bytes(), body].concat()
}

#[test]
fn text_and_both_binary_orders_give_the_same_cube() {
    let cube = block([0.0; 3], [20.0, 30.0, 40.0]);
    let (mut text, mut little, mut big) = (String::new(), Vec::new(), Vec::new());
    for [x, y, z] in &cube.points {
        text += &format!("{x} {y} {z}\n");
        little.extend([&(*x as f32).to_le_bytes()[..], &y.to_le_bytes()].concat());
        little.extend((*z as f32).to_le_bytes());
        big.extend([&(*x as f32).to_be_bytes()[..], &y.to_be_bytes()].concat());
        big.extend((*z as f32).to_be_bytes());
    }
    for [a, b, c] in &cube.triangles {
        text += &format!("3 {a} {b} {c}\n");
        little.push(3);
        big.push(3);
        for corner in [a, b, c] {
            little.extend(corner.to_le_bytes());
            big.extend(corner.to_be_bytes());
        }
    }
    for bytes in [
        ply("ascii", text.as_bytes()),
        ply("binary_little_endian", &little),
        ply("binary_big_endian", &big),
    ] {
        assert!((volume("a.ply", &bytes) - 24_000.0).abs() < 1e-9);
    }
    let cut = ply("binary_little_endian", &little[..little.len() - 5]);
    assert!(read("a.ply", &cut).is_err());
}

#[test]
fn counts_that_no_file_holds_are_refused_at_once() {
    for (element, count) in [
        ("vertex", u64::MAX / 2),
        ("face", 4_000_000_000),
        ("extra", 1 << 40),
    ] {
        let head = format!(
            "ply\nformat binary_little_endian 1.0\nelement {element} {count}\nproperty float x\n\
             property float y\nproperty float z\nend_header\n0000000000000"
        );
        let error = read("a.ply", head.as_bytes()).unwrap_err();
        let wanted = Trouble::CountDoesNotFit {
            element: element.to_owned(),
            count,
        };
        assert_eq!(error.trouble, wanted);
    }
}

#[test]
fn a_ply_of_points_alone_is_refused_in_words() {
    let text = "ply\nformat ascii 1.0\nelement vertex 1\nproperty float x\nproperty float y\n\
                property float z\nend_header\n0 0 0\n";
    let error = read("a.ply", text.as_bytes()).unwrap_err();
    assert!(matches!(error.trouble, Trouble::PlyLacks { .. }));
    let bad_index = ply(
        "ascii",
        &b"0 0 0\n"
            .repeat(8)
            .into_iter()
            .chain(b"3 0 1 8\n".repeat(12))
            .collect::<Vec<u8>>(),
    );
    let error = read("a.ply", &bad_index).unwrap_err();
    assert_eq!(error.place, Place::Facet(1));
    assert_eq!(
        error.trouble,
        Trouble::NoSuchPoint {
            index: 8,
            points: 8
        }
    );
}
