//! What the sides of the box meet, and which of them are planes of symmetry.

use solver::case::Condition;

use crate::case_file::{CaseFile, ConditionFile, SideFile};
use crate::reading::CaseFileError;

/// Sides with their names, in the order of the solver.
const SIDES: [(SideFile, &str); 6] = [
    (SideFile::XLow, "x_low"),
    (SideFile::XHigh, "x_high"),
    (SideFile::YLow, "y_low"),
    (SideFile::YHigh, "y_high"),
    (SideFile::ZLow, "z_low"),
    (SideFile::ZHigh, "z_high"),
];

/// What each side meets: no heat crosses a plane of symmetry, as none crosses an insulated side.
pub fn conditions(file: &CaseFile) -> Result<[Condition; 6], CaseFileError> {
    check_mirrored(file)?;
    let given = given(file);
    let mut conditions = [Condition::Insulated; 6];
    for ((met, given), (_, name)) in conditions.iter_mut().zip(&given).zip(SIDES) {
        *met = condition(&format!("[faces] {name}"), given)?;
    }
    Ok(conditions)
}

/// How many times the box stands for itself: twice as many for each plane of symmetry.
pub fn images(file: &CaseFile) -> f64 {
    file.grid.mirrored.iter().fold(1.0, |times, _| 2.0 * times)
}

/// A condition from the ways in which a file may give it.
pub fn condition(place: &str, given: &ConditionFile) -> Result<Condition, CaseFileError> {
    let ConditionFile {
        held_c,
        flux_w_m2,
        w_m2k,
        surroundings_c,
        emissivity,
    } = *given;
    match (held_c, flux_w_m2, (w_m2k, surroundings_c, emissivity)) {
        (None, None, (None, None, None)) => Ok(Condition::Insulated),
        (Some(celsius), None, (None, None, None)) => Ok(Condition::Held { celsius }),
        (None, Some(w_m2), (None, None, None)) => Ok(Condition::Flux { w_m2 }),
        (None, None, (Some(w_m2k), Some(celsius), emissivity)) => {
            let emissivity = emissivity.unwrap_or(0.0);
            Ok(Condition::Exchange {
                w_m2k,
                celsius,
                emissivity,
            })
        }
        _ => Err(CaseFileError::Condition {
            place: place.to_owned(),
        }),
    }
}

/// A mirrored side meets nothing else, and its axis has no other: two mirrors face to face have no
/// end of images.
fn check_mirrored(file: &CaseFile) -> Result<(), CaseFileError> {
    let mirrored = &file.grid.mirrored;
    for (at, (side, name)) in SIDES.iter().enumerate() {
        let here = mirrored.iter().filter(|given| *given == side).count();
        let opposite = mirrored.contains(&SIDES[at ^ 1].0);
        let meets = given(file)[at] != ConditionFile::default();
        if here > 1 || here == 1 && (opposite || meets) {
            return Err(CaseFileError::Mirrored { side: name });
        }
    }
    Ok(())
}

fn given(file: &CaseFile) -> [ConditionFile; 6] {
    let faces = &file.faces;
    [
        faces.x_low,
        faces.x_high,
        faces.y_low,
        faces.y_high,
        faces.z_low,
        faces.z_high,
    ]
}
