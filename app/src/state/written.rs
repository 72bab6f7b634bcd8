//! What was written last, so that the next write has less to do: while somebody types, one step is another, and the
//! undo is the same as it was with the key before.

use procedures_schema::edit::{Session, UndoRewriter};
use procedures_schema::format::{self, Rewriter};
use procedures_schema::model::Id;

/// How many entries of undo outlive a reload.
const ENTRIES_KEPT: usize = 100;

/// The texts of what was written last.
#[derive(Default)]
pub(super) struct Written {
    document: Rewriter,
    undo: UndoRewriter,
    /// The undo that is kept, and of which procedure.
    kept: Option<(Id, String)>,
}

/// The texts of a state that is to be kept.
pub(super) struct Texts {
    /// The document as its file would be.
    pub(super) document: String,
    /// Its undo; none where that is kept already.
    pub(super) undo: Option<String>,
}

impl Texts {
    /// Those of a state of which nothing is known.
    pub(super) fn of(session: &Session) -> Self {
        let undo = format::write_part(&session.kept_undo(ENTRIES_KEPT));
        Self { document: format::write(session.document()), undo: Some(undo) }
    }
}

impl Written {
    /// The texts of a state.
    pub(super) fn texts(&mut self, session: &Session) -> Texts {
        let undo = self.undo.write(session, ENTRIES_KEPT);
        let is_kept =
            self.kept.as_ref().is_some_and(|(id, known)| *id == session.document().id && *known == undo);
        Texts { document: self.document.write(session.document()), undo: (!is_kept).then_some(undo) }
    }

    /// Takes note that texts are kept.
    pub(super) fn are_kept(&mut self, session: &Session, texts: Texts) {
        if let Some(undo) = texts.undo {
            self.kept = Some((session.document().id.clone(), undo));
        }
    }

    /// Somebody else may have written what is kept: the next write leaves nothing out.
    pub(super) fn forget(&mut self) {
        self.kept = None;
    }
}
