//! Mixtures of two to four components.

use trials::fit::Fit;
use trials::model::{Blending, mixture};

use crate::elsewhere::fit;
use crate::printed::{assert_printed, assert_within, numbers, rows};

const NAMES: [&str; 4] = ["a", "b", "c", "d"];

fn refitted(blending: Blending, points: &[Vec<f64>], responses: &[f64]) -> Fit {
    fit(
        &mixture(&NAMES[..points[0].len()], blending),
        points,
        responses,
    )
    .unwrap()
}

/// Checks coefficients, and the noise where it is printed.
fn check(blending: Blending, points: &str, responses: &str, worth: &str, noise: &str) {
    let found = refitted(blending, &rows(points), &numbers(responses));
    assert_printed(responses, &found.values(), worth);
    let own: Vec<f64> = found.noise.into_iter().collect();
    match noise {
        "" => {}
        printed => assert_printed(responses, &own, printed),
    }
}

const LATTICE: &str = "1 0 0; 0 1 0; 0.5 0.5 0; 0 0 1; 0.5 0 0.5; 0 0.5 0.5";
const CENTROID: &str = "0.3333333333 0.3333333333 0.3333333333";

/// Cornell, Experiments with Mixtures, 3rd ed.; data in man/ModelPlot.Rd of the R package mixexp;
/// coefficients also in NIST/SEMATECH e-Handbook 5.5.4 (from memory).
#[test]
fn yarn() {
    let points = rows(
        "1 0 0; 1 0 0; 0.5 0.5 0; 0.5 0.5 0; 0.5 0.5 0; 0 1 0; 0 1 0; 0 0.5 0.5; 0 0.5 0.5
         0 0.5 0.5; 0 0 1; 0 0 1; 0.5 0 0.5; 0.5 0 0.5; 0.5 0 0.5",
    );
    let measured = "11 12.4 15 14.8 16.1 8.8 10 10 9.7 11.8 16.8 16 17.7 16.4 16.6";
    let found = refitted(Blending::Quadratic, &points, &numbers(measured));
    assert_printed("yarn", &found.values(), "11.7 9.4 16.4 19.0 11.4 -9.6");
    assert_printed("yarn, noise", &[found.noise.unwrap()], "0.854");
    assert_printed("yarn, taken up", &[found.taken_up.unwrap()], "0.951");
}

/// Myers and Montgomery, Response Surface Methodology, 2nd ed.; data in mixexp, etch; coefficients
/// from memory.
#[test]
fn etch_rate() {
    let (third, two, sixth) = (1.0 / 3.0, 2.0 / 3.0, 1.0 / 6.0);
    let points = rows(&format!(
        "1 0 0; 0 1 0; 0 0 1; 0.5 0.5 0; 0.5 0 0.5; 0 0.5 0.5; {third} {third} {third}
         1 0 0; 0 1 0; 0 0 1; {third} {third} {third}; {two} {sixth} {sixth}
         {sixth} {two} {sixth}; {sixth} {sixth} {two}"
    ));
    let measured = "540 330 295 610 425 330 800 560 350 260 850 710 640 460";
    let found = refitted(Blending::SpecialCubic, &points, &numbers(measured));
    let printed = [550.2, 344.7, 268.3, 689.5, -9.0, 58.1, 9243.3];
    for (found, printed) in found.values().iter().zip(printed) {
        assert!((found - printed).abs() <= 0.06, "{found} for {printed}");
    }
}

/// McLean and Anderson, Technometrics 8 (1966) 447: data and coefficients from memory, which refits
/// to a quarter of a per cent. The coefficients are large and opposed, so foretold mixes count.
#[test]
fn flare() {
    let points = rows(
        "0.4 0.1 0.47 0.03; 0.4 0.1 0.42 0.08; 0.6 0.1 0.27 0.03; 0.6 0.1 0.22 0.08
         0.4 0.47 0.1 0.03; 0.4 0.42 0.1 0.08; 0.6 0.27 0.1 0.03; 0.6 0.22 0.1 0.08
         0.5 0.1 0.345 0.055; 0.5 0.345 0.1 0.055; 0.4 0.2725 0.2725 0.055
         0.6 0.1725 0.1725 0.055; 0.5 0.235 0.235 0.03; 0.5 0.21 0.21 0.08
         0.5 0.2225 0.2225 0.055",
    );
    let measured = "75 180 195 300 145 230 220 350 220 260 190 310 260 410 425";
    let found = refitted(Blending::Quadratic, &points, &numbers(measured));
    let printed = [
        -1558.0, -2351.0, -2426.0, 14372.0, 8300.0, 8076.0, -6625.0, 3213.0, -16998.0, -17127.0,
    ];
    assert_within("flare", &found.values(), &printed, 0.004);
}

/// Dataplot, CORNELL4.DAT; coefficients by ordinary least squares with another library, as for all
/// cases below of which nothing else is said.
#[test]
fn lemonade() {
    check(
        Blending::Quadratic,
        "1 0; 0.75 0.25; 0.5 0.5; 0.25 0.75; 0 1",
        "8.0 8.2 7.4 4.7 2.0",
        "8.06 1.86 8.8",
        "",
    );
}

/// Dataplot, CORNELL9.DAT.
#[test]
fn fish_patty_texture() {
    check(
        Blending::Quadratic,
        &format!("{LATTICE};{LATTICE}"),
        "2.02 1.47 1.91 1.93 1.98 1.80 2.08 1.37 2.00 1.83 2.13 1.71",
        "2.05 1.42 1.88 0.88 0.36 0.42",
        "0.072",
    );
}

/// Dataplot, CORNEL35.DAT. As many terms as runs, so no noise.
#[test]
fn mite_survival() {
    check(
        Blending::SpecialCubic,
        &format!("{LATTICE};{CENTROID}"),
        "25.4 28.6 3.4 38.5 37.4 10.7 11.1",
        "25.4 28.6 38.5 -94.4 21.8 -91.4 -40.8",
        "",
    );
}

/// Man/ModelEff.Rd of the R package mixexp.
#[test]
fn mite_survival_of_four() {
    let third = "0.33333333333333333";
    let points = format!(
        "1 0 0 0; 0 1 0 0; 0 0 1 0; 0 0 0 1; 0.5 0.5 0 0; 0.5 0 0.5 0; 0.5 0 0 0.5; 0 0.5 0.5 0
         0 0.5 0 0.5; 0 0 0.5 0.5; {third} {third} {third} 0; {third} {third} 0 {third}
         {third} 0 {third} {third}; 0 {third} {third} {third}; 0.25 0.25 0.25 0.25"
    );
    let measured = "1.8 25.4 28.6 38.5 4.9 3.1 28.7 3.4 37.4 10.7 22.0 2.6 2.4 11.1 0.8";
    let found = refitted(Blending::SpecialCubic, &rows(&points), &numbers(measured));
    let printed = "1.8 25.4 28.6 38.5 -33 -46.6 36 -92.6 23.6 -89.6 573.8 -635.5 -289.3 -91.6";
    assert_printed("mites", &found.values(), printed);
}

/// Man/EffPlot.Rd of the R package mixexp.
#[test]
fn weed_control() {
    check(
        Blending::SpecialCubic,
        &format!(
            "1 0 0; 0 1 0; 0 0 1; 0.5 0.5 0; 0.5 0 0.5; 0 0.5 0.5; {CENTROID}; {CENTROID}
             {CENTROID}"
        ),
        "73 68 80 77 86 75 92 93 88",
        "73 68 80 26 38 4 264",
        "2.65",
    );
}

/// R package daewr, pest.
#[test]
fn pesticide() {
    check(
        Blending::Quadratic,
        &format!(
            "1 0 0; 0.8 0.1 0.1; 0.6 0.2 0.2; 0.5 0 0.5; 0.5 0.5 0; {CENTROID}; 0.3 0.2 0.5
             0.3 0.5 0.2; 0.1 0.1 0.8; 0.1 0.8 0.1; 0 0 1; 0 0.5 0.5; 0 1 0"
        ),
        "48.7 49.5 50.2 52.8 49.3 51.1 52.7 50.3 60.7 49.9 64.9 53.5 50.6",
        "48.89 50.38 65.38 -0.66 -16.11 -16.92",
        "0.586",
    );
}

/// R package daewr, polvdat: a region that a bound on each component cuts out.
#[test]
fn polvoron() {
    check(
        Blending::Quadratic,
        "0.8 0.15 0.05; 0.4 0.55 0.05; 0 0.95 0.05; 0 0.725 0.275; 0 0.5 0.5; 0.2 0.3 0.5
         0.4 0.1 0.5; 0.6 0.1 0.3; 0.8 0.1 0.1; 0.4 0.36 0.24; 0.4 0.36 0.24; 0.4 0.36 0.24",
        "5.33 5.87 3.69 3.83 3.85 5.23 5.68 5.88 5.75 6.54 6.82 6.41",
        "3.78 3.26 -0.15 10.49 15.37 8.98",
        "0.310",
    );
}

/// Dataplot, CORNEL23.DAT and PUNCH.DAT: at least 30 % of the first, fitted in what is above it, at
/// the six points of the lattice.
#[test]
fn punch() {
    let above = |share: f64| (share - 0.3) / 0.7;
    let points = rows("100 0 0; 65 35 0; 30 70 0; 30 35 35; 30 0 70; 65 0 35");
    let measured = "4.3 4.7 4.8 6.3 5.8 6.1 6.5 6.2 6.3 6.2 6.2 6.1 6.9 7.0 7.4 6.1 6.5 5.9";
    let points = points.iter().map(|row| {
        let share = |at: usize| row[at] / 100.0;
        vec![above(share(0)), share(1) / 0.7, share(2) / 0.7]
    });
    let points: Vec<Vec<f64>> = points.flat_map(|row| vec![row; 3]).collect();
    let found = refitted(Blending::Quadratic, &points, &numbers(measured));
    assert_printed("punch", &found.values(), "4.60 6.33 7.10 2.40 1.27 -2.20");
    assert_printed("punch, noise", &[found.noise.unwrap()], "0.232");
}

/// Dataplot, CORNEL43.DAT.
#[test]
fn cornell_43() {
    check(
        Blending::Quadratic,
        "1 0 0; 0.5 0.5 0; 0 1 0; 0 0.5 0.5; 0 0 1; 0.5 0 0.5",
        "8.6 22.4 10.0 2.3 5.3 13.8",
        "8.6 10.0 5.3 52.4 27.4 -21.4",
        "",
    );
}

/// Dataplot, CORNEL69.DAT, without the value that is missing.
#[test]
fn plasticiser() {
    check(
        Blending::Quadratic,
        "0.849 0 0.151; 0.849 0 0.151; 0.726 0 0.274; 0.726 0 0.274; 0.474 0.252 0.274
         0.474 0.252 0.274; 0.597 0.252 0.151; 0.597 0.252 0.151; 0.6615 0.126 0.2125
         0.6615 0.126 0.2125; 0.7875 0 0.2125; 0.6 0.126 0.274; 0.5355 0.252 0.2125
         0.723 0.126 0.151",
        "8 7 4 6 12 10 13 10 18 21 12 13 16 14",
        "-50.15 -282.20 -911.65 317.36 1464.3 1846.2",
        "1.34",
    );
}

/// Dataplot, CORNEL78.DAT, whose thirds are rounded to three digits.
#[test]
fn cornell_78() {
    check(
        Blending::Quadratic,
        "0.1 0.225 0.675; 0.1 0.45 0.45; 0.1 0.6 0.3; 0.3 0.175 0.525; 0.3 0.35 0.35
         0.3 0.467 0.233; 0.5 0.125 0.375; 0.5 0.25 0.25; 0.5 0.333 0.167",
        "17.2 21.4 14.7 13.9 20.6 16.1 9.3 12.5 7.8",
        "-34.4 -42.0 -18.5 140.6 105.4 207.0",
        "1.84",
    );
}
