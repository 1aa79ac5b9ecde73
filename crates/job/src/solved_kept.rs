//! What a freezing has told, kept in the job folder for the next plan.

use std::path::Path;

use measure::band::Band;
use measure::flow::Duration;
use serde::{Deserialize, Serialize};

use crate::folder::read_text;
use crate::freezing::{FREEZE_FOLDER, SECTION_FILE};
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
    cells: usize,
    castings_s: [f64; 3],
    leave_s: Option<f64>,
    open_s: Option<f64>,
    cut_off: usize,
    lacking_mm3: f64,
}

/// The bytes of the file for the times of a job with this fingerprint.
pub fn findings(times: &SolvedTimes, fingerprint: &str) -> Vec<u8> {
    let castings = &times.castings;
    let findings = Findings {
        fingerprint: fingerprint.to_owned(),
        cells: times.cells,
        castings_s: [castings.low(), castings.likely(), castings.high()].map(Duration::as_s),
        leave_s: times.leave.map(Duration::as_s),
        open_s: times.open.map(Duration::as_s),
        cut_off: times.cut_off,
        lacking_mm3: times.lacking_mm3,
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
