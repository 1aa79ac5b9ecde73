//! Bytes of a mesh file to facets: which reader takes them, and why a file is turned away.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::mesh::Soup;
use crate::{obj, ply, stl, threemf};

/// The mesh file formats that can be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Format {
    /// Stereolithography text.
    StlText,
    /// Stereolithography binary.
    StlBinary,
    /// Wavefront object.
    Obj,
    /// Polygon file, text or binary.
    Ply,
    /// 3D Manufacturing Format archive.
    ThreeMf,
}

/// Largest file that is read, in bytes: the text form of the largest part allowed.
pub const MOST_BYTES: usize = 320 << 20;

/// Most facets that are read. A part of this size takes some three seconds and 500 MB; a casting
/// pattern with more detail than sand can show gains nothing from it.
pub const MOST_FACETS: usize = 1_000_000;

/// A file that could not be read: what, where and what to do.
#[derive(Clone, Debug, PartialEq, Error)]
#[error("{place}{trouble}")]
pub struct ReadError {
    /// Where in the file.
    pub place: Place,
    /// What is wrong, and what to do about it.
    pub trouble: Trouble,
}

/// Where in a file the trouble was met.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Place {
    /// The file as a whole.
    File,
    /// A line, counted from one.
    Line(usize),
    /// A facet, counted from one.
    Facet(usize),
    /// A point, counted from one.
    Point(usize),
    /// A byte, counted from zero.
    Byte(usize),
    /// A part of an archive, by its name.
    Part(String),
}

/// What keeps a file from being read.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum Trouble {
    /// No bytes, or nothing but blanks.
    #[error("the file is empty; export the part again")]
    Empty,
    /// Readable, but without a single facet.
    #[error("there are no facets in it; export the part as a solid, not as points or curves")]
    NoFacets,
    /// More bytes than [`MOST_BYTES`].
    #[error("{bytes} bytes are more than the {MOST_BYTES} that are read; export with fewer facets")]
    TooLarge {
        /// Size of the file, or of what it unpacks to.
        bytes: u64,
    },
    /// More facets than [`MOST_FACETS`].
    #[error("more than {MOST_FACETS} facets; export with a coarser tolerance")]
    TooManyFacets,
    /// More points than a part of the allowed size can use.
    #[error("more than {} points; export with a coarser tolerance", 3 * MOST_FACETS)]
    TooManyPoints,
    /// More points and facets together than a file of shared points needs.
    #[error(
        "more than {} points and facets together; export with shared points, or coarser",
        2 * MOST_FACETS
    )]
    TooManyRecords,
    /// Neither content nor name tells the format.
    #[error("not recognised as STL, OBJ, PLY or 3MF; export the part in one of these")]
    UnknownFormat,
    /// Text of two bytes a letter.
    #[error("the text is UTF-16; save it as plain ASCII or UTF-8, or export binary STL")]
    Utf16,
    /// A binary count promises more than the file holds.
    #[error(
        "the header promises {promised} facets but bytes for {there} follow; the file was cut off \
         or its count is wrong: export or copy it again"
    )]
    Truncated {
        /// Facets promised.
        promised: u64,
        /// Facets the bytes can hold.
        there: u64,
    },
    /// A binary count promises less than the file holds.
    #[error(
        "the header promises {promised} facets but bytes for {there} follow; its count is wrong: \
         export it again"
    )]
    MoreThanPromised {
        /// Facets promised.
        promised: u64,
        /// Facets the bytes could hold.
        there: u64,
    },
    /// The text stops in the middle of something.
    #[error("the file ends in the middle of {within}; it was cut off: export or copy it again")]
    EndsEarly {
        /// What was being read.
        within: &'static str,
    },
    /// A word that should be a number.
    #[error("`{text}` is not a number (a point, not a comma, marks decimals); export it again")]
    NotANumber {
        /// The word as it stands, shortened.
        text: String,
    },
    /// A coordinate that is infinite, not a number, or beyond any part.
    #[error("a coordinate is not finite or beyond any part; repair the part in your CAD")]
    NotFinite,
    /// A word that does not belong there.
    #[error("`{found}` stands where {wanted} belongs; export it again")]
    Unexpected {
        /// The word as it stands, shortened.
        found: String,
        /// What belongs there.
        wanted: &'static str,
    },
    /// A facet with other than three corners where only three are allowed.
    #[error("a facet has {corners} corners instead of three; export as triangles")]
    NotATriangle {
        /// Corners found.
        corners: usize,
    },
    /// A face with fewer than three corners.
    #[error("a face has {corners} corners, at least three are needed; repair it in your CAD")]
    TooFewCorners {
        /// Corners found.
        corners: usize,
    },
    /// A face that refers to a point which does not exist.
    #[error("point {index} is called for but there are {points}; the file is damaged")]
    NoSuchPoint {
        /// The index as it stands in the file.
        index: i64,
        /// Points known there.
        points: usize,
    },
    /// A face with so many corners on a bent outline that cutting it up would take too long.
    #[error("a face with {corners} corners is too intricate; export as triangles")]
    TooIntricate {
        /// Corners of the face.
        corners: usize,
    },
    /// An element count that the bytes of the file cannot hold.
    #[error("{count} of `{element}` cannot fit in the bytes that follow; the header is wrong")]
    CountDoesNotFit {
        /// Element as named in the header.
        element: String,
        /// Count as claimed in the header.
        count: u64,
    },
    /// A PLY header or body that its grammar does not allow.
    #[error("not a sound PLY file ({said}); export it again")]
    Ply {
        /// What the PLY grammar objects to, first line.
        said: String,
    },
    /// A PLY file without the properties a solid needs.
    #[error("the header names no {wanted}; export the part with points and faces")]
    PlyLacks {
        /// What is missing.
        wanted: &'static str,
    },
    /// An archive whose directory cannot be made out.
    #[error("the archive is damaged ({why}); export or copy it again")]
    Archive {
        /// What is wrong with it.
        why: &'static str,
    },
    /// An archive part that unpacks to another size or checksum than it claims.
    #[error("it does not unpack to what the archive claims; export or copy the file again")]
    PartLies,
    /// An archive part packed in a way that is not read.
    #[error("it is encrypted or packed in an unusual way; save the 3MF again")]
    PackedOddly,
    /// A name that leads out of the archive.
    #[error("its name leads out of the archive; the file is not to be trusted")]
    PathLeadsOut,
    /// A part that is called for but missing.
    #[error("it is called for but not in the archive; export it again")]
    PartMissing,
    /// XML that cannot be made out, or that declares its own entities.
    #[error("the XML is damaged ({why}); export it again")]
    Xml {
        /// What is wrong with it.
        why: &'static str,
    },
    /// An attribute that must be there.
    #[error("`{attribute}` is missing or wrong: `{text}`; export it again")]
    Attribute {
        /// Name of the attribute.
        attribute: &'static str,
        /// What stands there, shortened.
        text: String,
    },
    /// An object that is called for but does not exist.
    #[error("object {id} is called for but not defined; export it again")]
    NoSuchObject {
        /// Its number in the file.
        id: u32,
    },
    /// Objects that are made of one another in a ring.
    #[error("object {id} is made of itself by way of its components; export it again")]
    ComponentRing {
        /// The object at which the ring closes.
        id: u32,
    },
    /// Components nested deeper than any assembly.
    #[error("components are nested deeper than {most}; export the parts flat")]
    NestedTooDeep {
        /// Levels allowed.
        most: usize,
    },
    /// More placed copies than any part has.
    #[error("objects are placed more than {most} times; export one part alone")]
    TooManyPlaced {
        /// Placements allowed.
        most: usize,
    },
    /// An object given by something other than facets.
    #[error("object {id} is not given as facets; export it as a plain mesh")]
    NotFacets {
        /// Its number in the file.
        id: u32,
    },
}

impl std::fmt::Display for Format {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Format::StlText => "STL text",
            Format::StlBinary => "STL binary",
            Format::Obj => "OBJ",
            Format::Ply => "PLY",
            Format::ThreeMf => "3MF",
        })
    }
}

impl std::fmt::Display for Place {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Place::File => Ok(()),
            Place::Line(line) => write!(f, "line {line}: "),
            Place::Facet(facet) => write!(f, "facet {facet}: "),
            Place::Point(point) => write!(f, "point {point}: "),
            Place::Byte(byte) => write!(f, "byte {byte}: "),
            Place::Part(name) => write!(f, "`{name}` in the archive: "),
        }
    }
}

impl Trouble {
    /// This trouble at `place`.
    pub fn at(self, place: Place) -> ReadError {
        ReadError {
            place,
            trouble: self,
        }
    }
}

/// Reads a mesh file; `name` is only asked where the content leaves the format open.
pub fn read(name: &str, bytes: &[u8]) -> Result<Soup, ReadError> {
    if bytes.len() > MOST_BYTES {
        return Err(Trouble::TooLarge {
            bytes: bytes.len() as u64,
        }
        .at(Place::File));
    }
    if bytes.iter().all(u8::is_ascii_whitespace) {
        return Err(Trouble::Empty.at(Place::File));
    }
    let soup = match recognise(name, bytes)? {
        Format::StlText => stl::read_text(bytes),
        Format::StlBinary => stl::read_binary(bytes),
        Format::Obj => obj::read(bytes),
        Format::Ply => ply::read(bytes),
        Format::ThreeMf => threemf::read(bytes),
    }?;
    if soup.triangles.is_empty() {
        return Err(Trouble::NoFacets.at(Place::File));
    }
    Ok(soup)
}

/// Largest coordinate taken as meant: beyond it squares and cubes no longer fit a number.
const FARTHEST: f64 = 1e15;

/// Whether every coordinate is finite and not beyond any part.
pub(crate) fn is_sane(point: [f64; 3]) -> bool {
    point.iter().all(|value| value.abs() <= FARTHEST)
}

/// At most the first forty letters of a word, for use in a message.
pub(crate) fn shorten(word: &[u8]) -> String {
    let text = String::from_utf8_lossy(&word[..word.len().min(160)]);
    let mut short: String = text.chars().filter(|c| !c.is_control()).take(40).collect();
    if short.len() < word.len() {
        short.push('…');
    }
    short
}

/// Number of the line that holds byte `at`, counted from one; CR, LF and CRLF all end a line.
pub(crate) fn line_of(bytes: &[u8], at: usize) -> usize {
    let before = &bytes[..at.min(bytes.len())];
    let feeds = before.iter().filter(|&&byte| byte == b'\n').count();
    let bare_returns = (0..before.len())
        .filter(|&i| before[i] == b'\r' && bytes.get(i + 1) != Some(&b'\n'))
        .count();
    1 + feeds + bare_returns
}

/// The bytes without the mark that some editors put before UTF-8 text.
pub(crate) fn without_mark(bytes: &[u8]) -> &[u8] {
    bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes)
}

fn recognise(name: &str, bytes: &[u8]) -> Result<Format, ReadError> {
    let text = without_mark(bytes).trim_ascii_start();
    if bytes.starts_with(b"PK") {
        return Ok(Format::ThreeMf);
    }
    if text.starts_with(b"ply") && text.get(3).is_some_and(u8::is_ascii_whitespace) {
        return Ok(Format::Ply);
    }
    if stl::is_exactly_binary(bytes) {
        return Ok(Format::StlBinary);
    }
    if is_utf16(bytes) {
        return Err(Trouble::Utf16.at(Place::Byte(0)));
    }
    if stl::looks_like_text(text) {
        return Ok(Format::StlText);
    }
    by_extension(name, text).ok_or(Trouble::UnknownFormat.at(Place::File))
}

fn by_extension(name: &str, text: &[u8]) -> Option<Format> {
    let extension = name
        .rsplit_once('.')
        .map(|(_, end)| end.to_ascii_lowercase());
    match extension.as_deref() {
        Some("stl") => Some(Format::StlBinary),
        Some("obj") => Some(Format::Obj),
        Some("ply") => Some(Format::Ply),
        Some("3mf") => Some(Format::ThreeMf),
        _ => obj::looks_like_text(text).then_some(Format::Obj),
    }
}

fn is_utf16(bytes: &[u8]) -> bool {
    let marked = bytes.starts_with(b"\xFF\xFE") || bytes.starts_with(b"\xFE\xFF");
    let head = &bytes[..bytes.len().min(64)];
    let every_other_is_zero = |start: usize| {
        head.len() >= 16
            && head[start..].iter().step_by(2).all(|&byte| byte == 0)
            && head[1 - start..]
                .iter()
                .step_by(2)
                .all(|&byte| byte != 0 && byte < 0x80)
    };
    marked || every_other_is_zero(0) || every_other_is_zero(1)
}
