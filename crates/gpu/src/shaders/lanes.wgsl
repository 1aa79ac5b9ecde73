// Runs of 32 cells along x, of which some are staged; each cell of a run is a lane. A run has two
// rows: its first cell, what it is, which lanes are staged (a bit each), whether a run lies before
// it (1) and behind it (2) along x, then the first lanes of the runs around along y and z. What it
// is: its material (where bit 8 says that all lanes have that), bit 9 that all are like all others
// in volume, from bit 10 the number of its surroundings, from one.

struct Lane {
    run: u32,
    lane: u32,   // within the run
    at: u32,     // among lanes in sight
    cell: u32,   // among cells in sight
    what: u32,
    is_staged: bool,
    x: u32,
    y: vec2<u32>,  // first lanes of the runs around, NONE where there is none
    z: vec2<u32>,
}

fn lane_of(group: vec3<u32>, groups: vec3<u32>, local: u32, slab: Slab) -> Lane {
    let thread = (group.y * groups.x + group.x) * 256u + local;
    var lane: Lane;
    lane.run = thread >> 5u;
    lane.lane = thread & 31u;
    let row = slab.run_first + min(lane.run, max(slab.run_count, 1u) - 1u);
    let first = runs[2u * row];
    let second = runs[2u * row + 1u];
    lane.at = row * 32u + lane.lane;
    lane.cell = first.x - slab.cell0 + lane.lane;
    lane.what = first.y;
    lane.is_staged = lane.run < slab.run_count && ((first.z >> lane.lane) & 1u) != 0u;
    lane.x = first.w;
    lane.y = second.xy;
    lane.z = second.zw;
    return lane;
}

// Lane, among those in sight, of a cell in a run around; NONE where there is none.
fn beside(first: u32, lane: u32, slab: Slab) -> u32 {
    return select(first - slab.lane0 + lane, NONE, first == NONE);
}

fn left_of(lane: Lane) -> u32 {
    return select(NONE, lane.at - 1u, lane.lane != 0u || (lane.x & 1u) != 0u);
}

fn right_of(lane: Lane) -> u32 {
    return select(NONE, lane.at + 1u, lane.lane != 31u || (lane.x & 2u) != 0u);
}

// Where a lane has its conductance to the left (W/K) among those of all; that to the front follows
// 32 places behind, that to below after 32 more, then its heat from outside (W/m3).
fn flow_of(at: u32) -> u32 {
    return (at >> 5u) * 128u + (at & 31u);
}
