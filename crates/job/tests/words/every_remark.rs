//! Every remark that can be made, each fact in each of its wordings.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use job::job_file::Serves;
use job::remark::Remark;
use job::remark::of_charge::ChargeFact;
use job::remark::of_core::CoreFact;
use job::remark::of_feeding::FeedingFact;
use job::remark::of_gating::GatingFact;
use job::remark::of_mesh;
use job::remark::of_metal::MetalFact;
use job::remark::of_mould::MouldFact;
use job::remark::of_opening::OpeningFact;
use job::remark::of_part::PartFact;
use job::remark::of_pattern::PatternFact;
use job::remark::of_solved::SolvedFact;
use job::words::said::Said;
use measure::band::Band;
use measure::flow::{Duration, Speed};
use measure::heat::Temperature;
use measure::length::{Area, Length, Volume};
use measure::matter::{Force, Mass, Pressure};
use metal::alloy::Caution;
use metal::charge_makeup::element::Element;
use metal::charge_makeup::heap::Mark;
use metal::charge_makeup::makeup::MakeUpError;
use metal::charge_makeup::measured::Measured;
use mould::flask::FlaskError;
use pattern::faults::{Fault, FaultKind, Standing};
use pattern::look::{Looked, look};
use pattern::mended::Repair;
use pattern::unit::{Unit, UnitBasis};

/// All of them.
pub fn every_remark() -> Vec<Remark> {
    let mut all = of_meshes();
    all.extend(parts().into_iter().map(Remark::from));
    all.extend(patterns().into_iter().map(Remark::from));
    all.extend(moulds().into_iter().map(Remark::from));
    all.extend(feeding().into_iter().map(Remark::from));
    all.extend(gating().into_iter().map(Remark::from));
    all.extend(cores().into_iter().map(Remark::from));
    all.extend(metals().into_iter().map(Remark::from));
    all.extend(charges().into_iter().map(Remark::from));
    all.extend(opening().into_iter().map(Remark::from));
    all.extend(solved().into_iter().map(Remark::from));
    all
}

const MM: Length = Length::from_mm(12.0);
const KG: Mass = Mass::from_kg(4.5);

fn parts() -> Vec<PartFact> {
    vec![
        PartFact::SolidsApart { bodies: 2 },
        PartFact::SolidAddsNothing { number: 3 },
        PartFact::SolidTakesNothing { number: 3 },
        PartFact::VolumeGuessed {
            from_to: [Volume::from_cm3(80.0), Volume::from_cm3(140.0)],
        },
        PartFact::VolumeByWeight { off: 0.2 },
        PartFact::SizesOnly { joint_asked: true },
        PartFact::SizesOnly { joint_asked: false },
    ]
}

fn patterns() -> Vec<PatternFact> {
    vec![
        PatternFact::SealedVoid { count: 1 },
        PatternFact::ThinWall {
            wall: MM,
            least: MM,
            place: None,
        },
        PatternFact::WallsUnmeasured { share: 0.1 },
        PatternFact::ContractionDisputed {
            from_to: [0.01, 0.018],
            sources: 3,
        },
        PatternFact::WornOriginal {
            longest: MM,
            comes_out: Band::exact(MM),
        },
        PatternFact::MachinedFaces,
        PatternFact::RappingNotCounted { longest: MM },
        PatternFact::NotLookedAt,
        PatternFact::NoDraft { share: 0.4 },
        PatternFact::Printed { layer: MM },
        PatternFact::CannotDraw {
            what: "side port".to_owned(),
        },
    ]
}

fn moulds() -> Vec<MouldFact> {
    let too_small = |asked: Option<&str>| FlaskError::TooSmall {
        asked: asked.map(str::to_owned),
        count: 2,
        wall_mm: 40.0,
        length_mm: 300.0,
        width_mm: 200.0,
        cope_mm: 80.0,
        drag_mm: 70.0,
    };
    let unknown = FlaskError::Unknown {
        name: "C".to_owned(),
        known: "A, B".to_owned(),
    };
    let [wanted, there] = [KG, KG];
    vec![
        MouldFact::NoFlask(FlaskError::NoFlasks),
        MouldFact::NoFlask(unknown),
        MouldFact::NoFlask(too_small(None)),
        MouldFact::TightFlask(too_small(Some("A"))),
        MouldFact::NoHead {
            pour_height: MM,
            top: MM,
        },
        MouldFact::HeapTooSmall { wanted, there },
        MouldFact::HeapUnknown,
        MouldFact::TooWet {
            moisture: 0.08,
            limit: 0.06,
        },
        MouldFact::MoistureUnknown,
        MouldFact::TooHeavy {
            load: KG,
            three: KG,
        },
        MouldFact::WeightsNeeded { to_lay: KG },
        MouldFact::IronsTooLight { wanted, there },
        stands(4.0),
        stands(20.0),
    ]
}

fn stands(hours: f64) -> MouldFact {
    MouldFact::Stands {
        stands: Duration::from_min(hours * 60.0),
        keeps: Duration::from_min(480.0),
    }
}

fn feeding() -> Vec<FeedingFact> {
    let hot_spot = |meet: &[&'static str]| FeedingFact::HotSpot {
        meet: meet
            .iter()
            .map(|name| Said::new("solid-named").with("name", *name))
            .collect(),
        place: None,
    };
    vec![
        hot_spot(&["leg"]),
        hot_spot(&["leg", "horn"]),
        FeedingFact::NoFeederThin,
        FeedingFact::NoFeederIron {
            shown: "dent".to_owned(),
        },
        FeedingFact::IronMightFeedItself,
        FeedingFact::FeederImpossible,
        FeedingFact::FeederHigherThanCope {
            height: MM,
            cope: MM,
        },
        FeedingFact::MoreHeavySections {
            count: 2,
            place: [0.0; 3],
        },
        FeedingFact::FillsTooLate {
            wall: MM,
            freezes: Duration::from_s(2.0),
        },
        FeedingFact::FillMustHurry,
    ]
}

fn gating() -> Vec<GatingFact> {
    let too_fast = |gates| GatingFact::GateTooFast {
        speed: Speed::from_m_per_s(0.8),
        limit: Speed::from_m_per_s(0.5),
        highest: Speed::from_m_per_s(0.6),
        gates,
    };
    let area = Area::from_mm2(200.0);
    vec![
        too_fast(None),
        too_fast(Some(area)),
        GatingFact::GatesUneven {
            lag: Duration::from_s(1.0),
            cut: vec![area, area],
        },
    ]
}

fn cores() -> Vec<CoreFact> {
    let name = "bore".to_owned();
    vec![
        CoreFact::SeatUnknown { name: name.clone() },
        CoreFact::FewPins {
            name: name.clone(),
            pins: 2,
        },
        CoreFact::StandsLoose {
            name: name.clone(),
            lift: Force::from_n(20.0),
        },
        CoreFact::Oversize {
            name: name.clone(),
            contraction: [0.008, 0.01],
        },
        CoreFact::PrintSmall {
            name,
            pressure: Pressure::from_kpa(30.0),
            strength: Pressure::from_kpa(40.0),
        },
    ]
}

fn metals() -> Vec<MetalFact> {
    let cautions = [
        Caution::ZincFume,
        Caution::Lead,
        Caution::MagnesiumScrap,
        Caution::UnknownScrap,
        Caution::TakesUpGas,
        Caution::OxideFolds,
        Caution::SpoiledByLead,
        Caution::SpoiledByAluminium,
        Caution::SpoiledByBrassReturns,
        Caution::ChillsWhite,
        Caution::TearsHot,
        Caution::FineSponge,
    ];
    let serving = [
        Serves::Pressure,
        Serves::Lifting,
        Serves::Brake,
        Serves::Food,
        Serves::Machine,
    ];
    let mut all = vec![
        MetalFact::NoCrucible { charge: KG },
        MetalFact::CruciblesUnknown,
        MetalFact::LossUnknown,
        MetalFact::LeadInFood,
        MetalFact::WantedEquivalent {
            wall: MM,
            wanted: Band::exact(0.042),
        },
        MetalFact::ZincBack,
        MetalFact::PourHot {
            wall: MM,
            pouring: Band::exact(Temperature::from_celsius(1425.0)),
        },
        MetalFact::NoProbe,
        MetalFact::Degas {
            grams: Band::exact(Mass::from_g(5.0)),
        },
    ];
    all.extend(cautions.map(MetalFact::Metal));
    all.extend(metal::scrap::origins().iter().map(MetalFact::Scrap));
    all.extend(serving.map(MetalFact::Serves));
    all
}

fn charges() -> Vec<ChargeFact> {
    let marks = [
        Mark::Galvanised,
        Mark::Leaded,
        Mark::Painted,
        Mark::Oily,
        Mark::Plated,
        Mark::Damp,
    ];
    let mut all: Vec<ChargeFact> = marks
        .map(|mark| ChargeFact::Marked("gates".to_owned(), mark))
        .into();
    all.extend([
        ChargeFact::Unstated("gates".to_owned(), vec![Element::Silicon, Element::Copper]),
        ChargeFact::NoPrice(vec!["gates".to_owned()]),
        ChargeFact::OffByScale(vec![Measured::CarbonEquivalent]),
        ChargeFact::Unsure,
        ChargeFact::TryIt,
        ChargeFact::from(MakeUpError::NoHeaps),
    ]);
    all
}

fn opening() -> Vec<OpeningFact> {
    let open = Duration::from_min(40.0);
    vec![
        OpeningFact::Hot { open, oil: false },
        OpeningFact::Hot { open, oil: true },
        OpeningFact::NeverCold,
        OpeningFact::OpenLate { open },
    ]
}

fn solved() -> Vec<SolvedFact> {
    let (solved, pencil) = [(3.0, 5.0), (1.0, 2.0)]
        .map(|(from, to)| Band::new(from, from, to).map(Duration::from_min))
        .into();
    let late = Duration::from_min(90.0);
    vec![
        SolvedFact::FreezesLonger { solved, pencil },
        SolvedFact::FreezesSooner { solved, pencil },
        SolvedFact::OpensLater {
            solved: late,
            plan: Duration::from_min(40.0),
        },
        SolvedFact::CutOff {
            pools: 2,
            lacking_mm3: 900.0,
        },
        SolvedFact::Stale,
    ]
}

/// Every fault in every standing, every repair, and every way in which a unit is known.
fn of_meshes() -> Vec<Remark> {
    let plate = "v 0 0 0\nv 90 0 0\nv 0 90 0\nv 0 0 90\nf 1 3 2\nf 1 2 4\nf 2 3 4\nf 3 1 4\n";
    let plain = look("plate.obj", plate.as_bytes(), Some(Unit::Millimetre)).unwrap();
    let standings = [
        Standing::Noted,
        Standing::Repaired,
        Standing::Asks,
        Standing::Blocks,
    ];
    let mut faulty = plain.clone();
    faulty.faults = faults()
        .into_iter()
        .flat_map(|kind| standings.map(|standing| Fault { kind, standing }))
        .collect();
    faulty.repairs = repairs();
    faulty.basis = UnitBasis::Judged;
    let unknown = Looked {
        unit: None,
        ..faulty.clone()
    };
    [faulty, unknown]
        .iter()
        .flat_map(of_mesh::remarks)
        .collect()
}

fn faults() -> Vec<FaultKind> {
    let (place, edges, facets, count) = ([0.0; 3], 4, 5, 2);
    vec![
        FaultKind::OpenBoundary {
            edges,
            loops: 1,
            place,
        },
        FaultKind::MissingFace {
            area: 900.0,
            least: 8000.0,
            most: 8100.0,
            place,
        },
        FaultKind::Winding { edges, place },
        FaultKind::Inverted { shells: 1, place },
        FaultKind::NonManifold { edges, place },
        FaultKind::SelfIntersection {
            facets,
            miscounted: 0.1,
            place,
        },
        FaultKind::DuplicateFacets { facets, place },
        FaultKind::DegenerateFacets { facets, place },
        FaultKind::MultiBody {
            count,
            within: 0,
            place,
        },
        FaultKind::MultiBody {
            count,
            within: 1,
            place,
        },
        FaultKind::EnclosedVoid {
            count,
            volume: 900.0,
            place,
        },
        FaultKind::UnitSuspect { extents: [90.0; 3] },
        FaultKind::NoVolume {
            volume: 0.0,
            thickness: 0.0,
        },
    ]
}

fn repairs() -> Vec<Repair> {
    let count = 3;
    vec![
        Repair::PointsJoined { count },
        Repair::CollapsedDropped { count },
        Repair::DoublesDropped { count },
        Repair::NeedlesMended { count },
        Repair::SlitsZipped { count },
        Repair::HolesClosed { count },
        Repair::FacesClosed { count },
        Repair::FacetsTurned { count },
        Repair::ShellsTurned { count },
        Repair::FlakesDropped { count },
        Repair::CrossingsJoined {
            before: 8100.0,
            after: 8000.0,
        },
    ]
}
