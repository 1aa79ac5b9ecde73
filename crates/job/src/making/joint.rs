//! The joint by which a pattern is made, and the flask that it leads out to.

use measure::length::{Length, Volume};
use metal::casting_mass::casting_mass;
use mould::flask::{Clearance, clearance};
use pattern::draw::DrawSettings;
use pattern::draw::parting::{FLAT_ENOUGH, parting_line};
use pattern::made::joint::Joint;
use pattern::made::line::flat_line;
use pattern::made::volume_mm3;
use pattern::mesh::Mesh;

use super::MakingError;
use crate::job::Job;
use crate::placed_part::joint_level;
use crate::turning::Turning;

/// The joint in the frame of the mould: flat where the job gives its height over the lowest point
/// of the part, stock below it and contraction counted in; flat at the level that the plan has,
/// where the parting line can lie flat; else along that line. The pattern is given with its hollows
/// filled and the prints of its cores on, as these have to be drawn too.
pub(super) fn joint(
    job: &Job,
    filled: &Mesh,
    lies: &Turning,
    turning: &Turning,
    contraction: [f64; 3],
) -> Result<Joint, MakingError> {
    let [low_mm, high_mm] = filled.bounds().map(|corner| corner[2]);
    if let Some(over_part) = job.joint {
        let lowest = lies.drawn([0.0, 0.0, over_part.as_mm()]);
        let large = [0, 1, 2].map(|axis| lowest[axis] * (1.0 + contraction[axis]));
        let level_mm = turning.place(large)[2].clamp(low_mm, high_mm);
        return Ok(Joint::Flat(level_mm));
    }
    let line = parting_line(filled, [0.0, 0.0, 1.0], &DrawSettings::suiting(filled))?;
    match line.level.flat_share >= FLAT_ENOUGH {
        true => {
            let height = Length::from_mm(high_mm - low_mm);
            let level = joint_level(&over_nought(filled, low_mm), height);
            Ok(Joint::Flat(low_mm + level.as_mm()))
        }
        false => Ok(Joint::along_the_line(filled, flask(job, filled))?),
    }
}

/// A mesh let down by its lowest height, to where heights are counted from.
fn over_nought(mesh: &Mesh, low_mm: f64) -> Mesh {
    let let_down = |&[x, y, z]: &[f64; 3]| [x, y, z - low_mm];
    Mesh {
        points: mesh.points.iter().map(let_down).collect(),
        triangles: mesh.triangles.clone(),
    }
}

/// The inside of a flask with the usual sand around the pattern.
pub(super) fn flask(job: &Job, pattern: &Mesh) -> [[f64; 3]; 2] {
    let sand = sand_around(job, pattern);
    let [low, high] = pattern.bounds();
    let (wall, below, above) = (sand.to_wall.as_mm(), sand.below.as_mm(), sand.above.as_mm());
    [
        [low[0] - wall, low[1] - wall, low[2] - below],
        [high[0] + wall, high[1] + wall, high[2] + above],
    ]
}

/// Sand wanted around a pattern of this job.
pub(super) fn sand_around(job: &Job, pattern: &Mesh) -> Clearance {
    let volume = Volume::from_mm3(volume_mm3(pattern));
    clearance(casting_mass(volume, job.alloy.density_solid.band.likely()))
}

/// The lines of the joint on the pattern; none where the pattern lies on one side of it.
pub(super) fn parting_lines(
    whole: &Mesh,
    joint: &Joint,
) -> Result<Vec<Vec<[f64; 3]>>, MakingError> {
    match joint {
        Joint::Flat(level_mm) => Ok(flat_line(whole, *level_mm).unwrap_or_default()),
        Joint::Blocks { .. } => {
            let settings = DrawSettings::suiting(whole);
            Ok(parting_line(whole, [0.0, 0.0, 1.0], &settings)?.loops)
        }
    }
}

pub(super) fn heights_of(joint: &Joint, lines: &[Vec<[f64; 3]>]) -> [f64; 2] {
    if let Joint::Flat(level_mm) = joint {
        return [*level_mm; 2];
    }
    let heights = lines.iter().flatten().map(|place| place[2]);
    let ends = (f64::INFINITY, f64::NEG_INFINITY);
    let (low, high) = heights.fold(ends, |(low, high), z| (low.min(z), high.max(z)));
    [low, high]
}
