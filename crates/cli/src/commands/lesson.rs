//! `oddside lesson JOB`: the pupil's sheet with blanks, and the answers for the teacher.

use std::path::PathBuf;
use std::process::ExitCode;

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
    /// US Letter.
    pub letter: bool,
    /// Where to write.
    pub out: Option<PathBuf>,
}

/// Names of the files written.
const PUPIL_FILE: &str = "pupil-sheet.pdf";
const ANSWERS_FILE: &str = "pupil-answers.pdf";

/// Works the job out and writes both papers; the answers are not shown in the terminal, where a
/// class may be looking on.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let opened = open(&asked.job)?;
    let lesson = lesson(&plan_of(&opened)?)?;
    let paper = match asked.letter {
        true => sheet::Paper::Letter,
        false => sheet::Paper::A4,
    };
    let out = asked.out.clone().unwrap_or(opened.folder);
    for (file, reader) in [(PUPIL_FILE, Reader::Pupil), (ANSWERS_FILE, Reader::Teacher)] {
        write_whole(&out.join(file), &sheet::lesson(&lesson, reader, paper)?)?;
    }
    for (at, task) in lesson.tasks.iter().enumerate() {
        let wanted = lesson.words.say(&task.wanted);
        print::out(&format!("{:>2}  {wanted}\n", at + 1))?;
    }
    let written = Said::new("written-to")
        .with("folder", out.display().to_string())
        .with("files", [PUPIL_FILE, ANSWERS_FILE].join(", "));
    print::talk(&lesson.words.say(&written));
    Ok(ExitCode::SUCCESS)
}
