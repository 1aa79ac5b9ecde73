//! What a heap holds after it was used and renewed, and what brings it back.
//!
//! Each pour kills some clay and leaves fines; each renewal throws some of the heap away. Fines
//! are what washes out: live clay, dead clay and silt together.

pub mod balance;
pub mod holds;

use measure::matter::Mass;
use measure::source::Law;

/// Washable fines after part of the heap was exchanged for new sand and clay was added.
pub const FINES_AFTER: Law = Law {
    name: "sand::heap::fines_after",
    formula: "f = ((1 − n) f_now + n f_new + a) / (1 + a)",
    range: "n of the dry heap thrown away and replaced, a of new clay on top",
    sources: &["common-practice"],
};

/// New sand that brings the fines down to a limit.
pub const NEW_SAND_FOR_FINES: Law = Law {
    name: "sand::heap::new_sand_for_fines",
    formula: "n = (f_now + a − f_wanted (1 + a)) / (f_now − f_new)",
    range: "a of new clay added as well; as much of the old heap goes out",
    sources: &["common-practice"],
};

/// Dry sand and clay that would bring a wet heap down to a moisture.
pub const DILUTE_DRY: Law = Law {
    name: "sand::heap::dilute_dry",
    formula: "m_dry = m (w_now − w_wanted) / w_wanted",
    range: "both of the wet mass; bone dry stuff is added",
    sources: &["treybal-mass-transfer"],
};

/// Clay to add at each renewal so that the heap keeps its live clay.
pub const TOP_UP: Law = Law {
    name: "sand::heap::top_up",
    formula: "a = b (1 − (1 − n) (1 − φ))",
    range: "shares of the dry heap; φ is the part that got hot enough to die",
    sources: &["common-practice"],
};

/// Fines at which a heap settles when the same is done after each pour.
pub const STEADY_FINES: Law = Law {
    name: "sand::heap::steady_fines",
    formula: "f = g / n + f_new",
    range: "g made by each pour, n of the heap exchanged each time, both above nought",
    sources: &["common-practice"],
};

/// Share of the heap to throw away each time so that the fines stay under a limit.
pub const DISCARD_SHARE: Law = Law {
    name: "sand::heap::discard_share",
    formula: "n = g / (f_limit − f_new)",
    range: "g made by each pour; a limit above the fines of the new sand",
    sources: &["common-practice"],
};

/// Fines after `exchanged` of the heap was replaced by new sand and `clay` was added, all shares
/// of the dry heap. Law: [`FINES_AFTER`].
pub fn fines_after(now: f64, of_new_sand: f64, exchanged: f64, clay: f64) -> f64 {
    ((1.0 - exchanged) * now + exchanged * of_new_sand + clay) / (1.0 + clay)
}

/// Share of the heap to exchange for new sand so that the fines come to `wanted`; above one where
/// new sand alone does not do it. Law: [`NEW_SAND_FOR_FINES`].
pub fn new_sand_for_fines(now: f64, of_new_sand: f64, wanted: f64, clay: f64) -> f64 {
    ((now + clay - wanted * (1.0 + clay)) / (now - of_new_sand)).max(0.0)
}

/// Dry stuff that would bring the heap to a moisture. Law: [`DILUTE_DRY`].
pub fn dilute_dry(heap: Mass, now: f64, wanted: f64) -> Mass {
    heap * ((now - wanted) / wanted)
}

/// Clay to add so that the heap keeps `live` of it, where `exchanged` was replaced and `burnt`
/// got too hot. Law: [`TOP_UP`].
pub fn top_up(live: f64, exchanged: f64, burnt: f64) -> f64 {
    live * (1.0 - (1.0 - exchanged) * (1.0 - burnt))
}

/// Fines at which the heap settles. Law: [`STEADY_FINES`].
pub fn steady_fines(made: f64, exchanged: f64, of_new_sand: f64) -> f64 {
    made / exchanged + of_new_sand
}

/// Share to exchange each time so that the fines stay under a limit. Law: [`DISCARD_SHARE`].
pub fn discard_share(made: f64, limit: f64, of_new_sand: f64) -> f64 {
    made / (limit - of_new_sand)
}
