//! Everything that is told of a charge, and every reason why one is not made.

use job::charge::not_made::not_made;
use job::words::said::Said;
use measure::matter::Mass;
use measure::money::MoneyError;
use metal::alloy::Family;
use metal::charge_makeup::element::Element;
use metal::charge_makeup::infeasible::{Cause, Help, Infeasible, OutOfReach};
use metal::charge_makeup::limit::Side;
use metal::charge_makeup::makeup::MakeUpError;
use metal::charge_makeup::measured::Measured;
use metal::charge_makeup::stock::of_family;

/// Why charges are not made, every cause with and without help.
pub fn every_lack() -> Vec<Said> {
    let text = || "A".to_owned();
    let mut errors = vec![
        MakeUpError::NoHeaps,
        MakeUpError::NoMetal,
        MakeUpError::MeltLoss(text()),
        MakeUpError::UnknownHeap {
            typed: text(),
            known: text(),
        },
        MakeUpError::Money(MoneyError::NotMoney(text())),
        MakeUpError::Money(MoneyError::TwoCurrencies {
            one: text(),
            other: text(),
        }),
    ];
    errors.extend(causes().into_iter().flat_map(|cause| {
        FAMILIES.map(|family| {
            // Of tin none, so that it is told that nothing helps.
            let stock = of_family(family).filter(|_| family != Family::Tin);
            let help = stock.map(|stock| Help {
                stock,
                mass: Mass::from_kg(0.66),
            });
            MakeUpError::Infeasible(Box::new(Infeasible {
                family,
                cause: cause.clone(),
                help: help.collect(),
            }))
        })
    }));
    errors.iter().map(not_made).collect()
}

const FAMILIES: [Family; 5] = [
    Family::Aluminium,
    Family::Copper,
    Family::Zinc,
    Family::Iron,
    Family::Tin,
];

fn causes() -> Vec<Cause> {
    let out = |side, by_every_heap| OutOfReach {
        of: Measured::Of(Element::Silicon),
        side,
        wanted: 0.02,
        nearest: 0.03,
        by_every_heap,
    };
    let all = [
        out(Side::High, true),
        out(Side::High, false),
        out(Side::Low, true),
        out(Side::Low, false),
    ];
    let mass = Mass::from_kg(2.0);
    let mut causes = vec![
        Cause::TooLittle {
            there: mass,
            wanted: mass,
        },
        Cause::UseUp,
        Cause::NotTogether(None),
        Cause::NotTogether(Some(all[0])),
        Cause::NotTogether(Some(all[2])),
    ];
    causes.extend(all.map(|out| Cause::OutOfReach(vec![out])));
    causes
}
