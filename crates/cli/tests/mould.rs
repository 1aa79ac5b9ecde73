//! The mould as solids, in the terminal and as files.

mod shop;

use shop::Shop;

const JOB: &str = "name = \"pump\"\n[part]\nmesh = \"pump_housing.stl\"\n\
                   [metal]\nalloy = \"A356\"\n";

#[test]
fn solids_are_told_and_written_once() {
    let shop = Shop::new();
    shop.example("pump_housing.stl", JOB);
    shop.run(&["mould", "job"])
        .ends_with(0)
        .says("sand of the cope")
        .says("fill the flask");
    for name in [
        "cavity.stl",
        "cope.stl",
        "drag.stl",
        "sprue.stl",
        "mould.glb",
    ] {
        assert!(shop.path().join("job/mould").join(name).is_file(), "{name}");
    }
    let glb = std::fs::read(shop.path().join("job/mould/mould.glb")).expect("a file");
    assert!(glb.starts_with(b"glTF"));
    // The other spelling is the same command, and nothing is written over unasked.
    shop.run(&["mold", "job"]).ends_with(2).talks("--force");
    shop.run(&["mold", "job", "--force"]).ends_with(0);
}

#[test]
fn maps_of_a_skin_are_written_where_asked_for() {
    let shop = Shop::new();
    shop.example("pump_housing.stl", JOB);
    shop.run(&["draw", "job", "--maps"])
        .ends_with(0)
        .says("want more draught")
        .talks("maps.ply");
    let map = std::fs::read(shop.path().join("job/draw/maps.ply")).expect("a file");
    assert!(map.starts_with(b"ply\n"));
    shop.run(&["draw", "job", "--maps"])
        .ends_with(2)
        .talks("--force");
    shop.run(&["draw", "job", "--maps", "--force"]).ends_with(0);
    shop.run(&["draw", "job", "--force"])
        .ends_with(64)
        .talks("--maps");
}

#[test]
fn a_place_in_the_job_moves_the_sprue_or_is_refused() {
    let shop = Shop::new();
    let job = |sprue: &str| format!("{JOB}[mould.place]\nsprue = \"{sprue}\"\n");
    shop.example("pump_housing.stl", &job("2000, 20"));
    shop.run(&["mould", "job"])
        .ends_with(2)
        .talks("outside of the flask");
    shop.example("pump_housing.stl", &job("somewhere"));
    shop.run(&["mould", "job"]).ends_with(2).talks("no place");
}
