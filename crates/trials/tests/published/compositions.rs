//! Mixtures together with settings, and mixtures of many components.

use trials::model::{Bend, Blending, Model, added, crossed, mixture, surface};

use crate::elsewhere::fit;
use crate::printed::{assert_printed, numbers, rows};

/// Three fibres and a binder, the pressing pressure, and the permeability: R package compositions,
/// Aitchison's data 21. Coefficients by ordinary least squares with another library, as for all
/// cases below.
const BAYESITE: &str = "
     0.3 0.3 0.3 0.1 5 399
     0.1 0.4 0.4 0.1 8 329
     0.4 0.1 0.4 0.1 8 346
     0.4 0.4 0.1 0.1 8 430
     0.5 0.2 0.2 0.1 11 315
     0.2 0.5 0.2 0.1 11 325
     0.2 0.2 0.5 0.1 11 278
     0.28 0.28 0.28 0.16 5 414
     0.12 0.36 0.36 0.16 11 263
     0.36 0.12 0.36 0.16 11 254
     0.36 0.36 0.12 0.16 11 323
     0.48 0.18 0.18 0.16 8 395
     0.18 0.48 0.18 0.16 8 335
     0.18 0.18 0.48 0.16 8 324
     0.25 0.25 0.25 0.25 5 352
     0.11 0.32 0.32 0.25 8 306
     0.32 0.11 0.32 0.25 11 242
     0.32 0.32 0.11 0.25 8 388
     0.39 0.18 0.18 0.25 11 297
     0.18 0.39 0.18 0.25 8 390
     0.18 0.18 0.39 0.25 11 246
";

#[test]
fn bayesite_with_pressure() {
    let (points, measured) = pressed();
    let model = added(
        &mixture(&["A", "B", "C", "D"], Blending::Linear),
        &pressure(Bend::Flat),
    );
    let found = fit(&model, &points, &measured).unwrap();
    assert_printed(
        "bayesite",
        &found.values(),
        "470.0 449.3 217.4 191.7 -56.24",
    );
    assert_printed("bayesite, noise", &[found.noise.unwrap()], "23.1");
    assert_printed("bayesite, taken up", &[found.taken_up.unwrap()], "0.866");
}

#[test]
fn bayesite_with_pressure_squared() {
    let (points, measured) = pressed();
    let model = added(
        &mixture(&["A", "B", "C", "D"], Blending::Linear),
        &pressure(Bend::Bent),
    );
    let found = fit(&model, &points, &measured).unwrap();
    assert_printed(
        "bayesite",
        &found.values(),
        "485.84 449.05 233.24 202.16 -51.50 -20.71",
    );
    assert_printed("bayesite, noise", &[found.noise.unwrap()], "21.05");
    assert_printed("bayesite, taken up", &[found.taken_up.unwrap()], "0.895");
}

#[test]
fn bayesite_does_not_need_its_blending() {
    let (points, measured) = pressed();
    let model = added(
        &mixture(&["A", "B", "C", "D"], Blending::Quadratic),
        &pressure(Bend::Flat),
    );
    let found = fit(&model, &points, &measured).unwrap();
    assert_printed("bayesite, noise", &[found.noise.unwrap()], "22.3");
}

fn pressure(bend: Bend) -> Model {
    surface(&["pressure"], bend)
}

fn pressed() -> (Vec<Vec<f64>>, Vec<f64>) {
    let rows = rows(BAYESITE);
    let point = |row: &Vec<f64>| vec![row[0], row[1], row[2], row[3], (row[4] - 8.0) / 3.0];
    (
        rows.iter().map(point).collect(),
        rows.iter().map(|row| row[5]).collect(),
    )
}

/// Concrete of six components (dataplot, SIMON.DAT; FHWA 1997): water, cement, silica fume,
/// superplasticiser, coarse, fine, then slump, strength after 1 and 28 days, chloride. The rows add
/// up to 0.9994 to 1.0006.
const CONCRETE: &str = "
     .185 .147 .013 .0046 .400 .250 2.625 3114 6996 1278
     .160 .150 .013 .0074 .410 .260 2.250 3920 8006 862
     .185 .130 .013 .0046 .417 .250 4.000 2429 7035 1162
     .160 .130 .027 .0046 .428 .250 0.500 3246 7028 387
     .160 .130 .013 .0046 .442 .250 1.375 3138 7700 776
     .185 .130 .013 .0074 .407 .257 7.875 2435 8766 1027
     .171 .150 .013 .0046 .411 .250 0.875 3851 7777 744
     .185 .130 .027 .0074 .400 .250 5.000 2782 7492 492
     .172 .139 .013 .0060 .410 .260 3.875 3118 7286 842
     .185 .130 .013 .0046 .400 .267 4.625 2636 7388 903
     .160 .150 .013 .0060 .421 .250 2.500 3974 7919 583
     .160 .130 .013 .0046 .400 .292 2.250 3161 7709 684
     .160 .130 .027 .0046 .400 .278 1.125 3213 7771 292
     .160 .140 .013 .0046 .432 .250 1.250 3665 7533 604
     .172 .139 .013 .0060 .410 .260 3.625 3235 7841 847
     .160 .140 .013 .0046 .400 .282 1.500 3157 7880 720
     .166 .134 .016 .0067 .423 .254 3.750 3199 8812 554
     .171 .150 .013 .0046 .400 .261 2.000 3580 7715 792
     .160 .130 .027 .0046 .428 .250 1.000 3397 7841 348
     .185 .130 .013 .0046 .417 .250 4.500 2398 6960 968
     .160 .130 .013 .0046 .421 .271 2.625 3325 7391 700
     .160 .130 .027 .0074 .413 .263 3.000 3584 8675 316
     .177 .142 .027 .0046 .400 .250 1.125 3333 7708 390
     .172 .130 .027 .0074 .413 .250 4.875 3143 8004 302
     .172 .130 .013 .0074 .400 .277 6.750 3341 8426 682
     .160 .150 .013 .0060 .400 .271 2.000 3986 7908 505
     .160 .140 .027 .0074 .400 .266 1.375 3964 8127 245
     .160 .140 .027 .0074 .416 .250 1.250 3947 7413 310
     .172 .139 .013 .0060 .410 .260 4.750 3248 8290 636
     .172 .130 .027 .0074 .400 .263 4.500 3463 8151 356
     .185 .130 .013 .0046 .400 .267 5.000 2703 7485 820
     .160 .150 .013 .0074 .410 .260 4.250 4179 9466 553
     .160 .140 .020 .0060 .412 .262 3.875 3858 8852 340
     .172 .139 .013 .0060 .410 .260 4.000 3502 7918 640
     .166 .150 .027 .0074 .400 .250 2.000 4172 8423 239
     .177 .142 .027 .0046 .400 .250 1.000 3424 7909 332
";

#[test]
fn concrete() {
    let rows = rows(CONCRETE);
    let names = ["water", "cement", "silica", "plasticiser", "coarse", "fine"];
    let of = |column: usize| {
        let points: Vec<Vec<f64>> = rows.iter().map(|row| row[..6].to_vec()).collect();
        let measured: Vec<f64> = rows.iter().map(|row| row[column]).collect();
        fit(&mixture(&names, Blending::Linear), &points, &measured).unwrap()
    };
    let slump = of(6);
    assert_printed("slump", &slump.values(), "85.3 -94.2 -132.7 953.5 -8.4 7.2");
    assert_printed("slump", &[slump.noise.unwrap()], "0.656");
    assert_printed("slump", &[slump.taken_up.unwrap()], "0.882");
    let early = of(7);
    assert_printed(
        "1 day",
        &early.values(),
        "-24094 39332 16085 70443 1726 2377",
    );
    assert_printed("1 day", &[early.noise.unwrap()], "158");
    assert_printed("1 day", &[early.taken_up.unwrap()], "0.908");
    let late = of(8);
    assert_printed("28 days", &[late.noise.unwrap()], "445");
    assert_printed("28 days", &[late.taken_up.unwrap()], "0.477");
    let chloride = of(9);
    let printed = "10863 -2176 -30253 -17961 514 -1864";
    assert_printed("chloride", &chloride.values(), printed);
    assert_printed("chloride", &[chloride.noise.unwrap()], "116");
    assert_printed("chloride", &[chloride.taken_up.unwrap()], "0.840");
}

/// Screening of eight components, Snee and Marquardt, Technometrics 18 (1976) 19; data in mixexp.
const SCREENING: &str = "
     0.1 0.5 0 0 0.1 0.2 0.05 0.05 30
     0.1 0.05 0 0 0.55 0.2 0.05 0.05 113
     0.1 0.5 0 0.1 0.1 0.2 0 0 17
     0.15 0.05 0 0.1 0.6 0.05 0.05 0 94
     0.1 0.05 0.1 0 0.55 0.2 0 0 89
     0.1 0.5 0.1 0.1 0.1 0.05 0 0.05 18
     0.1 0.05 0.1 0.1 0.55 0.05 0 0.05 90
     0.4 0.05 0.1 0.1 0.1 0.2 0.05 0 20
     0.35 0.05 0.1 0.1 0.1 0.2 0.05 0.05 21
     0.3 0.5 0 0 0.1 0.05 0 0.05 15
     0.1 0.5 0.1 0 0.2 0.05 0.05 0 28
     0.45 0.05 0 0 0.45 0.05 0 0 48
     0.45 0.2 0 0.1 0.1 0.05 0.05 0.05 18
     0.45 0.15 0 0.1 0.1 0.2 0 0 7
     0.45 0.25 0.1 0 0.1 0.05 0.05 0 16
     0.45 0.1 0.1 0 0.1 0.2 0 0.05 19
     0.259 0.222 0.05 0.05 0.244 0.125 0.025 0.025 38
     0.259 0.222 0.05 0.05 0.244 0.125 0.025 0.025 30
     0.259 0.222 0.05 0.05 0.244 0.125 0.025 0.025 35
     0.259 0.222 0.05 0.05 0.244 0.125 0.025 0.025 40
";

#[test]
fn screening() {
    let rows = rows(SCREENING);
    let points: Vec<Vec<f64>> = rows.iter().map(|row| row[..8].to_vec()).collect();
    let measured: Vec<f64> = rows.iter().map(|row| row[8]).collect();
    let names = ["1", "2", "3", "4", "5", "6", "7", "8"];
    let found = fit(&mixture(&names, Blending::Linear), &points, &measured).unwrap();
    let printed = "-33.3 -10.3 -2.7 -19.7 150.4 46.6 165.5 188.6";
    assert_printed("screening", &found.values(), printed);
    assert_printed("screening, noise", &[found.noise.unwrap()], "5.69");
    assert_printed("screening, taken up", &[found.taken_up.unwrap()], "0.979");
}

/// Fish patties at two temperatures (dataplot, CORNEL81.DAT): as many terms as runs.
#[test]
fn fish_patties_with_temperature() {
    let third = "0.33333333333333333";
    let mixes =
        format!("1 0 0; 0 1 0; 0 0 1; 0.5 0.5 0; 0 0.5 0.5; 0.5 0 0.5; {third} {third} {third}");
    let warm = numbers("4.0 4.7 4.6 5.3 4.4 4.9 4.4");
    let cool = numbers("4.7 5.3 3.7 5.1 4.0 4.9 4.7");
    let at = |z: f64| {
        let mixes = rows(&mixes).into_iter();
        mixes.map(move |mix| mix.into_iter().chain([z]).collect::<Vec<f64>>())
    };
    let points: Vec<Vec<f64>> = at(1.0).chain(at(-1.0)).collect();
    let mixture = mixture(&["a", "b", "c"], Blending::SpecialCubic);
    let model = crossed(&mixture, &surface(&["z"], Bend::Flat));
    let found = fit(&model, &points, &[warm, cool].concat())
        .unwrap()
        .values();
    // The source lists the pairs as 12, 23, 13 in its data, and its coefficients as 12, 13, 23.
    assert_printed("patties", &found[..7], "4.35 5 4.15 2.1 2.6 -1.5 -8.25");
    assert_printed("patties", &found[7..], "-0.35 -0.3 0.45 1.7 -0.2 0.5 -8.25");
}
