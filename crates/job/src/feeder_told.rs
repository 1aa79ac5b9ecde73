//! The search for the smallest feeder in words and as one object, for any door.

use measure::text::rounded;
use rigging::given::FeederSize;
use serde::Serialize;

use crate::feeder_search::{FeederAnswer, FeederSearch, Smallest};
use crate::freezing_told::{cm3, fell_back_from, per_cent};
use crate::words::said::Said;

/// What came of a search, a line each.
pub fn told(search: &FeederSearch) -> Vec<Said> {
    let fell_back = search.fell_back.as_ref();
    let fell_back = fell_back.map(|from| fell_back_from(&from.card, &from.why));
    let mut said = answered(search);
    said.extend(fell_back);
    said
}

fn answered(search: &FeederSearch) -> Vec<Said> {
    let [without, least] = search.lack_mm3.map(cm3);
    match &search.answer {
        FeederAnswer::Grows => vec![Said::new("smallest-feeder-grows")],
        FeederAnswer::NotNeeded => {
            vec![Said::new("smallest-feeder-not-needed").with("lacks", without)]
        }
        FeederAnswer::OfNoUse => vec![
            Said::new("smallest-feeder-no-use")
                .with("without", without)
                .with("least", least),
        ],
        FeederAnswer::Unclear(smallest) => vec![
            Said::new("smallest-feeder-unclear")
                .with("on_wide", across(&smallest.on_wide))
                .with("on_narrow", across(&smallest.feeds)),
            Said::new("smallest-feeder-without")
                .with("without", without)
                .with("least", least),
        ],
        FeederAnswer::Smallest(smallest) => {
            let mut said = of_smallest(search, smallest);
            said.push(
                Said::new("smallest-feeder-without")
                    .with("without", without)
                    .with("least", least),
            );
            said
        }
    }
}

fn of_smallest(search: &FeederSearch, smallest: &Smallest) -> Vec<Said> {
    let feeds = &smallest.feeds;
    let mut said = vec![
        Said::new("smallest-feeder-is")
            .with("diameter", across(feeds))
            .with("neck", mm(feeds.neck.as_mm()))
            .with("lacks", cm3(smallest.lacks_mm3)),
    ];
    said.push(match &smallest.fails {
        Some((fails, lacks_mm3)) => Said::new("smallest-feeder-fails")
            .with("diameter", across(fails))
            .with("lacks", cm3(*lacks_mm3)),
        None => Said::new("smallest-feeder-none-fails"),
    });
    let [wide, narrow] = search
        .cells_mm
        .map(|edge| format!("{} mm", rounded(edge, 2)));
    said.push(
        Said::new("smallest-feeder-grids")
            .with("wide", wide)
            .with("on_wide", across(&smallest.on_wide))
            .with("narrow", narrow)
            .with("on_narrow", across(feeds)),
    );
    if smallest.low_mm > 1.0 {
        said.push(Said::new("smallest-feeder-low").with("missing", mm(smallest.low_mm)));
    }
    if search.planned {
        said.push(beside_plan(&search.first, feeds));
    }
    said
}

/// The feeder of the plan beside the smallest; both are as high as wide.
fn beside_plan(plan: &FeederSize, feeds: &FeederSize) -> Said {
    let share = (feeds.diameter / plan.diameter).powi(3);
    let id = match share <= 1.0 {
        true => "smallest-feeder-plan-larger",
        false => "smallest-feeder-plan-smaller",
    };
    Said::new(id)
        .with("plan", across(plan))
        .with("share", per_cent((1.0 - share).abs()))
}

fn across(feeder: &FeederSize) -> String {
    mm(feeder.diameter.as_mm())
}

fn mm(mm: f64) -> String {
    format!("{mm:.0} mm")
}

/// The search as one object, as `--json` prints it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FeederFile {
    /// `grows`, `not_needed`, `of_no_use`, `smallest` or `unclear`.
    pub answer: &'static str,
    /// Diameter of the feeder of the plan, mm; null where it has none.
    pub plan_mm: Option<f64>,
    /// What castings lack without a feeder, mm³.
    pub without_mm3: f64,
    /// What they lack with the largest that was tried, mm³.
    pub least_mm3: f64,
    /// The smallest that feeds on the narrow cells: diameter and height, mm.
    pub feeds_mm: Option<f64>,
    /// Its neck, mm.
    pub neck_mm: Option<f64>,
    /// What castings lack with it, mm³.
    pub feeds_lacks_mm3: Option<f64>,
    /// The largest that fails on the narrow cells, mm.
    pub fails_mm: Option<f64>,
    /// What castings lack with that, mm³.
    pub fails_lacks_mm3: Option<f64>,
    /// The smallest that feeds on the wide cells, mm.
    pub on_wide_mm: Option<f64>,
    /// Edges of the wide and of the narrow cells, mm.
    pub cells_mm: [f64; 2],
    /// All that was tried, in its order.
    pub tried: Vec<TriedFile>,
}

/// One look.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TriedFile {
    /// Whether on the narrow cells.
    pub narrow: bool,
    /// Diameter of the feeder, mm; null without one.
    pub feeder_mm: Option<f64>,
    /// What runs empty in castings, mm³.
    pub hollows_mm3: f64,
    /// What stays as pores in them, mm³.
    pub pores_mm3: f64,
}

/// A search as one object.
pub fn file(search: &FeederSearch) -> FeederFile {
    let (answer, smallest) = match &search.answer {
        FeederAnswer::Grows => ("grows", None),
        FeederAnswer::NotNeeded => ("not_needed", None),
        FeederAnswer::OfNoUse => ("of_no_use", None),
        FeederAnswer::Smallest(smallest) => ("smallest", Some(smallest)),
        FeederAnswer::Unclear(smallest) => ("unclear", Some(smallest)),
    };
    let fails = smallest.and_then(|smallest| smallest.fails);
    FeederFile {
        answer,
        plan_mm: search.planned.then(|| search.first.diameter.as_mm()),
        without_mm3: search.lack_mm3[0],
        least_mm3: search.lack_mm3[1],
        feeds_mm: smallest.map(|smallest| smallest.feeds.diameter.as_mm()),
        neck_mm: smallest.map(|smallest| smallest.feeds.neck.as_mm()),
        feeds_lacks_mm3: smallest.map(|smallest| smallest.lacks_mm3),
        fails_mm: fails.map(|(size, _)| size.diameter.as_mm()),
        fails_lacks_mm3: fails.map(|(_, lacks)| lacks),
        on_wide_mm: smallest.map(|smallest| smallest.on_wide.diameter.as_mm()),
        cells_mm: search.cells_mm,
        tried: search
            .tried
            .iter()
            .map(|tried| TriedFile {
                narrow: tried.narrow,
                feeder_mm: tried.feeder.map(|feeder| feeder.diameter.as_mm()),
                hollows_mm3: tried.hollows_mm3,
                pores_mm3: tried.pores_mm3,
            })
            .collect(),
    }
}
