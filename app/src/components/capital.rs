//! A capital at the head of words that stand by themselves.

/// The words with their first letter as a capital.
pub fn capital(word: &str) -> String {
    let mut chars = word.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}
