//! Names in a row, as a sentence has them.

/// `a`, `a and b`, `a, b and c`.
pub fn listed<T: AsRef<str>>(names: &[T]) -> String {
    let (last, before) = match names {
        [] => return String::new(),
        [one] => return one.as_ref().to_owned(),
        [before @ .., last] => (last.as_ref(), before),
    };
    let before: Vec<&str> = before.iter().map(AsRef::as_ref).collect();
    format!("{} and {last}", before.join(", "))
}

/// Whether a name is a plural: its last word ends in one s, and is none of the endings of single things. Names
/// are the writer's, so nothing else tells.
pub(crate) fn is_plural(name: &str) -> bool {
    let last = name.rsplit(' ').next().unwrap_or_default();
    last.len() > 2
        && last.ends_with('s')
        && !["ss", "us", "is", "gas", "mains", "lens"].iter().any(|ending| last.ends_with(ending))
}

/// "a new washer", "new screws".
pub(crate) fn a_new(name: &str) -> String {
    if is_plural(name) { format!("new {name}") } else { format!("a new {name}") }
}
