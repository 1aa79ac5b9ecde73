//! An address as squares for the camera of a phone, drawn with half blocks in a terminal.

use fast_qr::{ECL, QRBuilder};

/// Light squares around the code: four, as its standard (ISO/IEC 18004) asks for.
const AROUND: usize = 4;

/// The squares of a text, two rows a line; nothing where it is too long for any code. Light squares
/// are drawn and dark ones left, as for a terminal with light letters on dark; cameras read both.
pub fn in_half_blocks(text: &str) -> Option<String> {
    let code = QRBuilder::new(text).ecl(ECL::M).build().ok()?;
    let wide = code.size + 2 * AROUND;
    let is_light = |row: usize, column: usize| {
        let within = |at: usize| (AROUND..AROUND + code.size).contains(&at);
        !(within(row) && within(column) && code[row - AROUND][column - AROUND].value())
    };
    let mut drawn = String::new();
    for row in (0..wide).step_by(2) {
        for column in 0..wide {
            let below = row + 1 < wide && is_light(row + 1, column);
            drawn.push(match (is_light(row, column), below) {
                (true, true) => '█',
                (true, false) => '▀',
                (false, true) => '▄',
                (false, false) => ' ',
            });
        }
        drawn.push('\n');
    }
    Some(drawn)
}

#[cfg(test)]
mod tests {
    use super::in_half_blocks;

    /// The finder of a code is a dark square of seven within a light edge (ISO/IEC 18004, 6.3.3.1).
    #[test]
    fn its_corner_is_the_finder_of_the_standard() {
        let drawn = in_half_blocks("https://192.168.1.20:7351/").unwrap_or_default();
        let rows: Vec<Vec<char>> = drawn.lines().map(|line| line.chars().collect()).collect();
        let is_dark = |row: usize, column: usize| {
            let sign = rows[row / 2][column];
            match row % 2 {
                0 => matches!(sign, ' ' | '▄'),
                _ => matches!(sign, ' ' | '▀'),
            }
        };
        for row in 0..9 {
            for column in 0..9 {
                let ring = [row, column].map(|at: usize| at.abs_diff(4));
                let from_middle = ring[0].max(ring[1]);
                let wanted = matches!(from_middle, 0 | 1 | 3);
                assert_eq!(is_dark(row + 3, column + 3), wanted, "{row}, {column}");
            }
        }
        assert_eq!(in_half_blocks(&"x".repeat(9000)), None);
    }
}
