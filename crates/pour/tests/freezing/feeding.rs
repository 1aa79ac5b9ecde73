//! Which pools are cut off, and where the shrinkage shows.

use metal::alloys::named;
use pour::feeding::{Feeding, feeding};
use pour::meshing::{Meshing, cut};
use pour::pipe::{Shrinkage, shrinkage};
use pour::section::{Cut, section};
use pour::solved::{Solved, filling, solved};
use pour::vti::vti;
use pour::vti_read::{NoField, read_field};
use rigging::mould::Mould;
use rigging::piece::Piece;

use crate::as_poured;
use crate::bodies::joined;

/// A heavy and a light block with a bridge between them, and a feeder on the heavy one that reaches
/// the top of the cope.
fn bridged(bridge_mm: f64) -> Mould {
    let half = bridge_mm / 2.0;
    let top = [[65.0, 25.0, 46.0], [115.0, 75.0, 100.0]];
    let blocks = [
        (Piece::Casting(1), [[70.0, 30.0, 20.0], [110.0, 70.0, 50.0]]),
        (Piece::Casting(1), [[20.0, 35.0, 20.0], [50.0, 65.0, 50.0]]),
        (
            Piece::Casting(1),
            [
                [48.0, 50.0 - half, 35.0 - half],
                [72.0, 50.0 + half, 35.0 + half],
            ],
        ),
        (Piece::Feeder(1), top),
    ];
    joined(&blocks, [140.0, 100.0, 100.0])
}

fn followed(mould: &Mould) -> (Solved, Feeding, Shrinkage) {
    let meshing = Meshing {
        wall_mm: 10.0,
        across: 4.0,
        budget: 1e6,
        staircase: false,
        even: false,
        also_mm: None,
    };
    let poured = as_poured();
    let cells = cut(mould, &meshing, 2.5).expect("cells");
    let likely = filling(&poured, 320.0, 1.0);
    let solved = solved(cells, &poured, &likely, &mut |_| true).expect("it freezes");
    let alloy = named("aluminium").expect("an alloy");
    let feeding = feeding(&solved);
    let shrinkage = shrinkage(&solved, alloy, 36.0);
    (solved, feeding, shrinkage)
}

fn is_light(place_mm: [f64; 3]) -> bool {
    place_mm[0] < 55.0
}

#[test]
fn a_block_behind_a_thin_bridge_is_cut_off_and_one_behind_a_thick_one_is_not() {
    let (_, thin, shrunk) = followed(&bridged(8.0));
    let lost = thin.cut_off.first().expect("a pool that is cut off");
    assert!(is_light(lost.last_mm), "{lost:?}");
    assert_eq!(lost.from, Some(Piece::Feeder(1)));
    assert!(lost.at_s < lost.last_s, "{lost:?}");
    let neck = lost.neck_mm.expect("a neck");
    assert!((46.0..74.0).contains(&neck[0]), "{neck:?}");
    // Not more than the light block and its bridge can lack.
    let holds = 30.0 * 30.0 * 30.0 + 24.0 * 8.0 * 8.0;
    assert!(
        lost.to_freeze_mm3 > 0.15 * holds && lost.to_freeze_mm3 < holds,
        "{lost:?}"
    );
    let in_casting = shrunk.hollows_mm3() + shrunk.pores_mm3;
    assert!(in_casting > 0.5 * 0.052 * lost.to_freeze_mm3, "{shrunk:?}");
    let (_, thick, fed) = followed(&bridged(26.0));
    let light = thick.cut_off.iter().filter(|pool| is_light(pool.last_mm));
    let left: f64 = light.map(|pool| pool.to_freeze_mm3).sum();
    assert!(left < 0.2 * lost.to_freeze_mm3, "{:?}", thick.cut_off);
    assert!(
        fed.hollows_mm3() + fed.pores_mm3 < 0.5 * in_casting,
        "{fed:?}"
    );
}

/// Al-Si7-Mg: 5.2 % on freezing and 1.31 % for 100 K of superheat, here 36 K, of all metal; what is
/// found as pipe, hollows and pores has to come to that.
#[test]
fn the_budget_of_shrinkage_closes() {
    for bridge_mm in [8.0, 26.0] {
        let mould = bridged(bridge_mm);
        let (_, _, shrunk) = followed(&mould);
        let wanted = mould.cavity.volume.as_mm3() * (0.052 + 0.36 * 0.0131);
        let found = shrunk.pipe_mm3()
            + shrunk.hollows_mm3()
            + shrunk.pores_mm3
            + shrunk.pores_in_rigging_mm3;
        assert!((found / wanted - 1.0).abs() < 0.01, "{found} of {wanted}");
        assert!((shrunk.demand_mm3 / wanted - 1.0).abs() < 0.01);
        let feeder = shrunk
            .emptied
            .iter()
            .find(|emptied| emptied.piece == Piece::Feeder(1))
            .expect("a feeder");
        assert!(feeder.volume_mm3 > 0.5 * shrunk.pipe_mm3(), "{shrunk:?}");
        assert!(
            feeder.depth_mm > 0.0 && feeder.depth_mm < 60.0,
            "{feeder:?}"
        );
        assert!(
            shrunk
                .empty
                .iter()
                .all(|share| (0.0..=1.0001).contains(share))
        );
    }
}

/// Pores lie where metal lacks and not in a heap: nearly all of them in cells that are mostly
/// metal.
#[test]
fn pores_are_spread_over_the_cells_that_lack_metal() {
    let (solved, _, shrunk) = followed(&bridged(8.0));
    let volume = |cell: usize| f64::from(shrunk.porous[cell]) * solved.meshed.cells.metal_mm3(cell);
    let sum = |is_in: &dyn Fn(f32) -> bool| -> f64 {
        let cells = (0..shrunk.porous.len()).filter(|&cell| is_in(shrunk.porous[cell]));
        cells.map(volume).sum()
    };
    let all = sum(&|_| true);
    let found = shrunk.pores_mm3 + shrunk.pores_in_rigging_mm3;
    assert!((all - found).abs() < 1e-3 * found, "{all} {found}");
    let heaped = sum(&|share| share > 0.2);
    assert!(heaped < 0.1 * all, "{heaped} of {all}");
}

#[test]
fn the_last_place_of_a_lone_block_is_its_middle() {
    let blocks = [(Piece::Casting(1), [[30.0, 30.0, 30.0], [70.0, 70.0, 70.0]])];
    let (_, feeding, shrunk) = followed(&joined(&blocks, [100.0; 3]));
    let spot = feeding.hot_spots.first().expect("a hot spot");
    for at in spot.place_mm {
        assert!((at - 50.0).abs() < 4.0, "{spot:?}");
    }
    // Nothing feeds it: cut off from the start, and all it lacks stays in it.
    assert_eq!(feeding.cut_off[0].from, None);
    let stays = shrunk.hollows_mm3() + shrunk.pores_mm3;
    assert!((stays / shrunk.demand_mm3 - 1.0).abs() < 1e-6);
}

#[test]
fn drawing_and_fields_are_whole() {
    let mould = bridged(8.0);
    let (solved, _, shrunk) = followed(&mould);
    let cut = Cut {
        axis: 1,
        at_mm: 50.0,
    };
    let svg = section(&mould, &solved, &shrunk, cut);
    assert!(svg.starts_with("<svg ") && svg.ends_with("</svg>\n"));
    assert_eq!(svg.matches("<g ").count(), svg.matches("</g>").count());
    assert!(svg.matches("<text ").count() >= 4, "times in numbers");
    assert!(!svg.contains("NaN") && !svg.contains("inf"));
    let bytes = vti(&solved, &shrunk, None);
    let fields = read_back(&bytes);
    let all = solved.meshed.cells.stuff.len();
    let solid = &fields
        .iter()
        .find(|(name, _)| name == "solid_s")
        .expect("it")
        .1;
    assert_eq!(solid.len(), 4 * all);
    let last = solid
        .chunks_exact(4)
        .map(|four| f32::from_le_bytes([four[0], four[1], four[2], four[3]]))
        .filter(|value| value.is_finite())
        .fold(0.0, f32::max);
    assert!((f64::from(last) - solved.last_s).abs() < 1e-3);
    let field = read_field(&bytes, "solid_s").expect("a whole file");
    let cells = &solved.meshed.cells;
    assert_eq!(field.count, cells.count);
    assert!((field.size_mm - cells.size_mm).abs() < 1e-9);
    let same = |(read, was): (&f32, &f32)| read == was || read.is_nan() && was.is_nan();
    assert!(field.values.iter().zip(&solved.ends_s).all(same));
    assert_eq!(read_field(&bytes, "hardness"), Err(NoField));
    for end in [0, 100, bytes.len() / 20] {
        assert_eq!(read_field(&bytes[..end], "solid_s"), Err(NoField), "{end}");
    }
}

/// The appended blocks of a VTK ImageData file by the names of their arrays: each is led by its
/// length in 64 bits and begins at its offset after the underscore.
fn read_back(bytes: &[u8]) -> Vec<(String, Vec<u8>)> {
    let mark = b"<AppendedData encoding=\"raw\">\n_";
    let at = bytes
        .windows(mark.len())
        .position(|window| window == mark)
        .expect("appended data");
    let head = std::str::from_utf8(&bytes[..at]).expect("text");
    let data = &bytes[at + mark.len()..];
    let word = |line: &str, key: &str| {
        let from = line.find(key).expect("a key") + key.len() + 2;
        line[from..]
            .split('"')
            .next()
            .unwrap_or_default()
            .to_owned()
    };
    head.lines()
        .filter(|line| line.contains("<DataArray"))
        .map(|line| {
            let offset: usize = word(line, "offset").parse().expect("a number");
            let mut length = [0; 8];
            length.copy_from_slice(&data[offset..offset + 8]);
            let length = u64::from_le_bytes(length) as usize;
            (
                word(line, "Name"),
                data[offset + 8..offset + 8 + length].to_vec(),
            )
        })
        .collect()
}
