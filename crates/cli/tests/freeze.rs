//! `oddside freeze`: in words, as one object, as files, and where it is refused.

mod shop;

use shop::Shop;

const JOB: &str = "name = \"block\"\n[part]\nmesh = \"featured_block_inches.stl\"\nunit = \"in\"\n\
                   [metal]\nalloy = \"A356\"\n";

#[test]
fn a_freezing_is_told_drawn_and_written_once() {
    let shop = Shop::new();
    shop.example("featured_block_inches.stl", JOB);
    shop.run(&[
        "freeze",
        "job",
        "--cells",
        "20000",
        "--time-above",
        "660 °C",
    ])
    .ends_with(0)
    .says("yield: ")
    .says("above 660 °C: the castings for")
    .says("the mould is full")
    .says("fills last at")
    .says("casting 1")
    .says("all solid")
    .says("by the law of moduli")
    .says("shrinkage of all metal")
    .says("allow more cells with --cells")
    .talks("freeze-section.svg");
    let folder = shop.path().join("job/freeze");
    let svg = std::fs::read_to_string(folder.join("freeze-section.svg")).expect("a drawing");
    assert!(svg.starts_with("<svg ") && svg.trim_end().ends_with("</svg>"));
    let fields = std::fs::read(folder.join("freeze.vti")).expect("fields");
    assert!(fields.starts_with(b"<?xml"));
    let head = String::from_utf8_lossy(&fields[..3000.min(fields.len())]);
    assert!(head.contains("arrives_s") && head.contains("arrives_c"));
    shop.run(&["freeze", "job", "--cells", "20000"])
        .ends_with(2)
        .talks("--force");
}

#[test]
fn the_object_holds_a_band_a_budget_that_closes_and_writes_nothing() {
    let shop = Shop::new();
    shop.example("featured_block_inches.stl", JOB);
    let told = shop.run(&[
        "freeze",
        "job",
        "--json",
        "--cells",
        "60000",
        "--time-above",
        "500 °C",
    ]);
    let file = told.ends_with(0).json();
    let number = |value: &serde_json::Value| value.as_f64().expect("a number");
    let [low, likely, high] = ["low", "likely", "high"].map(|end| number(&file["solid_s"][end]));
    assert!(0.0 < low && low < likely && likely < high);
    assert!(number(&file["mass_off"]).abs() < 0.005);
    // Solid at 555 °C before it is below 500 °C, and all of it later than the castings.
    let above = ["castings_s", "all_s"].map(|of| number(&file["above"][of]));
    assert!(number(&file["solid_s"]["low"]) < above[1] && above[0] <= above[1]);
    let hottest = number(&file["hottest_sand_c"]);
    assert!((300.0..720.0).contains(&hottest), "{hottest}");
    let parts = [
        "pipe_mm3",
        "hollows_mm3",
        "pores_mm3",
        "pores_in_rigging_mm3",
    ];
    let sum: f64 = parts
        .iter()
        .map(|part| number(&file["shrinkage"][*part]))
        .sum();
    let demand = number(&file["shrinkage"]["demand_mm3"]);
    assert!((sum / demand - 1.0).abs() < 0.01, "{sum} of {demand}");
    // The pour is full before anything is solid, within the seconds of the handbooks.
    let full_s = number(&file["filling"]["full_s"]["likely"]);
    assert!((1.0..20.0).contains(&full_s), "{full_s}");
    assert!(full_s < likely);
    assert!(number(&file["filling"]["gates"][0]["fastest_m_s"]) > 0.0);
    assert!(!shop.path().join("job/freeze").exists());
}

#[test]
fn absurd_cells_are_refused_before_anything_runs() {
    let shop = Shop::new();
    shop.example("featured_block_inches.stl", JOB);
    shop.run(&["freeze", "job", "--cells", "1e12"])
        .ends_with(2)
        .talks("memory");
    shop.run(&["freeze", "job", "--cells", "3"])
        .ends_with(2)
        .talks("give a number from");
}

#[test]
fn the_smallest_feeder_is_told_with_its_time_and_writes_nothing() {
    let shop = Shop::new();
    let job = "name = \"cube\"\n[part]\n[metal]\nalloy = \"A356\"\n[[solid]]\nkind = \"box\"\n\
               size = [\"50 mm\", \"50 mm\", \"50 mm\"]\n";
    shop.file("job/job.toml", job);
    let told = shop.run(&["freeze", "job", "--feeder", "--json"]);
    told.ends_with(0).talks("looks of about");
    let file = told.json();
    let without = file["without_mm3"].as_f64().expect("a number");
    let least = file["least_mm3"].as_f64().expect("a number");
    assert!(0.0 <= least && least <= without, "{least} {without}");
    assert!(
        file["tried"]
            .as_array()
            .is_some_and(|tried| tried.len() > 2)
    );
    assert!(!shop.path().join("job/freeze").exists());
}

#[test]
fn a_chill_is_told_with_what_it_changes_and_refused_on_a_feeder() {
    let shop = Shop::new();
    let job = |chill: &str| {
        format!(
            "name = \"bar\"\n[part]\n[metal]\nalloy = \"A356\"\n[mould.place]\nfeeders = []\n\
             [[solid]]\nkind = \"box\"\nsize = [\"80 mm\", \"40 mm\", \"30 mm\"]\n{chill}"
        )
    };
    let places = |shop: &Shop| {
        let file = shop.run(&["freeze", "job", "--json", "--cells", "20000"]);
        file.ends_with(0).json()
    };
    shop.file("job/job.toml", job(""));
    let file = places(&shop);
    let pieces = file["pieces"].as_array().expect("pieces");
    let casting = pieces.iter().find(|piece| piece["piece"] == "casting-1");
    let last = &casting.expect("a casting")["last_mm"];
    let [x, y] = [0, 1].map(|axis| last[axis].as_f64().expect("a place"));
    let chill = |of: &str, z: f64| {
        format!(
            "[[chill]]\nof = \"{of}\"\nsize = [\"40 mm\", \"30 mm\", \"20 mm\"]\n\
             at = [\"{x} mm\", \"{y} mm\", \"{z} mm\"]\nlies = \"below\"\n"
        )
    };
    // The bar hangs in the drag.
    shop.file("job/job.toml", job(&chill("graphite", -30.0)));
    let chilled = places(&shop);
    let told = &chilled["chills"][0];
    let times = |key: &str| [0, 1].map(|at| told[key][at].as_f64().expect("a time"));
    let [before, after] = times("behind_s");
    assert!(after < 0.9 * before, "{after} {before}");
    shop.file("job/job.toml", job(&chill("iron", -70.0)));
    shop.run(&["freeze", "job", "--cells", "20000"])
        .ends_with(2)
        .talks("no casting has its skin downward within");
    shop.file("job/job.toml", job(&chill("cheese", -30.0)));
    shop.run(&["freeze", "job"])
        .ends_with(2)
        .talks("write one of: iron, steel, copper, graphite");
}

/// Ctrl-C keeps the run and nothing that reads as whole; the same command goes on from there, and
/// what was kept is gone then.
#[cfg(unix)]
#[test]
fn a_stopped_freezing_is_kept_and_goes_on() {
    use std::process::{Command, Stdio};
    use std::time::Duration;

    let shop = Shop::new();
    shop.example("featured_block_inches.stl", JOB);
    let args = ["freeze", "job", "--cells", "500000"];
    let folder = shop.path().join("job/freeze");
    let mut is_kept = false;
    for wait_s in [2, 4, 8, 16, 32] {
        let child = Command::new(env!("CARGO_BIN_EXE_oddside"))
            .args(args)
            .current_dir(shop.path())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("it starts");
        std::thread::sleep(Duration::from_secs(wait_s));
        let asked = Command::new("kill")
            .args(["-INT", &child.id().to_string()])
            .status();
        asked.expect("a signal");
        let ended = child.wait_with_output().expect("it ends");
        // On a slow machine it had not begun yet, on a quick one it was through.
        is_kept = folder.join("run-1.kept").exists();
        if is_kept {
            assert_eq!(ended.status.code(), Some(130));
            assert!(!folder.join("findings.json").exists());
            break;
        }
    }
    assert!(is_kept, "stopped neither early nor late was anything kept");
    let went_on = shop.run(&args);
    went_on
        .ends_with(0)
        .says("all solid")
        .talks("going on from where the earlier run was kept");
    let left = std::fs::read_dir(&folder).expect("the folder");
    let left = left.map(|entry| entry.expect("a file").file_name());
    assert!(
        left.into_iter()
            .all(|name| !name.to_string_lossy().ends_with(".kept"))
    );
}

/// Half of a run that was cut off, or of something else, is passed over; many cells tell what they
/// take before they start.
#[test]
fn what_is_no_kept_run_is_passed_over() {
    let shop = Shop::new();
    shop.example("featured_block_inches.stl", JOB);
    shop.file(
        "job/freeze/run-1.kept",
        b"oddside heat 01\nand then nothing",
    );
    shop.run(&["freeze", "job", "--cells", "20000", "--halves"])
        .ends_with(0)
        .says("the sides of x")
        .says("both are followed")
        .says("all solid");
    assert!(!shop.path().join("job/freeze/run-1.kept").exists());
}
