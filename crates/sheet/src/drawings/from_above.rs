//! The mould from above.

use super::dimensions::{along, upright};
use super::{
    Drawing, GAP_MM, HALF_FIGURE_MM, LEFT_MM, LETTER_MM, Labels, Look, OFF_MM, Piece, Scale,
    WALL_MM, figure, placed,
};
use crate::pen::{Anchor, MEDIUM, Pen, Spot};

/// The mould from above; `foot` is the lower edge of the flask on paper.
pub(super) fn plan(pen: &mut Pen, drawing: &Drawing, labels: &Labels, scale: Scale, foot: f64) {
    let [length, width] = drawing.flask_inside_mm.map(|side| scale.on_paper(side));
    let near = [LEFT_MM + WALL_MM, foot - WALL_MM];
    let on_paper =
        |[x, y]: [f64; 2]| -> Spot { [near[0] + scale.on_paper(x), near[1] - scale.on_paper(y)] };
    let (inner_from, inner_to) = ([near[0], near[1] - width], [near[0] + length, near[1]]);
    pen.sand(inner_from, inner_to);
    let with = |look: Look| {
        drawing
            .pieces
            .iter()
            .filter(move |piece| piece.look == look)
    };
    for piece in with(Look::InTheJoint) {
        pen.rigging(&placed(&piece.plan, on_paper));
    }
    if let Some(joint) = &drawing.joint {
        pen.fine(&placed(&joint.contours, on_paper));
    }
    pen.metal(&placed(&drawing.outline, on_paper));
    for piece in with(Look::Above) {
        pen.outline(&placed(&piece.plan, on_paper));
    }
    for piece in with(Look::Core) {
        pen.broken(&placed(&piece.plan, on_paper));
    }
    for piece in &drawing.pieces {
        letter(pen, piece, &placed(&piece.plan, on_paper));
    }
    pen.rectangle(inner_from, inner_to, MEDIUM);
    pen.rectangle(
        inner_from.map(|place| place - WALL_MM),
        inner_to.map(|place| place + WALL_MM),
        MEDIUM,
    );
    let title = [LEFT_MM, inner_from[1] - WALL_MM - 2.5];
    pen.word(title, Anchor::Start, &labels.plan, true);
    let left = LEFT_MM - OFF_MM + 1.0;
    upright(pen, [near[0], left], [inner_from[1], near[1]]);
    let middle = f64::midpoint(inner_from[1], near[1]) + HALF_FIGURE_MM;
    let words = figure(drawing.flask_inside_mm[1]);
    pen.word([left - GAP_MM, middle], Anchor::End, &words, false);
    along(pen, drawing, [inner_from[0], inner_to[0]], foot);
}

/// Least width and height on paper of a piece that carries its letter, mm: that of the letter.
const LETTERED_MM: [f64; 2] = [LETTER_MM, 2.0 * HALF_FIGURE_MM];

/// The letter of a piece in its middle, where there is room for it.
fn letter(pen: &mut Pen, piece: &Piece, plan: &[Vec<Spot>]) {
    let ends = [[f64::INFINITY; 2], [f64::NEG_INFINITY; 2]];
    let [low, high] = plan.iter().flatten().fold(ends, |[low, high], spot| {
        [
            [low[0].min(spot[0]), low[1].min(spot[1])],
            [high[0].max(spot[0]), high[1].max(spot[1])],
        ]
    });
    let has_room = (0..2).all(|axis| high[axis] - low[axis] >= LETTERED_MM[axis]);
    if has_room && !piece.letter.is_empty() {
        let middle = f64::midpoint(low[1], high[1]) + HALF_FIGURE_MM;
        let spot = [f64::midpoint(low[0], high[0]), middle];
        pen.word(spot, Anchor::Middle, &piece.letter, false);
    }
}
