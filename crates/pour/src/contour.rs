//! Lines of equal value through a field of squares.

use std::collections::BTreeMap;

/// A line, in the units of the grid: `[x, y]` of the middle of a square is its two numbers.
pub type Line = Vec<[f64; 2]>;

/// Lines at a level through a grid of `count` values, x quickest; squares with a corner that is
/// not a number are left out. Lines that close end where they begin.
pub fn contours(values: &[f64], count: [usize; 2], level: f64) -> Vec<Line> {
    let mut ends: BTreeMap<Edge, Vec<Edge>> = BTreeMap::new();
    let mut join = |one: Edge, other: Edge| {
        ends.entry(one).or_default().push(other);
        ends.entry(other).or_default().push(one);
    };
    let [nx, ny] = count;
    let at = |x: usize, y: usize| values[x + nx * y];
    for y in 0..ny.saturating_sub(1) {
        for x in 0..nx.saturating_sub(1) {
            let corners = [at(x, y), at(x + 1, y), at(x + 1, y + 1), at(x, y + 1)];
            if corners.iter().any(|corner| corner.is_nan()) {
                continue;
            }
            let edges = [
                Edge::along(x, y),
                Edge::across(x + 1, y),
                Edge::along(x, y + 1),
                Edge::across(x, y),
            ];
            let above = corners.map(|corner| corner > level);
            let crossed: Vec<usize> = (0..4)
                .filter(|&side| above[side] != above[(side + 1) % 4])
                .collect();
            match crossed[..] {
                [one, other] => join(edges[one], edges[other]),
                [_, _, _, _] => {
                    // A saddle: the middle says which corners hang together.
                    let middle = corners.iter().sum::<f64>() / 4.0 > level;
                    match middle == above[0] {
                        true => {
                            join(edges[0], edges[1]);
                            join(edges[2], edges[3]);
                        }
                        false => {
                            join(edges[3], edges[0]);
                            join(edges[1], edges[2]);
                        }
                    }
                }
                _ => {}
            }
        }
    }
    let place = |edge: Edge| {
        let ([x, y], [u, v]) = edge.ends();
        let (from, to) = (at(x, y), at(u, v));
        let share = if to == from {
            0.5
        } else {
            (level - from) / (to - from)
        };
        let between = |a: usize, b: usize| a as f64 + share * (b as f64 - a as f64);
        [between(x, u), between(y, v)]
    };
    chained(ends)
        .into_iter()
        .map(|edges| edges.into_iter().map(place).collect())
        .collect()
}

/// A side of a square: from its low corner along x or along y.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Edge {
    corner: [usize; 2],
    up: bool,
}

impl Edge {
    fn along(x: usize, y: usize) -> Edge {
        Edge {
            corner: [x, y],
            up: false,
        }
    }

    fn across(x: usize, y: usize) -> Edge {
        Edge {
            corner: [x, y],
            up: true,
        }
    }

    fn ends(self) -> ([usize; 2], [usize; 2]) {
        let [x, y] = self.corner;
        let far = if self.up { [x, y + 1] } else { [x + 1, y] };
        ([x, y], far)
    }
}

/// Pieces from side to side, chained into lines: open ones first from their ends, then closed ones.
fn chained(mut ends: BTreeMap<Edge, Vec<Edge>>) -> Vec<Vec<Edge>> {
    let mut lines = Vec::new();
    for open in [true, false] {
        let starts: Vec<Edge> = ends.keys().copied().collect();
        for start in starts {
            let is_start = ends.get(&start).is_some_and(|next| {
                if open {
                    next.len() == 1
                } else {
                    !next.is_empty()
                }
            });
            if is_start {
                lines.push(follow(&mut ends, start));
            }
        }
    }
    lines
}

fn follow(ends: &mut BTreeMap<Edge, Vec<Edge>>, start: Edge) -> Vec<Edge> {
    let mut line = vec![start];
    let mut here = start;
    while let Some(next) = ends.get_mut(&here).and_then(Vec::pop) {
        if let Some(back) = ends.get_mut(&next) {
            // What led here once does not lead back.
            let at = back.iter().position(|edge| *edge == here);
            at.map(|at| back.remove(at));
        }
        line.push(next);
        here = next;
    }
    line
}
