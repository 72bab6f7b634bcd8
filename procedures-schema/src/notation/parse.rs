//! Written notation to actions.
//!
//! Reading is strict: a detail that the verb does not take is an error, never ignored.

use super::detail::Detail;
use super::error::{NotationError, Problem};
use super::grammar::{Entry, Form, GRAMMAR, Slot};
use super::lex::{self, Word, WordKind, is_bare_id};
use crate::model::{Action, Answer, Id, TestKind};

/// An action with the answers on which it is done.
#[derive(Clone, Debug, PartialEq)]
pub struct Written {
    /// The answers; none means always.
    pub guard: Vec<Answer>,
    /// The action.
    pub action: Action,
}

/// Reads actions joined by ` · `.
///
/// # Errors
/// If the line is not notation, or an action has a guard: see [`NotationError`].
pub fn parse(line: &str) -> Result<Vec<Action>, NotationError> {
    let words = lex::words(line)?;
    if let Some(guard) = words.iter().find(|word| matches!(word.kind, WordKind::Guard(..))) {
        return Err(error(Problem::GuardNotHere, guard));
    }
    Ok(read_words(line, &words)?.into_iter().map(|written| written.action).collect())
}

/// Reads actions joined by ` · `, each with its guards: `[leak=yes] undo head`.
///
/// # Errors
/// If the line is not notation: see [`NotationError`].
pub fn parse_written(line: &str) -> Result<Vec<Written>, NotationError> {
    read_words(line, &lex::words(line)?)
}

fn read_words(line: &str, words: &[Word]) -> Result<Vec<Written>, NotationError> {
    if words.is_empty() {
        return Ok(Vec::new());
    }
    let mut read = Vec::new();
    let mut rest = words;
    while let Some(n_words) = rest.iter().position(|word| word.kind == WordKind::Joint) {
        let (group, after) = rest.split_at_checked(n_words).unwrap_or((rest, &[]));
        read.push(read_action(group, after.first().map_or(1, |joint| joint.column))?);
        rest = after.get(1..).unwrap_or(&[]);
    }
    read.push(read_action(rest, line.trim_end().chars().count() + 1)?);
    Ok(read)
}

/// An error about a word.
fn error(problem: Problem, word: &Word) -> NotationError {
    NotationError { problem, column: word.column, found: word.raw.clone(), verb: None, allowed: Vec::new() }
}

/// Reads one action; `end` is the column where it would go on.
fn read_action(words: &[Word], end: usize) -> Result<Written, NotationError> {
    let n_guards = words.iter().take_while(|word| matches!(word.kind, WordKind::Guard(..))).count();
    let (guards, words) = words.split_at_checked(n_guards).unwrap_or((&[], words));
    let guard = guards.iter().filter_map(|word| match &word.kind {
        WordKind::Guard(question, answer) => Some(Answer::new(Id::new(question), answer)),
        _ => None,
    });
    let Some((verb, words)) = words.split_first() else {
        let found = String::new();
        return Err(NotationError {
            problem: Problem::NoVerb,
            column: end,
            found,
            verb: None,
            allowed: vec![],
        });
    };
    let line =
        GRAMMAR.iter().find(|line| verb.kind == WordKind::Bare(line.token.to_owned())).ok_or_else(|| {
            let allowed = GRAMMAR.iter().map(|line| line.token.to_owned()).collect();
            NotationError { allowed, ..error(Problem::UnknownVerb, verb) }
        })?;
    let mut reader =
        ActionReader { line, action: Action::new(line.verb.clone(), Vec::new()), seen: Vec::new() };
    for word in words {
        reader.word(word)?;
    }
    Ok(Written { guard: guard.collect(), action: reader.finish(end)? })
}

/// An action as far as it is read.
struct ActionReader {
    line: &'static Entry,
    action: Action,
    seen: Vec<Detail>,
}

impl ActionReader {
    fn error(&self, problem: Problem, word: &Word) -> NotationError {
        NotationError { verb: Some(self.line.token), ..error(problem, word) }
    }

    fn word(&mut self, word: &Word) -> Result<(), NotationError> {
        match &word.kind {
            WordKind::Bare(text) if text == "?" => Err(self.error(Problem::Missing, word)),
            WordKind::Bare(text) | WordKind::Quoted(text) if self.open_first().is_some() => {
                self.first(text, word)
            }
            WordKind::Bare(text) => match self.plain_slot(text) {
                Some(slot) => self.detail(slot, text, word),
                None if is_bare_id(text) => self.thing(text, word),
                None => Err(self.not_an_id(text, word)),
            },
            WordKind::Quoted(text) => self.thing(text, word),
            WordKind::Pair(key, text) => match self.line.slots.iter().find(|slot| slot.is_called(key)) {
                Some(slot) => self.detail(slot, text, word),
                None => Err(NotationError {
                    found: format!("{key}="),
                    allowed: self.allowed_details(),
                    ..self.error(Problem::UnknownKey, word)
                }),
            },
            WordKind::Guard(..) | WordKind::Joint => Err(self.error(Problem::Guard, word)),
        }
    }

    /// The detail that must come first, if it has not come yet.
    fn open_first(&self) -> Option<&'static Slot> {
        let is_open = |slot: &&Slot| slot.form == Form::First && !self.seen.contains(&slot.detail);
        self.line.slots.iter().find(is_open)
    }

    fn first(&mut self, text: &str, word: &Word) -> Result<(), NotationError> {
        let is_bare = matches!(word.kind, WordKind::Bare(_));
        if is_bare && !is_bare_id(text) {
            return Err(self.error(Problem::NotAnId, word));
        }
        match self.open_first() {
            Some(slot) => self.detail(slot, text, word),
            None => Ok(()),
        }
    }

    /// The detail that a bare word stands for.
    fn plain_slot(&self, text: &str) -> Option<&'static Slot> {
        let all_digits = text.bytes().all(|b| b.is_ascii_digit());
        let like_a_figure =
            text.strip_prefix(['-', '\u{2212}']).unwrap_or(text).starts_with(|c: char| c.is_ascii_digit());
        self.line.slots.iter().find(|slot| match slot.form {
            // Where no things are named, a word that begins like a figure cannot be an id: `30s`.
            Form::Figure => all_digits || (like_a_figure && self.line.things.most == 0),
            Form::Word(words) => words.contains(&text),
            Form::First | Form::Key => false,
        })
    }

    fn detail(&mut self, slot: &Slot, text: &str, word: &Word) -> Result<(), NotationError> {
        let may_repeat = matches!(slot.detail, Detail::Readings | Detail::WithNew);
        if !may_repeat && self.seen.contains(&slot.detail) {
            return Err(self.error(Problem::Twice, word));
        }
        self.seen.push(slot.detail);
        slot.detail.set(&mut self.action, text).map_err(|form| NotationError {
            found: text.to_owned(),
            allowed: vec![form.to_owned()],
            ..self.error(Problem::Value, word)
        })
    }

    fn thing(&mut self, text: &str, word: &Word) -> Result<(), NotationError> {
        if self.action.on.len() >= self.line.things.most {
            let allowed = self.allowed_details();
            return Err(NotationError { allowed, ..self.error(Problem::TooManyThings, word) });
        }
        self.action.on.push(Id::new(text));
        Ok(())
    }

    fn not_an_id(&self, text: &str, word: &Word) -> NotationError {
        let is_figure = text.bytes().all(|b| b.is_ascii_digit());
        let problem = if is_figure { Problem::UnknownKey } else { Problem::NotAnId };
        NotationError { allowed: self.allowed_details(), ..self.error(problem, word) }
    }

    /// What the verb takes beside things, as it is written.
    fn allowed_details(&self) -> Vec<String> {
        let mut allowed = Vec::new();
        for slot in self.line.slots {
            match slot.form {
                Form::First => {}
                Form::Figure => allowed.push("a figure".to_owned()),
                Form::Word(words) => allowed.extend(words.iter().map(|word| (*word).to_owned())),
                Form::Key => allowed.push(format!("{}=", slot.key)),
            }
        }
        allowed
    }

    fn finish(self, end: usize) -> Result<Action, NotationError> {
        let wrong = |problem, allowed| NotationError {
            problem,
            column: end,
            found: String::new(),
            verb: Some(self.line.token),
            allowed,
        };
        if let Some(slot) = self.open_first() {
            return Err(wrong(Problem::NoFirstWord, first_words(slot.detail)));
        }
        if self.action.on.len() < self.line.things.least {
            return Err(wrong(Problem::TooFewThings, Vec::new()));
        }
        Ok(self.action)
    }
}

/// What may stand first after the verb.
fn first_words(detail: Detail) -> Vec<String> {
    match detail {
        Detail::Test => TestKind::ALL.iter().map(|kind| kind.word().replace(' ', "-")).collect(),
        _ => vec!["the id of a question".to_owned()],
    }
}
