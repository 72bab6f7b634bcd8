//! How much memory a check takes at most: measured in a process of its own, which does nothing else.

use procedures_schema::check::check;
use procedures_schema::format;
use procedures_schema::model::Date;
use std::error::Error;
use std::io::{Read, Write};
use std::process::{Command, Stdio};

/// The argument that makes this program the process that is measured.
pub(crate) const ARGUMENT: &str = "--measure-memory";

/// Reads a procedure from standard input, checks it, and prints the most memory that this process had.
pub(crate) fn measured(today: Date) -> Result<(), Box<dyn Error>> {
    let mut text = Vec::new();
    std::io::stdin().lock().read_to_end(&mut text)?;
    let before = most_kilobytes();
    let procedure = format::read(&text)?;
    let (n_steps, n_questions) = (procedure.steps.len(), procedure.questions.len());
    print!("memory for {n_steps} steps with {n_questions} questions: ");
    let report = check(&procedure, today);
    match (before, most_kilobytes()) {
        (Some(before), Some(after)) => {
            let [before, after] = [before, after].map(|kilobytes| kilobytes / 1024.0);
            let n = report.findings.len();
            println!("{after:.1} MB at most, {before:.1} MB of it before the check  ({n} findings)");
        }
        _ => println!("not measured here"),
    }
    Ok(())
}

/// The most memory that this process ever had, as Linux tells it.
fn most_kilobytes() -> Option<f64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    line.trim().strip_suffix("kB")?.trim().parse().ok()
}

/// Prints what a process says that checks this text.
pub(crate) fn print(text: &str) -> Result<(), Box<dyn Error>> {
    let mut child = Command::new(std::env::current_exe()?)
        .arg(ARGUMENT)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()?;
    if let Some(mut input) = child.stdin.take() {
        input.write_all(text.as_bytes())?;
    }
    let output = child.wait_with_output()?;
    print!("{}", String::from_utf8_lossy(&output.stdout));
    Ok(())
}
