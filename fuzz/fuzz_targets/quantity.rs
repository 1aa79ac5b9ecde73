//! Any text as each quantity a founder may type.
#![no_main]

use measure::heat::Temperature;
use measure::length::Length;
use measure::matter::Mass;
use measure::share::{Contraction, Share};

libfuzzer_sys::fuzz_target!(|text: &str| {
    oddside_fuzz::quantity::<Length>(text);
    oddside_fuzz::quantity::<Mass>(text);
    oddside_fuzz::quantity::<Temperature>(text);
    if let Ok(share) = text.parse::<Share>() {
        assert_eq!(share.to_string().parse(), Ok(share));
    }
    if let Ok(contraction) = text.parse::<Contraction>() {
        assert!(!contraction.given_back().is_empty());
        assert_eq!(contraction.typed.parse(), Ok(contraction));
    }
});
