//! `oddside charge JOB`: make a charge up from the shop's own heaps.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use job::charge::made_file::MadeFile;
use job::charge::told::{Told, told};
use job::charge::wish::ChargeFile;
use job::charge::{Asked as ChargeAsked, charge, metal_of};
use job::folder::{Noted, noted, shop_above, shop_at};
use job::job::JobError;
use job::melt_loss::melt_loss;
use job::remark::Remark;
use job::remark::of_charge::ChargeFact;
use job::shop::Shop;
use job::words::Language;
use measure::matter::Mass;
use measure::text::Typed;

use crate::commands::opened::plan_of;
use crate::print;
use crate::trouble::Trouble;

/// What was asked for.
pub struct Asked {
    /// A job folder or a job file.
    pub job: Option<PathBuf>,
    /// The shop's file, instead of the one above the job.
    pub shop: Option<PathBuf>,
    /// The target, without a job.
    pub target: Option<String>,
    /// The metal wanted, without a job.
    pub mass: Option<String>,
    /// What has to go in, without a job.
    pub use_up: Vec<String>,
    /// Print one JSON object.
    pub json: bool,
}

/// Makes up and tells.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let (wanted, shop) = match &asked.job {
        Some(job) => of_job(asked, job)?,
        None => alone(asked)?,
    };
    let made = charge(&wanted, &shop).map_err(|error| {
        let told = Remark::from(ChargeFact::from(error));
        Trouble::Charge(shop.words.say(&told.words))
    })?;
    match asked.json {
        true => print::out(&MadeFile::of(&made).text())?,
        false => print::out(&text(&told(&made, shop.units, shop.words), shop.words))?,
    }
    Ok(ExitCode::SUCCESS)
}

fn of_job(asked: &Asked, job: &Path) -> Result<(ChargeAsked, Shop), Trouble> {
    let without_job = [
        ("--target", asked.target.is_some()),
        ("--mass", asked.mass.is_some()),
        ("--use-up", !asked.use_up.is_empty()),
    ];
    if let Some((option, _)) = without_job.into_iter().find(|(_, given)| *given) {
        return Err(Trouble::InTheJob(option));
    }
    let mut noted = noted(job)?;
    if let Some(file) = &asked.shop {
        noted.shop = shop_at(file)?;
    }
    let shop = noted.shop.clone();
    let typed = noted.job.charge.as_ref().and_then(|wish| wish.metal);
    let wanted = match typed {
        Some(metal) => ChargeAsked::of_job(&noted.job, &shop, metal),
        None => {
            let job = noted.job.clone();
            let metal = metal_of_plan(noted)?;
            ChargeAsked::of_job(&job, &shop, metal)
        }
    };
    let wanted = wanted.map_err(|error| Trouble::Usage(JobError::from(error)))?;
    Ok((wanted, shop))
}

/// The metal at the spout that the job's plan comes to.
fn metal_of_plan(noted: Noted) -> Result<Mass, Trouble> {
    let opened = noted.with_part()?;
    let plan = plan_of(&opened)?;
    metal_of(&plan, &melt_loss(&opened.job, &opened.shop)).ok_or(Trouble::NoMass)
}

fn alone(asked: &Asked) -> Result<(ChargeAsked, Shop), Trouble> {
    let shop = match &asked.shop {
        Some(file) => shop_at(file)?,
        None => shop_above(Path::new("."))?.0,
    };
    let (Some(target), Some(mass)) = (&asked.target, &asked.mass) else {
        return Err(Trouble::NoTarget);
    };
    let refused = |words: String| Trouble::Usage(JobError::Charge(words));
    let mass: Typed<Mass> = mass
        .parse()
        .map_err(|error| refused(format!("--mass: {error}")))?;
    let metal = mass.value;
    let typed = ChargeFile {
        mass: Some(mass),
        use_up: asked.use_up.clone(),
        ..ChargeFile::default()
    };
    let wish = typed
        .of_target(target)
        .map_err(|error| refused(error.to_string()))?;
    Ok((ChargeAsked::alone(wish, &shop, metal), shop))
}

fn text(told: &Told, language: Language) -> String {
    let heads = ["", "charge-weigh-out", "", "head-or", "charge-cost"];
    let mut weigh_out = print::table_in(language, &heads);
    for row in &told.weigh_out {
        weigh_out.add_row(row);
    }
    let heads = [
        "",
        "likely",
        "charge-usual",
        "charge-at-worst",
        "charge-target",
    ];
    let mut comes_to = print::table_in(language, &heads);
    for row in &told.composition {
        comes_to.add_row(row);
    }
    let lines = told.lines.join("\n");
    let remarks = print::remarks(&told.remarks, language);
    format!(
        "{}\n\n{weigh_out}\n\n{comes_to}\n\n{lines}\n\n{remarks}{}",
        told.head,
        print::unread(language)
    )
}
