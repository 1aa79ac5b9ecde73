//! The log month by month: castings and rejects with their limits, yield, fuel for each kilogram.

pub mod drawn;

use trials::chart::{Limits, share_limits};

use crate::error::LogError;
use crate::log::Log;

/// A month of the log.
#[derive(Clone, Debug, PartialEq)]
pub struct Month {
    /// The month: 2026-05.
    pub month: String,
    /// Pours.
    pub pours: usize,
    /// Castings judged.
    pub judged: usize,
    /// Castings that are not good.
    pub bad: usize,
    /// Castings over metal poured, where both were weighed.
    pub yields: Option<f64>,
    /// Kilograms of fuel for each kilogram of castings, where both were weighed.
    pub fuel: Option<f64>,
}

/// The months with what is usual in them.
#[derive(Clone, Debug, PartialEq)]
pub struct Chart {
    /// The months, the oldest first; months without a pour are not there.
    pub months: Vec<Month>,
    /// The share of rejects over all months.
    pub centre: f64,
    /// The limits of each month: its share of rejects leaves them by chance about three times in a
    /// thousand. None where nothing was judged.
    pub limits: Vec<Option<Limits>>,
}

/// The chart of a log.
///
/// # Errors
///
/// What the file says.
pub fn chart(log: &Log) -> Result<Chart, LogError> {
    let months = months(log)?;
    let judged: usize = months.iter().map(|month| month.judged).sum();
    let bad: usize = months.iter().map(|month| month.bad).sum();
    let centre = bad as f64 / judged.max(1) as f64;
    let limits = months
        .iter()
        .map(|month| (month.judged > 0).then(|| share_limits(centre, month.judged)));
    Ok(Chart {
        limits: limits.collect(),
        months,
        centre,
    })
}

impl Chart {
    /// Whether a month's share of rejects speaks of a change.
    pub fn is_beyond(&self, at: usize) -> bool {
        let share = self.months[at].share();
        let limits = self.limits[at];
        share
            .zip(limits)
            .is_some_and(|(share, limits)| share > limits.high || share < limits.low)
    }
}

impl Month {
    /// The share of rejects.
    pub fn share(&self) -> Option<f64> {
        (self.judged > 0).then(|| self.bad as f64 / self.judged as f64)
    }
}

fn months(log: &Log) -> Result<Vec<Month>, LogError> {
    let sql = "
        SELECT month, count(*), sum(judged), sum(bad),
               sum(CASE WHEN mass IS NOT NULL THEN cast_mass END)
               / sum(CASE WHEN cast_mass IS NOT NULL THEN mass END),
               (SELECT sum(h.fuel_kg) FROM heats h WHERE h.fuel_kg IS NOT NULL AND h.id IN
                  (SELECT q.heat FROM pours q WHERE substr(q.poured, 1, 7) = month))
               / sum(cast_mass)
        FROM (SELECT substr(p.poured, 1, 7) AS month, p.mass_kg AS mass,
                     count(c.good) AS judged, count(c.good) - coalesce(sum(c.good), 0) AS bad,
                     sum(c.mass_kg) AS cast_mass
              FROM pours p LEFT JOIN castings c ON c.pour = p.id
              WHERE p.poured IS NOT NULL GROUP BY p.id)
        GROUP BY month ORDER BY month";
    let mut query = log.connection.prepare(sql)?;
    let rows = query.query_map([], |row| {
        let count = |at: usize| {
            row.get::<_, i64>(at)
                .map(|n| usize::try_from(n).unwrap_or(0))
        };
        Ok(Month {
            month: row.get(0)?,
            pours: count(1)?,
            judged: count(2)?,
            bad: count(3)?,
            yields: row.get(4)?,
            fuel: row.get(5)?,
        })
    })?;
    Ok(rows.collect::<Result<_, _>>()?)
}
