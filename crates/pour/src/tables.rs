//! Metal and sand as tables of their heat content.
//!
//! Heat of freezing is given up as the solid share of the alloy says, never evenly over the range.
//! Damp sand boils its water away around 100 °C, which holds it there for a while.

use measure::heat::HeatDrawing;
use metal::alloy::{Alloy, Freezing};
use metal::solid_share::freezing_path;
use solver::material::{Knot, Material, Phase};

/// Sand as far as heat is concerned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SandHeat {
    /// Conductivity, W/(m K).
    pub w_mk: f64,
    /// Heat capacity by volume of the dry sand, J/(m³ K).
    pub j_m3k: f64,
    /// Bulk density, kg/m³.
    pub kg_m3: f64,
    /// Water as a share of the dry sand; nought where its part is in the conductivity already.
    pub water: f64,
}

/// Heat of boiling of water, J/kg: 2.257 MJ/kg at 100 °C (from memory).
const BOILING_J_KG: f64 = 2.257e6;

/// Specific heat of water, J/(kg K) (from memory).
const WATER_J_KGK: f64 = 4186.0;

/// Where the water of the sand boils, °C: drawn out over ten kelvin, so that a cell does not stand
/// still and then jump.
const BOILS_C: [f64; 2] = [95.0, 105.0];

impl SandHeat {
    /// Dry rammed silica sand: 0.6 W/(m K), 1550 kg/m³, 1050 J/(kg K), the middle of the classic
    /// sets, which drink heat at 990 W s^0.5/(m² K) (`flemings-1974`, from memory).
    pub fn dry() -> SandHeat {
        SandHeat {
            w_mk: 0.6,
            j_m3k: 1550.0 * 1050.0,
            kg_m3: 1550.0,
            water: 0.0,
        }
    }

    /// The same with this much water, as a share of the dry sand.
    pub fn damp(water: f64) -> SandHeat {
        SandHeat {
            water,
            ..SandHeat::dry()
        }
    }

    /// Sand that drinks heat this hard whatever its water; its capacity is that of dry sand.
    pub fn drinking(thirst: HeatDrawing) -> SandHeat {
        let dry = SandHeat::dry();
        let b = thirst.as_w_rts_per_m2_k();
        SandHeat {
            w_mk: b * b / dry.j_m3k,
            ..dry
        }
    }

    /// The same drinking so many times as hard when dry.
    pub fn drinking_times(self, times: f64) -> SandHeat {
        SandHeat {
            w_mk: self.w_mk * times * times,
            ..self
        }
    }

    /// How hard it drinks when dry, W s^0.5/(m² K).
    pub fn thirst(&self) -> f64 {
        (self.w_mk * self.j_m3k).sqrt()
    }

    /// Its table.
    pub fn table(&self, name: &str) -> Material {
        if self.water <= 0.0 {
            let (j_m3k, w_mk) = (self.j_m3k, self.w_mk);
            return Material::plain(name, Phase { j_m3k, w_mk });
        }
        let water_kg_m3 = self.water * self.kg_m3;
        let damp_j_m3k = self.j_m3k + water_kg_m3 * WATER_J_KGK;
        let [begins, ends] = BOILS_C;
        let boiled = 0.5 * (damp_j_m3k + self.j_m3k) * (ends - begins) + water_kg_m3 * BOILING_J_KG;
        let at_begin = damp_j_m3k * begins;
        let knot = |celsius, j_m3| Knot {
            celsius,
            j_m3,
            w_mk: self.w_mk,
            solid: 1.0,
        };
        Material {
            name: name.to_owned(),
            knots: vec![
                knot(0.0, 0.0),
                knot(begins, at_begin),
                knot(ends, at_begin + boiled),
                knot(ends + FAR_K, at_begin + boiled + self.j_m3k * FAR_K),
            ],
        }
    }
}

/// How far the end pieces of a table reach, K; any length draws the same line.
const FAR_K: f64 = 1000.0;

/// The table of an alloy, heat counted from its solidus, for a mould that holds its liquid: what is
/// poured has the density of the liquid, and all of it freezes.
pub fn metal_table(alloy: &Alloy, latent_times: f64) -> Material {
    let kg_m3 = alloy.density_liquid.band.likely().as_kg_per_m3();
    let solid = Phase {
        j_m3k: kg_m3 * alloy.specific_heat_solid.band.likely().as_j_per_kg_k(),
        w_mk: alloy.conductivity_solid.band.likely().as_w_per_m_k(),
    };
    let liquid = Phase {
        j_m3k: kg_m3 * alloy.specific_heat_liquid.band.likely().as_j_per_kg_k(),
        w_mk: alloy.conductivity_liquid.band.likely().as_w_per_m_k(),
    };
    let latent_j_m3 = latent_times * kg_m3 * alloy.latent_heat.band.likely().as_j_per_kg();
    let between =
        |solid_of: f64, of_liquid: f64, share: f64| share * solid_of + (1.0 - share) * of_liquid;
    let (solidus, liquidus) = (alloy.solidus.band.likely(), alloy.liquidus.band.likely());
    let mut path = freezing_path(&alloy.solid_share.path, liquidus, solidus);
    path.reverse();
    let mut knots = vec![Knot {
        celsius: solidus.as_celsius() - FAR_K,
        j_m3: -solid.j_m3k * FAR_K,
        w_mk: solid.w_mk,
        solid: 1.0,
    }];
    let (mut j_m3, mut last) = (0.0, path.first().copied());
    for &(at, share) in &path {
        if let Some((before, was)) = last {
            let capacity = between(solid.j_m3k, liquid.j_m3k, 0.5 * (share + was));
            j_m3 += capacity * (at - before).as_kelvin() + latent_j_m3 * (was - share);
        }
        last = Some((at, share));
        knots.push(Knot {
            celsius: at.as_celsius(),
            j_m3,
            w_mk: between(solid.w_mk, liquid.w_mk, share),
            solid: share,
        });
    }
    knots.push(Knot {
        celsius: liquidus.as_celsius() + FAR_K,
        j_m3: j_m3 + liquid.j_m3k * FAR_K,
        w_mk: liquid.w_mk,
        solid: 0.0,
    });
    Material {
        name: alloy.name.clone(),
        knots,
    }
}

/// Solid share at which metal no longer flows to where it is missing: 0.65 in alloys that freeze
/// with a skin or nearly so, 0.5 in those that freeze as a mush, which hang together sooner (common
/// practice, no source; from memory 0.6 to 0.7 for aluminium, 0.3 to 0.5 where crystals meet).
pub fn feeding_stops(freezing: Freezing) -> f64 {
    match freezing {
        Freezing::Short | Freezing::Middle => 0.65,
        Freezing::Long => 0.5,
    }
}

/// Solid share at which metal no longer runs on through a wall: 0.2 to 0.5 in alloys that go to
/// mush, 0.5 to 1 in those that freeze with a skin (`flemings-1974`). The safe half of each is
/// taken: beyond it walls are called run that a cold day leaves short.
pub fn running_stops(freezing: Freezing) -> f64 {
    match freezing {
        Freezing::Short => 0.5,
        Freezing::Middle => 0.4,
        Freezing::Long => 0.3,
    }
}
