//! How a core box parts: the way its upper half is lifted, and the joint between the halves.
//!
//! A half lets the core go if nothing of the half lies between the core and the way that the half
//! is lifted. Along each way tried the core is cut into upright columns; what of the block would be
//! caught over or under the core is summed for the flat joint at which it is least; of the ways
//! that catch nothing the one with the shallowest halves wins. Where every flat joint catches, but
//! no column passes out of the core and into it again, the joint follows the core instead, as that
//! of a mould follows its part.

use crate::cores::CoreError;
use crate::cores::box_slides::{Room, could_leave};
use crate::draw::columns::{Columns, Plot, Span};
use crate::draw::frame::DrawFrame;
use crate::draw::search;
use crate::draw::undercut::undercuts;
use crate::draw::{DrawError, DrawSettings};
use crate::made::joint::Joint;
use crate::made::volume_mm3;
use crate::mesh::Mesh;
use crate::tree::Tree;
use crate::vector::{Vector, cross, dot, norm};

/// A core parted along one way.
#[derive(Clone, Debug)]
pub(super) struct Parted {
    /// How the core lies in its box, whose upper half is lifted along z.
    pub(super) frame: DrawFrame,
    /// The joint, in that frame.
    pub(super) joint: Joint,
    /// Length of column times its square on which the box is caught, mm³.
    pub(super) caught_mm3: f64,
    /// How much that may be, mm³.
    pub(super) most_mm3: f64,
}

/// Whether two halves let a core go.
#[derive(Clone, Debug)]
pub(super) enum Parting {
    /// They do.
    Free(Parted),
    /// No two do.
    Held {
        /// The flat joints by which slides could take out what is caught, one for each way to lift
        /// the upper half; those that hold least first.
        least: Vec<Parted>,
        /// What stays held and where.
        why: CoreError,
    },
}

/// Columns along the longer side of a core: half a hundred core walls, a few hundredths of a
/// second for each way.
const COLUMNS: usize = 120;

/// Share of the core that may be caught: what a column at the rim of a round core shows of its own
/// width. A true ledge of a tenth of the core's width holds ten times as much.
const CAUGHT: f64 = 0.005;

/// Lines of draw of the core that are tried beside those of its prints, when none of these does.
const SEARCHED: usize = 4;

/// Two ways are one where the cosine of the angle between them is at least this: a tenth of a
/// degree.
const SAME_WAY: f64 = 0.999_998;

/// Of the ways by which hardly anything is caught the one with the shallowest halves, which part
/// from the core with the least scraping; by a flat joint if there is one.
///
/// # Errors
///
/// A core that cannot be looked at.
pub(super) fn parted(core: &Mesh, prints: &[Vector]) -> Result<Parting, CoreError> {
    let most_mm3 = CAUGHT * volume_mm3(core);
    let mut stood: Vec<Stood> = ways(prints)
        .into_iter()
        .filter_map(|up| Stood::along(core, up))
        .collect();
    stood.sort_by(|a, b| a.height_mm.total_cmp(&b.height_mm));
    let flat = |stood: &Stood| Parted {
        frame: stood.frame,
        joint: Joint::Flat(stood.joint_mm),
        caught_mm3: stood.caught_mm3,
        most_mm3,
    };
    if let Some(free) = stood.iter().find(|way| way.caught_mm3 <= most_mm3) {
        return Ok(Parting::Free(flat(free)));
    }
    let searched = search::ways(core, None, &DrawSettings::suiting(core), SEARCHED)?;
    let searched = searched.iter().filter_map(|way| Stood::along(core, way.up));
    stood.extend(searched);
    if let Some(free) = stood.iter().find(|way| way.caught_mm3 <= most_mm3) {
        return Ok(Parting::Free(flat(free)));
    }
    let clear = stood.iter().filter(|way| way.between_mm3 <= most_mm3);
    let mut stepped = clear.filter_map(|way| way.stepped(most_mm3));
    if let Some(parted) = stepped.next() {
        return Ok(Parting::Free(parted));
    }
    drop(stepped);
    stood.sort_by(|a, b| a.caught_mm3.total_cmp(&b.caught_mm3));
    let why = held(core, &stood)?;
    let mut seen: Vec<Vector> = Vec::new();
    stood.retain(|way| {
        let up = way.frame.up;
        let is_new = seen.iter().all(|other| dot(*other, up).abs() < SAME_WAY);
        seen.push(up);
        is_new && way.slides_could_free(most_mm3)
    });
    let least = stood.iter().map(flat).collect();
    Ok(Parting::Held { least, why })
}

/// What stays held along the first way, and the middle of its largest place.
fn held(core: &Mesh, stood: &[Stood]) -> Result<CoreError, DrawError> {
    let [low, high] = core.bounds();
    let middle = [0, 1, 2].map(|axis| (low[axis] + high[axis]) / 2.0);
    let Some(least) = stood.first() else {
        return Ok(CoreError::NoBox {
            held_mm3: volume_mm3(core),
            centre_mm: middle,
            slides_sought: true,
        });
    };
    let found = undercuts(core, least.frame.up, &DrawSettings::suiting(core))?;
    Ok(CoreError::NoBox {
        held_mm3: least.caught_mm3,
        centre_mm: found
            .regions
            .first()
            .map_or(middle, |place| place.centre_mm),
        slides_sought: true,
    })
}

/// Ways to lift the upper half: the axes, across each print, and along it.
fn ways(prints: &[Vector]) -> Vec<Vector> {
    let axes = [[0.0, 0.0, 1.0], [0.0, 1.0, 0.0], [1.0, 0.0, 0.0]];
    let mut ways = axes.to_vec();
    for &print in prints.iter().filter(|print| norm(**print) > 0.0) {
        let across = axes.map(|axis| cross(print, axis));
        ways.extend(across.into_iter().filter(|way| norm(*way) > 0.1));
        ways.push(print);
    }
    for (at, &one) in prints.iter().enumerate() {
        let others = prints[at + 1..].iter().map(|&other| cross(one, other));
        ways.extend(others.filter(|way| norm(*way) > 0.1));
    }
    ways
}

/// A core as it stands when the upper half is lifted one way.
struct Stood {
    frame: DrawFrame,
    turned: Mesh,
    columns: Columns,
    /// Level of the flat joint by which least is caught.
    joint_mm: f64,
    /// What is caught by it.
    caught_mm3: f64,
    /// What of it no joint frees: it lies between stretches of core.
    between_mm3: f64,
    height_mm: f64,
}

impl Stood {
    fn along(core: &Mesh, up: Vector) -> Option<Stood> {
        let frame = DrawFrame::drawing_along(up)?;
        let turned = frame.turned(core);
        let columns = Columns::staggered(&turned, Plot::of_part(&turned, COLUMNS));
        let all = || (0..columns.len()).map(|column| columns.spans(column));
        // What is caught grows by a column for each end on the wrong side of the joint, and so is
        // least at the middle one of all ends.
        let mut ends: Vec<f64> = all().filter_map(ends_of).flatten().collect();
        ends.sort_by(f64::total_cmp);
        let joint_mm = *ends.get(ends.len() / 2)?;
        let [low, high] = turned.bounds();
        let square = columns.size_mm * columns.size_mm;
        Some(Stood {
            height_mm: high[2] - low[2],
            caught_mm3: square * all().map(|spans| caught(spans, joint_mm)).sum::<f64>(),
            between_mm3: square * all().map(between).sum::<f64>(),
            frame,
            joint_mm,
            columns,
            turned,
        })
    }

    /// Whether slides could take out what the flat joint catches, but for so much.
    fn slides_could_free(&self, most_mm3: f64) -> bool {
        let tree = Tree::over(&self.turned);
        let mut shut_mm3 = 0.0;
        for caught in self.caught_rooms() {
            if !could_leave(&caught, &self.turned, &tree) {
                shut_mm3 += caught.iter().map(|room| room.volume_mm3).sum::<f64>();
            }
        }
        shut_mm3 <= most_mm3
    }

    /// What the flat joint catches, by the pieces in which it hangs together.
    fn caught_rooms(&self) -> Vec<Vec<Room>> {
        let size_mm = self.columns.size_mm;
        // Less than a column is wide is what a sloping wall shows of its own slope.
        let on_column = |column: usize| {
            let [x, y] = self.columns.place_mm(column);
            let stretches = caught_stretches(self.columns.spans(column), self.joint_mm);
            let thick = stretches
                .into_iter()
                .filter(move |[from, to]| to - from > size_mm);
            thick.map(move |[from, to]| Room {
                place_mm: [x, y, (from + to) / 2.0],
                volume_mm3: size_mm * size_mm * (to - from),
            })
        };
        let mut is_new = vec![true; self.columns.len()];
        let mut pieces = Vec::new();
        for column in 0..self.columns.len() {
            let mut piece = Vec::new();
            let mut next = vec![column];
            while let Some(column) = next.pop() {
                if !std::mem::replace(&mut is_new[column], false) {
                    continue;
                }
                let before = piece.len();
                piece.extend(on_column(column));
                if piece.len() > before {
                    next.extend(self.columns.beside(column));
                }
            }
            if !piece.is_empty() {
                pieces.push(piece);
            }
        }
        pieces
    }

    /// Parted by a joint that follows the core, if hardly anything is caught by it. It has so much
    /// room around the core that it can come down to its level; the box is cut out of its middle.
    fn stepped(&self, most_mm3: f64) -> Option<Parted> {
        let aside = self.height_mm.max(ASIDE * self.turned.diagonal());
        let [low, high] = self.turned.bounds();
        let flask = [low.map(|at| at - aside), high.map(|at| at + aside)];
        let joint = Joint::along_the_line(&self.turned, flask).ok()?;
        let square = self.columns.size_mm * self.columns.size_mm;
        let height = joint.heights();
        let on_column = |column: usize| {
            let spans = self.columns.spans(column);
            match spans {
                [] => 0.0,
                _ => caught(spans, height(self.columns.place_mm(column))),
            }
        };
        let caught_mm3 = square * (0..self.columns.len()).map(on_column).sum::<f64>();
        drop(height);
        (caught_mm3 <= most_mm3).then_some(Parted {
            frame: self.frame,
            joint,
            caught_mm3,
            most_mm3,
        })
    }
}

/// Room beside a core for its joint, as a share of its size: more than the wall of any box, so that
/// the joint is there wherever the box is cut.
const ASIDE: f64 = 0.5;

fn ends_of(spans: &[Span]) -> Option<[f64; 2]> {
    Some([spans.first()?.from_mm, spans.last()?.to_mm])
}

/// Length of a column on which the block is caught.
fn caught(spans: &[Span], joint_mm: f64) -> f64 {
    let stretches = caught_stretches(spans, joint_mm).into_iter();
    stretches.map(|[from, to]| to - from).sum()
}

/// Stretches of a column on which the block is caught: between stretches of core, and between the
/// joint and a core that lies wholly on one side of it.
fn caught_stretches(spans: &[Span], joint_mm: f64) -> Vec<[f64; 2]> {
    let Some([from, to]) = ends_of(spans) else {
        return Vec::new();
    };
    let between = spans.windows(2).map(|two| [two[0].to_mm, two[1].from_mm]);
    let beside = [[joint_mm, from], [to, joint_mm]];
    let beside = beside.into_iter().filter(|[from, to]| from < to);
    between.chain(beside).collect()
}

/// Length of a column between stretches of core.
fn between(spans: &[Span]) -> f64 {
    let gaps = spans.windows(2).map(|two| two[1].from_mm - two[0].to_mm);
    gaps.sum()
}
