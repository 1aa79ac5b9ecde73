//! The picture itself: bands, lines with numbers, hatching, crosses where batches were made.

use std::fmt::Write as _;

use measure::text::rounded;

use crate::experiment::picture::contour::{Corner, band, joined, levels, line};
use crate::experiment::picture::view::{Net, View, held};
use crate::experiment::reading::Fitted;
use crate::experiment::space::Space;
use crate::svg::{escaped, words};

/// Words around a picture, and where batches were made.
pub(super) struct Drawing {
    /// What is drawn.
    pub(super) title: String,
    /// How it is read.
    pub(super) caption: String,
    /// What is held still.
    pub(super) held: Option<String>,
    /// Points of batches.
    pub(super) made: Vec<Vec<f64>>,
}

/// The shares at a part of the way along a side.
type Along = fn(f64) -> [f64; 3];

/// Length of a side of the plot, and its distance from the left and upper edge, in px.
const SIDE: f64 = 440.0;
const LEFT: f64 = 110.0;
const TOP: f64 = 60.0;
/// The whole picture.
const WIDTH: f64 = 660.0;
const HEIGHT: f64 = 620.0;

/// The hue from its lightest to its darkest: far enough apart for eight bands, light enough for
/// black figures.
const LIGHT: [f64; 3] = [240.0, 246.0, 251.0];
const DARK: [f64; 3] = [66.0, 133.0, 190.0];

/// Draws a picture.
pub(super) fn drawn(
    space: &Space,
    fitted: &Fitted,
    view: &View,
    net: &Net,
    drawing: &Drawing,
) -> String {
    let mut svg = head(drawing);
    let known = || {
        net.places
            .iter()
            .filter(|one| !one.unknown)
            .map(|one| one.height)
    };
    let least = known().fold(f64::INFINITY, f64::min);
    let most = known().fold(f64::NEG_INFINITY, f64::max);
    let levels = levels(least, most);
    bands(&mut svg, net, &levels, [least, most]);
    unknown(&mut svg, net);
    lines(&mut svg, net, &levels);
    match view {
        View::Square(two) => square_frame(&mut svg, space, *two),
        View::Triangle(three) => triangle_frame(&mut svg, space, *three),
    }
    for point in &drawing.made {
        cross(&mut svg, on_view(view, point));
    }
    if fitted.best.is_some() {
        ring(
            &mut svg,
            on_view(view, &held(space, fitted)),
            fitted.unnamed.is_none(),
        );
    }
    svg + "</svg>\n"
}

fn head(drawing: &Drawing) -> String {
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{WIDTH}\" height=\"{HEIGHT}\" \
         viewBox=\"0 0 {WIDTH} {HEIGHT}\" font-family=\"sans-serif\" font-size=\"14\">\n\
         <title>{}</title><desc>{}</desc>\n\
         <defs><pattern id=\"unknown\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\" \
         patternTransform=\"rotate(45)\"><rect width=\"7\" height=\"7\" fill=\"#e4e4e4\"/>\
         <line x1=\"0\" y1=\"0\" x2=\"0\" y2=\"7\" stroke=\"#8a8a8a\" stroke-width=\"1.6\"/>\
         </pattern></defs>\n<rect width=\"{WIDTH}\" height=\"{HEIGHT}\" fill=\"#fff\"/>\n",
        escaped(&drawing.title),
        escaped(&drawing.caption)
    );
    words(&mut svg, [LEFT, 26.0], "start", 18.0, &drawing.title);
    words(
        &mut svg,
        [20.0, HEIGHT - 14.0],
        "start",
        12.0,
        &drawing.caption,
    );
    if let Some(held) = &drawing.held {
        words(&mut svg, [20.0, HEIGHT - 32.0], "start", 12.0, held);
    }
    svg
}

fn bands(svg: &mut String, net: &Net, levels: &[f64], [least, most]: [f64; 2]) {
    let mut edges = vec![least - 1.0];
    edges.extend(levels);
    edges.push(most + 1.0);
    let count = edges.len() - 1;
    for (at, two) in edges.windows(2).enumerate() {
        let mut path = String::new();
        for corners in known(net) {
            polygon(&mut path, &band(&corners, two[0], two[1]));
        }
        let part = at as f64 / (count.max(2) - 1) as f64;
        let colour: Vec<String> = LIGHT
            .iter()
            .zip(DARK)
            .map(|(light, dark)| format!("{:.0}", light + part * (dark - light)))
            .collect();
        let colour = colour.join(",");
        // Writing into a text does not fail, here and below.
        let _ = writeln!(
            svg,
            "<path d=\"{path}\" fill=\"rgb({colour})\" stroke=\"rgb({colour})\" \
             stroke-width=\"0.4\"/>"
        );
    }
}

fn unknown(svg: &mut String, net: &Net) {
    let mut path = String::new();
    for corners in net.triangles.iter().filter(|one| is_unknown(net, one)) {
        let spots = corners.map(|at| [net.places[at].across, net.places[at].up]);
        polygon(&mut path, &spots);
    }
    let _ = writeln!(svg, "<path d=\"{path}\" fill=\"url(#unknown)\"/>");
}

fn lines(svg: &mut String, net: &Net, levels: &[f64]) {
    for level in levels {
        let pieces = known(net).filter_map(|corners| line(&corners, *level));
        let lines = joined(pieces.collect());
        let mut path = String::new();
        for one in &lines {
            for (at, spot) in one.iter().enumerate() {
                let [x, y] = placed(*spot);
                let _ = write!(path, "{}{x:.1} {y:.1}", if at == 0 { "M" } else { "L" });
            }
        }
        let _ = writeln!(
            svg,
            "<path d=\"{path}\" fill=\"none\" stroke=\"#123\" stroke-width=\"1.1\"/>"
        );
        let longest = lines.iter().max_by_key(|one| one.len());
        if let Some(one) = longest.filter(|one| one.len() > 4) {
            let [x, y] = placed(one[one.len() / 2]);
            words(svg, [x, y + 5.0], "middle", 13.0, &rounded(*level, 4));
        }
    }
}

fn square_frame(svg: &mut String, space: &Space, two: [usize; 2]) {
    let _ = writeln!(
        svg,
        "<rect x=\"{LEFT}\" y=\"{TOP}\" width=\"{SIDE}\" height=\"{SIDE}\" fill=\"none\" \
         stroke=\"#000\"/>"
    );
    for (at, variable) in two.into_iter().enumerate() {
        let axis = &space.axes[variable - space.shares()];
        for tick in 0..=4 {
            let part = f64::from(tick) / 4.0;
            let value = rounded(axis.in_unit(2.0 * part - 1.0), 3);
            let [x, y] = placed(if at == 0 { [part, 0.0] } else { [0.0, part] });
            match at {
                0 => words(svg, [x, y + 20.0], "middle", 13.0, &value),
                _ => words(svg, [x - 8.0, y + 5.0], "end", 13.0, &value),
            }
        }
        let name = match axis.unit.as_str() {
            "" => axis.name.clone(),
            unit => format!("{}, {unit}", axis.name),
        };
        match at {
            0 => words(
                svg,
                [LEFT + SIDE / 2.0, TOP + SIDE + 44.0],
                "middle",
                15.0,
                &name,
            ),
            _ => words(svg, [LEFT, TOP - 10.0], "middle", 15.0, &name),
        }
    }
}

fn triangle_frame(svg: &mut String, space: &Space, three: [usize; 3]) {
    let Some(own) = &space.mixture else {
        return;
    };
    let [top, left, right] = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]].map(in_triangle);
    let corners = [top, left, right].map(placed);
    let spots = corners.map(|[x, y]| format!("{x:.1},{y:.1}")).join(" ");
    let _ = writeln!(
        svg,
        "<polygon points=\"{spots}\" fill=\"none\" stroke=\"#000\"/>"
    );
    // Each component is marked along the side on which it grows towards its corner.
    let sides: [(Along, [f64; 2], &str); 3] = [
        (|part: f64| [part, 1.0 - part, 0.0], [-8.0, 4.0], "end"),
        (|part: f64| [0.0, part, 1.0 - part], [0.0, 20.0], "middle"),
        (|part: f64| [1.0 - part, 0.0, part], [8.0, 4.0], "start"),
    ];
    for ((variable, at_corner), (along, [dx, dy], anchor)) in
        three.into_iter().zip(corners).zip(sides)
    {
        let lows: f64 = own.plain.components.iter().map(|one| one.low).sum();
        let percent = |part: f64| {
            let share = own.plain.components[variable].low + part * (1.0 - lows);
            format!("{} %", rounded(share * own.together, 3))
        };
        for tick in 1..4 {
            let part = f64::from(tick) / 4.0;
            let [x, y] = placed(in_triangle(along(part)));
            words(svg, [x + dx, y + dy], anchor, 12.0, &percent(part));
        }
        let below = if at_corner[1] > TOP + SIDE / 2.0 {
            24.0
        } else {
            -10.0
        };
        let name = format!("{} {}", own.plain.components[variable].name, percent(1.0));
        words(
            svg,
            [at_corner[0], at_corner[1] + below],
            "middle",
            15.0,
            &name,
        );
    }
}

fn known(net: &Net) -> impl Iterator<Item = [Corner; 3]> {
    let known = net.triangles.iter().filter(|one| !is_unknown(net, one));
    known.map(|one| {
        one.map(|at| {
            let place = &net.places[at];
            [place.across, place.up, place.height]
        })
    })
}

fn is_unknown(net: &Net, triangle: &[usize; 3]) -> bool {
    triangle.iter().any(|at| net.places[*at].unknown)
}

/// Across and up of a point on a view.
fn on_view(view: &View, point: &[f64]) -> [f64; 2] {
    match view {
        View::Square(two) => two.map(|at| (point[at] + 1.0) / 2.0),
        View::Triangle(three) => {
            let own = three.map(|at| point[at]);
            let sum: f64 = own.iter().sum();
            in_triangle(own.map(|one| one / sum))
        }
    }
}

fn in_triangle([top, _, right]: [f64; 3]) -> [f64; 2] {
    [right + top / 2.0, top * 3.0_f64.sqrt() / 2.0]
}

/// Where a spot of the plot lies in the picture.
fn placed([across, up]: [f64; 2]) -> [f64; 2] {
    [LEFT + across * SIDE, TOP + (1.0 - up) * SIDE]
}

fn polygon(path: &mut String, spots: &[[f64; 2]]) {
    for (at, spot) in spots.iter().enumerate() {
        let [x, y] = placed(*spot);
        let _ = write!(path, "{}{x:.1} {y:.1}", if at == 0 { "M" } else { "L" });
    }
    if !spots.is_empty() {
        path.push('Z');
    }
}

fn cross(svg: &mut String, spot: [f64; 2]) {
    let [x, y] = placed(spot);
    for (colour, width) in [("#fff", 4.0), ("#000", 1.6)] {
        let _ = writeln!(
            svg,
            "<path d=\"M{:.1} {:.1}l8 8m0 -8l-8 8\" stroke=\"{colour}\" stroke-width=\"{width}\"/>",
            x - 4.0,
            y - 4.0
        );
    }
}

/// A ring round the best mix, broken where it is not shown to be the best.
fn ring(svg: &mut String, spot: [f64; 2], is_shown: bool) {
    let [x, y] = placed(spot);
    let broken = if is_shown {
        ""
    } else {
        " stroke-dasharray=\"4 3\""
    };
    for (colour, width, dashes) in [("#fff", 5.0, ""), ("#000", 2.0, broken)] {
        let _ = writeln!(
            svg,
            "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"10\" fill=\"none\" stroke=\"{colour}\" \
             stroke-width=\"{width}\"{dashes}/>"
        );
    }
}
