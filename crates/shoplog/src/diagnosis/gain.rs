//! What one change may gain: the share of rejects that is expected in the next pour with it and
//! without it, by this shop's own counts and by how likely the cause is.

use bench::told::Told;
use job::words::said::Said;
use measure::band::Band;
use trials::exact::Count;
use trials::shares::{ShareBelief, at, mean_of};

use crate::error::LogError;
use crate::log::Log;

/// Rejects expected in the next pour.
#[derive(Clone, Debug, PartialEq)]
pub struct Gain {
    /// The castings of the pour in which the fault was seen.
    pub now: Count,
    /// The castings of the pours before it: of its job where any was judged, else of all.
    pub before: Count,
    /// Low, likely and high share of rejects where nothing is changed.
    pub without: [f64; 3],
    /// The same with the change: where the cause is right, rejects are as they were before; where
    /// it is not, as they are now.
    pub with: [f64; 3],
}

/// Parts of all cases in which a share is below the ends of its band: nine in ten lie between.
const ENDS: [f64; 2] = [0.05, 0.95];

/// What taking away a cause gains that is so likely; nothing where no casting was judged
/// before, none of this pour is bad, or this pour is no worse than those before.
///
/// # Errors
///
/// What the file says.
pub fn gain(log: &Log, pour: &str, likely: f64) -> Result<Option<Gain>, LogError> {
    let [now, of_job, of_all] = counts(log, pour)?;
    let before = if of_job.of > 0 { of_job } else { of_all };
    let [ill, well] = [now, before].map(ShareBelief::after);
    if now.hits == 0 || before.of == 0 || ill.mean() <= well.mean() {
        return Ok(None);
    }
    let band = |either: &[(f64, ShareBelief)]| {
        let (mean, ends) = (mean_of(either), ENDS.map(|part| at(either, part)));
        [ends[0].min(mean), mean, ends[1].max(mean)]
    };
    Ok(Some(Gain {
        now,
        before,
        without: band(&[(1.0, ill)]),
        with: band(&[(likely, well), (1.0 - likely, ill)]),
    }))
}

/// Tells it.
pub fn tell(told: &mut Told, gain: &Gain) {
    let band = |[low, likely, high]: [f64; 3]| Band::new(low, likely, high);
    told.share("log-gain-without", band(gain.without));
    told.share("log-gain-with", band(gain.with));
    let said = Said::new("log-gain-counts")
        .with("now", gain.now.of.to_string())
        .with("now_bad", gain.now.hits.to_string())
        .with("before", gain.before.of.to_string());
    told.note(said.with("before_bad", gain.before.hits.to_string()));
}

/// Castings of the pour, of those before it of its job, and of all before it.
fn counts(log: &Log, pour: &str) -> Result<[Count; 3], LogError> {
    let sql = "
        WITH here AS (
            SELECT p.number AS number, m.job AS job FROM pours p
            LEFT JOIN moulds m ON m.id = p.mould WHERE p.id = ?1),
        judged AS (
            SELECT c.good AS good, p.number AS number, m.job AS job FROM castings c
            JOIN pours p ON p.id = c.pour LEFT JOIN moulds m ON m.id = p.mould
            WHERE c.good IS NOT NULL)
        SELECT coalesce(sum(j.number = h.number AND j.good = 0), 0),
               coalesce(sum(j.number = h.number), 0),
               coalesce(sum(j.number < h.number AND j.job = h.job AND j.good = 0), 0),
               coalesce(sum(j.number < h.number AND j.job = h.job), 0),
               coalesce(sum(j.number < h.number AND j.good = 0), 0),
               coalesce(sum(j.number < h.number), 0)
        FROM judged j, here h";
    let found = log.connection.query_row(sql, [pour], |row| {
        let count = |at: usize| -> rusqlite::Result<Count> {
            let number = |at: usize| {
                row.get::<_, i64>(at)
                    .map(|number| usize::try_from(number).unwrap_or(0))
            };
            Ok(Count {
                hits: number(at)?,
                of: number(at + 1)?,
            })
        };
        Ok([count(0)?, count(2)?, count(4)?])
    })?;
    Ok(found)
}
