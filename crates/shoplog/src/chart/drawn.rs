//! The months of a log for the terminal.

use job::words::Language;
use job::words::said::Said;
use measure::text::rounded;

use crate::chart::Chart;

/// Letters of a bar that stands for all castings of a month.
const BAR: usize = 20;

/// A line for each month: a bar of rejects, their share, yield and fuel.
pub fn lines(chart: &Chart, language: Language) -> String {
    let each = chart.months.iter().enumerate().map(|(at, month)| {
        let filled = month
            .share()
            .map_or(0, |share| (share * BAR as f64).round() as usize);
        let bar = format!(
            "{}{}",
            "█".repeat(filled),
            "·".repeat(BAR - filled.min(BAR))
        );
        let bad = Said::new("log-chart-bad")
            .with("bad", month.bad.to_string())
            .with("judged", month.judged.to_string());
        let mut parts = vec![month.month.clone(), bar, language.say(&bad)];
        let percent = |share: f64| format!("{} %", rounded(share * 100.0, 3));
        if let Some(yields) = month.yields {
            parts.push(language.say(&Said::new("log-chart-yield").with("share", percent(yields))));
        }
        if let Some(fuel) = month.fuel {
            let fuel = rounded(fuel, 3);
            parts.push(language.say(&Said::new("log-chart-fuel").with("fuel", fuel)));
        }
        if chart.is_beyond(at) {
            parts.push(language.word("log-chart-beyond"));
        }
        format!("{}\n", parts.join("  "))
    });
    each.collect()
}
