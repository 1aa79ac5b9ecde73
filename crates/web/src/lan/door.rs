//! What a phone is answered: before it is paired the page for pairing and the shop's certificate,
//! afterwards the bench card. No address of the working sheet leads in here.

use std::sync::Arc;
use std::time::{Duration, SystemTime};

use axum::extract::{DefaultBodyLimit, Form, Request, State};
use axum::http::header::{
    ACCEPT, CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE, COOKIE, HeaderMap, LOCATION,
    REFERRER_POLICY, SET_COOKIE,
};
use axum::http::{Method, StatusCode};
use axum::middleware::{Next, from_fn_with_state};
use axum::response::{Html, IntoResponse, Response};
use axum::routing::{get, post};
use axum::{Json, Router};
use job::folder::shop_above;
use job::words::Language;
use serde::Deserialize;

use crate::errors::No;
use crate::folder::ShopFolder;
use crate::lan::LanError;
use crate::lan::authority::Authority;
use crate::lan::pairing::{self, Tried};
use crate::lan::phones;
use crate::lan::place::Place;
use crate::lan::welcome::{STYLE, Trouble, page};
use crate::page;
use crate::routes::{LONGEST, for_a_phone, in_time};

/// What a phone shows is kept under this name: its opening says to the browser that it is sent over
/// TLS only, to this very server, and read by no script.
const COOKIE_NAME: &str = "__Host-oddside";

/// How long a phone stays paired, s: the 400 days at which browsers cut it off. It is taken away
/// sooner by removing the phone.
const COOKIE_S: u64 = 400 * 24 * 3600;

/// After a wrong code the answer waits, and the next try with it.
const AFTER_A_WRONG_ONE: Duration = Duration::from_secs(1);

/// Most bytes of what is sent to be paired.
const MOST_TYPED: usize = 4 * 1024;

/// Where the bench card stands.
const BENCH: &str = "/bench";

/// What stands behind the door.
#[derive(Clone, Debug)]
pub struct Door {
    place: Place,
    certificate: Arc<[u8]>,
    fingerprint: Arc<str>,
    root: Arc<std::path::Path>,
}

/// What is typed to be paired.
#[derive(Debug, Deserialize)]
struct Pairing {
    code: String,
    #[serde(default)]
    name: String,
}

impl Door {
    /// That of a shop.
    pub fn of(shop: &ShopFolder, place: Place, authority: &Authority) -> Door {
        Door {
            place,
            certificate: authority.certificate().into(),
            fingerprint: authority.fingerprint().into(),
            root: shop.root().into(),
        }
    }

    /// The language of the shop; British English where its file cannot be read just now.
    fn words(&self) -> Language {
        shop_above(&self.root).map_or(Language::Uk, |(shop, _)| shop.words)
    }

    fn welcome(&self, status: StatusCode, trouble: Option<Trouble>) -> Response {
        let html = page(self.words(), &self.fingerprint, trouble);
        let said = [
            (CACHE_CONTROL, "no-store"),
            (REFERRER_POLICY, "same-origin"),
        ];
        (status, said, Html(html)).into_response()
    }
}

/// All that a phone may ask.
pub fn routes(shop: Arc<ShopFolder>, door: Door) -> Router {
    let paired = for_a_phone(shop)
        .route("/", get(to_the_bench))
        .fallback(get(page::bench_file))
        .layer(from_fn_with_state(door.clone(), paired_only));
    let open = Router::new()
        .route("/pair", post(pair).get(to_the_bench))
        .route("/pair.css", get(style))
        .route("/oddside-shop.crt", get(certificate))
        .layer(DefaultBodyLimit::max(MOST_TYPED))
        .with_state(door);
    in_time(open.merge(paired), LONGEST)
}

/// Lets a paired phone on, and shows everybody else how to be one.
async fn paired_only(State(door): State<Door>, request: Request, next: Next) -> Response {
    let shown = shown(request.headers());
    if shown.is_some_and(|shown| phones::known(&door.place, shown).is_some()) {
        return next.run(request).await;
    }
    let wants_page = request.headers().get(ACCEPT).is_some_and(|wanted| {
        let wanted = wanted.to_str().unwrap_or_default();
        wanted.contains("text/html")
    });
    if wants_page && *request.method() == Method::GET {
        return door.welcome(StatusCode::UNAUTHORIZED, None);
    }
    let words = door.words();
    let no = No {
        message: words.word("phone-not-paired"),
        hint: Some(words.word("phone-not-paired-hint")),
        now: None,
        ways: Vec::new(),
    };
    (StatusCode::UNAUTHORIZED, Json(no)).into_response()
}

/// What a phone shows of itself.
fn shown(headers: &HeaderMap) -> Option<&str> {
    let all = headers.get_all(COOKIE).iter();
    let texts = all.filter_map(|value| value.to_str().ok());
    let mut pairs = texts.flat_map(|text| text.split(';'));
    pairs.find_map(|pair| {
        let (name, value) = pair.trim().split_once('=')?;
        (name == COOKIE_NAME).then_some(value)
    })
}

/// Takes a phone in by its code.
async fn pair(State(door): State<Door>, Form(typed): Form<Pairing>) -> Response {
    let now = SystemTime::now();
    let tried = match pairing::tried(&door.place, &typed.code, now) {
        Ok(tried) => tried,
        Err(error) => return broken(&error),
    };
    let trouble = match tried {
        Tried::Right => match phones::take_in(&door.place, &typed.name, now) {
            Ok(secret) => return taken_in(&secret),
            Err(error) => return broken(&error),
        },
        Tried::Wrong { left } if left > 0 => Trouble::Wrong(left),
        Tried::Wrong { .. } | Tried::NoCode => Trouble::NoCode,
    };
    tokio::time::sleep(AFTER_A_WRONG_ONE).await;
    door.welcome(StatusCode::FORBIDDEN, Some(trouble))
}

fn taken_in(secret: &str) -> Response {
    let cookie = format!(
        "{COOKIE_NAME}={secret}; Path=/; Max-Age={COOKIE_S}; Secure; HttpOnly; SameSite=Strict"
    );
    let said = [(SET_COOKIE, cookie), (LOCATION, BENCH.to_owned())];
    (StatusCode::SEE_OTHER, said).into_response()
}

fn broken(error: &LanError) -> Response {
    let no = No {
        message: error.to_string(),
        hint: None,
        now: None,
        ways: Vec::new(),
    };
    (StatusCode::INSUFFICIENT_STORAGE, Json(no)).into_response()
}

async fn to_the_bench() -> Response {
    (StatusCode::SEE_OTHER, [(LOCATION, BENCH)]).into_response()
}

/// The shop's certificate, to be installed; its key stays where it is.
async fn certificate(State(door): State<Door>) -> Response {
    let said = [
        (CONTENT_TYPE, "application/x-x509-ca-cert"),
        (
            CONTENT_DISPOSITION,
            "attachment; filename=\"oddside-shop.crt\"",
        ),
    ];
    (said, door.certificate.to_vec()).into_response()
}

async fn style() -> Response {
    ([(CONTENT_TYPE, "text/css; charset=utf-8")], STYLE).into_response()
}
