//! What a procedure has no room for: more steps than a file may have, and texts that are longer than it may hold.

use super::limits::{MOST_CHARACTERS, MOST_STEPS, MOST_THINGS, grouped};
use crate::model::Procedure;

/// Why a text is not taken at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TooMuch {
    /// The procedure would have so many steps.
    Steps(usize),
    /// The appliance would have so many things.
    Things(usize),
    /// A line has so many characters.
    Characters {
        /// The line, from 1.
        line: usize,
        /// How many.
        n: usize,
    },
}

impl std::fmt::Display for TooMuch {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Steps(n) => {
                let (n, most) = (grouped(*n), grouped(MOST_STEPS));
                write!(f, "the procedure would have {n} steps, and it can have {most}")
            }
            Self::Things(n) => {
                let (n, most) = (grouped(*n), grouped(MOST_THINGS));
                write!(f, "the appliance would have {n} things, and it can have {most}")
            }
            Self::Characters { line, n } => {
                let (n, most) = (grouped(*n), grouped(MOST_CHARACTERS));
                write!(f, "line {line} has {n} characters, and a text can have {most}")
            }
        }
    }
}

impl std::error::Error for TooMuch {}

/// Whether a procedure has room for so many steps and things more.
///
/// # Errors
/// If it has not.
pub fn has_room(procedure: &Procedure, n_steps: usize, n_things: usize) -> Result<(), TooMuch> {
    let there = procedure.steps.iter().map(|step| step.with_after_failures().len());
    let (n_steps, n_things) = (there.sum::<usize>() + n_steps, procedure.map.things().count() + n_things);
    match (n_steps > MOST_STEPS, n_things > MOST_THINGS) {
        (true, _) => Err(TooMuch::Steps(n_steps)),
        (_, true) => Err(TooMuch::Things(n_things)),
        _ => Ok(()),
    }
}

/// Whether no line, each with its number, is longer than a text may be.
///
/// # Errors
/// If one is.
pub fn have_room<'t>(lines: &mut impl Iterator<Item = (usize, &'t str)>) -> Result<(), TooMuch> {
    lines.try_for_each(|(line, words)| {
        let n = if words.len() > MOST_CHARACTERS { words.chars().count() } else { 0 };
        if n > MOST_CHARACTERS { Err(TooMuch::Characters { line, n }) } else { Ok(()) }
    })
}

#[cfg(test)]
mod tests {
    use super::super::limits::{MOST_CHARACTERS, MOST_STEPS, MOST_THINGS};
    use super::{has_room, have_room};
    use crate::model::{Id, Procedure, Stage, Step};
    use std::sync::Arc;

    #[test]
    fn what_a_procedure_has_no_room_for_is_told_with_its_number() {
        let mut procedure = Procedure::new(Id::new("p"), "P");
        let told = |procedure: &Procedure, n_steps, n_things| {
            has_room(procedure, n_steps, n_things).map_err(|why| why.to_string())
        };
        assert_eq!(told(&procedure, MOST_STEPS, MOST_THINGS), Ok(()));
        let steps = "the procedure would have 5,001 steps, and it can have 5,000";
        assert_eq!(told(&procedure, MOST_STEPS + 1, 0), Err(steps.to_owned()));
        procedure.steps.push(Arc::new(Step::new(Id::new("there"), Stage::Strip, "Take off the cover.")));
        assert_eq!(told(&procedure, MOST_STEPS, 0), Err(steps.to_owned()), "with those that are there");
        let things = "the appliance would have 2,001 things, and it can have 2,000";
        assert_eq!(told(&procedure, 1, MOST_THINGS + 1), Err(things.to_owned()));
    }

    #[test]
    fn a_line_that_is_too_long_is_told_with_its_number() {
        let fits = "\u{e4}".repeat(MOST_CHARACTERS);
        let longer = format!("{fits}!");
        assert_eq!(have_room(&mut [(1, fits.as_str())].into_iter()), Ok(()));
        let told = have_room(&mut [(1, fits.as_str()), (2, longer.as_str())].into_iter())
            .map_err(|why| why.to_string());
        assert_eq!(told, Err("line 2 has 20,001 characters, and a text can have 20,000".to_owned()));
    }
}
