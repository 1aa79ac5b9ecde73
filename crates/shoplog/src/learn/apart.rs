//! Sand and its contact with the metal told apart. A thick section waits for the sand, as the
//! square of its modulus; a thin one waits for the contact, as the modulus itself. Only castings
//! thick and thin beside each other tell the two apart.

use job::contact_worth::contact_worth_mm;
use trials::parts::{Before, Factor, Parts, factors};

use crate::error::LogError;
use crate::learn::{FEWEST, HOLDS, NINE_TENTHS, SCATTER_OF_TIMES, SPREAD_OF_TIMES};
use crate::log::Log;

/// What timed castings teach of sand and contact.
#[derive(Clone, Debug, PartialEq)]
pub struct Apart {
    /// Time in the sand alone, over the plan's.
    pub sand: Factor,
    /// What passes the contact for each kelvin, over the book's: low, middle, high.
    pub contact: [f64; 3],
    /// Spread of the contact over that of the book.
    pub narrower: f64,
    /// Whether the castings tell the two apart.
    pub told: bool,
    /// Numbers of the pours it rests on.
    pub rests_on: Vec<i64>,
    /// Moduli of the thinnest and the thickest section timed, mm.
    pub moduli_mm: [f64; 2],
    /// A section as thin as this, mm of modulus, waits as long for the contact as for the sand:
    /// timing one teaches most.
    pub thin_mm: f64,
}

/// How much narrower the contact has to be than in the book before it is called told apart: by
/// three tenths. Nearer to one, and two lucky timings do; nearer to nought, and no small shop ever
/// gets there.
const TOLD: f64 = 0.7;

/// Sand and contact by the pours that were timed; nothing where fewer than three were, of metals
/// whose contact is in the book.
///
/// # Errors
///
/// What the file says.
pub fn apart(log: &Log) -> Result<Option<Apart>, LogError> {
    let timed = timed(log)?;
    if timed.len() < FEWEST {
        return Ok(None);
    }
    // Where several metals were timed, the widest book is the one to start from.
    let spread = timed.iter().map(|one| one.spread).fold(0.0, f64::max);
    let before = Before {
        first: SPREAD_OF_TIMES,
        second: spread,
        scatter: SCATTER_OF_TIMES,
    };
    let parts: Vec<Parts> = timed
        .iter()
        .map(|one| Parts {
            first: 1.0,
            second: one.worth_mm / one.modulus_mm,
            measured: one.ratio,
        })
        .collect();
    let [sand, worth] = factors(&before, &parts, HOLDS);
    let moduli = || timed.iter().map(|one| one.modulus_mm);
    let [high, middle, low] = worth.ends;
    Ok(Some(Apart {
        sand,
        // The better the contact, the less time it is worth.
        contact: [1.0 / low, 1.0 / middle, 1.0 / high],
        narrower: worth.narrower,
        told: worth.narrower <= TOLD,
        rests_on: timed.iter().map(|one| one.number).collect(),
        moduli_mm: [
            moduli().fold(f64::INFINITY, f64::min),
            moduli().fold(0.0, f64::max),
        ],
        thin_mm: timed.iter().map(|one| one.worth_mm).fold(0.0, f64::max),
    }))
}

struct Timed {
    number: i64,
    ratio: f64,
    modulus_mm: f64,
    worth_mm: f64,
    spread: f64,
}

/// Pours that were timed, with the modulus that the plan had for their heaviest section.
fn timed(log: &Log) -> Result<Vec<Timed>, LogError> {
    let sql = "
        SELECT p.number, p.freezing_min / p.planned_freezing_min * coalesce(g.likely, 1),
               f.likely, h.alloy
        FROM pours p JOIN heats h ON h.id = p.heat
        JOIN planned f ON f.mould = p.mould AND f.figure = 'modulus of the heaviest section'
             AND f.unit = 'mm' AND f.likely > 0
        LEFT JOIN planned g ON g.mould = p.mould
             AND g.figure = 'own factor of freezing time of the heaviest section'
        WHERE p.freezing_min > 0 AND p.planned_freezing_min > 0 AND h.alloy IS NOT NULL
        ORDER BY p.number";
    let mut query = log.connection.prepare(sql)?;
    let rows = query.query_map([], |row| {
        let alloy: String = row.get(3)?;
        Ok((row.get(0)?, row.get(1)?, row.get(2)?, alloy))
    })?;
    let mut found = Vec::new();
    for row in rows {
        let (number, ratio, modulus_mm, alloy) = row?;
        if let Some(worth) = contact_worth_mm(&alloy) {
            found.push(Timed {
                number,
                ratio,
                modulus_mm,
                worth_mm: (worth.low() * worth.high()).sqrt(),
                spread: (worth.high() / worth.low()).ln() / (2.0 * NINE_TENTHS),
            });
        }
    }
    Ok(found)
}
