//! How big a job the crucible takes, and how many heats.

use measure::flow::Duration;
use measure::length::Volume;
use measure::matter::Mass;
use metal::crucible::{
    CRUCIBLE_WIDTH, LEAST_YIELD, LIFTED, LIFTED_MARGIN, MOST_CASTING, Shape, inside_width,
    least_yield, lifted, most_casting,
};
use metal::order::{HEATS_IN_TIME, HEATS_WANTED, heats_in_time, heats_wanted, moulds_in_heat};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::Input;
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// Most that one founder should carry at arm's length over fire. A judgement on the safe side.
const ALONE_KG: f64 = 10.0;

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "crucible-size",
        question: "How wide is a crucible, and what furnace takes it?",
        law: &CRUCIBLE_WIDTH,
        inputs: &[
            Input::of::<Volume>("brim", "V", "what it holds to the brim")
                .narrowed_by("measure the crucible itself"),
        ],
        example: &[("brim", "1.15 l")],
        cautions: &["Never wedge cold metal in a crucible: it swells more than the crucible."],
        work: |given| {
            let brim: Volume = given.get("brim");
            let shape = Shape::of(brim);
            Ok(vec![
                Answer::of("inside width", inside_width(brim)).give_or_take(0.1),
                Answer::of("outside width", shape.outside).give_or_take(0.1),
                Answer::of("furnace bore", shape.furnace_bore()).rounded_up(),
            ])
        },
    },
    Reckoner {
        name: "tongs-load",
        question: "What do the tongs have to lift?",
        law: &LIFTED,
        inputs: &[
            Input::of::<Mass>("metal_mass", "m_metal", "metal in the crucible"),
            Input::of::<Volume>("brim", "V", "what the crucible holds to the brim"),
        ],
        example: &[("metal_mass", "7.3 kg"), ("brim", "1.15 l")],
        cautions: &[
            "Grip below the middle, never by the lip; two people or a shank before it is too heavy.",
        ],
        work: |given| {
            let load = lifted(given.get("metal_mass"), given.get("brim"));
            if load.as_kg() > ALONE_KG {
                given.doubt("more than 10 kg with the arms out over fire: lift it by two");
            }
            Ok(vec![
                Answer::of("load", load)
                    .give_or_take(LIFTED_MARGIN)
                    .rounded_up(),
            ])
        },
    },
    Reckoner {
        name: "most-casting",
        question: "How heavy a casting can my crucible pour?",
        law: &MOST_CASTING,
        inputs: &[
            Input::of::<Mass>(
                "held",
                "m_held",
                "what it holds at work: reckon crucible-holds",
            ),
            Input::share("casting_yield", "y", "casting as a share of what is poured")
                .or("40 to 70 %", "common-practice")
                .narrowed_by("weigh casting and runners of the last pour"),
            Input::share("pig_share", "p", "share kept for the ingot mould")
                .or("10 %", "common-practice"),
        ],
        example: &[("held", "7.3 kg")],
        cautions: &[],
        work: |given| {
            let (share, pig) = (given.number("casting_yield"), given.number("pig_share"));
            let mass = most_casting(given.get("held"), share, pig);
            Ok(vec![Answer::of("casting", mass).rounded_down()])
        },
    },
    Reckoner {
        name: "least-yield",
        question: "How lean must the running system be, that so many castings fit in one heat?",
        law: &LEAST_YIELD,
        inputs: &[
            Input::number("castings", "n", "castings in the heat"),
            Input::of::<Mass>("each", "m", "one casting, trimmed"),
            Input::share("pig_share", "p", "share kept for the ingot mould")
                .or("10 %", "common-practice"),
            Input::of::<Mass>("held", "m_held", "what the crucible holds at work"),
        ],
        example: &[
            ("castings", "12"),
            ("each", "212 g"),
            ("pig_share", "8 %"),
            ("held", "4.37 kg"),
        ],
        cautions: &[],
        work: |given| {
            let each: Mass = given.get("each");
            let castings = each * given.number("castings");
            let share = least_yield(castings, given.number("pig_share"), given.get("held"));
            if share > 0.75 {
                given.doubt("hand moulds seldom yield more than three quarters: take two heats");
            }
            Ok(vec![Answer::share("yield", share).rounded_up()])
        },
    },
    Reckoner {
        name: "heats",
        question: "How many heats do so many moulds take, and how many moulds go in each?",
        law: &HEATS_WANTED,
        inputs: &[
            Input::number("moulds", "n", "equal moulds"),
            Input::of::<Mass>("each", "m", "metal that one takes, running system and all"),
            Input::share("pig_share", "p", "share kept for the ingot mould")
                .or("10 %", "common-practice"),
            Input::of::<Mass>("held", "m_held", "what the crucible holds at work"),
        ],
        example: &[
            ("moulds", "6"),
            ("each", "1.42 kg"),
            ("pig_share", "8 %"),
            ("held", "4.37 kg"),
        ],
        cautions: &["The ingot mould stands hot and dry beside the flasks before the first lift."],
        work: heats,
    },
    Reckoner {
        name: "heats-in-time",
        question: "How many heats fit in the lesson?",
        law: &HEATS_IN_TIME,
        inputs: &[
            Input::of::<Duration>("time", "t", "from lighting to the last pour"),
            Input::of::<Duration>("first", "t_1", "first heat and its pour, from cold"),
            Input::of::<Duration>("next", "t_2", "each further heat and its pour"),
        ],
        example: &[
            ("time", "80 min"),
            ("first", "40 to 50 min"),
            ("next", "20 to 25 min"),
        ],
        cautions: &["Those who watch stand more than 2 m off, behind a line on the floor."],
        work: |given| {
            let time: Duration = given.get("time");
            let heats = heats_in_time(time, given.get("first"), given.get("next"));
            if heats < 1.0 {
                given.doubt("not even the first heat is done: melt before the lesson");
            }
            Ok(vec![Answer::number("heats", heats).rounded_down()])
        },
    },
];

fn heats(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let (each, held): (Mass, Mass) = (given.get("each"), given.get("held"));
    let (moulds, pig) = (given.number("moulds"), given.number("pig_share"));
    let in_each = moulds_in_heat(each, pig, held);
    if in_each < 1.0 {
        return given.refuse(
            "each",
            "with its pig is more than the crucible holds",
            "take a larger crucible or a leaner running system",
        );
    }
    let with_pig = each * (1.0 + pig);
    let short_for_more = with_pig * (in_each + 1.0) - held;
    Ok(vec![
        Answer::number("heats", heats_wanted(moulds, each, pig, held)).rounded_up(),
        Answer::number("moulds in each", in_each).rounded_down(),
        Answer::of("short for one more", short_for_more).rounded_up(),
        Answer::of("charge of a full heat", with_pig * in_each).rounded_up(),
    ])
}
