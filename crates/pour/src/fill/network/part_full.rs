//! Where a channel does not run full.
//!
//! Falling metal gathers speed and its stream grows thin. A sprue that is chokes above its foot
//! runs part full below that place; a runner whose metal has more head of speed than head runs
//! like a ditch. Either draws air along.

use measure::flow::Flow;
use measure::length::{Area, Length};
use measure::matter::{Density, GRAVITY_M_PER_S2};
use mould::gating::aspiration::{jet_area, sprue_pressure};

use super::flow::{Flows, most_through, speed_head};
use super::{Network, Node, Section};

/// A place that does not run full.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartFull {
    /// The channel, by its number.
    pub branch: usize,
    /// Where, m; the end of the channel where it has no sections.
    pub height_m: f64,
    /// Its area as built, m².
    pub built_m2: f64,
    /// Area of the stream in it, m².
    pub stream_m2: f64,
}

/// Sections fuller than this are full, as a part of the area: rounding of a taper cut to measure.
const FULL: f64 = 1.0 - 1e-6;

/// Places that do not run full at these flows.
pub fn part_full(network: &Network, basin_m: f64, flows: &Flows) -> Vec<PartFull> {
    let mut found = Vec::new();
    for (number, branch) in network.branches.iter().enumerate() {
        let flow = flows.branches[number];
        if flow <= 0.0 {
            continue;
        }
        let starved = flow >= most_through(branch, basin_m) * FULL;
        let thin = |section: &Section| {
            let stream_m2 = stream_below(&branch.sections, basin_m, section);
            (starved && stream_m2 < FULL * section.area_m2).then_some(PartFull {
                branch: number,
                height_m: section.height_m,
                built_m2: section.area_m2,
                stream_m2,
            })
        };
        found.extend(branch.sections.iter().filter_map(thin));
        if let (true, Node::Junction(to)) = (branch.sections.is_empty(), branch.to) {
            let height_m = network.junctions_m[to];
            let speed = speed_head(branch) * flow * flow;
            // Before what is lost at its end.
            let head = flows.junctions_m[to] - height_m + branch.loss * speed;
            if head < FULL * speed {
                let fall = (2.0 * GRAVITY_M_PER_S2 * (basin_m - height_m).max(0.0)).sqrt();
                found.push(PartFull {
                    branch: number,
                    height_m,
                    built_m2: branch.area_m2,
                    stream_m2: (flow / fall).min(branch.area_m2),
                });
            }
        }
    }
    found
}

/// Pressure of the metal in a section of a sprue that runs full at a flow, over that of the air, as
/// a head in m; below nought it draws air.
pub fn pressure_head_m(basin_m: f64, section: &Section, flow_m3_s: f64) -> f64 {
    // A density of one over gravity turns pressure into head.
    let light = Density::from_kg_per_m3(1.0 / GRAVITY_M_PER_S2);
    let above = Length::from_m(basin_m - section.height_m);
    let area = Area::from_m2(section.area_m2);
    sprue_pressure(light, above, area, Flow::from_m3_per_s(flow_m3_s)).as_pa()
}

/// Area of the stream in a section below the place that passes least, by the free fall from there.
fn stream_below(sections: &[Section], basin_m: f64, at: &Section) -> f64 {
    let above = |section: &Section| Length::from_m((basin_m - section.height_m).max(0.0));
    let passes = |section: &Section| section.area_m2 * above(section).as_m().sqrt();
    let narrowest = sections
        .iter()
        .min_by(|a, b| passes(a).total_cmp(&passes(b)));
    let Some(narrowest) = narrowest.filter(|narrowest| narrowest.height_m > at.height_m) else {
        return at.area_m2;
    };
    let below = Length::from_m(narrowest.height_m - at.height_m);
    jet_area(Area::from_m2(narrowest.area_m2), above(narrowest), below).as_m2()
}
