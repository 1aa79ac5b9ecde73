// A stage of the staged cells, four along x at a time: temperatures are read from one list and
// written to another, and what the step has changed goes from one list to the other, in increments.
// Swept cells beside staged ones are written too: nothing is read of what is written there.

@group(0) @binding(0) var<uniform> slab: Slab;
@group(0) @binding(1) var<storage, read> slots: array<u32>;
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

@compute @workgroup_size(256)
fn main(@builtin(workgroup_id) group: vec3<u32>, @builtin(num_workgroups) groups: vec3<u32>,
        @builtin(local_invocation_index) local: u32) {
    let thread = (group.y * groups.x + group.x) * 256u + local;
    let run = thread / QUADS;
    let quad = thread % QUADS;
    let row = slab.run_first + min(run, max(slab.run_count, 1u) - 1u);
    let head = runs[2u * row];
    let around = runs[2u * row + 1u];
    let slot = SLOTS * step.number;
    let count = stages_of(slots[slot + 2u], step);
    let number = turn.x;
    let staged = (head.z >> (4u * quad)) & 15u;
    if (run >= slab.run_count || staged == 0u || !is_reached(slots[slot], slots[slot + 1u], step)
        || count > step.most_stages || number > count) {
        return;
    }
    // All that is read is asked for before any of it is looked at: the way to memory is long.
    let pitch = slab.pitch / 4u;
    let plane = slab.plane / 4u;
    let at = (head.x - slab.cell0) / 4u + quad;
    let lane = row * QUADS + quad;
    let flow = row * FLOWS + quad;
    let own = before[at];
    let below = before[at - plane];
    let above = before[at + plane];
    let front = before[at - pitch];
    let back = before[at + pitch];
    let left = vec4<f32>(before[at - 1u].w, own.xyz);
    let right = vec4<f32>(own.yzw, before[at + 1u].x);
    let to_left = flows[flow];
    let to_front = flows[flow + QUADS];
    let to_below = flows[flow + 2u * QUADS];
    let outside = flows[flow + 3u * QUADS];
    let heat = heats[lane];
    var to_next = 0.0;
    if (quad < QUADS - 1u) {
        to_next = flows[flow + 1u].x;
    } else if ((head.w & 2u) != 0u) {
        to_next = flows[flow + 1u + 3u * QUADS].x;
    }
    var to_back = vec4<f32>(0.0);
    if (around.y != NONE) {
        to_back = flows[(around.y - slab.lane0) / 32u * FLOWS + QUADS + quad];
    }
    var to_above = vec4<f32>(0.0);
    if (around.w != NONE) {
        to_above = flows[(around.w - slab.lane0) / 32u * FLOWS + 2u * QUADS + quad];
    }
    // Nothing has changed before the first stage, whatever the lists still hold of the last step.
    let first = number == 1u;
    var change = vec4<f32>(0.0);
    var last = vec4<f32>(0.0);
    if (!first) { change = newest[lane]; }
    if (number > 2u) { last = older[lane]; }
    let one = (head.y & 256u) != 0u;
    var materials = vec4<u32>(head.y & 255u);
    if (!one) { materials = kinds[lane] & vec4<u32>(255u); }
    var inverse = vec4<f32>(slab.even_inverse);
    if ((head.y & 512u) == 0u) { inverse = inverses[lane]; }

    let to_right = vec4<f32>(to_left.yzw, to_next);
    let gained = (to_left * (left - own) + to_right * (right - own))
        + (to_front * (front - own) + to_back * (back - own))
        + (to_below * (below - own) + to_above * (above - own));
    var rate = gained * inverse + outside;
    let s = f32(count);
    let j = f32(number);
    let whole = 2.0 / (s * s + s) * step.length_s;
    let lean = select((j - 1.0) / j, 0.0, first);
    let weight = select((2.0 * j - 1.0) / j * whole, whole, first);
    if ((head.y >> 10u) != 0u) {
        let place = ((head.y >> 10u) - 1u) * 32u + 4u * quad - slab.around0;
        for (var cell = 0u; cell < 4u; cell++) {
            rate[cell] += take_around(place + cell, own[cell], lean, weight, number);
        }
    }
    change += lean * (change - last) + weight * rate;
    let now = heat + change;
    var celsius: vec4<f32>;
    if (one) {
        celsius = temperatures(materials.x, now);
    } else {
        for (var cell = 0u; cell < 4u; cell++) {
            if (((staged >> cell) & 1u) != 0u) {
                celsius[cell] = temperature(materials[cell], now[cell], slab.stride);
            }
        }
    }
    older[lane] = change;
    after[at] = celsius;
}

// What surroundings give to a cell at this stage, W/m3; what they have given in the step is kept.
fn take_around(place: u32, own: f32, lean: f32, weight: f32, number: u32) -> f32 {
    let around = arounds[place];
    let inflow = around.rate * (around.celsius - own);
    let is_odd = (number & 1u) == 1u;
    var given = select(around.odd, around.even, is_odd);
    if (number == 1u) {
        given = 0.0;
    } else if (number == 2u) {
        given += lean * given;
    } else {
        given += lean * (given - select(around.even, around.odd, is_odd));
    }
    given += weight * (inflow + around.steady);
    if (is_odd) {
        arounds[place].odd = given;
    } else {
        arounds[place].even = given;
    }
    return inflow;
}

// Temperatures of four cells of one material.
fn temperatures(material: u32, heat: vec4<f32>) -> vec4<f32> {
    let first = material * slab.stride;
    let head = tables[first];
    var sum = vec4<f32>(head.x);
    let count = u32(head.y);
    for (var at = 0u; at < count; at++) {
        let ramp = tables[first + 3u + at];
        sum += ramp.w * (clamp(heat, vec4<f32>(ramp.x), vec4<f32>(ramp.y)) - ramp.z);
    }
    return sum;
}
