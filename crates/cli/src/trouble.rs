//! What went wrong, told so that it can be put right.

use std::io;
use std::process::ExitCode;

use bench::class::NoClass;
use bench::experiment::opened::OpenError;
use bench::trouble::BenchError;
use job::file_fault::FileFault;
use job::folder::FolderError;
use job::job::JobError;
use miette::{Diagnostic, GraphicalReportHandler, GraphicalTheme, NamedSource, SourceSpan};
use reckon::refusal::Refusal;
use shoplog::chart::picture::PictureError;
use shoplog::diagnosis::answer::AnswerError;
use shoplog::diagnosis::from_log::CaseError;
use shoplog::error::LogError;
use thiserror::Error;
use web::lan::LanError;

use crate::print;

/// Why a command did not end well.
#[derive(Debug, Error)]
pub enum Trouble {
    /// The job folder.
    #[error(transparent)]
    Folder(#[from] FolderError),
    /// The job folder, told as JSON on standard output.
    #[error("{0}")]
    FolderAsJson(FolderError),
    /// The sheet.
    #[error("pour sheet: {0}")]
    Sheet(#[from] sheet::SheetError),
    /// A value on the command line.
    #[error("{0}")]
    Usage(JobError),
    /// A mesh without a metal.
    #[error(
        "for a plan of a mesh say the metal too: --metal aluminium, gunmetal, brass, zinc, iron"
    )]
    NoMetal,
    /// An option that belongs to a mesh.
    #[error("{0} goes with a mesh; for a job write it in job.toml")]
    Misplaced(&'static str),
    /// A mesh that has to be settled before there is a plan.
    #[error("no plan: the mesh has to be settled first\n{remarks}")]
    Unsettled {
        /// What was found in it.
        remarks: String,
        /// Whether something has to be chosen, such as its unit.
        ask: bool,
    },
    /// Nothing served.
    #[error(transparent)]
    Serve(#[from] web::ServeError),
    /// Something about the phones of the shop.
    #[error(transparent)]
    Phones(#[from] LanError),
    /// No pour card.
    #[error(transparent)]
    NoCard(#[from] job::pour_card::NoCard),
    /// No mould of solids.
    #[error("no mould: {0}")]
    NoMould(#[from] job::mould_solids::NoMould),
    /// A freezing that was not followed.
    #[error("not followed: {0}")]
    NoFreeze(#[from] job::freezing::NoFreeze),
    /// A pattern that was not made.
    #[error(transparent)]
    Making(#[from] job::making::MakingError),
    /// A solid that was not written.
    #[error("nothing is written: {0}")]
    Write(#[from] pattern::threemf_write::WriteError),
    /// A part that cannot be drawn at all.
    #[error("draw: {0}")]
    NoDraw(pattern::draw::DrawError),
    /// The skin of the part cannot be judged.
    #[error(transparent)]
    NoMaps(#[from] pattern::draw::maps::MapsError),
    /// No cores.
    #[error("no cores: {0}")]
    NoCores(pattern::cores::CoreError),
    /// No lesson.
    #[error(transparent)]
    NoLesson(#[from] job::lesson::NoLesson),
    /// A law that was not worked out.
    #[error(transparent)]
    Reckon(#[from] reckon::refusal::Refusal),
    /// Something given to a law that is no pair.
    #[error("\"{0}\" gives nothing a name: write it like poured='4.2 kg'")]
    NotAPair(String),
    /// A figure that the plan does not have.
    #[error("the plan has no figure called \"{name}\": {near}")]
    NoSuchFigure {
        /// What was asked for.
        name: String,
        /// What there is.
        near: String,
    },
    /// A charge that cannot be made up.
    #[error("{0}")]
    Charge(String),
    /// An option that belongs to a charge without a job.
    #[error("{0} goes without a job; for a job write it under [charge] in job.toml")]
    InTheJob(&'static str),
    /// A charge without a target or a mass.
    #[error("for a charge without a job say both: --target A356 --mass \"4 kg\"")]
    NoTarget,
    /// A charge whose mass the plan does not give.
    #[error("the plan gives no mass for the charge: write mass = \"4 kg\" under [charge]")]
    NoMass,
    /// A graphics card that was asked for by name.
    #[error("no graphics card for this: {0}; without --on the processor takes it")]
    Card(gpu::card::Unable),
    /// A case file that is not on the disk.
    #[error("{path}: {error}")]
    CaseDisk {
        /// The file.
        path: String,
        /// What the disk said.
        error: io::Error,
    },
    /// A case file that is not sound.
    #[error("{path}: {error}")]
    CaseFile {
        /// The file.
        path: String,
        /// What is wrong with it.
        error: conduct::reading::CaseFileError,
    },
    /// A kept run that is of no use.
    #[error("{path}: {error}")]
    KeptRun {
        /// The file.
        path: String,
        /// What is wrong with it.
        error: conduct::answer::KeptError,
    },
    /// A case that was not solved.
    #[error(transparent)]
    Conduct(#[from] conduct::answer::NoAnswer),
    /// An experiment that cannot be planned or read.
    #[error("{0}")]
    Experiment(String),
    /// Batches that are not there.
    #[error(transparent)]
    Session(#[from] bench::experiment::session::SessionError),
    /// Nothing to enter.
    #[error(
        "say what came out: a batch and its results (3 strength=45), or a table with --csv FILE"
    )]
    NothingToEnter,
    /// A result that is not understood.
    #[error("{0}")]
    Result(bench::experiment::trouble::EntryError),
    /// A result about which something has to be said first.
    #[error("{0}")]
    ResultAsked(bench::experiment::trouble::EntryError),
    /// The sand bench.
    #[error(transparent)]
    Bench(#[from] bench::trouble::BenchError),
    /// The shop's log.
    #[error(transparent)]
    Log(#[from] shoplog::error::LogError),
    /// No answer to what went wrong.
    #[error(transparent)]
    NoAnswer(#[from] AnswerError),
    /// A word that the glossary does not have.
    #[error("\"{0}\" is not in the glossary: oddside glossary lists every word")]
    NoWord(String),
    /// No lessons for a class.
    #[error(transparent)]
    NoClass(#[from] NoClass),
    /// A picture of the log that is not drawn.
    #[error(transparent)]
    NoPicture(#[from] PictureError),
    /// A lesson that the shop's file does not take.
    #[error(transparent)]
    Accept(#[from] shoplog::learn::accepted::AcceptError),
    /// A lesson that the log does not teach.
    #[error("the log teaches nothing called \"{name}\": it teaches {known}")]
    NoLessonOfLog {
        /// What was asked for.
        name: String,
        /// What there is.
        known: String,
    },
    /// No shop's file.
    #[error("there is no shop.toml above this folder: start one with oddside new DIR")]
    NoShopFile,
    /// Nothing to compare a pour with.
    #[error("no pour before it has only good castings: say of some pours that they are (good=yes)")]
    NoGoodPour,
    /// A share that is none.
    #[error("\"{0}\" is no per cent between 0 and 100: write it like '40 %'")]
    NoShare(String),
    /// A plan that cannot be read.
    #[error("{path} is no plan that this oddside knows ({error}): work the job out again")]
    NoPlan {
        /// The file.
        path: String,
        /// What is wrong.
        error: serde_json::Error,
    },
    /// Standard output.
    #[error("cannot print: {0}")]
    Output(io::Error),
}

/// What clap has to say, with our exit code for it.
pub fn usage(wrong: &clap::Error) -> ExitCode {
    // Help and version are asked for, not wrong; printing them may still meet a closed pipe.
    let _ = wrong.print();
    if wrong.use_stderr() {
        ExitCode::from(64)
    } else {
        ExitCode::SUCCESS
    }
}

impl From<OpenError> for Trouble {
    fn from(error: OpenError) -> Trouble {
        match error {
            OpenError::Folder(error) => Trouble::Folder(error),
            error @ OpenError::In { .. } => Trouble::Experiment(error.to_string()),
        }
    }
}

impl Trouble {
    /// The same trouble for a reader of JSON.
    pub fn folder_as_json(error: FolderError) -> Trouble {
        Trouble::FolderAsJson(error)
    }

    /// Tells it, and gives the exit code.
    pub fn tell(&self) -> ExitCode {
        match self {
            Trouble::Folder(FolderError::File(fault)) => tell_with_place(fault),
            Trouble::FolderAsJson(error) => tell_as_json(error),
            _ => print::talk(&format!("error: {self}")),
        }
        ExitCode::from(self.code())
    }

    fn code(&self) -> u8 {
        match self {
            Trouble::Folder(FolderError::Disk { .. }) | Trouble::Output(_) => 1,
            Trouble::FolderAsJson(FolderError::Disk { .. }) | Trouble::CaseDisk { .. } => 1,
            Trouble::Serve(web::ServeError::NoFolder { .. } | web::ServeError::IsJob { .. }) => 2,
            Trouble::Serve(web::ServeError::Lan(error)) | Trouble::Phones(error) => match error {
                LanError::NotLocal(_) | LanError::NoAddress(_) | LanError::NoPhone { .. } => 2,
                _ => 1,
            },
            Trouble::Serve(_) => 1,
            Trouble::CaseFile { .. }
            | Trouble::KeptRun { .. }
            | Trouble::Conduct(_)
            | Trouble::Card(_) => 2,
            Trouble::Folder(_) | Trouble::FolderAsJson(_) | Trouble::Sheet(_) => 2,
            Trouble::Unsettled { ask, .. } => 2 + u8::from(*ask),
            Trouble::Reckon(Refusal::Impossible(_)) => 2,
            Trouble::NoCard(_) | Trouble::NoLesson(_) | Trouble::NoMould(_) => 2,
            Trouble::NoCores(_)
            | Trouble::NoDraw(_)
            | Trouble::NoFreeze(_)
            | Trouble::NoMaps(_) => 2,
            Trouble::Usage(_) | Trouble::NoMetal | Trouble::Misplaced(_) => 64,
            Trouble::Reckon(_) | Trouble::NotAPair(_) | Trouble::NoSuchFigure { .. } => 64,
            Trouble::Charge(_) | Trouble::NoMass => 2,
            Trouble::Bench(BenchError::Given(wrong)) if wrong.asks() => 3,
            Trouble::Bench(BenchError::Given(_)) => 64,
            Trouble::Bench(BenchError::Refused(_)) => 2,
            Trouble::Making(_) | Trouble::Write(_) => 2,
            Trouble::InTheJob(_) | Trouble::NoTarget | Trouble::NothingToEnter => 64,
            Trouble::Experiment(_) | Trouble::Session(_) | Trouble::Result(_) => 2,
            Trouble::ResultAsked(_) => 3,
            Trouble::Log(wrong) => code_of_log(wrong),
            Trouble::NoPlan { .. } | Trouble::Accept(_) | Trouble::NoGoodPour => 2,
            Trouble::NoShopFile | Trouble::NoAnswer(AnswerError::Table(_)) => 2,
            Trouble::NoPicture(PictureError::Log(wrong))
            | Trouble::NoAnswer(
                AnswerError::Log(wrong) | AnswerError::Case(CaseError::Log(wrong)),
            ) => code_of_log(wrong),
            Trouble::NoPicture(PictureError::Nothing(_)) => 2,
            Trouble::NoWord(_) | Trouble::NoPicture(_) | Trouble::NoClass(NoClass::Numbers(_)) => {
                64
            }
            Trouble::NoClass(_) => 2,
            Trouble::NoAnswer(_) | Trouble::NoLessonOfLog { .. } | Trouble::NoShare(_) => 64,
        }
    }
}

/// The disk is one thing, what was typed another, the log itself a third.
fn code_of_log(wrong: &LogError) -> u8 {
    match wrong {
        LogError::Disk { .. } | LogError::Full | LogError::Busy => 1,
        LogError::NoTable { .. } | LogError::NoColumn { .. } | LogError::Value(_) => 64,
        LogError::NoEntry { .. } | LogError::NotOne { .. } | LogError::BadId(_) => 64,
        _ => 2,
    }
}

/// A file that cannot be read is refused in the same words as a mesh that can.
fn tell_as_json(error: &FolderError) {
    let words = error.to_string();
    let remark = serde_json::json!({
        "code": "unreadable", "level": "stop", "about": "mesh", "place": null,
        "words": words, "advice": "export the part again as STL, OBJ, PLY or 3MF",
    });
    let object = serde_json::json!({
        "verdict": "refused", "unit": null, "volume_mm3": null, "area_mm2": null,
        "extents_mm": null, "centre_mm": null, "bodies": 0, "voids": 0, "remarks": [remark],
    });
    // The exit code tells the same when even this cannot be printed.
    let _ = print::out(&format!("{object:#}\n"));
}

#[derive(Debug, Error, Diagnostic)]
#[error("{message}")]
struct InFile {
    message: String,
    #[source_code]
    text: NamedSource<String>,
    #[label("here")]
    span: SourceSpan,
    #[help]
    hint: Option<String>,
}

fn tell_with_place(fault: &FileFault) {
    let report = InFile {
        message: fault.to_string(),
        text: NamedSource::new(&fault.file, fault.text.clone()),
        span: (fault.span.start, fault.span.len()).into(),
        hint: fault.hint.clone(),
    };
    let theme = match std::env::var_os("NO_COLOR") {
        Some(_) => GraphicalTheme::unicode_nocolor(),
        None => GraphicalTheme::unicode(),
    };
    let mut text = String::new();
    match GraphicalReportHandler::new_themed(theme).render_report(&mut text, &report) {
        Ok(()) => print::talk(&text),
        Err(_) => print::talk(&format!("error: {fault}")),
    }
}
