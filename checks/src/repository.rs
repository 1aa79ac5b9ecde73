//! The repository's own files, as the checks of its shape read them.

use std::io;
use std::path::{Path, PathBuf};

/// A text file of the repository.
#[derive(Clone, Debug)]
pub struct File {
    /// Its path from the root, with forward slashes.
    pub path: String,
    /// What stands in it.
    pub text: String,
}

/// The root of the repository.
pub fn root() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.parent().unwrap_or(here).to_owned()
}

/// The files under a folder with one of these endings, in the order of their paths; nothing where
/// the folder does not exist. Hidden and build folders are left out.
pub fn files(folder: &str, endings: &[&str]) -> io::Result<Vec<File>> {
    let mut found = Vec::new();
    let start = root().join(folder);
    if start.is_dir() {
        walk(&start, endings, &mut found)?;
    }
    found.sort_by(|a, b| a.path.cmp(&b.path));
    Ok(found)
}

/// The crates by the names of their folders, with the text of their manifests.
pub fn crates() -> io::Result<Vec<(String, String)>> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(root().join("crates"))? {
        let folder = entry?.path();
        let manifest = folder.join("Cargo.toml");
        if let (Some(name), true) = (folder.file_name(), manifest.is_file()) {
            let name = name.to_string_lossy().into_owned();
            found.push((name, std::fs::read_to_string(manifest)?));
        }
    }
    found.sort();
    Ok(found)
}

/// The code of a Rust file: its lines, each cut at its comment and with its strings emptied, so
/// that what is written in words does not count as code.
pub fn code_only(text: &str) -> Vec<String> {
    let mut reader = CodeReader::default();
    text.lines().map(|line| reader.line(line)).collect()
}

/// Reads on from line to line, since a string may run over several.
#[derive(Default)]
struct CodeReader {
    in_string: bool,
}

impl CodeReader {
    fn line(&mut self, line: &str) -> String {
        let mut code = String::new();
        let mut letters = line.chars().peekable();
        while let Some(letter) = letters.next() {
            match (self.in_string, letter) {
                (true, '\\') => {
                    letters.next();
                }
                (true, '"') => self.in_string = false,
                (true, _) => {}
                (false, '\'') if letters.peek() == Some(&'"') => {
                    letters.next();
                    letters.next();
                }
                (false, '"') => self.in_string = true,
                (false, '/') if letters.peek() == Some(&'/') => break,
                (false, _) => code.push(letter),
            }
        }
        code
    }
}

/// Folders of what is built or fetched.
const BUILT: [&str; 3] = ["target", "node_modules", "dist"];

fn walk(folder: &Path, endings: &[&str], found: &mut Vec<File>) -> io::Result<()> {
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        let name = path
            .file_name()
            .map_or_else(String::new, |name| name.to_string_lossy().into_owned());
        if name.starts_with('.') || BUILT.contains(&name.as_str()) {
            continue;
        }
        if path.is_dir() {
            walk(&path, endings, found)?;
        } else if endings.iter().any(|ending| name.ends_with(ending)) {
            found.push(File {
                path: from_root(&path),
                text: std::fs::read_to_string(&path)?,
            });
        }
    }
    Ok(())
}

fn from_root(path: &Path) -> String {
    let root = root();
    let path = path.strip_prefix(&root).unwrap_or(path);
    path.to_string_lossy().replace('\\', "/")
}
