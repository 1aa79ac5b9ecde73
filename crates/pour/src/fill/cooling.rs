//! What sand takes from metal that runs along it.

use std::f64::consts::PI;

use solver::material::Material;

/// The metal as it is poured.
#[derive(Clone, Debug, PartialEq)]
pub struct Metal {
    /// What the tables of gate speeds call it: one of `mould::gating::gate_speed::METALS`.
    pub kind: String,
    /// Its temperature, conductivity and solid share along its heat content by volume.
    pub table: Material,
    /// Density of the liquid, kg/m³.
    pub kg_m3: f64,
    /// Temperature with which it leaves the basin, °C.
    pub poured_c: f64,
    /// Solid share at which it no longer runs: 0.2 to 0.5 where it goes to mush, 0.5 to 1 where it
    /// freezes as a skin (`flemings-1974`).
    pub stops_at_solid: f64,
}

/// The sand that it runs along.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sand {
    /// Its temperature before the pour, °C.
    pub celsius: f64,
    /// How hard it draws heat, √(k ρ c), W√s/(m² K).
    pub draws_w_rts_m2_k: f64,
    /// The most that passes from metal to sand for each kelvin between them, W/(m² K): what the
    /// touch of the two lets through before the sand is warm.
    pub film_w_m2_k: f64,
}

/// Metal in sand.
#[derive(Clone, Debug)]
pub(super) struct Cooling {
    /// How much warmer than the sand metal is for each J/m³ that it holds over it, at even steps
    /// from the heat of the sand to that of the pour, m³ K/J.
    warmer: Vec<f32>,
    /// Those steps in each J/m³.
    steps_per_j_m3: f64,
    /// How hard the sand draws, W√s/(m² K), and what passes at most, W/(m² K).
    draws: f64,
    film: f64,
    /// Heat at the temperature of the sand, J/m³.
    pub(super) coldest_j_m3: f64,
    /// Heat with which it leaves the basin, J/m³.
    pub(super) poured_j_m3: f64,
}

/// Part of its heat over that of the sand that metal loses in one step at most: larger, and a
/// superheat that ends within the step is not seen.
const STEP: f64 = 0.05;

/// Entries of the table of temperatures: a kelvin of a casting metal spans some five of them.
const ENTRIES: usize = 4096;

/// Most steps for one hop.
const STEPS: f64 = 64.0;

impl Cooling {
    pub(super) fn of(metal: &Metal, sand: &Sand) -> Cooling {
        let coldest_j_m3 = metal.table.heat_at(sand.celsius);
        let poured_j_m3 = metal.table.heat_at(metal.poured_c);
        let each = (poured_j_m3 - coldest_j_m3) / (ENTRIES - 1) as f64;
        let warmer = |entry: usize| {
            // At the sand's own heat the slope is that of the first step.
            let over_j_m3 = each * entry.max(1) as f64;
            let celsius = metal.table.at(coldest_j_m3 + over_j_m3).celsius;
            ((celsius - sand.celsius).max(0.0) / over_j_m3) as f32
        };
        Cooling {
            warmer: (0..ENTRIES).map(warmer).collect(),
            steps_per_j_m3: 1.0 / each,
            draws: sand.draws_w_rts_m2_k,
            film: sand.film_w_m2_k,
            coldest_j_m3,
            poured_j_m3,
        }
    }

    /// Heat left to metal after it has touched sand from one age to another, s; its surface over
    /// its volume in 1/m.
    pub(super) fn after(&self, j_m3: f64, per_m: f64, [from_s, to_s]: [f64; 2]) -> f64 {
        if to_s <= from_s || per_m <= 0.0 {
            return j_m3;
        }
        let drawn = per_m * self.drawn(from_s, to_s);
        let steps = (drawn * self.kelvin_per_heat(j_m3) / STEP).ceil();
        let steps = steps.clamp(1.0, STEPS);
        let each = drawn / steps;
        let over = |j_m3: f64| j_m3 - self.coldest_j_m3;
        let mut left = j_m3;
        for _ in 0..steps as u32 {
            let half = (-0.5 * each * self.kelvin_per_heat(left)).exp();
            let halfway = self.coldest_j_m3 + over(left) * half;
            let whole = (-each * self.kelvin_per_heat(halfway)).exp();
            left = self.coldest_j_m3 + over(left) * whole;
        }
        left
    }

    /// How much warmer than the sand metal is for each J/m³ that it holds over it.
    fn kelvin_per_heat(&self, j_m3: f64) -> f64 {
        let at = ((j_m3 - self.coldest_j_m3) * self.steps_per_j_m3).max(0.0);
        let low = (at as usize).min(ENTRIES - 2);
        let [low_k, high_k] = [self.warmer[low], self.warmer[low + 1]].map(f64::from);
        low_k + (at - low as f64).min(1.0) * (high_k - low_k)
    }

    /// Heat that a square metre of sand draws for each kelvin while it is touched from one time to
    /// another, J/(m² K): by the film at first, then by the root of the time.
    fn drawn(&self, from_s: f64, to_s: f64) -> f64 {
        let (draws, film) = (self.draws, self.film);
        let knee_s = (draws / film).powi(2) / PI;
        let until = |time_s: f64| match time_s <= knee_s {
            true => film * time_s,
            false => film * knee_s + 2.0 * draws * ((time_s / PI).sqrt() - (knee_s / PI).sqrt()),
        };
        until(to_s) - until(from_s)
    }
}

#[cfg(test)]
mod tests {
    use std::f64::consts::PI;

    use solver::material::{Freezes, Material, Phase};

    use super::{Cooling, Metal, Sand};

    fn metal() -> Metal {
        let phase = Phase {
            j_m3k: 2.7e6,
            w_mk: 100.0,
        };
        Metal {
            kind: "aluminium".to_owned(),
            table: Material::freezing(
                "test",
                Freezes {
                    solid: phase,
                    liquid: phase,
                    latent_j_m3: 9.7e8,
                    solidus_c: 560.0,
                    liquidus_c: 610.0,
                },
            ),
            kg_m3: 2400.0,
            poured_c: 700.0,
            stops_at_solid: 0.3,
        }
    }

    #[test]
    fn a_little_heat_is_lost_by_the_root_of_the_time_or_by_the_film() {
        let metal = metal();
        let sand = Sand {
            celsius: 20.0,
            draws_w_rts_m2_k: 1000.0,
            film_w_m2_k: 1e9,
        };
        let cooling = Cooling::of(&metal, &sand);
        let lost = cooling.poured_j_m3 - cooling.after(cooling.poured_j_m3, 1.0, [0.0, 2.0]);
        let wanted = 2.0 * 1000.0 * 680.0 * (2.0 / PI).sqrt();
        assert!((lost / wanted - 1.0).abs() < 1e-3, "{lost} {wanted}");
        let film = Sand {
            film_w_m2_k: 100.0,
            ..sand
        };
        let cooling = Cooling::of(&metal, &film);
        let lost = cooling.poured_j_m3 - cooling.after(cooling.poured_j_m3, 1.0, [0.0, 2.0]);
        assert!((lost / (100.0 * 680.0 * 2.0) - 1.0).abs() < 1e-3, "{lost}");
    }

    #[test]
    fn metal_never_gets_colder_than_its_sand() {
        let metal = metal();
        let sand = Sand {
            celsius: 20.0,
            draws_w_rts_m2_k: 1000.0,
            film_w_m2_k: 1000.0,
        };
        let cooling = Cooling::of(&metal, &sand);
        let left = cooling.after(cooling.poured_j_m3, 1e4, [0.0, 1e4]);
        let celsius = metal.table.at(left).celsius;
        assert!((20.0 - 1e-6..20.1).contains(&celsius), "{celsius}");
    }
}
