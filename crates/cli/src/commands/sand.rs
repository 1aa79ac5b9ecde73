//! `oddside sand`: the sand on the bench.

use std::path::Path;
use std::process::ExitCode;

use bench::given::Given;
use bench::tested::readings::{Reading, ReadingsFile, entered, named, worked};
use bench::tested::sand_file::{STARTER, SandFile};
use bench::tested::{card, drying, facing, mulling, pucks, readings, recipe, sizes, watch, water};
use bench::told::Told;
use bench::trouble::{BenchError, Refused};
use job::file_fault::read;
use job::folder::{FolderError, read_text, shop_above, write_whole};
use job::shop::Shop;
use serde::de::DeserializeOwned;
use sheet::Paper;

use crate::args::{SandCommand, Shown};
use crate::print;
use crate::trouble::Trouble;

/// Does what was asked for.
pub fn run(what: SandCommand) -> Result<ExitCode, Trouble> {
    match what {
        SandCommand::New { file } => new(&file, STARTER),
        SandCommand::Card { file, svg, json } => carded(&file, svg.as_deref(), json),
        SandCommand::Recipe { mix, given, shown } => of_mix(mix.as_deref(), &given, &shown),
        SandCommand::Mull { given, file, shown } => {
            let book = book_of(&file)?.1;
            let work = |given: &Given| mulling::mulling(given, &book);
            on_paper(&given, &mulling::KEYS, work, &shown)
        }
        SandCommand::Facing { given, shown } => {
            on_paper(&given, &facing::KEYS, facing::facing_sand, &shown)
        }
        SandCommand::Water { given, json } => by(&given, &water::KEYS, water::water, json),
        SandCommand::Dry { given, json } => {
            let learned = shop()?.learned.drying;
            let work = |given: &Given| {
                let mut told = drying::dry(given)?;
                drying::by_own_log(&mut told, learned.as_ref());
                Ok(told)
            };
            by(&given, &drying::KEYS, work, json)
        }
        SandCommand::Stand { given, json } => by(&given, &drying::STAND_KEYS, drying::stand, json),
        SandCommand::Pucks { given, file, json } => {
            let typed: SandFile = typed(&file, "start one with: oddside sand new")?;
            by(
                &given,
                &pucks::KEYS,
                |given| pucks::pucks(&typed, given),
                json,
            )
        }
        SandCommand::Test {
            test: None, json, ..
        } => tell(&readings::list(), &shop()?, json),
        SandCommand::Test {
            test: Some(test),
            given,
            day,
            good,
            who,
            file,
            json,
        } => {
            let of_day = day.map(|day| OfDay { day, good, who });
            test_of_day(&test, &given, of_day, &file, json)
        }
        SandCommand::Watch {
            test,
            file,
            svg,
            json,
        } => watched(&test, &file, svg.as_deref(), json),
    }
}

/// Starts a commented file where there is none.
pub fn new(file: &Path, starter: &str) -> Result<ExitCode, Trouble> {
    if file.exists() {
        let path = file.to_owned();
        return Err(FolderError::InTheWay { path }.into());
    }
    write_whole(file, starter.as_bytes())?;
    written(file, &shop()?);
    Ok(ExitCode::SUCCESS)
}

/// Reads what was typed, works it out and tells it.
pub fn by(
    given: &[String],
    keys: &[&str],
    work: impl Fn(&Given) -> Result<Told, BenchError>,
    json: bool,
) -> Result<ExitCode, Trouble> {
    let shop = shop()?;
    let given = Given::read(given, keys, &shop.scoops).map_err(BenchError::from)?;
    tell(&work(&given)?, &shop, json)
}

/// As [`by`], and on paper where that was asked for.
pub fn on_paper(
    given: &[String],
    keys: &[&str],
    work: impl Fn(&Given) -> Result<Told, BenchError>,
    how: &Shown,
) -> Result<ExitCode, Trouble> {
    let shop = shop()?;
    let given = Given::read(given, keys, &shop.scoops).map_err(BenchError::from)?;
    let told = work(&given)?;
    if let Some(out) = &how.out {
        let paper = if how.letter { Paper::Letter } else { Paper::A4 };
        let pdf = sheet::bench_sheet(&told, shop.units, shop.words, paper)?;
        write_whole(out, &pdf)?;
        written(out, &shop);
    }
    tell(&told, &shop, how.json)
}

/// Prints what came of an ask.
pub fn tell(told: &Told, shop: &Shop, json: bool) -> Result<ExitCode, Trouble> {
    match json {
        true => print::out(&told.json())?,
        false => print::out(&print::told(told, shop.words, shop.units))?,
    }
    Ok(ExitCode::SUCCESS)
}

/// A founder's file; `advice` is told where it is not there.
pub fn typed<T: DeserializeOwned>(file: &Path, advice: &str) -> Result<T, Trouble> {
    let text = read_text(file, advice)?;
    Ok(read(&file.display().to_string(), &text).map_err(FolderError::from)?)
}

/// The shop that stands above the folder one works in.
pub fn shop() -> Result<Shop, Trouble> {
    Ok(shop_above(Path::new("."))?.0)
}

/// Says that a file was written.
pub fn written(file: &Path, shop: &Shop) {
    let said = job::words::said::Said::new("written");
    let said = said.with("file", file.display().to_string());
    print::talk(&shop.words.say(&said));
}

fn carded(file: &Path, svg: Option<&Path>, json: bool) -> Result<ExitCode, Trouble> {
    let sand: SandFile = typed(file, "start one with: oddside sand new")?;
    let (told, shop) = (card::card(&sand)?, shop()?);
    let spread = sand.sieving.as_ref().map(sizes::of_record).transpose()?;
    match (&spread, svg) {
        (Some(spread), Some(svg)) => {
            let drawn = sizes::svg(&sand.name, spread, shop.words);
            write_whole(svg, drawn.as_bytes())?;
            written(svg, &shop);
        }
        (None, Some(_)) => return Err(BenchError::from(Refused::NothingSieved).into()),
        _ => {}
    }
    if let (Some(spread), false) = (&spread, json) {
        print::out(&format!("{}\n", sizes::lines(spread, shop.words)))?;
    }
    tell(&told, &shop, json)
}

fn of_mix(mix: Option<&str>, given: &[String], how: &Shown) -> Result<ExitCode, Trouble> {
    let shop = shop()?;
    match mix {
        None => tell(&recipe::list(), &shop, how.json),
        Some(mix) => on_paper(
            given,
            &recipe::KEYS,
            |given| recipe::recipe(mix, given, &shop),
            how,
        ),
    }
}

/// The book of readings as it stands, empty before the first.
fn book_of(file: &Path) -> Result<(String, ReadingsFile), Trouble> {
    let text = match file.exists() {
        true => read_text(file, "")?,
        false => String::new(),
    };
    let book = read(&file.display().to_string(), &text).map_err(FolderError::from)?;
    Ok((text, book))
}

/// What is written beside a reading.
struct OfDay {
    day: String,
    good: bool,
    who: Option<String>,
}

fn test_of_day(
    test: &str,
    given: &[String],
    day: Option<OfDay>,
    file: &Path,
    json: bool,
) -> Result<ExitCode, Trouble> {
    let shop = shop()?;
    let test = named(test)?;
    let pair = |text: &String| {
        let (key, figure) = text
            .split_once('=')
            .ok_or_else(|| Trouble::NotAPair(text.clone()))?;
        Ok((key.trim().to_owned(), figure.trim().to_owned()))
    };
    let pairs = given
        .iter()
        .map(pair)
        .collect::<Result<Vec<_>, Trouble>>()?;
    let (text, book) = book_of(file)?;
    let (told, value) = worked(test, &pairs, &book)?;
    if let Some(OfDay { day, good, who }) = day {
        let reading = Reading {
            day,
            test: test.name.to_owned(),
            value,
            good,
            who,
        };
        write_whole(file, entered(&text, &reading).as_bytes())?;
        written(file, &shop);
    }
    tell(&told, &shop, json)
}

fn watched(test: &str, file: &Path, svg: Option<&Path>, json: bool) -> Result<ExitCode, Trouble> {
    let shop = shop()?;
    let test = named(test)?;
    let book: ReadingsFile = typed(
        file,
        "enter readings with: oddside sand test NAME --day DAY",
    )?;
    let chart = watch::watched(test, &book)?;
    if let Some(svg) = svg {
        write_whole(svg, watch::drawn::svg(test, &chart, shop.words).as_bytes())?;
        written(svg, &shop);
    }
    let told = watch::told(test, &chart);
    if !json {
        print::out(&format!("{}\n", watch::lines(&chart)))?;
    }
    tell(&told, &shop, json)
}
