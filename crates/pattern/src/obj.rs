//! Wavefront object files: the points and faces of them, everything else passed over.

use crate::mesh::Soup;
use crate::polygon;
use crate::read::{
    Format, MOST_FACETS, Place, ReadError, Trouble, is_sane, line_of, shorten, without_mark,
};
use crate::vector::Vector;

/// Whether `text` has a line of a point and a line of a face near its beginning.
pub fn looks_like_text(text: &[u8]) -> bool {
    let head = &text[..text.len().min(1 << 20)];
    let has = |key: &[u8]| {
        let mut lines = head.split(|&byte| byte == b'\n' || byte == b'\r');
        lines.any(|line| line.trim_ascii_start().starts_with(key))
    };
    !head.contains(&0) && has(b"v ") && (has(b"f ") || head.len() < text.len())
}

/// Reads points and faces; a face of more than three corners is cut into triangles.
pub fn read(bytes: &[u8]) -> Result<Soup, ReadError> {
    let text = without_mark(bytes);
    let mut reading = Reading::default();
    let mut joined = Vec::new();
    let mut at = 0;
    while at < text.len() {
        let start = at;
        let line = next_line(text, &mut at, &mut joined);
        reading
            .line(line)
            .map_err(|trouble| trouble.at(Place::Line(line_of(text, start))))?;
    }
    Ok(Soup {
        format: Some(Format::Obj),
        declared_unit: None,
        points: reading.points,
        triangles: reading.triangles,
        pieces: reading.pieces.max(1),
    })
}

#[derive(Default)]
struct Reading {
    points: Vec<Vector>,
    triangles: Vec<[u32; 3]>,
    pieces: usize,
    is_in_piece: bool,
    face: Vec<u32>,
    cutting: usize,
}

impl Reading {
    fn line(&mut self, line: &[u8]) -> Result<(), Trouble> {
        let uncommented = line.split(|&byte| byte == b'#').next().unwrap_or_default();
        let mut words = uncommented
            .split(u8::is_ascii_whitespace)
            .filter(|word| !word.is_empty());
        match words.next() {
            Some(b"v") => self.point(words),
            Some(b"f" | b"fo") => self.face(words),
            Some(b"o") => {
                self.is_in_piece = false;
                Ok(())
            }
            _ => Ok(()),
        }
    }

    fn point<'a>(&mut self, mut words: impl Iterator<Item = &'a [u8]>) -> Result<(), Trouble> {
        let mut coordinate = || {
            let word = words
                .next()
                .ok_or(Trouble::EndsEarly { within: "a point" })?;
            let text = std::str::from_utf8(word).ok();
            let value = text.and_then(|text| text.parse::<f64>().ok());
            value.ok_or_else(|| Trouble::NotANumber {
                text: shorten(word),
            })
        };
        let point = [coordinate()?, coordinate()?, coordinate()?];
        if !is_sane(point) {
            return Err(Trouble::NotFinite);
        }
        if self.points.len() >= 3 * MOST_FACETS {
            return Err(Trouble::TooManyPoints);
        }
        self.points.push(point);
        Ok(())
    }

    fn face<'a>(&mut self, words: impl Iterator<Item = &'a [u8]>) -> Result<(), Trouble> {
        self.face.clear();
        for word in words {
            let index = self.index(word)?;
            self.face.push(index);
        }
        let corners = self.face.len();
        if corners < 3 {
            return Err(Trouble::TooFewCorners { corners });
        }
        if self.triangles.len() + corners - 2 > MOST_FACETS {
            return Err(Trouble::TooManyFacets);
        }
        self.pieces += usize::from(!std::mem::replace(&mut self.is_in_piece, true));
        if corners == 3 {
            self.triangles
                .push([self.face[0], self.face[1], self.face[2]]);
            return Ok(());
        }
        self.triangles.extend(polygon::cut_face(
            &self.face,
            &self.points,
            &mut self.cutting,
        )?);
        Ok(())
    }

    /// Point number before the first slash: from one, or backwards from the latest point.
    fn index(&self, word: &[u8]) -> Result<u32, Trouble> {
        let number = word.split(|&byte| byte == b'/').next().unwrap_or_default();
        let text = std::str::from_utf8(number).ok();
        let index = text
            .and_then(|text| text.parse::<i64>().ok())
            .ok_or_else(|| Trouble::NotANumber {
                text: shorten(word),
            })?;
        let points = self.points.len();
        let from_zero = if index < 0 {
            points as i64 + index
        } else {
            index - 1
        };
        if (0..points as i64).contains(&from_zero) {
            return Ok(from_zero as u32);
        }
        Err(Trouble::NoSuchPoint { index, points })
    }
}

/// The next line without its end; a backslash at the end joins the following line to it.
fn next_line<'a>(text: &'a [u8], at: &mut usize, joined: &'a mut Vec<u8>) -> &'a [u8] {
    let first = one_line(text, at);
    if !first.ends_with(b"\\") {
        return first;
    }
    joined.clear();
    let mut line = first;
    while let Some(begun) = line.strip_suffix(b"\\") {
        joined.extend_from_slice(begun);
        joined.push(b' ');
        line = one_line(text, at);
    }
    joined.extend_from_slice(line);
    joined
}

fn one_line<'a>(text: &'a [u8], at: &mut usize) -> &'a [u8] {
    let rest = &text[*at..];
    let length = rest
        .iter()
        .position(|&b| b == b'\n' || b == b'\r')
        .unwrap_or(rest.len());
    let is_pair = rest[length..].starts_with(b"\r\n");
    *at += (length + 1 + usize::from(is_pair)).min(rest.len());
    &rest[..length]
}
