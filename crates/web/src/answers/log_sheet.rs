//! The log as a sheet: the last pours with all that belongs to them, changed where it stands.

use std::sync::Arc;

use axum::Json;
use axum::extract::State;
use job::changed::Typed;
use job::remark::Level;
use job::words::Language;
use job::words::said::Said;
use measure::text::rounded;
use shoplog::column::{Column, Holds};
use shoplog::entry::Entry;
use shoplog::log::Log;
use shoplog::question::questions_about;
use shoplog::table::castings::{CASTINGS, DEFECTS};
use shoplog::table::melt::{HEATS, POURS};
use shoplog::table::mould::MOULDS;
use shoplog::table::{Table, named};
use shoplog::value::Value;

use crate::answers::change::Change;
use crate::answers::log::{log_of, words_of};
use crate::answers::remarks::{RemarkAnswer, weight};
use crate::answers::sheets::{BlockAnswer, RowAnswer, SheetAnswer};
use crate::answers::typed_lines::{LineKind, OneChoice, TypedLine};
use crate::answers::worked;
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// Pours that stand on the sheet: a founder looks back over a season, not over years.
const PART: usize = 12;

/// What of an entry stands on the sheet, by its table.
const SHOWN: [(&Table, &[&str]); 4] = [
    (
        &POURS,
        &[
            "poured",
            "temperature",
            "time",
            "mass",
            "freezing",
            "opening",
            "how",
            "note",
        ],
    ),
    (
        &MOULDS,
        &["moisture", "ramming", "vents", "feeder", "core", "weights"],
    ),
    (
        &HEATS,
        &[
            "charge", "fuel", "molten", "scrap", "degassed", "skimmed", "left",
        ],
    ),
    (&CASTINGS, &["good", "mass", "mark", "note"]),
];

/// The last pours as a sheet. A block is a pour, a mould, a heat or a casting; each of the others
/// belongs to the pour before it, and has its id behind the name of its table.
#[utoipa::path(get, path = "/api/v1/log/sheet", responses((status = 200, body = SheetAnswer)))]
pub async fn log_sheet(State(shop): State<Arc<ShopFolder>>) -> Result<Json<SheetAnswer>, WebError> {
    worked(shop, |shop| answer(shop).map(Json)).await
}

/// Changes one thing of an entry, by a key like `pours/ID/temperature`; what stood there is kept in
/// the log's own list of changes.
#[utoipa::path(
    put,
    path = "/api/v1/log/typed",
    request_body = Change,
    responses((status = 200, body = SheetAnswer), (status = 409, body = crate::errors::No),
              (status = 422, body = crate::errors::No))
)]
pub async fn change_log(
    State(shop): State<Arc<ShopFolder>>,
    Json(change): Json<Change>,
) -> Result<Json<SheetAnswer>, WebError> {
    worked(shop, move |shop| {
        let (table, id, key) = place_of(&change.key)
            .ok_or_else(|| WebError::NoSuch(format!("{} is not changed here", change.key)))?;
        {
            let _writing = shop.writing();
            put(shop, (table, id, key), &change)?;
        }
        answer(shop).map(Json)
    })
    .await
}

fn put(
    shop: &ShopFolder,
    (table, id, key): (&'static Table, &str, &str),
    change: &Change,
) -> Result<(), WebError> {
    let mut log = Log::open(&log_of(shop)?)?;
    let column = table.column(key);
    let column = column.ok_or_else(|| WebError::NoSuch(format!("there is no {key}")))?;
    let entry = log.entry(table, id)?;
    let now = entry.values.get(&column.name());
    let now = now.map(|value| typed(column, value));
    if now == change.to {
        return Ok(());
    }
    if now != change.was {
        return Err(WebError::ChangedMeanwhile { now });
    }
    let value = match &change.to {
        None => None,
        Some(to) => Some(log.typed(table, key, &as_text(to))?.1),
    };
    Ok(log.change(table, id, key, value)?)
}

/// The table, the entry and the key of a line of the sheet.
fn place_of(line: &str) -> Option<(&'static Table, &str, &str)> {
    let mut parts = line.splitn(3, '/');
    let (table, id, key) = (parts.next()?, parts.next()?, parts.next()?);
    let (table, keys) = SHOWN.iter().find(|(shown, _)| shown.name == table)?;
    let key = keys.iter().find(|known| **known == key)?;
    Some((named(table.name)?, id, key))
}

/// The last pours as they stand.
///
/// # Errors
///
/// A log that cannot be read.
pub fn answer(shop: &ShopFolder) -> Result<SheetAnswer, WebError> {
    let words = words_of(shop)?;
    let mut answer = SheetAnswer {
        job: String::new(),
        name: words.word("page-log"),
        language: words.code().to_owned(),
        code: None,
        red_lines: Vec::new(),
        stops: Vec::new(),
        head: Vec::new(),
        blocks: Vec::new(),
        remarks: Vec::new(),
        limits: String::new(),
        unsettled: None,
    };
    let path = log_of(shop)?;
    if !path.is_file() {
        return Ok(answer);
    }
    let log = Log::open_to_read(&path)?;
    for pour in log.last(&POURS, PART)? {
        of_pour(&log, &pour, words, &mut answer)?;
    }
    Ok(answer)
}

fn of_pour(
    log: &Log,
    pour: &Entry,
    words: Language,
    answer: &mut SheetAnswer,
) -> Result<(), WebError> {
    let other = |key: &str, table: &'static Table| {
        let id = pour.values.get(key).and_then(Value::text);
        id.map(|id| log.entry(table, id)).transpose()
    };
    let mould = other("mould", &MOULDS)?;
    let heat = other("heat", &HEATS)?;
    let text = |entry: &Option<Entry>, key: &str| {
        let value = entry.as_ref().and_then(|entry| entry.values.get(key));
        value.and_then(Value::text).unwrap_or_default().to_owned()
    };
    let head = Said::new("page-log-pour")
        .with("number", pour.number.to_string())
        .with("job", text(&mould, "job"))
        .with("metal", text(&heat, "alloy"));
    let head = words.say(&head);
    answer.blocks.push(block(&POURS, pour, head, words));
    let asked = questions_about(log, &POURS, &pour.id)?.into_iter();
    let block_id = block_id(&POURS, pour);
    answer.remarks.extend(asked.map(|question| RemarkAnswer {
        level: Level::Caution,
        weight: weight(Level::Caution, words),
        block: block_id.clone(),
        words: words.say(&question.words),
        advice: String::new(),
        leads: Vec::new(),
    }));
    for (table, entry, id) in [
        (&MOULDS, mould, "page-log-mould"),
        (&HEATS, heat, "page-log-heat"),
    ] {
        if let Some(entry) = entry {
            let head = Said::new(id).with("number", entry.number.to_string());
            answer
                .blocks
                .push(block(table, &entry, words.say(&head), words));
        }
    }
    for casting in log.pointing(&CASTINGS, "pour", &pour.id)? {
        let head = Said::new("page-log-casting").with("number", casting.number.to_string());
        let mut of_casting = block(&CASTINGS, &casting, words.say(&head), words);
        let defects = log.pointing(&DEFECTS, "casting", &casting.id)?;
        of_casting.rows = defects.iter().map(|one| defect(one, words)).collect();
        answer.blocks.push(of_casting);
    }
    Ok(())
}

fn block_id(table: &Table, entry: &Entry) -> String {
    format!("{}-{}", table.one, entry.id)
}

fn block(table: &'static Table, entry: &Entry, heading: String, words: Language) -> BlockAnswer {
    let keys = SHOWN.iter().find(|(shown, _)| shown.name == table.name);
    let columns = keys.map_or(&[][..], |(_, keys)| keys).iter();
    let columns = columns.filter_map(|key| table.column(key));
    BlockAnswer {
        id: block_id(table, entry),
        heading,
        rows: Vec::new(),
        typed: columns
            .map(|column| TypedLine {
                key: format!("{}/{}/{}", table.name, entry.id, column.key),
                label: words.say(&Said::new(format!("log-key-{}", column.key))),
                value: entry
                    .values
                    .get(&column.name())
                    .map(|value| typed(column, value)),
                kind: kind(column),
                choices: choices(column, words),
                example: example(column),
                otherwise: None,
            })
            .collect(),
    }
}

/// A defect as a row: what is seen, and where.
fn defect(entry: &Entry, words: Language) -> RowAnswer {
    let shown = |key: &str, family: &str| {
        let text = entry.values.get(key).and_then(Value::text);
        let each = text.unwrap_or_default().split_whitespace();
        let each = each.map(|word| words.say(&Said::new(format!("{family}{word}"))));
        each.collect::<Vec<_>>().join(", ")
    };
    let place = shown("place", "sight-place-");
    RowAnswer {
        name: words.word("sight-look"),
        value: shown("look", "sight-look-"),
        band: (!place.is_empty()).then_some(place),
        other: None,
        note: None,
        large: false,
        figure: None,
        typed: None,
    }
}

fn kind(column: &Column) -> LineKind {
    match column.holds {
        Holds::Word(_) => LineKind::OneOf,
        Holds::Flag => LineKind::Yes,
        Holds::Whole => LineKind::Count,
        _ => LineKind::Text,
    }
}

fn choices(column: &Column, words: Language) -> Vec<OneChoice> {
    let Holds::Word(each) = column.holds else {
        return Vec::new();
    };
    let each = each.iter().map(|word| OneChoice {
        value: (*word).to_owned(),
        shown: words.say(&Said::new(format!("log-word-{word}"))),
    });
    each.collect()
}

fn example(column: &Column) -> Option<String> {
    let example = match column.holds {
        Holds::Mass => "2.4 kg",
        Holds::Temperature => "720 °C",
        Holds::Seconds => "6 s",
        Holds::Minutes => "12 min",
        Holds::Percent => "4.5 %",
        Holds::Time => "2026-05-03T14:20",
        _ => return None,
    };
    Some(example.to_owned())
}

/// A value as it stands on a line.
fn typed(column: &Column, value: &Value) -> Typed {
    match (column.holds, value) {
        (Holds::Flag, Value::Whole(flag)) => Typed::Yes(*flag != 0),
        (Holds::Whole, Value::Whole(count)) => Typed::Count(*count),
        (_, Value::Real(number)) => {
            let unit = column.unit().map_or("", |(_, unit)| unit);
            Typed::Text(format!("{} {unit}", rounded(*number, 6)).trim().to_owned())
        }
        (_, other) => Typed::Text(other.to_string()),
    }
}

fn as_text(typed: &Typed) -> String {
    match typed {
        Typed::Yes(true) => "yes".to_owned(),
        Typed::Yes(false) => "no".to_owned(),
        Typed::Count(count) => count.to_string(),
        Typed::Text(text) => text.clone(),
        Typed::List(list) => list.join(" "),
    }
}
