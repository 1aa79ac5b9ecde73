//! A part built from the tables of its solids.

use std::collections::VecDeque;
use std::sync::{Mutex, MutexGuard, PoisonError};

use measure::length::Length;
use measure::text::Typed;
use pattern::shape::{Built, Form, Shape, ShapeError, build};
use toml::Spanned;

use crate::given_part::{PartError, PartFault, fault};
use crate::job_file::{Kind, SolidFile};

pub(super) fn built(typed: &[Spanned<SolidFile>]) -> Result<Built, PartFault> {
    let shape = |solid: &Spanned<SolidFile>| {
        shape(solid.get_ref()).map_err(|error| fault(solid.span(), error))
    };
    let shapes: Vec<Shape> = typed.iter().map(shape).collect::<Result<_, _>>()?;
    if let Some(built) = last().iter().find(|built| built.shapes == shapes) {
        return Ok(built.clone());
    }
    let built = build(&shapes).map_err(|error| {
        let place = number(&error).and_then(|number| typed.get(number - 1));
        let span = place.or(typed.last()).map_or(0..0, Spanned::span);
        fault(span, PartError::Shape(error))
    })?;
    let mut last = last();
    last.truncate(MOST_KEPT - 1);
    last.push_front(built.clone());
    Ok(built)
}

/// The parts built last. A job is read anew after every change of something else in it, and to join
/// its solids takes a tenth of a second; the same shapes always make the same part.
static LAST: Mutex<VecDeque<Built>> = Mutex::new(VecDeque::new());

/// Most parts kept: as many as there are jobs open at once. More only hold memory, fewer build
/// those of two windows in turn.
const MOST_KEPT: usize = 8;

fn last() -> MutexGuard<'static, VecDeque<Built>> {
    LAST.lock().unwrap_or_else(PoisonError::into_inner)
}

fn shape(typed: &SolidFile) -> Result<Shape, PartError> {
    let at = typed
        .at
        .map_or([Length::ZERO; 3], |at| at.map(|along| along.0));
    Ok(Shape {
        form: form(typed)?,
        at,
        axis: typed.axis.map_or([0.0, 0.0, 1.0], |axis| axis.0),
        turn_degrees: typed.turn.map_or(0.0, |turn| turn.0),
        is_taken_away: typed.take_away,
    })
}

fn form(typed: &SolidFile) -> Result<Form, PartError> {
    let own = Own { typed };
    own.nothing_else()?;
    Ok(match typed.kind {
        Kind::Box => Form::Block { size: own.size()? },
        Kind::Cylinder => Form::Cylinder {
            diameter: own.length("diameter")?,
            length: own.length("length")?,
        },
        Kind::Tube => Form::Tube {
            diameter: own.length("diameter")?,
            bore: own.length("bore")?,
            length: own.length("length")?,
        },
        Kind::Cone => Form::Cone {
            diameter: own.length("diameter")?,
            top: typed.top.as_ref().map_or(Length::ZERO, |top| top.value),
            length: own.length("length")?,
        },
        Kind::Ball => Form::Ball {
            diameter: own.length("diameter")?,
        },
        Kind::Ellipsoid => Form::Ellipsoid { size: own.size()? },
        Kind::Ring => Form::Ring {
            diameter: own.length("diameter")?,
            thickness: own.length("thickness")?,
        },
    })
}

/// The sizes of one table, asked for by its kind.
struct Own<'a> {
    typed: &'a SolidFile,
}

impl Own<'_> {
    fn sizes(&self) -> [(&'static str, Option<&Typed<Length>>); 5] {
        let typed = self.typed;
        [
            ("diameter", typed.diameter.as_ref()),
            ("top", typed.top.as_ref()),
            ("bore", typed.bore.as_ref()),
            ("thickness", typed.thickness.as_ref()),
            ("length", typed.length.as_ref()),
        ]
    }

    fn length(&self, key: &'static str) -> Result<Length, PartError> {
        let found = self.sizes().into_iter().find(|(name, _)| *name == key);
        let typed = found.and_then(|(_, typed)| typed);
        let (kind, _) = words(self.typed.kind);
        typed
            .map(|typed| typed.value)
            .ok_or(PartError::Missing { kind, key })
    }

    fn size(&self) -> Result<[Length; 3], PartError> {
        let (kind, _) = words(self.typed.kind);
        let [a, b, c] = self
            .typed
            .size
            .as_ref()
            .ok_or(PartError::Missing { kind, key: "size" })?;
        Ok([a.value, b.value, c.value])
    }

    /// Refuses a size that the kind does not have: it was meant for another kind.
    fn nothing_else(&self) -> Result<(), PartError> {
        let (kind, wanted) = words(self.typed.kind);
        let size = ("size", self.typed.size.is_some());
        let given = self.sizes().map(|(key, typed)| (key, typed.is_some()));
        for (key, is_given) in given.into_iter().chain([size]) {
            if is_given && !wanted.contains(&key) {
                let wanted = wanted.join(", ");
                return Err(PartError::TooMuch { kind, key, wanted });
            }
        }
        Ok(())
    }
}

/// What a kind is called, and the sizes it has.
fn words(kind: Kind) -> (&'static str, &'static [&'static str]) {
    match kind {
        Kind::Box => ("box", &["size"]),
        Kind::Cylinder => ("cylinder", &["diameter", "length"]),
        Kind::Tube => ("tube", &["diameter", "bore", "length"]),
        Kind::Cone => ("cone", &["diameter", "top", "length"]),
        Kind::Ball => ("ball", &["diameter"]),
        Kind::Ellipsoid => ("ellipsoid", &["size"]),
        Kind::Ring => ("ring", &["diameter", "thickness"]),
    }
}

/// The solid that an error is about, counted from one.
fn number(error: &ShapeError) -> Option<usize> {
    match *error {
        ShapeError::None | ShapeError::TooMany { .. } => None,
        ShapeError::Size { number, .. }
        | ShapeError::Place { number }
        | ShapeError::Bore { number }
        | ShapeError::Bar { number }
        | ShapeError::Axis { number }
        | ShapeError::TakesFirst { number }
        | ShapeError::NothingLeft { number }
        | ShapeError::Join { number, .. } => Some(number),
    }
}
