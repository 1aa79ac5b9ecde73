//! Maps of a skin: each facet gets the figure of its face, and the file holds what was mapped.

use pattern::draft::Skin;
use pattern::draw::DrawSettings;
use pattern::draw::maps::{Kind, Maps, Sought, maps};
use pattern::draw::walls::Least;
use pattern::ply::read;
use pattern::ply_write::{Figures, write_ply};
use pattern::vector::norm;

use crate::parts::{bar, block, less, part};

const LEAST: Least = Least {
    metal_mm: 4.0,
    sand_mm: 3.0,
    corner_degrees: 30.0,
};

/// A block of 60 × 40 × 30 mm with a bore of 10 mm along x: the bore holds, its walls lack
/// draught, no wall is thin.
fn bored() -> Maps {
    let part = part(&[
        block([0.0; 3], [60.0, 40.0, 30.0]),
        less(bar([-40.0, 0.0, 15.0], [1.0, 0.0, 0.0], 10.0, 80.0)),
    ]);
    let sought = Sought {
        up: [0.0, 0.0, 1.0],
        level_mm: 30.0,
        skin: Skin::Wood,
        least: LEAST,
    };
    maps(&part, &sought, &DrawSettings::suiting(&part)).unwrap()
}

fn area_of(maps: &Maps, kind: Kind) -> f64 {
    (0..maps.mesh.triangles.len())
        .filter(|&facet| maps.kind(facet, &LEAST) == kind)
        .map(|facet| norm(maps.mesh.normal(facet)) / 2.0)
        .sum()
}

#[test]
fn what_is_wrong_covers_what_it_covers() {
    let maps = bored();
    let whole: f64 = Kind::ALL.map(|kind| area_of(&maps, kind)).iter().sum();
    assert!((whole - maps.mesh.area()).abs() < 1e-6);
    // The bore's skin, π · 10 · 60: all of it draws neither way.
    let bore = std::f64::consts::PI * 600.0;
    let held = area_of(&maps, Kind::Held);
    assert!((held / bore - 1.0).abs() < 0.1, "{held} of {bore}");
    // Four upright walls of the block, without the mouths of the bore.
    let walls = 2.0 * (60.0 + 40.0) * 30.0 - 2.0 * std::f64::consts::PI * 25.0;
    let short = area_of(&maps, Kind::ShortOfDraught);
    assert!((short / walls - 1.0).abs() < 0.01, "{short} of {walls}");
    assert_eq!(area_of(&maps, Kind::ThinMetal), 0.0);
}

/// The sides of the facets are small beside the part.
#[test]
fn facets_are_cut_small_without_moving_the_skin() {
    let maps = bored();
    assert!(maps.mesh.triangles.len() > 5_000);
    let drawn = 60.0 * 40.0 * 30.0 - std::f64::consts::PI * 25.0 * 60.0;
    assert!((pattern::made::volume_mm3(&maps.mesh) / drawn - 1.0).abs() < 2e-3);
}

#[test]
fn a_file_of_figures_is_read_back_as_the_same_skin() {
    let maps = bored();
    let figures = [Figures {
        name: "metal_mm",
        of_facet: maps.walls.metal_mm.clone(),
    }];
    let bytes = write_ply(&maps.mesh, &figures);
    let soup = read(&bytes).unwrap();
    assert_eq!(soup.triangles.len(), maps.mesh.triangles.len());
    assert_eq!(soup.points.len(), 3 * soup.triangles.len());
    let first = maps.mesh.corners(0);
    for (read, written) in soup.points.iter().zip(first) {
        assert!(norm(pattern::vector::sub(*read, written)) < 1e-4);
    }
}
