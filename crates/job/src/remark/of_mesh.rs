//! What is found in a mesh.

use measure::text::rounded;
use pattern::draft::upright_share;
use pattern::faults::{Fault, FaultKind, Standing};
use pattern::look::Looked;
use pattern::mended::Repair;
use pattern::unit::{Choice, Unit, UnitBasis};

use super::of_pattern::PatternFact;
use super::{Level, Remark, sorted};
use crate::turning::flattest;
use crate::words::said::Said;

/// Every remark on a mesh: its faults, what was mended, and how its unit is known.
pub fn remarks(looked: &Looked) -> Vec<Remark> {
    let faults = looked
        .faults
        .iter()
        .map(|fault| fault_remark(fault, looked));
    let mut all: Vec<Remark> = faults.collect();
    if !looked.repairs.is_empty() {
        all.push(repair_remark(&looked.repairs));
    }
    if let Some(share) = upright(looked) {
        all.push(PatternFact::NoDraft { share }.into());
    }
    if looked.basis == UnitBasis::Judged {
        all.push(judged_unit(looked));
    }
    sorted(all)
}

/// Share of the skin of a drawn part without draught, its flattest way up, where it is worth a
/// word; the solids of a sum have none to begin with.
fn upright(looked: &Looked) -> Option<f64> {
    looked.format?;
    let [low, high] = looked.mesh.bounds();
    let axis = flattest([0, 1, 2].map(|axis| high[axis] - low[axis]));
    let share = upright_share(&looked.mesh, axis);
    (share >= WORTH_A_WORD).then_some(share)
}

/// A tenth of the skin: less is the edge of a plate.
const WORTH_A_WORD: f64 = 0.1;

fn fault_remark(fault: &Fault, looked: &Looked) -> Remark {
    let told = match fault.kind {
        FaultKind::UnitSuspect { .. } => unit(looked),
        kind => words_of(kind),
    };
    let told = told.weighing(level(fault)).at(fault.place());
    let too_little = fault.standing == Standing::Noted;
    match fault.kind {
        FaultKind::UnitSuspect { .. } => told,
        _ if fault.standing == Standing::Repaired => told.advised(Said::new("compare-the-volume")),
        FaultKind::SelfIntersection { .. } if too_little => {
            told.advised(Said::new("mend-before-printing"))
        }
        _ => told,
    }
}

fn level(fault: &Fault) -> Level {
    let level = match fault.standing {
        Standing::Noted => Level::Note,
        Standing::Repaired => Level::Caution,
        Standing::Asks | Standing::Blocks => Level::Stop,
    };
    match fault.kind {
        // A void is measured rightly and cannot be moulded: the plan stops, the look warns.
        FaultKind::EnclosedVoid { .. } => level.min(Level::Caution),
        _ => level,
    }
}

fn words_of(kind: FaultKind) -> Remark {
    let told = |id| Remark::note(id, "mesh");
    match kind {
        FaultKind::OpenBoundary { edges, loops, .. } => told("open_boundary")
            .with("edges", edges)
            .with("loops", loops),
        FaultKind::MissingFace {
            area, least, most, ..
        } => told("missing_face")
            .with("area", format!("{} cm²", rounded(area / 100.0, 3)))
            .with("least", cubic_cm(least))
            .with("most", cubic_cm(most)),
        FaultKind::Winding { edges, .. } => told("winding").with("edges", edges),
        FaultKind::Inverted { shells, .. } => told("inverted").with("shells", shells),
        FaultKind::NonManifold { edges, .. } => told("non_manifold").with("edges", edges),
        FaultKind::SelfIntersection {
            facets, miscounted, ..
        } => told("self_intersection").with("facets", facets).with(
            "miscounted",
            format!("{} %", rounded(miscounted * 100.0, 2)),
        ),
        FaultKind::DuplicateFacets { facets, .. } => {
            told("duplicate_facets").with("facets", facets)
        }
        FaultKind::DegenerateFacets { facets, .. } => {
            told("degenerate_facets").with("facets", facets)
        }
        FaultKind::MultiBody {
            count, within: 0, ..
        } => told("multi_body").with("count", count),
        FaultKind::MultiBody { count, within, .. } => told("multi_body-within")
            .with("count", count)
            .with("within", within),
        FaultKind::EnclosedVoid { count, volume, .. } => told("enclosed_void")
            .with("count", count)
            .with("volume", format!("{} cm³", rounded(volume / 1000.0, 2))),
        FaultKind::UnitSuspect { .. } => told("unit_suspect"),
        FaultKind::NoVolume { .. } => told("no_volume"),
    }
}

fn cubic_cm(cubic_mm: f64) -> String {
    format!("{} cm³", rounded(cubic_mm / 1000.0, 4))
}

/// A unit that the file says and that makes an odd size, or one that has to be chosen.
fn unit(looked: &Looked) -> Remark {
    let largest = looked.extents_in_file.into_iter().fold(0.0, f64::max);
    let large = rounded(largest, 4);
    match looked.unit {
        Some(unit) => Remark::note("unit_suspect", "mesh")
            .with("unit", unit.sign())
            .with("size", format!("{large} {unit}")),
        None => {
            let offers: Vec<String> = looked.choices.iter().map(offer).collect();
            Remark::note("unit_suspect-none", "mesh")
                .with("size", large)
                .with("offers", offers.join(", "))
        }
    }
}

fn offer(choice: &Choice) -> String {
    let largest = choice.extents_mm.into_iter().fold(0.0, f64::max);
    format!("{} ({} mm)", choice.unit, rounded(largest, 3))
}

fn judged_unit(looked: &Looked) -> Remark {
    let sides = |per: f64, figures: u32| {
        let side = |mm: &f64| rounded(mm / per, figures);
        let sides = looked.extents_in_file.iter().map(side);
        sides.collect::<Vec<_>>().join(" x ")
    };
    Remark::note("unit_judged", "mesh")
        .with("mm", format!("{} mm", sides(1.0, 4)))
        .with("inches", format!("{} in", sides(Unit::Inch.mm(), 3)))
}

fn repair_remark(repairs: &[Repair]) -> Remark {
    let done: Vec<Said> = repairs.iter().map(done).collect();
    Remark::note("mended", "mesh").with("done", done)
}

fn done(repair: &Repair) -> Said {
    let (id, count) = match repair {
        Repair::PointsJoined { count } => ("points-joined", count),
        Repair::CollapsedDropped { count } => ("collapsed-dropped", count),
        Repair::DoublesDropped { count } => ("doubles-dropped", count),
        Repair::NeedlesMended { count } => ("needles-mended", count),
        Repair::SlitsZipped { count } => ("slits-zipped", count),
        Repair::HolesClosed { count } => ("holes-closed", count),
        Repair::FacesClosed { count } => ("faces-closed", count),
        Repair::FacetsTurned { count } => ("facets-turned", count),
        Repair::ShellsTurned { count } => ("shells-turned", count),
        Repair::FlakesDropped { count } => ("flakes-dropped", count),
        Repair::CrossingsJoined { before, after } => {
            return Said::new("crossings-joined")
                .with("before", cubic_cm(*before))
                .with("after", cubic_cm(*after));
        }
    };
    Said::new(id).with("count", *count)
}
