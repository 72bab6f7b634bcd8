//! The limits, said in numbers: what is at one is opened, what is beyond it is refused.

use super::read;
use procedures_schema::format::{
    self, Category, MOST_BYTES, MOST_CHARACTERS, MOST_DEPTH, MOST_IMAGES, MOST_STEPS, MOST_THINGS,
};

/// A file with these fields after the first ones.
fn file(fields: &str) -> String {
    format!("{{\"putback\": 1, \"id\": \"p\", \"title\": \"t\", {fields}}}")
}

fn many(n: usize, object: impl Fn(usize) -> String) -> String {
    (0..n).map(object).collect::<Vec<_>>().join(",")
}

fn refusal(text: &str) -> String {
    let error = format::read(text.as_bytes()).expect_err("too much");
    assert_eq!(error.category(), Category::Limit, "{error}");
    error.to_string()
}

fn step(number: usize) -> String {
    format!("{{\"id\": \"s{number}\", \"stage\": \"strip\", \"words\": \"\"}}")
}

#[test]
fn steps_are_counted_with_those_of_failure_blocks() {
    let steps = |n: usize| file(&format!("\"steps\": [{}]", many(n, step)));
    assert_eq!(read("steps", &steps(MOST_STEPS)).steps.len(), MOST_STEPS);
    let message = "This file has 5,001 steps; 5,000 can be opened. Nothing was changed.";
    assert_eq!(refusal(&steps(MOST_STEPS + 1)), message);
    let block = format!(
        "\"steps\": [{{\"id\": \"a\", \"stage\": \"strip\", \"words\": \"\", \"actions\": [{{\"do\": \"test\", \
         \"on_fail\": {{\"steps\": [{}]}}}}]}}]",
        many(MOST_STEPS, step)
    );
    assert_eq!(refusal(&file(&block)), message);
}

#[test]
fn things_and_images_are_counted() {
    let things = |n: usize| {
        let components = many(n, |i| format!("{{\"id\": \"c{i}\", \"name\": \"c\"}}"));
        file(&format!("\"map\": {{\"components\": [{components}]}}"))
    };
    assert_eq!(read("things", &things(MOST_THINGS)).map.components.len(), MOST_THINGS);
    let message = "This file has 2,001 things; 2,000 can be opened. Nothing was changed.";
    assert_eq!(refusal(&things(MOST_THINGS + 1)), message);
    let images = |n: usize| {
        let image = |i| {
            format!(
                "{{\"id\": \"i{i}\", \"sha256\": \"\", \"mime\": \"image/png\", \"width\": 1, \"height\": 1}}"
            )
        };
        file(&format!("\"images\": [{}]", many(n, image)))
    };
    assert_eq!(read("images", &images(MOST_IMAGES)).images.len(), MOST_IMAGES);
    let message = "This file has 2,001 images; 2,000 can be opened. Nothing was changed.";
    assert_eq!(refusal(&images(MOST_IMAGES + 1)), message);
}

#[test]
fn texts_and_keys_are_counted_in_characters_wherever_they_stand() {
    for place in [
        "\"note\": \"T\"",
        "\"steps\": [{\"id\": \"T\", \"stage\": \"\", \"words\": \"\"}]",
        "\"x\": [\"T\"]",
        "\"T\": 1",
    ] {
        let with = |n: usize| file(&place.replace('T', &"ü".repeat(n)));
        read(place, &with(MOST_CHARACTERS));
        let message = refusal(&with(MOST_CHARACTERS + 1));
        assert!(message.contains("This text has 20,001 characters; 20,000 can be opened"), "{message}");
        assert!(message.starts_with("line 1, column "), "{message}");
    }
}

#[test]
fn nesting_ends_before_the_stack_does() {
    // The file itself is the first object.
    let nested = |n: usize| file(&format!("\"x\": {}{}", "[".repeat(n - 1), "]".repeat(n - 1)));
    let kept = read("nested", &nested(MOST_DEPTH));
    assert_eq!(read("nested", &format::write(&kept)), kept);
    assert!(refusal(&nested(MOST_DEPTH + 1)).contains("nested deeper than 127"));
    assert!(refusal(&file(&format!("\"x\": {}", "[".repeat(1_000_000)))).contains("nested deeper than 127"));
}

#[test]
fn a_file_that_is_too_large_is_not_looked_into() {
    let error = format::read(&vec![0xFF; MOST_BYTES + 1]).expect_err("too large");
    assert_eq!(
        error.to_string(),
        "This file has 50,000,001 bytes; 50,000,000 can be opened. Nothing was changed."
    );
}
