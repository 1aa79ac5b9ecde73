//! What the commands have in common that write solids: where they write, and what they say then.

use std::path::{Path, PathBuf};

use job::folder::write_all_new;
use job::words::Language;
use job::words::said::Said;

use crate::print;
use crate::trouble::Trouble;

/// What was asked for.
pub struct Asked {
    /// A job folder or its job file.
    pub job: PathBuf,
    /// Where to write; left out, a folder of its own in that of the job.
    pub out: Option<PathBuf>,
    /// Whether files that are there are written over.
    pub force: bool,
}

/// Writes files where they were asked for, or into `own`, and says so.
pub fn write(
    asked: &Asked,
    own: &Path,
    files: &[(String, Vec<u8>)],
    language: Language,
) -> Result<(), Trouble> {
    let out = asked.out.as_deref().unwrap_or(own);
    write_all_new(out, files, asked.force)?;
    let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    let written = Said::new("written-to")
        .with("folder", out.display().to_string())
        .with("files", names.join(", "));
    print::talk(&language.say(&written));
    Ok(())
}
