//! What a picture shows: two axes as a square, or three shares as a triangle; and the response
//! over it as a net of triangles.

use trials::map::{Place, square, triangle};
use trials::model::on_mean_day;

use crate::experiment::design::middle;
use crate::experiment::reading::Fitted;
use crate::experiment::space::Space;

/// What a picture shows.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::experiment) enum View {
    /// Two axes, by their places among the numbers of a point.
    Square([usize; 2]),
    /// Three shares: at the top, at the lower left, at the lower right.
    Triangle([usize; 3]),
}

/// A response over a view.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::experiment) struct Net {
    /// The places, across and up from 0 to 1.
    pub(in crate::experiment) places: Vec<Place>,
    /// Corners of triangles between them.
    pub(in crate::experiment) triangles: Vec<[usize; 3]>,
}

/// Most pictures of one kind for a response: more are not looked at.
const MOST: usize = 6;

/// Steps of a net along each side. With 30 a bend shows corners; 80 makes files four times as
/// large.
const STEPS: usize = 40;

impl View {
    /// The numbers of a point that it shows.
    pub(in crate::experiment) fn variables(&self) -> Vec<usize> {
        match self {
            View::Square(two) => two.to_vec(),
            View::Triangle(three) => three.to_vec(),
        }
    }
}

/// Every view of an experiment, the shares first.
pub(in crate::experiment) fn views(space: &Space) -> Vec<View> {
    let shares = space.shares();
    let mut triangles = Vec::new();
    for a in 0..shares {
        for b in a + 1..shares {
            triangles.extend((b + 1..shares).map(|c| View::Triangle([a, b, c])));
        }
    }
    let axes: Vec<usize> = (0..space.axes.len())
        .filter(|at| !space.axes[*at].is_choice)
        .map(|at| at + shares)
        .collect();
    let mut squares = Vec::new();
    for (place, a) in axes.iter().enumerate() {
        squares.extend(axes[place + 1..].iter().map(|b| View::Square([*a, *b])));
    }
    triangles.truncate(MOST);
    squares.truncate(MOST);
    [triangles, squares].concat()
}

/// The point through which views are laid: the best mix, or the middle where there is none.
pub(in crate::experiment) fn held(space: &Space, fitted: &Fitted) -> Vec<f64> {
    let best = fitted.best.as_ref();
    best.map_or_else(|| middle(space), |best| best.point.clone())
}

/// The response over a view.
pub(in crate::experiment) fn spread(space: &Space, fitted: &Fitted, view: &View) -> Net {
    let held = held(space, fitted);
    match (view, &space.mixture) {
        (View::Triangle(three), Some(own)) => {
            let rest = &on_mean_day(&held, fitted.days)[space.shares()..];
            let held = &held[..space.shares()];
            let places = triangle(&fitted.fit, &own.region, *three, held, rest, STEPS);
            let triangles = of_triangle(&places);
            Net { places, triangles }
        }
        (View::Square(two), _) => {
            let whole = on_mean_day(&held, fitted.days);
            let places = square(&fitted.fit, *two, [(-1.0, 1.0); 2], &whole, STEPS);
            let triangles = of_square();
            Net { places, triangles }
        }
        (View::Triangle(_), None) => Net {
            places: Vec::new(),
            triangles: Vec::new(),
        },
    }
}

fn of_square() -> Vec<[usize; 3]> {
    let row = STEPS + 1;
    let cells = (0..STEPS).flat_map(|up| (0..STEPS).map(move |across| up * row + across));
    cells
        .flat_map(|at| [[at, at + 1, at + row], [at + 1, at + row + 1, at + row]])
        .collect()
}

/// Triangles between places of which some may lie outside the region and are left out.
fn of_triangle(places: &[Place]) -> Vec<[usize; 3]> {
    let row = STEPS + 1;
    let mut at = vec![None; row * row];
    for (place, one) in places.iter().enumerate() {
        let up = (one.up / (3.0_f64.sqrt() / 2.0) * STEPS as f64).round();
        let right = (one.across * STEPS as f64 - up / 2.0).round();
        if let Some(cell) = at.get_mut(up as usize * row + right as usize) {
            *cell = Some(place);
        }
    }
    let mut found = Vec::new();
    for up in 0..STEPS {
        for right in 0..STEPS - up {
            let here = |up: usize, right: usize| at[up * row + right];
            let first = [here(up, right), here(up, right + 1), here(up + 1, right)];
            let second = [
                here(up, right + 1),
                here(up + 1, right + 1),
                here(up + 1, right),
            ];
            for corners in [first, second] {
                if let [Some(a), Some(b), Some(c)] = corners {
                    found.push([a, b, c]);
                }
            }
        }
    }
    found
}
