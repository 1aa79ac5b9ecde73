//! A shop with the door for phones open, and a phone: a real client of TLS that trusts the shop's
//! certificate and nothing else.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]
#![allow(dead_code, reason = "no test file asks for all of it")]

use std::io::{Read, Write};
use std::net::{IpAddr, Ipv4Addr, SocketAddr, TcpStream};
use std::sync::Arc;
use std::time::SystemTime;

use rustls::crypto::ring::default_provider;
use rustls::pki_types::{CertificateDer, ServerName};
use rustls::{ClientConfig, ClientConnection, RootCertStore, StreamOwned};
use serde_json::Value;
use tokio::net::TcpListener;
use web::folder::ShopFolder;
use web::lan::authority::Authority;
use web::lan::door::{self, Door};
use web::lan::listening::{Signs, listen};
use web::lan::pairing::offer;
use web::lan::place::Place;

use crate::shop::{JOB, example_mesh};

/// A shop and its door.
pub struct OpenShop {
    pub folder: tempfile::TempDir,
    pub place: Place,
    pub at: SocketAddr,
    pub fingerprint: String,
    certificate: Vec<u8>,
}

/// What came back.
#[derive(Debug)]
pub struct Heard {
    pub status: u16,
    pub head: String,
    pub body: Vec<u8>,
}

impl OpenShop {
    pub async fn open() -> OpenShop {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).await.unwrap();
        OpenShop::open_at(listener).await
    }

    pub async fn open_at(listener: TcpListener) -> OpenShop {
        let folder = tempfile::tempdir().unwrap();
        let job = folder.path().join("2026/block");
        std::fs::create_dir_all(&job).unwrap();
        std::fs::copy(example_mesh(), job.join("block.stl")).unwrap();
        std::fs::write(job.join("job.toml"), JOB).unwrap();
        let shop = Arc::new(ShopFolder::at(folder.path()).unwrap());
        let place = Place::of(folder.path()).unwrap();
        let authority = Authority::of(&place).unwrap();
        let (certificate, fingerprint) =
            (authority.certificate().to_vec(), authority.fingerprint());
        let door = Door::of(&shop, place.clone(), &authority);
        let at = listener.local_addr().unwrap();
        let routes = door::routes(shop, door);
        tokio::spawn(listen(listener, Arc::new(Signs::of(authority)), routes));
        OpenShop {
            folder,
            place,
            at,
            fingerprint,
            certificate,
        }
    }

    pub fn code(&self) -> String {
        offer(&self.place, SystemTime::now()).unwrap().code
    }

    /// Asks as a phone asks that trusts the shop's certificate.
    pub async fn ask(&self, request: &str, heads: &[(&str, &str)], body: &str) -> Heard {
        let host = self.at.to_string();
        let mut text = format!("{request} HTTP/1.1\r\nconnection: close\r\n");
        if !heads.iter().any(|(name, _)| *name == "host") {
            text += &format!("host: {host}\r\n");
        }
        for (name, value) in heads {
            text += &format!("{name}: {value}\r\n");
        }
        text += &format!("content-length: {}\r\n\r\n{body}", body.len());
        let (at, trusted) = (self.at, trusting(&self.certificate));
        let heard = tokio::task::spawn_blocking(move || {
            let mut stream = connected(trusted, at, at.ip()).unwrap();
            // A server that says no to a long body may end before all of it was sent.
            let _ = stream.write_all(text.as_bytes());
            let mut all = Vec::new();
            let _ = stream.read_to_end(&mut all);
            Heard::from(&all)
        });
        heard.await.unwrap()
    }

    pub async fn get(&self, way: &str, phone: &str) -> Heard {
        self.ask(&format!("GET {way}"), &[("cookie", phone)], "")
            .await
    }

    pub async fn send(&self, way: &str, phone: &str, body: &Value) -> Heard {
        let origin = format!("https://{}", self.at);
        let heads = [
            ("cookie", phone),
            ("origin", origin.as_str()),
            ("content-type", "application/json"),
        ];
        self.ask(&format!("POST {way}"), &heads, &body.to_string())
            .await
    }

    pub async fn pair(&self, code: &str, name: &str) -> Heard {
        let origin = format!("https://{}", self.at);
        let heads = [
            ("origin", origin.as_str()),
            ("content-type", "application/x-www-form-urlencoded"),
        ];
        let body = format!("code={code}&name={name}");
        self.ask("POST /pair", &heads, &body).await
    }

    /// A phone that was paired: what it shows of itself.
    pub async fn paired(&self, name: &str) -> String {
        let heard = self.pair(&self.code(), name).await;
        assert_eq!(heard.status, 303, "{}", heard.head);
        heard.cookie()
    }
}

impl Heard {
    fn from(all: &[u8]) -> Heard {
        let end = all.windows(4).position(|four| four == b"\r\n\r\n");
        let end = end.unwrap_or(all.len());
        let head = String::from_utf8_lossy(&all[..end]).to_lowercase();
        let status = head
            .split(' ')
            .nth(1)
            .and_then(|status| status.parse().ok());
        Heard {
            status: status.unwrap_or(0),
            body: all.get(end + 4..).unwrap_or_default().to_vec(),
            head: String::from_utf8_lossy(&all[..end]).into_owned(),
        }
    }

    pub fn text(&self) -> String {
        String::from_utf8_lossy(&self.body).into_owned()
    }

    /// The body, whether it came in one piece or in several.
    pub fn json(&self) -> Value {
        let text = self.text();
        let from = text.find(['{', '[']).unwrap_or(0);
        let to = text.rfind(['}', ']']).map_or(text.len(), |at| at + 1);
        serde_json::from_str(&text[from..to]).unwrap()
    }

    /// What the phone keeps to show again.
    pub fn cookie(&self) -> String {
        let line = self
            .head
            .lines()
            .find(|line| line.to_lowercase().starts_with("set-cookie:"));
        let value = line.unwrap().split_once(':').unwrap().1;
        value.split(';').next().unwrap().trim().to_owned()
    }
}

/// A client that trusts this certificate and no other.
pub fn trusting(certificate: &[u8]) -> Arc<ClientConfig> {
    let mut roots = RootCertStore::empty();
    roots
        .add(CertificateDer::from(certificate.to_vec()))
        .unwrap();
    let config = ClientConfig::builder_with_provider(Arc::new(default_provider()))
        .with_safe_default_protocol_versions()
        .unwrap()
        .with_root_certificates(roots)
        .with_no_client_auth();
    Arc::new(config)
}

/// A connection, greeted, to a server that has to be the one of this address.
pub fn connected(
    trusted: Arc<ClientConfig>,
    at: SocketAddr,
    named: IpAddr,
) -> std::io::Result<StreamOwned<ClientConnection, TcpStream>> {
    let name = ServerName::IpAddress(named.into());
    let greeting = ClientConnection::new(trusted, name).map_err(std::io::Error::other)?;
    let mut stream = StreamOwned::new(greeting, TcpStream::connect(at)?);
    stream.conn.complete_io(&mut stream.sock)?;
    Ok(stream)
}
