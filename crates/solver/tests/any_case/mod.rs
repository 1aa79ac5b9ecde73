//! Any box of cells: several tests ask what has to hold of it.

use proptest::prelude::{Just, Strategy, any};
use solver::case::{Case, Condition, Contact, Partial};
use solver::grid::Grid;
use solver::material::{Knot, Material, Phase};

use crate::materials::metal;

/// What its cells may hold.
pub fn fillings() -> Vec<Material> {
    let knot = |celsius, j_m3, w_mk| Knot {
        celsius,
        j_m3,
        w_mk,
        solid: 1.0,
    };
    let damp = vec![
        knot(0.0, 0.0, 1.0),
        knot(100.0, 1.9e8, 1.0),
        knot(100.0, 3.1e8, 0.6),
        knot(1100.0, 2.01e9, 0.8),
    ];
    vec![
        Material::plain(
            "dry",
            Phase {
                j_m3k: 1.7e6,
                w_mk: 0.6,
            },
        ),
        metal(),
        Material {
            name: "damp".to_owned(),
            knots: damp,
        },
        Material::plain(
            "chill",
            Phase {
                j_m3k: 3.5e6,
                w_mk: 45.0,
            },
        ),
    ]
}

/// Some box of these materials, with air (number 4) that takes no heat, contacts, uneven cells and
/// cells that are not full.
pub fn cases() -> impl Strategy<Value = Case> {
    let counts = (2_usize..7, 1_usize..6, 1_usize..6);
    counts
        .prop_flat_map(|(along, rows, planes)| {
            let cells = along * rows * planes;
            let numbers = proptest::collection::vec(0_u8..5, cells);
            let widths = proptest::collection::vec(1.0_f64..4.0, along + rows + planes);
            let share = proptest::prop_oneof![Just(1.0_f32), 0.3_f32..2.0];
            let shares = proptest::collection::vec(share, 4 * cells);
            let counts = Just([along, rows, planes]);
            (
                counts,
                numbers,
                widths,
                shares,
                any::<bool>(),
                any::<bool>(),
            )
        })
        .prop_map(|(counts, numbers, widths, shares, contact, partial)| {
            let mut widths = widths.into_iter();
            let edges_m = counts.map(|count| {
                let mut edge_m = 0.0;
                let mut edges = vec![0.0];
                edges.extend(widths.by_ref().take(count).map(|width| {
                    edge_m += 1e-3 * width;
                    edge_m
                }));
                edges
            });
            let mut case = Case::filled(Grid { edges_m }, fillings().remove(0), 25.0);
            case.materials = fillings();
            case.voids = vec![Condition::Insulated];
            case.cells = numbers;
            case.cells[0] = 1;
            let starts = case
                .cells
                .iter()
                .map(|&number| if number == 1 { 700.0 } else { 25.0 });
            case.start_c = starts.collect();
            if contact {
                case.contacts = vec![
                    Contact {
                        between: [1, 0],
                        w_m2k: 800.0,
                    },
                    Contact {
                        between: [3, 1],
                        w_m2k: 2000.0,
                    },
                ];
            }
            if partial {
                let mut quarters = shares.chunks(case.cells.len()).map(<[f32]>::to_vec);
                let mut quarter = || quarters.next().unwrap_or_default();
                case.partial = Some(Partial {
                    filled: quarter(),
                    open: [quarter(), quarter(), quarter()],
                });
            }
            case
        })
}
