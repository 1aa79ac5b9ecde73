//! Lists longer than a card lets a program see, and boxes that it cannot take.

use gpu::adapters::Bounds;
use gpu::card::Card;
use solver::case::Condition;
use solver::elsewhere::Unable;
use solver::run::{End, Wish, solve_on};

use crate::adapter;
use crate::alike::{assert_alike, both};
use crate::block::block_in_sand;
use crate::materials::damp;

/// Four planes of the box at a time, then two: no number changes.
#[test]
fn a_box_is_worked_at_slab_by_slab() {
    let Some(adapter) = adapter() else { return };
    let mut case = block_in_sand(16);
    case.materials[0] = damp();
    case.faces[4] = Condition::Exchange {
        w_m2k: 50.0,
        celsius: 20.0,
        emissivity: 0.0,
    };
    let wish = Wish {
        longest_step_s: Some(8.0),
        ..Wish::until(End::At { s: 40.0 })
    };
    let whole = Card::open(&adapter).expect("it opens");
    let whole = both(&whole, &case, &wish);
    assert_alike(&whole, 675.0);
    for planes in [4, 2] {
        let mut adapter = adapter.clone();
        let lanes = 8 * 2 * 32 * 20;
        adapter.bounds.seen_bytes = (planes + 2) * lanes;
        let card = Card::open(&adapter).expect("it opens");
        let parts = both(&card, &case, &wish);
        assert_eq!(parts[1].last, whole[1].last);
        assert_eq!(parts[1].work, whole[1].work);
    }
}

/// A box that the card cannot take says what it would need and what there is, and is followed on
/// the processor.
#[test]
fn what_a_card_cannot_take_is_told_and_goes_to_the_processor() {
    let Some(adapter) = adapter() else { return };
    let case = block_in_sand(16);
    let wish = Wish::until(End::At { s: 2.0 });
    let small = [
        Bounds {
            seen_bytes: 4096,
            ..adapter.bounds
        },
        Bounds {
            list_bytes: 8192,
            ..adapter.bounds
        },
    ];
    for bounds in small {
        let mut adapter = adapter.clone();
        adapter.bounds = bounds;
        let card = Card::open(&adapter).expect("it opens");
        let outcome = solve_on(Some(&card), &case, &wish, None, &mut |_, _| true);
        let outcome = outcome.expect("the processor takes it");
        let ran = outcome.ran.expect("it was tried");
        let (unable, from_s) = ran.fell_back.expect("it was not taken");
        assert_eq!(from_s, 0.0);
        let had = bounds.seen_bytes.min(bounds.list_bytes);
        match unable {
            Unable::TooLarge {
                needed_bytes,
                had_bytes,
                ..
            } => {
                assert!(
                    needed_bytes > had_bytes && had_bytes == had,
                    "{needed_bytes} {had_bytes}"
                );
            }
            other => panic!("{other}"),
        }
    }
}
