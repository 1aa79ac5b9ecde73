//! `oddside charge` as a founder meets it: words, files, exit codes.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use shop::Shop;

/// A yard of iron, small enough to work by hand.
const YARD: &str = r#"
scale_step = "10 g"

[furnace]
kind = "induction"

[[metal_heap]]
name = "radiators"
goes_into = ["iron"]
mass = "9 kg"
price = "0.40 EUR/kg"
origin = "scrap"
marks = ["galvanised"]
elements = { C = "3.4 to 3.5 %", Si = "2.1 to 2.3 %", Mn = "0.7 to 0.8 %", P = "0.1 %", S = "0.05 %" }

[[metal_heap]]
name = "weights"
goes_into = ["iron"]
mass = "9 kg"
price = "0.10 EUR/kg"
origin = "scrap"
elements = { C = "3.2 to 3.3 %", Si = "1.6 to 1.8 %", Mn = "0.7 to 0.8 %", P = "0.1 %", S = "0.05 %" }
"#;

#[test]
fn a_charge_without_a_job_is_weighed_out() {
    let shop = Shop::new();
    shop.file("shop.toml", YARD);
    let args = ["charge", "--target", "grey iron", "--mass", "4 kg"];
    let said = shop.run(&args);
    said.ends_with(0)
        .says("radiators")
        .says("weights")
        .says("together")
        .says("EUR")
        .says("% sure to come out in target")
        .says("coated with zinc");
    assert_eq!(said.out, shop.run(&args).out);
}

#[test]
fn json_carries_the_same_charge() {
    let shop = Shop::new();
    shop.file("yard.toml", YARD);
    let asked = [
        "charge",
        "--shop",
        "yard.toml",
        "--target",
        "iron",
        "--mass",
        "4 kg",
    ];
    let more = ["--use-up", "1 kg of radiators", "--json"];
    let made = shop
        .run(&[&asked[..], &more[..]].concat())
        .ends_with(0)
        .json();
    assert!(made["metal_kg"].as_f64().unwrap() >= 4.0);
    let weighed = made["weigh_out"].as_array().unwrap();
    let radiators = weighed
        .iter()
        .find(|row| row["heap"] == "radiators")
        .unwrap();
    assert!(radiators["kg"].as_f64().unwrap() >= 1.0);
}

#[test]
fn what_cannot_be_made_up_is_refused_in_words() {
    let shop = Shop::new();
    shop.file("shop.toml", YARD);
    shop.run(&["charge", "--target", "iron", "--mass", "40 kg"])
        .ends_with(2)
        .talks("there is not metal enough");
    shop.run(&["charge", "--target", "A356", "--mass", "4 kg"])
        .ends_with(2)
        .talks("no heap of metal");
}

#[test]
fn what_is_asked_wrong_is_told() {
    let shop = Shop::new();
    shop.file("shop.toml", YARD);
    shop.run(&["charge", "--target", "iron"])
        .ends_with(64)
        .talks("--mass");
    shop.run(&["charge", "--target", "mystery", "--mass", "4 kg"])
        .ends_with(64)
        .talks("targets known");
    shop.run(&["charge", "job", "--mass", "4 kg"])
        .ends_with(64)
        .talks("under [charge] in job.toml");
}

#[test]
fn a_job_with_its_mass_needs_no_mesh() {
    let shop = Shop::new();
    shop.file("shop.toml", YARD).file(
        "job/job.toml",
        "name = \"Two weights\"\n[part]\nmesh = \"none.stl\"\n[metal]\nalloy = \"grey iron\"\n\
         [charge]\nmass = \"4 kg\"\n",
    );
    shop.run(&["charge", "job"])
        .ends_with(0)
        .says("Two weights: ");
}
