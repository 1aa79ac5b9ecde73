//! Stereolithography files, text and binary: a reader that trusts no header, and a writer.

use crate::mesh::{Mesh, Soup};
use crate::read::{
    Format, MOST_FACETS, Place, ReadError, Trouble, is_sane, line_of, shorten, without_mark,
};
use crate::vector::{Vector, norm, scale};

/// Bytes before the first binary facet: eighty of free header and a count of four.
const HEAD: usize = 84;

/// Bytes of one binary facet: normal, three corners, two bytes of attribute.
const FACET: usize = 50;

/// Whether the length of the file is exactly what its binary facet count asks for.
///
/// This alone tells binary from text, for many binary headers begin with the word `solid`.
pub fn is_exactly_binary(bytes: &[u8]) -> bool {
    promised(bytes).is_some_and(|facets| HEAD as u64 + FACET as u64 * facets == bytes.len() as u64)
}

/// Whether `text`, freed of leading blanks, opens like a text file of solids.
pub fn looks_like_text(text: &[u8]) -> bool {
    let opens = text.len() >= 5 && text[..5].eq_ignore_ascii_case(b"solid");
    let ends_word = text.get(5).is_none_or(u8::is_ascii_whitespace);
    let head = &text[..text.len().min(1024)];
    opens && ends_word && !head.contains(&0)
}

/// Reads a binary file. The facet count must agree with the bytes before anything is stored.
pub fn read_binary(bytes: &[u8]) -> Result<Soup, ReadError> {
    let promised = promised(bytes).ok_or(
        Trouble::EndsEarly {
            within: "the header",
        }
        .at(Place::Byte(bytes.len())),
    )?;
    let there = ((bytes.len() - HEAD) / FACET) as u64;
    if promised > there {
        return Err(Trouble::Truncated { promised, there }.at(Place::Byte(80)));
    }
    if promised < there {
        return Err(Trouble::MoreThanPromised { promised, there }.at(Place::Byte(80)));
    }
    if promised > MOST_FACETS as u64 {
        return Err(Trouble::TooManyFacets.at(Place::Byte(80)));
    }
    let count = promised as usize;
    let mut points = Vec::with_capacity(3 * count);
    for (index, facet) in bytes[HEAD..].chunks_exact(FACET).take(count).enumerate() {
        for corner in 0..3 {
            let point = binary_point(&facet[12 + 12 * corner..]);
            if !is_sane(point) {
                return Err(Trouble::NotFinite.at(Place::Facet(index + 1)));
            }
            points.push(point);
        }
    }
    Ok(soup(Format::StlBinary, points, 1))
}

/// Reads a text file: any number of solids, any line ends, upper or lower case.
pub fn read_text(bytes: &[u8]) -> Result<Soup, ReadError> {
    let text = without_mark(bytes);
    let mut words = Words {
        text,
        at: 0,
        last: 0,
    };
    let mut points = Vec::new();
    let mut pieces = 0;
    let mut is_new_solid = true;
    while let Some(word) = words.next() {
        if is(word, "solid") {
            words.skip_name();
            is_new_solid = true;
        } else if is(word, "endsolid") {
            words.skip_name();
        } else if is(word, "facet") {
            pieces += usize::from(std::mem::take(&mut is_new_solid));
            read_facet(&mut words, &mut points).map_err(|trouble| words.locate(trouble))?;
            if points.len() > 3 * MOST_FACETS {
                return Err(words.locate(Trouble::TooManyFacets));
            }
        } else {
            let found = shorten(word);
            let trouble = Trouble::Unexpected {
                found,
                wanted: "`facet` or `endsolid`",
            };
            return Err(words.locate(trouble));
        }
    }
    Ok(soup(Format::StlText, points, pieces.max(1)))
}

/// The mesh as a binary file; the same mesh gives the same bytes.
pub fn write_stl(mesh: &Mesh) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(HEAD + FACET * mesh.triangles.len());
    bytes.extend_from_slice(&[0; 80]);
    bytes.extend_from_slice(&(mesh.triangles.len() as u32).to_le_bytes());
    for facet in 0..mesh.triangles.len() {
        let normal = mesh.normal(facet);
        let length = norm(normal);
        let unit = if length > 0.0 {
            scale(normal, 1.0 / length)
        } else {
            [0.0; 3]
        };
        for value in [unit].into_iter().chain(mesh.corners(facet)).flatten() {
            bytes.extend_from_slice(&(value as f32).to_le_bytes());
        }
        bytes.extend_from_slice(&[0; 2]);
    }
    bytes
}

fn promised(bytes: &[u8]) -> Option<u64> {
    let count = bytes.get(80..HEAD)?;
    Some(u64::from(u32::from_le_bytes([
        count[0], count[1], count[2], count[3],
    ])))
}

fn binary_point(bytes: &[u8]) -> Vector {
    let coordinate = |i: usize| {
        let four = [
            bytes[4 * i],
            bytes[4 * i + 1],
            bytes[4 * i + 2],
            bytes[4 * i + 3],
        ];
        f64::from(f32::from_le_bytes(four))
    };
    [coordinate(0), coordinate(1), coordinate(2)]
}

fn soup(format: Format, points: Vec<Vector>, pieces: usize) -> Soup {
    let triangles = (0..points.len() as u32 / 3)
        .map(|i| [3 * i, 3 * i + 1, 3 * i + 2])
        .collect();
    Soup {
        format: Some(format),
        declared_unit: None,
        points,
        triangles,
        pieces,
    }
}

/// The words of a text file, one after another, and how far it has been read.
struct Words<'a> {
    text: &'a [u8],
    at: usize,
    last: usize,
}

impl<'a> Words<'a> {
    fn next(&mut self) -> Option<&'a [u8]> {
        let rest = &self.text[self.at..];
        let start = rest.iter().position(|byte| !byte.is_ascii_whitespace())?;
        let word = &rest[start..];
        let length = word
            .iter()
            .position(u8::is_ascii_whitespace)
            .unwrap_or(word.len());
        self.last = self.at + start;
        self.at = self.last + length;
        Some(&word[..length])
    }

    /// Passes over the free name of a solid: the rest of the line, but never a facet, for some
    /// writers put the whole file on one line.
    fn skip_name(&mut self) {
        let rest = &self.text[self.at..];
        let line = rest
            .iter()
            .position(|&b| b == b'\n' || b == b'\r')
            .unwrap_or(rest.len());
        let facet = rest[..line]
            .windows(13)
            .position(|w| w.eq_ignore_ascii_case(b" facet normal"));
        self.at += facet.unwrap_or(line);
    }

    fn locate(&self, trouble: Trouble) -> ReadError {
        trouble.at(Place::Line(line_of(self.text, self.last)))
    }

    fn want(&mut self, wanted: &'static str) -> Result<(), Trouble> {
        let word = self
            .next()
            .ok_or(Trouble::EndsEarly { within: "a facet" })?;
        if is(word, wanted) {
            return Ok(());
        }
        Err(Trouble::Unexpected {
            found: shorten(word),
            wanted,
        })
    }

    fn number(&mut self) -> Result<f64, Trouble> {
        let word = self
            .next()
            .ok_or(Trouble::EndsEarly { within: "a facet" })?;
        let text = std::str::from_utf8(word).ok();
        let value = text.and_then(|text| text.parse::<f64>().ok());
        value.ok_or_else(|| Trouble::NotANumber {
            text: shorten(word),
        })
    }
}

fn is(word: &[u8], keyword: &str) -> bool {
    word.eq_ignore_ascii_case(keyword.as_bytes())
}

/// Reads on from behind the word `facet`. The stored normal is passed over: the corners tell it.
fn read_facet(words: &mut Words<'_>, points: &mut Vec<Vector>) -> Result<(), Trouble> {
    words.want("normal")?;
    for _ in 0..3 {
        words
            .next()
            .ok_or(Trouble::EndsEarly { within: "a facet" })?;
    }
    words.want("outer")?;
    words.want("loop")?;
    for _ in 0..3 {
        words.want("vertex")?;
        let point = [words.number()?, words.number()?, words.number()?];
        if !is_sane(point) {
            return Err(Trouble::NotFinite);
        }
        points.push(point);
    }
    words.want("endloop")?;
    words.want("endfacet")
}
