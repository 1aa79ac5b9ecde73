//! The sand of the shop as it was tested, and the book of its heap: what is typed, what follows.

use std::path::Path as FilePath;
use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, State};
use bench::book::file::{HEAP_FILE, HeapFile, STARTER as STARTER_HEAP};
use bench::book::state::state;
use bench::tested::card::card;
use bench::tested::sand_file::{SAND_FILE, STARTER as STARTER_SAND, SandFile};
use bench::tested::sizes;
use bench::told::Told;
use bench::trouble::{BenchError, Refused};
use job::bench_key::{HEAP_KEYS, SAND_KEYS};
use job::changed::{changed, typed};
use job::file_fault::read;
use job::folder::{FolderError, read_text, shop_above, write_whole};
use job::shop::Shop;
use job::typed_key::TypedKey;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::answers::bench::{ToldAnswer, told_answer};
use crate::answers::change::Change;
use crate::answers::experiments::PictureAnswer;
use crate::answers::sheets::BlockAnswer;
use crate::answers::typed_lines::typed_blocks;
use crate::answers::worked;
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// A sand or a heap: what is typed of it, and what follows.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct BookAnswer {
    /// By which it is changed: `sand` or `heap`.
    pub book: String,
    /// What is typed, test by test.
    pub blocks: Vec<BlockAnswer>,
    /// What follows; none before anything is known.
    pub told: Option<ToldAnswer>,
    /// Pictures of it.
    pub pictures: Vec<PictureAnswer>,
    /// Why nothing follows, where that is not for want of tests.
    pub trouble: Option<String>,
}

/// Changes that belong together.
#[derive(Clone, Debug, Deserialize, ToSchema)]
pub struct Changes {
    /// The changes; all are made, or none.
    pub changes: Vec<Change>,
}

/// What follows from a book, with its pictures.
type Follows = Result<Option<(Told, Vec<PictureAnswer>)>, WebError>;

/// A book of the bench.
struct Book {
    name: &'static str,
    file: &'static str,
    starter: &'static str,
    keys: &'static [TypedKey],
    /// What follows from its text; nothing where nothing is known yet.
    follows: fn(&str, &str, &Shop) -> Follows,
}

const BOOKS: [Book; 2] = [
    Book {
        name: "sand",
        file: SAND_FILE,
        starter: STARTER_SAND,
        keys: &SAND_KEYS,
        follows: of_sand,
    },
    Book {
        name: "heap",
        file: HEAP_FILE,
        starter: STARTER_HEAP,
        keys: &HEAP_KEYS,
        follows: of_heap,
    },
];

/// The sand as it was tested, and the book of the heap.
#[utoipa::path(get, path = "/api/v1/sand", responses((status = 200, body = Vec<BookAnswer>)))]
pub async fn sand(State(shop): State<Arc<ShopFolder>>) -> Result<Json<Vec<BookAnswer>>, WebError> {
    worked(shop, |shop| {
        let answers = BOOKS.iter().map(|book| answer(shop, book));
        Ok(Json(answers.collect::<Result<_, _>>()?))
    })
    .await
}

/// Changes what belongs together in the file of the sand or of the heap, which is begun where there
/// is none. A change after which nothing would follow any more is refused.
#[utoipa::path(
    put,
    path = "/api/v1/sand/{book}",
    params(("book" = String, Path)),
    request_body = Changes,
    responses((status = 200, body = BookAnswer), (status = 409, body = crate::errors::No),
              (status = 422, body = crate::errors::No))
)]
pub async fn change_sand(
    State(shop): State<Arc<ShopFolder>>,
    Path(name): Path<String>,
    Json(wanted): Json<Changes>,
) -> Result<Json<BookAnswer>, WebError> {
    worked(shop, move |shop| {
        let book = BOOKS.iter().find(|book| book.name == name);
        let book = book.ok_or_else(|| WebError::NoSuch(format!("there is no book \"{name}\"")))?;
        {
            let _writing = shop.writing();
            put(shop, book, &wanted.changes)?;
        }
        answer(shop, book).map(Json)
    })
    .await
}

fn put(shop: &ShopFolder, book: &Book, changes: &[Change]) -> Result<(), WebError> {
    let (own, _) = shop_above(shop.root())?;
    let file = shop.root().join(book.file);
    let mut text = text_of(&file, book)?;
    for change in changes {
        let key = book.keys.iter().find(|key| key.path == change.key);
        let key =
            key.ok_or_else(|| WebError::NoSuch(format!("{} is not changed here", change.key)))?;
        let now = typed(&text, key)?;
        if now == change.to {
            continue;
        }
        if now != change.was {
            return Err(WebError::ChangedMeanwhile { now });
        }
        text = changed(&text, key, change.to.as_ref())?;
    }
    (book.follows)(book.file, &text, &own)?;
    Ok(write_whole(&file, text.as_bytes())?)
}

fn text_of(file: &FilePath, book: &Book) -> Result<String, FolderError> {
    match read_text(file, "") {
        Err(FolderError::NotThere { .. }) => Ok(book.starter.to_owned()),
        read => read,
    }
}

fn answer(shop: &ShopFolder, book: &Book) -> Result<BookAnswer, WebError> {
    let (own, _) = shop_above(shop.root())?;
    let file = shop.root().join(book.file);
    let text = text_of(&file, book)?;
    let blocks = typed_blocks(&text, book.keys, &own)?;
    // A starter is no sand and no heap: nothing follows from what nobody has typed.
    let follows = match file.is_file() {
        true => (book.follows)(book.file, &text, &own),
        false => Ok(None),
    };
    let (follows, trouble) = match follows {
        Ok(follows) => (follows, None),
        Err(error) => (None, Some(error.to_string())),
    };
    let (told, pictures) = follows.unzip();
    Ok(BookAnswer {
        book: book.name.to_owned(),
        blocks,
        told: told.map(|told| told_answer(&told, &own)),
        pictures: pictures.unwrap_or_default(),
        trouble,
    })
}

fn of_sand(name: &str, text: &str, shop: &Shop) -> Follows {
    let file: SandFile = read(name, text)?;
    let told = match card(&file) {
        Ok(told) => told,
        Err(BenchError::Refused(why)) if *why == Refused::NothingKnown => return Ok(None),
        Err(error) => return Err(refused(&error)),
    };
    let spread = file.sieving.as_ref().map(sizes::of_record).transpose();
    let spread = spread.map_err(|error| refused(&error))?;
    let pictures = spread.iter().map(|spread| PictureAnswer {
        title: file.name.clone(),
        svg: sizes::svg(&file.name, spread, shop.words),
    });
    Ok(Some((told, pictures.collect())))
}

fn of_heap(name: &str, text: &str, _: &Shop) -> Follows {
    let file: HeapFile = read(name, text)?;
    let told = state(&file).map_err(|error| refused(&error))?;
    Ok(Some((told, Vec::new())))
}

fn refused(error: &BenchError) -> WebError {
    WebError::Refused {
        message: error.to_string(),
        hint: None,
    }
}
