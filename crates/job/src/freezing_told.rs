//! The freezing of a mould in words and as one object, for any door.

use measure::band::Band;
use measure::flow::Duration;
use measure::text::shown::{Rounding, shown};
use measure::text::{System, rounded};
use mould::feeding::chill::chill_metals;
use pour::freeze::{Freeze, FreezeFact};
use pour::pipe::feeder_efficiency;
use pour::solved::metal_cells;
use rigging::piece::Piece;

use crate::conditions::SandKnown;
use crate::cores_told::{Line, caution, note};
use crate::filling_told;
use crate::freezing::JobFrozen;
use crate::freezing_hints::hints;
use crate::halves::Halves;
use crate::mould_told::piece;
use crate::solved::LEAST_LACKING_MM3;
use crate::words::said::Said;

/// What is told.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// How the mould fills, one figure a line; comes first.
    pub filling: Vec<Said>,
    /// Ids of the heads of the table.
    pub heads: [&'static str; 4],
    /// The pieces in the order of their freezing: name, likely, from and to, where.
    pub rows: Vec<(Said, [String; 3])>,
    /// Figures of the whole, one a line.
    pub figures: Vec<Said>,
    /// What was noticed, the weightier first.
    pub lines: Vec<Line>,
}

/// Heads of the table.
const HEADS: [&str; 4] = ["", "freeze-solid-after", "freeze-between", "freeze-last-at"];

/// A freezing in words.
pub fn told(frozen: &JobFrozen) -> Told {
    let freeze = &frozen.freeze;
    let mut pieces: Vec<_> = freeze.pieces.iter().collect();
    pieces.sort_by(|one, other| one.last_s.likely().total_cmp(&other.last_s.likely()));
    let rows = pieces.into_iter().map(|frozen| {
        let last = minutes_band(&frozen.last_s);
        let cells = [last.likely, last.between, place(frozen.last_mm)];
        (piece(&frozen.piece), cells)
    });
    let mut lines = filling_told::lines(&frozen.filling, frozen.from.start.as_celsius());
    lines.extend(freeze.facts.iter().map(of_fact));
    lines.extend(beside_the_pencil(frozen));
    lines.extend(of_feeding(frozen));
    lines.sort_by_key(|line| line.level);
    Told {
        filling: filling_told::figures(&frozen.filling),
        heads: HEADS,
        rows: rows.collect(),
        figures: figures(frozen),
        lines,
    }
}

/// Clay is dead for good above this, °C (`sand-death-memory`).
const DEAD_CLAY_C: f64 = 600.0;

fn figures(frozen: &JobFrozen) -> Vec<Said> {
    let (freeze, from) = (&frozen.freeze, &frozen.from);
    let meshed = &freeze.solved.meshed;
    let contact = from.contact_w_m2k;
    let times = |[low, high]: [f64; 2]| format!("× {low:.2} – {high:.2}");
    let sand = Said::new(match from.sand_known {
        SandKnown::Trial => "freeze-sand-trial",
        SandKnown::Damp => "freeze-sand-damp",
        SandKnown::Usual => "freeze-sand-usual",
        SandKnown::Oil => "freeze-sand-oil",
    });
    let mut figures = vec![
        Said::new("freeze-whole")
            .with("likely", minutes_band(&freeze.last_s).likely)
            .with("between", minutes_band(&freeze.last_s).between)
            .with("place", place(freeze.last_mm)),
        Said::new("freeze-pencil").with("between", all_of(&frozen.pencil)),
        Said::new("freeze-from")
            .with("pouring", celsius(from.pouring.as_celsius()))
            .with("start", celsius(from.start.as_celsius())),
        Said::new("freeze-sand")
            .with("known", sand)
            .with("water", per_cent(from.sand.water))
            .with("conducts", format!("{} W/mK", rounded(from.sand.w_mk, 2))),
        Said::new("freeze-contact")
            .with("likely", format!("{:.0} W/m²K", contact.likely()))
            .with("low", format!("{:.0}", contact.low()))
            .with("high", format!("{:.0}", contact.high())),
        Said::new("freeze-errors")
            .with("grid", per_cent(freeze.by_grid.abs()))
            .with("contact", times(freeze.by_contact))
            .with("sand", times(freeze.by_sand)),
        Said::new("freeze-cells")
            .with("cells", meshed.cells.stuff.len().to_string())
            .with("size", format!("{} mm", rounded(meshed.cells.size_mm, 3)))
            .with("across", format!("{:.1}", meshed.across_wall))
            .with("mass", per_cent(meshed.held_mm3 / meshed.solid_mm3 - 1.0)),
    ];
    figures.splice(1..1, hints(frozen));
    let at = 1;
    let halves = frozen.halves.iter().flat_map(Halves::told);
    let more = halves.chain(shrunk(frozen)).chain(of_chills(frozen));
    figures.splice(at..at, more.chain(opened(frozen)));
    figures
}

/// Most pools that are told: with more of them nobody looks at any.
const MOST_POOLS: usize = 4;

/// What is cut off in castings, what runs empty in them.
fn of_feeding(frozen: &JobFrozen) -> Vec<Line> {
    let is_casting = |piece: &Piece| matches!(piece, Piece::Casting(_));
    let lacking = |mm3: f64| frozen.lacking_mm3(mm3);
    let pools = frozen.feeding.cut_off.iter();
    let pools = pools
        .filter(|pool| is_casting(&pool.piece) && lacking(pool.to_freeze_mm3) > LEAST_LACKING_MM3);
    let pools = pools.take(MOST_POOLS).map(|pool| {
        let said = match (&pool.from, pool.neck_mm) {
            (Some(from), Some(neck)) => Said::new("freeze-cut-off")
                .with("from", piece(from))
                .with("neck", place(neck))
                .with("after", minutes_band(&Band::exact(pool.at_s)).likely),
            _ => Said::new("freeze-never-fed"),
        };
        let said = said
            .with("piece", piece(&pool.piece))
            .with("lacks", cm3(lacking(pool.to_freeze_mm3)))
            .with("last", place(pool.last_mm));
        caution(said)
    });
    let emptied = frozen.shrinkage.emptied.iter();
    let hollows = emptied
        .filter(|emptied| is_casting(&emptied.piece) && emptied.volume_mm3 > LEAST_LACKING_MM3);
    let hollows = hollows.map(|emptied| {
        caution(
            Said::new("freeze-hollow")
                .with("piece", piece(&emptied.piece))
                .with("volume", cm3(emptied.volume_mm3))
                .with("place", place(emptied.place_mm)),
        )
    });
    pools.chain(hollows).collect()
}

/// How far feeders sink, what the budget of shrinkage comes to, where sponge is likeliest.
fn shrunk(frozen: &JobFrozen) -> Vec<Said> {
    let held = |castings: bool| -> f64 {
        let meshed = &frozen.freeze.solved.meshed;
        let is_casting = |cell: &usize| {
            let piece = &meshed.pieces[usize::from(meshed.piece[*cell])];
            matches!(piece, Piece::Casting(_)) || !castings
        };
        let cells = metal_cells(meshed).filter(is_casting);
        cells.map(|cell| meshed.cells.metal_mm3(cell)).sum()
    };
    let shrinkage = &frozen.shrinkage;
    let feeders = shrinkage.emptied.iter();
    let feeders = feeders.filter(|emptied| matches!(emptied.piece, Piece::Feeder(_)));
    let mut said: Vec<Said> = feeders
        .map(|emptied| {
            Said::new("freeze-feeder")
                .with("piece", piece(&emptied.piece))
                .with("depth", format!("{:.0} mm", emptied.depth_mm))
                .with("gave", cm3(emptied.volume_mm3))
                .with("share", per_cent(emptied.volume_mm3 / emptied.holds_mm3))
        })
        .collect();
    let poured = Said::new("freeze-yield")
        .with("share", per_cent(held(true) / held(false)))
        .with("castings", cm3(held(true)))
        .with("poured", cm3(held(false)));
    said.push(poured);
    said.extend(
        feeder_efficiency(shrinkage)
            .map(|share| Said::new("freeze-feeders-gave").with("share", per_cent(share))),
    );
    said.push(
        Said::new("freeze-budget")
            .with("all", cm3(shrinkage.demand_mm3))
            .with("pipe", cm3(shrinkage.pipe_mm3()))
            .with("hollows", cm3(shrinkage.hollows_mm3()))
            .with(
                "pores",
                cm3(shrinkage.pores_mm3 + shrinkage.pores_in_rigging_mm3),
            ),
    );
    said.extend(frozen.weakest.iter().map(|weakest| {
        Said::new("freeze-sponge")
            .with("piece", piece(&weakest.piece))
            .with("place", place(weakest.place_mm))
            .with("value", rounded(weakest.niyama.low(), 2))
            .with("median", rounded(weakest.niyama.likely(), 2))
    }));
    said
}

/// What each chill changes.
fn of_chills(frozen: &JobFrozen) -> Vec<Said> {
    let chills = frozen.chills.iter().zip(1..);
    let told = chills.map(|(told, number)| {
        let [x, y, z] = told.chill.size_mm;
        let metal = chill_metals().get(usize::from(told.chill.metal));
        Said::new("freeze-chill")
            .with("number", number)
            .with(
                "metal",
                Said::new(chill_metal(metal.map_or("", |row| &row.name))),
            )
            .with("size", format!("{x:.0} × {y:.0} × {z:.0} mm"))
            .with("piece", piece(&told.piece))
            .with(
                "touches",
                format!("{} cm²", rounded(told.touches_mm2 / 100.0, 2)),
            )
            .with("behind", time(told.behind_s[1]))
            .with("behind_before", time(told.behind_s[0]))
            .with("casting", time(told.casting_s[1]))
            .with("casting_before", time(told.casting_s[0]))
    });
    told.collect()
}

/// What a metal of chills is called.
fn chill_metal(name: &str) -> &'static str {
    match name {
        "steel" => "chill-of-steel",
        "copper" => "chill-of-copper",
        "graphite" => "chill-of-graphite",
        _ => "chill-of-iron",
    }
}

/// When it may be moved and opened, and how deep the sand is burnt.
fn opened(frozen: &JobFrozen) -> Vec<Said> {
    let Some(opening) = &frozen.opening else {
        return Vec::new();
    };
    let time = |time: Option<Duration>| match time {
        Some(time) => minutes_band(&Band::exact(time.as_s())).likely,
        None => format!("> {}", all_of(&Band::exact(opening.planned))),
    };
    let mut said = vec![
        Said::new("freeze-open")
            .with("leave", time(opening.leave))
            .with("leave_below", celsius(opening.row.leave.as_celsius()))
            .with("open", time(opening.open))
            .with("open_below", celsius(opening.row.open.as_celsius()))
            .with("planned", all_of(&Band::exact(opening.planned))),
        Said::new("freeze-burnt")
            .with(
                "depth",
                format!("{:.1} mm", opening.cooled.hot_sand.depth_mm(DEAD_CLAY_C)),
            )
            .with("above", celsius(DEAD_CLAY_C))
            .with("hottest", celsius(opening.cooled.sand_c)),
    ];
    let core = opening.cooled.core_c.map(celsius);
    said.extend(core.map(|hottest| Said::new("freeze-core-peak").with("hottest", hottest)));
    said
}

pub(crate) fn cm3(mm3: f64) -> String {
    format!("{} cm³", rounded(mm3 / 1000.0, 2))
}

pub(crate) fn per_cent(share: f64) -> String {
    format!("{:.1} %", share * 100.0)
}

/// Whether the law of moduli says something else, for the castings.
fn beside_the_pencil(frozen: &JobFrozen) -> Option<Line> {
    let solved = frozen.castings_s()?;
    let pencil = frozen.pencil.map(Duration::as_s);
    if solved.low() <= pencil.high() && pencil.low() <= solved.high() {
        return None;
    }
    let id = match solved.likely() > pencil.likely() {
        true => "freeze-pencil-short",
        false => "freeze-pencil-long",
    };
    Some(note(
        Said::new(id)
            .with("solved", minutes_band(&solved).between)
            .with("pencil", all_of(&frozen.pencil)),
    ))
}

impl JobFrozen {
    /// What liquid that is still to freeze lacks in the end, mm³.
    pub fn lacking_mm3(&self, to_freeze_mm3: f64) -> f64 {
        to_freeze_mm3 * self.freezing_shrinkage.max(0.0)
    }

    /// When the last of the castings is solid, s.
    pub fn castings_s(&self) -> Option<Band<f64>> {
        let pieces = self.freeze.pieces.iter();
        let castings = pieces.filter(|frozen| matches!(frozen.piece, Piece::Casting(_)));
        let latest = castings.max_by(|one, other| {
            let [one, other] = [one, other].map(|frozen| frozen.last_s.likely());
            one.total_cmp(&other)
        });
        latest.map(|frozen| frozen.last_s)
    }
}

fn of_fact(fact: &FreezeFact) -> Line {
    let per_cent = |share: f64| format!("{:.2} %", share * 100.0);
    match fact {
        FreezeFact::FewCells {
            across,
            wall_mm,
            size_mm,
        } => caution(
            Said::new("freeze-few-cells")
                .with("across", format!("{across:.1}"))
                .with("wall", format!("{wall_mm:.1} mm"))
                .with("size", format!("{size_mm:.1} mm")),
        ),
        FreezeFact::MassOff { off } => {
            caution(Said::new("freeze-mass-off").with("off", per_cent(*off)))
        }
        FreezeFact::HeatOff { drift } => {
            caution(Said::new("freeze-heat-off").with("off", format!("{drift:.1e}")))
        }
        FreezeFact::FellBack { on, why } => note(fell_back_from(on, why)),
        FreezeFact::PieceMissing { piece: of } => {
            note(Said::new("freeze-piece-missing").with("piece", piece(of)))
        }
    }
}

/// Whether a freezing was not followed to its end on the card that it began on, and why.
pub fn fell_back(freeze: &Freeze) -> Option<Said> {
    freeze.facts.iter().find_map(|fact| match fact {
        FreezeFact::FellBack { on, why } => Some(fell_back_from(on, why)),
        _ => None,
    })
}

/// That a card did not take it to the end.
pub(crate) fn fell_back_from(card: &str, why: &str) -> Said {
    Said::new("freeze-fell-back")
        .with("card", card)
        .with("why", why)
}

struct Minutes {
    likely: String,
    between: String,
}

fn minutes_band(seconds: &Band<f64>) -> Minutes {
    let shown = shown(
        &seconds.map(Duration::from_s),
        System::Metric,
        Rounding::Nearest,
    );
    Minutes {
        between: shown.band.map_or_else(
            || shown.likely.clone(),
            |b| format!("{} – {}", b.low, b.high),
        ),
        likely: shown.likely,
    }
}

/// Some seconds as they are shown.
pub(crate) fn time(seconds: f64) -> String {
    minutes_band(&Band::exact(seconds)).likely
}

/// The ends of some seconds as they are shown.
pub(crate) fn times(seconds: &Band<f64>) -> String {
    minutes_band(seconds).between
}

pub(crate) fn all_of(band: &Band<Duration>) -> String {
    minutes_band(&band.map(Duration::as_s)).between
}

pub(crate) fn celsius(degrees: f64) -> String {
    format!("{degrees:.0} °C")
}

pub(crate) fn place([x, y, z]: [f64; 3]) -> String {
    format!("{x:.0}, {y:.0}, {z:.0} mm")
}
