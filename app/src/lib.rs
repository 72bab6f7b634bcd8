//! Putback in the browser.
//!
//! ```text
//! main -> app    -> library -> state (the list) -> storage
//!      -> editor -> write  -> state -> core
//!                -> follow ----------> core (model, simulate, derive, notation, units, format)
//!         write, follow -> components        state, follow -> storage
//! ```
//!
//! `app` and `library` come first and are small; `editor` and all behind it is a file of its own, which they know as
//! a [`desk::Desk`].
//! Write sends commands to the editor's state and reads memos. Follow knows no editor, no rules and no
//! capture; it keeps a job and reads the trace of what was really done. Nothing here decides what is right:
//! that is the core's business.

#![allow(clippy::needless_pass_by_value, reason = "components take their properties by value")]

pub mod app;
pub mod appliance;
pub mod components;
pub mod desk;
pub mod editor;
pub mod everywhere;
pub mod finding_out;
pub mod follow;
pub mod frame;
pub mod kit;
pub mod library;
pub mod panic_notice;
pub mod places;
pub mod print;
pub mod route;
pub mod state;
pub mod storage;
pub mod versions;
pub mod write;

#[cfg(test)]
wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
