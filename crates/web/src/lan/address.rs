//! Addresses of the local network, and which of them are this machine's.

use std::net::{IpAddr, Ipv4Addr, SocketAddr, UdpSocket};

use crate::lan::{LanError, PHONE_PORT};

/// The networks in which phones are let in, each with the bits that count: those that no router of
/// the internet carries (RFC 1918, RFC 3927, RFC 6598 for carriers' own), and this machine itself.
pub const LOCAL: [([u8; 4], u8); 6] = [
    ([10, 0, 0, 0], 8),
    ([100, 64, 0, 0], 10),
    ([127, 0, 0, 0], 8),
    ([169, 254, 0, 0], 16),
    ([172, 16, 0, 0], 12),
    ([192, 168, 0, 0], 16),
];

/// Whether an address is one of a local network.
pub fn is_local(address: IpAddr) -> bool {
    let IpAddr::V4(address) = address.to_canonical() else {
        return false;
    };
    let within = |(network, bits): &([u8; 4], u8)| {
        let mask = u32::MAX << (32 - u32::from(*bits));
        u32::from(address) & mask == u32::from_be_bytes(*network)
    };
    LOCAL.iter().any(within)
}

/// Where to listen: all addresses where none is named.
///
/// # Errors
///
/// What is no address, and one out on the internet.
pub fn asked(typed: &str) -> Result<SocketAddr, LanError> {
    if typed.is_empty() {
        return Ok(SocketAddr::from((Ipv4Addr::UNSPECIFIED, PHONE_PORT)));
    }
    let with_port = typed.parse::<SocketAddr>();
    let bare = || {
        typed
            .parse::<IpAddr>()
            .map(|ip| SocketAddr::new(ip, PHONE_PORT))
    };
    let address = with_port.or_else(|_| bare());
    let address = address.map_err(|_| LanError::NoAddress(typed.to_owned()))?;
    match address.ip().is_unspecified() || is_local(address.ip()) {
        true => Ok(address),
        false => Err(LanError::NotLocal(address.ip())),
    }
}

/// The addresses under which phones find a server that listens here: those of this machine where
/// it listens to all, without its own loop.
pub fn found(listens: SocketAddr) -> Vec<IpAddr> {
    if !listens.ip().is_unspecified() {
        return vec![listens.ip()];
    }
    let mut all: Vec<IpAddr> = Vec::new();
    for address in on_the_way_out().into_iter().chain(listed()) {
        let address = IpAddr::V4(address);
        if is_local(address) && !address.is_loopback() && !all.contains(&address) {
            all.push(address);
        }
    }
    all
}

/// The address from which this machine would speak to others; nothing is sent to find out.
fn on_the_way_out() -> Vec<Ipv4Addr> {
    // One address out on the internet, kept free for examples (RFC 5737), and one in each of the
    // usual networks at home: a hotspot of the laptop's own has no way out.
    const TOWARDS: [[u8; 4]; 4] = [
        [203, 0, 113, 1],
        [192, 168, 1, 1],
        [10, 0, 0, 1],
        [172, 16, 0, 1],
    ];
    let from = |to: [u8; 4]| {
        let socket = UdpSocket::bind((Ipv4Addr::UNSPECIFIED, 0)).ok()?;
        socket.connect((Ipv4Addr::from(to), 9)).ok()?;
        match socket.local_addr().ok()?.ip() {
            IpAddr::V4(address) => Some(address),
            IpAddr::V6(_) => None,
        }
    };
    TOWARDS.into_iter().filter_map(from).collect()
}

/// All addresses of this machine as its system lists them, where it does so in a file.
fn listed() -> Vec<Ipv4Addr> {
    let text = std::fs::read_to_string("/proc/net/fib_trie").unwrap_or_default();
    listed_in(&text)
}

fn listed_in(table: &str) -> Vec<Ipv4Addr> {
    let mut found = Vec::new();
    let mut last: Option<Ipv4Addr> = None;
    for line in table.lines().map(str::trim) {
        match line.strip_prefix("|-- ") {
            Some(address) => last = address.parse().ok(),
            None if line.ends_with("host LOCAL") && line.starts_with("/32") => found.extend(last),
            None => {}
        }
    }
    found.sort();
    found.dedup();
    found
}

#[cfg(test)]
mod tests {
    use std::net::{IpAddr, Ipv4Addr};

    use super::{asked, is_local, listed_in};
    use crate::lan::LanError;

    #[test]
    fn networks_at_home_are_told_from_the_internet() {
        for home in [
            "10.1.2.3",
            "172.16.0.1",
            "172.31.255.254",
            "192.168.0.9",
            "169.254.1.1",
            "100.127.0.1",
            "127.0.0.1",
            "::ffff:192.168.0.9",
        ] {
            assert!(
                is_local(home.parse().unwrap_or(IpAddr::V4(Ipv4Addr::BROADCAST))),
                "{home}"
            );
        }
        for out in [
            "9.9.9.9",
            "172.15.0.1",
            "172.32.0.1",
            "192.167.0.9",
            "100.63.0.1",
            "100.128.0.1",
            "2001:db8::1",
            "::1",
        ] {
            assert!(
                !is_local(out.parse().unwrap_or(IpAddr::V4(Ipv4Addr::LOCALHOST))),
                "{out}"
            );
        }
    }

    #[test]
    fn what_is_typed_is_an_address_at_home() {
        let is = |typed: &str, wanted: &str| {
            assert_eq!(
                asked(typed).map(|at| at.to_string()).ok().as_deref(),
                Some(wanted)
            );
        };
        is("", "0.0.0.0:7351");
        is("192.168.1.4", "192.168.1.4:7351");
        is("127.0.0.1:0", "127.0.0.1:0");
        assert!(matches!(asked("8.8.8.8"), Err(LanError::NotLocal(_))));
        assert!(matches!(asked("bench"), Err(LanError::NoAddress(_))));
    }

    #[test]
    fn a_list_of_the_system_is_read() {
        let table = "Main:\n  |-- 192.168.4.0\n    /24 link UNICAST\n  |-- 192.168.4.2\n    \
                     /32 host LOCAL\n  |-- 192.168.4.255\n    /32 link BROADCAST\n";
        assert_eq!(listed_in(table), [Ipv4Addr::new(192, 168, 4, 2)]);
    }
}
