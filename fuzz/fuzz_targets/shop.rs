//! Any text as a shop file.
#![no_main]

use job::shop::ShopFile;
use measure::length::Length;

libfuzzer_sys::fuzz_target!(|text: &str| {
    let Some(file) = oddside_fuzz::typed_file::<ShopFile>("shop.toml", text) else {
        return;
    };
    match file.meant() {
        Err(words) => assert!(!words.is_empty()),
        Ok(shop) => assert!(shop.flasks.iter().all(|flask| flask.length > Length::ZERO)),
    }
});
