//! The gates of one running system: shares, order of filling, areas that even them out.

use measure::length::{Area, Length, Volume};
use measure::text::rounded;
use mould::gating::balance::{BALANCED_GATES, balanced_gates};
use mould::gating::filling::{Cavity, FILL_ORDER, fill_order};
use mould::gating::friction::{FRICTION, Friction, friction_factor};
use mould::gating::network::{Flows, GATE_FLOWS, Network, PlainRunners, Stretch, gate_flows};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

pub(super) const FRICTION_FACTOR: Reckoner = Reckoner {
    name: "friction-factor",
    question: "How much head do the walls of a channel take?",
    law: &FRICTION,
    inputs: &[
        Input::number(
            "reynolds",
            "Re",
            "speed times width over viscosity by density, v D/ν",
        ),
        Input::number(
            "roughness",
            "r",
            "height of the wall's grain over the width",
        )
        .or("0.02", "common-practice"),
    ],
    example: &[("reynolds", "20000"), ("roughness", "0.02")],
    cautions: &[],
    work: |given| {
        let (reynolds, roughness) = (given.number("reynolds"), given.number("roughness"));
        if reynolds <= 0.0 || !(0.0..=0.5).contains(&roughness) {
            let advice = "give a Reynolds number above nought and a roughness of 0 to 0.5";
            return given.refuse(
                "roughness",
                "or Reynolds number is out of its bounds",
                advice,
            );
        }
        if roughness > 0.05 {
            given.doubt("grains over a twentieth of the width: a nozzle rather than a channel");
        }
        let factor = friction_factor(reynolds, roughness);
        Ok(vec![Answer::number("factor", factor)])
    },
};

const HEAD: Input = Input::of::<Length>("head", "H", "from the gates to the level in the basin");
const SPRUE_FOOT: Input = Input::of::<Area>("sprue_foot", "", "area of the sprue at its foot");
const RUNNER: Input = Input::of::<Area>("runner", "", "area of the runner to one side");
const GATES: Input = Input::list::<Area>(
    "gates",
    "",
    "areas of the gates along one side, the nearest first: \"90 mm2, 90 mm2\"",
);
const SIDES: Input = Input::choice(
    "sides",
    "runners that leave the sprue, all alike",
    &["one", "two"],
)
.or("one", "common-practice");
const OTHER_GATES: Input = Input::list::<Area>(
    "other_gates",
    "",
    "areas of the gates along the other side, where they are not as along the first",
)
.optional();
const SPRUE: Input = Input::of::<Length>(
    "sprue",
    "",
    "length of the sprue; left out, as high as the metal stands",
)
.optional();
const SPACING: Input = Input::of::<Length>(
    "spacing",
    "L",
    "runner from the sprue to the first gate, and from gate to gate",
);
const FRICTION_GIVEN: Input = Input::number(
    "friction",
    "f",
    "friction of the walls: reckon friction-factor",
)
.or("0.03", "ingate-trial-imono");
const WELL: Input = Input::number(
    "sprue_loss",
    "K_s",
    "heads of its speed lost at the foot of the sprue",
)
.or("1", "idelchik-handbook");
const BEND: Input = Input::number(
    "gate_loss",
    "K_g",
    "heads of its speed lost in the bend into a gate",
)
.or("0.7", "ingate-trial-imono");
const TURN: Input = Input::number(
    "turn",
    "k",
    "part of the runner's speed head that a gate does not get",
)
.or("1", "idelchik-handbook");

pub(super) const GATE_SHARES: Reckoner = Reckoner {
    name: "gate-shares",
    question: "How much runs through each gate, and how fast?",
    law: &GATE_FLOWS,
    inputs: &[
        HEAD,
        SPRUE_FOOT,
        RUNNER,
        GATES,
        SIDES,
        OTHER_GATES,
        SPRUE,
        SPACING,
        FRICTION_GIVEN,
        WELL,
        BEND,
        TURN,
    ],
    example: &[
        ("head", "100 mm"),
        ("sprue_foot", "125 mm2"),
        ("runner", "250 mm2"),
        ("gates", "60 mm2, 60 mm2, 60 mm2, 60 mm2"),
        ("spacing", "60 mm"),
    ],
    cautions: &[],
    work: |given| {
        let network = network(given)?;
        let flows = gate_flows(&network).or_else(|fault| refused(given, "gates", &fault))?;
        let one_side = flows.gates.iter().filter(|gate| gate.side == 0);
        let shares: Vec<f64> = one_side.map(|gate| gate.share).collect();
        let spread = spread(&shares);
        if spread > EVEN {
            given.doubt(format!(
                "the gates do not share evenly: the hardest run has {} times the weakest; \
                 reckon balanced-gates",
                rounded(1.0 + spread, 3)
            ));
        }
        let ends = [shares.first(), shares.last()].map(|share| share.copied().unwrap_or(0.0));
        Ok(vec![
            Answer::of("all metal", flows.sprue),
            Answer::of("fastest gate", flows.fastest()).rounded_up(),
            Answer::share("nearest gate", ends[0]),
            Answer::share("farthest gate", ends[1]),
            Answer::words("gates from the sprue", told(&flows)),
        ])
    },
};

pub(super) const FILL_IN_ORDER: Reckoner = Reckoner {
    name: "fill-order",
    question: "Which cavity fills last, and by how many seconds?",
    law: &FILL_ORDER,
    inputs: &[
        Input::of::<Length>("head", "", "from the gates to the level in the basin"),
        SPRUE_FOOT,
        RUNNER,
        GATES,
        SIDES,
        OTHER_GATES,
        SPRUE,
        Input::of::<Length>(
            "spacing",
            "",
            "runner from the sprue to the first gate, and from gate to gate",
        ),
        Input::list::<Volume>(
            "cavities",
            "",
            "what each cavity of one side takes, the nearest first",
        ),
        Input::of::<Length>("above", "", "height of the cavities above their gates")
            .or("0 mm", "common-practice"),
        Input::of::<Length>("below", "", "depth of the cavities below their gates")
            .or("0 mm", "common-practice"),
        Input::number("friction", "", "friction of the walls").or("0.03", "ingate-trial-imono"),
        Input::number("sprue_loss", "", "heads lost at the foot of the sprue")
            .or("1", "idelchik-handbook"),
        Input::number("gate_loss", "", "heads lost in the bend into a gate")
            .or("0.7", "ingate-trial-imono"),
        Input::number(
            "turn",
            "",
            "part of the runner's speed head that a gate does not get",
        )
        .or("1", "idelchik-handbook"),
    ],
    example: &[
        ("head", "85 mm"),
        ("sprue_foot", "110 mm2"),
        ("runner", "220 mm2"),
        ("gates", "110 mm2, 110 mm2"),
        ("sides", "two"),
        ("spacing", "70 mm"),
        ("cavities", "80 cm3, 80 cm3"),
        ("below", "18 mm"),
    ],
    cautions: &["Pour until every feeder and vent shows metal, not until the sprue stands still."],
    work: |given| {
        let network = network(given)?;
        let volumes: Vec<Volume> = given.list("cavities");
        let cavities = cavities(given, &network, &volumes)?;
        let order =
            fill_order(&network, &cavities).or_else(|fault| refused(given, "cavities", &fault))?;
        let first_side = network.sides[0].len();
        let before = if order.last < first_side {
            0
        } else {
            first_side
        };
        let place = order.last - before + 1;
        let latest = order.full_at[order.last];
        let times = order.full_at.iter().take(first_side);
        let times: Vec<String> = times
            .map(|time| format!("{} s", rounded(time.as_s(), 2)))
            .collect();
        Ok(vec![
            Answer::of("lag", order.lag),
            Answer::of("all full", latest),
            Answer::words("last", format!("number {place} from the sprue")),
            Answer::words("full, from the sprue outwards", times.join(", ")),
        ])
    },
};

pub(super) const EVEN_GATES: Reckoner = Reckoner {
    name: "balanced-gates",
    question: "How must the gates be cut, so that each gets the same?",
    law: &BALANCED_GATES,
    inputs: &[
        Input::of::<Length>("head", "h", "from the gates to the level in the basin"),
        SPRUE_FOOT,
        RUNNER,
        GATES,
        SIDES,
        OTHER_GATES,
        SPRUE,
        SPACING,
        Input::new(
            "wanted",
            "s",
            "wanted shares in proportion, the nearest first; even where left out",
            Wanted::Numbers,
        )
        .optional(),
        FRICTION_GIVEN,
        Input::number("sprue_loss", "", "heads lost at the foot of the sprue")
            .or("1", "idelchik-handbook"),
        BEND,
        TURN,
    ],
    example: &[
        ("head", "100 mm"),
        ("sprue_foot", "125 mm2"),
        ("runner", "250 mm2"),
        ("gates", "60 mm2, 60 mm2, 60 mm2, 60 mm2"),
        ("spacing", "60 mm"),
    ],
    cautions: &[],
    work: |given| {
        let network = network(given)?;
        let side = network.sides[0].len();
        let wanted = match given.has("wanted") {
            true => given.numbers("wanted"),
            false => vec![1.0; most_gates(&network)],
        };
        let of_side = |side: &Vec<Stretch>| wanted.iter().take(side.len()).copied();
        let everywhere: Vec<f64> = network.sides.iter().flat_map(of_side).collect();
        let areas = balanced_gates(&network, &everywhere)
            .or_else(|fault| refused(given, "wanted", &fault))?;
        let flows = gate_flows(&network.with_gates(&areas))
            .or_else(|fault| refused(given, "gates", &fault))?;
        let cut: Vec<String> = areas
            .iter()
            .take(side)
            .map(|area| format!("{} mm²", rounded(area.as_mm2(), 3)))
            .collect();
        Ok(vec![
            Answer::of("nearest gate", areas[0]),
            Answer::of("farthest gate", areas[side - 1]),
            Answer::of("fastest gate", flows.fastest()).rounded_up(),
            Answer::words("cut, from the sprue outwards", cut.join(", ")),
        ])
    },
};

/// Gates whose flows differ by no more than this share are called even.
const EVEN: f64 = 0.05;

/// More gates on one runner than any hand-cut mould has.
const MOST_GATES: usize = 40;

fn network(given: &Given<'_>) -> Result<Network, Impossible> {
    let first: Vec<Area> = given.list("gates");
    let other: Vec<Area> = given.list("other_gates");
    let countable = |gates: &[Area]| !gates.is_empty() && gates.len() <= MOST_GATES;
    if !countable(&first) || given.has("other_gates") && !countable(&other) {
        let why = "are none, or more than a hand-cut runner has";
        return given.refuse(
            "gates",
            why,
            "give the gates of one side with commas between",
        );
    }
    let sides = match (given.has("other_gates"), given.words("sides")) {
        (true, _) => vec![first, other],
        (false, "two") => vec![first.clone(), first],
        (false, _) => vec![first],
    };
    let level: Length = given.get("head");
    let runners = PlainRunners {
        level,
        foot: given.get("sprue_foot"),
        sprue: given.find("sprue").unwrap_or(level),
        runner: given.get("runner"),
        spacing: given.get("spacing"),
        sides,
        sprue_loss: given.number("sprue_loss"),
        gate_loss: given.number("gate_loss"),
        friction: Friction::Stated(given.number("friction")),
        turn: given.number("turn"),
    };
    Ok(runners.network())
}

/// A cavity for every gate, those of each side as typed, the nearest first.
fn cavities(
    given: &Given<'_>,
    network: &Network,
    volumes: &[Volume],
) -> Result<Vec<Cavity>, Impossible> {
    let (above, below): (Length, Length) = (given.get("above"), given.get("below"));
    let cavity = |volume: &Volume| Cavity {
        volume: *volume,
        bottom: Length::ZERO - below,
        height: above + below,
    };
    let most = most_gates(network);
    if volumes.len() != most {
        let why = format!("are {} for {most} gates of a side", volumes.len());
        return given.refuse("cavities", why, "give one for each gate, the nearest first");
    }
    let of_side = |side: &Vec<Stretch>| volumes.iter().take(side.len()).map(cavity);
    Ok(network.sides.iter().flat_map(of_side).collect())
}

/// Gates of the side that has most.
fn most_gates(network: &Network) -> usize {
    network.sides.iter().map(Vec::len).max().unwrap_or(0)
}

fn refused<T>(
    given: &Given<'_>,
    what: &'static str,
    fault: &dyn std::error::Error,
) -> Result<T, Impossible> {
    given.refuse(what, fault.to_string(), "measure the running system again")
}

/// By how much the largest share outdoes the smallest.
fn spread(shares: &[f64]) -> f64 {
    let most = shares.iter().copied().fold(0.0, f64::max);
    let least = shares.iter().copied().fold(most, f64::min);
    most / least.max(f64::MIN_POSITIVE) - 1.0
}

fn told(flows: &Flows) -> String {
    let one_side = flows.gates.iter().filter(|gate| gate.side == 0);
    let each = one_side.map(|gate| {
        let speed = rounded(gate.speed.as_m_per_s(), 2);
        format!("{} % at {speed} m/s", rounded(gate.share * 100.0, 3))
    });
    each.collect::<Vec<_>>().join(", ")
}
