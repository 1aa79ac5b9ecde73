//! A fresh log in a folder of its own, for tests.

use shoplog::log::Log;

pub struct Shop {
    pub log: Log,
    _folder: tempfile::TempDir,
}

impl Shop {
    pub fn new() -> Shop {
        let folder = tempfile::tempdir().expect("a folder");
        let log = Log::open(&folder.path().join("log.sqlite")).expect("opens");
        Shop {
            log,
            _folder: folder,
        }
    }
}
