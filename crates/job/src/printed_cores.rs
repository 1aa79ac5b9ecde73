//! The cores of a job with their prints: which hollows get one, and how far it goes on into the
//! sand.

use measure::length::{Length, Volume};
use mould::core_print::{length_by_rule, print_length};
use mould::core_seat::{Drowned, float};
use mould::lift::CORE_SAND;
use pattern::cores::CoreError;
use pattern::cores::body::{CoreBody, Opening, bodies};
use pattern::cores::print::{PrintSize, PrintedCore, bearing, with_prints};
use pattern::draw::DrawSettings;
use pattern::draw::remedy::Remedy;
use pattern::draw::undercut::{Trapped, undercuts};
use pattern::mesh::Mesh;
use pattern::vector::{Vector, add, norm, scale};

use crate::job::{Core, Job};
use crate::shop::Shop;

/// The cores of one casting with their prints, and the hollows that are left to the founder.
#[derive(Clone, Debug, Default)]
pub struct PrintedCores {
    /// The cores, the largest first.
    pub cores: Vec<CoreWithPrints>,
    /// Hollows for which a loose piece, a drawback or a turn of the part is advised.
    pub left: Vec<Trapped>,
}

/// A core with its prints, mm in the coordinates of the casting as it lies in the mould, as large
/// as its cavity.
#[derive(Clone, Debug)]
pub struct CoreWithPrints {
    /// What it is called.
    pub name: String,
    /// The middle of its hollow.
    pub centre_mm: Vector,
    /// What fills the hollow, without prints.
    pub body: Mesh,
    /// Body and prints.
    pub printed: PrintedCore,
    /// The far end of each print.
    pub ends: Vec<End>,
    /// Length of each print.
    pub print_lengths: Vec<Length>,
    /// What the lengths go by.
    pub lengths_by: LengthsBy,
}

/// The far end of a print.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct End {
    /// Its middle, mm.
    pub middle_mm: Vector,
    /// The way out of the hollow, of length one; of no length where the print runs around the part.
    pub out: Vector,
}

/// What the length of prints goes by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LengthsBy {
    /// The rule of thumb: as long as wide, to 3 in.
    Rule,
    /// What the sand of the shop bears, where that asks for more than the rule.
    Sand,
    /// The depth that the job tells.
    Job,
}

/// How many times stronger than the pressure of a print the sand is to be: the upper end of the
/// 2 to 3 of the trade, since a print of long standing dries and crumbles (common practice, no
/// source).
const MARGIN: f64 = 3.0;

/// Room around a print in the sand, mm on each side: so that a core of sand, which is never quite
/// true, can be laid in; common practice, no source.
pub(crate) const PLAY_MM: f64 = 0.4;

/// Hollows smaller than this share of the largest one that is cored are not worth a core of their
/// own; they are told.
const WORTH_A_CORE: f64 = 0.01;

/// The way in which the cope is lifted off a casting that lies in its mould.
const UP: Vector = [0.0, 0.0, 1.0];

/// Cores with their prints for a casting as it lies in the mould, closed and wound outward, in mm.
///
/// # Errors
///
/// A hollow that opens nowhere, or solids that cannot be cut.
pub fn printed_cores(job: &Job, shop: &Shop, casting: &Mesh) -> Result<PrintedCores, CoreError> {
    let found = undercuts(casting, UP, &DrawSettings::suiting(casting))?;
    let cored = |hollow: &Trapped| hollow.advice.remedy == Remedy::Core;
    let largest = found.regions.iter().find(|hollow| cored(hollow));
    let worth = largest.map_or(0.0, |hollow| hollow.volume_mm3 * WORTH_A_CORE);
    let (wanted, left): (Vec<Trapped>, Vec<Trapped>) =
        found.regions.into_iter().partition(|hollow| {
            cored(hollow) && hollow.is_worth_freeing() && hollow.volume_mm3 >= worth
        });
    let mut bodies = bodies(casting, UP, &wanted, found.column_mm)?;
    bodies.sort_by(|a, b| b.volume_mm3.total_cmp(&a.volume_mm3));
    let told = told(job, bodies.len());
    let cores = bodies
        .into_iter()
        .zip(told)
        .zip(1..)
        .map(|((body, told), number)| {
            let name = told.map_or_else(|| number.to_string(), |core| core.name.clone());
            let first = body.fills.first();
            let centre_mm = first.map_or([0.0; 3], |&at| wanted[at].centre_mm);
            printed(job, shop, (body, told), name, centre_mm)
        });
    Ok(PrintedCores {
        cores: cores.collect::<Result<_, _>>()?,
        left,
    })
}

fn printed(
    job: &Job,
    shop: &Shop,
    (body, told): (CoreBody, Option<&Core>),
    name: String,
    centre_mm: Vector,
) -> Result<CoreWithPrints, CoreError> {
    let bearing = bearing(&body, UP);
    let (print_lengths, lengths_by) = lengths(job, shop, &body, told, &bearing);
    let sized = bearing.iter().zip(&print_lengths);
    let openings: Vec<_> = sized
        .map(|(&opening, length)| {
            let size = PrintSize {
                length_mm: length.as_mm(),
                play_mm: PLAY_MM,
            };
            (opening, size)
        })
        .collect();
    let ends = openings.iter().map(|(opening, size)| End {
        middle_mm: add(opening.centre_mm, scale(opening.out, size.length_mm)),
        out: opening.out,
    });
    Ok(CoreWithPrints {
        name,
        centre_mm,
        printed: with_prints(&body, &openings)?,
        ends: ends.collect(),
        print_lengths,
        lengths_by,
        body: body.mesh,
    })
}

/// What the job tells of the cores of a casting, the largest first, if it tells of as many.
fn told(job: &Job, count: usize) -> Vec<Option<&Core>> {
    let mut told: Vec<&Core> = job.cores.iter().collect();
    told.sort_by(|a, b| b.volume.as_mm3().total_cmp(&a.volume.as_mm3()));
    match told.len() == count {
        true => told.into_iter().map(Some).collect(),
        false => vec![None; count],
    }
}

/// How long the prints at some openings are, and what that goes by: the depth that the job tells;
/// else as long as wide, and more where the sand of the shop would not bear the core otherwise,
/// before the metal comes or under it.
fn lengths(
    job: &Job,
    shop: &Shop,
    body: &CoreBody,
    told: Option<&Core>,
    openings: &[&Opening],
) -> (Vec<Length>, LengthsBy) {
    let depth = told.and_then(|core| core.print).map(|print| print.depth);
    if let Some(depth) = depth.filter(|depth| *depth > Length::ZERO) {
        return (vec![depth; openings.len()], LengthsBy::Job);
    }
    let volume = Volume::from_mm3(body.volume_mm3);
    let core = Drowned {
        volume,
        mass: CORE_SAND * volume,
        liquid: job.alloy.density_liquid.band.high(),
    };
    let force = float(&core).max(core.mass.weight());
    let strength = shop.heap.as_ref().and_then(|heap| heap.strength);
    let mut by = LengthsBy::Rule;
    let lengths = openings.iter().map(|opening| {
        let across = Length::from_mm(across_mm(body, opening));
        let rule = length_by_rule(across);
        let count = openings.len() as f64;
        // The law is one of prints that lie in the joint.
        match strength.filter(|_| opening.is_sideways(UP)) {
            Some(strength) => {
                let borne = print_length(force, strength, MARGIN, across, count);
                if borne > rule {
                    by = LengthsBy::Sand;
                }
                borne.max(rule)
            }
            None => rule,
        }
    });
    (lengths.collect(), by)
}

/// Width by which the rule lengthens a print: that of its opening, or twice the depth of a groove
/// that runs around the part.
fn across_mm(body: &CoreBody, opening: &Opening) -> f64 {
    match norm(opening.out) > 0.0 {
        true => opening.across_mm(),
        false => 2.0 * body.volume_mm3 / opening.area_mm2,
    }
}
