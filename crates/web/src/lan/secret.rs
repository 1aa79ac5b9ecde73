//! Secrets: drawn by the system's own chance, kept as digests, compared in constant time.

use std::fmt::Write as _;

use rustls::crypto::ring::default_provider;
use sha2::{Digest, Sha256};

use crate::lan::LanError;

/// So many bytes of chance in hexadecimal digits.
pub(crate) fn drawn<const BYTES: usize>() -> Result<String, LanError> {
    let mut bytes = [0; BYTES];
    fill(&mut bytes)?;
    Ok(hex(&bytes))
}

/// Eight digits, each number as likely as any other.
pub(crate) fn eight_digits() -> Result<String, LanError> {
    const NUMBERS: u32 = 100_000_000;
    // The last, broken hundred million of the 32 bits would favour small numbers.
    const WHOLE: u32 = u32::MAX - u32::MAX % NUMBERS;
    loop {
        let mut bytes = [0; 4];
        fill(&mut bytes)?;
        let number = u32::from_le_bytes(bytes);
        if number < WHOLE {
            return Ok(format!("{:08}", number % NUMBERS));
        }
    }
}

/// The digest of a secret (SHA-256), by which it is known again.
pub(crate) fn digest(secret: &[u8]) -> String {
    hex(&Sha256::digest(secret))
}

/// Whether two digests are the same, in a time that does not say where they differ.
pub(crate) fn same(one: &str, other: &str) -> bool {
    let differing = one.bytes().zip(other.bytes());
    let differing = differing.fold(0, |sum, (one, other)| sum | (one ^ other));
    one.len() == other.len() && std::hint::black_box(differing) == 0
}

/// Bytes as hexadecimal digits.
pub(crate) fn hex(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(2 * bytes.len());
    for byte in bytes {
        // Writing into a string does not fail.
        let _ = write!(text, "{byte:02x}");
    }
    text
}

fn fill(bytes: &mut [u8]) -> Result<(), LanError> {
    let filled = default_provider().secure_random.fill(bytes);
    filled.map_err(|_| LanError::NoChance)
}

#[cfg(test)]
mod tests {
    use super::{digest, same};

    /// FIPS 180-4 by way of its published example: SHA-256 of "abc".
    #[test]
    fn a_digest_is_that_of_the_standard() {
        let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(digest(b"abc"), abc);
    }

    #[test]
    fn what_differs_anywhere_is_not_the_same() {
        assert!(same("abcd", "abcd"));
        for other in ["abce", "bbcd", "abc", "abcde", ""] {
            assert!(!same("abcd", other), "{other}");
        }
    }
}
