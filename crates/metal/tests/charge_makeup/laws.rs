//! What holds of every charge.

use measure::band::Band;
use measure::matter::Mass;
use metal::charge_makeup::element::Element;
use metal::charge_makeup::heap::Heap;
use metal::charge_makeup::makeup::{Wish, make_up};
use proptest::prelude::{ProptestConfig, Strategy, prop, prop_assert, prop_assert_eq, proptest};

use crate::heaps::{heap, iron};

/// A shop of two to five heaps of iron; the first can make the target alone.
fn shop() -> impl Strategy<Value = Vec<Heap>> {
    let row = (
        1.0..9.0_f64,
        0.1..2.0_f64,
        2.5..4.2_f64,
        0.5..3.5_f64,
        0.0..0.3_f64,
    );
    prop::collection::vec(row, 1..5).prop_map(|rows| {
        let mut heaps = vec![heap(
            "sound",
            9.0,
            "1.5 EUR/kg",
            &[("C", "3.3 %"), ("Si", "2.1 %")],
        )];
        for (at, (kg, price, c, si, wide)) in rows.into_iter().enumerate() {
            let elements = [
                ("C", format!("{c} ± {wide} %")),
                ("Si", format!("{si} ± {wide} %")),
            ];
            let elements: Vec<_> = elements
                .iter()
                .map(|(of, share)| (*of, share.as_str()))
                .collect();
            heaps.push(heap(
                &format!("heap {at}"),
                kg,
                &format!("{price} EUR/kg"),
                &elements,
            ));
        }
        heaps
    })
}

/// A wish that keeps the same clearance whatever is there.
fn wish() -> Wish {
    let mut wish = iron(5.0, &[("C", "3.2 to 3.4 %"), ("Si", "1.9 to 2.3 %")]);
    wish.clearance = Some(0.5);
    wish.losses
        .insert(Element::Silicon, Band::new(0.0, 0.03, 0.08));
    wish.melt_loss = 0.02;
    wish
}

fn cost(heaps: &[Heap], wish: &Wish) -> Option<f64> {
    let made = make_up(heaps, wish).ok()?;
    made.cost.map(|cost| cost.amount)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Whoever has fewer heaps to choose from never pays less.
    #[test]
    fn taking_a_heap_away_never_makes_it_cheaper(heaps in shop()) {
        let all = cost(&heaps, &wish());
        prop_assert!(all.is_some());
        for away in 1..heaps.len() {
            let mut fewer = heaps.clone();
            fewer.remove(away);
            let dearer = cost(&fewer, &wish());
            prop_assert!(dearer >= all.map(|all| all - 1e-4), "{dearer:?} {all:?}");
        }
    }

    /// What is weighed out is what is wanted and what is lost, and the likely melt is in target.
    #[test]
    fn masses_balance_and_the_likely_melt_is_in_target(heaps in shop()) {
        let made = make_up(&heaps, &wish());
        prop_assert!(made.is_ok());
        if let Ok(made) = made {
            let mut melt_kg = 0.0;
            let mut silicon_kg = 0.0;
            for weighed in &made.weighed {
                let si = heaps[weighed.heap].elements[&Element::Silicon].likely();
                melt_kg += weighed.mass.as_kg() * (1.0 - si * 0.03);
                silicon_kg += weighed.mass.as_kg() * si * 0.97;
                prop_assert!(weighed.mass <= heaps[weighed.heap].mass + Mass::from_g(0.001));
            }
            prop_assert!((melt_kg * 0.98 - made.metal.as_kg()).abs() < 1e-9);
            prop_assert!((made.metal.as_kg() - 5.0).abs() < 1e-4);
            let si = silicon_kg / melt_kg;
            prop_assert!((0.019 - 1e-7..=0.023 + 1e-7).contains(&si), "{si}");
            for measure in &made.composition {
                let (low, high) = measure.usual;
                let (least, most) = (measure.share.low() - 1e-9, measure.share.high() + 1e-9);
                prop_assert!(least <= low && high <= most);
            }
        }
    }

    /// The same heaps, the same wish, the same answer; another seed moves the chance only within
    /// its error.
    #[test]
    fn the_same_seed_gives_the_same_answer(heaps in shop(), seed in 0_u64..1000) {
        let mut other = wish();
        other.seed = seed;
        let (one, again) = (make_up(&heaps, &other), make_up(&heaps, &other));
        prop_assert_eq!(&one, &again);
        if let (Ok(one), Ok(first)) = (one, make_up(&heaps, &wish())) {
            prop_assert_eq!(&one.weighed, &first.weighed);
            prop_assert!((one.chance.share - first.chance.share).abs() < 0.06);
        }
    }

    /// Ten times the heaps and ten times the metal is ten times the charge.
    #[test]
    fn a_larger_charge_is_the_same_charge(heaps in shop(), times in 1.5..40.0_f64) {
        let mut large = wish();
        large.metal = large.metal * times;
        large.scale_step = large.scale_step * times;
        let mut more = heaps.clone();
        for heap in &mut more {
            heap.mass = heap.mass * times;
        }
        let (small, large) = (make_up(&heaps, &wish()), make_up(&more, &large));
        prop_assert!(small.is_ok() && large.is_ok());
        if let (Ok(small), Ok(large)) = (small, large) {
            prop_assert_eq!(small.weighed.len(), large.weighed.len());
            for (one, other) in small.weighed.iter().zip(&large.weighed) {
                let expected = one.mass.as_kg() * times;
                prop_assert!((expected - other.mass.as_kg()).abs() < 1e-5 * times);
            }
        }
    }
}
