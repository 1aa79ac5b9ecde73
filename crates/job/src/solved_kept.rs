//! What a freezing has told, kept in the job folder for the next plan and the heap.

use std::path::Path;

use measure::band::Band;
use measure::flow::Duration;
use pour::hot_sand::HotSand;
use serde::{Deserialize, Serialize};

use crate::folder::{FolderError, read_text};
use crate::freezing::{FREEZE_FOLDER, JobFrozen, SECTION_FILE};
use crate::solved::{SolvedBy, SolvedTimes};

/// Name of the file in the folder of the freezing.
pub const FINDINGS_FILE: &str = "findings.json";

/// What was found in a job folder.
#[derive(Clone, Debug, PartialEq)]
pub enum Kept {
    /// Nothing, or nothing that can be read.
    None,
    /// The findings of another plan or mesh.
    Stale,
    /// The findings of this one, and the section as SVG where it is there.
    Fresh {
        /// Its times.
        times: SolvedTimes,
        /// The upright section through the place that freezes last.
        section: Option<String>,
    },
}

/// The file: times in seconds.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Findings {
    fingerprint: String,
    job: String,
    cells: usize,
    castings_s: [f64; 3],
    leave_s: Option<f64>,
    open_s: Option<f64>,
    cut_off: usize,
    lacking_mm3: f64,
    hot_sand: Option<HotSand>,
}

/// What the book of a heap takes from what was kept of a freezing.
#[derive(Clone, Debug, PartialEq)]
pub struct HeatOfPour {
    /// The job.
    pub job: String,
    /// Sand by how hot it got; none where nobody knows when the mould is opened.
    pub hot_sand: Option<HotSand>,
}

/// The bytes of the file for the freezing of a job with this name and this fingerprint.
pub fn findings(frozen: &JobFrozen, times: &SolvedTimes, job: &str, fingerprint: &str) -> Vec<u8> {
    let opening = frozen.opening.as_ref();
    let castings = &times.castings;
    let findings = Findings {
        fingerprint: fingerprint.to_owned(),
        job: job.to_owned(),
        cells: times.cells,
        castings_s: [castings.low(), castings.likely(), castings.high()].map(Duration::as_s),
        leave_s: times.leave.map(Duration::as_s),
        open_s: times.open.map(Duration::as_s),
        cut_off: times.cut_off,
        lacking_mm3: times.lacking_mm3,
        hot_sand: opening.map(|opening| opening.cooled.hot_sand.clone()),
    };
    let text = serde_json::to_string_pretty(&findings).unwrap_or_default() + "\n";
    text.into_bytes()
}

/// What was kept in a job folder, for a job with this fingerprint.
pub fn kept(folder: &Path, fingerprint: &str) -> Kept {
    let own = folder.join(FREEZE_FOLDER);
    let text = read_text(&own.join(FINDINGS_FILE), "").ok();
    let findings = text.and_then(|text| serde_json::from_str::<Findings>(&text).ok());
    let Some(findings) = findings else {
        return Kept::None;
    };
    let [low, likely, high] = findings.castings_s;
    let sound = findings
        .castings_s
        .iter()
        .all(|s| s.is_finite() && *s >= 0.0);
    if findings.fingerprint != fingerprint || !sound {
        return Kept::Stale;
    }
    Kept::Fresh {
        times: SolvedTimes {
            by: SolvedBy::Freezing,
            cells: findings.cells,
            castings: Band::new(low, likely, high).map(Duration::from_s),
            leave: findings.leave_s.map(Duration::from_s),
            open: findings.open_s.map(Duration::from_s),
            cut_off: findings.cut_off,
            lacking_mm3: findings.lacking_mm3,
        },
        section: read_text(&own.join(SECTION_FILE), "").ok(),
    }
}

/// The heat that was kept of a freezing: of a job folder, of the folder into which it was written,
/// or of the file itself.
///
/// # Errors
///
/// A file that is not there, and one that holds no findings.
pub fn heat_of_pour(path: &Path) -> Result<HeatOfPour, FolderError> {
    let within = path.join(FINDINGS_FILE);
    let file = match (path.is_dir(), within.is_file()) {
        (true, true) => within,
        (true, false) => path.join(FREEZE_FOLDER).join(FINDINGS_FILE),
        (false, _) => path.to_owned(),
    };
    let text = read_text(&file, "follow the freezing first: oddside freeze JOB")?;
    let findings: Findings = serde_json::from_str(&text)
        .map_err(|error| FolderError::NoFindings { path: file, error })?;
    Ok(HeatOfPour {
        job: findings.job,
        hot_sand: findings.hot_sand,
    })
}
