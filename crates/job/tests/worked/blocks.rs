//! Solids standing on a plane, made of upright blocks on a grid, as OBJ text.

use std::fmt::Write;

/// Grid lines along x and y in mm, and the height of the block between lines i and i + 1, j and
/// j + 1; nought is an empty place.
pub struct Heights<'a> {
    pub x: Vec<f64>,
    pub y: Vec<f64>,
    pub height: &'a dyn Fn(usize, usize) -> f64,
}

/// The closed skin of the blocks, wound outward, four corners a face.
pub fn obj(heights: &Heights) -> String {
    let (columns, rows) = (heights.x.len() - 1, heights.y.len() - 1);
    let at = |i: i64, j: i64| {
        let inside = (0..columns as i64).contains(&i) && (0..rows as i64).contains(&j);
        if inside {
            (heights.height)(i as usize, j as usize)
        } else {
            0.0
        }
    };
    let (mut text, mut faces) = (String::new(), 0);
    let mut face = |corners: [[f64; 3]; 4]| {
        for [x, y, z] in corners {
            writeln!(text, "v {x} {y} {z}").unwrap();
        }
        let first = 4 * faces + 1;
        faces += 1;
        writeln!(
            text,
            "f {} {} {} {}",
            first,
            first + 1,
            first + 2,
            first + 3
        )
        .unwrap();
    };
    for (i, j) in (0..columns as i64).flat_map(|i| (0..rows as i64).map(move |j| (i, j))) {
        let top = at(i, j);
        if top == 0.0 {
            continue;
        }
        let (x0, x1) = (heights.x[i as usize], heights.x[i as usize + 1]);
        let (y0, y1) = (heights.y[j as usize], heights.y[j as usize + 1]);
        face([[x0, y0, top], [x1, y0, top], [x1, y1, top], [x0, y1, top]]);
        face([[x0, y1, 0.0], [x1, y1, 0.0], [x1, y0, 0.0], [x0, y0, 0.0]]);
        let sides = [
            (at(i, j - 1), [x0, y0], [x1, y0]),
            (at(i + 1, j), [x1, y0], [x1, y1]),
            (at(i, j + 1), [x1, y1], [x0, y1]),
            (at(i - 1, j), [x0, y1], [x0, y0]),
        ];
        for (beside, [ax, ay], [bx, by]) in sides {
            if beside < top {
                face([
                    [ax, ay, beside],
                    [bx, by, beside],
                    [bx, by, top],
                    [ax, ay, top],
                ]);
            }
        }
    }
    text
}
