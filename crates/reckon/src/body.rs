//! Plain bodies, whose modulus is taken as typed: `plate 10 mm`, `block 80 x 60 x 18 mm`.
//!
//! The sums of a block, a cylinder and a ball are those of any school book; what is divided by
//! what is the law's own affair.

use std::f64::consts::PI;

use measure::length::{Area, Length, Volume};
use measure::text::Typed;
use pattern::sections::modulus;

/// What may be typed for a body.
pub(crate) const WANTED: &str = "a modulus (\"6.4 mm\") or a body: plate 10 mm, \
    bar 20 x 30 mm, block 80 x 60 x 18 mm, cylinder 60 x 90 mm (diameter, height), \
    rod 16 mm, ball 50 mm, cube 25 mm";

/// The modulus typed, or that of the body typed.
pub(crate) fn read(typed: &str) -> Option<Length> {
    if let Ok(length) = typed.parse::<Typed<Length>>() {
        return Some(length.value);
    }
    let (body, sides) = typed.trim().split_once(' ')?;
    let sides = lengths(sides)?;
    match (body, sides.as_slice()) {
        ("plate", &[thick]) => Some(thick / 2.0),
        ("rod", &[across]) => Some(across / 4.0),
        ("bar", &[a, b]) => Some(Length::from_m((a * b).as_m2() / (2.0 * (a + b).as_m()))),
        _ => volume_and_surface(body, &sides).map(|(volume, cooled)| modulus(volume, cooled)),
    }
}

fn volume_and_surface(body: &str, sides: &[Length]) -> Option<(Volume, Area)> {
    match (body, sides) {
        ("block", &[a, b, c]) => Some((a * b * c, (a * b + b * c + c * a) * 2.0)),
        ("cube", &[a]) => Some((a * a * a, a * a * 6.0)),
        ("cylinder", &[d, h]) => {
            let surface = d * d * (PI / 2.0) + d * h * PI;
            Some((d * d * h * (PI / 4.0), surface))
        }
        ("ball", &[d]) => Some((d * d * d * (PI / 6.0), d * d * PI)),
        _ => None,
    }
}

/// `80 x 60 x 18 mm`, `80 mm x 2 in`: a side without a unit takes that of the last.
fn lengths(typed: &str) -> Option<Vec<Length>> {
    let sides: Vec<&str> = typed.split([',', 'x', '×', '*']).map(str::trim).collect();
    let last = sides.last()?;
    let digits = last.rfind(|c: char| c.is_ascii_digit() || c == '½')?;
    let unit = last[digits..].trim_start_matches(|c: char| c.is_ascii_digit() || c == '½');
    let length = |side: &&str| {
        let whole = side.parse::<Typed<Length>>();
        let with_unit = || format!("{side} {unit}").parse::<Typed<Length>>();
        whole.or_else(|_| with_unit()).ok().map(|typed| typed.value)
    };
    let lengths: Option<Vec<Length>> = sides.iter().map(length).collect();
    lengths.filter(|lengths| lengths.iter().all(|length| *length > Length::ZERO))
}
