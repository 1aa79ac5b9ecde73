//! The laws of the mould room on rows.

use checks::answer::Answer;
use checks::given::{Given, GivenError};
use measure::band::Band;
use measure::flow::{Duration, FreezingConstant};
use measure::heat::HeatDrawing;
use measure::length::Length;
use measure::matter::{Density, Force, Mass};
use mould::feeding::feeder::{
    CoolingEnds, cylinder_modulus, diameter_by_modulus, feeder_volume, freezing_ratio,
};
use mould::freezing::{FreezingHeat, constant_from_trial, freezing_time, mould_constant};
use mould::gating::choke::{choke, effective_head};
use mould::gating::pour_time::{iron_pour_time, pour_time, thin_wall_limit};
use mould::gating::running_system::{Demand, running_volume};
use mould::gating::sprue::{
    diameter_of, fall_speed, fill_from_bottom, fill_from_top, sprue_exit, sprue_top,
};
use mould::lift::{cope_lift, core_lift, hold_down};

use crate::laws::Calculation;
use crate::shape::modulus_of;

/// Calculations by law.
pub const CALCULATIONS: &[(&str, Calculation)] = &[
    ("mould::freezing::freezing_time", |given| {
        let time = freezing_time(constant(given)?, modulus_of(given, "section")?);
        Ok(vec![Answer::quantity("time", time)])
    }),
    ("mould::freezing::mould_constant", |given| {
        let heat = FreezingHeat {
            density: given.quantity("density")?,
            latent: given.quantity("latent")?,
            liquid_heat: given.quantity("liquid")?,
            superheat: given.quantity("superheat")?,
            solidus: given.quantity("solidus")?,
            sand: HeatDrawing::from_w_rts_per_m2_k(given.number("sand_w_rts_per_m2_k")?),
        };
        Ok(vec![Answer::quantity("constant", mould_constant(&heat))])
    }),
    ("mould::gating::pour_time::pour_time", |given| {
        let time = pour_time(given.quantity("poured")?, given.number("constant")?);
        Ok(vec![Answer::quantity("time", time)])
    }),
    ("mould::gating::pour_time::thin_wall_limit", |given| {
        let time = thin_wall_limit(given.quantity("freezing")?);
        Ok(vec![Answer::quantity("time", time)])
    }),
    ("mould::gating::pour_time::iron_pour_time", |given| {
        let (wall, fluidity) = (given.quantity("wall")?, given.quantity("fluidity")?);
        let time = iron_pour_time(given.quantity("poured")?, wall, fluidity);
        Ok(vec![Answer::quantity("time", time)])
    }),
    ("mould::gating::sprue::fall_speed", |given| {
        let speed = fall_speed(given.quantity("fall")?);
        Ok(vec![Answer::quantity("speed", speed)])
    }),
    ("mould::gating::sprue::sprue_exit", |given| {
        let area = sprue_exit(given.quantity("flow")?, given.quantity("fall")?);
        Ok(vec![
            Answer::quantity("area", area),
            Answer::quantity("diameter", diameter_of(area)),
        ])
    }),
    ("mould::gating::sprue::sprue_top", |given| {
        let foot: Length = given.quantity("foot")?;
        let top = sprue_top(foot, given.quantity("basin")?, given.quantity("total")?);
        Ok(vec![
            Answer::quantity("top", top),
            Answer::number("foot_to_top_area", (foot / top).powi(2)),
        ])
    }),
    ("mould::gating::sprue::fill_from_top", |given| {
        let (foot, fall) = (given.quantity("foot")?, given.quantity("fall")?);
        let time = fill_from_top(given.quantity("cavity")?, foot, fall);
        Ok(vec![Answer::quantity("time", time)])
    }),
    ("mould::gating::sprue::fill_from_bottom", |given| {
        let time = fill_from_bottom(
            given.quantity("plan")?,
            given.quantity("gate")?,
            given.quantity("head")?,
            given.quantity("cavity_height")?,
        );
        Ok(vec![Answer::quantity("time", time)])
    }),
    ("mould::gating::choke::choke", |given| {
        let area = choke(
            given.quantity("poured")?,
            given.quantity("liquid_density")?,
            given.quantity("time")?,
            given.number("discharge")?,
            given.quantity("head")?,
        );
        Ok(vec![Answer::quantity("area", area)])
    }),
    ("mould::gating::choke::effective_head", |given| {
        let (above, casting) = (given.quantity("above_gate")?, given.quantity("casting")?);
        let head = effective_head(given.quantity("pour_above_gate")?, above, casting);
        Ok(vec![Answer::quantity("head", head)])
    }),
    ("mould::gating::running_system::running_volume", |given| {
        let volume = running_volume(given.quantity("choke")?, &demand(given)?);
        Ok(vec![Answer::quantity("volume", volume)])
    }),
    ("mould::feeding::feeder::cylinder_modulus", |given| {
        let (diameter, height) = (given.quantity("diameter")?, given.quantity("height")?);
        let modulus = cylinder_modulus(diameter, height, ends(given)?);
        Ok(vec![Answer::quantity("modulus", modulus)])
    }),
    ("mould::feeding::feeder::diameter_by_modulus", |given| {
        let (margin, slimness) = (
            given.number("margin")?,
            given.number("height_over_diameter")?,
        );
        let section = modulus_of(given, "section")?;
        let diameter = diameter_by_modulus(section, margin, slimness, ends(given)?);
        Ok(vec![
            Answer::quantity("diameter", diameter),
            Answer::quantity("height", diameter * slimness),
        ])
    }),
    ("mould::feeding::feeder::feeder_volume", |given| {
        let (demand, usable) = (given.share("demand")?, given.share("usable")?);
        let volume = feeder_volume(given.quantity("casting")?, demand, usable)
            .ok_or_else(|| GivenError::NoAnswer("no plain feeder is enough".to_owned()))?;
        Ok(vec![Answer::quantity("volume", volume)])
    }),
    ("mould::feeding::feeder::freezing_ratio", |given| {
        let feeder = modulus_of(given, "feeder")?;
        let ratio = freezing_ratio(feeder, modulus_of(given, "section")?);
        Ok(vec![Answer::number("ratio", ratio)])
    }),
    ("mould::lift::cope_lift", |given| {
        let force = cope_lift(
            given.quantity("liquid_density")?,
            given.quantity("shadow")?,
            given.quantity("head")?,
            given.quantity("above_joint")?,
        );
        Ok(vec![Answer::quantity("force", force)])
    }),
    ("mould::lift::core_lift", |given| {
        let (liquid, core) = (
            given.quantity("liquid_density")?,
            given.quantity("core_density")?,
        );
        let force = core_lift(given.quantity("core")?, liquid, core);
        Ok(vec![Answer::quantity("force", force)])
    }),
    ("mould::lift::hold_down", |given| {
        let mass = hold_down(
            given.quantity("lift")?,
            given.number("surge")?,
            cope(given)?,
        );
        Ok(vec![
            Answer::quantity("mass", mass),
            Answer::quantity("weight", mass.weight()),
        ])
    }),
];

/// The constant itself, or that of a mould in which a first section froze in a known time.
fn constant(given: &Given<'_>) -> Result<FreezingConstant, GivenError> {
    if given.has("constant") {
        return given.quantity("constant");
    }
    let first = modulus_of(given, "first")?;
    Ok(constant_from_trial(first, given.quantity("first_time")?))
}

fn ends(given: &Given<'_>) -> Result<CoolingEnds, GivenError> {
    match given.text("cooling_ends")? {
        "one" => Ok(CoolingEnds::One),
        "two" => Ok(CoolingEnds::Two),
        typed => Err(GivenError::Not {
            key: "cooling_ends".to_owned(),
            typed: typed.to_owned(),
            wanted: "one or two",
        }),
    }
}

/// The cope's mass, or the mass of its weight in newtons.
fn cope(given: &Given<'_>) -> Result<Mass, GivenError> {
    match given.has("cope_weight") {
        true => Ok(given.quantity::<Force>("cope_weight")?.held_by()),
        false => given.quantity("cope"),
    }
}

/// The parts of a demand on which the metal in the running system depends; the rest is any.
fn demand(given: &Given<'_>) -> Result<Demand, GivenError> {
    let ratio = given.numbers("ratio")?;
    let &[choke, runner, gates] = ratio.as_slice() else {
        return Err(GivenError::NoAnswer("a ratio has three parts".to_owned()));
    };
    let pour_height: Length = given.quantity("pour_height")?;
    Ok(Demand {
        filled: Band::exact(Mass::from_kg(1.0)),
        liquid: Band::exact(Density::from_g_per_cm3(2.4)),
        wall: Length::from_mm(5.0),
        wall_freezes: Duration::from_s(20.0),
        pour_height,
        head: pour_height,
        ratio: [choke, runner, gates],
        runner: given.quantity("runner")?,
    })
}
