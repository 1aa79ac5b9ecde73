//! Gates cut so that each gets its share.

use measure::length::{Area, Length};
use measure::source::Law;
use thiserror::Error;

use crate::gating::network::{Network, NetworkFault, Stretch};
use crate::gating::root::rising_root;
use crate::gating::sprue::fall_speed;

/// Areas of gates that share the metal as wanted.
pub const BALANCED_GATES: Law = Law {
    name: "mould::gating::balance::balanced_gates",
    formula: "a = s Q √((1 + K_g + f L/D) / (2 g (h − k v_r²/2g − z))), Σ a as before",
    range: "every channel full; sprue and runners stay as they are",
    sources: &["ingate-trial-imono", "idelchik-handbook"],
};

/// Why no gates give the shares.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum BalanceFault {
    /// The running system.
    #[error(transparent)]
    Network(#[from] NetworkFault),
    /// Shares that do not go with the gates.
    #[error("one share above nought is wanted for each gate")]
    Shares,
}

/// Areas of the gates, in their order, at which they share the metal in proportion to `wanted`,
/// with as much gate area in all as before. Law: [`BALANCED_GATES`].
pub fn balanced_gates(network: &Network, wanted: &[f64]) -> Result<Vec<Area>, BalanceFault> {
    network.check()?;
    let total: f64 = wanted.iter().sum();
    let sound = wanted.iter().all(|share| share.is_finite() && *share > 0.0);
    if wanted.len() != network.gates().count() || !sound {
        return Err(BalanceFault::Shares);
    }
    if network.gates().any(|gate| gate.height >= network.level) {
        return Err(NetworkFault::NoHead.into());
    }
    let lowest = network
        .gates()
        .map(|gate| gate.height)
        .fold(network.level, Length::min);
    let shares: Vec<f64> = wanted.iter().map(|share| share / total).collect();
    let before: f64 = network.gates().map(|gate| gate.passage.area.as_m2()).sum();
    let fastest = before * fall_speed(network.level - lowest).as_m_per_s();
    let over = |flow: f64| areas(network, &shares, flow).iter().sum::<f64>() - before;
    let flow = rising_root(over, 0.0, fastest);
    Ok(areas(network, &shares, flow)
        .into_iter()
        .map(Area::from_m2)
        .collect())
}

/// Gate areas in m² that pass their shares of a flow; without end where no area is enough.
fn areas(network: &Network, shares: &[f64], flow: f64) -> Vec<f64> {
    let sprue = network.sprue.head_lost(network.friction, flow);
    let foot = network.level.as_m() - sprue;
    let mut found = Vec::with_capacity(shares.len());
    for side in &network.sides {
        let shares = &shares[found.len()..found.len() + side.len()];
        let (mut head, mut left) = (foot, shares.iter().sum::<f64>() * flow);
        for (stretch, share) in side.iter().zip(shares) {
            head -= stretch.runner.head_lost(network.friction, left);
            let turned = network.turn * stretch.runner.speed_head(left);
            let drives = head - turned - stretch.gate.height.as_m();
            found.push(area(network, stretch, share * flow, drives));
            left = (left - share * flow).max(0.0);
        }
    }
    found
}

/// Area of a gate that passes a flow under the head that drives it.
fn area(network: &Network, stretch: &Stretch, flow: f64, drives: f64) -> f64 {
    if drives <= 0.0 {
        return f64::INFINITY;
    }
    let passage = stretch.gate.passage;
    let spare = |log_area: f64| {
        let passage = passage.cut_to(Area::from_m2(log_area.exp()));
        drives - passage.speed_head(flow) - passage.head_lost(network.friction, flow)
    };
    let lossless = flow / fall_speed(Length::from_m(drives)).as_m_per_s();
    let ideal = lossless.max(f64::MIN_POSITIVE);
    rising_root(spare, ideal.ln() - 1.0, ideal.ln() + 20.0).exp()
}
