//! Laws by name in the terminal, and what stands behind the figures of a plan.

mod shop;

use shop::Shop;

#[test]
fn without_a_name_every_law_is_listed() {
    let said = Shop::new().run(&["reckon"]);
    said.ends_with(0);
    for (topic, reckoner) in reckon::all() {
        said.says(topic.title()).says(reckoner.name);
    }
}

#[test]
fn a_name_alone_tells_what_it_asks_for() {
    Shop::new()
        .run(&["reckon", "choke"])
        .ends_with(0)
        .says("A = m / (ρ t C √(2 g H))")
        .says("poured")
        .says("like: oddside reckon choke");
}

#[test]
fn a_law_is_worked_out_from_mixed_units_and_ranges() {
    let said = Shop::new().run(&[
        "reckon",
        "choke",
        "poured=9 lb 4 oz",
        "time=3.4 to 4.6 s",
        "metal=gunmetal",
        "head=4 in",
    ]);
    said.ends_with(0)
        .says("area")
        .says("(9.25 lb)")
        .says("taken")
        .says("narrower")
        .says("source");
}

#[test]
fn json_holds_three_figures_and_their_unit() {
    let said = Shop::new().run(&["reckon", "fall-speed", "fall=20 cm", "--json"]);
    said.ends_with(0);
    let object: serde_json::Value = serde_json::from_str(&said.out).expect("JSON");
    let speed = &object["answers"][0];
    assert_eq!(speed["unit"], "m/s");
    assert!((speed["likely"].as_f64().expect("a number") - 1.981).abs() < 0.001);
}

#[test]
fn what_cannot_be_is_refused_with_the_reason() {
    let shop = Shop::new();
    shop.run(&["reckon", "chok"])
        .ends_with(64)
        .talks("did you mean choke?");
    shop.run(&["reckon", "fall-speed", "height=3 m"])
        .ends_with(64)
        .talks("it asks for fall");
    shop.run(&["reckon", "fall-speed", "fall=-3 m"])
        .ends_with(64)
        .talks("of zero or more");
    shop.run(&["reckon", "fall-speed", "3 m"])
        .ends_with(64)
        .talks("write it like");
    let refused = [
        "reckon",
        "effective-head",
        "pour_above_gate=20 mm",
        "above_gate=30 mm",
        "casting=60 mm",
    ];
    shop.run(&refused).ends_with(2).talks("never fills");
}

#[test]
fn own_scoops_are_weights() {
    let shop = Shop::new();
    shop.file(
        "shop.toml",
        "[[scoop]]\nname = \"red scoop\"\nof = \"sand\"\nholds = \"310 g\"\n",
    );
    shop.run(&["reckon", "sand-with-spill", "rammed=2 red scoops"])
        .ends_with(0)
        .says("713 g");
}

#[test]
fn american_words_for_an_american_shop() {
    let shop = Shop::new();
    shop.file("shop.toml", "words = \"us\"\n");
    let said = shop.run(&["reckon"]);
    said.ends_with(0).says("riser");
    assert!(!said.out.contains("feeder must") && !said.out.contains("mould"));
}

#[test]
fn a_figure_of_a_plan_is_explained() {
    let shop = Shop::new();
    shop.example(
        "pump_housing.stl",
        "name = \"pump\"\n[part]\nmesh = \"pump_housing.stl\"\n[metal]\nalloy = \"A356\"\n",
    );
    shop.run(&["why", "--job", "job"])
        .ends_with(0)
        .says("cope lift");
    shop.run(&["why", "cope lift", "--job", "job"])
        .ends_with(0)
        .says("F = ρ g (A H − V_above)")
        .says("source");
    shop.run(&["why", "moon lift", "--job", "job"])
        .ends_with(64)
        .talks("or cope lift?");
}

#[test]
fn man_page_and_completions() {
    let shop = Shop::new();
    shop.run(&["man"])
        .ends_with(0)
        .says(".TH oddside")
        .says("oddside-reckon");
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        shop.run(&["completions", shell])
            .ends_with(0)
            .says("reckon");
    }
}
