//! `oddside look`: what a mesh is, in words, in JSON and in exit codes.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use shop::{Shop, cube_stl};

#[test]
fn a_cube_is_taken_and_weighed() {
    let shop = Shop::new();
    shop.file("cube.stl", cube_stl(100.0));
    shop.run(&["look", "cube.stl"])
        .ends_with(0)
        .says("accepted")
        .says("100 x 100 x 100 mm (3.94 x 3.94 x 3.94 in)")
        .says("1000 cm³")
        // 2.67 g/cm³ for a litre.
        .says("2.67 kg");
}

#[test]
fn the_json_has_what_is_promised() {
    let shop = Shop::new();
    shop.file("cube.stl", cube_stl(100.0));
    let json = shop
        .run(&["look", "cube.stl", "--json"])
        .ends_with(0)
        .json();
    assert_eq!(json["verdict"], "accepted");
    assert_eq!(json["unit"], "mm");
    assert_eq!(json["bodies"], 1);
    assert_eq!(json["voids"], 0);
    assert!((json["volume_mm3"].as_f64().unwrap() - 1e6).abs() < 1e-3);
    assert!((json["area_mm2"].as_f64().unwrap() - 6e4).abs() < 1e-3);
    assert_eq!(json["extents_mm"], serde_json::json!([100.0, 100.0, 100.0]));
    assert_eq!(json["centre_mm"], serde_json::json!([50.0, 50.0, 50.0]));
    for remark in json["remarks"].as_array().unwrap() {
        for key in ["code", "level", "about", "place", "words", "advice"] {
            assert!(remark.get(key).is_some(), "{key} is not in {remark}");
        }
    }
}

#[test]
fn a_size_that_cannot_be_millimetres_is_asked_about() {
    let shop = Shop::new();
    shop.file("box.stl", cube_stl(5.51));
    let asked = shop.run(&["look", "box.stl"]);
    asked
        .ends_with(3)
        .says("ask")
        .says("or --unit): ")
        .says("in (140 mm)");
    let json = shop.run(&["look", "box.stl", "--json"]).ends_with(3).json();
    assert_eq!(json["unit"], serde_json::Value::Null);
    assert_eq!(json["volume_mm3"], serde_json::Value::Null);
    shop.run(&["look", "box.stl", "--unit", "in"])
        .ends_with(0)
        .says("140 x 140 x 140 mm");
}

#[test]
fn what_cannot_be_read_is_refused_with_the_place() {
    let shop = Shop::new();
    shop.file("torn.stl", &cube_stl(50.0)[..300])
        .file("empty.stl", "")
        .file("noise.3mf", [7u8; 400])
        .file("words.obj", "v 1 2 x\n");
    for name in ["torn.stl", "empty.stl", "noise.3mf", "words.obj"] {
        let refused = shop.run(&["look", name]);
        refused.ends_with(2).talks("error").talks(name);
        let json = shop.run(&["look", name, "--json"]).ends_with(2).json();
        assert_eq!(json["verdict"], "refused", "{name}");
    }
    shop.run(&["look", "words.obj"]).talks("line 1");
}

#[test]
fn wrong_usage_has_its_own_code() {
    let shop = Shop::new();
    shop.file("cube.stl", cube_stl(50.0));
    shop.run(&["look"]).ends_with(64);
    shop.run(&["look", "cube.stl", "--unit", "cubit"])
        .ends_with(64)
        .talks("mm, cm, m, in or um");
    shop.run(&["cast"]).ends_with(64);
    shop.run(&["--help"]).ends_with(0).says("Exit codes");
    shop.run(&["look", "not-there.stl"])
        .ends_with(2)
        .talks("not-there.stl is not there");
}
