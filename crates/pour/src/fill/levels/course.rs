//! The course of one pool: how much lies in it, and when it came to each layer.

use crate::fill::pools::Pool;

/// What feeds a pool.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Feed {
    /// Gates whose streams fall into it.
    pub(crate) falling: Vec<usize>,
    /// Gates that are drowned in it.
    pub(crate) drowned: Vec<usize>,
    /// Spills that run into it, by their numbers.
    pub(crate) spills: Vec<usize>,
}

/// When metal came to the layers of a pool, s; as many as it came to.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Marks {
    /// To the floor of each layer, and at last to the ceiling of the uppermost.
    pub(crate) floors_s: Vec<f64>,
    /// To the middle of each layer.
    pub(crate) middles_s: Vec<f64>,
    /// What fed the pool when each layer began.
    pub(crate) feeds: Vec<u32>,
}

/// A pool while it fills.
#[derive(Clone, Debug)]
pub(super) struct Course {
    /// Metal at the floor of each layer and at the ceiling, m³.
    floors_m3: Vec<f64>,
    /// Metal in it, m³.
    pub(super) lies_m3: f64,
    /// The layer that fills.
    layer: usize,
    /// When it came where.
    pub(super) marks: Marks,
    /// What feeds it now.
    feed: u32,
}

/// Layers of more alike volumes than this, as a part, have one shape.
const ALIKE: f64 = 1e-9;

impl Course {
    pub(super) fn of(pool: &Pool) -> Course {
        let mut floors_m3 = vec![0.0];
        let mut sum = 0.0;
        for layer_m3 in &pool.layers_m3 {
            sum += layer_m3;
            floors_m3.push(sum);
        }
        Course {
            floors_m3,
            lies_m3: 0.0,
            layer: 0,
            marks: Marks::default(),
            feed: 0,
        }
    }

    /// Metal in it when it is full, m³.
    pub(super) fn top_m3(&self) -> f64 {
        self.floors_m3.last().copied().unwrap_or(0.0)
    }

    pub(super) fn is_full(&self) -> bool {
        self.lies_m3 >= self.top_m3()
    }

    /// Metal that the layer takes that fills, m³.
    pub(super) fn layer_m3(&self) -> f64 {
        let layer = self.layer.min(self.floors_m3.len() - 2);
        self.floors_m3[layer + 1] - self.floors_m3[layer]
    }

    /// How many layers have filled, with the part of the last.
    pub(super) fn risen_layers(&self) -> f64 {
        match self.is_full() {
            true => (self.floors_m3.len() - 1) as f64,
            false => {
                let in_layer = self.lies_m3 - self.floors_m3[self.layer];
                self.layer as f64 + in_layer / self.layer_m3()
            }
        }
    }

    /// Metal in it when so many layers have filled, m³.
    pub(super) fn lies_at(&self, layers: f64) -> f64 {
        let last = self.floors_m3.len() - 1;
        if layers <= 0.0 {
            return 0.0;
        }
        let layer = layers.floor() as usize;
        if layer >= last {
            return self.top_m3();
        }
        let layer_m3 = self.floors_m3[layer + 1] - self.floors_m3[layer];
        self.floors_m3[layer] + (layers - layer as f64) * layer_m3
    }

    /// Metal in it where its layers begin to differ from the one that fills, or after so many
    /// layers, m³.
    pub(super) fn next_shape(&self, layers: f64) -> f64 {
        let last = self.floors_m3.len() - 1;
        let here = self.layer_m3();
        let farthest = self.lies_m3 + layers * here;
        let mut end = self.layer.min(last - 1) + 1;
        let alike = |layer: usize| {
            let there = self.floors_m3[layer + 1] - self.floors_m3[layer];
            (there - here).abs() <= ALIKE * here
        };
        while end < last && self.floors_m3[end] < farthest && alike(end) {
            end += 1;
        }
        farthest.min(self.floors_m3[end])
    }

    /// Marks the time of its first metal, and what feeds it from now on.
    pub(super) fn begin(&mut self, at_s: f64, feed: u32) {
        self.feed = feed;
        if self.marks.floors_s.is_empty() {
            self.marks.floors_s.push(at_s);
            self.marks.feeds.push(feed);
        }
    }

    /// More metal lies in it after a step: marks the times of the layers passed, by the cubic that
    /// has the metal and the flows of both ends.
    pub(super) fn rise_to(&mut self, lies_m3: f64, times_s: [f64; 2], flows: [f64; 2]) {
        if lies_m3 <= self.lies_m3 {
            return;
        }
        let passed = Passed {
            lies_m3: [self.lies_m3, lies_m3],
            times_s,
            flows,
        };
        let last = self.floors_m3.len() - 1;
        while self.layer < last {
            let [floor, ceiling] = [self.floors_m3[self.layer], self.floors_m3[self.layer + 1]];
            let middle = 0.5 * (floor + ceiling);
            if self.marks.middles_s.len() == self.layer && lies_m3 >= middle {
                self.marks.middles_s.push(passed.when(middle));
            }
            if lies_m3 < ceiling {
                break;
            }
            self.marks.floors_s.push(passed.when(ceiling));
            self.layer += 1;
            if self.layer < last {
                self.marks.feeds.push(self.feed);
            }
        }
        self.lies_m3 = lies_m3;
    }
}

/// Metal in a pool over a step.
struct Passed {
    lies_m3: [f64; 2],
    times_s: [f64; 2],
    flows: [f64; 2],
}

impl Passed {
    /// When so much lay in it, s.
    fn when(&self, lies_m3: f64) -> f64 {
        let [from, to] = self.lies_m3;
        let length_s = self.times_s[1] - self.times_s[0];
        let wanted = (lies_m3 - from) / (to - from);
        // Flows as slopes of the share that has run in.
        let [a, b] = self.flows.map(|flow| flow * length_s / (to - from));
        let (mut low, mut high) = (0.0, 1.0);
        let mut at = wanted;
        for _ in 0..50 {
            let off = at * (a + at * (3.0 - 2.0 * a - b + at * (a + b - 2.0))) - wanted;
            match off < 0.0 {
                true => low = at,
                false => high = at,
            }
            let slope = a + at * (2.0 * (3.0 - 2.0 * a - b) + at * 3.0 * (a + b - 2.0));
            let next = at - off / slope;
            let inside = next.is_finite() && (low..=high).contains(&next);
            let next = if inside { next } else { 0.5 * (low + high) };
            if (next - at).abs() <= 1e-14 {
                at = next;
                break;
            }
            at = next;
        }
        self.times_s[0] + at.clamp(0.0, 1.0) * length_s
    }
}
