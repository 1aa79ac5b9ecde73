//! The room around a casting in which the joint may leave its level.

use pattern::vector::Vector;

use crate::given::Given;
use crate::lie::Lying;
use crate::plan_view::Point;

/// Lowest and highest corner of something on the joint, mm.
pub(crate) type Rectangle = [Point; 2];

/// A rectangle around the first casting, as large as every casting has room for around itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Cell {
    /// Its front left corner.
    pub(crate) low: Point,
    /// Its back right corner.
    pub(crate) high: Point,
}

/// How much of the room up to something flat is taken: less than all of it, so that no line of the
/// joint falls on another one.
const TAKEN: f64 = 0.98;

/// Room within the cell beside a core print that would reach out of it, as a share of the room
/// beside the casting.
const BESIDE_PRINT: f64 = 0.1;

impl Cell {
    /// The cell of castings that are alike, beside what keeps its joint flat.
    pub(crate) fn around(
        given: &Given,
        first: &Lying,
        others: &[Lying],
        kept_flat: &[Rectangle],
    ) -> Cell {
        let all: Vec<Rectangle> = std::iter::once(first).chain(others).map(flat).collect();
        let inside = [given.flask.length, given.flask.width].map(|side| side.as_mm());
        // Room to the left, in front, to the right and behind.
        let mut room = [f64::INFINITY; 4];
        for (number, own) in all.iter().enumerate() {
            for axis in 0..2 {
                room[axis] = room[axis].min(own[0][axis]);
                room[axis + 2] = room[axis + 2].min(inside[axis] - own[1][axis]);
            }
            let (before, after) = (&all[..number], &all[number + 1..]);
            for other in before.iter().chain(after) {
                narrow(&mut room, own, other, 0.5);
            }
            for other in kept_flat {
                narrow(&mut room, own, other, 1.0);
            }
        }
        let room = room.map(|room| room.max(0.0) * TAKEN);
        let [low, high] = flat(first);
        Cell {
            low: [0, 1].map(|axis| low[axis] - room[axis]),
            high: [0, 1].map(|axis| high[axis] + room[axis + 2]),
        }
    }

    /// What of the cell a core print may fill beside a casting with these bounds.
    pub(crate) fn within(&self, [low, high]: &[Vector; 2]) -> Rectangle {
        let kept = |cell: f64, own: f64| cell + BESIDE_PRINT * (own - cell);
        [
            [0, 1].map(|axis| kept(self.low[axis], low[axis])),
            [0, 1].map(|axis| kept(self.high[axis], high[axis])),
        ]
    }
}

fn flat(lying: &Lying) -> Rectangle {
    lying.bounds.map(|corner| [corner[0], corner[1]])
}

/// Narrows the room beside a rectangle to a share of that up to another, on the side where they
/// stand furthest apart; one that reaches into it has no side.
fn narrow(room: &mut [f64; 4], own: &Rectangle, other: &Rectangle, share: f64) {
    let gaps = [
        own[0][0] - other[1][0],
        own[0][1] - other[1][1],
        other[0][0] - own[1][0],
        other[0][1] - own[1][1],
    ];
    let widest = (0..4).max_by(|a, b| gaps[*a].total_cmp(&gaps[*b]));
    if let Some(side) = widest.filter(|side| gaps[*side] > 0.0) {
        room[side] = room[side].min(gaps[side] * share);
    }
}

#[cfg(test)]
mod tests {
    use super::narrow;

    #[test]
    fn room_ends_at_the_side_that_stands_off() {
        let own = [[10.0, 10.0], [30.0, 20.0]];
        let mut room = [100.0; 4];
        // A runner behind it, five away, and as long as it.
        narrow(&mut room, &own, &[[0.0, 25.0], [60.0, 31.0]], 1.0);
        assert_eq!(room, [100.0, 100.0, 100.0, 5.0]);
        // Another casting to the left shares the room of eight.
        narrow(&mut room, &own, &[[-20.0, 10.0], [2.0, 20.0]], 0.5);
        assert_eq!(room, [4.0, 100.0, 100.0, 5.0]);
        // What lies over it has no side.
        narrow(&mut room, &own, &[[15.0, 12.0], [18.0, 40.0]], 1.0);
        assert_eq!(room, [4.0, 100.0, 100.0, 5.0]);
    }
}
