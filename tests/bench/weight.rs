//! What the files of the built page weigh, as they are and as a server sends them.

use std::error::Error;
use std::path::Path;

/// The strongest setting, as a static host would use once per build.
const QUALITY: i32 = 11;
const WINDOW: i32 = 22;
/// Endings of the files that a program is made of.
const WEIGHED: &[&str] = &["wasm", "js", "css", "html"];

/// What the page fetches once its first screen stands, and the service worker, which is fetched then too.
const LATER: &[&str] = &["-editor.wasm", "sw.js"];

/// Prints a line for each file, the sum of what a first visit loads before its first screen stands, and that of all.
pub(crate) fn print(dist: &Path) -> Result<(), Box<dyn Error>> {
    if !dist.is_dir() {
        println!("sizes: no built page; `./dev build` makes it");
        return Ok(());
    }
    let mut paths: Vec<_> =
        std::fs::read_dir(dist)?.filter_map(Result::ok).map(|entry| entry.path()).collect();
    paths.retain(|path| path.extension().is_some_and(|ending| WEIGHED.iter().any(|known| ending == *known)));
    paths.sort();
    let (mut first, mut sum) = (0, 0);
    for path in paths {
        let content = std::fs::read(&path)?;
        let parameters =
            brotli::enc::BrotliEncoderParams { quality: QUALITY, lgwin: WINDOW, ..Default::default() };
        let mut packed = Vec::new();
        brotli::BrotliCompress(&mut content.as_slice(), &mut packed, &parameters)?;
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        println!("{:9} bytes, {:8} brotli  {name}", content.len(), packed.len());
        sum += packed.len();
        if !LATER.iter().any(|ending| name.ends_with(ending)) {
            first += packed.len();
        }
    }
    println!("first load {first} bytes brotli, before the first screen stands; all together {sum}");
    Ok(())
}
