//! The door for phones: the same shop over the local network, when the founder asks for it.
//!
//! A laptop at home hears everybody in the house. So this door speaks TLS only, under a certificate
//! of the shop's own ([`authority`]); it answers a phone that was paired by a code from the
//! terminal ([`pairing`], [`phones`]) and nobody else ([`door`]); and what a paired phone may do is
//! read the cards and send entries. What belongs to it lies in a place of its own ([`place`]).

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

use std::net::{IpAddr, Ipv6Addr, SocketAddr};
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
    /// An address of one cable.
    #[error(
        "{0} holds on one cable only, and no browser takes it: name an address that begins with \
         fd, or one like 192.168.1.20"
    )]
    OneCable(
        /// The address.
        Ipv6Addr,
    ),
    /// A certificate from before it covered such addresses.
    #[error(
        "the shop's certificate does not cover {address}: name an address like 192.168.1.20, or \
         remove the folder {} and pair every phone anew",
        path.display()
    )]
    NotCovered {
        /// The address.
        address: IpAddr,
        /// Where the certificate lies.
        path: PathBuf,
    },
    /// Something that is no address.
    #[error(
        "\"{0}\" is no address: write one like 192.168.1.20 or 192.168.1.20:7351, and the folder \
         before --lan"
    )]
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
        "{address} cannot be had ({error}): name another port, like --lan {}",
        SocketAddr::new(address.ip(), 7361)
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

/// Where the address stands at which phones found the shop last, and below it the folder that was
/// served.
const ADDRESS: &str = "address";

/// Writes down at which address phones find the jobs of a folder, for the code on printed sheets.
pub(crate) fn remember_address(place: &Place, address: &str, root: &Path) -> Result<(), LanError> {
    let text = format!("{address}\n{}\n", root.display());
    place.write(ADDRESS, text.as_bytes())
}

/// The address of the bench card of the job in a folder, as phones found it last; none where they
/// never came in, or not to that job.
pub fn card_address(job: &Path) -> Option<String> {
    let job = job.canonicalize().ok()?;
    let text = Place::there(&job)
        .ok()
        .flatten()?
        .read(ADDRESS)
        .ok()
        .flatten()?;
    let (address, root) = text.split_once('\n')?;
    let way = job.strip_prefix(root.trim_end_matches('\n')).ok()?;
    let steps: Vec<String> = way
        .iter()
        .map(|step| written_out(&step.to_string_lossy()))
        .collect();
    (!steps.is_empty()).then(|| format!("{address}/bench/{}", steps.join("%2F")))
}

/// A name as it stands in an address; a dot too, since an address with one is a file.
fn written_out(name: &str) -> String {
    let mut out = String::new();
    for byte in name.bytes() {
        match byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'_') {
            true => out.push(char::from(byte)),
            false => out.push_str(&format!("%{byte:02X}")),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

    use super::{card_address, remember_address};
    use crate::lan::place::Place;

    #[test]
    fn a_printed_sheet_leads_to_the_card_of_its_job() {
        let shop = tempfile::tempdir().unwrap();
        let root = shop.path().canonicalize().unwrap();
        let job = root.join("2026/a lid v1.2");
        std::fs::create_dir_all(&job).unwrap();
        std::fs::write(root.join("shop.toml"), job::folder::STARTER_SHOP).unwrap();
        assert_eq!(card_address(&job), None);
        let place = Place::of(&root).unwrap();
        remember_address(&place, "https://192.168.1.20:7351", &root).unwrap();
        assert_eq!(
            card_address(&job).as_deref(),
            Some("https://192.168.1.20:7351/bench/2026%2Fa%20lid%20v1%2E2")
        );
        assert_eq!(card_address(&root), None);
        let elsewhere = root.join("elsewhere");
        remember_address(&place, "https://192.168.1.20:7351", &elsewhere).unwrap();
        assert_eq!(card_address(&job), None);
    }
}
