//! How castings, runners and sprue share the joint.
//!
//! Castings lie in rows; two rows share the runner between them, and a row left over has one of
//! its own. The sprue stands in the runner beside a casting, in the runner past the last casting,
//! or, where there are several runners, in a main runner that joins them. Each way may lie the
//! other way round. Of the ways that go into the flask the one is taken that lacks the least
//! sand, where the prints of cores that stick out towards a runner count as sand that is lacking.

use mould::flask::SPRUE_TO_WALL;

use crate::given::Given;
use crate::plan_view::Point;

/// Castings and runners on the joint.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Arrangement {
    /// Front left corner of the box of each casting.
    pub(crate) corners: Vec<Point>,
    /// The runners that have gates.
    pub(crate) branches: Vec<Branch>,
    /// Where along the flask, or across it, the runner lies that joins the branches.
    pub(crate) main_mm: Option<f64>,
    /// Middle of the sprue.
    pub(crate) sprue: Point,
    /// Into how many runners, counted at their ends, the metal divides.
    pub(crate) arms: usize,
    /// Sand that is lacking in all.
    lack_mm: f64,
}

/// A straight runner with castings beside it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Branch {
    /// Along the flask (0) or across it (1).
    pub(crate) axis: usize,
    /// Where it lies on the other axis.
    pub(crate) across_mm: f64,
    /// Castings it feeds, and to which side of it each lies: +1 or −1.
    pub(crate) feeds: Vec<(usize, f64)>,
}

/// What the arrangement has to know of the rigging.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Widths {
    /// Of a runner at the joint.
    pub(crate) runner_mm: f64,
    /// Of the sprue with its well.
    pub(crate) sprue_mm: f64,
}

/// The way that lacks the least sand, or nothing where none goes into the flask at all.
pub(crate) fn arrange(given: &Given, widths: &Widths) -> Option<Arrangement> {
    let ways = [
        (1, SprueAt::Beside),
        (0, SprueAt::Beside),
        (1, SprueAt::End),
        (0, SprueAt::End),
        (1, SprueAt::Main),
        (0, SprueAt::Main),
    ];
    let mut best: Option<Arrangement> = None;
    let sides = [false, true].map(|is_mirrored| ways.map(|way| (way, is_mirrored)));
    for ((axis, sprue_at), is_mirrored) in sides.into_iter().flatten() {
        let way = Way {
            given,
            widths,
            axis,
            sprue_at,
        };
        let Some(mut way) = way.arranged() else {
            continue;
        };
        if is_mirrored {
            way.mirror(given, axis);
        }
        way.lack_mm += way.prints_in_the_way_mm(given);
        // A tenth of a millimetre of sand is no reason to prefer a later way.
        let is_better = |than: &Arrangement| way.lack_mm + 0.1 < than.lack_mm;
        if best.as_ref().is_none_or(is_better) {
            best = Some(way);
        }
    }
    best
}

impl Arrangement {
    /// Lays everything the other way round across its branches, which run along `axis`.
    fn mirror(&mut self, given: &Given, axis: usize) {
        let across = 1 - axis;
        let inside = [given.flask.length, given.flask.width][across].as_mm();
        let each = given.layout.each[across].as_mm();
        for corner in &mut self.corners {
            corner[across] = inside - corner[across] - each;
        }
        for branch in &mut self.branches {
            branch.across_mm = inside - branch.across_mm;
            branch.feeds.iter_mut().for_each(|(_, side)| *side = -*side);
        }
        self.sprue[across] = inside - self.sprue[across];
    }

    /// How far prints stick out of castings towards the runners that feed these, the furthest, mm.
    fn prints_in_the_way_mm(&self, given: &Given) -> f64 {
        let out = prints_out_mm(given);
        let towards = self.branches.iter().flat_map(|branch| {
            let sides = branch.feeds.iter();
            // A casting on the low side of its runner turns its high side to it.
            sides.map(|(_, side)| out[1 - branch.axis][usize::from(*side < 0.0)])
        });
        towards.fold(0.0, f64::max)
    }
}

/// How far the cores of a casting stick out of it as it lies in the flask: along it and across it,
/// to the low side and to the high one, mm.
fn prints_out_mm(given: &Given) -> [[f64; 2]; 2] {
    let own = given.casting.mesh.bounds();
    let mut out = [[0.0_f64; 2]; 2];
    for core in &given.casting.cores {
        let [low, high] = core.mesh.bounds();
        for axis in 0..2 {
            out[axis][0] = out[axis][0].max(own[0][axis] - low[axis]);
            out[axis][1] = out[axis][1].max(high[axis] - own[1][axis]);
        }
    }
    // A quarter turn takes y to the other way along x, and x to y.
    match given.layout.turned {
        false => out,
        true => [[out[1][1], out[1][0]], out[0]],
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum SprueAt {
    Beside,
    End,
    Main,
}

struct Way<'a> {
    given: &'a Given,
    widths: &'a Widths,
    /// The axis along which the branches run.
    axis: usize,
    sprue_at: SprueAt,
}

/// Something that takes its place in a row, with the sand before it.
struct Stands {
    what: Stand,
    width_mm: f64,
    sand_before_mm: f64,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Stand {
    Casting(usize),
    Branch,
    Sprue,
}

impl Way<'_> {
    fn arranged(&self) -> Option<Arrangement> {
        let layout = &self.given.layout;
        let (along, across) = (layout.rows[self.axis], layout.rows[1 - self.axis]);
        let branches = across.div_ceil(2);
        if (self.sprue_at == SprueAt::Main) != (branches > 1) {
            return None;
        }
        let across = self.across(across);
        let along = self.along(along);
        let (across_starts, across_lack) = spread(self.inside(1 - self.axis), &across)?;
        let (along_starts, along_lack) = spread(self.inside(self.axis), &along)?;
        let columns = starts_of_castings(&along, &along_starts);
        let rows = starts_of_castings(&across, &across_starts);
        let lines = middles(&across, &across_starts, Stand::Branch);
        let own = |along: f64, across: f64| match self.axis {
            0 => [along, across],
            _ => [across, along],
        };
        let place = |casting: usize| self.place(casting);
        let corners = (0..self.given.count).map(|casting| {
            let [column, row] = place(casting);
            Some(own(*columns.get(column)?, *rows.get(row)?))
        });
        let corners: Vec<Point> = corners.collect::<Option<_>>()?;
        let branch = |(number, across_mm): (usize, &f64)| {
            let beside = (0..self.given.count).filter(|&casting| place(casting)[1] / 2 == number);
            let side = |casting| {
                if place(casting)[1] % 2 == 0 {
                    -1.0
                } else {
                    1.0
                }
            };
            Branch {
                axis: self.axis,
                across_mm: *across_mm,
                feeds: beside.map(|casting| (casting, side(casting))).collect(),
            }
        };
        let joined = middles(&along, &along_starts, Stand::Sprue)
            .first()
            .copied();
        let sprue_along = match (joined, columns.first(), columns.last()) {
            (Some(middle), ..) => middle,
            (None, Some(first), _) if columns.len() == 1 => first + self.widths.sprue_mm / 2.0,
            (None, Some(first), Some(last)) => (first + last + self.each(self.axis)) / 2.0,
            _ => return None,
        };
        let (first, last) = (*lines.first()?, *lines.last()?);
        Some(Arrangement {
            corners,
            branches: lines.iter().enumerate().map(branch).collect(),
            main_mm: joined.filter(|_| self.sprue_at == SprueAt::Main),
            sprue: own(sprue_along, (first + last) / 2.0),
            arms: match self.sprue_at {
                SprueAt::Beside => columns.len().min(2),
                SprueAt::End => 1,
                SprueAt::Main => branches,
            },
            lack_mm: across_lack + along_lack,
        })
    }

    /// Column and row of a casting as this way counts them.
    fn place(&self, casting: usize) -> [usize; 2] {
        let along = self.given.layout.rows[0].max(1);
        let [x, y] = [casting % along, casting / along];
        if self.axis == 0 { [x, y] } else { [y, x] }
    }

    fn inside(&self, axis: usize) -> f64 {
        [self.given.flask.length, self.given.flask.width][axis].as_mm()
    }

    fn each(&self, axis: usize) -> f64 {
        self.given.layout.each[axis].as_mm()
    }

    /// Rows and the runners between them.
    fn across(&self, rows: usize) -> Vec<Stands> {
        let sand = &self.given.sand;
        let runner = match self.sprue_at {
            SprueAt::Beside => self.widths.sprue_mm.max(self.widths.runner_mm),
            _ => self.widths.runner_mm,
        };
        let mut stands = Vec::new();
        for row in 0..rows {
            let before = match row {
                0 => sand.to_wall,
                row if row % 2 == 1 => sand.to_runner,
                _ => self.given.layout.between,
            };
            stands.push(Stands {
                what: Stand::Casting(row),
                width_mm: self.each(1 - self.axis),
                sand_before_mm: before.as_mm(),
            });
            if row % 2 == 0 {
                stands.push(Stands {
                    what: Stand::Branch,
                    width_mm: runner,
                    sand_before_mm: sand.to_runner.as_mm(),
                });
            }
        }
        self.closed(stands)
    }

    /// The castings of a row, and the sprue past them where it stands there.
    fn along(&self, columns: usize) -> Vec<Stands> {
        let sand = &self.given.sand;
        let casting = |column: usize| Stands {
            what: Stand::Casting(column),
            width_mm: self.each(self.axis),
            sand_before_mm: match column {
                0 => sand.to_wall.as_mm(),
                _ => self.given.layout.between.as_mm(),
            },
        };
        let mut stands: Vec<Stands> = (0..columns).map(casting).collect();
        if self.sprue_at != SprueAt::Beside {
            stands.push(Stands {
                what: Stand::Sprue,
                width_mm: self.widths.sprue_mm,
                sand_before_mm: sand.to_runner.as_mm(),
            });
        }
        self.closed(stands)
    }

    /// With the sand before the far wall, standing for something without width.
    fn closed(&self, mut stands: Vec<Stands>) -> Vec<Stands> {
        let last = stands.last().map(|last| last.what);
        let wall = match last {
            Some(Stand::Casting(_)) => self.given.sand.to_wall,
            _ => SPRUE_TO_WALL,
        };
        stands.push(Stands {
            what: Stand::Casting(usize::MAX),
            width_mm: 0.0,
            sand_before_mm: wall.as_mm(),
        });
        stands
    }
}

/// Where each thing begins when all of them stand in the middle of the flask, and the sand that is
/// lacking: where there is too little, every wall of sand gets its share of what there is.
fn spread(inside_mm: f64, stands: &[Stands]) -> Option<(Vec<f64>, f64)> {
    let taken: f64 = stands.iter().map(|stand| stand.width_mm).sum();
    let wanted: f64 = stands.iter().map(|stand| stand.sand_before_mm).sum();
    let sand = inside_mm - taken;
    if sand <= 0.0 {
        return None;
    }
    let squeezed = (sand / wanted).min(1.0);
    let mut at = ((sand - wanted) / 2.0).max(0.0);
    let starts = stands.iter().map(|stand| {
        at += stand.sand_before_mm * squeezed;
        let start = at;
        at += stand.width_mm;
        start
    });
    Some((starts.collect(), (wanted - sand).max(0.0)))
}

fn starts_of_castings(stands: &[Stands], starts: &[f64]) -> Vec<f64> {
    let is_casting =
        |stand: &Stands| matches!(stand.what, Stand::Casting(place) if place < usize::MAX);
    let pairs = stands.iter().zip(starts);
    pairs
        .filter(|(stand, _)| is_casting(stand))
        .map(|(_, start)| *start)
        .collect()
}

fn middles(stands: &[Stands], starts: &[f64], what: Stand) -> Vec<f64> {
    let pairs = stands.iter().zip(starts);
    let wanted = pairs.filter(|(stand, _)| stand.what == what);
    wanted
        .map(|(stand, start)| start + stand.width_mm / 2.0)
        .collect()
}
