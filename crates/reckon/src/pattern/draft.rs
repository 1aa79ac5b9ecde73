//! How much a pattern tapers so that it draws.

use measure::length::Length;
use measure::text::rounded;
use pattern::draft::{
    ANGLE, BY_HEIGHT, BY_SKIN, JOBBING, Judged, Side, Skin, WANTED, angle, by_height, by_skin,
    jobbing, judge, wanted,
};
use pattern::tolerance::Moulding;

use crate::answer::Answer;
use crate::given::Given;
use crate::input::Input;
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const DEPTH: Input = Input::of::<Length>("depth", "h", "depth that is drawn");

const SKIN: Input = Input::choice(
    "skin",
    "what the pattern is made of; printed takes the figures of wood",
    &["wood", "metal-or-plastic", "printed"],
);

const SIDE: Input = Input::choice(
    "side",
    "an outside face, or one that grips sand within",
    &["outside", "inside"],
)
.or("outside", "common-practice");

/// The jobbing foundry's table.
pub(super) const BY_JOBBING: Reckoner = Reckoner {
    name: "draught-by-depth",
    question: "How much draught does a jobbing foundry ask for over this depth?",
    law: &JOBBING,
    inputs: &[DEPTH],
    example: &[("depth", "60 mm")],
    cautions: &[],
    work: |given| {
        let depth: Length = given.get("depth");
        if depth.as_inch() > 10.0 {
            given.doubt("beyond 10 in the table is carried on by its root");
        }
        let draft = jobbing(depth).value;
        Ok(vec![
            Answer::of("draught", draft).rounded_up(),
            degrees(draft, depth),
        ])
    },
};

/// The textbooks' angles.
pub(super) const BY_ANGLE: Reckoner = Reckoner {
    name: "draught-by-angle",
    question: "What angle do textbooks give for a face of this depth?",
    law: &BY_SKIN,
    inputs: &[DEPTH, SKIN, SIDE],
    example: &[("depth", "60 mm"), ("skin", "wood")],
    cautions: &[],
    work: |given| {
        let (depth, skin, side) = face(given)?;
        let taper = by_skin(depth, skin, side);
        let draft = depth * taper.map_err(|fault| impossible(&fault))?.value;
        given.doubt("the table is from memory");
        Ok(vec![
            degrees(draft, depth).rounded_up(),
            Answer::of("draught", draft).rounded_up(),
        ])
    },
};

/// The standard's lengths.
pub(super) const BY_FACE_HEIGHT: Reckoner = Reckoner {
    name: "draught-by-height",
    question: "How much draught does the pattern standard give by the height of a face?",
    law: &BY_HEIGHT,
    inputs: &[
        Input::of::<Length>("height", "h", "height of the face"),
        Input::choice(
            "bond",
            "what bonds the sand",
            &["clay-bonded", "chemically-bonded"],
        )
        .or("clay-bonded", "common-practice"),
    ],
    example: &[("height", "60 mm")],
    cautions: &[],
    work: |given| {
        let height: Length = given.get("height");
        let bond = match given.words("bond") {
            "chemically-bonded" => Moulding::ChemicallyBonded,
            _ => Moulding::ClayBonded,
        };
        given.doubt("from memory and doubtful in detail: compare it with draught-by-depth");
        let draft = by_height(height, bond).value;
        Ok(vec![
            Answer::of("draught", draft).rounded_up(),
            degrees(draft, height),
        ])
    },
};

/// What a face is asked for, and whether it has it.
pub(super) const ASKED: Reckoner = Reckoner {
    name: "draught",
    question: "How much draught does this face want, and has it enough?",
    law: &WANTED,
    inputs: &[
        DEPTH,
        SKIN,
        SIDE,
        Input::number("has", "", "the angle it has, in degrees").optional(),
    ],
    example: &[("depth", "60 mm"), ("skin", "printed"), ("has", "2")],
    cautions: &[],
    work: |given| {
        let (depth, skin, side) = face(given)?;
        let draft = wanted(depth, skin, side).map_err(|fault| impossible(&fault))?;
        let of_skin = by_skin(depth, skin, side).map_err(|fault| impossible(&fault))?;
        let mut answers = vec![
            Answer::of("draught", draft).rounded_up(),
            degrees(draft, depth).rounded_up(),
            Answer::of("by the jobbing table", jobbing(depth).value),
            Answer::of("by the table of angles", depth * of_skin.value),
        ];
        if given.has("has") {
            let has = given.number("has");
            if !(-90.0..90.0).contains(&has) || has == -90.0 {
                return given.refuse("has", "is no angle of a wall", "give degrees off the draw");
            }
            let has = depth * has.to_radians().tan();
            let judged = judge(has, depth, skin, side).map_err(|fault| impossible(&fault))?;
            answers.push(Answer::words("verdict", verdict(judged)));
        }
        if skin == Skin::Printed {
            given.doubt("no figure for printed skins was found: rub the layer lines down and seal");
        }
        Ok(answers)
    },
};

/// The angle of a taper.
pub(super) const OF_TAPER: Reckoner = Reckoner {
    name: "draught-angle",
    question: "What angle is so much draught over a depth?",
    law: &ANGLE,
    inputs: &[
        Input::of::<Length>("draught", "d", "how far the face draws in"),
        DEPTH,
    ],
    example: &[("draught", "2 mm"), ("depth", "60 mm")],
    cautions: &[],
    work: |given| {
        let (draft, depth): (Length, Length) = (given.get("draught"), given.get("depth"));
        if depth <= Length::ZERO {
            return given.refuse("depth", "is nought", "give the depth of the face");
        }
        let one_in = depth / draft;
        let words = match one_in.is_finite() {
            true => format!("1 in {}", rounded(one_in, 3)),
            false => "none".to_owned(),
        };
        Ok(vec![degrees(draft, depth), Answer::words("taper", words)])
    },
};

fn face(given: &Given<'_>) -> Result<(Length, Skin, Side), Impossible> {
    let skin = given.words("skin").parse();
    let side = match given.words("side") {
        "inside" => Side::Inside,
        _ => Side::Outside,
    };
    Ok((
        given.get("depth"),
        skin.map_err(|fault| impossible(&fault))?,
        side,
    ))
}

fn degrees(draft: Length, depth: Length) -> Answer {
    let degrees = match depth > Length::ZERO {
        true => angle(draft, depth),
        false => 90.0,
    };
    Answer::number("degrees", degrees)
}

fn verdict(judged: Judged) -> &'static str {
    match judged {
        Judged::Enough => "enough",
        Judged::Tight => "tight: between the rules, draws with care",
        Judged::TooLittle => "too little: less than every rule asks",
    }
}

fn impossible(fault: &dyn std::error::Error) -> Impossible {
    Impossible {
        what: "depth",
        why: fault.to_string(),
        advice: "split the draw, or make a loose piece".to_owned(),
    }
}
