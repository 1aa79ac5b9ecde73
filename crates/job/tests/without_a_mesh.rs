//! Jobs without a mesh: solids typed into the job file, a weighed pattern, five sizes.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::folder::STARTER_SHOP;
use job::part::Part;
use job::plan::Plan;
use job::remark::Level;
use job::work_out::work_out;
use worked::{because, given as part, says as has, values as figure};

fn plan(text: &str) -> Plan {
    let part = part(text);
    assert!(
        part.unsettled().is_none(),
        "{:?}",
        part.unsettled().map(|l| &l.faults)
    );
    worked::plan(text, STARTER_SHOP, &part)
}

fn job(metal: &str, rest: &str) -> String {
    format!("name = \"part\"\n[part]\n[metal]\nalloy = \"{metal}\"\n{rest}")
}

fn solid(keys: &str) -> String {
    format!("[[solid]]\n{keys}\n")
}

/// Metal in cm³ of a job of solids.
#[track_caller]
fn metal_cm3(solids: &str) -> f64 {
    match part(&job("aluminium", solids)) {
        Part::Solids(built) => {
            assert!(built.facts.is_empty(), "{:?}", built.facts);
            built.looked.solid.volume_mm3 / 1000.0
        }
        other => unreachable!("{other:?} is not built"),
    }
}

#[track_caller]
fn within(found: f64, wanted: f64, share: f64) {
    let off = found / wanted - 1.0;
    assert!(off.abs() <= share, "{found}, wanted {wanted}: off by {off}");
}

/// Plate of 125 x 47 x 20.5 mm, two bosses of 24 x 10 mm on its back.
fn vise_jaw() -> String {
    let boss = "kind = \"cylinder\"\ndiameter = \"24 mm\"\nlength = \"10 mm\"";
    [
        solid("kind = \"box\"\nsize = [\"125 mm\", \"47 mm\", \"20.5 mm\"]"),
        solid(&format!("{boss}\nat = [\"-31 mm\", 0, \"20.5 mm\"]")),
        solid(&format!("{boss}\nat = [\"31 mm\", 0, \"20.5 mm\"]")),
    ]
    .concat()
}

#[test]
fn a_vise_jaw_of_gunmetal_weighs_what_it_should() {
    let plan = plan(&job("gunmetal", &vise_jaw()));
    let mass = figure(&plan, "casting mass");
    within(mass[1], 1.14, 0.02);
    let known = &plan.figure("casting mass").unwrap().inputs;
    assert!(known.contains(&(
        "volume known".to_owned(),
        "built from 3 solid(s)".to_owned()
    )));
}

/// A rim of 960 mm, scrollwork of 1,500 mm and three lugs, laid out straight.
#[test]
fn a_porch_bracket_of_iron_weighs_what_it_should() {
    let lug = "kind = \"cylinder\"\ndiameter = \"40 mm\"\nlength = \"16 mm\"";
    let bracket = [
        solid("kind = \"box\"\nsize = [\"960 mm\", \"25 mm\", \"14 mm\"]"),
        solid("kind = \"box\"\nsize = [\"1.5 m\", \"16 mm\", \"7 mm\"]\nat = [0, \"20.5 mm\", 0]"),
        solid(&format!("{lug}\nat = [\"-30 cm\", 0, \"14 mm\"]")),
        solid(&format!("{lug}\nat = [0, 0, \"14 mm\"]")),
        solid(&format!("{lug}\nat = [\"30 cm\", 0, \"14 mm\"]")),
    ];
    within(metal_cm3(&bracket.concat()) * 7.15 / 1000.0, 4.03, 0.03);
}

/// A base, two legs, and two horns that reach a little into the legs.
#[test]
fn a_horn_cleat_of_bronze_weighs_what_it_should() {
    let leg = "kind = \"cylinder\"\ndiameter = \"22 mm\"\nlength = \"35 mm\"";
    let horn = "kind = \"cone\"\ndiameter = \"24 mm\"\ntop = \"14 mm\"\nlength = \"115 mm\"\n\
                at = [0, 0, \"54 mm\"]";
    let cleat = [
        solid("kind = \"box\"\nsize = [\"110 mm\", \"40 mm\", \"10 mm\"]"),
        solid(&format!("{leg}\nat = [\"-30 mm\", 0, \"10 mm\"]")),
        solid(&format!("{leg}\nat = [\"30 mm\", 0, \"10 mm\"]")),
        solid(&format!("{horn}\naxis = \"x\"")),
        solid(&format!("{horn}\naxis = \"-x\"")),
    ];
    within(metal_cm3(&cleat.concat()) * 8.36 / 1000.0, 1.15, 0.02);
}

/// A ring, five spokes from the middle of the hub, a hub, and its bore: 9 solids.
fn hand_wheel() -> String {
    let mut wheel = vec![
        solid("kind = \"ring\"\ndiameter = \"260 mm\"\nthickness = \"26 mm\""),
        solid(
            "kind = \"cylinder\"\ndiameter = \"60 mm\"\nlength = \"45 mm\"\n\
             at = [0, 0, \"-22.5 mm\"]",
        ),
    ];
    for spoke in 0..5 {
        let (sin, cos) = (f64::from(spoke) * std::f64::consts::TAU / 5.0).sin_cos();
        wheel.push(solid(&format!(
            "kind = \"cylinder\"\ndiameter = \"16 mm\"\nlength = \"117 mm\"\n\
             axis = [{cos:.9}, {sin:.9}, 0.0]"
        )));
    }
    wheel.push(solid(
        "kind = \"cylinder\"\ndiameter = \"22 mm\"\nlength = \"60 mm\"\n\
         at = [0, 0, \"-30 mm\"]\ntake_away = true",
    ));
    wheel.concat()
}

#[test]
fn a_hand_wheel_of_iron_weighs_what_it_should() {
    within(metal_cm3(&hand_wheel()) * 7.15 / 1000.0, 4.11, 0.01);
    let plan = plan(&job("grey iron", &hand_wheel()));
    within(figure(&plan, "casting mass")[1], 4.11, 0.02);
    // The rim has half the radius of its bar, 6.5 mm; the hub, which freezes last, some more.
    let heaviest = figure(&plan, "modulus of the heaviest section")[1];
    assert!(6.5 < heaviest && heaviest < 8.5, "{heaviest}");
    // Each spoke holds under three per cent of the metal, the five together an eighth: a quarter of
    // their 16 mm.
    let thinnest = figure(&plan, "modulus of the thinnest section")[1];
    within(thinnest, 4.0, 0.05);
}

/// A half ball of 300 mm and a wall of 4 mm holds 550.5 cm³; with 75 cm³ of rim 625.5. The hand sum
/// takes the outside times the wall, 565 cm³, and comes to 640.
#[test]
fn a_pot_of_aluminium_holds_the_metal_it_should() {
    let pot = [
        solid("kind = \"ball\"\ndiameter = \"300 mm\""),
        solid("kind = \"ball\"\ndiameter = \"292 mm\"\ntake_away = true"),
        solid("kind = \"box\"\nsize = [\"400 mm\", \"400 mm\", \"200 mm\"]\ntake_away = true"),
        solid(
            "kind = \"tube\"\ndiameter = \"312 mm\"\nbore = \"296 mm\"\nlength = \"12.635 mm\"\n\
             at = [0, 0, \"-12.635 mm\"]",
        ),
    ];
    let metal = metal_cm3(&pot.concat());
    within(metal, 625.5, 0.002);
    within(metal, 640.0, 0.025);
}

#[test]
fn any_mix_of_units_is_the_same_part() {
    let inches = vise_jaw()
        .replace("\"125 mm\"", "\"4.92125984 in\"")
        .replace("\"24 mm\"", "\"2.4 cm\"");
    within(metal_cm3(&inches), metal_cm3(&vise_jaw()), 1e-6);
}

#[test]
fn solids_that_do_not_touch_or_do_nothing_are_told() {
    let far = vise_jaw().replace(
        "at = [\"31 mm\", 0, \"20.5 mm\"]",
        "at = [\"200 mm\", 0, 0]",
    );
    assert!(has(&plan(&job("gunmetal", &far)), "solids_apart"));
    let twice = format!("{}{}", vise_jaw(), vise_jaw());
    assert!(has(&plan(&job("gunmetal", &twice)), "solid_adds_nothing"));
}

const SIZES: &str = "[part.sizes]\nlength = \"160 mm\"\nwidth = \"110 mm\"\nheight = \"60 mm\"\n\
                     thickest = \"34 mm\"\nthinnest = \"9 mm\"\nshape = \"any\"\n";

fn weighed(of: &str) -> String {
    format!("[part.weighed]\nmass = \"250 g\"\n{of}\n{SIZES}")
}

/// Pine of 0.40 to 0.60 g/cm³: 417 to 625 cm³, in iron 3.0 to 4.5 kg.
#[test]
fn a_pine_pattern_gives_the_iron_with_its_band() {
    let plan = plan(&job("grey iron", &weighed("of = \"pine\"")));
    let [low, likely, high] = figure(&plan, "casting mass");
    within(low, 3.0, 0.025);
    within(high, 4.5, 0.025);
    assert!(low < likely && likely < high);
    let told = plan
        .remarks
        .iter()
        .find(|remark| remark.code == "volume_by_weight");
    let advice = told.unwrap().file().advice;
    assert!(advice.contains("weighing in water would narrow it"));
    assert_eq!(because(&plan, "part volume"), "weighed: 250 g of pine");
}

#[test]
fn an_own_density_and_an_alloy_are_taken_too() {
    let own = plan(&job("grey iron", &weighed("density = \"0.5 g/cm3 ± 2 %\"")));
    assert!(!has(&own, "volume_by_weight"));
    let original = weighed("of = \"grey iron\"").replace("250 g", "3.6 kg");
    let again = plan(&job("grey iron", &original));
    within(figure(&again, "casting mass")[1], 3.6, 0.02);
}

#[test]
fn weighing_in_water_narrows_the_mass_to_some_per_cent() {
    let pushed = format!("[part.displaced]\npushed_out = \"499 g\"\n{SIZES}");
    let hung = format!("[part.displaced]\nin_air = \"1.2 kg\"\nin_water = \"701 g\"\n{SIZES}");
    for way in [pushed, hung] {
        let plan = plan(&job("grey iron", &way));
        let [low, likely, high] = figure(&plan, "part volume");
        within(likely, 500.0, 0.001);
        assert!(high / low < 1.04, "{low} to {high}");
        assert!(!has(&plan, "volume_by_weight") && has(&plan, "sizes_only"));
    }
}

#[test]
fn five_sizes_alone_give_a_plan_with_the_widest_bands() {
    let guessed = plan(&job("grey iron", SIZES));
    let known = plan(&job("grey iron", &weighed("of = \"pine\"")));
    assert!(has(&guessed, "volume_guessed") && guessed.figure("charge").is_some());
    let spread = |plan: &Plan, name| {
        let [low, _, high] = figure(plan, name);
        high / low
    };
    for name in ["casting mass", "charge", "cope lift"] {
        assert!(spread(&guessed, name) >= spread(&known, name), "{name}");
    }
    assert!(spread(&guessed, "casting mass") > 5.0);
    for figure in &guessed.figures {
        let values = figure.amount.values();
        let in_order = values[0] <= values[1] && values[1] <= values[2];
        assert!(
            in_order && values.iter().all(|v| v.is_finite()),
            "{}: {values:?}",
            figure.name
        );
        assert!(
            !figure.inputs.is_empty() && !figure.sources.is_empty(),
            "{}",
            figure.name
        );
    }
}

/// The bands of five sizes hold what the drawn part has.
#[test]
fn sizes_hold_the_drawn_part() {
    let drawn = plan(&job("gunmetal", &vise_jaw()));
    let sizes = "[part.sizes]\nlength = \"125 mm\"\nwidth = \"47 mm\"\nheight = \"30.5 mm\"\n\
                 thickest = \"26 mm\"\nthinnest = \"20.5 mm\"\nshape = \"plate\"\n";
    let rough = plan(&job("gunmetal", sizes));
    for name in [
        "casting mass",
        "modulus of the heaviest section",
        "modulus of the thinnest section",
    ] {
        let (found, [low, _, high]) = (figure(&drawn, name)[1], figure(&rough, name));
        assert!(
            low <= found && found <= high,
            "{name}: {found} in {low} to {high}"
        );
    }
}

#[test]
fn the_drawing_shows_the_box_of_the_sizes() {
    let drawing = plan(&job("grey iron", SIZES)).drawing;
    assert_eq!((drawing.outline.len(), drawing.section.len()), (1, 1));
    let span = |axis: usize| {
        let along = drawing.outline[0].iter().map(|point| point[axis]);
        let ends = along.fold((f64::MAX, f64::MIN), |(low, high), x| {
            (low.min(x), high.max(x))
        });
        (ends.1 - ends.0).round()
    };
    let mut sides = [span(0), span(1)];
    sides.sort_by(f64::total_cmp);
    assert_eq!(sides, [110.0, 160.0]);
}

#[test]
fn a_pour_no_higher_than_the_casting_is_stopped() {
    let low = format!("{SIZES}[mould]\njoint = \"5 mm\"\npour_height = \"40 mm\"\n");
    let plan = plan(&job("grey iron", &low));
    let told = plan.remarks.iter().find(|remark| remark.code == "no_head");
    assert_eq!(told.unwrap().level, Level::Stop);
}

/// What `open` says of a job file, with its line and column.
fn refused(name: &str, text: &str) -> String {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(folder.join("job.toml"), text).unwrap();
    job::folder::open(&folder).unwrap_err().to_string()
}

#[track_caller]
fn says(name: &str, text: &str, place: &str, words: &str) {
    let said = refused(name, text);
    assert!(said.contains(place) && said.contains(words), "{said}");
}

#[test]
fn exactly_one_way_of_giving_the_part() {
    says(
        "none",
        &job("brass", ""),
        "line 2, column 1",
        "does not say what is to be cast",
    );
    let both = job("brass", &vise_jaw()).replace("[part]", "[part]\nmesh = \"part.stl\"");
    says(
        "both",
        &both,
        "line 6, column 1",
        "given twice, by part.mesh and by [[solid]]",
    );
    let sized = job("brass", &format!("{}{SIZES}", vise_jaw()));
    says(
        "sized",
        &sized,
        "line 1",
        "given twice, by [[solid]] and by [part.sizes]",
    );
    let alone = job("brass", "[part.weighed]\nmass = \"2 lb\"\nof = \"pine\"\n");
    says(
        "unsized",
        &alone,
        "line 5, column 1",
        "needs [part.sizes] beside it",
    );
}

#[test]
fn what_cannot_be_says_where_and_why() {
    let jaw = job("brass", &vise_jaw());
    says(
        "below",
        &jaw.replacen("\"47 mm\"", "\"-47 mm\"", 1),
        "line 7, column",
        "of zero or more",
    );
    says(
        "nought",
        &jaw.replacen("\"10 mm\"", "\"0 mm\"", 1),
        "line 8, column 1",
        "its length has",
    );
    let lacking = jaw.replacen("\nlength = \"10 mm\"", "", 1);
    says(
        "lacking",
        &lacking,
        "line 8, column 1",
        "a cylinder needs length",
    );
    let odd = jaw.replacen("length = \"10 mm\"", "bore = \"10 mm\"", 1);
    says(
        "odd",
        &odd,
        "line 8, column 1",
        "bore does not go with a cylinder",
    );
    let away = jaw.replacen("kind = \"box\"", "take_away = true\nkind = \"box\"", 1);
    says("away", &away, "line 5, column 1", "before anything stands");
    let thick = job("brass", &SIZES.replace("\"34 mm\"", "\"61 mm\""));
    says(
        "thick",
        &thick,
        "line 5, column 1",
        "at most its smallest side",
    );
    let heavy = job("brass", &weighed("of = \"pine\"").replace("250 g", "25 kg"));
    says(
        "heavy",
        &heavy,
        "line 5, column 1",
        "the box of the sizes holds",
    );
    let stuff = job("brass", &weighed("of = \"cheese\""));
    says(
        "stuff",
        &stuff,
        "line 5, column 1",
        "\"cheese\" is not a material",
    );
    let water = format!("[part.displaced]\nin_air = \"1 kg\"\nin_water = \"2 kg\"\n{SIZES}");
    says(
        "water",
        &job("brass", &water),
        "line 5, column 1",
        "in_water has to be less",
    );
}

#[test]
fn the_examples_without_a_mesh_give_a_plan() {
    let examples = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    for (name, least_kg, most_kg) in [("bell-crank", 0.2, 0.4), ("boot-scraper", 2.5, 4.5)] {
        let opened = job::folder::open(&examples.join(name)).unwrap();
        assert!(opened.part.unsettled().is_none(), "{name}");
        let plan = work_out(&opened.job, &opened.shop, &opened.part);
        let mass = figure(&plan, "casting mass")[1];
        assert!(least_kg < mass && mass < most_kg, "{name}: {mass}");
        let stops: Vec<_> = plan
            .remarks
            .iter()
            .filter(|r| r.level == Level::Stop)
            .collect();
        assert!(stops.is_empty(), "{name}: {stops:?}");
    }
}

#[test]
fn the_same_solids_give_the_same_file() {
    let text = || job::plan_file::PlanFile::of(&plan(&job("grey iron", &hand_wheel()))).text();
    assert_eq!(text(), text());
}
