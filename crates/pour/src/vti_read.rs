//! A field of a freezing, read back from the file that [`crate::vti`] writes.

use thiserror::Error;

/// Values over a box of equal cubes, x quickest; not a number where there is none.
#[derive(Clone, Debug, PartialEq)]
pub struct Field {
    /// Cells along x, y, z.
    pub count: [usize; 3],
    /// Low corner of the first cell, mm.
    pub origin_mm: [f64; 3],
    /// Edge of a cell, mm.
    pub size_mm: f64,
    /// The values.
    pub values: Vec<f32>,
}

/// Why there is no field.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
#[error(
    "this is no whole file of fields as `oddside freeze` writes them: follow the freezing anew"
)]
pub struct NoField;

/// Most cells that are taken for true: the finest freezing has a hundredth of them.
const MOST_CELLS: usize = 1 << 30;

/// The field of a name, of 32-bit numbers, in the bytes of a file.
///
/// # Errors
///
/// A file that is not whole, or not one of ours.
pub fn read_field(bytes: &[u8], name: &str) -> Result<Field, NoField> {
    read(bytes, name).ok_or(NoField)
}

fn read(bytes: &[u8], name: &str) -> Option<Field> {
    let marks = b"<AppendedData encoding=\"raw\">\n_";
    let at = bytes.windows(marks.len()).position(|some| some == marks)?;
    let head = std::str::from_utf8(&bytes[..at]).ok()?;
    let body = &bytes[at + marks.len()..];
    let [_, nx, _, ny, _, nz] = numbers::<usize, 6>(said(head, "WholeExtent")?)?;
    let count = [nx, ny, nz];
    let cells = count
        .into_iter()
        .try_fold(1_usize, usize::checked_mul)
        .filter(|cells| (1..=MOST_CELLS).contains(cells))?;
    let origin_mm = numbers::<f64, 3>(said(head, "Origin")?)?;
    let [size_mm, ..] = numbers::<f64, 3>(said(head, "Spacing")?)?;
    let own = head
        .lines()
        .find(|line| said(line, "Name") == Some(name) && said(line, "type") == Some("Float32"))?;
    let from: usize = said(own, "offset")?.parse().ok()?;
    let length = body.get(from..from.checked_add(8)?)?;
    let length = u64::from_le_bytes(length.try_into().ok()?);
    if length != 4 * cells as u64 || !(size_mm.is_finite() && size_mm > 0.0) {
        return None;
    }
    let values = body.get(from + 8..from + 8 + 4 * cells)?;
    let values = values.chunks_exact(4);
    Some(Field {
        count,
        origin_mm,
        size_mm,
        values: values
            .map(|four| f32::from_le_bytes([four[0], four[1], four[2], four[3]]))
            .collect(),
    })
}

/// What stands between the quotes behind a name.
fn said<'a>(text: &'a str, name: &str) -> Option<&'a str> {
    let (_, behind) = text.split_once(&format!(" {name}=\""))?;
    behind.split_once('"').map(|(said, _)| said)
}

fn numbers<T: std::str::FromStr, const N: usize>(text: &str) -> Option<[T; N]> {
    let all: Vec<T> = text
        .split_whitespace()
        .map(|number| number.parse().ok())
        .collect::<Option<_>>()?;
    all.try_into().ok()
}
