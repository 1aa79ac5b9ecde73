//! A Plan in the browser: the pour sheet itself is the page, served to this machine only.
//!
//! - [`routes`]: every address there is; [`guard`]: who may ask; [`errors`]: what is said to a no.
//! - [`folder`]: the shop's folder and the jobs in it; nothing outside it is read or written.
//! - [`kept`]: what was worked out last; [`runs`]: longer work.
//! - [`answers`]: what each address sends; [`page`]: the page itself, carried in the program.

pub mod answers;
pub mod errors;
pub mod folder;
pub mod guard;
pub mod kept;
pub mod page;
pub mod routes;
pub mod runs;

use std::net::{Ipv4Addr, SocketAddr};
use std::path::Path;
use std::sync::Arc;

use job::folder::JOB_FILE;
use thiserror::Error;
use tokio::net::TcpListener;
use tokio::runtime::Builder;

use crate::folder::ShopFolder;

/// Why nothing is served.
#[derive(Debug, Error)]
pub enum ServeError {
    /// No such folder.
    #[error("{path} is no folder: give that of your shop, in which the job folders lie")]
    NoFolder {
        /// What was given.
        path: String,
    },
    /// A job in place of the shop.
    #[error("{path} is a job: give the folder in which it lies")]
    IsJob {
        /// What was given.
        path: String,
    },
    /// The port.
    #[error("port {port} cannot be had ({error}): give another with --port, or 0 for any free one")]
    Port {
        /// The port.
        port: u16,
        /// What the system says.
        error: std::io::Error,
    },
    /// The system.
    #[error("the server stopped: {0}")]
    Stopped(
        /// What the system says.
        #[from]
        std::io::Error,
    ),
}

/// Serves a shop's folder to this machine as long as the program runs; `ready` is told the address.
/// It may be ended at any moment: files are written whole or not at all.
///
/// # Errors
///
/// A folder that is none or that of a job, and a port that cannot be had.
pub fn serve(folder: &Path, port: u16, ready: impl FnOnce(SocketAddr)) -> Result<(), ServeError> {
    if folder.join(JOB_FILE).is_file() {
        return Err(ServeError::IsJob {
            path: folder.display().to_string(),
        });
    }
    let shop = ShopFolder::at(folder).ok_or_else(|| ServeError::NoFolder {
        path: folder.display().to_string(),
    })?;
    let runtime = Builder::new_multi_thread().enable_all().build()?;
    runtime.block_on(async {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port))
            .await
            .map_err(|error| ServeError::Port { port, error })?;
        let address = listener.local_addr()?;
        ready(address);
        let routes = routes::routes(Arc::new(shop), address.port());
        axum::serve(listener, routes).await?;
        Ok(())
    })
}
