//! What the solids of the mould are built from: the casting as large as its cavity, and the sizes
//! that the steps of the plan gave the rigging.

use measure::length::Length;
use metal::alloy::Family;
use mould::flask::clearance;
use mould::gating::running_system::basin_over;
use mould::lift::CORE_SAND;
use pattern::mesh::Mesh;
use rigging::given::{
    Casting as Cast, Densities, FeederSize, Given, Half, Heavy, Parting, Sizes, Vents,
};
use sand::batch::rammed_density;

use crate::job::Job;
use crate::placed_part::PlacedPart;
use crate::work_out::bench::{SHORT, WIRE};
use crate::work_out::casting::Casting;
use crate::work_out::feeding::{Feeding, neck_across};
use crate::work_out::rigging::Rigging;

/// What the steps of the plan have found.
pub(super) struct Sized<'a> {
    pub(super) job: &'a Job,
    pub(super) part: &'a PlacedPart,
    pub(super) casting: &'a Casting,
    pub(super) feeding: &'a Feeding,
    pub(super) rigging: &'a Rigging,
    /// How far vents stand from each other.
    pub(super) vents: Option<Length>,
}

/// Everything that is wanted for the solids of the mould, for a part with this mesh as drawn.
pub(super) fn given(sized: &Sized<'_>, drawn: &Mesh) -> Option<Given> {
    let (job, rigging) = (sized.job, sized.rigging);
    Some(Given {
        flask: rigging.chosen.flask.clone(),
        layout: rigging.chosen.layout,
        count: job.count,
        sand: clearance(sized.casting.mass.likely()),
        casting: cast(sized, drawn)?,
        sizes: sizes(sized),
        parting: parting(job),
        densities: Densities {
            metal: job.alloy.density_liquid.band.likely(),
            sand: rammed_density().value.likely(),
            core: CORE_SAND,
        },
    })
}

/// The casting as it lies in the mould, grown by what it will contract, the joint at nought.
fn cast(sized: &Sized<'_>, drawn: &Mesh) -> Option<Cast> {
    let part = sized.part;
    let grown = 1.0 + sized.casting.growth;
    let joint = part.joint.as_mm();
    let place = |[x, y, z]: [f64; 3]| [x * grown, y * grown, (z - joint) * grown];
    let mut mesh = part.turning?.turned(drawn);
    for point in &mut mesh.points {
        *point = place(*point);
    }
    let heavy = part.sections.iter().map(|section| Heavy {
        place_mm: place(section.place_mm),
        modulus: section.modulus,
        inscribed: section.inscribed,
    });
    let sections = heavy.collect();
    Some(Cast {
        mesh,
        sections,
        cores: Vec::new(),
    })
}

/// A founder who gives the height of the joint wants it flat.
fn parting(job: &Job) -> Parting {
    match job.joint {
        Some(_) => Parting::Flat,
        None => Parting::AlongTheLine,
    }
}

fn sizes(sized: &Sized<'_>) -> Sizes {
    let (job, running) = (sized.job, &sized.rigging.running);
    let [runners, gates] = running.runner_and_gates;
    let sprue_top = running.sprue_top.likely();
    let pour_height = sized.rigging.pour_height;
    let feeder = sized.feeding.feeder.map(|feeder| FeederSize {
        diameter: feeder.diameter.likely(),
        height: feeder.diameter.likely(),
        neck: neck_across(job, sized.part).likely(),
    });
    Sizes {
        pour_height,
        sprue_top,
        sprue_foot: running.sprue_foot.likely(),
        basin: basin_over(sprue_top, pour_height),
        runners,
        gates,
        past_last_gate: running.past_last_gate,
        runner_half: runner_half(job),
        feeder,
        vents: sized.vents.map(|spacing| Vents {
            spacing,
            wire: WIRE,
            short: SHORT,
        }),
    }
}

/// Iron carries slag that floats: its runner lies above its gates and keeps it back. The skins of
/// other metals do not float well, and their runner fills below the gates before they run (common
/// practice, no source).
fn runner_half(job: &Job) -> Half {
    match job.alloy.family {
        Family::Iron => Half::Cope,
        _ => Half::Drag,
    }
}
