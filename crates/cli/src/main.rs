//! The binary: a Plan in the terminal.

mod args;
mod commands;
mod print;
mod progress;
mod trouble;

use std::process::ExitCode;

use clap::Parser;

use bench::class::Class;
use bench::experiment::entry::Meant;

use crate::args::{Args, Command, ExperimentCommand};
use crate::commands::{
    card, charge, completions, computer, conduct, cores, draw, experiment, freeze, freeze_feeder,
    glossary, heap, lesson, log, look, man, mould, new, pattern, phones, plan, reckon, sand,
    schema, serve, solids, why,
};
use crate::trouble::Trouble;

fn main() -> ExitCode {
    progress::stop_cleanly_on_ctrl_c();
    let args = match Args::try_parse() {
        Ok(args) => args,
        Err(wrong) => return trouble::usage(&wrong),
    };
    run(args).unwrap_or_else(|trouble| trouble.tell())
}

fn run(args: Args) -> Result<ExitCode, Trouble> {
    match args.command {
        Command::New { dir } => new::run(&dir),
        Command::Look { mesh, unit, json } => look::run(&mesh, unit.as_deref(), json),
        Command::Plan {
            job,
            metal,
            unit,
            json,
            out,
            letter,
            solve,
        } => plan::run(&plan::Asked {
            job,
            metal,
            unit,
            json,
            out,
            letter,
            solve,
        }),
        Command::Mould { job, out, force } => mould::run(&solids::Asked { job, out, force }),
        Command::Pattern { job, out, force } => pattern::run(&solids::Asked { job, out, force }),
        Command::Card {
            jobs,
            dry,
            letter,
            out,
        } => card::run(&card::Asked {
            jobs,
            dry,
            letter,
            out,
        }),
        Command::Draw {
            job,
            maps,
            out,
            force,
        } => draw::run(&solids::Asked { job, out, force }, maps),
        Command::Cores { job, out, force } => cores::run(&solids::Asked { job, out, force }),
        Command::Freeze {
            job,
            feeder: true,
            on,
            json,
            ..
        } => freeze_feeder::run(&job, on, json),
        Command::Freeze {
            job,
            cells,
            halves,
            on,
            time_above,
            json,
            out,
            force,
            ..
        } => freeze::run(&freeze::Asked {
            files: solids::Asked { job, out, force },
            cells,
            halves,
            on,
            above: time_above.map(|typed| typed.value),
            json,
        }),
        Command::Conduct {
            case,
            on,
            keep,
            json,
        } => conduct::run(&case, on, keep.as_deref(), json),
        Command::Computer { json } => computer::run(json),
        Command::Lesson {
            job,
            pupils,
            sessions,
            minutes,
            adults,
            flasks,
            letter,
            out,
        } => {
            let class = pupils.map(|pupils| Class {
                pupils,
                sessions,
                minutes,
                adults,
                flasks,
            });
            lesson::run(&lesson::Asked {
                job,
                class,
                letter,
                out,
            })
        }
        Command::Glossary { word, json } => glossary::run(word.as_deref(), json),
        Command::Reckon { name, given, json } => reckon::run(name.as_deref(), &given, json),
        Command::Why { figure, job } => why::run(figure.as_deref(), &job),
        Command::Experiment { what } => run_experiment(what),
        Command::Sand { what } => sand::run(what),
        Command::Heap { what } => heap::run(what),
        Command::Log(args) => log::run(args),
        Command::Diagnose { given, pour, json } => {
            log::lessons::diagnose(pour.as_deref(), &given, json)
        }
        Command::Serve { dir, port, lan } => serve::run(&dir, port, lan.as_deref()),
        Command::Phones { what } => phones::run(&what),
        Command::Man => man::run(),
        Command::Completions { shell } => completions::run(shell),
        Command::Charge {
            job,
            shop,
            target,
            mass,
            use_up,
            json,
        } => charge::run(&charge::Asked {
            job,
            shop,
            target,
            mass,
            use_up,
            json,
        }),
        Command::Schema => schema::run(),
    }
}

fn run_experiment(what: ExperimentCommand) -> Result<ExitCode, Trouble> {
    match what {
        ExperimentCommand::New { dir } => experiment::new(&dir),
        ExperimentCommand::Plan {
            experiment,
            more,
            force,
            out,
            letter,
        } => experiment::plan::run(&experiment::plan::Asked {
            experiment,
            out,
            letter,
            more,
            force,
        }),
        ExperimentCommand::Enter {
            experiment,
            batch,
            results,
            csv,
            replace,
            again,
            sure,
        } => experiment::enter::run(&experiment::enter::Asked {
            experiment,
            batch,
            results,
            csv,
            meant: Meant {
                replace,
                again,
                sure,
            },
        }),
        ExperimentCommand::Read {
            experiment,
            more,
            out,
            json,
        } => experiment::reading::run(&experiment::reading::Asked {
            experiment,
            out,
            more,
            json,
        }),
    }
}
