// A stage of the staged cells: temperatures are read from one list and written to another, and what
// the step has changed goes from one list to the other, in increments.

@group(0) @binding(0) var<uniform> slab: Slab;
@group(0) @binding(1) var<storage, read> slots: array<u32>;
@group(0) @binding(2) var<storage, read> tables: array<vec4<f32>>;
@group(0) @binding(3) var<storage, read> runs: array<vec4<u32>>;
@group(0) @binding(4) var<storage, read> kinds: array<u32>;
@group(0) @binding(5) var<storage, read> inverses: array<f32>;
@group(0) @binding(6) var<storage, read> flows: array<vec4<f32>>;
@group(0) @binding(7) var<storage, read> heats: array<f32>;
@group(0) @binding(8) var<storage, read> newest: array<f32>;
@group(0) @binding(9) var<storage, read_write> older: array<f32>;
@group(0) @binding(10) var<storage, read> before: array<f32>;
@group(0) @binding(11) var<storage, read_write> after: array<f32>;
@group(0) @binding(12) var<storage, read_write> arounds: array<Around>;
@group(1) @binding(0) var<uniform> step: Step;
@group(1) @binding(1) var<uniform> turn: vec4<u32>;

@compute @workgroup_size(256)
fn main(@builtin(workgroup_id) group: vec3<u32>, @builtin(num_workgroups) groups: vec3<u32>,
        @builtin(local_invocation_index) local: u32) {
    let slot = SLOTS * step.number;
    let count = stages_of(slots[slot + 2u], step);
    let number = turn.x;
    if (!is_reached(slots[slot], slots[slot + 1u], step)
        || count > step.most_stages || number > count) {
        return;
    }
    let lane = lane_of(group, groups, local, slab);
    if (lane.run >= slab.run_count) {
        return;
    }
    var material = lane.what & 255u;
    if ((lane.what & 256u) == 0u) {
        material = kinds[lane.at] & 255u;
        if (material == NO_MATERIAL) {
            return;
        }
    }
    var inverse = slab.even_inverse;
    if ((lane.what & 512u) == 0u) {
        inverse = inverses[lane.at];
    }
    let right = right_of(lane, slab);
    let back = beside(lane.y.y, lane.lane, slab);
    let above = beside(lane.z.y, lane.lane, slab);
    let own_flow = flows[lane.at];
    var to_right = 0.0;
    var to_back = 0.0;
    var to_above = 0.0;
    if (right != NONE) { to_right = flows[right].x; }
    if (back != NONE) { to_back = flows[back].y; }
    if (above != NONE) { to_above = flows[above].z; }
    let at = lane.cell;
    let own = before[at];
    let gained = own_flow.x * (before[at - 1u] - own) + to_right * (before[at + 1u] - own)
        + own_flow.y * (before[at - slab.pitch] - own) + to_back * (before[at + slab.pitch] - own)
        + own_flow.z * (before[at - slab.plane] - own) + to_above * (before[at + slab.plane] - own);
    var rate = gained * inverse + own_flow.w;
    let s = f32(count);
    let j = f32(number);
    let whole = 2.0 / (s * s + s) * step.length_s;
    let first = number == 1u;
    let lean = select((j - 1.0) / j, 0.0, first);
    let weight = select((2.0 * j - 1.0) / j * whole, whole, first);
    if ((lane.what >> 10u) != 0u) {
        let place = ((lane.what >> 10u) - 1u) * 32u + lane.lane - slab.around0;
        let around = arounds[place];
        let inflow = around.rate * (around.celsius - own);
        rate += inflow;
        let is_odd = (number & 1u) == 1u;
        var given = select(around.odd, around.even, is_odd);
        if (first) {
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
    }
    // Nothing has changed before the first stage, whatever the lists still hold of the last step.
    var change = 0.0;
    if (!first) {
        change = newest[lane.at];
        var last = 0.0;
        if (number > 2u) {
            last = older[lane.at];
        }
        change += lean * (change - last);
    }
    change += weight * rate;
    older[lane.at] = change;
    after[at] = temperature(material, heats[lane.at] + change, slab.stride);
}
