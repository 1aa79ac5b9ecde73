//! What is told of the ways in which a part draws.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::draw_maps::{files, judged, told as skin_told};
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

/// Walls of a box have no draught: the rules ask 1.12° of 60 mm of wood (see the tests of the
/// draught); of a printed pattern 40 mm high about as much. The sheet of 2 mm between two pockets
/// is told as thin, and so is the sand of 2 mm in a slot.
#[test]
fn the_worst_of_the_skin_is_told_with_its_place() {
    let job = "name = \"Grate\"\n[part]\nup = \"+z\"\n[metal]\nalloy = \"A356\"\n\
         [[solid]]\nkind = \"box\"\nsize = [\"60 mm\", \"40 mm\", \"40 mm\"]\n\
         [[solid]]\nkind = \"box\"\nsize = [\"2 mm\", \"30 mm\", \"20 mm\"]\n\
         at = [\"10 mm\", 0, \"25 mm\"]\ntake_away = true\n\
         [[solid]]\nkind = \"box\"\nsize = [\"20 mm\", \"30 mm\", \"20 mm\"]\n\
         at = [\"-3 mm\", 0, \"25 mm\"]\ntake_away = true\n";
    let part = worked::given(job);
    let judged = judged(&worked::job(job), &part.looked().unwrap().mesh).unwrap();
    let said: Vec<String> = skin_told(&judged)
        .iter()
        .map(|line| Language::Uk.say(&line.words))
        .collect();
    let all = said.join("\n");
    // The sheet from x = 7 to 9 and the slot from 9 to 11, each 30 × 15 mm.
    assert!(all.contains("4.5 cm² of wall around 7, 0,"), "{all}");
    assert!(all.contains("the sand over 4.5 cm² around"), "{all}");
    assert_eq!(all.matches("is 2 mm thick").count(), 2, "{all}");
    assert!(all.contains("inside corners without a fillet"), "{all}");
    assert!(all.contains("want more draught"), "{all}");
    for language in Language::ALL {
        assert!(
            skin_told(&judged)
                .iter()
                .all(|line| !language.say(&line.words).contains("skin-"))
        );
    }
}

#[test]
fn the_maps_hold_every_figure_and_every_kind() {
    let job = "name = \"Bored\"\n[part]\nup = \"+z\"\n[metal]\nalloy = \"A356\"\n\
         [[solid]]\nkind = \"box\"\nsize = [\"60 mm\", \"40 mm\", \"40 mm\"]\n";
    let part = worked::given(job);
    let judged = judged(&worked::job(job), &part.looked().unwrap().mesh).unwrap();
    let files = files(&judged);
    let [(ply, figures), (glb, picture)] = files.as_slice() else {
        panic!("{}", files.len())
    };
    assert_eq!((ply.as_str(), glb.as_str()), ("maps.ply", "maps.glb"));
    let head = String::from_utf8_lossy(&figures[..600]).into_owned();
    for name in [
        "held_share",
        "draught_deg",
        "draught_missing_deg",
        "metal_mm",
        "ball_mm",
    ] {
        assert!(head.contains(&format!("property float {name}\n")), "{head}");
    }
    let text = String::from_utf8_lossy(picture);
    assert!(text.contains("short of draught") && text.contains("\"clear\""));
}
