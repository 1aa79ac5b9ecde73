//! `oddside plan JOB`: work a job out and write what belongs to it.

use std::cell::OnceCell;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use job::fingerprint::fingerprint;
use job::folder::{is_mesh, look_at, open, shop_above, write_whole};
use job::freezing::{InMould, NoFreeze};
use job::job::{Job, mesh_unit};
use job::mould_drawn::drawn;
use job::mould_solids::{Mould, NoMould, mould_of_placed};
use job::part::Part;
use job::placed_part::PlacedPart;
use job::plan::Plan;
use job::plan_file::PlanFile;
use job::remark::{Level, of_mesh};
use job::shop::Shop;
use job::solved::{self, SolvedTimes};
use job::solved_kept::{self, Kept};
use job::words::said::Said;
use job::work_out::{placed, work_out_placed};

use crate::commands::look::exit_code;
use crate::print;
use crate::progress::Working;
use crate::trouble::Trouble;

/// What was asked for.
pub struct Asked {
    /// A job folder, a job file, or a mesh.
    pub job: PathBuf,
    /// The metal, for a mesh.
    pub metal: Option<String>,
    /// The unit, for a mesh.
    pub unit: Option<String>,
    /// Print plan.json.
    pub json: bool,
    /// Where to write.
    pub out: Option<PathBuf>,
    /// US Letter.
    pub letter: bool,
    /// Follow the heat at a quick look.
    pub solve: bool,
}

/// A job ready to be worked out.
struct Ready {
    job: Job,
    shop: Shop,
    shop_file: Option<PathBuf>,
    part: Part,
    /// The folder of the job; none for a mesh alone.
    folder: Option<PathBuf>,
    out: PathBuf,
}

/// Names of the files written.
const SHEET_FILE: &str = "pour-sheet.pdf";
const TEMPLATES_FILE: &str = "cut-templates.pdf";
const WORKINGS_FILE: &str = "workings.pdf";
const PLAN_FILE: &str = "plan.json";

/// Works out, writes, tells.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let ready = {
        let _working = Working::on("reading the mesh");
        if is_mesh(&asked.job) {
            quick(asked)?
        } else {
            from_folder(asked)?
        }
    };
    let language = ready.shop.words;
    if let Some(mesh) = ready.part.unsettled() {
        print::talk(&language.word("unsettled"));
        print::out(&print::remarks(&of_mesh::remarks(mesh), language))?;
        return Ok(exit_code(mesh.verdict));
    }
    let (placed, mut plan) = {
        let _working = Working::on("working out");
        let placed = placed(&ready.job, &ready.part);
        let plan = work_out_placed(&ready.job, &ready.shop, &ready.part, &placed);
        (placed, plan)
    };
    let solids = Solids {
        ready: &ready,
        placed: &placed,
        mould: OnceCell::new(),
    };
    let section = solve(asked, &solids, &mut plan);
    write(asked, &solids, &plan, section.as_deref())
}

/// The mould of a job in solids, built once and only when it is wanted.
struct Solids<'a> {
    ready: &'a Ready,
    placed: &'a PlacedPart,
    mould: OnceCell<Result<Mould, NoMould>>,
}

impl Solids<'_> {
    fn mould(&self) -> &Result<Mould, NoMould> {
        let Ready {
            job, shop, part, ..
        } = self.ready;
        self.mould
            .get_or_init(|| mould_of_placed(job, shop, part, self.placed))
    }

    /// The times of a quick look at its freezing.
    fn quick_look(&self) -> Result<SolvedTimes, NoFreeze> {
        let mould = self.mould().as_ref().map_err(|error| error.clone())?;
        solved::quick_look(&InMould {
            job: &self.ready.job,
            shop: &self.ready.shop,
            part: &self.ready.part,
            placed: self.placed,
            mould,
        })
    }
}

/// Puts the times by the heat in the mould beside those of the plan: as a freezing has kept them,
/// or at a quick look. Gives the section that the freezing has drawn.
fn solve(asked: &Asked, solids: &Solids<'_>, plan: &mut Plan) -> Option<String> {
    let ready = solids.ready;
    let kept = ready.folder.as_ref().map_or(Kept::None, |folder| {
        let print = fingerprint(&ready.job, &ready.shop, &ready.part);
        solved_kept::kept(folder, &print)
    });
    if let Kept::Fresh { times, section } = kept {
        solved::beside(plan, times);
        return section;
    }
    if kept == Kept::Stale {
        solved::told_stale(plan);
    }
    if asked.solve {
        let looked = {
            let _working = Working::on("following the heat");
            solids.quick_look()
        };
        match looked {
            Ok(times) => solved::beside(plan, times),
            // The plan stands without it.
            Err(error) => print::talk(&error.to_string()),
        }
    }
    None
}

fn write(
    asked: &Asked,
    solids: &Solids<'_>,
    plan: &Plan,
    section: Option<&str>,
) -> Result<ExitCode, Trouble> {
    let ready = solids.ready;
    // The answer first: the papers take about as long again.
    let json = PlanFile::of(plan).text();
    match asked.json {
        true => print::out(&json)?,
        false => print::out(&print::plan(plan))?,
    }
    let mut files: Vec<(&str, Vec<u8>)> = papers(asked, solids, plan, section)?;
    files.push((PLAN_FILE, json.into_bytes()));
    for (name, bytes) in &files {
        write_whole(&ready.out.join(name), bytes)?;
    }
    if ready.shop_file.is_none() {
        print::talk(&plan.words.word("no-shop-file"));
    }
    let names: Vec<&str> = files.iter().map(|(name, _)| *name).collect();
    let written = Said::new("written-to")
        .with("folder", ready.out.display().to_string())
        .with("files", names.join(", "));
    print::talk(&plan.words.say(&written));
    if plan
        .remarks
        .iter()
        .any(|remark| remark.level == Level::Stop)
    {
        print::talk(&plan.words.word("stop-told"));
    }
    Ok(ExitCode::SUCCESS)
}

/// Everything on paper.
fn papers(
    asked: &Asked,
    solids: &Solids<'_>,
    plan: &Plan,
    section: Option<&str>,
) -> Result<Vec<(&'static str, Vec<u8>)>, Trouble> {
    let _working = Working::on("typesetting");
    let paper = match asked.letter {
        true => sheet::Paper::Letter,
        false => sheet::Paper::A4,
    };
    // Each sheet is set on a core of its own: the first answer is to come within a second.
    let (sheet, templates, workings) = std::thread::scope(|scope| {
        let workings = scope.spawn(|| sheet::workings(plan, section, paper));
        let rigged = rigged(solids, plan);
        let sheet = scope.spawn({
            let mut page = sheet::page(&rigged);
            let folder = solids.ready.folder.as_deref();
            // Where phones come in, the code leads to the card of this job.
            if let Some(address) = folder.and_then(web::lan::card_address) {
                page.code_text = address;
            }
            move || sheet::pdf(&page, paper)
        });
        let templates = sheet::cut_templates(&rigged, paper);
        (joined(sheet), templates, joined(workings))
    });
    Ok(vec![
        (SHEET_FILE, sheet?),
        (TEMPLATES_FILE, templates?),
        (WORKINGS_FILE, workings?),
    ])
}

/// The plan with its drawing made from the solids of the mould, where they can be built.
fn rigged(solids: &Solids<'_>, plan: &Plan) -> Plan {
    let mut rigged = plan.clone();
    match solids.mould() {
        Ok(mould) => rigged.drawing = drawn(&plan.drawing, mould),
        // The sheet then shows a flat joint, which must not pass for one that draws.
        Err(error @ NoMould::Joint { .. }) => print::talk(&error.to_string()),
        Err(NoMould::NoShape | NoMould::Mould(_)) => {}
    }
    rigged
}

/// What a thread made; its panic goes on here.
fn joined<T>(thread: std::thread::ScopedJoinHandle<'_, T>) -> T {
    thread
        .join()
        .unwrap_or_else(|panic| std::panic::resume_unwind(panic))
}

fn from_folder(asked: &Asked) -> Result<Ready, Trouble> {
    for (option, given) in [("--metal", &asked.metal), ("--unit", &asked.unit)] {
        if given.is_some() {
            return Err(Trouble::Misplaced(option));
        }
    }
    let opened = open(&asked.job)?;
    Ok(Ready {
        job: opened.job,
        shop: opened.shop,
        shop_file: opened.shop_file,
        part: opened.part,
        out: asked.out.clone().unwrap_or_else(|| opened.folder.clone()),
        folder: Some(opened.folder),
    })
}

fn quick(asked: &Asked) -> Result<Ready, Trouble> {
    let metal = asked.metal.as_deref().ok_or(Trouble::NoMetal)?;
    let stem = asked.job.file_stem().unwrap_or_default().to_string_lossy();
    let job = Job::quick(&stem.replace('_', " "), metal).map_err(Trouble::Usage)?;
    let unit = asked
        .unit
        .as_deref()
        .map(mesh_unit)
        .transpose()
        .map_err(Trouble::Usage)?;
    let (shop, shop_file) = shop_above(Path::new("."))?;
    let part = Part::Mesh(look_at(&asked.job, unit)?);
    let out = asked
        .out
        .clone()
        .unwrap_or_else(|| PathBuf::from(format!("{stem}-plan")));
    Ok(Ready {
        job,
        shop,
        shop_file,
        part,
        folder: None,
        out,
    })
}
