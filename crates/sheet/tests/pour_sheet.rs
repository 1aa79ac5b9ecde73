//! The pour sheet as it comes out of the printer: one page, the right words, a true bar.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use sheet::{Paper, PaperRemark, PourSheet, RemarkLevel, SheetError, pdf};

use pump_housing::sample;
use read_back::{Printed, read_back};

mod bench_papers;
mod joint;
mod lesson;
mod pump_housing;
mod read_back;

const PAPERS: [Paper; 2] = [Paper::A4, Paper::Letter];

fn printed(page: &PourSheet, paper: Paper) -> Printed {
    read_back(&pdf(page, paper).unwrap())
}

fn remarks(count: usize, level: RemarkLevel) -> Vec<PaperRemark> {
    let remark = |number| PaperRemark {
        level,
        words: format!("Remark {number} on the wall beside the inlet."),
        advice: "Thicken it to 4 mm or bring a gate closer to it.".into(),
    };
    (1..=count).map(remark).collect()
}

fn bare() -> PourSheet {
    PourSheet {
        title: String::new(),
        made_by: String::new(),
        job_code: String::new(),
        red_lines: Vec::new(),
        blocks: Vec::new(),
        drawing: None,
        drawing_caption: String::new(),
        remarks: Vec::new(),
        blanks: Vec::new(),
        sources: Vec::new(),
        code_text: String::new(),
        limits: String::new(),
        ..sample()
    }
}

#[test]
fn the_sample_is_one_page_of_its_paper() {
    let sizes_mm = [[210.0, 297.0], [215.9, 279.4]];
    for (paper, size_mm) in PAPERS.into_iter().zip(sizes_mm) {
        let printed = printed(&sample(), paper);
        assert_eq!(printed.pages, 1);
        assert_eq!(printed.fonts, 2, "regular and bold are inside the file");
        for (side_pt, side_mm) in printed.size_pt.into_iter().zip(size_mm) {
            let difference_mm = side_pt / 72.0 * 25.4 - side_mm;
            assert!(difference_mm.abs() < 0.1, "{paper:?} {difference_mm}");
        }
    }
}

#[test]
fn nothing_is_smaller_than_8_pt_and_figures_are_10_pt() {
    // Words in the drawing are set in mm: 3.528 mm are 10 pt.
    for paper in PAPERS {
        let sizes = printed(&sample(), paper).letter_sizes();
        assert!(
            sizes
                .iter()
                .all(|size| *size >= 8.0 || (*size - 3.528).abs() < 0.001),
            "{sizes:?}"
        );
        let small = sizes.iter().filter(|size| **size == 8.0).count();
        assert!(
            small * 10 < sizes.len(),
            "only the fine print is in 8 pt: {small}"
        );
        for size in [10.0, 14.0, 16.0] {
            assert!(sizes.contains(&size), "{paper:?} {size}");
        }
    }
}

#[test]
fn the_sample_says_what_matters() {
    for paper in PAPERS {
        let printed = printed(&sample(), paper);
        for words in [
            "Pump housing, garden well",
            "Boots covered, face shield",
            "0.62 kg",
            "0.58 to 0.68 kg",
            "7⅞ × 6¼ in",
            "720 °C",
            "1330 °F",
            "The boss at the outlet freezes last.",
            "cope 60",
            "What happened",
            "Sources: 1 Foundry handbook A",
        ] {
            assert!(printed.says(words), "{paper:?} does not say {words}");
        }
        assert!(!printed.says("None") && !printed.says("null"));
    }
}

#[test]
fn the_bar_is_100_mm_and_4_in() {
    for paper in PAPERS {
        let strokes = printed(&sample(), paper).level_strokes_pt();
        for length_in in [100.0 / 25.4, 4.0] {
            let true_ones = strokes
                .iter()
                .filter(|stroke| (*stroke / 72.0 - length_in).abs() < 1e-6);
            assert_eq!(true_ones.count(), 1, "{paper:?} {length_in} in");
        }
    }
}

#[test]
fn the_same_sheet_gives_the_same_bytes() {
    let first = pdf(&sample(), Paper::A4).unwrap();
    let other = pdf(
        &PourSheet {
            title: "Door knob".into(),
            ..sample()
        },
        Paper::A4,
    )
    .unwrap();
    assert_ne!(first, other);
    assert_eq!(first, pdf(&sample(), Paper::A4).unwrap());
}

/// The test runs itself in a second process, which writes its sheet to a file and leaves.
#[test]
fn another_process_gives_the_same_bytes() {
    const ASKED: &str = "SHEET_WRITTEN_TO";
    let bytes = pdf(&sample(), Paper::Letter).unwrap();
    if let Some(path) = std::env::var_os(ASKED) {
        std::fs::write(path, bytes).unwrap();
        return;
    }
    let path = std::env::temp_dir().join(format!("pour-sheet-{}.pdf", std::process::id()));
    let run = std::process::Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "another_process_gives_the_same_bytes"])
        .env(ASKED, &path)
        .output()
        .unwrap();
    assert!(run.status.success());
    let theirs = std::fs::read(&path).unwrap();
    std::fs::remove_file(&path).unwrap();
    assert_eq!(bytes, theirs);
}

#[test]
fn there_is_no_date_in_the_file() {
    let bytes = pdf(&sample(), Paper::A4).unwrap();
    let text = String::from_utf8_lossy(&bytes);
    assert!(!text.contains("CreationDate") && !text.contains("CreateDate"));
}

#[test]
fn empty_parts_are_left_out() {
    for paper in PAPERS {
        let bare = printed(&bare(), paper);
        assert_eq!(bare.pages, 1);
        for words in ["Red lines", "STOP", "Scale", "Sources", "more:"] {
            assert!(!bare.says(words), "{words}");
        }
    }
    let dated = PourSheet {
        date: Some("3 May".into()),
        ..bare()
    };
    assert!(printed(&dated, Paper::A4).says("3 May"));
}

#[test]
fn reasons_to_stop_stand_on_the_sheet() {
    let reason = "The crucible holds 0.5 kg and the charge is 0.62 kg.";
    let page = PourSheet {
        stops: vec![reason.into()],
        ..sample()
    };
    for paper in PAPERS {
        let printed = printed(&page, paper);
        assert_eq!(printed.pages, 1);
        assert!(printed.says("STOP: do not pour this job as it stands") && printed.says(reason));
    }
}

#[test]
fn remarks_that_do_not_fit_are_counted() {
    let mut many = remarks(30, RemarkLevel::Note);
    many.push(PaperRemark {
        level: RemarkLevel::Stop,
        words: "The drag is too shallow under the boss.".into(),
        advice: String::new(),
    });
    for paper in PAPERS {
        let page = PourSheet {
            remarks: many.clone(),
            ..sample()
        };
        let printed = printed(&page, paper);
        assert_eq!(printed.pages, 1);
        assert!(printed.says("The drag is too shallow under the boss."));
        let shown = (1..=30)
            .filter(|number| printed.says(&format!("Remark {number} on")))
            .count();
        assert!(printed.says(&format!(
            "and {} more: oddside plan tells them.",
            30 - shown
        )));
        assert!(shown < 30, "{paper:?}");
    }
}

#[test]
fn a_stop_is_never_left_off() {
    let page = PourSheet {
        remarks: remarks(200, RemarkLevel::Stop),
        ..sample()
    };
    for paper in PAPERS {
        let fault = pdf(&page, paper).unwrap_err();
        assert!(
            matches!(fault, SheetError::TooMuch { pages } if pages > 1),
            "{fault}"
        );
    }
}

#[test]
fn too_many_red_lines_are_refused_not_cut() {
    let red_lines = vec!["Everything is dry and everybody stands clear.".to_owned(); 150];
    let fault = pdf(
        &PourSheet {
            red_lines,
            ..sample()
        },
        Paper::A4,
    )
    .unwrap_err();
    assert!(
        fault.to_string().contains("does not fit on one side"),
        "{fault}"
    );
}

#[test]
fn markup_prints_as_text() {
    let title = "#evil *x* $1$ @ref";
    let page = PourSheet {
        title: title.into(),
        code_text: String::new(),
        limits: "#read(\"/etc/hosts\")".into(),
        ..sample()
    };
    let printed = printed(&page, Paper::A4);
    assert!(printed.says(title) && printed.says("#read(\"/etc/hosts\")"));
}

#[test]
fn strange_words_still_give_one_page() {
    let long = "Donaudampfschifffahrtsgesellschaftskapitänspumpengehäuse".to_owned();
    let words = [
        long,
        "🔥🫠👨‍👩‍👧 pump".to_owned(),
        "غلاف المضخة בית משאבה".to_owned(),
        "a\u{0}b\u{7}\u{1b}[31m\r\n\tc\u{202E}d".to_owned(),
        "<svg onload='x'>&amp;\"\\".to_owned(),
    ];
    for word in words {
        let mut page = PourSheet {
            title: word.clone(),
            job_code: word.clone(),
            ..sample()
        };
        page.drawing_caption.clone_from(&word);
        page.blanks[0].clone_from(&word);
        page.red_lines[0].clone_from(&word);
        let row = &mut page.blocks[0].rows[1];
        row.name.clone_from(&word);
        row.value.clone_from(&word);
        row.band = Some(word.clone());
        row.other = Some(word.clone());
        for paper in PAPERS {
            assert_eq!(printed(&page, paper).pages, 1, "{paper:?} {word}");
        }
    }
}
