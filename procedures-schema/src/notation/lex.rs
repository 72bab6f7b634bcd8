//! Words of a line of notation, with their columns; and the quotation marks around them.

use super::error::{NotationError, Problem};

/// One word.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Word {
    /// Where it begins, in code points from 1.
    pub(super) column: usize,
    /// As it stands in the line.
    pub(super) raw: String,
    /// What it is.
    pub(super) kind: WordKind,
}

/// What a word is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum WordKind {
    /// `·`.
    Joint,
    /// `[question=answer]`.
    Guard(String, String),
    /// `key=value`.
    Pair(String, String),
    /// A word in quotation marks, without them.
    Quoted(String),
    /// Any other word.
    Bare(String),
}

/// The mark between two actions.
pub(super) const JOINT: &str = "·";

/// Cuts a line into words.
pub(super) fn words(line: &str) -> Result<Vec<Word>, NotationError> {
    let mut reader = Reader { rest: line, column: 1 };
    let mut words = Vec::new();
    loop {
        reader.take(reader.rest.len() - reader.rest.trim_start().len());
        if reader.rest.is_empty() {
            return Ok(words);
        }
        let (column, before) = (reader.column, reader.rest);
        let kind = reader.word()?;
        let raw = before.get(..before.len() - reader.rest.len()).unwrap_or(before).to_owned();
        words.push(Word { column, raw, kind });
    }
}

/// What is not read yet, and the column where it begins.
struct Reader<'a> {
    rest: &'a str,
    column: usize,
}

impl<'a> Reader<'a> {
    /// Takes so many bytes.
    fn take(&mut self, n_bytes: usize) -> &'a str {
        let (taken, rest) = self.rest.split_at_checked(n_bytes).unwrap_or((self.rest, ""));
        self.rest = rest;
        self.column += taken.chars().count();
        taken
    }

    /// Takes all up to the first character that ends it.
    fn take_until(&mut self, ends: impl Fn(char) -> bool) -> &'a str {
        self.take(self.rest.find(ends).unwrap_or(self.rest.len()))
    }

    fn error(&self, problem: Problem, found: &str) -> NotationError {
        NotationError {
            problem,
            column: self.column,
            found: found.to_owned(),
            verb: None,
            allowed: Vec::new(),
        }
    }

    /// The stretch up to the next blank, for messages.
    fn ahead(&self) -> &'a str {
        self.rest.split(char::is_whitespace).next().unwrap_or("")
    }

    fn word(&mut self) -> Result<WordKind, NotationError> {
        if self.rest.starts_with('[') {
            return self.guard();
        }
        if self.rest.starts_with('"') {
            let text = self.quoted()?;
            return self.ended(WordKind::Quoted(text));
        }
        let whole = self.ahead();
        let text = self.take_until(|c| c.is_whitespace() || c == '"' || c == '=');
        if self.rest.starts_with('=') {
            self.take(1);
            let value = if self.rest.starts_with('"') {
                self.quoted()?
            } else {
                self.take_until(|c| c.is_whitespace() || c == '"').to_owned()
            };
            return self.ended(WordKind::Pair(text.to_owned(), value));
        }
        if self.rest.starts_with('"') {
            return Err(self.error(Problem::StrayQuotation, whole));
        }
        Ok(if text == JOINT { WordKind::Joint } else { WordKind::Bare(text.to_owned()) })
    }

    /// Checks that a blank follows.
    fn ended(&self, kind: WordKind) -> Result<WordKind, NotationError> {
        if self.rest.is_empty() || self.rest.starts_with(char::is_whitespace) {
            Ok(kind)
        } else {
            Err(self.error(Problem::StrayQuotation, self.ahead()))
        }
    }

    fn guard(&mut self) -> Result<WordKind, NotationError> {
        let wrong = self.error(Problem::Guard, self.ahead());
        self.take(1);
        let question = self.guard_part()?;
        if !self.rest.starts_with('=') {
            return Err(wrong);
        }
        self.take(1);
        let answer = self.guard_part()?;
        if !self.rest.starts_with(']') || question.is_empty() {
            return Err(wrong);
        }
        self.take(1);
        if self.rest.is_empty() || self.rest.starts_with(char::is_whitespace) {
            Ok(WordKind::Guard(question, answer))
        } else {
            Err(wrong)
        }
    }

    fn guard_part(&mut self) -> Result<String, NotationError> {
        if self.rest.starts_with('"') {
            self.quoted()
        } else {
            Ok(self.take_until(ends_guard_part).to_owned())
        }
    }

    /// A text in quotation marks; the reader stands on the first of them.
    fn quoted(&mut self) -> Result<String, NotationError> {
        let open = self.error(Problem::OpenQuotation, self.rest.get(1..).unwrap_or(""));
        self.take(1);
        let mut text = String::new();
        loop {
            text.push_str(self.take_until(|c| c == '"' || c == '\\'));
            let mark = self.rest.chars().next();
            match mark {
                Some('"') => {
                    self.take(1);
                    return Ok(text);
                }
                Some(_) => text.push(self.escaped()?),
                None => return Err(open),
            }
        }
    }

    /// A backslash and the character after it.
    fn escaped(&mut self) -> Result<char, NotationError> {
        let after = self.rest.chars().nth(1);
        if let Some((meant, _)) = ESCAPES.iter().find(|(_, written)| Some(*written) == after) {
            self.take(2);
            return Ok(*meant);
        }
        let found = format!("\\{}", after.map(String::from).unwrap_or_default());
        let allowed = ESCAPES.iter().map(|(_, written)| format!("\\{written}")).collect();
        Err(NotationError { allowed, ..self.error(Problem::Escape, &found) })
    }
}

fn ends_guard_part(c: char) -> bool {
    c.is_whitespace() || "\"=]".contains(c)
}

/// Characters that are written with a backslash in quotation marks.
const ESCAPES: [(char, char); 5] = [('"', '"'), ('\\', '\\'), ('\n', 'n'), ('\r', 'r'), ('\t', 't')];

/// The text in quotation marks.
pub(super) fn quote(text: &str) -> String {
    let mut quoted = String::from('"');
    for c in text.chars() {
        match ESCAPES.iter().find(|(meant, _)| *meant == c) {
            Some((_, written)) => quoted.extend(['\\', *written]),
            None => quoted.push(c),
        }
    }
    quoted.push('"');
    quoted
}

/// A value after `=`, in quotation marks if it needs them.
pub(super) fn value(text: &str) -> String {
    let bare = !text.is_empty() && !text.contains(|c: char| c.is_whitespace() || c == '"');
    if bare { text.to_owned() } else { quote(text) }
}

/// A part of a guard, in quotation marks if it needs them.
pub(super) fn guard_part(text: &str) -> String {
    let bare = !text.is_empty() && !text.contains(ends_guard_part);
    if bare { text.to_owned() } else { quote(text) }
}

/// Whether a word can stand as an id without quotation marks: letters, digits and the usual joining
/// marks, not digits alone (which are a count). A comma or semicolon is thus never part of an id unseen.
pub(super) fn is_bare_id(text: &str) -> bool {
    let usual = |c: char| c.is_alphanumeric() || "_-.:/#+@'".contains(c);
    text.chars().all(usual)
        && text.contains(char::is_alphanumeric)
        && !text.bytes().all(|b| b.is_ascii_digit())
}
