//! English: verb phrases and the verbs that they may mean, in the order of their text.
//!
//! How phrases are written and matched is in `phrase`. Forms of a word are listed; for a word that is
//! missing add its forms, not a rule.

use crate::model::Verb;

mod a_to_l;
mod m_to_z;

/// Every phrase.
pub(super) static PHRASES: [&[(&str, &[Verb])]; 2] = [a_to_l::PHRASES, m_to_z::PHRASES];
