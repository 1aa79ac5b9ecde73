//! A linear programme and its answer: the only place that knows the solver.

use good_lp::{
    Expression, ProblemVariables, Solution, SolverModel, Variable, constraint, variable,
};

/// A linear programme: the least of a sum, every variable within bounds and every row kept.
pub(super) struct Programme {
    /// What a unit of each variable costs.
    pub(super) cost: Vec<f64>,
    /// Least and most of each variable.
    pub(super) bounds: Vec<(f64, f64)>,
    /// What has to hold.
    pub(super) rows: Vec<Row>,
}

/// A sum of the variables against a figure.
pub(super) struct Row {
    /// How much a unit of each variable counts.
    pub(super) sum: Vec<f64>,
    /// How it compares.
    pub(super) is: Is,
    /// With what.
    pub(super) than: f64,
}

/// How a row compares.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Is {
    AtMost,
    AtLeast,
    Equal,
}

impl Programme {
    /// The variables at the least cost, or nothing where no choice keeps every row.
    ///
    /// A solver that loses its way in the last bits has found nothing either.
    pub(super) fn solve(&self) -> Option<Vec<f64>> {
        let mut problem = ProblemVariables::new();
        if self.bounds.iter().any(|(least, most)| least > most) {
            return None;
        }
        let all: Vec<Variable> = self
            .bounds
            .iter()
            .map(|(least, most)| problem.add(variable().min(*least).max(*most)))
            .collect();
        let mut model = problem
            .minimise(sum(&all, &self.cost))
            .using(good_lp::microlp);
        for row in &self.rows {
            let left = sum(&all, &row.sum);
            model = model.with(match row.is {
                Is::AtMost => constraint!(left <= row.than),
                Is::AtLeast => constraint!(left >= row.than),
                Is::Equal => constraint!(left == row.than),
            });
        }
        let solution = model.solve().ok()?;
        Some(all.iter().map(|of| solution.value(*of)).collect())
    }

    /// Adds a variable, which counts in no row yet.
    pub(super) fn add(&mut self, cost: f64, bounds: (f64, f64)) {
        self.cost.push(cost);
        self.bounds.push(bounds);
        for row in &mut self.rows {
            row.sum.push(0.0);
        }
    }
}

fn sum(all: &[Variable], of_each: &[f64]) -> Expression {
    all.iter()
        .zip(of_each)
        .map(|(of, times)| *of * *times)
        .sum()
}
