// A step of the cells that have only their own plain material beside them, four along x at a time;
// all others keep their temperature.

@group(0) @binding(0) var<uniform> slab: Slab;
@group(0) @binding(1) var<storage, read> slots: array<u32>;
@group(0) @binding(2) var<storage, read> classes: array<u32>;
@group(0) @binding(3) var<storage, read> along: array<vec4<f32>>;
@group(0) @binding(4) var<storage, read> across: array<vec2<f32>>;
@group(0) @binding(5) var<uniform> factors: array<vec4<f32>, 16>;
@group(0) @binding(6) var<storage, read> before: array<vec4<f32>>;
@group(0) @binding(7) var<storage, read_write> after: array<vec4<f32>>;
@group(1) @binding(0) var<uniform> step: Step;

@compute @workgroup_size(16, 8, 1)
fn main(@builtin(global_invocation_id) id: vec3<u32>) {
    let slot = SLOTS * step.number;
    if (!is_reached(slots[slot], slots[slot + 1u], step)
        || stages_of(slots[slot + 2u], step) > step.most_stages) {
        return;
    }
    let pitch = slab.pitch / 4u;
    let plane = slab.plane / 4u;
    if (id.x * 4u >= slab.nx || id.y >= slab.ny) {
        return;
    }
    let low = along[id.x];
    let high = along[pitch + id.x];
    let to_front = across[id.y].x;
    let to_back = across[id.y].y;
    let row = id.y * pitch + id.x;
    let first = id.z * slab.chunk;
    let end = min(first + slab.chunk, slab.nz);
    var at = (first + 1u) * plane + row;
    var below = before[at - plane];
    var own = before[at];
    for (var z = first; z < end; z++) {
        let above = before[at + plane];
        let word = classes[(z * plane + row) >> 1u];
        let four = (word >> ((row & 1u) * 16u)) & 0xffffu;
        var next = own;
        if (four != 0u) {
            let left = vec4<f32>(before[at - 1u].w, own.xyz);
            let right = vec4<f32>(own.yzw, before[at + 1u].x);
            let front = before[at - pitch];
            let back = before[at + pitch];
            let upright = across[slab.ny + slab.z0 + z];
            let gain = (low * (left - own) + high * (right - own))
                + ((to_front * (front - own) + to_back * (back - own))
                + (upright.x * (below - own) + upright.y * (above - own)));
            let factor = vec4<f32>(
                factors[four & 15u].x,
                factors[(four >> 4u) & 15u].x,
                factors[(four >> 8u) & 15u].x,
                factors[four >> 12u].x,
            );
            next = own + step.length_s * factor * gain;
        }
        after[at] = next;
        below = own;
        own = above;
        at += plane;
    }
}
