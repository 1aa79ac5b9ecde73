// Tables of the materials, as sums of clamped ramps. A table begins with three rows:
//   start of temperature, its ramps, start of conductivity, its ramps (counts as numbers);
//   heat contents that are watched: first solid, passing share, gradient, all solid;
//   whether it freezes, one over its least capacity, its conductivity if it never changes (else
//   below nought), its capacity if it is plain (else below nought).

fn temperature(material: u32, heat: f32, stride: u32) -> f32 {
    let first = material * stride;
    let head = tables[first];
    var sum = head.x;
    let count = u32(head.y);
    for (var at = 0u; at < count; at++) {
        let ramp = tables[first + 3u + at];
        sum += ramp.w * (clamp(heat, ramp.x, ramp.y) - ramp.z);
    }
    return sum;
}

fn conductivity(material: u32, heat: f32, stride: u32) -> f32 {
    let first = material * stride;
    let head = tables[first];
    var sum = head.z;
    let row = first + 3u + u32(head.y);
    let count = u32(head.w);
    for (var at = 0u; at < count; at++) {
        let ramp = tables[row + at];
        sum += ramp.w * (clamp(heat, ramp.x, ramp.y) - ramp.z);
    }
    return sum;
}
