//! How often metal has to be melted for several moulds of one plan.

use measure::matter::Mass;
use metal::alloys::named;
use metal::order;

use crate::job::PIG;
use crate::plan::Plan;
use crate::shop::Shop;

/// Heats for so many moulds, each filled from one heat of the largest crucible of the shop, with
/// what a heat leaves for the ingot mould: where a mould takes as little, as likely and as much as
/// the plan has it. One for each mould where no crucible of the shop holds a mould, or the plan
/// pours nothing.
pub fn heats(plan: &Plan, shop: &Shop, moulds: usize) -> [usize; 3] {
    let poured = plan.figure("poured mass");
    let Some((poured, alloy)) = poured.zip(named(&plan.alloy).ok()) else {
        return [moulds; 3];
    };
    let liquid = &alloy.density_liquid.band;
    let holds = shop
        .crucibles
        .iter()
        .map(|one| one.holds(liquid).low().as_kg());
    let largest = Mass::from_kg(holds.fold(0.0, f64::max));
    poured.amount.values().map(|kg| {
        let takes = vec![Mass::from_kg(kg); moulds];
        order::heats(&takes, largest, PIG).map_or(moulds, |heats| heats.len())
    })
}
