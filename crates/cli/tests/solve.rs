//! `oddside plan` beside the heat in the mould: at a quick look, and with what a freezing kept.

mod shop;

use shop::Shop;

const JOB: &str = "name = \"block\"\n[part]\nmesh = \"featured_block_inches.stl\"\nunit = \"in\"\n\
                   [metal]\nalloy = \"A356\"\n";

#[test]
fn a_quick_look_puts_its_times_beside_those_of_the_laws() {
    let shop = Shop::new();
    shop.example("featured_block_inches.stl", JOB);
    let plain = shop.run(&["plan", "job", "--json"]);
    assert!(plain.ends_with(0).json()["solved"].is_null());
    let told = shop.run(&["plan", "job", "--solve", "--json"]);
    let file = told.ends_with(0).json();
    let solved = &file["solved"];
    assert_eq!(solved["quick_look"], true);
    let number = |value: &serde_json::Value| value.as_f64().expect("a number");
    let [low, likely, high] = [0, 1, 2].map(|end| number(&solved["castings_s"][end]));
    assert!(0.0 < low && low < likely && likely < high);
    let pencil = &file["figures"]["freezing time of the heaviest section"];
    let [from, to] = ["low", "high"].map(|end| number(&pencil[end]));
    // Where the two lie apart it is told, and only there.
    let codes: Vec<&str> = file["remarks"]
        .as_array()
        .expect("remarks")
        .iter()
        .filter_map(|remark| remark["code"].as_str())
        .collect();
    assert_eq!(codes.contains(&"solved_longer"), low > to);
    assert_eq!(codes.contains(&"solved_sooner"), high < from);
}

#[test]
fn what_a_freezing_kept_is_taken_up_until_the_job_changes() {
    let shop = Shop::new();
    shop.example("featured_block_inches.stl", JOB);
    shop.run(&["freeze", "job", "--cells", "20000"])
        .ends_with(0)
        .talks("findings.json");
    let fresh = shop.run(&["plan", "job"]);
    fresh.ends_with(0).says("as oddside freeze found it");
    assert!(!fresh.out.contains("another plan or mesh"));
    let workings = std::fs::read(shop.path().join("job/workings.pdf")).expect("workings");
    shop.file("job/job.toml", JOB.replace("A356", "gunmetal"));
    let stale = shop.run(&["plan", "job"]);
    stale.ends_with(0).says("another plan or mesh");
    assert!(!stale.out.contains("as oddside freeze found it"));
    let without = std::fs::read(shop.path().join("job/workings.pdf")).expect("workings");
    assert!(
        without.len() < workings.len(),
        "the section is not left off"
    );
    // Findings that are cut short are none.
    shop.file("job/freeze/findings.json", "{\"fingerprint\": \"");
    let broken = shop.run(&["plan", "job"]);
    assert!(!broken.ends_with(0).out.contains("another plan or mesh"));
}
