//! The metal of the running system, everything poured, and areas by the gating ratio.

use measure::band::Band;
use measure::flow::Duration;
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use mould::gating::choke::discharge;
use mould::gating::running_system::{
    AREA_BY_RATIO, AS_CUT, Demand, POURED_MASS, RUNNING_METAL, area_by_ratio, poured_mass,
    running_volume,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

pub(super) const METAL: Reckoner = Reckoner {
    name: "running-metal",
    question: "How much metal stands in sprue, basin, runner and gates?",
    law: &RUNNING_METAL,
    inputs: &[
        Input::of::<Area>("choke", "A_choke", "area of the choke"),
        Input::new(
            "ratio",
            "",
            "choke, runners, gates: \"1, 2, 2\"",
            Wanted::Numbers,
        ),
        Input::of::<Length>(
            "pour_height",
            "",
            "from the joint to the level in the basin",
        ),
        Input::of::<Length>(
            "runner",
            "L_runner",
            "length of the runner to its last gate",
        ),
        Input::of::<Volume>("trap", "V_trap", "slag trap wanted: reckon first-metal")
            .or("0 cm3", "common-practice"),
        Input::of::<Density>("liquid_density", "", "density of the metal, for the mass").optional(),
    ],
    example: &[
        ("choke", "125 mm2"),
        ("ratio", "1, 2, 2"),
        ("pour_height", "100 mm"),
        ("runner", "150 mm"),
    ],
    cautions: &[],
    work: |given| {
        let [low, high] = AS_CUT;
        let volume = running_volume(given.get("choke"), given.get("trap"), &demand(given)?);
        let mut answers = vec![Answer::of("volume", volume).times(low, high)];
        if let Some(liquid) = given.find::<Density>("liquid_density") {
            answers.push(Answer::of("mass", liquid * volume).times(low, high));
        }
        Ok(answers)
    },
};

pub(super) const POURED: Reckoner = Reckoner {
    name: "poured-mass",
    question: "How much metal goes into the mould, castings, feeders and running system together?",
    law: &POURED_MASS,
    inputs: &[
        Input::number("castings", "n", "castings in the mould").or("1", "common-practice"),
        Input::of::<Mass>("casting", "m_casting", "one casting"),
        Input::of::<Mass>("feeder", "m_feeder", "the feeder of one casting")
            .or("0 kg", "common-practice"),
        Input::of::<Mass>(
            "running",
            "m_running",
            "sprue, basin, runner and gates: reckon running-metal",
        )
        .narrowed_by("weigh the gates of the last pour"),
    ],
    example: &[
        ("castings", "2"),
        ("casting", "1.14 kg"),
        ("feeder", "0.5 kg"),
        ("running", "0.6 to 1.2 kg"),
    ],
    cautions: &[],
    work: |given| {
        let castings = given.number("castings");
        if castings < 1.0 {
            return given.refuse("castings", "are less than one", "count them");
        }
        let (casting, feeder) = (given.get("casting"), given.get("feeder"));
        let mass = poured_mass(castings, casting, feeder, given.get("running"));
        Ok(vec![Answer::of("mass", mass).rounded_up()])
    },
};

pub(super) const BY_RATIO: Reckoner = Reckoner {
    name: "area-by-ratio",
    question: "How large are runners and gates by the gating ratio?",
    law: &AREA_BY_RATIO,
    inputs: &[
        Input::of::<Area>("choke", "A_choke", "area of the choke"),
        Input::number("ratio", "r", "all runners, or all gates, to the choke as 1"),
    ],
    example: &[("choke", "125 mm2"), ("ratio", "2")],
    cautions: &[],
    work: |given| {
        let area = area_by_ratio(given.get("choke"), given.number("ratio"));
        Ok(vec![Answer::of("area", area)])
    },
};

/// The parts of a demand on which the metal in the running system depends; the rest is any.
fn demand(given: &Given<'_>) -> Result<Demand, Impossible> {
    let &[choke, runner, gates] = given.numbers("ratio").as_slice() else {
        let advice = "write choke, runners and gates, like \"1, 2, 2\"";
        return given.refuse("ratio", "has three parts", advice);
    };
    let pour_height: Length = given.get("pour_height");
    Ok(Demand {
        count: 1.0,
        casting: Band::exact(Mass::from_kg(1.0)),
        feeder: Band::exact(Mass::ZERO),
        liquid: Band::exact(Density::from_g_per_cm3(2.4)),
        wall: Length::from_mm(5.0),
        wall_freezes: Duration::from_s(20.0),
        pour_height,
        head: pour_height,
        ratio: [choke, runner, gates],
        runner: given.get("runner"),
        discharge: discharge(),
    })
}
