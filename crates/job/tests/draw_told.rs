//! What is told of the ways in which a part draws.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::draw_told::{Told, told};
use job::words::Language;

/// A block of 60 × 40 × 40 mm with a bore of 20 mm along x.
fn bored(up: &str) -> Told {
    let job = format!(
        "name = \"Bored\"\n[part]\nup = \"{up}\"\n[metal]\nalloy = \"A356\"\n\
         [[solid]]\nkind = \"box\"\nsize = [\"60 mm\", \"40 mm\", \"40 mm\"]\n\
         [[solid]]\nkind = \"cylinder\"\ndiameter = \"20 mm\"\nlength = \"80 mm\"\n\
         at = [\"-40 mm\", 0, \"20 mm\"]\naxis = \"x\"\ntake_away = true\n"
    );
    let part = worked::given(&job);
    told(&worked::job(&job), &part.looked().unwrap().mesh).unwrap()
}

/// Along its bore the part holds nothing: that way comes first.
#[test]
fn the_way_along_a_bore_comes_first() {
    let told = bored("+z");
    let [way, held, ..] = &told.rows[0];
    assert!(way == "+x" || way == "-x", "{told:?}");
    assert_eq!(held, "0 cm³");
}

/// Laid across its bore it holds π/4 · 20² · 60 mm³ = 18.8 cm³, and is better turned.
#[test]
fn what_is_held_as_the_job_lays_it_is_told_with_what_frees_it() {
    let told = bored("+z");
    assert_eq!(told.lines[0].words.id(), "draw-holds");
    let said: Vec<String> = told
        .lines
        .iter()
        .map(|line| Language::Uk.say(&line.words))
        .collect();
    assert!(
        said[0].contains("along +z") && said[0].contains("18.8 cm³"),
        "{said:?}"
    );
    assert!(said[1].contains("draw the part another way"), "{said:?}");
}

#[test]
fn a_part_laid_along_its_bore_draws() {
    let told = bored("+x");
    assert_eq!(told.lines.len(), 1);
    assert_eq!(told.lines[0].words.id(), "draw-clear");
    for language in Language::ALL {
        assert!(
            language.say(&told.lines[0].words).contains("+x"),
            "{language:?}"
        );
    }
}
