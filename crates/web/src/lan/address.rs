//! Addresses of the local network, and which of them are this machine's.

use std::net::{IpAddr, Ipv4Addr, Ipv6Addr, SocketAddr, UdpSocket};

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

/// The same of the longer addresses: those that a network gives itself (RFC 4193), and this
/// machine. An address of one cable alone (fe80, RFC 4291) is none: it needs the name of the cable
/// behind it, and no browser takes that.
pub const LOCAL_LONG: [([u8; 16], u8); 2] = [
    ([0xfc, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0], 7),
    ([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1], 128),
];

/// Whether an address is one of a local network.
pub fn is_local(address: IpAddr) -> bool {
    let address = match address.to_canonical() {
        IpAddr::V4(address) => address,
        IpAddr::V6(address) => {
            let own = |(network, bits): &([u8; 16], u8)| {
                let mask = u128::MAX << (128 - u32::from(*bits));
                u128::from(address) & mask == u128::from_be_bytes(*network)
            };
            return LOCAL_LONG.iter().any(own);
        }
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
        let inner = typed
            .strip_prefix('[')
            .and_then(|text| text.strip_suffix(']'));
        inner
            .unwrap_or(typed)
            .parse::<IpAddr>()
            .map(|ip| SocketAddr::new(ip, PHONE_PORT))
    };
    let address = with_port.or_else(|_| bare());
    let address = address.map_err(|_| LanError::NoAddress(typed.to_owned()))?;
    match address.ip() {
        IpAddr::V6(cable) if cable.is_unicast_link_local() => Err(LanError::OneCable(cable)),
        ip if ip.is_unspecified() || is_local(ip) => Ok(address),
        ip => Err(LanError::NotLocal(ip)),
    }
}

/// The addresses under which phones find a server that listens here: those of this machine where
/// it listens to all, without its own loop; the longer ones where it listens to those too.
pub fn found(listens: SocketAddr) -> Vec<IpAddr> {
    if !listens.ip().is_unspecified() {
        return vec![listens.ip()];
    }
    let short = on_the_way_out().into_iter().chain(listed());
    let long = listed_long().into_iter().filter(|_| listens.is_ipv6());
    let mut all: Vec<IpAddr> = Vec::new();
    for address in short.map(IpAddr::V4).chain(long.map(IpAddr::V6)) {
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

/// The same of the longer addresses.
fn listed_long() -> Vec<Ipv6Addr> {
    let text = std::fs::read_to_string("/proc/net/if_inet6").unwrap_or_default();
    listed_long_in(&text)
}

/// A line begins with an address in 32 digits.
fn listed_long_in(table: &str) -> Vec<Ipv6Addr> {
    let first = table.lines().filter_map(|line| line.split(' ').next());
    let all = first.filter(|digits| digits.len() == 32);
    all.filter_map(|digits| u128::from_str_radix(digits, 16).ok())
        .map(Ipv6Addr::from)
        .collect()
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

    use super::{asked, is_local, listed_in, listed_long_in};
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
            "fd12:3456:789a::2",
            "fc00::1",
            "::1",
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
            "fe80::1",
            "fe00::1",
            "::2",
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
        is("fd12::5", "[fd12::5]:7351");
        is("[fd12::5]", "[fd12::5]:7351");
        is("[fd12::5]:7361", "[fd12::5]:7361");
        assert!(matches!(asked("fe80::1"), Err(LanError::OneCable(_))));
        assert!(matches!(asked("2001:db8::1"), Err(LanError::NotLocal(_))));
        assert!(matches!(asked("8.8.8.8"), Err(LanError::NotLocal(_))));
        assert!(matches!(asked("bench"), Err(LanError::NoAddress(_))));
    }

    #[test]
    fn a_list_of_the_system_is_read() {
        let table = "Main:\n  |-- 192.168.4.0\n    /24 link UNICAST\n  |-- 192.168.4.2\n    \
                     /32 host LOCAL\n  |-- 192.168.4.255\n    /32 link BROADCAST\n";
        assert_eq!(listed_in(table), [Ipv4Addr::new(192, 168, 4, 2)]);
        let table = "fd123456789a00000000000000000002 02 40 00 80 eth0\nshort 02 40 00 80 eth0\n";
        let own: Vec<String> = listed_long_in(table)
            .iter()
            .map(ToString::to_string)
            .collect();
        assert_eq!(own, ["fd12:3456:789a::2"]);
    }
}
