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
