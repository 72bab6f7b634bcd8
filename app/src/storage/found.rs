//! What was found out on jobs of this device, as texts under keys beside the jobs themselves.

use super::database::{self, Store, StoreError};

/// The key under which the answers of a job are kept.
pub fn key(procedure: &str, job: &str) -> String {
    format!("{}{job}", beginning(procedure))
}

/// The answers of every job on a procedure, a text each.
///
/// # Errors
/// If the database cannot be read.
pub async fn all(procedure: &str) -> Result<Vec<String>, StoreError> {
    let mut texts = Vec::new();
    for key in database::keys(Store::Jobs, &beginning(procedure)).await? {
        // One that has gone meanwhile is not missed.
        texts.extend(database::kept(Store::Jobs, &key).await?);
    }
    Ok(texts)
}

/// Ids are any text; a line feed in one only makes keys that nobody asks for.
fn beginning(procedure: &str) -> String {
    format!("found {procedure}\n")
}
