// A list goes to another: how fast the memory of the card is.

@group(0) @binding(0) var<storage, read> source: array<vec4<f32>>;
@group(0) @binding(1) var<storage, read_write> copied: array<vec4<f32>>;

@compute @workgroup_size(256)
fn main(@builtin(workgroup_id) group: vec3<u32>, @builtin(num_workgroups) groups: vec3<u32>,
        @builtin(local_invocation_id) local: vec3<u32>) {
    let at = (group.y * groups.x + group.x) * 256u + local.x;
    if (at < arrayLength(&source)) {
        copied[at] = source[at];
    }
}
