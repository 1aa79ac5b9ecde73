//! The freezing that was kept in a job folder, as a map for the eye: when each place is solid.

use std::path::Path;

use pour::vti_read::{Field, NoField, read_field};
use thiserror::Error;

use crate::folder::{FolderError, read_bytes};
use crate::freezing::{FIELDS_FILE, FREEZE_FOLDER};
use crate::freezing_told::time;
use crate::map_scale::{MapScale, Mark};
use crate::words::said::Said;

/// Times over the metal of a mould.
#[derive(Clone, Debug)]
pub struct FreezingMap {
    /// When each cell was solid, in the unit of the scale; mm of the mould.
    pub field: Field,
    /// How it is drawn.
    pub scale: MapScale,
    /// Where the last metal froze.
    pub last: Option<Mark>,
    /// What it shows, in a sentence.
    pub tells: Said,
}

/// Why there is no such map.
#[derive(Debug, Error)]
pub enum NoFreezingMap {
    /// The file.
    #[error(transparent)]
    Folder(#[from] FolderError),
    /// What is in it.
    #[error(transparent)]
    Field(#[from] NoField),
}

/// Largest file of fields, bytes: the finest freezing writes a tenth of it.
const MOST_BYTES: u64 = 1 << 30;

/// A freezing of less is told in seconds: two minutes have too few lines in minutes.
const IN_MINUTES_S: f64 = 120.0;

/// The map of the freezing in a job folder, whether or not it is that of the job as it is now.
///
/// # Errors
///
/// A freezing that was never followed, or whose file is not whole.
pub fn freezing_map(job: &Path) -> Result<FreezingMap, NoFreezingMap> {
    let file = job.join(FREEZE_FOLDER).join(FIELDS_FILE);
    let bytes = read_bytes(&file, MOST_BYTES, "follow the freezing first")?;
    let mut field = around_metal(&read_field(&bytes, "solid_s")?).ok_or(NoField)?;
    let at = last(&field);
    let last_s = at.map_or(0.0, |cell| f64::from(field.values[cell]));
    let (seconds, unit) = match last_s >= IN_MINUTES_S {
        true => (60.0, "min"),
        false => (1.0, "s"),
    };
    for value in &mut field.values {
        *value /= seconds as f32;
    }
    Ok(FreezingMap {
        last: at.map(|cell| Mark {
            at_mm: middle_mm(&field, cell),
            value: last_s / seconds,
        }),
        scale: MapScale::from_nought(last_s / seconds, unit),
        tells: Said::new("map-freezing-tells").with("last", time(last_s)),
        field,
    })
}

/// The part of a field that has values, so that no more is sent than is seen.
fn around_metal(field: &Field) -> Option<Field> {
    let (mut low, mut high) = ([usize::MAX; 3], [0; 3]);
    for (cell, value) in field.values.iter().enumerate() {
        if value.is_finite() {
            let at = place(field, cell);
            low = [0, 1, 2].map(|axis| low[axis].min(at[axis]));
            high = [0, 1, 2].map(|axis| high[axis].max(at[axis]));
        }
    }
    if low[0] > high[0] {
        return None;
    }
    let [nx, ny, _] = field.count;
    let mut values = Vec::new();
    for k in low[2]..=high[2] {
        for j in low[1]..=high[1] {
            let row = nx * (j + ny * k);
            let cells = field.values[row + low[0]..=row + high[0]].iter();
            values.extend(cells.map(|value| if value.is_finite() { *value } else { f32::NAN }));
        }
    }
    Some(Field {
        count: [0, 1, 2].map(|axis| high[axis] - low[axis] + 1),
        origin_mm: [0, 1, 2].map(|axis| field.origin_mm[axis] + low[axis] as f64 * field.size_mm),
        size_mm: field.size_mm,
        values,
    })
}

fn last(field: &Field) -> Option<usize> {
    let cells = (0..field.values.len()).filter(|&cell| field.values[cell].is_finite());
    cells.max_by(|&one, &other| field.values[one].total_cmp(&field.values[other]))
}

fn place(field: &Field, cell: usize) -> [usize; 3] {
    let [nx, ny, _] = field.count;
    [cell % nx, cell / nx % ny, cell / (nx * ny)]
}

fn middle_mm(field: &Field, cell: usize) -> [f64; 3] {
    let at = place(field, cell);
    [0, 1, 2].map(|axis| field.origin_mm[axis] + (at[axis] as f64 + 0.5) * field.size_mm)
}
