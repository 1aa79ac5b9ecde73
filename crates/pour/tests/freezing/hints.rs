//! What is worth turning, and what is cold while the last place is just solid.

use pour::freeze::{freeze, grids};
use pour::levers::{Lacks, Levers, Turn, TurnedTo};
use pour::meshing::{Meshing, meshed};
use pour::opening::{Cooled, cooled};
use pour::solved::filling;
use rigging::mould::Mould;
use rigging::piece::Piece;

use crate::bodies::joined;
use crate::{as_poured, plain};

fn lacks(hollows_mm3: f64) -> Lacks {
    Lacks {
        hollows_mm3,
        pores_mm3: 0.0,
    }
}

/// Changes by so much at the low and at the high end of each of the three, from 100 mm³.
fn levers(by: [[f64; 2]; 3]) -> Levers {
    let turned = [Turn::Pour, Turn::Sand, Turn::Contact].into_iter().zip(by);
    let both = |(turn, by): (Turn, [f64; 2])| {
        [false, true].map(|is_high| TurnedTo {
            turn,
            is_high,
            lacks: lacks(100.0 + by[usize::from(is_high)]),
        })
    };
    Levers {
        likely: lacks(100.0),
        turned: turned.flat_map(both).collect(),
    }
}

/// By hand, from the weights 0.185, 0.63 and 0.185: one thing alone, then two that add up.
#[test]
fn how_often_it_is_short_follows_from_the_weights() {
    let close = |found: f64, wanted: f64| assert!((found - wanted).abs() < 1e-12, "{found}");
    let none = [0.0, 0.0];
    close(levers([none; 3]).short_share(99.0), 1.0);
    close(levers([none; 3]).short_share(100.0), 0.0);
    let one = levers([[-30.0, 30.0], none, none]);
    close(one.short_share(110.0), 0.185);
    close(one.short_share(90.0), 0.815);
    let two = levers([[-30.0, 30.0], none, [-30.0, 30.0]]);
    close(two.short_share(120.0), 2.0 * 0.185 * 0.63 + 0.185 * 0.185);
    close(two.short_share(140.0), 0.185 * 0.185);
}

/// Three that know nothing of each other and spread as errors do, whose ends are the fifth and
/// the ninety-fifth of a hundred: their sum spreads by √3 times the one, and passes one and a half
/// ends in 7.7 of a hundred cases (1.5 × 1.645 / √3 = 1.42 standard deviations, table of the
/// normal law).
#[test]
fn three_points_stand_for_a_normal_spread() {
    let three = levers([[-10.0, 10.0]; 3]);
    let share = three.short_share(115.0);
    assert!((share - 0.077).abs() < 0.03, "{share}");
    let half = three.short_share(100.5) + 0.5 * (1.0 - 2.0 * three.short_share(100.5));
    assert!((half - 0.5).abs() < 1e-12, "both sides are alike");
}

#[test]
fn the_best_lever_takes_most_away_and_a_small_one_is_none() {
    let best = levers([[-40.0, 40.0], [-60.0, 20.0], [5.0, -5.0]]).best(20.0);
    let best = best.expect("the sand");
    assert_eq!((best.turn, best.is_high), (Turn::Sand, false));
    assert_eq!(levers([[-9.0, 9.0], [0.0; 2], [0.0; 2]]).best(1.0), None);
    assert_eq!(levers([[-40.0, 9.0], [0.0; 2], [0.0; 2]]).best(50.0), None);
}

/// A lone block lacks all that its metal loses; poured hotter, the liquid loses more: by its
/// contraction over the kelvins between.
#[test]
fn a_lone_block_poured_hotter_lacks_what_its_liquid_loses_more() {
    let (plate, meshing) = plain();
    let poured = as_poured();
    let cells = grids(&plate, &meshing).expect("cells");
    let levers = freeze(cells, &meshing, &poured, &mut |_| true)
        .expect("it freezes")
        .levers;
    let of = |turn: Turn, is_high: bool| {
        let is_it = |end: &&TurnedTo| end.turn == turn && end.is_high == is_high;
        levers
            .turned
            .iter()
            .find(is_it)
            .expect("it was turned")
            .lacks
            .all_mm3()
    };
    let volume_mm3 = 60.0 * 40.0 * 12.0;
    let as_liquid = poured.alloy.liquid_contraction.band.likely();
    // Even metal is not taken colder than it begins to freeze, and keeps its superheat by count.
    let wanted_mm3 = volume_mm3 * as_liquid * 20.0;
    let more_mm3 = of(Turn::Pour, true) - levers.likely.all_mm3();
    assert!(
        (more_mm3 / wanted_mm3 - 1.0).abs() < 0.05,
        "{more_mm3} {wanted_mm3}"
    );
    // All of the metal is one casting: sand and contact have nothing to share it out with.
    for turn in [Turn::Sand, Turn::Contact] {
        let off = of(turn, true) / of(turn, false) - 1.0;
        assert!(off.abs() < 0.01, "{turn:?} {off}");
    }
}

fn cooled_of(mould: &Mould) -> Cooled {
    let meshing = Meshing {
        wall_mm: 12.0,
        ..plain().1
    };
    let cells = meshed(mould, &meshing).expect("cells");
    let poured = as_poured();
    let likely = filling(&poured, 320.0, 1.0);
    cooled(&cells, &poured, &likely, 3600.0, &mut |_| true).expect("it cools")
}

/// Two heavy blocks joined by a thin bar: the middle of the bar is the coldest while a block is
/// just solid. A lone block is nearly as hot all through.
#[test]
fn a_thin_bar_between_heavy_blocks_is_the_cold_part() {
    let blocks = [
        (Piece::Casting(1), [[30.0, 30.0, 30.0], [66.0, 66.0, 66.0]]),
        (Piece::Casting(1), [[66.0, 42.0, 42.0], [126.0, 54.0, 54.0]]),
        (
            Piece::Casting(1),
            [[126.0, 30.0, 30.0], [162.0, 66.0, 66.0]],
        ),
    ];
    let bar = cooled_of(&joined(&blocks, [192.0, 96.0, 96.0]));
    let held = bar.held.first().expect("a casting");
    let from_middle = |place_mm: [f64; 3]| (place_mm[0] - 96.0).abs();
    assert!(from_middle(held.coldest_mm) < 15.0, "{held:?}");
    assert!(from_middle(held.hottest_mm) > 25.0, "{held:?}");
    let block = [(Piece::Casting(1), [[40.0, 40.0, 40.0], [76.0, 76.0, 76.0]])];
    let lone = cooled_of(&joined(&block, [116.0, 116.0, 116.0]));
    let lone = lone.held.first().expect("a casting");
    assert!(held.spread_k() > 2.0 * lone.spread_k(), "{held:?} {lone:?}");
}
