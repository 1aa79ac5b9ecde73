// A step of the cells that have only their own plain material beside them, four along x at a time;
// all others keep their temperature.

@group(0) @binding(0) var<uniform> slab: Slab;
@group(0) @binding(1) var<storage, read> rates: array<u32>;
@group(0) @binding(2) var<storage, read> classes: array<u32>;
@group(0) @binding(3) var<storage, read> along: array<vec4<f32>>;
@group(0) @binding(4) var<storage, read> across: array<vec2<f32>>;
@group(0) @binding(5) var<uniform> factors: array<vec4<f32>, 16>;
@group(0) @binding(6) var<storage, read> before: array<vec4<f32>>;
@group(0) @binding(7) var<storage, read_write> after: array<vec4<f32>>;
@group(1) @binding(0) var<uniform> step: Step;

// A quad of cells after the step, from those around it.
fn next_of(own: vec4<f32>, left: f32, right: f32, front: vec4<f32>, back: vec4<f32>,
        below: vec4<f32>, above: vec4<f32>, along: mat2x4<f32>, to_y: vec2<f32>, to_z: vec2<f32>,
        four: u32) -> vec4<f32> {
    let gain = (along[0] * (vec4<f32>(left, own.xyz) - own)
        + along[1] * (vec4<f32>(own.yzw, right) - own))
        + ((to_y.x * (front - own) + to_y.y * (back - own))
        + (to_z.x * (below - own) + to_z.y * (above - own)));
    let factor = vec4<f32>(
        factors[four & 15u].x,
        factors[(four >> 4u) & 15u].x,
        factors[(four >> 8u) & 15u].x,
        factors[(four >> 12u) & 15u].x,
    );
    return own + step.length_s * factor * gain;
}

// Two planes at a time: all that they need is asked for before any of it is written, since a card
// takes a list that is written for one that may be read from as well.
@compute @workgroup_size(16, 8, 1)
fn main(@builtin(global_invocation_id) id: vec3<u32>) {
    if (!is_taken(rates[step.number], step)) {
        return;
    }
    let pitch = slab.pitch / 4u;
    let plane = slab.plane / 4u;
    if (id.x * 4u >= slab.nx || id.y >= slab.ny) {
        return;
    }
    let weights = mat2x4<f32>(along[id.x], along[pitch + id.x]);
    let to_y = across[id.y];
    let row = id.y * pitch + id.x;
    let half = (row & 1u) * 16u;
    let first = id.z * slab.chunk;
    let end = min(first + slab.chunk, slab.nz);
    var at = (first + 1u) * plane + row;
    var below = before[at - plane];
    var one = before[at];
    for (var z = first; z < end; z += 2u) {
        let next = at + plane;
        let two = before[next];
        // One plane lies behind those of the slab; where there is none behind that, it is not used.
        let above = before[next + plane];
        let left_one = before[at - 1u].w;
        let right_one = before[at + 1u].x;
        let front_one = before[at - pitch];
        let back_one = before[at + pitch];
        let left_two = before[next - 1u].w;
        let right_two = before[next + 1u].x;
        let front_two = before[next - pitch];
        let back_two = before[next + pitch];
        let class_one = classes[(z * plane + row) >> 1u] >> half;
        let class_two = classes[((z + 1u) * plane + row) >> 1u] >> half;
        let z_one = across[slab.ny + slab.z0 + z];
        let z_two = across[slab.ny + slab.z0 + z + 1u];
        let after_one = next_of(one, left_one, right_one, front_one, back_one, below, two,
            weights, to_y, z_one, class_one);
        let after_two = next_of(two, left_two, right_two, front_two, back_two, one, above,
            weights, to_y, z_two, class_two);
        after[at] = after_one;
        if (z + 1u < end) {
            after[next] = after_two;
        }
        below = two;
        one = above;
        at = next + plane;
    }
}
