//! The door for phones, knocked at by a real client of TLS: who is let in, who is not, and how far.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod phone;
mod shop;

use std::io::{Read, Write};
use std::net::{IpAddr, TcpStream};
use std::sync::Arc;

use phone::{OpenShop, connected, trusting};
use serde_json::json;
use tokio::net::TcpListener;
use tokio_rustls::TlsAcceptor;
use web::lan::authority::Authority;
use web::lan::phones::remove;
use web::lan::place::Place;

/// What an address in a browser asks for.
const PAGE: [(&str, &str); 1] = [("accept", "text/html,application/xhtml+xml")];

/// At a longer address the certificate holds, the name stands in brackets, and no other is taken.
#[tokio::test]
async fn a_phone_comes_in_by_a_longer_address() {
    let Ok(listener) = TcpListener::bind((std::net::Ipv6Addr::LOCALHOST, 0)).await else {
        // A machine without any such address has nothing to be asked at.
        return;
    };
    let shop = OpenShop::open_at(listener).await;
    let phone = shop.paired("by the longer way").await;
    assert_eq!(shop.get("/api/v1/cards", &phone).await.status, 200);
    let port = shop.at.port();
    for strange in [
        format!("::1:{port}"),
        format!("[::2]:{port}"),
        format!("localhost:{port}"),
        "[::1]".to_owned(),
    ] {
        let heads = [("cookie", phone.as_str()), ("host", strange.as_str())];
        let heard = shop.ask("GET /api/v1/cards", &heads, "").await;
        assert!(
            [400, 403].contains(&heard.status),
            "{strange}: {}",
            heard.head
        );
    }
}

#[tokio::test]
async fn who_is_not_paired_gets_the_page_for_pairing_and_the_certificate_alone() {
    let shop = OpenShop::open().await;
    for way in ["/", "/bench", "/bench/2026%2Fblock", "/job/2026%2Fblock"] {
        let heard = shop.ask(&format!("GET {way}"), &PAGE, "").await;
        assert_eq!(heard.status, 401, "{way}");
        let page = heard.text();
        assert!(
            page.contains(&shop.fingerprint) && page.contains("action=\"/pair\""),
            "{way}"
        );
        assert!(heard.head.contains("default-src 'self'") && heard.head.contains("nosniff"));
    }
    let style = shop.ask("GET /pair.css", &[], "").await;
    assert_eq!(style.status, 200);
    let certificate = shop.ask("GET /oddside-shop.crt", &[], "").await;
    assert_eq!(certificate.status, 200);
    assert!(certificate.head.contains("application/x-x509-ca-cert"));
    // A certificate in DER is a sequence; a private key in PEM would say so.
    assert_eq!(certificate.body[0], 0x30);
    assert!(!certificate.text().contains("PRIVATE"));
    for way in [
        "/api/v1/cards",
        "/api/v1/jobs",
        "/api/v1/jobs/2026%2Fblock/card",
        "/bench-worker.js",
        "/bench-files.json",
        "/authority.key",
        "/.oddside/authority.key",
    ] {
        let heard = shop.ask(&format!("GET {way}"), &[], "").await;
        assert_eq!(heard.status, 401, "{way}");
        assert!(!heard.text().contains("Block"), "{way}");
    }
    let sent = shop.send("/api/v1/entries", "", &json!([])).await;
    assert_eq!(sent.status, 401);
}

#[tokio::test]
async fn a_code_pairs_one_phone_and_wrong_ones_use_it_up() {
    let shop = OpenShop::open().await;
    let code = shop.code();
    let heard = shop
        .pair(&format!("{}+{}", &code[..4], &code[4..]), "the%20old%20one")
        .await;
    assert_eq!(heard.status, 303);
    for wanted in [
        "__Host-oddside=",
        "Secure",
        "HttpOnly",
        "SameSite=Strict",
        "Path=/",
    ] {
        assert!(heard.head.contains(wanted), "{wanted}: {}", heard.head);
    }
    let again = shop.pair(&code, "").await;
    assert_eq!(again.status, 403);
    let code = shop.code();
    let wrong = if code.starts_with('0') {
        "11111111"
    } else {
        "01111111"
    };
    let begun = std::time::Instant::now();
    for left in (1..5).rev() {
        let heard = shop.pair(wrong, "").await;
        assert_eq!(heard.status, 403);
        assert!(
            heard.text().contains(&format!("{left}.")),
            "{}",
            heard.text()
        );
    }
    // Each wrong one waits a second before it is told.
    assert!(begun.elapsed().as_secs() >= 4);
    shop.pair(wrong, "").await;
    assert_eq!(
        shop.pair(&code, "").await.status,
        403,
        "five wrong ones use it up"
    );
}

#[tokio::test]
async fn a_paired_phone_reads_the_cards_and_nothing_else() {
    let shop = OpenShop::open().await;
    let phone = shop.paired("").await;
    let cards = shop.get("/api/v1/cards", &phone).await;
    assert_eq!(cards.status, 200);
    assert_eq!(cards.json()["jobs"][0]["job"], "2026/block");
    let card = shop.get("/api/v1/jobs/2026%2Fblock/card", &phone).await;
    assert_eq!(card.json()["name"], "Block");
    let home = shop.get("/", &phone).await;
    assert_eq!(
        (home.status, home.head.contains("location: /bench")),
        (303, true)
    );
    assert!(
        shop.get("/bench/2026%2Fblock", &phone)
            .await
            .text()
            .contains("id=\"bench\"")
    );
    for way in [
        "/api/v1/jobs",
        "/api/v1/jobs/2026%2Fblock/sheet",
        "/api/v1/shop",
        "/api/v1/runs",
        "/api/v1/openapi.json",
        "/index.html",
        "/job/2026%2Fblock",
        "/.oddside/authority.key",
        "/..%2F.oddside%2Fauthority.key",
    ] {
        assert_eq!(shop.get(way, &phone).await.status, 404, "{way}");
    }
    let change = json!({"key": "name", "was": "Block", "to": "Taken"});
    for way in [
        "/api/v1/jobs",
        "/api/v1/shop/typed",
        "/api/v1/jobs/2026%2Fblock/freezing",
    ] {
        assert_eq!(shop.send(way, &phone, &change).await.status, 404, "{way}");
    }
}

#[tokio::test]
async fn a_phone_that_is_removed_is_let_in_no_more() {
    let shop = OpenShop::open().await;
    let (one, other) = (shop.paired("one").await, shop.paired("other").await);
    assert_eq!(shop.get("/api/v1/cards", &one).await.status, 200);
    remove(&shop.place, "one").unwrap();
    let said = shop.get("/api/v1/cards", &one).await;
    assert_eq!(said.status, 401);
    assert!(
        said.json()["message"]
            .as_str()
            .unwrap()
            .contains("not paired")
    );
    assert_eq!(shop.get("/api/v1/cards", &other).await.status, 200);
    let forged = format!("{}0", &other[..other.len() - 1]);
    let flipped = if forged == other {
        format!("{}1", &other[..other.len() - 1])
    } else {
        forged
    };
    assert_eq!(shop.get("/api/v1/cards", &flipped).await.status, 401);
}

#[tokio::test]
async fn strange_names_other_sites_and_long_bodies_are_kept_out() {
    let shop = OpenShop::open().await;
    let phone = shop.paired("").await;
    for host in [
        "shop.example",
        "shop.example:7351",
        "127.0.0.1",
        "localhost",
        "[::1]",
    ] {
        let heads = [("host", host), ("cookie", phone.as_str())];
        let heard = shop.ask("GET /api/v1/cards", &heads, "").await;
        assert_eq!(heard.status, 403, "{host}");
    }
    let plain = format!("http://{}", shop.at);
    for (head, value) in [
        ("origin", "https://evil.example"),
        ("origin", "null"),
        ("origin", plain.as_str()),
        ("sec-fetch-site", "cross-site"),
        ("sec-fetch-mode", "cors"),
    ] {
        let heads = [
            ("cookie", phone.as_str()),
            ("content-type", "application/json"),
            (head, value),
        ];
        let heard = shop.ask("POST /api/v1/entries", &heads, "[]").await;
        assert_eq!(heard.status, 403, "{head}: {value}");
    }
    let long = json!([{"table": "x".repeat(300_000)}]);
    assert_eq!(
        shop.send("/api/v1/entries", &phone, &long).await.status,
        413
    );
    let long = format!("code={}", "1".repeat(10_000));
    let heard = shop.ask(
        "POST /pair",
        &[("content-type", "application/x-www-form-urlencoded")],
        &long,
    );
    assert_eq!(heard.await.status, 413);
}

#[tokio::test]
async fn nothing_is_said_without_tls() {
    let shop = OpenShop::open().await;
    let at = shop.at;
    let heard = tokio::task::spawn_blocking(move || {
        let mut stream = TcpStream::connect(at).unwrap();
        let asked = format!("GET / HTTP/1.1\r\nhost: {at}\r\n\r\n");
        stream.write_all(asked.as_bytes()).unwrap();
        let mut heard = Vec::new();
        let _ = stream.read_to_end(&mut heard);
        heard
    });
    let heard = heard.await.unwrap();
    assert!(
        !String::from_utf8_lossy(&heard).contains("HTTP/1.1"),
        "{heard:?}"
    );
}

/// Whether a client that trusts this authority believes a server that shows this address.
async fn believed(authority: &Authority, shown: &str, asked: &str) -> Result<(), String> {
    let shown = authority.shown_at(shown.parse().unwrap()).unwrap();
    let listener = TcpListener::bind("127.0.0.1:0").await.unwrap();
    let at = listener.local_addr().unwrap();
    tokio::spawn(async move {
        let (stream, _) = listener.accept().await.unwrap();
        let _ = TlsAcceptor::from(Arc::clone(&shown.config))
            .accept(stream)
            .await;
    });
    let asked: IpAddr = asked.parse().unwrap();
    let trusted = trusting(authority.certificate());
    let met = tokio::task::spawn_blocking(move || connected(trusted, at, asked).map(|_| ()));
    met.await.unwrap().map_err(|error| error.to_string())
}

/// The shop's certificate stands behind its own server at an address at home, and whoever had its
/// key could still be no address of the internet with it.
#[tokio::test]
async fn the_certificate_is_good_for_addresses_at_home_alone() {
    let folder = tempfile::tempdir().unwrap();
    let authority = Authority::of(&Place::of(folder.path()).unwrap()).unwrap();
    for home in ["192.168.1.20", "10.42.0.1", "172.20.0.3", "127.0.0.1"] {
        assert_eq!(believed(&authority, home, home).await, Ok(()), "{home}");
    }
    for out in ["9.9.9.9", "192.169.0.1", "2001:db8::7"] {
        let no = believed(&authority, out, out).await.unwrap_err();
        assert!(
            no.contains("NameConstraint") || no.contains("constraint"),
            "{out}: {no}"
        );
    }
    let no = believed(&authority, "192.168.1.20", "192.168.1.21").await;
    assert!(no.is_err(), "another address than it is asked at");
    let other = tempfile::tempdir().unwrap();
    let other = Authority::of(&Place::of(other.path()).unwrap()).unwrap();
    let shown = other.shown_at("127.0.0.1".parse().unwrap()).unwrap();
    assert!(!shown.is_old(std::time::SystemTime::now()));
    assert_ne!(other.fingerprint(), authority.fingerprint());
}
