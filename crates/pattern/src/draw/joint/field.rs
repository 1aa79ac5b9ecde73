//! Between which heights a joint may lie at each place of the flask, for sand that holds a slope.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::super::columns::Columns;
use super::super::level::Band;
use super::super::rim::RimPlace;

/// The lowest and the highest that the joint may lie at each node.
pub(super) struct Field {
    low: Vec<f64>,
    high: Vec<f64>,
}

impl Field {
    pub(super) fn of(
        columns: &Columns,
        places: &[RimPlace],
        level_mm: f64,
        hair: f64,
        slope: f64,
        widened: f64,
    ) -> Field {
        let nodes = columns.len();
        let [nx, ny] = columns.count;
        let mut is_open: Vec<bool> = (0..nodes)
            .map(|node| columns.spans(node).is_empty())
            .collect();
        let (mut low, mut high) = (vec![f64::NEG_INFINITY; nodes], vec![f64::INFINITY; nodes]);
        for node in 0..nodes {
            let (i, j) = (node % nx, node / nx);
            if i == 0 || j == 0 || i + 1 == nx || j + 1 == ny {
                (low[node], high[node]) = (level_mm, level_mm);
            }
        }
        for place in places {
            let [from, to] = allowed(&place.band, level_mm, hair, widened);
            is_open[place.dark] = true;
            for node in [place.dark, place.light] {
                let at = columns.place_mm(node);
                let away = (at[0] - place.at_mm[0]).hypot(at[1] - place.at_mm[1]);
                low[node] = low[node].max(from - slope * away);
                high[node] = high[node].min(to + slope * away);
            }
        }
        let mut depth: Vec<f64> = low.iter().map(|low| -low).collect();
        spread(&mut high, &is_open, columns, slope);
        spread(&mut depth, &is_open, columns, slope);
        Field {
            low: depth.iter().map(|depth| -depth).collect(),
            high,
        }
    }

    /// The level held between the bounds; the node where they contradict each other most, and by
    /// how much, if they do by more than the rapping play: sand is not cut truer than that.
    pub(super) fn heights(&self, level_mm: f64, play_mm: f64) -> Result<Vec<f64>, (usize, f64)> {
        let over = |node: &usize| self.low[*node] - self.high[*node];
        let worst = (0..self.low.len()).max_by(|a, b| over(a).total_cmp(&over(b)));
        match worst {
            Some(node) if over(&node) > play_mm => Err((node, over(&node))),
            _ => {
                let bounds = self.low.iter().zip(&self.high);
                Ok(bounds
                    .map(|(low, high)| level_mm.min(*high).max(*low))
                    .collect())
            }
        }
    }
}

/// The heights allowed at a place of the rim: all that the play allows where the level is among
/// them, else the tight band, widened so far.
fn allowed(band: &Band, level_mm: f64, hair: f64, widened: f64) -> [f64; 2] {
    let [tight, loose] = [band.tight_mm, band.loose_mm];
    if loose[0] - hair <= level_mm && level_mm <= loose[1] + hair {
        return [loose[0].min(level_mm), loose[1].max(level_mm)];
    }
    [0, 1].map(|end| tight[end] + widened * (loose[end] - tight[end]))
}

/// Lowers each value to the least of the others plus the slope times the way there through open
/// nodes, by Dijkstra's algorithm.
fn spread(values: &mut [f64], is_open: &[bool], columns: &Columns, slope: f64) {
    let [nx, ny] = columns.count;
    let known = (0..values.len()).filter(|&node| values[node].is_finite());
    let mut next: BinaryHeap<Reverse<(i64, usize)>> = known
        .map(|node| Reverse((in_order(values[node]), node)))
        .collect();
    while let Some(Reverse((value, node))) = next.pop() {
        if value > in_order(values[node]) {
            continue;
        }
        let (i, j) = (node % nx, node / nx);
        for (di, dj) in AROUND {
            let (Some(a), Some(b)) = (i.checked_add_signed(di), j.checked_add_signed(dj)) else {
                continue;
            };
            if a >= nx || b >= ny || !is_open[a + nx * b] {
                continue;
            }
            let way = columns.size_mm * (di as f64).hypot(dj as f64);
            let reached = values[node] + slope * way;
            if reached < values[a + nx * b] {
                values[a + nx * b] = reached;
                next.push(Reverse((in_order(reached), a + nx * b)));
            }
        }
    }
}

/// The eight neighbours of a node.
pub(super) const AROUND: [(isize, isize); 8] = [
    (-1, -1),
    (0, -1),
    (1, -1),
    (-1, 0),
    (1, 0),
    (-1, 1),
    (0, 1),
    (1, 1),
];

/// A whole number that stands in the same order as the value.
fn in_order(value: f64) -> i64 {
    let bits = value.to_bits() as i64;
    bits ^ (((bits >> 63) as u64) >> 1) as i64
}
