//! Plan and section of the mould in the flask's coordinates.

use measure::length::Length;

use crate::job::Job;
use crate::placed_part::PlacedPart;
use crate::plan::MouldDrawing;
use crate::work_out::rigging::Rigging;

pub(super) fn drawing(job: &Job, part: &PlacedPart, rigging: &Rigging) -> MouldDrawing {
    let (flask, layout) = (&rigging.chosen.flask, &rigging.chosen.layout);
    let corners = corners(job, rigging);
    let turned = layout.turned;
    let across = part.extents[1].as_mm();
    let put = |[x, y]: [f64; 2], [left, front]: [f64; 2]| match turned {
        false => [left + x, front + y],
        true => [left + across - y, front + x],
    };
    let outline = corners.iter().flat_map(|corner| {
        let moved = |outline: &Vec<[f64; 2]>| outline.iter().map(|p| put(*p, *corner)).collect();
        part.outlines.iter().map(moved)
    });
    let joint = part.joint.as_mm();
    let first_row = corners.iter().take(layout.rows[0].min(job.count));
    let cuts = if turned {
        &part.cut_across
    } else {
        &part.cut_along
    };
    let section = first_row.flat_map(|[left, _]| {
        let left = *left;
        let along = move |x: f64| if turned { left + across - x } else { left + x };
        let moved =
            move |cut: &Vec<[f64; 2]>| cut.iter().map(|[x, z]| [along(*x), z - joint]).collect();
        cuts.iter().map(moved)
    });
    MouldDrawing {
        flask_inside_mm: [flask.length.as_mm(), flask.width.as_mm()],
        cope_mm: flask.cope.as_mm(),
        drag_mm: flask.drag.as_mm(),
        outline: outline.collect(),
        section: section.collect(),
        pour_height_mm: rigging.pour_height.as_mm(),
        pieces: Vec::new(),
        joint: None,
    }
}

/// The front left corner of each pattern, the rows in the middle of the flask.
fn corners(job: &Job, rigging: &Rigging) -> Vec<[f64; 2]> {
    let (flask, layout) = (&rigging.chosen.flask, &rigging.chosen.layout);
    let start = |axis: usize, inside: Length| {
        let rows = layout.rows[axis] as f64;
        let taken = layout.each[axis] * rows + layout.between * (rows - 1.0);
        (inside - taken) * 0.5
    };
    let (left, front) = (start(0, flask.length), start(1, flask.width));
    let along = layout.rows[0].max(1);
    (0..job.count)
        .map(|place| {
            let step = |axis: usize, row: usize| (layout.each[axis] + layout.between) * row as f64;
            let (x, y) = (
                left + step(0, place % along),
                front + step(1, place / along),
            );
            [x.as_mm(), y.as_mm()]
        })
        .collect()
}
