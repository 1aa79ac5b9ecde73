//! Water in the sand: how it is counted, how much to add, when to stop drying, when not to pour.
//!
//! A share without a name is of the wet mass, as the trade weighs it: 200.0 g that dry to
//! 189.6 g held 5.2 %. Of the dry mass the same water is 5.5 %.

use measure::matter::Mass;
use measure::source::Law;

/// Moisture on the wet basis.
pub const WET_BASIS: Law = Law {
    name: "sand::moisture::wet_basis",
    formula: "w = (m_wet − m_dry) / m_wet",
    range: "dried at 105 to 110 °C until it loses no more",
    sources: &["permeability-page", "afs-mold-core-handbook"],
};

/// Moisture on the dry basis from that on the wet basis.
pub const DRY_FROM_WET: Law = Law {
    name: "sand::moisture::dry_from_wet",
    formula: "X = w / (1 − w)",
    range: "w below 1",
    sources: &["treybal-mass-transfer"],
};

/// Moisture on the wet basis from that on the dry basis.
pub const WET_FROM_DRY: Law = Law {
    name: "sand::moisture::wet_from_dry",
    formula: "w = X / (1 + X)",
    range: "X of nought or more",
    sources: &["treybal-mass-transfer"],
};

/// Mass at which drying is stopped.
pub const DRY_DOWN_STOP: Law = Law {
    name: "sand::moisture::dry_down_stop",
    formula: "m_stop = m (1 − w_now) / (1 − w_wanted)",
    range: "only water leaves; w below 1",
    sources: &["drying-questions"],
};

/// Water that brings sand from one moisture to another.
pub const WATER_TO_ADD: Law = Law {
    name: "sand::moisture::water_to_add",
    formula: "m_water = m (w_wanted − w_now) / (1 − w_wanted)",
    range: "w below 1; below nought it is water to lose",
    sources: &["treybal-mass-transfer"],
};

/// How far a moisture from two weighings may be off, by the step of the scale.
pub const WEIGHING_ERROR: Law = Law {
    name: "sand::moisture::weighing_error",
    formula: "u = d √2 / m",
    range: "two weighings, each off by a step of the scale; points of moisture either way",
    sources: &["gum-2008"],
};

/// Moisture above which a mould of bentonite-bonded sand is not poured:
/// `shop-handbook-figures`, from memory.
pub const BENTONITE_LIMIT: f64 = 0.06;

/// Points above its own temper at which a mould of natural sand is not poured:
/// `shop-handbook-figures`, from memory. Tempers of 8 to 9 % are seen.
pub const ABOVE_TEMPER: f64 = 0.01;

/// What binds the sand of a mould, as far as water goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bond {
    /// Sand with bentonite added.
    Bentonite,
    /// Sand as it was dug, with the moisture at which it moulds best, where that was found.
    Natural {
        /// Its own best moisture, a share of the wet mass.
        temper: Option<f64>,
    },
    /// Nobody knows.
    Unknown,
}

/// Whether a mould is dry enough to be poured, as far as its moisture says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Dryness {
    /// Not above the limit. Free water stops the pour all the same.
    WithinLimit {
        /// The limit, a share of the wet mass.
        limit: f64,
    },
    /// Above the limit: do not pour.
    TooWet {
        /// The limit, a share of the wet mass.
        limit: f64,
    },
    /// The limit is not known: ask what binds the sand, or at which moisture it moulds best.
    Ask {
        /// What to ask for.
        missing: Missing,
    },
}

/// What has to be known before a limit can be named.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// What binds the sand.
    Bond,
    /// The moisture at which a natural sand moulds best.
    Temper,
}

/// Judges the moisture of a mould, a share of the wet mass.
pub fn dryness(bond: Bond, moisture: f64) -> Dryness {
    match bond {
        Bond::Bentonite => against(BENTONITE_LIMIT, moisture),
        Bond::Natural { temper: Some(own) } => against(own + ABOVE_TEMPER, moisture),
        Bond::Natural { temper: None } => Dryness::Ask {
            missing: Missing::Temper,
        },
        Bond::Unknown => Dryness::Ask {
            missing: Missing::Bond,
        },
    }
}

/// Moisture as a share of the wet mass. Law: [`WET_BASIS`].
pub fn wet_basis(wet: Mass, dry: Mass) -> f64 {
    (wet - dry) / wet
}

/// The same moisture as a share of the dry mass. Law: [`DRY_FROM_WET`].
pub fn dry_from_wet(wet_basis: f64) -> f64 {
    wet_basis / (1.0 - wet_basis)
}

/// The same moisture as a share of the wet mass. Law: [`WET_FROM_DRY`].
pub fn wet_from_dry(dry_basis: f64) -> f64 {
    dry_basis / (1.0 + dry_basis)
}

/// What the sand weighs once it has dried from one moisture to another, both shares of the wet
/// mass. Law: [`DRY_DOWN_STOP`].
pub fn dry_down_stop(wet: Mass, now: f64, wanted: f64) -> Mass {
    wet * ((1.0 - now) / (1.0 - wanted))
}

/// Water to add for another moisture, both shares of the wet mass; below nought it has to be
/// lost. Law: [`WATER_TO_ADD`].
pub fn water_to_add(sand: Mass, now: f64, wanted: f64) -> Mass {
    sand * ((wanted - now) / (1.0 - wanted))
}

/// How far a moisture may be off, a share of the wet mass, with a scale of this step and a sample
/// of this mass. Law: [`WEIGHING_ERROR`].
pub fn weighing_error(step: Mass, sample: Mass) -> f64 {
    step * std::f64::consts::SQRT_2 / sample
}

fn against(limit: f64, moisture: f64) -> Dryness {
    match moisture <= limit {
        true => Dryness::WithinLimit { limit },
        false => Dryness::TooWet { limit },
    }
}
