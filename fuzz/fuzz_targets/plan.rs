//! Any text as a job file and a shop file, worked out for a block of metal.
#![no_main]

use std::sync::LazyLock;

use job::job::Job;
use job::job_file::JobFile;
use job::part::Part;
use job::plan_file::PlanFile;
use job::shop::ShopFile;
use job::work_out::work_out;
use pattern::look::look;

/// Stands between the two files.
const BETWEEN: &str = "=====\n";

static BLOCK: LazyLock<Option<Part>> = LazyLock::new(|| {
    let looked = look("part.stl", include_bytes!("../seeds/stl/box_binary"), None).ok()?;
    Some(Part::Mesh(looked))
});

libfuzzer_sys::fuzz_target!(|text: &str| {
    let (job, shop) = text.split_once(BETWEEN).unwrap_or((text, ""));
    let (Some(job), Some(shop)) = (
        oddside_fuzz::typed_file::<JobFile>("job.toml", job),
        oddside_fuzz::typed_file::<ShopFile>("shop.toml", shop),
    ) else {
        return;
    };
    let (Ok(job), Ok(shop), Some(block)) = (Job::meant(&job), shop.meant(), BLOCK.as_ref()) else {
        return;
    };
    let plan = work_out(&job, &shop, block);
    for figure in &plan.figures {
        let values = figure.amount.values();
        assert!(
            values.iter().all(|value| value.is_finite()),
            "{}: {values:?}",
            figure.name
        );
    }
    assert!(!PlanFile::of(&plan).text().is_empty());
});
