//! The drawing pen: lines, shapes, sand and figures as SVG, all lengths in mm on paper.

use std::fmt::Write;

/// A point on paper: mm to the right of and below the drawing's upper left corner.
pub(crate) type Spot = [f64; 2];

/// Widths of the pens, mm: thin for dimensions, medium for the flask, firm for metal.
pub(crate) const THIN: f64 = 0.25;
/// Pen for contour lines.
const HAIR: f64 = 0.15;
/// Pen for the flask and the joint.
pub(crate) const MEDIUM: f64 = 0.35;
/// Pen for the outline of metal.
pub(crate) const FIRM: f64 = 0.6;

/// Height of the figures: 10 pt in mm.
const FIGURES_MM: f64 = 3.528;
/// Distance between grains of drawn sand.
///
/// Closer than 1.5 mm a laser printer runs them into grey; wider than 3 mm they read as specks.
const GRAIN_SPACING_MM: f64 = 1.7;
/// Width of one grain.
const GRAIN_MM: f64 = 0.32;
/// Length and half width of an arrow head.
const ARROW_MM: [f64; 2] = [2.2, 0.45];

/// Where a word stands against its spot.
#[derive(Clone, Copy)]
pub(crate) enum Anchor {
    /// The word begins at the spot.
    Start,
    /// The word is centred on the spot.
    Middle,
    /// The word ends at the spot.
    End,
}

/// A sheet of SVG under way.
pub(crate) struct Pen {
    body: String,
    /// Fillings used so far, so that each has a name of its own.
    crossings: usize,
}

impl Pen {
    /// An empty drawing.
    pub(crate) fn new() -> Pen {
        Pen {
            body: String::new(),
            crossings: 0,
        }
    }

    /// The finished SVG of the given width and height.
    pub(crate) fn finish(self, [width, height]: [f64; 2]) -> String {
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width:.3}mm\" \
             height=\"{height:.3}mm\" viewBox=\"0 0 {width:.3} {height:.3}\" \
             fill=\"none\" stroke=\"#000\" stroke-linejoin=\"round\">{}</svg>",
            self.body
        )
    }

    /// A straight line.
    pub(crate) fn line(&mut self, from: Spot, to: Spot, width: f64) {
        let path = format!("M{}L{}", at(from), at(to));
        self.path(&path, &format!("stroke-width=\"{width}\""));
    }

    /// A chain line through spots: long, short, long.
    pub(crate) fn chain(&mut self, spots: &[Spot]) {
        let spots: Vec<String> = spots.iter().map(|&spot| at(spot)).collect();
        let path = format!("M{}", spots.join("L"));
        let style = format!("stroke-width=\"{MEDIUM}\" stroke-dasharray=\"6 1.2 1.2 1.2\"");
        self.path(&path, &style);
    }

    /// A rectangle's outline between two opposite corners.
    pub(crate) fn rectangle(&mut self, from: Spot, to: Spot, width: f64) {
        let path = rectangle(from, to);
        self.path(&path, &format!("stroke-width=\"{width}\""));
    }

    /// A rectangle filled with strokes at 45°, outlined.
    pub(crate) fn hatched(&mut self, from: Spot, to: Spot) {
        let [width, height] = [to[0] - from[0], to[1] - from[1]];
        let mut strokes = String::new();
        // Strokes start on the left edge and below it, so that each one crosses the rectangle.
        let mut start = GRAIN_SPACING_MM / 2.0;
        while start < height + width {
            let (enter, leave) = ((start - height).max(0.0), start.min(width));
            let _ = write!(
                strokes,
                "M{}L{}",
                at([from[0] + enter, from[1] + start - enter]),
                at([from[0] + leave, from[1] + start - leave])
            );
            start += GRAIN_SPACING_MM;
        }
        self.path(&strokes, &format!("stroke-width=\"{THIN}\""));
        self.rectangle(from, to, MEDIUM);
    }

    /// Sand: grains strewn evenly over a rectangle, up to its edges.
    pub(crate) fn sand(&mut self, from: Spot, to: Spot) {
        let count = |side: usize| ((to[side] - from[side]) / GRAIN_SPACING_MM).round() as u32;
        let (across, down) = (count(0), count(1));
        let step = |side: usize, cells: u32| (to[side] - from[side]) / f64::from(cells.max(1));
        let (wide, high) = (step(0, across), step(1, down));
        let mut grains = String::new();
        for row in 0..down {
            for column in 0..across {
                let [right, below] = strewn(column, row);
                let spot = [
                    from[0] + (f64::from(column) + right) * wide,
                    from[1] + (f64::from(row) + below) * high,
                ];
                let _ = write!(grains, "M{}h.01", at(spot));
            }
        }
        self.path(
            &grains,
            &format!("stroke-width=\"{GRAIN_MM}\" stroke-linecap=\"round\""),
        );
    }

    /// Metal: closed shapes left white inside a firm outline, even-odd.
    pub(crate) fn metal(&mut self, shapes: &[Vec<Spot>]) {
        let style = format!("fill=\"#fff\" fill-rule=\"evenodd\" stroke-width=\"{FIRM}\"");
        self.path(&closed(shapes), &style);
    }

    /// Rigging: closed shapes left white inside a lighter outline, even-odd.
    pub(crate) fn rigging(&mut self, shapes: &[Vec<Spot>]) {
        let style = format!("fill=\"#fff\" fill-rule=\"evenodd\" stroke-width=\"{MEDIUM}\"");
        self.path(&closed(shapes), &style);
    }

    /// Closed shapes as lines over what is there.
    pub(crate) fn outline(&mut self, shapes: &[Vec<Spot>]) {
        self.path(&closed(shapes), &format!("stroke-width=\"{MEDIUM}\""));
    }

    /// Closed shapes as thin lines over what is there: contour lines.
    pub(crate) fn fine(&mut self, shapes: &[Vec<Spot>]) {
        self.path(&closed(shapes), &format!("stroke-width=\"{HAIR}\""));
    }

    /// A line through spots.
    pub(crate) fn through(&mut self, spots: &[Spot], width: f64) {
        let spots: Vec<String> = spots.iter().map(|&spot| at(spot)).collect();
        let path = format!("M{}", spots.join("L"));
        self.path(&path, &format!("stroke-width=\"{width}\""));
    }

    /// Closed shapes as broken lines: what lies under or behind.
    pub(crate) fn broken(&mut self, shapes: &[Vec<Spot>]) {
        let style = format!("stroke-width=\"{THIN}\" stroke-dasharray=\"1.6 0.8\"");
        self.path(&closed(shapes), &style);
    }

    /// Closed shapes filled with crossed strokes, even-odd: core sand that is cut.
    pub(crate) fn hatched_shape(&mut self, shapes: &[Vec<Spot>]) {
        let step = GRAIN_SPACING_MM;
        let strokes = format!("M0 0L{step} {step}M0 {step}L{step} 0");
        self.filled_with(shapes, &strokes, &format!("stroke-width=\"{MEDIUM}\""));
    }

    /// Closed shapes filled with strokes one way: the sand of the drag where it is told apart.
    pub(crate) fn hatched_sand(&mut self, shapes: &[Vec<Spot>]) {
        let step = GRAIN_SPACING_MM;
        self.filled_with(shapes, &format!("M0 {step}L{step} 0"), "stroke=\"none\"");
    }

    fn filled_with(&mut self, shapes: &[Vec<Spot>], strokes: &str, outlined: &str) {
        let outline = closed(shapes);
        if outline.is_empty() {
            return;
        }
        self.crossings += 1;
        let id = format!("crossed-{}", self.crossings);
        let step = GRAIN_SPACING_MM;
        let _ = write!(
            self.body,
            "<pattern id=\"{id}\" width=\"{step}\" height=\"{step}\" \
             patternUnits=\"userSpaceOnUse\"><path d=\"{strokes}\" \
             stroke=\"#000\" stroke-width=\"{THIN}\"/></pattern>"
        );
        self.path(
            &outline,
            "fill=\"#fff\" fill-rule=\"evenodd\" stroke=\"none\"",
        );
        let style = format!("fill=\"url(#{id})\" fill-rule=\"evenodd\" {outlined}");
        self.path(&outline, &style);
    }

    /// A circle's outline.
    pub(crate) fn circle(&mut self, [x, y]: Spot, radius: f64) {
        let _ = write!(
            self.body,
            "<circle cx=\"{x:.3}\" cy=\"{y:.3}\" r=\"{radius:.3}\" stroke-width=\"{FIRM}\"/>"
        );
    }

    /// A dimension line with an arrow head at each end.
    pub(crate) fn dimension(&mut self, from: Spot, to: Spot) {
        self.line(from, to, THIN);
        self.arrow(from, to);
        self.arrow(to, from);
    }

    /// A word of 10 pt whose base line is at the spot.
    pub(crate) fn word(&mut self, spot: Spot, anchor: Anchor, words: &str, bold: bool) {
        let anchor = match anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        let weight = if bold { 700 } else { 400 };
        let _ = write!(
            self.body,
            "<text x=\"{:.3}\" y=\"{:.3}\" text-anchor=\"{anchor}\" font-weight=\"{weight}\" \
             font-family=\"IBM Plex Sans\" font-size=\"{FIGURES_MM}\" fill=\"#000\" \
             stroke=\"none\">{words}</text>",
            spot[0], spot[1]
        );
    }

    /// A slim filled arrow head at `tip`, pointing away from `tail`.
    fn arrow(&mut self, tip: Spot, tail: Spot) {
        let [length, half] = ARROW_MM;
        let away = [tail[0] - tip[0], tail[1] - tip[1]];
        let size = away[0].hypot(away[1]).max(f64::MIN_POSITIVE);
        let [along, across] = [away[0] / size, away[1] / size];
        let foot = [tip[0] + along * length, tip[1] + across * length];
        let left = [foot[0] - across * half, foot[1] + along * half];
        let right = [foot[0] + across * half, foot[1] - along * half];
        let path = format!("M{}L{}L{}Z", at(tip), at(left), at(right));
        self.path(&path, "fill=\"#000\" stroke=\"none\"");
    }

    fn path(&mut self, path: &str, style: &str) {
        if !path.is_empty() {
            let _ = write!(self.body, "<path d=\"{path}\" {style}/>");
        }
    }
}

/// A spot as SVG writes it.
fn at([right, below]: Spot) -> String {
    format!("{right:.2} {below:.2}")
}

/// The path of closed shapes.
fn closed(shapes: &[Vec<Spot>]) -> String {
    let filled = shapes.iter().filter(|shape| !shape.is_empty());
    filled.fold(String::new(), |mut path, shape| {
        let spots: Vec<String> = shape.iter().map(|&spot| at(spot)).collect();
        let _ = write!(path, "M{}Z", spots.join("L"));
        path
    })
}

/// The path of a rectangle.
fn rectangle(from: Spot, to: Spot) -> String {
    let corner = [to[0], from[1]];
    let opposite = [from[0], to[1]];
    format!("M{}L{}L{}L{}Z", at(from), at(corner), at(to), at(opposite))
}

/// Where in its cell a grain falls, each side 0.1 to 0.9: scattered to the eye, always the same.
fn strewn(column: u32, row: u32) -> [f64; 2] {
    // Odd multipliers and shifts spread neighbouring numbers over all 32 bits.
    let mut mixed = column.wrapping_mul(0x9E37_79B1) ^ row.wrapping_mul(0x85EB_CA77);
    mixed ^= mixed >> 15;
    mixed = mixed.wrapping_mul(0x2C1B_3C6D);
    mixed ^= mixed >> 12;
    let part = |bits: u32| 0.1 + 0.8 * f64::from(bits & 0xFFFF) / 65535.0;
    [part(mixed), part(mixed >> 16)]
}
