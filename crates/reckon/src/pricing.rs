//! What a casting costs and what to ask for it.

use measure::flow::Duration;
use measure::matter::Mass;
use measure::money::{Money, MoneyError, Price};
use measure::text::Written;
use metal::price::{
    CASTING_YIELD, COST_EACH, LEAST_PRICE, Line, MEND_OR_REMAKE, Quote, casting_yield, least_price,
    line, mend_or_remake,
};

use crate::answer::Answer;
use crate::given::Given;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Impossible;

/// The reckoners of this topic.
pub const RECKONERS: &[Reckoner] = &[
    Reckoner {
        name: "yield",
        question: "How much of what I pour is casting?",
        law: &CASTING_YIELD,
        inputs: &[
            Input::of::<Mass>(
                "castings",
                "m_casting",
                "all castings of the mould, trimmed",
            ),
            Input::of::<Mass>("poured", "m_poured", "castings, feeders and running system"),
        ],
        example: &[("castings", "2.28 kg"), ("poured", "4.2 kg")],
        cautions: &[],
        work: |given| {
            let (castings, poured): (Mass, Mass) = (given.get("castings"), given.get("poured"));
            if castings > poured {
                return given.refuse(
                    "castings",
                    "are heavier than what was poured",
                    "weigh again",
                );
            }
            Ok(vec![Answer::share(
                "yield",
                casting_yield(castings, poured),
            )])
        },
    },
    Reckoner {
        name: "price",
        question: "What should I quote?",
        law: &COST_EACH,
        inputs: &[
            Input::of::<Mass>(
                "metal_used",
                "",
                "casting, and metal lost as skimmings for it",
            ),
            price("metal_price", "price of the metal, 4.50 EUR/kg"),
            Input::of::<Mass>("sand_used", "", "sand that is not used again")
                .or("0 kg", "common-practice"),
            price("sand_price", "price of the sand").optional(),
            Input::of::<Mass>("fuel_used", "", "fuel for one casting")
                .or("0 kg", "common-practice"),
            price("fuel_price", "price of the fuel").optional(),
            Input::of::<Duration>("hours", "", "work on one casting, moulding to fettling"),
            price("wage", "price of an hour, 15 EUR/h"),
            money("other", "whatever else one casting costs").optional(),
            money("pattern", "pattern and core box").optional(),
            Input::number("castings", "n", "castings the pattern is made for")
                .or("1", "common-practice"),
            Input::share("failing", "", "share of castings that fail")
                .narrowed_by("count the last ten of this kind"),
        ],
        example: &[
            ("metal_used", "1.2 kg"),
            ("metal_price", "9 EUR/kg"),
            ("fuel_used", "0.8 kg"),
            ("fuel_price", "2.4 EUR/kg"),
            ("hours", "2 to 3 h"),
            ("wage", "15 EUR/h"),
            ("pattern", "60 EUR"),
            ("castings", "10"),
            ("failing", "10 to 30 %"),
        ],
        cautions: &[],
        work: quote,
    },
    Reckoner {
        name: "least-price",
        question: "At what price do the good castings pay for the bad?",
        law: &LEAST_PRICE,
        inputs: &[
            money("cost", "cost of making one, good or bad"),
            Input::share("failing", "q", "share of castings that fail")
                .narrowed_by("count the last ten of this kind"),
        ],
        example: &[("cost", "36.85 EUR"), ("failing", "10 to 30 %")],
        cautions: &[],
        work: |given| {
            let cost = read(given, "cost", str::parse::<Money>)?;
            let least = least_price(&cost, failing(given)?);
            Ok(vec![
                amount("least price", &least).rounded_up(),
                in_currency(&least),
            ])
        },
    },
    Reckoner {
        name: "mend-or-remake",
        question: "Mend this casting or cast it again?",
        law: &MEND_OR_REMAKE,
        inputs: &[
            money("remake", "cost of casting it again"),
            money("scrap", "worth of the bad one as scrap").optional(),
            money("mend", "cost of mending it"),
            Input::share("failing", "q", "chance that the mended one fails after all"),
        ],
        example: &[
            ("remake", "40 EUR"),
            ("scrap", "5 EUR"),
            ("mend", "10 EUR"),
            ("failing", "10 to 40 %"),
        ],
        cautions: &["No welding or plugging makes a lifting, brake or pressure part good."],
        work: mend,
    },
];

const fn price(key: &'static str, about: &'static str) -> Input {
    Input::new(key, "", about, Wanted::Text)
}

const fn money(key: &'static str, about: &'static str) -> Input {
    Input::new(key, "", about, Wanted::Text)
}

fn quote(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let mut lines = vec![priced::<Mass>(given, "metal", "metal_used", "metal_price")?];
    for (name, used, price) in [
        ("sand", "sand_used", "sand_price"),
        ("fuel", "fuel_used", "fuel_price"),
    ] {
        if given.has(price) {
            lines.push(priced::<Mass>(given, name, used, price)?);
        }
    }
    lines.push(priced::<Duration>(given, "hours", "hours", "wage")?);
    if given.has("other") {
        lines.push(line("other", read(given, "other", str::parse::<Money>)?));
    }
    let currency = lines[0].money.currency.clone();
    let pattern = match given.has("pattern") {
        true => read(given, "pattern", str::parse::<Money>)?,
        false => Money {
            amount: 0.0,
            currency,
        },
    };
    let castings = given.number("castings");
    if castings < 1.0 {
        return given.refuse("castings", "is less than one", "count whole castings");
    }
    let quote = Quote::of(lines, &pattern, castings, failing(given)?);
    let quote = quote.or_else(|fault| two_currencies(given, &fault))?;
    let cost: f64 = quote
        .lines
        .iter()
        .rev()
        .skip(1)
        .map(|line| line.money.amount)
        .sum();
    let mut answers = vec![
        amount("least price", &quote.least_price).rounded_up(),
        Answer::number("cost", cost),
    ];
    answers.extend(quote.lines.iter().filter_map(shown));
    answers.push(in_currency(&quote.least_price));
    Ok(answers)
}

fn mend(given: &Given<'_>) -> Result<Vec<Answer>, Impossible> {
    let remake = read(given, "remake", str::parse::<Money>)?;
    let mend = read(given, "mend", str::parse::<Money>)?;
    let scrap = match given.has("scrap") {
        true => read(given, "scrap", str::parse::<Money>)?,
        false => Money {
            amount: 0.0,
            currency: remake.currency.clone(),
        },
    };
    for other in [&mend, &scrap] {
        if let Err(fault) = remake.plus(other) {
            return two_currencies(given, &fault);
        }
    }
    let saved = mend_or_remake(remake.amount, scrap.amount, mend.amount, failing(given)?);
    let verdict = match saved > 0.0 {
        true => "mend it",
        false => "cast it again",
    };
    Ok(vec![
        Answer::number("saved by mending", saved),
        Answer::words("cheaper", verdict),
        in_currency(&remake),
    ])
}

fn failing(given: &Given<'_>) -> Result<f64, Impossible> {
    let share = given.number("failing");
    match (0.0..1.0).contains(&share) {
        true => Ok(share),
        false => given.refuse(
            "failing",
            "leaves no good casting",
            "give a share below 100 %",
        ),
    }
}

fn priced<Q: Written>(
    given: &Given<'_>,
    name: &'static str,
    used: &str,
    price: &'static str,
) -> Result<Line, Impossible> {
    let of_one = read(given, price, Price::read::<Q>)?;
    Ok(line(name, of_one.of::<Q>(given.get(used))))
}

fn read<T>(
    given: &Given<'_>,
    key: &'static str,
    reading: impl Fn(&str) -> Result<T, MoneyError>,
) -> Result<T, Impossible> {
    reading(given.words(key)).or_else(|fault| given.refuse(key, fault.to_string(), "type it again"))
}

fn two_currencies<T>(given: &Given<'_>, fault: &MoneyError) -> Result<T, Impossible> {
    given.refuse(
        "currency",
        fault.to_string(),
        "no rate of exchange is known here",
    )
}

/// A line that costs something, by its trade name.
fn shown(line: &Line) -> Option<Answer> {
    let name = match line.name.as_str() {
        "metal" => "metal",
        "sand" => "sand",
        "fuel" => "fuel",
        "hours" => "hours",
        "pattern" => "pattern",
        "failures" => "failures",
        _ => "other",
    };
    (line.money.amount > 0.0).then(|| amount(name, &line.money))
}

fn amount(name: &'static str, money: &Money) -> Answer {
    Answer::number(name, money.amount)
}

fn in_currency(money: &Money) -> Answer {
    Answer::words("in", money.currency.clone())
}
