//! A Plan in the browser: the pour sheet itself is the page, served to this machine only; and the
//! bench card of it, to paired phones where the founder asks for that.
//!
//! - [`routes`]: every address there is; [`guard`]: who may ask; [`errors`]: what is said to a no.
//! - [`folder`]: the shop's folder and the jobs in it; nothing outside it is read or written.
//! - [`lan`]: the door for phones.
//! - [`kept`]: what was worked out last; [`opened_job`]: a job with its sheet.
//! - [`runs`]: longer work; [`followed`]: a freezing, kept on its way; [`heat_on`]: on what it is
//!   followed.
//! - [`answers`]: what each address sends; [`page`]: the page itself, carried in the program.

pub mod answers;
pub mod errors;
pub mod folder;
pub mod followed;
pub mod guard;
pub mod heat_on;
pub mod kept;
pub mod lan;
pub mod opened_job;
pub mod page;
pub mod routes;
pub mod runs;

use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::Path;
use std::sync::Arc;
use std::time::SystemTime;

use job::folder::JOB_FILE;
use thiserror::Error;
use tokio::net::TcpListener;
use tokio::runtime::Builder;

use crate::folder::ShopFolder;
use crate::lan::authority::Authority;
use crate::lan::door::{self, Door};
use crate::lan::listening::{Signs, listen};
use crate::lan::place::Place;
use crate::lan::{LanError, PhonesWelcome, address, pairing};

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
    /// The door for phones.
    #[error(transparent)]
    Lan(#[from] LanError),
    /// The system.
    #[error("the server stopped: {0}")]
    Stopped(
        /// What the system says.
        #[from]
        std::io::Error,
    ),
}

/// What is told once everything listens.
#[derive(Clone, Debug)]
pub struct Ready {
    /// The address of the working sheet, on this machine.
    pub address: SocketAddr,
    /// What phones need to come in, where they may.
    pub phones: Option<PhonesWelcome>,
}

/// Serves a shop's folder to this machine as long as the program runs, and to phones where an
/// address for them is named (an empty one is all of this machine); `ready` is told the addresses.
/// It may be ended at any moment: files are written whole or not at all.
///
/// # Errors
///
/// A folder that is none or that of a job, a port that cannot be had, and whatever keeps phones
/// out.
pub fn serve(
    folder: &Path,
    port: u16,
    phones: Option<&str>,
    ready: impl FnOnce(&Ready),
) -> Result<(), ServeError> {
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
        let shop = Arc::new(shop);
        let phones = match phones {
            Some(asked) => Some(open_the_door(&shop, address::asked(asked)?).await?),
            None => None,
        };
        let unfinished = Arc::clone(&shop);
        tokio::task::spawn_blocking(move || followed::go_on(&unfinished));
        ready(&Ready { address, phones });
        let routes = routes::routes(shop, address.port());
        axum::serve(listener, routes).await?;
        Ok(())
    })
}

/// Lets phones in at an address from now on.
async fn open_the_door(
    shop: &Arc<ShopFolder>,
    asked: SocketAddr,
) -> Result<PhonesWelcome, LanError> {
    let place = Place::of(shop.root())?;
    let authority = Authority::of(&place)?;
    let taken = |error| LanError::Port {
        address: asked,
        error,
    };
    let listener = TcpListener::bind(asked).await.map_err(taken)?;
    let listens = listener.local_addr().map_err(taken)?;
    let at = |ip| format!("https://{}", SocketAddr::new(ip, listens.port()));
    let (found, beyond): (Vec<IpAddr>, Vec<IpAddr>) = address::found(listens)
        .into_iter()
        .partition(|ip| authority.covers(*ip));
    let addresses: Vec<String> = found.into_iter().map(at).collect();
    let first = addresses.first().ok_or_else(|| match beyond.first() {
        Some(address) => LanError::NotCovered {
            address: *address,
            path: place.path(""),
        },
        None => LanError::NoNetwork,
    })?;
    lan::remember_address(&place, first, shop.root())?;
    shop.lets_phones_in.get_or_init(|| ());
    let fingerprint = authority.fingerprint();
    let offer = pairing::offer(&place, SystemTime::now())?;
    let door = Door::of(shop, place, &authority);
    let routes = door::routes(Arc::clone(shop), door);
    tokio::spawn(listen(listener, Arc::new(Signs::of(authority)), routes));
    Ok(PhonesWelcome {
        addresses,
        fingerprint,
        offer,
    })
}
