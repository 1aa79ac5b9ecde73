//! What the shop's own file says, as a sheet: its heap, its furnace, its units and words.

use std::path::PathBuf;
use std::sync::Arc;

use axum::Json;
use axum::extract::State;
use job::folder::{SHOP_FILE, shop_above};
use job::rewritten::{rewrite_shop, shop_text};
use job::typed_key::{SHOP_KEYS, shop_key};

use crate::answers::change::{Change, no_change};
use crate::answers::sheets::SheetAnswer;
use crate::answers::typed_lines::typed_blocks;
use crate::answers::worked;
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// The sheet of the shop.
#[utoipa::path(get, path = "/api/v1/shop", responses((status = 200, body = SheetAnswer)))]
pub async fn shop(State(shop): State<Arc<ShopFolder>>) -> Result<Json<SheetAnswer>, WebError> {
    worked(shop, |shop| answer(shop).map(Json)).await
}

/// Changes one thing typed of the shop, and gives the sheet that follows.
#[utoipa::path(
    put,
    path = "/api/v1/shop/typed",
    request_body = Change,
    responses((status = 200, body = SheetAnswer), (status = 409, body = crate::errors::No),
              (status = 422, body = crate::errors::No))
)]
pub async fn change_shop(
    State(shop): State<Arc<ShopFolder>>,
    Json(change): Json<Change>,
) -> Result<Json<SheetAnswer>, WebError> {
    worked(shop, move |shop| {
        let key = shop_key(&change.key)
            .ok_or_else(|| WebError::NoSuch(format!("{} is not changed here", change.key)))?;
        {
            let _writing = shop.writing();
            let file = own_file(shop)?;
            rewrite_shop(&file, key, change.was.as_ref(), change.to.as_ref()).map_err(no_change)?;
        }
        answer(shop).map(Json)
    })
    .await
}

/// The file that is changed: that of the folder, whether it is there yet or not.
fn own_file(shop: &ShopFolder) -> Result<PathBuf, WebError> {
    let own = shop.root().join(SHOP_FILE);
    match shop_above(shop.root())?.1 {
        Some(file) if file != own => Err(WebError::Refused {
            message: format!(
                "the shop's file lies above this folder, at {}",
                file.display()
            ),
            hint: Some("serve that folder, or change it there".to_owned()),
        }),
        _ => Ok(own),
    }
}

fn answer(shop: &ShopFolder) -> Result<SheetAnswer, WebError> {
    let (own, file) = shop_above(shop.root())?;
    let text = shop_text(&file.unwrap_or_else(|| shop.root().join(SHOP_FILE)))?;
    let blocks = typed_blocks(&text, &SHOP_KEYS, &own)?;
    Ok(SheetAnswer {
        job: String::new(),
        name: own.words.word("page-shop"),
        language: own.words.code().to_owned(),
        code: None,
        red_lines: Vec::new(),
        stops: Vec::new(),
        head: Vec::new(),
        blocks,
        remarks: Vec::new(),
        limits: String::new(),
        unsettled: None,
    })
}
