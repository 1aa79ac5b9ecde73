//! The shop's certificate: made once, installed once on each phone, and behind every certificate
//! with which the server shows itself.
//!
//! A browser trusts whoever signs in its owner's name, so this one is kept short: by its own words
//! it can vouch for addresses of local networks and for nothing else, whoever may get hold of its
//! key (RFC 5280, section 4.2.1.10).

use std::net::IpAddr;
use std::sync::Arc;
use std::time::{Duration, SystemTime};

use rcgen::{
    BasicConstraints, CertificateParams, CidrSubnet, DnType, ExtendedKeyUsagePurpose,
    GeneralSubtree, IsCa, Issuer, KeyPair, KeyUsagePurpose, NameConstraints, date_time_ymd,
};
use rustls::ServerConfig;
use rustls::crypto::ring::default_provider;
use rustls::pki_types::pem::PemObject;
use rustls::pki_types::{CertificateDer, PrivateKeyDer, PrivatePkcs8KeyDer};

use crate::lan::LanError;
use crate::lan::address::{LOCAL, LOCAL_LONG};
use crate::lan::place::Place;
use crate::lan::secret::digest;

/// The key; it never leaves its place.
const KEY: &str = "authority.key";

/// The certificate, which anybody may have.
const CERTIFICATE: &str = "authority.crt";

/// How long the shop's certificate is good, years: shorter, and every phone has to be seen to
/// again; longer, and it outlives the laptop.
const YEARS: u32 = 10;

/// How long the server's own is good, days. Phones refuse more than 825 days of one that was
/// installed by hand, and it is made anew well before.
const DAYS: u32 = 90;

/// After so many days it is made anew.
const RENEWED_AFTER_DAYS: u32 = 30;

/// Clocks of phones lag: a certificate is good from a day before it was made.
const LAG: Duration = Duration::from_secs(24 * 3600);

const DAY: Duration = Duration::from_secs(24 * 3600);

/// What to do about a file that is not what it was.
const MAKE_ANEW: &str = "take authority.key and authority.crt away, start again, and install the \
                         new certificate on each phone";

/// The shop's certificate with its key.
#[derive(Debug)]
pub struct Authority {
    issuer: Issuer<'static, KeyPair>,
    certificate: CertificateDer<'static>,
}

/// With what the server shows itself at one address.
#[derive(Clone, Debug)]
pub struct Shown {
    /// As the library of TLS takes it.
    pub config: Arc<ServerConfig>,
    made: SystemTime,
}

impl Authority {
    /// That of a shop, made where there is none yet.
    ///
    /// # Errors
    ///
    /// A disk that says no, files that are not what was written.
    pub fn of(place: &Place) -> Result<Authority, LanError> {
        let (key, certificate) = (place.read(KEY)?, place.read(CERTIFICATE)?);
        match (key, certificate) {
            (Some(key), Some(certificate)) => kept(place, &key, &certificate),
            // Without its certificate a key is of no use: no phone trusts it yet.
            _ => made(place),
        }
    }

    /// The certificate for a phone to install: without the key, as anybody may have it.
    pub fn certificate(&self) -> &[u8] {
        &self.certificate
    }

    /// Whether it may vouch for an address: one that was made before it covered the longer ones
    /// says nothing of them, and no phone takes it there then.
    pub fn covers(&self, address: IpAddr) -> bool {
        let [(network, bits), _] = LOCAL_LONG;
        // As its constraint stands in it: the network, then what of it counts (RFC 5280, 4.2.1.10).
        let stands = [network, long_mask(bits)].concat();
        address.is_ipv4()
            || self
                .certificate
                .windows(stands.len())
                .any(|at| at == stands)
    }

    /// By which people compare it: its digest (SHA-256) in pairs of digits, as phones show it.
    pub fn fingerprint(&self) -> String {
        let digest = digest(&self.certificate).to_uppercase();
        let pairs: Vec<&str> = (0..digest.len() / 2)
            .map(|at| &digest[2 * at..2 * at + 2])
            .collect();
        pairs.join(":")
    }

    /// A certificate for the server at one address, signed by the shop's. Its key is drawn anew and
    /// kept nowhere.
    ///
    /// # Errors
    ///
    /// What the library says.
    pub fn shown_at(&self, address: IpAddr) -> Result<Shown, LanError> {
        let key = KeyPair::generate().map_err(refused)?;
        let mut params = CertificateParams::new([address.to_string()]).map_err(refused)?;
        params
            .distinguished_name
            .push(DnType::CommonName, format!("Oddside at {address}"));
        params.key_usages = vec![KeyUsagePurpose::DigitalSignature];
        params.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
        params.use_authority_key_identifier_extension = true;
        last(&mut params, DAY * DAYS);
        let signed = params.signed_by(&key, &self.issuer).map_err(refused)?;
        let chain = vec![signed.der().clone(), self.certificate.clone()];
        let key = PrivateKeyDer::Pkcs8(PrivatePkcs8KeyDer::from(key.serialize_der()));
        let config = ServerConfig::builder_with_provider(Arc::new(default_provider()))
            .with_safe_default_protocol_versions()
            .map_err(refused)?
            .with_no_client_auth()
            .with_single_cert(chain, key)
            .map_err(refused)?;
        Ok(Shown {
            config: Arc::new(config),
            made: SystemTime::now(),
        })
    }
}

impl Shown {
    /// Whether it should be made anew; also where the clock was set back behind it.
    pub fn is_old(&self, now: SystemTime) -> bool {
        let age = now.duration_since(self.made);
        age.map_or(true, |age| age > DAY * RENEWED_AFTER_DAYS)
    }
}

/// Makes the shop's certificate; the key is written first, so that no certificate stands alone.
fn made(place: &Place) -> Result<Authority, LanError> {
    let key = KeyPair::generate().map_err(refused)?;
    let mut params = params(&key);
    last(&mut params, DAY * 365 * YEARS);
    let certificate = params.self_signed(&key).map_err(refused)?;
    place.write(KEY, key.serialize_pem().as_bytes())?;
    place.write(CERTIFICATE, certificate.pem().as_bytes())?;
    Ok(Authority {
        certificate: certificate.der().clone(),
        issuer: Issuer::new(params, key),
    })
}

fn kept(place: &Place, key: &str, certificate: &str) -> Result<Authority, LanError> {
    let spoilt = |name: &str, words: String| LanError::Spoilt {
        path: place.path(name),
        words,
        advice: MAKE_ANEW,
    };
    let key = KeyPair::from_pem(key).map_err(|error| spoilt(KEY, error.to_string()))?;
    let certificate = CertificateDer::from_pem_slice(certificate.as_bytes())
        .map_err(|error| spoilt(CERTIFICATE, error.to_string()))?;
    // A certificate holds the public half of its key as it is.
    let public = key.public_key_raw();
    if !certificate
        .windows(public.len())
        .any(|bytes| bytes == public)
    {
        return Err(spoilt(CERTIFICATE, "it is of another key".to_owned()));
    }
    Ok(Authority {
        issuer: Issuer::new(params(&key), key),
        certificate,
    })
}

/// What the shop's certificate says of itself; the same for the same key.
fn params(key: &KeyPair) -> CertificateParams {
    let mut params = CertificateParams::default();
    let name = digest(key.public_key_raw());
    params.distinguished_name = rcgen::DistinguishedName::new();
    params
        .distinguished_name
        .push(DnType::CommonName, format!("Oddside shop {}", &name[..8]));
    params.is_ca = IsCa::Ca(BasicConstraints::Constrained(0));
    params.key_usages = vec![KeyUsagePurpose::KeyCertSign];
    let within = LOCAL.iter().map(|(network, bits)| {
        let mask = u32::MAX << (32 - u32::from(*bits));
        GeneralSubtree::IpAddress(CidrSubnet::V4(*network, mask.to_be_bytes()))
    });
    let long = LOCAL_LONG.iter().map(|(network, bits)| {
        GeneralSubtree::IpAddress(CidrSubnet::V6(*network, long_mask(*bits)))
    });
    // Names are kept out by naming the only one that may be: without any, all would be free.
    let name = GeneralSubtree::DnsName("localhost".to_owned());
    params.name_constraints = Some(NameConstraints {
        permitted_subtrees: within.chain(long).chain([name]).collect(),
        excluded_subtrees: Vec::new(),
    });
    params
}

/// The bits of a longer address that count.
fn long_mask(bits: u8) -> [u8; 16] {
    (u128::MAX << (128 - u32::from(bits))).to_be_bytes()
}

/// From now on for so long.
fn last(params: &mut CertificateParams, long: Duration) {
    let now = SystemTime::now().duration_since(SystemTime::UNIX_EPOCH);
    let now = date_time_ymd(1970, 1, 1) + now.unwrap_or_default();
    params.not_before = now - LAG;
    params.not_after = now + long;
}

fn refused(error: impl std::fmt::Display) -> LanError {
    LanError::Certificate(error.to_string())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

    use std::time::{Duration, SystemTime};

    use super::{Authority, CERTIFICATE, DAY, KEY};
    use crate::lan::LanError;
    use crate::lan::place::Place;

    #[test]
    fn it_is_made_once_and_its_key_is_for_its_owner() {
        let shop = tempfile::tempdir().unwrap();
        let place = Place::of(shop.path()).unwrap();
        let first = Authority::of(&place).unwrap();
        let again = Authority::of(&Place::of(shop.path()).unwrap()).unwrap();
        assert_eq!(first.fingerprint(), again.fingerprint());
        assert_eq!(first.fingerprint().len(), 32 * 3 - 1);
        assert!(first.covers("fd12::5".parse().unwrap()));
        assert!(again.covers("192.168.1.2".parse().unwrap()));
        #[cfg(unix)]
        {
            let metadata = std::fs::metadata(place.path(KEY)).unwrap();
            let mode = std::os::unix::fs::PermissionsExt::mode(&metadata.permissions());
            assert_eq!(mode & 0o777, 0o600);
        }
    }

    #[test]
    fn a_certificate_of_another_key_is_told() {
        let (one, other) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
        let place = Place::of(one.path()).unwrap();
        Authority::of(&place).unwrap();
        let strange = Place::of(other.path()).unwrap();
        Authority::of(&strange).unwrap();
        std::fs::copy(strange.path(CERTIFICATE), place.path(CERTIFICATE)).unwrap();
        assert!(matches!(
            Authority::of(&place),
            Err(LanError::Spoilt { .. })
        ));
        std::fs::write(place.path(KEY), "no key").unwrap();
        assert!(matches!(
            Authority::of(&place),
            Err(LanError::Spoilt { .. })
        ));
    }

    #[test]
    fn the_server_s_own_is_made_anew_after_a_month() {
        let shop = tempfile::tempdir().unwrap();
        let authority = Authority::of(&Place::of(shop.path()).unwrap()).unwrap();
        let shown = authority.shown_at("192.168.1.2".parse().unwrap()).unwrap();
        let now = SystemTime::now();
        assert!(!shown.is_old(now + DAY * 29));
        assert!(shown.is_old(now + DAY * 31));
        assert!(shown.is_old(now - Duration::from_secs(60)));
    }
}
