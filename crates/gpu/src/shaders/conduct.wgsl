// Conductivities of swept cells whose material changes them, as a step begins.

@group(0) @binding(0) var<uniform> slab: Slab;
@group(0) @binding(1) var<storage, read> ends: array<u32>;
@group(0) @binding(2) var<storage, read> classes: array<u32>;
@group(0) @binding(3) var<storage, read> tables: array<vec4<f32>>;
@group(0) @binding(4) var<uniform> factors: array<vec4<f32>, 16>;
@group(0) @binding(5) var<storage, read> heats: array<f32>;
@group(0) @binding(6) var<storage, read_write> conducts: array<f32>;
@group(1) @binding(0) var<uniform> step: Step;

@compute @workgroup_size(64, 2, 1)
fn main(@builtin(global_invocation_id) id: vec3<u32>) {
    let ended = ENDS * step.number;
    if (!is_reached(ends[ended], ends[ended + 1u], step)) {
        return;
    }
    if (id.x >= slab.nx || id.y >= slab.ny) {
        return;
    }
    let row = id.y * slab.pitch + id.x;
    let first = id.z * slab.chunk;
    let end = min(first + slab.chunk, slab.nz);
    for (var z = first; z < end; z++) {
        let place = z * slab.plane + row;
        let class_ = (classes[place >> 3u] >> ((place & 7u) * 4u)) & 15u;
        let class_of = factors[class_];
        if (class_ != 0u && class_of.z < 0.0) {
            let k = conductivity(u32(class_of.y), heats[place], slab.stride);
            conducts[place + slab.plane] = k;
        }
    }
}
