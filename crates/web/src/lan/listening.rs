//! Listening to the local network: who is let as far as a word at all, and under which certificate.

use std::collections::BTreeMap;
use std::net::{IpAddr, SocketAddr};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, SystemTime};

use axum::Router;
use axum::middleware::from_fn_with_state;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::Semaphore;
use tokio::time::{sleep, timeout};
use tokio_rustls::TlsAcceptor;

use crate::guard::{Names, guarded};
use crate::lan::LanError;
use crate::lan::address::is_local;
use crate::lan::authority::{Authority, Shown};

/// Most connections at once: a browser keeps six to a server, a shop has a few phones. More, and
/// somebody in the network could fill the memory of a small laptop.
const MOST: usize = 64;

/// How long a greeting may take, and the head of a question; an idle connection is closed after
/// it. Shorter, and a phone at the end of the yard is cut off; longer, and idle strangers hold the
/// door.
const PATIENCE: Duration = Duration::from_secs(20);

/// What the door shows itself with.
#[derive(Debug)]
pub struct Signs {
    authority: Authority,
    shown: Mutex<BTreeMap<IpAddr, Shown>>,
}

impl Signs {
    /// Signs of a shop.
    pub fn of(authority: Authority) -> Signs {
        Signs {
            authority,
            shown: Mutex::default(),
        }
    }

    /// That for an address; made the first time, and anew after a month. An address that the
    /// machine was given while it ran has one as soon as it is asked there.
    ///
    /// # Errors
    ///
    /// What the library of certificates says.
    pub fn at(&self, address: IpAddr) -> Result<Shown, LanError> {
        let mut shown = self.shown.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(known) = shown.get(&address)
            && !known.is_old(SystemTime::now())
        {
            return Ok(known.clone());
        }
        let fresh = self.authority.shown_at(address)?;
        shown.insert(address, fresh.clone());
        Ok(fresh)
    }
}

/// Listens as long as the program runs. Whoever comes from outside the local network, or to an
/// address outside of it, is not answered at all.
pub async fn listen(listener: TcpListener, signs: Arc<Signs>, routes: Router) {
    let room = Arc::new(Semaphore::new(MOST));
    loop {
        let Ok((stream, from)) = listener.accept().await else {
            // Too many files open, or a connection that broke while it was taken: it passes.
            sleep(Duration::from_millis(100)).await;
            continue;
        };
        let Some(to) = within(&stream, from) else {
            continue;
        };
        let Ok(place) = Arc::clone(&room).try_acquire_owned() else {
            continue;
        };
        let Ok(shown) = signs.at(to.ip()) else {
            continue;
        };
        let routes = routes.clone();
        tokio::spawn(async move {
            let _place = place;
            answer(stream, to, &shown, routes).await;
        });
    }
}

/// The address that a connection goes to, where both its ends lie in a local network.
fn within(stream: &TcpStream, from: SocketAddr) -> Option<SocketAddr> {
    let to = stream.local_addr().ok()?;
    let to = SocketAddr::new(to.ip().to_canonical(), to.port());
    (is_local(from.ip()) && is_local(to.ip())).then_some(to)
}

async fn answer(stream: TcpStream, to: SocketAddr, shown: &Shown, routes: Router) {
    let greeted = TlsAcceptor::from(Arc::clone(&shown.config)).accept(stream);
    let Ok(Ok(stream)) = timeout(PATIENCE, greeted).await else {
        return;
    };
    let names = Names::of_the_door(to);
    let routes = routes.layer(from_fn_with_state(names, guarded));
    let served = http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(PATIENCE)
        .serve_connection(TokioIo::new(stream), TowerToHyperService::new(routes));
    // A connection that breaks off is the phone's affair: it asks again.
    let _ = served.await;
}
