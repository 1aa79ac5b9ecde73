//! The filling of a mould in words, for any door.

use measure::band::Band;
use measure::text::rounded;
use pour::fill::Glance;
use pour::fill::air::Pocket;
use pour::fill::fact::{Fact, LeastWall, Meeting, Misrun};
use pour::fill::gates::GateSpeed;
use rigging::piece::Piece;

use crate::cores_told::{Line, caution, note};
use crate::filling::{Coldest, Filling, JobFilled};
use crate::freezing_told::{celsius, cm3, per_cent, place, time, times};
use crate::mould_told::piece;
use crate::words::said::Said;

/// The figures of a filling, one a line.
pub(crate) fn figures(filling: &Filling) -> Vec<Said> {
    let Some(filled) = filling.seen() else {
        return Vec::new();
    };
    let mut said = vec![
        Said::new("fill-time")
            .with("likely", time(filled.fills_s.likely()))
            .with("between", times(&filled.fills_s))
            .with("gates", time(filled.starts_s.likely())),
    ];
    said.extend(fastest(filled).map(|(gate, speed)| {
        Said::new("fill-gate")
            .with("piece", piece(gate))
            .with("speed", metres_a_second(speed.fastest_m_s))
            .with("at", time(speed.fastest_at_s))
            .with("limit", limit(filled))
    }));
    said.extend(filled.last.iter().map(|(of, place_mm, at_s)| {
        Said::new("fill-last")
            .with("piece", piece(of))
            .with("place", place(*place_mm))
            .with("at", time(*at_s))
    }));
    said.extend(filled.coldest.as_ref().map(of_coldest));
    said.extend(least_wall(filled));
    said
}

/// Hollow that stays empty below this is a step of the cells, mm³.
const LEAST_MM3: f64 = 50.0;

/// Most facts of one kind that are told: with more of them nobody looks at any.
const MOST: usize = 3;

/// What was noticed while it fills, and whether the freezing starts from it.
pub(crate) fn lines(filling: &Filling, even_c: f64) -> Vec<Line> {
    let filled = match filling {
        Filling::Seen(filled) => filled,
        Filling::Rough(filled) => {
            let said = Said::new("fill-rough")
                .with("share", per_cent(filled.rough_share))
                .with("start", celsius(even_c));
            let mut lines = vec![caution(said)];
            lines.extend(of_filled(filled));
            return lines;
        }
        Filling::Unseen(_) => {
            return vec![note(
                Said::new("fill-unseen").with("start", celsius(even_c)),
            )];
        }
    };
    let mut lines = of_filled(filled);
    if filled.rough_share > 0.0 {
        let froudes = filled.glance.gates.iter().map(|gate| gate.largest_froude);
        let said = Said::new("fill-splashes")
            .with("share", per_cent(filled.rough_share))
            .with("froude", rounded(froudes.fold(0.0, f64::max), 2));
        lines.push(note(said));
    }
    lines
}

fn of_filled(filled: &JobFilled) -> Vec<Line> {
    let mut lines: Vec<Line> = too_fast(filled).into_iter().collect();
    lines.extend(unfilled(&filled.glance));
    lines.extend(misruns(filled));
    lines.extend(meetings(filled));
    let pockets = filled.air.iter().take(MOST);
    lines.extend(pockets.map(|(pocket, bare)| of_pocket(pocket, bare, filled.pricked)));
    lines.extend(part_full(&filled.glance));
    lines
}

fn fastest(filled: &JobFilled) -> Option<(&Piece, &GateSpeed)> {
    let gates = filled.gates.iter().zip(&filled.glance.gates);
    gates.max_by(|(_, one), (_, other)| one.fastest_m_s.total_cmp(&other.fastest_m_s))
}

fn too_fast(filled: &JobFilled) -> Option<Line> {
    let (gate, speed) = fastest(filled)?;
    if speed.fastest_m_s <= filled.limit.likely().as_m_per_s() {
        return None;
    }
    let said = Said::new("fill-too-fast")
        .with("piece", piece(gate))
        .with("speed", metres_a_second(speed.fastest_m_s))
        .with("limit", limit(filled));
    Some(caution(said))
}

fn limit(filled: &JobFilled) -> String {
    let [low, likely, high] = [
        filled.limit.low(),
        filled.limit.likely(),
        filled.limit.high(),
    ]
    .map(|end| end.as_m_per_s());
    match low < high {
        true => format!(
            "{} m/s ({} – {})",
            rounded(likely, 2),
            rounded(low, 2),
            rounded(high, 2)
        ),
        false => metres_a_second(likely),
    }
}

fn of_coldest(coldest: &Coldest) -> Said {
    let id = match coldest.solid > 0.0 {
        true => "fill-coldest-freezing",
        false => "fill-coldest",
    };
    let ends = &coldest.celsius;
    Said::new(id)
        .with("piece", piece(&coldest.piece))
        .with("place", place(coldest.place_mm))
        .with("celsius", celsius(ends.likely()))
        .with(
            "between",
            format!("{:.0} – {:.0} °C", ends.low(), ends.high()),
        )
        .with("solid", per_cent(coldest.solid))
}

/// The thinnest wall that would still run, between the ends.
pub(crate) fn least_wall_mm(filled: &JobFilled) -> Option<(Band<f64>, LeastWall)> {
    let likely = least_wall_of(&filled.glance)?;
    let end = |glance: &Glance| least_wall_of(glance).map_or(likely.wall_mm, |wall| wall.wall_mm);
    let [one, other] = [end(&filled.ends[0]), end(&filled.ends[1])];
    Some((Band::new(one, likely.wall_mm, other), likely))
}

fn least_wall(filled: &JobFilled) -> Option<Said> {
    let (band, wall) = least_wall_mm(filled)?;
    let said = Said::new("fill-least-wall")
        .with("wall", format!("{:.1} mm", band.likely()))
        .with(
            "between",
            format!("{:.1} – {:.1} mm", band.low(), band.high()),
        )
        .with("way", format!("{:.0} mm", wall.way_mm))
        .with("place", place(wall.place_mm));
    Some(said)
}

fn least_wall_of(glance: &Glance) -> Option<LeastWall> {
    glance.facts.iter().find_map(|fact| match fact {
        Fact::LeastWall(wall) => Some(*wall),
        _ => None,
    })
}

fn unfilled(glance: &Glance) -> Vec<Line> {
    let facts = glance.facts.iter();
    let said = facts.filter_map(|fact| match fact {
        Fact::Unfilled {
            volume_mm3,
            place_mm,
            above_basin,
        } if *volume_mm3 > LEAST_MM3 => {
            let id = match above_basin {
                true => "fill-above-basin",
                false => "fill-no-gate",
            };
            let said = Said::new(id)
                .with("volume", cm3(*volume_mm3))
                .with("place", place(*place_mm));
            Some(caution(said))
        }
        _ => None,
    });
    said.collect()
}

/// The misruns of a filling, the largest first.
pub(crate) fn misruns_of(glance: &Glance) -> impl Iterator<Item = &Misrun> {
    glance.facts.iter().filter_map(|fact| match fact {
        Fact::Misrun(misrun) => Some(misrun),
        _ => None,
    })
}

/// Misruns; where there are none, those of the cold end.
fn misruns(filled: &JobFilled) -> Vec<Line> {
    let said = |id: &'static str, misrun: &Misrun| {
        Said::new(id)
            .with("place", place(misrun.place_mm))
            .with("volume", cm3(misrun.volume_mm3))
            .with("solid", per_cent(misrun.solid))
    };
    let likely = misruns_of(&filled.glance).take(MOST);
    let likely: Vec<Line> = likely
        .map(|misrun| caution(said("fill-misrun", misrun)))
        .collect();
    if !likely.is_empty() {
        return likely;
    }
    let cold = misruns_of(&filled.ends[0]).next();
    cold.map(|misrun| note(said("fill-misrun-cold", misrun)))
        .into_iter()
        .collect()
}

/// The meetings of a filling, the coldest first.
pub(crate) fn meetings_of(glance: &Glance) -> impl Iterator<Item = &Meeting> {
    glance.facts.iter().filter_map(|fact| match fact {
        Fact::Meeting(meeting) => Some(meeting),
        _ => None,
    })
}

/// Fronts that meet cold; where none do, those of the cold end, or the coldest of the warm ones.
fn meetings(filled: &JobFilled) -> Vec<Line> {
    let is_cold = |meeting: &&Meeting| meeting.solid > 0.0 || meeting.deficit > 0.0;
    let said = |id: &'static str, meeting: &Meeting| {
        Said::new(id)
            .with("place", place(meeting.place_mm))
            .with("celsius", celsius(meeting.coldest_c))
            .with("solid", per_cent(meeting.solid))
    };
    let cold = meetings_of(&filled.glance).filter(is_cold).take(MOST);
    let cold: Vec<Line> = cold
        .map(|meeting| caution(said("fill-meets-cold", meeting)))
        .collect();
    if !cold.is_empty() {
        return cold;
    }
    let at_end = meetings_of(&filled.ends[0]).find(is_cold);
    let at_end = at_end.map(|meeting| note(said("fill-meets-cold-end", meeting)));
    let warm = || {
        let first = meetings_of(&filled.glance).next();
        first.map(|meeting| note(said("fill-meets-warm", meeting)))
    };
    at_end.or_else(warm).into_iter().collect()
}

/// Air of a pocket with its highs without a vent; `pricked` tells whether the plan pricks any.
fn of_pocket(pocket: &Pocket, bare_mm: &[[f64; 3]], pricked: bool) -> Line {
    let highs: Vec<[f64; 3]> = match bare_mm.is_empty() {
        true => pocket.highs.iter().map(|high| high.place_mm).collect(),
        false => bare_mm.to_vec(),
    };
    let places: Vec<String> = highs.into_iter().take(MOST).map(place).collect();
    let said = |id: &'static str| {
        Said::new(id)
            .with("volume", cm3(pocket.volume_mm3))
            .with("places", places.join("; "))
    };
    match (bare_mm.is_empty(), pricked) {
        (true, _) => note(said("fill-air-vented")),
        (false, true) => caution(said("fill-air")),
        (false, false) => note(said("fill-air-sand")),
    }
}

fn part_full(glance: &Glance) -> Option<Line> {
    let thin = glance.facts.iter().filter_map(|fact| match fact {
        Fact::PartFull(thin) => Some(thin),
        _ => None,
    });
    let worst = thin.min_by(|one, other| {
        let [one, other] = [one, other].map(|thin| thin.stream_m2 / thin.built_m2);
        one.total_cmp(&other)
    })?;
    let said = Said::new("fill-part-full")
        .with("height", format!("{:.0} mm", worst.height_m * 1e3))
        .with("share", per_cent(worst.stream_m2 / worst.built_m2));
    Some(note(said))
}

fn metres_a_second(speed: f64) -> String {
    format!("{} m/s", rounded(speed, 2))
}
