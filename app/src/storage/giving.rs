//! Giving a person a text as a file, by the means of the device: at a place that they pick, to another program,
//! or as a download.

use super::file_access;
use super::files;
use super::sharing::{self, Shared};

/// Gives it, and says whether the person took it. To be called while a press is being handled.
///
/// # Errors
/// In words, if the browser refuses.
pub async fn give(name: &str, text: &str) -> Result<bool, String> {
    if file_access::is_there() {
        let Some(place) = file_access::pick_to_save(name).await? else { return Ok(false) };
        return place.write(text).await.map(|()| true);
    }
    match sharing::share(name, text).await {
        Shared::Done => Ok(true),
        Shared::Not => Ok(false),
        Shared::Unable => files::save(name, text).map(|()| true),
    }
}
