//! The noun phrases of the clauses of a line, cut once: whoever reads a line asks for them again and again.

use super::phrase::{Phrase, cut};
use crate::capture::clause::Clause;
use crate::capture::reader::Reader;
use std::cell::RefCell;
use std::rc::Rc;

/// What was cut by now.
#[derive(Default)]
pub(in crate::capture) struct Phrased(RefCell<Vec<(Clause, Rc<[Phrase]>)>>);

/// The noun phrases behind the verb of a clause, and those before it behind "with" ("with the vent open, drain
/// it"); all before it where it ends its sentence, as in "the valve must be closed".
pub(in crate::capture) fn phrases(line: &Reader<'_>, clause: &Clause) -> Rc<[Phrase]> {
    // What a pronoun stands for hangs on what has been read before it, and "that hold the lid" on what the words name.
    let leads_on = |i: usize| matches!(line.text(i), "that" | "which");
    if line.pronoun(clause).is_some() || (clause.from..clause.to).any(leads_on) {
        return cut(line, clause).into();
    }
    let known = line.phrased.0.borrow().iter().find(|(known, _)| known == clause).map(|(_, all)| all.clone());
    known.unwrap_or_else(|| {
        let all: Rc<[Phrase]> = cut(line, clause).into();
        line.phrased.0.borrow_mut().push((clause.clone(), all.clone()));
        all
    })
}
