// Tables of the materials, as sums of clamped ramps. A table begins with three rows:
//   start of temperature, its ramps, start of conductivity, its ramps (counts as numbers);
//   heat contents that are watched: first solid, passing share, gradient, all solid;
//   whether it freezes, one over its least capacity, its conductivity if it never changes (else
//   below nought), its capacity if it is plain (else below nought).

// Ramps of a temperature and of a conductivity that every table has at least, filled up with such as
// add nothing: they are asked for all at once.
const LEAST_RAMPS: u32 = 4u;
const LEAST_RAMPS_OF_CONDUCTIVITY: u32 = 2u;

fn ramp(row: u32, heat: f32) -> f32 {
    let figures = tables[row];
    return figures.w * (clamp(heat, figures.x, figures.y) - figures.z);
}

fn temperature(material: u32, heat: f32, stride: u32) -> f32 {
    let first = material * stride;
    let head = tables[first];
    let row = first + 3u;
    var sum = head.x + ((ramp(row, heat) + ramp(row + 1u, heat))
        + (ramp(row + 2u, heat) + ramp(row + 3u, heat)));
    for (var at = LEAST_RAMPS; at < u32(head.y); at++) {
        sum += ramp(row + at, heat);
    }
    return sum;
}

fn conductivity(material: u32, heat: f32, stride: u32) -> f32 {
    let first = material * stride;
    let head = tables[first];
    let row = first + 3u + u32(head.y);
    var sum = head.z + (ramp(row, heat) + ramp(row + 1u, heat));
    for (var at = LEAST_RAMPS_OF_CONDUCTIVITY; at < u32(head.w); at++) {
        sum += ramp(row + at, heat);
    }
    return sum;
}
