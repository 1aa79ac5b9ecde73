//! A disk that is really full: a small one in memory, where this machine lets a test mount one.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]
#![cfg(target_os = "linux")]

use std::path::Path;
use std::process::Command;

use shoplog::backup::backup;
use shoplog::entry::Fresh;
use shoplog::error::LogError;
use shoplog::log::Log;
use shoplog::photo::keep_photo;
use shoplog::table::melt::HEATS;
use shoplog::value::Value;

/// A disk of one megabyte; taken away again when it falls out of use.
struct SmallDisk(tempfile::TempDir);

impl SmallDisk {
    fn mounted() -> Option<SmallDisk> {
        let folder = tempfile::tempdir().expect("a folder");
        let mounted = Command::new("mount")
            .args(["-t", "tmpfs", "-o", "size=1m", "tmpfs"])
            .arg(folder.path())
            .output();
        mounted
            .is_ok_and(|said| said.status.success())
            .then_some(SmallDisk(folder))
    }

    fn path(&self) -> &Path {
        self.0.path()
    }
}

impl Drop for SmallDisk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(self.path()).status();
    }
}

#[test]
fn a_full_disk_loses_nothing_that_was_confirmed() {
    let Some(disk) = SmallDisk::mounted() else {
        println!("no small disk may be mounted here: not tested");
        return;
    };
    let path = disk.path().join("log.sqlite");
    let mut log = Log::open(&path).expect("opens");
    let long = || Fresh::of(&HEATS).with("note", Value::Text("x".repeat(3000)));
    let mut confirmed = 0;
    let error = loop {
        match log.add(&[long(), long()]) {
            Ok(_) => confirmed += 2,
            Err(error) => break error,
        }
        assert!(confirmed < 2000, "a megabyte does not hold so much");
    };
    assert!(matches!(error, LogError::Full), "{error}");
    assert!(error.to_string().contains("the disk is full"), "{error}");
    assert!(confirmed > 4, "{confirmed}");
    // A photo does not fit either, and leaves no entry behind.
    let picture = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/pictures/placed.webp");
    let filler = disk.path().join("filler");
    let _ = std::fs::write(&filler, vec![0_u8; 1 << 20]);
    let heat = log.find(&HEATS, "1").expect("there");
    keep_photo(&mut log, (&HEATS, &heat), &picture, None).expect_err("full");
    drop(log);
    std::fs::remove_file(&filler).expect("room again");
    let mut log = Log::open(&path).expect("opens again");
    log.check().expect("sound");
    assert_eq!(log.last(&HEATS, 9999).expect("listed").len(), confirmed);
    // Copied to a larger disk it goes on.
    let roomy = tempfile::tempdir().expect("a folder");
    let moved = roomy.path().join("log.sqlite");
    backup(&log, &moved).expect("copied");
    drop(log);
    log = Log::open(&moved).expect("opens");
    log.add(&[long()]).expect("with room it goes on");
}
