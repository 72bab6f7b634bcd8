//! Files of older versions, as documents of the present one.
//!
//! Each step goes from one version to the next, so that a very old file goes through all of them.
//! `tests/suite/format/old-versions` keeps a sample of each.

use crate::model::{Country, FORMAT_VERSION, Procedure};

/// Brings a document as it was read to the present version.
pub(super) fn migrate(procedure: &mut Procedure) {
    if procedure.putback == 0 {
        from_0(procedure);
    }
    procedure.putback = FORMAT_VERSION;
}

/// Version 0 had the country as free text; version 1 has a list.
fn from_0(procedure: &mut Procedure) {
    let typed = procedure.country.as_ref().map(|country| country.word().trim().to_uppercase());
    procedure.country = match typed.as_deref() {
        None | Some("") => None,
        Some("UK" | "UNITED KINGDOM" | "GREAT BRITAIN") => Some(Country::UnitedKingdom),
        Some("OTHER") => Some(Country::Elsewhere),
        Some(word) => Some(Country::from_word(word)).filter(Country::is_known).or(procedure.country.take()),
    };
}
