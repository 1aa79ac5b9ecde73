//! How far a casting may be off, and what is left on for machining.

use measure::band::Band;
use measure::length::Length;
use pattern::machining_stock::{
    FaceUp, Faces, Feature, RAW_SIZE, REQUIRED, StockGrade, between_grades, older_rule, raw_size,
    usual_grades,
};
use pattern::tolerance::{
    EitherWay, GRADES, Grade, LINEAR, Moulding, WALL_GRADE, either_way, grades, linear, wall_grade,
};

use super::{METALS, metal_of};
use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

const GRADE_WORDS: Wanted = Wanted::Choice(&[
    "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12", "13", "14", "15", "16",
]);

const MOULDING: Input = Input::choice(
    "moulding",
    "what bonds the sand",
    &["clay-bonded", "chemically-bonded"],
)
.or("clay-bonded", "common-practice");

/// The tolerance at a grade.
pub(super) const OF_GRADE: Reckoner = Reckoner {
    name: "casting-tolerance",
    question: "How far may a length of a casting be off at a grade?",
    law: &LINEAR,
    inputs: &[
        Input::of::<Length>("size", "L", "the length"),
        Input::new(
            "grade",
            "grade",
            "grade of casting tolerance, DCTG",
            GRADE_WORDS,
        ),
    ],
    example: &[("size", "125 mm"), ("grade", "13")],
    cautions: &[],
    work: |given| {
        let tolerance = linear(given.get("size"), grade_of(given)?);
        let tolerance = tolerance.map_err(|fault| impossible("grade", &fault))?;
        if tolerance.source == "iso-8062-3-memory" {
            given.doubt("this part of the table is from memory: check it before you agree on it");
        }
        Ok(vec![
            Answer::of("whole band", tolerance.value).rounded_up(),
            Answer::of("either way", tolerance.value * 0.5).rounded_up(),
        ])
    },
};

/// The grades that a moulding holds.
pub(super) const OF_MOULDING: Reckoner = Reckoner {
    name: "tolerance-by-moulding",
    question: "How near to size does hand moulding come?",
    law: &GRADES,
    inputs: &[
        Input::choice("metal", "the metal of the casting", METALS),
        Input::of::<Length>("size", "L", "the length"),
        MOULDING,
    ],
    example: &[("metal", "aluminium"), ("size", "140 mm")],
    cautions: &[],
    work: |given| {
        let moulding: Moulding = given
            .words("moulding")
            .parse()
            .map_err(|fault| impossible("moulding", &fault))?;
        let (metal, size) = (metal_of(given)?, given.get("size"));
        let held = grades(moulding, metal, size).map_err(|fault| impossible("metal", &fault))?;
        let mut answers = vec![
            Answer::number("finest grade", f64::from(held.fine.number())),
            Answer::number("coarsest grade", f64::from(held.coarse.number())),
        ];
        match either_way(moulding, metal, size) {
            Ok(EitherWay { band, .. }) => answers.push(
                Answer::of("either way", band.likely())
                    .between(band.low(), band.high())
                    .rounded_up(),
            ),
            Err(fault) => given.doubt(fault.to_string()),
        }
        Ok(answers)
    },
};

/// The grade of a wall.
pub(super) const OF_WALL: Reckoner = Reckoner {
    name: "wall-grade",
    question: "Which grade has the thickness of a wall?",
    law: &WALL_GRADE,
    inputs: &[Input::new(
        "grade",
        "G",
        "grade of the casting, DCTG",
        GRADE_WORDS,
    )],
    example: &[("grade", "12")],
    cautions: &[],
    work: |given| {
        let wall = wall_grade(grade_of(given)?).map_err(|fault| impossible("grade", &fault))?;
        Ok(vec![Answer::number("wall", f64::from(wall.number()))])
    },
};

/// The stock on a machined face.
pub(super) const STOCK: Reckoner = Reckoner {
    name: "machining-stock",
    question: "How much metal must be left on a face that is machined?",
    law: &REQUIRED,
    inputs: &[
        Input::of::<Length>("largest", "L_largest", "largest length of the casting"),
        Input::new(
            "grade",
            "grade",
            "grade of machining allowance; left out, those usual for the metal by hand, or H",
            Wanted::Choice(&["A", "B", "C", "D", "E", "F", "G", "H", "J", "K"]),
        )
        .optional(),
        Input::choice(
            "metal",
            "the metal, for its usual grades and the older rule",
            METALS,
        )
        .optional(),
    ],
    example: &[("largest", "125 mm"), ("metal", "grey-iron")],
    cautions: &[],
    work: |given| {
        let grades = stock_grades(given)?;
        let largest = given.get("largest");
        let on = |face| between_grades(largest, grades, face);
        let answer = |name, stock: Band<Length>| {
            let answer = Answer::of(name, stock.likely());
            answer.between(stock.low(), stock.high()).rounded_up()
        };
        let below = on(FaceUp::DragOrSide).map_err(|fault| impossible("grade", &fault))?;
        let mut answers = vec![answer("drag or side face", below)];
        match on(FaceUp::Cope) {
            Ok(stock) => answers.push(answer("cope face", stock)),
            Err(none) => given.doubt(none.to_string()),
        }
        given.doubt("the table is from memory");
        if given.has("metal") {
            let metal = metal_of(given)?;
            if let Some([fine, coarse]) = usual_grades(metal) {
                answers.push(Answer::words("usual grades", format!("{fine} to {coarse}")));
            }
            if let Some(older) = older_rule(metal) {
                let (low, high) = (older.value.low(), older.value.high());
                answers.push(Answer::of("older rule", low).between(low, high));
            }
        }
        Ok(answers)
    },
};

/// The raw size of a machined feature.
pub(super) const RAW: Reckoner = Reckoner {
    name: "raw-size",
    question: "How large must a machined feature be as cast?",
    law: &RAW_SIZE,
    inputs: &[
        Input::of::<Length>("finished", "F", "size once machined"),
        Input::of::<Length>("stock", "RMA", "stock on each machined face"),
        Input::of::<Length>(
            "tolerance",
            "CT",
            "tolerance of the casting, the whole band",
        ),
        Input::new(
            "faces",
            "n",
            "machined faces on the size",
            Wanted::Choice(&["1", "2"]),
        ),
        Input::choice(
            "feature",
            "over metal or across a hole",
            &["outside", "inside"],
        )
        .or("outside", "common-practice"),
    ],
    example: &[
        ("finished", "100 mm"),
        ("stock", "2 mm"),
        ("tolerance", "4.4 mm"),
        ("faces", "2"),
    ],
    cautions: &[],
    work: |given| {
        let faces = match given.words("faces") {
            "1" => Faces::One,
            _ => Faces::Both,
        };
        let feature = match given.words("feature") {
            "inside" => Feature::Inside,
            _ => Feature::Outside,
        };
        let finished: Length = given.get("finished");
        let (stock, tolerance) = (given.get("stock"), given.get("tolerance"));
        let raw = raw_size(finished, stock, tolerance, faces, feature);
        if raw <= Length::ZERO {
            return given.refuse(
                "finished",
                "leaves no hole to cast",
                "cast it solid and bore it",
            );
        }
        Ok(vec![Answer::of("raw size", raw)])
    },
};

fn grade_of(given: &Given<'_>) -> Result<Grade, Impossible> {
    let number = given.words("grade").parse().unwrap_or(0);
    Grade::new(number).map_err(|fault| impossible("grade", &fault))
}

/// The grade typed, or those usual for the metal named.
fn stock_grades(given: &Given<'_>) -> Result<[StockGrade; 2], Impossible> {
    let usual = match given.has("metal") && !given.has("grade") {
        true => usual_grades(metal_of(given)?),
        false => None,
    };
    let typed = match given.words("grade") {
        "" => "H",
        letter => letter,
    };
    let one: StockGrade = typed.parse().map_err(|fault| impossible("grade", &fault))?;
    Ok(usual.unwrap_or([one, one]))
}

fn impossible(what: &'static str, fault: &dyn std::error::Error) -> Impossible {
    Impossible {
        what,
        why: fault.to_string(),
        advice: "look at what the table holds".to_owned(),
    }
}
