//! `oddside computer`: what of this machine follows heat, and how fast its memories are.

use std::fmt::Write;
use std::process::ExitCode;

use gpu::adapters::{Adapter, adapters};
use gpu::card::{Card, LEAST_CELLS, Wished, chosen, is_faster};
use gpu::speed::{card_copy, processor_copy};
use serde::Serialize;

use crate::args::Place;
use crate::print;
use crate::progress::Working;
use crate::trouble::Trouble;

/// What this machine has.
#[derive(Debug, Serialize)]
struct Computer {
    processor: Processor,
    cards: Vec<CardTold>,
    /// The card on which heat is followed where nobody says otherwise, and from how many cells on.
    heat_on: Option<String>,
    from_cells: usize,
}

#[derive(Debug, Serialize)]
struct Processor {
    cores: usize,
    /// Bytes a second read and written when all cores copy.
    copies_bytes_s: f64,
}

#[derive(Debug, Serialize)]
struct CardTold {
    name: String,
    kind: String,
    interface: &'static str,
    driver: String,
    /// Longest list, bytes, and how much of it a program sees at once.
    list_bytes: u64,
    seen_bytes: u64,
    /// Bytes a second read and written when it copies within its own memory.
    copies_bytes_s: Option<f64>,
    /// Why it cannot be used.
    unable: Option<String>,
}

/// Looks and tells.
pub fn run(json: bool) -> Result<ExitCode, Trouble> {
    let computer = {
        let _working = Working::on("measuring the memories");
        look()
    };
    let text = match json {
        true => serde_json::to_string_pretty(&computer).unwrap_or_default() + "\n",
        false => told(&computer),
    };
    print::out(&text)?;
    Ok(ExitCode::SUCCESS)
}

/// The card on which heat in a box of so many cells is followed.
pub fn card_for(on: Option<Place>, cells: usize) -> Result<Option<Card>, Trouble> {
    let wished = match on {
        None => Wished::Faster,
        Some(Place::Cpu) => Wished::Processor,
        Some(Place::Gpu) => Wished::Card,
    };
    chosen(wished, cells).map_err(Trouble::Card)
}

fn look() -> Computer {
    let found = adapters();
    let faster = found.iter().find(|adapter| is_faster(adapter));
    Computer {
        processor: Processor {
            cores: std::thread::available_parallelism().map_or(1, usize::from),
            copies_bytes_s: processor_copy(),
        },
        heat_on: faster.map(|adapter| adapter.name.clone()),
        from_cells: LEAST_CELLS,
        cards: found.iter().map(card_told).collect(),
    }
}

fn card_told(adapter: &Adapter) -> CardTold {
    let copied = card_copy(adapter);
    let unable = copied.as_ref().err().map(ToString::to_string);
    CardTold {
        name: adapter.name.clone(),
        kind: adapter.kind.to_string(),
        interface: adapter.interface,
        driver: adapter.driver.clone(),
        list_bytes: adapter.bounds.list_bytes,
        seen_bytes: adapter.bounds.seen_bytes,
        copies_bytes_s: copied.ok(),
        unable,
    }
}

fn told(computer: &Computer) -> String {
    let mut text = String::new();
    let mut line = |label: &str, words: String| _ = writeln!(text, "{label:<18} {words}");
    let Processor {
        cores,
        copies_bytes_s,
    } = computer.processor;
    line(
        "processor",
        format!("{cores} cores, memory copies {}", speed(copies_bytes_s)),
    );
    for card in &computer.cards {
        line("card", format!("{}, {}", card.name, card.kind));
        line("", format!("{}, driver {}", card.interface, card.driver));
        let gib = |bytes: u64| bytes as f64 / f64::from(1 << 30);
        line(
            "",
            format!(
                "lists of up to {:.2} GiB, {:.2} GiB of one in sight at once",
                gib(card.list_bytes),
                gib(card.seen_bytes)
            ),
        );
        let copies = card.copies_bytes_s.map(|copies| {
            let times = copies / copies_bytes_s;
            let copies = speed(copies);
            format!("memory copies {copies}, {times:.2} times the processor's")
        });
        let unable = card.unable.as_ref().map(|why| format!("not used: {why}"));
        line("", copies.or(unable).unwrap_or_default());
    }
    if computer.cards.is_empty() {
        line(
            "card",
            "none with a driver for Vulkan, Metal or Direct3D 12".to_owned(),
        );
    }
    let heat = match &computer.heat_on {
        Some(name) => format!(
            "on {name} for boxes of {} cells and more, else on the processor",
            computer.from_cells
        ),
        None => "on the processor".to_owned(),
    };
    line(
        "heat is followed",
        format!("{heat}; --on cpu or --on gpu says otherwise"),
    );
    text
}

fn speed(bytes_s: f64) -> String {
    let gb_s = bytes_s / 1e9;
    match gb_s < 10.0 {
        true => format!("{gb_s:.1} GB/s"),
        false => format!("{gb_s:.0} GB/s"),
    }
}
