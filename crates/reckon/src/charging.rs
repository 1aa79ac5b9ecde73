//! What to weigh out of which heap, done by hand for one element.

use measure::matter::Mass;
use metal::charge_makeup::balance::{
    ADDITION, AFTER_LOSS, BLEND, Part, RICH_HEAP, addition, after_loss, blend, rich_heap,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::Input;
use crate::reckoner::Reckoner;

/// Said wherever cold metal goes into a melt.
const WARM: &str = "Warm every piece dry over the furnace before it goes into liquid metal: a wet \
                    or hollow piece throws the melt out.";

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "blend",
        question: "What does a mix of heaps hold of an element?",
        law: &BLEND,
        inputs: &[
            Input::of::<Mass>("first_mass", "m₁", "of the first heap"),
            Input::share("first_share", "w₁", "what it holds of the element"),
            Input::of::<Mass>("second_mass", "m₂", "of the second heap"),
            Input::share("second_share", "w₂", "what it holds of the element"),
            Input::of::<Mass>("third_mass", "m₃", "of a third heap").or("0 kg", "common-practice"),
            Input::share("third_share", "w₃", "what it holds of the element")
                .or("0 %", "common-practice"),
        ],
        example: &[
            ("first_mass", "3.1 kg"),
            ("first_share", "2.2 to 2.5 %"),
            ("second_mass", "1.7 kg"),
            ("second_share", "1.2 to 1.4 %"),
        ],
        cautions: &[],
        work: |given| {
            let parts = [
                part(given, "first_mass", "first_share"),
                part(given, "second_mass", "second_share"),
                part(given, "third_mass", "third_share"),
            ];
            if parts.iter().all(|part| part.mass <= Mass::ZERO) {
                let advice = "give the mass of at least one heap";
                return given.refuse("blend", "nothing is mixed", advice);
            }
            Ok(vec![Answer::share("share", blend(&parts))])
        },
    },
    Reckoner {
        name: "rich-heap",
        question: "How much of a rich heap to take, a lean one making up the rest?",
        law: &RICH_HEAP,
        inputs: &[
            Input::of::<Mass>("charge", "m", "the whole charge"),
            Input::share("wanted", "w", "what it has to hold of the element"),
            Input::share("rich", "w₁", "what the rich heap holds"),
            Input::share("lean", "w₂", "what the lean heap holds"),
            Input::of::<Mass>(
                "set",
                "mₛ",
                "what is in the charge already, such as returns",
            )
            .or("0 kg", "common-practice"),
            Input::share("set_share", "wₛ", "what that holds").or("0 %", "common-practice"),
        ],
        example: &[
            ("charge", "5 kg"),
            ("wanted", "2.1 %"),
            ("rich", "2.4 %"),
            ("lean", "1.2 %"),
        ],
        cautions: &[],
        work: work_rich_heap,
    },
    Reckoner {
        name: "after-loss",
        question: "What is left of an element after part of it has burnt off?",
        law: &AFTER_LOSS,
        inputs: &[
            Input::share("share", "w", "what the charge holds of it"),
            Input::share("loss", "l", "the part of the element that burns off")
                .narrowed_by("have one melt analysed, or weigh what goes in and what comes out"),
        ],
        example: &[("share", "36 %"), ("loss", "2 to 6 %")],
        cautions: &[],
        work: |given| {
            let (share, loss) = (given.number("share"), given.number("loss"));
            if share * loss >= 1.0 {
                let advice = "give a loss below 100 %";
                return given.refuse("loss", "nothing is left of the melt", advice);
            }
            Ok(vec![Answer::share("left", after_loss(share, loss))])
        },
    },
    Reckoner {
        name: "addition",
        question: "How much of an addition brings the melt up to what is wanted?",
        law: &ADDITION,
        inputs: &[
            Input::of::<Mass>("melt", "m", "the melt"),
            Input::share("now", "w₀", "what it holds of the element"),
            Input::share("wanted", "w", "what it has to hold"),
            Input::share("in_addition", "wₐ", "what the addition holds"),
            Input::share("recovery", "r", "the part of that which reaches the melt")
                .narrowed_by("have one melt analysed before and after"),
        ],
        example: &[
            ("melt", "6.2 kg"),
            ("now", "1.9 %"),
            ("wanted", "2.1 %"),
            ("in_addition", "75 %"),
            ("recovery", "85 to 95 %"),
        ],
        cautions: &[WARM],
        work: work_addition,
    },
];

fn part(given: &Given<'_>, mass: &str, share: &str) -> Part {
    Part {
        mass: given.get(mass),
        share: given.number(share),
    }
}

fn work_rich_heap(given: &Given<'_>) -> Result<Vec<Answer>, crate::refusal::Impossible> {
    let charge: Mass = given.get("charge");
    let set = part(given, "set", "set_share");
    let (rich, lean) = (given.number("rich"), given.number("lean"));
    if rich <= lean {
        let why = "the rich heap is no richer than the lean one";
        return given.refuse("rich", why, "change them over, or take other heaps");
    }
    if set.mass > charge {
        let why = "more is in the charge already than it weighs";
        return given.refuse("set", why, "give a larger charge or take less of it");
    }
    let of_rich = rich_heap(charge, given.number("wanted"), set, rich, lean);
    let of_lean = charge - set.mass - of_rich;
    if of_rich < Mass::ZERO || of_lean < Mass::ZERO {
        let why = "no mix of the two comes to that: both heaps stand on one side of it";
        let advice = "take a third heap on the other side, or let `oddside charge` choose";
        return given.refuse("wanted", why, advice);
    }
    Ok(vec![
        Answer::of("of the rich heap", of_rich),
        Answer::of("of the lean heap", of_lean),
    ])
}

fn work_addition(given: &Given<'_>) -> Result<Vec<Answer>, crate::refusal::Impossible> {
    let (now, wanted) = (given.number("now"), given.number("wanted"));
    let (holds, recovery) = (given.number("in_addition"), given.number("recovery"));
    if wanted < now {
        let why = "the melt holds more than is wanted already";
        return given.refuse("wanted", why, "thin it with metal that holds less");
    }
    if recovery > 1.0 || recovery * holds <= wanted * (1.0 - holds + recovery * holds) {
        let why = "what reaches the melt of the addition is no richer than what is wanted";
        return given.refuse("in_addition", why, "take a richer addition");
    }
    let mass = addition(given.get("melt"), now, wanted, holds, recovery);
    Ok(vec![Answer::of("addition", mass)])
}
