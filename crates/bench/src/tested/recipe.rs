//! A mix weighed out: grams and the shop's own scoops, its water counted, its price.

use job::amount::Amount;
use job::scoop::Scoop;
use job::shop::Shop;
use job::words::said::Said;
use measure::band::Band;
use measure::length::Volume;
use measure::matter::Mass;
use measure::money::{Money, Price};
use measure::text::rounded;
use sand::batch::{rammed_density, sand_to_fill, with_spill};
use sand::mixes::{Mix, MixPart, Standing, all, of_name, standing};
use sand::mixing::{Ingredient, Water, Weighed, weigh_out};
use sand::moisture::dry_from_wet;
use sand::recipe::Poured;
use sand::scoops::scoops;

use crate::given::{Given, GivenError};
use crate::tested::mulling::minutes_told;
use crate::told::{Figure, Told, Value};
use crate::trouble::{BenchError, Refused};

/// What is asked for; `parts.NAME` and `price.NAME` change or price one part.
pub const KEYS: [&str; 7] = [
    "dry_sand", "mix", "flasks", "moisture", "metal", "parts.", "price.",
];

/// The mixes there are.
pub fn list() -> Told {
    let mut told = Told::new(Said::new("bench-mixes-head"));
    for mix in all() {
        let mut figure = Figure::new("bench-mix", Value::Words(title(mix)));
        figure.label = Some(Said::typed(mix.name.as_str()));
        told.figures.push(figure);
    }
    told
}

/// Weighs a mix out for a mass of dry sand, of mix, or for some flasks.
///
/// # Errors
///
/// An unknown mix, flask or part, moisture that does not say of what, prices in two currencies.
pub fn recipe(name: &str, given: &Given, shop: &Shop) -> Result<Told, BenchError> {
    let mix = of_name(name).ok_or_else(|| no_such_mix(name))?;
    let changed = with_own_parts(mix, given)?;
    let metal = metal_of(given)?;
    let what = "of the sand as it lies, like moisture='0 % of wet mass' where it was dried";
    let moisture = given.moisture("moisture")?.ok_or(GivenError::Missing {
        key: "moisture",
        what,
    })?;
    let parts: Vec<Ingredient> = changed.parts.iter().map(ingredient).collect();
    let water = water_of(&changed);
    let dry_sand = dry_sand(given, shop, |dry| weigh_out(dry, moisture, &parts, water))?;
    let weighed = weigh_out(dry_sand, moisture, &parts, water)?;
    let mut told = Told::new(Said::new("bench-recipe-head").with("mix", title(mix)));
    rows(&mut told, &changed, &weighed, &shop.scoops);
    wetness(&mut told, &weighed, moisture);
    cost(&mut told, &changed, &weighed, given)?;
    for part in &changed.parts {
        against_sources(&mut told, part, &changed, metal);
    }
    for step in &mix.steps {
        told.step(Said::new(format!("mix-step-{step}")));
    }
    for caution in &mix.cautions {
        told.caution(Said::new(format!("mix-mind-{caution}")));
    }
    if mix.mulled() {
        told.note(minutes_told());
    }
    told.caution(Said::new("bench-silica"));
    told.note(Said::new("bench-test-batch"));
    Ok(told)
}

/// What a mix is in full.
fn title(mix: &Mix) -> Said {
    Said::new(format!("mix-{}", mix.name))
}

/// The mix with what the founder takes of each part instead.
fn with_own_parts(mix: &Mix, given: &Given) -> Result<Mix, BenchError> {
    let mut changed = mix.clone();
    let heads = ["parts.", "price."];
    for (name, _) in heads.iter().flat_map(|head| given.under(head)) {
        let known = name == "sand" || mix.parts.iter().any(|part| part.name == name);
        if !known {
            let names: Vec<&str> = mix.parts.iter().map(|part| part.name.as_str()).collect();
            return Err(GivenError::Strange {
                key: name.to_owned(),
                near: String::new(),
                taken: ["sand"]
                    .into_iter()
                    .chain(names)
                    .collect::<Vec<_>>()
                    .join(", "),
            }
            .into());
        }
    }
    for part in &mut changed.parts {
        if let Some(own) = given.number(&format!("parts.{}", part.name))? {
            part.parts = own;
        }
    }
    Ok(changed)
}

fn metal_of(given: &Given) -> Result<Poured, GivenError> {
    match given.text("metal").unwrap_or("non-ferrous") {
        "iron" => Ok(Poured::Iron),
        "non-ferrous" | "aluminium" | "brass" | "bronze" | "zinc" => Ok(Poured::NonFerrous),
        other => Err(GivenError::NotThat {
            key: "metal".to_owned(),
            typed: other.to_owned(),
            what: "metal that recipes tell apart: iron, aluminium, brass, bronze or zinc",
        }),
    }
}

fn ingredient(part: &MixPart) -> Ingredient {
    Ingredient {
        share: part.parts / 100.0,
        water: part.water / 100.0,
    }
}

fn water_of(mix: &Mix) -> Water {
    match mix.water_of_mix {
        Some(percent) => Water::OfMix(percent / 100.0),
        None => Water::OnSand(mix.water_added.unwrap_or(0.0) / 100.0),
    }
}

/// Dry sand as typed, or so much that the whole mix comes to what is wanted.
fn dry_sand(
    given: &Given,
    shop: &Shop,
    weigh: impl Fn(Mass) -> Result<Weighed, sand::mixing::MixingError>,
) -> Result<Mass, BenchError> {
    if let Some(dry) = given.find_mass("dry_sand")? {
        return Ok(dry);
    }
    let wanted = match (given.find_mass("mix")?, given.text("flasks")) {
        (Some(mix), _) => mix,
        (None, Some(names)) => for_flasks(names, shop)?,
        (None, None) => {
            let what = "how much: dry_sand='20 kg', mix='25 kg' or flasks='A, C'";
            return Err(GivenError::Missing {
                key: "dry_sand",
                what,
            }
            .into());
        }
    };
    let one = Mass::from_kg(1.0);
    let weighed = weigh(one)?;
    let parts: Mass = weighed.parts.iter().copied().sum();
    Ok(one * (wanted / (weighed.sand + parts + weighed.to_add)))
}

/// Sand to have ready for flasks, as if no pattern stood in them: a little too much.
fn for_flasks(names: &str, shop: &Shop) -> Result<Mass, BenchError> {
    let mut sum = Mass::ZERO;
    for name in names.split(',').map(str::trim) {
        let flask = shop.flasks.iter().find(|flask| flask.name == name);
        let flask = flask.ok_or_else(|| {
            let known: Vec<&str> = shop
                .flasks
                .iter()
                .map(|flask| flask.name.as_str())
                .collect();
            Refused::NoSuchFlask {
                name: name.to_owned(),
                known: known.join(", "),
            }
        })?;
        let inside = flask.length * flask.width * (flask.cope + flask.drag);
        let rammed = rammed_density().value.likely();
        sum += with_spill(sand_to_fill(inside, Volume::ZERO, rammed));
    }
    Ok(sum)
}

fn rows(told: &mut Told, mix: &Mix, weighed: &Weighed, own: &[Scoop]) {
    let mut row = |id: &'static str, name: Option<&str>, mass: Mass, beside: Option<Said>| {
        let mut figure = Figure::new(id, Value::Amount(Amount::Mass(Band::exact(mass))));
        figure.label = name.map(Said::typed);
        figure.beside = beside;
        figure.weighed_out = matches!(id, "bench-sand" | "bench-part" | "bench-water-to-add");
        told.figures.push(figure);
    };
    row(
        "bench-sand",
        None,
        weighed.sand,
        in_scoops(own, "sand", weighed.sand),
    );
    let taken = mix.parts.iter().zip(&weighed.parts);
    for (part, mass) in taken.filter(|(part, _)| part.parts > 0.0) {
        let scoops = in_scoops(own, &part.name, *mass);
        row("bench-part", Some(&part.name), *mass, scoops);
    }
    row(
        "bench-water-to-add",
        None,
        weighed.to_add,
        in_scoops(own, "water", weighed.to_add),
    );
    if mix.mulled() && weighed.to_add > Mass::ZERO {
        row("bench-water-each-spray", None, weighed.to_add / 3.0, None);
    }
    row("bench-water-brought", None, weighed.brought, None);
    let parts: Mass = weighed.parts.iter().copied().sum();
    row(
        "bench-mix-in-all",
        None,
        weighed.sand + parts + weighed.to_add,
        None,
    );
}

/// The sand as it lies and the finished mix, of the wet and of the dry mass.
fn wetness(told: &mut Told, weighed: &Weighed, moisture: f64) {
    let parts: Mass = weighed.parts.iter().copied().sum();
    let water = weighed.brought + weighed.to_add;
    let wet = water / (weighed.sand + parts + weighed.to_add);
    told.share("bench-sand-of-wet", Band::exact(moisture));
    told.share("bench-mix-of-wet", Band::exact(wet));
    told.share("bench-mix-of-dry", Band::exact(dry_from_wet(wet)));
}

/// The mass in each of the founder's own scoops and buckets of that stuff.
fn in_scoops(own: &[Scoop], stuff: &str, mass: Mass) -> Option<Said> {
    let own = own
        .iter()
        .filter(|scoop| scoop.of == stuff && scoop.holds > Mass::ZERO);
    let counts: Vec<String> = own
        .map(|scoop| {
            let count = rounded(scoops(mass, scoop.holds), 3);
            format!("{count} × {}", scoop.name)
        })
        .collect();
    (!counts.is_empty()).then(|| Said::typed(counts.join(" = ")))
}

fn cost(told: &mut Told, mix: &Mix, weighed: &Weighed, given: &Given) -> Result<(), BenchError> {
    let names = mix.parts.iter().map(|part| part.name.as_str());
    let masses = weighed.parts.iter().copied();
    let mut sum: Option<Money> = None;
    for (name, mass) in names.zip(masses).chain([("sand", weighed.sand)]) {
        if let Some(text) = given.text(&format!("price.{name}")) {
            let money = Price::read::<Mass>(text)?.of(mass);
            sum = Some(match sum {
                Some(so_far) => so_far.plus(&money)?,
                None => money,
            });
        }
    }
    if let Some(money) = sum {
        told.words("bench-cost", Said::typed(money.to_string()));
    }
    Ok(())
}

/// Where published doses differ from what is taken here, that is told in numbers.
fn against_sources(told: &mut Told, part: &MixPart, mix: &Mix, metal: Poured) {
    let share = part.parts / 100.0;
    let percent = |share: f64| format!("{} %", rounded(share * 100.0, 2));
    if share <= 0.0 {
        if let Some(Standing::Within([low, high]) | Standing::Outside([low, high])) =
            standing(part, mix.used_for, metal, share)
        {
            let said = Said::new("bench-part-left-out").with("part", part.name.as_str());
            told.note(said.with("low", percent(low)).with("high", percent(high)));
        }
        return;
    }
    let (id, [low, high], outside) = match standing(part, mix.used_for, metal, share) {
        Some(Standing::Within(ends)) => ("bench-within-sources", ends, false),
        Some(Standing::Outside(ends)) => ("bench-outside-sources", ends, true),
        None => return,
    };
    let said = Said::new(id)
        .with("part", part.name.as_str())
        .with("here", percent(share))
        .with("low", percent(low))
        .with("high", percent(high));
    match outside {
        true => told.caution(said),
        false => told.note(said),
    }
}

fn no_such_mix(name: &str) -> Refused {
    let known: Vec<&str> = all().iter().map(|mix| mix.name.as_str()).collect();
    Refused::NoSuchMix {
        name: name.to_owned(),
        known: known.join(", "),
    }
}
