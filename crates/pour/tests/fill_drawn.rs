//! The running system read off the cells of a mould that is drawn cell by cell, and a glance at it.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod boxes;

use measure::length::{Area, Length};
use mould::gating::friction::TRIED;
use mould::gating::running_system::Basin;
use pour::cells::{MouldCells, Stuff};
use pour::fill::drawn::{DrawnError, drawn};
use pour::fill::glance;
use pour::fill::network::{Branch, Node};
use rigging::given::{Half, Sizes};
use rigging::piece::Piece;

use crate::boxes::{metal, near, sand};

const PIECES: [Piece; 9] = [
    Piece::Casting(1),
    Piece::Casting(2),
    Piece::Gate(1),
    Piece::Gate(2),
    Piece::Gate(3),
    Piece::Runner(1),
    Piece::Well,
    Piece::Sprue,
    Piece::Basin,
];

/// Blocks in cells: the piece, its low corner, its high corner.
type Block = (usize, [usize; 3], [usize; 3]);

/// A runner of 300 mm along x with a sprue at its middle, two gates to a casting at the back left
/// and right of the sprue, one to a casting in front at its right end. Cells of 5 mm.
const BLOCKS: [Block; 9] = [
    (0, [6, 24, 4], [58, 40, 12]),
    (1, [46, 2, 4], [60, 12, 12]),
    (2, [14, 19, 4], [18, 24, 6]),
    (3, [44, 19, 4], [48, 24, 6]),
    (4, [50, 12, 4], [54, 17, 6]),
    (5, [2, 17, 4], [62, 19, 6]),
    (6, [30, 16, 2], [34, 20, 4]),
    (7, [31, 17, 4], [33, 19, 30]),
    (8, [28, 14, 30], [36, 22, 34]),
];

/// The mould with its piece for each cell; height nought lies on the floor of the runner.
fn mould(blocks: &[Block]) -> (MouldCells, Vec<u8>) {
    let count = [64, 44, 36];
    let all = count.iter().product();
    let mut cells = MouldCells {
        size_mm: 5.0,
        count,
        origin_mm: [0.0, 0.0, -20.0],
        stuff: vec![Stuff::Sand; all],
        metal: vec![0.0; all],
    };
    let mut piece = vec![u8::MAX; all];
    for (number, low, high) in blocks {
        for (place, piece) in piece.iter_mut().enumerate() {
            let at = cells.cell(place);
            if (0..3).all(|axis| (low[axis]..high[axis]).contains(&at[axis])) {
                cells.stuff[place] = Stuff::Metal;
                cells.metal[place] = 1.0;
                *piece = *number as u8;
            }
        }
    }
    (cells, piece)
}

fn sizes() -> Sizes {
    let mm = Length::from_mm;
    Sizes {
        pour_height: mm(150.0),
        sprue_top: mm(14.0),
        sprue_foot: mm(10.0),
        basin: Basin {
            across: mm(40.0),
            depth: mm(20.0),
        },
        runners: Area::from_mm2(200.0),
        gates: Area::from_mm2(600.0),
        past_last_gate: mm(25.0),
        runner_half: Half::Cope,
        feeder: None,
        vents: None,
    }
}

fn to(branches: &[Branch], node: Node) -> &Branch {
    branches.iter().find(|branch| branch.to == node).unwrap()
}

#[test]
fn ways_and_places_are_those_of_the_drawing() {
    let (cells, piece) = mould(&BLOCKS);
    let gating = drawn(&cells, &PIECES, &piece, &sizes(), TRIED).unwrap();
    // Sprue, and a stretch and a gate for each of three gates.
    let branches = &gating.network.branches;
    assert_eq!(branches.len(), 7);
    near(branches[0].length_m, 0.130, 1e-9);
    let foot = &branches[0].sections[7];
    near(foot.area_m2, std::f64::consts::PI / 4.0 * 1e-4, 1e-9);
    for (gate, place_mm) in [[80.0, 122.5, 5.0], [230.0, 122.5, 5.0], [260.0, 57.5, 5.0]]
        .into_iter()
        .enumerate()
    {
        assert_eq!(gating.gates_mm[gate], place_mm);
        let branch = to(branches, Node::Outlet(gate));
        near(branch.area_m2, 2e-4, 1e-9);
        near(branch.length_m, 0.020 * 0.025 * 0.010 / 2e-4, 1e-6);
        near(
            branch.hydraulic_m,
            4.0 * 2e-4 / (2.0 * (0.010 + 0.020)),
            1e-6,
        );
    }
    // From where the runner is fed, which is within a cell of the sprue's middle at 160 mm.
    let stretch = |gate: usize| {
        let Node::Junction(junction) = to(branches, Node::Outlet(gate)).from else {
            return (Node::Basin, 0.0);
        };
        let runner = to(branches, Node::Junction(junction));
        near(runner.area_m2, 1e-4, 1e-9);
        (runner.from, runner.length_m)
    };
    let [left, right, beyond] = [0, 1, 2].map(stretch);
    assert_eq!(left.0, Node::Junction(0));
    assert_eq!(right.0, Node::Junction(0));
    assert_eq!(beyond.0, to(branches, Node::Outlet(1)).from);
    assert!((left.1 - 0.080).abs() <= 0.0101, "{left:?}");
    assert!((right.1 - 0.070).abs() <= 0.0101, "{right:?}");
    near(left.1 + right.1, 0.150, 1e-9);
    near(beyond.1, 0.030, 1e-9);
    let running = gating.running.iter().filter(|runs| **runs).count();
    let cells_of = |from: usize| -> usize {
        let blocks = BLOCKS.iter().filter(|block| block.0 >= from);
        blocks
            .map(|(_, low, high)| (0..3).map(|axis| high[axis] - low[axis]).product::<usize>())
            .sum()
    };
    // The sprue stands in the runner with two layers.
    assert_eq!(running, cells_of(2) - 2 * 2 * 2);
}

#[test]
fn a_drawn_mould_fills() {
    let (cells, piece) = mould(&BLOCKS);
    let gating = drawn(&cells, &PIECES, &piece, &sizes(), TRIED).unwrap();
    let seen = glance(&cells, &gating, &metal(), &sand()).unwrap();
    near(seen.lies_m3, seen.hollow_m3, 1e-9);
    near(seen.poured_m3, seen.lies_m3, 1e-4);
    assert!(seen.starts_s > 0.0 && seen.ends_s > seen.starts_s);
    let came = |place: usize| seen.arrival_s[place].is_finite();
    for place in 0..cells.stuff.len() {
        assert_eq!(came(place), cells.stuff[place] == Stuff::Metal);
    }
}

#[test]
fn what_is_missing_or_apart_is_named() {
    let without = |number: usize| -> Vec<Block> {
        let blocks = BLOCKS.into_iter();
        blocks.filter(|block| block.0 != number).collect()
    };
    let look = |blocks: &[Block]| {
        let (cells, piece) = mould(blocks);
        drawn(&cells, &PIECES, &piece, &sizes(), TRIED).unwrap_err()
    };
    let sprue = look(&without(7));
    assert_eq!(
        sprue,
        DrawnError::Missing {
            piece: Piece::Sprue
        }
    );
    let runner = look(&without(5));
    assert!(
        runner.to_string().contains("gate 1 touches no runner"),
        "{runner}"
    );
    let casting = look(&without(1));
    assert!(
        casting.to_string().contains("gate 3 touches no casting"),
        "{casting}"
    );
    let (cells, _) = mould(&BLOCKS);
    let short = drawn(&cells, &PIECES, &[0; 3], &sizes(), TRIED);
    assert!(matches!(short, Err(DrawnError::Pieces { pieces: 3, .. })));
}
