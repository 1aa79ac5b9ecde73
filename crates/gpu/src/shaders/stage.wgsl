// A stage of the staged cells, four along x at a time: temperatures are read from one list and
// written to another, and what the step has changed goes from one list to the other, in increments.
// Swept cells beside staged ones are written too: nothing is read of what is written there.

@group(0) @binding(0) var<uniform> slab: Slab;
@group(0) @binding(1) var<storage, read> rates: array<u32>;
@group(0) @binding(2) var<storage, read> tables: array<vec4<f32>>;
@group(0) @binding(3) var<storage, read> runs: array<vec4<u32>>;
@group(0) @binding(4) var<storage, read> kinds: array<vec4<u32>>;
@group(0) @binding(5) var<storage, read> inverses: array<vec4<f32>>;
@group(0) @binding(6) var<storage, read> flows: array<vec4<f32>>;
@group(0) @binding(7) var<storage, read> heats: array<vec4<f32>>;
@group(0) @binding(8) var<storage, read> newest: array<vec4<f32>>;
@group(0) @binding(9) var<storage, read_write> older: array<vec4<f32>>;
@group(0) @binding(10) var<storage, read> before: array<vec4<f32>>;
@group(0) @binding(11) var<storage, read_write> after: array<vec4<f32>>;
@group(0) @binding(12) var<storage, read_write> arounds: array<Around>;
@group(1) @binding(0) var<uniform> step: Step;
@group(1) @binding(1) var<uniform> turn: vec4<u32>;

// Quads of a run, and of its conductances to the left, to the front and to below with its heat.
const QUADS: u32 = 8u;
const FLOWS: u32 = 32u;

// A quad: where it stands among the cells and the lanes in sight, its number in its run, and both
// rows of that.
struct Quad {
    at: u32,
    lane: u32,
    number: u32,
    head: vec4<u32>,
    around: vec4<u32>,
}

// Temperatures of a quad and of those around it.
struct Celsius {
    own: vec4<f32>,
    left: vec4<f32>,
    right: vec4<f32>,
    front: vec4<f32>,
    back: vec4<f32>,
    below: vec4<f32>,
    above: vec4<f32>,
}

// How much of the last change and of the rate a stage takes.
struct Weights {
    lean: f32,
    rate: f32,
    number: u32,
}

@compute @workgroup_size(128)
fn main(@builtin(workgroup_id) group: vec3<u32>, @builtin(num_workgroups) groups: vec3<u32>,
        @builtin(local_invocation_index) local: u32) {
    let thread = (group.y * groups.x + group.x) * 128u + local;
    let run = thread / QUADS;
    let row = slab.run_first + min(run, max(slab.run_count, 1u) - 1u);
    var quad: Quad;
    quad.head = runs[2u * row];
    quad.number = thread % QUADS;
    quad.at = (quad.head.x - slab.cell0) / 4u + quad.number;
    quad.lane = row * QUADS + quad.number;
    quad.around = runs[2u * row + 1u];
    let rate_bits = rates[step.number];
    let count = stages_of(rate_bits, step);
    let staged = (quad.head.z >> (4u * quad.number)) & 15u;
    if (run >= slab.run_count || staged == 0u || !is_taken(rate_bits, step) || turn.x > count) {
        return;
    }
    // All that is read is asked for before any of it is looked at: the way to memory is long.
    let heat = heats[quad.lane];
    let newest_change = newest[quad.lane];
    let older_change = older[quad.lane];
    let celsius = celsius_around(quad.at);
    let weights = weights_of(turn.x, count);
    let rate = rate_of(quad, celsius, weights);
    // Nothing has changed before the first stage, whatever the lists still hold of the last step.
    let change_before = select(newest_change, vec4<f32>(0.0), turn.x == 1u);
    let last = select(older_change, vec4<f32>(0.0), turn.x <= 2u);
    let change = change_before + (weights.lean * (change_before - last) + weights.rate * rate);
    older[quad.lane] = change;
    after[quad.at] = temperatures(quad, heat + change);
}

fn weights_of(number: u32, count: u32) -> Weights {
    let s = f32(count);
    let j = f32(number);
    let whole = 2.0 / (s * s + s) * step.length_s;
    let is_first = number == 1u;
    return Weights(select((j - 1.0) / j, 0.0, is_first),
        select((2.0 * j - 1.0) / j * whole, whole, is_first), number);
}

fn celsius_around(at: u32) -> Celsius {
    let pitch = slab.pitch / 4u;
    let plane = slab.plane / 4u;
    let own = before[at];
    let left = before[at - 1u].w;
    let right = before[at + 1u].x;
    return Celsius(own, vec4<f32>(left, own.xyz), vec4<f32>(own.yzw, right), before[at - pitch],
        before[at + pitch], before[at - plane], before[at + plane]);
}

// What a quad gains from the conductances that were laid down for it, J/(m3 s).
fn rate_of(quad: Quad, celsius: Celsius, weights: Weights) -> vec4<f32> {
    let flow = quad.lane / QUADS * FLOWS + quad.number;
    let to_left = flows[flow];
    let to_front = flows[flow + QUADS];
    let to_below = flows[flow + 2u * QUADS];
    let outside = flows[flow + 3u * QUADS];
    var to_next = 0.0;
    if (quad.number < QUADS - 1u) {
        to_next = flows[flow + 1u].x;
    } else if ((quad.head.w & 2u) != 0u) {
        to_next = flows[flow + 1u + 3u * QUADS].x;
    }
    var to_back = vec4<f32>(0.0);
    if (quad.around.y != NONE) {
        to_back = flows[(quad.around.y - slab.lane0) / 32u * FLOWS + QUADS + quad.number];
    }
    var to_above = vec4<f32>(0.0);
    if (quad.around.w != NONE) {
        to_above = flows[(quad.around.w - slab.lane0) / 32u * FLOWS + 2u * QUADS + quad.number];
    }
    var inverse = vec4<f32>(slab.even_inverse);
    if ((quad.head.y & 512u) == 0u) {
        inverse = inverses[quad.lane];
    }
    let t = celsius.own;
    let to_right = vec4<f32>(to_left.yzw, to_next);
    let gained = (to_left * (celsius.left - t) + to_right * (celsius.right - t))
        + (to_front * (celsius.front - t) + to_back * (celsius.back - t))
        + (to_below * (celsius.below - t) + to_above * (celsius.above - t));
    var rate = gained * inverse + outside;
    if ((quad.head.y >> 10u) != 0u) {
        let place = ((quad.head.y >> 10u) - 1u) * 32u + 4u * quad.number - slab.around0;
        rate += vec4<f32>(
            take_around(place, t.x, weights),
            take_around(place + 1u, t.y, weights),
            take_around(place + 2u, t.z, weights),
            take_around(place + 3u, t.w, weights),
        );
    }
    return rate;
}

// What surroundings give to a cell at this stage, W/m3; what they have given in the step is kept.
fn take_around(place: u32, own: f32, weights: Weights) -> f32 {
    let around = arounds[place];
    let inflow = around.rate * (around.celsius - own);
    let is_odd = (weights.number & 1u) == 1u;
    var given = select(around.odd, around.even, is_odd);
    if (weights.number == 1u) {
        given = 0.0;
    } else if (weights.number == 2u) {
        given += weights.lean * given;
    } else {
        given += weights.lean * (given - select(around.even, around.odd, is_odd));
    }
    given += weights.rate * (inflow + around.steady);
    if (is_odd) {
        arounds[place].odd = given;
    } else {
        arounds[place].even = given;
    }
    return inflow;
}

fn temperatures(quad: Quad, heat: vec4<f32>) -> vec4<f32> {
    if ((quad.head.y & 256u) != 0u) {
        return temperatures_of_one(quad.head.y & 255u, heat);
    }
    // A lane that is not staged is of no material; nothing is read of what it is given.
    let last = arrayLength(&tables) / slab.stride - 1u;
    let materials = min(kinds[quad.lane] & vec4<u32>(255u), vec4<u32>(last));
    return vec4<f32>(
        temperature(materials.x, heat.x, slab.stride),
        temperature(materials.y, heat.y, slab.stride),
        temperature(materials.z, heat.z, slab.stride),
        temperature(materials.w, heat.w, slab.stride),
    );
}

// Temperatures of four cells of one material.
fn temperatures_of_one(material: u32, heat: vec4<f32>) -> vec4<f32> {
    let first = material * slab.stride;
    let head = tables[first];
    let row = first + 3u;
    var sum = vec4<f32>(head.x) + ((ramps(row, heat) + ramps(row + 1u, heat))
        + (ramps(row + 2u, heat) + ramps(row + 3u, heat)));
    for (var at = LEAST_RAMPS; at < u32(head.y); at++) {
        sum += ramps(row + at, heat);
    }
    return sum;
}

fn ramps(row: u32, heat: vec4<f32>) -> vec4<f32> {
    let figures = tables[row];
    return figures.w * (clamp(heat, vec4<f32>(figures.x), vec4<f32>(figures.y)) - figures.z);
}
