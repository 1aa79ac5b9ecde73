//! How many stages cover a step, and the weights of each.
//!
//! Law: s stages of the method of Runge, Kutta and Legendre, first order, cover `(s² + s) / 2`
//! explicit steps. Source: Meyer, Balsara and Aslam 2012, from memory; the exact problems in
//! `tests/` bear it out.

/// One stage: `change + lean (change - older) + step_s M(change)` is what comes after `change`.
#[derive(Debug, Clone, Copy)]
pub struct Stage {
    /// Weight of the change before.
    pub lean: f32,
    /// Weight of the rate, s.
    pub step_s: f32,
}

/// Stages that cover a step, where the explicit limit is `limit_s`.
pub fn count(step_s: f64, limit_s: f64) -> usize {
    let stages = ((1.0 + 8.0 * step_s / limit_s).sqrt() - 1.0) / 2.0;
    (stages.ceil() as usize).max(1)
}

/// Weights of a stage out of `count` that cover a step.
pub fn weights_of(stage: usize, count: usize, step_s: f64) -> Stage {
    let (j, s) = (stage as f64, count as f64);
    let whole = 2.0 / (s * s + s) * step_s;
    match stage {
        1 => Stage {
            lean: 0.0,
            step_s: whole as f32,
        },
        _ => Stage {
            lean: ((j - 1.0) / j) as f32,
            step_s: ((2.0 * j - 1.0) / j * whole) as f32,
        },
    }
}
