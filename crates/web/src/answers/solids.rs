//! The solids of the mould as raw numbers, straight into the memory of a graphics card.
//!
//! Four bytes with the length of the head, the head as JSON, then each piece: its points as 32-bit
//! floats in mm, x y z, then its facets as 32-bit numbers of points. All little-endian; the head
//! is filled with blanks to a whole four bytes.

use std::sync::Arc;

use axum::extract::{Path, State};
use axum::http::header::CONTENT_TYPE;
use axum::response::IntoResponse;
use job::mould_told;
use rigging::mould::Mould;
use rigging::piece::{Piece, Solid};
use serde::Serialize;
use utoipa::ToSchema;

use crate::answers::sheets::planned;
use crate::answers::{folder_of, packed, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// What the head says of a piece.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct PieceHead {
    /// By which it is known.
    pub name: String,
    /// Its name in the language of the shop.
    pub label: String,
    /// What it is.
    pub kind: PieceKind,
    /// How many points it has.
    pub points: usize,
    /// How many facets it has.
    pub facets: usize,
}

/// What a piece of the mould is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "lowercase")]
pub enum PieceKind {
    /// What is cast.
    Casting,
    /// Metal around it.
    Rigging,
    /// A core.
    Core,
    /// The upper half.
    Cope,
    /// The lower half.
    Drag,
}

/// The head.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Head {
    /// The pieces in the order in which they follow.
    pub pieces: Vec<PieceHead>,
}

/// The solids of the mould.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/solids",
    params(("job" = String, Path)),
    responses((status = 200, content_type = "application/octet-stream"))
)]
pub async fn solids(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
) -> Result<impl IntoResponse, WebError> {
    let bytes = worked(shop, move |shop| {
        let opened = shop.open(&folder_of(shop, &job)?)?;
        planned(shop, &opened)?;
        match shop.mould(&opened).as_ref() {
            Ok(mould) => Ok(of_mould(mould, opened.shop.words)),
            Err(error) => Err(error.clone().into()),
        }
    })
    .await?;
    Ok(([(CONTENT_TYPE, "application/octet-stream")], bytes))
}

fn of_mould(mould: &Mould, words: job::words::Language) -> Vec<u8> {
    let all = mould
        .castings
        .iter()
        .chain(&mould.rigging)
        .chain(&mould.cores);
    let all = all
        .chain(mould.vents.as_ref())
        .chain([&mould.cope, &mould.drag]);
    let all: Vec<&Solid> = all.collect();
    let pieces = all.iter().map(|solid| PieceHead {
        name: solid.piece.to_string(),
        label: words.say(&mould_told::piece(&solid.piece)),
        kind: kind(&solid.piece),
        points: solid.mesh.points.len(),
        facets: solid.mesh.triangles.len(),
    });
    let head = Head {
        pieces: pieces.collect(),
    };
    let mut bytes = packed::head(&head);
    for solid in all {
        packed::skin(&mut bytes, &solid.mesh);
    }
    bytes
}

fn kind(piece: &Piece) -> PieceKind {
    match piece {
        Piece::Casting(_) | Piece::Cavity => PieceKind::Casting,
        Piece::Core(_) => PieceKind::Core,
        Piece::Cope => PieceKind::Cope,
        Piece::Drag => PieceKind::Drag,
        _ => PieceKind::Rigging,
    }
}
