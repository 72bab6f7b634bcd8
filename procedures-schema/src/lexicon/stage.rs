//! Headings that name a stage.

use super::text::tokens;
use crate::model::Stage;

/// Words of headings and the stage that they name; the longer ones first.
const HEADINGS: &[(&[&str], Stage)] = &[
    (&["before", "you", "start"], Stage::Prepare),
    (&["make", "safe"], Stage::MakeSafe),
    (&["making", "safe"], Stage::MakeSafe),
    (&["isolation"], Stage::MakeSafe),
    (&["isolate"], Stage::MakeSafe),
    (&["put", "back"], Stage::Refit),
    (&["putting", "back"], Stage::Refit),
    (&["take", "apart"], Stage::Strip),
    (&["taking", "apart"], Stage::Strip),
    (&["bench", "work"], Stage::BenchWork),
    (&["on", "the", "bench"], Stage::BenchWork),
    (&["bench"], Stage::BenchWork),
    (&["hand", "over"], Stage::HandOver),
    (&["handing", "over"], Stage::HandOver),
    (&["handover"], Stage::HandOver),
    (&["start", "up"], Stage::Recommission),
    (&["prepare"], Stage::Prepare),
    (&["preparation"], Stage::Prepare),
    (&["preparing"], Stage::Prepare),
    (&["strip"], Stage::Strip),
    (&["stripping"], Stage::Strip),
    (&["strip", "down"], Stage::Strip),
    (&["dismantle"], Stage::Strip),
    (&["dismantling"], Stage::Strip),
    (&["removal"], Stage::Strip),
    (&["remove"], Stage::Strip),
    (&["refit"], Stage::Refit),
    (&["refitting"], Stage::Refit),
    (&["reassembly"], Stage::Refit),
    (&["reassemble"], Stage::Refit),
    (&["assembly"], Stage::Refit),
    (&["recommission"], Stage::Recommission),
    (&["recommissioning"], Stage::Recommission),
    (&["commissioning"], Stage::Recommission),
    (&["testing"], Stage::Recommission),
];

/// The stage that a heading names: a heading is a stage's words and at most two more.
pub(super) fn stage(heading: &str) -> Option<Stage> {
    let words: Vec<String> = tokens(heading).into_iter().map(|token| token.text.into_owned()).collect();
    let names = |phrase: &[&str]| {
        words.len() <= phrase.len() + 2
            && words
                .windows(phrase.len())
                .any(|window| window.iter().map(String::as_str).eq(phrase.iter().copied()))
    };
    HEADINGS.iter().find(|(phrase, _)| names(phrase)).map(|(_, stage)| stage.clone())
}
