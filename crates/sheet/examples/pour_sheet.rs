//! Writes the sample sheet to standard output: `cargo run -p sheet --example pour_sheet -- letter`.

use std::error::Error;
use std::io::Write;

use sheet::Paper;

#[path = "../tests/pump_housing/mod.rs"]
mod pump_housing;

fn main() -> Result<(), Box<dyn Error>> {
    let paper = match std::env::args().nth(1).as_deref() {
        Some("letter") => Paper::Letter,
        _ => Paper::A4,
    };
    let bytes = sheet::pdf(&pump_housing::sample(), paper)?;
    std::io::stdout().write_all(&bytes)?;
    Ok(())
}
