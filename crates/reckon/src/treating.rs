//! Gas, zinc, losses, and what is put into the melt.

mod gas;
mod zinc;

use measure::band::Band;
use measure::flow::Duration;
use measure::matter::Mass;
use metal::furnace::Furnace;
use metal::loss::{MELT_LOSS, form, loss_of_stock};
use metal::treatment::{DOSE, NOT_WORTH_IT, all, dose, named};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// Said wherever something is put into liquid metal.
const DRY: &str = "Everything that goes into liquid metal is dry and warm, or it spits.";

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "melt-loss",
        question: "How much of the charge is lost in the melt?",
        law: &MELT_LOSS,
        inputs: &[
            Input::metal(),
            Input::choice(
                "furnace",
                "what it is melted in",
                &["fuel", "electric", "induction", "cupola"],
            )
            .or("fuel", "common-practice"),
            Input::choice(
                "form",
                "how the stock comes",
                &["ingot", "heavy", "thin", "swarf", "cans"],
            ),
            Input::of::<Duration>("standing", "t", "minutes liquid beyond need")
                .or("0 to 15 min, likely 5 min", "common-practice"),
        ],
        example: &[("metal", "A356"), ("form", "cans"), ("standing", "10 min")],
        cautions: &[
            DRY,
            "Swarf and cans hold oil and water: dry them, feed them under the skin.",
        ],
        work: loss,
    },
    zinc::PURE,
    zinc::OVER_BRASS,
    zinc::BOILS,
    zinc::SMOKE,
    gas::DAMP,
    gas::HELD,
    gas::SEEPING,
    gas::PINHOLES,
    gas::TWO_CUPS,
    Reckoner {
        name: "treatment",
        question: "How much flux, degasser, phosphor copper, refiner or inoculant, and when?",
        law: &DOSE,
        inputs: &[
            Input::of::<Mass>("melt", "m", "metal in the pot"),
            Input::new(
                "treatment",
                "",
                "what: phosphor copper, cover flux, grain refiner",
                Wanted::Text,
            ),
        ],
        example: &[("melt", "4.8 kg"), ("treatment", "phosphor copper")],
        cautions: &[
            DRY,
            "Fluxes and tablets fume: outdoors and upwind; some are banned where you live.",
        ],
        work: |given| {
            let Some(row) = named(given.words("treatment")) else {
                let names: Vec<&str> = all().iter().map(|row| row.name.as_str()).collect();
                return given.refuse(
                    "treatment",
                    "is not in the table",
                    format!("known: {}", names.join(", ")),
                );
            };
            let melt = given.get("melt");
            let of = &row.dose.band;
            given.doubt(row.mind.clone());
            for (what, why) in NOT_WORTH_IT.iter().filter(|_| row.turn == 4) {
                given.doubt(format!("not worth it: {what}: {why}"));
            }
            Ok(vec![
                Answer::of("dose", dose(melt, of.likely()))
                    .between(dose(melt, of.low()), dose(melt, of.high())),
                Answer::words("how", row.how.clone()),
                Answer::words("turn", TURNS[usize::from(row.turn).min(TURNS.len() - 1)]),
            ])
        },
    },
];

/// The order of treatment, by the turn of the table.
const TURNS: [&str; 6] = [
    "",
    "first, while it melts",
    "second, when all is liquid: flux and skim",
    "third: make up what burnt off",
    "fourth: drive the gas out, then let it stand",
    "last, just before pouring",
];

fn loss(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let Some(alloy) = given.alloy() else {
        return given.refuse("metal", "is not named", "losses differ by metal: name it");
    };
    let furnace = Furnace::named(given.words("furnace")).unwrap_or(Furnace::FuelCrucible);
    let form = form(given.words("form"));
    let standing = Band::exact(given.get("standing"));
    let over = |form| loss_of_stock(furnace, alloy.family, form, &standing);
    let Some((form, (loss, _))) = form.and_then(|form| Some((form, over(form)?))) else {
        return given.refuse(
            "furnace",
            "has no figure for this metal",
            "weigh in and out once",
        );
    };
    given.doubt(format!(
        "{}; weigh what goes in and what comes out of three heats",
        form.what
    ));
    Ok(vec![
        Answer::share("loss", loss.likely())
            .from_to(loss.low(), loss.high())
            .rounded_up(),
    ])
}
