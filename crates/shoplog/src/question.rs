//! Entries that contradict each other are kept, and asked about.

use job::words::said::Said;

use crate::error::LogError;
use crate::log::Log;
use crate::table::{TABLES, Table, named};

/// A question about an entry.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// The table.
    pub table: &'static Table,
    /// The entry.
    pub id: String,
    /// Its number.
    pub number: i64,
    /// What is asked, in words.
    pub words: Said,
}

/// What is asked about, with the entries that give reason to.
struct Asked {
    words: &'static str,
    table: &'static str,
    /// Gives id and number of the entries, named e.
    sql: &'static str,
}

/// Hundredths by which scales and ladles may differ before a balance is asked about. Less, and
/// every kitchen scale is; more, and a casting written down for another passes.
const SCALES_DIFFER: f64 = 1.02;

/// Everything that is asked about.
const ASKED: [Asked; 14] = [
    Asked {
        words: "log-asks-poured-before-melted",
        table: "pours",
        sql: "FROM pours e JOIN heats h ON h.id = e.heat
              WHERE substr(e.poured, 1, length(h.melted)) < substr(h.melted, 1, length(e.poured))",
    },
    Asked {
        words: "log-asks-poured-before-closed",
        table: "pours",
        sql: "FROM pours e JOIN moulds m ON m.id = e.mould
              WHERE substr(e.poured, 1, length(m.closed)) < substr(m.closed, 1, length(e.poured))",
    },
    Asked {
        words: "log-asks-opened-before-poured",
        table: "pours",
        sql: "FROM pours e JOIN moulds m ON m.id = e.mould
              WHERE substr(m.opened, 1, length(e.poured)) < substr(e.poured, 1, length(m.opened))",
    },
    Asked {
        words: "log-asks-closed-before-rammed",
        table: "moulds",
        sql: "FROM moulds e
              WHERE substr(e.closed, 1, length(e.rammed)) < substr(e.rammed, 1, length(e.closed))",
    },
    Asked {
        words: "log-asks-heavier-than-charge",
        table: "castings",
        sql: "FROM castings e JOIN pours p ON p.id = e.pour JOIN heats h ON h.id = p.heat
              WHERE e.mass_kg > h.charge_kg",
    },
    Asked {
        words: "log-asks-castings-heavier-than-pour",
        table: "pours",
        sql: "FROM pours e
              WHERE (SELECT sum(c.mass_kg) FROM castings c WHERE c.pour = e.id) > ?2 * e.mass_kg",
    },
    Asked {
        words: "log-asks-more-out-than-in",
        table: "heats",
        sql: "FROM heats e
              WHERE (SELECT sum(p.mass_kg) FROM pours p WHERE p.heat = e.id)
                    + coalesce(e.left_kg, 0) > ?2 * e.charge_kg",
    },
    Asked {
        words: "log-asks-another-metal",
        table: "pours",
        sql: "FROM pours e JOIN heats h ON h.id = e.heat JOIN moulds m ON m.id = e.mould
              WHERE h.alloy <> m.alloy",
    },
    Asked {
        words: "log-asks-which-degrees",
        table: "pours",
        sql: "FROM pours e WHERE abs(e.temperature_c - e.planned_temperature_c) > 250",
    },
    Asked {
        words: "log-asks-mould-poured-twice",
        table: "pours",
        sql: "FROM pours e WHERE EXISTS
              (SELECT 1 FROM pours o WHERE o.mould = e.mould AND o.number < e.number)",
    },
    Asked {
        words: "log-asks-contraction",
        table: "sizes",
        sql: "FROM sizes e WHERE e.measured_mm > 1.01 * e.pattern_mm
              OR e.measured_mm < 0.95 * e.pattern_mm",
    },
    Asked {
        words: "log-asks-good-with-defect",
        table: "castings",
        sql: "FROM castings e WHERE e.good = 1 AND EXISTS
              (SELECT 1 FROM defects d WHERE d.casting = e.id AND d.size = 'large')",
    },
    Asked {
        words: "log-asks-humidity",
        table: "weather",
        sql: "FROM weather e WHERE e.humidity_percent NOT BETWEEN 0 AND 100",
    },
    Asked {
        words: "log-asks-moisture",
        table: "moulds",
        sql: "FROM moulds e WHERE e.moisture_percent NOT BETWEEN 0 AND 25",
    },
];

/// Every question about the whole log.
///
/// # Errors
///
/// What the file says.
pub fn questions(log: &Log) -> Result<Vec<Question>, LogError> {
    let mut found = Vec::new();
    for asked in &ASKED {
        found.extend(ask(log, asked, None)?);
    }
    found.extend(below_nought(log, None)?);
    Ok(found)
}

/// The questions about one entry and what stands beside it: its pour, its heat, its mould.
///
/// # Errors
///
/// What the file says.
pub fn questions_about(
    log: &Log,
    table: &'static Table,
    id: &str,
) -> Result<Vec<Question>, LogError> {
    let mut about = vec![(table, id.to_owned())];
    let entry = log.entry(table, id)?;
    for (column, to) in table.points_to() {
        let other = entry.values.get(column.key).and_then(|value| value.text());
        if let Some((table, id)) = named(to).zip(other) {
            about.push((table, id.to_owned()));
        }
    }
    if table.name != "pours" {
        for key in ["mould", "heat"]
            .into_iter()
            .filter(|key| table.one == *key)
        {
            let pours = &crate::table::melt::POURS;
            let pointing = log.pointing(pours, key, id)?;
            about.extend(pointing.into_iter().map(|pour| (pours, pour.id)));
        }
    }
    let mut found = Vec::new();
    for (table, id) in &about {
        for asked in ASKED.iter().filter(|asked| asked.table == table.name) {
            found.extend(ask(log, asked, Some(id))?);
        }
    }
    found.extend(below_nought(log, Some((table, id)))?);
    Ok(found)
}

fn ask(log: &Log, asked: &Asked, id: Option<&str>) -> Result<Vec<Question>, LogError> {
    let sql = format!(
        "SELECT id, number FROM (SELECT e.id, e.number {}) \
         WHERE (?1 IS NULL OR id = ?1) AND ?2 > 0 ORDER BY number LIMIT 1000",
        match id {
            // Within, so that the entry is found by its index.
            Some(_) => asked.sql.replacen("WHERE", "WHERE e.id = ?1 AND (", 1) + ")",
            None => asked.sql.to_owned(),
        }
    );
    let mut query = log.connection.prepare(&sql)?;
    let rows = query.query_map(rusqlite::params![id, SCALES_DIFFER], |row| {
        Ok((row.get(0)?, row.get(1)?))
    })?;
    let rows: Vec<(String, i64)> = rows.collect::<Result<_, _>>()?;
    let table = named(asked.table);
    let question = |(table, (id, number)): (&'static Table, (String, i64))| Question {
        table,
        id,
        number,
        words: Said::new(asked.words),
    };
    let found = rows.into_iter().filter_map(|row| Some((table?, row)));
    Ok(found.map(question).collect())
}

/// Masses, times and lengths below nought, in every table.
fn below_nought(log: &Log, of: Option<(&'static Table, &str)>) -> Result<Vec<Question>, LogError> {
    let mut found = Vec::new();
    let tables = TABLES
        .iter()
        .filter(|table| of.is_none_or(|(one, _)| one.name == table.name));
    for table in tables {
        let signed = ["_c", "_percent"];
        let amounts = table
            .columns
            .iter()
            .filter(|column| column.unit().is_some());
        let names: Vec<String> = amounts
            .map(|column| column.name())
            .filter(|name| !signed.iter().any(|end| name.ends_with(end)))
            .map(|name| format!("\"{name}\" < 0"))
            .collect();
        if names.is_empty() {
            continue;
        }
        let sql = format!(
            "SELECT id, number FROM {} WHERE (?1 IS NULL OR id = ?1) AND ({}) LIMIT 1000",
            table.name,
            names.join(" OR ")
        );
        let mut query = log.connection.prepare(&sql)?;
        let id = of.map(|(_, id)| id);
        let rows = query.query_map([id], |row| Ok((row.get(0)?, row.get(1)?)))?;
        for row in rows {
            let (id, number) = row?;
            found.push(Question {
                table,
                id,
                number,
                words: Said::new("log-asks-below-nought"),
            });
        }
    }
    Ok(found)
}
