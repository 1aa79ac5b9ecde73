//! The plan of a job folder, for commands that need one on their way.

use job::folder::Opened;
use job::plan::Plan;
use job::remark::of_mesh;
use job::work_out::work_out;
use pattern::look::Verdict;

use crate::print;
use crate::progress::Working;
use crate::trouble::Trouble;

/// Works the job out, unless its mesh has to be settled first.
pub fn plan_of(opened: &Opened) -> Result<Plan, Trouble> {
    settled(opened)?;
    let _working = Working::on("working out");
    Ok(work_out(&opened.job, &opened.shop, &opened.part))
}

/// Whether its mesh may go on as it is.
pub fn settled(opened: &Opened) -> Result<(), Trouble> {
    if let Some(mesh) = opened.part.unsettled() {
        return Err(Trouble::Unsettled {
            remarks: print::remarks(&of_mesh::remarks(mesh), opened.shop.words),
            ask: mesh.verdict == Verdict::Ask,
        });
    }
    Ok(())
}
