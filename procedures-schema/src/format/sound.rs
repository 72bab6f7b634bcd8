//! Whether a text is sound JSON, wherever it stands and whether we know the field or not.
//!
//! The reader of typed fields keeps unknown ones as they are, and would take the last of two equal keys
//! there. So the whole text is walked first: equal keys, texts beyond the limit, nesting beyond the limit.

use super::Category;
use super::limits::{MOST_CHARACTERS, grouped};
use serde::Deserializer;
use serde::de::{DeserializeSeed, Error, MapAccess, SeqAccess, Visitor};
use std::borrow::Cow;
use std::cell::Cell;
use std::collections::BTreeSet;
use std::fmt::{Formatter, Result as Written};

/// The key by which the JSON library hands over a number with its digits. As a key of a file it would be
/// taken for one, so it is refused there.
const NUMBER: &str = "$serde_json::private::Number";

/// Walks one value.
#[derive(Clone, Copy)]
pub(super) struct Sound<'a> {
    /// What sort of fault stopped the walk, if the JSON itself was not at fault.
    pub(super) fault: &'a Cell<Option<Category>>,
}

impl Sound<'_> {
    fn refuse<E: Error>(self, category: Category, message: String) -> E {
        self.fault.set(Some(category));
        E::custom(message)
    }

    fn text<E: Error>(self, text: &str) -> Result<(), E> {
        // Bytes are counted first, because they are known and no text has more characters than bytes.
        let n_characters = if text.len() > MOST_CHARACTERS { text.chars().count() } else { 0 };
        if n_characters <= MOST_CHARACTERS {
            return Ok(());
        }
        let (given, most) = (grouped(n_characters), grouped(MOST_CHARACTERS));
        Err(self.refuse(Category::Limit, format!("This text has {given} characters; {most} can be opened")))
    }
}

impl<'de> DeserializeSeed<'de> for Sound<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<(), D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Sound<'_> {
    type Value = ();

    fn expecting(&self, f: &mut Formatter<'_>) -> Written {
        f.write_str("JSON")
    }

    fn visit_unit<E: Error>(self) -> Result<(), E> {
        Ok(())
    }

    fn visit_bool<E: Error>(self, _: bool) -> Result<(), E> {
        Ok(())
    }

    // Whole numbers come as such if they fit; all others come as digits under the reserved key.
    fn visit_u64<E: Error>(self, _: u64) -> Result<(), E> {
        Ok(())
    }

    fn visit_i64<E: Error>(self, _: i64) -> Result<(), E> {
        Ok(())
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<(), E> {
        self.text(text)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<(), A::Error> {
        while items.next_element_seed(self)?.is_some() {}
        Ok(())
    }

    fn visit_map<A: MapAccess<'de>>(self, mut fields: A) -> Result<(), A::Error> {
        let mut keys = BTreeSet::new();
        while let Some(key) = fields.next_key_seed(Key)? {
            self.text(&key)?;
            if key == NUMBER {
                fields.next_value_seed(Digits(self))?;
            } else if keys.contains(&key) {
                return Err(self.refuse(Category::Content, format!("duplicate field `{key}`")));
            } else {
                keys.insert(key);
                fields.next_value_seed(self)?;
            }
        }
        Ok(())
    }
}

/// Reads a key, without a copy where the text has it whole.
struct Key;

impl<'de> DeserializeSeed<'de> for Key {
    type Value = Cow<'de, str>;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Self::Value, D::Error> {
        deserializer.deserialize_str(self)
    }
}

impl<'de> Visitor<'de> for Key {
    type Value = Cow<'de, str>;

    fn expecting(&self, f: &mut Formatter<'_>) -> Written {
        f.write_str("a key")
    }

    fn visit_borrowed_str<E: Error>(self, key: &'de str) -> Result<Self::Value, E> {
        Ok(Cow::Borrowed(key))
    }

    fn visit_str<E: Error>(self, key: &str) -> Result<Self::Value, E> {
        Ok(Cow::Owned(key.to_owned()))
    }
}

/// The digits of a number. The library hands them over as an owned text, and no text of a file so.
struct Digits<'a>(Sound<'a>);

impl<'de> DeserializeSeed<'de> for Digits<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<(), D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl Digits<'_> {
    fn reserved<E: Error>(self) -> E {
        self.0.refuse(Category::Content, format!("the key `{NUMBER}` cannot be kept"))
    }
}

impl<'de> Visitor<'de> for Digits<'_> {
    type Value = ();

    fn expecting(&self, f: &mut Formatter<'_>) -> Written {
        f.write_str("a number")
    }

    fn visit_string<E: Error>(self, _: String) -> Result<(), E> {
        Ok(())
    }

    fn visit_str<E: Error>(self, _: &str) -> Result<(), E> {
        Err(self.reserved())
    }

    fn visit_unit<E: Error>(self) -> Result<(), E> {
        Err(self.reserved())
    }

    fn visit_bool<E: Error>(self, _: bool) -> Result<(), E> {
        Err(self.reserved())
    }

    fn visit_u64<E: Error>(self, _: u64) -> Result<(), E> {
        Err(self.reserved())
    }

    fn visit_i64<E: Error>(self, _: i64) -> Result<(), E> {
        Err(self.reserved())
    }

    fn visit_seq<A: SeqAccess<'de>>(self, _: A) -> Result<(), A::Error> {
        Err(self.reserved())
    }

    fn visit_map<A: MapAccess<'de>>(self, _: A) -> Result<(), A::Error> {
        Err(self.reserved())
    }
}
