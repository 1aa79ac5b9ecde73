//! The sheets of the sand bench and the cards of an experiment, read back from their PDFs.

use bench::experiment::design::planned;
use bench::experiment::file::{ExperimentFile, STARTER};
use bench::experiment::weighing::weighed;
use bench::given::Given;
use bench::tested::facing::{self, facing_sand};
use bench::tested::mulling::{self, mulling};
use bench::tested::readings::ReadingsFile;
use bench::tested::recipe::{self, recipe};
use bench::told::Told;
use job::file_fault::read;
use job::folder::STARTER_SHOP;
use job::shop::{Shop, ShopFile};
use job::words::Language;
use measure::text::System;
use sheet::{Paper, batch_cards, bench_sheet};

use crate::read_back::{Printed, read_back};

fn shop() -> Shop {
    let typed: ShopFile = read("shop.toml", STARTER_SHOP).unwrap();
    typed.meant().unwrap()
}

fn given(text: &[&str], keys: &[&str]) -> Given {
    let text: Vec<String> = text.iter().map(|one| (*one).to_owned()).collect();
    Given::read(&text, keys, &[]).unwrap()
}

fn mixing() -> Told {
    let asked = ["dry_sand=20 kg", "moisture=0 % of wet mass"];
    recipe("sugar-clay", &given(&asked, &recipe::KEYS), &shop()).unwrap()
}

fn printed(told: &Told, language: Language, paper: Paper) -> Printed {
    read_back(&bench_sheet(told, System::Metric, language, paper).unwrap())
}

#[test]
fn every_sheet_is_one_page_in_every_language_and_on_both_papers() {
    let mulled = mulling(&given(&[], &mulling::KEYS), &ReadingsFile::default()).unwrap();
    let sizes = ["block=80 mm, 60 mm, 18 mm"];
    let faced = facing_sand(&given(&sizes, &facing::KEYS)).unwrap();
    for told in [mixing(), mulled, faced] {
        for language in Language::ALL {
            for paper in [Paper::A4, Paper::Letter] {
                let printed = printed(&told, language, paper);
                assert_eq!(printed.pages, 1, "{language:?} {paper:?}");
                let least = printed.letter_sizes().into_iter().fold(f64::MAX, f64::min);
                assert!(least >= 8.0, "{least} pt");
            }
        }
    }
}

#[test]
fn the_mixing_sheet_says_what_to_weigh_and_leaves_a_line_for_each() {
    let sheet = printed(&mixing(), Language::Uk, Paper::A4);
    for words in [
        "sand bonded with molasses",
        "20 kg",
        "1.6 kg",
        "800 g",
        "500 g",
        "167 g",
        "silica",
        "P100, FFP3",
        "calcium, not sodium",
        "4 to 10 min",
    ] {
        let said = sheet.says(words) || sheet.says(&words.replace(" to ", "–"));
        assert!(said, "{words}");
    }
    // A line of 20 mm to write on for sand, molasses, bentonite and water: each is a thin bar that
    // is begun at its far end.
    let parts: Vec<&str> = sheet.content.split_whitespace().collect();
    let begins = parts.windows(3).filter(|part| part[2] == "m");
    let far_ends = begins.filter_map(|part| part[0].parse::<f64>().ok());
    let to_write = far_ends.filter(|pt| (pt / 72.0 * 25.4 - 20.0).abs() < 0.01);
    assert_eq!(to_write.count(), 4);
}

#[test]
fn the_mulling_sheet_says_how_long_by_which_way() {
    let mulled = mulling(&given(&[], &mulling::KEYS), &ReadingsFile::default()).unwrap();
    let sheet = printed(&mulled, Language::Uk, Paper::Letter);
    for words in ["25 min", "20 to 40 min", "muller", "three goes", "silica"] {
        assert!(sheet.says(words), "{words}");
    }
}

#[test]
fn the_batch_cards_say_every_batch_with_its_grams_and_blanks() {
    let typed: ExperimentFile = read("experiment.toml", STARTER).unwrap();
    let experiment = typed.meant().unwrap();
    let batches = planned(&experiment).unwrap().batches;
    let rows: Vec<_> = batches
        .iter()
        .map(|batch| weighed(&experiment, batch).unwrap())
        .collect();
    let pdf = batch_cards(&experiment, &batches, &rows, Language::Uk, Paper::A4).unwrap();
    let cards = read_back(&pdf);
    assert_eq!(cards.pages, batches.len().div_ceil(4));
    // The first page carries the first four.
    for (batch, rows) in batches.iter().zip(&rows).take(4) {
        assert!(cards.says(&format!("Batch {}", batch.number)));
        for row in rows {
            let grams = measure::text::rounded(row.weigh.as_g(), 4);
            assert!(cards.says(&format!("{grams} g")), "{} {grams} g", row.name);
        }
    }
    for response in &experiment.responses {
        assert!(cards.says(&response.name), "{}", response.name);
    }
    assert!(cards.says("mask on"));
}
