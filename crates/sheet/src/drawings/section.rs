//! The mould cut along the flask.

use super::dimensions::{along, upright};
use super::{
    Drawing, GAP_MM, HALF_FIGURE_MM, LEFT_MM, Labels, Look, OFF_MM, PAST_MM, Scale, WALL_MM, placed,
};
use crate::pen::{Anchor, MEDIUM, Pen, Spot};

/// The mould cut along the flask; `foot` is the lower edge of the drag on paper.
pub(super) fn section(pen: &mut Pen, drawing: &Drawing, labels: &Labels, scale: Scale, foot: f64) {
    let length = scale.on_paper(drawing.flask_inside_mm[0]);
    let start = LEFT_MM + length + 2.0 * WALL_MM + labels.between_mm() + WALL_MM;
    let joint = foot - scale.on_paper(drawing.drag_mm);
    let head = joint - scale.on_paper(drawing.cope_mm);
    let end = start + length;
    let on_paper =
        |[x, z]: [f64; 2]| -> Spot { [start + scale.on_paper(x), joint - scale.on_paper(z)] };
    pen.sand([start, head], [end, foot]);
    if let Some(joint) = &drawing.joint {
        let below = [
            [drawing.flask_inside_mm[0], -drawing.drag_mm],
            [0.0, -drawing.drag_mm],
        ];
        let drag = [joint.section.as_slice(), &below].concat();
        pen.hatched_sand(&placed(&[drag], on_paper));
    }
    for wall in [start - WALL_MM, end] {
        pen.hatched([wall, head], [wall + WALL_MM, joint]);
        pen.hatched([wall, joint], [wall + WALL_MM, foot]);
    }
    pen.line([start, head], [end, head], MEDIUM);
    pen.line([start, foot], [end, foot], MEDIUM);
    let level = [
        [start - WALL_MM - PAST_MM, joint],
        [end + WALL_MM + PAST_MM, joint],
    ];
    match &drawing.joint {
        None => pen.chain(&level),
        Some(wanders) => {
            let inner = wanders.section.iter().map(|&place| on_paper(place));
            pen.chain(&[&level[..1], &inner.collect::<Vec<Spot>>(), &level[1..]].concat());
        }
    }
    for piece in &drawing.pieces {
        pen.broken(&placed(&piece.beside, on_paper));
        if piece.look != Look::Core {
            pen.rigging(&placed(&piece.cut, on_paper));
        }
    }
    pen.metal(&placed(&drawing.section, on_paper));
    for piece in drawing
        .pieces
        .iter()
        .filter(|piece| piece.look == Look::Core)
    {
        pen.hatched_shape(&placed(&piece.cut, on_paper));
    }
    let top = joint - scale.on_paper(drawing.cope_mm.max(drawing.pour_height_mm));
    let title = [start - WALL_MM, top - 2.5];
    pen.word(title, Anchor::Start, &labels.section, true);
    let right = end + WALL_MM + OFF_MM;
    for (from, to, words) in [(head, joint, &labels.cope), (joint, foot, &labels.drag)] {
        upright(pen, [end + WALL_MM, right], [from, to]);
        let middle = f64::midpoint(from, to) + HALF_FIGURE_MM;
        pen.word([right + GAP_MM, middle], Anchor::Start, words, false);
    }
    if drawing.pour_height_mm > 0.0 {
        let above = joint - scale.on_paper(drawing.pour_height_mm);
        let left = start - WALL_MM - OFF_MM;
        upright(pen, [start - WALL_MM, left], [above, joint]);
        let middle = f64::midpoint(above, joint) + HALF_FIGURE_MM;
        pen.word([left - GAP_MM, middle], Anchor::End, &labels.pour, false);
    }
    along(pen, drawing, [start, end], foot);
}
