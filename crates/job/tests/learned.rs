//! Factors that the shop's log has taught, in whole plans.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::contact_worth::contact_worth_mm;
use job::file_fault::read;
use job::plan::Plan;
use job::plan_file::PlanFile;
use job::shop::ShopFile;
use worked::{block, values};

const SHOP: &str = "[heap]\nmass = \"90 kg\"\nbond = \"bentonite\"\n[furnace]\n\
                    kind = \"fuel-crucible\"\nfuel = \"propane\"\n";
const LEARNED: &str = "[learned.freezing]\nfactor = 1.2\nlow = 1.1\nhigh = 1.3\n\
                       rests_on = \"pours 1, 2, 3\"\n\
                       [learned.filling]\nfactor = 0.9\nlow = 0.85\nhigh = 0.95\n\
                       [learned.efficiency]\nfactor = 0.8\nlow = 0.7\nhigh = 0.9\n";

/// A slab of 120 by 80 by 24 mm.
fn plan(shop: &str) -> Plan {
    let job = "name = \"Slab\"\n[part]\nmesh = \"slab.obj\"\n[metal]\nalloy = \"A356\"";
    worked::plan(job, shop, &block([120.0, 80.0, 24.0]))
}

/// By hand: a factor on the time of freezing stands on it, the choke widens as the speed falls,
/// fuel rises as the efficiency falls; and each stands beside the figure, to be taken off again.
#[test]
fn a_plan_goes_by_what_the_log_has_taught() {
    let (book, own) = (plan(SHOP), plan(&format!("{SHOP}{LEARNED}")));
    let times = |name: &str| values(&own, name)[1] / values(&book, name)[1];
    let close = |found: f64, wanted: f64| assert!((found / wanted - 1.0).abs() < 0.03, "{found}");
    close(times("freezing time of the heaviest section"), 1.2);
    // A wider choke takes more metal, and so more fuel.
    let by_mass = times("choke area") * times("fill time") / times("poured mass");
    close(by_mass, 1.0 / 0.9);
    close(times("fuel") / times("charge"), 1.0 / 0.8);
    // Opening goes by the slowest end of the sand: 1080/√1.3 = 947 here, 900 by the books.
    assert!(times("may be opened") <= 1.0);
    for (name, factor) in [
        ("freezing time of the heaviest section", "1.2"),
        ("fill time", "0.9"),
        ("fuel", "0.8"),
    ] {
        let stands = |plan: &Plan| {
            let file = serde_json::to_value(PlanFile::of(plan)).unwrap();
            file["figures"][name]["beside"]["own factor"]
                .as_str()
                .map(str::to_owned)
        };
        assert_eq!(stands(&own).as_deref(), Some(factor), "{name}");
        assert_eq!(stands(&book), None, "{name}");
    }
    let band = |plan: &Plan| {
        let [low, likely, high] = values(plan, "freezing time of the heaviest section");
        (high - low) / likely
    };
    assert!(
        band(&own) < band(&book),
        "one's own sand is surer than any sand"
    );
}

#[test]
fn factors_that_cannot_be_are_refused() {
    for wrong in [
        "factor = 1.2\nlow = 1.3\nhigh = 1.4",
        "factor = 9.0\nlow = 8.0\nhigh = 10.0",
    ] {
        let text = format!("[learned.drying]\n{wrong}\n");
        let file: ShopFile = read("shop.toml", &text).unwrap();
        let said = file.meant().unwrap_err();
        assert!(said.contains("learned.drying"), "{said}");
    }
}

/// By hand for A356 in sand of 1080 W√s/m²K: the better the contact the less it is worth, in
/// proportion; some 2 mm at 320 W/m²K (1.128² · 1080² · (555 − 20) / (320 · 2380 · 4.5e5)).
#[test]
fn a_contact_is_worth_some_millimetres_of_modulus() {
    let worth = contact_worth_mm("A356").unwrap();
    assert!((1.5..3.0).contains(&worth.likely()), "{}", worth.likely());
    assert!((worth.high() / worth.low() - 10.0).abs() < 1e-6);
    assert!(contact_worth_mm("unobtainium").is_none());
}
