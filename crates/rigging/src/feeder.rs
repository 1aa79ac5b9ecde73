//! Feeders: beside their section with a neck, or on top of it.
//!
//! A section at the edge of the casting is fed from its side, through a neck in the joint; one
//! that lies further in is fed from above. Feeders keep off cores and their prints: one from
//! above moves aside for them as far as the section reaches. A feeder whose top comes near the
//! top of the cope is left open and goes right through it; one that stands lower is closed, with
//! a flat top.

mod off_cores;

use std::f64::consts::TAU;

use crate::bars::{Bar, OVERLAP_MM, ROUND_SLOPE, SLOPE, round};
use crate::cut::{Cut, Draw};
use crate::error::MouldError;
use crate::face::Face;
use crate::given::{FeederSize, Given, Heavy};
use crate::lie::{Lying, nearest};
use crate::piece::Piece;
use crate::placement::FeederAt;
use crate::plan_view::{Footprint, Point, along, flat, passages, way_to};

/// A feeder in its place.
#[derive(Clone)]
pub(crate) struct Feeder {
    /// The casting it feeds, from one.
    pub(crate) casting: usize,
    /// As it is cut.
    pub(crate) cut: Cut,
    /// How much lower it stands than wanted, mm.
    pub(crate) low_mm: f64,
}

/// What feeders keep clear of.
pub(crate) struct Clear<'a> {
    /// All castings.
    pub(crate) castings: &'a [Lying],
    /// Runners, as far as they may run, and the sprue.
    pub(crate) metal: &'a [Footprint],
    /// The joint: a feeder beside its casting stands where it is level.
    pub(crate) face: &'a Face,
}

/// A section whose skin lies further from its middle than this many of its largest balls is fed
/// from above. Less, and no bar is fed from its side; more, and a neck draws on the thin metal of a
/// plate.
const FROM_THE_SIDE: f64 = 1.5;

/// Ways tried around a section.
const WAYS: usize = 96;

/// Sand kept to the wall of the flask and to other metal, mm: the least that can be rammed.
const APART_MM: f64 = 10.0;

/// How much less of it a feeder beside its casting may have, mm, before it is put on top: that
/// costs more metal and a saw cut, and the lack is told.
const LACKING_MM: f64 = 2.0;

/// Length of a neck over its width (`wlodawer-1966`: up to half its width it is kept hot from both
/// ends), and the least sand, mm, between feeder and casting.
const NECK_OF_WIDTH: f64 = 0.5;
const SHORTEST_NECK_MM: f64 = 8.0;

/// Sand over a closed feeder, mm: thinner, and the metal lifts it off. One that would have less is
/// left open.
const LID_MM: f64 = 25.0;

/// The feeders, by the rules or as they are wanted.
pub(crate) fn feeders(
    given: &Given,
    wanted: Option<&[FeederAt]>,
    clear: &Clear<'_>,
) -> Result<Vec<Feeder>, MouldError> {
    let by_rule = [FeederAt::Section(1)];
    let places = match (wanted, given.sizes.feeder) {
        (Some(places), _) => places,
        // A casting without a section has nothing to be fed.
        (None, Some(_)) if !given.casting.sections.is_empty() => &by_rule[..],
        (None, _) => &[],
    };
    let mut feeders: Vec<Feeder> = Vec::new();
    for place in places {
        let size = given.sizes.feeder.ok_or(MouldError::NoFeeder {
            place_mm: told(given, place),
        })?;
        match place {
            FeederAt::Section(number) => {
                for lying in clear.castings {
                    let sections = lying.sections.len();
                    let none = MouldError::NoSection {
                        number: *number,
                        sections,
                    };
                    let section = number.checked_sub(1).and_then(|n| lying.sections.get(n));
                    let heavy = section.ok_or(none)?;
                    let next = Next {
                        given,
                        size,
                        lying,
                        number: feeders.len() + 1,
                    };
                    feeders.push(next.at_section(heavy, clear)?);
                }
            }
            FeederAt::Point(point) => {
                if let Some(lying) = nearest(clear.castings, *point) {
                    let next = Next {
                        given,
                        size,
                        lying,
                        number: feeders.len() + 1,
                    };
                    feeders.push(next.at_point(*point)?);
                }
            }
        }
    }
    Ok(feeders)
}

fn told(given: &Given, place: &FeederAt) -> [f64; 2] {
    match place {
        FeederAt::Point(point) => *point,
        FeederAt::Section(number) => {
            let section = number
                .checked_sub(1)
                .and_then(|n| given.casting.sections.get(n));
            section.map_or([0.0; 2], |heavy| flat(heavy.place_mm))
        }
    }
}

/// The feeder to be placed next.
struct Next<'a> {
    given: &'a Given,
    size: FeederSize,
    lying: &'a Lying,
    number: usize,
}

/// A neck in the joint.
#[derive(Clone, Copy)]
struct Neck {
    /// Within the casting.
    from: Point,
    /// The middle of the feeder.
    to: Point,
    /// Below and above the joint.
    heights: [f64; 2],
}

impl Next<'_> {
    fn at_section(&self, heavy: &Heavy, clear: &Clear<'_>) -> Result<Feeder, MouldError> {
        match self.best_side(heavy, clear) {
            Some(neck) => self.beside(&neck),
            None => self.on_top(self.off_cores(heavy, clear)),
        }
    }

    /// On the casting it stands on it; beside it, it gets a neck to the nearest heavy section.
    fn at_point(&self, point: Point) -> Result<Feeder, MouldError> {
        if !self.lying.heights_at(point).is_empty() {
            return self.on_top(point);
        }
        let towards = |heavy: &&Heavy| way_to(point, flat(heavy.place_mm)).1;
        let sections = self.lying.sections.iter();
        let middle = sections.min_by(|a, b| towards(a).total_cmp(&towards(b)));
        let bounds = self.lying.bounds;
        let middle = middle.map_or(
            [0, 1, 2].map(|axis| (bounds[0][axis] + bounds[1][axis]) / 2.0),
            |heavy| heavy.place_mm,
        );
        let heights = self.neck_heights(middle[2]);
        let cut = self.lying.cut((heights[0] + heights[1]) / 2.0);
        let (way, length) = way_to(point, flat(middle));
        let skin = passages(&cut, point, way)
            .first()
            .copied()
            .unwrap_or(length);
        let from = along(point, way, skin + 2.0 * OVERLAP_MM);
        self.beside(&Neck {
            from,
            to: point,
            heights,
        })
    }

    fn radius_mm(&self) -> f64 {
        self.size.diameter.as_mm() / 2.0
    }

    fn neck_length_mm(&self) -> f64 {
        (self.size.neck.as_mm() * NECK_OF_WIDTH).max(SHORTEST_NECK_MM)
    }

    /// Through the joint where the casting lies to both sides of the section's place, else in the
    /// half where it lies.
    fn neck_heights(&self, place_mm: f64) -> [f64; 2] {
        let side = self.size.neck.as_mm();
        let [low, high] = [0, 1].map(|end| self.lying.bounds[end][2]);
        match place_mm {
            _ if high < side / 4.0 || place_mm < -side / 2.0 => [-side.min(-low), 0.0],
            _ if low > -side / 4.0 || place_mm > side / 2.0 => [0.0, side.min(high)],
            _ => [-side / 2.0, side / 2.0],
        }
    }

    /// The way around the section by which a feeder lies nearest to it and clear of all else.
    fn best_side(&self, heavy: &Heavy, clear: &Clear<'_>) -> Option<Neck> {
        let heights = self.neck_heights(heavy.place_mm[2]);
        let cut = self.lying.cut((heights[0] + heights[1]) / 2.0);
        let ways = (0..WAYS).filter_map(|way| {
            let (y, x) = (TAU * way as f64 / WAYS as f64).sin_cos();
            self.side(heavy, [x, y], &cut, heights, clear)
        });
        let best = ways.min_by(|(a, _), (b, _)| a.total_cmp(b));
        best.map(|(_, neck)| neck)
    }

    fn side(
        &self,
        heavy: &Heavy,
        way: Point,
        cut: &[Vec<Point>],
        heights: [f64; 2],
        clear: &Clear<'_>,
    ) -> Option<(f64, Neck)> {
        let middle = flat(heavy.place_mm);
        let aside = [-way[1], way[0]];
        let half = 0.4 * self.size.neck.as_mm();
        let mut skin = [f64::INFINITY, f64::NEG_INFINITY];
        for off in [-half, 0.0, half] {
            let last = *passages(cut, along(middle, aside, off), way).last()?;
            skin = [skin[0].min(last), skin[1].max(last)];
        }
        if skin[1] > FROM_THE_SIDE * heavy.inscribed.as_mm() {
            return None;
        }
        let out = skin[1] + self.neck_length_mm() + self.radius_mm();
        let neck = Neck {
            from: along(middle, way, skin[0] - 2.0 * OVERLAP_MM),
            to: along(middle, way, out),
            heights,
        };
        let sand = [along(middle, way, skin[1]), neck.to];
        if clear.face.off_level(sand, 2.0 * self.radius_mm()).is_some() {
            return None;
        }
        let outside = Footprint::bar(sand[0], sand[1], self.size.neck.as_mm());
        let mut cores = clear.castings.iter().flat_map(|lying| &lying.cores);
        if cores.any(|core| outside.gap_to(&core.mesh, heights) <= 0.0) {
            return None;
        }
        let spare = self.spare(&neck, clear)?;
        // Room is worth a fifth of nearness, up to what no longer matters.
        Some((skin[1] - 0.2 * spare.min(30.0), neck))
    }

    /// Sand beside a feeder past the least there has to be, or nothing where too much is lacking.
    fn spare(&self, neck: &Neck, clear: &Clear<'_>) -> Option<f64> {
        let heights = self.heights(neck);
        let widest = 2.0 * self.radius_mm() + ROUND_SLOPE * heights[1];
        let covers = Footprint::round(neck.to, widest);
        let inside = [self.given.flask.length, self.given.flask.width].map(|side| side.as_mm());
        let [low, high] = covers.bounds();
        let walls = [0, 1].map(|axis| low[axis].min(inside[axis] - high[axis]) - APART_MM);
        let mut spare = walls[0].min(walls[1]);
        for metal in clear.metal {
            spare = spare.min(covers.gap(metal) - APART_MM);
        }
        if spare < -LACKING_MM {
            return None;
        }
        for lying in clear.castings {
            let wanted = match lying.number == self.lying.number {
                // Less by its slope, and by a hair, as its own skin lies as far off as the neck is
                // long.
                true => self.neck_length_mm() - (widest / 2.0 - self.radius_mm()) - 0.5,
                false => APART_MM,
            };
            spare = spare.min(covers.gap_to(&lying.mesh, heights) - wanted);
            // What lies behind the wall is further off than the wall; a print may be nearer.
            for core in &lying.cores {
                spare = spare.min(covers.gap_to(&core.mesh, heights) - wanted.min(APART_MM));
            }
        }
        (spare >= -LACKING_MM).then_some(spare)
    }

    /// Foot and top of a feeder beside its casting; it stands at least half of its width above
    /// the joint, so that the air bears on it.
    fn heights(&self, neck: &Neck) -> [f64; 2] {
        let foot = neck.heights[0].min(0.0);
        let top = (foot + self.size.height.as_mm()).max(self.radius_mm());
        let cope = self.given.flask.cope.as_mm();
        [foot, if top > cope - LID_MM { cope } else { top }]
    }

    fn beside(&self, neck: &Neck) -> Result<Feeder, MouldError> {
        let across = 2.0 * self.radius_mm();
        let [foot, top] = self.heights(neck);
        let is_open = top >= self.given.flask.cope.as_mm();
        // It leaves the sand the way it is open, and is as wide as wanted half way up.
        let lean = ROUND_SLOPE * top;
        let (draw, [at_joint, at_top]) = match is_open {
            true => (Draw::Upward, [across - lean, across + lean]),
            false => (Draw::FromJoint, [across + lean, across - lean]),
        };
        let mut shapes = Vec::new();
        let mut start = [0.0, at_joint];
        if foot < 0.0 {
            let widths = [at_joint + 2.0 * ROUND_SLOPE * foot, at_joint];
            shapes.push((round(neck.to, [foot, 0.0], widths), Draw::FromJoint));
            // What stands above begins within what lies below, a little narrower.
            start = [-OVERLAP_MM, at_joint - OVERLAP_MM];
        }
        shapes.push((round(neck.to, [start[0], top], [start[1], at_top]), draw));
        for height in neck.heights.into_iter().filter(|height| *height != 0.0) {
            let bar = Bar {
                from: neck.from,
                to: neck.to,
                width_mm: self.size.neck.as_mm(),
                foot_mm: 0.0,
                tip_mm: height,
                slope: SLOPE,
            };
            shapes.push((Ok(bar.mesh()), Draw::FromJoint));
        }
        let low_mm = foot + self.size.height.as_mm() - top;
        self.made(
            Footprint::round(neck.to, across + lean),
            shapes,
            low_mm.max(0.0),
        )
    }

    /// On the casting, open to the top: its neck is wider above than below, so that it leaves the
    /// sand upward.
    fn on_top(&self, point: Point) -> Result<Feeder, MouldError> {
        let heights = self.lying.heights_at(point);
        let skin = heights.last().copied().unwrap_or(0.0);
        let cope = self.given.flask.cope.as_mm();
        let neck_mm = (self.size.neck.as_mm() * NECK_OF_WIDTH).max(SHORTEST_NECK_MM);
        let across = 2.0 * self.radius_mm();
        let narrow = self.size.neck.as_mm().min(across);
        let foot = skin + neck_mm;
        let bite = match heights.as_slice() {
            [.., below, above] => (above - below).min(4.0 * OVERLAP_MM) / 2.0,
            _ => OVERLAP_MM,
        };
        let top = (foot + across / 4.0).max(cope);
        let widths = [across, across + 2.0 * ROUND_SLOPE * (top - foot)];
        let neck = round(
            point,
            [skin - bite, foot + OVERLAP_MM],
            [narrow, (narrow + SLOPE * neck_mm).min(across - OVERLAP_MM)],
        );
        let shapes = vec![
            (neck, Draw::Upward),
            (round(point, [foot, top], widths), Draw::Upward),
        ];
        let low_mm = (self.size.height.as_mm() - (top - foot)).max(0.0);
        self.made(Footprint::round(point, widths[1]), shapes, low_mm)
    }

    fn made(
        &self,
        covers: Footprint,
        shapes: Vec<(
            Result<pattern::mesh::Mesh, pattern::shape::ShapeError>,
            Draw,
        )>,
        low_mm: f64,
    ) -> Result<Feeder, MouldError> {
        Ok(Feeder {
            casting: self.lying.number,
            cut: Cut::of(Piece::Feeder(self.number), covers, shapes)?,
            low_mm,
        })
    }
}
