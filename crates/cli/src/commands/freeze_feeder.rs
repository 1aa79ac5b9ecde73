//! `oddside freeze JOB --feeder`: the smallest feeder that still feeds.

use std::path::Path;
use std::process::ExitCode;
use std::time::Instant;

use gpu::card::elsewhere;
use job::feeder_search::{MOST_CELLS, smallest_feeder};
use job::feeder_told::{file, told};
use job::folder::open;
use job::words::said::Said;

use crate::args::Place;
use crate::commands::computer::card_for;
use crate::commands::opened::settled;
use crate::print;
use crate::progress::Share;
use crate::trouble::Trouble;

/// Searches and tells; the time is told after the first look, which is the measure of the others.
pub fn run(job: &Path, on: Option<Place>, json: bool) -> Result<ExitCode, Trouble> {
    let opened = open(job)?;
    settled(&opened)?;
    let language = opened.shop.words;
    let card = card_for(on, MOST_CELLS as usize)?;
    let on = elsewhere(card.as_ref());
    if let Some(on) = on {
        let said = Said::new("freeze-on-card").with("card", on.name().to_owned());
        print::talk(&language.say(&said));
    }
    let begun = Instant::now();
    let search = {
        let working = Share::of("trying feeders");
        let mut is_timed = false;
        smallest_feeder(&opened.job, &opened.shop, &opened.part, on, &mut |look| {
            if look.done == 1 && !is_timed {
                is_timed = true;
                let each_s = begun.elapsed().as_secs_f64();
                // Narrow cells take about three times as long as wide ones, and half the looks.
                let all_s = 2.0 * each_s * look.most as f64;
                let said = Said::new("smallest-feeder-time")
                    .with("looks", look.most)
                    .with("each", format!("{each_s:.0} s"))
                    .with("all", format!("{:.1} min", all_s / 60.0));
                print::talk(&language.say(&said));
            }
            working.reached(look.done as f64 / look.most as f64);
            true
        })?
    };
    if json {
        print::out(&(serde_json::to_string_pretty(&file(&search)).unwrap_or_default() + "\n"))?;
        return Ok(ExitCode::SUCCESS);
    }
    let lines: String = told(&search)
        .iter()
        .map(|said| language.say(said) + "\n")
        .collect();
    print::out(&format!(
        "{}\n\n{lines}{}",
        opened.job.name,
        print::unread(language)
    ))?;
    Ok(ExitCode::SUCCESS)
}
