//! Why a file cannot be opened.

/// What is wrong with the file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Category {
    /// The bytes are no text.
    Text,
    /// The text is no JSON, or was cut short.
    Syntax,
    /// The JSON is not a procedure of ours, or a field has the wrong kind.
    Content,
    /// The file was written by a newer version.
    Newer,
    /// The file exceeds a limit.
    Limit,
}

/// Why a file cannot be opened. Its text says what, where and what to do; nothing was changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FormatError {
    pub(super) category: Category,
    pub(super) line: usize,
    pub(super) column: usize,
    pub(super) path: String,
    pub(super) message: String,
}

impl FormatError {
    /// The kind of fault.
    pub fn category(&self) -> Category {
        self.category
    }

    /// The line, from 1; 0 if the fault concerns the whole file.
    pub fn line(&self) -> usize {
        self.line
    }

    /// The column in that line, from 1; 0 if the fault concerns the whole file.
    pub fn column(&self) -> usize {
        self.column
    }

    /// The field, for example `steps[3].words`; empty if the fault concerns the whole file.
    pub fn path(&self) -> &str {
        &self.path
    }

    pub(super) fn whole(category: Category, message: String) -> Self {
        Self { category, line: 0, column: 0, path: String::new(), message }
    }
}

impl std::fmt::Display for FormatError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if self.line > 0 {
            write!(f, "line {}, column {}", self.line, self.column)?;
            if !self.path.is_empty() {
                write!(f, ", at {}", self.path)?;
            }
            f.write_str(": ")?;
        } else if !self.path.is_empty() {
            write!(f, "at {}: ", self.path)?;
        }
        write!(f, "{}. Nothing was changed.", self.message)
    }
}

impl std::error::Error for FormatError {}
