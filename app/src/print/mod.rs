//! The Print screen: what is to be on paper, the pages as they will be, and the key that prints them.
//!
//! The pages are divided here and not by the browser, so that what is seen is what comes out, and every page says what
//! it is of and whether it is fit to be followed.

pub mod blocks;
pub mod choices;
pub mod divide;
pub mod page;
pub mod paper;
pub mod sheets;
