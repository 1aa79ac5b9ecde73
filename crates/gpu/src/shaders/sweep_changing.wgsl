// A step of the cells that have only their own material beside them, where some material is not
// plain: its heat content is carried, and its conductivity may change.

@group(0) @binding(0) var<uniform> slab: Slab;
@group(0) @binding(1) var<storage, read> rates: array<u32>;
@group(0) @binding(2) var<storage, read> classes: array<u32>;
@group(0) @binding(3) var<storage, read> along: array<f32>;
@group(0) @binding(4) var<storage, read> across: array<vec2<f32>>;
@group(0) @binding(5) var<uniform> factors: array<vec4<f32>, 16>;
@group(0) @binding(6) var<storage, read> before: array<f32>;
@group(0) @binding(7) var<storage, read_write> after: array<f32>;
@group(0) @binding(8) var<storage, read> tables: array<vec4<f32>>;
@group(0) @binding(9) var<storage, read> conducts: array<f32>;
@group(0) @binding(10) var<storage, read_write> heats: array<f32>;
@group(1) @binding(0) var<uniform> step: Step;

@compute @workgroup_size(64, 2, 1)
fn main(@builtin(global_invocation_id) id: vec3<u32>) {
    if (!is_taken(rates[step.number], step)) {
        return;
    }
    if (id.x >= slab.nx || id.y >= slab.ny) {
        return;
    }
    let row = id.y * slab.pitch + id.x;
    let first = id.z * slab.chunk;
    let end = min(first + slab.chunk, slab.nz);
    for (var z = first; z < end; z++) {
        let at = (z + 1u) * slab.plane + row;
        let own = before[at];
        let place = z * slab.plane + row;
        let class_ = (classes[place >> 3u] >> ((place & 7u) * 4u)) & 15u;
        if (class_ == 0u) {
            after[at] = own;
            continue;
        }
        let upright = across[slab.ny + slab.z0 + z];
        let low = vec3<f32>(along[id.x], across[id.y].x, upright.x);
        let high = vec3<f32>(along[slab.pitch + id.x], across[id.y].y, upright.y);
        let lower = vec3<f32>(before[at - 1u], before[at - slab.pitch], before[at - slab.plane]);
        let upper = vec3<f32>(before[at + 1u], before[at + slab.pitch], before[at + slab.plane]);
        // Factor of a plain material, its number, its conductivity if that never changes.
        let class_of = factors[class_];
        if (class_of.x > 0.0) {
            let gain = dot(low, lower - own) + dot(high, upper - own);
            after[at] = own + step.length_s * class_of.x * gain;
            continue;
        }
        var gain = 0.0;
        if (class_of.z > 0.0) {
            gain = 2.0 * class_of.z * (dot(low, lower - own) + dot(high, upper - own));
        } else {
            let k = conducts[at];
            let k_lower = vec3<f32>(
                conducts[at - 1u], conducts[at - slab.pitch], conducts[at - slab.plane]);
            let k_upper = vec3<f32>(
                conducts[at + 1u], conducts[at + slab.pitch], conducts[at + slab.plane]);
            gain = dot(low * (k_lower + k), lower - own) + dot(high * (k_upper + k), upper - own);
        }
        let heat = heats[place] + step.length_s * gain;
        heats[place] = heat;
        after[at] = temperature(u32(class_of.y), heat, slab.stride);
    }
}
