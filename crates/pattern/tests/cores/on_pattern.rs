//! The pattern with the hollows of its cores filled: the core fits into the sand that it leaves.

use std::f64::consts::PI;

use pattern::boolean::Body;
use pattern::distance::nearest;
use pattern::draw::DrawSettings;
use pattern::draw::undercut::undercuts;
use pattern::made::core_prints::{CoreOnPattern, filled};
use pattern::tree::Tree;

use super::{UP, bodies_of, bored, near, printed, volume};

/// The block is solid, 60 × 40 × 40 mm, and its prints go on from the bore of 20 mm, 25.3 mm long
/// and 20.6 mm across; nothing holds sand.
#[test]
fn a_bored_block_with_prints_is_solid_and_draws() {
    let part = bored();
    let body = &bodies_of(&part).unwrap()[0];
    let printed = printed(body, 25.0);
    let on_pattern = CoreOnPattern {
        body: &body.mesh,
        prints: &printed.prints,
    };
    let whole = filled(&part, &[on_pattern]).unwrap();
    near(whole.without_prints_mm3, 60.0 * 40.0 * 40.0, 1e-9);
    let prints = volume(&whole.mesh) - whole.without_prints_mm3;
    near(prints, 2.0 * PI / 4.0 * 20.6 * 20.6 * 25.3, 2e-3);
    let settings = DrawSettings::suiting(&whole.mesh);
    assert_eq!(
        undercuts(&whole.mesh, UP, &settings).unwrap().trapped_mm3,
        0.0
    );
}

/// Rammed up in a block of sand, the pattern leaves room in which the core touches no sand and has
/// its play of 0.3 mm everywhere outside of the casting.
#[test]
fn the_core_lies_in_the_sand_of_the_pattern_with_its_play() {
    let part = bored();
    let body = &bodies_of(&part).unwrap()[0];
    let printed = printed(body, 25.0);
    let on_pattern = CoreOnPattern {
        body: &body.mesh,
        prints: &printed.prints,
    };
    let whole = filled(&part, &[on_pattern]).unwrap().mesh;
    let core = Body::of(&printed.core).unwrap();
    let touched = core.without(&Body::of(&whole).unwrap()).unwrap();
    assert!(touched.volume_mm3() < 1e-6, "{}", touched.volume_mm3());
    let tree = Tree::over(&whole);
    let [low, high] = part.bounds();
    let outside = |point: &&[f64; 3]| point[0] < low[0] - 0.5 || point[0] > high[0] + 0.5;
    let ends: Vec<_> = printed.core.points.iter().filter(outside).collect();
    assert!(ends.len() > 16);
    for point in ends {
        let gap = nearest(&whole, &tree, *point, 5.0).unwrap().distance;
        near(gap, 0.3, 0.01);
    }
}
