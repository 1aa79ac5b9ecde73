//! The pupil's sheet and the teacher's answers: one page each, and no answer on the pupil's.

use job::lesson::{Lesson, Number, Task};
use job::words::Language;
use job::words::said::Said;
use sheet::{Paper, Reader, lesson};

use crate::read_back::{Printed, read_back};

fn task(answer: &str, numbers: Vec<Number>) -> Task {
    Task {
        wanted: Said::new("figure-charge"),
        rule: Said::new("pencil-charge"),
        numbers,
        unit: "kg".to_owned(),
        answer: answer.to_owned(),
        in_the_plan: Said::typed("4.11 to 4.22 kg"),
    }
}

fn number(given: Option<&str>, answer_of: Option<usize>) -> Number {
    Number {
        label: Said::new("pencil-number-poured"),
        given: given.map(str::to_owned),
        answer_of,
    }
}

fn sample(words: Language, tasks: usize) -> Lesson {
    let first = task("4.17 kg", vec![number(Some("3.83 kg"), None)]);
    let rest = task("5.29 kg", vec![number(None, Some(1))]);
    let rest = std::iter::repeat_n(rest, tasks - 1);
    Lesson {
        name: "Door knob, pair".to_owned(),
        date: None,
        tasks: std::iter::once(first).chain(rest).collect(),
        words,
    }
}

fn printed(of: &Lesson, reader: Reader, paper: Paper) -> Printed {
    read_back(&lesson(of, reader, paper).unwrap())
}

#[test]
fn each_is_one_page_in_every_language_and_on_both_papers() {
    for words in Language::ALL {
        for paper in [Paper::A4, Paper::Letter] {
            for reader in [Reader::Pupil, Reader::Teacher] {
                let printed = printed(&sample(words, 10), reader, paper);
                assert_eq!(printed.pages, 1, "{words:?} {paper:?} {reader:?}");
            }
        }
    }
}

#[test]
fn the_pupil_reads_the_numbers_and_no_answer() {
    let of = sample(Language::Uk, 2);
    let pupil = printed(&of, Reader::Pupil, Paper::A4);
    assert!(pupil.says("3.83 kg") && pupil.says("your answer 1"));
    for answer in ["4.17", "5.29", "4.11", "4.22"] {
        assert!(!pupil.says(answer), "{answer}");
    }
}

#[test]
fn the_teacher_reads_the_answers_beside_the_plan() {
    let teacher = printed(&sample(Language::Uk, 2), Reader::Teacher, Paper::A4);
    for words in [
        "4.17 kg",
        "5.29 kg",
        "the plan: 4.11 to 4.22 kg",
        "your answer 1",
    ] {
        assert!(teacher.says(words), "{words}");
    }
}
