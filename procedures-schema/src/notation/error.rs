//! Why a line of notation cannot be read.

/// What is wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Problem {
    /// An action without a verb, for example between two `·`.
    NoVerb,
    /// The first word of an action is no verb.
    UnknownVerb,
    /// The verb takes no detail with this key.
    UnknownKey,
    /// The same detail a second time.
    Twice,
    /// The value is not of the form that the detail needs.
    Value,
    /// A word that can only be an id, but has characters that a bare id has not.
    NotAnId,
    /// More things than the verb acts on.
    TooManyThings,
    /// Fewer things than the verb acts on.
    TooFewThings,
    /// The first word after the verb is missing.
    NoFirstWord,
    /// A `?`, which stands for something that is missing.
    Missing,
    /// A guard of another form than `[question=answer]`, or not before the verb.
    Guard,
    /// A guard where only actions are read.
    GuardNotHere,
    /// A quotation mark without its partner.
    OpenQuotation,
    /// A quotation mark inside a bare word, or a character right after the closing one.
    StrayQuotation,
    /// A backslash before a character that needs none.
    Escape,
}

/// Why a line of notation cannot be read: where, what was found, what is allowed there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotationError {
    /// What is wrong.
    pub problem: Problem,
    /// Where it begins: the column in code points, counted from 1.
    pub column: usize,
    /// What stands there; empty at the end of the line.
    pub found: String,
    /// The written verb of the action, if it was read by then.
    pub verb: Option<&'static str>,
    /// What is allowed there.
    pub allowed: Vec<String>,
}

impl std::fmt::Display for NotationError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Self { problem, column, found, verb, allowed } = self;
        let verb = verb.unwrap_or("the verb");
        let allowed = allowed.join(", ");
        write!(f, "column {column}: ")?;
        match problem {
            Problem::NoVerb => write!(f, "an action is missing here; write one, or take away the \"·\""),
            Problem::UnknownVerb => {
                write!(f, "\"{found}\" is no verb; begin the action with one of {allowed}")
            }
            Problem::UnknownKey if allowed.is_empty() => {
                write!(f, "{verb} takes no details, but \"{found}\" stands here; take it away")
            }
            Problem::TooManyThings if allowed.is_empty() => {
                write!(f, "{verb} acts on nothing, but \"{found}\" stands here; take it away")
            }
            Problem::UnknownKey | Problem::TooManyThings => {
                write!(f, "{verb} does not take \"{found}\"; take it away or use one of {allowed}")
            }
            Problem::Twice => write!(f, "{verb} has \"{found}\" twice; keep one of them"),
            Problem::Value => write!(f, "\"{found}\" is not {allowed}; write it so"),
            Problem::NotAnId => write!(
                f,
                "\"{found}\" is no id; put blanks between ids, \" · \" between actions, and other ids in \
                 quotation marks"
            ),
            Problem::TooFewThings => {
                write!(f, "{verb} needs the id of what it acts on; write it after the verb")
            }
            Problem::NoFirstWord => write!(f, "{verb} needs one more word; write one of {allowed}"),
            Problem::Missing => {
                write!(f, "\"?\" stands for something that is missing; write what {verb} needs instead")
            }
            Problem::Guard => {
                write!(f, "\"{found}\" is no guard here; write [question=answer] before the verb")
            }
            Problem::GuardNotHere => {
                write!(f, "\"{found}\" is a guard, which belongs to a step; only actions are read here")
            }
            Problem::OpenQuotation => {
                write!(f, "the quotation mark before \"{found}\" is never closed; add one")
            }
            Problem::StrayQuotation => write!(
                f,
                "a quotation mark stands inside \"{found}\"; put the whole value in quotation marks and write \
                 \\\" for one inside it"
            ),
            Problem::Escape => {
                write!(f, "\"{found}\" means nothing in quotation marks; use one of {allowed}")
            }
        }
    }
}

impl std::error::Error for NotationError {}
