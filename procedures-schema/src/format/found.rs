//! Files of answers found on a job: reading and writing `NAME.found.json`, as `FORMAT.md` says.
//!
//! They keep what this version does not know, as procedures do. Whether an answer fits is said where it is taken in.

use super::limits::{MOST_ANSWERS, check_bytes, within};
use super::read::{as_text, from_json, no_newer, refuse_unsound};
use super::write::laid_out;
use super::{Category, FormatError};
use crate::model::{FOUND_VERSION, FoundOnJob, fault_path};
use serde::Deserialize;
use serde::de::IgnoredAny;
use serde_json::Value;

/// What tells one kind of file from the other.
#[derive(Deserialize)]
struct Marks {
    putback: Option<IgnoredAny>,
    putback_found: Option<u32>,
}

/// Whether a file says that it holds answers found on a job, be they sound or not.
pub fn is_found(bytes: &[u8]) -> bool {
    serde_json::from_slice::<Marks>(bytes).is_ok_and(|marks| marks.putback_found.is_some())
}

/// Reads answers found on a job from the bytes of a file.
///
/// # Errors
/// As [`read`](super::read), and if it is a procedure; most answers are [`MOST_ANSWERS`].
pub fn read_found(bytes: &[u8]) -> Result<FoundOnJob, FormatError> {
    check_bytes(bytes)?;
    let text = as_text(bytes)?;
    refuse_unsound(text)?;
    match serde_json::from_str::<Marks>(text) {
        Ok(Marks { putback_found: Some(version), .. }) => no_newer(version, FOUND_VERSION)?,
        Ok(Marks { putback: Some(_), .. }) => {
            return Err(other(
                "This is a procedure and holds no answers found on a job; press Open to open it",
            ));
        }
        // Fields of a wrong kind are found, with their place, by the full reading.
        Ok(_) | Err(_) => {}
    }
    let found: FoundOnJob = serde_json::from_str(text).map_err(|error| {
        if error.to_string().starts_with("missing field `putback_found`") {
            return other(
                "This is no file of answers found on a job: its first field should be \"putback_found\", the \
                 format version. Save the answers at the end of the job, and bring that file",
            );
        }
        let path = fault_path(text, &error);
        from_json(&error, &path, Some(Category::Content), "answers found on a job")
    })?;
    within(found.answers.len(), MOST_ANSWERS, "answers")?;
    Ok(found)
}

fn other(message: &str) -> FormatError {
    FormatError::whole(Category::Content, message.to_owned())
}

/// The canonical text of answers found on a job.
pub fn write_found(found: &FoundOnJob) -> String {
    // Texts and whole numbers under keys of text always become a value.
    laid_out(&serde_json::to_value(found).unwrap_or(Value::Null))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::Procedure;

    const FILE: &str = r#"{
  "putback_found": 1,
  "procedure": "p",
  "title": "Renew the pump",
  "answers": [
    {
      "value": "size",
      "thing": "union",
      "what": "size of the unions",
      "answer": "37 mm",
      "time": "2026-11-29T11:20:00Z",
      "x-weather": 1.50
    },
    {
      "value": "colour",
      "thing": "union",
      "what": "colour of the unions",
      "answer": "black",
      "time": "2026-11-29T11:21:00Z",
      "by": "invented"
    }
  ],
  "x-van": "3"
}
"#;

    #[test]
    fn what_is_not_known_comes_back_as_it_was() {
        let found = read_found(FILE.as_bytes()).expect("answers");
        assert_eq!((found.answers.len(), found.answers[1].value.is_known()), (2, false));
        assert_eq!(write_found(&found), FILE);
        assert!(is_found(FILE.as_bytes()));
        let as_procedure = super::super::read(FILE.as_bytes()).expect_err("no procedure").to_string();
        assert!(as_procedure.starts_with("This file holds answers found on a job"), "{as_procedure}");
    }

    #[test]
    fn what_cannot_be_read_says_what_where_and_what_to_do() {
        let told = |text: &str| read_found(text.as_bytes()).expect_err(text).to_string();
        let procedure = super::super::write(&Procedure::new("p".into(), "Renew the pump"));
        assert!(!is_found(procedure.as_bytes()));
        assert!(
            told(&procedure).starts_with("This is a procedure and holds no answers"),
            "{}",
            told(&procedure)
        );
        assert!(told("{}").starts_with("This is no file of answers found on a job"), "{}", told("{}"));
        let newer = FILE.replace("\"putback_found\": 1", "\"putback_found\": 2");
        assert!(told(&newer).contains("this program knows versions up to 1"), "{}", told(&newer));
        let moment = FILE.replace("11:20:00Z", "25:20:00Z");
        let expected = "line 11, column 36, at answers[0].time: This does not fit answers found on a job:";
        assert!(told(&moment).starts_with(expected), "{}", told(&moment));
        let short = FILE.get(..200).expect("a part");
        assert!(told(short).contains("cut short"), "{}", told(short));
        let twice = FILE.replace("\"x-van\"", "\"title\"");
        assert!(told(&twice).contains("title"), "{}", told(&twice));
        for error in [told("{}"), told(&newer), told(short), told(&moment)] {
            assert!(error.ends_with("Nothing was changed."), "{error}");
        }
    }

    #[test]
    fn there_is_a_limit_of_answers() {
        let mut found = read_found(FILE.as_bytes()).expect("answers");
        let one = found.answers[0].clone();
        found.answers = vec![one; MOST_ANSWERS + 1];
        let error = read_found(write_found(&found).as_bytes()).expect_err("too many");
        assert_eq!(error.category(), Category::Limit);
        assert!(error.to_string().contains("5,001 answers; 5,000 can be opened"), "{error}");
    }
}
