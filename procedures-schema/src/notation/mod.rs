//! The notation: the typed reading of a step as one line of text, for people and for fixtures.
//!
//! *Written* (fixtures, command line, compare, merge) is made by [`print()`] and read by [`parse`]; the two
//! are inverse. *Shown* (screens) is made by [`shown`] and never read. One table, [`GRAMMAR`], says for
//! each verb how it is written, what it acts on and which details it takes. The notation knows no
//! procedure: whether an id exists or an action makes sense is not judged here.
//!
//! ```text
//! line    = action { " · " action }
//! action  = { "[" question "=" answer "]" } verb { thing | figure | plain word | key "=" value }
//! ```
//!
//! A value with blanks stands in quotation marks, in which `\"`, `\\`, `\n`, `\r` and `\t` are read as
//! usual. Laws: `parse(print(a)) == a` for every action that the grammar allows, leaving out `says` and
//! unknown fields, which are not written; `print(parse(t)) == t` for every `t` that [`print()`] makes.

mod detail;
mod error;
mod grammar;
mod lex;
mod parse;
mod print;
mod shown;
#[cfg(test)]
mod tests;
mod value;

pub use detail::Detail;
pub use error::{NotationError, Problem};
pub use grammar::{Entry, Form, GRAMMAR, Slot, Things, entry};
pub use parse::{Written, parse, parse_written};
pub use print::{print, print_action, print_written};
pub use shown::{Role, Token, line, shown};
