//! Who may ask: this machine, or a phone of the shop, under a name of the server's own, from a page
//! of its own.
//!
//! Any page in any tab may send a browser to a port of this machine. What keeps it out: the name
//! under which the machine is asked (a strange name that points here is refused), the page from
//! which a change comes, and what the browser says of it.

use std::net::{IpAddr, SocketAddr};

use axum::extract::{Request, State};
use axum::http::header::{
    CONTENT_SECURITY_POLICY, HOST, HeaderMap, HeaderName, ORIGIN, REFERRER_POLICY,
    X_CONTENT_TYPE_OPTIONS,
};
use axum::http::{HeaderValue, Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

/// What a page of ours may load, and who may frame it: nothing but itself, nobody.
const POLICY: &str = "default-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline'; \
                      img-src 'self' data: blob:; worker-src 'self' blob:; object-src 'none'; \
                      form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

/// The names under which the server may be asked.
#[derive(Clone, Debug)]
pub struct Names {
    scheme: &'static str,
    hosts: Vec<String>,
}

impl Names {
    /// Those of this machine, on a port.
    pub fn of_this_machine(port: u16) -> Names {
        let names = ["127.0.0.1", "localhost", "[::1]"];
        Names {
            scheme: "http",
            hosts: names.map(|name| format!("{name}:{port}")).to_vec(),
        }
    }

    /// The one under which a phone came in: the very address that its connection goes to. A name
    /// that was made to point there is none.
    pub fn of_the_door(address: SocketAddr) -> Names {
        let mut hosts = vec![address.to_string()];
        if address.port() == 443 {
            hosts.push(match address.ip() {
                IpAddr::V4(ip) => ip.to_string(),
                IpAddr::V6(ip) => format!("[{ip}]"),
            });
        }
        Names {
            scheme: "https",
            hosts,
        }
    }

    fn holds(&self, host: &str) -> bool {
        self.hosts.iter().any(|name| name == host)
    }
}

/// Lets through what comes from a page of ours, and says to the browser what our pages may do.
pub async fn guarded(State(names): State<Names>, request: Request, next: Next) -> Response {
    if let Some(no) = refused(&names, request.method(), request.headers()) {
        return (StatusCode::FORBIDDEN, no).into_response();
    }
    let mut response = next.run(request).await;
    let said = [
        (CONTENT_SECURITY_POLICY, POLICY),
        (X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (REFERRER_POLICY, "no-referrer"),
        (
            HeaderName::from_static("cross-origin-opener-policy"),
            "same-origin",
        ),
        (
            HeaderName::from_static("cross-origin-resource-policy"),
            "same-origin",
        ),
    ];
    for (name, value) in said {
        let value = HeaderValue::from_static(value);
        match name {
            // A form says from which page it comes only where its own page lets it.
            REFERRER_POLICY => response.headers_mut().entry(name).or_insert(value),
            _ => {
                response.headers_mut().insert(name, value);
                continue;
            }
        };
    }
    response
}

/// Why a request is refused; nothing where it may go on.
fn refused(names: &Names, method: &Method, headers: &HeaderMap) -> Option<&'static str> {
    let text = |name: &HeaderName| headers.get(name).and_then(|value| value.to_str().ok());
    let Some(host) = text(&HOST).filter(|host| names.holds(host)) else {
        return Some("This machine is asked under a name that is not its own.");
    };
    if text(&HeaderName::from_static("sec-fetch-site")).is_some_and(|site| site == "cross-site") {
        let is_visit = *method == Method::GET
            && text(&HeaderName::from_static("sec-fetch-mode")) == Some("navigate");
        if !is_visit {
            return Some("Another site's page may not ask here.");
        }
    }
    let changes = !matches!(*method, Method::GET | Method::HEAD);
    let own = format!("{}://{host}", names.scheme);
    match headers.get(ORIGIN) {
        Some(origin) if origin.as_bytes() != own.as_bytes() => {
            Some("Another site's page may not ask here.")
        }
        // A change without a word on where it comes from is no browser's; those always say it.
        _ if changes && headers.contains_key(HeaderName::from_static("sec-fetch-mode")) => {
            match headers.contains_key(ORIGIN) {
                true => None,
                false => Some("A change has to say from which page it comes."),
            }
        }
        _ => None,
    }
}
