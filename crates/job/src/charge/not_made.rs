//! Why no charge is made, as messages: the causes come from `metal::charge_makeup`.

use measure::matter::Mass;
use measure::money::MoneyError;
use measure::text::{System, rounded, show};
use metal::alloy::Family;
use metal::charge_makeup::infeasible::{Cause, Help, Infeasible, OutOfReach};
use metal::charge_makeup::limit::Side;
use metal::charge_makeup::makeup::MakeUpError;

use crate::remark::of_charge::element;
use crate::words::said::{Said, slug};

/// Why a charge is not made, and what to add.
pub fn not_made(error: &MakeUpError) -> Said {
    match error {
        MakeUpError::NoHeaps => Said::new("not-made-no-heaps"),
        MakeUpError::NoMetal => Said::new("not-made-no-metal"),
        MakeUpError::MeltLoss(loss) => Said::new("not-made-melt-loss").with("loss", loss.as_str()),
        MakeUpError::UnknownHeap { typed, known } => Said::new("not-made-unknown-heap")
            .with("typed", typed.as_str())
            .with("known", known.as_str()),
        MakeUpError::Money(MoneyError::TwoCurrencies { one, other }) => Said::new("not-made-money")
            .with("one", one.as_str())
            .with("other", other.as_str()),
        MakeUpError::Money(_) => Said::new("not-made-prices"),
        MakeUpError::Infeasible(out) => cause(out).with("help", help(out)),
    }
}

fn cause(out: &Infeasible) -> Said {
    match &out.cause {
        Cause::TooLittle { there, wanted } => Said::new("not-made-too-little")
            .with("there", kg(*there))
            .with("wanted", kg(*wanted)),
        Cause::UseUp => Said::new("not-made-use-up"),
        Cause::OutOfReach(all) => {
            let each = all.iter().map(|limit| out_of_reach(limit, out.family));
            Said::new("not-made-out-of-reach").with("limits", each.collect::<Vec<_>>())
        }
        Cause::NotTogether(None) => Said::new("not-made-together"),
        Cause::NotTogether(Some(limit)) => figures(
            limit,
            match limit.side {
                Side::High => "not-made-together-most",
                Side::Low => "not-made-together-least",
            },
        ),
    }
}

fn out_of_reach(limit: &OutOfReach, family: Family) -> Said {
    let id = match (limit.side, limit.by_every_heap) {
        (Side::High, true) => "out-of-reach-high-all",
        (Side::High, false) => "out-of-reach-high",
        (Side::Low, true) => "out-of-reach-low-all",
        (Side::Low, false) => "out-of-reach-low",
    };
    figures(limit, id).with("metal", Said::new(metal(family)))
}

fn figures(limit: &OutOfReach, id: &'static str) -> Said {
    Said::new(id)
        .with("of", element(limit.of))
        .with("nearest", per_cent(limit.nearest))
        .with("wanted", per_cent(limit.wanted))
}

fn help(out: &Infeasible) -> Said {
    if out.help.is_empty() {
        return Said::new("help-none");
    }
    let each = out.help.iter().map(|help| stock(out, help));
    Said::new("help-add").with("stock", each.collect::<Vec<_>>())
}

/// The least of a stock that helps, with what makes it help.
fn stock(out: &Infeasible, help: &Help) -> Said {
    let name = Said::new(format!("stock-{}", slug(&help.stock.name)));
    let told = match out.helped_by(help.stock) {
        None => Said::new("help-stock"),
        Some((limit, share)) => Said::new(match limit.side {
            Side::High => "help-stock-most",
            Side::Low => "help-stock-least",
        })
        .with("share", per_cent(share))
        .with("of", element(limit.of)),
    };
    told.with("mass", up(help.mass)).with("stock", name)
}

fn metal(family: Family) -> &'static str {
    match family {
        Family::Aluminium => "metal-aluminium",
        Family::Copper => "metal-copper",
        Family::Zinc => "metal-zinc",
        Family::Iron => "metal-iron",
        Family::Tin => "metal-tin",
    }
}

fn per_cent(share: f64) -> String {
    format!("{} %", rounded(share * 100.0, 3))
}

fn kg(mass: Mass) -> String {
    show(mass, System::Metric).unwrap_or_default()
}

/// Two figures, never below the mass: what is advised has to be enough.
fn up(mass: Mass) -> String {
    let grams = mass.as_g();
    let step = 10f64.powi(grams.max(1e-3).log10().floor() as i32 - 1);
    kg(Mass::from_g((grams / step - 1e-9).ceil() * step))
}
