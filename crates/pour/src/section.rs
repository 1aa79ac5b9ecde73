//! A section through a frozen mould, drawn as at the bench: sand hatched, metal left white with
//! lines of equal freezing time and their minutes, what runs empty in black. Nothing in it hangs on
//! colour, and nothing but numbers is written in it.

use std::fmt::Write;

use pattern::slice::outlines;
use rigging::mould::Mould;

use crate::cells::Stuff;
use crate::contour::{Line, contours};
use crate::pipe::Shrinkage;
use crate::solved::Solved;

/// Where a section is laid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut {
    /// Across which axis: 1 looks along y at an upright section, 2 down at a level one.
    pub axis: usize,
    /// Where along it, mm.
    pub at_mm: f64,
}

/// Lines of equal time wanted in a section: with more of them the numbers run into each other.
const LINES: f64 = 15.0;

/// Around the drawing, mm.
const RIM_MM: f64 = 6.0;

/// Draws a section as an SVG in millimetres of the mould.
pub fn section(mould: &Mould, solved: &Solved, shrinkage: &Shrinkage, cut: Cut) -> String {
    let [low, high] = solved.meshed.flask_mm;
    let [u, v] = axes(cut);
    let (width, height) = (high[u] - low[u], high[v] - low[v]);
    // A hair aside, so that the cut does not run along facets drawn on round numbers.
    let at_mm = cut.at_mm + 1.7e-5 * (high[cut.axis] - low[cut.axis]);
    let page = Page {
        u: low[u],
        top: high[v],
    };
    let metal = page.path(&flat(outlines(&mould.cavity.mesh, cut.axis, at_mm), cut));
    let cores: String = mould
        .cores
        .iter()
        .map(|core| page.path(&flat(outlines(&core.mesh, cut.axis, at_mm), cut)))
        .collect();
    let castings: String = mould
        .castings
        .iter()
        .map(|casting| page.path(&flat(outlines(&casting.mesh, cut.axis, at_mm), cut)))
        .collect();
    let small = (width.max(height) / 75.0).clamp(1.8, 8.0);
    let mut svg = String::new();
    let [full_width, full_height] = [width + 2.0 * RIM_MM, height + 4.0 * RIM_MM];
    let _ = write!(
        svg,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{full_width:.1}mm\" \
         height=\"{full_height:.1}mm\" viewBox=\"{:.1} {:.1} {full_width:.1} {full_height:.1}\" \
         font-family=\"sans-serif\" font-size=\"{small:.2}\">\n{}",
        -RIM_MM,
        -RIM_MM,
        defs(&metal)
    );
    let _ = write!(
        svg,
        "<rect x=\"{:.1}\" y=\"{:.1}\" width=\"{full_width:.1}\" height=\"{full_height:.1}\" \
         fill=\"white\"/>\n\
         <rect width=\"{width:.2}\" height=\"{height:.2}\" fill=\"url(#sand)\" stroke=\"black\" \
         stroke-width=\"0.5\"/>\n\
         <path d=\"{metal}\" fill=\"white\" fill-rule=\"evenodd\"/>\n\
         <path d=\"{cores}\" fill=\"url(#core)\" stroke=\"black\" stroke-width=\"0.25\"/>\n",
        -RIM_MM, -RIM_MM
    );
    svg.push_str(&page.chills(solved, cut));
    svg.push_str(&page.empty(solved, shrinkage, cut));
    svg.push_str(&page.times(solved, cut, small));
    let _ = write!(
        svg,
        "<path d=\"{metal}\" fill=\"none\" stroke=\"black\" stroke-width=\"0.35\"/>\n\
         <path d=\"{castings}\" fill=\"none\" stroke=\"black\" stroke-width=\"0.7\"/>\n"
    );
    svg.push_str(&scale(width, height, small));
    svg.push_str("</svg>\n");
    svg
}

/// The two axes of the page, rightward and upward.
fn axes(cut: Cut) -> [usize; 2] {
    match cut.axis {
        0 => [1, 2],
        1 => [0, 2],
        _ => [0, 1],
    }
}

/// Outlines with the coordinates of the page: a cut across y comes as z and x.
fn flat(outlines: Vec<Line>, cut: Cut) -> Vec<Line> {
    match cut.axis {
        1 => outlines
            .into_iter()
            .map(|line| line.into_iter().map(|[z, x]| [x, z]).collect())
            .collect(),
        _ => outlines,
    }
}

/// Sand and cores as a drawing has them, and the metal as what times are held to.
fn defs(metal: &str) -> String {
    format!(
        "<defs>\
         <pattern id=\"sand\" width=\"3\" height=\"3\" patternUnits=\"userSpaceOnUse\" \
         patternTransform=\"rotate(45)\"><path d=\"M0 0V3\" stroke=\"black\" \
         stroke-width=\"0.18\"/></pattern>\
         <pattern id=\"core\" width=\"2\" height=\"2\" patternUnits=\"userSpaceOnUse\">\
         <rect width=\"2\" height=\"2\" fill=\"white\"/>\
         <circle cx=\"1\" cy=\"1\" r=\"0.28\"/></pattern>\
         <clipPath id=\"metal\"><path d=\"{metal}\" clip-rule=\"evenodd\"/></clipPath>\
         </defs>\n"
    )
}

/// The page: rightward from the left wall, downward from the top.
struct Page {
    u: f64,
    top: f64,
}

impl Page {
    fn at(&self, [u, v]: [f64; 2]) -> [f64; 2] {
        [u - self.u, self.top - v]
    }

    fn path(&self, lines: &[Line]) -> String {
        let mut path = String::new();
        for line in lines {
            for (number, &point) in line.iter().enumerate() {
                let [x, y] = self.at(point);
                let letter = if number == 0 { 'M' } else { 'L' };
                let _ = write!(path, "{letter}{x:.2} {y:.2}");
            }
            path.push('Z');
        }
        path
    }

    /// Chills, as grey fields.
    fn chills(&self, solved: &Solved, cut: Cut) -> String {
        let sheet = Sheet::of(solved, cut);
        let cells = &solved.meshed.cells;
        let size = cells.size_mm;
        let mut path = String::new();
        for y in 0..sheet.count[1] {
            for x in 0..sheet.count[0] {
                if matches!(cells.stuff[sheet.cell(x, y)], Stuff::Chill(_)) {
                    let [left, top] = self.at(sheet.middle([x as f64 - 0.5, y as f64 + 0.5]));
                    let _ = write!(path, "M{left:.2} {top:.2}h{size:.2}v{size:.2}h-{size:.2}Z");
                }
            }
        }
        match path.is_empty() {
            true => path,
            false => format!("<path d=\"{path}\" fill=\"#999\"/>\n"),
        }
    }

    /// What is empty in the end, as one black field a row of cells.
    fn empty(&self, solved: &Solved, shrinkage: &Shrinkage, cut: Cut) -> String {
        let sheet = Sheet::of(solved, cut);
        let size = solved.meshed.cells.size_mm;
        let mut path = String::new();
        for y in 0..sheet.count[1] {
            for x in 0..sheet.count[0] {
                let share = f64::from(shrinkage.empty[sheet.cell(x, y)]);
                if share > 0.05 {
                    let [left, top] = self.at(sheet.middle([x as f64 - 0.5, y as f64 + 0.5]));
                    // As much of the cell as is empty, from its top.
                    let high = size * share.min(1.0);
                    let _ = write!(path, "M{left:.2} {top:.2}h{size:.2}v{high:.2}h-{size:.2}Z");
                }
            }
        }
        format!("<g clip-path=\"url(#metal)\"><path d=\"{path}\" fill=\"black\"/></g>\n")
    }

    /// Lines of equal time with their minutes.
    fn times(&self, solved: &Solved, cut: Cut, small: f64) -> String {
        let sheet = Sheet::of(solved, cut);
        let values = sheet.times(solved);
        let known = || values.iter().copied().filter(|value| value.is_finite());
        let (Some(least), Some(most)) = (known().reduce(f64::min), known().reduce(f64::max)) else {
            return String::new();
        };
        let (mut paths, mut numbers) = (String::new(), String::new());
        let step_s = step_s(most - least);
        let mut level = (least / step_s).ceil() * step_s;
        let mut taken: Vec<[f64; 2]> = Vec::new();
        while level < most {
            for line in contours(&values, sheet.count, level) {
                let line: Line = line.iter().map(|&at| self.at(sheet.middle(at))).collect();
                let long: f64 = line.windows(2).map(|pair| apart(pair[0], pair[1])).sum();
                if long < small {
                    continue;
                }
                for (number, [x, y]) in line.iter().enumerate() {
                    let letter = if number == 0 { 'M' } else { 'L' };
                    let _ = write!(paths, "{letter}{x:.2} {y:.2}");
                }
                let place = line[line.len() / 2];
                let room = 3.0 * small;
                if long > 2.0 * room && taken.iter().all(|other| apart(*other, place) > room) {
                    let [x, y] = place;
                    let _ = writeln!(
                        numbers,
                        "<text x=\"{x:.2}\" y=\"{:.2}\" text-anchor=\"middle\" stroke=\"white\" \
                         stroke-width=\"{:.2}\" paint-order=\"stroke\">{}</text>",
                        y + 0.35 * small,
                        0.35 * small,
                        minutes(level, step_s)
                    );
                    taken.push(place);
                }
            }
            level += step_s;
        }
        format!(
            "<g clip-path=\"url(#metal)\"><path d=\"{paths}\" fill=\"none\" stroke=\"black\" \
             stroke-width=\"0.2\"/></g>\n{numbers}"
        )
    }
}

fn apart([x, y]: [f64; 2], [u, v]: [f64; 2]) -> f64 {
    (x - u).hypot(y - v)
}

/// A step of time that gives about so many lines and reads well in minutes.
fn step_s(range_s: f64) -> f64 {
    let steps = [
        0.6, 1.5, 3.0, 6.0, 15.0, 30.0, 60.0, 120.0, 300.0, 600.0, 1200.0, 3000.0,
    ];
    let wide = steps.into_iter().find(|step| range_s / step <= LINES);
    wide.unwrap_or(6000.0)
}

fn minutes(level_s: f64, step_s: f64) -> String {
    let minutes = level_s / 60.0;
    match step_s {
        step if step >= 60.0 => format!("{minutes:.0}"),
        step if step >= 6.0 && step != 15.0 => format!("{minutes:.1}"),
        _ => format!("{minutes:.2}"),
    }
}

/// The cells along a section.
struct Sheet<'a> {
    solved: &'a Solved,
    cut: Cut,
    layer: usize,
    count: [usize; 2],
}

impl<'a> Sheet<'a> {
    fn of(solved: &'a Solved, cut: Cut) -> Sheet<'a> {
        let cells = &solved.meshed.cells;
        let along = (cut.at_mm - cells.origin_mm[cut.axis]) / cells.size_mm;
        let last = cells.count[cut.axis].saturating_sub(1);
        let [u, v] = axes(cut);
        Sheet {
            solved,
            cut,
            layer: (along.max(0.0) as usize).min(last),
            count: [cells.count[u], cells.count[v]],
        }
    }

    fn cell(&self, x: usize, y: usize) -> usize {
        let [u, v] = axes(self.cut);
        let mut at = [0; 3];
        at[self.cut.axis] = self.layer;
        at[u] = x;
        at[v] = y;
        self.solved.meshed.cells.index(at)
    }

    /// Where a place among the middles of the cells lies, mm.
    fn middle(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        let cells = &self.solved.meshed.cells;
        let [u, v] = axes(self.cut);
        [(x, u), (y, v)].map(|(at, axis)| cells.origin_mm[axis] + (at + 0.5) * cells.size_mm)
    }

    /// Freezing times, drawn on by a cell beyond the metal so that lines reach its skin.
    fn times(&self, solved: &Solved) -> Vec<f64> {
        let [nx, ny] = self.count;
        let places = (0..ny).flat_map(|y| (0..nx).map(move |x| (x, y)));
        let metal: Vec<f64> = places
            .clone()
            .map(|(x, y)| f64::from(solved.ends_s[self.cell(x, y)]))
            .collect();
        places
            .map(|(x, y)| {
                let own = metal[x + nx * y];
                if own.is_finite() {
                    return own;
                }
                let around = |dx: usize, dy: usize| {
                    let (x, y) = ((x + dx).checked_sub(1)?, (y + dy).checked_sub(1)?);
                    let value = (x < nx && y < ny).then(|| metal[x + nx * y])?;
                    value.is_finite().then_some(value)
                };
                let near: Vec<f64> = (0..9).filter_map(|at| around(at % 3, at / 3)).collect();
                near.iter().sum::<f64>() / near.len() as f64
            })
            .collect()
    }
}

/// A bar of a round length under the drawing, and a line as those in it with the unit of its
/// number.
fn scale(width: f64, height: f64, small: f64) -> String {
    let lengths = [200.0, 100.0, 50.0, 20.0, 10.0];
    let long = lengths
        .into_iter()
        .find(|long| *long <= width / 2.0)
        .unwrap_or(5.0);
    let y = height + 1.2 * RIM_MM;
    format!(
        "<path d=\"M0 {:.2}v2M0 {y:.2}h{long}m0 -1v2\" stroke=\"black\" stroke-width=\"0.4\" \
         fill=\"none\"/><text x=\"{:.1}\" y=\"{:.2}\">{long:.0} mm</text>\n\
         <path d=\"M{:.1} {y:.2}h{:.1}\" stroke=\"black\" stroke-width=\"0.2\" fill=\"none\"/>\
         <text x=\"{:.1}\" y=\"{:.2}\">min</text>\n",
        y - 1.0,
        long + 2.0,
        y + 0.4 * small,
        width - 8.0 * small,
        4.0 * small,
        width - 3.5 * small,
        y + 0.4 * small
    )
}
