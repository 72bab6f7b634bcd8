//! Everything that outlives the page: the database of the browser, files, preferences, the offline cache.
//!
//! Nothing here knows a procedure; values are texts under keys. The database is acknowledged only when its
//! transaction has completed, because what is merely written can be lost when a browser is killed. Views
//! never come in here directly except for files that a person picks.

pub mod copies;
pub mod database;
pub mod file_access;
pub mod files;
pub mod found;
pub mod giving;
pub mod offline;
pub mod preferences;
pub mod sharing;
pub mod tabs;
pub mod this_tab;
pub mod unfinished;
