//! `oddside conduct`: a bare case, in words, in JSON and in exit codes.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use shop::Shop;

const BAR: &str = r#"
title = "a bar, one end held cold"
[box]
x = [{ to_mm = 100, cells = 20 }]
y = [{ to_mm = 10, cells = 1 }]
z = [{ to_mm = 10, cells = 1 }]
[materials.bar]
plain = { j_m3k = 3e6, w_mk = 100 }
[[fill]]
with = "bar"
start_c = 100
[faces]
x_low = { held_c = 0 }
x_high = { held_c = 100 }
[run]
until_s = 2000
[[probe]]
name = "middle"
at_mm = [50, 5, 5]
[[expect]]
probe = "middle"
is = 50
within = 0.1
"#;

#[test]
fn a_case_is_run_and_told() {
    let shop = Shop::new();
    shop.file("bar.toml", BAR);
    let told = shop.run(&["conduct", "bar.toml"]);
    told.ends_with(0)
        .says("a bar, one end held cold")
        .says("holds");
    let json = shop
        .run(&["conduct", "bar.toml", "--json"])
        .ends_with(0)
        .json();
    assert_eq!(json["cells"], 20);
    assert_eq!(json["last_freeze_s"], serde_json::Value::Null);
    assert!(json["heat"]["drift"].as_f64().unwrap() < 1e-5);
    assert_eq!(json["expected"][0]["holds"], true);
}

#[test]
fn what_does_not_hold_is_told_with_an_exit_code() {
    let shop = Shop::new();
    shop.file("bar.toml", BAR.replace("is = 50", "is = 51"));
    shop.run(&["conduct", "bar.toml"])
        .ends_with(2)
        .says("DOES NOT HOLD");
}

#[test]
fn a_slip_is_told_with_its_place() {
    let shop = Shop::new();
    shop.file("bar.toml", BAR.replace("with = \"bar\"", "with = \"rod\""));
    shop.run(&["conduct", "bar.toml"])
        .ends_with(2)
        .talks("there is no \"rod\" in this file");
    shop.run(&["conduct", "none.toml"])
        .ends_with(1)
        .talks("none.toml");
}

/// A run that somebody stopped goes on to the answer of one that nobody stopped.
#[test]
fn a_kept_run_goes_on() {
    let shop = Shop::new();
    shop.file("bar.toml", BAR);
    let bare = conduct::reading::read(BAR).unwrap();
    let mut bytes = Vec::new();
    let stopped = conduct::answer::run_on(None, &bare, None, &mut |progress, standing| {
        if progress.steps == 20 {
            standing.keep().write_to(&mut bytes).unwrap();
        }
        progress.steps < 20
    });
    assert!(stopped.is_err());
    let kept = shop.path().join("bar.kept");
    let whole = shop.run(&["conduct", "bar.toml", "--json"]).json();
    shop.file("bar.kept", &bytes);
    let on = shop.run(&["conduct", "bar.toml", "--keep", "bar.kept", "--json"]);
    let on = on.ends_with(0).json();
    assert_eq!(on["moments"], whole["moments"]);
    assert_eq!(on["steps"], whole["steps"]);
    assert!(!kept.exists(), "it is through");
}

#[test]
fn a_kept_run_that_is_of_no_use_is_left_alone() {
    let shop = Shop::new();
    shop.file("bar.toml", BAR).file("bar.kept", "my own notes");
    shop.run(&["conduct", "bar.toml", "--keep", "bar.kept"])
        .ends_with(2)
        .talks("take it away to begin anew");
    let notes = std::fs::read(shop.path().join("bar.kept")).unwrap();
    assert_eq!(notes, b"my own notes");
}
