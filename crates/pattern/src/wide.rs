//! Boxes four to a node and in single precision, for what a line meets first and for the nearest
//! skin.
//!
//! The four boxes of a node are tested at once. They are rounded outward and count from the lowest
//! corner of the part, so that they leave out nothing that double precision would find; whatever
//! lies in a lowest box is judged in double precision by the caller.

mod build;

use self::build::{Around, DEEP, Item, build};
use crate::tree::{Box3, spread};
use crate::vector::{Vector, bounds_of};

/// Boxes in a node: as many single-precision numbers as the narrowest registers of the machine
/// hold.
const WIDTH: usize = 4;

/// Three wait for each node on the way down: those looked for, then the halves of at most 2³².
const MOST_WAITING: usize = 3 * (DEEP + 32) + 1;

/// How far boxes are widened, as a share of the part: four times what single precision loses over
/// it, and no more than a box of a thousandth of the part notices.
const WIDENED: f64 = 1.0 / (1u64 << 21) as f64;

/// Single precision loses less than this share in the three steps to a distance.
const SLACK: f32 = 1.0 + 1.0 / (1u32 << 20) as f32;

/// Four boxes a node over the facets of a mesh.
pub struct Wide {
    nodes: Vec<Node>,
    /// Facet numbers; each lowest box holds a stretch of them.
    order: Vec<u32>,
    low: Vector,
    high: Vector,
    size: f64,
}

/// Four boxes, the sides of each axis side by side.
#[derive(Clone, Copy)]
#[repr(align(64))]
struct Node {
    low: [[f32; WIDTH]; 3],
    high: [[f32; WIDTH]; 3],
    /// The node below, or the first place in the order.
    below: [u32; WIDTH],
    /// Facets in a lowest box, 0 where a node is below.
    count: [u8; WIDTH],
    /// Boxes in use.
    used: u8,
}

const NO_BOX: Node = Node {
    low: [[f32::INFINITY; WIDTH]; 3],
    high: [[f32::NEG_INFINITY; WIDTH]; 3],
    below: [0; WIDTH],
    count: [0; WIDTH],
    used: 0,
};

impl Wide {
    /// The nodes over facets given by their boxes, in order of their numbers in `order`.
    pub fn over(order: &[u32], boxes: &[Box3]) -> Wide {
        let [low, high] = bounds_of(boxes.iter().flatten().copied()).unwrap_or_default();
        let size = (0..3).map(|i| high[i] - low[i]).fold(0.0, f64::max);
        let margin = size * WIDENED;
        let item = |(&facet, b): (&u32, &Box3)| Item {
            around: Around {
                low: [0, 1, 2].map(|i| (b[0][i] - low[i] - margin) as f32),
                high: [0, 1, 2].map(|i| (b[1][i] - low[i] + margin) as f32),
            },
            facet,
        };
        let mut items: Vec<Item> = order.iter().zip(boxes).map(item).collect();
        let mut nodes = Vec::with_capacity(items.len() / 2 + 1);
        build(&mut items, 0, 0, &mut nodes);
        Wide {
            nodes,
            order: items.iter().map(|item| item.facet).collect(),
            low,
            high,
            size,
        }
    }

    /// Visits the facets that the line from `from` in `direction` may meet, about in order. Each
    /// visit gives how many lengths of `direction` away the nearest is that was met so far.
    pub fn along(&self, from: Vector, direction: Vector, mut visit: impl FnMut(u32) -> f64) {
        if let Some(line) = self.line(from, direction) {
            let how_far = |node: &Node| node.entered_at(&line);
            self.nearest_first(f32::INFINITY, how_far, |facet| line.single(visit(facet)));
        }
    }

    /// Visits the facets that may come nearest to `from`, about in order. Each visit gives the
    /// square of the distance that the others have to come within.
    pub fn near(&self, from: Vector, limit: f64, mut visit: impl FnMut(u32) -> f64) {
        let offset: Vector = [0, 1, 2].map(|i| from[i] - self.low[i]);
        let lost = offset.iter().fold(0.0, |most: f64, x| most.max(x.abs())) / (1u32 << 22) as f64;
        let over = offset.map(|x| (x + lost) as f32);
        let under = offset.map(|x| (x - lost) as f32);
        let single = |squared: f64| squared as f32 * SLACK + f32::MIN_POSITIVE;
        let how_far = |node: &Node| node.squared_to(over, under);
        self.nearest_first(single(limit), how_far, |facet| single(visit(facet)));
    }

    /// A number that is like for lines which cross the part at like places; the largest for those
    /// that pass it by.
    pub fn key(&self, from: Vector, direction: Vector) -> u64 {
        let inverse = direction.map(|x| 1.0 / x);
        let [enters, leaves] = span(&[self.low, self.high], from, inverse);
        if !(enters <= leaves && leaves < f64::MAX) {
            return u64::MAX;
        }
        let cells = f64::from(1u32 << 10) * (1.0 - f64::EPSILON);
        let cell = |at: f64, i: usize| {
            let off = from[i] + at * direction[i] - self.low[i];
            (off / self.size * cells).max(0.0) as u64
        };
        let one = |at: f64| {
            let [x, y, z] = [0, 1, 2].map(|i| spread(cell(at, i)));
            x | y << 1 | z << 2
        };
        one(enters) << 30 | one(leaves)
    }

    fn nearest_first(
        &self,
        mut limit: f32,
        how_far: impl Fn(&Node) -> [f32; WIDTH],
        mut visit: impl FnMut(u32) -> f32,
    ) {
        let mut stack = [Waiting::default(); MOST_WAITING];
        let mut waiting = 1;
        while waiting > 0 {
            waiting -= 1;
            let Waiting { far, below, count } = stack[waiting];
            if far > limit {
                continue;
            }
            let below = below as usize;
            if count > 0 {
                for &facet in &self.order[below..below + usize::from(count)] {
                    limit = visit(facet);
                }
                continue;
            }
            let node = &self.nodes[below];
            let far = how_far(node);
            let first = waiting;
            for (child, &far) in far.iter().enumerate().take(usize::from(node.used)) {
                // A box that is passed by has no number here.
                if far <= limit {
                    let mut at = waiting;
                    while at > first && stack[at - 1].far < far {
                        stack[at] = stack[at - 1];
                        at -= 1;
                    }
                    let (below, count) = (node.below[child], node.count[child]);
                    stack[at] = Waiting { far, below, count };
                    waiting += 1;
                }
            }
        }
    }

    /// The line from where it comes to the part.
    fn line(&self, from: Vector, direction: Vector) -> Option<Line> {
        let reach = direction.iter().fold(0.0, |most: f64, x| most.max(x.abs()));
        let start = enters_at(&[self.low, self.high], from, direction.map(|x| 1.0 / x));
        (reach > 0.0 && start < f64::INFINITY).then(|| Line {
            from: [0, 1, 2].map(|i| (from[i] + start * direction[i] - self.low[i]) as f32),
            inverse: direction.map(|x| (reach / x) as f32),
            start,
            reach,
            lost: self.size * WIDENED,
        })
    }
}

/// A box that waits to be entered.
#[derive(Clone, Copy, Default)]
struct Waiting {
    far: f32,
    below: u32,
    count: u8,
}

/// A line in single precision, its direction scaled so that its greatest entry is one.
struct Line {
    from: [f32; 3],
    inverse: [f32; 3],
    /// Where it starts on the line that was asked for, in lengths of its direction.
    start: f64,
    reach: f64,
    lost: f64,
}

impl Line {
    /// A distance in lengths of the direction asked for, no less than it is.
    fn single(&self, at: f64) -> f32 {
        ((at - self.start) * self.reach + self.lost) as f32 * SLACK
    }
}

impl Node {
    /// Where a line enters each box, not-a-number where it passes by. A line that runs within the
    /// plane of a side gives not-a-number there, which the comparisons pass over.
    fn entered_at(&self, line: &Line) -> [f32; WIDTH] {
        let (mut near, mut far) = ([0.0f32; WIDTH], [f32::INFINITY; WIDTH]);
        for axis in 0..3 {
            let (from, inverse) = (line.from[axis], line.inverse[axis]);
            let (first, last) = match inverse < 0.0 {
                true => (&self.high[axis], &self.low[axis]),
                false => (&self.low[axis], &self.high[axis]),
            };
            for k in 0..WIDTH {
                let (enters, leaves) = ((first[k] - from) * inverse, (last[k] - from) * inverse);
                near[k] = if enters > near[k] { enters } else { near[k] };
                far[k] = if leaves < far[k] { leaves } else { far[k] };
            }
        }
        let mut entered = [f32::NAN; WIDTH];
        for k in 0..WIDTH {
            entered[k] = if near[k] <= far[k] * SLACK {
                near[k]
            } else {
                f32::NAN
            };
        }
        entered
    }

    /// Square of the least distance from a place to each box.
    fn squared_to(&self, over: [f32; 3], under: [f32; 3]) -> [f32; WIDTH] {
        let mut sum = [0.0f32; WIDTH];
        for axis in 0..3 {
            let (low, high) = (&self.low[axis], &self.high[axis]);
            for ((sum, low), high) in sum.iter_mut().zip(low).zip(high) {
                let (below, above) = (low - over[axis], under[axis] - high);
                let outside = if below > above { below } else { above };
                let outside = if outside > 0.0 { outside } else { 0.0 };
                *sum += outside * outside;
            }
        }
        sum
    }
}

/// Where a line enters a box, infinity if it passes by.
fn enters_at(b: &Box3, from: Vector, inverse: Vector) -> f64 {
    let [near, far] = span(b, from, inverse);
    if near <= far { near } else { f64::INFINITY }
}

/// Where a line enters a box and where it leaves it.
fn span(b: &Box3, from: Vector, inverse: Vector) -> [f64; 2] {
    let (mut near, mut far) = (0.0f64, f64::MAX);
    for i in 0..3 {
        let first = usize::from(inverse[i] < 0.0);
        near = near.max((b[first][i] - from[i]) * inverse[i]);
        far = far.min((b[1 - first][i] - from[i]) * inverse[i]);
    }
    [near, far]
}
