//! Texts of what is kept beside a document: a running job, a step that was taken out.
//!
//! They go the ways of documents, so that the page carries the code of those ways once.

use serde::Serialize;
use serde::de::DeserializeOwned;

/// Reads what [`write_part`] wrote.
///
/// # Errors
/// If the text is no JSON or does not fit, in the words of the JSON library.
pub fn read_part<T: DeserializeOwned>(text: &str) -> Result<T, String> {
    serde_json::from_str(text).map_err(|error| error.to_string())
}

/// The text of a part, on one line; empty if it holds what JSON cannot.
pub fn write_part<T: Serialize>(part: &T) -> String {
    let text = serde_json::to_value(part).and_then(|value| serde_json::to_string(&value));
    text.unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::{read_part, write_part};
    use crate::model::{Id, Stage, Step};

    #[test]
    fn a_part_comes_back_as_it_was() {
        let part = (Step::new(Id::new("s1"), Stage::Strip, "Undo the \"union\""), 7_u64);
        assert_eq!(read_part::<(Step, u64)>(&write_part(&part)), Ok(part.clone()));
        assert_eq!(write_part(&part), serde_json::to_string(&part).expect("a text"));
    }

    #[test]
    fn what_does_not_fit_is_refused() {
        assert!(read_part::<Step>("{}").is_err_and(|error| error.contains("missing field `id`")));
        assert!(read_part::<u64>("7 8").is_err_and(|error| error.contains("trailing characters")));
    }
}
