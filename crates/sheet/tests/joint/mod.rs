//! The page of a joint that wanders: the line with its stations, and where each of them lies.

use std::path::Path;

use job::folder::open;
use job::mould_drawn::drawn;
use job::mould_solids::mould_of;
use job::plan::Plan;
use job::work_out::work_out;
use sheet::{Paper, cut_templates};

use crate::read_back::says_somewhere;

/// An example as `oddside plan` puts it on paper.
fn example(name: &str) -> Plan {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let opened = open(&folder.join(name)).unwrap();
    let mut plan = work_out(&opened.job, &opened.shop, &opened.part);
    let mould = mould_of(&opened.job, &opened.shop, &opened.part).unwrap();
    plan.drawing = drawn(&plan.drawing, &mould);
    plan
}

#[test]
fn every_station_of_a_joint_that_wanders_stands_in_the_table() {
    let plan = example("bell-crank");
    let pdf = cut_templates(&plan, Paper::A4).unwrap();
    assert!(says_somewhere(
        &pdf,
        "Around the first casting, from above."
    ));
    let joint = plan.drawing.joint.unwrap();
    assert!(joint.stations.len() >= 8);
    for station in &joint.stations {
        let [x, y] = station.place_mm;
        assert!(
            says_somewhere(&pdf, &format!("{x:.0}, {y:.0}")),
            "{station:?}"
        );
        let line = &joint.lines[station.line];
        let on_line = |place: &[f64; 3]| {
            let [u, v, _] = *place;
            (u - x).hypot(v - y)
        };
        let nearest = line.iter().map(on_line).fold(f64::INFINITY, f64::min);
        // No further from a corner of its line than the longest side of that is.
        assert!(nearest < 12.0, "{station:?} is {nearest} mm off its line");
    }
}

#[test]
fn a_flat_joint_has_no_page() {
    let plan = example("porch-bracket");
    let pdf = cut_templates(&plan, Paper::A4).unwrap();
    assert!(plan.drawing.joint.is_none());
    assert!(!says_somewhere(
        &pdf,
        "Around the first casting, from above."
    ));
}
