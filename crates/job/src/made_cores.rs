//! The cores of a job as they are made: with their prints, their box and their vents.

use measure::length::{Length, Volume};
use measure::matter::Mass;
use mould::lift::CORE_SAND;
use pattern::cores::CoreError;
use pattern::cores::core_box::{BoxSettings, CoreBox, core_box};
use pattern::cores::print::PrintedCore;
use pattern::cores::vent::{Vent, vents};
use pattern::draw::undercut::Trapped;
use pattern::mesh::Mesh;
use pattern::stl::write_stl;
use pattern::threemf_write::{Metadata, Piece, WriteError, write_threemf};
use pattern::touching::apart;
use pattern::vector::Vector;

use crate::job::Job;
use crate::printed_cores::{CoreWithPrints, LengthsBy, PrintedCores, printed_cores};
use crate::shop::Shop;

/// The cores of one casting, and the hollows that are left to the founder.
#[derive(Clone, Debug, Default)]
pub struct MadeCores {
    /// The cores, the largest first.
    pub cores: Vec<MadeCore>,
    /// Hollows for which a loose piece, a drawback or a turn of the part is advised.
    pub left: Vec<Trapped>,
}

/// A core with all that is made for it, mm in the coordinates of the casting as it lies in the
/// mould, as large as its cavity.
#[derive(Clone, Debug)]
pub struct MadeCore {
    /// What it is called.
    pub name: String,
    /// The middle of its hollow.
    pub centre_mm: Vector,
    /// Body and prints.
    pub printed: PrintedCore,
    /// Length of each print.
    pub print_lengths: Vec<Length>,
    /// What the lengths go by.
    pub lengths_by: LengthsBy,
    /// Its box, or why there is none.
    pub core_box: Result<CoreBox, CoreError>,
    /// How it breathes.
    pub vents: Vec<Vent>,
    /// Sand in it.
    pub volume: Volume,
    /// What it weighs.
    pub mass: Mass,
}

/// Wall of a printed core box and its dowels, mm: stiff enough to be rammed into; common practice,
/// no source.
const BOX: BoxSettings = BoxSettings {
    wall_mm: 12.0,
    dowel_mm: 5.0,
};

/// Cores for a casting as it lies in the mould, closed and wound outward, in mm.
///
/// # Errors
///
/// A hollow that opens nowhere, or solids that cannot be cut.
pub fn made_cores(job: &Job, shop: &Shop, casting: &Mesh) -> Result<MadeCores, CoreError> {
    let PrintedCores { cores, left } = printed_cores(job, shop, casting)?;
    Ok(MadeCores {
        cores: cores.into_iter().map(made).collect(),
        left,
    })
}

fn made(core: CoreWithPrints) -> MadeCore {
    let CoreWithPrints {
        name,
        centre_mm,
        printed,
        ends,
        print_lengths,
        lengths_by,
        ..
    } = core;
    let ways: Vec<Vector> = ends.iter().map(|end| end.out).collect();
    let middles: Vec<Vector> = ends.iter().map(|end| end.middle_mm).collect();
    let volume = Volume::from_mm3(printed.volume_mm3);
    MadeCore {
        name,
        centre_mm,
        print_lengths,
        lengths_by,
        core_box: core_box(&printed.core, &ways, BOX),
        vents: vents(&printed.core, printed.volume_mm3, &middles),
        volume,
        mass: CORE_SAND * volume,
        printed,
    }
}

/// Folder, in that of the job, into which the files go.
pub const CORES_FOLDER: &str = "cores";

/// The cores as files, by name: an STL in mm of each core, print, half and slide of a box, and one
/// 3MF with all of them by name.
///
/// # Errors
///
/// A solid that the format cannot hold.
pub fn cores_files(job: &Job, made: &MadeCores) -> Result<Vec<(String, Vec<u8>)>, WriteError> {
    let mut pieces: Vec<(String, &Mesh)> = Vec::new();
    for core in &made.cores {
        let name = format!("core-{}", crate::words::said::slug(&core.name));
        pieces.push((name.clone(), &core.printed.core));
        for (print, number) in core.printed.prints.iter().zip(1..) {
            pieces.push((format!("{name}-print-{number}"), print));
        }
        if let Ok(made) = &core.core_box {
            let halves = made.halves.iter().zip(["lower", "upper"]);
            pieces.extend(halves.map(|(half, which)| (format!("{name}-box-{which}"), half)));
            for (slide, number) in made.slides.iter().zip(1..) {
                pieces.push((format!("{name}-box-slide-{number}"), &slide.mesh));
            }
        }
    }
    if pieces.is_empty() {
        return Ok(Vec::new());
    }
    let pieces: Vec<(String, Mesh)> = pieces
        .into_iter()
        .map(|(name, mesh)| (name, apart(mesh)))
        .collect();
    let stl = |(name, mesh): &(String, Mesh)| (format!("{name}.stl"), write_stl(mesh));
    let mut files: Vec<(String, Vec<u8>)> = pieces.iter().map(stl).collect();
    let named: Vec<Piece<'_>> = pieces
        .iter()
        .map(|(name, mesh)| Piece { name, mesh })
        .collect();
    let title = format!("{}: cores", job.name);
    let archive = write_threemf(&named, &[(Metadata::Title, title.as_str())])?;
    files.push(("cores.3mf".to_owned(), archive));
    Ok(files)
}
