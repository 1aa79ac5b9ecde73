//! The smallest feeder that still feeds, found by trying: the mould is built with feeders of other
//! sizes, neck in proportion, and each is followed until all is solid.
//!
//! What castings lack in the end, as hollows and pores, falls as the feeder grows, down to what no
//! feeder in that place reaches. A feeder feeds where no more is lacking than with a very large
//! one, but for a fiftieth of all that the castings lose on freezing. The size is closed in upon by
//! halving on wide cells, and once more on narrower ones.

use pattern::made::volume_mm3;
use pour::chill::lay;
use pour::meshing::{Meshing, meshed};
use pour::pipe::shrinkage;
use pour::solved::{Elsewhere, Poured, filling, solved};
use rigging::fact::Fact;
use rigging::given::{FeederSize, Given};

use crate::conditions::Conditions;
use crate::freezing::NoFreeze;
use crate::job::Job;
use crate::made_cores::MadeCores;
use crate::mould_solids::{built, solids_given};
use crate::part::Part;
use crate::shop::Shop;
use crate::work_out::placed;

/// What came of the search.
#[derive(Clone, Debug, PartialEq)]
pub struct FeederSearch {
    /// The feeder that it began with: that of the plan, else one by the modulus of the section.
    pub first: FeederSize,
    /// Whether the plan has a feeder.
    pub planned: bool,
    /// What all castings lack without a feeder and with the largest that was tried, mm³, on the
    /// wide cells.
    pub lack_mm3: [f64; 2],
    /// What was found.
    pub answer: FeederAnswer,
    /// Edges of the wide and of the narrow cells, mm.
    pub cells_mm: [f64; 2],
    /// All that was tried, in its order.
    pub tried: Vec<Tried>,
    /// The first look that was not followed to its end where it was to be.
    pub fell_back: Option<FellBack>,
}

/// A card that did not take a look to its end.
#[derive(Clone, Debug, PartialEq)]
pub struct FellBack {
    /// The card.
    pub card: String,
    /// Why not.
    pub why: String,
}

/// One look.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tried {
    /// Whether on the narrow cells.
    pub narrow: bool,
    /// The feeder; none for the look without one.
    pub feeder: Option<FeederSize>,
    /// What runs empty in castings, mm³.
    pub hollows_mm3: f64,
    /// What stays as pores in them, mm³.
    pub pores_mm3: f64,
}

/// What was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FeederAnswer {
    /// The metal loses nothing on freezing.
    Grows,
    /// Without a feeder nothing worth a feeder is lacking: sprue and gates feed it.
    NotNeeded,
    /// A feeder in this place changes nothing: what is lacking lies elsewhere.
    OfNoUse,
    /// This one.
    Smallest(Smallest),
    /// Both grids do not agree: what is lacking hardly hangs on this feeder, or walls are too thin
    /// for the cells.
    Unclear(Smallest),
}

/// The smallest feeder that feeds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Smallest {
    /// The smaller of two sizes that feeds, on the narrow cells.
    pub feeds: FeederSize,
    /// What castings lack with it, mm³.
    pub lacks_mm3: f64,
    /// The largest that was seen to fail there: less than a twentieth smaller. None where the
    /// smallest that was tried feeds.
    pub fails: Option<(FeederSize, f64)>,
    /// The smallest that feeds on the wide cells.
    pub on_wide: FeederSize,
    /// How much of its height the cope has no room for, mm.
    pub low_mm: f64,
}

/// Cells of both grids. With fewer than the first a feeder of a small casting is a few cells wide
/// and its size moves in jumps; with more than the second a search takes longer than a pour.
const CELLS: [f64; 2] = [80_000.0, MOST_CELLS];

/// Cells of the narrow grid, by which it is chosen where the heat is followed.
pub const MOST_CELLS: f64 = 200_000.0;

/// Cells across the thinnest wall, more than the budget ever allows: it alone is to set the size,
/// so that both grids differ.
const BY_BUDGET: f64 = 1000.0;

/// Sizes of the feeder as shares of the first one: the largest that is tried, then smaller ones
/// where the flask has no room for it, and the smallest.
const LARGE: [f64; 4] = [1.8, 1.5, 1.25, 1.0];
const SMALL: f64 = 0.3;

/// How near the smallest that feeds is closed in upon: a pattern maker turns no feeder finer.
const WITHIN: f64 = 1.05;

/// Lacking metal, as a share of all that castings lose, that is not worth a feeder: below, whole
/// cells decide.
const NOT_WORTH: f64 = 0.02;

/// Part of what castings lack that a feeder has to take away to be of use: whole cells move more
/// than a tenth of it.
const OF_USE: f64 = 0.2;

/// How far apart both grids may have it, as a ratio of diameters: three steps of the search.
const AGREES: f64 = 1.16;

/// What is told while it looks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// Looks that are done.
    pub done: usize,
    /// How many there will be at the most.
    pub most: usize,
}

/// Most looks: none and large, halving from small to large, as much again on the narrow cells.
const MOST_LOOKS: usize = 18;

/// Looks for the smallest feeder that still feeds, the heat followed on a card where one is handed
/// over. `go_on` is told of every look and stops the search by answering false.
///
/// # Errors
///
/// A job without a mould of solids, or one that cannot be followed.
pub fn smallest_feeder(
    job: &Job,
    shop: &Shop,
    part: &Part,
    on: Option<&dyn Elsewhere>,
    go_on: &mut dyn FnMut(&Look) -> bool,
) -> Result<FeederSearch, NoFreeze> {
    let placed = placed(job, part);
    let (given, made) = solids_given(job, shop, part, &placed)?;
    let planned = given.sizes.feeder;
    let first = planned.or_else(|| by_modulus(&given));
    let first = first.ok_or(NoFreeze::NoSection)?;
    let conditions = Conditions::of(job, shop, &placed)?;
    let mut trials = Trials {
        job,
        part,
        given,
        made,
        first,
        superheat_k: conditions.given.left.as_kelvin(),
        conditions,
        cells_mm: [0.0; 2],
        tried: Vec::new(),
        fell_back: None,
        on,
        go_on,
    };
    let (answer, lack_mm3) = trials.answer()?;
    Ok(FeederSearch {
        first,
        planned: planned.is_some(),
        lack_mm3,
        answer,
        cells_mm: trials.cells_mm,
        tried: trials.tried,
        fell_back: trials.fell_back,
    })
}

/// A feeder for the heaviest section where the plan has none: as high as wide, its modulus a sixth
/// of that, a fifth more than that of the section; a round neck of a tenth more.
fn by_modulus(given: &Given) -> Option<FeederSize> {
    let modulus = given.casting.sections.first()?.modulus;
    let diameter = modulus * (6.0 * 1.2);
    Some(FeederSize {
        diameter,
        height: diameter,
        neck: modulus * (4.0 * 1.1),
    })
}

/// Wide or narrow cells.
#[derive(Clone, Copy)]
enum Grid {
    Wide = 0,
    Narrow = 1,
}

/// What castings lack with a feeder, and how much of its height has no room, mm.
#[derive(Clone, Copy)]
struct Lack {
    mm3: f64,
    low_mm: f64,
}

/// A bracket: the largest share that fails, if any, and the smallest that feeds.
struct Bracket {
    fails: Option<(f64, Lack)>,
    feeds: (f64, Lack),
}

struct Trials<'a> {
    job: &'a Job,
    part: &'a Part,
    given: Given,
    made: MadeCores,
    first: FeederSize,
    superheat_k: f64,
    conditions: Conditions,
    cells_mm: [f64; 2],
    tried: Vec<Tried>,
    fell_back: Option<FellBack>,
    on: Option<&'a dyn Elsewhere>,
    go_on: &'a mut dyn FnMut(&Look) -> bool,
}

impl Trials<'_> {
    fn answer(&mut self) -> Result<(FeederAnswer, [f64; 2]), NoFreeze> {
        let shrinks = self.conditions.alloy.freezing_shrinkage.band.likely();
        if shrinks <= 0.0 {
            return Ok((FeederAnswer::Grows, [0.0; 2]));
        }
        let without = self.lacking(Grid::Wide, None)?.mm3;
        let casting = volume_mm3(&self.given.casting.mesh) * self.given.count as f64;
        let not_worth = NOT_WORTH * shrinks * casting;
        if without <= not_worth {
            return Ok((FeederAnswer::NotNeeded, [without, without]));
        }
        let (large, with_large) = self.large()?;
        let least = with_large.mm3;
        if without - least <= not_worth.max(OF_USE * without) {
            return Ok((FeederAnswer::OfNoUse, [without, least]));
        }
        let wide = self.close_in(Grid::Wide, least + not_worth, [SMALL, large], with_large)?;
        let least_narrow = self.lacking(Grid::Narrow, Some(large))?;
        let from = wide.fails.map_or(SMALL, |(share, _)| share);
        let enough = least_narrow.mm3 + not_worth;
        let narrow = self.close_near(enough, [from, wide.feeds.0], (large, least_narrow))?;
        let smallest = Smallest {
            feeds: self.sized(narrow.feeds.0),
            lacks_mm3: narrow.feeds.1.mm3,
            fails: narrow
                .fails
                .map(|(share, lacks)| (self.sized(share), lacks.mm3)),
            on_wide: self.sized(wide.feeds.0),
            low_mm: narrow.feeds.1.low_mm,
        };
        let apart = (narrow.feeds.0 / wide.feeds.0).ln().abs();
        let answer = match apart <= AGREES.ln() {
            true => FeederAnswer::Smallest(smallest),
            false => FeederAnswer::Unclear(smallest),
        };
        Ok((answer, [without, least]))
    }

    /// The largest feeder that the flask has room for, and what lacks with it.
    fn large(&mut self) -> Result<(f64, Lack), NoFreeze> {
        let mut last = None;
        for share in LARGE {
            match self.lacking(Grid::Wide, Some(share)) {
                Ok(lacks) => return Ok((share, lacks)),
                Err(error @ (NoFreeze::NoMould(_) | NoFreeze::Freeze(_))) if self.goes_on() => {
                    last = Some(error);
                }
                Err(error) => return Err(error),
            }
        }
        Err(last.unwrap_or(NoFreeze::NoSection))
    }

    /// Halves, by ratio, between a share that is taken to fail and one that feeds.
    fn close_in(
        &mut self,
        grid: Grid,
        enough: f64,
        [small, large]: [f64; 2],
        with_large: Lack,
    ) -> Result<Bracket, NoFreeze> {
        let mut bracket = Bracket {
            fails: None,
            feeds: (large, with_large),
        };
        let mut low = small;
        while bracket.feeds.0 / low > WITHIN {
            let share = (bracket.feeds.0 * low).sqrt();
            let lacks = self.lacking(grid, Some(share))?;
            match lacks.mm3 <= enough {
                true => bracket.feeds = (share, lacks),
                false => {
                    low = share;
                    bracket.fails = Some((share, lacks));
                }
            }
        }
        Ok(bracket)
    }

    /// Closes in on the narrow cells from where the wide ones have left off: by single steps away
    /// from there, as the two hardly differ by more.
    fn close_near(
        &mut self,
        enough: f64,
        [low, high]: [f64; 2],
        (large, with_large): (f64, Lack),
    ) -> Result<Bracket, NoFreeze> {
        let mut share = high;
        let mut lacks = self.lacking(Grid::Narrow, Some(share))?;
        let mut bracket = Bracket {
            fails: None,
            feeds: (large, with_large),
        };
        if lacks.mm3 > enough {
            while lacks.mm3 > enough {
                bracket.fails = Some((share, lacks));
                share *= WITHIN;
                if share >= large {
                    return Ok(bracket);
                }
                lacks = self.lacking(Grid::Narrow, Some(share))?;
            }
            bracket.feeds = (share, lacks);
            return Ok(bracket);
        }
        bracket.feeds = (share, lacks);
        share = low;
        while share >= SMALL {
            lacks = self.lacking(Grid::Narrow, Some(share))?;
            if lacks.mm3 > enough {
                bracket.fails = Some((share, lacks));
                break;
            }
            bracket.feeds = (share, lacks);
            share /= WITHIN;
        }
        Ok(bracket)
    }

    fn sized(&self, share: f64) -> FeederSize {
        FeederSize {
            diameter: self.first.diameter * share,
            height: self.first.height * share,
            neck: self.first.neck * share,
        }
    }

    fn goes_on(&mut self) -> bool {
        (self.go_on)(&Look {
            done: self.tried.len(),
            most: MOST_LOOKS.max(self.tried.len()),
        })
    }

    /// What castings lack in the end with a feeder of this share of the first one.
    fn lacking(&mut self, grid: Grid, share: Option<f64>) -> Result<Lack, NoFreeze> {
        self.given.sizes.feeder = share.map(|share| self.sized(share));
        let mut place = self.job.place.clone();
        if share.is_none() {
            // Feeders that the job places cannot be placed without a size.
            place.feeders = Some(Vec::new());
        }
        let job = Job {
            place,
            ..self.job.clone()
        };
        let mould = built(&self.given, &self.made, &job, self.part)?;
        let meshing = Meshing {
            across: BY_BUDGET,
            ..self.conditions.meshing(CELLS[grid as usize])
        };
        let mut meshed = meshed(&mould, &meshing).map_err(pour::no_freeze::FreezeError::from)?;
        lay(&mut meshed, &self.job.chills)?;
        self.cells_mm[grid as usize] = meshed.cells.size_mm;
        let poured = Poured {
            on: self.on,
            ..self.conditions.poured(self.conditions.even())
        };
        let likely = filling(&poured, poured.contact_w_m2k.likely(), 1.0);
        let (done, go_on) = (self.tried.len(), &mut self.go_on);
        let solved = solved(meshed, &poured, &likely, &mut |_| {
            go_on(&Look {
                done,
                most: MOST_LOOKS.max(done),
            })
        })?;
        if let Some(ran) = &solved.ran
            && let Some((unable, _)) = &ran.fell_back
        {
            let fell_back = FellBack {
                card: ran.on.clone(),
                why: unable.to_string(),
            };
            self.fell_back.get_or_insert(fell_back);
        }
        let shrinkage = shrinkage(&solved, self.conditions.alloy, self.superheat_k);
        let tried = Tried {
            narrow: matches!(grid, Grid::Narrow),
            feeder: self.given.sizes.feeder,
            hollows_mm3: shrinkage.hollows_mm3(),
            pores_mm3: shrinkage.pores_mm3,
        };
        self.tried.push(tried);
        let low = mould.facts.iter().filter_map(|fact| match fact {
            Fact::LowFeeder { missing_mm, .. } => Some(*missing_mm),
            _ => None,
        });
        Ok(Lack {
            mm3: tried.hollows_mm3 + tried.pores_mm3,
            low_mm: low.fold(0.0, f64::max),
        })
    }
}
