//! Every command and option.

use std::path::PathBuf;

use ::bench::class;
use clap::{Parser, Subcommand, ValueEnum};
use measure::heat::Temperature;
use measure::text::Typed;

pub use self::bench::{ExperimentCommand, HeapCommand, SandCommand, Shown};
pub use self::log::{LogArgs, LogCommand};

mod bench;
mod log;

/// From a part mesh and a heap of sand to a sound casting.
#[derive(Debug, Parser)]
#[command(name = "oddside", version, about, long_about = None, after_help = EXITS)]
pub struct Args {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// Exit codes, printed under the help.
const EXITS: &str = "\
Exit codes:
  0    taken: read, planned, written
  1    the disk said no
  2    refused: the reason and the place are told
  3    ask: something has to be chosen first, such as the unit of a mesh
  64   the command was not understood
  130  stopped by Ctrl-C; nothing half-written is left";

/// Where heat is followed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Place {
    /// On the processor.
    Cpu,
    /// On a graphics card.
    Gpu,
}

/// What is done with the phones of a shop.
#[derive(Debug, Subcommand)]
pub enum PhonesCommand {
    /// A new code for pairing a phone, good for ten minutes; the one before it is good no more.
    Add,
    /// List the paired phones.
    List,
    /// Let a phone in no more, from this moment on.
    Remove {
        /// What it is called.
        name: String,
    },
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Start a job folder with a commented job.toml, and a shop.toml where there is none above it.
    New {
        /// The folder to make.
        dir: PathBuf,
    },
    /// Look at a mesh: is it a solid, how large, how heavy in each metal.
    Look {
        /// STL, OBJ, PLY or 3MF.
        mesh: PathBuf,
        /// Unit of the mesh where the file does not say: mm, cm, m, in or um.
        #[arg(long)]
        unit: Option<String>,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Work a job out: charge, flask, sand, sprue, feeder, weights; write sheet and plan.json.
    Plan {
        /// A job folder, its job.toml, or for a quick look a mesh.
        job: PathBuf,
        /// The metal, for a quick look at a mesh.
        #[arg(long)]
        metal: Option<String>,
        /// Unit of the mesh, for a quick look at a mesh.
        #[arg(long)]
        unit: Option<String>,
        /// Print plan.json instead of the summary.
        #[arg(long)]
        json: bool,
        /// Folder to write into; left out, the job folder, or NAME-plan for a mesh.
        #[arg(long)]
        out: Option<PathBuf>,
        /// Print the sheet for US Letter instead of A4.
        #[arg(long)]
        letter: bool,
        /// Follow the heat in the mould at a quick look, and put its times beside the laws.
        #[arg(long)]
        solve: bool,
    },
    /// Build the mould as solids: castings, sprue, runner, gates, feeders, cope and drag as STL
    /// files and one glTF, and tell what each weighs and what is wrong.
    #[command(alias = "mold")]
    Mould {
        /// A job folder or its job.toml.
        job: PathBuf,
        /// Folder to write into; left out, `mould` in the job folder.
        #[arg(long)]
        out: Option<PathBuf>,
        /// Write over files that are there already.
        #[arg(long)]
        force: bool,
    },
    /// Make the pattern: stock, contraction, draught, core prints; halves or one piece, oddside or
    /// board, as 3MF and STL, with the height gauge for its joint.
    Pattern {
        /// A job folder or its job.toml.
        job: PathBuf,
        /// Write over files that are there already.
        #[arg(long)]
        force: bool,
        /// Folder to write into; left out, `pattern` in the job folder.
        #[arg(long)]
        out: Option<PathBuf>,
    },
    /// Print the pour card for the wall, once each of ten points is ticked as dry by its name.
    Card {
        /// Job folders, one for each mould of the pour.
        #[arg(required = true)]
        jobs: Vec<PathBuf>,
        /// What you have looked at and found dry and warm: floor, ladle, tongs, skimmer,
        /// ingot-moulds, crucible, charge, flux, mould, cores.
        #[arg(long, value_delimiter = ',', value_name = "POINTS")]
        dry: Vec<String>,
        /// Print it for US Letter instead of A4.
        #[arg(long)]
        letter: bool,
        /// File to write; left out, pour-card.pdf beside the job.
        #[arg(long)]
        out: Option<PathBuf>,
    },
    /// Try the ways in which the part of a job draws: what is held, how deep, where it parts.
    Draw {
        /// A job folder or its job.toml.
        job: PathBuf,
        /// Write maps of the skin too: held, draught, metal, sand, corners.
        #[arg(long)]
        maps: bool,
        /// Folder to write them into; left out, `draw` in the job folder.
        #[arg(long, requires = "maps")]
        out: Option<PathBuf>,
        /// Write over files that are there.
        #[arg(long, requires = "maps")]
        force: bool,
    },
    /// Make the cores of a job as solids: bodies with prints, halves of their boxes, vents.
    Cores {
        /// A job folder or its job.toml.
        job: PathBuf,
        /// Folder to write into; left out, `cores` in the job folder.
        #[arg(long)]
        out: Option<PathBuf>,
        /// Write over files that are there.
        #[arg(long)]
        force: bool,
    },
    /// Follow how the mould fills and freezes: how long it fills, where air and cold metal gather,
    /// when each piece is solid, what is cut off from its feeder, how far feeders sink, when it
    /// may be opened; sections and fields as files.
    Freeze {
        /// A job folder or its job.toml.
        job: PathBuf,
        /// Most cells of the box around the metal: more are sharper and slower.
        #[arg(long, value_name = "NUMBER")]
        cells: Option<f64>,
        /// Follow one side only where the mould is the same on both sides of its middle: half or a
        /// quarter of the work.
        #[arg(long, conflicts_with = "feeder")]
        halves: bool,
        /// Follow it on the processor or on a graphics card; left out, on whichever is faster.
        #[arg(long, value_enum, value_name = "PLACE")]
        on: Option<Place>,
        /// Tell how long the metal stays above this, like "660 °C".
        #[arg(long, value_name = "TEMPERATURE", conflicts_with = "feeder")]
        time_above: Option<Typed<Temperature>>,
        /// Look for the smallest feeder that still feeds instead, and write no files.
        #[arg(long, conflicts_with_all = ["cells", "out", "force"])]
        feeder: bool,
        /// Print one JSON object instead of words, and write no files.
        #[arg(long)]
        json: bool,
        /// Folder to write into; left out, `freeze` in the job folder.
        #[arg(long, conflicts_with = "json")]
        out: Option<PathBuf>,
        /// Write over files that are there already.
        #[arg(long, conflicts_with = "json")]
        force: bool,
    },
    /// Run a bare case of heat conduction from a file: to check the solver on your own problem.
    Conduct {
        /// A case file, as told in docs/conduction.md.
        case: PathBuf,
        /// Follow it on the processor or on a graphics card; left out, on whichever is faster.
        #[arg(long, value_enum, value_name = "PLACE")]
        on: Option<Place>,
        /// Keep the run in this file every ten seconds, and go on from there where it is; gone when
        /// the run is through.
        #[arg(long, value_name = "FILE")]
        keep: Option<PathBuf>,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Tell what of this machine follows heat: processor, graphics cards with their drivers, how
    /// fast their memories are, and which of them takes which boxes.
    Computer {
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Print a job as a lesson: a pupil's sheet with blanks, and the answers for the teacher. With
    /// --pupils also the plan for a class: groups, roles, what happens when.
    Lesson {
        /// A job folder or its job.toml.
        job: PathBuf,
        /// Pupils, each of whom gets a casting.
        #[arg(long)]
        pupils: Option<usize>,
        /// Lessons in which they come.
        #[arg(long, default_value_t = class::SESSIONS)]
        sessions: usize,
        /// Minutes of a lesson.
        #[arg(long, default_value_t = class::MINUTES)]
        minutes: f64,
        /// Grown-ups at the fire.
        #[arg(long, default_value_t = class::ADULTS)]
        adults: usize,
        /// Flasks of the size of the plan; left out, those of the shop's file.
        #[arg(long)]
        flasks: Option<usize>,
        /// Print it for US Letter instead of A4.
        #[arg(long)]
        letter: bool,
        /// Folder to write into; left out, the job folder.
        #[arg(long)]
        out: Option<PathBuf>,
    },
    /// Explain a word of the trade, in a sentence; without a word, all of them.
    Glossary {
        /// The word, in any of the languages, or a part of it.
        word: Option<String>,
        /// Print a JSON list instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Make a charge up from your heaps of metal: what to weigh out, what it comes to, how sure.
    Charge {
        /// A job folder or its job.toml; left out, say --target and --mass.
        job: Option<PathBuf>,
        /// The shop's file, instead of the one above the job.
        #[arg(long)]
        shop: Option<PathBuf>,
        /// What it has to come to, without a job: A356, gunmetal, grey iron, ...
        #[arg(long)]
        target: Option<String>,
        /// Liquid metal wanted at the spout, without a job.
        #[arg(long)]
        mass: Option<String>,
        /// What has to go in, without a job: "2 kg of returns", "all of gates".
        #[arg(long)]
        use_up: Vec<String>,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Work out any law of the trade by name: without a name, list them all.
    Reckon {
        /// The law, as listed: choke, cope-lift, water-to-add.
        name: Option<String>,
        /// What it asks for, each with its unit or range: poured='4.2 kg' time='3 to 5 s'.
        #[arg(value_name = "KEY=FIGURE")]
        given: Vec<String>,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// Explain a figure of a plan: its law, the numbers in it, its sources, what would narrow it.
    Why {
        /// The figure, as the plan calls it: "cope lift"; without one, list them all.
        figure: Option<String>,
        /// The job folder.
        #[arg(long, default_value = ".")]
        job: PathBuf,
    },
    /// Plan a few batches of sand, take their results in, and see what they say.
    Experiment {
        /// What to do with it.
        #[command(subcommand)]
        what: ExperimentCommand,
    },
    /// The sand on the bench: its card, its water, a mix weighed out, tests from day to day.
    Sand {
        /// What to do.
        #[command(subcommand)]
        what: SandCommand,
    },
    /// The book of a heap: what it holds, what a pour does to it, how to bring it back.
    Heap {
        /// What to do.
        #[command(subcommand)]
        what: HeapCommand,
    },
    /// Say what a defect may come from, how to tell, and the one thing to change: look=round-holes
    /// place=cope-face surface=smooth moisture_percent=6.5, as told in docs/diagnose-cases.md.
    Diagnose {
        /// What is seen and what was written down.
        #[arg(value_name = "KEY=VALUE")]
        given: Vec<String>,
        /// A pour of the log, whose defects and records are taken: its number, or last.
        #[arg(long)]
        pour: Option<String>,
        /// Print one JSON object instead of words.
        #[arg(long)]
        json: bool,
    },
    /// The shop's log: what was planned, what was done, what came out.
    Log(LogArgs),
    /// Open the working sheet in a browser of this machine: jobs, plans, drawings, every figure to
    /// be changed where it stands or asked why. Nobody else can reach it; with --lan paired phones
    /// reach the bench card.
    Serve {
        /// The folder of the shop, in which the job folders lie.
        #[arg(default_value = ".")]
        dir: PathBuf,
        /// The port; 0 takes any that is free.
        #[arg(long, default_value_t = 7350)]
        port: u16,
        /// Let paired phones of the local network reach the bench card, over TLS: at all addresses
        /// of this machine on port 7351, or at this one.
        #[arg(long, value_name = "ADDRESS", num_args = 0..=1, default_missing_value = "")]
        lan: Option<String>,
    },
    /// The phones that may reach the bench card: pair, list, remove.
    Phones {
        /// What to do.
        #[command(subcommand)]
        what: PhonesCommand,
    },
    /// Print the man page, for `man -l -`.
    Man,
    /// Print the completions of a command shell: bash, elvish, fish, powershell, zsh.
    Completions {
        /// The command shell.
        shell: clap_complete::Shell,
    },
    /// Print the JSON schema of plan.json.
    Schema,
}
