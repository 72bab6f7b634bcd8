//! `putback schema`: the JSON Schema of the format.

use crate::Outcome;
use crate::source::say;
use procedures_schema::format;

pub(crate) fn schema(arguments: &mut lexopt::Parser) -> Result<Outcome, lexopt::Error> {
    if let Some(more) = arguments.next()? {
        return Err(more.unexpected());
    }
    say(&format!("{:#}", format::schema()));
    Ok(Outcome::Good)
}
