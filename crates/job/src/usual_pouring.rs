//! How hot metals are poured, by the tables alone: for a pour that nothing was planned for.

use metal::alloys::named;

/// The lowest and the highest pouring temperature, °C, that the tables have for any of these
/// metals, in sections light or heavy; nothing where none of them is in the tables.
pub fn usual_pouring_c(metals: &[&str]) -> Option<[f64; 2]> {
    let found = metals.iter().filter_map(|metal| named(metal).ok());
    let bands = found.flat_map(|alloy| [&alloy.pouring_light.band, &alloy.pouring_heavy.band]);
    let ends = bands.map(|band| [band.low().as_celsius(), band.high().as_celsius()]);
    ends.reduce(|all, one| [all[0].min(one[0]), all[1].max(one[1])])
}
