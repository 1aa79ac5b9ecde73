//! Maps of parts whose thickness, modulus and lean are known beforehand.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::draw_maps::judged;
use job::map_scale::MapScale;
use job::part_maps::{PartMap, PartMapKind, part_map};

/// The map of a solid of the job file.
fn map(solids: &str, kind: PartMapKind) -> PartMap {
    let typed =
        format!("name = \"Known\"\n[part]\nup = \"+z\"\n[metal]\nalloy = \"A356\"\n{solids}");
    let (job, part) = (worked::job(&typed), worked::given(&typed));
    let mesh = &part.looked().unwrap().mesh;
    part_map(&job, mesh, &judged(&job, mesh).unwrap(), kind)
}

const PLATE: &str = "[[solid]]\nkind = \"box\"\nsize = [\"120 mm\", \"100 mm\", \"10 mm\"]\n";
const CUBE: &str = "[[solid]]\nkind = \"box\"\nsize = [\"60 mm\", \"60 mm\", \"60 mm\"]\n";

/// A plate is as thick as it is drawn, wherever it lies far from its rim.
#[test]
fn the_wall_of_a_plate_is_its_thickness() {
    let map = map(PLATE, PartMapKind::Wall);
    assert_eq!(map.corners.len(), map.mesh.triangles.len());
    let mut inner = 0;
    for (facet, values) in map.corners.iter().enumerate() {
        for (corner, value) in map.mesh.corners(facet).iter().zip(values) {
            let is_inner =
                corner[0] > 20.0 && corner[0] < 100.0 && corner[1] > 20.0 && corner[1] < 80.0;
            if is_inner {
                inner += 1;
                // No speck on a line of the map that says the same.
                assert!((value - 10.0).abs() < 1e-6, "{value} at {corner:?}");
            }
        }
    }
    assert!(inner > 100);
    assert!((map.scale.high - 10.0).abs() < 0.01);
    let all = map.corners.as_flattened();
    assert!(all.iter().filter(|value| value.is_nan()).count() < all.len() / 20);
}

/// A plate of infinite extent has half its thickness, a cube a sixth of its side (V/A).
#[test]
fn the_heaviest_place_has_the_modulus_of_its_body() {
    let plate = map(PLATE, PartMapKind::Modulus);
    assert!(
        (plate.scale.high / 5.0 - 1.0).abs() < 0.06,
        "{:?}",
        plate.scale
    );
    let cube = map(CUBE, PartMapKind::Modulus);
    // The very middle of a cube feels less of its surface than the cube as a whole.
    assert!(
        cube.scale.high > 9.7 && cube.scale.high < 12.5,
        "{:?}",
        cube.scale
    );
    let middle = cube.marks[0].at_mm;
    assert!(
        middle.iter().all(|along| (along - 30.0).abs() < 6.0),
        "{middle:?}"
    );
    let field = cube.field.unwrap();
    assert_eq!(field.values.len(), field.count.iter().product::<usize>());
    let on_skin = cube.corners.as_flattened();
    assert!(on_skin.iter().filter(|value| value.is_nan()).count() < on_skin.len() / 50);
}

/// Upright walls lack draught, level ones have none to lack.
#[test]
fn upright_walls_lack_draught() {
    let map = map(CUBE, PartMapKind::Draught);
    for (facet, values) in map.corners.iter().enumerate() {
        let is_wall = map.mesh.normal(facet)[2].abs() < 1e-9;
        assert_eq!(is_wall, values[0].is_finite(), "facet {facet}");
        assert!(!is_wall || values[0] > 0.3, "{values:?}");
    }
    assert_eq!(map.tells.id(), "map-draught-tells");
    assert!(!map.marks.is_empty());
}

/// A bore across the draw holds the sand in its ends' way; along the draw it holds none.
#[test]
fn a_bore_across_the_draw_is_held() {
    let bore = |axis: &str, at: &str| {
        format!(
            "[[solid]]\nkind = \"box\"\nsize = [\"60 mm\", \"40 mm\", \"40 mm\"]\n\
             [[solid]]\nkind = \"cylinder\"\ndiameter = \"20 mm\"\nlength = \"80 mm\"\n\
             at = {at}\naxis = \"{axis}\"\ntake_away = true\n"
        )
    };
    let across = map(
        &bore("x", "[\"-40 mm\", 0, \"20 mm\"]"),
        PartMapKind::Undercut,
    );
    assert_eq!(across.tells.id(), "map-undercut-tells");
    assert!(across.corners.iter().any(|values| values[0] > 90.0));
    let along = map(&bore("z", "[0, 0, \"-20 mm\"]"), PartMapKind::Undercut);
    assert_eq!(along.tells.id(), "map-undercut-none");
    assert!(along.corners.iter().all(|values| values[0] < 1.0));
}

#[test]
fn lines_stand_at_round_values_and_are_few() {
    let scale = MapScale::from_nought(18.3, "mm");
    assert_eq!(scale.lines, [2.5, 5.0, 7.5, 10.0, 12.5, 15.0, 17.5]);
    for high in [0.0, 1e-3, 0.7, 1.0, 9.99, 240.0, 1e6] {
        let lines = MapScale::from_nought(high, "mm").lines;
        assert!(
            lines.len() <= 8 && lines.iter().all(|line| *line < high.max(1e-12)),
            "{high}"
        );
    }
}
