//! The core does not reach for the world, and nothing shipped gives up where it should answer.

use super::judge;
use super::source::{Source, Token, all_sources, sources};

const KNOWN_IMPURE: &[&str] = &[];
const KNOWN_PANICS: &[&str] = &[];

/// Types whose answer depends on the machine, the moment or a hash.
const IMPURE_TYPES: &[&str] = &["HashMap", "HashSet", "Instant", "SystemTime"];
/// Modules of `std` that reach outside.
const IMPURE_MODULES: &[&str] = &["env", "fs", "net", "process", "thread"];
/// Methods of `f64` that differ between platforms in the last place; `libm` gives the same everywhere.
const IMPURE_METHODS: &[&str] = &["cos", "exp", "ln", "log10", "log2", "powf", "sin", "tan"];

#[test]
fn the_core_reaches_for_nothing_outside() {
    let mut offences = Vec::new();
    for source in core() {
        for [before_last, last, name, next] in windows(&source.tokens()) {
            let is_module =
                before_last.text == ":" && last.text == ":" && IMPURE_MODULES.contains(&&*name.text);
            let of_std = is_module && follows_std(&source, name.line);
            let is_method = last.text == "." && next.text == "(" && IMPURE_METHODS.contains(&&*name.text);
            if IMPURE_TYPES.contains(&&*name.text) || of_std || is_method {
                offences.push((source.path.clone(), format!("line {}: `{}`", name.line, name.text)));
            }
        }
    }
    judge("the core is pure", &offences, KNOWN_IMPURE);
}

#[test]
fn the_core_allows_itself_no_exception_from_purity() {
    let mut offences = Vec::new();
    for source in core() {
        for lint in ["print_stdout", "print_stderr", "disallowed_methods", "disallowed_types"] {
            if source.tokens().iter().any(|token| token.text == lint) {
                offences.push((source.path.clone(), format!("names the lint `{lint}`")));
            }
        }
    }
    judge("purity lints hold in the whole core", &offences, &[]);
}

#[test]
fn nothing_shipped_gives_up() {
    let mut offences = Vec::new();
    for source in all_sources().iter().filter(|source| !source.path.split('/').any(|part| part == "tests")) {
        for line in surrenders(&source.tokens()) {
            offences.push((source.path.clone(), format!("line {line}: may panic")));
        }
    }
    judge("no panic outside tests", &offences, KNOWN_PANICS);
}

/// The library part of the core; its binary may read files and print.
fn core() -> Vec<Source> {
    let mut core = sources("procedures-schema/src");
    core.retain(|source| !source.path.contains("/src/bin/"));
    core
}

fn windows(tokens: &[Token]) -> impl Iterator<Item = [&Token; 4]> {
    tokens.windows(4).filter_map(|window| <&[Token; 4]>::try_from(window).ok()).map(<[Token; 4]>::each_ref)
}

fn follows_std(source: &Source, line: usize) -> bool {
    source.text.lines().nth(line - 1).is_some_and(|text| text.contains("std::"))
}

/// The lines with `todo!`, `unimplemented!`, `panic!`, `.unwrap()` or `.expect("…")`.
fn surrenders(tokens: &[Token]) -> Vec<usize> {
    let mut lines = Vec::new();
    for [first, second, third, fourth] in windows(tokens) {
        let is_macro =
            second.text == "!" && ["panic", "todo", "unimplemented"].contains(&first.text.as_str());
        let is_unwrap = first.text == "." && second.text == "unwrap" && fourth.text == ")";
        let is_expect =
            first.text == "." && second.text == "expect" && third.text == "(" && fourth.text.starts_with('"');
        if is_macro || is_unwrap || is_expect {
            lines.push(first.line);
        }
    }
    lines
}

#[test]
fn a_surrender_is_seen_and_an_answer_is_not() {
    let of = |text: &str| {
        surrenders(&Source::new("sample.rs".to_owned(), format!("fn f() {{ {text}; g() }}")).tokens()).len()
    };
    assert_eq!(of("x.unwrap()"), 1);
    assert_eq!(of("x.expect(\"here\")"), 1);
    assert_eq!(of("todo!()"), 1);
    assert_eq!(of("vec![y.unwrap()]"), 1);
    assert_eq!(of("x.unwrap_or(1); parser.expect(Token::Comma)"), 0);
}
