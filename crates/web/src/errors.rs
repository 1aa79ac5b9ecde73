//! What is said to a no: a status, words, and what to do.

use axum::Json;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use bench::experiment::opened::OpenError;
use job::changed::{ChangeError, Typed};
use job::file_fault::FileFault;
use job::folder::FolderError;
use serde::Serialize;
use shoplog::error::LogError;
use thiserror::Error;
use utoipa::ToSchema;

use crate::answers::typed_lines::TypedValue;

/// A no as the page gets it.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct No {
    /// What is wrong.
    pub message: String,
    /// What to do about it.
    pub hint: Option<String>,
    /// Where two changes met: what stands in the file now.
    #[schema(value_type = Option<TypedValue>)]
    pub now: Option<Typed>,
    /// Where it is asked how something is meant: the ways in which it may be, the likeliest first.
    pub ways: Vec<WayMeant>,
}

/// A way in which something typed may be meant.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, ToSchema)]
pub struct WayMeant {
    /// What is sent with it then.
    pub way: String,
    /// As it is shown.
    pub shown: String,
}

/// Why an address has no answer.
#[derive(Debug, Error)]
pub enum WebError {
    /// No such job.
    #[error("there is no job \"{0}\" in this folder any more")]
    NoJob(
        /// What was asked for.
        String,
    ),
    /// No such thing in it.
    #[error("{0}")]
    NoSuch(
        /// What is not there.
        String,
    ),
    /// The folder.
    #[error("{0}")]
    Folder(#[from] FolderError),
    /// Something typed that cannot be.
    #[error("{message}")]
    Refused {
        /// What is wrong.
        message: String,
        /// What to do.
        hint: Option<String>,
    },
    /// Somebody else has changed the same thing meanwhile.
    #[error("this was changed meanwhile, in another window or in the file itself")]
    ChangedMeanwhile {
        /// What stands there now.
        now: Option<Typed>,
    },
    /// Something typed that is in doubt.
    #[error("{message}")]
    HowMeant {
        /// What is asked.
        message: String,
        /// The ways.
        ways: Vec<WayMeant>,
    },
    /// The sheet.
    #[error("{0}")]
    Sheet(#[from] sheet::SheetError),
    /// The mould.
    #[error("no mould: {0}")]
    NoMould(#[from] job::mould_solids::NoMould),
    /// The maps of the part.
    #[error("no map: {0}")]
    NoMap(#[from] pattern::draw::maps::MapsError),
    /// The map of a freezing.
    #[error("no map: {0}")]
    NoFreezingMap(#[from] job::freezing_map::NoFreezingMap),
    /// The log.
    #[error(transparent)]
    Log(#[from] LogError),
    /// A fault of ours.
    #[error("this could not be worked out, which is a fault of the program: {0}")]
    Broken(
        /// What happened.
        String,
    ),
}

impl WebError {
    fn status(&self) -> StatusCode {
        match self {
            WebError::NoJob(_) | WebError::NoSuch(_) => StatusCode::NOT_FOUND,
            WebError::Folder(FolderError::InTheWay { .. } | FolderError::WouldOverwrite { .. })
            | WebError::HowMeant { .. }
            | WebError::ChangedMeanwhile { .. } => StatusCode::CONFLICT,
            WebError::Folder(FolderError::Disk { .. })
            | WebError::Log(LogError::Full | LogError::Disk { .. }) => {
                StatusCode::INSUFFICIENT_STORAGE
            }
            WebError::Log(LogError::Busy) => StatusCode::SERVICE_UNAVAILABLE,
            WebError::Folder(FolderError::TooLarge { .. }) => StatusCode::PAYLOAD_TOO_LARGE,
            WebError::Folder(_)
            | WebError::Refused { .. }
            | WebError::Sheet(_)
            | WebError::NoMap(_)
            | WebError::NoFreezingMap(_)
            | WebError::Log(_)
            | WebError::NoMould(_) => StatusCode::UNPROCESSABLE_ENTITY,
            WebError::Broken(_) => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }

    fn hint(&self) -> Option<String> {
        match self {
            WebError::Refused { hint, .. } => hint.clone(),
            WebError::Folder(FolderError::File(fault)) => fault.hint.clone(),
            WebError::Folder(FolderError::Disk { .. }) => Some(
                "nothing was changed; see that the disk has room and may be written to".to_owned(),
            ),
            _ => None,
        }
    }
}

impl From<ChangeError> for WebError {
    fn from(error: ChangeError) -> WebError {
        WebError::Refused {
            message: error.to_string(),
            hint: None,
        }
    }
}

impl From<OpenError> for WebError {
    fn from(error: OpenError) -> WebError {
        match error {
            OpenError::Folder(error) => error.into(),
            error @ OpenError::In { .. } => WebError::Refused {
                message: error.to_string(),
                hint: None,
            },
        }
    }
}

impl From<Box<FileFault>> for WebError {
    fn from(fault: Box<FileFault>) -> WebError {
        WebError::Refused {
            message: fault.message.clone(),
            hint: fault.hint.clone(),
        }
    }
}

impl IntoResponse for WebError {
    fn into_response(self) -> Response {
        let no = No {
            message: self.to_string(),
            hint: self.hint(),
            now: match &self {
                WebError::ChangedMeanwhile { now } => now.clone(),
                _ => None,
            },
            ways: match &self {
                WebError::HowMeant { ways, .. } => ways.clone(),
                _ => Vec::new(),
            },
        };
        (self.status(), Json(no)).into_response()
    }
}
