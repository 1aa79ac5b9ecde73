//! A shop with one job, and the routes to it, asked without a network.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]
#![allow(dead_code, reason = "no test file asks for all of it")]

use std::path::{Path, PathBuf};
use std::sync::Arc;

use axum::Router;
use axum::body::Body;
use axum::http::{Request, StatusCode};
use http_body_util::BodyExt;
use serde_json::Value;
use tower::ServiceExt;
use web::folder::ShopFolder;
use web::routes::routes;

pub const PORT: u16 = 7350;

pub const JOB: &str = "# my notes\nname = \"Block\"\n[part]\nmesh = \"block.stl\"   # as drawn\nunit = \"in\"\n\
                   [metal]\nalloy = \"A356\"\n";

/// A shop with one job, and the routes to it.
pub struct Shop {
    pub folder: tempfile::TempDir,
    pub routes: Router,
}

/// What came back.
pub struct Said {
    pub status: StatusCode,
    pub kind: String,
    pub policy: String,
    pub body: Vec<u8>,
}

impl Shop {
    pub fn new() -> Shop {
        let folder = tempfile::tempdir().unwrap();
        let job = folder.path().join("2026/block");
        std::fs::create_dir_all(&job).unwrap();
        std::fs::copy(example_mesh(), job.join("block.stl")).unwrap();
        std::fs::write(job.join("job.toml"), JOB).unwrap();
        let shop = ShopFolder::at(folder.path()).unwrap();
        Shop {
            folder,
            routes: routes(Arc::new(shop), PORT),
        }
    }

    pub fn job_file(&self) -> String {
        std::fs::read_to_string(self.folder.path().join("2026/block/job.toml")).unwrap()
    }

    pub async fn ask(&self, request: Request<Body>) -> Said {
        let answer = self.routes.clone().oneshot(request).await.unwrap();
        let head = |name: &str| {
            let value = answer.headers().get(name);
            value.map_or(String::new(), |value| value.to_str().unwrap().to_owned())
        };
        let (status, kind) = (answer.status(), head("content-type"));
        let policy = head("content-security-policy");
        let body = answer.into_body().collect().await.unwrap();
        Said {
            status,
            kind,
            policy,
            body: body.to_bytes().to_vec(),
        }
    }

    pub async fn get(&self, way: &str) -> Said {
        let request = Request::get(way).header("host", host());
        self.ask(request.body(Body::empty()).unwrap()).await
    }

    /// Sends something that changes, with a body or without.
    pub async fn send(&self, method: &str, way: &str, body: Value) -> Said {
        let request = Request::builder()
            .method(method)
            .uri(way)
            .header("host", host())
            .header("origin", format!("http://{}", host()))
            .header("content-type", "application/json");
        self.ask(request.body(Body::from(body.to_string())).unwrap())
            .await
    }

    pub async fn change(&self, change: Value) -> Said {
        self.send("PUT", "/api/v1/jobs/2026%2Fblock/typed", change)
            .await
    }
}

impl Said {
    pub fn json(&self) -> Value {
        serde_json::from_slice(&self.body).unwrap()
    }
}

pub fn host() -> String {
    format!("127.0.0.1:{PORT}")
}

pub fn example_mesh() -> PathBuf {
    let examples = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/meshes");
    examples.join("featured_block_inches.stl")
}

pub fn row<'a>(sheet: &'a Value, figure: &str) -> &'a Value {
    let blocks = sheet["blocks"].as_array().unwrap().iter();
    let mut rows = blocks.flat_map(|block| block["rows"].as_array().unwrap());
    rows.find(|row| row["figure"] == figure).unwrap()
}
