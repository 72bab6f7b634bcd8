//! The first line of a pasted text as the name of the whole: a line that is set apart as a title and is no step.

use super::block::{Block, PieceKind};

/// Takes the title off a text that has one: its first line, where that has several words, names no stage, and does not
/// announce what follows with a colon.
pub fn take_title(block: &mut Block) -> Option<String> {
    let first = block.pieces.first()?;
    let announces = first.source.trim_end().ends_with(':');
    let is_title = first.kind == PieceKind::Heading(None) && first.words.contains(' ') && !announces;
    let has_steps = block.pieces.iter().any(|piece| piece.kind == PieceKind::Step);
    (is_title && has_steps).then(|| block.pieces.remove(0).words)
}

#[cfg(test)]
mod tests {
    use super::take_title;
    use crate::capture::block;

    fn title(text: &str) -> (Option<String>, usize) {
        let mut cut = block(text);
        let title = take_title(&mut cut);
        (title, cut.pieces.len())
    }

    #[test]
    fn a_line_above_numbered_or_set_apart_lines_is_the_title() {
        for text in [
            "Circulation pump of the boiler\n\n1. Switch off.\n2. Close the valve.",
            "Circulation pump of the boiler\n1. Switch off.\n2. Close the valve.",
            "Circulation pump of the boiler\n\nSwitch off\nClose the valve",
            "# Circulation pump of the boiler\nSwitch off.\nClose the valve.",
        ] {
            assert_eq!(title(text), (Some("Circulation pump of the boiler".to_owned()), 2), "{text}");
        }
    }

    #[test]
    fn a_step_a_stage_and_what_announces_are_none() {
        for text in [
            "1. Switch off.\n2. Close the valve.",
            "Switch off the boiler.\nClose the valve.\nOpen the drain.",
            "Make safe\n1. Switch off.\n2. Close the valve.",
            "Tools needed:\n- a spanner\n- a bucket",
            "Tools\n\n1. Switch off.\n2. Close the valve.",
            "Switch off the boiler.\n\n1. Close the valve.\n2. Open the drain.",
        ] {
            let n_pieces = block(text).pieces.len();
            assert_eq!(title(text), (None, n_pieces), "{text}");
        }
    }
}
