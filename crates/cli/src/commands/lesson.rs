//! `oddside lesson JOB`: the pupil's sheet with blanks, and the answers for the teacher.

use std::path::PathBuf;
use std::process::ExitCode;

use bench::class::{Class, class};
use job::folder::{open, write_whole};
use job::lesson::lesson;
use job::words::said::Said;
use sheet::Reader;

use crate::commands::opened::plan_of;
use crate::print;
use crate::trouble::Trouble;

/// What was asked for.
pub struct Asked {
    /// The job folder.
    pub job: PathBuf,
    /// The class that it is for, where one was told.
    pub class: Option<Class>,
    /// US Letter.
    pub letter: bool,
    /// Where to write.
    pub out: Option<PathBuf>,
}

/// Names of the files written.
const PUPIL_FILE: &str = "pupil-sheet.pdf";
const ANSWERS_FILE: &str = "pupil-answers.pdf";
const CLASS_FILE: &str = "class-plan.pdf";

/// Works the job out and writes both papers, and the plan for the class where one was told; the
/// answers are not shown in the terminal, where a class may be looking on.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let opened = open(&asked.job)?;
    let plan = plan_of(&opened)?;
    let lesson = lesson(&plan)?;
    let set = asked.class.as_ref();
    let set = set
        .map(|wanted| class(&plan, &opened.shop, wanted))
        .transpose()?;
    let paper = match asked.letter {
        true => sheet::Paper::Letter,
        false => sheet::Paper::A4,
    };
    let out = asked.out.clone().unwrap_or(opened.folder);
    let mut files = vec![PUPIL_FILE, ANSWERS_FILE];
    for (file, reader) in [(PUPIL_FILE, Reader::Pupil), (ANSWERS_FILE, Reader::Teacher)] {
        write_whole(&out.join(file), &sheet::lesson(&lesson, reader, paper)?)?;
    }
    if let Some(told) = &set {
        let sheet = sheet::bench_sheet(told, opened.shop.units, lesson.words, paper)?;
        write_whole(&out.join(CLASS_FILE), &sheet)?;
        files.push(CLASS_FILE);
        print::out(&print::told(told, lesson.words, opened.shop.units))?;
    }
    for (at, task) in lesson.tasks.iter().enumerate() {
        let wanted = lesson.words.say(&task.wanted);
        print::out(&format!("{:>2}  {wanted}\n", at + 1))?;
    }
    let written = Said::new("written-to")
        .with("folder", out.display().to_string())
        .with("files", files.join(", "));
    print::talk(&lesson.words.say(&written));
    Ok(ExitCode::SUCCESS)
}
