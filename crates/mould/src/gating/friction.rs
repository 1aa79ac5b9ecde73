//! What the walls of a channel take from the metal that runs along them.

use measure::length::Length;
use measure::source::Law;

/// Friction factor of a channel from the Reynolds number of the stream and the roughness of the
/// wall: h = f L/D v²/2g.
pub const FRICTION: Law = Law {
    name: "mould::gating::friction::friction_factor",
    formula: "f = 8 ((8/Re)¹² + (A + B)^(−3/2))^(1/12), \
              A = (−2.457 ln((7/Re)^0.9 + 0.27 r))¹⁶, B = (37530/Re)¹⁶",
    range: "r the grain of the wall over the width; quiet, turbulent and between; long channels \
            that run full",
    sources: &["churchill-1977"],
};

/// How the friction of the running system is reckoned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Friction {
    /// A factor that holds for every channel.
    Stated(f64),
    /// From the Reynolds number of each channel. Law: [`FRICTION`].
    ByReynolds {
        /// Viscosity over density, m²/s: some 5e-7 for liquid aluminium, copper and iron.
        viscosity_m2_per_s: f64,
        /// Height of the grains of the wall.
        roughness: Length,
    },
}

/// Friction factor with which the shares of multiple ingates in iron agreed with trial
/// (`ingate-trial-imono`).
pub const TRIED_FACTOR: f64 = 0.03;

/// Friction by that factor.
pub const TRIED: Friction = Friction::Stated(TRIED_FACTOR);

/// Friction factor of a stream. Law: [`FRICTION`].
pub fn friction_factor(reynolds: f64, relative_roughness: f64) -> f64 {
    let quiet = (8.0 / reynolds).powi(12);
    let inside = (7.0 / reynolds).powf(0.9) + 0.27 * relative_roughness;
    let rough = (-2.457 * inside.ln()).abs().powi(16);
    let between = (37_530.0 / reynolds).powi(16);
    8.0 * (quiet + (rough + between).powf(-1.5)).powf(1.0 / 12.0)
}

impl Friction {
    /// The factor for a channel of hydraulic diameter D in which the metal runs at a speed.
    pub fn factor(self, diameter_m: f64, speed_m_per_s: f64) -> f64 {
        match self {
            Friction::Stated(factor) => factor,
            Friction::ByReynolds {
                viscosity_m2_per_s,
                roughness,
            } => {
                let reynolds = speed_m_per_s * diameter_m / viscosity_m2_per_s;
                friction_factor(reynolds.max(SLOWEST), roughness.as_m() / diameter_m)
            }
        }
    }
}

/// Reynolds number below which the metal stands: the factor stays finite.
const SLOWEST: f64 = 1.0;
