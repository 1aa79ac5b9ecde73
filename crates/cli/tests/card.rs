//! The pour card: not before everything is dry, and not for a job that is not to be poured.

mod shop;

use shop::Shop;

const JOB: &str = "name = \"pump\"\n[part]\nmesh = \"pump_housing.stl\"\n\
                   [metal]\nalloy = \"A356\"\n[pour]\ncrew = [\"Ana pours\"]\nstop_word = \"HALT\"\n";

const ALL: &str = "floor,ladle,tongs,skimmer,ingot-moulds,crucible,charge,flux,mould,cores";

#[test]
fn untouched_points_give_no_card() {
    let shop = Shop::new();
    shop.example("pump_housing.stl", JOB);
    shop.run(&["card", "job"])
        .ends_with(2)
        .talks("not ticked as dry");
    let nine = ALL.replace(",flux", "");
    shop.run(&["card", "job", "--dry", &nine])
        .ends_with(2)
        .talks("flux");
    shop.run(&["card", "job", "--dry", "all"])
        .ends_with(2)
        .talks("none of the ten");
    assert!(!shop.path().join("job/pour-card.pdf").exists());
}

#[test]
fn ten_ticks_give_one_on_either_paper() {
    let shop = Shop::new();
    shop.example("pump_housing.stl", JOB);
    for more in [&[][..], &["--letter"]] {
        let mut args = vec!["card", "job", "job", "--dry", ALL, "--out", "card.pdf"];
        args.extend(more);
        shop.run(&args).ends_with(0).says("1  pump");
        let card = std::fs::read(shop.path().join("card.pdf")).expect("a card");
        assert!(card.starts_with(b"%PDF-"));
    }
}

#[test]
fn a_job_with_a_stop_gets_none() {
    let shop = Shop::new();
    let job = JOB.replace("pump_housing", "jaw_with_inner_void");
    shop.example("jaw_with_inner_void.stl", &job);
    shop.run(&["card", "job", "--dry", ALL])
        .ends_with(2)
        .talks("not to be poured");
}
