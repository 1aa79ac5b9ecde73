//! The door for phones: the same shop over the local network, when the founder asks for it.
//!
//! A laptop at home hears everybody in the house. So this door speaks TLS only, under a certificate
//! of the shop's own ([`authority`]); it answers a phone that was paired by a code from the terminal
//! ([`pairing`], [`phones`]) and nobody else ([`door`]); and what a paired phone may do is read the
//! cards and send entries. What belongs to it lies in a place of its own ([`place`]).

pub mod address;
pub mod authority;
pub mod door;
pub mod listening;
pub mod pairing;
pub mod phones;
pub mod place;
pub mod seen_code;
pub mod welcome;

mod secret;

use std::net::{IpAddr, SocketAddr};
use std::path::{Path, PathBuf};

use job::folder::FolderError;
use thiserror::Error;

use crate::lan::pairing::Offer;
use crate::lan::place::Place;

/// The port for phones where none is named: that of the working sheet and one.
pub const PHONE_PORT: u16 = 7351;

/// What is told once phones can come in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PhonesWelcome {
    /// Every address under which a phone finds the shop, that to be tried first at the head.
    pub addresses: Vec<String>,
    /// The fingerprint of the shop's certificate, to be compared with what the phone shows.
    pub fingerprint: String,
    /// The code by which a phone is paired.
    pub offer: Offer,
}

/// Why phones cannot come in.
#[derive(Debug, Error)]
pub enum LanError {
    /// The shop's folder.
    #[error(transparent)]
    Folder(#[from] FolderError),
    /// The disk says no.
    #[error("{path}: {error}")]
    Disk {
        /// The file or folder.
        path: PathBuf,
        /// What the system says.
        error: std::io::Error,
    },
    /// A file of ours that is not what was written.
    #[error("{path} is not as it was written ({words}): {advice}")]
    Spoilt {
        /// The file.
        path: PathBuf,
        /// What was found.
        words: String,
        /// What to do.
        advice: &'static str,
    },
    /// An address out on the internet.
    #[error(
        "{0} is no address of a local network: phones are let in from at home only, such as \
         192.168.1.20; leave the address away to take those of this machine"
    )]
    NotLocal(
        /// The address.
        IpAddr,
    ),
    /// Something that is no address.
    #[error("\"{0}\" is no address: write one like 192.168.1.20 or 192.168.1.20:7351")]
    NoAddress(
        /// What was typed.
        String,
    ),
    /// No network.
    #[error(
        "this machine is in no local network: join one, or let the phone's own hotspot be it, and \
         ask again; an address that was not found can be named after --lan"
    )]
    NoNetwork,
    /// The port.
    #[error(
        "{address} cannot be had ({error}): name another port, like --lan {}:7361",
        address.ip()
    )]
    Port {
        /// Where it was wanted.
        address: SocketAddr,
        /// What the system says.
        error: std::io::Error,
    },
    /// The certificate.
    #[error("the shop's certificate could not be made: {0}")]
    Certificate(
        /// What the library says.
        String,
    ),
    /// The system gives no random numbers.
    #[error("this system gives no random numbers: nothing secret can be made without them")]
    NoChance,
    /// No such phone.
    #[error("no phone is called \"{name}\": {known}")]
    NoPhone {
        /// What was asked for.
        name: String,
        /// What there is, in words.
        known: String,
    },
}

/// Where the address stands at which phones found the shop last.
const ADDRESS: &str = "address";

/// Writes down at which address phones find the shop, for the code on the printed sheet.
pub(crate) fn remember_address(place: &Place, address: &str) -> Result<(), LanError> {
    place.write(ADDRESS, address.as_bytes())
}

/// The address of the bench card of a job, as phones found the shop last; none where they never
/// came in. `job` is the way from the served folder to that of the job.
pub fn card_address(folder: &Path, job: &str) -> Option<String> {
    let place = Place::there(folder).ok().flatten()?;
    let address = place.read(ADDRESS).ok().flatten()?;
    let job = job.bytes().fold(String::new(), |mut way, byte| {
        match byte {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'-' | b'_' => way.push(char::from(byte)),
            other => way.push_str(&format!("%{other:02X}")),
        }
        way
    });
    Some(format!("{address}/bench/{job}"))
}
