//! Builds the page, so that it can be carried in the program: `npm ci` where the tools are not
//! there yet, then the front end into the build folder. `WEB_DIST` names a folder with the page
//! already built, for machines without Node.

use std::env;
use std::path::{Path, PathBuf};
use std::process::Command;

/// What the page is made from, in `ui`.
const SOURCES: [&str; 9] = [
    "src",
    "public",
    "index.html",
    "bench.html",
    "package.json",
    "package-lock.json",
    "svelte.config.js",
    "vite.config.ts",
    "tsconfig.json",
];

fn main() {
    println!("cargo::rerun-if-env-changed=WEB_DIST");
    let dist = match env::var_os("WEB_DIST") {
        Some(dist) => given(PathBuf::from(dist)),
        None => built(Path::new("ui")),
    };
    match dist {
        Ok(dist) => println!("cargo::rustc-env=WEB_DIST_DIR={}", dist.display()),
        Err(words) => {
            for line in words.lines() {
                println!("cargo::error={line}");
            }
        }
    }
}

/// A folder with the page already built.
fn given(dist: PathBuf) -> Result<PathBuf, String> {
    match dist.join("index.html").is_file() {
        true => Ok(dist),
        false => Err(format!(
            "{} holds no page: WEB_DIST has to be the folder that the front end was built into",
            dist.display()
        )),
    }
}

/// The folder into which the page was built.
fn built(ui: &Path) -> Result<PathBuf, String> {
    for source in SOURCES {
        let path = ui.join(source);
        if path.exists() {
            println!("cargo::rerun-if-changed={}", path.display());
        }
    }
    let out = PathBuf::from(env::var_os("OUT_DIR").unwrap_or_default()).join("dist");
    if !ui.join("node_modules").is_dir() {
        run(ui, &["ci", "--no-audit", "--no-fund"])?;
    }
    let out_dir = out.display().to_string();
    let build = ["run", "build", "--", "--outDir", &out_dir, "--emptyOutDir"];
    run(ui, &build)?;
    Ok(out)
}

/// Runs npm in a folder.
fn run(folder: &Path, arguments: &[&str]) -> Result<(), String> {
    let done = Command::new("npm")
        .args(arguments)
        .current_dir(folder)
        .output();
    match done {
        Ok(output) if output.status.success() => Ok(()),
        Ok(output) => Err(format!(
            "npm {}:\n{}{}",
            arguments.join(" "),
            String::from_utf8_lossy(&output.stdout),
            String::from_utf8_lossy(&output.stderr)
        )),
        Err(error) => Err(format!(
            "the page needs npm (Node 20 or later) to be built ({error}); install it, or set \
             WEB_DIST to a folder with the page already built"
        )),
    }
}
