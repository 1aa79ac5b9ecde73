//! The pictures of a log: each as SVG, read in black and white, with its unit and a caption in the
//! language of the shop.

use bench::tested::readings::{TESTS, Test};
use bench::tested::watch::drawn::svg_of;
use job::words::Language;
use job::words::said::Said;

use crate::chart::{Chart, bands, chart, months_drawn, readings};
use crate::error::LogError;
use crate::learn::{Of, lessons};
use crate::log::Log;

/// What a picture shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// The share of rejects month by month, with its limits.
    Rejects,
    /// Castings over metal poured, month by month.
    Yield,
    /// Fuel for each kilogram of castings, month by month.
    Fuel,
    /// Contraction by metal and direction: the book's band and the shop's own.
    Contraction,
    /// Moisture of the moulds, pour by pour, with its limits.
    Moisture,
    /// Heat of the metal over the plan's, pour by pour, with its limits.
    Heat,
    /// Melt loss, heat by heat, with its limits.
    Loss,
    /// A test of the sand, with its limits.
    Test(&'static Test),
}

/// A picture under the name by which it is asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// The name, such as `rejects` or `test:cylinder`.
    pub name: String,
    /// What it shows, in the language asked for.
    pub title: String,
    /// The picture.
    pub svg: String,
}

/// Why there is no picture.
#[derive(Debug, thiserror::Error)]
pub enum PictureError {
    /// A name that no picture has.
    #[error("no picture is called \"{name}\": there are {known}")]
    NoKind {
        /// The name.
        name: String,
        /// Those there are.
        known: String,
    },
    /// Too little was written down.
    #[error(
        "nothing to draw for {0} yet: it needs months with weighed or judged castings, lessons, \
             or three readings that are not all alike"
    )]
    Nothing(String),
    /// What the log says.
    #[error(transparent)]
    Log(#[from] LogError),
}

/// Every kind of picture, in the order in which they are shown.
pub fn kinds() -> Vec<Kind> {
    let plain = [
        Kind::Rejects,
        Kind::Yield,
        Kind::Fuel,
        Kind::Contraction,
        Kind::Moisture,
        Kind::Heat,
        Kind::Loss,
    ];
    plain
        .into_iter()
        .chain(TESTS.iter().map(Kind::Test))
        .collect()
}

/// The name by which a kind is asked for.
pub fn name(kind: Kind) -> String {
    match kind {
        Kind::Rejects => "rejects".to_owned(),
        Kind::Yield => "yield".to_owned(),
        Kind::Fuel => "fuel".to_owned(),
        Kind::Contraction => "contraction".to_owned(),
        Kind::Moisture => "moisture".to_owned(),
        Kind::Heat => "heat".to_owned(),
        Kind::Loss => "loss".to_owned(),
        Kind::Test(test) => format!("test:{}", test.name),
    }
}

/// The kind of this name.
///
/// # Errors
///
/// A name that no picture has.
pub fn named(wanted: &str) -> Result<Kind, PictureError> {
    let found = kinds().into_iter().find(|kind| name(*kind) == wanted);
    found.ok_or_else(|| {
        let known: Vec<String> = kinds().into_iter().map(name).collect();
        PictureError::NoKind {
            name: wanted.to_owned(),
            known: known.join(", "),
        }
    })
}

/// One picture of a log.
///
/// # Errors
///
/// What the file says; too little written down for this picture.
pub fn picture(log: &Log, kind: Kind, language: Language) -> Result<Picture, PictureError> {
    let drawn = match kind {
        Kind::Rejects | Kind::Yield | Kind::Fuel => {
            let chart: Chart = chart(log)?;
            months_drawn::svg(&chart, kind, language)
        }
        Kind::Contraction => {
            let mut lessons = lessons(log)?;
            lessons.retain(|lesson| matches!(lesson.of, Of::Contraction { .. }));
            bands::svg(&lessons, language)
        }
        Kind::Moisture | Kind::Heat | Kind::Loss | Kind::Test(_) => readings::chart_of(log, kind)?
            .map(|(unit, chart)| svg_of(&title(kind), unit, &chart, language)),
    };
    let name = name(kind);
    match drawn {
        Some(svg) => Ok(Picture {
            title: language.say(&title(kind)),
            name,
            svg,
        }),
        None => Err(PictureError::Nothing(name)),
    }
}

/// Every picture for which enough was written down.
///
/// # Errors
///
/// What the file says.
pub fn pictures(log: &Log, language: Language) -> Result<Vec<Picture>, LogError> {
    let mut found = Vec::new();
    for kind in kinds() {
        match picture(log, kind, language) {
            Ok(picture) => found.push(picture),
            Err(PictureError::Log(error)) => return Err(error),
            Err(PictureError::Nothing(_) | PictureError::NoKind { .. }) => {}
        }
    }
    Ok(found)
}

/// What a kind shows.
pub(super) fn title(kind: Kind) -> Said {
    match kind {
        Kind::Rejects => Said::new("log-chart-title"),
        Kind::Yield => Said::new("log-chart-yield-title"),
        Kind::Fuel => Said::new("log-chart-fuel-title"),
        Kind::Contraction => Said::new("log-chart-own-title"),
        Kind::Moisture => Said::new("log-chart-moisture"),
        Kind::Heat => Said::new("log-chart-heat"),
        Kind::Loss => Said::new("log-chart-loss"),
        Kind::Test(test) => Said::typed(test.name),
    }
}
