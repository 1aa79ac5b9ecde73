//! Whole jobs worked out from what is typed, as the tests of plans want them.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]
#![allow(dead_code, reason = "each test takes what it wants of it")]

pub mod blocks;

use job::file_fault::read;
use job::given_part::{GivenPart, given_part};
use job::job::Job;
use job::job_file::JobFile;
use job::part::Part;
use job::plan::Plan;
use job::shop::{Shop, ShopFile};
use job::words::Language;
use job::work_out::work_out;

use blocks::{Heights, obj};

/// A job as it is typed.
#[track_caller]
pub fn job(text: &str) -> Job {
    let typed: JobFile = read("job.toml", text).unwrap();
    Job::meant(&typed).unwrap()
}

/// A shop as it is typed.
#[track_caller]
pub fn shop(text: &str) -> Shop {
    let typed: ShopFile = read("shop.toml", text).unwrap();
    typed.meant().unwrap()
}

/// The part that a job without a mesh gives.
#[track_caller]
pub fn given(text: &str) -> Part {
    let typed: JobFile = read("job.toml", text).unwrap();
    match given_part(&typed).unwrap() {
        GivenPart::Here(part) => *part,
        GivenPart::Mesh(name) => unreachable!("no mesh {name} in this job"),
    }
}

/// A mesh of upright blocks.
pub fn drawn(heights: &Heights) -> Part {
    let text = obj(heights);
    Part::Mesh(pattern::look::look("part.obj", text.as_bytes(), None).unwrap())
}

/// A block of these sides in mm.
pub fn block([x, y, z]: [f64; 3]) -> Part {
    drawn(&Heights {
        x: vec![0.0, x],
        y: vec![0.0, y],
        height: &|_, _| z,
    })
}

/// The plan of a part in a shop, all as typed.
#[track_caller]
pub fn plan(job_text: &str, shop_text: &str, part: &Part) -> Plan {
    work_out(&job(job_text), &shop(shop_text), part)
}

/// Low, likely and high of a figure.
#[track_caller]
pub fn values(plan: &Plan, name: &str) -> [f64; 3] {
    let figure = plan.figure(name);
    figure
        .unwrap_or_else(|| unreachable!("no {name} in the plan"))
        .amount
        .values()
}

/// Whether a plan tells this.
pub fn says(plan: &Plan, code: &str) -> bool {
    plan.remarks.iter().any(|remark| remark.code == code)
}

/// What was chosen, in British words.
#[track_caller]
pub fn chosen(plan: &Plan, name: &str) -> String {
    let choice = plan.choice(name);
    let choice = choice.unwrap_or_else(|| unreachable!("no {name} in the plan"));
    Language::Uk.say(&choice.chosen)
}

/// What sets a figure, in British words.
#[track_caller]
pub fn because(plan: &Plan, name: &str) -> String {
    let because = plan.figure(name).and_then(|figure| figure.because.as_ref());
    Language::Uk.say(because.unwrap_or_else(|| unreachable!("{name} has no reason")))
}
