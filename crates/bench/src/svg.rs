//! Pieces of the pictures that the bench draws: words and lines as SVG.

use std::fmt::Write as _;

/// The opening of a picture with what it shows in words, on white.
pub fn opening([wide, high]: [f64; 2], title: &str, caption: &str) -> String {
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{wide}\" height=\"{high}\" \
         viewBox=\"0 0 {wide} {high}\" font-family=\"sans-serif\" font-size=\"13\">\n\
         <title>{}</title><desc>{}</desc>\n\
         <rect width=\"{wide}\" height=\"{high}\" fill=\"#fff\"/>\n",
        escaped(title),
        escaped(caption)
    )
}

/// Words with a white rim, so that they are read on lines and hatching.
pub fn words(svg: &mut String, [x, y]: [f64; 2], anchor: &str, size: f64, text: &str) {
    // Writing into a string does not fail.
    let _ = writeln!(
        svg,
        "<text x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"{anchor}\" font-size=\"{size}\" \
         paint-order=\"stroke\" stroke=\"#fff\" stroke-width=\"3\" stroke-linejoin=\"round\">{}\
         </text>",
        escaped(text)
    );
}

/// A line through points; `dash` as SVG has it, empty for a whole one.
pub fn line(svg: &mut String, points: &[[f64; 2]], width: f64, dash: &str) {
    let points: Vec<String> = points
        .iter()
        .map(|[x, y]| format!("{x:.1},{y:.1}"))
        .collect();
    let _ = writeln!(
        svg,
        "<polyline points=\"{}\" fill=\"none\" stroke=\"#222\" stroke-width=\"{width}\" \
         stroke-dasharray=\"{dash}\"/>",
        points.join(" ")
    );
}

/// Text that cannot end what it stands in.
pub fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}
