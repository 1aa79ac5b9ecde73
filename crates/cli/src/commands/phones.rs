//! `oddside phones`: which phones may reach the bench card.

use std::path::Path;
use std::process::ExitCode;
use std::time::SystemTime;

use job::folder::shop_above;
use job::words::said::Said;
use web::lan::pairing::offer;
use web::lan::phones::{all, paired_on, remove};
use web::lan::place::Place;

use crate::args::PhonesCommand;
use crate::commands::serve::tell_offer;
use crate::print;
use crate::trouble::Trouble;

/// Does what was asked for, for the shop of the folder one works in.
pub fn run(what: &PhonesCommand) -> Result<ExitCode, Trouble> {
    let here = Path::new(".");
    let language = shop_above(here)?.0.words;
    let place = Place::of(here)?;
    match what {
        PhonesCommand::Add => tell_offer(&offer(&place, SystemTime::now())?, language),
        PhonesCommand::List => {
            let phones = all(&place)?;
            if phones.is_empty() {
                print::talk(&language.word("phone-none-paired"));
                return Ok(ExitCode::SUCCESS);
            }
            let mut table = print::table_in(language, &["phone-head-name", "phone-head-paired"]);
            for phone in phones {
                let day = paired_on(&phone);
                table.add_row([phone.name, day]);
            }
            print::out(&format!("{table}\n"))?;
        }
        PhonesCommand::Remove { name } => {
            remove(&place, name)?;
            let said = Said::new("phone-removed").with("name", name.as_str());
            print::talk(&language.say(&said));
        }
    }
    Ok(ExitCode::SUCCESS)
}
