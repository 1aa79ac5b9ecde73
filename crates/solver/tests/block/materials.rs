//! Materials that several tests use: round figures, made up.

#![allow(dead_code, reason = "not every test has all of them")]

use solver::material::{Freezes, Knot, Material, Phase};

/// Like an aluminium alloy whose latent heat comes evenly over a range.
pub fn metal() -> Material {
    let phase = |w_mk| Phase { j_m3k: 2.7e6, w_mk };
    let freezes = Freezes {
        solid: phase(150.0),
        liquid: phase(90.0),
        latent_j_m3: 9.725e8,
        solidus_c: 555.0,
        liquidus_c: 615.0,
    };
    Material::freezing("metal", freezes)
}

/// Like sand whose water boils between 95 and 105 °C.
pub fn damp() -> Material {
    let knot = |celsius, j_m3, w_mk| Knot {
        celsius,
        j_m3,
        w_mk,
        solid: 1.0,
    };
    Material {
        name: "damp".to_owned(),
        knots: vec![
            knot(0.0, 0.0, 1.0),
            knot(95.0, 1.8e8, 1.0),
            knot(105.0, 3.2e8, 0.6),
            knot(1000.0, 1.8e9, 0.9),
        ],
    }
}
