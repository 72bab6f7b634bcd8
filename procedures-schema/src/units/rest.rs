//! Fields of an object that this version does not know, kept in their order.
//!
//! A later version of the format adds keys only at the end of an object, so that an older program writes
//! them back where they stood. Numbers keep their digits: `1.0`, `1e5` and figures of any length come back
//! as they were written.

use serde::de::{MapAccess, Visitor};
use serde::ser::SerializeMap;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use serde_json::Value;

/// Unknown fields with their values.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Rest(pub Vec<(String, Value)>);

impl Rest {
    /// Whether every field was known.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

impl Serialize for Rest {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(self.0.len()))?;
        for (key, value) in &self.0 {
            map.serialize_entry(key, value)?;
        }
        map.end()
    }
}

impl<'de> Deserialize<'de> for Rest {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Fields;
        impl<'de> Visitor<'de> for Fields {
            type Value = Rest;

            fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str("an object")
            }

            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Rest, A::Error> {
                let mut fields: Vec<(String, Value)> = Vec::new();
                // Equal keys are refused before, for the whole file at once.
                while let Some(field) = map.next_entry()? {
                    fields.push(field);
                }
                Ok(Rest(fields))
            }
        }
        deserializer.deserialize_map(Fields)
    }
}

#[cfg(feature = "cli")]
impl schemars::JsonSchema for Rest {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Rest".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "object", "additionalProperties": true })
    }
}
