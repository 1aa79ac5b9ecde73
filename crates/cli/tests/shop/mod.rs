//! A shop in a folder of its own, and what the program says in it.

#![allow(
    clippy::unwrap_used,
    dead_code,
    reason = "a helper that fails fails its test; not every test file uses all of it"
)]

use std::path::{Path, PathBuf};
use std::process::Command;

/// A job that needs no mesh: an openwork weight by its sizes and its weighed pattern.
pub const WEIGHTS: &str = r#"
name = "Weights"
[part]
[part.weighed]
mass = "230 g"
of = "pine"
[part.sizes]
length = "190 mm"
width = "120 mm"
height = "36 mm"
thickest = "24 mm"
thinnest = "8 mm"
shape = "frame"
[metal]
alloy = "A356"
"#;

/// A temporary folder to run in.
pub struct Shop {
    folder: tempfile::TempDir,
}

/// What the program said.
pub struct Said {
    pub code: i32,
    pub out: String,
    pub talk: String,
}

impl Shop {
    pub fn new() -> Shop {
        Shop {
            folder: tempfile::tempdir().unwrap(),
        }
    }

    /// A shop with the file that a new one starts with.
    pub fn with_its_file() -> Shop {
        let shop = Shop::new();
        shop.file("shop.toml", include_str!("../../../job/data/shop.toml"));
        shop
    }

    pub fn path(&self) -> &Path {
        self.folder.path()
    }

    /// Writes a file into the shop.
    pub fn file(&self, name: &str, bytes: impl AsRef<[u8]>) -> &Shop {
        let path = self.path().join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, bytes).unwrap();
        self
    }

    /// A job folder of the examples, copied with the mesh it names.
    pub fn example(&self, mesh: &str, job: &str) -> &Shop {
        let bytes = std::fs::read(examples().join("meshes").join(mesh)).unwrap();
        self.file(&format!("job/{mesh}"), bytes)
            .file("job/job.toml", job)
    }

    pub fn run(&self, args: &[&str]) -> Said {
        let output = Command::new(env!("CARGO_BIN_EXE_oddside"))
            .args(args)
            .current_dir(self.path())
            .output()
            .unwrap();
        Said {
            code: output.status.code().unwrap_or(-1),
            out: String::from_utf8(output.stdout).unwrap(),
            talk: String::from_utf8(output.stderr).unwrap(),
        }
    }

    /// Every file below the shop, sorted.
    pub fn files(&self) -> Vec<PathBuf> {
        let mut found = Vec::new();
        let mut folders = vec![self.path().to_owned()];
        while let Some(folder) = folders.pop() {
            for entry in std::fs::read_dir(folder).unwrap() {
                let path = entry.unwrap().path();
                match path.is_dir() {
                    true => folders.push(path),
                    false => found.push(path.strip_prefix(self.path()).unwrap().to_owned()),
                }
            }
        }
        found.sort();
        found
    }
}

impl Said {
    #[track_caller]
    pub fn ends_with(&self, code: i32) -> &Said {
        assert_eq!(self.code, code, "said: {}\ntalked: {}", self.out, self.talk);
        self
    }

    #[track_caller]
    pub fn says(&self, words: &str) -> &Said {
        assert!(
            self.out.contains(words),
            "\"{words}\" is not in: {}",
            self.out
        );
        self
    }

    #[track_caller]
    pub fn talks(&self, words: &str) -> &Said {
        assert!(
            self.talk.contains(words),
            "\"{words}\" is not in: {}",
            self.talk
        );
        self
    }

    #[track_caller]
    pub fn json(&self) -> serde_json::Value {
        serde_json::from_str(&self.out).unwrap()
    }
}

/// The examples that are shipped.
pub fn examples() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples")
}

/// A cube as STL text.
pub fn cube_stl(side: f64) -> String {
    let corner = |at: usize| [at & 1, at >> 1 & 1, at >> 2 & 1].map(|bit| bit as f64 * side);
    let faces = [
        [0, 2, 3, 1],
        [4, 5, 7, 6],
        [0, 1, 5, 4],
        [2, 6, 7, 3],
        [0, 4, 6, 2],
        [1, 3, 7, 5],
    ];
    let mut text = String::from("solid cube\n");
    for [a, b, c, d] in faces {
        for facet in [[a, b, c], [a, c, d]] {
            text += "facet normal 0 0 0\nouter loop\n";
            for [x, y, z] in facet.map(corner) {
                text += &format!("vertex {x} {y} {z}\n");
            }
            text += "endloop\nendfacet\n";
        }
    }
    text + "endsolid cube\n"
}
