//! What a list of procedures says of each, without reading all of it.

use crate::model::Id;
use serde::Deserialize;
use serde::de::{Deserializer, IgnoredAny, SeqAccess, Visitor};

/// Identity, title and length of a procedure, and how it begins.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Head {
    /// Identity.
    pub id: Id,
    /// Title.
    pub title: String,
    /// How many steps it has.
    pub n_steps: usize,
    /// The words of its first step; empty, if it has none.
    pub begins: String,
}

/// The head of a procedure's text. What else stands there is looked at only so far as JSON asks for, so a
/// procedure that [`read`](super::read) would refuse may have a head.
///
/// # Errors
/// If the text is no JSON, or identity, title or steps are missing or of a wrong kind, in the words of the JSON
/// library.
pub fn read_head(text: &str) -> Result<Head, String> {
    #[derive(Deserialize)]
    struct Parts {
        id: Id,
        #[serde(default)]
        title: String,
        #[serde(default)]
        steps: Steps,
    }
    let Parts { id, title, steps } = serde_json::from_str(text).map_err(|error| error.to_string())?;
    Ok(Head { id, title, n_steps: steps.n, begins: steps.begins })
}

/// Steps, of which only the first is looked into.
#[derive(Default)]
struct Steps {
    n: usize,
    begins: String,
}

impl<'de> Deserialize<'de> for Steps {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_seq(Self::default())
    }
}

impl<'de> Visitor<'de> for Steps {
    type Value = Self;

    fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("a sequence")
    }

    fn visit_seq<A: SeqAccess<'de>>(mut self, mut steps: A) -> Result<Self, A::Error> {
        if let Some(first) = steps.next_element::<serde_json::Value>()? {
            let words = first.get("words").and_then(serde_json::Value::as_str);
            self = Self { n: 1, begins: words.unwrap_or_default().to_owned() };
        }
        while steps.next_element::<IgnoredAny>()?.is_some() {
            self.n += 1;
        }
        Ok(self)
    }
}

#[cfg(test)]
mod tests {
    use super::{Head, read_head};
    use crate::format::write;
    use crate::model::{Id, Procedure, Stage, Step};
    use std::sync::Arc;

    #[test]
    fn a_head_says_what_the_whole_says() {
        let mut whole = Procedure::new(Id::new("p1"), "Change the \"fan\"");
        whole.steps =
            ["s1", "s2", "s3"].map(|id| Arc::new(Step::new(Id::new(id), Stage::Strip, "Undo it."))).to_vec();
        let head = Head {
            id: whole.id.clone(),
            title: whole.title.clone(),
            n_steps: 3,
            begins: "Undo it.".to_owned(),
        };
        assert_eq!(read_head(&write(&whole)), Ok(head));
        let empty = Procedure::new(Id::new("p2"), "");
        assert_eq!(read_head(&write(&empty)).map(|head| head.n_steps), Ok(0));
    }

    #[test]
    fn what_has_no_identity_has_no_head() {
        assert!(read_head("{\"title\": \"A\"}").is_err_and(|error| error.contains("missing field `id`")));
        assert!(read_head("{\"id\": \"a\"").is_err_and(|error| error.contains("EOF")));
        assert!(read_head("{\"id\": \"a\", \"steps\": 7}").is_err_and(|error| error.contains("a sequence")));
    }
}
