//! Identities that no other device makes: a word and six random bytes from the browser.

use procedures_schema::model::{Id, IdSource};
use std::fmt::Write;

/// Where new identities come from in the application.
#[derive(Clone, Copy, Debug, Default)]
pub struct RandomIds;

impl IdSource for RandomIds {
    fn next_id(&mut self, hint: &str) -> Id {
        let mut bytes = [0_u8; 6];
        let filled = web_sys::window()
            .and_then(|window| window.crypto().ok())
            .is_some_and(|crypto| crypto.get_random_values_with_u8_array(&mut bytes).is_ok());
        if !filled {
            // Every browser that runs this has the source above; the clock keeps ids apart on one device.
            bytes.copy_from_slice(&super::clock::now_ms().to_be_bytes()[2..]);
        }
        let mut text = format!("{hint}-");
        for byte in bytes {
            // Writing to a string cannot fail.
            let _ = write!(text, "{byte:02x}");
        }
        Id::new(&text)
    }
}
