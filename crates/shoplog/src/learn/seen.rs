//! What was measured, as the log has it: one value a casting, a heat, a pour or a test. Entries
//! about which something is asked teach nothing until they are put right.

use rusqlite::Row;

use crate::error::LogError;
use crate::learn::Of;
use crate::log::Log;

/// Measurements of one thing, and the band that the plan had for it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Seen {
    /// The number of the entry, and what it came to.
    pub values: Vec<(i64, f64)>,
    /// Low, likely and high of the first plan that told them.
    pub band: Option<[f64; 3]>,
}

/// Contraction in per cent by metal: along each direction, and over all of them.
pub(super) fn castings_by_alloy(
    log: &Log,
) -> Result<Vec<(String, Option<String>, Seen)>, LogError> {
    let sql = "
        SELECT h.alloy, s.along, c.number,
               avg((s.pattern_mm - s.measured_mm) / s.pattern_mm * 100),
               f.low, f.likely, f.high
        FROM sizes s
        JOIN castings c ON c.id = s.casting
        JOIN pours p ON p.id = c.pour
        JOIN heats h ON h.id = p.heat
        LEFT JOIN planned f ON f.mould = p.mould AND f.figure = 'contraction' AND f.unit = '%'
        WHERE s.pattern_mm > 0 AND s.measured_mm BETWEEN 0.95 * s.pattern_mm AND 1.01 * s.pattern_mm
              AND coalesce(s.held, 0) = 0 AND h.alloy IS NOT NULL
        GROUP BY h.alloy, s.along, c.id
        ORDER BY h.alloy, c.number, s.along";
    let mut query = log.connection.prepare(sql)?;
    let rows = query.query_map([], |row| {
        let alloy: String = row.get(0)?;
        let along: Option<String> = row.get(1)?;
        Ok((alloy, along, measured(row, 2)?))
    })?;
    let mut found: Vec<(String, Option<String>, Seen)> = Vec::new();
    for row in rows {
        let (alloy, along, one) = row?;
        add(&mut found, (&alloy, None), one);
        if along.is_some() {
            add(&mut found, (&alloy, along), one);
        }
    }
    // Sizes of one casting hang together: over all directions it counts once, by their mean.
    for (_, _, seen) in found.iter_mut().filter(|(_, along, _)| along.is_none()) {
        let mut each: Vec<(i64, f64)> = Vec::new();
        for casting in seen.values.chunk_by(|one, other| one.0 == other.0) {
            let sum: f64 = casting.iter().map(|(_, value)| value).sum();
            each.push((casting[0].0, sum / casting.len() as f64));
        }
        seen.values = each;
    }
    found.sort_by(|one, other| (&one.0, &one.1).cmp(&(&other.0, &other.1)));
    Ok(found)
}

/// Loss in per cent of the charge, by metal, of the heats that were weighed in and out.
pub(super) fn loss_by_alloy(log: &Log) -> Result<Vec<(String, Seen)>, LogError> {
    let sql = "
        SELECT h.alloy, h.number,
               (h.charge_kg - coalesce(h.left_kg, 0) - sum(p.mass_kg)) / h.charge_kg * 100 AS lost,
               max(f.low), max(f.likely), max(f.high)
        FROM heats h
        JOIN pours p ON p.heat = h.id
        LEFT JOIN planned f ON f.mould = p.mould AND f.figure = 'melt loss' AND f.unit = '%'
        WHERE h.charge_kg > 0 AND h.alloy IS NOT NULL
        GROUP BY h.id
        HAVING count(*) = count(p.mass_kg) AND lost BETWEEN 0 AND 90
        ORDER BY h.alloy, h.number";
    let mut query = log.connection.prepare(sql)?;
    let rows = query.query_map([], |row| Ok((row.get::<_, String>(0)?, measured(row, 1)?)))?;
    let mut found: Vec<(String, Option<String>, Seen)> = Vec::new();
    for row in rows {
        let (alloy, one) = row?;
        add(&mut found, (&alloy, None), one);
    }
    Ok(found
        .into_iter()
        .map(|(alloy, _, seen)| (alloy, seen))
        .collect())
}

/// What was done over what was planned, or the other way where more is less. A plan that was worked
/// out with a factor of the shop's own carries it in the log; here it is taken off again, so that
/// every pour is compared with the book.
pub(super) fn ratios(log: &Log, of: &Of) -> Result<Seen, LogError> {
    let sql = match of {
        Of::Freezing => {
            "SELECT p.number,
                    p.freezing_min / p.planned_freezing_min * coalesce(g.likely, 1),
                    CASE WHEN g.likely IS NULL THEN f.low END, f.likely, f.high
             FROM pours p LEFT JOIN planned f
             ON f.mould = p.mould AND f.figure = 'freezing time of the heaviest section'
             LEFT JOIN planned g ON g.mould = p.mould
             AND g.figure = 'own factor of freezing time of the heaviest section'
             WHERE p.freezing_min > 0 AND p.planned_freezing_min > 0 ORDER BY p.number"
        }
        Of::Filling => {
            "SELECT p.number, p.planned_time_s / p.time_s * coalesce(g.likely, 1),
                    NULL, NULL, NULL
             FROM pours p LEFT JOIN planned g
             ON g.mould = p.mould AND g.figure = 'own factor of fill time'
             WHERE p.time_s > 0 AND p.planned_time_s > 0
             AND coalesce(p.how, 'steady') = 'steady' ORDER BY p.number"
        }
        Of::Drying => {
            "SELECT b.number, b.drying_h / b.planned_drying_h, NULL, NULL, NULL
             FROM batches b WHERE b.drying_h > 0 AND b.planned_drying_h > 0 ORDER BY b.number"
        }
        Of::Efficiency => {
            "SELECT h.number, h.planned_fuel_kg / h.fuel_kg * coalesce(max(g.likely), 1),
                    CASE WHEN max(g.likely) IS NULL THEN max(f.low) END,
                    max(f.likely), max(f.high)
             FROM heats h LEFT JOIN pours p ON p.heat = h.id
             LEFT JOIN planned f ON f.mould = p.mould AND f.figure = 'fuel'
             LEFT JOIN planned g ON g.mould = p.mould AND g.figure = 'own factor of fuel'
             WHERE h.fuel_kg > 0 AND h.planned_fuel_kg > 0 GROUP BY h.id ORDER BY h.number"
        }
        Of::Contraction { .. } | Of::Loss { .. } | Of::Strength => return Ok(Seen::default()),
    };
    one_thing(log, sql)
}

/// Green strength on good days, kPa.
pub(super) fn strengths(log: &Log) -> Result<Seen, LogError> {
    one_thing(
        log,
        "SELECT t.number, t.value, NULL, NULL, NULL FROM sand_tests t
         WHERE t.test = 'cylinder' AND t.unit = 'kPa' AND t.good = 1 AND t.value > 0
         ORDER BY t.number",
    )
}

type Measured = (i64, f64, Option<[f64; 3]>);

fn one_thing(log: &Log, sql: &str) -> Result<Seen, LogError> {
    let mut query = log.connection.prepare(sql)?;
    let rows = query.query_map([], |row| measured(row, 0))?;
    let mut seen = Seen::default();
    for row in rows {
        put(&mut seen, row?);
    }
    Ok(seen)
}

fn measured(row: &Row<'_>, from: usize) -> rusqlite::Result<Measured> {
    let ends: [Option<f64>; 3] = [row.get(from + 2)?, row.get(from + 3)?, row.get(from + 4)?];
    let band = match ends {
        [Some(low), Some(likely), Some(high)] if 0.0 < low && low <= high => {
            Some([low, likely, high])
        }
        _ => None,
    };
    Ok((row.get(from)?, row.get(from + 1)?, band))
}

fn add(
    found: &mut Vec<(String, Option<String>, Seen)>,
    (alloy, along): (&str, Option<String>),
    one: Measured,
) {
    let at = found
        .iter()
        .position(|other| other.0 == alloy && other.1 == along);
    let at = at.unwrap_or_else(|| {
        found.push((alloy.to_owned(), along, Seen::default()));
        found.len() - 1
    });
    put(&mut found[at].2, one);
}

fn put(seen: &mut Seen, (number, value, band): Measured) {
    seen.values.push((number, value));
    seen.band = seen.band.or(band);
}
