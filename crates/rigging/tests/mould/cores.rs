//! Rigging keeps off cores and their prints.

use rigging::fact::Fact;
use rigging::given::{Core, Given};
use rigging::piece::Piece;

use super::plates::{block, mm, plates};
use super::{by_rule, middle, piece};

/// One plate with a core of these sizes whose corner lies so far from that of the plate.
fn cored(size: [f64; 3], foot: f64, from_corner: [f64; 2]) -> Given {
    let mut given = plates(1, [80.0, 80.0]);
    let corner = given.casting.mesh.bounds()[0];
    let mut mesh = block(size, foot);
    for point in &mut mesh.points {
        point[0] += corner[0] + from_corner[0];
        point[1] += corner[1] + from_corner[1];
    }
    given.casting.cores.push(Core {
        name: "bore".to_owned(),
        mesh,
    });
    given
}

fn runs_into_core(fact: &Fact) -> bool {
    let is_core = |piece: &Piece| matches!(piece, Piece::Core(_));
    matches!(fact, Fact::Touch { piece, other, .. } if is_core(piece) || is_core(other))
}

/// Whichever side of a plate a print sticks out of, the runner lies by another side.
#[test]
fn no_gate_runs_into_a_print() {
    let prints = [
        ([30.0, 60.0, 10.0], [100.0, 10.0]),
        ([30.0, 60.0, 10.0], [-10.0, 10.0]),
        ([100.0, 30.0, 10.0], [10.0, 60.0]),
        ([100.0, 30.0, 10.0], [10.0, -10.0]),
    ];
    for (size, from_corner) in prints {
        let built = by_rule(&cored(size, -5.0, from_corner));
        let told = built.facts.iter().find(|fact| runs_into_core(fact));
        assert!(told.is_none(), "{from_corner:?}: {told:?}");
        assert!(
            built
                .rigging
                .iter()
                .any(|solid| solid.piece == Piece::Gate(1))
        );
    }
}

/// The print of a core stands up through the top of the plate beside its middle: the feeder moves
/// off it, and stays on the plate.
#[test]
fn a_feeder_on_top_moves_off_a_print() {
    let mut given = cored([14.0, 14.0, 40.0], -5.0, [72.0, 33.0]);
    let size = given.sizes.feeder.as_mut().unwrap();
    size.diameter = mm(30.0);
    let built = by_rule(&given);
    let told = built.facts.iter().find(|fact| runs_into_core(fact));
    assert!(told.is_none(), "{told:?}");
    let corner = piece(&built, &Piece::Casting(1)).mesh.bounds()[0];
    let at = middle(piece(&built, &Piece::Feeder(1)));
    let over = [at[0] - corner[0], at[1] - corner[1]];
    assert!(
        (0.0..120.0).contains(&over[0]) && (0.0..80.0).contains(&over[1]),
        "{over:?}"
    );
}
