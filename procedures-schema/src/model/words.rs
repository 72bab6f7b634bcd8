//! A closed list of words that keeps words it does not know.
//!
//! A file from a newer version may say `"handle": "some newer handle"`. It is read, kept and written back
//! as `Other`; the simulator cannot judge it and says so.

/// Makes an enum whose variants are words in files, with a last variant that keeps unknown words.
macro_rules! words {
    ($(#[doc = $meta:literal])+ $name:ident { $($(#[doc = $doc:literal])+ $variant:ident = $word:literal,)+ }) => {
        $(#[doc = $meta])+
        #[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name {
            $($(#[doc = $doc])+ $variant,)+
            /// A word of a newer version: kept, never judged.
            Other(Box<str>),
        }

        impl $name {
            /// Every word of the list, in its order.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)+];

            /// The variant of this word; a word outside the list gives `Other`.
            pub fn from_word(word: &str) -> Self {
                match word { $($word => Self::$variant,)+ other => Self::Other(other.into()) }
            }

            /// The word as files and screens show it.
            pub fn word(&self) -> &str {
                match self { $(Self::$variant => $word,)+ Self::Other(word) => word }
            }

            /// Whether this version knows the word.
            pub fn is_known(&self) -> bool {
                !matches!(self, Self::Other(_))
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str(self.word())
            }
        }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.word())
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                Ok(Self::from_word(&String::deserialize(deserializer)?))
            }
        }

        #[cfg(feature = "cli")]
        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }

            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                schemars::json_schema!({
                    "description": concat!($($meta),+).trim(),
                    "anyOf": [
                        $({ "const": $word, "description": concat!($($doc),+).trim() },)+
                        { "type": "string", "description": "A word of a newer version: kept, never judged." },
                    ],
                })
            }
        }
    };
}

pub(crate) use words;
