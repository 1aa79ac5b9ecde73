//! A pattern of which everything can be told.

use job::making::Making;
use job::making::core_prints::{CorePrints, PrintsOfCore};
use measure::length::Length;
use pattern::cores::CoreError;
use pattern::made::board::Fill;
use pattern::made::filament::{Printing, advice};
use pattern::made::halves::Pins;
use pattern::made::ledge::Side;
use pattern::made::loose::{LoosePiece, Stuck};
use pattern::made::stock::{Face, LeftOn};
use pattern::made::taper::{TaperError, Tight};
use pattern::mesh::Mesh;

/// A pattern of which there is everything to tell.
pub fn everything_made() -> Making {
    let stock = pattern::made::stock::Stock {
        on: Face::Bore(22.0),
        depth_mm: 2.0,
    };
    let printing = Printing {
        density: measure::matter::Density::from_kg_per_m3(1240.0),
        wall_mm: 0.8,
        infill: 0.1,
        layer_mm: 0.3,
    };
    Making {
        name: "Lid".to_owned(),
        serves: job::job_file::Serves::Machine,
        part_mm: [60.0, 40.0, 20.0],
        pattern_mm: [61.0, 41.0, 22.0],
        contraction: [0.013; 3],
        steps: Vec::new(),
        left_on: vec![LeftOn {
            stock,
            area_mm2: 800.0,
            places: 2,
            added_mm3: 1600.0,
        }],
        walls: (4, 120.0),
        no_draught: Some(TaperError::Open {
            place_mm: [1.0, 2.0, 3.0],
        }),
        tight: vec![
            Tight {
                place_mm: [1.0, 2.0, 3.0],
                gap_mm: 1.0,
                wanted_degrees: 2.0,
                has_degrees: 0.5,
            };
            6
        ],
        joint_mm: [12.0, 15.0],
        held_mm3: 300.0,
        cores: CorePrints::Made(vec![prints_of_core(1), prints_of_core(2)]),
        loose: vec![loose(Side::Drag, None), loose(Side::Cope, Some(pins()))],
        stuck: vec![Stuck {
            centre_mm: [1.0, 2.0, 3.0],
            volume_mm3: 900.0,
            in_the_way_mm3: 400.0,
        }],
        pieces: Vec::new(),
        pins: Some(pins()),
        is_without_pins: true,
        dowels: (4, 1),
        fill: Some(Fill {
            gap: 0.0,
            overlap: 0.0,
            joint_mm2: 4000.0,
        }),
        stations: Vec::new(),
        advice: advice(&printing),
    }
}

fn pins() -> Pins {
    Pins {
        places_mm: [[0.0; 3], [30.0, 0.0, 0.0]],
        diameter_mm: 4.0,
        hole_mm: 4.2,
        depth_mm: 8.0,
        wide_mm: 6.0,
    }
}

fn loose(side: Side, pins: Option<Pins>) -> LoosePiece {
    LoosePiece {
        mesh: Mesh::default(),
        side,
        inward: [1.0, 0.0, 0.0],
        move_mm: 8.0,
        shaved_mm3: 0.0,
        pins,
    }
}

/// What else may be told of the cores of a pattern.
pub fn other_core_prints() -> [CorePrints; 2] {
    let error = CoreError::NoPrint {
        centre_mm: [1.0, 2.0, 3.0],
    };
    [CorePrints::ByHand(2), CorePrints::Failed(error)]
}

fn prints_of_core(prints: usize) -> PrintsOfCore {
    PrintsOfCore {
        name: "bore".to_owned(),
        lengths: vec![Length::from_mm(20.0); prints],
        play: Length::from_mm(0.4),
    }
}
