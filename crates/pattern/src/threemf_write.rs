//! 3MF archives written: named solids in millimetres, with a title and what else the format knows.
//!
//! Written by the core specification of the format: one model part, every mesh an object of its
//! own, every object placed once where it stands. Coordinates are written in full, so that what is
//! read back is the same to the last bit. The same input gives the same bytes: no clock is asked.

use std::fmt::Write;

use thiserror::Error;

use crate::archive::{Part, pack};
use crate::mesh::Mesh;
use crate::read::{MOST_FACETS, is_sane};
use crate::vector::Vector;

/// One solid of an archive.
#[derive(Clone, Copy, Debug)]
pub struct Piece<'a> {
    /// The name under which a slicer or viewer lists it.
    pub name: &'a str,
    /// Its skin in millimetres, closed and wound outward.
    pub mesh: &'a Mesh,
}

/// The names of metadata that the core specification gives a meaning.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Metadata {
    /// What the model is called.
    Title,
    /// Who drew it.
    Designer,
    /// What it is and what it is for.
    Description,
    /// Whose it is.
    Copyright,
    /// On what terms it may be used.
    LicenseTerms,
    /// When it was made.
    CreationDate,
    /// When it was last changed.
    ModificationDate,
    /// The program that wrote it.
    Application,
}

/// Why nothing was written.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum WriteError {
    /// Nothing to write.
    #[error("there is no solid to write")]
    NoPieces,
    /// A piece without facets.
    #[error("`{name}` has no facets; leave it out")]
    NoFacets {
        /// Name of the piece.
        name: String,
    },
    /// A facet that calls for a point which does not exist, or for one point twice.
    #[error("facet {facet} of `{name}` does not join three points of it; mend it first")]
    BadFacet {
        /// Name of the piece.
        name: String,
        /// The facet, counted from one.
        facet: usize,
    },
    /// A coordinate that is infinite, not a number, or beyond any part.
    #[error("point {point} of `{name}` is not finite or beyond any part; mend it first")]
    NotFinite {
        /// Name of the piece.
        name: String,
        /// The point, counted from one.
        point: usize,
    },
    /// More facets than are read again.
    #[error("{facets} facets are more than the {MOST_FACETS} that are read again; write fewer")]
    TooManyFacets {
        /// Facets of all pieces together.
        facets: usize,
    },
    /// The same name of metadata twice, which the specification forbids.
    #[error("the metadata {0:?} is given twice; give it once")]
    MetadataTwice(Metadata),
    /// The text does not fit an archive of the plain form.
    #[error("the text is larger than an archive holds; write fewer facets")]
    TooLarge,
}

/// The archive as bytes: `pieces` in millimetres, each an object placed as it stands.
///
/// Letters that XML cannot hold, which nobody types, are written as blanks.
///
/// # Errors
///
/// Nothing to write, or a piece that could not be read again.
pub fn write_threemf(
    pieces: &[Piece<'_>],
    metadata: &[(Metadata, &str)],
) -> Result<Vec<u8>, WriteError> {
    check(pieces, metadata)?;
    let parts = [
        Part::new("[Content_Types].xml", CONTENT_TYPES.to_owned()),
        Part::new("_rels/.rels", RELATIONSHIPS.to_owned()),
        Part::new("3D/3dmodel.model", model(pieces, metadata)),
    ];
    pack(&parts).ok_or(WriteError::TooLarge)
}

const CONTENT_TYPES: &str = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n\
<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">\
<Default Extension=\"rels\" \
ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>\
<Default Extension=\"model\" \
ContentType=\"application/vnd.ms-package.3dmanufacturing-3dmodel+xml\"/></Types>\n";

const RELATIONSHIPS: &str = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n\
<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">\
<Relationship Target=\"/3D/3dmodel.model\" Id=\"rel0\" \
Type=\"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel\"/></Relationships>\n";

fn check(pieces: &[Piece<'_>], metadata: &[(Metadata, &str)]) -> Result<(), WriteError> {
    if pieces.is_empty() {
        return Err(WriteError::NoPieces);
    }
    let facets = pieces.iter().map(|piece| piece.mesh.triangles.len()).sum();
    if facets > MOST_FACETS {
        return Err(WriteError::TooManyFacets { facets });
    }
    for (at, (kind, _)) in metadata.iter().enumerate() {
        if metadata[..at].iter().any(|(earlier, _)| earlier == kind) {
            return Err(WriteError::MetadataTwice(*kind));
        }
    }
    pieces.iter().try_for_each(check_piece)
}

fn check_piece(piece: &Piece<'_>) -> Result<(), WriteError> {
    let name = || piece.name.to_owned();
    let Mesh { points, triangles } = piece.mesh;
    if triangles.is_empty() {
        return Err(WriteError::NoFacets { name: name() });
    }
    let is_bad = |&[a, b, c]: &[u32; 3]| {
        a == b || b == c || c == a || a.max(b).max(c) as usize >= points.len()
    };
    if let Some(facet) = triangles.iter().position(is_bad) {
        let facet = facet + 1;
        return Err(WriteError::BadFacet {
            name: name(),
            facet,
        });
    }
    match points.iter().position(|&point| !is_sane(point)) {
        Some(point) => Err(WriteError::NotFinite {
            name: name(),
            point: point + 1,
        }),
        None => Ok(()),
    }
}

/// Writing to a string cannot fail, so what `write!` says of it is not asked.
fn model(pieces: &[Piece<'_>], metadata: &[(Metadata, &str)]) -> String {
    let facets: usize = pieces.iter().map(|piece| piece.mesh.triangles.len()).sum();
    let mut text = String::with_capacity(1024 + 90 * facets);
    text.push_str(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<model unit=\"millimeter\" \
         xml:lang=\"en-US\" \
         xmlns=\"http://schemas.microsoft.com/3dmanufacturing/core/2015/02\">\n",
    );
    for (kind, value) in metadata {
        let _ = writeln!(
            text,
            "<metadata name=\"{kind:?}\">{}</metadata>",
            escaped(value)
        );
    }
    text.push_str("<resources>\n");
    for (index, piece) in pieces.iter().enumerate() {
        add_object(&mut text, index + 1, piece);
    }
    text.push_str("</resources>\n<build>\n");
    for id in 1..=pieces.len() {
        let _ = writeln!(text, "<item objectid=\"{id}\"/>");
    }
    text.push_str("</build>\n</model>\n");
    text
}

fn add_object(text: &mut String, id: usize, piece: &Piece<'_>) {
    let name = escaped(piece.name);
    let _ = writeln!(
        text,
        "<object id=\"{id}\" name=\"{name}\" type=\"model\"><mesh><vertices>"
    );
    for &[x, y, z] in &piece.mesh.points {
        let [x, y, z]: Vector = [x + 0.0, y + 0.0, z + 0.0];
        let _ = writeln!(text, "<vertex x=\"{x}\" y=\"{y}\" z=\"{z}\"/>");
    }
    text.push_str("</vertices><triangles>\n");
    for [a, b, c] in &piece.mesh.triangles {
        let _ = writeln!(text, "<triangle v1=\"{a}\" v2=\"{b}\" v3=\"{c}\"/>");
    }
    text.push_str("</triangles></mesh></object>\n");
}

fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\n' | '\t' | '\r' => safe.push(letter),
            '\u{FFFE}' | '\u{FFFF}' => safe.push(' '),
            _ if letter.is_control() => safe.push(' '),
            _ => safe.push(letter),
        }
    }
    safe
}
