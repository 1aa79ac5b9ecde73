//! Polygon files, text and both binary orders, guarded against counts the file cannot hold.

use ply_rs_bw::parser::{ParseError, Parser, Reader};
use ply_rs_bw::ply::{
    ElementDef, Encoding, Header, Property, PropertyAccess, PropertyAccessResult, PropertyType,
    ScalarType,
};

use crate::mesh::Soup;
use crate::polygon;
use crate::read::{Format, MOST_FACETS, Place, ReadError, Trouble, is_sane, without_mark};
use crate::vector::Vector;

/// Reads the points and faces; other elements are read and dropped.
pub fn read(bytes: &[u8]) -> Result<Soup, ReadError> {
    let text = without_mark(bytes);
    let parser = Parser::<Record>::new();
    let mut reader = Reader::new(text);
    let header = parser
        .read_header(&mut reader)
        .map_err(|error| from_ply(&error))?;
    check_counts(&header, reader.get_ref().len())?;
    let mut payload = parser
        .read_payload(&mut reader, &header)
        .map_err(|error| from_ply(&error))?;
    let vertices = payload.swap_remove("vertex").unwrap_or_default();
    let faces = payload.swap_remove("face").unwrap_or_default();
    let points = points_of(&vertices)?;
    drop(vertices);
    let triangles = triangles_of(&faces, &points)?;
    Ok(Soup {
        format: Some(Format::Ply),
        declared_unit: None,
        points,
        triangles,
        pieces: 1,
    })
}

/// A point or a face, whichever its element fills in.
struct Record {
    point: Vector,
    corners: Vec<u32>,
    has_bad_corner: bool,
}

impl PropertyAccess for Record {
    fn new() -> Record {
        Record {
            point: [0.0; 3],
            corners: Vec::new(),
            has_bad_corner: false,
        }
    }

    fn set_property(&mut self, name: &str, property: Property) -> PropertyAccessResult {
        match name {
            "x" => self.set_coordinate(0, &property),
            "y" => self.set_coordinate(1, &property),
            "z" => self.set_coordinate(2, &property),
            "vertex_indices" | "vertex_index" => self.set_corners(property),
            _ => PropertyAccessResult::Ignored,
        }
    }
}

impl Record {
    fn set_coordinate(&mut self, axis: usize, property: &Property) -> PropertyAccessResult {
        self.point[axis] = match *property {
            Property::Float(value) => f64::from(value),
            Property::Double(value) => value,
            Property::Char(value) => f64::from(value),
            Property::UChar(value) => f64::from(value),
            Property::Short(value) => f64::from(value),
            Property::UShort(value) => f64::from(value),
            Property::Int(value) => f64::from(value),
            Property::UInt(value) => f64::from(value),
            _ => return PropertyAccessResult::UnsupportedType,
        };
        PropertyAccessResult::Set
    }

    fn set_corners(&mut self, property: Property) -> PropertyAccessResult {
        match property {
            Property::ListUInt(corners) => self.corners = corners,
            other => match other.to_u32_list() {
                Some(corners) => self.corners = corners,
                None => self.has_bad_corner = true,
            },
        }
        PropertyAccessResult::Set
    }
}

/// Refuses counts that the bytes behind the header cannot hold, before anything is stored.
fn check_counts(header: &Header, bytes: usize) -> Result<(), ReadError> {
    let mut least = 0u64;
    let mut records = 0u64;
    for element in header.elements.values() {
        let count = element.count as u64;
        least = least.saturating_add(count.saturating_mul(least_bytes(element, header.encoding)));
        records = records.saturating_add(count);
        if least > bytes as u64 {
            let element = element.name.clone();
            return Err(Trouble::CountDoesNotFit { element, count }.at(Place::File));
        }
    }
    if records > 2 * MOST_FACETS as u64 {
        return Err(Trouble::TooManyRecords.at(Place::File));
    }
    check_properties(header)
}

fn check_properties(header: &Header) -> Result<(), ReadError> {
    let has = |element: &str, property: &str| {
        header
            .elements
            .get(element)
            .is_some_and(|e| e.properties.contains_key(property))
    };
    let lacks = |wanted| Err(Trouble::PlyLacks { wanted }.at(Place::File));
    if !["x", "y", "z"].iter().all(|axis| has("vertex", axis)) {
        return lacks("x, y and z of the points (`vertex`)");
    }
    if !has("face", "vertex_indices") && !has("face", "vertex_index") {
        return lacks("corners of the faces (`vertex_indices`)");
    }
    Ok(())
}

/// Fewest bytes one record can take; at least one, so that no count is free.
fn least_bytes(element: &ElementDef, encoding: Encoding) -> u64 {
    let of_property = |data_type: &PropertyType| match (encoding, data_type) {
        (Encoding::Ascii, _) => 2,
        (_, PropertyType::Scalar(scalar) | PropertyType::List(scalar, _)) => scalar_bytes(scalar),
    };
    element
        .properties
        .values()
        .map(|p| of_property(&p.data_type))
        .sum::<u64>()
        .max(1)
}

fn scalar_bytes(scalar: &ScalarType) -> u64 {
    match scalar {
        ScalarType::Char | ScalarType::UChar => 1,
        ScalarType::Short | ScalarType::UShort => 2,
        ScalarType::Int | ScalarType::UInt | ScalarType::Float => 4,
        ScalarType::Double => 8,
    }
}

fn points_of(vertices: &[Record]) -> Result<Vec<Vector>, ReadError> {
    match vertices.iter().position(|record| !is_sane(record.point)) {
        Some(index) => Err(Trouble::NotFinite.at(Place::Point(index + 1))),
        None => Ok(vertices.iter().map(|record| record.point).collect()),
    }
}

fn triangles_of(faces: &[Record], points: &[Vector]) -> Result<Vec<[u32; 3]>, ReadError> {
    let mut triangles = Vec::with_capacity(faces.len());
    let mut cutting = 0;
    for (index, face) in faces.iter().enumerate() {
        let found = cut(face, points, &mut cutting);
        triangles.extend(found.map_err(|trouble| trouble.at(Place::Facet(index + 1)))?);
        if triangles.len() > MOST_FACETS {
            return Err(Trouble::TooManyFacets.at(Place::Facet(index + 1)));
        }
    }
    Ok(triangles)
}

fn cut(face: &Record, points: &[Vector], cutting: &mut usize) -> Result<Vec<[u32; 3]>, Trouble> {
    let corners = face.corners.len();
    if face.has_bad_corner {
        return Err(Trouble::NoSuchPoint {
            index: -1,
            points: points.len(),
        });
    }
    if let Some(&index) = face
        .corners
        .iter()
        .find(|&&index| index as usize >= points.len())
    {
        return Err(Trouble::NoSuchPoint {
            index: i64::from(index),
            points: points.len(),
        });
    }
    if corners < 3 {
        return Err(Trouble::TooFewCorners { corners });
    }
    polygon::cut_face(&face.corners, points, cutting)
}

fn from_ply(error: &ParseError) -> ReadError {
    let said = error
        .to_string()
        .lines()
        .next()
        .unwrap_or_default()
        .chars()
        .take(120)
        .collect();
    let place = error.line().map_or(Place::File, Place::Line);
    Trouble::Ply { said }.at(place)
}
