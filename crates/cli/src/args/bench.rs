//! The commands of the sand bench and their options.

use std::path::PathBuf;

use clap::{Args, Subcommand};

/// What is done with an experiment.
#[derive(Debug, Subcommand)]
pub enum ExperimentCommand {
    /// Start a folder with a commented experiment.toml.
    New {
        /// The folder to make.
        dir: PathBuf,
    },
    /// Plan the batches, or show the plan there is, and write their cards.
    Plan {
        /// An experiment's folder or its file.
        experiment: PathBuf,
        /// Add so many batches that the results so far speak for.
        #[arg(long, value_name = "COUNT", conflicts_with = "force")]
        more: Option<usize>,
        /// Plan anew although there is a plan; refused once it has results.
        #[arg(long)]
        force: bool,
        /// Folder for the cards; left out, the experiment's own.
        #[arg(long)]
        out: Option<PathBuf>,
        /// Print the cards for US Letter instead of A4.
        #[arg(long)]
        letter: bool,
    },
    /// Take results in: of one batch, or a table. Nothing that was entered is ever lost.
    Enter {
        /// An experiment's folder or its file.
        experiment: PathBuf,
        /// The number of the batch.
        #[arg(conflicts_with = "csv")]
        batch: Option<String>,
        /// What was measured on it: strength=45 permeability=80; and what was really weighed of a
        /// part, where that is not the plan: clay='182 g'.
        #[arg(value_name = "NAME=VALUE")]
        results: Vec<String>,
        /// A table: a first line with batch and names, then a line a batch.
        #[arg(long)]
        csv: Option<PathBuf>,
        /// What stands there was wrong; it stays in the file.
        #[arg(long, conflicts_with = "again")]
        replace: bool,
        /// The same batch was measured once more: the mean counts.
        #[arg(long)]
        again: bool,
        /// It truly is as far from the others as it looks.
        #[arg(long)]
        sure: bool,
    },
    /// Say what the results teach: noise, shape, winner or none, and what to make next.
    Read {
        /// An experiment's folder or its file.
        experiment: PathBuf,
        /// How many batches to propose.
        #[arg(long, value_name = "COUNT", default_value_t = 1)]
        more: usize,
        /// Folder for the pictures; left out, `pictures` in the experiment's own.
        #[arg(long)]
        out: Option<PathBuf>,
        /// Print one JSON object instead of words, and draw nothing.
        #[arg(long, conflicts_with = "out")]
        json: bool,
    },
}

/// How what came of an ask is shown.
#[derive(Debug, Args)]
pub struct Shown {
    /// Print it as a sheet too, into this PDF.
    #[arg(long, value_name = "FILE", conflicts_with = "json")]
    pub out: Option<PathBuf>,
    /// Print the sheet for US Letter instead of A4.
    #[arg(long, requires = "out")]
    pub letter: bool,
    /// Print one JSON object instead of words.
    #[arg(long)]
    pub json: bool,
}

/// What is done with sand. What is asked for is typed as KEY=FIGURE, each with its unit; masses
/// may be given in the shop's own scoops.
#[derive(Debug, Subcommand)]
pub enum SandCommand {
    /// Start a commented file for the tests of a sand.
    New {
        /// The file to make.
        #[arg(default_value = "sand.toml")]
        file: PathBuf,
    },
    /// Tell what a sand is, from its tests: grain, fines, moisture, loss, density, what it suits.
    Card {
        /// The file with its tests.
        #[arg(default_value = "sand.toml")]
        file: PathBuf,
        /// Draw the sizes of its grains as SVG too.
        #[arg(long, value_name = "FILE")]
        svg: Option<PathBuf>,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Weigh a mix out, in grams and own scoops; without a name, list the mixes.
    Recipe {
        /// The mix.
        mix: Option<String>,
        /// dry_sand=, mix= or flasks=, moisture=, metal=, parts.NAME=, price.NAME=.
        #[arg(value_name = "KEY=FIGURE", requires = "mix")]
        given: Vec<String>,
        /// How it is shown.
        #[command(flatten)]
        shown: Shown,
    },
    /// Tell how a batch is mulled, and by two tests ten minutes apart whether it has had enough:
    /// before= after= and noise= or test=.
    Mull {
        /// The two tests.
        #[arg(value_name = "KEY=FIGURE")]
        given: Vec<String>,
        /// The book of readings, for how far one test alone is off.
        #[arg(long, default_value = "readings.toml")]
        file: PathBuf,
        /// How it is shown.
        #[command(flatten)]
        shown: Shown,
    },
    /// Tell how much facing sand a pattern takes, how it is laid and what it costs in breath:
    /// block='80 mm, 60 mm, 18 mm' or area= edges= corners=, thickness= sand_density= sides=
    /// heap_grain= facing_grain= backing=.
    Facing {
        /// The pattern, and the grains.
        #[arg(value_name = "KEY=FIGURE")]
        given: Vec<String>,
        /// How it is shown.
        #[command(flatten)]
        shown: Shown,
    },
    /// Tell how wet the sand is and what to add: sand= wet= dry= step= now= wanted=.
    Water {
        /// What was weighed.
        #[arg(value_name = "KEY=FIGURE")]
        given: Vec<String>,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Tell the weight to dry to, how long it takes, when to weigh again: tub= now= wanted= air=
    /// humidity= wind= sun= oven= area= layer= started=, then weighed= after=.
    Dry {
        /// What was weighed, and the weather.
        #[arg(value_name = "KEY=FIGURE")]
        given: Vec<String>,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Tell how long a rammed mould may stand open: now= least= air= humidity= wind= sun= skin=.
    Stand {
        /// The mould, and the weather.
        #[arg(value_name = "KEY=FIGURE")]
        given: Vec<String>,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Tell what bonded sand takes up from damp air, by its pucks: at= most=.
    Pucks {
        /// The humidity asked about.
        #[arg(value_name = "KEY=FIGURE")]
        given: Vec<String>,
        /// The file with the pucks.
        #[arg(long, default_value = "sand.toml")]
        file: PathBuf,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Work a bench test out beside your own good days; without a name, tell how each is done.
    Test {
        /// The test.
        test: Option<String>,
        /// Its readings, each with its error if known: time='14 s ± 0.5 s'.
        #[arg(value_name = "KEY=FIGURE")]
        given: Vec<String>,
        /// Write the reading into the book under this day.
        #[arg(long, value_name = "DAY")]
        day: Option<String>,
        /// The sand of that day moulded well.
        #[arg(long, requires = "day")]
        good: bool,
        /// Who tested: two people who each test some batches twice show what hands do.
        #[arg(long, value_name = "NAME", requires = "day")]
        who: Option<String>,
        /// The book of readings.
        #[arg(long, default_value = "readings.toml")]
        file: PathBuf,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Watch the readings of a test: limits, steps and weighted means, and what speaks of a change.
    Watch {
        /// The test.
        test: String,
        /// The book of readings.
        #[arg(long, default_value = "readings.toml")]
        file: PathBuf,
        /// Write the charts as SVG too.
        #[arg(long, value_name = "FILE")]
        svg: Option<PathBuf>,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
}

/// What is done with a heap.
#[derive(Debug, Subcommand)]
pub enum HeapCommand {
    /// Start a commented book for a heap.
    New {
        /// The file to make.
        #[arg(default_value = "heap.toml")]
        file: PathBuf,
    },
    /// Tell what the heap holds after every pour of its book, and how long it will do.
    State {
        /// The book.
        #[arg(default_value = "heap.toml")]
        file: PathBuf,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Work a pour out and write it into the book: day= core_sand= core_binder= parting= crust_out=
    /// heap_out= sand= clay= organic= water=; its heat by freeze=JOB, a job that oddside freeze has
    /// followed, or by metal= section= poured= sand_mass= faces=.
    Pour {
        /// The pour, and what was done after it.
        #[arg(value_name = "KEY=FIGURE")]
        given: Vec<String>,
        /// The book.
        #[arg(long, default_value = "heap.toml")]
        file: PathBuf,
        /// Tell it and write nothing.
        #[arg(long)]
        look: bool,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Tell how to bring a tired or rained-on heap back: heap= wet= dry= wanted= dried= washed=
    /// unburnt= burnt= squeeze= silicate= sand= clay= exchange= add_clay=.
    Rescue {
        /// What was weighed, and what there is.
        #[arg(value_name = "KEY=FIGURE")]
        given: Vec<String>,
        /// How it is shown.
        #[command(flatten)]
        shown: Shown,
    },
}
