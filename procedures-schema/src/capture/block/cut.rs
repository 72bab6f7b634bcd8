//! From a text to its pieces: lines, then paragraphs, then sentences.

use super::cells::{CellOf, Column, cells, columns};
use super::english::GOES_ON;
use super::heading::heading;
use super::marker::{Marked, marked};
use super::plain::{lines, plain};
use super::sentences::cuts;
use super::title::begins_with_title;
use super::{Block, Piece, PieceKind};
use crate::capture::leading::{is_instruction, is_signal_alone, leading};
use crate::model::Stage;

/// Stands for the tab between two cells of one step; no text may hold it.
const CELL: char = '\t';

/// A prose line at least this long was wrapped and not ended.
const WRAPPED: usize = 60;

/// Cuts a pasted text into its pieces.
pub fn block(text: &str) -> Block {
    let n_lines = lines(text).filter(|(_, line)| !line.trim().is_empty()).count();
    let mut cutter = Cutter::default();
    for (number, line) in lines(text) {
        cutter.line(number, line);
    }
    cutter.end_pending();
    let mut pieces: Vec<Piece> = cutter.paragraphs.into_iter().flat_map(Paragraph::pieces).collect();
    if begins_with_title(&pieces) {
        pieces.iter_mut().take(1).for_each(|title| title.kind = PieceKind::Heading(None));
    }
    Block { pieces, n_lines }
}

#[derive(Debug)]
enum Sort {
    Words,
    Heading(Option<Stage>),
    /// A cell whose column says which leading word it lacks.
    Led(&'static str),
    Ornament,
}

/// Lines that belong together.
#[derive(Debug)]
struct Paragraph {
    line: usize,
    last_line: usize,
    /// The text as pasted.
    source: String,
    /// The same bytes, with blanks in place of numbers, bullets and quotation marks.
    masked: String,
    sort: Sort,
    is_item: bool,
    /// Whether a further line may go on with it.
    is_open: bool,
    last_width: usize,
}

impl Paragraph {
    fn new(line: usize, source: &str, words: &str, sort: Sort) -> Self {
        Self {
            line,
            last_line: line,
            source: source.to_owned(),
            masked: mask(source, words),
            sort,
            is_item: false,
            is_open: false,
            last_width: source.chars().count(),
        }
    }

    fn go_on(&mut self, line: usize, source: &str, words: &str) {
        for text in [&mut self.source, &mut self.masked] {
            text.extend(std::iter::repeat_n('\n', line.saturating_sub(self.last_line)));
        }
        self.source.push_str(source);
        self.masked.push_str(&mask(source, words));
        self.last_line = line;
        self.last_width = source.chars().count();
    }

    fn pieces(self) -> Vec<Piece> {
        let piece = |kind, words| Piece { line: self.line, source: self.source.clone(), words, kind };
        let all = words_of(&self.masked);
        match &self.sort {
            Sort::Ornament => vec![piece(PieceKind::Ornament, all)],
            Sort::Heading(stage) => {
                let bare = all.trim_end_matches([':', ' ']).to_owned();
                vec![piece(PieceKind::Heading(stage.clone()), bare)]
            }
            Sort::Led(word) => {
                let led = leading(&all).or_else(|| leading(&format!("{word}: {all}")));
                vec![piece(led.map_or(PieceKind::Step, PieceKind::Leading), all)]
            }
            Sort::Words => match leading(&all) {
                Some(leading) => vec![piece(PieceKind::Leading(leading), all)],
                None => self.sentences(),
            },
        }
    }

    fn sentences(&self) -> Vec<Piece> {
        let mut from = 0;
        let mut pieces = Vec::new();
        for to in cuts(&self.masked, words_of) {
            let stretch = |text: &str| text.get(from..to).unwrap_or_default().to_owned();
            let before = self.source.get(..from).unwrap_or_default();
            let blank = stretch(&self.source);
            let skipped = blank.len() - blank.trim_start().len();
            let lead = blank.get(..skipped).unwrap_or_default();
            let n_ends = [before, lead].iter().map(|text| text.matches('\n').count()).sum::<usize>();
            let words = words_of(&stretch(&self.masked));
            let kind = leading(&words).map_or(PieceKind::Step, PieceKind::Leading);
            let source = blank.trim_start_matches(['\n', ' ']).to_owned();
            pieces.push(Piece { line: self.line + n_ends, source, words, kind });
            from = to;
        }
        pieces
    }
}

/// The source with blanks for everything before the words; bytes keep their places.
fn mask(source: &str, words: &str) -> String {
    let at = source.rfind(words).unwrap_or(0);
    let (before, rest) = source.split_at_checked(at).unwrap_or(("", source));
    let mut masked = " ".repeat(before.len());
    masked.push_str(rest);
    masked
}

/// The plain words of a masked stretch: lines and cells joined.
fn words_of(masked: &str) -> String {
    let mut joined = String::new();
    for line in masked.split('\n') {
        let mut first = true;
        for cell in line.split(CELL).map(str::trim).filter(|cell| !cell.is_empty()) {
            let is_cell = !std::mem::take(&mut first);
            join(&mut joined, cell, is_cell);
        }
    }
    plain(&joined)
}

fn join(joined: &mut String, more: &str, is_cell: bool) {
    let mut back = joined.chars().rev();
    match (back.next(), back.next()) {
        (None, _) => {}
        (Some('\u{ad}'), _) => {
            joined.pop();
        }
        (Some('-' | '\u{2010}'), Some(before)) if before.is_alphanumeric() && !is_cell => {}
        (Some(last), _) if is_cell && !matches!(last, '.' | ',' | ';' | ':' | '!' | '?') => {
            joined.push_str(", ");
        }
        _ => joined.push(' '),
    }
    joined.push_str(more);
}

#[derive(Debug, Default)]
struct Cutter {
    paragraphs: Vec<Paragraph>,
    columns: Option<Vec<Column>>,
    /// A number or a signal word that stood alone on its line.
    pending: Option<Paragraph>,
}

impl Cutter {
    fn line(&mut self, number: usize, line: &str) {
        if line.trim().is_empty() {
            self.close();
            return;
        }
        let found = cells(line);
        let in_table = self.columns.is_some() && line.contains(CELL) && !found.is_empty();
        if found.len() >= 2 || in_table {
            self.end_pending();
            self.row(number, line, &found);
            return;
        }
        self.columns = None;
        let marked = marked(line);
        let words = plain(marked.words);
        if !words.chars().any(char::is_alphanumeric) {
            self.bare(number, line, &marked);
        } else if is_signal_alone(&words) || is_number_alone(&words) {
            self.end_pending();
            self.pending = Some(Paragraph::new(number, line, marked.words, Sort::Words));
        } else if let Some(mut pending) = self.pending.take() {
            let is_signal = is_signal_alone(&words_of(&pending.masked));
            // The mark that makes the word a leading one stands in a byte that is blank in the text.
            if is_signal && !words_of(&pending.masked).ends_with([':', '!']) {
                pending.sort = Sort::Led(signal(&words_of(&pending.masked)));
                let blanks = " ".repeat(pending.masked.len());
                pending.masked = blanks;
            } else if !is_signal {
                pending.masked = " ".repeat(pending.masked.len());
            }
            pending.go_on(number, line, marked.words);
            (pending.is_open, pending.is_item) = (true, true);
            self.paragraphs.push(pending);
        } else {
            self.words(number, line, &words, &marked);
        }
    }

    /// A line without a letter or digit: a lone mark waits for its words, a rule is an ornament.
    fn bare(&mut self, number: usize, line: &str, marked: &Marked<'_>) {
        self.end_pending();
        self.close();
        if marked.is_item && marked.words.is_empty() {
            self.pending = Some(Paragraph::new(number, line, marked.words, Sort::Words));
        } else {
            self.paragraphs.push(Paragraph::new(number, line, line, Sort::Ornament));
        }
    }

    fn words(&mut self, number: usize, line: &str, words: &str, marked: &Marked<'_>) {
        let heading = heading(words, marked);
        let last = self.paragraphs.last_mut();
        if let Some(last) = last.filter(|last| heading.is_none() && goes_on(last, words, marked)) {
            last.go_on(number, line, marked.words);
            return;
        }
        let is_open = heading.is_none();
        let sort = heading.map_or(Sort::Words, |heading| Sort::Heading(heading.stage));
        let paragraph = Paragraph::new(number, line, marked.words, sort);
        self.paragraphs.push(Paragraph { is_item: marked.is_item, is_open, ..paragraph });
    }

    fn row(&mut self, number: usize, line: &str, found: &[CellOf<'_>]) {
        self.close();
        if let Some(heads) = columns(line) {
            self.columns = Some(heads);
            self.paragraphs.push(Paragraph::new(number, line, line, Sort::Ornament));
            return;
        }
        for (i, cell) in found.iter().enumerate() {
            let column = self.columns.as_ref().and_then(|columns| columns.get(cell.column)).copied();
            let marked = marked(cell.source);
            let words = plain(marked.words);
            let own = i == 0 || is_instruction(&words) || leading(&words).is_some();
            let sort = match column {
                Some(Column::Leading(word)) => Sort::Led(word),
                _ => Sort::Words,
            };
            let joins = !own && matches!(sort, Sort::Words);
            match self.paragraphs.last_mut().filter(|last| joins && matches!(last.sort, Sort::Words)) {
                Some(last) => last.go_on(number, cell.source, cell.source),
                None => self.paragraphs.push(Paragraph::new(number, cell.source, marked.words, sort)),
            }
        }
    }

    /// No further line goes on with the last paragraph.
    fn close(&mut self) {
        if let Some(last) = self.paragraphs.last_mut() {
            last.is_open = false;
        }
    }

    /// A mark whose words never came.
    fn end_pending(&mut self) {
        if let Some(pending) = self.pending.take() {
            let signal = words_of(&pending.masked);
            let sort = if is_signal_alone(&signal) { Sort::Words } else { Sort::Ornament };
            self.paragraphs.push(Paragraph { sort, ..pending });
        }
    }
}

/// `4.` whose words stand on the next line has no letters; `Step 4` has.
fn is_number_alone(words: &str) -> bool {
    words.split_once(' ').is_some_and(|(name, number)| {
        name.eq_ignore_ascii_case("step")
            && number.trim_end_matches([':', '.']).bytes().all(|b| b.is_ascii_digit())
    })
}

fn signal(words: &str) -> &'static str {
    let lower = words.to_lowercase();
    ["danger", "warning", "caution"].into_iter().find(|word| lower.starts_with(word)).unwrap_or("notice")
}

/// Whether a line goes on with the paragraph before it.
fn goes_on(last: &Paragraph, words: &str, marked: &Marked<'_>) -> bool {
    if !last.is_open || marked.is_item || marked.is_heading || leading(words).is_some() {
        return false;
    }
    let before = words_of(&last.masked);
    let last_word = before.rsplit(' ').next().unwrap_or_default().to_lowercase();
    let is_greeting = before.split(' ').count() < 4;
    if (before.ends_with(',') && !is_greeting)
        || before.ends_with('-')
        || GOES_ON.contains(&last_word.as_str())
    {
        return true;
    }
    if before.ends_with(['.', '!', '?', ':', ';', ',']) {
        return false;
    }
    let begins_low = |text: &str| text.starts_with(|c: char| c.is_lowercase());
    let begins_inside = words.starts_with(|c: char| c.is_lowercase() || c.is_ascii_digit() || c == '(');
    if begins_inside {
        return !(begins_low(&before) && is_instruction(&before) && is_instruction(words));
    }
    (marked.is_indented && last.is_item) || (last.last_width >= WRAPPED && !is_instruction(words))
}
