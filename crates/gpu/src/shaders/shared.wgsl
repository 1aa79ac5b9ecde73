// What all programs share: the part of the box they are for, the step, and whether it is taken.

struct Slab {
    pitch: u32,      // cells from a row to the next
    plane: u32,      // cells from a plane to the next
    nx: u32,
    ny: u32,
    nz: u32,         // planes of its own
    z0: u32,         // the first of them
    cell0: u32,      // first cell in sight: one plane lies before its own, one behind
    lane0: u32,      // first lane in sight
    run_first: u32,  // its own runs begin here among those in sight
    run_count: u32,  // how many they are
    rim0: u32,       // words of rims before those in sight
    around0: u32,
    stride: u32,     // entries of a table
    chunk: u32,      // planes that a thread of the sweep goes through
    even_inverse: f32,  // one over the volume of a cell that is like all others, 1/m3
    changing: u32,   // whether conductivities of swept cells change
}

struct Step {
    number: u32,          // within those that go to the card together
    most_stages: u32,     // stages that were made ready
    while_freezing: u32,  // left out where nothing is left to freeze
    zero: u32,            // 0, which no compiler knows
    length_s: f32,
    begins_s: f32,
    root_s: f32,
    margin: f32,          // share of the longest explicit step that a stage counts with
    least_rate: f32,      // stages are counted for no lower one, 1/s
    unused_a: f32,
    unused_b: f32,
    unused_c: f32,
}

const NONE: u32 = 0xffffffffu;

// Steps tell in two lists how they went, so that no program reads the list that it writes: a list
// that many threads read in single file holds all of them up. `ends` has two numbers a step: whether
// it is reached, and how many cells are not solid then. `rates` has one: the highest rate of any
// cell as bits, which is nought only where the step is not reached.
const ENDS: u32 = 2u;

// Whether a step is reached and wanted, as far as the step before it knows.
fn is_reached(reached: u32, unfrozen: u32, step: Step) -> bool {
    return reached != 0u && (step.while_freezing == 0u || unfrozen != 0u);
}

// Whether a step is taken, by its rate: one that wants more stages than were made ready is not.
fn is_taken(rate_bits: u32, step: Step) -> bool {
    return rate_bits != 0u && stages_of(rate_bits, step) <= step.most_stages;
}

// Stages that cover a step at a rate, 1/s.
fn stages_of(rate_bits: u32, step: Step) -> u32 {
    let rate = max(bitcast<f32>(rate_bits), step.least_rate);
    let steps = step.length_s * rate / step.margin;
    return max(1u, u32(ceil((sqrt(1.0 + 8.0 * steps) - 1.0) * 0.5)));
}

// A number that the compiler cannot see through, so that what rounding left can be worked out.
fn rounded(number: f32, zero: u32) -> f32 {
    return bitcast<f32>(bitcast<u32>(number) ^ zero);
}
