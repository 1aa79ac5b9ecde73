//! A charge as it is written out for machines: the counterpart of [`crate::charge::Made`].

use measure::text::System;
use metal::charge_makeup::chance::DRAWS;
use metal::charge_makeup::order::order_of_charging;
use serde::Serialize;

use crate::charge::Made;
use crate::charge::told::{binding_words, next_words};
use crate::remark::of_charge::remarks;
use crate::remark::{Remark, RemarkFile, sorted};
use crate::words::Language;

/// The whole of what `oddside charge --json` prints.
#[derive(Clone, Debug, Serialize)]
pub struct MadeFile {
    /// Version of the program that worked it out.
    pub oddside: String,
    /// What it is for.
    pub name: String,
    /// The target.
    pub target: String,
    /// What goes into the crucible, in kilograms.
    pub charged_kg: f64,
    /// Liquid metal at the spout, likely, in kilograms.
    pub metal_kg: f64,
    /// Share of the melt taken as lost, in per cent.
    pub melt_loss_percent: f64,
    /// What to weigh out, in the order of charging.
    pub weigh_out: Vec<WeighedFile>,
    /// What it costs, where heaps have prices.
    pub cost: Option<MoneyFile>,
    /// What it comes to.
    pub composition: Vec<MeasureFile>,
    /// How sure it is to come out in target.
    pub chance: ChanceFile,
    /// What stands in the way of a cheaper charge.
    pub held_by: Vec<String>,
    /// The cheapest change that helps.
    pub next: Option<String>,
    /// Remarks, the weightiest first.
    pub remarks: Vec<RemarkFile>,
    /// Keys of the sources of target and losses.
    pub sources: Vec<String>,
}

/// What is taken of a heap.
#[derive(Clone, Debug, Serialize)]
pub struct WeighedFile {
    /// The heap.
    pub heap: String,
    /// Kilograms.
    pub kg: f64,
    /// What it costs.
    pub cost: Option<MoneyFile>,
}

/// Money.
#[derive(Clone, Debug, Serialize)]
pub struct MoneyFile {
    /// How much.
    pub amount: f64,
    /// Of what.
    pub currency: String,
}

/// One thing measured of the melt, in per cent.
#[derive(Clone, Debug, Serialize)]
pub struct MeasureFile {
    /// Its symbol.
    pub of: String,
    /// The lowest the heaps and losses allow.
    pub low: f64,
    /// The likely share.
    pub likely: f64,
    /// The highest the heaps and losses allow.
    pub high: f64,
    /// Nine times in ten it comes out above this.
    pub usual_low: f64,
    /// Nine times in ten it comes out below this.
    pub usual_high: f64,
    /// The least the target takes.
    pub target_low: Option<f64>,
    /// The most the target takes.
    pub target_high: Option<f64>,
}

/// A chance, in parts of one.
#[derive(Clone, Debug, Serialize)]
pub struct ChanceFile {
    /// Share of the draws in target.
    pub share: f64,
    /// Low end of its error.
    pub low: f64,
    /// High end of its error.
    pub high: f64,
    /// How many draws.
    pub draws: usize,
}

impl MadeFile {
    /// The file of a charge.
    pub fn of(made: &Made) -> MadeFile {
        let makeup = &made.makeup;
        let order = order_of_charging(&makeup.weighed, &made.heaps);
        let next = makeup.next.as_ref();
        MadeFile {
            oddside: env!("CARGO_PKG_VERSION").to_owned(),
            name: made
                .asked
                .job
                .clone()
                .unwrap_or_else(|| Language::Uk.word("charge-alone")),
            target: made.asked.wish.target.name.clone(),
            charged_kg: six_figures(makeup.charged.as_kg()),
            metal_kg: six_figures(makeup.metal.as_kg()),
            melt_loss_percent: six_figures(made.asked.loss.share.likely() * 100.0),
            weigh_out: order
                .iter()
                .map(|weighed| WeighedFile {
                    heap: weighed.name.clone(),
                    kg: six_figures(weighed.mass.as_kg()),
                    cost: weighed.cost.as_ref().map(money),
                })
                .collect(),
            cost: makeup.cost.as_ref().map(money),
            composition: makeup.composition.iter().map(measure).collect(),
            chance: ChanceFile {
                share: six_figures(makeup.chance.share),
                low: six_figures(makeup.chance.low),
                high: six_figures(makeup.chance.high),
                draws: DRAWS,
            },
            held_by: makeup
                .binding
                .iter()
                .map(|of| Language::Uk.say(&binding_words(of, made)))
                .collect(),
            next: next.map(|next| Language::Uk.say(&next_words(next, System::Metric))),
            remarks: sorted(remarks(made)).iter().map(Remark::file).collect(),
            sources: made.sources.clone(),
        }
    }

    /// The file as text, the same bytes for the same charge.
    pub fn text(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default() + "\n"
    }
}

fn measure(measure: &metal::charge_makeup::composition::Measure) -> MeasureFile {
    let per_cent = |share: f64| six_figures(share * 100.0);
    let limit = measure.limit;
    MeasureFile {
        of: measure.of.symbol().to_owned(),
        low: per_cent(measure.share.low()),
        likely: per_cent(measure.share.likely()),
        high: per_cent(measure.share.high()),
        usual_low: per_cent(measure.usual.0),
        usual_high: per_cent(measure.usual.1),
        target_low: limit.and_then(|limit| limit.low).map(per_cent),
        target_high: limit.and_then(|limit| limit.high).map(per_cent),
    }
}

fn money(money: &measure::money::Money) -> MoneyFile {
    MoneyFile {
        amount: six_figures(money.amount),
        currency: money.currency.clone(),
    }
}

/// Six figures are more than any scrap is known to, and keep the file free of last bits.
fn six_figures(value: f64) -> f64 {
    measure::text::rounded(value, 6).parse().unwrap_or(value)
}
