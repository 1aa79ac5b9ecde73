//! Where a gate of a given size enters its casting.

use super::{
    APART_MM, Around, BITE_MM, Beside, FACING_COSTS_MM, Gate, HEAVY_COSTS_MM, STEP_MM, Size,
};
use crate::bars::OVERLAP_MM;
use crate::following::AlongJoint;
use crate::given::{Half, Heavy};
use crate::lie::Lying;
use crate::plan_view::{Footprint, Point, along, apart, passages, way_to};

/// A gate of one size looked for along one side of a casting.
pub(super) struct Search<'a> {
    pub(super) lying: &'a Lying,
    /// The casting along the joint, where gates may follow it off its level.
    pub(super) along_joint: Option<&'a AlongJoint<'a>>,
    pub(super) beside: &'a Beside,
    pub(super) size: Size,
    pub(super) half: Half,
    pub(super) around: &'a Around<'a>,
}

impl Search<'_> {
    /// The best places, as many as there have to be and no two in each other's way, and what they
    /// cost in the mean.
    pub(super) fn places(&self) -> (f64, Vec<Gate>) {
        let height = self.half.way() * self.size.thick_mm / 2.0;
        let cut = self.lying.cut(height);
        let [low, high] = self.lying.bounds;
        let axis = self.beside.axis;
        let (start, length) = (low[axis], high[axis] - low[axis]);
        let steps = (length / STEP_MM).ceil().max(2.0) as usize;
        let step = |place: usize| start + length * place as f64 / steps as f64;
        let mut tried: Vec<(f64, Gate)> = (1..steps)
            .filter_map(|place| self.at(step(place), &cut))
            .collect();
        tried.sort_by(|(a, _), (b, _)| a.total_cmp(b));
        let mut kept: Vec<Gate> = Vec::new();
        let mut all = 0.0;
        for (cost, gate) in tried {
            let is_clear =
                |other: &Gate| apart(other.from, gate.from) >= self.size.width_mm + APART_MM;
            if kept.len() < self.size.count && kept.iter().all(is_clear) {
                kept.push(gate);
                all += cost;
            }
        }
        (all / kept.len().max(1) as f64, kept)
    }

    /// A gate at one place along the runner, and what it costs.
    fn at(&self, along_mm: f64, cut: &[Vec<Point>]) -> Option<(f64, Gate)> {
        let Beside {
            axis,
            across_mm,
            side,
        } = *self.beside;
        let own = |along: f64, across: f64| {
            if axis == 0 {
                [along, across]
            } else {
                [across, along]
            }
        };
        let way = own(0.0, side);
        let edge = 0.45 * self.size.width_mm;
        let mut reach = [f64::NEG_INFINITY, f64::INFINITY];
        for aside in [-edge, 0.0, edge] {
            let start = own(along_mm + aside, across_mm);
            let [enters, leaves] = self.met(cut, start, way)?;
            reach = [reach[0].max(enters), reach[1].min(leaves)];
        }
        let [skin, behind] = reach;
        if behind - skin < 2.0 * OVERLAP_MM {
            return None;
        }
        let from = own(along_mm, across_mm);
        let gate = Gate {
            casting: self.lying.number,
            from,
            to: along(from, way, skin + BITE_MM.min((behind - skin) / 2.0)),
            half: self.half,
            thick_mm: self.size.thick_mm,
            width_mm: self.size.width_mm,
            follows: self.along_joint.is_some(),
        };
        let entry = along(from, way, skin);
        let off_level = || {
            self.around
                .face
                .off_level([from, entry], self.size.width_mm)
        };
        if !gate.follows && off_level().is_some() {
            return None;
        }
        let facing = self.faces(&gate, way, behind - skin) + self.meets_core(&gate, entry);
        let cost = skin + self.heaviness(entry) * HEAVY_COSTS_MM + facing;
        Some((cost, gate))
    }

    /// Where a half line enters the casting at the height of the gate, and leaves it.
    fn met(&self, cut: &[Vec<Point>], from: Point, way: Point) -> Option<[f64; 2]> {
        match self.along_joint {
            Some(along_joint) => {
                along_joint.met(from, way, self.half.way() * self.size.thick_mm / 2.0)
            }
            None => {
                let met = passages(cut, from, way);
                Some([*met.first()?, *met.get(1)?])
            }
        }
    }

    /// What the gate's way costs where a feeder, the sprue or a core lies in it.
    fn faces(&self, gate: &Gate, way: Point, wall_mm: f64) -> f64 {
        let covers = gate.covers();
        let tip = gate.half.way() * gate.thick_mm;
        let heights = [tip.min(0.0), tip.max(0.0)];
        let mut feeders = self.around.feeders.iter();
        let is_near = covers.gap(&self.around.sprue) < APART_MM
            || feeders.any(|feeder| feeder.gap(&covers, heights) < APART_MM);
        // A stream meets what lies within ten walls behind the one it enters through.
        let seen = passages(self.around.core_cuts, gate.to, way);
        let is_core = seen.first().is_some_and(|core| *core < 10.0 * wall_mm);
        FACING_COSTS_MM * (f64::from(u8::from(is_near)) + f64::from(u8::from(is_core)))
    }

    /// What it costs to run through a core or its print, or past one with too little sand between.
    fn meets_core(&self, gate: &Gate, entry: Point) -> f64 {
        let tip = gate.half.way() * gate.thick_mm;
        let heights = [tip.min(0.0), tip.max(0.0)];
        let covers = gate.covers();
        // Where the gate meets the casting the core is as near as the wall is thin.
        let (way, length) = way_to(entry, gate.from);
        let before = along(entry, way, APART_MM.min(length));
        let in_sand = Footprint::bar(gate.from, before, gate.width_mm);
        let meets = self.around.cores.iter().any(|core| {
            covers.gap_to(&core.mesh, heights) <= 0.0
                || in_sand.gap_to(&core.mesh, heights) < APART_MM
        });
        FACING_COSTS_MM * f64::from(u8::from(meets))
    }

    /// How heavy the casting is at a place: the modulus of the section whose heaviest ball lies
    /// nearest, over that of the heaviest.
    fn heaviness(&self, place: Point) -> f64 {
        let from = |heavy: &Heavy| {
            let middle = [heavy.place_mm[0], heavy.place_mm[1]];
            apart(middle, place) - heavy.inscribed.as_mm() / 2.0
        };
        let sections = &self.lying.sections;
        let nearest = sections.iter().min_by(|a, b| from(a).total_cmp(&from(b)));
        match (nearest, sections.first()) {
            (Some(nearest), Some(heaviest)) => nearest.modulus / heaviest.modulus,
            _ => 0.0,
        }
    }
}
