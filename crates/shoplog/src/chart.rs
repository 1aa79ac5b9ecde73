//! The log month by month: castings and rejects with their limits, yield, fuel for each kilogram.

pub mod bands;
pub mod drawn;
mod months_drawn;
pub mod picture;
mod readings;

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
    // Each table is walked once: with a lookup for every month a lifetime's log takes seconds.
    let sql = "
        WITH came AS (
            SELECT pour, count(good) AS judged, count(good) - coalesce(sum(good), 0) AS bad,
                   sum(mass_kg) AS mass
            FROM castings WHERE pour IS NOT NULL GROUP BY pour),
        burnt AS (
            SELECT substr(min(q.poured), 1, 7) AS month, h.fuel_kg AS fuel
            FROM heats h JOIN pours q ON q.heat = h.id
            WHERE h.fuel_kg IS NOT NULL GROUP BY h.id),
        fuels AS (SELECT month, sum(fuel) AS fuel FROM burnt GROUP BY month),
        poured AS (
            SELECT substr(p.poured, 1, 7) AS month, count(*) AS pours, sum(c.judged) AS judged,
                   sum(c.bad) AS bad, sum(c.mass) AS mass,
                   sum(CASE WHEN p.mass_kg IS NOT NULL THEN c.mass END)
                   / sum(CASE WHEN c.mass IS NOT NULL THEN p.mass_kg END) AS yields
            FROM pours p LEFT JOIN came c ON c.pour = p.id
            WHERE p.poured IS NOT NULL GROUP BY 1)
        SELECT m.month, m.pours, coalesce(m.judged, 0), coalesce(m.bad, 0), m.yields,
               f.fuel / m.mass
        FROM poured m LEFT JOIN fuels f ON f.month = m.month ORDER BY m.month";
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
