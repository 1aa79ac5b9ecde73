//! The words for what is found in a mesh.

use pattern::faults::{Fault, FaultKind, Standing};
use pattern::look::Looked;
use pattern::repair::Repair;
use pattern::unit::{Choice, Unit, UnitBasis};

use super::{Level, Remark, sorted};

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
    if looked.basis == UnitBasis::Judged {
        all.push(judged_unit(looked));
    }
    sorted(all)
}

fn fault_remark(fault: &Fault, looked: &Looked) -> Remark {
    let level = match fault.standing {
        Standing::Noted => Level::Note,
        Standing::Repaired => Level::Caution,
        Standing::Asks | Standing::Blocks => Level::Stop,
    };
    let (words, advice) = match fault.kind {
        FaultKind::UnitSuspect { .. } => unit_words(looked),
        kind => (words_of(kind), advice_for(kind, fault.standing)),
    };
    let level = match fault.kind {
        // A void is measured rightly and cannot be moulded: the plan stops, the look warns.
        FaultKind::EnclosedVoid { .. } => level.min(Level::Caution),
        _ => level,
    };
    Remark::new(fault.code(), level, "mesh", words, &advice).at(fault.place())
}

fn words_of(kind: FaultKind) -> String {
    match kind {
        FaultKind::OpenBoundary { edges, loops, .. } => {
            format!("{edges} open edge(s) in {loops} opening(s): the skin has holes")
        }
        FaultKind::Winding { edges, .. } => {
            format!("facets turned against their neighbours along {edges} edge(s)")
        }
        FaultKind::Inverted { shells, .. } => format!("{shells} shell(s) wound inside out"),
        FaultKind::NonManifold { edges, .. } => {
            format!("{edges} edge(s) where more than two facets meet")
        }
        FaultKind::SelfIntersection {
            facets, miscounted, ..
        } => format!(
            "{facets} facet(s) pass through others; {} % of the metal counted twice or inside out",
            measure::text::rounded(miscounted * 100.0, 2)
        ),
        FaultKind::DuplicateFacets { facets, .. } => format!("{facets} facet(s) there twice"),
        FaultKind::DegenerateFacets { facets, .. } => format!("{facets} facet(s) without area"),
        FaultKind::MultiBody {
            count, within: 0, ..
        } => format!("{count} separate bodies"),
        FaultKind::MultiBody { count, within, .. } => {
            format!("{count} separate bodies, {within} of them inside the metal of another")
        }
        FaultKind::EnclosedVoid { count, volume, .. } => format!(
            "{count} void(s) closed in by metal, {} cm³ together",
            measure::text::rounded(volume / 1000.0, 2)
        ),
        FaultKind::UnitSuspect { .. } => String::new(),
        FaultKind::NoVolume { .. } => "no volume that could be poured".to_owned(),
    }
}

fn advice_for(kind: FaultKind, standing: Standing) -> String {
    if standing == Standing::Repaired {
        return "mended; compare the volume with that of your drawing".to_owned();
    }
    let advice = match kind {
        FaultKind::OpenBoundary { .. } => {
            "close the skin at that place in your drawing program and export a solid"
        }
        FaultKind::Winding { .. } | FaultKind::Inverted { .. } => {
            "export the part again as one solid"
        }
        FaultKind::NonManifold { .. } => "join or part the bodies that meet in that edge",
        FaultKind::SelfIntersection { .. } if standing == Standing::Noted => {
            "too little to matter for the metal; mend it before printing the pattern"
        }
        FaultKind::SelfIntersection { .. } => {
            "unite the bodies in your drawing program, then export again"
        }
        FaultKind::DuplicateFacets { .. } | FaultKind::DegenerateFacets { .. } => {
            "export the part again"
        }
        FaultKind::MultiBody { within: 0, .. } => {
            "each is cast as it lies; take one body a file if they are different parts"
        }
        FaultKind::MultiBody { .. } => "unite the bodies, or export the one that is meant",
        FaultKind::EnclosedVoid { .. } => {
            "no core could be carried in it or shaken out: open it to the outside, or fill it"
        }
        FaultKind::UnitSuspect { .. } => "",
        FaultKind::NoVolume { .. } => "give the part a wall, and export it as a solid",
    };
    advice.to_owned()
}

fn unit_words(looked: &Looked) -> (String, String) {
    let largest = looked.extents_in_file.into_iter().fold(0.0, f64::max);
    let large = measure::text::rounded(largest, 4);
    if let Some(unit) = looked.unit {
        let words = format!("the file says {unit}, which makes the longest side {large} {unit}");
        return (
            words,
            "check that size against the drawing before anything is made".to_owned(),
        );
    }
    let words = format!("the file gives no unit and its longest side is {large}");
    let offers: Vec<String> = looked.choices.iter().map(offer).collect();
    let hand = "a hand is some 190 mm long, a pencil 175 mm";
    (
        words,
        format!("choose with --unit: {}; {hand}", offers.join(", ")),
    )
}

fn offer(choice: &Choice) -> String {
    let largest = choice.extents_mm.into_iter().fold(0.0, f64::max);
    format!(
        "{} ({} mm)",
        choice.unit,
        measure::text::rounded(largest, 3)
    )
}

fn judged_unit(looked: &Looked) -> Remark {
    let sides = |per: f64, figures: u32| {
        let side = |mm: &f64| measure::text::rounded(mm / per, figures);
        looked
            .extents_in_file
            .iter()
            .map(side)
            .collect::<Vec<_>>()
            .join(" x ")
    };
    let words = format!(
        "the file gives no unit; taken as millimetres: {} mm ({} in)",
        sides(1.0, 4),
        sides(Unit::Inch.mm(), 3)
    );
    Remark::new(
        "unit_judged",
        Level::Note,
        "mesh",
        words,
        "if that is wrong, say --unit",
    )
}

fn repair_remark(repairs: &[Repair]) -> Remark {
    let done: Vec<String> = repairs.iter().map(repair_words).collect();
    let words = format!("mended: {}", done.join("; "));
    Remark::new(
        "mended",
        Level::Note,
        "mesh",
        words,
        "the file itself is left as it was",
    )
}

fn repair_words(repair: &Repair) -> String {
    match repair {
        Repair::PointsJoined { count } => format!("{count} close points joined"),
        Repair::CollapsedDropped { count } => format!("{count} collapsed facets dropped"),
        Repair::DoublesDropped { count } => format!("{count} doubled facets dropped"),
        Repair::NeedlesMended { count } => format!("{count} facets without area mended"),
        Repair::SlitsZipped { count } => format!("{count} slits closed"),
        Repair::HolesClosed { count } => format!("{count} small holes closed"),
        Repair::FacetsTurned { count } => format!("{count} facets turned"),
        Repair::ShellsTurned { count } => format!("{count} shells turned outside out"),
        Repair::FlakesDropped { count } => format!("{count} flakes without thickness dropped"),
    }
}
