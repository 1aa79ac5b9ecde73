//! One thing changed in a job's file, with everything else as it was typed.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use job::changed::{ChangeError, Typed, changed, typed};
use job::folder::{STARTER_JOB, noted_of};
use job::typed_key::{KeyKind, TYPED_KEYS, TypedKey, typed_key};

const JOB: &str = "# mine\nname = \"Knob\"   # of the door\n\n[metal]\nalloy = \"gunmetal\" # 85-5-5-5\n\n\
                   [part]\nmesh = \"part.stl\"\ncount = 2\n[mould]\nplace.gates = [\"180, 100\"]\n";

fn key(path: &str) -> &'static TypedKey {
    typed_key(path).unwrap()
}

fn text(words: &str) -> Typed {
    Typed::Text(words.to_owned())
}

#[test]
fn what_stands_there_is_read_by_its_kind() {
    let read = |path: &str| typed(JOB, key(path)).unwrap();
    assert_eq!(read("name"), Some(text("Knob")));
    assert_eq!(read("part.count"), Some(Typed::Count(2)));
    let gates = Typed::List(vec!["180, 100".to_owned()]);
    assert_eq!(read("mould.place.gates"), Some(gates));
    assert_eq!(read("melt.loss"), None);
    assert!(matches!(
        typed("name = ", key("name")),
        Err(ChangeError::Unreadable(_))
    ));
}

#[test]
fn a_change_touches_nothing_but_its_own_words() {
    let new = changed(JOB, key("metal.alloy"), Some(&text("brass"))).unwrap();
    assert_eq!(new, JOB.replace("\"gunmetal\"", "\"brass\""));
    let new = changed(JOB, key("name"), Some(&text("A \"new\" knob"))).unwrap();
    assert_eq!(
        typed(&new, key("name")).unwrap(),
        Some(text("A \"new\" knob"))
    );
    assert!(new.contains("# of the door") && new.starts_with("# mine\n"));
}

#[test]
fn a_key_comes_into_its_table_and_goes_out_of_it_again() {
    let loss = text("5 % of charge");
    let with = changed(JOB, key("melt.loss"), Some(&loss)).unwrap();
    assert_eq!(typed(&with, key("melt.loss")).unwrap(), Some(loss));
    assert!(with.starts_with(JOB));
    let without = changed(&with, key("melt.loss"), None).unwrap();
    assert_eq!(typed(&without, key("melt.loss")).unwrap(), None);
    assert_eq!(changed(JOB, key("melt.loss"), None).unwrap(), JOB);
    let without = changed(JOB, key("part.count"), None).unwrap();
    assert_eq!(without, JOB.replace("count = 2\n", ""));
}

#[test]
fn another_kind_is_refused_and_so_is_a_table_that_is_none() {
    let wrong = [
        ("part.count", text("two")),
        ("part.count", Typed::Count(0)),
        ("part.machined", text("yes")),
        ("metal.alloy", Typed::Yes(true)),
        ("mould.place.gates", text("180, 100")),
    ];
    for (path, to) in wrong {
        let fault = changed(JOB, key(path), Some(&to)).unwrap_err();
        assert!(matches!(fault, ChangeError::Kind { .. }), "{path}: {fault}");
    }
    let odd = "name = \"x\"\nmelt = 3\n";
    let fault = changed(odd, key("melt.loss"), Some(&text("5 % of charge"))).unwrap_err();
    assert!(matches!(fault, ChangeError::NoPlace { .. }), "{fault}");
}

/// Whatever the page offers for a key is understood by the file.
#[test]
fn every_key_that_is_changed_on_the_sheet_is_one_of_the_file() {
    let file = std::path::Path::new("job.toml");
    for key in &TYPED_KEYS {
        let offered: Vec<Typed> = match key.kind {
            KeyKind::OneOf(words) | KeyKind::Signs(words) => {
                words.iter().map(|word| text(word)).collect()
            }
            KeyKind::Alloy => {
                let all = metal::alloys::all().iter();
                all.map(|alloy| text(&alloy.name)).collect()
            }
            KeyKind::Count => vec![Typed::Count(3)],
            KeyKind::Yes => vec![Typed::Yes(true), Typed::Yes(false)],
            KeyKind::Places => vec![Typed::List(vec![key.example.unwrap().to_owned()])],
            KeyKind::Flask => vec![text("A")],
            KeyKind::Text | KeyKind::Place => vec![text(key.example.unwrap_or("Knob"))],
        };
        for typed in offered {
            let new = changed(STARTER_JOB, key, Some(&typed)).unwrap();
            let noted = noted_of(file, &new);
            assert!(noted.is_ok(), "{}: {typed:?}: {:?}", key.path, noted.err());
        }
    }
}

/// What is put in and taken back leaves no trace: no empty table, no note out of its place.
#[test]
fn what_is_taken_back_leaves_the_file_as_it_was() {
    let plain = "name = \"Block\"\n[part]\nmesh = \"block.stl\"\n\n[metal]\nalloy = \"A356\"\n";
    let noted = "name = \"Block\"\n\n[mould]\n# flask = \"A\"\n\n[melt]\n# pig = \"10 %\"\n";
    let typed = [
        ("mould.place.gates", Typed::List(vec!["1, 2".to_owned()])),
        ("mould.pour_height", Typed::Text("105 mm".to_owned())),
        ("melt.pig", Typed::Text("5 % of poured".to_owned())),
    ];
    for text in [plain, noted, STARTER_JOB] {
        for (path, to) in &typed {
            let key = typed_key(path).unwrap();
            let there = changed(text, key, Some(to)).unwrap();
            assert_ne!(there, text);
            assert_eq!(changed(&there, key, None).unwrap(), text, "{path}\n{there}");
        }
    }
}
