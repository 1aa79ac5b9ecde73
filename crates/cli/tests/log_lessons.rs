//! What the log teaches, as a founder meets it: the tenth pour gets other advice than the first.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use shop::{Shop, WEIGHTS};

#[test]
fn what_was_measured_changes_the_next_plan_once_it_is_accepted() {
    let shop = Shop::with_its_file();
    shop.file("job/job.toml", WEIGHTS);
    let plan = || shop.run(&["plan", "job", "--json"]).ends_with(0).json();
    let contraction =
        |plan: &serde_json::Value| plan["figures"]["contraction"]["likely"].as_f64().unwrap();
    let first = plan();
    let alloy = first["alloy"].as_str().unwrap();
    for measured in ["99.05 mm", "99.1 mm", "99 mm", "99.1 mm", "99.05 mm"] {
        shop.run(&["log", "pour", "job", "good=yes"]).ends_with(0);
        let measured = format!("measured={measured}");
        let size = [
            "log",
            "add",
            "size",
            "casting=last",
            "along=x",
            "pattern=100 mm",
            &measured,
        ];
        shop.run(&size).ends_with(0);
    }
    let told = shop.run(&["log", "learn"]);
    told.ends_with(0)
        .says("contraction of")
        .says("by castings 1, 2, 3, 4, 5");
    assert_eq!(
        contraction(&plan()),
        contraction(&first),
        "nothing changes before it is accepted"
    );
    shop.run(&["log", "chart"])
        .ends_with(0)
        .says("●")
        .says("contraction of");
    let name = format!("contraction:{alloy}");
    shop.run(&["log", "learn", "--accept", &name]).ends_with(0);
    let text = std::fs::read_to_string(shop.path().join("shop.toml")).unwrap();
    assert!(
        text.contains("[[own]]") && text.contains("# The shop: what you own."),
        "{text}"
    );
    let now = contraction(&plan());
    assert!(
        now < contraction(&first) && now > 0.9,
        "{now} after {}",
        contraction(&first)
    );
    shop.run(&["log", "learn", "--accept", "luck"])
        .ends_with(64)
        .talks("it teaches");
}

/// Five batches dried 1.23 times as long as planned (`shoplog`, `own_factors`, by scipy): once that
/// is accepted, the bench tells the shop's own time beside the book's.
#[test]
fn a_drying_learned_from_the_log_is_told_at_the_bench() {
    let shop = Shop::with_its_file();
    for hours in ["7.2", "7.8", "6.9", "7.5", "8.1"] {
        let drying = format!("drying={hours} h");
        let batch = ["log", "add", "batch", "mixed=2026-05-03"];
        let batch = [&batch[..], &["planned_drying=6 h", &drying]].concat();
        shop.run(&batch).ends_with(0);
    }
    let spread = [
        "sand",
        "dry",
        "tub=90 kg",
        "now=9.1 % of wet mass",
        "wanted=4.5 % of wet mass",
        "air=28 C",
        "humidity=50 %",
        "sun=500",
        "area=6 m2",
        "--json",
    ];
    let dry = || shop.run(&spread).ends_with(0).json();
    let before = dry();
    assert!(before["figures"]["drying_own"].is_null(), "{before}");
    shop.run(&["log", "learn", "--accept", "drying"])
        .ends_with(0);
    let after = dry();
    let of = |key: &str| after["figures"][key]["likely"].as_f64().unwrap();
    let times = of("drying_own") / of("drying_time");
    assert!((times - 1.23).abs() < 1e-9, "{times}");
    assert_eq!(
        before["figures"]["drying_time"], after["figures"]["drying_time"],
        "the book's time stays"
    );
}

#[test]
fn a_defect_is_diagnosed_from_words_and_from_the_log() {
    let shop = Shop::with_its_file();
    let typed = [
        "diagnose",
        "look=round-holes",
        "place=cope-face",
        "surface=smooth",
    ];
    let wet = [
        &typed[..],
        &["moisture_percent=6.5", "moisture_good_percent=4.5"],
    ]
    .concat();
    let said = shop.run(&wet);
    said.ends_with(0)
        .says("sand too wet")
        .says("to tell the first two apart")
        .says("one thing only");
    shop.run(&["diagnose", "look=blue"])
        .ends_with(64)
        .talks("docs/diagnose-cases.md");
    shop.run(&["diagnose", "metal=iron"])
        .ends_with(64)
        .talks("say what is seen");
    shop.run(&["diagnose", "look=rough"])
        .ends_with(0)
        .says("no cause can be named");
    shop.run(&["log", "power", "40 %", "10 %"])
        .ends_with(0)
        .says("36")
        .says("32");
    shop.run(&["log", "power", "40", "10 %"])
        .ends_with(64)
        .talks("no per cent");
}

#[test]
fn the_months_are_drawn() {
    let shop = Shop::with_its_file();
    for (month, good) in [("2026-04-03", "yes"), ("2026-05-03", "no")] {
        let poured = format!("poured={month}");
        shop.run(&["log", "add", "pour", &poured]).ends_with(0);
        for _ in 0..4 {
            let good = format!("good={good}");
            shop.run(&["log", "add", "casting", "pour=last", &good])
                .ends_with(0);
        }
    }
    let said = shop.run(&["log", "chart", "--svg", "rejects.svg"]);
    said.ends_with(0)
        .says("2026-04")
        .says("0 bad of 4")
        .says("4 bad of 4");
    let svg = std::fs::read_to_string(shop.path().join("rejects.svg")).unwrap();
    assert!(svg.starts_with("<svg") && svg.ends_with("</svg>\n") && svg.contains("2026-05"));
    let fuel = shop.run(&["log", "chart", "fuel", "--out", "fuel.svg"]);
    fuel.ends_with(2).talks("nothing to draw for fuel yet");
    shop.run(&["log", "chart", "luck"])
        .ends_with(64)
        .talks("there are rejects, yield, fuel");
    let compare = shop.run(&["log", "compare", "last"]);
    compare.ends_with(0).says("Pour 2 beside pour 1");
}
