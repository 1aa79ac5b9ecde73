//! A height over every place of a rectangle, known on lines across it.

/// Heights over a rectangle of the plan, flat in two triangles between each four nodes.
#[derive(Clone, Debug, PartialEq)]
pub struct Heights {
    /// Lines across at which heights are known, mm, rising; the first and last are the ends.
    pub xs_mm: Vec<f64>,
    /// The same along.
    pub ys_mm: Vec<f64>,
    /// Height at the crossing of each two lines, x running fastest, mm.
    pub nodes_mm: Vec<f64>,
}

impl Heights {
    /// Height over a place, mm; beyond the ends that at the end.
    pub fn at_mm(&self, [x, y]: [f64; 2]) -> f64 {
        let (i, across) = between(&self.xs_mm, x);
        let (j, along) = between(&self.ys_mm, y);
        let nx = self.xs_mm.len();
        let at = |more: usize, further: usize| self.nodes_mm[i + more + nx * (j + further)];
        // Each square is flat in two triangles that share the side from its first to its last node.
        match across >= along {
            true => at(0, 0) + across * (at(1, 0) - at(0, 0)) + along * (at(1, 1) - at(1, 0)),
            false => at(0, 0) + along * (at(0, 1) - at(0, 0)) + across * (at(1, 1) - at(0, 1)),
        }
    }

    /// Whether a place lies between the ends.
    pub fn reach_over(&self, [x, y]: [f64; 2]) -> bool {
        let holds = |lines: &[f64], at: f64| {
            lines.first().is_some_and(|first| *first <= at)
                && lines.last().is_some_and(|last| at <= *last)
        };
        holds(&self.xs_mm, x) && holds(&self.ys_mm, y)
    }
}

/// The line before a place, and how far it lies on the way to the next one, nought to one.
fn between(lines: &[f64], at: f64) -> (usize, f64) {
    let before = lines.partition_point(|line| *line <= at);
    let before = before.clamp(1, lines.len().max(2) - 1) - 1;
    let (from, to) = (lines[before], lines[before + 1]);
    (before, ((at - from) / (to - from)).clamp(0.0, 1.0))
}
