//! Invented texts in the layouts in which people paste them, and their pieces.

use super::{Block, BlockReading, MANY_LINES, PieceKind, block};
use crate::capture::steps_of_block;
use crate::format::read;
use crate::model::{Id, NumberedIds, Procedure, Stage};
use crate::notation::print;

/// The pieces, one a line: line number, what it is, words.
fn shown(block: &Block) -> String {
    let kind = |kind: &PieceKind| match kind {
        PieceKind::Step => "step".to_owned(),
        PieceKind::Heading(stage) => format!("heading({})", stage.as_ref().map_or("?", Stage::word)),
        PieceKind::Leading(_) => "leading".to_owned(),
        PieceKind::Ornament => "ornament".to_owned(),
    };
    let piece = |piece: &super::Piece| format!("{} {}: {}", piece.line, kind(&piece.kind), piece.words);
    block.pieces.iter().map(piece).collect::<Vec<_>>().join("\n")
}

fn without_blanks(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace()).collect()
}

/// Cuts a text and compares; no character that is not blank may be lost, and the order is that of the text.
fn is_cut(text: &str, expected: &str) {
    let block = block(text);
    let sources: String = block.pieces.iter().map(|piece| piece.source.as_str()).collect();
    assert_eq!(without_blanks(&sources), without_blanks(text));
    assert_eq!(shown(&block), expected.trim_matches('\n'));
}

#[test]
fn a_numbered_list() {
    is_cut(
        "Renewing the pump (invented)\n\n1. Switch off at the wall isolator and lock it off.\n2) Close both pump valves.\n\
         (3) Undo the two union nuts\n    of the pump, 37 mm.\n(a) Lift the pump out.\nStep 5: Fit the new pump. \
         Make both unions with new washers.\n6\nWait 10 min.\n1.5 bar is the pressure then.\n",
        "1 heading(?): Renewing the pump (invented)\n\
         3 step: Switch off at the wall isolator and lock it off.\n\
         4 step: Close both pump valves.\n\
         5 step: Undo the two union nuts of the pump, 37 mm.\n\
         7 step: Lift the pump out.\n\
         8 step: Fit the new pump.\n\
         8 step: Make both unions with new washers.\n\
         9 leading: Wait 10 min.\n\
         11 step: 1.5 bar is the pressure then.",
    );
}

#[test]
fn bullets_of_many_sorts() {
    is_cut(
        "\u{2022} Close the gas cock\n\u{2022}\tDisconnect the plug\n- [ ] Undo the four screws\n\u{2610} Take the cover off\n\
         * Clean the seat\n\u{2013} Fit a new gasket\no\tFit the cover\n\u{f0b7}\u{a0}Tighten the screws\n+ why: they work loose\n\
         -----\n-5 \u{b0}C is too cold for the sealant\n",
        "1 step: Close the gas cock\n\
         2 step: Disconnect the plug\n\
         3 step: Undo the four screws\n\
         4 step: Take the cover off\n\
         5 step: Clean the seat\n\
         6 step: Fit a new gasket\n\
         7 step: Fit the cover\n\
         8 step: Tighten the screws\n\
         9 leading: why: they work loose\n\
         10 ornament: -----\n\
         11 step: -5 °C is too cold for the sealant",
    );
}

#[test]
fn a_table_copied_from_a_sheet() {
    is_cut(
        "No.\tAction\tReason\tRemark\r\n1\tClose the gas cock.\tNo gas may escape.\tbehind the flap\r\n\
         2\tUndo the union nut\t\t24 mm\r\n3\tWarning: gas may escape; air the room\t\t\r\n4\tLift the valve out\tIt is heavy\t\r\n",
        "1 ornament: No. Action, Reason, Remark\n\
         2 step: Close the gas cock.\n\
         2 leading: No gas may escape.\n\
         2 step: behind the flap\n\
         3 step: Undo the union nut, 24 mm\n\
         4 leading: Warning: gas may escape; air the room\n\
         5 step: Lift the valve out\n\
         5 leading: It is heavy",
    );
    is_cut(
        "Close the cock\tThe lamp goes out\nTighten the bolts\t25 N\u{b7}m\nOpen the vent\tUndo the drain plug\n",
        "1 step: Close the cock, The lamp goes out\n\
         2 step: Tighten the bolts, 25 N·m\n\
         3 step: Open the vent\n\
         3 step: Undo the drain plug",
    );
}

#[test]
fn an_e_mail_with_prose() {
    is_cut(
        "Hi Tom,\n\nas promised, here is how we renewed the pump in the cellar last week. First\nswitch off at the wall \
         isolator. Then close both valves, the one in the flow and\nthe one in the return. The key is with the caretaker. Please hang \
         the notice on\nthe isolator. Warning: the water can scald. Let it cool down.\n\n> Drain the pump at the drain cock.\n> \
         Undo the unions.\n\nRegards\nJo\n",
        "1 step: Hi Tom,\n\
         3 step: as promised, here is how we renewed the pump in the cellar last week. First switch off at the wall isolator.\n\
         4 step: Then close both valves, the one in the flow and the one in the return. The key is with the caretaker.\n\
         5 step: Please hang the notice on the isolator.\n\
         6 leading: Warning: the water can scald. Let it cool down.\n\
         8 step: Drain the pump at the drain cock.\n\
         9 step: Undo the unions.\n\
         11 step: Regards\n\
         12 step: Jo",
    );
}

#[test]
fn a_headed_document_with_warnings() {
    is_cut(
        "# Renewing the gasket\n\n1 Preparation\n\nTools:\n17 mm spanner\n\n2. Removal\n\nWARNING\nHot water can scald; let it \
         cool\n\n2.1 Drain the store\n2.2 Undo the flange bolts\n\nCaution! Sharp edges. Wear gloves.\n2.3 Remove the cover\n\n\
         REFITTING\nFit a new gasket.\nread: torque 20 to 25 N\u{b7}m (out: tighten again)\n\nTests:\nask: Is it dry?\nif no: undo \
         the bolts\nGENERAL NOTES\nKeep the plate clean.\nnotice:\n",
        "1 heading(?): Renewing the gasket\n\
         3 heading(prepare): 1 Preparation\n\
         5 heading(?): Tools\n\
         6 step: 17 mm spanner\n\
         8 heading(strip): Removal\n\
         10 leading: Hot water can scald; let it cool\n\
         13 step: Drain the store\n\
         14 step: Undo the flange bolts\n\
         16 leading: Caution! Sharp edges. Wear gloves.\n\
         17 step: Remove the cover\n\
         19 heading(refit): REFITTING\n\
         20 step: Fit a new gasket.\n\
         21 leading: read: torque 20 to 25 N·m (out: tighten again)\n\
         23 heading(recommission): Tests\n\
         24 leading: ask: Is it dry?\n\
         25 leading: if no: undo the bolts\n\
         26 heading(?): GENERAL NOTES\n\
         27 step: Keep the plate clean.\n\
         28 leading: notice:",
    );
}

#[test]
fn odd_blanks_and_numbers_of_a_word_processor() {
    is_cut(
        "\u{feff}1.\u{a0}Dis\u{ad}connect the \u{201c}burner\u{201d} plug\u{b}and hang it aside.\r\n\r\n 2.\u{a0}\u{a0}Undo the \
         shut\u{2011}off valve\u{2019}s union.\rii.\tPull the fan for-\n   wards, then lift it off the mount-\ning plate.\u{2028}\
         \u{200b}\nSTEP 4 \u{2013} Fit the fan (approx. 5 min. Max. 2 people).\u{c}iii)\n\nSwitch on.\n7.\n",
        "1 step: Disconnect the \"burner\" plug and hang it aside.\n\
         4 step: Undo the shut-off valve's union.\n\
         5 step: Pull the fan for-wards, then lift it off the mount-ing plate.\n\
         8 ornament: \n\
         9 step: Fit the fan (approx. 5 min. Max. 2 people).\n\
         10 step: Switch on.\n\
         13 ornament: ",
    );
}

/// Bits of text in which something may get lost, `~` between them.
const BITS: [&str; 4] = [
    "1.~2)~(a)~Step 3:~\u{2022}~-~[ ]~\t~\n~\r\n~\n\n~\u{b}~\u{2028}~ ~\u{a0}~\u{ad}~\u{200b}",
    "\u{feff}~>~#~|~o\t~WARNING~warning:~why:~ask:~if no:~Reason~Action~Close the valve.",
    "undo the nut~Removal~Tests:~-----~\u{201c}~\u{2019}s~5 bar~\u{d6}ffnen~\u{1f525}~. ~? ~, ",
    "approx.~is hot~the~for-~6~Step 4~e\u{301}~\0",
];

#[test]
fn no_character_of_a_random_text_is_lost_and_the_order_is_kept() {
    let bits: Vec<&str> = BITS.iter().flat_map(|row| row.split('~')).collect();
    let mut seed: u64 = 20_261_125;
    let mut next = |below: usize| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(seed >> 33).unwrap_or(0) % below
    };
    for _ in 0..4_000 {
        let n = next(24);
        let text: String = (0..n).filter_map(|_| bits.get(next(bits.len())).copied()).collect();
        let block = block(&text);
        let sources: String = block.pieces.iter().map(|piece| piece.source.as_str()).collect();
        assert_eq!(without_blanks(&sources), without_blanks(&text), "{text:?}");
        let lines: Vec<usize> = block.pieces.iter().map(|piece| piece.line).collect();
        assert!(lines.is_sorted(), "{text:?}: {lines:?}");
        let all: Vec<(usize, &str)> = super::plain::lines(&text).collect();
        for piece in &block.pieces {
            let first = piece.source.split('\n').next().unwrap_or_default().trim();
            let line = all.iter().find(|(number, _)| *number == piece.line).map_or("", |(_, line)| line);
            assert!(line.contains(first), "{text:?}: {first:?} is not on line {}", piece.line);
        }
    }
}

#[test]
fn a_text_of_many_lines_is_cut_like_any() {
    let block = block(&"Close the valve.\n\n".repeat(MANY_LINES + 1));
    assert_eq!((block.n_lines, block.pieces.len()), (MANY_LINES + 1, MANY_LINES + 1));
}

#[test]
fn a_block_that_is_read_in_slices_is_read_as_at_once() {
    let text =
        "Take off the cover.\nwarning: hot\nUndo the two union nuts of the pump.\nclose it\nTake it out.";
    let procedure = Procedure::new(Id::new("p"), "P");
    let cut = block(text);
    let at_once = steps_of_block(&cut, &procedure, 0, &mut NumberedIds::default());
    let (mut reading, ids) = (BlockReading::new(cut.clone(), &procedure, 0), &mut NumberedIds::default());
    let mut seen = Vec::new();
    while let Some(n) = reading.read_next(ids) {
        seen.push(n);
    }
    assert_eq!(seen, (1..=cut.pieces.len()).collect::<Vec<_>>(), "how far it is, is told");
    assert_eq!(reading.finish(ids), at_once);
    let sources: Vec<_> = at_once.sources.iter().map(|one| (one.line, one.source.trim())).collect();
    assert_eq!(sources.last(), Some(&(5, "Take it out.")));
    assert_eq!(sources.len(), at_once.steps.len(), "each step has its line");
}

const STORE: &str = include_str!("../../../../public/demo/hot-water-store.putback.json");

#[test]
fn a_text_pasted_onto_the_map_of_a_demo_is_read_line_after_line() {
    let mut procedure = read(STORE.as_bytes()).expect("the demo");
    procedure.steps.clear();
    let text = "Making safe\n\
         1. Shut down the heater at its time switch.\n\
         2. Switch off at the heater switch and lock it off.\n\
         WARNING: hot water can scald; let it cool\n\
         3. Close the cold stop valve. Put the drain hose on the drain cock.\n\
         4. Smile at the householder.\n\
         read: gauge at most 0.1 bar (out: drain again)\n\
         Removal\n\
         5. Undo the two cover screws and take off the terminal cover.\n\
         photo: the heater terminals\n\
         ask: Is the face pitted?\n\
         if yes: Clean the face of the heater thread.\n\
         back: the arrow points to the tundish\n\
         Refitting\n\
         6. Refit the cover\n\
         7. Undo the bypass union.\n\
         later: number of the gasket, the stores\n\
         caution: sharp edges\n";
    let pasted = steps_of_block(&block(text), &procedure, 0, &mut NumberedIds::default());
    let steps = pasted.steps.iter().map(|step| {
        let messages: Vec<String> =
            step.messages.iter().map(|message| format!("{}! ", message.word)).collect();
        format!("{} | {}{} | {}", step.stage, messages.concat(), step.words, print(&step.actions))
    });
    assert_eq!(
        steps.collect::<Vec<_>>().join("\n"),
        "make safe | Shut down the heater at its time switch. | shutdown\n\
         make safe | Switch off at the heater switch and lock it off. | isolate sw_heater · lock sw_heater\n\
         make safe | WARNING! Close the cold stop valve. | isolate stop\n\
         make safe | Put the drain hose on the drain cock. | place hose\n\
         make safe | Smile at the householder. Read gauge: at most 0.1 bar. | read reading=\"gauge|..0.1 bar\"\n\
         strip | Undo the two cover screws and take off the terminal cover. Photograph the heater terminals. | undo cover_screws · remove cover · photograph of=\"the heater terminals\"\n\
         strip | Ask: Is the face pitted? | ask question-8\n\
         strip | Clean the face of the heater thread. | clean boss\n\
         refit | Refit the cover | fit cover\n\
         refit | CAUTION! Undo the bypass union. | undo bypass-union-12"
    );
    let not_understood =
        pasted.not_understood.iter().map(|one| format!("{} {}: {}", one.line, one.source, one.reason));
    assert_eq!(
        not_understood.collect::<Vec<_>>().join("\n"),
        "6 4. Smile at the householder.: no action is read from it"
    );
    let kept: Vec<_> = pasted.steps.iter().filter(|step| !step.back.is_empty()).collect();
    assert_eq!(
        kept.iter().map(|step| step.back.as_str()).collect::<Vec<_>>(),
        ["the arrow points to the tundish."]
    );
    let made: Vec<&str> = pasted.made.iter().map(|made| made.name.as_str()).collect();
    assert_eq!(made, ["bypass union"]);
    assert_eq!(
        format!("{:?}", pasted.counts),
        "Counts { lines: 18, steps: 10, to_decide: 0, not_understood: 1, later: 1, without_step: 3 }"
    );
}

#[test]
fn an_answer_that_is_pasted_behind_a_step_of_the_other_finds_its_question() {
    let mut procedure = Procedure::new(Id::new("p"), "Invented");
    let cut = block("ask: Is it sound?\nif yes: Clean the trap.");
    procedure.steps = steps_of_block(&cut, &procedure, 0, &mut NumberedIds::default())
        .steps
        .into_iter()
        .map(std::sync::Arc::new)
        .collect();
    let cut = block("if no: Fit a new trap.");
    let pasted = steps_of_block(&cut, &procedure, 2, &mut NumberedIds::default());
    let [step] = pasted.steps.as_slice() else { panic!("{:?}", pasted.steps) };
    let [when] = step.when.as_slice() else { panic!("{:?}", step.when) };
    assert_eq!((when.answer.as_str(), &when.question), ("no", &procedure.steps[1].when[0].question));
}

#[test]
fn a_title_is_no_step_before_the_isolation() {
    let first = |text: &str| block(text).pieces.remove(0).kind;
    for text in [
        "Replace the expansion vessel\n1. Switch off the boiler.\n2. Close the flow valve.",
        "Replace the expansion vessel\n\nSwitch off the boiler\nClose the flow valve",
        "Replace the expansion vessel\nSwitch off the boiler.\nClose the flow valve.",
        "Replace the expansion vessel\n\nMake safe\nSwitch off the boiler.",
    ] {
        assert_eq!(first(text), PieceKind::Heading(None), "{text}");
        let cut = block(text);
        let pasted = steps_of_block(&cut, &Procedure::new(Id::new("p"), "P"), 0, &mut NumberedIds::default());
        assert_eq!(pasted.steps[0].words, "Replace the expansion vessel", "the words stay");
        assert!(pasted.steps[0].actions.is_empty(), "{text}");
    }
    for text in [
        "Switch off the boiler\nClose the flow valve\nReplace the expansion vessel",
        "Switch off the boiler.\nClose the flow valve.\nTake it off.",
        "1. Switch off the boiler\n2. Close the flow valve\n3. Take it off",
        "Switch off the boiler\n\nClose the flow valve\n\nTake it off",
        "Switch off the boiler\nClose the flow valve.",
    ] {
        assert_eq!(first(text), PieceKind::Step, "{text}");
    }
}

#[test]
fn a_line_that_only_says_a_part_of_the_job_is_its_heading() {
    let cut = block("Fit\nPush the fan in.");
    assert_eq!(cut.pieces[0].kind, PieceKind::Heading(Some(Stage::Refit)));
    let cut = block("Fit the fan.\nPush it in.");
    assert_eq!(cut.pieces[0].kind, PieceKind::Step);
}
