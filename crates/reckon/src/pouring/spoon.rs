//! Temperature without a probe: a spoonful that freezes, and how the metal looks.

use measure::flow::Duration;
use measure::heat::Temperature;
use metal::alloy::Alloy;
use metal::spoon::{SPOON_TEMPERATURE, Setting, cues, spoon_temperature};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::Input;
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// Temperature by the time a spoonful takes to freeze.
pub(super) const SPOON: Reckoner = Reckoner {
    name: "spoon",
    question: "How hot is the metal, by the time a spoonful takes to freeze?",
    law: &SPOON_TEMPERATURE,
    inputs: &[
        Input::of::<Duration>("time", "t", "this spoonful, dip to standing surface")
            .narrowed_by("time three spoonfuls and take the middle one"),
        Input::of::<Duration>("time_1", "t_1", "first setting"),
        Input::of::<Temperature>("temperature_1", "T_1", "what the probe said then"),
        Input::of::<Duration>("time_2", "t_2", "second setting"),
        Input::of::<Temperature>("temperature_2", "T_2", "what the probe said then"),
        Input::of::<Duration>("watch", "", "how well it can be timed").or("1 s", "common-practice"),
        Input::metal(),
    ],
    example: &[
        ("time", "22 s"),
        ("time_1", "18 s"),
        ("temperature_1", "680 C"),
        ("time_2", "26 s"),
        ("temperature_2", "760 C"),
        ("metal", "A356"),
    ],
    cautions: &["The spoon is hot and dry before it dips: a cold one spits."],
    work: spooned,
};

fn spooned(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let setting = |time, temperature| Setting {
        time: given.get(time),
        temperature: given.get(temperature),
    };
    let settings = [
        setting("time_1", "temperature_1"),
        setting("time_2", "temperature_2"),
    ];
    let read = spoon_temperature(settings, given.get("time"), given.get("watch"));
    let band = read.or_else(|fault| {
        given.refuse(
            "time",
            fault.to_string(),
            "set the spoon again beside a probe",
        )
    })?;
    let mut answers =
        vec![Answer::temperature("temperature", band.likely()).between(band.low(), band.high())];
    if let Some(alloy) = given.alloy() {
        answers.push(Answer::words("it should look", looks(alloy, band.likely())));
    }
    Ok(answers)
}

/// The cues that fit a temperature, or where they are silent.
fn looks(alloy: &Alloy, at: Temperature) -> String {
    let fits = cues(alloy.family).filter(|cue| {
        let between = &cue.between.band;
        between.low() <= at && at <= between.high()
    });
    let seen: Vec<_> = fits.map(|cue| cue.seen.as_str()).collect();
    match seen.is_empty() {
        true => "no cue is known for this heat".to_owned(),
        false => seen.join("; or "),
    }
}
