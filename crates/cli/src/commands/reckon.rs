//! `oddside reckon`: any law of the trade, called by name.

use std::path::Path;
use std::process::ExitCode;

use job::folder::shop_above;
use job::scoop::weighed;
use job::shop::Shop;
use job::words::Language;
use job::words::said::Said;
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
    let language = shop.words.for_laws();
    let Some(name) = name else {
        let list = language.of(&list(language));
        print::out(&(print::in_english(shop.words) + &list))?;
        return Ok(ExitCode::SUCCESS);
    };
    if let (Some(reckoner), []) = (reckon::named(name), given) {
        let asked = language.of(&asks_for(reckoner, language));
        print::out(&(print::in_english(shop.words) + &asked))?;
        return Ok(ExitCode::SUCCESS);
    }
    let worked = work_out(&ask(name, given, &shop)?)?;
    match json {
        true => {
            let text = serde_json::to_string_pretty(&ReckonedFile::of(&worked));
            print::out(&(text.unwrap_or_default() + "\n"))?;
        }
        false => {
            let told = language.of(&told(&worked, language));
            print::out(&(print::in_english(shop.words) + &told))?;
        }
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

fn list(language: Language) -> String {
    let mut text = String::new();
    for &topic in Topic::ALL {
        let mut table = print::table(&[topic.title(), ""]);
        for reckoner in reckon::of_topic(topic) {
            table.add_row([reckoner.name, reckoner.question]);
        }
        text += &format!("{table}\n\n");
    }
    let [foot, ranges] = language.each(["reckon-list-foot", "reckon-range-foot"]);
    format!("{text}{foot}\n{ranges}\n")
}

fn asks_for(reckoner: &Reckoner, language: Language) -> String {
    let mut table = print::table_in(language, &["reckon-asks-for", "", "reckon-like", ""]);
    for input in reckoner.inputs {
        let otherwise = match input.otherwise {
            Otherwise::Needed => language.word("reckon-needed"),
            Otherwise::Nothing => language.word("reckon-not-needed"),
            Otherwise::Text(text, _) => language.say(&Said::new("reckon-else").with("text", text)),
            Otherwise::OfMetal(_) => language.word("reckon-of-the-metal"),
        };
        table.add_row([
            input.key.to_owned(),
            input.about.to_owned(),
            like(input),
            otherwise,
        ]);
    }
    format!(
        "{}: {}\n\n  {}\n  {}: {}\n\n{table}\n\n{}: {}\n",
        reckoner.name,
        reckoner.question,
        reckoner.law.formula,
        language.word("behind-range"),
        reckoner.law.range,
        language.word("reckon-like"),
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

fn told(worked: &Worked, language: Language) -> String {
    let line = |label, words: &str| print::paragraph(&language.word(label), words);
    let reckoner = worked.reckoner;
    let mut text = format!("{}: {}\n\n", reckoner.name, reckoner.question);
    text += &answers(worked, language);
    text += &format!("\n  {}\n", reckoner.law.formula);
    if worked.with_numbers != reckoner.law.formula {
        text += &format!("  {}\n", worked.with_numbers);
    }
    text += &format!("\n{}", given(worked, language));
    text += &line("behind-range", reckoner.law.range);
    for doubt in &worked.doubts {
        text += &line("behind-doubt", doubt);
    }
    text += &print::narrowing(&worked.narrowing, language);
    for caution in reckoner.cautions {
        text += &line("behind-mind", caution);
    }
    for (_, source) in &worked.sources {
        text += &print::source(source, language);
    }
    text
}

fn answers(worked: &Worked, language: Language) -> String {
    let mut table = print::table_in(language, &["", "likely", "head-between", "head-or"]);
    for figure in &worked.answers {
        let shown = figure.shown(worked.system);
        table.add_row([
            figure.name.replace('_', " "),
            shown.likely.clone(),
            language.between(&shown).unwrap_or_default(),
            shown.other.unwrap_or_default(),
        ]);
    }
    format!("{table}\n")
}

fn given(worked: &Worked, language: Language) -> String {
    let mut text = String::new();
    for back in &worked.given {
        let label = language.word(match back.typed {
            true => "behind-given",
            false => "behind-taken",
        });
        text += &print::paragraph(
            &label,
            &format!("{} {}: {}", back.key, back.text, back.about),
        );
    }
    text
}
