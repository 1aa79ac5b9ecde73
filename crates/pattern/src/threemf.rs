//! 3MF archives: the objects of the model, placed by items and components, in the declared unit.
//!
//! The model text is read by ourselves rather than by a library because a coordinate that is not a
//! number must be refused, not taken as zero.

use std::collections::BTreeMap;

use crate::archive::Archive;
use crate::mesh::Soup;
use crate::placement::Placement;
use crate::read::{Format, MOST_FACETS, Place, ReadError, Trouble, shorten};
use crate::threemf_model::{Model, Object, Placed, Shape};
use crate::unit::Unit;
use crate::xml::Tags;

/// Deepest nesting of components that is followed.
const MOST_LEVELS: usize = 32;

/// Most placements, of objects and of components together.
const MOST_PLACED: usize = 20_000;

/// Reads every placed object of the archive.
pub fn read(bytes: &[u8]) -> Result<Soup, ReadError> {
    let mut archive = Archive::open(bytes)?;
    let root = root_part(&mut archive)?;
    let mut reading = Reading {
        archive,
        models: BTreeMap::new(),
        placed: 0,
        soup: Soup {
            format: Some(Format::ThreeMf),
            declared_unit: None,
            points: Vec::new(),
            triangles: Vec::new(),
            pieces: 0,
        },
    };
    reading.load(&root)?;
    let (unit, items) = match reading.models.get(&root) {
        Some(model) => (model.unit, model.items.clone()),
        None => (Unit::Millimetre, Vec::new()),
    };
    let mut above = Vec::new();
    for item in &items {
        reading.place(&root, item, Placement::HERE, &mut above)?;
    }
    reading.soup.declared_unit = Some(unit);
    reading.soup.pieces = reading.soup.pieces.max(1);
    Ok(reading.soup)
}

struct Reading<'a> {
    archive: Archive<'a>,
    models: BTreeMap<String, Model>,
    placed: usize,
    soup: Soup,
}

impl Reading<'_> {
    fn load(&mut self, part: &str) -> Result<(), ReadError> {
        if self.models.contains_key(part) {
            return Ok(());
        }
        let text = self.archive.part(part)?;
        self.models
            .insert(part.to_owned(), Model::parse(part, &text)?);
        Ok(())
    }

    /// Adds one placed object, or all that it is made of, to the facets.
    fn place(
        &mut self,
        part: &str,
        placed: &Placed,
        outer: Placement,
        above: &mut Vec<(String, u32)>,
    ) -> Result<(), ReadError> {
        let part = placed
            .part
            .as_deref()
            .map_or(part, |path| path.trim_start_matches('/'));
        let place = Place::Part(shorten(part.as_bytes()));
        let id = placed.object;
        self.placed += 1;
        if self.placed > MOST_PLACED {
            return Err(Trouble::TooManyPlaced { most: MOST_PLACED }.at(place));
        }
        if above
            .iter()
            .any(|(above_part, above_id)| above_part == part && *above_id == id)
        {
            return Err(Trouble::ComponentRing { id }.at(place));
        }
        if above.len() >= MOST_LEVELS {
            return Err(Trouble::NestedTooDeep { most: MOST_LEVELS }.at(place));
        }
        self.load(part)?;
        let object = self
            .models
            .get(part)
            .and_then(|model| model.objects.get(&id));
        let object = object.ok_or_else(|| Trouble::NoSuchObject { id }.at(place.clone()))?;
        let here = outer.after(placed.placement);
        if object.is_support {
            return Ok(());
        }
        if let Shape::Components(components) = &object.shape {
            let components = components.clone();
            above.push((part.to_owned(), id));
            for component in &components {
                self.place(part, component, here, above)?;
            }
            above.pop();
            return Ok(());
        }
        add_facets(&mut self.soup, id, object, here).map_err(|trouble| trouble.at(place))
    }
}

fn add_facets(soup: &mut Soup, id: u32, object: &Object, here: Placement) -> Result<(), Trouble> {
    let Shape::Facets { points, triangles } = &object.shape else {
        return Err(Trouble::NotFacets { id });
    };
    if soup.triangles.len() + triangles.len() > MOST_FACETS {
        return Err(Trouble::TooManyFacets);
    }
    if soup.points.len() + points.len() > 3 * MOST_FACETS {
        return Err(Trouble::TooManyPoints);
    }
    let first = soup.points.len() as u32;
    for &point in points {
        let moved = here.point(point);
        if !crate::read::is_sane(moved) {
            return Err(Trouble::NotFinite);
        }
        soup.points.push(moved);
    }
    let is_mirrored = here.is_mirrored();
    soup.triangles.extend(triangles.iter().map(|&[a, b, c]| {
        let [b, c] = if is_mirrored { [c, b] } else { [b, c] };
        [a + first, b + first, c + first]
    }));
    soup.pieces += 1;
    Ok(())
}

/// Name of the part that holds the model, by the relationships of the archive.
fn root_part(archive: &mut Archive<'_>) -> Result<String, ReadError> {
    if let Ok(relationships) = archive.part("_rels/.rels") {
        let place = || Place::Part("_rels/.rels".to_owned());
        let mut tags = Tags::of(&relationships).map_err(|trouble| trouble.at(place()))?;
        while let Some(tag) = tags.next_tag().map_err(|trouble| trouble.at(place()))? {
            let is_model = tag
                .attribute("Type")
                .is_some_and(|kind| kind.ends_with("/3dmodel"));
            if let Some(target) = tag.attribute("Target").filter(|_| is_model) {
                return Ok(target.trim_start_matches('/').to_owned());
            }
        }
    }
    let named = archive.first_ending(".model").map(str::to_owned);
    named.ok_or_else(|| Trouble::PartMissing.at(Place::Part("3D/3dmodel.model".to_owned())))
}
