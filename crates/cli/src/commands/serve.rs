//! `oddside serve`: the working sheet in a browser of this machine.

use std::path::Path;
use std::process::ExitCode;

use job::folder::shop_above;
use job::words::said::Said;

use crate::print;
use crate::trouble::Trouble;

/// Serves a shop's folder until Ctrl-C.
pub fn run(dir: &Path, port: u16) -> Result<ExitCode, Trouble> {
    let language = shop_above(dir)?.0.words;
    web::serve(dir, port, |address| {
        let said = Said::new("serve-open").with("address", format!("http://{address}/"));
        // Where nobody reads it, the page is open all the same.
        let _ = print::out(&(language.say(&said) + "\n"));
        print::talk(&language.word("serve-stop"));
    })?;
    Ok(ExitCode::SUCCESS)
}
