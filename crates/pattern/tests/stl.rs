//! STL files as they come, sound and unsound.

#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot get at its part must fail"
)]

mod shapes;

use pattern::read::{Format, Place, Trouble, read};
use pattern::stl::write_stl;
use shapes::{block, stl_text};

fn cube_text(line_end: &str) -> String {
    stl_text(&block([0.0; 3], [20.0; 3]), line_end)
}

fn refusal(bytes: &[u8]) -> (Place, Trouble) {
    let error = read("part.stl", bytes).unwrap_err();
    (error.place, error.trouble)
}

#[test]
fn every_line_end_reads_the_same() {
    let wanted = read("a.stl", cube_text("\n").as_bytes()).unwrap();
    assert_eq!(
        (wanted.triangles.len(), wanted.format),
        (12, Some(Format::StlText))
    );
    for line_end in ["\r\n", "\r", "\n\n", " \t\r\n"] {
        assert_eq!(
            read("a.stl", cube_text(line_end).as_bytes()).unwrap(),
            wanted,
            "{line_end:?}"
        );
    }
}

#[test]
fn upper_case_mark_and_three_digit_exponents_are_read() {
    let wanted = read("a.stl", cube_text("\n").as_bytes()).unwrap();
    let upper = cube_text("\n").to_uppercase();
    assert_eq!(read("a.stl", upper.as_bytes()).unwrap(), wanted);
    let marked = format!("\u{feff}{}", cube_text("\n"));
    assert_eq!(read("a.stl", marked.as_bytes()).unwrap(), wanted);
    let exponents = cube_text("\n").replace("2e1 ", "2.000000e+001 ");
    assert_eq!(read("a.stl", exponents.as_bytes()).unwrap(), wanted);
}

#[test]
fn several_solids_bare_names_and_missing_ends_are_read() {
    let bare = cube_text("\n")
        .replace("solid part", "solid")
        .replace("endsolid\n", "");
    let twice = format!("{bare}{bare}");
    let soup = read("a.stl", twice.as_bytes()).unwrap();
    assert_eq!((soup.triangles.len(), soup.pieces), (24, 2));
    let one_line = cube_text(" ");
    assert_eq!(
        read("a.stl", one_line.as_bytes()).unwrap().triangles.len(),
        12
    );
}

#[test]
fn binary_that_opens_like_text_is_binary() {
    let mut bytes = write_stl(&block([0.0; 3], [20.0; 3]));
    bytes[..12].copy_from_slice(b"solid part x");
    let soup = read("a.stl", &bytes).unwrap();
    assert_eq!(
        (soup.triangles.len(), soup.format),
        (12, Some(Format::StlBinary))
    );
}

#[test]
fn writing_and_reading_gives_the_same_corners() {
    let mesh = block([1.0, 2.0, 3.0], [20.0, 30.0, 40.0]);
    let bytes = write_stl(&mesh);
    assert_eq!(bytes, write_stl(&mesh));
    let soup = read("a.stl", &bytes).unwrap();
    let read_back: Vec<_> = soup.points.chunks(3).map(|c| [c[0], c[1], c[2]]).collect();
    let written: Vec<_> = (0..12).map(|facet| mesh.corners(facet)).collect();
    assert_eq!(read_back, written);
}

#[test]
fn a_facet_count_that_lies_is_named() {
    let mut bytes = write_stl(&block([0.0; 3], [20.0; 3]));
    bytes[80..84].copy_from_slice(&u32::MAX.to_le_bytes());
    let (place, trouble) = refusal(&bytes);
    assert_eq!(place, Place::Byte(80));
    assert_eq!(
        trouble,
        Trouble::Truncated {
            promised: u64::from(u32::MAX),
            there: 12
        }
    );
    bytes[80..84].copy_from_slice(&3u32.to_le_bytes());
    assert_eq!(
        refusal(&bytes).1,
        Trouble::MoreThanPromised {
            promised: 3,
            there: 12
        }
    );
    bytes[80..84].copy_from_slice(&12u32.to_le_bytes());
    bytes.truncate(400);
    assert_eq!(
        refusal(&bytes).1,
        Trouble::Truncated {
            promised: 12,
            there: 6
        }
    );
}

#[test]
fn numbers_that_are_none_are_refused_with_their_place() {
    let mut bytes = write_stl(&block([0.0; 3], [20.0; 3]));
    let second_facet = 84 + 50 + 12;
    for bad in [f32::NAN, f32::INFINITY, 1e30] {
        bytes[second_facet..second_facet + 4].copy_from_slice(&bad.to_le_bytes());
        assert_eq!(refusal(&bytes), (Place::Facet(2), Trouble::NotFinite));
    }
    let text = cube_text("\n").replacen("vertex 0e0 0e0 0e0", "vertex 0 nan 0", 1);
    assert_eq!(
        refusal(text.as_bytes()),
        (Place::Line(4), Trouble::NotFinite)
    );
    let comma = cube_text("\n").replacen("vertex 0e0 0e0 0e0", "vertex 0,5 0 0", 1);
    let wanted = Trouble::NotANumber {
        text: "0,5".to_owned(),
    };
    assert_eq!(refusal(comma.as_bytes()), (Place::Line(4), wanted));
}

#[test]
fn text_cut_off_anywhere_is_an_error_or_fewer_facets() {
    let text = cube_text("\r\n");
    for length in 1..text.len() {
        match read("part.stl", &text.as_bytes()[..length]) {
            Ok(soup) => assert!(soup.triangles.len() <= 12),
            Err(error) => assert!(!error.to_string().is_empty()),
        }
    }
    let half = &text.as_bytes()[..text.len() / 2];
    assert!(matches!(
        refusal(half).1,
        Trouble::EndsEarly { .. } | Trouble::Unexpected { .. }
    ));
}

#[test]
fn empty_and_wide_text_are_refused_in_words() {
    assert_eq!(refusal(b"").1, Trouble::Empty);
    assert_eq!(refusal(b" \r\n ").1, Trouble::Empty);
    assert_eq!(
        refusal(b"solid nothing\nendsolid nothing\n").1,
        Trouble::NoFacets
    );
    let wide: Vec<u8> = cube_text("\n")
        .encode_utf16()
        .flat_map(u16::to_le_bytes)
        .collect();
    assert_eq!(refusal(&wide).1, Trouble::Utf16);
    let marked: Vec<u8> = [0xFE, 0xFF].into_iter().chain(wide).collect();
    assert_eq!(refusal(&marked).1, Trouble::Utf16);
}
