//! A charge from what is typed in shop and job to what is told.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use job::charge::made_file::MadeFile;
use job::charge::told::{Told, in_a_sentence, told};
use job::charge::{Asked, Made, charge};
mod worked;

use job::file_fault::read;
use job::job::Job;
use job::job_file::JobFile;
use job::remark::Level;
use job::shop::ShopFile;
use job::words::Language;
use job::work_out::work_out;
use measure::matter::Mass;
use measure::text::System;
use worked::{block, shop as yard};

/// A yard with three heaps of iron, an addition, and a heap of aluminium that does not belong.
const YARD: &str = r#"
scale_step = "50 g"

[furnace]
kind = "induction"

[[metal_heap]]
name = "radiators"
goes_into = ["iron"]
mass = "14 kg"
price = "0.40 EUR/kg"
origin = "scrap"
marks = ["painted"]
elements = { C = "3.3 to 3.6 %", Si = "2.1 to 2.5 %", Mn = "0.5 to 0.7 %", P = "0.05 to 0.12 %", S = "0.05 to 0.1 %" }

[[metal_heap]]
name = "own returns"
goes_into = ["iron"]
mass = "2.2 kg"
price = "0.10 EUR/kg"
origin = "returns"
elements = { C = "3.25 to 3.45 %", Si = "1.9 to 2.2 %", Mn = "0.6 to 0.8 %", P = "0.08 ± 0.02 %", S = "0.06 ± 0.02 %" }

[[metal_heap]]
name = "steel offcuts"
goes_into = ["iron"]
mass = "3 kg"
price = "0.20 EUR/kg"
origin = "scrap"
elements = { C = "0.1 to 0.2 %", Si = "0.1 to 0.3 %", Mn = "0.5 to 0.8 %" }

[[metal_heap]]
name = "ferromanganese"
goes_into = ["iron"]
mass = "500 g"
price = "2.60 EUR/kg"
origin = "addition"
recovery = "85 to 95 %"
scale_step = "1 g"
elements = { Mn = "75 to 80 %", C = "6 to 7.5 %" }

[[metal_heap]]
name = "wheels"
goes_into = ["aluminium"]
mass = "9 kg"
origin = "scrap"
elements = { Si = "6.5 to 7.5 %" }
"#;

fn job(charge: &str) -> Job {
    let text = format!(
        "name = \"Step plate\"\n[part]\nmesh = \"part.obj\"\n[metal]\nalloy = \"grey iron\"\n{charge}"
    );
    worked::job(&text)
}

fn made(charge_text: &str) -> Made {
    let (job, shop) = (job(charge_text), yard(YARD));
    let asked = Asked::of_job(&job, &shop, Mass::from_kg(5.0)).unwrap();
    charge(&asked, &shop).unwrap()
}

fn says(told: &Told, code: &str) -> bool {
    told.remarks.iter().any(|remark| remark.code == code)
}

#[test]
fn what_is_told_is_what_was_made_up() {
    let made = made("[charge]\nmass = \"6 kg\"\nuse_up = [\"all of own returns\"]\n");
    let told = told(&made, System::Metric, Language::Uk);
    assert!(told.head.starts_with("Step plate: 6."), "{}", told.head);
    assert!(told.head.ends_with("to Grey iron class 30"));
    assert_eq!(
        told.weigh_out[0][1..3],
        ["own returns", "2.20 kg, all of it"]
    );
    let together = told.weigh_out.last().unwrap();
    assert_eq!(together[1], "together");
    let sum: f64 = made
        .makeup
        .weighed
        .iter()
        .map(|weighed| weighed.mass.as_kg())
        .sum();
    assert_eq!(together[2], format!("{sum:.3} kg"));
    let silicon = told.composition.iter().find(|row| row[0] == "Si").unwrap();
    assert_eq!(silicon[4], "1.9 to 2.3 %");
    assert!(told.lines[0].contains("% sure to come out in target"));
    assert!(says(&told, "charge_painted") && says(&told, "charge_unstated"));
    assert!(!told.weigh_out.iter().any(|row| row[1] == "wheels"));
}

#[test]
fn every_mass_told_can_be_weighed_on_the_scale() {
    let made = made("[charge]\nmass = \"6 kg\"\n");
    for weighed in &made.makeup.weighed {
        let heap = &made.heaps[weighed.heap];
        let step_g = heap.step.unwrap_or(Mass::from_g(50.0)).as_g();
        let steps = weighed.mass.as_g() / step_g;
        let all = weighed.mass == heap.mass;
        assert!(
            all || (steps - steps.round()).abs() < 1e-6,
            "{}",
            weighed.name
        );
    }
    assert!(made.makeup.metal >= Mass::from_kg(6.0));
}

#[test]
fn limits_of_ones_own_replace_those_of_the_target() {
    let narrow = made(
        "[charge]\nmass = \"6 kg\"\nlimits = { CE = \"4.0 to 4.1 %\", Si = \"2.0 to 2.2 %\" }\n",
    );
    let told = told(&narrow, System::Metric, Language::Uk);
    assert!(
        told.head
            .ends_with("Grey iron class 30, with limits of your own")
    );
    let row = |of: &str| told.composition.iter().find(|row| row[0] == of).unwrap();
    assert_eq!(row("Si")[4], "2 to 2.2 %");
    assert_eq!(row("CE")[4], "4 to 4.1 %");
}

#[test]
fn the_file_and_the_words_say_the_same() {
    let made = made("[charge]\nmass = \"6 kg\"\n");
    let file = MadeFile::of(&made);
    assert_eq!(file.text(), MadeFile::of(&made).text());
    let json: serde_json::Value = serde_json::from_str(&file.text()).unwrap();
    let told = told(&made, System::Metric, Language::Uk);
    let heaps = json["weigh_out"].as_array().unwrap();
    assert_eq!(heaps.len() + 1, told.weigh_out.len());
    for (heap, row) in heaps.iter().zip(&told.weigh_out) {
        assert_eq!(heap["heap"], row[1].as_str());
    }
    assert_eq!(json["target"], "Grey iron class 30");
    assert!(
        json["sources"]
            .as_array()
            .unwrap()
            .iter()
            .any(|key| key == "foundry-handbooks-iron")
    );
}

#[test]
fn scrap_is_never_charged_for_cookware() {
    let text = "[charge]\nmass = \"6 kg\"\n";
    let (mut pot, shop) = (job(text), yard(YARD));
    pot.serves = job::job_file::Serves::Food;
    let asked = Asked::of_job(&pot, &shop, Mass::from_kg(5.0)).unwrap();
    let told = told(
        &charge(&asked, &shop).unwrap(),
        System::Metric,
        Language::Uk,
    );
    let first = &told.remarks[0];
    assert_eq!((first.code, first.level), ("lead_food", Level::Stop));
}

#[test]
fn what_is_typed_wrong_is_said_where_it_stands() {
    let wrong = |text: &str| {
        let file: ShopFile = read("shop.toml", text).unwrap();
        file.meant().unwrap_err()
    };
    let heap = |more: &str| {
        format!(
            "[[metal_heap]]\nname = \"a\"\ngoes_into = [\"iron\"]\nmass = \"1 kg\"\norigin = \"scrap\"\n{more}\n"
        )
    };
    assert!(wrong(&heap("elements = { Xx = \"1 %\" }")).contains("\"Xx\" is no element"));
    assert!(wrong(&heap("elements = { Si = \"much\" }")).contains("\"much\" is no share"));
    assert!(wrong(&heap("elements = { Si = \"60 %\", C = \"60 %\" }")).contains("add up to 120 %"));
    let priced = "price = \"1.20/kg\"\nelements = { Si = \"1 %\" }";
    assert!(wrong(&heap(priced)).starts_with("metal_heap \"a\""));
    let twice = heap("elements = { Si = \"1 %\" }").repeat(2);
    assert!(wrong(&twice).contains("is there twice"));
    assert!(wrong("scale_step = \"0 g\"\n").contains("weighs nothing"));
    let refused = |charge: &str| {
        let text =
            format!("name = \"x\"\n[part]\nmesh = \"x.stl\"\n[metal]\nalloy = \"iron\"\n{charge}");
        let file: JobFile = read("job.toml", &text).unwrap();
        Job::meant(&file).unwrap_err().to_string()
    };
    assert!(refused("[charge]\ntarget = \"A356\"\n").contains("another metal than the Grey iron"));
    assert!(refused("[charge]\nuse_up = [\"returns\"]\n").contains("write \"2 kg of returns\""));
    assert!(refused("[charge]\nmass = \"0 kg\"\n").contains("is no charge"));
}

/// A plate of 200 x 120 x 20 mm.
const PLATE: [f64; 3] = [200.0, 120.0, 20.0];

#[test]
fn the_plan_holds_what_to_weigh_out() {
    let plate = block(PLATE);
    let plain = work_out(&job(""), &yard(YARD), &plate);
    assert!(plain.choice("charge from heaps").is_none());
    let plan = work_out(&job("[charge]\n"), &yard(YARD), &plate);
    let choice = plan.choice("charge from heaps").unwrap();
    let [chosen, because] = [&choice.chosen, &choice.because].map(|said| Language::Uk.say(said));
    assert!(chosen.contains(" of radiators"), "{chosen}");
    assert!(because.contains("EUR; ") && because.contains("% sure"));
    assert!(
        plan.remarks
            .iter()
            .any(|remark| remark.code == "charge_painted")
    );
    let [_, charge_kg, _] = worked::values(&plan, "charge");
    let asked = Asked::of_job(&job("[charge]\n"), &yard(YARD), Mass::from_kg(charge_kg)).unwrap();
    let loss = asked.loss.share.likely();
    let again = Asked {
        metal: Mass::from_kg(charge_kg * (1.0 - loss)),
        ..asked
    };
    let made = charge(&again, &yard(YARD)).unwrap();
    assert_eq!(in_a_sentence(&made, System::Metric), choice.chosen);
}

#[test]
fn a_plan_without_the_metal_says_what_is_missing() {
    let plate = block(PLATE);
    let plan = work_out(&job("[charge]\nmass = \"40 kg\"\n"), &yard(YARD), &plate);
    let remark = plan
        .remarks
        .iter()
        .find(|remark| remark.code == "charge_not_made")
        .unwrap();
    let words = remark.file().words;
    assert!(words.contains("there is not metal enough"), "{words}");
    assert!(plan.figure("charge").is_some());
}
