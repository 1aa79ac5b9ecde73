//! How the facets are shared out among the boxes: parted where the surface of the boxes, times the
//! facets in them, comes out least (surface area heuristic in bins, from memory).

use super::{NO_BOX, Node, WIDTH};

/// Facets in one lowest box: fewer cost nodes, more cost comparisons.
const LEAF: usize = 4;

/// A facet while the nodes are built.
#[derive(Clone, Copy)]
pub(super) struct Item {
    /// Its box.
    pub(super) around: Around,
    /// Its number.
    pub(super) facet: u32,
}

/// A box in single precision.
#[derive(Clone, Copy)]
pub(super) struct Around {
    /// Lowest corner.
    pub(super) low: [f32; 3],
    /// Highest corner.
    pub(super) high: [f32; 3],
}

const NOWHERE: Around = Around {
    low: [f32::INFINITY; 3],
    high: [f32::NEG_INFINITY; 3],
};

impl Around {
    fn with(self, other: &Around) -> Around {
        let mut both = self;
        for i in 0..3 {
            both.low[i] = if other.low[i] < both.low[i] {
                other.low[i]
            } else {
                both.low[i]
            };
            both.high[i] = if other.high[i] > both.high[i] {
                other.high[i]
            } else {
                both.high[i]
            };
        }
        both
    }

    fn of(items: &[Item]) -> Around {
        items
            .iter()
            .fold(NOWHERE, |all, item| all.with(&item.around))
    }

    /// Half the surface.
    fn surface(&self) -> f32 {
        let [x, y, z] = [0, 1, 2].map(|i| self.high[i] - self.low[i]);
        x * y + y * z + z * x
    }

    /// Twice the middle.
    fn middle(&self, axis: usize) -> f32 {
        self.low[axis] + self.high[axis]
    }
}

/// Builds the node over some facets and all below it; gives its number. `first` is the place of
/// the first of them in the whole order.
pub(super) fn build(items: &mut [Item], first: usize, depth: usize, nodes: &mut Vec<Node>) -> u32 {
    let number = nodes.len();
    nodes.push(NO_BOX);
    let parts = parted(items, depth);
    let mut node = NO_BOX;
    for (child, &(from, to, around)) in parts.iter().enumerate().filter(|(_, part)| part.0 < part.1)
    {
        for axis in 0..3 {
            node.low[axis][child] = around.low[axis];
            node.high[axis][child] = around.high[axis];
        }
        node.used = child as u8 + 1;
        let count = to - from;
        node.below[child] = if count <= LEAF {
            node.count[child] = count as u8;
            (first + from) as u32
        } else {
            build(&mut items[from..to], first + from, depth + 1, nodes)
        };
    }
    nodes[number] = node;
    number as u32
}

/// Stretches of the facets for the boxes of a node: the one with the most surface is parted again
/// until there are enough.
fn parted(items: &mut [Item], depth: usize) -> [(usize, usize, Around); WIDTH] {
    let mut parts = [(0, 0, NOWHERE); WIDTH];
    parts[0] = (0, items.len(), Around::of(items));
    for count in 1..WIDTH {
        let large = (0..count).filter(|&part| parts[part].1 - parts[part].0 > LEAF);
        let surface = |part: usize| parts[part].2.surface();
        let Some(largest) = large.max_by(|&a, &b| surface(a).total_cmp(&surface(b))) else {
            break;
        };
        let (from, to, _) = parts[largest];
        let middle = from + split(&mut items[from..to], depth);
        parts[largest] = (from, middle, Around::of(&items[from..middle]));
        parts[count] = (middle, to, Around::of(&items[middle..to]));
    }
    parts
}

/// Bins along the longest axis in which a parting is looked for.
const BINS: usize = 16;

/// Nodes this deep are parted into halves, so that no shape makes them deeper without end.
pub(super) const DEEP: usize = 24;

/// Parts the facets where it costs least; gives the number of those that come first.
fn split(items: &mut [Item], depth: usize) -> usize {
    let middles = items.iter().fold(NOWHERE, |all, item| {
        let middle = [0, 1, 2].map(|axis| item.around.middle(axis));
        all.with(&Around {
            low: middle,
            high: middle,
        })
    });
    let long = |axis: &usize| middles.high[*axis] - middles.low[*axis];
    let axis = (0..3)
        .max_by(|a, b| long(a).total_cmp(&long(b)))
        .unwrap_or(0);
    let (low, length) = (middles.low[axis], long(&axis));
    let half = items.len() / 2;
    if length <= 0.0 || depth >= DEEP {
        let by = |a: &Item, b: &Item| a.around.middle(axis).total_cmp(&b.around.middle(axis));
        items.select_nth_unstable_by(half, by);
        return half;
    }
    let scale = BINS as f32 / length;
    let bin = |item: &Item| (((item.around.middle(axis) - low) * scale) as usize).min(BINS - 1);
    let mut bins = [(NOWHERE, 0usize); BINS];
    for item in items.iter() {
        let one = &mut bins[bin(item)];
        *one = (one.0.with(&item.around), one.1 + 1);
    }
    let cut = cheapest(&bins);
    let mut first = 0;
    for at in 0..items.len() {
        if bin(&items[at]) <= cut {
            items.swap(first, at);
            first += 1;
        }
    }
    // The outermost bins are never empty; only not-a-number would leave one side without any.
    match first {
        0 => half,
        all if all == items.len() => half,
        first => first,
    }
}

/// The bin after which to part.
fn cheapest(bins: &[(Around, usize); BINS]) -> usize {
    let mut after = [0.0f32; BINS];
    let (mut around, mut count) = (NOWHERE, 0);
    for bin in (1..BINS).rev() {
        around = around.with(&bins[bin].0);
        count += bins[bin].1;
        after[bin - 1] = if count > 0 {
            around.surface() * count as f32
        } else {
            f32::INFINITY
        };
    }
    let (mut around, mut count) = (NOWHERE, 0);
    let mut best = (0, f32::INFINITY);
    for bin in 0..BINS - 1 {
        around = around.with(&bins[bin].0);
        count += bins[bin].1;
        let cost = around.surface() * count as f32 + after[bin];
        if count > 0 && cost < best.1 {
            best = (bin, cost);
        }
    }
    best.0
}
