//! Chills: against the closed form of metal on a half space, and where they are refused.

use pour::case::Filling;
use pour::chill::{Chill, ChillError, Laid, Side, around, lay};
use pour::meshing::{Meshing, cut};
use pour::solved::{Solved, filling, solved};
use pour::tables::SandHeat;
use rigging::mould::Mould;
use rigging::piece::Piece;

use crate::bodies::{block, joined, mould};
use crate::{arresting, as_poured, poured};

/// A block of 60 × 60 × 30 mm in the drag, with a feeder on it.
fn fed() -> Mould {
    let blocks = [
        (
            Piece::Casting(1),
            [[40.0, 40.0, 30.0], [100.0, 100.0, 60.0]],
        ),
        (Piece::Feeder(1), [[55.0, 55.0, 58.0], [85.0, 85.0, 100.0]]),
    ];
    joined(&blocks, [140.0, 140.0, 100.0])
}

fn iron(at_mm: [f64; 3], size_mm: [f64; 3], lies: Side) -> Chill {
    Chill {
        metal: 0,
        size_mm,
        at_mm,
        lies,
    }
}

fn with(mould: &Mould, chills: &[Chill]) -> Result<(Solved, Vec<Laid>), ChillError> {
    let meshing = Meshing {
        wall_mm: 30.0,
        across: 10.0,
        budget: 1e6,
        staircase: false,
        even: false,
        also_mm: around(chills),
    };
    let mut cells = cut(mould, &meshing, 3.0).expect("cells");
    let laid = lay(&mut cells, chills)?;
    let poured = as_poured();
    let likely = filling(&poured, 320.0, 1.0);
    Ok((
        solved(cells, &poured, &likely, &mut |_| true).expect("it freezes"),
        laid,
    ))
}

/// A block of 60 × 60 × 30 mm in the middle of much sand.
fn bare() -> Mould {
    mould(
        block([60.0, 60.0, 30.0]),
        [70.0, 70.0, 45.0],
        [140.0, 140.0, 100.0],
    )
}

/// λ of metal at its freezing point against a half space that touches it without resistance
/// (Schwarz's form): b_s (T_m − T_i) / erf λ = b_m (T_i − T_0), and √π λ exp(λ²) erf λ =
/// c (T_m − T_i) / L. Metal of set S1 against the iron of the table.
fn lambda() -> f64 {
    let (melts_c, cold_c, latent, heat) = (660.0, 25.0, 3.9e5, 1000.0);
    let metal = (210.0_f64 * 2500.0 * 1000.0).sqrt();
    let iron = (45.0_f64 * 7150.0 * 560.0).sqrt();
    let [mut low, mut high] = [0.0_f64, 3.0];
    for _ in 0..80 {
        let lambda = 0.5 * (low + high);
        let touch = metal / erf(lambda);
        let touch_c = (touch * melts_c + iron * cold_c) / (touch + iron);
        let left = std::f64::consts::PI.sqrt() * lambda * (lambda * lambda).exp() * erf(lambda);
        match left < heat * (melts_c - touch_c) / latent {
            true => low = lambda,
            false => high = lambda,
        }
    }
    0.5 * (low + high)
}

/// The error function by its series, exact for arguments of a few.
fn erf(x: f64) -> f64 {
    let (mut term, mut sum) = (x, x);
    for n in 1..60 {
        let n = f64::from(n);
        term *= -x * x / n;
        sum += term / (2.0 * n + 1.0);
    }
    sum * 2.0 / std::f64::consts::PI.sqrt()
}

#[test]
fn metal_on_a_thick_chill_freezes_as_the_closed_form_says() {
    let size_mm = 1.0;
    let plate = mould(
        block([8.0, 8.0, 40.0]),
        [4.0, 4.0, 120.0],
        [8.0, 8.0, 200.0],
    );
    let chill = iron([4.0, 4.0, 100.0], [8.0, 8.0, 80.0], Side::Below);
    let meshing = Meshing {
        wall_mm: size_mm,
        across: 1.0,
        budget: 1e6,
        staircase: false,
        even: false,
        also_mm: around(std::slice::from_ref(&chill)),
    };
    let mut cells = cut(&plate, &meshing, size_mm).expect("cells");
    let laid = lay(&mut cells, &[chill]).expect("a chill");
    assert!((laid[0].touches_mm2 - 64.0).abs() < 1e-6, "{laid:?}");
    let held: f32 = cells.chilled.iter().map(|(_, held)| held).sum();
    assert!((held - 5120.0).abs() < 1.0, "{held}");
    let filling = Filling {
        metal: arresting(),
        sand: SandHeat::dry(),
        core: SandHeat::dry(),
        contact_w_m2k: 320.0,
        chill_w_m2k: 1e6,
        air_c: 25.0,
        to_air_w_m2k: 0.0,
    };
    let run = solved(cells, &poured(660.0), &filling, &mut |_| true).expect("it freezes");
    let alpha_m2s: f64 = 210.0 / (2500.0 * 1000.0);
    for deep_mm in [8, 16] {
        let cells = &run.meshed.cells;
        let at = (0..run.ends_s.len()).find(|&cell| {
            let [x, y, z] = cells.middle_mm(cell);
            (x - 4.0).abs() < 1.0
                && (y - 4.0).abs() < 1.0
                && (z - 99.5 - f64::from(deep_mm)).abs() < 0.1
        });
        let found = f64::from(run.ends_s[at.expect("a cell")]);
        // A cell is solid when the front has passed it.
        let exact = (f64::from(deep_mm) * 1e-3 / (2.0 * lambda())).powi(2) / alpha_m2s;
        assert!(
            (found / exact - 1.0).abs() < 0.05,
            "{deep_mm} mm: {found} {exact}"
        );
    }
}

#[test]
fn a_chill_too_small_to_be_felt_changes_next_to_nothing_and_a_large_one_much() {
    let (plain, _) = with(&bare(), &[]).expect("no chill");
    let below = iron([70.0, 70.0, 30.0], [60.0, 60.0, 30.0], Side::Below);
    let (chilled, laid) = with(&bare(), &[below]).expect("a chill");
    assert_eq!(laid[0].piece, Piece::Casting(1));
    assert!(
        (laid[0].touches_mm2 / 3600.0 - 1.0).abs() < 0.11,
        "{laid:?}"
    );
    assert!(chilled.balance.drift < 1e-5, "{:?}", chilled.balance);
    assert!(chilled.last_s < 0.6 * plain.last_s);
    let small = iron([46.0, 46.0, 30.0], [6.0, 6.0, 3.0], Side::Below);
    let (hardly, _) = with(&bare(), &[small]).expect("a small chill");
    let share = hardly.last_s / plain.last_s;
    assert!((0.97..1.001).contains(&share), "{share}");
}

#[test]
fn a_chill_where_it_does_harm_or_nothing_is_refused() {
    let on_feeder = iron([85.0, 70.0, 80.0], [10.0, 20.0, 20.0], Side::Right);
    let error = with(&fed(), &[on_feeder]).expect_err("on the feeder");
    assert!(
        matches!(error, ChillError::OnRigging { number: 1, .. }),
        "{error}"
    );
    let in_sand = iron([20.0, 20.0, 10.0], [10.0, 10.0, 10.0], Side::Below);
    let error = with(&fed(), &[in_sand]).expect_err("in the sand");
    assert!(
        matches!(error, ChillError::Apart { number: 1, .. }),
        "{error}"
    );
    let none = iron([70.0, 70.0, 30.0], [0.0, 10.0, 10.0], Side::Below);
    assert_eq!(
        with(&fed(), &[none]).err(),
        Some(ChillError::Size { number: 1 })
    );
}
