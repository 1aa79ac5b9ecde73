//! `oddside reckon`: any law of the trade, called by name.

use std::path::Path;
use std::process::ExitCode;

use job::folder::shop_above;
use job::scoop::weighed;
use job::shop::Shop;
use reckon::ask::Ask;
use reckon::input::{Input, Otherwise, Wanted};
use reckon::reckoned_file::ReckonedFile;
use reckon::reckoner::Reckoner;
use reckon::topic::Topic;
use reckon::worked::{Worked, work_out};

use crate::print;
use crate::trouble::Trouble;

/// Lists the laws, tells what one asks for, or works one out.
pub fn run(name: Option<&str>, given: &[String], json: bool) -> Result<ExitCode, Trouble> {
    let (shop, _) = shop_above(Path::new("."))?;
    let Some(name) = name else {
        print::out(&shop.words.of(&list()))?;
        return Ok(ExitCode::SUCCESS);
    };
    if let (Some(reckoner), []) = (reckon::named(name), given) {
        print::out(&shop.words.of(&asks_for(reckoner)))?;
        return Ok(ExitCode::SUCCESS);
    }
    let worked = work_out(&ask(name, given, &shop)?)?;
    match json {
        true => {
            let text = serde_json::to_string_pretty(&ReckonedFile::of(&worked));
            print::out(&(text.unwrap_or_default() + "\n"))?;
        }
        false => print::out(&shop.words.of(&told(&worked)))?,
    }
    Ok(ExitCode::SUCCESS)
}

fn ask(name: &str, given: &[String], shop: &Shop) -> Result<Ask, Trouble> {
    let mut ask = Ask::new(name);
    for pair in given {
        let (key, text) = pair
            .split_once('=')
            .ok_or_else(|| Trouble::NotAPair(pair.clone()))?;
        ask = ask.give(key.trim(), &weighed(&shop.scoops, text));
    }
    Ok(ask)
}

fn list() -> String {
    let mut text = String::new();
    for &topic in Topic::ALL {
        let mut table = print::table(&[topic.title(), ""]);
        for reckoner in reckon::of_topic(topic) {
            table.add_row([reckoner.name, reckoner.question]);
        }
        text += &format!("{table}\n\n");
    }
    text + "oddside reckon NAME tells what a law asks for; oddside reckon NAME key=figure … works \
            it out.\nAny figure may be a range: \"3 to 5 mm\", \"100 mm ± 2 mm\".\n"
}

fn asks_for(reckoner: &Reckoner) -> String {
    let mut table = print::table(&["asks for", "", "like", ""]);
    for input in reckoner.inputs {
        let otherwise = match input.otherwise {
            Otherwise::Needed => "needed".to_owned(),
            Otherwise::Nothing => "not needed".to_owned(),
            Otherwise::Text(text, _) => format!("else {text}"),
            Otherwise::OfMetal(_) => "else that of the metal".to_owned(),
        };
        table.add_row([
            input.key.to_owned(),
            input.about.to_owned(),
            like(input),
            otherwise,
        ]);
    }
    format!(
        "{}: {}\n\n  {}\n  holds for: {}\n\n{table}\n\nlike: {}\n",
        reckoner.name,
        reckoner.question,
        reckoner.law.formula,
        reckoner.law.range,
        reckoner.example_line()
    )
}

fn like(input: &Input) -> String {
    match input.wanted {
        Wanted::Quantity(kind) => kind.example.to_owned(),
        Wanted::Quantities(kind) => format!("{}, …", kind.example),
        Wanted::Share => "4.1 %".to_owned(),
        Wanted::Shares => "3.2 %, 2.1 %".to_owned(),
        Wanted::Contraction => "1.3 %, 5/32 per ft, 1 in 75".to_owned(),
        Wanted::Number => "1.5".to_owned(),
        Wanted::Numbers => "1, 2, 2".to_owned(),
        Wanted::Choice(words) => words.join(" or "),
        Wanted::Metal => "gunmetal".to_owned(),
        Wanted::Body => "6.4 mm, or plate 10 mm, block 80 x 60 x 18 mm".to_owned(),
        Wanted::Text => "words".to_owned(),
    }
}

fn told(worked: &Worked) -> String {
    let reckoner = worked.reckoner;
    let mut text = format!("{}: {}\n\n", reckoner.name, reckoner.question);
    text += &answers(worked);
    text += &format!("\n  {}\n", reckoner.law.formula);
    if worked.with_numbers != reckoner.law.formula {
        text += &format!("  {}\n", worked.with_numbers);
    }
    text += &format!("\n{}", given(worked));
    text += &print::paragraph("holds for", reckoner.law.range);
    for doubt in &worked.doubts {
        text += &print::paragraph("doubt", doubt);
    }
    text += &print::narrowing(&worked.narrowing);
    for caution in reckoner.cautions {
        text += &print::paragraph("mind", caution);
    }
    for (_, source) in &worked.sources {
        text += &print::source(source);
    }
    text
}

fn answers(worked: &Worked) -> String {
    let mut table = print::table(&["", "likely", "between", "or"]);
    for figure in &worked.answers {
        let shown = figure.shown(worked.system);
        table.add_row([
            figure.name.replace('_', " "),
            shown.likely,
            shown.band.unwrap_or_default(),
            shown.other.unwrap_or_default(),
        ]);
    }
    format!("{table}\n")
}

fn given(worked: &Worked) -> String {
    let mut text = String::new();
    for back in &worked.given {
        let label = if back.typed { "given" } else { "taken" };
        text += &print::paragraph(
            label,
            &format!("{} {}: {}", back.key, back.text, back.about),
        );
    }
    text
}
