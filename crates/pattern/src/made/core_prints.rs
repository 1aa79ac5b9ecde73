//! A pattern for a casting with cores: the hollows filled, and the prints of the cores put on.

use crate::boolean::{Body, BooleanError};
use crate::mesh::Mesh;

/// What a core asks of the pattern, mm in the frame of the pattern.
#[derive(Clone, Copy, Debug)]
pub struct CoreOnPattern<'a> {
    /// What fills its hollow.
    pub body: &'a Mesh,
    /// Its prints, wider and longer than those of the core by the room it needs in the sand.
    pub prints: &'a [Mesh],
}

/// A pattern with the hollows of its cores filled and their prints put on.
#[derive(Clone, Debug)]
pub struct Filled {
    /// Its skin.
    pub mesh: Mesh,
    /// What it held with its hollows filled, before the prints were put on, mm³.
    pub without_prints_mm3: f64,
}

/// The pattern with the hollows of `cores` filled and their prints put on.
///
/// # Errors
///
/// Solids that could not be joined.
pub fn filled(pattern: &Mesh, cores: &[CoreOnPattern<'_>]) -> Result<Filled, BooleanError> {
    let mut whole = Body::of(pattern)?;
    for core in cores {
        whole = whole.with(&Body::of(core.body)?)?;
    }
    let without_prints_mm3 = whole.volume_mm3();
    for print in cores.iter().flat_map(|core| core.prints) {
        whole = whole.with(&Body::of(print)?)?;
    }
    Ok(Filled {
        mesh: whole.mesh(),
        without_prints_mm3,
    })
}
