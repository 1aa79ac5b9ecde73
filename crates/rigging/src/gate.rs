//! Gates: where the metal enters a casting.
//!
//! A gate goes square from the runner to the casting, at a section as thin as can be had, by the
//! shortest way, faces neither a core nor a feeder, and keeps off the prints of cores. It lies in
//! the half of the mould in which the casting meets the joint: for metals whose slag floats,
//! below a runner in the cope; for others above a runner in the drag, so that the runner is full
//! before the first metal enters.

mod search;

use self::search::Search;
use crate::bars::{Bar, OVERLAP_MM, SLOPE};
use crate::cut::{Cut, Draw};
use crate::error::MouldError;
use crate::face::Face;
use crate::following::{self, AlongJoint};
use crate::given::{Given, Half};
use crate::lie::{Lying, LyingCore};
use crate::piece::Piece;
use crate::plan_view::{Footprint, Point, along, way_to};
use crate::runner::Section;

/// A gate in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Gate {
    /// The casting, from one.
    pub(crate) casting: usize,
    /// On the line of the runner.
    pub(crate) from: Point,
    /// Within the casting.
    pub(crate) to: Point,
    /// Half of the mould in which it is cut.
    pub(crate) half: Half,
    /// Depth from the joint.
    pub(crate) thick_mm: f64,
    /// Width half way down.
    pub(crate) width_mm: f64,
    /// Whether the joint leaves its level on the way, and the gate with it.
    pub(crate) follows: bool,
}

/// What stands in the way of gates.
pub(crate) struct Around<'a> {
    /// Feeders placed already.
    pub(crate) feeders: &'a [Cut],
    /// The sprue with its well.
    pub(crate) sprue: Footprint,
    /// Cores with their prints.
    pub(crate) cores: &'a [&'a LyingCore],
    /// The same, cut at the height of the gates.
    pub(crate) core_cuts: &'a [Vec<Point>],
    /// The joint.
    pub(crate) face: &'a Face,
}

/// Where the runner runs from which a casting is fed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Beside {
    /// Along the flask (0) or across it (1).
    pub(crate) axis: usize,
    /// Where it lies on the other axis.
    pub(crate) across_mm: f64,
    /// To which side of it the casting lies.
    pub(crate) side: f64,
}

/// Widths over thickness of a gate, and what each costs, mm of gate: flat, so that it breaks off
/// (common practice, no source), and less so only where that saves a way. Wider than the first it
/// chills before it is full, narrower than the last it feeds back from the casting.
const FLATNESS: [(f64, f64); 3] = [(4.0, 0.0), (2.0, 10.0), (1.0, 25.0)];

/// Widest single gate, mm: a wider one is parted into two, as sand hangs badly over a broad slit
/// (common practice, no source).
const WIDEST_MM: f64 = 40.0;

/// Thinnest gate, mm: thinner ones freeze on the way (common practice, no source).
const THINNEST_MM: f64 = 3.0;

/// Part of the depth of the casting, or of the runner, that a gate takes at most, so that it
/// breaks in the gate.
const OF_THE_DEPTH: f64 = 0.8;

/// How far a gate reaches into the casting, mm, where the wall behind the skin is thick enough.
const BITE_MM: f64 = 3.0;

/// Places tried along a casting are this far apart, mm.
const STEP_MM: f64 = 2.0;

/// How much longer a gate may be, mm, for the sake of entering at a section as thin as nothing
/// rather than at the heaviest.
const HEAVY_COSTS_MM: f64 = 60.0;

/// What facing a core or a feeder costs, mm of gate: more than any flask is long, so that it is
/// only done where there is no other place, and then told.
const FACING_COSTS_MM: f64 = 1e5;

/// Into how many narrower gates one may be parted where it finds no place in one piece, as at the
/// round of a boss; each more has to save as much way, mm, as it takes to cut and to break off.
const MOST_PARTS: usize = 4;
const PART_COSTS_MM: f64 = 25.0;

/// What the half that the rule does not prefer has to save, mm of gate.
const OTHER_HALF_COSTS_MM: f64 = 40.0;

/// Sand kept between a gate and a feeder, the sprue or a print, mm.
const APART_MM: f64 = 10.0;

/// The gates of one casting by the rules: none where the runner cannot see it. Where the joint
/// leaves its level around it, a level way is taken if there is one that faces nothing.
pub(crate) fn gates(
    given: &Given,
    lying: &Lying,
    beside: &Beside,
    section: &Section,
    around: &Around<'_>,
) -> Vec<Gate> {
    let search = |along_joint: Option<&AlongJoint<'_>>| {
        best(given, (lying, along_joint), beside, section, around)
    };
    let level = search(None);
    let is_fair = |(cost, _): &(f64, Vec<Gate>)| *cost < FACING_COSTS_MM;
    let found = match around.face.wandering.is_some() && !level.as_ref().is_some_and(is_fair) {
        true => {
            let followed = search(Some(&AlongJoint::of(lying, around.face)));
            let ways = level.into_iter().chain(followed);
            ways.min_by(|(a, _), (b, _)| a.total_cmp(b))
        }
        false => level,
    };
    found.map_or_else(Vec::new, |(_, places)| places)
}

/// The least that gates cost, and these gates.
fn best(
    given: &Given,
    (lying, along_joint): (&Lying, Option<&AlongJoint<'_>>),
    beside: &Beside,
    section: &Section,
    around: &Around<'_>,
) -> Option<(f64, Vec<Gate>)> {
    let preferred = given.sizes.runner_half.other();
    let mut best: Option<(f64, Vec<Gate>)> = None;
    for half in [preferred, preferred.other()] {
        let sizes = FLATNESS
            .iter()
            .flat_map(|flat| (1..=MOST_PARTS).map(move |parts| (flat, parts)));
        for ((flatness, costs), parts) in sizes {
            let Some(size) = Size::of(given, lying, half, section, (*flatness, parts)) else {
                continue;
            };
            let search = Search {
                lying,
                along_joint,
                beside,
                size,
                half,
                around,
            };
            let (mean, places) = search.places();
            let missing = (size.count - places.len()) as f64 / size.count as f64;
            let other = if half == preferred {
                0.0
            } else {
                OTHER_HALF_COSTS_MM
            };
            let cost = mean
                + costs
                + other
                + (parts - 1) as f64 * PART_COSTS_MM
                + missing * 2.0 * FACING_COSTS_MM;
            let is_better = best.as_ref().is_none_or(|(least, _)| cost < *least);
            if !places.is_empty() && is_better {
                best = Some((cost, places));
            }
        }
    }
    best
}

/// A gate that enters at a point given, from the nearest point of a runner.
pub(crate) fn gate_at(
    given: &Given,
    lying: &Lying,
    from: Point,
    entry: Point,
    section: &Section,
    face: &Face,
) -> Option<Gate> {
    let (way, _) = way_to(from, entry);
    let to = along(entry, way, BITE_MM);
    let joint_mm = face.height_mm(to);
    let preferred = given.sizes.runner_half.other();
    let sized = [preferred, preferred.other()].map(|half| {
        let size = Size::of(given, lying, half, section, (FLATNESS[0].0, 1))?;
        Some((half, size))
    });
    let meets = |(half, size): &&(Half, Size)| {
        lying.has_metal(to, joint_mm + half.way() * size.thick_mm / 2.0)
    };
    let (half, size) = sized
        .iter()
        .flatten()
        .find(meets)
        .or(sized.iter().flatten().next())?;
    Some(Gate {
        casting: lying.number,
        from,
        to,
        half: *half,
        thick_mm: size.thick_mm,
        width_mm: size.width_mm * size.count as f64,
        follows: face
            .off_level([from, entry], size.width_mm * size.count as f64)
            .is_some(),
    })
}

impl Gate {
    /// As it is cut: a bar from the runner into the casting, with a root in a runner that lies in
    /// the other half.
    pub(crate) fn cut(
        &self,
        number: usize,
        section: &Section,
        face: &Face,
    ) -> Result<Cut, MouldError> {
        let piece = Piece::Gate(number);
        let bar = Bar {
            from: self.from,
            to: self.to,
            width_mm: self.width_mm,
            foot_mm: 0.0,
            tip_mm: self.half.way() * self.thick_mm,
            slope: SLOPE,
        };
        let mesh = match self.follows {
            true => following::cut(self, &piece, face)?,
            false => bar.mesh(),
        };
        let mut shapes = vec![(Ok(mesh), Draw::FromJoint)];
        if self.half != section.half {
            let (way, _) = way_to(self.from, self.to);
            let reach = section.width_mm / 2.0 - OVERLAP_MM;
            let root = Bar {
                from: self.from,
                to: along(self.from, way, reach.max(OVERLAP_MM)),
                width_mm: self.width_mm,
                foot_mm: -OVERLAP_MM,
                tip_mm: OVERLAP_MM,
                slope: 0.0,
            };
            shapes.push((Ok(root.mesh()), Draw::FromJoint));
        }
        Cut::of(piece, self.covers(), shapes)
    }

    /// What it covers on the joint.
    pub(crate) fn covers(&self) -> Footprint {
        let lean = self.thick_mm * SLOPE;
        Footprint::bar(self.from, self.to, self.width_mm + lean)
    }
}

/// Thickness, width and number of the gates of one casting.
#[derive(Clone, Copy)]
struct Size {
    thick_mm: f64,
    width_mm: f64,
    count: usize,
}

impl Size {
    /// Nothing where the casting has too little metal in this half.
    fn of(
        given: &Given,
        lying: &Lying,
        half: Half,
        section: &Section,
        (flatness, parts): (f64, usize),
    ) -> Option<Size> {
        let area = given.sizes.gates.as_mm2() / given.count as f64;
        let reach = lying.reach_mm(half).min(match half == section.half {
            true => section.depth_mm,
            false => f64::INFINITY,
        });
        let most = reach * OF_THE_DEPTH;
        let thick_mm = (area / flatness).sqrt().max(THINNEST_MM).min(most);
        let width = area / thick_mm;
        let count = (width / WIDEST_MM).ceil().max(1.0) * parts as f64;
        (most > 0.5).then_some(Size {
            thick_mm,
            width_mm: width / count,
            count: count as usize,
        })
    }
}
