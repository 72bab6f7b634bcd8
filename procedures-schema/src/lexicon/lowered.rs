//! Many texts in lower case, one behind the other, so that they take one piece of memory.

/// Texts in lower case.
#[derive(Debug, Default)]
pub(crate) struct Lowered {
    all: String,
    /// Where each of them ends.
    ends: Vec<usize>,
}

impl Lowered {
    /// Adds some, in their order.
    pub(crate) fn add_all<'t>(&mut self, texts: impl Iterator<Item = &'t str> + Clone) {
        self.all.reserve(texts.clone().map(str::len).sum());
        texts.for_each(|text| self.add(text));
    }

    /// Adds one.
    pub(crate) fn add(&mut self, text: &str) {
        if text.is_ascii() {
            let from = self.all.len();
            self.all.push_str(text);
            if let Some(added) = self.all.get_mut(from..) {
                added.make_ascii_lowercase();
            }
        } else {
            self.all.push_str(&text.to_lowercase());
        }
        self.ends.push(self.all.len());
    }

    /// Adds some of others.
    pub(crate) fn take_over(&mut self, others: &Self, positions: std::ops::Range<usize>) {
        let from = others.begin(positions.start);
        let ends = others.ends.get(positions).unwrap_or_default();
        let n_before = self.all.len();
        self.all.push_str(ends.last().and_then(|end| others.all.get(from..*end)).unwrap_or_default());
        self.ends.extend(ends.iter().map(|end| n_before + end - from));
    }

    /// Where the text at a position begins.
    fn begin(&self, position: usize) -> usize {
        position.checked_sub(1).and_then(|before| self.ends.get(before)).copied().unwrap_or(0)
    }

    /// The text at a position.
    pub(crate) fn get(&self, position: usize) -> Option<&str> {
        self.all.get(self.begin(position)..*self.ends.get(position)?)
    }

    /// Each of them.
    pub(crate) fn iter(&self) -> impl Iterator<Item = &str> {
        let begins = std::iter::once(0).chain(self.ends.iter().copied());
        begins.zip(&self.ends).map(|(from, end)| self.all.get(from..*end).unwrap_or_default())
    }
}

#[cfg(test)]
mod tests {
    use super::Lowered;

    #[test]
    fn texts_come_in_their_order() {
        let mut lowered = Lowered::default();
        lowered.add_all(["Undo", "", "\u{d6}L", "the LID"].into_iter());
        assert_eq!(lowered.iter().collect::<Vec<_>>(), ["undo", "", "\u{f6}l", "the lid"]);
        let by_place = (0..5).map(|at| lowered.get(at)).collect::<Vec<_>>();
        assert_eq!(by_place, [Some("undo"), Some(""), Some("\u{f6}l"), Some("the lid"), None]);
        let mut taken = Lowered::default();
        taken.add("First");
        taken.take_over(&lowered, 1..3);
        taken.take_over(&lowered, 0..0);
        taken.take_over(&lowered, 3..4);
        assert_eq!(taken.iter().collect::<Vec<_>>(), ["first", "", "\u{f6}l", "the lid"]);
    }
}
