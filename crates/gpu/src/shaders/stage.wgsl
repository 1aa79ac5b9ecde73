// A stage of the staged cells: temperatures are read from one list and written to another, and what
// the step has changed goes from one list to the other, in increments.

@group(0) @binding(0) var<uniform> slab: Slab;
@group(0) @binding(1) var<storage, read> slots: array<u32>;
@group(0) @binding(2) var<storage, read> tables: array<vec4<f32>>;
@group(0) @binding(3) var<storage, read> runs: array<vec4<u32>>;
@group(0) @binding(4) var<storage, read> kinds: array<u32>;
@group(0) @binding(5) var<storage, read> inverses: array<f32>;
@group(0) @binding(6) var<storage, read> flows: array<f32>;
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
    // All that is read is asked for before any of it is looked at: the way to memory is long.
    let lane = lane_of(group, groups, local, slab);
    let slot = SLOTS * step.number;
    let count = stages_of(slots[slot + 2u], step);
    let number = turn.x;
    if (!lane.is_staged || !is_reached(slots[slot], slots[slot + 1u], step)
        || count > step.most_stages || number > count) {
        return;
    }
    let at = lane.cell;
    let flow = flow_of(lane.at);
    let own = before[at];
    let to_left = flows[flow];
    let to_front = flows[flow + 32u];
    let to_below = flows[flow + 64u];
    let outside = flows[flow + 96u];
    let heat = heats[lane.at];
    let right = right_of(lane);
    let back = beside(lane.y.y, lane.lane, slab);
    let above = beside(lane.z.y, lane.lane, slab);
    var to_right = 0.0;
    var to_back = 0.0;
    var to_above = 0.0;
    if (right != NONE) { to_right = flows[flow_of(right)]; }
    if (back != NONE) { to_back = flows[flow_of(back) + 32u]; }
    if (above != NONE) { to_above = flows[flow_of(above) + 64u]; }
    let first = number == 1u;
    var change = 0.0;
    var last = 0.0;
    // Nothing has changed before the first stage, whatever the lists still hold of the last step.
    if (!first) { change = newest[lane.at]; }
    if (number > 2u) { last = older[lane.at]; }
    var material = lane.what & 255u;
    if ((lane.what & 256u) == 0u) { material = kinds[lane.at] & 255u; }
    var inverse = slab.even_inverse;
    if ((lane.what & 512u) == 0u) { inverse = inverses[lane.at]; }
    let gained = to_left * (before[at - 1u] - own) + to_right * (before[at + 1u] - own)
        + to_front * (before[at - slab.pitch] - own) + to_back * (before[at + slab.pitch] - own)
        + to_below * (before[at - slab.plane] - own) + to_above * (before[at + slab.plane] - own);
    var rate = gained * inverse + outside;
    let s = f32(count);
    let j = f32(number);
    let whole = 2.0 / (s * s + s) * step.length_s;
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
    change += lean * (change - last);
    change += weight * rate;
    let celsius = temperature(material, heat + change, slab.stride);
    older[lane.at] = change;
    after[at] = celsius;
}
