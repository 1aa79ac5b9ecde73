//! What is found in flask, sand and weights.

use measure::flow::Duration;
use measure::length::Length;
use measure::matter::Mass;
use measure::text::rounded;
use mould::flask::FlaskError;

use super::Remark;
use crate::words::said::Said;

/// What is found in flask, sand and weights.
#[derive(Clone, Debug, PartialEq)]
pub enum MouldFact {
    /// No flask takes the patterns; the plan goes on with one to be made.
    NoFlask(FlaskError),
    /// The flask asked for has less sand round the patterns than is wanted.
    TightFlask(FlaskError),
    /// The metal is not poured higher than the casting reaches.
    NoHead {
        /// From the joint to the level in the basin.
        pour_height: Length,
        /// From the joint to the top of the casting.
        top: Length,
    },
    /// The heap is too small.
    HeapTooSmall {
        /// Sand wanted.
        wanted: Mass,
        /// Sand there is.
        there: Mass,
    },
    /// No heap in the shop file.
    HeapUnknown,
    /// The heap is too wet to pour on.
    TooWet {
        /// Its moisture.
        moisture: f64,
        /// The limit.
        limit: f64,
    },
    /// The moisture of the heap is not known.
    MoistureUnknown,
    /// Half a flask is more than three people may lift.
    TooHeavy {
        /// The heavier half.
        load: Mass,
        /// What three may lift.
        three: Mass,
    },
    /// The cope alone does not hold the metal down.
    WeightsNeeded {
        /// What to lay on.
        to_lay: Mass,
    },
    /// The shop's irons together are too light.
    IronsTooLight {
        /// What has to lie on the cope.
        wanted: Mass,
        /// All there is.
        there: Mass,
    },
    /// The mould stands before it is poured.
    Stands {
        /// For how long.
        stands: Duration,
        /// How long its sand keeps.
        keeps: Duration,
    },
}

impl From<MouldFact> for Remark {
    fn from(fact: MouldFact) -> Remark {
        let kg = |mass: Mass| format!("{} kg", rounded(mass.as_kg(), 3));
        match fact {
            MouldFact::NoFlask(error) => flask("flask_none", error),
            MouldFact::TightFlask(error) => flask("flask_tight", error),
            MouldFact::NoHead { pour_height, top } => Remark::stop("no_head", "pour")
                .with("pour", format!("{} mm", rounded(pour_height.as_mm(), 3)))
                .with("top", format!("{} mm", rounded(top.as_mm(), 3))),
            MouldFact::HeapTooSmall { wanted, there } => Remark::caution("sand_short", "sand")
                .with("wanted", kg(wanted))
                .with("there", kg(there)),
            MouldFact::HeapUnknown => Remark::note("heap_unknown", "sand"),
            MouldFact::TooWet { moisture, limit } => Remark::stop("too_wet", "sand")
                .with("moisture", format!("{} %", rounded(moisture * 100.0, 2)))
                .with("limit", format!("{} %", rounded(limit * 100.0, 2))),
            MouldFact::MoistureUnknown => Remark::caution("moisture_unknown", "sand"),
            MouldFact::TooHeavy { load, three } => Remark::caution("flask_heavy", "flask")
                .with("load", kg(load))
                .with("three", kg(three)),
            MouldFact::WeightsNeeded { to_lay } => {
                Remark::caution("weights_needed", "weights").with("lay", kg(to_lay))
            }
            MouldFact::Stands { stands, keeps } => {
                let told = match stands > keeps {
                    true => Remark::caution("mould_stands-long", "mould"),
                    false => Remark::caution("mould_stands", "mould"),
                };
                told.with("stands", hours(stands))
                    .with("keeps", hours(keeps))
            }
            MouldFact::IronsTooLight { wanted, there } => Remark::stop("irons_short", "weights")
                .with("wanted", kg(wanted))
                .with("there", kg(there)),
        }
    }
}

fn hours(time: Duration) -> String {
    format!("{} h", rounded(time.as_min() / 60.0, 2))
}

fn flask(id: &'static str, error: FlaskError) -> Remark {
    Remark::caution(id, "flask").with("why", lack(error))
}

/// Why a flask does not take the patterns.
fn lack(error: FlaskError) -> Said {
    match error {
        FlaskError::NoFlasks => Said::new("no-flasks"),
        FlaskError::Unknown { name, known } => Said::new("flask-unknown")
            .with("flask", name)
            .with("known", known),
        FlaskError::TooSmall {
            asked,
            count,
            wall_mm,
            length_mm,
            width_mm,
            cope_mm,
            drag_mm,
        } => match asked {
            Some(name) => Said::new("flask-too-small").with("flask", name),
            None => Said::new("flasks-too-small"),
        }
        .with("count", count)
        .with("wall", format!("{wall_mm:.0} mm"))
        .with("inside", format!("{length_mm:.0} x {width_mm:.0} mm"))
        .with("cope", format!("{cope_mm:.0} mm"))
        .with("drag", format!("{drag_mm:.0} mm")),
    }
}
