//! The mould of a job as solids, and as files that other programs read.

use pattern::draw::joint::JointError;
use pattern::gltf::{Shown, write_glb};
use pattern::stl::write_stl;
use pattern::touching::apart;
use rigging::error::MouldError;
use rigging::fact::Fact;
use rigging::given::{Core, Given};
pub use rigging::mould::Mould;
use rigging::mould::mould;
use rigging::piece::{Piece, Solid};
use thiserror::Error;

use crate::job::Job;
use crate::made_cores::{MadeCore, MadeCores, made_cores};
use crate::part::Part;
use crate::placed_part::PlacedPart;
use crate::shop::Shop;
use crate::turning::Turning;
use crate::work_out::{mould_given_placed, placed};

/// Why a job has no mould of solids.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum NoMould {
    /// Nothing is known of the part but sizes.
    #[error(
        "the part is known by its sizes only, which have no shape: give a mesh, or build it from \
         [[solid]] tables"
    )]
    NoShape,
    /// No sand holds a joint along the parting line.
    #[error("in the mould, {error}{}", instead(*.joint_mm))]
    Joint {
        /// What is wrong.
        error: JointError,
        /// Height over the lowest point of the part at which a flat joint would do, mm.
        joint_mm: Option<f64>,
    },
    /// The mould room says no.
    #[error(transparent)]
    Mould(MouldError),
}

/// What to write in the job file for another joint.
fn instead(joint_mm: Option<f64>) -> String {
    match joint_mm {
        Some(joint_mm) => format!(
            "; or write joint = \"{joint_mm:.1} mm\" under [mould]: the part draws from a flat joint \
             there"
        ),
        None => {
            "; write another up under [part], as `oddside draw` tells, or a joint under [mould] \
                 for a flat one"
                .to_owned()
        }
    }
}

/// Folder, in that of the job, into which the files go.
pub const MOULD_FOLDER: &str = "mould";

/// Name of the file that shows all solids together.
pub const MOULD_FILE: &str = "mould.glb";

/// Builds the mould of a job with the sizes of its plan, for a part with nothing left to be
/// settled.
///
/// # Errors
///
/// A part without a shape, or what the mould room cannot build.
pub fn mould_of(job: &Job, shop: &Shop, part: &Part) -> Result<Mould, NoMould> {
    mould_of_placed(job, shop, part, &placed(job, part))
}

/// As [`mould_of`], for a part whose place was worked out before.
///
/// # Errors
///
/// As there.
pub fn mould_of_placed(
    job: &Job,
    shop: &Shop,
    part: &Part,
    placed: &PlacedPart,
) -> Result<Mould, NoMould> {
    let (given, made) = solids_given(job, shop, part, placed)?;
    built(&given, &made, job, part)
}

/// What the mould of a job is built from, with its cores.
pub(crate) fn solids_given(
    job: &Job,
    shop: &Shop,
    part: &Part,
    placed: &PlacedPart,
) -> Result<(Given, MadeCores), NoMould> {
    let given = mould_given_placed(job, shop, part, placed);
    let mut given = given.ok_or(NoMould::NoShape)?;
    // A core that cannot be made is told as one that is not drawn.
    let made = made_cores(job, shop, &given.casting.mesh).unwrap_or_default();
    let cores = made.cores.iter().map(|core| Core {
        name: core.name.clone(),
        mesh: core.printed.core.clone(),
    });
    given.casting.cores = cores.collect();
    Ok((given, made))
}

/// The mould of a job from what was given for it.
pub(crate) fn built(
    given: &Given,
    made: &MadeCores,
    job: &Job,
    part: &Part,
) -> Result<Mould, NoMould> {
    let over_lowest = |flat_at_mm: f64| over_lowest_mm(given, job, part, flat_at_mm);
    let mut built = mould(given, &job.place).map_err(|error| match error {
        MouldError::Parting { error, flat_at_mm } => NoMould::Joint {
            error,
            joint_mm: flat_at_mm.map(over_lowest),
        },
        error => NoMould::Mould(error),
    })?;
    let flat_at_mm = built.joint.as_ref().and_then(|joint| joint.flat_at_mm);
    let flat = flat_at_mm.map(|flat_at_mm| Fact::FlatElsewhere {
        joint_mm: over_lowest(flat_at_mm),
    });
    built.facts.extend(flat);
    let is_made = |name: &String| made.cores.iter().any(|core| core.name == *name);
    let undrawn = job.cores.iter().filter(|core| !is_made(&core.name));
    let undrawn = undrawn.map(|core| Fact::CoreNotDrawn {
        name: core.name.clone(),
    });
    built.facts.extend(undrawn);
    for fact in &mut built.facts {
        if let Some(told) = long_print(fact, made) {
            *fact = told;
        }
    }
    Ok(built)
}

/// What is to be written in the place of a core that goes through the wall of the flask.
fn long_print(fact: &Fact, made: &MadeCores) -> Option<Fact> {
    let Fact::ThinWall { piece, sand_mm, .. } = fact else {
        return None;
    };
    let Piece::Core(name) = piece else {
        return None;
    };
    // Of several castings each has its number after the name of the core.
    let is_it = |core: &&MadeCore| {
        let after = name.strip_prefix(core.name.as_str());
        after.is_some_and(|after| after.is_empty() || after.starts_with(' '))
    };
    let core = made.cores.iter().find(is_it)?;
    let lengths = core.print_lengths.iter().map(|length| length.as_mm());
    let longest_mm = (lengths.fold(f64::INFINITY, f64::min) + sand_mm).floor();
    Some(Fact::LongPrint {
        piece: piece.clone(),
        through_mm: -sand_mm,
        longest_mm: (longest_mm >= 1.0 && longest_mm.is_finite()).then_some(longest_mm),
    })
}

/// How far a height in the mould lies above the lowest point of the part as it is drawn, mm.
fn over_lowest_mm(given: &Given, job: &Job, part: &Part, height_mm: f64) -> f64 {
    let [low, high] = given.casting.mesh.bounds();
    let grown_mm = high[2] - low[2];
    let drawn_mm = part.looked().map_or(grown_mm, |looked| {
        let upright = Turning::of(&looked.mesh, job.up).upright();
        let [low, high] = looked.mesh.bounds();
        high[upright] - low[upright]
    });
    (height_mm - low[2]) * drawn_mm / grown_mm
}

/// The mould as files, by name: an STL in mm for every solid, and one glTF with all of them but
/// the cavity, which is castings and rigging once more.
pub fn mould_files(mould: &Mould) -> Vec<(String, Vec<u8>)> {
    let stl = |solid: &Solid| {
        (
            format!("{}.stl", solid.piece),
            write_stl(&apart(&solid.mesh)),
        )
    };
    let mut files: Vec<(String, Vec<u8>)> = mould.solids().map(stl).collect();
    let shown: Vec<(String, &Solid)> = mould
        .solids()
        .filter(|solid| solid.piece != Piece::Cavity)
        .map(|solid| (solid.piece.to_string(), solid))
        .collect();
    let shown: Vec<Shown<'_>> = shown
        .iter()
        .map(|(name, solid)| Shown {
            name,
            mesh: &solid.mesh,
            colour: colour(&solid.piece),
            is_metal: is_metal(&solid.piece),
        })
        .collect();
    files.push((MOULD_FILE.to_owned(), write_glb(&shown)));
    files
}

fn is_metal(piece: &Piece) -> bool {
    let is_sand = matches!(piece, Piece::Cope | Piece::Drag | Piece::Core(_));
    !is_sand && *piece != Piece::Vents
}

/// Sand is seen through, so that the metal in it shows; castings stand out from their rigging.
fn colour(piece: &Piece) -> [f64; 4] {
    match piece {
        Piece::Cope => [0.80, 0.65, 0.42, 0.25],
        Piece::Drag => [0.62, 0.47, 0.30, 0.35],
        Piece::Core(_) => [0.88, 0.80, 0.62, 1.0],
        Piece::Vents => [0.35, 0.55, 0.75, 1.0],
        Piece::Casting(_) | Piece::Cavity => [0.60, 0.62, 0.65, 1.0],
        Piece::Feeder(_) => [0.75, 0.35, 0.25, 1.0],
        Piece::Gate(_) => [0.85, 0.70, 0.25, 1.0],
        Piece::Runner(_) | Piece::Well => [0.80, 0.55, 0.30, 1.0],
        Piece::Basin | Piece::Sprue => [0.70, 0.50, 0.45, 1.0],
    }
}
