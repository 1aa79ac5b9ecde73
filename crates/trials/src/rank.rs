//! Which terms of a model a set of points tells apart.

use nalgebra::{DMatrix, DVector};

use crate::model::Model;

/// A term that the points cannot tell from others: it is their sum with these weights.
#[derive(Clone, Debug, PartialEq)]
pub struct Indistinct {
    /// The term.
    pub term: String,
    /// The terms before it that make it up, each with its weight.
    pub from: Vec<(String, f64)>,
}

/// What is left of a column, as a share of it, when it counts as made up of the ones before.
/// Shares typed with four digits leave about 1e-4 of a column that is truly made up by others and
/// are then only found by the width of their intervals; a narrow mixture region keeps 1e-5 of a
/// true column. Looser, and narrow regions are refused; tighter, and rounding passes for knowledge.
const LEFT_OF_COLUMN: f64 = 1e-8;

/// Weights smaller than this share of the largest are rounding.
const SMALL_WEIGHT: f64 = 1e-6;

/// Every term that the points cannot tell from the terms before it; none if all are told apart.
pub fn indistinct(model: &Model, points: &[Vec<f64>]) -> Vec<Indistinct> {
    let columns = columns(model, points);
    let mut kept: Vec<usize> = Vec::new();
    let mut found = Vec::new();
    for (at, column) in columns.iter().enumerate() {
        let (weights, left) = made_of(column, &kept, &columns);
        if left > LEFT_OF_COLUMN * column.norm() {
            kept.push(at);
            continue;
        }
        let largest = weights.iter().fold(0.0_f64, |top, one| top.max(one.abs()));
        let name = |at: usize| model.name(&model.terms[at]);
        let from = kept.iter().zip(&weights);
        let from = from.filter(|(_, weight)| weight.abs() > SMALL_WEIGHT * largest);
        found.push(Indistinct {
            term: name(at),
            from: from.map(|(at, weight)| (name(*at), *weight)).collect(),
        });
    }
    found
}

/// The matrix whose rows are the terms at each point.
pub(crate) fn matrix(model: &Model, points: &[Vec<f64>]) -> DMatrix<f64> {
    let rows = points.iter().flat_map(|point| model.row(point));
    DMatrix::from_row_iterator(points.len(), model.terms.len(), rows)
}

fn columns(model: &Model, points: &[Vec<f64>]) -> Vec<DVector<f64>> {
    let whole = matrix(model, points);
    whole
        .column_iter()
        .map(|column| column.into_owned())
        .collect()
}

/// The weights by which columns kept before make up this one, and the length of what is left.
fn made_of(column: &DVector<f64>, kept: &[usize], all: &[DVector<f64>]) -> (Vec<f64>, f64) {
    if kept.is_empty() {
        return (Vec::new(), column.norm());
    }
    let lengths: Vec<f64> = kept.iter().map(|at| all[*at].norm()).collect();
    let unit = kept.iter().zip(&lengths);
    let unit: Vec<DVector<f64>> = unit.map(|(at, long)| &all[*at] / *long).collect();
    let basis = DMatrix::from_columns(&unit);
    let qr = basis.qr();
    let turned = qr.q().transpose() * column;
    let left = column - qr.q() * &turned;
    let weights = qr.r().solve_upper_triangular(&turned);
    let weights = weights.unwrap_or_else(|| DVector::zeros(kept.len()));
    let weights = weights.iter().zip(&lengths);
    (
        weights.map(|(weight, long)| weight / long).collect(),
        left.norm(),
    )
}
