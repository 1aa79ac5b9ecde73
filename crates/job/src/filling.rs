//! How the mould of a job fills, seen at a glance on the cells that its freezing is followed on.

use measure::band::Band;
use measure::flow::Speed;
use measure::heat::{HeatDrawing, Temperature};
use metal::alloy::{Alloy, Caution, Family};
use mould::freezing::SAND_AT_REST;
use mould::gating::choke::discharge;
use mould::gating::friction::TRIED;
use pour::fill::air::Pocket;
use pour::fill::cooling::{Metal, Sand};
use pour::fill::drawn::{DrawnError, drawn};
use pour::fill::fact::Fact;
use pour::fill::{FillError, Gating, Glance, glance};
use pour::meshing::Meshed;
use pour::solved::metal_cells;
use pour::tables::{metal_table, running_stops};
use rigging::given::Sizes;
use rigging::mould::Mould;
use rigging::piece::Piece;
use thiserror::Error;

/// A filling with its spread.
#[derive(Clone, Debug)]
pub struct JobFilled {
    /// The likely one.
    pub glance: Glance,
    /// With the metal as cold and the sand as thirsty as they may be, and the other way round.
    pub ends: [Glance; 2],
    /// From the first metal in the sprue until the gates run, s.
    pub starts_s: Band<f64>,
    /// From the first metal in the sprue until the mould is full, s.
    pub fills_s: Band<f64>,
    /// The gates, in the order of their speeds.
    pub gates: Vec<Piece>,
    /// How fast the metal of the job may leave a gate.
    pub limit: Band<Speed>,
    /// Castings and feeders, each with the place that fills last and when, s.
    pub last: Vec<(Piece, [f64; 3], f64)>,
    /// The coldest metal that comes to a casting.
    pub coldest: Option<Coldest>,
    /// Pockets of air, each with those of its highs over which no vent of the mould stands, mm.
    pub air: Vec<(Pocket, Vec<[f64; 3]>)>,
    /// Whether the plan pricks vents; where not, it reckons that the sand carries the air.
    pub pricked: bool,
    /// Part of the metal that comes faster than a wave runs in the pool where it lands.
    pub rough_share: f64,
}

/// The coldest metal that comes to a casting.
#[derive(Clone, Debug, PartialEq)]
pub struct Coldest {
    /// Which.
    pub piece: Piece,
    /// Where, mm.
    pub place_mm: [f64; 3],
    /// How warm, °C.
    pub celsius: Band<f64>,
    /// Its solid share.
    pub solid: f64,
}

/// What came of looking at the filling.
#[derive(Clone, Debug)]
pub enum Filling {
    /// It was seen, and the freezing starts from it.
    Seen(Box<JobFilled>),
    /// It was seen, but most of the metal runs too fast for what is said of its rising; the
    /// freezing starts evenly.
    Rough(Box<JobFilled>),
    /// It could not be seen; the freezing starts evenly.
    Unseen(NotSeen),
}

/// Why a filling could not be seen.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum NotSeen {
    /// The cells show no running system.
    #[error(transparent)]
    Drawn(#[from] DrawnError),
    /// The glance says no.
    #[error(transparent)]
    Glance(#[from] FillError),
}

impl Filling {
    /// The filling, where it was seen.
    pub fn seen(&self) -> Option<&JobFilled> {
        match self {
            Filling::Seen(filled) | Filling::Rough(filled) => Some(filled),
            Filling::Unseen(_) => None,
        }
    }
}

/// What the glance goes by.
pub(crate) struct Running<'a> {
    /// The alloy.
    pub(crate) alloy: &'a Alloy,
    /// How hot it leaves the ladle.
    pub(crate) pouring: Band<Temperature>,
    /// How hard the sand drinks.
    pub(crate) thirst: Band<HeatDrawing>,
    /// Contact of metal and sand over the whole freezing, W/(m² K).
    pub(crate) contact_w_m2k: Band<f64>,
}

/// Part of the metal beyond which a rough filling is not built upon. Where half of it lands faster
/// than waves run, the order in which places fill is that of splashes; a tenth is the first metal
/// on the floor of any mould.
const MOST_ROUGH: f64 = 0.5;

/// Looks at the filling of a mould in cells.
pub(crate) fn filling_of(
    mould: &Mould,
    meshed: &Meshed,
    sizes: &Sizes,
    poured: &Running<'_>,
) -> Filling {
    match filled(mould, meshed, sizes, poured) {
        Ok(filled) if filled.rough_share > MOST_ROUGH => Filling::Rough(Box::new(filled)),
        Ok(filled) => Filling::Seen(Box::new(filled)),
        Err(why) => Filling::Unseen(why),
    }
}

fn filled(
    mould: &Mould,
    meshed: &Meshed,
    sizes: &Sizes,
    poured: &Running<'_>,
) -> Result<JobFilled, NotSeen> {
    let cells = &meshed.cells;
    let gating = drawn(cells, &meshed.pieces, &meshed.piece, sizes, TRIED)?;
    let look = |heat: Heat| glance(cells, &gating, &metal(poured, heat), &sand(poured, heat));
    let likely = look(Heat::Likely)?;
    // A pour at the low end may be too cold to be looked at: the likely one then stands for it.
    let end = |heat| look(heat).unwrap_or_else(|_| likely.clone());
    let ends = [end(Heat::Coldest), end(Heat::Hottest)];
    let slower = |s: f64| discharge().map(|through| s * discharge().likely() / through);
    let metal_m3: f64 = likely.gates.iter().map(|gate| gate.metal_m3).sum();
    let rough = likely.gates.iter();
    let rough_m3: f64 = rough.map(|gate| gate.rough_share * gate.metal_m3).sum();
    Ok(JobFilled {
        starts_s: slower(likely.starts_s),
        fills_s: slower(likely.ends_s),
        gates: gates(meshed, &gating),
        limit: poured.alloy.entry_speed.band,
        last: last(meshed, &likely),
        coldest: coldest(meshed, &likely, &ends),
        air: air(mould, &likely),
        pricked: sizes.vents.is_some(),
        rough_share: if metal_m3 > 0.0 {
            rough_m3 / metal_m3
        } else {
            0.0
        },
        glance: likely,
        ends,
    })
}

#[derive(Clone, Copy)]
enum Heat {
    Likely,
    Coldest,
    Hottest,
}

fn metal(poured: &Running<'_>, heat: Heat) -> Metal {
    let alloy = poured.alloy;
    let poured_at = match heat {
        Heat::Likely => poured.pouring.likely(),
        Heat::Coldest => poured.pouring.low(),
        Heat::Hottest => poured.pouring.high(),
    };
    Metal {
        kind: kind(alloy).to_owned(),
        table: metal_table(alloy, 1.0),
        kg_m3: alloy.density_liquid.band.likely().as_kg_per_m3(),
        poured_c: poured_at.as_celsius(),
        stops_at_solid: running_stops(alloy.freezing),
    }
}

/// What the tables of gate speeds call an alloy: of the copper alloys those with a skin of alumina
/// stand apart.
fn kind(alloy: &Alloy) -> &'static str {
    match alloy.family {
        Family::Copper if alloy.cautions.contains(&Caution::OxideFolds) => "aluminium-bronze",
        family => family.word(),
    }
}

/// The sand beside running metal, which touches it as well as it ever does: there is no gap yet.
fn sand(poured: &Running<'_>, heat: Heat) -> Sand {
    let contact = &poured.contact_w_m2k;
    let (draws, film_w_m2_k) = match heat {
        Heat::Likely => (poured.thirst.likely(), contact.high()),
        Heat::Coldest => (poured.thirst.high(), contact.high()),
        Heat::Hottest => (poured.thirst.low(), contact.likely()),
    };
    Sand {
        celsius: SAND_AT_REST.as_celsius(),
        draws_w_rts_m2_k: draws.as_w_rts_per_m2_k(),
        film_w_m2_k,
    }
}

/// The gates in the order in which they were drawn.
fn gates(meshed: &Meshed, gating: &Gating) -> Vec<Piece> {
    let pieces = meshed.pieces.iter();
    let mut gates: Vec<Piece> = pieces
        .filter(|piece| matches!(piece, Piece::Gate(_)))
        .cloned()
        .collect();
    gates.sort();
    gates.truncate(gating.gates_mm.len());
    gates
}

fn last(meshed: &Meshed, glance: &Glance) -> Vec<(Piece, [f64; 3], f64)> {
    let pieces = meshed.pieces.iter().enumerate();
    let filled = pieces.filter(|(_, piece)| is_filled(piece));
    let last = filled.filter_map(|(number, piece)| {
        let cells = metal_cells(meshed).filter(|&cell| usize::from(meshed.piece[cell]) == number);
        let came = cells.filter(|&cell| glance.arrival_s[cell].is_finite());
        let at = |cell: &usize| glance.arrival_s[*cell];
        let last = came.max_by(|one, other| at(one).total_cmp(&at(other)))?;
        let place_mm = meshed.cells.middle_mm(last);
        Some((piece.clone(), place_mm, f64::from(at(&last))))
    });
    last.collect()
}

/// Whether a piece fills from the gates.
fn is_filled(piece: &Piece) -> bool {
    matches!(piece, Piece::Casting(_) | Piece::Feeder(_))
}

fn coldest(meshed: &Meshed, likely: &Glance, ends: &[Glance; 2]) -> Option<Coldest> {
    let piece = |cell: usize| &meshed.pieces[usize::from(meshed.piece[cell])];
    let in_casting = |cell: &usize| matches!(piece(*cell), Piece::Casting(_));
    let least = |glance: &Glance| {
        metal_cells(meshed)
            .filter(|cell| in_casting(cell) && glance.arrival_s[*cell].is_finite())
            .min_by(|one, other| {
                let [one, other] = [one, other].map(|cell| glance.arrival_c[*cell]);
                one.total_cmp(&other)
            })
            .map(|cell| (cell, f64::from(glance.arrival_c[cell])))
    };
    let (cell, celsius) = least(likely)?;
    let at_end = |glance: &Glance| least(glance).map_or(celsius, |(_, celsius)| celsius);
    let [low, high] = [at_end(&ends[0]), at_end(&ends[1])];
    Some(Coldest {
        piece: piece(cell).clone(),
        place_mm: meshed.cells.middle_mm(cell),
        celsius: Band::new(low.min(celsius), celsius, high.max(celsius)),
        solid: f64::from(likely.arrival_solid[cell]),
    })
}

/// How far to the side a vent may stand from a high of air, mm: sand carries the air of a small
/// pocket that far while it fills; at twice as much it would serve its neighbour.
const VENT_REACH_MM: f64 = 15.0;

/// Each pocket of air with the highs over which no vent stands.
fn air(mould: &Mould, glance: &Glance) -> Vec<(Pocket, Vec<[f64; 3]>)> {
    let vents = mould.vents.iter().flat_map(|vents| &vents.mesh.points);
    let feet: Vec<[f64; 3]> = vents.copied().collect();
    let is_vented = |place_mm: &[f64; 3]| {
        feet.iter().any(|foot| {
            let [dx, dy] = [0, 1].map(|axis| foot[axis] - place_mm[axis]);
            foot[2] >= place_mm[2] && dx.hypot(dy) <= VENT_REACH_MM
        })
    };
    let pockets = glance.facts.iter().filter_map(|fact| match fact {
        Fact::ShutIn(pocket) => Some(pocket),
        _ => None,
    });
    pockets
        .map(|pocket| {
            let highs = pocket.highs.iter().map(|high| high.place_mm);
            let bare = highs.filter(|place_mm| !is_vented(place_mm)).collect();
            (pocket.clone(), bare)
        })
        .collect()
}
