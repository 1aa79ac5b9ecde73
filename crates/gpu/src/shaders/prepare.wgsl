// What stands still during a step of the staged cells: conductances to the lower neighbours (W/K),
// heat from swept neighbours and surroundings (W/m3), and the highest rate of all.

struct Link {
    area: f32,
    here_m: f32,
    there_m: f32,
    contact: f32,
    reach_here: f32,
    reach_there: f32,
    alike: f32,
    unused: f32,
}

struct Outer {
    kind: f32,  // 1 held, 2 flux, 3 exchange
    area: f32,
    half_m: f32,
    figure: f32,  // W/m2 or W/(m2 K)
    celsius: f32,
    emissivity: f32,
    unused_a: f32,
    unused_b: f32,
}

@group(0) @binding(0) var<uniform> slab: Slab;
@group(0) @binding(1) var<storage, read> ends: array<u32>;
@group(0) @binding(2) var<storage, read> tables: array<vec4<f32>>;
@group(0) @binding(3) var<storage, read> runs: array<vec4<u32>>;
@group(0) @binding(4) var<storage, read> kinds: array<u32>;
@group(0) @binding(5) var<storage, read> inverses: array<f32>;
@group(0) @binding(6) var<storage, read_write> flows: array<f32>;
@group(0) @binding(7) var<storage, read> heats: array<f32>;
@group(0) @binding(8) var<storage, read> before: array<f32>;
@group(0) @binding(9) var<storage, read_write> arounds: array<Around>;
@group(0) @binding(10) var<storage, read> rims: array<u32>;
@group(0) @binding(11) var<storage, read> links: array<Link>;
@group(0) @binding(12) var<storage, read> outers: array<Outer>;
@group(0) @binding(13) var<storage, read> axes: array<vec4<f32>>;
@group(0) @binding(14) var<storage, read_write> conducts: array<f32>;
@group(0) @binding(15) var<storage, read_write> rates: array<atomic<u32>>;
@group(1) @binding(0) var<uniform> step: Step;

const ALIKE: u32 = 0u;
const STAGED: u32 = 2u;
const SWEPT: u32 = 3u;
const AROUND: u32 = 4u;

const RADIATION: f32 = 5.670374419e-8;
const ZERO_K: f32 = -273.15;

var<workgroup> highest: atomic<u32>;

// What comes to a cell beside what its staged neighbours give: heat, W, and surroundings.
var<private> watts: f32;
var<private> around: Around;

struct Cell {
    material: u32,
    k: f32,
    celsius: f32,
    inverse: f32,
}

// Conductance to a staged neighbour at a side, W/K; anything else is added to what comes.
fn look(code: u32, there: u32, there_cell: u32, area_over_way: f32, cell: Cell) -> f32 {
    let sort = code >> 29u;
    let number = code & 0x1fffffffu;
    if (sort == ALIKE) {
        if (there == NONE) {
            return 0.0;
        }
        let k = conductivity(cell.material, heats[there], slab.stride);
        return 0.5 * (cell.k + k) * area_over_way;
    }
    if (sort == STAGED && there != NONE) {
        let k = conductivity(kinds[there] & 255u, heats[there], slab.stride);
        return through(links[number], cell.k, k);
    }
    if (sort == SWEPT) {
        // A swept cell is of the material of all that lie beside it.
        var k = tables[cell.material * slab.stride + 2u].z;
        if (k < 0.0) {
            k = conducts[there_cell];
        }
        watts += through(links[number], cell.k, k) * (before[there_cell] - cell.celsius);
    }
    if (sort == AROUND) {
        add_around(outers[number], cell);
    }
    return 0.0;
}

fn through(link: Link, here: f32, there: f32) -> f32 {
    if (link.alike > 0.0) {
        return link.area * 0.5 * (here + there) / (link.here_m + link.there_m);
    }
    let here_m = min(link.here_m, link.reach_here * step.root_s);
    let there_m = min(link.there_m, link.reach_there * step.root_s);
    let both = here * there;
    return link.area * both / (here_m * there + there_m * here + link.contact * both);
}

fn add_around(outer: Outer, cell: Cell) {
    var w_k = 0.0;
    if (outer.kind == 2.0) {
        around.steady += outer.area * outer.figure * cell.inverse;
        return;
    }
    if (outer.kind == 1.0) {
        w_k = outer.area * cell.k / outer.half_m;
    } else {
        let skin = cell.celsius - ZERO_K;
        let far = outer.celsius - ZERO_K;
        let radiated = (skin * skin + far * far) * (skin + far);
        let surface = outer.figure + outer.emissivity * RADIATION * radiated;
        w_k = outer.area * surface * cell.k / (cell.k + surface * outer.half_m);
    }
    let added = w_k * cell.inverse;
    if (added > 0.0) {
        let sum = around.rate + added;
        around.celsius = (around.rate * around.celsius + added * outer.celsius) / sum;
        around.rate = sum;
    }
}

@compute @workgroup_size(256)
fn main(@builtin(workgroup_id) group: vec3<u32>, @builtin(num_workgroups) groups: vec3<u32>,
        @builtin(local_invocation_index) local: u32) {
    let ended = ENDS * step.number;
    let is_on = is_reached(ends[ended], ends[ended + 1u], step);
    if (is_on) {
        let lane = lane_of(group, groups, local, slab);
        if (lane.is_staged) {
            let rate = bitcast<u32>(max(prepare(lane), 0.0));
            // Most cells are no quicker than those before them, and need not stand in line.
            if (rate > atomicLoad(&highest)) {
                atomicMax(&highest, rate);
            }
        }
    }
    workgroupBarrier();
    if (is_on && local == 0u) {
        atomicMax(&rates[step.number], max(atomicLoad(&highest), 1u));
    }
}

// Lays down what a lane needs and gives its rate, 1/s.
fn prepare(lane: Lane) -> f32 {
    let kind = kinds[lane.at];
    var cell: Cell;
    cell.material = kind & 255u;
    cell.k = conductivity(cell.material, heats[lane.at], slab.stride);
    if (slab.changing != 0u) {
        // For swept cells of the same material beside it.
        conducts[lane.cell] = cell.k;
    }
    cell.celsius = before[lane.cell];
    cell.inverse = inverses[lane.at];
    watts = 0.0;
    around = Around(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
    let in_plane = lane.cell % slab.plane;
    let x = axes[in_plane % slab.pitch];
    let x_next = axes[in_plane % slab.pitch + 1u];
    let y_at = slab.nx + 1u + in_plane / slab.pitch;
    let z_at = slab.nx + slab.ny + 2u + slab.z0 + lane.cell / slab.plane - 1u;
    let y = axes[y_at];
    let z = axes[z_at];
    var codes = array<u32, 6>(0u, 0u, 0u, 0u, 0u, 0u);
    let rim = kind >> 8u;
    if (rim != 0u) {
        let first = 6u * (rim - 1u) - slab.rim0;
        codes = array<u32, 6>(rims[first], rims[first + 1u], rims[first + 2u], rims[first + 3u],
            rims[first + 4u], rims[first + 5u]);
    }
    let c = lane.cell;
    let area_x = y.x * z.x;
    let area_y = x.x * z.x;
    let area_z = x.x * y.x;
    let left = look(codes[0], left_of(lane), c - 1u, area_x * x.y, cell);
    let right = look(codes[1], right_of(lane), c + 1u, area_x * x_next.y, cell);
    let front = look(codes[2], beside(lane.y.x, lane.lane, slab), c - slab.pitch,
        area_y * y.y, cell);
    let back = look(codes[3], beside(lane.y.y, lane.lane, slab), c + slab.pitch,
        area_y * axes[y_at + 1u].y, cell);
    let below = look(codes[4], beside(lane.z.x, lane.lane, slab), c - slab.plane,
        area_z * z.y, cell);
    let above = look(codes[5], beside(lane.z.y, lane.lane, slab), c + slab.plane,
        area_z * axes[z_at + 1u].y, cell);
    let flow = flow_of(lane.at);
    flows[flow] = left;
    flows[flow + 32u] = front;
    flows[flow + 64u] = below;
    flows[flow + 96u] = watts * cell.inverse + around.steady;
    if ((lane.what >> 10u) != 0u) {
        let place = ((lane.what >> 10u) - 1u) * 32u + lane.lane - slab.around0;
        arounds[place].rate = around.rate;
        arounds[place].celsius = around.celsius;
        arounds[place].steady = around.steady;
        arounds[place].volume = 1.0 / cell.inverse;
    }
    let sum = (left + right) + (front + back) + (below + above);
    return (sum * cell.inverse + around.rate) * tables[cell.material * slab.stride + 2u].y;
}
