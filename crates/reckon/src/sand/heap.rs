//! What a heap became, and what brings it back.

use measure::length::{Area, Length};
use measure::matter::{Density, Mass};
use sand::heap::balance::{BURNT_SHARE, CLAY_WANTED, burnt_share, clay_wanted};
use sand::heap::{
    DILUTE_DRY, DISCARD_SHARE, FINES_AFTER, NEW_SAND_FOR_FINES, STEADY_FINES, TOP_UP, dilute_dry,
    discard_share, fines_after, new_sand_for_fines, steady_fines, top_up,
};
use sand::moisture::dry_down_stop;

use super::{SILICA, above_nought};
use crate::answer::Answer;
use crate::input::Input;
use crate::reckoner::Reckoner;

const FINES_NOW: Input = Input::share("now", "f_now", "washable fines of the dry heap now")
    .narrowed_by("wash a larger sample: reckon clay-by-wash");

const NEW_FINES: Input =
    Input::share("of_new_sand", "f_new", "fines of the new sand").or("0 %", "common-practice");

const NEW_CLAY: Input =
    Input::share("clay", "a", "new clay added to the dry heap").or("0 %", "common-practice");

/// Part of the heap above which adding dry stuff to it is no way of drying: our own choice.
const SENSIBLE: f64 = 0.25;

/// Fines above which a heap is doubtful: natural sands hold up to 26 %, `yola-natural-sand`.
const MANY_FINES: f64 = 0.26;

/// Fines after renewal.
pub(super) const FINES: Reckoner = Reckoner {
    name: "fines-after",
    question: "What fines will the heap have after new sand and clay?",
    law: &FINES_AFTER,
    inputs: &[
        FINES_NOW,
        NEW_FINES,
        Input::share(
            "exchanged",
            "n",
            "part of the heap thrown away for new sand",
        ),
        NEW_CLAY,
    ],
    example: &[("now", "10.8 %"), ("exchanged", "20 %"), ("clay", "1.5 %")],
    cautions: &[SILICA],
    work: |given| {
        above_nought(given, &["now", "of_new_sand", "exchanged", "clay"])?;
        let exchanged = given.number("exchanged");
        if exchanged > 1.0 {
            return given.refuse("exchanged", "is more than the heap", "give a part of it");
        }
        let (now, new) = (given.number("now"), given.number("of_new_sand"));
        let after = fines_after(now, new, exchanged, given.number("clay"));
        given.doubt("many fines and a weak squeeze mean dead clay, not clay enough");
        Ok(vec![Answer::share("fines", after)])
    },
};

/// New sand for a limit.
pub(super) const NEW_SAND: Reckoner = Reckoner {
    name: "new-sand-for-fines",
    question: "How much of a tired heap must go out for new sand?",
    law: &NEW_SAND_FOR_FINES,
    inputs: &[
        FINES_NOW,
        Input::share("wanted", "f_wanted", "fines wanted"),
        NEW_FINES,
        NEW_CLAY,
        Input::of::<Mass>("heap", "", "the dry heap").optional(),
    ],
    example: &[
        ("now", "10.8 %"),
        ("wanted", "10 %"),
        ("clay", "1.5 %"),
        ("heap", "82 kg"),
    ],
    cautions: &[SILICA],
    work: |given| {
        above_nought(given, &["of_new_sand", "clay"])?;
        let (now, wanted) = (given.number("now"), given.number("wanted"));
        let new = given.number("of_new_sand");
        if wanted <= new {
            return given.refuse(
                "wanted",
                "is no more than new sand brings",
                "take cleaner sand",
            );
        }
        if now <= new {
            return given.refuse(
                "now",
                "is no more than new sand brings",
                "leave it as it is",
            );
        }
        let exchanged = new_sand_for_fines(now, new, wanted, given.number("clay"));
        if exchanged > 1.0 {
            return given.refuse(
                "wanted",
                "is out of reach with this clay",
                "start a new heap",
            );
        }
        let mut answers = vec![Answer::share("of the heap", exchanged)];
        if let Some(heap) = given.find::<Mass>("heap") {
            answers.push(Answer::of("out, and new sand in", heap * exchanged));
            answers.push(Answer::of("clay to add", heap * given.number("clay")));
        }
        given.doubt("dry, sieve out core lumps and metal, throw out burnt crust first; then test");
        given.doubt("core sand bound with silicate spoils clay: keep it out of the heap");
        given.doubt("let the first pour of a renewed heap be a dull one, with nothing to lose");
        Ok(answers)
    },
};

/// Dry stuff in place of drying.
pub(super) const DILUTION: Reckoner = Reckoner {
    name: "dry-by-dilution",
    question: "How much dry sand and clay would take up the water of a wet heap?",
    law: &DILUTE_DRY,
    inputs: &[
        Input::of::<Mass>("heap", "m", "the wet heap"),
        Input::share("now", "w_now", "moisture now, of the wet mass"),
        Input::share("wanted", "w_wanted", "moisture wanted, of the wet mass"),
    ],
    example: &[("heap", "90 kg"), ("now", "9.1 %"), ("wanted", "4.5 %")],
    cautions: &[SILICA],
    work: |given| {
        let (now, wanted) = (given.number("now"), given.number("wanted"));
        if wanted > now {
            return given.refuse("wanted", "is wetter than it is now", "use water-to-add");
        }
        if wanted <= 0.0 {
            return given.refuse("wanted", "is nought: no dry stuff does that", "dry it out");
        }
        let heap: Mass = given.get("heap");
        let dry = dilute_dry(heap, now, wanted);
        if dry > heap * SENSIBLE {
            given.doubt("not sensible: spread the heap out and let the water go");
        }
        Ok(vec![
            Answer::of("dry sand and clay", dry),
            Answer::of(
                "or water to dry off",
                heap - dry_down_stop(heap, now, wanted),
            ),
        ])
    },
};

/// Clay to keep the heap alive.
pub(super) const CLAY_TOP_UP: Reckoner = Reckoner {
    name: "clay-top-up",
    question: "How much clay must each renewal bring so that the heap keeps its own?",
    law: &TOP_UP,
    inputs: &[
        Input::share("live", "b", "live clay wanted in the heap"),
        Input::share("exchanged", "n", "part of the heap exchanged for new sand")
            .or("0 %", "common-practice"),
        Input::share(
            "burnt",
            "φ",
            "part of the sand that got hot enough to kill the clay",
        )
        .narrowed_by("weigh the burnt crust you scrape off"),
    ],
    example: &[("live", "6 %"), ("exchanged", "5 %"), ("burnt", "2 to 5 %")],
    cautions: &[SILICA],
    work: |given| {
        above_nought(given, &["live", "exchanged", "burnt"])?;
        let (exchanged, burnt) = (given.number("exchanged"), given.number("burnt"));
        if exchanged > 1.0 || burnt > 1.0 {
            return given.refuse("burnt", "is more than the whole heap", "give a part of it");
        }
        let clay = top_up(given.number("live"), exchanged, burnt);
        Ok(vec![Answer::share("clay of the dry heap", clay)])
    },
};

/// Where fines settle.
pub(super) const SETTLED: Reckoner = Reckoner {
    name: "steady-fines",
    question: "At what fines does a heap settle if the same goes out after each pour?",
    law: &STEADY_FINES,
    inputs: &[
        Input::share("made", "g", "fines made by each pour, of the heap"),
        Input::share(
            "exchanged",
            "n",
            "part of the heap exchanged after each pour",
        ),
        NEW_FINES,
    ],
    example: &[("made", "0.3 %"), ("exchanged", "4 %")],
    cautions: &[],
    work: |given| {
        above_nought(given, &["made", "of_new_sand"])?;
        let exchanged = given.number("exchanged");
        if exchanged <= 0.0 {
            return given.refuse(
                "exchanged",
                "is nought: fines never settle",
                "throw some out",
            );
        }
        let fines = steady_fines(given.number("made"), exchanged, given.number("of_new_sand"));
        if fines > MANY_FINES {
            given.doubt("more fines than any natural sand here holds: throw out more each time");
        }
        Ok(vec![Answer::share("fines", fines)])
    },
};

/// What to throw away each time.
pub(super) const DISCARD: Reckoner = Reckoner {
    name: "discard-share",
    question: "How much of the heap must go after each pour to hold the fines?",
    law: &DISCARD_SHARE,
    inputs: &[
        Input::share("made", "g", "fines made by each pour, of the heap"),
        Input::share("limit", "f_limit", "fines that are not to be passed"),
        NEW_FINES,
    ],
    example: &[("made", "0.3 %"), ("limit", "10 %")],
    cautions: &[],
    work: |given| {
        above_nought(given, &["made", "of_new_sand"])?;
        let (limit, new) = (given.number("limit"), given.number("of_new_sand"));
        if limit <= new {
            return given.refuse(
                "limit",
                "is no more than new sand brings",
                "take cleaner sand",
            );
        }
        let share = discard_share(given.number("made"), limit, new);
        if share > 1.0 {
            return given.refuse(
                "limit",
                "is passed by a single pour",
                "mix new sand each time",
            );
        }
        Ok(vec![Answer::share("of the heap", share).rounded_up()])
    },
};

/// The burnt part of a heap.
pub(super) const BURNT: Reckoner = Reckoner {
    name: "burnt-share",
    question: "How much of the heap did the pour burn?",
    law: &BURNT_SHARE,
    inputs: &[
        Input::of::<Area>(
            "faces",
            "A",
            "of metal against sand, feeders and runners with them",
        ),
        Input::of::<Length>("depth", "δ", "burnt: reckon burnt-depth"),
        Input::of::<Density>("sand_density", "ρ", "rammed sand").or(
            "1.5 to 1.7 g/cm3, likely 1.6 g/cm3",
            "shop-handbook-figures",
        ),
        Input::of::<Mass>("heap", "m", "the whole heap"),
    ],
    example: &[("faces", "600 cm2"), ("depth", "8 mm"), ("heap", "90 kg")],
    cautions: &[],
    work: |given| {
        let heap: Mass = given.get("heap");
        if heap <= Mass::ZERO {
            return given.refuse("heap", "weighs nothing", "weigh it");
        }
        let faces = given.get("faces");
        let share = burnt_share(faces, given.get("depth"), given.get("sand_density"), heap);
        match share <= 1.0 {
            true => Ok(vec![Answer::share("of the heap", share)]),
            false => given.refuse("depth", "burns more than the heap", "look at the units"),
        }
    },
};

/// Clay for a heap.
pub(super) const CLAY: Reckoner = Reckoner {
    name: "clay-wanted",
    question: "How much new clay brings the heap back to its live clay?",
    law: &CLAY_WANTED,
    inputs: &[
        Input::of::<Mass>("dry", "m_dry", "the dry heap"),
        Input::of::<Mass>("live", "m_live", "live clay in it"),
        Input::share("wanted", "b", "live clay wanted, of the dry heap"),
    ],
    example: &[("dry", "82 kg"), ("live", "3 kg"), ("wanted", "6 %")],
    cautions: &[SILICA],
    work: |given| {
        let wanted = given.number("wanted");
        if !(0.0..1.0).contains(&wanted) {
            return given.refuse("wanted", "is no part of a heap", "give some 4 to 10 %");
        }
        let clay = clay_wanted(given.get("dry"), given.get("live"), wanted);
        Ok(vec![Answer::of("clay", clay)])
    },
};
