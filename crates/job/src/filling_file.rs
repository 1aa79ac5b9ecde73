//! The filling of a mould as one object, as `--json` prints it.

use rigging::piece::Piece;
use serde::Serialize;

use crate::filling::{Filling, JobFilled};
use crate::filling_told::{least_wall_mm, meetings_of, misruns_of};
use crate::freezing_file::BandFile;

/// A filling; times in seconds from the first metal in the sprue, places in mm of the mould.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FillingFile {
    /// Whether the freezing starts from it: not where most of the metal lands too fast.
    pub trusted: bool,
    /// When the gates begin to run.
    pub gates_run_s: BandFile,
    /// When the mould is full.
    pub full_s: BandFile,
    /// Each gate.
    pub gates: Vec<GateFile>,
    /// Where castings and feeders fill last.
    pub last: Vec<LastFile>,
    /// The coldest metal that comes to a casting.
    pub coldest: Option<ColdestFile>,
    /// Pockets of air, the largest first.
    pub air: Vec<AirFile>,
    /// Where fronts meet, the coldest first.
    pub meetings: Vec<MeetingFile>,
    /// Where metal freezes too far to run on, the largest first.
    pub misruns: Vec<MisrunFile>,
    /// The thinnest wall that would still run on the longest way, mm.
    pub least_wall_mm: Option<BandFile>,
    /// Part of the metal that lands faster than waves run in its pool.
    pub rough_share: f64,
}

/// A gate.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct GateFile {
    /// Its name as files have it.
    pub piece: String,
    /// The fastest, m/s.
    pub fastest_m_s: f64,
    /// When.
    pub fastest_at_s: f64,
    /// Metal that comes through it, mm³.
    pub metal_mm3: f64,
    /// The largest Froude number of its stream in the pool where it lands.
    pub froude: f64,
    /// Limits in print that it oversteps, the slowest first.
    pub over: Vec<OverFile>,
}

/// A limit that is overstepped.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OverFile {
    /// Who sets it.
    pub school: String,
    /// The limit, m/s.
    pub limit_m_s: f64,
    /// Part of the metal that comes faster.
    pub share: f64,
}

/// Where a piece fills last.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LastFile {
    /// Its name as files have it.
    pub piece: String,
    /// Where.
    pub place_mm: [f64; 3],
    /// When.
    pub at_s: f64,
}

/// The coldest metal.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ColdestFile {
    /// The casting.
    pub piece: String,
    /// Where.
    pub place_mm: [f64; 3],
    /// How warm, °C.
    pub celsius: BandFile,
    /// Its solid share.
    pub solid: f64,
}

/// A pocket of air.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AirFile {
    /// How much is shut in, mm³.
    pub volume_mm3: f64,
    /// How much of it stays a hole where nothing lets it out, mm³.
    pub hole_mm3: f64,
    /// When its last way out is covered; null where it never has one.
    pub closed_at_s: Option<f64>,
    /// Its highest places: a vent at each lets it out.
    pub highs_mm: Vec<[f64; 3]>,
    /// Those over which no vent of the mould stands.
    pub bare_mm: Vec<[f64; 3]>,
}

/// Fronts that meet.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MeetingFile {
    /// The middle of the seam.
    pub place_mm: [f64; 3],
    /// When they meet first.
    pub at_s: f64,
    /// The coldest metal at the seam, °C.
    pub coldest_c: f64,
    /// Its solid share.
    pub solid: f64,
}

/// Metal that does not run on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MisrunFile {
    /// Where it stops first.
    pub place_mm: [f64; 3],
    /// When.
    pub at_s: f64,
    /// Hollow that is reached by such metal only, mm³.
    pub volume_mm3: f64,
    /// The largest solid share with which metal would come to it.
    pub solid: f64,
}

/// A filling as one object; nothing where it was not seen.
pub fn file(filling: &Filling) -> Option<FillingFile> {
    let filled = filling.seen()?;
    let glance = &filled.glance;
    let coldest = filled.coldest.as_ref().map(|coldest| ColdestFile {
        piece: coldest.piece.to_string(),
        place_mm: coldest.place_mm,
        celsius: (&coldest.celsius).into(),
        solid: coldest.solid,
    });
    let meetings = meetings_of(glance).map(|meeting| MeetingFile {
        place_mm: meeting.place_mm,
        at_s: meeting.at_s,
        coldest_c: meeting.coldest_c,
        solid: meeting.solid,
    });
    let misruns = misruns_of(glance).map(|misrun| MisrunFile {
        place_mm: misrun.place_mm,
        at_s: misrun.at_s,
        volume_mm3: misrun.volume_mm3,
        solid: misrun.solid,
    });
    Some(FillingFile {
        trusted: matches!(filling, Filling::Seen(_)),
        gates_run_s: (&filled.starts_s).into(),
        full_s: (&filled.fills_s).into(),
        gates: gates(filled),
        last: filled.last.iter().map(last).collect(),
        coldest,
        air: air(filled),
        meetings: meetings.collect(),
        misruns: misruns.collect(),
        least_wall_mm: least_wall_mm(filled).map(|(band, _)| (&band).into()),
        rough_share: filled.rough_share,
    })
}

fn gates(filled: &JobFilled) -> Vec<GateFile> {
    let gates = filled.gates.iter().zip(&filled.glance.gates);
    let gate = gates.map(|(piece, gate)| GateFile {
        piece: piece.to_string(),
        fastest_m_s: gate.fastest_m_s,
        fastest_at_s: gate.fastest_at_s,
        metal_mm3: gate.metal_m3 * 1e9,
        froude: gate.largest_froude,
        over: gate
            .over
            .iter()
            .map(|over| OverFile {
                school: over.school.clone(),
                limit_m_s: over.limit_m_s,
                share: over.share,
            })
            .collect(),
    });
    gate.collect()
}

fn last((piece, place_mm, at_s): &(Piece, [f64; 3], f64)) -> LastFile {
    LastFile {
        piece: piece.to_string(),
        place_mm: *place_mm,
        at_s: *at_s,
    }
}

fn air(filled: &JobFilled) -> Vec<AirFile> {
    let pockets = filled.air.iter().map(|(pocket, bare)| AirFile {
        volume_mm3: pocket.volume_mm3,
        hole_mm3: pocket.hole_mm3,
        closed_at_s: pocket.closed_at_s,
        highs_mm: pocket.highs.iter().map(|high| high.place_mm).collect(),
        bare_mm: bare.clone(),
    });
    pockets.collect()
}
