//! One model text of a 3MF archive: its unit, its objects and what is placed.

use std::collections::BTreeMap;

use crate::placement::Placement;
use crate::read::{MOST_FACETS, Place, ReadError, Trouble, is_sane, shorten};
use crate::unit::Unit;
use crate::vector::Vector;
use crate::xml::{Tag, Tags};

/// A model text.
#[derive(Clone, Debug)]
pub struct Model {
    /// The unit of every length in it; millimetre if it is silent, as the format has it.
    pub unit: Unit,
    /// The objects by their number.
    pub objects: BTreeMap<u32, Object>,
    /// What is placed.
    pub items: Vec<Placed>,
}

/// An object.
#[derive(Clone, Debug)]
pub struct Object {
    /// Whether it only holds up others while they are made, and so is no part of the solid.
    pub is_support: bool,
    /// What it is made of.
    pub shape: Shape,
}

/// What an object is made of.
#[derive(Clone, Debug)]
pub enum Shape {
    /// Points and facets.
    Facets {
        /// Corner points.
        points: Vec<Vector>,
        /// Facets as indices into the points; all in range.
        triangles: Vec<[u32; 3]>,
    },
    /// Other objects.
    Components(Vec<Placed>),
    /// Something that facets do not describe: a lattice, a boolean, a displaced surface.
    Other,
}

/// An object and where it goes.
#[derive(Clone, Debug)]
pub struct Placed {
    /// Name of the archive part that defines it, if another.
    pub part: Option<String>,
    /// Its number there.
    pub object: u32,
    /// Where it goes.
    pub placement: Placement,
}

impl Model {
    /// Reads the model text `text` of the archive part `part`.
    pub fn parse(part: &str, text: &[u8]) -> Result<Model, ReadError> {
        let mut reading = Reading {
            model: Model {
                unit: Unit::Millimetre,
                objects: BTreeMap::new(),
                items: Vec::new(),
            },
            open: None,
            facets: 0,
        };
        let locate = |trouble: Trouble| trouble.at(Place::Part(shorten(part.as_bytes())));
        let mut tags = Tags::of(text).map_err(locate)?;
        let mut is_closed = false;
        while let Some(tag) = tags.next_tag().map_err(locate)? {
            is_closed = tag.is_end && tag.name == "model";
            reading.tag(tag).map_err(locate)?;
        }
        if !is_closed {
            return Err(locate(Trouble::EndsEarly {
                within: "the model",
            }));
        }
        Ok(reading.model)
    }
}

struct Reading {
    model: Model,
    open: Option<(u32, Object)>,
    facets: usize,
}

impl Reading {
    fn tag(&mut self, tag: Tag<'_>) -> Result<(), Trouble> {
        if tag.is_end {
            if tag.name == "object" {
                self.close_object()?;
            }
            return Ok(());
        }
        match tag.name {
            "model" => self.model.unit = unit(tag)?,
            "object" => self.open_object(tag)?,
            "vertex" => self.vertex(tag)?,
            "triangle" => self.triangle(tag)?,
            "component" => self.component(tag)?,
            "item" => self.model.items.push(placed(tag)?),
            "booleanshape" | "displacementmesh" | "beamlattice" => {
                if let Some((_, object)) = &mut self.open {
                    object.shape = Shape::Other;
                }
            }
            _ => {}
        }
        Ok(())
    }

    fn open_object(&mut self, tag: Tag<'_>) -> Result<(), Trouble> {
        let is_support = matches!(tag.attribute("type"), Some("support" | "solidsupport"));
        let shape = Shape::Facets {
            points: Vec::new(),
            triangles: Vec::new(),
        };
        self.open = Some((index(tag, "id")?, Object { is_support, shape }));
        if tag.is_empty {
            self.close_object()?;
        }
        Ok(())
    }

    fn close_object(&mut self) -> Result<(), Trouble> {
        let Some((id, object)) = self.open.take() else {
            return Ok(());
        };
        if let Shape::Facets { points, triangles } = &object.shape {
            let wrong = triangles
                .iter()
                .flatten()
                .find(|&&index| index as usize >= points.len());
            if let Some(&index) = wrong {
                let points = points.len();
                return Err(Trouble::NoSuchPoint {
                    index: i64::from(index),
                    points,
                });
            }
        }
        if self.model.objects.insert(id, object).is_some() {
            let text = id.to_string();
            return Err(Trouble::Attribute {
                attribute: "id",
                text,
            });
        }
        Ok(())
    }

    fn vertex(&mut self, tag: Tag<'_>) -> Result<(), Trouble> {
        let point = [number(tag, "x")?, number(tag, "y")?, number(tag, "z")?];
        if !is_sane(point) {
            return Err(Trouble::NotFinite);
        }
        if let Some((
            _,
            Object {
                shape: Shape::Facets { points, .. },
                ..
            },
        )) = &mut self.open
        {
            points.push(point);
            if points.len() > 3 * MOST_FACETS {
                return Err(Trouble::TooManyPoints);
            }
        }
        Ok(())
    }

    fn triangle(&mut self, tag: Tag<'_>) -> Result<(), Trouble> {
        let triangle = [index(tag, "v1")?, index(tag, "v2")?, index(tag, "v3")?];
        self.facets += 1;
        if self.facets > MOST_FACETS {
            return Err(Trouble::TooManyFacets);
        }
        if let Some((
            _,
            Object {
                shape: Shape::Facets { triangles, .. },
                ..
            },
        )) = &mut self.open
        {
            triangles.push(triangle);
        }
        Ok(())
    }

    fn component(&mut self, tag: Tag<'_>) -> Result<(), Trouble> {
        let component = placed(tag)?;
        let Some((_, object)) = &mut self.open else {
            return Ok(());
        };
        match &mut object.shape {
            Shape::Components(components) => components.push(component),
            shape => *shape = Shape::Components(vec![component]),
        }
        Ok(())
    }
}

fn unit(tag: Tag<'_>) -> Result<Unit, Trouble> {
    match tag.attribute("unit") {
        None | Some("millimeter") => Ok(Unit::Millimetre),
        Some("centimeter") => Ok(Unit::Centimetre),
        Some("meter") => Ok(Unit::Metre),
        Some("inch") => Ok(Unit::Inch),
        Some("foot") => Ok(Unit::Foot),
        Some("micron") => Ok(Unit::Micrometre),
        Some(other) => Err(wrong("unit", other)),
    }
}

fn placed(tag: Tag<'_>) -> Result<Placed, Trouble> {
    let placement = match tag.attribute("transform") {
        Some(text) => placement(text)?,
        None => Placement::HERE,
    };
    let part = tag.attribute("path").map(str::to_owned);
    Ok(Placed {
        part,
        object: index(tag, "objectid")?,
        placement,
    })
}

fn placement(text: &str) -> Result<Placement, Trouble> {
    let mut values = [0.0; 12];
    let mut words = text.split_ascii_whitespace();
    for value in &mut values {
        let parsed = words.next().and_then(|word| word.parse::<f64>().ok());
        *value = parsed
            .filter(|v| v.is_finite())
            .ok_or_else(|| wrong("transform", text))?;
    }
    match words.next() {
        Some(_) => Err(wrong("transform", text)),
        None => Ok(Placement(values)),
    }
}

fn number(tag: Tag<'_>, attribute: &'static str) -> Result<f64, Trouble> {
    let text = tag.attribute(attribute).unwrap_or_default();
    text.trim().parse().map_err(|_| wrong(attribute, text))
}

fn index(tag: Tag<'_>, attribute: &'static str) -> Result<u32, Trouble> {
    let text = tag.attribute(attribute).unwrap_or_default();
    text.trim().parse().map_err(|_| wrong(attribute, text))
}

fn wrong(attribute: &'static str, text: &str) -> Trouble {
    Trouble::Attribute {
        attribute,
        text: shorten(text.as_bytes()),
    }
}
