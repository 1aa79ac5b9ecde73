//! What each address sends.

pub mod bench;
pub mod bench_card;
pub mod cards;
pub mod change;
pub mod charge;
pub mod described_jobs;
pub mod diagnosis;
pub mod drawing;
pub mod entries;
pub mod experiments;
pub mod feeder;
pub mod freezing;
pub mod glossary;
pub mod handles;
pub mod jobs;
pub mod lesson;
pub mod log;
pub mod log_entry;
pub mod log_sheet;
pub mod maps;
pub mod mixes;
mod packed;
pub mod paper;
mod phone_words;
pub mod pour_steps;
pub mod remarks;
pub mod sand;
pub mod sheets;
pub mod shop;
pub mod solids;
pub mod trial_entry;
pub mod typed_lines;
pub mod why;
pub mod words;

use std::path::PathBuf;
use std::sync::Arc;

use crate::errors::WebError;
use crate::folder::ShopFolder;

/// The folder of a job.
fn folder_of(shop: &ShopFolder, job: &str) -> Result<PathBuf, WebError> {
    shop.job(job).ok_or_else(|| WebError::NoJob(job.to_owned()))
}

/// Works something out beside the requests that are waiting.
async fn worked<T: Send + 'static>(
    shop: Arc<ShopFolder>,
    work: impl FnOnce(&ShopFolder) -> Result<T, WebError> + Send + 'static,
) -> Result<T, WebError> {
    let done = tokio::task::spawn_blocking(move || work(&shop)).await;
    done.unwrap_or_else(|error| Err(WebError::Broken(error.to_string())))
}
