//! Dimension lines beside plan and section.

use super::{Drawing, GAP_MM, HALF_FIGURE_MM, OFF_MM, figure};
use crate::pen::{Anchor, Pen, THIN};

/// The length of the flask below plan or section.
pub(super) fn along(pen: &mut Pen, drawing: &Drawing, [start, end]: [f64; 2], foot: f64) {
    let line = foot + OFF_MM;
    for place in [start, end] {
        pen.line([place, foot + 0.8], [place, line + 0.8], THIN);
    }
    pen.dimension([start, line], [end, line]);
    let words = figure(drawing.flask_inside_mm[0]);
    let spot = [
        f64::midpoint(start, end),
        line + GAP_MM + 2.0 * HALF_FIGURE_MM,
    ];
    pen.word(spot, Anchor::Middle, &words, false);
}

/// An upright dimension line at `places[1]` with short lines from the wall at `places[0]`.
pub(super) fn upright(pen: &mut Pen, places: [f64; 2], heights: [f64; 2]) {
    let [wall, line] = places;
    let away = (line - wall).signum();
    for height in heights {
        pen.line(
            [wall + 0.8 * away, height],
            [line + 0.8 * away, height],
            THIN,
        );
    }
    pen.dimension([line, heights[0]], [line, heights[1]]);
}
