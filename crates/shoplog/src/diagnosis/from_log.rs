//! A case from the log: the defects of a pour, and what was written down around it.

use rusqlite::types::Value as Sql;
use toml::{Table, Value};

use crate::diagnosis::case_file::CaseFile;
use crate::error::LogError;
use crate::log::Log;

/// Why no case was made.
#[derive(Debug, thiserror::Error)]
pub enum CaseError {
    /// The log says no.
    #[error(transparent)]
    Log(#[from] LogError),
    /// Something typed that a case does not take.
    #[error(
        "{0}: docs/diagnose-cases.md lists what may be said, such as look=round-holes \
         place='cope-face inside' moisture_percent=6.5"
    )]
    Typed(String),
    /// Nothing was seen.
    #[error("say what is seen: look=round-holes, or name a pour with defects: --pour last")]
    NoLook,
}

/// Keys of what is seen; all others belong to the record, but for `found`.
const SEEN: [&str; 10] = [
    "metal",
    "look",
    "place",
    "size",
    "surface",
    "when",
    "castings",
    "other_heat",
    "other_sand",
    "sprue",
];
/// Keys under which several words may stand.
const SEVERAL: [&str; 4] = ["look", "place", "surface", "found"];

/// The last test of the heap before the pour, and the mean of those of good days, of any heap.
const LAST_BOTTLE: &str =
    "(SELECT t.value FROM sand_tests t LEFT JOIN batches tb ON tb.id = t.batch
  WHERE t.test = 'bottle' AND coalesce(t.heap, tb.heap) = s.id AND t.day <= date(p.poured)
  ORDER BY t.day DESC, t.number DESC LIMIT 1)";
const GOOD_BOTTLES: &str =
    "(SELECT avg(t.value) FROM sand_tests t WHERE t.test = 'bottle' AND t.good = 1)";
const LAST_CYLINDER: &str = "(SELECT t.value FROM sand_tests t
  LEFT JOIN batches tb ON tb.id = t.batch WHERE t.test = 'cylinder' AND t.unit = 'kPa'
  AND coalesce(t.heap, tb.heap) = s.id AND t.day <= date(p.poured)
  ORDER BY t.day DESC, t.number DESC LIMIT 1)";
const GOOD_CYLINDERS: &str = "(SELECT avg(t.value) FROM sand_tests t
  WHERE t.test = 'cylinder' AND t.unit = 'kPa' AND t.good = 1)";

/// What the log knows about a pour, under the keys of the record.
const KNOWN: [(&str, &str); 25] = [
    ("moisture_percent", "m.moisture_percent"),
    (
        "moisture_good_percent",
        "(SELECT avg(gm.moisture_percent) FROM moulds gm JOIN pours gp ON gp.mould = gm.id
          WHERE gp.id <> p.id AND EXISTS (SELECT 1 FROM castings gc WHERE gc.pour = gp.id)
          AND NOT EXISTS (SELECT 1 FROM castings gc WHERE gc.pour = gp.id AND gc.good = 0))",
    ),
    ("permeability", LAST_BOTTLE),
    ("permeability_good", GOOD_BOTTLES),
    ("strength_kpa", LAST_CYLINDER),
    ("strength_good_kpa", GOOD_CYLINDERS),
    ("ramming", "m.ramming"),
    ("vents", "m.vents"),
    ("core", "m.core"),
    ("feeder", "m.feeder"),
    (
        "hours_closed",
        "(julianday(p.poured) - julianday(m.closed)) * 24",
    ),
    (
        "hours_since_temper",
        "(julianday(p.poured) - julianday(b.mixed)) * 24",
    ),
    ("grain", "s.grain"),
    (
        "heap_pours",
        "(SELECT 1.0 * count(*) FROM pours o JOIN moulds om ON om.id = o.mould
          LEFT JOIN batches ob ON ob.id = om.batch
          WHERE coalesce(om.heap, ob.heap) = s.id AND o.number < p.number
          AND (s.renewed IS NULL OR o.poured >= s.renewed))",
    ),
    ("pour_temperature_c", "p.temperature_c"),
    ("pour_temperature_planned_c", "p.planned_temperature_c"),
    ("pour_time_s", "p.time_s"),
    ("pour_time_planned_s", "p.planned_time_s"),
    ("pour", "p.how"),
    (
        "gate_speed_m_s",
        "p.planned_gate_speed_m_per_s * p.planned_time_s / p.time_s",
    ),
    ("minutes_molten", "h.molten_min"),
    ("scrap", "h.scrap"),
    (
        "weights_share",
        "m.weights_kg / (SELECT f.likely FROM planned f
          WHERE f.mould = m.id AND f.figure = 'weight on the cope' AND f.likely > 0)",
    ),
    ("opened_share", "p.opening_min / p.planned_opening_min"),
    ("air_humidity_percent", "w.humidity_percent"),
];

/// What the log knows as yes or no.
const FLAGS: [(&str, &str); 3] = [
    ("degassed", "h.degassed"),
    ("skimmed", "h.skimmed"),
    ("rain", "w.rain"),
];

/// A case from a pour of the log, if one is named, with what was typed beside it.
///
/// # Errors
///
/// A pour that is not there, a word that a case does not take, nothing seen.
pub fn case(log: Option<(&Log, &str)>, typed: &[(String, String)]) -> Result<CaseFile, CaseError> {
    let (mut seen, mut record, mut plan) = (Table::new(), Table::new(), Table::new());
    if let Some((log, pour)) = log {
        of_pour(log, pour, &mut record).map_err(LogError::from)?;
        of_defects(log, pour, &mut seen).map_err(LogError::from)?;
    }
    for (key, text) in typed {
        let to = match key.as_str() {
            "found" => &mut plan,
            key if SEEN.contains(&key) => &mut seen,
            _ => &mut record,
        };
        to.insert(key.clone(), value(key, text));
    }
    if !seen.contains_key("look") {
        return Err(CaseError::NoLook);
    }
    let mut whole = Table::new();
    whole.insert("seen".to_owned(), Value::Table(seen));
    whole.insert("record".to_owned(), Value::Table(record));
    whole.insert("plan".to_owned(), Value::Table(plan));
    let read: Result<CaseFile, toml::de::Error> = whole.try_into();
    read.map_err(|error| CaseError::Typed(error.message().to_owned()))
}

fn value(key: &str, text: &str) -> Value {
    if SEVERAL.contains(&key) {
        let words = text
            .split_whitespace()
            .map(|word| Value::String(word.to_owned()));
        return Value::Array(words.collect());
    }
    match text {
        "yes" | "true" => Value::Boolean(true),
        "no" | "false" => Value::Boolean(false),
        text => match text.trim_end_matches('%').trim().parse::<f64>() {
            Ok(number) => Value::Float(number),
            Err(_) => Value::String(text.to_owned()),
        },
    }
}

fn of_pour(log: &Log, pour: &str, record: &mut Table) -> rusqlite::Result<()> {
    let places = KNOWN.iter().chain(&FLAGS).map(|(_, place)| *place);
    let sql = format!(
        "SELECT {} FROM pours p
         LEFT JOIN moulds m ON m.id = p.mould
         LEFT JOIN heats h ON h.id = p.heat
         LEFT JOIN weather w ON w.id = p.weather
         LEFT JOIN batches b ON b.id = m.batch
         LEFT JOIN heaps s ON s.id = coalesce(m.heap, b.heap)
         WHERE p.id = ?1",
        places.collect::<Vec<_>>().join(", ")
    );
    log.connection.query_row(&sql, [pour], |row| {
        for (at, (key, _)) in KNOWN.iter().chain(&FLAGS).enumerate() {
            let value = match row.get::<_, Sql>(at)? {
                Sql::Integer(flag) => Value::Boolean(flag != 0),
                Sql::Real(number) => Value::Float(number),
                Sql::Text(text) => Value::String(text),
                Sql::Null | Sql::Blob(_) => continue,
            };
            record.insert((*key).to_owned(), value);
        }
        Ok(())
    })
}

fn of_defects(log: &Log, pour: &str, seen: &mut Table) -> rusqlite::Result<()> {
    let sql = "SELECT d.look, d.place, d.surface, d.size, d.seen, d.casting, d.sprue
               FROM defects d JOIN castings c ON c.id = d.casting
               WHERE c.pour = ?1 ORDER BY d.number";
    let mut query = log.connection.prepare(sql)?;
    let mut rows = query.query([pour])?;
    let mut several = [
        ("look", Vec::new()),
        ("place", Vec::new()),
        ("surface", Vec::new()),
    ];
    let mut castings = Vec::new();
    while let Some(row) = rows.next()? {
        for (at, (_, words)) in several.iter_mut().enumerate() {
            let text: Option<String> = row.get(at)?;
            words.extend(
                text.iter()
                    .flat_map(|text| text.split_whitespace())
                    .map(str::to_owned),
            );
        }
        for (at, key) in [(3, "size"), (4, "when")] {
            if let Some(word) = row.get::<_, Option<String>>(at)? {
                seen.insert(key.to_owned(), Value::String(word));
            }
        }
        castings.extend(row.get::<_, Option<String>>(5)?);
        if let Some(sprue) = row.get::<_, Option<bool>>(6)? {
            seen.insert("sprue".to_owned(), Value::Boolean(sprue));
        }
    }
    for (key, mut words) in several {
        words.sort();
        words.dedup();
        if !words.is_empty() {
            let words = words.into_iter().map(Value::String).collect();
            seen.insert(key.to_owned(), Value::Array(words));
        }
    }
    castings.sort();
    castings.dedup();
    let sql = "SELECT count(*) FROM castings WHERE pour = ?1";
    let all: i64 = log.connection.query_row(sql, [pour], |row| row.get(0))?;
    let on = match castings.len() as i64 {
        0 => return Ok(()),
        hit if hit == all && all > 1 => "all",
        1 => "one",
        _ => "some",
    };
    seen.insert("castings".to_owned(), Value::String(on.to_owned()));
    Ok(())
}
