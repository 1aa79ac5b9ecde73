//! An amount of any kind with its band, as figures are kept, written to files and shown to people.

use measure::band::Band;
use measure::flow::{Duration, Speed};
use measure::heat::Temperature;
use measure::length::{Area, Length, Volume};
use measure::matter::{Force, Mass, Pressure};
use measure::text::System;
use measure::text::shown::{Rounding, Shown, shown, shown_share, shown_temperature};

/// A band of some quantity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// A length.
    Length(Band<Length>),
    /// An area.
    Area(Band<Area>),
    /// A volume.
    Volume(Band<Volume>),
    /// A mass.
    Mass(Band<Mass>),
    /// A force.
    Force(Band<Force>),
    /// A pressure.
    Pressure(Band<Pressure>),
    /// A time.
    Duration(Band<Duration>),
    /// A speed.
    Speed(Band<Speed>),
    /// A temperature.
    Temperature(Band<Temperature>),
    /// A share of something, 0.01 for a per cent.
    Share(Band<f64>),
}

impl Amount {
    /// Low, likely and high in the unit of [`Amount::unit`].
    pub fn values(&self) -> [f64; 3] {
        match self {
            Amount::Length(band) => ends(band, Length::as_mm),
            Amount::Area(band) => ends(band, Area::as_mm2),
            Amount::Volume(band) => ends(band, Volume::as_cm3),
            Amount::Mass(band) => ends(band, Mass::as_kg),
            Amount::Force(band) => ends(band, Force::as_n),
            Amount::Pressure(band) => ends(band, Pressure::as_kpa),
            Amount::Duration(band) => ends(band, Duration::as_s),
            Amount::Speed(band) => ends(band, Speed::as_m_per_s),
            Amount::Temperature(band) => ends(band, Temperature::as_celsius),
            Amount::Share(band) => ends(band, |share| share * 100.0),
        }
    }

    /// The unit in which files carry it.
    pub fn unit(&self) -> &'static str {
        match self {
            Amount::Length(_) => "mm",
            Amount::Area(_) => "mm2",
            Amount::Volume(_) => "cm3",
            Amount::Mass(_) => "kg",
            Amount::Force(_) => "N",
            Amount::Pressure(_) => "kPa",
            Amount::Duration(_) => "s",
            Amount::Speed(_) => "m/s",
            Amount::Temperature(_) => "C",
            Amount::Share(_) => "%",
        }
    }

    /// The figure for people, the wanted system first.
    pub fn shown(&self, first: System, rounding: Rounding) -> Shown {
        match self {
            Amount::Length(band) => shown(band, first, rounding),
            Amount::Area(band) => shown(band, first, rounding),
            Amount::Volume(band) => shown(band, first, rounding),
            Amount::Mass(band) => shown(band, first, rounding),
            Amount::Force(band) => shown(&band.map(Force::held_by), first, rounding),
            Amount::Pressure(band) => shown(band, first, rounding),
            Amount::Duration(band) => shown(band, first, rounding),
            Amount::Speed(band) => shown(band, first, rounding),
            Amount::Temperature(band) => shown_temperature(band, first),
            Amount::Share(band) => shown_share(band),
        }
    }
}

fn ends<T: Copy + PartialOrd>(band: &Band<T>, get: impl Fn(T) -> f64) -> [f64; 3] {
    [get(band.low()), get(band.likely()), get(band.high())]
}
