//! The cases that lie in `examples/conduction` for anyone.

use conduct::reading::read;
use solver::run::Mode;

use crate::alike::{assert_alike, both, cut_short};
use crate::card;

/// Most cells of a case that is tried: software in the place of a card is slow.
const MOST_CELLS: usize = 64 * 64 * 64;

#[test]
fn every_example_goes_as_on_the_processor() {
    let Some(card) = card() else { return };
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/conduction");
    let files = std::fs::read_dir(folder).expect("examples");
    let mut files: Vec<_> = files.map(|file| file.expect("a file").path()).collect();
    files.sort();
    let mut tried = 0;
    for file in files {
        let text = std::fs::read_to_string(&file).expect("a file");
        let mut bare = read(&text).expect("a sound case");
        bare.wish.mode = Mode::Multirate;
        if bare.case.grid.cells() > MOST_CELLS {
            continue;
        }
        let wish = cut_short(&bare.case, &bare.wish);
        let outcomes = both(&card, &bare.case, &wish);
        let celsius = &outcomes[0].last.celsius;
        let hot = celsius
            .iter()
            .chain(&bare.case.start_c)
            .copied()
            .fold(f32::MIN, f32::max);
        let cold = celsius
            .iter()
            .chain(&bare.case.start_c)
            .copied()
            .fold(f32::MAX, f32::min);
        assert_alike(&outcomes, hot - cold);
        tried += 1;
    }
    assert!(tried >= 15, "{tried} cases");
}
