//! The commands of the shop's log and their options.

use std::path::PathBuf;

use clap::{Args, Subcommand};

/// Which log, and what is done with it.
#[derive(Debug, Args)]
pub struct LogArgs {
    /// The log; left out, log.sqlite beside the shop.toml above the folder one works in.
    #[arg(long = "log", value_name = "FILE", global = true)]
    pub file: Option<PathBuf>,
    /// What to do with it.
    #[command(subcommand)]
    pub what: LogCommand,
}

/// What is done with the log. An entry is called by its number, its id or `last`.
#[derive(Debug, Subcommand)]
pub enum LogCommand {
    /// Write a whole pour, filled from the plan of its job: mould, heat, pour and castings.
    Pour {
        /// The job folder, in which oddside plan has left its plan.json.
        job: PathBuf,
        /// What was done: temperature='720 C' time='5 s' good=2 heat=last heat.charge='2.1 kg'
        /// mould.moisture='4.5 %'.
        #[arg(value_name = "KEY=VALUE")]
        given: Vec<String>,
    },
    /// Write an entry of any table: heap, batch, sand-test, mould, heat, pour, casting, size,
    /// defect, weather.
    Add {
        /// The table.
        table: String,
        /// What it says; a wrong key tells which there are.
        #[arg(value_name = "KEY=VALUE")]
        given: Vec<String>,
    },
    /// Change an entry; what stood there is kept. KEY= alone empties a place.
    Change {
        /// The table.
        table: String,
        /// The entry.
        entry: String,
        /// What it is to say.
        #[arg(value_name = "KEY=VALUE", required = true)]
        given: Vec<String>,
    },
    /// List the last entries of a table; without one, tell how many each table holds.
    List {
        /// The table.
        table: Option<String>,
        /// How many.
        #[arg(long, default_value_t = 20)]
        last: usize,
        /// Print JSON instead of a table.
        #[arg(long)]
        json: bool,
    },
    /// Show an entry whole, with what is wanted in it and what is asked about it.
    Show {
        /// The table.
        table: String,
        /// The entry.
        #[arg(default_value = "last")]
        entry: String,
        /// Print JSON instead of lines.
        #[arg(long)]
        json: bool,
    },
    /// Look the whole log over: is the file sound, what contradicts itself.
    Check,
    /// Keep a photo for an entry, without the place it was taken at.
    Photo {
        /// The table.
        table: String,
        /// The entry.
        entry: String,
        /// The picture, JPEG or PNG.
        picture: PathBuf,
        /// What it shows.
        #[arg(long)]
        note: Option<String>,
    },
    /// Write all of it as CSV, a file a table, or with --json as one file.
    Export {
        /// The folder to write into, or the file.
        to: PathBuf,
        /// Write one JSON file.
        #[arg(long)]
        json: bool,
        /// Write over files that are there.
        #[arg(long)]
        force: bool,
    },
    /// Read exports back; what is there already stays as it stands.
    Import {
        /// CSV files by the names of their tables, or a JSON file.
        #[arg(required = true)]
        files: Vec<PathBuf>,
    },
    /// Move plain files of the sand bench in: heap.toml, readings.toml, sand.toml, or any other.
    MoveIn {
        /// The files.
        #[arg(required = true)]
        files: Vec<PathBuf>,
    },
    /// Write the plain files that moved in out again, to the last letter.
    MoveOut {
        /// The folder to write into.
        to: PathBuf,
        /// Write over files that are there.
        #[arg(long)]
        force: bool,
    },
    /// Copy the log while it is in use, and check the copy.
    Backup {
        /// The file to make.
        to: PathBuf,
    },
    /// Save what can be read of a damaged log into a new file.
    Salvage {
        /// The file to make.
        to: PathBuf,
    },
    /// Tell what the log teaches about your shop: contraction, loss, times, strength.
    Learn {
        /// Put what is told under this name into shop.toml.
        #[arg(long, value_name = "NAME")]
        accept: Vec<String>,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Tell what changed from pour to pour, what goes with bad castings, what changed together.
    Changes {
        /// Look at the last so many pours.
        #[arg(long, default_value_t = 200)]
        last: usize,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Then and now: what differs from the last good pour, weather and age of the heap included.
    Compare {
        /// The pour.
        #[arg(default_value = "last")]
        pour: String,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Tell how many castings on each side a comparison takes, before you start: '40 %' '10 %'.
    Power {
        /// Bad castings now.
        from: String,
        /// Bad castings hoped for.
        to: String,
        /// How often it is to show.
        #[arg(long, default_value = "80 %")]
        wanted: String,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Show rejects with their limits, yield and fuel month by month, and own figures as bands.
    Chart {
        /// What to draw: rejects, yield, fuel, contraction, moisture, heat, loss, test:NAME.
        #[arg(default_value = "rejects")]
        what: String,
        /// Draw it into this file, as SVG.
        #[arg(long, value_name = "FILE", alias = "out")]
        svg: Option<PathBuf>,
    },
}
