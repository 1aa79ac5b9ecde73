//! Every text has its words in every language, with the same things put into it, and no words are
//! left over.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod every_charge;
mod every_remark;
mod everything_made;
mod messages;

use std::collections::BTreeSet;

use every_charge::every_lack;
use every_remark::every_remark;
use everything_made::everything_made;
use job::bench_key::{HEAP_KEYS, SAND_KEYS};
use job::described::{LIKE, SHAPES};
use job::lesson::lesson;
use job::making::Making;
use job::plan::Plan;
use job::remark::Remark;
use job::remark::of_metal::MetalFact;
use job::typed_key::{KeyKind, SHOP_KEYS, TYPED_KEYS};
use job::words::Language;
use job::words::said::{Given, Said, slug};
use messages::{
    FOLDERS, Messages, examples, for_all, like_ids, of, of_a_table_of_the_log, of_file, of_the_log,
    quoted_after, referred_to, source, work_out,
};
use metal::alloy::Caution;
use metal::alloys;
use metal::charge_makeup::element::Element;
use metal::charge_makeup::stock::{self, Stock};
use sand::mixes::Mix;

#[test]
fn each_language_answers_to_the_same_ids_and_asks_for_the_same() {
    let british = for_all("en-GB");
    assert!(british.len() > 300);
    for folder in FOLDERS {
        let other = for_all(folder);
        for (id, asked) in &british {
            assert_eq!(other.get(id), Some(asked), "{folder}: {id}");
        }
        for id in other.keys() {
            assert!(british.contains_key(id), "{folder}: {id} is in no British");
        }
    }
}

#[test]
fn every_message_file_of_a_language_is_read() {
    for (folder, language) in FOLDERS
        .into_iter()
        .zip([Language::Uk, Language::Fr, Language::Es])
    {
        // An id of several words is no message that reads like its id.
        let messages = of(folder);
        for id in messages.keys().filter(|id| id.contains(['-', '_'])) {
            assert_ne!(language.say(&Said::new(id.clone())), *id, "{folder}");
        }
    }
}

#[test]
fn only_languages_that_no_founder_has_read_say_so() {
    let says_so = |language: Language| !language.word("unread").is_empty();
    assert_eq!(Language::ALL.map(says_so), [false, false, true, true]);
}

#[test]
fn every_remark_has_words_and_advice_that_take_all_it_gives() {
    let british = of("en-GB");
    for remark in every_remark() {
        let given: BTreeSet<String> = remark
            .words
            .given()
            .iter()
            .map(|(name, _)| (*name).to_owned())
            .collect();
        let asked = |id: &str| british.get(id).cloned().unwrap_or_default();
        let in_words = asked(remark.words.id());
        let used: BTreeSet<String> = in_words
            .union(&asked(remark.advice.id()))
            .cloned()
            .collect();
        assert_eq!(used, given, "{}", remark.words.id());
        for language in Language::ALL {
            for said in [&remark.words, &remark.advice] {
                let shown = language.say(said);
                assert_ne!(shown, said.id(), "no words in {language:?}");
                assert!(!shown.contains('{'), "{language:?}: {shown}");
            }
        }
    }
}

/// What can be typed on the sheet is called there as the sheet calls it, in every language.
#[test]
fn on_the_sheet_no_remark_names_a_key_of_the_sheet() {
    let mut other = 0;
    for remark in every_remark() {
        for language in Language::ALL {
            let shown = remark.advice_on_sheet(language);
            other += usize::from(shown != language.say(&remark.advice));
            assert!(!shown.contains('{') && !shown.contains(".sheet"), "{shown}");
            let keys = TYPED_KEYS.iter().map(|key| key.path);
            for key in keys.filter(|path| path.contains('.')) {
                assert!(!shown.contains(key), "{language:?}: {shown}");
            }
            assert!(!shown.contains("oddside freeze"), "{language:?}: {shown}");
        }
    }
    assert!(other >= 4 * 8, "{other}");
}

#[test]
fn every_reason_why_no_charge_is_made_is_told() {
    let british = of("en-GB");
    for lack in every_lack() {
        takes_what_it_is_given(&lack, &british);
        for language in Language::ALL {
            let shown = language.say(&lack);
            assert!(!shown.contains('{'), "{language:?}: {shown}");
        }
    }
}

/// A message asks for all that is put into it, and for nothing else; so does each put into it.
fn takes_what_it_is_given(said: &Said, british: &Messages) {
    let given = said.given().iter();
    let names: BTreeSet<String> = given.clone().map(|(name, _)| (*name).to_owned()).collect();
    assert_eq!(british.get(said.id()), Some(&names), "{}", said.id());
    for (_, given) in given {
        match given {
            Given::Said(said) => takes_what_it_is_given(said, british),
            Given::List(list) => list
                .iter()
                .for_each(|said| takes_what_it_is_given(said, british)),
            Given::Text(_) | Given::Count(_) => {}
        }
    }
}

#[test]
fn every_message_of_a_remark_is_made_by_some_fact() {
    let made: BTreeSet<String> = every_remark()
        .iter()
        .map(|remark| remark.words.id().to_owned())
        .collect();
    let file = of_file("en-GB", "remarks.ftl");
    let words: BTreeSet<String> = file
        .keys()
        .filter(|id| !id.contains('.'))
        .cloned()
        .collect();
    assert_eq!(made, words);
}

#[test]
fn every_id_in_the_source_has_its_message() {
    let (british, source) = (of("en-GB"), source());
    let openings = [
        "Said::new(",
        "Remark::stop(",
        "Remark::caution(",
        "Remark::note(",
        ".word(",
    ];
    let ids = openings.map(|opening| quoted_after(&source, opening));
    let ids: Vec<&str> = ids.concat();
    assert!(ids.len() > 50);
    // One is missing on purpose, to show what a missing one looks like.
    for id in ids.iter().filter(|id| !id.starts_with("no_such_message")) {
        assert!(british.contains_key(*id), "{id}");
    }
    for id in of_the_log() {
        assert!(british.contains_key(&id), "{id}");
    }
}

/// An id that is handed on before it is put into words is known by its first word.
#[test]
fn every_id_that_is_handed_on_has_its_message() {
    let (british, source) = (of("en-GB"), source());
    let first = |id: &str| id.split('-').next().map(str::to_owned);
    let families: BTreeSet<String> = british.keys().filter_map(|id| first(id)).collect();
    for id in like_ids(&source) {
        let is_one = first(id).is_some_and(|word| families.contains(&word));
        let is_other = OTHER_WORDS.contains(&id) || id.ends_with('-');
        assert!(!is_one || is_other || british.contains_key(id), "{id}");
    }
}

/// What reads like an id and is none: keys of sources, units, words of the command line, of HTTP.
const OTHER_WORDS: [&str; 3] = ["no-cache", "no-referrer", "no-store"];

#[test]
fn no_message_is_left_over() {
    let (source, referred_to, of_the_log) = (source(), referred_to(), of_the_log());
    let used = |id: &str| {
        let in_source = source.contains(&format!("\"{id}\""));
        let in_log = of_the_log.contains(&id.into()) || of_a_table_of_the_log(id);
        in_source || in_log || referred_to.contains(id) || of_a_family(id)
    };
    let british = of("en-GB");
    for id in british.keys().filter(|id| !id.contains('.')) {
        assert!(used(id), "{id} is used nowhere");
    }
}

/// Ids that are put together from the name of a thing: each has to be one of its things.
fn of_a_family(id: &str) -> bool {
    let Some((family, name)) = id.split_once('-') else {
        return false;
    };
    match family {
        "element" => name == "CE" || Element::read(name).is_ok(),
        "alloy" => is_named(name, alloys::all().iter().map(|alloy| alloy.name.as_str())),
        "stock" => is_named(name, stock().iter().map(|stock| stock.name.as_str())),
        "scrap" => metal::scrap::origin(&name.replace('-', " ")).is_some(),
        "mix" => of_a_mix(name),
        "shape" => SHAPES.iter().any(|shape| shape.kind == name) || LIKE.contains(&name),
        "size" => SHAPES.iter().any(|shape| shape.keys.contains(&name)),
        "bench" => name
            .strip_prefix("given-")
            .is_some_and(|key| source().contains(&format!("\"{key}\""))),
        "said" => TYPED_KEYS
            .iter()
            .chain(&SHOP_KEYS)
            .chain(&SAND_KEYS)
            .chain(&HEAP_KEYS)
            .any(|key| match key.kind {
                KeyKind::OneOf(words) => is_named(name, words.iter().copied()),
                _ => false,
            }),
        "figure" | "choice" => is_named(name, work_out().split('"')),
        "pencil" => match name.strip_prefix("number-") {
            Some(key) => is_named(key, reckoned_keys()),
            None => is_named(name, work_out().split('"')),
        },
        _ => false,
    }
}

/// Whether it names a mix, or one of its steps or cautions.
fn of_a_mix(name: &str) -> bool {
    let is_one = |of: fn(&Mix) -> &[String], key: &str| {
        let mut mixes = sand::mixes::all().iter();
        mixes.any(|mix| of(mix).iter().any(|own| own == key))
    };
    match (name.strip_prefix("step-"), name.strip_prefix("mind-")) {
        (Some(key), _) => is_one(|mix| &mix.steps, key),
        (None, Some(key)) => is_one(|mix| &mix.cautions, key),
        (None, None) => sand::mixes::of_name(name).is_some(),
    }
}

/// Keys of everything that any law asks for.
fn reckoned_keys() -> impl Iterator<Item = &'static str> {
    let inputs = reckon::all().flat_map(|(_, reckoner)| reckoner.inputs);
    inputs.map(|input| input.key)
}

fn is_named<'a>(name: &str, mut things: impl Iterator<Item = &'a str>) -> bool {
    things.any(|of| slug(of) == name)
}

fn stock() -> Vec<Stock> {
    stock::read(stock::BUILT_IN).unwrap()
}

#[test]
fn every_thing_of_a_table_has_its_message() {
    let british = of("en-GB");
    for alloy in alloys::all() {
        let id = format!("alloy-{}", slug(&alloy.name));
        assert!(british.contains_key(&id), "{id}");
        assert_eq!(Language::Uk.say(&Said::new(id)), alloy.name);
    }
    for mix in sand::mixes::all() {
        let steps = mix.steps.iter().map(|key| format!("mix-step-{key}"));
        let minds = mix.cautions.iter().map(|key| format!("mix-mind-{key}"));
        for id in steps.chain(minds).chain([format!("mix-{}", mix.name)]) {
            assert!(british.contains_key(&id), "{id}");
        }
    }
    for stock in stock() {
        let id = format!("stock-{}", slug(&stock.name));
        assert!(british.contains_key(&id), "{id}");
        assert_eq!(Language::Uk.say(&Said::new(id)), stock.name);
    }
}

/// The English name of a figure is its key, so that its message is that name and nothing else.
#[test]
fn figures_and_choices_are_called_by_their_own_names_in_english() {
    for id in of("en-GB").keys() {
        let Some((family @ ("figure" | "choice"), _)) = id.split_once('-') else {
            continue;
        };
        let name = Language::Uk.say(&Said::new(id.clone()));
        assert_eq!(format!("{family}-{}", slug(&name)), *id);
    }
}

#[test]
fn every_example_is_told_in_every_language() {
    let british = of("en-GB");
    let for_laws = of_file("en-GB", "laws.ftl");
    let mut told = 0;
    for said in examples().iter().flat_map(all_of) {
        takes_what_it_is_given(&said, &british);
        let is_english_alone = for_laws.contains_key(said.id());
        for language in Language::ALL {
            let language = match is_english_alone {
                true => language.for_laws(),
                false => language,
            };
            let shown = language.say(&said);
            assert!(
                shown != said.id() && !shown.contains('{'),
                "{language:?}: {shown}"
            );
        }
        told += 1;
    }
    assert!(told > 500);
}

#[test]
fn a_pattern_made_is_told_in_every_language() {
    let british = of("en-GB");
    let made = everything_made();
    let mut said = job::making::told::head(&made);
    said.extend(job::making::told::lines(&made));
    for cores in everything_made::other_core_prints() {
        said.extend(job::making::told::lines(&Making {
            cores,
            ..made.clone()
        }));
    }
    assert!(said.len() > 15);
    for said in said {
        takes_what_it_is_given(&said, &british);
        for language in Language::ALL {
            let shown = language.say(&said);
            assert!(
                shown != said.id() && !shown.contains('{'),
                "{language:?}: {shown}"
            );
        }
    }
}

/// Everything that a plan tells, but for remarks.
fn all_of(plan: &Plan) -> Vec<Said> {
    let figures = plan.figures.iter();
    let mut all: Vec<Said> = figures
        .flat_map(|figure| [Some(figure.label()), figure.because.clone()])
        .flatten()
        .collect();
    for choice in &plan.choices {
        all.extend([
            choice.label(),
            choice.chosen.clone(),
            choice.because.clone(),
        ]);
    }
    all.push(plan.alloy_label());
    let lesson = lesson(plan).unwrap();
    for task in lesson.tasks {
        let labels = task.numbers.into_iter().map(|number| number.label);
        all.extend(labels.chain([task.wanted, task.rule, task.in_the_plan]));
    }
    all
}

#[test]
fn fume_and_poison_read_as_in_their_table() {
    for caution in [
        Caution::ZincFume,
        Caution::Lead,
        Caution::MagnesiumScrap,
        Caution::UnknownScrap,
    ] {
        let remark = Remark::from(MetalFact::Metal(caution));
        let row = metal::fume::hazard(&remark.code.replace('_', "-"));
        let file = remark.file();
        let said = row.map(|row| (row.words.as_str(), row.advice.as_str()));
        assert_eq!(Some((file.words.as_str(), file.advice.as_str())), said);
    }
}

#[test]
fn scrap_reads_as_in_its_table() {
    for origin in metal::scrap::origins() {
        let remark = Remark::from(MetalFact::Scrap(origin)).file();
        let said = format!("{}: {}", origin.names[0], origin.caution);
        assert_eq!(remark.words, said);
    }
}
