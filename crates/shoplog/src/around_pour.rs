//! A pour with everything that stood around it when it was poured, and how its castings came out.

use rusqlite::Row;

use crate::error::LogError;
use crate::log::Log;

/// A pour with its settings.
#[derive(Clone, Debug, PartialEq)]
pub struct AroundPour {
    /// Its id.
    pub id: String,
    /// Its number.
    pub number: i64,
    /// When it was poured.
    pub poured: Option<String>,
    /// The job.
    pub job: Option<String>,
    /// Words that were written down, in the order of [`WORDS`]; nothing where a place is empty.
    pub words: Vec<Option<String>>,
    /// Numbers that were written down, in the order of [`NUMBERS`].
    pub numbers: Vec<Option<f64>>,
    /// Castings judged good.
    pub good: usize,
    /// Castings judged at all.
    pub judged: usize,
}

/// What may change from pour to pour in words, with the place in the log.
pub const WORDS: [(&str, &str); 17] = [
    ("alloy", "h.alloy"),
    ("scrap", "h.scrap"),
    ("furnace", "h.furnace"),
    ("fuel", "h.fuel_kind"),
    ("probe", "h.probe"),
    (
        "degassed",
        "CASE h.degassed WHEN 1 THEN 'yes' WHEN 0 THEN 'no' END",
    ),
    ("pattern", "m.pattern"),
    ("flask", "m.flask"),
    ("gates", "m.gates"),
    ("facing", "m.facing"),
    ("ramming", "m.ramming"),
    ("vents", "m.vents"),
    ("feeder", "m.feeder"),
    ("core", "m.core"),
    ("clay", "s.clay"),
    ("rain", "CASE w.rain WHEN 1 THEN 'yes' WHEN 0 THEN 'no' END"),
    ("who", "p.who"),
];

/// What may change in numbers: the word, the place, and by how much it has to differ to count. Less
/// than that, and the difference is one of reading; the thresholds are those of the diagnosis.
pub const NUMBERS: [(&str, &str, f64); 7] = [
    ("moisture", "m.moisture_percent", 0.8),
    ("heat", "p.temperature_c - p.planned_temperature_c", 30.0),
    ("molten", "h.molten_min", 20.0),
    ("humidity", "w.humidity_percent", 20.0),
    ("air", "w.air_c", 10.0),
    ("weights", "m.weights_kg", 2.0),
    ("heap-age", "a.age", 10.0),
];

/// For each pour, how many were poured from its heap before it, since that was renewed.
const AGES: &str = "
    SELECT o.id AS id, count(*) OVER (
        PARTITION BY hs.id, hs.renewed IS NULL OR o.poured >= hs.renewed ORDER BY o.number
    ) - 1 AS age
    FROM pours o
    JOIN moulds om ON om.id = o.mould
    LEFT JOIN batches ob ON ob.id = om.batch
    JOIN heaps hs ON hs.id = coalesce(om.heap, ob.heap)";

/// The last pours, the oldest of them first.
///
/// # Errors
///
/// What the file says.
pub fn pours(log: &Log, last: usize) -> Result<Vec<AroundPour>, LogError> {
    let words = WORDS.iter().map(|(_, place)| format!(", {place}"));
    let numbers = NUMBERS.iter().map(|(_, place, _)| format!(", {place}"));
    let sql = format!(
        "SELECT p.id, p.number, p.poured, m.job,
         (SELECT count(*) FROM castings c WHERE c.pour = p.id AND c.good = 1),
         (SELECT count(c.good) FROM castings c WHERE c.pour = p.id){}{}
         FROM pours p
         LEFT JOIN moulds m ON m.id = p.mould
         LEFT JOIN heats h ON h.id = p.heat
         LEFT JOIN weather w ON w.id = p.weather
         LEFT JOIN batches b ON b.id = m.batch
         LEFT JOIN heaps s ON s.id = coalesce(m.heap, b.heap)
         LEFT JOIN ({AGES}) a ON a.id = p.id
         ORDER BY p.number DESC LIMIT ?1",
        words.collect::<String>(),
        numbers.collect::<String>()
    );
    let mut query = log.connection.prepare(&sql)?;
    let rows = query.query_map([i64::try_from(last).unwrap_or(i64::MAX)], read)?;
    let mut pours: Vec<AroundPour> = rows.collect::<Result<_, _>>()?;
    pours.reverse();
    Ok(pours)
}

fn read(row: &Row<'_>) -> rusqlite::Result<AroundPour> {
    let from = 6;
    let words = (0..WORDS.len()).map(|at| row.get(from + at));
    let numbers = (0..NUMBERS.len()).map(|at| row.get(from + WORDS.len() + at));
    let count = |at: usize| {
        row.get::<_, i64>(at)
            .map(|count| usize::try_from(count).unwrap_or(0))
    };
    Ok(AroundPour {
        id: row.get(0)?,
        number: row.get(1)?,
        poured: row.get(2)?,
        job: row.get(3)?,
        good: count(4)?,
        judged: count(5)?,
        words: words.collect::<Result<_, _>>()?,
        numbers: numbers.collect::<Result<_, _>>()?,
    })
}
