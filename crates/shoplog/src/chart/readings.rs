//! Readings of the log one by one, for the charts that watch them: the limits of single readings,
//! from good pours where there are enough of them.

use bench::tested::readings::{Reading, ReadingsFile, Test};
use bench::tested::watch::{Watched, watched};
use rusqlite::params_from_iter;

use crate::chart::picture::Kind;
use crate::error::LogError;
use crate::log::Log;

/// The unit of the readings of a kind and their chart; nothing where they are too few or all alike,
/// and for a kind that is no readings.
///
/// # Errors
///
/// What the file says.
pub(super) fn chart_of(log: &Log, kind: Kind) -> Result<Option<(&'static str, Watched)>, LogError> {
    let (name, unit, sql) = match kind {
        Kind::Moisture => ("moisture", "%", OF_MOULDS),
        Kind::Heat => ("heat", "K", OF_POURS),
        Kind::Loss => ("loss", "%", OF_HEATS),
        Kind::Test(test) => (test.name, test.unit, OF_TESTS),
        Kind::Rejects | Kind::Yield | Kind::Fuel | Kind::Contraction => return Ok(None),
    };
    let mut query = log.connection.prepare(sql)?;
    let of_test: &[&str] = match kind {
        Kind::Test(_) => &[name],
        _ => &[],
    };
    let rows = query.query_map(params_from_iter(of_test), |row| {
        Ok(Reading {
            day: row.get(0)?,
            test: name.to_owned(),
            value: row.get(1)?,
            good: row.get(2)?,
            who: None,
        })
    })?;
    let reading: Vec<Reading> = rows.collect::<Result<_, _>>()?;
    let test = Test {
        name,
        law: None,
        unit,
        how: "",
    };
    Ok(watched(&test, &ReadingsFile { reading })
        .ok()
        .map(|chart| (unit, chart)))
}

/// Moisture of the sand of each mould that was poured.
const OF_MOULDS: &str = "
    SELECT coalesce(p.poured, p.written), m.moisture_percent,
           EXISTS (SELECT 1 FROM castings c WHERE c.pour = p.id)
           AND NOT EXISTS (SELECT 1 FROM castings c WHERE c.pour = p.id AND c.good = 0)
    FROM pours p JOIN moulds m ON m.id = p.mould
    WHERE m.moisture_percent BETWEEN 0 AND 25 ORDER BY p.number";

/// Heat over the plan's of each pour.
const OF_POURS: &str = "
    SELECT coalesce(p.poured, p.written), p.temperature_c - p.planned_temperature_c,
           EXISTS (SELECT 1 FROM castings c WHERE c.pour = p.id)
           AND NOT EXISTS (SELECT 1 FROM castings c WHERE c.pour = p.id AND c.good = 0)
    FROM pours p
    WHERE abs(p.temperature_c - p.planned_temperature_c) <= 250 ORDER BY p.number";

/// Loss of each heat that was weighed in and out.
const OF_HEATS: &str = "
    SELECT coalesce(h.melted, h.lit, h.written),
           (h.charge_kg - coalesce(h.left_kg, 0) - sum(p.mass_kg)) / h.charge_kg * 100 AS lost,
           0
    FROM heats h JOIN pours p ON p.heat = h.id
    WHERE h.charge_kg > 0
    GROUP BY h.id HAVING count(*) = count(p.mass_kg) AND lost BETWEEN 0 AND 90
    ORDER BY h.number";

/// Readings of a test of the sand.
const OF_TESTS: &str = "
    SELECT coalesce(t.day, t.written), t.value, coalesce(t.good, 0)
    FROM sand_tests t WHERE t.test = ?1 AND t.value IS NOT NULL ORDER BY t.number";
