// The end of a step of the staged cells: what it changed is added, what rounding leaves of that is
// kept for the next, and what was passed is written down.

@group(0) @binding(0) var<uniform> slab: Slab;
@group(0) @binding(1) var<storage, read> rates: array<u32>;
@group(0) @binding(2) var<storage, read> tables: array<vec4<f32>>;
@group(0) @binding(3) var<storage, read> runs: array<vec4<u32>>;
@group(0) @binding(4) var<storage, read> kinds: array<u32>;
@group(0) @binding(5) var<storage, read_write> heats: array<f32>;
@group(0) @binding(6) var<storage, read_write> losts: array<f32>;
@group(0) @binding(7) var<storage, read> even: array<f32>;
@group(0) @binding(8) var<storage, read> odd: array<f32>;
@group(0) @binding(9) var<storage, read> after_even: array<f32>;
@group(0) @binding(10) var<storage, read> after_odd: array<f32>;
@group(0) @binding(11) var<storage, read_write> after: array<f32>;
@group(0) @binding(12) var<storage, read_write> arounds: array<Around>;
@group(0) @binding(13) var<storage, read_write> written: array<f32>;
@group(0) @binding(14) var<storage, read> axes: array<vec4<f32>>;
@group(0) @binding(15) var<storage, read_write> ends: array<atomic<u32>>;
@group(1) @binding(0) var<uniform> step: Step;

var<workgroup> liquid: atomic<u32>;

@compute @workgroup_size(256)
fn main(@builtin(workgroup_id) group: vec3<u32>, @builtin(num_workgroups) groups: vec3<u32>,
        @builtin(local_invocation_index) local: u32) {
    let rate = rates[step.number];
    let is_on = is_taken(rate, step);
    if (is_on) {
        let lane = lane_of(group, groups, local, slab);
        let is_odd = (stages_of(rate, step) & 1u) == 1u;
        if (lane.is_staged && settle(lane, kinds[lane.at] & 255u, is_odd)) {
            atomicAdd(&liquid, 1u);
        }
    }
    workgroupBarrier();
    if (is_on && local == 0u) {
        let end = ENDS * (step.number + 1u);
        let left = atomicLoad(&liquid);
        if (left != 0u) {
            atomicAdd(&ends[end + 1u], left);
        }
        if (group.x == 0u && group.y == 0u) {
            atomicStore(&ends[end], 1u);
        }
    }
}

// Ends the step of a lane and says whether it can freeze and is not solid yet.
fn settle(lane: Lane, material: u32, is_odd: bool) -> bool {
    let before = heats[lane.at];
    var changed = 0.0;
    if (is_odd) {
        changed = odd[lane.at];
    } else {
        changed = even[lane.at];
    }
    let change = changed + losts[lane.at];
    let next = rounded(before + change, step.zero);
    heats[lane.at] = next;
    losts[lane.at] = change - rounded(next - before, step.zero);
    after[lane.cell] = temperature(material, next, slab.stride);
    if ((lane.what >> 10u) != 0u) {
        let place = ((lane.what >> 10u) - 1u) * 32u + lane.lane - slab.around0;
        let around = arounds[place];
        let given = select(around.even, around.odd, is_odd) * around.volume + around.lost;
        let sum = rounded(around.through + given, step.zero);
        arounds[place].lost = given - rounded(sum - around.through, step.zero);
        arounds[place].through = sum;
    }
    if (tables[material * slab.stride + 2u].x == 0.0) {
        return false;
    }
    let levels = tables[material * slab.stride + 1u];
    let entry = 5u * lane.at;
    if (is_passed(levels.x, before, next)) {
        written[entry] = passed_s(levels.x, before, next);
    }
    if (is_passed(levels.y, before, next)) {
        written[entry + 1u] = passed_s(levels.y, before, next);
    }
    if (is_passed(levels.z, before, next)) {
        let cooled = temperature(material, before, slab.stride)
            - temperature(material, next, slab.stride);
        written[entry + 3u] = gradient(lane, material, is_odd);
        written[entry + 4u] = cooled / step.length_s;
    }
    if (is_passed(levels.w, before, next)) {
        written[entry + 2u] = passed_s(levels.w, before, next);
    }
    return next > levels.w;
}

fn is_passed(level: f32, before: f32, next: f32) -> bool {
    return before > level && next <= level;
}

// When a level was passed within the step, s.
fn passed_s(level: f32, before: f32, next: f32) -> f32 {
    return step.begins_s + (before - level) / (before - next) * step.length_s;
}

fn celsius(cell: u32, is_odd: bool) -> f32 {
    if (is_odd) {
        return after_odd[cell];
    }
    return after_even[cell];
}

// Temperature gradient across both neighbours of the same material, towards one where there is only
// one, K/m.
fn gradient(lane: Lane, material: u32, is_odd: bool) -> f32 {
    let in_plane = lane.cell % slab.plane;
    let x = in_plane % slab.pitch;
    let y = slab.nx + 1u + in_plane / slab.pitch;
    let z = slab.nx + slab.ny + 2u + slab.z0 + lane.cell / slab.plane - 1u;
    let along = slope(lane, material, is_odd, left_of(lane), right_of(lane), 1u, x);
    let across = slope(lane, material, is_odd, beside(lane.y.x, lane.lane, slab),
        beside(lane.y.y, lane.lane, slab), slab.pitch, y);
    let upright = slope(lane, material, is_odd, beside(lane.z.x, lane.lane, slab),
        beside(lane.z.y, lane.lane, slab), slab.plane, z);
    return sqrt(along * along + across * across + upright * upright);
}

fn slope(lane: Lane, material: u32, is_odd: bool, low: u32, high: u32, away: u32,
        axis: u32) -> f32 {
    let own = vec2<f32>(axes[axis].z, celsius(lane.cell, is_odd));
    var lower = own;
    var upper = own;
    if (low != NONE && (kinds[low] & 255u) == material) {
        lower = vec2<f32>(axes[axis - 1u].z, celsius(lane.cell - away, is_odd));
    }
    if (high != NONE && (kinds[high] & 255u) == material) {
        upper = vec2<f32>(axes[axis + 1u].z, celsius(lane.cell + away, is_odd));
    }
    if (upper.x > lower.x) {
        return (upper.y - lower.y) / (upper.x - lower.x);
    }
    return 0.0;
}
