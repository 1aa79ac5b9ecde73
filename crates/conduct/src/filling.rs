//! What fills each cell, filling upon filling.

use solver::grid::Grid;

use crate::case_file::{CaseFile, FillFile};
use crate::reading::{CaseFileError, material_number};
use crate::shape::Shape;

/// What fills each cell, and from which temperature it starts.
pub fn fillings(file: &CaseFile, grid: &Grid) -> Result<(Vec<u8>, Vec<f32>), CaseFileError> {
    let mut cells = vec![UNFILLED; grid.cells()];
    let mut start_c = vec![0.0; grid.cells()];
    for (number, fill) in file.fill.iter().enumerate() {
        let number = number + 1;
        let shape = Shape::of(fill).ok_or(CaseFileError::Fill { number })?;
        let (filling, celsius) = filling(file, fill, number)?;
        for cell in 0..cells.len() {
            let at_mm = grid.centre(grid.place(cell)).map(|m| m * 1e3);
            if shape.holds(at_mm) != fill.outside {
                cells[cell] = filling;
                start_c[cell] = celsius as f32;
            }
        }
    }
    match cells.iter().position(|&number| number == UNFILLED) {
        Some(cell) => {
            let at_mm = grid.centre(grid.place(cell)).map(|m| m * 1e3);
            Err(CaseFileError::Hole { at_mm })
        }
        None => Ok((cells, start_c)),
    }
}

/// Stands for a cell that nothing fills yet: no material has so high a number.
const UNFILLED: u8 = u8::MAX;

/// Number and start of a filling: materials in the order of their names, then voids in theirs.
fn filling(file: &CaseFile, fill: &FillFile, number: usize) -> Result<(u8, f64), CaseFileError> {
    let name = &fill.with;
    if let Some(at) = file.voids.keys().position(|known| known == name) {
        let at = (file.materials.len() + at).min(usize::from(UNFILLED) - 1);
        return Ok((at as u8, 0.0));
    }
    let material = material_number(file, &format!("[[fill]] {number}"), name)?;
    let start_c = fill.start_c.ok_or(CaseFileError::Fill { number })?;
    Ok((material, start_c))
}
