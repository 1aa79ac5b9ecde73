//! What hides behind the terms of a model: the terms left out of it.

use nalgebra::DMatrix;

use crate::fit::{Fit, FitError, fit};
use crate::model::{Model, Term};
use crate::rank::matrix;

/// A term left out, and what it adds to the coefficients that were fitted.
#[derive(Clone, Debug, PartialEq)]
pub struct Alias {
    /// The term left out.
    pub left_out: String,
    /// Each fitted term that it falsifies, with the part of the true coefficient of the left-out
    /// term that is added to it.
    pub falsifies: Vec<(String, f64)>,
}

/// Parts smaller than this are rounding.
const NOTHING: f64 = 1e-9;

/// What terms left out of a model add to its coefficients: the alias matrix (X'X)⁻¹X'Z.
///
/// # Errors
/// When the runs cannot teach the terms of the model itself.
pub fn aliases(
    model: &Model,
    points: &[Vec<f64>],
    left_out: &[Term],
) -> Result<Vec<Alias>, FitError> {
    let hidden = Model {
        variables: model.variables.clone(),
        terms: left_out.to_vec(),
    };
    let behind: DMatrix<f64> = matrix(&hidden, points);
    let mut found = Vec::new();
    for (term, column) in left_out.iter().zip(behind.column_iter()) {
        let column: Vec<f64> = column.iter().copied().collect();
        let taken: Fit = fit(model, points, &column)?;
        let parts = taken.coefficients.into_iter();
        let parts = parts.filter(|one| one.value.abs() > NOTHING);
        found.push(Alias {
            left_out: model.name(term),
            falsifies: parts.map(|one| (one.name, one.value)).collect(),
        });
    }
    Ok(found)
}
