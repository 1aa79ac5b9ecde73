//! `oddside serve`: the working sheet in a browser of this machine, the bench card on paired
//! phones.

use std::path::Path;
use std::process::ExitCode;

use job::folder::shop_above;
use job::words::Language;
use job::words::said::Said;
use web::lan::PhonesWelcome;
use web::lan::pairing::Offer;
use web::lan::seen_code::in_half_blocks;

use crate::print;
use crate::trouble::Trouble;

/// Serves a shop's folder until Ctrl-C; to phones where an address for them was asked for.
pub fn run(dir: &Path, port: u16, lan: Option<&str>) -> Result<ExitCode, Trouble> {
    let language = shop_above(dir)?.0.words;
    web::serve(dir, port, lan, |ready| {
        let said = Said::new("serve-open").with("address", format!("http://{}/", ready.address));
        // Where nobody reads it, the page is open all the same.
        let _ = print::out(&(language.say(&said) + "\n"));
        match &ready.phones {
            Some(phones) => tell_phones(phones, language),
            None => print::talk(&language.word("serve-stop")),
        }
    })?;
    Ok(ExitCode::SUCCESS)
}

/// Tells the code by which a phone is paired, in two halves, as it is read aloud.
pub fn tell_offer(offer: &Offer, language: Language) {
    let code = &offer.code;
    let (first, last) = code.split_at(code.len() / 2);
    let said = Said::new("phone-serve-code")
        .with("minutes", offer.minutes.to_string())
        .with("code", format!("{first} {last}"));
    print::talk(&language.say(&said));
}

fn tell_phones(phones: &PhonesWelcome, language: Language) {
    for address in &phones.addresses {
        let said = Said::new("phone-serve-open").with("address", format!("{address}/"));
        let _ = print::out(&(language.say(&said) + "\n"));
    }
    let seen = phones
        .addresses
        .first()
        .map(|address| format!("{address}/"));
    if let Some(squares) = seen.and_then(|address| in_half_blocks(&address)) {
        print::talk(&squares);
    }
    let said = Said::new("phone-serve-print").with("print", phones.fingerprint.as_str());
    print::talk(&language.say(&said));
    tell_offer(&phones.offer, language);
    print::talk(&language.word("phone-serve-who"));
}
