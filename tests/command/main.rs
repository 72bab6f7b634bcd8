//! The command line as a terminal sees it: what it prints, and how it ends.
#![allow(clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

fn repository() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("a parent").to_path_buf()
}

fn demo() -> String {
    repository().join("public/demo/circulation-pump.putback.json").display().to_string()
}

/// The demo without its step of taking the drain hose away.
fn spoiled() -> String {
    let text = std::fs::read_to_string(demo()).expect("the demo");
    text.replace("\"do\": \"take away\"", "\"do\": \"photograph\"")
}

fn putback(arguments: &[&str], input: &str) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_putback"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the command starts");
    child.stdin.take().expect("a standard input").write_all(input.as_bytes()).expect("it reads");
    child.wait_with_output().expect("it ends")
}

fn said(output: &Output) -> String {
    format!("{}{}", String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr))
}

#[test]
fn the_worst_file_decides_how_check_ends() {
    let good = demo();
    for (arguments, input, code, words) in [
        (vec!["check", &good], "", 0, "ACCEPTED"),
        (vec!["check", "-"], spoiled().as_str(), 1, "REJECTED"),
        (vec!["check", &good, "-"], "{", 2, "cut short"),
        (vec!["check", "-", "no-such-file"], spoiled().as_str(), 2, "no-such-file"),
        (vec!["check", "--today", "2026-02-30", &good], "", 64, "is not a date"),
        (vec!["check"], "", 64, "needs a file"),
        (vec!["chekc"], "", 64, "no command"),
        (vec![], "", 64, "command is missing"),
        (vec!["--version"], "", 0, "format 1"),
        (vec!["schema"], "", 0, "https://json-schema.org/draft/2020-12/schema"),
        (vec!["schema", "more"], "", 64, "unexpected"),
    ] {
        let output = putback(&arguments, input);
        assert_eq!(output.status.code(), Some(code), "{arguments:?}\n{}", said(&output));
        assert!(said(&output).contains(words), "{arguments:?}\n{}", said(&output));
    }
}

#[test]
fn a_rejected_file_is_shown_step_words_lane_reason_and_remedy() {
    let text = std::fs::read_to_string(demo()).expect("the demo");
    let missing = text.replace("\"test\": \"leak cold\"", "\"test\": \"fill pressure\"");
    let output = putback(&["check", "--today", "2026-11-25", "-"], &missing);
    let said = said(&output);
    for part in [
        "standard input: REJECTED",
        "told of: mains electricity, heating water",
        "~~~~",
        "heating ##",
        "also    retest/about-to-be-covered",
        "reject retest/order:",
        "because the suction flange and the discharge flange were touched and not tested, since step",
        "do      Add the cold leak check of the suction flange and the discharge flange before this",
    ] {
        assert!(said.contains(part), "{part}\n{said}");
    }
}

#[test]
fn json_is_one_list_with_an_object_a_file() {
    let output = putback(&["check", "--format", "json", "--today", "2026-11-25", &demo(), "-"], &spoiled());
    let list: serde_json::Value = serde_json::from_slice(&output.stdout).expect("JSON");
    assert_eq!(list[0]["verdict"], "accepted");
    assert_eq!(list[1]["verdict"], "rejected");
    let codes: Vec<&str> =
        list[1]["findings"].as_array().expect("findings").iter().filter_map(|f| f["code"].as_str()).collect();
    assert!(codes.contains(&"putback/temp-left"), "{codes:?}");
}

#[test]
fn replaced_demands_are_counted_and_listed() {
    let replaced = "\"overrides\": [{\"demand\": \"life of the proof\", \"kind\": \"mains electricity\", \
                    \"duration\": {\"value\": \"240\", \"unit\": \"min\"}, \"words\": \"It holds four hours\", \
                    \"source\": \"Rules of the plant\"}],\n  \"steps\": [";
    let text = std::fs::read_to_string(demo()).expect("the demo");
    let text = text.replacen("\"steps\": [", replaced, 1);
    let said = said(&putback(&["check", "-"], &text));
    let listed =
        "1 demand replaced by the document:\n    life of the proof: It holds four hours (Rules of the plant)";
    assert!(said.contains("ACCEPTED") && said.contains(listed), "{said}");
    let json = putback(&["check", "--format", "json", "-", &demo()], &text).stdout;
    let list: serde_json::Value = serde_json::from_slice(&json).expect("JSON");
    assert_eq!((&list[0]["replaced"], &list[1]["replaced"]), (&1.into(), &0.into()));
}

#[test]
fn every_rule_is_listed_and_explained() {
    let rules = said(&putback(&["rules"], ""));
    for rule in procedures_schema::check::catalogue() {
        assert!(rules.contains(rule.code), "{}", rule.code);
        let explained = said(&putback(&["explain", rule.code], ""));
        assert!(explained.contains("## Why it matters"), "{explained}");
    }
    assert_eq!(putback(&["explain", "no/such-rule"], "").status.code(), Some(64));
}

#[test]
fn fmt_lays_out_and_check_only_tells() {
    let crowded = "{\"putback\":1,\"id\":\"a\",\"title\":\"t\",\"new\":1}";
    assert_eq!(putback(&["fmt", "--check", "-"], crowded).status.code(), Some(1));
    let laid_out = putback(&["fmt", "-"], crowded);
    assert_eq!(laid_out.status.code(), Some(0));
    let text = String::from_utf8_lossy(&laid_out.stdout).into_owned();
    assert!(text.ends_with("  \"new\": 1\n}\n"), "{text}");
    assert_eq!(putback(&["fmt", "--check", "-"], &text).status.code(), Some(0));
    assert_eq!(putback(&["fmt", "--check", "-"], "[").status.code(), Some(2));
}

#[test]
fn fmt_leaves_a_file_that_it_cannot_read_as_it_was() {
    let folder = std::env::temp_dir().join(format!("putback-{}", std::process::id()));
    std::fs::create_dir_all(&folder).expect("a folder");
    let file = folder.join("newer.putback.json");
    let newer = "{\"putback\":2,\"id\":\"a\",\"title\":\"t\"}";
    std::fs::write(&file, newer).expect("written");
    let output = putback(&["fmt", &file.display().to_string()], "");
    assert_eq!(output.status.code(), Some(2), "{}", said(&output));
    assert_eq!(std::fs::read_to_string(&file).expect("still there"), newer);
    std::fs::remove_dir_all(&folder).expect("removed");
}

#[test]
fn a_reader_that_goes_away_does_not_upset_the_verdict() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_putback"))
        .args(["check", &demo()])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the command starts");
    drop(child.stdout.take());
    let output = child.wait_with_output().expect("it ends");
    assert_eq!(output.status.code(), Some(0), "{}", said(&output));
    assert!(output.stderr.is_empty(), "{}", said(&output));
}

#[test]
fn a_folder_stands_for_its_procedures() {
    let folder = repository().join("public/demo").display().to_string();
    let output = putback(&["check", "--today", "2026-11-25", &folder], "");
    assert_eq!(output.status.code(), Some(0), "{}", said(&output));
    assert!(said(&output).contains("circulation-pump.putback.json: ACCEPTED"), "{}", said(&output));
}

#[test]
fn many_files_are_told_in_their_order_whichever_is_done_first() {
    // The demos take much longer than the small files and stand before them, and one is unreadable.
    let suite = repository().join("tests/suite");
    let paths = |folder: PathBuf| {
        let entries = std::fs::read_dir(folder).expect("a folder").map(|entry| entry.expect("a file").path());
        let mut paths: Vec<String> = entries.map(|path| path.display().to_string()).collect();
        paths.retain(|path| path.ends_with(".putback.json"));
        paths.sort();
        paths
    };
    let mut files = paths(repository().join("public/demo"));
    files.extend(paths(suite.join("judge")));
    files.push(suite.join("format/invalid/reader-comment.putback.json").display().to_string());
    files.extend(paths(suite.join("maps")));
    assert!(files.len() > 20, "{} files", files.len());
    let check = |form: &str, files: &[String]| {
        let mut arguments = vec!["check", "--today", "2026-11-25", "--format", form];
        arguments.extend(files.iter().map(String::as_str));
        putback(&arguments, "")
    };
    let alone: Vec<Output> = files.iter().map(|file| check("text", std::slice::from_ref(file))).collect();
    let stdout: Vec<u8> = alone.iter().flat_map(|output| output.stdout.clone()).collect();
    let stderr: Vec<u8> = alone.iter().flat_map(|output| output.stderr.clone()).collect();
    for _ in 0..3 {
        let together = check("text", &files);
        assert_eq!(String::from_utf8_lossy(&together.stdout), String::from_utf8_lossy(&stdout));
        assert_eq!(String::from_utf8_lossy(&together.stderr), String::from_utf8_lossy(&stderr));
        assert_eq!(together.status.code(), Some(2));
    }
    let list: serde_json::Value = serde_json::from_slice(&check("json", &files).stdout).expect("JSON");
    let named: Vec<&str> =
        list.as_array().expect("a list").iter().filter_map(|f| f["file"].as_str()).collect();
    assert_eq!(named, files);
}

#[test]
fn a_draft_is_good_enough_unless_ready_is_asked() {
    let text = std::fs::read_to_string(demo()).expect("the demo");
    let later = "\"number\": { \"later\": \"the keeper\" }";
    let draft = text.replacen("\"number\": \"P2-40-A (invented)\"", later, 1);
    assert_ne!(draft, text);
    assert_eq!(putback(&["check", "-"], &draft).status.code(), Some(0));
    assert_eq!(putback(&["check", "--ready", "-"], &draft).status.code(), Some(1));
    assert_eq!(putback(&["check", "--ready", "-"], &text).status.code(), Some(0));
}

#[test]
fn lanes_stand_beside_the_steps() {
    let output = said(&putback(&["lanes", &demo()], ""));
    let proved = output.lines().find(|line| line.contains("Prove the box terminals")).expect("the step");
    assert!(proved.starts_with("[] "), "{proved}");
    assert!(proved.contains("##"), "{proved}");
}
